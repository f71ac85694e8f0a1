"""Hinges, planned before the sides are bored: how many, at which heights, on which plates."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.carcase import Carcase
from casewright.casework.features import Bores
from casewright.casework.fronts.face_edges import face_edges, planned_thickness
from casewright.casework.fronts.hinge_count import hinge_count
from casewright.casework.fronts.hinge_heights import HingeSpot, hinge_spots, side_of_leaf
from casewright.casework.fronts.hinge_room import least_relief
from casewright.casework.fronts.kinds import inner_cut
from casewright.casework.fronts.leaves import LeafPlan, face_place, plan_leaves, report
from casewright.casework.fronts.overlay import Overlay, overlay_finding, solve_overlay
from casewright.casework.fronts.warping import stays_flat
from casewright.casework.maker import Maker
from casewright.casework.packing import hinge_pad
from casewright.casework.setups import bore_setup
from casewright.casework.specs import Hand, OverlayKind
from casewright.dims import Dim, Measure, Origin, Place, Way, least, tell
from casewright.findings import Finding, Severity

__all__ = ["HingePlan", "HungLeaf", "Plate", "boring_tool", "plan_hinges"]

# What the fence of a hinge jig is set to [mm]; the depth screw of a hinge gives more.
_PLATE_STEP = Fraction(1, 2)

_ROOM = Origin(
    "solved", "what the ends of the door and the boards behind it leave its hinges",
    "common practice",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Plate:
    """The holes of one hinge plate in a side.

    Parameters
    ----------
    path
        Path of the bores.
    side
        Path of the side.
    height
        Case height of the middle between its holes [mm].
    from_end
        The same from the side's lower end, as bored [mm].
    holes
        Case heights of the holes [mm], lower one first.
    holes_from_end
        The same from the side's lower end [mm].
    """

    path: str
    side: str
    height: Dim
    from_end: Dim
    holes: tuple[Dim, Dim]
    holes_from_end: tuple[Dim, Dim]


@dataclass(frozen=True, slots=True)
class HungLeaf:
    """A leaf with the side it hangs on.

    Parameters
    ----------
    leaf
        As planned.
    side_thickness
        Of the side it hangs on [mm].
    overlay
        Plate and bore distance.
    plates
        From the bottom up.
    """

    leaf: LeafPlan
    side_thickness: Dim
    overlay: Overlay
    plates: tuple[Plate, ...]


@dataclass(frozen=True, slots=True)
class HingePlan:
    """All hinges of a case, bored into its sides before the doors are cut.

    Parameters
    ----------
    leaves
        Leaves to be hung, opening by opening from the bottom, left to right.
    """

    leaves: tuple[HungLeaf, ...] = ()

    def plates(self, side: str | None = None) -> tuple[Plate, ...]:
        """Plates in a side by its path, or in both sides; from the bottom up."""
        found = (p for hung in self.leaves for p in hung.plates if side in (None, p.side))
        return tuple(sorted(found, key=lambda plate: plate.height.value))

    @property
    def heights(self) -> tuple[Dim, ...]:
        """Case heights of hinges [mm], one for each plate of either side, from the bottom up."""
        return tuple(plate.height for plate in self.plates())

    @property
    def hole_heights(self) -> tuple[Dim, ...]:
        """Case heights of all plate holes [mm], of either side, from the bottom up."""
        return tuple(hole for plate in self.plates() for hole in plate.holes)


def plan_hinges(maker: Maker, carcase: Carcase) -> HingePlan:
    """Plan the hinges of every front and bore their plates' holes into the sides.

    To be called when the box is known and before shelf pins are bored: pins and shelves give
    way to hinges. Doors are cut later, to the box and to these holes.
    """
    return HingePlan(tuple(_hung(maker, carcase)))


def _hung(maker: Maker, carcase: Carcase) -> Iterator[HungLeaf]:
    for opening in carcase.openings:
        leaves = plan_leaves(maker, carcase, opening)
        if leaves and not stays_flat(maker, face_place(maker, opening), leaves[0]):
            continue
        ready = [_ready(maker, carcase, leaf) for leaf in leaves]
        if all(item is not None for item in ready):
            for item in ready:
                if item is not None:
                    yield _bored(maker, carcase, *item)


def _ready(
    maker: Maker, carcase: Carcase, leaf: LeafPlan
) -> tuple[LeafPlan, Overlay, tuple[HingeSpot, ...]] | None:
    """Everything about a leaf's hinges, or None with a finding where they have no room."""
    count = hinge_count(maker, leaf)
    spots = hinge_spots(maker, leaf, count)
    if not spots:
        report(maker, _no_room(maker, leaf, count))
        return None
    low, high = _bore_range(maker, leaf)
    if low.value > high.value:
        report(maker, _narrow_stile(maker, leaf, low))
        return None
    thickness = carcase.left_thickness if leaf.hinge == "left" else carcase.right_thickness
    place = maker.place.at(leaf.name)
    wanted = place.let(
        "overlay_wanted",
        thickness - carcase.edge if carcase.edge is not None and carcase.frame is None
        else _wanted(maker, leaf, thickness) if carcase.frame is None
        else _wanted_on_frame(maker, carcase, leaf),
    )  # fmt: skip
    overlay = solve_overlay(
        maker.house, place, wanted, low=low, high=high, step=maker.style("bore_step"),
        cranks=_arms(maker, leaf.front.overlay if carcase.edge is None else "partial"),
    )  # fmt: skip
    found = overlay_finding(maker.house, place.path, overlay, low, high)
    if found:
        report(maker, found)
    return leaf, overlay, spots


