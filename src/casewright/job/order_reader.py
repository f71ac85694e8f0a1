"""The order of work of a plan from JSON: its steps and the settings they are made at."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast, get_args

from casewright.cutting.json_reader import JsonReader
from casewright.cutting.methods import Caution, Method
from casewright.cutting.problem import ProblemError
from casewright.cutting.sawing import Edge
from casewright.cutting.solution import Direction, Leaf, Rect, Solution, Use
from casewright.cutting.steps import Card, CutPlan, Piece, Sheet, Step

__all__ = ["read_order"]

_Word = TypeVar("_Word", bound=str)


class _Reader(JsonReader):
    """Reads steps and cards."""

    def word(self, value: object, where: str, field: str, words: tuple[_Word, ...]) -> _Word:
        for word in words:
            if value == word:
                return word
        self.fault(where, field, value, f"one of {', '.join(words)}")
        return words[0]

    def piece(self, row: Mapping[str, Any], where: str) -> Piece:
        rect = Rect(*(self.whole(row, where, side, None) for side in ("x", "y", "l", "w")))
        name, use = self.text(row, where, "name"), row.get("use")
        if use is None:
            return Piece(name, rect)
        use = cast("Use", self.word(use, where, "use", get_args(Use)))
        if use != "part":
            return Piece(name, rect, use)
        part = self.text(row, where, "part")
        return Piece(name, rect, use, part, self.whole(row, where, "copy", None))

    def step(self, row: Mapping[str, Any], where: str) -> Step:
        cautions = row.get("cautions", [])
        if not isinstance(cautions, list):
            self.fault(where, "cautions", cautions, "a list")
            cautions = []
        piece, leaves = row.get("piece"), self.rows(row, where, "leaves", self.piece)
        if not isinstance(piece, Mapping):
            self.fault(where, "piece", piece, "an object")
            piece = {"name": "?", "x": 0, "y": 0, "l": 1, "w": 1}
        if not leaves:
            self.fault(where, "leaves", [], "at least one piece")
        known = cast("tuple[Caution, ...]", get_args(Caution))
        return Step(
            self.whole(row, where, "number", None),
            self.whole(row, where, "card", None),
            self.whole(row, where, "sheet", None),
            self.piece(piece, f"{where}.piece"),
            self.word(row.get("direction"), where, "direction", get_args(Direction)),
            self.word(row.get("method"), where, "method", get_args(Method)),
            tuple(self.word(each, where, "cautions", known) for each in cautions),
            self.word(row.get("datum"), where, "datum", get_args(Edge)),
            row.get("factory") is True,
            self.whole(row, where, "setting", None),
            self.whole(row, where, "along", 1),
            leaves,
        )

    def card(self, row: Mapping[str, Any], where: str) -> Card:
        steps = row.get("steps")
        if not isinstance(steps, list) or any(type(step) is not int for step in steps):
            self.fault(where, "steps", steps, "a list of whole numbers")
            steps = []
        return Card(
            self.whole(row, where, "number", None),
            self.word(row.get("method"), where, "method", get_args(Method)),
            self.whole(row, where, "setting", None),
            tuple(steps),
        )


def read_order(data: Mapping[str, Any], solution: Solution) -> CutPlan:
    """The steps and cards of a plan, in the shape that `write_solution` gives.

    Parameters
    ----------
    data
        Parsed JSON with `steps` and `cards`.
    solution
        The plan itself, whose sheets are cut.

    Raises
    ------
    ProblemError
        With everything that is wrong, each fault with its place: 'steps[2].piece', 'name'.
    """
    reader = _Reader()
    steps = reader.rows(data, "plan", "steps", reader.step)
    cards = reader.rows(data, "plan", "cards", reader.card)
    if reader.faults:
        raise ProblemError(reader.faults)
    return CutPlan(tuple(_sheets(solution)), steps, cards)


def _sheets(solution: Solution) -> list[Sheet]:
    found = []
    for tree in solution.tree:
        piece = Piece(f"{tree.sheet + 1}", tree.root.rect)
        if isinstance(tree.root, Leaf):
            leaf = tree.root
            piece = Piece(piece.name, leaf.rect, leaf.use, leaf.part, leaf.copy)
        found.append(Sheet(tree.stock, piece))
    return found
