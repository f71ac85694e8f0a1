"""Labels to stick on the parts as they come off the saw."""

from __future__ import annotations

from casewright.casework.parts import Part
from casewright.drawing import SignKind
from casewright.outputs.blocks import Label, Labels, LabelSheet
from casewright.outputs.document import Section
from casewright.outputs.inlines import Rich
from casewright.packet.words import plane_word, sizes
from casewright.room.model import Room

__all__ = ["labels_section"]


def labels_section(room: Room, sheet: LabelSheet) -> Section:
    """A label for every piece, in the order of the cut list."""
    titles = {case.key: case.spec.title for case in room.cases}
    titles |= {f"run.{run.spec.key}": run.spec.title for run in room.runs}
    labels = tuple(_label(room, part, titles[part.case]) for part in room.parts)
    return Section("Labels", (Labels(sheet, labels),), "labels", plain=True)


def _label(room: Room, part: Part, case: str) -> Label:
    unit = room.spec.unit
    lines: tuple[Rich, ...] = (case, sizes(part.blank.length, part.blank.width, unit=unit))
    signs: list[SignKind] = []
    if part.hand is not None:
        signs.append(part.hand)
    return Label(
        part.mark, part.title, lines, tuple(signs), toward=plane_word(part, "w0"),
        target=part.path,
    )  # fmt: skip
