"""Hinges, plates, pulls, bumpers, retainers: counted on the doors of the model."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.buying.line import BuyLine
from casewright.buying.pieces import pieces
from casewright.buying.spares import (
    BUMPERS_A_LEAF,
    FIXED_SPARES,
    HINGES,
    PULLS,
    RETAINERS,
)
from casewright.buying.words import counted
from casewright.casework.cases import Door
from casewright.dims import shop_text
from casewright.room.model import Room

__all__ = ["door_hardware"]


def door_hardware(room: Room) -> Iterator[BuyLine]:
    """Everything that is screwed, stuck or pressed onto doors."""
    fronts = [front for case in room.cases for front in case.doors]
    if not fronts:
        return
    yield from _hinges(room, fronts)
    yield from _plates(room, fronts)
    yield from _pulls(room, fronts)
    leaves = tuple(front.path for front in fronts)
    bumpers = BUMPERS_A_LEAF * len(fronts)
    yield pieces(
        "door hardware", "clear stick-on bumper", "bumper", bumpers, FIXED_SPARES,
        paths=leaves, why=f"{BUMPERS_A_LEAF} a leaf x {counted(len(fronts), 'leaf', 'leaves')}",
    )  # fmt: skip
    yield from _retainers(room)


def _sheet_note(placeholder: bool) -> str:
    return "type its data sheet into the job before boring" if placeholder else ""


def _hinges(room: Room, fronts: list[Door]) -> Iterator[BuyLine]:
    hung = [front for front in fronts if front.hinges]
    paths = tuple(hinge.path for front in hung for hinge in front.hinges)
    sheet = room.spec.hardware.hinge
    yield pieces(
        "door hardware", sheet.title, "hinge", len(paths), HINGES, paths=paths,
        why=f"{len(paths)} on {counted(len(hung), 'door')}", note=_sheet_note(sheet.placeholder),
    )  # fmt: skip


def _plates(room: Room, fronts: list[Door]) -> Iterator[BuyLine]:
    heights: dict[Fraction, list[str]] = {}
    for front in fronts:
        heights.setdefault(front.plate_height.value, []).extend(h.path for h in front.hinges)
    for height, paths in sorted(heights.items()):
        if paths:
            text = shop_text(height, "mm")
            yield pieces(
                "door hardware", f"hinge plate, height {text} mm", "hinge_plate", len(paths),
                HINGES, paths=tuple(paths), why=f"one for each of {counted(len(paths), 'hinge')}",
            )  # fmt: skip


def _pulls(room: Room, fronts: list[Door]) -> Iterator[BuyLine]:
    sheet = room.spec.hardware.pull
    paths = tuple(front.pull for front in fronts if front.pull)
    if paths:
        yield pieces(
            "door hardware", sheet.title, "pull", len(paths), PULLS, paths=paths,
            why=f"one on each of {counted(len(paths), 'door')}",
            note=_sheet_note(sheet.placeholder),
        )  # fmt: skip


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
