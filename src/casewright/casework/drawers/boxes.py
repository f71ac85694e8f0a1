"""A drawer's box: sides, front and back by their joint, bottom in grooves, cut in that order."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.drawers.findings import side_too_thick, too_narrow
from casewright.casework.drawers.slides import DrawerPlan
from casewright.casework.maker import Maker, Outline
from casewright.casework.matched import in_one_size
from casewright.casework.specs import DrawerSpec
from casewright.dims import Dim, Place, Way

__all__ = ["DrawerBox", "bottom_band", "cut_box"]


@dataclass(frozen=True, slots=True)
class DrawerBox:
    """The pieces of a box as cut, and where they go.

    Parameters
    ----------
    plan, spec
        What was planned and asked for.
    place
        Of the drawer.
    left, right, front, back, bottom
        As cut.
    into
        How far front and back go into the left and into the right side [mm].
    back_in
        How far the back stands in from the rear ends of the sides [mm].
    groove_up, grooves
        Lower walls of the grooves above the sides' lower edge; depths of the grooves in left,
        right, front, back [mm].
    inside, width, depth
        Between the sides; outside [mm].
    x, y, z
        Lower left back corner in case axes [mm].
    """

    plan: DrawerPlan
    spec: DrawerSpec
    place: Place
    left: Outline
    right: Outline
    front: Outline
    back: Outline
    bottom: Outline
    into: tuple[Dim, Dim]
    back_in: Dim
    groove_up: Dim
    grooves: tuple[Dim, Dim, Dim, Dim]
    inside: Dim
    width: Dim
    depth: Dim
    x: Dim
    y: Dim
    z: Dim

    @property
    def front_plane(self) -> Dim:
        """Case z of the front ends of its sides [mm]."""
        return self.z + self.depth


def cut_box(maker: Maker, plan: DrawerPlan, spec: DrawerSpec) -> DrawerBox | None:
    """Cut the pieces of a box to the opening as built; None, with a finding, where none fits."""
    place = maker.place.at(plan.name)
    left, right = in_one_size(
        maker, (f"{plan.name}.side_left", f"{plan.name}.side_right"), (plan.length, plan.height),
        (Way.NEAREST, Way.DOWN), stock=spec.box_stock,
        setting=f"{maker.spec.key} {plan.name} sides",
    )  # fmt: skip
    if plan.kind == "undermount":
        thickness = left.thickness
        most = maker.house.undermount("thickest")
        if place.over(thickness, most, "no drawer, its sides are too thick for the slides"):
            maker.findings.append(side_too_thick(maker, place.path, thickness))
            return None
    into = _into(maker, spec, left, right)
    wanted = _inside_wanted(maker, plan, (left, right))
    length = wanted if spec.joint == "butt" else wanted + into[0] + into[1]
    least = place.let("least_length", 4 * left.thickness + maker.style("drawer_least"))
    if place.over(least, length, "no drawer, its opening is too narrow for one"):
        maker.findings.append(too_narrow(maker, place.path, plan.title, length, least))
        return None
    front, back = in_one_size(
        maker, (f"{plan.name}.front_end", f"{plan.name}.back_end"), (length, plan.height),
        (_end_way(maker, plan), Way.DOWN), stock=spec.box_stock,
        setting=f"{maker.spec.key} {plan.name} ends",
    )  # fmt: skip
    return _closed(maker, plan, spec, (left, right, front, back), into)


def _into(maker: Maker, spec: DrawerSpec, left: Outline, right: Outline) -> tuple[Dim, Dim]:
    """How far front and back go into each side [mm]."""
    match spec.joint:
        case "butt":
            return maker.zero, maker.zero
        case "box joint":
            return left.thickness, right.thickness
        case "rabbet" | "dado":
            deep = maker.style("drawer_joint_depth")
            one, other = (
                maker.machined(side.place.at("corner_cut"), "depth", deep)
                for side in (left, right)
            )
            return one, other


def _inside_wanted(maker: Maker, plan: DrawerPlan, sides: tuple[Outline, Outline]) -> Dim:
    """Between the sides, by the slides' sheet, in the middle of what they take [mm]."""
    air = maker.house.slide(plan.kind, "air")
    room = plan.clear - maker.house.slide(plan.kind, "play") / 2
    if plan.kind == "undermount":
        return room - air
    return room - 2 * air - sides[0].thickness - sides[1].thickness


def _end_way(maker: Maker, plan: DrawerPlan) -> Way:
    """Onto the grid to the nearest mark where the slides take that, else never too long."""
    play, step = maker.house.slide(plan.kind, "play"), maker.style("cut_step")
    return Way.DOWN if play.value < step.value else Way.NEAREST


def _closed(
    maker: Maker,
    plan: DrawerPlan,
    spec: DrawerSpec,
    pieces: tuple[Outline, Outline, Outline, Outline],
    into: tuple[Dim, Dim],
) -> DrawerBox:
    """The box as its pieces make it, and the bottom cut from it."""
    place = maker.place.at(plan.name)
    left, right, front, back = pieces
    butt = spec.joint == "butt"
    inside = place.follows("inside", front.length if butt else front.length - into[0] - into[1])
    width = place.follows("width", left.thickness + inside + right.thickness)
    depth = place.follows("depth", left.length)
    back_in = maker.style("drawer_back_inset") if spec.joint == "dado" else maker.zero
    under = plan.kind == "undermount"
    up = maker.house.undermount("recess") if under else maker.style("drawer_groove_up")
    grooves = tuple(
        maker.machined(
            piece.place.at("groove_bottom"), "depth", maker.style("drawer_groove_depth")
        )
        for piece in pieces
    )
    clear = depth - front.thickness - back.thickness
    clear = place.let("inside_depth", clear if back_in is maker.zero else clear - back_in)
    play = maker.style("drawer_bottom_play")
    bottom = maker.outline(
        f"{plan.name}.bottom", spec.bottom_stock, inside + grooves[0] + grooves[1] - play,
        clear + grooves[2] + grooves[3] - play, way=Way.DOWN,
    )  # fmt: skip
    air = place.let("air", plan.clear - width)
    _fits(maker, plan, (inside, air))
    return DrawerBox(
        plan, spec, place, left, right, front, back, bottom, into, back_in, up,
        (grooves[0], grooves[1], grooves[2], grooves[3]), inside, width, depth,
        x=place.let("x", plan.wall + air / 2),
        y=place.let("y", plan.bottom),
        z=place.let("z", plan.front - depth),
    )  # fmt: skip


def _fits(maker: Maker, plan: DrawerPlan, sizes: tuple[Dim, Dim]) -> None:
    """The box in its opening: what the slides take, no less and little more."""
    inside, air = sizes
    place = maker.place.at(plan.name)
    wanted, play = maker.house.slide(plan.kind, "air"), maker.house.slide(plan.kind, "play")
    owner = f"{place.path}.front_end"
    if plan.kind == "undermount":
        gap, least = place.let("opening_less_inside", plan.clear - inside), wanted.value
    else:
        gap, least = air, 2 * wanted.value
    place.fit("slide_fit", gap, least, least + play.value, owner)


def bottom_band(maker: Maker) -> tuple[Fraction, Fraction]:
    """How much play a bottom may have in its grooves, in all [mm]: never pinched, never out."""
    wanted = maker.style("drawer_bottom_play").value
    step = maker.style("cut_step").value
    return Fraction(0), wanted + 2 * step + Fraction(1)
