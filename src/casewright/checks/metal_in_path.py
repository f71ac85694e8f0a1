"""Brads and screws where a bit or a cutter goes.

A brad in the way of a bit chips it, throws it off its line, and the hole is spoilt; one that ends
in a hole keeps a pin, a plate's screw or a pull's screw from going in. What is bored or trimmed
once parts are together meets the metal that holds them: cups, plates, slides, pins and pulls, and
the edges that are trimmed flush. Brads wander: 1/8 in (3 mm) beside the cutter is kept free. The
remedy is always the same: that one brad an inch along its row.

Passes
------
A door of 39 in with frame strips nailed on a slab: brads lie between the holes of its pull.

Fails
-----
The same door 22 in high, where the second brad stands on the line of the pull's upper hole.

Sources
-------
`common practice`: an inch along the row. How far a brad wanders is from memory. Each row is taken
to be driven where the card says.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.features import Bores, Cut, Feature
from casewright.casework.parts import Part
from casewright.checks.rods import Row, Span, outer_box, own_axes, row_of_rods, span_along
from casewright.checks.rule import Breach, Rule
from casewright.checks.words import reckoning
from casewright.dims import Origin, tell
from casewright.findings import Limit, Reckoning, Severity
from casewright.geometry import Box
from casewright.room.model import Room

__all__ = ["RULE"]

_NAME = "metal in path"
_FREE = Limit("metal.free", "1/8", "3", "kept free beside a cutter: brads wander")
_INCH = Limit("metal.along", "1", "25", "so far along its row at a time")
_ROW = Origin("solved", "where its row runs: from the first on, each so far from the one before")

_ALONG = (("to the right", "to the left"), ("higher", "lower"), ("farther front", "farther back"))
"""Words for a way along the three axes of a case, up and down them."""

_ENDS = (("left", "right"), ("lower", "upper"), ("rear", "front"))

_NAMES = {"hinge cup": "cup", "pull": "hole for the pull", "hinge plate": "hole for a hinge plate",
          "shelf pins": "hole for a shelf pin", "slide": "hole for a slide"}  # fmt: skip


def _examine(room: Room) -> Iterator[Breach]:
    free = _FREE.of(room.spec.unit)
    for case in room.cases:
        parts = {part.path: part for part in case.parts}
        worked = {
            part.path: features
            for part in case.parts
            if (features := [each for each in part.features if _may_meet(part, each)])
        }
        for joint in case.joints:
            for held in joint.fastenings:
                if held.line is None:
                    continue
                met = [path for path in (*held.through, held.into) if path in worked]
                row = row_of_rods(joint, held, parts) if met else None
                if row is not None:
                    both = [(parts[path], worked[path]) for path in met]
                    yield from _in_row(room, row, both, free)


def _may_meet(part: Part, feature: Feature) -> bool:
    """Whether a bit goes there at or after assembly: a hole, an edge trimmed flush, a rebate."""
    if isinstance(feature, Bores):
        return feature.kind != "pocket"
    if feature.kind == "trim":
        return True
    return feature.kind == "rebate" and bool(part.front) and feature.runs == "l"


def _in_row(
    room: Room, row: Row, worked: list[tuple[Part, list[Feature]]], free: Fraction
) -> Iterator[Breach]:
    """One word for the first feature that the row runs into: the same hole may go on through."""
    for part, features in worked:
        own = own_axes(part, row.box)
        for feature in features:
            spans = [span_along(part, box, row.along) for box in _met(feature, part, own, free)]
            hit = next((at for span in spans if (at := row.nearest(span)) is not None), None)
            if hit is not None and feature.kind == "trim":
                yield _trimmed(room, row, part, feature)
                return
            if hit is not None:
                yield _breach(room, row, hit, (part, feature), spans)
                return


def _met(feature: Feature, part: Part, row: Box, free: Fraction) -> Iterator[Box]:
    """Holes and rebates that a row's metal comes near, in part axes [mm]: a hole as a square."""
    if isinstance(feature, Cut):
        cut = _rebate(feature, part)
        if feature.kind == "trim":
            cut = cut._replace(y0=cut.y0 - free, y1=cut.y1 + free)
        if cut.meets(row):
            yield cut
        return
    size = part.finished
    thick, far_l, far_w = size.thickness.value, feature.datum_l == "l1", feature.datum_w == "w1"
    deep = thick if feature.depth is None else feature.depth.value
    low, high = (thick - deep, thick) if feature.face == "A" else (Fraction(0), deep)
    if high <= row.z0 or row.z1 <= low:
        return
    reach = feature.diameter.value / 2 + free
    long, wide = size.length.value, size.width.value
    y0, y1 = (wide - row.y1, wide - row.y0) if far_w else (row.y0, row.y1)
    y0, y1 = y0 - reach, y1 + reach
    lines = {across for _, across in feature.places}  # holes of a column share theirs
    beside = {line for line in lines if y0 < line.value < y1}
    if not beside:
        return
    for along, across in feature.places:
        x = long - along.value if far_l else along.value
        if across in beside and row.x0 - reach < x < row.x1 + reach:
            y = wide - across.value if far_w else across.value
            yield Box(x - reach, x + reach, y - reach, y + reach, low, high)


