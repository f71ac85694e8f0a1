"""Openings of the box and the stretch of its front that each one's doors share out."""

from __future__ import annotations

from casewright.casework.box import Box
from casewright.casework.carcase import Opening
from casewright.casework.maker import Maker
from casewright.dims import Dim

__all__ = ["find_openings"]


def find_openings(maker: Maker, box: Box, height: Dim) -> tuple[Opening, ...]:
    """One opening, or two where a divider parts them.

    Under a crown the doors start lower by its lap and one gap (common practice).
    """
    spec, place = maker.spec, maker.place
    floor = box.deck + box.bottom.outline.thickness
    name = "top" if spec.kind != "base" else "front_stretcher"
    ceiling = next(b for b in box.boards if b.name == name).underside
    face_bottom = box.foot if spec.kind == "wall" else box.deck
    gap = maker.style("gap")
    if spec.crown is not None:
        lap = place.given("crown_lap", spec.crown)
        top = place.let("crown_drop", lap + gap)
    else:
        top = maker.style("base_top_reveal" if spec.kind == "base" else "top_reveal")
    bottom = maker.style("bottom_reveal")
    fixed = tuple(b.underside for b in box.boards if b.role == "fixed shelf")
    divider = next((b for b in box.boards if b.role == "divider"), None)
    if divider is None:
        return (Opening("main", floor, ceiling, face_bottom, height, bottom, top, fixed),)
    half = place.let("half_gap", gap / 2)
    centre = place.let("divider_line", divider.underside + divider.outline.thickness / 2)
    above = divider.underside + divider.outline.thickness
    low = tuple(f for f in fixed if f.value < divider.underside.value)
    high = tuple(f for f in fixed if f.value > divider.underside.value)
    return (
        Opening("main", floor, divider.underside, face_bottom, centre, bottom, half, low),
        Opening("upper", above, ceiling, centre, height, half, top, high),
    )
