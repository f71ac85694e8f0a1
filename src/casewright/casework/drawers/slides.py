"""Slides, planned before the drawers: how long, how high, their holes in the case's sides."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.casework.carcase import Carcase, Opening
from casewright.casework.drawers.beside_blind import bore_partition, hang_partition
from casewright.casework.drawers.findings import no_length, too_low
from casewright.casework.drawers.slide_bores import bore_along
from casewright.casework.features import Bores
from casewright.casework.fronts.face_edges import inset_by, share_of
from casewright.casework.fronts.leaves import front_height
from casewright.casework.levels import extent
from casewright.casework.maker import Maker
from casewright.casework.packing import slide_pad
from casewright.casework.parts import Part
from casewright.casework.setups import bore_setup
from casewright.casework.specs import Hand, SlideKind
from casewright.dims import Dim, Place, Way, greatest, least
from casewright.hardware import LAST_HOLE

__all__ = ["DrawerPlan", "front_plane", "plan_slides", "roll_out_plane", "slide_length"]

_HANDS: tuple[Hand, Hand] = ("left", "right")

_FIRST = 6
"""Nearest that a slide's first screw comes to the front end of its pad (common practice) [mm]."""


@dataclass(frozen=True, slots=True)
class DrawerPlan:
    """A drawer as planned, its slides' holes bored, nothing of its box cut yet.

    Parameters
    ----------
    name, title
        Name inside the case: 'drawer_1'; in words: 'drawer 1'.
    opening
        The row it lies behind.
    kind
        Of its slides.
    length
        Of its slides and of its box [mm].
    bottom
        Case height of the lower edge of its box's sides, as its slides are bored [mm].
    height
        Of its box, wanted [mm].
    bores
        Paths of the slides' bores in the left and in the right side, or in the pads on them.
    wall, clear
        Case x of the face that its left slide is screwed to; from there to the right one [mm].
    front
        Case z of the front of its box [mm].
    """

    name: str
    title: str
    opening: Opening
    kind: SlideKind
    length: Dim
    bottom: Dim
    height: Dim
    bores: tuple[str, str]
    wall: Dim
    clear: Dim
    front: Dim

    @property
    def rolls_out(self) -> bool:
        """Whether it runs behind doors, without a front of its own."""
        return self.opening.row != "drawer"


def slide_length(maker: Maker, carcase: Carcase) -> Dim | None:
    """Length of the slides of a case, one for all of its drawers and roll-outs [mm].

    None where it has none, or, with a finding, where the depth leaves no room.
    """
    spec = maker.spec.drawer
    kinds = ("drawer", "doors") if maker.spec.roll_outs else ("drawer",)
    rows = [opening for opening in carcase.openings if opening.row in kinds]
    if spec is None or not rows:
        return None
    return _longest(maker, carcase, rows, spec.slides)


def plan_slides(maker: Maker, carcase: Carcase, length: Dim | None) -> tuple[DrawerPlan, ...]:
    """Plan the drawers of a case, topmost first, and bore for their slides.

    To be called when the box is known.

    Parameters
    ----------
    length
        Of the slides [mm]; None: there are none.
    """
    rows = [opening for opening in carcase.openings if opening.row == "drawer"]
    spec = maker.spec.drawer
    if spec is None or length is None:
        return ()
    return tuple(_planned(maker, carcase, list(reversed(rows)), spec.slides, length))


def _rear(maker: Maker, carcase: Carcase, rows: list[Opening]) -> Dim:
    """Plane z behind which no drawer may reach: the back, or a nailer in front of it [mm]."""
    top = max(opening.y1.value for opening in rows)
    planes = [carcase.seat]
    planes += [
        extent(part, 2)[1]
        for part in maker.parts.values()
        if part.role == "nailer" and part.placed.y.value < top
    ]
    return greatest(*planes) if len(planes) > 1 else planes[0]


def front_plane(maker: Maker, carcase: Carcase, opening: Opening) -> Dim:
    """Plane z that slides lie back from [mm]: the front of the case, or behind an inset front."""
    inset = inset_by(maker, opening)
    return carcase.front if inset is None else carcase.front - inset


def roll_out_plane(maker: Maker, carcase: Carcase, opening: Opening) -> Dim:
    """Plane z that roll-outs' slides lie back from [mm]: the box's front, behind inset doors."""
    plane = front_plane(maker, carcase, opening)
    return plane if plane.value < carcase.depth.value else carcase.depth


