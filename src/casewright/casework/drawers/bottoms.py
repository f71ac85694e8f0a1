"""Bottoms in their grooves, and the holes that slides want of a box, clear of these."""

from __future__ import annotations

from casewright.casework.drawers.boxes import DrawerBox, bottom_band
from casewright.casework.drawers.findings import IN_GROOVE, holes_in_groove
from casewright.casework.features import Bores, Cut, Plane
from casewright.casework.fronts.face_edges import inset_by
from casewright.casework.maker import Maker, Outline
from casewright.casework.setups import (
    bore_setup,
    rear_notch_setup,
    rip_cut_setup,
)
from casewright.dims import Dim, least, tell
from casewright.hardware import LAST_HOLE

__all__ = ["bore_box_sides", "cut_for_slides", "cut_grooves", "join_bottom"]

_MEETS = "the slides' holes reach into the groove of the bottom"


def cut_grooves(maker: Maker, box: DrawerBox) -> None:
    """Grooves right through all four pieces; the bottom lies on the lower wall, their datum.

    They come out at the ends of the sides, where the front of the drawer hides them, and at its
    back.
    """
    wide = box.bottom.thickness + maker.style("dado_clearance")
    pieces = (box.left, box.right, box.front, box.back)
    for piece, depth in zip(pieces, box.grooves, strict=True):
        place = piece.place.at("groove_bottom")
        width = maker.machined(place, "width", wide, tool="router")
        maker.board_fit(place, width, box.bottom.thickness)
        maker.machine(
            piece.path,
            Cut(
                path=place.path, kind="groove", face="A", runs="l", datum="w0",
                at=box.groove_up, width=width, depth=depth,
                start=None, end=None, asked_by=box.bottom.path,
                setup=rip_cut_setup(
                    maker.house, place, at=box.groove_up, width=width, depth=depth, name="groove"
                ),
            ),
        )  # fmt: skip


def join_bottom(maker: Maker, box: DrawerBox) -> tuple[Dim, Dim, Dim]:
    """The bottom loose in its grooves, its play shared; returns where it lies [mm]."""
    left, right, front, back = box.grooves
    place, bottom = box.place, box.bottom
    across = place.let("bottom_play", box.inside + left + right - bottom.length)
    inside_depth = box.depth - box.front.thickness - box.back.thickness
    if box.back_in is not maker.zero:
        inside_depth = inside_depth - box.back_in
    along = place.let("bottom_air", inside_depth + front + back - bottom.width)
    place.fit("bottom_side_fit", across, *bottom_band(maker), bottom.path)
    place.fit("bottom_end_fit", along, *bottom_band(maker), bottom.path)
    meets: tuple[tuple[str, Plane, Outline, Dim], ...] = (
        ("left", "l0", box.left, across / 2),
        ("right", "l1", box.right, across / 2),
        ("front", "w0", box.front, along / 2),
        ("back", "w1", box.back, along / 2),
    )
    for word, edge, piece, gap in meets:
        maker.join(
            f"{box.plan.name}.joint_bottom_{word}", "groove", (bottom.path, edge),
            (piece.path, "t0", f"{piece.path}.groove_bottom"), gap=gap,
        )  # fmt: skip
    maker.join(
        f"{box.plan.name}.joint_bottom_under", "groove", (bottom.path, "t0"),
        (box.left.path, "w0", f"{box.left.path}.groove_bottom"),
    )  # fmt: skip
    x = box.x + box.left.thickness - left + across / 2
    z = box.front_plane - box.front.thickness + front - along / 2
    return x, box.y + box.groove_up, z


def bore_box_sides(maker: Maker, box: DrawerBox) -> None:
    """Pilot holes for side-mounted slides in the outside of the box, from its front end."""
    house, kind = maker.house, box.plan.kind
    behind = maker.zero
    if not box.plan.rolls_out:
        front = house.slide(kind, "front")
        inset = inset_by(maker, box.plan.opening) is not None
        behind = box.place.let("slide_behind", front if inset else maker.style("bumper") + front)
    holes = [
        hole
        for hole in house.slide_row(kind, "box_holes")
        if hole.value + LAST_HOLE <= box.plan.length.value
        and _clear_of_corners(maker, box, _back(maker, behind, hole))
    ]
    if not holes:
        return
    line = house.slide(kind, "line")
    for side in (box.left, box.right):
        depth = least(house.slide(kind, "depth"), side.thickness * 2 / 3)
        if side is box.left:
            _clear_of_groove(maker, box, line, depth)
        maker.machine(
            side.path,
            Bores(
                path=f"{side.path}.slide", kind="slide", face="B", datum_l="l1", datum_w="w0",
                places=tuple((_back(maker, behind, hole), line) for hole in holes),
                diameter=house.slide(kind, "hole"), depth=depth,
                asked_by=f"hardware.{house.slide_sheet(kind)[0]}",
                setup=bore_setup(
                    "drill", line=line, depth=depth, bit="twist bit",
                    bit_size=house.slide(kind, "hole"), check=_back(maker, behind, holes[0]),
                    check_words="from the front end to the first hole",
                ),
            ),
        )  # fmt: skip


