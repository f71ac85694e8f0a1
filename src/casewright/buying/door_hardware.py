"""Hinges, plates, pulls, bumpers, retainers: counted on the doors of the model."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.buying.line import BuyLine
from casewright.buying.numbers import sums
from casewright.buying.pieces import pieces
from casewright.buying.spares import (
    BUMPERS_A_LEAF,
    FIXED_SPARES,
    HINGES,
    PULLS,
    RETAINERS,
)
from casewright.buying.words import counted
from casewright.casework.cases import Door, Front
from casewright.casework.features import Bores
from casewright.dims import Dim, Measure, shop_text, tell
from casewright.findings import Reckoning
from casewright.room.model import Room

__all__ = ["door_hardware"]


def door_hardware(room: Room) -> Iterator[BuyLine]:
    """Everything that is screwed, stuck or pressed onto doors."""
    doors = [door for case in room.cases for door in case.doors]
    fronts = [front for case in room.cases for front in case.fronts]
    if not fronts:
        return
    if doors:
        yield from _hinges(room, doors)
        yield from _plates(room, doors)
    yield from _pulls(room)
    leaves = tuple(front.path for case in room.boxes for front in case.fronts)
    bumpers = BUMPERS_A_LEAF * len(leaves)
    yield pieces(
        "door hardware", "clear stick-on bumper", "bumper", bumpers, FIXED_SPARES,
        paths=leaves, why=f"{BUMPERS_A_LEAF} a leaf x {counted(len(leaves), 'leaf', 'leaves')}",
    )  # fmt: skip
    yield from _retainers(room)


def _sheet_note(placeholder: bool) -> str:
    return "type its data sheet into the job before boring" if placeholder else ""


def _hinges(room: Room, fronts: list[Door]) -> Iterator[BuyLine]:
    sheet = room.spec.hardware.hinge
    arms: dict[Fraction, list[Door]] = {}
    for front in fronts:
        crank = Fraction(0) if front.crank is None else front.crank.value
        arms.setdefault(crank, []).extend([front] if front.hinges else [])
    for crank, hung in sorted(arms.items()):
        paths = tuple(hinge.path for front in hung for hinge in front.hinges)
        own = sums(room, "hinge_crank", shop_text(crank, "mm"))
        bent = next((front.crank for front in hung if front.crank is not None), None)
        arm = tell(", with the arm cranked {}", _metric(own, bent)) if crank and bent else ""
        key = f"hinge_crank_{shop_text(crank, 'mm')}" if crank else "hinge"
        yield pieces(
            "door hardware", sheet.title + arm, key, len(paths), HINGES, paths=paths,
            why=f"{len(paths)} on {counted(len(hung), 'door')}",
            note=_sheet_note(sheet.placeholder), numbers=own.numbers,
        )  # fmt: skip


def _metric(own: Reckoning, dim: Dim) -> Measure:
    """A size of hinges: told in millimetres wherever they are sold."""
    return own.said(dim, f"{shop_text(dim.value, 'mm')} mm", "size")


def _plates(room: Room, fronts: list[Door]) -> Iterator[BuyLine]:
    heights: dict[Fraction, list[str]] = {}
    dims: dict[Fraction, Dim] = {}
    for front in fronts:
        dims.setdefault(front.plate_height.value, front.plate_height)
        heights.setdefault(front.plate_height.value, []).extend(h.path for h in front.hinges)
    for height, paths in sorted(heights.items()):
        own = sums(room, "hinge_plate", shop_text(height, "mm"))
        if paths:
            what = tell("hinge plate, height {}", _metric(own, dims[height]))
            yield pieces(
                "door hardware", what, "hinge_plate", len(paths), HINGES, paths=tuple(paths),
                why=f"one for each of {counted(len(paths), 'hinge')}", numbers=own.numbers,
            )  # fmt: skip


def _pulls(room: Room) -> Iterator[BuyLine]:
    """Counted on their holes: a wide drawer has two."""
    sheet = room.spec.hardware.pull
    holes = 2 if sheet.centres.value else 1
    bored = {
        feature.path: len(feature.places) // holes
        for case in room.cases
        for part in case.parts
        for feature in part.features
        if isinstance(feature, Bores) and feature.kind == "pull"
    }
    found = {
        front: bored.get(front.pull, 0)
        for case in room.cases
        for front in case.fronts
        if front.pull
    }
    need = sum(found.values())
    if need:
        twice = sum(count > 1 for count in found.values())
        more = f", two on {twice} of them" if twice else ""
        yield pieces(
            "door hardware", sheet.title, "pull", need, PULLS,
            paths=tuple(front.pull for front in found),
            why=f"one on each of {_fronts_of(list(found))}{more}",
            note=_sheet_note(sheet.placeholder),
        )  # fmt: skip


def _fronts_of(fronts: list[Front]) -> str:
    """'4 doors and 3 drawers'."""
    doors = sum(isinstance(front, Door) for front in fronts)
    words = [counted(doors, "door")] if doors else []
    panels = sum(front.opening == "panel" for front in fronts)
    drawers = len(fronts) - doors - panels
    words += [counted(drawers, "drawer")] if drawers else []
    words += [counted(panels, "panel")] if panels else []
    return ", ".join(words[:-1]) + (" and " if words[1:] else "") + "".join(words[-1:])


def _retainers(room: Room) -> Iterator[BuyLine]:
    held: dict[str, int] = {}
    for case in room.cases:
        for joint in case.joints:
            for fastening in joint.fastenings:
                if fastening.kind == "retainer":
                    pane = fastening.through[0]
                    held[pane] = held.get(pane, 0) + fastening.count
    if held:
        count = sum(held.values())
        yield pieces(
            "door hardware", "glass retainer with its screw", "retainer", count, RETAINERS,
            paths=tuple(held), why=f"{count} round {counted(len(held), 'pane')}",
        )  # fmt: skip
