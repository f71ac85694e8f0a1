"""Clips: the corner of a board taken off at 45 degrees after it is cut to its blank."""

from __future__ import annotations

from casewright.casework.diagonal.roots import OVER_ROOT_2, UNDER_ROOT_2, onto_grid
from casewright.casework.features import Cut, Plane, Setup
from casewright.casework.maker import Maker, Outline
from casewright.dims import Dim, Way

__all__ = ["clip"]


def clip(maker: Maker, board: Outline, corner: Plane, exact: Dim, *, small: bool = False) -> Dim:
    """Clip the corner of a board at an end and its front edge; returns the leg as made [mm].

    Up to the next step of the grid: a board that stood out of the face would hold the door off.
    What is ironed on the slant is taken off before; behind a face frame none is.

    Parameters
    ----------
    corner
        End that the corner is at.
    exact
        From the corner to where the face meets either edge [mm].
    small
        Whether it is a block, whose slant does not show and which goes across a saw.
    """
    place = board.place.at("clip")
    hidden = maker.spec.framed and not board.path.startswith(maker.path("shelf."))
    banded = not small and maker.spec.edge == "band" and not hidden
    if banded:
        exact = exact + maker.style("band") * OVER_ROOT_2
    leg = maker.machined(place, "leg", onto_grid(maker, place, "leg_to_mark", exact, Way.UP))
    slant = place.let("slant", leg * UNDER_ROOT_2)
    setup = _small_setup(maker, slant) if small else _setup(maker, slant, banded=banded)
    maker.machine(
        board.path,
        Cut(
            path=place.path, kind="clip", face="A", runs="w", datum=corner, at=maker.zero,
            width=leg, depth=board.thickness, start=maker.zero, end=leg,
            asked_by=maker.path("mouth"), setup=setup,
        ),
    )  # fmt: skip
    return leg


def _small_setup(maker: Maker, slant: Dim) -> Setup:
    """A block is cut at 45 degrees across a saw, held against its fence (common practice)."""
    words = "along the slant, from edge to edge"
    has = maker.house.shop.has
    if has("mitre saw"):
        return Setup("mitre saw", bit="saw blade at 45 degrees", check=slant, check_words=words,
                     cautions=("mitre_saw",))  # fmt: skip
    if has("table saw"):
        return Setup("table saw", bit="saw blade, mitre gauge at 45 degrees", check=slant,
                     check_words=words, cautions=("saw_mitre",))  # fmt: skip
    bit = "saw blade along a guide, across a longer piece that is clamped"
    return Setup("circular saw", bit=bit, check=slant, check_words=words, cautions=("saw_guided",))


def _setup(maker: Maker, slant: Dim, *, banded: bool) -> Setup:
    """Both legs marked from the corner, sawn along a guide.

    A board as large as a corner's is not pushed past a blade at a slant (common practice).
    """
    if maker.house.shop.has("circular saw"):
        tool, caution = "circular saw", "saw_guided"
        bit = "saw blade along a guide on both marks"
    else:
        tool, caution = "table saw", "saw_mitre"
        bit = "saw blade, the board on a crosscut sled, its slant along the blade"
    if banded:
        bit = f"{bit}; the slant is banded after it"
    return Setup(
        tool, bit=bit, check=slant, check_words="along the slant, from edge to edge",
        cautions=(caution,),
    )  # fmt: skip
