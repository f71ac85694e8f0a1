"""Takes values out of parsed JSON, and remembers everything that is wrong with them."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from typing import Any, TypeVar

from casewright.cutting.problem import Fault

__all__ = ["JsonReader"]

_T = TypeVar("_T")


class JsonReader:
    """Reads values of one document; `faults` says what is wrong in it."""

    def __init__(self) -> None:
        self.faults: list[Fault] = []

    def fault(self, where: str, field: str, found: object, want: str) -> None:
        """What is wrong with a field, and what would be right."""
        text = "missing" if found is None else json.dumps(found, default=str)[:60]
        self.faults.append(Fault(where, field, text, want))

    def whole(self, row: Mapping[str, Any], where: str, field: str, default: int | None) -> int:
        """A whole number; 1 when there is none."""
        value = row.get(field, default)
        if type(value) is int:
            return value
        self.fault(where, field, value, "a whole number")
        return 1

    def text(self, row: Mapping[str, Any], where: str, field: str) -> str:
        """A text that is not empty; its place when there is none."""
        value = row.get(field)
        if isinstance(value, str) and value:
            return value
        want = "a text with something in it" if value == "" else "a text"
        self.fault(where, field, value, want)
        return where

    def rows(
        self, data: Mapping[str, Any], where: str, field: str,
        read: Callable[[Mapping[str, Any], str], _T],
    ) -> tuple[_T, ...]:  # fmt: skip
        """A list of objects, each read with its place."""
        value = data.get(field)
        if not isinstance(value, list):
            self.fault(where, field, value, "a list")
            return ()
        found = []
        for index, row in enumerate(value):
            at = f"{where}.{field}[{index}]" if where != "problem" else f"{field}[{index}]"
            if isinstance(row, Mapping):
                found.append(read(row, at))
            else:
                self.fault(at, "entry", row, "an object")
        return tuple(found)

    def known(self, row: Mapping[str, Any], where: str, fields: tuple[str, ...]) -> None:
        """Every field must be one of these."""
        for field in row:
            if field not in fields:
                self.fault(where, str(field), row[field], f"one of {', '.join(fields)}")
