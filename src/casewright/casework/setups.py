"""How the tools of the shop are set for each cut and each row of holes."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal, NamedTuple

from casewright.casework.features import Setup
from casewright.casework.house import House
from casewright.dims import Dim, Place

__all__ = [
    "bevel_setup",
    "bore_setup",
    "cross_dado_setup",
    "cutout_setup",
    "edge_groove_setup",
    "finger_setup",
    "mitre_setup",
    "mortise_setup",
    "notch_setup",
    "pocket_setup",
    "rear_notch_setup",
    "rip_cut_setup",
    "slot_setup",
    "tongue_setup",
]


_BORING = {("hinge jig", "cup bit"): "drill_cup", ("pin jig", "brad-point bit"): "drill_pins"}
"""Holes with a danger of their own, by jig and bit."""


class _Check(NamedTuple):
    """What to measure on the first piece: its size [mm], in words."""

    size: Dim
    words: str


def _passes(place: Place, width: Dim, bit: Dim, because: str) -> int:
    whole = place.times(width, bit, because)
    return whole if bit.value * whole == width.value else whole + 1


def rip_cut_setup(
    house: House, place: Place, *, at: Dim, width: Dim, depth: Dim, name: str
) -> Setup:
    """A rabbet or groove along the length: the long edge rides the table saw's fence.

    Without a table saw it is routed along a straightedge.
    """
    far = _far_wall(place, "edge", at + width, name)
    if house.shop.has("table saw"):
        kerf = house.kerf()
        passes = _passes(place, width, kerf, f"passes of the blade for the {name}")
        return Setup(
            "table saw", fence=at, depth=depth, passes=passes, bit="saw blade", bit_size=kerf,
            check=far.size, check_words=far.words, cautions=("saw_partial_cut",),
        )  # fmt: skip
    return _routed(house, place, at=at, width=width, depth=depth, far=far)


def edge_groove_setup(house: House, place: Place, *, at: Dim, width: Dim, depth: Dim) -> Setup:
    """A groove in a long edge, face A always to the fence, so that all members stay flush.

    With the tools that the shop owns: a slot cutter on the router table, a dado stack or the
    blade itself on the table saw, at last a router with an edge guide.
    """
    far = _Check(place.let("face_to_far_wall", at + width), "from face A to the groove's far wall")
    has = house.shop.has
    if has("router table") and has("slot cutter"):
        return Setup(
            "router table", fence=at, depth=depth, bit="slot cutter", check=far.size,
            check_words=far.words, cautions=("router_table",),
        )  # fmt: skip
    if not has("table saw"):
        sizes = {"at": at, "width": width, "depth": depth}
        return _routed(house, place, far=far, caution="router_on_edge", **sizes)
    if has("dado stack"):
        return Setup(
            "table saw", fence=at, depth=depth, bit="dado stack packed to", bit_size=width,
            check=far.size, check_words=far.words, cautions=("saw_on_edge", "dado_stack"),
        )  # fmt: skip
    kerf = house.kerf()
    return Setup(
        "table saw", fence=at, depth=depth, bit="saw blade", bit_size=kerf,
        passes=_passes(place, width, kerf, "passes of the blade for the groove"),
        check=far.size, check_words=far.words, cautions=("saw_on_edge",),
    )  # fmt: skip


def cutout_setup(house: House, place: Place, *, at: Dim, width: Dim, depth: Dim) -> Setup:
    """An opening through a panel: routed along straightedges clamped on all four lines."""
    words = "from the front edge to the opening's far side"
    far = _Check(place.let("front_to_far_side", at + width), words)
    routed = _routed(house, place, at=at, width=width, depth=depth, far=far)
    passes = _passes(place, depth, house.style_dim("router_bite"), "depth of one pass")
    return replace(routed, passes=passes, cautions=(*routed.cautions, "cutout_drops"))


def mortise_setup(house: House, place: Place, *, at: Dim, width: Dim, depth: Dim) -> Setup:
    """A mortise in the edge of a stile: a router with an edge guide on face A."""
    words = "from face A to the mortise's far wall"
    far = _Check(place.let("face_to_far_wall", at + width), words)
    sizes = {"at": at, "width": width, "depth": depth}
    return _routed(house, place, far=far, caution="router_on_edge", **sizes)


def bevel_setup(house: House, face: Dim) -> Setup:
    """A long edge bevelled at 45 degrees: ripped along the fence, its show face up.

    Without a table saw it is sawn along a guide, from a board that is wider by some way.

    Parameters
    ----------
    face
        What is left of the show face [mm].
    """
    words = "across the show face, from the inner edge to the bevel"
    if house.shop.has("table saw"):
        return Setup("table saw", bit="saw blade at 45 degrees, the show face up", check=face,
                     check_words=words, cautions=("saw_bevel",))  # fmt: skip
    return Setup("circular saw", bit="saw blade at 45 degrees along a guide, on a wider board",
                 check=face, check_words=words, cautions=("saw_guided",))  # fmt: skip


def mitre_setup(house: House, *, long: Dim) -> Setup:
    """A mitred end: cut at 45 degrees on the outer edge, all of one length against one stop."""
    words = "from long point to long point"
    has = house.shop.has
    if has("mitre saw"):
        return Setup(
            "mitre saw", stop=long, bit="saw blade at 45 degrees", check=long, check_words=words,
            cautions=("mitre_saw",),
        )  # fmt: skip
    if has("table saw"):
        return Setup(
            "table saw", stop=long, bit="saw blade, mitre gauge at 45 degrees", check=long,
            check_words=words, cautions=("saw_mitre",),
        )  # fmt: skip
    return Setup(
        "circular saw", stop=long, bit="saw blade along a guide at 45 degrees", check=long,
        check_words=words, cautions=("saw_guided",),
    )  # fmt: skip


def slot_setup(house: House, place: Place, *, at: Dim, width: Dim, depth: Dim) -> Setup:
    """A slot for a spline in a mitred end, as far from face A as the groove for the panel."""
    far = _Check(place.let("face_to_far_wall", at + width), "from face A to the slot's far wall")
    has = house.shop.has
    if has("router table") and has("slot cutter"):
        return Setup(
            "router table", fence=at, depth=depth, bit="slot cutter", check=far.size,
            check_words=far.words, cautions=("router_mitre",),
        )  # fmt: skip
    if not has("table saw"):
        sizes = {"at": at, "width": width, "depth": depth}
        return _routed(house, place, far=far, caution="router_on_edge", **sizes)
    kerf = house.kerf()
    return Setup(
        "table saw", fence=at, depth=depth, bit="saw blade, the end held in a 45-degree cradle",
        bit_size=kerf, passes=_passes(place, width, kerf, "passes of the blade for the slot"),
        check=far.size, check_words=far.words, cautions=("saw_cradle",),
    )  # fmt: skip


def tongue_setup(house: House, place: Place, *, long: Dim, depth: Dim) -> Setup:
    """One cheek of a tongue, across the end of a rail that lies flat on the table.

    A stop decides how long the tongue is, so that all rails of a frame are alike.
    """
    words = "from the rail's end to the shoulder"
    has = house.shop.has
    if has("table saw") and has("dado stack"):
        return Setup(
            "table saw", depth=depth, stop=long, bit="dado stack", check=long, check_words=words,
            cautions=("saw_rail_end", "dado_stack"),
        )  # fmt: skip
    if has("router table"):
        bit = house.bit(long)
        passes = _passes(place, long, bit, "passes of the bit for the cheek") if bit else 1
        return Setup(
            "router table", depth=depth, stop=long, passes=passes, bit="straight bit",
            bit_size=bit, check=long, check_words=words, cautions=("router_rail_end",),
        )  # fmt: skip
    if has("table saw"):
        kerf = house.kerf()
        return Setup(
            "table saw", depth=depth, stop=long, bit="saw blade", bit_size=kerf,
            passes=_passes(place, long, kerf, "passes of the blade for the cheek"),
            check=long, check_words=words, cautions=("saw_rail_end",),
        )  # fmt: skip
    far = _far_wall(place, "end", long, "cheek")
    sizes = {"at": house.zero, "width": long, "depth": depth}
    return _routed(house, place, far=far, caution="router_ganged", **sizes)


def cross_dado_setup(
    house: House, place: Place, *, at: Dim, width: Dim, depth: Dim, name: str
) -> Setup:
    """A dado or rabbet across the grain: routed against a straightedge, square to the edge.

    A long side is never stood with its short end against a saw's fence (common practice).
    """
    far = _far_wall(place, "end", at + width, name)
    caution = "router_ganged" if name == "lap" else "router_feed"
    return _routed(house, place, at=at, width=width, depth=depth, far=far, caution=caution)


def _far_wall(place: Place, datum: Literal["edge", "end"], size: Dim, name: str) -> _Check:
    """The far wall of a cut from its datum: what tells on the first piece."""
    words = f"from the datum {datum} to the far wall of the {name.replace('_', ' ')}"
    return _Check(place.let(f"{name}_far_wall", size), words)


def _routed(
    house: House,
    place: Place,
    *,
    at: Dim,
    width: Dim,
    depth: Dim,
    far: _Check,
    caution: str = "router_feed",
) -> Setup:
    bit = house.bit(width)
    if bit is None:
        return Setup(
            "router", fence=at, depth=depth, bit="a straight bit no wider than the cut",
            check=far.size, check_words=far.words, cautions=(caution,),
        )  # fmt: skip
    passes = _passes(place, width, bit, "passes of the router for this width")
    depth_passes = _passes(place, depth, house.style_dim("router_bite"), "depth of one pass")
    return Setup(
        "router", fence=at, depth=depth, passes=passes * depth_passes,
        bit="straight bit", bit_size=bit, check=far.size, check_words=far.words,
        cautions=(caution,),
    )  # fmt: skip


def rear_notch_setup(house: House, *, along: Dim, across: Dim) -> Setup:
    """A corner of a small piece, nibbled out, pass beside pass up to a stop.

    On the table saw it stands on edge against the mitre gauge; else it is routed, clamped flat.

    Parameters
    ----------
    along, across
        How long and how high the notch is [mm].
    """
    saws = house.shop.has("table saw")
    return Setup(
        "table saw" if saws else "router", depth=across, stop=along,
        bit=f"{'mitre gauge' if saws else 'straight bit along a guide'}, pass beside pass",
        check=along, check_words="from the end to the inner wall of the notch",
        cautions=("saw_gauge_notch" if saws else "router_small_notch",),
    )  # fmt: skip


def notch_setup(*, along: Dim, across: Dim) -> Setup:
    """A corner taken out with the circular saw, finished with a hand saw."""
    return Setup(
        "circular saw", fence=across, stop=along, bit="saw blade", check=along,
        check_words="from the bottom end to the top of the notch",
        cautions=("saw_stopped_cut",),
    )  # fmt: skip


def bore_setup(
    tool: str,
    *,
    line: Dim,
    depth: Dim | None,
    bit: str,
    bit_size: Dim,
    check: Dim,
    check_words: str,
) -> Setup:
    """Round holes from a jig: the line from the datum edge, a collar for the depth.

    Parameters
    ----------
    depth
        None: right through [mm].
    """
    caution = "drill_through" if depth is None else _BORING.get((tool, bit), "drill_clamp")
    return Setup(
        tool, fence=line, depth=depth, bit=bit, bit_size=bit_size, collar=depth, check=check,
        check_words=check_words, cautions=(caution,),
    )  # fmt: skip


def pocket_setup(thickness: Dim, from_end: Dim) -> Setup:
    """Pockets: jig and collar set to the board's thickness; a test piece first."""
    return Setup(
        "pocket-hole jig", fence=from_end, depth=thickness, bit="stepped pocket bit",
        collar=thickness, check=thickness,
        check_words="jig and collar set to this thickness; the test screw ends mid-thickness",
        cautions=("drill_pocket",),
    )  # fmt: skip


def finger_setup(house: House, height: Dim) -> Setup:
    """Slots of a box joint: the piece on end against a finger jig, one slot after the other.

    Parameters
    ----------
    height
        Of blade or bit: the thickness of the mate [mm].
    """
    tool = "table saw" if house.shop.has("table saw") else "router"
    return Setup(
        tool, depth=height, bit="finger jig, its pin as wide as a finger", check=height,
        check_words="height of blade or bit: a finger ends flush with its mate",
        cautions=("saw_finger_jig" if tool == "table saw" else "router_finger_jig",),
    )  # fmt: skip
