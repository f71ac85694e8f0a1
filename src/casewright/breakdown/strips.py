"""Strips of thin stock: crosscut from lengths that are ripped and resawn out of thicker boards."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from casewright.breakdown.boards import usable_lengths
from casewright.breakdown.desk import Desk
from casewright.breakdown.pieces import Piece, part_piece
from casewright.breakdown.plan import Milling, StockPlan
from casewright.breakdown.solving import Offered, draft
from casewright.casework.parts import Part
from casewright.cutting.settling import settle
from casewright.dims import Dim, Way, as_said, shop_text, tell
from casewright.room.model import Room
from casewright.stock import Board, strips_in_thickness

__all__ = ["SPARE_ONE_IN", "plan_strips", "strip_blanks"]

SPARE_ONE_IN = 8
"""One spare strip for so many, and at least one (house rule)."""

_MOST_SHARES = 4


def plan_strips(
    desk: Desk, strip: Board, source: Board, parts: Sequence[Part]
) -> Iterator[StockPlan]:
    """Crosscut plans of the strips of a thin stock, one for each width, widest first.

    Strips are cut rough: longer by style 'strip_end', and sawn to length when they are fitted.
    """
    room = desk.room
    end = desk.style("strip_end")
    by_width: dict[Fraction, list[Piece]] = {}
    for part in parts:
        piece = part_piece(part, longer=end)
        by_width.setdefault(piece.width, []).append(piece)
    for number, (width, pieces) in enumerate(sorted(by_width.items(), reverse=True), start=1):
        spares = _spares(strip, width, pieces, room)
        yield _plan(desk, strip, source, (*pieces, *spares), f"plan.{strip.key}.width_{number}")


def _spares(strip: Board, width: Fraction, pieces: Sequence[Piece], room: Room) -> Iterator[Piece]:
    longest = max(pieces, key=lambda piece: piece.length).long
    wide = shop_text(width, room.spec.unit)
    told = as_said(pieces[0].wide, room.spec.unit, wide)
    for number in range(1, -(-len(pieces) // SPARE_ONE_IN) + 1):
        yield Piece(
            id=f"spare.{strip.key}.{_slug(wide)}.{number}",
            kind="spare",
            title=tell("spare strip {} wide", told),
            mark="",
            long=longest,
            wide=pieces[0].wide,
            rough=True,
            serves=tuple(piece.id for piece in pieces),
        )


def _plan(
    desk: Desk, strip: Board, source: Board, pieces: Sequence[Piece], path: str
) -> StockPlan:
    room = desk.room
    offered = tuple(
        Offered(f"{source.key} {shop_text(length.value, room.spec.unit)}", length, pieces[0].wide)
        for length in _lengths(desk, source)
    )
    drafted = draft(desk, strip, offered, pieces, lengths_only=True)
    done = settle((drafted.task,))
    return replace(
        StockPlan.of(drafted.layout(done.solution), done.sawn, path, strip.key, "strips", pieces),
        milling=_milling(desk, strip, source, pieces[0].wide),
    )


def _lengths(desk: Desk, source: Board) -> tuple[Dim, ...]:
    """Lengths strips may be milled in: boards between their ends and even shares, longest first.

    Nothing shorter than style 'shortest_milled' goes through a planer.
    """
    least = desk.room.spec.style["shortest_milled"].value
    whole = usable_lengths(desk, source)
    found = {length.value: length for length in whole}
    for length in whole:
        for share in range(2, _MOST_SHARES + 1):
            part = _share(desk, length, share)
            if part.value >= least:
                found.setdefault(part.value, part)
    return tuple(found[value] for value in sorted(found, reverse=True))


def _share(desk: Desk, length: Dim, share: int) -> Dim:
    """An even share of a board, on the grid that parts are cut to."""
    place, _, name = length.path.rpartition(".")
    path = f"{name}_in_{share}"
    known = desk.chain.nodes.get(f"{place}.{path}")
    if known is not None:
        return known
    grid = desk.room.spec.style["cut_step"].value or Fraction(1, 10)
    even = (length - desk.kerf() * (share - 1)) / share
    return desk.chain.place(place).rounded(path, even, grid, Way.DOWN)[0]


def _milling(desk: Desk, strip: Board, source: Board, width: Dim) -> Milling:
    room, unit = desk.room, desk.room.spec.unit
    yields = strips_in_thickness(
        source.thickness.value,
        strip.thickness.value,
        waste=room.spec.style["strip_waste"].value,
        kerf=desk.kerf().value,
    )
    thick = desk.given(f"stock.{strip.key}.thickness", strip.thickness)
    if thick.value != strip.thickness.value:  # read since: it is still planed to what is wanted
        thick = desk.given(f"stock.{strip.key}.planed_thickness", strip.thickness)
    rip = tell("From {}: rip it {} wide; ", source.title, as_said(width, unit))
    plane = tell("plane to {}; then crosscut.", as_said(thick, unit))
    words = rip + plane
    if yields > 1:
        resaw = f"resaw each rip on edge into {yields}; "
        words = rip + resaw + plane + " Test the planer on a spare."
    return Milling(
        source.key, source.thickness.value, strip.thickness.value, width.value, yields, words
    )


def strip_blanks(room: Room, plans: Iterable[StockPlan]) -> Iterator[Piece]:
    """The rips that strip plans need out of their source boards."""
    for plan in plans:
        if plan.milling is None:
            continue
        wide = _slug(shop_text(plan.milling.width, room.spec.unit))
        for item, strips in plan.counts.items():
            for number in range(1, -(-strips // plan.milling.yields) + 1):
                yield Piece(
                    id=f"strips.{plan.stock}.{wide}.{_slug(item)}.{number}",
                    kind="strip blank",
                    title=_blank_title(min(plan.milling.yields, strips)),
                    mark="",
                    long=plan.offered[item].length,
                    wide=plan.offered[item].width,
                    serves=tuple(p.id for p in plan.pieces.values() if p.kind == "part"),
                )


def _slug(text: str) -> str:
    """A size as part of a path: '2-1_2'."""
    return text.replace(" ", "-").replace("/", "_")


def _blank_title(strips: int) -> str:
    return "blank for one strip" if strips == 1 else f"blank for {strips} strips"
