"""Drawers put in their places, joined, and told as steps."""

from __future__ import annotations

from casewright.casework.assembly import join_part
from casewright.casework.carcase import Carcase
from casewright.casework.cases import Drawer
from casewright.casework.drawers.bottoms import (
    bore_box_sides,
    cut_for_slides,
    cut_grooves,
    join_bottom,
)
from casewright.casework.drawers.boxes import DrawerBox, cut_box
from casewright.casework.drawers.corners import cut_corners, join_corners
from casewright.casework.drawers.panels import add_drawer_front, add_false_fronts
from casewright.casework.drawers.slides import DrawerPlan
from casewright.casework.features import Plane
from casewright.casework.maker import Maker, Outline
from casewright.casework.specs import Hand
from casewright.dims import Dim, tell

__all__ = ["add_drawers", "hang_drawers", "hang_roll_outs"]

_INSIDE: tuple[Plane, ...] = ("w1", "t1")


def add_drawers(maker: Maker, carcase: Carcase, plans: tuple[DrawerPlan, ...]) -> None:
    """Make the drawers of a case, box by box with its front; then its false fronts.

    To be called when the box of the case is built: its width is the drawers' measure.
    """
    spec = maker.spec.drawer
    for plan in plans:
        box = None if spec is None else cut_box(maker, plan, spec)
        if box is None:
            continue
        cut_corners(maker, box)
        cut_grooves(maker, box)
        if plan.kind == "undermount":
            cut_for_slides(maker, box)
        else:
            bore_box_sides(maker, box)
        lies = join_bottom(maker, box)
        _place(maker, box, lies)
        join_corners(maker, box)
        _assemble(maker, box)
        front = "" if plan.rolls_out else add_drawer_front(maker, carcase, box)
        maker.drawers.append(_drawer(maker, box, front))
    add_false_fronts(maker, carcase)


def _drawer(maker: Maker, box: DrawerBox, front: str) -> Drawer:
    pieces = (box.left, box.right, box.front, box.back, box.bottom)
    return Drawer(
        path=box.place.path,
        title=box.plan.title,
        slides=box.plan.kind,
        slide_length=box.plan.length,
        x=box.x,
        y=box.y,
        z=box.z,
        width=box.width,
        height=box.place.follows("height", box.left.width),
        depth=box.depth,
        inside_width=box.inside,
        parts=tuple(piece.path for piece in pieces),
        front=front,
        bores=box.plan.bores,
        opening=box.plan.opening.name,
    )


def _place(maker: Maker, box: DrawerBox, bottom: tuple[Dim, Dim, Dim]) -> None:
    inner = box.x + box.left.thickness
    left_in = inner if box.spec.joint == "butt" else inner - box.into[0]
    sides: tuple[tuple[Hand, Outline, str, Dim], ...] = (
        ("left", box.left, "+z +y +x", box.x),
        ("right", box.right, "+z +y -x", box.x + box.width),
    )
    for hand, side, lies, x in sides:
        _add(maker, box, side, "drawer side", f"{hand} side", lies=lies, at=(x, box.y, box.z),
             ends=("back", "front", "bottom", "top"), hand=hand)  # fmt: skip
    back_z = box.z if box.back_in is maker.zero else box.z + box.back_in
    _add(maker, box, box.front, "box front", "front end", lies="-x +y -z",
         at=(left_in + box.front.length, box.y, box.front_plane),
         ends=("right", "left", "bottom", "top"),
         # Beside a blind part its pull is not in its middle.
         hand="right" if maker.spec.blind else None)  # fmt: skip
    _add(maker, box, box.back, "drawer back", "back end", lies="+x +y +z",
         at=(left_in, box.y, back_z), ends=("left", "right", "bottom", "top"))  # fmt: skip
    _add(maker, box, box.bottom, "drawer bottom", "bottom", lies="+x -z +y", at=bottom,
         ends=("left", "right", "front", "back"))  # fmt: skip


def _add(
    maker: Maker,
    box: DrawerBox,
    outline: Outline,
    role: str,
    word: str,
    *,
    lies: str,
    at: tuple[Dim, Dim, Dim],
    ends: tuple[str, str, str, str],
    hand: Hand | None = None,
) -> None:
    shows: tuple[Plane, ...] = ("t1",) if role == "drawer bottom" else _INSIDE
    maker.add(
        outline, role=role, title=f"{word} of {box.plan.title}", lies=lies, at=at, ends=ends,
        hand=hand, shows=shows, group=f"{box.plan.name} {role}s", front=box.place.path,
    )  # fmt: skip