def _rebate(cut: Cut, part: Part) -> Box:
    """A rebate along a frame's member, in part axes [mm]."""
    wide, thick = part.finished.width.value, part.finished.thickness.value
    low = wide - cut.at.value - cut.width.value if cut.datum[1] == "1" else cut.at.value
    start = Fraction(0) if cut.start is None else cut.start.value
    end = part.finished.length.value if cut.end is None else cut.end.value
    deep = cut.depth.value
    under = (thick - deep, thick) if cut.face == "A" else (Fraction(0), deep)
    return Box(start, end, low, low + cut.width.value, *under)


def _breach(
    room: Room, row: Row, at: Fraction, struck: tuple[Part, Feature], spans: list[Span]
) -> Breach:
    part, feature = struck
    own, name = reckoning(room, _NAME, feature.path), row.held.kind
    low, high = outer_box(part)[2 * row.along : 2 * row.along + 2]
    end, _ = _ENDS[row.along]
    rests_on = [dim for dim in (row.held.edge, row.held.pitch) if dim is not None]
    off = Fraction(min(at - low, high - at))
    place = own.length(own.worked("place", off, _ROW, *rests_on))
    nearer = end if at - low <= high - at else _ENDS[row.along][1]
    return Breach(
        feature.path,
        tell(
            "a {} of {} runs where the {} of the {} goes, {} from its {} end",
            name,
            row.joint.path,
            _NAMES.get(feature.kind, feature.kind),
            part.title,
            place,
            nearer,
        ),
        measured=place.text,
        limit=f"{own.length(own.limit(_FREE)).text} beside the cutter",
        remedies=(_way_out(own, row, at, spans), f"no {name} there: glue and a clamp hold"),
        own=own,
    )


def _trimmed(room: Room, row: Row, part: Part, feature: Feature) -> Breach:
    """A row along an edge that is trimmed flush: all of it is in the way, not one of it."""
    own, name = reckoning(room, _NAME, feature.path), row.held.kind
    free = own.length(own.limit(_FREE))
    return Breach(
        feature.path,
        f"the {name}s of {row.joint.path} run along the edge of the {part.title} that is trimmed "
        "flush: the bit meets them",
        measured=own.length(row.held.line[1]).text if row.held.line is not None else "",
        limit=f"{free.text} beside the cutter",
        remedies=(
            tell(
                "drive them along the middle of the {}, {} and more from that edge",
                part.title,
                free,
            ),
            f"no {name}s there: glue and clamps hold",
        ),
        own=own,
    )


def _way_out(own: Reckoning, row: Row, at: Fraction, spans: list[Span]) -> str:
    """The next place for the brad that is free: an inch at a time, down first."""
    inch = own.limit(_INCH)
    up, down = _ALONG[row.along]
    for times in (1, 2, 3):
        for word, sign in ((down, -1), (up, 1)):
            place = at + sign * times * inch.value
            if not any(low < place + row.half and place - row.half < high for low, high in spans):
                by = own.length(inch if times == 1 else times * inch, "along")
                return tell("drive that {} {} {}", row.held.kind, by, word)
    return f"leave that {row.held.kind} out"


RULE = Rule(_NAME, Severity.CARE, __doc__ or "", "common practice", _examine)
