"""Openings of a face frame, and what each one's fronts share out of it."""

from __future__ import annotations

from casewright.casework.box import Box
from casewright.casework.carcase import Opening
from casewright.casework.face_frames.members import FrameParts, rows_of, upper_edge
from casewright.casework.maker import Maker
from casewright.dims import Dim

__all__ = ["frame_openings"]


def frame_openings(maker: Maker, box: Box, members: FrameParts) -> tuple[Opening, ...]:
    """One opening for each row, between its rails, from the bottom up.

    Faces meet on the middle of the rails between them.
    """
    half = maker.style("gap") / 2
    shelves = tuple(b.underside for b in box.boards if b.role == "fixed shelf")
    asked = rows_of(maker.spec)
    last = len(asked) - 1
    lines = [maker.place.let(f"row_{rail.name}_line", rail.low + rail.outline.width / 2)
             for rail in members.rails[1:-1]]  # fmt: skip
    found = []
    for number, (name, kind, front) in enumerate(asked):
        above, below = members.rails[number], members.rails[number + 1]
        y0, y1 = upper_edge(below), above.low
        found.append(
            Opening(
                name, y0, y1,
                face_y0=members.low if number == last else lines[number],
                face_y1=upper_edge(above) if number == 0 else lines[number - 1],
                bottom=maker.style("bottom_reveal") if number == last else half,
                top=_top(maker) if number == 0 else half,
                shelves=tuple(s for s in shelves if y0.value < s.value < y1.value),
                row=kind, front=front,
            )
        )  # fmt: skip
    return tuple(reversed(found))


def _top(maker: Maker) -> Dim:
    return maker.style("base_top_reveal" if maker.spec.has_toe else "top_reveal")