def _assemble(maker: Maker, box: DrawerBox) -> None:
    """Left side, ends, bottom, right side, square."""
    how = {
        "butt": "flush with the end of the side, lower edges flush; bore pilot holes, drive the "
        "screws",
        "rabbet": "home in its rabbet, lower edges flush; drive the brads",
        "dado": "home in its dado, lower edges flush; drive the brads",
        "box joint": "its fingers home in the slots, lower edges flush",
    }[box.spec.joint]
    at_front = how.replace("dado", "rabbet")
    screws = ("clamp_screws",) if box.spec.joint == "butt" else ()
    brads = ("brad_points",) if box.spec.joint in ("rabbet", "dado") else ()
    cautions = (*screws, *brads)
    maker.step(
        "lay", box.left.path, None,
        f"Lay the left side of {box.plan.title} on the bench, inside up, lower edge towards you.",
    )  # fmt: skip
    join_part(maker, box.front.path, "-x",
              f"Spread glue thinly on the joint; set the front end {at_front}.",
              *cautions)  # fmt: skip
    join_part(maker, box.back.path, "-x",
              f"Spread glue thinly on the joint; set the back end {how}.", *cautions)  # fmt: skip
    join_part(maker, box.bottom.path, "-x",
              "Slide the bottom into its grooves, dry, show face up.")  # fmt: skip
    join_part(
        maker, box.right.path, "-x",
        "Spread glue thinly on the joints; bring the right side down on bottom and ends at once; "
        f"{'drive the screws' if screws else 'drive the brads' if brads else 'clamp'}.",
        *cautions,
    )  # fmt: skip
    maker.step(
        "check square", "", None,
        tell(
            "Measure both diagonals over the sides. They must agree within {}; set it on a flat "
            "top until the glue has taken.",
            maker.house.trade("drawer_diagonals"),
        ),
        check_words="diagonals",
    )  # fmt: skip


def hang_roll_outs(maker: Maker) -> None:
    """Fix all slides; run in what lies behind doors, while these are not hung yet."""
    if maker.drawers:
        _fix_slides(maker)
    for drawer in maker.drawers:
        if not drawer.front:
            _hang_box(maker, drawer)


def hang_drawers(maker: Maker) -> None:
    """Hang the boxes, then set each front with spacers and screw it on."""
    own = {drawer.front: drawer for drawer in maker.drawers if drawer.front}
    for drawer in own.values():
        _hang_box(maker, drawer)
    for front in sorted(maker.fronts, key=lambda each: each.y.value):
        if front.path in own:
            _hang_front(maker, front.path, front.title)


def _hang_box(maker: Maker, drawer: Drawer) -> None:
    words = (
        f"Set {drawer.title} on its slides and push it home until its hooks and locks hold"
        if drawer.slides == "undermount"
        else f"Screw the inner members to the sides of {drawer.title} along a line, and run "
        "it in on its slides"
    )
    maker.step(
        "hang", drawer.path, "-z", f"{words}; it must run to the back without rubbing.",
        marks=_members(maker, drawer),
    )  # fmt: skip


def _members(maker: Maker, drawer: Drawer) -> tuple[tuple[str, Dim], ...]:
    """Where the inner members of side-mounted slides go on a box."""
    if drawer.slides == "undermount":
        return ()
    house, place = maker.house, maker.house.chain.place(drawer.path)
    behind = house.chain.nodes.get(f"{drawer.path}.slide_behind")
    if not drawer.front:
        behind = maker.zero
    if behind is None:
        front = maker.style("bumper") + house.slide(drawer.slides, "front")
        behind = place.let("slide_behind", front)
    line = house.slide(drawer.slides, "line")
    return (
        ("middle of the inner members above the lower edge of the sides", line),
        ("their front ends behind the front of the box", behind),
    )


def _fix_slides(maker: Maker) -> None:
    """Slides go on the sides by the pilot holes: told once, with each line's height."""
    marks = tuple(
        (f"{drawer.title}: line of its holes above the bottom ends of the sides",
         maker.house.chain.nodes[f"{drawer.path}.slide_line"])
        for drawer in maker.drawers
        if drawer.front
    )  # fmt: skip
    where = "both sides" if marks else "the pads"
    where = "both sides and to the pads" if marks and len(marks) < len(maker.drawers) else where
    if maker.spec.blind is not None:
        far = "right" if maker.spec.blind == "left" else "left"
        where = f"the {far} side and to the partition"
    behind = maker.house.slide(maker.drawers[0].slides, "front")
    maker.step(
        "hang", "", None,
        f"Screw the slides to {where} by their pilot holes, level, pair by pair.",
        marks=(*marks, ("front ends of the slides behind the front edges", behind)),
    )  # fmt: skip


def _hang_front(maker: Maker, path: str, title: str) -> None:
    joints = tuple(joint.path for joint in maker.joints if joint.path == f"{path}.joint")
    maker.step(
        "hang", path, "-z",
        tell(
            "Set the {} with spacers of {} on what is below it, even at both sides; clamp it to "
            "its box, drive the screws from inside, then drill on through the holes of the pull "
            "and fix it.",
            title, maker.house.said(maker.style("gap")),
        ),
        joints=joints, cautions=("clamp_screws",),
    )  # fmt: skip
