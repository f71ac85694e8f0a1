"""Leaves: how many doors an opening gets, how large each is, whether it can be made."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from casewright.casework.carcase import Carcase, Opening
from casewright.casework.fronts.face_edges import face_edges, share_of
from casewright.casework.maker import Maker
from casewright.casework.specs import FrontSpec, Hand
from casewright.dims import Dim, Measure, Place, Way, tell
from casewright.findings import Finding, Reckoning, Severity
from casewright.sources import INCH

__all__ = ["LeafPlan", "face_place", "front_height", "part_remedy", "plan_leaves", "report"]

_PRACTICE = "common practice"


@dataclass(frozen=True, slots=True)
class LeafPlan:
    """One front as planned, before anything of it is cut: a door's leaf, a drawer's front.

    Parameters
    ----------
    name, title
        Name inside the case: 'door_left'; in words: 'left door'.
    called
        What the leaves of the opening are called together: 'doors'.
    opening
        The opening it covers.
    front
        What was asked for.
    hinge
        Side it swings on, seen from the room; None where it does not swing.
    width, height
        Finished size wanted [mm], not yet on the cutting grid.
    role
        What it is when it is of one piece.
    way
        Which way the size of its slab goes onto the cutting grid.
    """

    name: str
    title: str
    called: str
    opening: Opening
    front: FrontSpec
    hinge: Hand | None
    width: Dim
    height: Dim
    role: str = "door"
    way: Way = Way.CLOSE

    @property
    def to_mark(self) -> str:
        """What is marked on its back, so that it is not turned round."""
        return "its hinge edge and its bottom end" if self.hinge else "its bottom end"

    @property
    def bottom(self) -> Dim:
        """Case height of its lower end [mm]."""
        return _raised(self.opening.face_y0, self.opening.bottom)


def _raised(base: Dim, by: Dim) -> Dim:
    """A height above a base; the base itself is left out of the formula where it is nothing."""
    return base + by if base.path or base.op else by


def face_place(maker: Maker, opening: Opening) -> Place:
    """Place of the numbers that the leaves of an opening share."""
    return maker.place.at("face" if opening.name == "main" else f"{opening.name}_face")


def plan_leaves(maker: Maker, carcase: Carcase, opening: Opening) -> tuple[LeafPlan, ...]:
    """One or two leaves for an opening; none where there is no front or no room for one.

    A leaf fills the face less its reveals and gaps. Sizes come from the box as built.
    """
    front = opening.front
    if front is None or opening.row != "doors":
        return ()
    place = face_place(maker, opening)
    opening = share_of(maker, opening)
    count = front.leaves or (2 if maker.spec.mullion else _count(maker, place, carcase))
    edges = face_edges(maker, carcase, front)
    clear = edges.whole - 2 * edges.edge
    width = place.let("leaf_width", clear if count == 1 else (clear - edges.gap) / 2)
    height = place.let("leaf_height", front_height(opening))
    hands: tuple[Hand, ...] = (front.hinge,) if count == 1 else ("left", "right")
    leaves = tuple(_leaf(opening, front, hand, count, width, height) for hand in hands)
    if not _can_be_made(maker, place, leaves[0]):
        return ()
    return leaves


def _count(maker: Maker, place: Place, carcase: Carcase) -> int:
    widest = maker.style("widest_single_door")
    return 2 if place.over(carcase.width, widest, "two doors, one would be too wide") else 1


def report(maker: Maker, finding: Finding) -> None:
    """Add a finding, but only once where it holds for both leaves of a pair alike."""
    if all(replace(known, path="") != replace(finding, path="") for known in maker.findings):
        maker.findings.append(finding)


def front_height(opening: Opening) -> Dim:
    """Height of the fronts of a row [mm]."""
    low = opening.face_y0
    tall = opening.face_y1 - low if low.path or low.op else opening.face_y1
    return tall - opening.bottom - opening.top


def _leaf(
    opening: Opening, front: FrontSpec, hand: Hand, count: int, width: Dim, height: Dim
) -> LeafPlan:
    name = "door" if count == 1 else f"door_{hand}"
    title = "door" if count == 1 else f"{hand} door"
    called = "door" if count == 1 else "doors"
    if opening.name == "upper":
        name, title, called = f"upper_{name}", f"upper {title}", f"upper {called}"
    elif opening.name != "main":
        number = opening.name.rpartition("_")[2]
        name, title, called = f"{opening.name}_{name}", f"{title} {number}", f"{called} {number}"
    return LeafPlan(name, title, called, opening, front, hand, width, height)


def _least_size(maker: Maker, leaf: LeafPlan) -> tuple[Dim, Dim]:
    """Least width and height that can be made and hung.

    A slab holds a cup beside its pull, and two cups above one another; a frame has rails.
    """
    cup, clear = maker.house.hinge("cup_diameter"), maker.style("hinge_clear")
    pull = maker.style("pull_edge") + maker.house.pull("hole") / 2
    width = maker.house.hinge("bore_high") + cup + pull
    height = 2 * (cup + clear)
    if leaf.front.construction != "slab":
        width = 2 * maker.style("stile") + cup
        height = 2 * maker.style("rail" if leaf.front.construction != "mitred frame" else "stile")
        height = height + cup
    return width, height


def part_remedy(leaf: LeafPlan) -> str:
    """What makes leaves narrower: a pair for a single door, two cases for a pair."""
    is_pair = "doors" in leaf.called
    return "two cases side by side instead of one" if is_pair else "two doors instead of one"


def _roundly(own: Reckoning, name: str, least: Dim) -> Measure:
    """A least size in round numbers of the job's unit: '6 3/8"' for 162 mm."""
    step = INCH / 8 if own.unit == "in" else Fraction(1)
    return own.text(own.rounded(name, least, step, Way.UP))


def _an(word: str) -> str:
    return f"an {word}" if word[0] in "aeiou" else f"a {word}"


def _can_be_made(maker: Maker, place: Place, leaf: LeafPlan) -> bool:
    """Whether there is room for the leaf at all; if not, a finding says what would be right."""
    fits = True
    for word, size, least in zip(
        ("width", "height"), (leaf.width, leaf.height), _least_size(maker, leaf), strict=True
    ):
        if not place.over(least, size, f"no door, its {word} leaves no room for one"):
            continue
        fits = False
        own = maker.reckoning("door size", maker.path(leaf.name))
        told, limit = own.text(size, word), _roundly(own, f"least_{word}", least)
        larger = "wider" if word == "width" else "taller"
        lacks = _roundly(own, "lacks", least - size)
        maker.findings.append(
            Finding(
                rule="door size",
                severity=Severity.STOP,
                path=maker.path(leaf.name),
                says=tell(
                    "no room for the {}: the {} would be {}, {} door takes at least {}",
                    leaf.called, word, told, _an(leaf.front.construction), limit,
                ),
                measured=told.text,
                limit=limit.text,
                source=_PRACTICE,
                remedies=(tell("make the opening {} {}", lacks, larger), "leave the door out"),
                numbers=own.numbers,
            )
        )  # fmt: skip
    return fits