def _longest(maker: Maker, carcase: Carcase, rows: list[Opening], kind: SlideKind) -> Dim | None:
    """The longest slides that the depth leaves room for; None, with a finding, where none do."""
    place = maker.place.at("drawers")
    house = maker.house
    rear = _rear(maker, carcase, rows)
    kept = house.slide(kind, "front") + house.slide(kind, "behind")
    doors = next((row for row in rows if row.row == "doors"), rows[0])
    front = front_plane(maker, carcase, rows[0])
    front = roll_out_plane(maker, carcase, doors) if maker.spec.roll_outs else front
    clear = front - kept if rear is maker.zero else front - rear - kept
    room = place.let("slide_room", clear)
    for length in reversed(house.slide_row(kind, "lengths")):
        if not place.over(length, room, "slides of this length are too long for the case"):
            return place.let("slide_length", length)
    maker.findings.append(no_length(maker, kind, room))
    return None


def _planned(
    maker: Maker, carcase: Carcase, rows: list[Opening], kind: SlideKind, length: Dim
) -> Iterator[DrawerPlan]:
    for opening in rows:
        place = maker.place.at(opening.name)
        height = _height(maker, place, opening, kind)
        if height is None:
            continue
        up = opening.y0 + maker.house.slide(kind, "below") + maker.house.slide(kind, "line")
        foot = maker.parts[carcase.left].placed.y
        marked = place.made(
            "slide_line", _to_mark(maker, place, up if foot is maker.zero else up - foot),
            maker.house.causes(f"{place.path}.slide_line", ""),
        )  # fmt: skip
        line = marked if foot is maker.zero else foot + marked
        bottom = place.let("box_bottom", line - maker.house.slide(kind, "line"))
        back = place.let("slides_back", carcase.depth - front_plane(maker, carcase, opening))
        behind = _pad_length(maker, carcase, opening, length)
        pads = [_pad(maker, carcase, hand, opening, (line, behind)) for hand in _HANDS]
        blind = maker.spec.blind
        beside = None if blind is None else hang_partition(maker, carcase, opening)
        left, right = (
            bore_partition(maker, beside, opening.name, kind,
                           (line, _front(maker, kind, back)), _holes(maker, kind, length))
            if beside is not None and hand == blind
            else _bore(maker, side, opening.name, kind, (marked, length, back))
            if pad is None
            else _bore_pad(maker, pad, kind, opening.name, (length, back))
            for hand, side, pad in zip(_HANDS, (carcase.left, carcase.right), pads, strict=True)
        )  # fmt: skip
        wall, clear = _between(maker, carcase, place, pads)
        if beside is not None:
            wall, clear = _beside_blind(maker, wall)
        inset = inset_by(maker, opening) is not None
        plane = front_plane(maker, carcase, opening)
        yield DrawerPlan(
            opening.name, opening.name.replace("_", " "), opening, kind, length, bottom, height,
            (left, right), wall, clear, plane if inset else plane + maker.style("bumper"),
        )  # fmt: skip


def _pad_length(maker: Maker, carcase: Carcase, opening: Opening, length: Dim) -> Dim:
    """A pad begins behind the frame, where its slide does not, and ends before a nailer [mm]."""
    if carcase.frame is None:
        return length
    high = opening.y1.value + maker.style("roll_out_pad").value
    planes = [
        extent(part, 2)[1]
        for part in maker.parts.values()
        if part.role == "nailer" and part.placed.y.value < high
    ]
    rear = greatest(carcase.seat, *planes) if planes else carcase.seat
    return least(length, carcase.depth - rear - maker.style("cut_step"))


def _to_mark(maker: Maker, place: Place, exact: Dim) -> Dim:
    """A height from the side's end, on the grid it is marked in; up, off what lies below."""
    step = maker.style("cut_step").value
    if not step or not exact.value % step:
        return exact
    return place.rounded("slide_line_to_mark", exact, step, Way.UP)[0]


