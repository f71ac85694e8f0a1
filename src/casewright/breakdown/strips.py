"""Strips of thin stock: crosscut from lengths that are ripped and resawn out of thicker boards."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from casewright.breakdown.pieces import Piece, part_piece
from casewright.breakdown.plan import Milling, StockPlan
from casewright.breakdown.solving import Desk, Offered, saw_kerf, solve_pieces
from casewright.casework.parts import Part
from casewright.dims import Way, round_to, shop_text
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
    end = room.spec.style["strip_end"].value
    by_width: dict[Fraction, list[Piece]] = {}
    for part in parts:
        piece = part_piece(part, longer=end)
        by_width.setdefault(piece.width, []).append(piece)
    for width, pieces in sorted(by_width.items(), reverse=True):
        spares = _spares(strip, width, pieces, room)
        yield _plan(desk, strip, source, (*pieces, *spares))


def _spares(strip: Board, width: Fraction, pieces: Sequence[Piece], room: Room) -> Iterator[Piece]:
    longest = max(piece.length for piece in pieces)
    wide = shop_text(width, room.spec.unit)
    for number in range(1, -(-len(pieces) // SPARE_ONE_IN) + 1):
        yield Piece(
            id=f"spare.{strip.key}.{_slug(wide)}.{number}",
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
        Offered(f"{source.key} {shop_text(length, room.spec.unit)}", length, width)
        for length in _lengths(room, source)
    )
    solved = solve_pieces(desk, strip, offered, pieces, lengths_only=True)
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


def _lengths(room: Room, source: Board) -> tuple[Fraction, ...]:
    """Lengths strips may be milled in: whole boards and even shares of them, longest first.

    Nothing shorter than style 'shortest_milled' goes through a planer.
    """
    kerf = saw_kerf(room.spec.shop)
    least = room.spec.style["shortest_milled"].value
    grid = room.spec.style["cut_step"].value or Fraction(1, 10)
    shares = {
        round_to((long.value - (share - 1) * kerf) / share, grid, Way.DOWN)[0]
        if share > 1
        else long.value
        for long in source.lengths
        for share in range(1, _MOST_SHARES + 1)
    }
    whole = {long.value for long in source.lengths}
    return tuple(sorted((s for s in shares if s in whole or s >= least), reverse=True))


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
    return Milling(source.key, source.thickness.value, strip.thickness.value, width, yields, words)


def strip_blanks(room: Room, plans: Iterable[StockPlan]) -> Iterator[Piece]:
    """The rips that strip plans need out of their source boards."""
    for plan in plans:
        if plan.milling is None:
            continue
        wide = _slug(shop_text(plan.milling.width, room.spec.unit))
        sizes = {item.id: plan.length(item.length) for item in plan.problem.stock}
        for item, strips in plan.counts.items():
            for number in range(1, -(-strips // plan.milling.yields) + 1):
                yield Piece(
                    id=f"strips.{plan.stock}.{wide}.{_slug(item)}.{number}",
                    kind="strip blank",
                    title=_blank_title(min(plan.milling.yields, strips)),
                    mark="",
                    length=sizes[item],
                    width=plan.milling.width,
                    serves=tuple(p.id for p in plan.pieces.values() if p.kind == "part"),
                )


def _slug(text: str) -> str:
    """A size as part of a path: '2-1_2'."""
    return text.replace(" ", "-").replace("/", "_")


def _blank_title(strips: int) -> str:
    return "blank for one strip" if strips == 1 else f"blank for {strips} strips"
