"""Iron-on edge band: the visible edges, the waste, and a tail for each piece."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import NamedTuple

from casewright.buying.line import BuyLine, packed
from casewright.buying.numbers import long, sum_of, sums
from casewright.buying.spares import BAND_WASTE
from casewright.buying.words import counted, priced
from casewright.casework.parts import EdgeTreatment, Part
from casewright.dims import Dim, tell, total
from casewright.room.model import Room
from casewright.stock import EdgeBand

__all__ = ["band_length", "edge_length", "edges", "rolls"]


class _Edge(NamedTuple):
    """A banded edge: whose it is, its part's path, its length."""

    of: str
    path: str
    long: Dim


def edge_length(part: Part, edge: EdgeTreatment) -> Dim:
    """Length of a treated edge as finished [mm]."""
    size = part.finished
    return size.width if edge.edge in ("l0", "l1") else size.length


def band_length(visible: Fraction, pieces: int, tail: Fraction) -> tuple[Fraction, Fraction]:
    """What is used and what is lost when edges are banded.

    Parameters
    ----------
    visible
        Sum of the banded edges [mm].
    pieces
        Number of edges [-].
    tail
        Extra for each [mm].

    Returns
    -------
    Length on the edges, and waste with tails [mm].
    """
    return visible, visible * (BAND_WASTE - 1) + pieces * tail


def rolls(pieces: Iterable[Fraction], roll: Fraction) -> tuple[int, int]:
    """Rolls that pieces come off in one length each, and how many are longer than a roll.

    The longest goes first, off the first roll that still holds it (first fit decreasing).

    Parameters
    ----------
    pieces
        Edges with their tails [mm].
    roll
        Length of a roll [mm].
    """
    left: list[Fraction] = []
    joined = 0
    for piece in sorted(pieces, reverse=True):
        rest = piece
        if piece > roll:
            joined += 1
            whole, rest = divmod(piece, roll)
            left += [Fraction(0)] * int(whole)
        place = next((n for n, free in enumerate(left) if free >= rest), None)
        if place is None:
            left.append(roll - rest)
        else:
            left[place] -= rest
    return len(left), joined


def edges(room: Room) -> Iterator[BuyLine]:
    """Edge band by stock, in whole rolls."""
    found: dict[str, list[_Edge]] = {}
    for part in room.parts:
        for edge in part.edges:
            if edge.kind == "band":
                banded = _Edge(part.case or part.path, part.path, edge_length(part, edge))
                found.setdefault(edge.stock, []).append(banded)
    for stock, slant in _slants(room):
        found.setdefault(stock, []).append(slant)
    for key, pieces in found.items():
        goods = room.spec.stock[key]
        if isinstance(goods, EdgeBand):
            yield _band(room, goods, pieces)


def _band(room: Room, goods: EdgeBand, pieces: list[_Edge]) -> BuyLine:
    own = sums(room, "band", goods.key)
    by_case: dict[str, list[Dim]] = {}
    for piece in pieces:
        by_case.setdefault(piece.of, []).append(piece.long)
    edged = total(*(own.let(of, sum_of(longs)) for of, longs in by_case.items()))
    tail = own.given("style.band_tail", room.spec.style["band_tail"])
    need, spare = band_length(edged.value, len(pieces), tail.value)
    roll = goods.roll.value
    count, overlong = rolls([piece.long.value + tail.value for piece in pieces], roll)
    visible = own.let("edges", edged)
    whole = own.let("with_tails", visible * BAND_WASTE + tail * len(pieces))
    why = tell(
        "{} of edges x {} + {} of {} = {}",
        long(own, visible, "edges"), f"{float(BAND_WASTE):.2f}", counted(len(pieces), "tail"),
        own.length(tail), long(own, whole, "with_tails"),
    )  # fmt: skip
    if count > packed(need, spare, roll):
        why += f"; {count} rolls, so that each edge is banded in one length"
        spare = count * roll - need
    if overlong:
        why += f"; {counted(overlong, 'edge')} longer than a roll: joined where it shows least"
    unit = tell("roll of {}", long(own, own.given(f"stock.{goods.key}.roll", goods.roll), "roll"))
    return BuyLine(
        "edges", goods.title, goods.key, "length", need, spare, roll, packed(need, spare, roll),
        unit, why, tuple(dict.fromkeys(piece.path for piece in pieces)),
        note=priced(goods.price, packed(need, spare, roll)), numbers=own.numbers,
    )  # fmt: skip


def _slants(room: Room) -> Iterator[tuple[str, _Edge]]:
    """Banded edges that no plane of a part names: the slants of clipped boards that show [mm]."""
    for case in room.cases:
        if case.spec.edge != "band":
            continue
        for part in case.parts:
            hidden = part.role == "corner block" or (case.spec.framed and part.role != "shelf")
            for feature in () if hidden else part.features:
                if feature.kind == "clip" and feature.setup.check is not None:
                    yield case.spec.band_stock, _Edge(case.key, part.path, feature.setup.check)
