"""Cutting problems and plans as JSON: the shapes that `cut --problem` reads and writes.

A problem::

    {
        "unit": "1/32 in",
        "kerf": 4,
        "stages": 3,
        "stock": [
            {
                "id": "ply",
                "l": 3072,
                "w": 1536,
                "count": null,
                "price": 70,
                "trim": 0,
                "defects": [{"x": 0, "y": 0, "l": 64, "w": 32}],
            }
        ],
        "parts": [{"id": "side", "l": 1104, "w": 744, "count": 2, "rotate": false, "group": "a"}],
        "keep": [{"long": 768, "short": 128}],
        "matches": [{"id": "front", "way": "along", "of": ["drawer", "door"]}],
    }

`stages` may be "free"; `trim` is one number for all edges or an object with `left`, `right`,
`bottom`, `top`; in `of` may stand ids of parts and objects with `way` and `of` again. `count`,
`price`, `trim`, `defects`, `rotate`, `group`, `keep` and `matches` may be left out.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from hashlib import sha256
from typing import Any, cast, get_args

from casewright.cutting.json_reader import JsonReader
from casewright.cutting.problem import (
    MOST_NESTED,
    Defect,
    Fault,
    Keep,
    Match,
    MatchWay,
    PartDemand,
    Problem,
    ProblemError,
    StockItem,
    Trim,
)  # fmt: skip

__all__ = ["fingerprint", "read_problem", "write_problem"]

_STOCK = ("id", "l", "w", "count", "price", "trim", "defects")
_PART = ("id", "l", "w", "count", "rotate", "group")
_EDGES = ("left", "right", "bottom", "top")


class _Reader(JsonReader):
    """Reads problems."""

    def stock(self, row: Mapping[str, Any], where: str) -> StockItem:
        self.known(row, where, _STOCK)
        count = None if row.get("count") is None else self.whole(row, where, "count", None)
        spots = {"defects": [], **row}
        return StockItem(
            self.text(row, where, "id"), self.whole(row, where, "l", None),
            self.whole(row, where, "w", None), count, self.whole(row, where, "price", 1),
            self.trim(row.get("trim", 0), where), self.rows(spots, where, "defects", self.defect),
        )  # fmt: skip

    def trim(self, value: object, where: str) -> Trim:
        if type(value) is int:
            return Trim(value, value, value, value)
        if isinstance(value, Mapping):
            at = f"{where}.trim"
            self.known(value, at, _EDGES)
            return Trim(*(self.whole(value, at, edge, 0) for edge in _EDGES))
        self.fault(where, "trim", value, "a whole number or an object of edges")
        return Trim()

    def defect(self, row: Mapping[str, Any], where: str) -> Defect:
        fields = ("x", "y", "l", "w")
        self.known(row, where, fields)
        return Defect(*(self.whole(row, where, field, None) for field in fields))

    def part(self, row: Mapping[str, Any], where: str) -> PartDemand:
        self.known(row, where, _PART)
        rotate, group = row.get("rotate", False), row.get("group")
        if not isinstance(rotate, bool):
            self.fault(where, "rotate", rotate, "true or false")
        if not (group is None or isinstance(group, str)):
            self.fault(where, "group", group, "a text or null")
        return PartDemand(
            self.text(row, where, "id"), self.whole(row, where, "l", None),
            self.whole(row, where, "w", None), self.whole(row, where, "count", 1),
            rotate is True, group if isinstance(group, str) else None,
        )  # fmt: skip

    def keep(self, row: Mapping[str, Any], where: str) -> Keep:
        self.known(row, where, ("long", "short"))
        return Keep(self.whole(row, where, "long", None), self.whole(row, where, "short", None))

    def match(self, row: Mapping[str, Any], where: str) -> Match:
        self.known(row, where, ("id", "way", "of"))
        return self.joined(row, where, self.text(row, where, "id"), 1)

    def joined(self, row: Mapping[str, Any], where: str, name: str, depth: int) -> Match:
        way, of = row.get("way"), row.get("of")
        if way not in get_args(MatchWay):
            self.fault(where, "way", way, f"one of {', '.join(get_args(MatchWay))}")
            way = "across"
        if not isinstance(of, list):
            self.fault(where, "of", of, "a list of parts")
            of = []
        found: list[str | Match] = []
        for index, one in enumerate(of):
            at = f"{where}.of[{index}]"
            if isinstance(one, str):
                found.append(one)
            elif isinstance(one, Mapping) and depth <= MOST_NESTED:
                self.known(one, at, ("way", "of"))
                found.append(self.joined(one, at, "", depth + 1))
            else:
                want = f"the id of a part, or a match, at most {MOST_NESTED} deep"
                self.fault(at, "entry", one, want)
        return Match(name, cast("MatchWay", way), tuple(found))

    def stages(self, data: Mapping[str, Any]) -> int | None:
        found = data.get("stages", 3)
        if found in ("free", None):
            return None
        if isinstance(found, str):
            self.fault("problem", "stages", found, '2, 3, more, or "free"')
            return 3
        return self.whole(data, "problem", "stages", 3)


def read_problem(data: object, also: tuple[str, ...] = ()) -> Problem:
    """A problem from parsed JSON.

    Parameters
    ----------
    also
        Further keys that may stand in it, for others to read.

    Raises
    ------
    ProblemError
        With everything that is wrong, each fault with its place: 'parts[3]', 'l'.
    """
    if not isinstance(data, Mapping):
        raise ProblemError([Fault("problem", "document", type(data).__name__, "an object")])
    reader = _Reader()
    known = (
        "schema",
        "job",
        "fingerprint",
        "unit",
        "kerf",
        "stages",
        "stock",
        "parts",
        "keep",
        "matches",
    )
    reader.known(data, "problem", (*known, *also))
    unit = reader.text(data, "problem", "unit")
    kerf = reader.whole(data, "problem", "kerf", None)
    stages = reader.stages(data)
    stock = reader.rows(data, "problem", "stock", reader.stock)
    parts = reader.rows(data, "problem", "parts", reader.part)
    keep = reader.rows({"keep": [], **data}, "problem", "keep", reader.keep)
    matches = reader.rows({"matches": [], **data}, "problem", "matches", reader.match)
    if reader.faults:
        raise ProblemError(reader.faults)
    return Problem(unit, kerf, stages, stock, parts, keep, matches)


def write_problem(problem: Problem) -> dict[str, Any]:
    """The problem as JSON would hold it."""
    stock = [
        {
            "id": item.id, "l": item.length, "w": item.width, "count": item.count,
            "price": item.price, "trim": {edge: getattr(item.trim, edge) for edge in _EDGES},
            "defects": [
                {"x": d.x, "y": d.y, "l": d.length, "w": d.width} for d in item.defects
            ],
        }
        for item in problem.stock
    ]  # fmt: skip
    parts = [
        {
            "id": part.id, "l": part.length, "w": part.width, "count": part.count,
            "rotate": part.rotate, "group": part.group,
        }
        for part in problem.parts
    ]  # fmt: skip
    found: dict[str, Any] = {
        "unit": problem.unit,
        "kerf": problem.kerf,
        "stages": "free" if problem.stages is None else problem.stages,
        "stock": stock,
        "parts": parts,
        "keep": [{"long": size.long, "short": size.short} for size in problem.keep],
    }
    if problem.matches:
        found["matches"] = [{"id": match.id, **_joined(match)} for match in problem.matches]
    return found


def _joined(match: Match) -> dict[str, Any]:
    of = [one if isinstance(one, str) else _joined(one) for one in match.of]
    return {"way": match.way, "of": of}


def fingerprint(problem: Problem) -> str:
    """A short name for everything in the problem: equal problems, and only they, share it."""
    text = json.dumps(write_problem(problem), sort_keys=True, separators=(",", ":"))
    return sha256(text.encode()).hexdigest()[:16]
