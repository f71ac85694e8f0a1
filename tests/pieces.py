"""Single parts and cuts made by hand, for tests of what works on parts alone."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from casewright.casework.features import Bores, Cut, Setup
from casewright.casework.parts import Part, PlacedAt, Size
from casewright.dims import Dim
from casewright.geometry import Orientation

SETUP = Setup("router")


def dim(value: int | str | Fraction) -> Dim:
    """A bare length [mm]."""
    return Dim("", (), Fraction(value))


def cut(**numbers: Any) -> Cut:
    """A dado across face A, right through, unless told otherwise."""
    values: dict[str, Any] = {
        "path": "board.dado", "kind": "dado", "face": "A", "runs": "w", "datum": "l0", "at": 20,
        "width": 10, "depth": 5, "start": None, "end": None, "asked_by": "", "setup": SETUP,
    }  # fmt: skip
    values.update(numbers)
    for name in ("at", "width", "depth", "start", "end", "radius"):
        if isinstance(values.get(name), int | Fraction):
            values[name] = dim(values[name])
    return Cut(**values)


def bores(*places: tuple[int | Fraction, int | Fraction], **numbers: Any) -> Bores:
    """Blind holes in face A, 5 mm wide and 10 deep, unless told otherwise."""
    values: dict[str, Any] = {
        "path": "board.holes", "kind": "shelf pins", "face": "A", "datum_l": "l0",
        "datum_w": "w0", "diameter": 5, "depth": 10, "asked_by": "", "setup": SETUP,
    }  # fmt: skip
    values.update(numbers)
    for name in ("diameter", "depth"):
        if isinstance(values[name], int | Fraction):
            values[name] = dim(values[name])
    return Bores(places=tuple((dim(a), dim(b)) for a, b in places), **values)


def board(length: int, width: int, thickness: int, *features: Cut | Bores, **changes: Any) -> Part:
    """A board lying at the origin, length to the right, width out, thickness up."""
    size = Size(dim(length), dim(width), dim(thickness))
    values: dict[str, Any] = {
        "path": "board", "mark": "1", "case": "case", "role": "board", "title": "board",
        "hand": None, "stock": "ply", "finished": size, "blank": size, "grain": True,
        "ends": ("left", "right", "front", "back"), "edges": (), "shows": (),
        "features": features, "placed": placed("+x -z +y"),
    }  # fmt: skip
    values.update(changes)
    return Part(**values)


def placed(lies: str, x: int = 0, y: int = 0, z: int = 0) -> PlacedAt:
    """Where a part lies: '+x -z +y' and its corner [mm]."""
    return PlacedAt(dim(x), dim(y), dim(z), Orientation.of(lies))
