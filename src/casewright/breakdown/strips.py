"""Strips of thin stock: crosscut from lengths that are ripped and resawn out of thicker boards."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from casewright.breakdown.pieces import Piece, part_piece
from casewright.breakdown.plan import Milling, StockPlan
from casewright.breakdown.solving import Desk, Offered, saw_kerf, solve_pieces
from casewright.casework.parts import Part
from casewright.dims import shop_text
from casewright.room.model import Room
from casewright.stock import Board, strips_in_thickness

__all__ = ["SPARE_ONE_IN", "plan_strips", "strip_blanks"]

SPARE_ONE_IN = 8
"""One spare strip for so many, and at least one (house rule)."""


def plan_strips(
    desk: Desk, strip: Board, source: Board, parts: Sequence[Part]
) -> Iterator[StockPlan]:
    """Crosscut plans of the strips of a thin stock, one for each width, widest first.

    Strips are cut rough: longer by style 'strip_end', and sawn to length when they are fitted.
    """
    room = desk.room
    end = room.spec.style["strip_end"].value
    by_width: dict[Fraction, list[Piece]] = {}
    for part in parts:
        piece = part_piece(part, longer=end)
        by_width.setdefault(piece.width, []).append(piece)
    for width, pieces in sorted(by_width.items(), reverse=True):
        spares = _spares(strip, width, pieces, room)
        yield _plan(desk, strip, source, (*pieces, *spares))


def _spares(
    strip: Board, width: Fraction, pieces: Sequence[Piece], room: Room
) -> Iterator[Piece]:
    longest = max(piece.length for piece in pieces)
    wide = shop_text(width, room.spec.unit)
    for number in range(1, -(-len(pieces) // SPARE_ONE_IN) + 1):
        yield Piece(
            id=f"spare.{strip.key}.{wide.replace(' ', '-').replace('/', '_')}.{number}",
            kind="spare",
            title=f"spare strip {wide} wide",
            mark="",
            length=longest,
            width=width,
            rough=True,
            serves=tuple(piece.id for piece in pieces),
        )


def _plan(desk: Desk, strip: Board, source: Board, pieces: Sequence[Piece]) -> StockPlan:
    room, width = desk.room, pieces[0].width
    offered = tuple(
        Offered(f"{source.key} {shop_text(long.value, room.spec.unit)}", long.value, width)
        for long in source.lengths
    )
    solved = solve_pieces(desk, strip, offered, pieces)
    return StockPlan(
        stock=strip.key,
        kind="strips",
        unit=solved.unit,
        problem=solved.problem,
        solution=solved.solution,
        work=solved.work,
        pieces={piece.id: piece for piece in pieces},
        milling=_milling(room, strip, source, width),
    )


def _milling(room: Room, strip: Board, source: Board, width: Fraction) -> Milling:
    unit = room.spec.unit
    yields = strips_in_thickness(
        source.thickness.value,
        strip.thickness.value,
        waste=room.spec.style["strip_waste"].value,
        kerf=saw_kerf(room.spec.shop),
    )
    wide, thick = (
        shop_text(size, unit, with_unit=True) for size in (width, strip.thickness.value)
    )
    words = (
        f"Rip {source.title} to {wide}; resaw each rip on edge into {yields}; plane to {thick}; "
        "then crosscut. Test the planer on a spare."
    )
    if yields == 1:
        words = f"Rip {source.title} to {wide}; plane to {thick}; then crosscut."
    return Milling(
        source.key, source.thickness.value, strip.thickness.value, width, yields, words
    )


def strip_blanks(plans: Iterable[StockPlan]) -> Iterator[Piece]:
    """The rips that strip plans need out of their source boards."""
    for plan in plans:
        if plan.milling is None:
            continue
        sizes = {item.id: plan.length(item.length) for item in plan.problem.stock}
        for item, strips in plan.counts.items():
            for number in range(1, -(-strips // plan.milling.yields) + 1):
                yield Piece(
                    id=f"strips.{plan.stock}.{plan.milling.width}.{item}.{number}",
                    kind="strip blank",
                    title=f"blank for {min(plan.milling.yields, strips)} strips",
                    mark="",
                    length=sizes[item],
                    width=plan.milling.width,
                    serves=tuple(p.id for p in plan.pieces.values() if p.kind == "part"),
                )
