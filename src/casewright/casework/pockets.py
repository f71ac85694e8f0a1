"""Pocket holes."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.features import Bores, Face, Plane
from casewright.casework.maker import Maker
from casewright.casework.setups import pocket_setup
from casewright.casework.spacing import spaced
from casewright.dims import Dim

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
        row = spaced(
            place.at("pockets"),
            across - start if start else across,
            maker.style("pocket_spacing"),
            maker.style("pocket_edge"),
            f"pockets toward {part.ends[('l0', 'l1', 'w0', 'w1').index(end)]}",
        )
        if start:
            row = tuple(start + at for at in row)
        count = len(row)
        maker.machine(
            path,
            Bores(
                path=f"{path}.pockets_{part.ends[('l0', 'l1', 'w0', 'w1').index(end)]}",
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
