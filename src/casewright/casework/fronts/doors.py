"""Doors: cut to the box as built, put in front of it, hung on the plates already bored."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import groupby, pairwise

from casewright.casework.carcase import Carcase, Opening
from casewright.casework.cases import Door, Face, Front
from casewright.casework.fronts.applied import cut_applied
from casewright.casework.fronts.constructions import Construction, Corner
from casewright.casework.fronts.cups import bore_cups
from casewright.casework.fronts.face_edges import FaceEdges, face_edges, share_of
from casewright.casework.fronts.frame_and_panel import cut_frame_and_panel
from casewright.casework.fronts.glass import cut_glass
from casewright.casework.fronts.hinges import HingePlan, HungLeaf
from casewright.casework.fronts.leaves import LeafPlan, face_place
from casewright.casework.fronts.mitred_frame import cut_mitred
from casewright.casework.fronts.overlay import arm_constant
from casewright.casework.fronts.pulls import bore_pull
from casewright.casework.fronts.slab import SlabDoor, cut_slab
from casewright.casework.fronts.weights import weight_words
from casewright.casework.maker import Maker
from casewright.casework.specs import Hand, front_spec
from casewright.dims import HAIR, Dim, Place, greatest, tell

__all__ = [
    "add_fronts",
    "corner_of",
    "cut_leaf",
    "face_of",
    "fit_between_rows",
    "fit_gaps",
    "gap_band",
    "hang_fronts",
]


def add_fronts(maker: Maker, carcase: Carcase, plan: HingePlan) -> None:
    """Make the doors of a case: parts, joints, bores, faces, fits and steps.

    To be called when the box is built: its width and height are the doors' measure.
    """
    for _, hung in groupby(plan.leaves, key=lambda h: h.leaf.opening.name):
        _fill(maker, carcase, list(hung))


def hang_fronts(maker: Maker) -> None:
    """Hang the doors: what is over them is set on spacers that stand on them."""
    for front in maker.fronts:
        if isinstance(front, Door):
            _hang(maker, front)


def _fill(maker: Maker, carcase: Carcase, hung: list[HungLeaf]) -> None:
    """Cut all leaves of one opening, then place them by their true sizes."""
    doors = _cut_all(maker, carcase, [item.leaf for item in hung])
    fronts = [_front(maker, carcase, item, door) for item, door in zip(hung, doors, strict=True)]
    maker.fronts.extend(fronts)
    opening = hung[0].leaf.opening
    place = face_place(maker, opening)
    face = face_of(maker, place, carcase, opening, fronts)
    maker.faces.append(face)
    free: Hand = "right" if fronts[0].hinge_side == "left" else "left"
    edges = face_edges(maker, carcase, opening.front)
    fit_gaps(maker, place, face, None if len(fronts) == 2 else free, edges)
    place.fit("top_fit", face.top, *gap_band(maker, opening.top), face.leaves[-1])


def _cut_all(maker: Maker, carcase: Carcase, leaves: list[LeafPlan]) -> list[Construction]:
    """Cut the leaves of an opening; of a pair first the one of which something is known."""
    facts = maker.house.chain.facts

    def is_unknown(leaf: LeafPlan) -> bool:
        return not any(path.startswith(f"{maker.path(leaf.name)}.") for path in facts)

    cut: dict[str, Construction] = {}
    for leaf in sorted(leaves, key=is_unknown):
        closing = leaf
        for first in cut.values():
            closing = replace(leaf, width=_closing_width(maker, carcase, leaf, first))
        cut[leaf.name] = cut_leaf(maker, closing)
    return [cut[leaf.name] for leaf in leaves]


def _closing_width(maker: Maker, carcase: Carcase, leaf: LeafPlan, first: Construction) -> Dim:
    """Width of the second leaf of a pair: as its twin, or what a twin cut off its size leaves."""
    rest = leaf.width - first.width
    step = maker.style("cut_step").value
    if -step / 2 <= rest.value < step:  # the gap between them takes that up
        return leaf.width
    place = face_place(maker, leaf.opening)
    edges = face_edges(maker, carcase, leaf.front)
    place.over(first.width, leaf.width, "this leaf takes what its twin, as cut, leaves")
    return place.let(
        "closing_width",
        edges.whole - 2 * edges.edge - edges.gap - first.width,
    )


def cut_leaf(maker: Maker, leaf: LeafPlan) -> Construction:
    """Cut the pieces of a front as its construction has them."""
    match leaf.front.construction:
        case "slab":
            return SlabDoor(maker, leaf, cut_slab(maker, leaf))
        case "applied frame":
            return cut_applied(maker, leaf)
        case "glass frame":
            return cut_glass(maker, leaf)
        case "frame and panel":
            return cut_frame_and_panel(maker, leaf)
        case "mitred frame":
            return cut_mitred(maker, leaf)


def _front(maker: Maker, carcase: Carcase, hung: HungLeaf, door: Construction) -> Door:
    leaf = hung.leaf
    place = maker.place.at(leaf.name)
    width = place.follows("width", door.width)
    height = place.follows("height", door.height)
    thickness = place.follows("thickness", door.thickness)
    inset = leaf.front.overlay == "inset"
    at = corner_of(maker, place, carcase, leaf, width, thickness if inset else None)
    door.put(at)
    bore, hinges = bore_cups(maker, hung, door, at)
    plate = hung.overlay.plate
    crank = hung.overlay.crank
    overlay = place.let("overlay", arm_constant(maker.house, crank) + bore - plate)
    _fit_reveal(maker, carcase, place, hung, overlay)
    return Door(
        path=place.path,
        title=leaf.title,
        construction=leaf.front.construction,
        hinge_side="left" if leaf.hinge == "left" else "right",
        x=at.x,
        y=at.y,
        z=at.z,
        width=width,
        height=height,
        thickness=thickness,
        parts=door.pieces,
        hinges=hinges,
        bore_distance=bore,
        plate_height=plate,
        overlay=overlay,
        crank=crank,
        pull=bore_pull(maker, leaf, door, at),
        opening=leaf.opening.name,
    )


def _fit_reveal(
    maker: Maker, carcase: Carcase, place: Place, hung: HungLeaf, overlay: Dim
) -> None:
    """What the hinges, as bored, leave bare beside a door, within what their screws give."""
    play = maker.house.hinge("side_play").value
    if carcase.frame is not None:
        off = hung.overlay.wanted - overlay
        place.fit("reveal_as_bored", off, -play, play, place.path)
        return
    inset = hung.leaf.front.overlay == "inset"
    edge = face_edges(maker, carcase, hung.leaf.front).edge.value
    bare = maker.zero - overlay if inset else hung.side_thickness - overlay
    place.fit("reveal_as_bored", bare, edge - play, edge + play, place.path)


def corner_of(
    maker: Maker,
    place: Place,
    carcase: Carcase,
    leaf: LeafPlan,
    width: Dim,
    inset: Dim | None = None,
) -> Corner:
    """Where a leaf hangs: its hinge edge a reveal in from the box's side, else in the middle.

    Parameters
    ----------
    inset
        Thickness of a leaf that lies flush inside the box [mm]; None for one in front of it.
    """
    edges = face_edges(maker, carcase, leaf.front)
    if leaf.hinge is None:
        x = (edges.whole - width) / 2
        x = x if edges.x0 is maker.zero else edges.x0 + x
    elif leaf.hinge == "left":
        x = edges.edge if edges.x0 is maker.zero else edges.x0 + edges.edge
    else:
        x = edges.x1 - edges.edge - width
    z = carcase.front + maker.style("bumper") if inset is None else carcase.front - inset
    return Corner(place.let("x", x), place.let("y", leaf.bottom), place.let("z", z))


def face_of(
    maker: Maker, place: Place, carcase: Carcase, opening: Opening, fronts: Sequence[Front]
) -> Face:
    """Reveals and gaps as the leaves leave them: what rounding took is in them."""
    first, last = fronts[0], fronts[-1]
    gaps = tuple(
        place.let(f"gap_{n}", right.x - left.x - left.width)
        for n, (left, right) in enumerate(pairwise(fronts), start=1)
    )
    edges = face_edges(maker, carcase, opening.front)
    tallest = first.height if len(fronts) == 1 else greatest(*(f.height for f in fronts))
    return Face(
        opening=opening.name,
        x0=edges.x0,
        x1=edges.x1,
        y0=opening.face_y0,
        y1=opening.face_y1,
        left=place.let("left", first.x if edges.x0 is maker.zero else first.x - edges.x0),
        right=place.let("right", edges.x1 - last.x - last.width),
        bottom=place.let("bottom", opening.bottom),
        top=place.let("top", opening.face_y1 - first.y - tallest),
        gaps=gaps,
        leaves=tuple(f.path for f in fronts),
    )


def fit_gaps(maker: Maker, place: Place, face: Face, free: Hand | None, edges: FaceEdges) -> None:
    """Gaps over real things, each with its band. A hinged edge is set by its hinges' screws."""
    count = len(face.leaves)
    for name, gap, wanted in _gaps(face, free, edges):
        place.fit(f"{name}_fit", gap, *gap_band(maker, wanted, leaves=count), face.leaves[-1])


