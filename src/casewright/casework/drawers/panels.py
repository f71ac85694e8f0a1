"""Fronts that do not swing: of drawers, screwed on from inside the box; and false fronts."""

from __future__ import annotations

from dataclasses import replace

from casewright.casework.carcase import Carcase, Opening
from casewright.casework.cases import Front
from casewright.casework.drawers.boxes import DrawerBox
from casewright.casework.drawers.pulls import bore_panel_pull
from casewright.casework.features import Bores, Plane
from casewright.casework.fronts.constructions import Construction
from casewright.casework.fronts.doors import (
    corner_of,
    cut_leaf,
    face_of,
    fit_gaps,
    gap_band,
)
from casewright.casework.fronts.face_edges import face_edges, low_front, share_of
from casewright.casework.fronts.leaves import LeafPlan, face_place, front_height
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.parts import Part
from casewright.casework.rows import rows_overlay
from casewright.casework.setups import bore_setup
from casewright.dims import Dim, Place, Way, least, tell

__all__ = ["add_drawer_front", "add_false_fronts", "hang_false_fronts"]


def add_drawer_front(maker: Maker, carcase: Carcase, box: DrawerBox) -> str:
    """The front of a drawer, fixed to its box; returns its path."""
    opening = box.plan.opening
    leaf = _leaf(maker, carcase, opening, f"{box.plan.name}.front",
                 f"front of {box.plan.title}", "drawer front")  # fmt: skip
    panel, front = _front(maker, carcase, leaf)
    off = None
    if maker.spec.blind is not None:
        off = box.place.let("front_off_middle", front.x + front.width / 2 - box.x - box.width / 2)
    pull = bore_panel_pull(maker, leaf, panel, front.y, box, off=off)
    maker.fronts[-1] = replace(front, pull=pull)
    _screw_on(maker, leaf, panel, box.front, f"{box.plan.name}.front", maker.zero)
    return front.path


def add_false_fronts(maker: Maker, carcase: Carcase) -> None:
    """False fronts, screwed to the rail behind them."""
    for opening in carcase.openings:
        if opening.row != "false front":
            continue
        title = opening.name.replace("_", " ")
        leaf = _leaf(maker, carcase, opening, opening.name, title, "false front")
        panel, front = _front(maker, carcase, leaf)
        rail = maker.parts[maker.path(_behind(opening, maker))]
        pull = bore_panel_pull(maker, leaf, panel, front.y, None)
        maker.fronts[-1] = replace(front, pull=pull)
        outline = Outline(
            rail.path, maker.house.chain.place(rail.path), rail.stock, rail.finished, rail.blank,
            rail.edges,
        )  # fmt: skip
        air = _air(maker, carcase, front, leaf)
        _screw_on(maker, leaf, panel, outline, opening.name, air,
                  covered=_covered(maker, rail, front))  # fmt: skip


def _covered(maker: Maker, rail: Part, front: Front) -> Dim:
    """How far up from a rail's lower edge its false front covers it [mm]: less under a crown.

    Where corner blocks lie behind it, no more than up to them: a driver goes in under these.
    """
    wide = rail.finished.width
    blocks = [part for part in maker.parts.values() if part.role == "corner block"]
    if blocks:
        return wide - blocks[0].finished.thickness
    if maker.spec.crown is None:
        return wide
    return least(wide, front.y + front.height - rail.placed.y)


def _behind(opening: Opening, maker: Maker) -> str:
    """The rail that a false front is screwed to: of the box, or of the face frame."""
    backer = f"frame.backer_{opening.name}"
    return backer if maker.path(backer) in maker.parts else "front_rail"


def _air(maker: Maker, carcase: Carcase, front: Front, leaf: LeafPlan) -> Dim:
    """Between a false front and what it is screwed to [mm]: its bumpers, or what is left."""
    if leaf.front.overlay != "inset":
        return maker.style("bumper")
    if not maker.spec.framed:
        return maker.style("bumper")
    return maker.place.at(leaf.name).let("air", front.z - carcase.depth)


def hang_false_fronts(maker: Maker) -> None:
    """Fix the false fronts: from inside, through the rail."""
    for front in maker.fronts:
        if front.opening.partition("_")[0] != "false":
            continue
        joints = tuple(j.path for j in maker.joints if j.path == f"{front.path}.joint")
        inset = rows_overlay(maker.spec) == "inset"
        maker.step(
            "hang", front.path, "-z",
            tell(
                "Stick bumpers on the back of the {}; set it with spacers of {} on what is below "
                "it, even at both sides; clamp it, and drive the screws from inside through the "
                "rail.",
                front.title, maker.house.said(maker.style("inset_gap" if inset else "gap")),
            ),
            joints=joints, cautions=("clamp_screws",),
        )  # fmt: skip


