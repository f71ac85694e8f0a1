"""No float touches a length."""

from __future__ import annotations

import ast
from collections.abc import Iterator

from tests.fences.source_tree import Module, modules, up_to

# Above the floor of the solvers floats measure loads and pictures; below, chances,
# angles, where walls stand in a picture, and what a library proposes before it is checked in whole
# numbers.
CHANCES = {
    "casewright.dims.chances", "casewright.dims.slack", "casewright.dims.slack_sizes",
    "casewright.room.forecast_words", "casewright.room.forecasts", "casewright.room.sampling",
    "casewright.room.simulation",
    "casewright.room.wall_stands",
    "casewright.survey.adjustment", "casewright.survey.advice", "casewright.survey.angles",
    "casewright.survey.corner_advice", "casewright.survey.corner_doubts",
    "casewright.layout.programme", "casewright.layout.solver",
    "casewright.room.trims.saw_settings",
}  # fmt: skip


def _floats(module: Module) -> Iterator[int]:
    for node in ast.walk(module.tree):
        literal = isinstance(node, ast.Constant) and isinstance(node.value, float)
        if literal or (isinstance(node, ast.Name) and node.id == "float"):
            yield getattr(node, "lineno", 0)


def test_from_the_lengths_to_the_room_all_numbers_are_exact() -> None:
    """Neither a float literal nor the word float stands where lengths are worked out."""
    inexact = [
        f"{module.where}:{line}"
        for module in modules()
        if module.package in up_to("room") - {"sources"} and module.name not in CHANCES
        for line in _floats(module)
    ]
    assert not inexact, "\n".join(inexact)


def _tells(module: Module) -> Iterator[ast.expr]:
    """The words of each sentence with places that a module makes."""
    for node in ast.walk(module.tree):
        if not isinstance(node, ast.Call) or not isinstance(node.func, ast.Name):
            continue
        if node.func.id == "tell" and node.args:
            yield node.args[0]


def _imports_tell(module: Module) -> bool:
    imports = (node for node in module.tree.body if isinstance(node, ast.ImportFrom))
    return any(
        node.module == "casewright.dims" and any(each.name == "tell" for each in node.names)
        for node in imports
    )


def test_names_stand_beside_the_words_of_a_sentence() -> None:
    """`tell` has places in its words: a name put into them could have braces of its own."""
    mixed = [
        f"{module.where}:{words.lineno}"
        for module in modules()
        if _imports_tell(module)
        for words in _tells(module)
        if isinstance(words, ast.JoinedStr | ast.BinOp)
    ]
    assert not mixed, "\n".join(mixed)
