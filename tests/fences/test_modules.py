"""Names and sizes of modules and functions."""

from __future__ import annotations

import ast
import re

from tests.fences.source_tree import ROOT, functions, modules

LONGEST_MODULE = 400
LONGEST_FUNCTION = 40
NO_NAMES = {"utils", "util", "helpers", "helper", "common", "misc", "stuff"}


def test_a_module_is_named_for_what_it_holds() -> None:
    """Lower case words, and never a word that would fit any content."""
    misnamed = [
        module.where
        for module in modules()
        for word in module.name.split(".")
        if word in NO_NAMES or not re.fullmatch(r"[a-z][a-z0-9_]*|__main__", word)
    ]
    assert not misnamed, "\n".join(misnamed)


def test_a_file_has_one_purpose_and_fits_the_eye() -> None:
    """Source, tests and benchmarks are split before they grow long."""
    long = [
        f"{path.relative_to(ROOT)}: {lines} lines"
        for folder in ("src", "tests", "benchmarks")
        for path in sorted((ROOT / folder).rglob("*.py"))
        if (lines := len(path.read_text("utf-8").splitlines())) > LONGEST_MODULE
    ]
    assert not long, "\n".join(long)


def _length(function: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    """Lines of the body without its docstring."""
    body = function.body
    if ast.get_docstring(function) is not None:
        body = body[1:]
    return (body[-1].end_lineno or 0) - body[0].lineno + 1 if body else 0


def test_a_function_fits_the_eye() -> None:
    """Long before its end a function has parts that deserve a name."""
    long = [
        f"{module.where}:{function.lineno} {function.name}: {_length(function)} lines"
        for module in modules()
        for function in functions(module)
        if _length(function) > LONGEST_FUNCTION
    ]
    assert not long, "\n".join(long)