def _leaf(
    maker: Maker, carcase: Carcase, opening: Opening, name: str, title: str, role: str
) -> LeafPlan:
    """The front of a row across the whole case; too low for a frame it is a slab."""
    place = face_place(maker, opening)
    front = opening.front
    if front is None:
        msg = f"{opening.name} has no front"
        raise ValueError(msg)
    edges = face_edges(maker, carcase, front)
    width = place.let("leaf_width", edges.whole - 2 * edges.edge)
    shared = share_of(maker, opening)
    height = place.let("leaf_height", front_height(shared))
    least = 3 * maker.style("rail")
    if front.construction != "slab":
        place.over(least, height, "a slab, the front is too low for a frame")
    front = low_front(maker, shared) or front
    return LeafPlan(name, title, title, shared, front, None, width, height, role)


def _front(maker: Maker, carcase: Carcase, leaf: LeafPlan) -> tuple[Construction, Front]:
    """Cut and put a front; its face, with reveals and gaps as fits."""
    panel = cut_leaf(maker, leaf)
    place = maker.place.at(leaf.name)
    width = place.follows("width", panel.width)
    height = place.follows("height", panel.height)
    thickness = place.follows("thickness", panel.thickness)
    inset = thickness if leaf.front.overlay == "inset" else None
    at = corner_of(maker, place, carcase, leaf, width, inset)
    panel.put(at)
    front = Front(
        path=place.path, title=leaf.title, construction=leaf.front.construction, x=at.x, y=at.y,
        z=at.z, width=width, height=height, thickness=thickness, parts=panel.pieces, pull="",
        opening=leaf.opening.name,
    )  # fmt: skip
    maker.fronts.append(front)
    shared = face_place(maker, leaf.opening)
    face = face_of(maker, shared, carcase, leaf.opening, [front])
    maker.faces.append(face)
    fit_gaps(maker, shared, face, "right", face_edges(maker, carcase, leaf.front))
    shared.fit("top_fit", face.top, *gap_band(maker, leaf.opening.top), front.path)
    return panel, front


def _screw_on(
    maker: Maker, leaf: LeafPlan, panel: Construction, behind: Outline, name: str, air: Dim,
    *, covered: Dim | None = None,
) -> None:  # fmt: skip
    """Holes in what is behind a front, and the screws that hold it from there.

    Parameters
    ----------
    behind
        The box's front, or a rail.
    air
        Between the two [mm].
    covered
        How far up the front covers what is behind it [mm]; None: all of it.
    """
    slab = maker.parts[panel.cup_part]
    place = maker.place.at(name)
    passed = behind.thickness if air is maker.zero else behind.thickness + air
    # A point keeps a sixth of the front's thickness from its face (common practice).
    length = maker.house.screw_for("front_screw", passed, slab.finished.thickness * 5 / 6)
    rows = _rows(maker, place, behind, covered or behind.width)
    count = 0
    along = maker.style("front_screw_end")
    if air is not maker.zero:
        # Twice as far in on a rail, clear of the pockets in its ends.
        along = least(2 * along, behind.length / 3)
    for end in ("l0", "l1"):
        places = tuple((along, row) for row in rows)
        count += len(places)
        maker.machine(
            behind.path,
            Bores(
                path=f"{behind.path}.front_screws_{end}", kind="front screw", face="A",
                datum_l=end, datum_w="w0", places=places,
                diameter=maker.style("front_screw_hole"), depth=None,
                asked_by=maker.path(leaf.name),
                setup=bore_setup(
                    "drill", line=rows[0], depth=None, bit="twist bit",
                    bit_size=maker.style("front_screw_hole"),
                    check=along,
                    check_words="from the end to the middle of the hole",
                ),
            ),
        )  # fmt: skip
    plane: Plane = "t0" if air is maker.zero else "t1"
    maker.join(
        f"{name}.joint", "face", (slab.path, "t0"), (behind.path, plane), gap=air,
        fastenings=(Fastening("front screw", count, length, (behind.path,), slab.path),),
    )  # fmt: skip


def _rows(maker: Maker, place: Place, behind: Outline, covered: Dim) -> tuple[Dim, ...]:
    """Heights of the screws on what they pass: two, or one where it is low [mm]."""
    grooves = [
        feature.at + feature.width
        for feature in maker.cuts_of(behind.path)
        if feature.kind == "groove"
    ]
    edge = maker.style("front_screw_end") / 2
    low = grooves[0] + edge if grooves else edge
    high = covered - edge
    step = maker.style("cut_step").value
    if place.over(low + edge, high, "one row of screws, what they pass is low"):
        return (place.rounded("screw_row", (low + high) / 2, step, Way.NEAREST)[0],)
    return (place.rounded("screw_row", low, step, Way.UP)[0], high)
