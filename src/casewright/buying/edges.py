"""Iron-on edge band: the visible edges, the waste, and a tail for each piece."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.buying.line import BuyLine, packed
from casewright.buying.spares import BAND_WASTE
from casewright.buying.words import length, long_length
from casewright.casework.parts import EdgeTreatment, Part
from casewright.room.model import Room
from casewright.stock import EdgeBand

__all__ = ["band_length", "edge_length", "edges"]


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
        need, spare = band_length(sum((n for _, n in pieces), Fraction(0)), len(pieces), tail)
        roll, unit = goods.roll.value, room.spec.unit
        yield BuyLine(
            "edges", goods.title, key, "length", need, spare, roll, packed(need, spare, roll),
            f"roll of {long_length(roll, unit)}",
            f"{long_length(need, unit)} of edges x {float(BAND_WASTE):.2f} + {len(pieces)} tails "
            f"of {length(tail, unit)} = {long_length(need + spare, unit)}",
            tuple(dict.fromkeys(path for path, _ in pieces)),
        )  # fmt: skip


def _slants(room: Room) -> Iterator[tuple[str, str, Fraction]]:
    """Banded edges that no plane of a part names: the slants of clipped boards [mm]."""
    for case in room.cases:
        if case.spec.edge != "band":
            continue
        for part in case.parts:
            for feature in part.features:
                if feature.kind == "clip" and feature.setup.check is not None:
                    yield case.spec.band_stock, part.path, feature.setup.check.value