def gap_band(maker: Maker, wanted: Dim, *, leaves: int = 1) -> tuple[Fraction, Fraction]:
    """How far a gap may stray: as the style allows, or what rounding its leaves may come to."""
    tolerance = maker.style("gap_tolerance").value
    rounding = leaves * maker.style("cut_step").value
    return wanted.value - max(tolerance, HAIR * rounding), wanted.value + max(tolerance, rounding)


def _gaps(face: Face, free: Hand | None, edges: FaceEdges) -> Iterator[tuple[str, Dim, Dim]]:
    for number, gap in enumerate(face.gaps, start=1):
        yield f"gap_{number}", gap, edges.gap
    if free:
        yield free, face.left if free == "left" else face.right, edges.edge


def fit_between_rows(maker: Maker, carcase: Carcase) -> None:
    """Fronts over one another: each gap between two rows is a fit of its own."""
    own: dict[str, Front] = {}
    for front in maker.fronts:
        own.setdefault(front.opening, front)
    for below, above in pairwise(carcase.openings):
        lower, upper = own.get(below.name), own.get(above.name)
        if lower is None or upper is None or _is_inset(below) or _is_inset(above):
            continue
        place = face_place(maker, above)
        between = place.let("stack_gap", upper.y - lower.y - lower.height)
        wanted = share_of(maker, below).top + share_of(maker, above).bottom
        place.fit("stack_gap_fit", between, *gap_band(maker, wanted), upper.path)


def _is_inset(opening: Opening) -> bool:
    return opening.front is not None and opening.front.overlay == "inset"


def _hang(maker: Maker, front: Door) -> None:
    glazed = front.construction == "glass frame"
    spec = front_spec(maker.spec, front.opening)
    inset = spec is not None and spec.overlay == "inset"
    beside = "hinge strips" if maker.turned else "sides"
    depth = f"then its depth, until it is flush with the {beside}" if inset else "then its depth"
    count = len(front.hinges)
    maker.step(
        "hang",
        front.path,
        "-z",
        tell(
            "Press the {} hinges into the {}{} screw them down, and clip it on its plates at the "
            "{} side. Set its height first, then its side reveal, {}.",
            count,
            front.title,
            weight_words(maker, front.path),
            front.hinge_side,
            depth,
        ),
        cautions=("lift_door", "glass_edges") if glazed else ("lift_door",),
    )
