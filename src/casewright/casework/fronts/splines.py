"""Splines: thin slips across the mitres of a frame, which hold them where glue alone would not."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.features import Cut, Plane
from casewright.casework.fronts.constructions import Corner
from casewright.casework.fronts.frames import Frame, Level
from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.fronts.panel_groove import PanelGroove
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.setups import slot_setup
from casewright.casework.specs import Hand
from casewright.dims import Dim

__all__ = ["add_splines", "cut_slots"]

# A little under the square root of 2: along a mitre from what is measured along either member.
_DIAGONAL = Fraction(140, 99)


def cut_slots(maker: Maker, member: Outline, groove: PanelGroove) -> None:
    """Cut a slot into both mitred ends, at the height and to the depth of the panel's groove."""
    ends: tuple[tuple[Plane, str], ...] = (("l0", "m0"), ("l1", "m1"))
    for end, face in ends:
        place = member.place.at(f"slot_{end[1]}")
        maker.machine(
            member.path,
            Cut(
                path=place.path, kind="slot", face="m0" if face == "m0" else "m1", runs="w",
                datum="t1", at=groove.at, width=groove.width, depth=groove.depth, start=None,
                end=None, asked_by=f"{member.path}.mitre_{end[1]}",
                setup=slot_setup(
                    maker.house, place, at=groove.at, width=groove.width, depth=groove.depth
                ),
            ),
        )  # fmt: skip


def add_splines(
    maker: Maker, leaf: LeafPlan, frame: Frame, groove: PanelGroove, at: Corner, to_panel: Dim
) -> tuple[str, ...]:
    """Cut and place the four splines and join them; tell how they are pushed in.

    The grain runs across the mitre, so that a spline breaks across its fibres or not at all.

    Parameters
    ----------
    to_panel
        From a frame's corner along either member to the corner of the panel [mm].

    Returns
    -------
    Paths of the splines.
    """
    key = leaf.front.panel
    across = 2 * (groove.depth - maker.style("tongue_relief"))
    setting = f"{maker.spec.key} {leaf.opening.name} splines"
    corners: tuple[tuple[Level, Hand], ...] = (
        ("bottom", "left"), ("bottom", "right"), ("top", "left"), ("top", "right"),
    )  # fmt: skip
    found = []
    for level, hand in corners:
        spline = maker.outline(
            f"{leaf.name}.spline_{level}_{hand}", key, across, to_panel * _DIAGONAL,
            setting=setting,
        )  # fmt: skip
        front = at.z + frame.left.thickness - groove.at
        x = at.x if hand == "left" else at.x + frame.bottom.length
        y = at.y if level == "bottom" else at.y + frame.left.length
        _place(maker, leaf, spline, (level, hand), Corner(x, y, front))
        _join(maker, leaf, spline, (level, hand), frame, groove)
        found.append(spline.path)
    return tuple(found)


def _place(
    maker: Maker, leaf: LeafPlan, spline: Outline, corner: tuple[Level, Hand], at: Corner
) -> None:
    """Place a spline with its front face at the corner's front wall."""
    level, hand = corner
    low, left = level == "bottom", hand == "left"
    lies = f"{'+' if left else '-'}x {'+' if low else '-'}y"
    turned = low == left
    maker.add(
        spline, role="spline", title=f"{level} {hand} spline of the {leaf.title}",
        lies=f"{lies} {'+' if turned else '-'}z",
        at=(at.x, at.y, at.z - spline.thickness if turned else at.z),
        ends=("end", "end", "outer edge", "inner edge"), group=f"{leaf.opening.name} splines",
        front=maker.path(leaf.name), diagonal=True,
    )  # fmt: skip


def _join(
    maker: Maker,
    leaf: LeafPlan,
    spline: Outline,
    corner: tuple[Level, Hand],
    frame: Frame,
    groove: PanelGroove,
) -> None:
    level, hand = corner
    rail = frame.bottom if level == "bottom" else frame.top
    stile = frame.left if hand == "left" else frame.right
    free = spline.place.let("free", groove.depth - spline.length / 2)
    rail_end: Plane = "l0" if (level == "bottom") == (hand == "left") else "l1"
    stile_end: Plane = "l0" if level == "bottom" else "l1"
    ends: tuple[tuple[str, Outline, Plane, Plane], ...] = (
        ("rail", rail, rail_end, "l0"), ("stile", stile, stile_end, "l1"),
    )  # fmt: skip
    for word, member, end, own in ends:
        glue = Fastening("glue", 1, None, (spline.path,), member.path)
        maker.join(
            f"{leaf.name}.spline_{level}_{hand}_in_{word}", "spline", (spline.path, own),
            (member.path, end), gap=free, fastenings=(glue,),
        )  # fmt: skip
