"""Screws, brads, plugs and shelf pins: counted on holes and joints of the model."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from casewright.buying.line import BuyLine
from casewright.buying.numbers import sums
from casewright.buying.pieces import pieces
from casewright.buying.spares import BRADS, PINS_A_SHELF, PLUGS, SCREWS, SHELF_PINS, Spare
from casewright.buying.words import counted
from casewright.casework.features import Bores
from casewright.casework.parts import Part
from casewright.dims import Dim, shop_text, tell
from casewright.room.model import Room

__all__ = ["fasteners", "plugged_pockets", "pocket_holes"]

_AT_THE_POST = 2
"""Pins more under a shelf across a corner, in its post."""

_KINDS: Mapping[str, tuple[str, Spare]] = {
    "case screw": ("case screw", SCREWS),
    "front screw": ("washer-head screw for drawer fronts", SCREWS),
    "brad": ("brad", BRADS),
    "staple": ("staple", BRADS),
}


def pocket_holes(part: Part) -> int:
    """Pocket holes bored in a part [-]: each takes one screw."""
    return sum(
        len(feature.places)
        for feature in part.features
        if isinstance(feature, Bores) and feature.kind == "pocket"
    )


def plugged_pockets(part: Part) -> int:
    """Pocket holes in a face that shows [-]."""
    shown = {"A": "t1" in part.shows, "B": "t0" in part.shows}
    return sum(
        len(feature.places)
        for feature in part.features
        if isinstance(feature, Bores) and feature.kind == "pocket" and shown[feature.face]
    )


def fasteners(room: Room) -> Iterator[BuyLine]:
    """Pocket screws, other screws, brads, plugs, shelf pins."""
    yield from _pocket_screws(room)
    yield from _driven(room)
    yield from _plugs(room)
    yield from _pins(room)


def _pocket_screws(room: Room) -> Iterator[BuyLine]:
    bored = {part.path: pocket_holes(part) for part in room.parts}
    paths = tuple(path for path, count in bored.items() if count)
    sheet = room.spec.hardware.pocket_screw
    own = sums(room, "pocket_screw", "holes")
    usual = own.given("hardware.pocket_screw.length", sheet.length)
    lengths = dict.fromkeys(paths, usual) | {
        held.through[0]: held.length
        for case in room.cases
        for joint in case.joints
        for held in joint.fastenings
        if held.kind == "pocket screw" and held.length is not None
    }
    sizes = {lengths[path].value: lengths[path] for path in reversed(paths)}
    for size, dim in sorted(sizes.items()):
        bored_for = tuple(path for path in paths if lengths[path].value == size)
        need = sum(bored[path] for path in bored_for)
        yield pieces(
            "fasteners", tell("pocket screw {}", own.length(dim)), "pocket_screw", need, SCREWS,
            paths=bored_for, numbers=own.numbers,
            why=f"one for each of {need} pocket holes in {counted(len(bored_for), 'part')}",
        )  # fmt: skip


def _driven(room: Room) -> Iterator[BuyLine]:
    found: dict[tuple[str, Fraction], dict[str, int]] = {}
    dims: dict[Fraction, Dim] = {}
    for case in room.cases:
        for joint in case.joints:
            for fastening in joint.fastenings:
                if fastening.kind in _KINDS and fastening.length is not None:
                    size = dims.setdefault(fastening.length.value, fastening.length).value
                    kin = found.setdefault((fastening.kind, size), {})
                    kin[joint.path] = kin.get(joint.path, 0) + fastening.count
    between = [screws for island in room.islands for screws in island.screws]
    between += [screws for run in room.runs for trim in run.trims for screws in trim.screws]
    for screws in between:
        size = dims.setdefault(screws.length.value, screws.length).value
        kin = found.setdefault(("case screw", size), {})
        kin[screws.path] = screws.count
    for number, ((kind, size), joints) in enumerate(sorted(found.items()), start=1):
        word, spare = _KINDS[kind]
        own = sums(room, kind, f"size_{number}")
        need, long = sum(joints.values()), own.length(dims[size])
        yield pieces(
            "fasteners", tell("{} {}", word, long), kind.replace(" ", "_"), need, spare,
            paths=tuple(joints), why=f"{need} in {counted(len(joints), 'joint')}",
            numbers=own.numbers,
        )  # fmt: skip


def _plugs(room: Room) -> Iterator[BuyLine]:
    shown = {
        part.path: plugged_pockets(part)
        for case in room.cases
        if case.spec.pockets == "plugged"
        for part in case.parts
    }
    need = sum(shown.values())
    if need:
        yield pieces(
            "fasteners", "wood plug for pocket holes", "plug", need, PLUGS,
            paths=tuple(path for path, count in shown.items() if count),
            why=f"one for each of {need} pockets on faces that show",
        )  # fmt: skip


def _pins_why(by_shelf: dict[str, int]) -> str:
    shelves = counted(len(by_shelf), "shelf", "shelves")
    more = sum(count > PINS_A_SHELF for count in by_shelf.values())
    aside = f", {_AT_THE_POST} more for each of {more} across a corner" if more else ""
    return f"{PINS_A_SHELF} a shelf x {shelves}{aside}"


def _pins(room: Room) -> Iterator[BuyLine]:
    by_shelf = {
        part.path: PINS_A_SHELF + (_AT_THE_POST if case.mouth is not None else 0)
        for case in room.cases for part in case.parts if part.role == "shelf"
    }  # fmt: skip
    shelves = tuple(by_shelf)
    if shelves:
        sheet = room.spec.hardware.pin
        own = sums(room, "pin", "holes")
        hole = own.given("hardware.pin.hole", sheet.hole)
        wide = own.said(hole, f"{shop_text(hole.value, 'mm')} mm", "hole")
        yield pieces(
            "shelf hardware", tell("{}, for {} holes", sheet.title, wide), "pin",
            sum(by_shelf.values()), SHELF_PINS, paths=shelves, why=_pins_why(by_shelf),
            numbers=own.numbers,
        )  # fmt: skip
