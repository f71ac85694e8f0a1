"""Slides, planned before the drawers: how long, how high, their holes in the case's sides."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.casework.carcase import Carcase, Opening
from casewright.casework.drawers.findings import no_length, too_low
from casewright.casework.features import Bores
from casewright.casework.fronts.leaves import front_height
from casewright.casework.levels import extent
from casewright.casework.maker import Maker
from casewright.casework.setups import bore_setup
from casewright.casework.specs import SlideKind
from casewright.dims import Dim, Place, Way, greatest, least
from casewright.hardware import LAST_HOLE

__all__ = ["DrawerPlan", "plan_slides", "slide_length"]


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


def _longest(maker: Maker, carcase: Carcase, rows: list[Opening], kind: SlideKind) -> Dim | None:
    """The longest slides that the depth leaves room for; None, with a finding, where none do."""
    place = maker.place.at("drawers")
    house = maker.house
    rear = _rear(maker, carcase, rows)
    kept = house.slide(kind, "front") + house.slide(kind, "behind")
    clear = carcase.depth - kept if rear is maker.zero else carcase.depth - rear - kept
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
        left, right = (
            _bore(maker, side, opening.name, kind, (marked, length))
            for side in (carcase.left, carcase.right)
        )
        title = opening.name.replace("_", " ")
        yield DrawerPlan(
            opening.name, title, opening, kind, length, bottom, height, (left, right),
            carcase.left_thickness, carcase.clear_width, carcase.depth + maker.style("bumper"),
        )  # fmt: skip


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
    behind = front_height(opening) - maker.style("drawer_behind_front")
    height = place.let("box_height", least(clear - room, behind))
    over_line = maker.house.slide(kind, "line") + maker.style("drawer_room") / 2
    lowest = greatest(maker.style("drawer_least"), over_line)
    if place.over(lowest, height, "no drawer, its row is too low for one"):
        maker.findings.append(too_low(maker, place.path, opening, height, lowest))
        return None
    return height


def _bore(maker: Maker, side: str, name: str, kind: SlideKind, sizes: tuple[Dim, Dim]) -> str:
    """The row of pilot holes of one slide, from the side's lower end and its front edge.

    Parameters
    ----------
    sizes
        Height of the row from the side's lower end, and length of the slide [mm].
    """
    house = maker.house
    up, length = sizes
    front = house.slide(kind, "front")
    most = length.value - LAST_HOLE
    holes = [hole for hole in house.slide_row(kind, "holes") if hole.value <= most]
    places = tuple((up, front + hole) for hole in holes)
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
