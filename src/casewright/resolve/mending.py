"""What mending a fit takes that is found out only when the pieces meet."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from casewright.casework.parts import Part
from casewright.dims import Dim, Fit
from casewright.resolve.moves import sides_of
from casewright.resolve.slopes import Slopes
from casewright.room.model import Room

__all__ = ["fed_fits", "following_parts", "mending_minutes", "waiting_parts"]

_PIECES = ("back", "shelf", "filler")
"""Roles of pieces that have minutes of their own."""


def mending_minutes(room: Room, fit: Fit) -> int:
    """About how long it takes to put a missed fit right [min]."""
    found: int = getattr(room.spec.shop.mending, _kind(room, fit.owner))
    return found


def waiting_parts(room: Room, owner: str) -> tuple[Part, ...]:
    """The pieces of what a fit belongs to that are still to be cut."""
    inside = f"{owner}."
    return tuple(
        part
        for part in room.parts
        if part.state == "planned"
        and (owner in (part.path, part.front, part.case) or part.path.startswith(inside))
    )


def following_parts(room: Room, read: Iterable[Dim]) -> Mapping[str, tuple[str, ...]]:
    """By path of each number that is read, the pieces still to be cut whose size follows it.

    A piece follows the nearest ones that it rests on, in the order of the parts.
    """
    slopes = Slopes(read)
    found: dict[str, list[str]] = {}
    for part in room.parts:
        if part.state == "planned":
            paths = {path: None for _, dim in sides_of(part) for path in slopes.of(dim)}
            for path in paths:
                found.setdefault(path, []).append(part.path)
    return {path: tuple(parts) for path, parts in found.items()}


def fed_fits(room: Room, read: Iterable[Dim]) -> Mapping[str, tuple[Fit, ...]]:
    """By path of each number that is read, the fits that rest on it and whose owner is not cut."""
    slopes = Slopes(read)
    found: dict[str, list[Fit]] = {}
    for fit in room.chain.fits.values():
        if not fit.holds:
            continue
        paths = slopes.of(fit.gap)
        if paths and waiting_parts(room, fit.owner):
            for path in paths:
                found.setdefault(path, []).append(fit)
    return {path: tuple(fits) for path, fits in found.items()}


def _kind(room: Room, owner: str) -> str:
    for case in room.cases:
        if owner == case.key:
            return "box"
        if any(_is_in(owner, drawer.path) for drawer in case.drawers):
            return "drawer"
        if any(_is_in(owner, front.path) for front in case.fronts):
            return "front"
    part = next((part for part in room.parts if part.path == owner), None)
    return part.role if part is not None and part.role in _PIECES else "piece"


def _is_in(owner: str, path: str) -> bool:
    return owner == path or owner.startswith(f"{path}.")
