"""Pulls of fronts that do not swing: in the middle; two on a wide front."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.drawers.boxes import DrawerBox
from casewright.casework.features import Bores
from casewright.casework.fronts.constructions import Construction
from casewright.casework.fronts.leaves import LeafPlan, report
from casewright.casework.fronts.pulls import pull_too_long
from casewright.casework.maker import Maker
from casewright.casework.setups import bore_setup
from casewright.dims import Dim, Place

__all__ = ["bore_panel_pull"]


def bore_panel_pull(
    maker: Maker,
    leaf: LeafPlan,
    panel: Construction,
    bottom: Dim,
    box: DrawerBox | None,
    *,
    up: Dim | None = None,
    off: Dim | None = None,
) -> str:
    """Bore for one pull in the middle, or for two at the quarters of a wide front.

    The holes go on through the front of the drawer's box, with play, so that the front can still
    be set (common practice).

    Parameters
    ----------
    bottom
        Case height of the front's lower end [mm].
    box
        Of the drawer; None for a front without one.
    up
        Height of the pull above the front's lower end [mm]; None: in the middle.
    off
        How far the middle of the front lies at the right of that of its box [mm]; None: no more
        than the play takes.

    Returns
    -------
    Path of the bores in the front; empty where it gets no pull.
    """
    if not leaf.front.pull:
        return ""
    place = maker.place.at(leaf.name)
    centres = maker.house.pull("centres")
    room = panel.width - 4 * maker.house.pull("hole")
    if place.over(centres, room, "no pull, it is too long for the front"):
        report(maker, pull_too_long(maker, leaf, panel.width))
        return ""
    middle = place.let("pull_height", panel.height / 2 if up is None else up)
    holes = _holes(maker, place, panel.width)
    slab = maker.parts[panel.pull_parts[0]]
    # The front has its datum edge on its right, the front of the box its datum end.
    from_right = tuple(panel.width - hole for hole in holes)
    maker.machine(slab.path, _bores(maker, slab.path, tuple((middle, r) for r in from_right)))
    if box is not None:
        up = box.place.let("pull_up", bottom + middle - box.y)
        middle = box.front.length / 2 if off is None else box.front.length / 2 - off
        _bore_on(maker, box, up, panel.width, (middle, holes))
    return f"{slab.path}.pull"


def _holes(maker: Maker, place: Place, width: Dim) -> tuple[Dim, ...]:
    """Distances of the holes from the left edge, left to right [mm]."""
    most = maker.style("two_pulls")
    two = place.over(width, most, "two pulls, the front is wide")
    middles = (width / 4, width * Fraction(3, 4)) if two else (width / 2,)
    half = maker.house.pull("centres") / 2
    if not half.value:
        return middles
    return tuple(hole for middle in middles for hole in (middle - half, middle + half))


def _bores(maker: Maker, path: str, places: tuple[tuple[Dim, Dim], ...]) -> Bores:
    hole = maker.house.pull("hole")
    return Bores(
        path=f"{path}.pull", kind="pull", face="A", datum_l="l0", datum_w="w0", places=places,
        diameter=hole, depth=None, asked_by="hardware.pull",
        pitch=maker.house.pull("centres"),
        setup=bore_setup(
            "drill", line=places[0][1], depth=None, bit="brad-point bit", bit_size=hole,
            check=places[0][0], check_words="from the bottom end to the holes",
        ),
    )  # fmt: skip


def _bore_on(
    maker: Maker, box: DrawerBox, up: Dim, width: Dim, spread: tuple[Dim, tuple[Dim, ...]]
) -> None:
    """The same holes with play in the front of the box, where it lies behind them.

    Parameters
    ----------
    spread
        Middle of the front from the right end of the box's; the holes from the front's left edge
        [mm].
    """
    middle_of_box, holes = spread
    size = maker.house.pull("hole") + maker.style("pull_play")
    clear = box.groove_up + box.bottom.thickness + size
    inside = box.place.over(up, clear, "the pull's screws pass the box above its groove")
    if not inside or up.value + size.value > box.front.width.value:
        return
    path = f"{box.front.path}.pull"
    # Measured from its own middle: the play takes what the front's middle is off that.
    places = tuple((middle_of_box + hole - width / 2, up) for hole in holes)
    maker.machine(
        box.front.path,
        Bores(
            path=path, kind="pull play", face="A", datum_l="l0", datum_w="w0", places=places,
            diameter=size, depth=None, asked_by="hardware.pull",
            setup=bore_setup(
                "drill", line=up, depth=None, bit="brad-point bit", bit_size=size,
                check=places[0][0], check_words="from the right end to the first hole",
            ),
        ),
    )  # fmt: skip