def _clear_of_corners(maker: Maker, box: DrawerBox, along: Dim) -> bool:
    """Whether a hole so far from the front end misses what front and back take of the side.

    A sheet gives more holes than are screwed: one that would come out in a corner is left out.
    """
    house, kind = maker.house, box.plan.kind
    depth = min(house.slide(kind, "depth").value, box.left.thickness.value * 2 / 3)
    if box.spec.joint == "butt" or depth + box.into[0].value <= box.left.thickness.value:
        return True
    half = house.slide(kind, "hole").value / 2
    rear = box.depth.value - box.back_in.value - box.back.thickness.value
    rear_end = box.depth.value - box.back_in.value
    low, high = along.value - half, along.value + half
    return low >= box.front.thickness.value and (high <= rear or low >= rear_end)


def _back(maker: Maker, behind: Dim, hole: Dim) -> Dim:
    """A hole of the inner member from the front end of the box [mm]."""
    return hole if behind is maker.zero else behind + hole


def cut_for_slides(maker: Maker, box: DrawerBox) -> None:
    """Rear notches and hook holes of concealed slides in the box's back."""
    sheet = maker.house.undermount
    back, butt = box.back, box.spec.joint == "butt"
    _hooks_over_bottom(maker, box)
    ends: tuple[tuple[Plane, str, Dim], ...] = (
        ("l0", "left", box.into[0]), ("l1", "right", box.into[1]),
    )  # fmt: skip
    for end, hand, into in ends:
        place = back.place.at(f"notch_{hand}")
        wide, high = sheet("notch_width"), sheet("notch_height")
        long = maker.machined(place, "width", wide if butt else wide + into)
        tall = maker.machined(place, "end", high)
        hook_in, hook = sheet("hook_in"), sheet("hook")
        along = hook_in if butt else hook_in + into
        maker.machine(
            back.path,
            Cut(
                path=place.path, kind="notch", face="A", runs="w", datum=end, at=maker.zero,
                width=long, depth=back.thickness, start=maker.zero, end=tall,
                asked_by="hardware.undermount",
                setup=rear_notch_setup(maker.house, along=long, across=tall),
            ),
            Bores(
                path=f"{back.path}.hook_{hand}", kind="slide hook", face="B", datum_l=end,
                datum_w="w0", places=((along, sheet("hook_up")),), diameter=hook,
                depth=sheet("hook_depth"), asked_by="hardware.undermount",
                setup=bore_setup(
                    "drill", line=sheet("hook_up"), depth=sheet("hook_depth"),
                    bit="brad-point bit", bit_size=hook, check=along,
                    check_words="from the end of the back to the hole",
                ),
            ),
        )  # fmt: skip


def _hooks_over_bottom(maker: Maker, box: DrawerBox) -> None:
    """The hooks' holes lie over the bottom's groove; a stop says what bottom leaves them wood."""
    sheet, place = maker.house.undermount, box.place
    foot = place.let("hook_foot", sheet("hook_up") - sheet("hook") / 2)
    top = place.let("groove_top", _groove_top(maker, box))
    if place.over(top, foot, "the hooks' holes run into the groove of the bottom"):
        most = foot - box.groove_up - maker.style("dado_clearance")
        own = maker.reckoning(IN_GROOVE, place.path)
        thick, thickest = own.text(box.bottom.thickness), own.text(most, "thickest")
        ways = (tell("a bottom at most {} thick instead of {}", thickest, thick),)
        maker.findings.append(
            holes_in_groove(
                own, place.path, ("the hooks of its slides", "they begin", "it ends"),
                (foot, top), (*(ways if most.value > 0 else ()), "side-mounted slides"),
            )
        )  # fmt: skip


def _clear_of_groove(maker: Maker, box: DrawerBox, line: Dim, depth: Dim) -> None:
    """The slides' screws lie over or under the groove, or do not go in so far as it is deep."""
    place, house, up = box.place, maker.house, box.groove_up
    hole, top = house.slide(box.plan.kind, "hole"), _groove_top(maker, box)
    if (depth + box.grooves[0]).value <= box.left.thickness.value:
        return
    low, high = place.let("slide_hole_foot", line - hole / 2), line + hole / 2
    top = place.let("groove_top", top)
    if place.over(high, up, _MEETS) and place.over(top, low, _MEETS):
        own = maker.reckoning(IN_GROOVE, place.path)
        less, more = own.text(top - low, "less"), own.text(high - up, "more")
        maker.findings.append(
            holes_in_groove(
                own, place.path, ("the screws of its slides", "they begin", "it ends"), (low, top),
                (tell("drawer_groove_up {} less in [style], or {} more", less, more),
                 tell("slides whose line lies {} higher", less)),
            )
        )  # fmt: skip


def _groove_top(maker: Maker, box: DrawerBox) -> Dim:
    return box.groove_up + box.bottom.thickness + maker.style("dado_clearance")
