"""Openings of the box and the stretch of its front that each one's fronts share out."""

from __future__ import annotations

from casewright.casework.box import Board, Box
from casewright.casework.carcase import Opening
from casewright.casework.maker import Maker
from casewright.casework.rows import crown_drop, part_into_rows
from casewright.casework.specs import FrontSpec, RowKind
from casewright.dims import Dim, greatest

__all__ = ["find_openings"]


def find_openings(maker: Maker, box: Box, height: Dim) -> tuple[Opening, ...]:
    """One opening, or two where a divider parts them; the lower one parted into its rows.

    Parameters
    ----------
    height
        Of the box as it results from its sides [mm].
    """
    lower = _lower_bay(maker, box, height)
    divider = _divider(box)
    rows = part_into_rows(maker, box, lower)
    if divider is None:
        return rows
    above = divider.underside + divider.outline.thickness
    high = tuple(f for f in _fixed(box) if f.value > divider.underside.value)
    front = maker.spec.upper_front
    upper = Opening(
        "upper", above, _ceiling(box), lower.face_y1, height, lower.top, _top(maker), high,
        _row(front), front,
    )  # fmt: skip
    return (*rows, upper)


def _lower_bay(maker: Maker, box: Box, height: Dim) -> Opening:
    """The only opening, or the one under the divider, before it is parted into rows."""
    spec, place = maker.spec, maker.place
    floor = box.deck + box.bottom.outline.thickness
    face_bottom = box.foot if spec.is_hung else box.deck
    bottom = maker.style("bottom_reveal")
    divider, fixed = _divider(box), _fixed(box)
    if divider is None:
        return Opening(
            "main", floor, _ceiling(box), face_bottom, height, bottom, _top(maker), fixed,
            _row(spec.front), spec.front,
        )  # fmt: skip
    half = place.let("half_gap", maker.style("gap") / 2)
    centre = place.let("divider_line", divider.underside + divider.outline.thickness / 2)
    low = tuple(f for f in fixed if f.value < divider.underside.value)
    return Opening(
        "main", floor, divider.underside, face_bottom, centre, bottom, half, low,
        _row(spec.front), spec.front,
    )  # fmt: skip


def _row(front: FrontSpec | None) -> RowKind:
    return "doors" if front else "open"


def _divider(box: Box) -> Board | None:
    return next((b for b in box.boards if b.role == "divider"), None)


def _fixed(box: Box) -> tuple[Dim, ...]:
    return tuple(b.underside for b in box.boards if b.role == "fixed shelf")


def _ceiling(box: Box) -> Dim:
    """Underside of the highest board between the sides, in front."""
    heads = ("top", "front_stretcher", "front_rail")
    return next(b.underside for b in box.boards if b.name in heads)


def _top(maker: Maker) -> Dim:
    """What is left bare above the topmost fronts.

    Under a crown they start lower by its lap and one gap (common practice), under a hinged lid by
    the air that no finger is caught in.
    """
    spec, under_crown = maker.spec, crown_drop(maker)
    if under_crown is None:
        bare = maker.style("base_top_reveal" if spec.has_toe else "top_reveal")
        return greatest(bare, maker.style("finger_gap")) if spec.lid == "hinged" else bare
    return under_crown
