"""Iron-on edge band: the visible edges, the waste, and a tail for each piece."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from casewright.buying.line import BuyLine, packed
from casewright.buying.spares import BAND_WASTE
from casewright.buying.words import counted, length, long_length, priced
from casewright.casework.parts import EdgeTreatment, Part
from casewright.room.model import Room
from casewright.stock import EdgeBand

__all__ = ["band_length", "edge_length", "edges", "rolls"]


def edge_length(part: Part, edge: EdgeTreatment) -> Fraction:
    """Length of a treated edge as finished [mm]."""
    size = part.finished
    return size.width.value if edge.edge in ("l0", "l1") else size.length.value


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
    found: dict[str, list[tuple[str, Fraction]]] = {}
    for part in room.parts:
        for edge in part.edges:
            if edge.kind == "band":
                found.setdefault(edge.stock, []).append((part.path, edge_length(part, edge)))
    for stock, path, slant in _slants(room):
        found.setdefault(stock, []).append((path, slant))
    tail = room.spec.style["band_tail"].value
    for key, pieces in found.items():
        goods = room.spec.stock[key]
        if not isinstance(goods, EdgeBand):
            continue
        lengths = [long for _, long in pieces]
        need, spare = band_length(sum(lengths, Fraction(0)), len(pieces), tail)
        roll, unit = goods.roll.value, room.spec.unit
        count, joined = rolls([long + tail for long in lengths], roll)
        why = (
            f"{long_length(need, unit)} of edges x {float(BAND_WASTE):.2f} + "
            f"{counted(len(pieces), 'tail')} of {length(tail, unit)} = "
            f"{long_length(need + spare, unit)}"
        )
        if count > packed(need, spare, roll):
            why += f"; {count} rolls, so that each edge is banded in one length"
            spare = count * roll - need
        if joined:
            why += f"; {counted(joined, 'edge')} longer than a roll: joined where it shows least"
        yield BuyLine(
            "edges", goods.title, key, "length", need, spare, roll, packed(need, spare, roll),
            f"roll of {long_length(roll, unit)}", why,
            tuple(dict.fromkeys(path for path, _ in pieces)),
            note=priced(goods.price, packed(need, spare, roll)),
        )  # fmt: skip


def _slants(room: Room) -> Iterator[tuple[str, str, Fraction]]:
    """Banded edges that no plane of a part names: the slants of clipped boards that show [mm]."""
    for case in room.cases:
        if case.spec.edge != "band":
            continue
        for part in case.parts:
            hidden = part.role == "corner block" or (case.spec.framed and part.role != "shelf")
            for feature in () if hidden else part.features:
                if feature.kind == "clip" and feature.setup.check is not None:
                    yield case.spec.band_stock, part.path, feature.setup.check.value
