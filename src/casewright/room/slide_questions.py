"""Questions about slides whose sheet nobody has typed: boxes are sized by it, sides bored."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from casewright.findings import Question
from casewright.hardware import SlideSheet
from casewright.room.model import Room

__all__ = ["open_slides", "slide_questions"]

_KEYS = {
    "slide": "air, lengths, line and holes",
    "undermount": "air, lengths, line, holes, recess, notch_width, notch_height, hook, hook_in "
    "and hook_up",
}


def _sheets(room: Room) -> Iterator[tuple[str, SlideSheet]]:
    hardware = room.spec.hardware
    for name, sheet in (("slide", hardware.slide), ("undermount", hardware.undermount)):
        if sheet.placeholder:
            yield name, sheet


def open_slides(room: Room) -> dict[str, str]:
    """Numbers in use of sheets that are not at hand, each with the path of its sheet."""
    names = tuple(f"hardware.{name}." for name, _ in _sheets(room))
    return {path: path.rpartition(".")[0] for path in room.chain.nodes if path.startswith(names)}


def slide_questions(room: Room, waiting: Mapping[str, Sequence[str]]) -> Iterator[Question]:
    """One for each kind of slides that drawers need.

    Parameters
    ----------
    waiting
        Parts cut to a sheet, by its path.
    """
    for name, sheet in _sheets(room):
        path = f"hardware.{name}"
        bored = [
            part.path
            for case in room.cases
            for drawer in case.drawers
            if case.spec.drawer is not None
            and (case.spec.drawer.slides == "undermount") == (name == "undermount")
            for part in case.parts
            if any(feature.path in drawer.bores for feature in part.features)
        ]
        parts = tuple(dict.fromkeys((*bored, *waiting.get(path, ()))))
        if parts:
            yield Question(
                path=path,
                needs=f"the data sheet of the {sheet.title}",
                because="the boxes of the drawers are cut to it and the sides are bored to it; "
                "the numbers here are only usual ones",
                waiting=parts,
                how=f"under [{path}] write {_KEYS[name]}, as the sheet in its box gives them",
            )