def _wanted(maker: Maker, leaf: LeafPlan, thickness: Dim) -> Dim:
    """How far a door is to lie over its side; an inset one stays off it by its gap."""
    match leaf.front.overlay:
        case "inset":
            return maker.zero - maker.style("inset_gap")
        case "partial":
            return thickness - maker.style("partial_reveal")
        case "full":
            return thickness - maker.style("reveal")


def _wanted_on_frame(maker: Maker, carcase: Carcase, leaf: LeafPlan) -> Dim:
    """How far a door is to lie over what its plates are screwed to: pads, or the sides [mm]."""
    edges = face_edges(maker, carcase, leaf.front)
    if carcase.frame is None:
        return maker.zero
    left, right = carcase.frame.faces
    if leaf.hinge == "left":
        return left - edges.x0 - edges.edge
    return edges.x1 - edges.edge - right


def _arms(maker: Maker, overlay: OverlayKind) -> tuple[Dim | None, ...]:
    """The arms made for that: the straight one, the half cranked, the one for inset doors."""
    match overlay:
        case "inset":
            return (maker.house.hinge("inset_crank"),)
        case "partial":
            return (None, maker.house.hinge("half_crank"))
        case "full":
            return (None,)


def _bore_range(maker: Maker, leaf: LeafPlan) -> tuple[Dim, Dim]:
    """Range of the bore distance: the sheet's, less where a cup would meet a rebate or groove."""
    hinge = maker.house.hinge
    low, high = hinge("bore_low"), hinge("bore_high")
    inner = inner_cut(maker, leaf)
    if inner is None:
        return low, high
    wood = maker.style("stile") - inner[1] - maker.style("cup_floor")
    return low, least(high, wood - hinge("cup_diameter"))


def _bored(
    maker: Maker, carcase: Carcase, leaf: LeafPlan, overlay: Overlay, spots: tuple[HingeSpot, ...]
) -> HungLeaf:
    side = carcase.left if leaf.hinge == "left" else carcase.right
    thickness = carcase.left_thickness if leaf.hinge == "left" else carcase.right_thickness
    plates = tuple(
        _bore_plate(maker, carcase, side, f"plate_{leaf.opening.name}_{number}", leaf, spot)
        for number, spot in enumerate(spots, start=1)
    )
    return HungLeaf(leaf, thickness, overlay, plates)


def _bore_plate(
    maker: Maker, carcase: Carcase, side: str, name: str, leaf: LeafPlan, spot: HingeSpot
) -> Plate:
    half = maker.house.half_plate_pitch()
    place = maker.house.chain.place(side).at(name)
    foot = maker.parts[side].placed.y
    from_end = _marked(maker, place, spot.height if foot is maker.zero else spot.height - foot,
                       spot)  # fmt: skip
    height = place.let("height", from_end if foot is maker.zero else foot + from_end)
    line = _plate_line(maker, carcase, place, leaf)
    low, high = from_end - half, from_end + half
    hand: Hand = "left" if leaf.hinge == "left" else "right"
    pad = None if carcase.frame is None else hinge_pad(maker, carcase, hand, name, height)
    if pad is None:
        rows = ((low, line), (high, line))
        path = _bore(maker, side, f"{side}.{name}", leaf, rows)
    else:
        plate = maker.house.chain.place(pad.path).at("plate")
        middle = plate.let("from_end", pad.finished.length / 2)
        rows = ((middle - half, line), (middle + half, line))
        path = _bore(maker, pad.path, plate.path, leaf, rows)
    return Plate(path, side, height, from_end, (height - half, height + half), (low, high))


