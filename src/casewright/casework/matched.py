"""Pieces that must be alike: what is still to be cut goes by the one that is cut already.

Common practice: a piece is cut to what it goes beside, not to the drawing. So none that is cut is
lost because another sheet, or a piece that is cut anew, would have asked for a little less. One
that is off by more than its case may stray is followed by none: it is told, with what helps.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from casewright.casework.features import Plane
from casewright.casework.maker import Maker, Outline
from casewright.dims import Dim, Way

__all__ = ["Size", "Ways", "cut_before", "in_one_size"]

_NAMES = ("length", "width", "blank_length", "blank_width")
Size = tuple[Dim, Dim]
Ways = tuple[Way | None, Way | None]


def in_one_size(
    maker: Maker,
    names: tuple[str, ...],
    size: Size,
    ways: Ways,
    *,
    stock: str,
    setting: str,
    edges: tuple[Plane, ...] = (),
) -> tuple[Outline, ...]:
    """Cut pieces of one size: first the one that is cut already, and the others to that one.

    Parameters
    ----------
    names
        Inside the case, in the order of making.
    size
        Length and width wanted [mm].
    ways
        Which way each goes onto the grid. What is cut to a piece is marked from it, off the grid.
    stock, setting, edges
        As in `Maker.outline`.
    """

    def cut(name: str, size: Size, ways: Ways) -> Outline:
        return maker.outline(
            name, stock, *size, edges=edges, setting=setting, way=ways[1], length_way=ways[0],
            matched=ways[0] is None,
        )  # fmt: skip

    first, *others = sorted(names, key=lambda name: not _is_cut(maker, name))
    made = {first: cut(first, size, ways)}
    if _is_cut(maker, first):
        real = (made[first].length, made[first].width)
        close = [_is_close(maker, one.value, dim) for dim, one in zip(size, real, strict=True)]
        size = (real[0] if close[0] else size[0], real[1] if close[1] else size[1])
        ways = (None if close[0] else ways[0], None if close[1] else ways[1])
    made |= {name: cut(name, size, ways) for name in others}
    return tuple(made[name] for name in names)


def cut_before(maker: Maker, boards: Iterable[tuple[str, Dim]], clear: Dim, setting: str) -> Dim:
    """What lies between the sides: as wanted, or as a board has it that is cut before the bottom.

    Parameters
    ----------
    boards
        Names of those that are cut in one setting with the bottom, each with how far it goes into
        a side [mm].
    clear
        As wanted [mm].
    """
    facts = maker.house.chain.facts
    if not facts or _is_cut(maker, "bottom"):
        return clear
    for name, into in boards:
        fact = facts.get(f"{maker.path(name)}.length")
        size = None if fact is None else fact.cut if fact.built is None else fact.built
        wanted = clear + 2 * into if into.value else clear
        if size is not None and _is_close(maker, size, wanted):
            length = maker.cut_first(name, wanted, setting)
            return length - 2 * into if into.value else length
    return clear


def _is_cut(maker: Maker, name: str) -> bool:
    """Whether a size of a piece is known."""
    facts, path = maker.house.chain.facts, maker.path(name)
    return bool(facts) and any(f"{path}.{size}" in facts for size in _NAMES)


def _is_close(maker: Maker, size: Fraction, wanted: Dim) -> bool:
    """Whether a size is no farther off than the case may stray."""
    most = max(maker.style("cut_step").value, maker.style("gap_tolerance").value)
    return abs(size - wanted.value) <= most
