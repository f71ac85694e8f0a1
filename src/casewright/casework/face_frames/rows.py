"""Openings of a face frame, and what each one's fronts share out of it."""

from __future__ import annotations

from casewright.casework.box import Board, Box
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
    boards = {board.name: board for board in box.boards}
    asked = rows_of(maker.spec)
    last = len(asked) - 1
    lines = [maker.place.let(f"row_{rail.name}_line", rail.low + rail.outline.width / 2)
             for rail in members.rails[1:-1]]  # fmt: skip
    found = []
    for number, (name, kind, front) in enumerate(asked):
        above, below = members.rails[number], members.rails[number + 1]
        y0, y1 = upper_edge(below), above.low
        row = maker.spec.rows[number] if maker.spec.rows else None
        deck = boards.get(f"row_board.{number + 1}")
        over = boards.get(f"row_board.{number}")
        if row is not None and row.appliance is not None and deck is not None:
            y0 = deck.underside + deck.outline.thickness
        found.append(
            Opening(
                name, y0, y1,
                face_y0=members.low if number == last else lines[number],
                face_y1=upper_edge(above) if number == 0 else lines[number - 1],
                bottom=maker.style("bottom_reveal") if number == last else half,
                top=_top(maker) if number == 0 else half,
                shelves=tuple(s for s in shelves if y0.value < s.value < y1.value),
                row=kind, front=front, appliance=None if row is None else row.appliance,
                hung=_cleats(maker, number, over),
            )
        )  # fmt: skip
    return tuple(reversed(found))


def _cleats(maker: Maker, number: int, over: Board | None) -> Dim | None:
    """Case height that the cleats under a deck reach down to, in the row under it [mm]."""
    if over is None or maker.spec.rows[number - 1].appliance is None:
        return None
    return over.underside - maker.style("deck_cleat")


def _top(maker: Maker) -> Dim:
    return maker.style("base_top_reveal" if maker.spec.has_toe else "top_reveal")