def _plate_line(maker: Maker, carcase: Carcase, place: Place, leaf: LeafPlan) -> Dim:
    """Plates back from the front edge of what they are screwed to [mm], as their jig is set.

    Behind an inset door they lie farther back by its thickness, on pads behind a face frame less
    far by the frame's.
    """
    line = maker.house.hinge("plate_line")
    inset = leaf.front.overlay == "inset"
    if not inset and carcase.frame is None:
        return line
    exact = line + planned_thickness(maker, leaf.front) if inset else line
    if carcase.frame is not None:
        exact = exact - maker.house.thickness(maker.spec.face_stock)
    return place.rounded("line_to_set", exact, _PLATE_STEP, Way.NEAREST)[0]


def _bore(
    maker: Maker,
    part: str,
    path: str,
    leaf: LeafPlan,
    places: tuple[tuple[Dim, Dim], tuple[Dim, Dim]],
) -> str:
    """Bore the two holes of a plate into a side, or into the pad on it; returns their path."""
    house = maker.house
    thickness = maker.parts[part].finished.thickness
    depth = least(maker.style("plate_depth"), thickness * 2 / 3)
    first = places[0]
    maker.machine(
        part,
        Bores(
            path=path, kind="hinge plate", face="A", datum_l="l0", datum_w="w0",
            places=places, diameter=house.hinge("plate_hole"), depth=depth,
            asked_by=maker.path(leaf.name), pitch=house.hinge("plate_pitch"),
            setup=bore_setup(
                boring_tool(maker), line=first[1], depth=depth, bit="brad-point bit",
                bit_size=house.hinge("plate_hole"), check=first[0],
                check_words="from the bottom end to the lower hole",
            ),
        ),
    )  # fmt: skip
    return path


def _marked(maker: Maker, place: Place, exact: Dim, spot: HingeSpot) -> Dim:
    """The distance from the side's end, on the grid it is marked in, and as it is bored."""
    step = maker.style("cut_step").value
    wanted = exact
    if step and exact.value % step:
        wanted, _ = place.rounded("from_end_to_mark", exact, step, spot.way)
    return place.made("from_end", wanted, maker.house.causes(f"{place.path}.from_end", ""))


def boring_tool(maker: Maker) -> str:
    """What plate holes and cups are bored with."""
    return "hinge jig" if maker.house.shop.has("hinge jig") else "drill"


def _no_room(maker: Maker, leaf: LeafPlan, count: int) -> Finding:
    own, path = maker.reckoning("hinge room", maker.path(leaf.name)), maker.path(leaf.name)
    side = side_of_leaf(maker, leaf, count)
    taller, shelf = least_relief(side, maker.house.unit)
    sizes = (leaf.bottom, leaf.height, maker.style("hinge_end"), maker.style("hinge_clear"))

    def worked(name: str, value: Fraction) -> Measure:
        return own.length(own.worked(name, value, _ROOM, *sizes))

    ways: list[str] = []
    if taller is not None:
        ways = [tell("make the opening {} taller", worked("taller", taller))]
    if shelf is not None:
        word = "higher" if shelf > 0 else "lower"
        ways.insert(0, tell("set the fixed shelf {} {}", worked("shelf", abs(shelf)), word))
    elif side.shelves:
        ways.insert(0, "fewer fixed shelves behind it")
    free, apart = worked("free", max(side.ceiling - side.floor, Fraction(0))), side.apart
    return Finding(
        rule="hinge room",
        severity=Severity.STOP,
        path=path,
        says=tell(
            "no room for {} hinges on the {}, clear of shelves and ends: {} lie between these, "
            "and two hinges are {} apart at the least",
            count, leaf.called, free, worked("apart", apart),
        ),
        measured=free.text,
        limit=worked("apart_in_all", apart * (count - 1)).text,
        source="common practice",
        remedies=(*ways, "leave the door out"),
        numbers=own.numbers,
    )  # fmt: skip


def _narrow_stile(maker: Maker, leaf: LeafPlan, low: Dim) -> Finding:
    hinge = maker.house.hinge
    name, reach = inner_cut(maker, leaf) or ("", maker.zero)
    rule, path = f"cup and {name.partition(' for')[0].removeprefix('glass ')}", leaf.name
    own, stile = maker.reckoning(rule, maker.path(path)), maker.style("stile")
    need = own.let("stile", low + hinge("cup_diameter") + maker.style("cup_floor") + reach)
    wide, least = own.text(stile), own.text(need)
    return Finding(
        rule=rule,
        severity=Severity.STOP,
        path=maker.path(path),
        says=tell(
            "the hinge cups of the {} would run into the {}: a stile of {} is too narrow",
            leaf.called,
            name,
            wide,
        ),
        measured=wide.text,
        limit=least.text,
        source="common practice",
        remedies=(
            tell("stiles of at least {}", least),
            tell("a {} {} narrower", name, own.text(need - stile, "narrower")),
        ),
        numbers=own.numbers,
    )
