"""Pocket holes."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.features import Bores, Face, Plane
from casewright.casework.maker import Maker
from casewright.casework.setups import pocket_setup
from casewright.casework.spacing import spread_along
from casewright.dims import TAPE_MARK, Dim, Place, Way

__all__ = ["bore_pockets"]

# A pocket leaves the end at mid-thickness and rises at about 15 degrees: 15/56 stands for its
# tangent (2 - sqrt 3 = 0.26795 against 0.26786), so half a thickness takes 28/15 of it.
_RUN = Fraction(28, 15)


def bore_pockets(
    maker: Maker,
    path: str,
    face: Face,
    ends: tuple[Plane, ...],
    *,
    along: Plane = "w0",
    start: Dim | None = None,
    reach: Dim | None = None,
    mortises: tuple[tuple[Dim, Dim], ...] = (),
) -> int:
    """Bore pockets toward the named ends (or edges) of a part.

    Parameters
    ----------
    ends
        Planes the screws come out of: l0 and l1, or w0 and w1.
    along
        Edge or end from which the row is spaced.
    start, reach
        Where the stretch that may take pockets begins and ends, from there [mm]; None: right
        across.
    mortises
        Stretches of what the screws go into that hold none, from there [mm].

    Returns
    -------
    Number of pockets toward each end [-].
    """
    part = maker.parts[path]
    place = maker.house.chain.place(path)
    run = place.let(f"pocket_run_{'_'.join(ends)}", part.finished.thickness * _RUN)
    count = 0
    for end in ends:
        crosses = end in ("l0", "l1")
        across = reach or (part.finished.width if crosses else part.finished.length)
        word = part.ends[("l0", "l1", "w0", "w1").index(end)]
        stretch = across - start if start else across
        row = _row(maker, place.at("pockets"), stretch, word, marked=crosses)
        if start:
            row = tuple(start + at for at in row)
        row = tuple(_beside(maker, at, mortises) for at in row)
        count = len(row)
        maker.machine(
            path,
            Bores(
                path=f"{path}.pockets_{word}",
                kind="pocket",
                face=face,
                datum_l=end if crosses else along,
                datum_w=along if crosses else end,
                places=tuple((run, at) if crosses else (at, run) for at in row),
                diameter=maker.style("pocket_diameter"),
                depth=None,
                asked_by=path,
                setup=pocket_setup(part.finished.thickness, run),
                toward=end,
            ),
        )
    return count


def _beside(maker: Maker, at: Dim, mortises: tuple[tuple[Dim, Dim], ...]) -> Dim:
    """A pocket that a mortise would take the screw of, moved to beside it [mm]."""
    keep = maker.style("pocket_diameter")
    for low, high in mortises:
        if low.value - keep.value < at.value < high.value + keep.value:
            return low - keep if 2 * at.value < low.value + high.value else high + keep
    return at


def _row(maker: Maker, place: Place, across: Dim, word: str, *, marked: bool) -> tuple[Dim, ...]:
    """Distances along an end [mm], evenly apart.

    On marks of the tape where the part has a front and a back; a part that is the same from both
    ends stays so.
    """
    edge, step, count = spread_along(
        place, across, maker.style("pocket_spacing"), maker.style("pocket_edge"),
        f"pockets toward {word}",
    )  # fmt: skip
    if marked:
        edge, step = (_on_mark(maker, place, f"{word}_edge", edge),
                      _on_mark(maker, place, f"{word}_step", step))  # fmt: skip
    return tuple(edge + step * Fraction(n) if n else edge for n in range(count))


def _on_mark(maker: Maker, place: Place, name: str, dim: Dim) -> Dim:
    mark = TAPE_MARK[maker.house.unit]  # a hair beside makes no difference to a pocket
    return place.rounded(name, dim, mark, Way.DOWN)[0] if dim.value % mark else dim
