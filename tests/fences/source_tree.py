"""The source as the fences see it: files, syntax trees, imports and the floors they stand on."""

from __future__ import annotations

import ast
import re
import tomllib
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]
SOURCE = ROOT / "src"


@dataclass(frozen=True)
class Module:
    """One file of the package."""

    path: Path
    name: str
    tree: ast.Module

    @property
    def package(self) -> str:
        """The package on whose floor it stands: 'dims', or '' for the root."""
        return self.name.partition(".")[2].partition(".")[0]

    @property
    def where(self) -> str:
        """Its path for a message."""
        return str(self.path.relative_to(ROOT))


@cache
def modules() -> tuple[Module, ...]:
    """All files of the package, in order of their names."""
    found = []
    for path in sorted(SOURCE.rglob("*.py")):
        parts = path.relative_to(SOURCE).with_suffix("").parts
        name = ".".join(parts[:-1] if parts[-1] == "__init__" else parts)
        found.append(Module(path, name, _parsed(path)))
    return tuple(found)


def _parsed(path: Path) -> ast.Module:
    """Its syntax tree, asked for again where a thread that an earlier test left was parsing too.

    In CPython 3.11 the parser then loses count of its depth (gh-106905).
    """
    text = path.read_text("utf-8")
    for _ in range(9):
        with suppress(SystemError):
            return ast.parse(text, str(path))
    return ast.parse(text, str(path))


@cache
def settings() -> dict[str, Any]:
    """What pyproject.toml says."""
    return tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))


@cache
def floors() -> tuple[frozenset[str], ...]:
    """The packages of each layer of the import contract, the lowest first."""
    layers: list[str] = settings()["tool"]["importlinter"]["contracts"][0]["layers"]
    return tuple(frozenset(re.findall(r"\w+", layer)) for layer in reversed(layers))


def up_to(package: str) -> frozenset[str]:
    """All packages on the layer of this one and below."""
    at = next(i for i, floor in enumerate(floors()) if package in floor)
    return frozenset().union(*floors()[: at + 1])


def imports(module: Module) -> Iterator[tuple[int, str]]:
    """The line and the full name of everything that a module imports, at any depth."""
    for node in ast.walk(module.tree):
        if isinstance(node, ast.Import):
            for alias in node.names:
                yield node.lineno, alias.name
        elif isinstance(node, ast.ImportFrom):
            yield node.lineno, node.module or "."


def functions(module: Module) -> Iterator[ast.FunctionDef | ast.AsyncFunctionDef]:
    """Every function and method of a module."""
    for node in ast.walk(module.tree):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            yield node