def _height(maker: Maker, place: Place, opening: Opening, kind: SlideKind) -> Dim | None:
    """Height of the box: lower than its opening and than its front.

    None, with a finding, where that leaves too little.
    """
    clear = place.let("opening_height", opening.y1 - opening.y0)
    below = maker.house.slide(kind, "below") + maker.style("drawer_room") / 4
    room = greatest(maker.style("drawer_room"), below)
    behind = front_height(share_of(maker, opening)) - maker.style("drawer_behind_front")
    height = place.let("box_height", least(clear - room, behind))
    over_line = maker.house.slide(kind, "line") + maker.style("drawer_room") / 2
    lowest = greatest(maker.style("drawer_least"), over_line)
    if place.over(lowest, height, "no drawer, its row is too low for one"):
        maker.findings.append(too_low(maker, place.path, opening, height, lowest))
        return None
    return height


def _pad(
    maker: Maker, carcase: Carcase, hand: Hand, opening: Opening, sizes: tuple[Dim, Dim]
) -> Part | None:
    """A pad behind a face frame, as wide as there is room for under the slide's line."""
    line, length = sizes
    room = 2 * (line - opening.y0)
    width = least(maker.style("roll_out_pad"), room)
    return slide_pad(maker, carcase, hand, opening.name, (length, width, line))


def _between(
    maker: Maker, carcase: Carcase, place: Place, pads: list[Part | None]
) -> tuple[Dim, Dim]:
    """Case x of what the left slide is screwed to, and from there to the right one [mm]."""
    wall, clear = carcase.left_thickness, carcase.clear_width
    for number, pad in enumerate(pads):
        if pad is not None:
            clear = clear - pad.finished.thickness
            wall = wall if number else wall + pad.finished.thickness
    if clear is carcase.clear_width:
        return wall, clear
    return place.let("wall", wall), place.let("clear", clear)


def _beside_blind(maker: Maker, wall: Dim) -> tuple[Dim, Dim]:
    """The same beside the partition at a blind side: from it, or up to it [mm]."""
    nodes = maker.house.chain.nodes
    clear = nodes[maker.path("partition.clear")]
    return nodes[maker.path("partition.wall")] if maker.spec.blind == "left" else wall, clear


def _front(maker: Maker, kind: SlideKind, back: Dim) -> Dim:
    """Front end of a slide behind the front edge of the case [mm]."""
    front = maker.house.slide(kind, "front")
    return back + front if back.value else front


def _holes(maker: Maker, kind: SlideKind, length: Dim) -> list[Dim]:
    most = length.value - LAST_HOLE
    return [hole for hole in maker.house.slide_row(kind, "holes") if hole.value <= most]


def _bore_pad(maker: Maker, pad: Part, kind: SlideKind, name: str, sizes: tuple[Dim, Dim]) -> str:
    """The row of pilot holes of one slide along the middle of its pad; returns their path.

    Parameters
    ----------
    sizes
        Length of the slide, and how far its front stands back from the front of the box [mm].
    """
    length, back = sizes
    line = pad.finished.width / 2
    ahead = back + maker.house.slide(kind, "front")
    # What lies against the frame itself is screwed to nothing.
    holes = [hole for hole in _holes(maker, kind, length) if hole.value + ahead.value >= _FIRST]
    from_front = [ahead + hole for hole in holes]
    return bore_along(maker, pad, "slide", kind, line, from_front, asked_by=name)


def _bore(maker: Maker, side: str, name: str, kind: SlideKind, sizes: tuple[Dim, Dim, Dim]) -> str:
    """The row of pilot holes of one slide, from the side's lower end and its front edge.

    Parameters
    ----------
    sizes
        Height of the row from the side's lower end, length of the slide, and how far its front
        stands back from the front of the box [mm].
    """
    house = maker.house
    up, length, back = sizes
    front = _front(maker, kind, back)
    places = tuple((up, front + hole) for hole in _holes(maker, kind, length))
    thickness = maker.parts[side].finished.thickness
    depth = least(house.slide(kind, "depth"), thickness * 2 / 3)
    path = f"{side}.slide_{name}"
    maker.machine(
        side,
        Bores(
            path=path, kind="slide", face="A", datum_l="l0", datum_w="w0", places=places,
            diameter=house.slide(kind, "hole"), depth=depth, asked_by=maker.path(name),
            setup=bore_setup(
                "drill", line=places[0][1], depth=depth, bit="twist bit",
                bit_size=house.slide(kind, "hole"), check=up,
                check_words="from the bottom end to the line of the slide's holes",
            ),
        ),
    )  # fmt: skip
    return path
