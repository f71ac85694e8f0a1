"""Fillers: strips between a run and what it ends at, cut wide and scribed on the day.

A filler is a face, flush with the front edges of the cases, and a lip behind its case edge, which
is screwed to the side of the case.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.casework.parts import Part, PlacedAt, Size
from casewright.dims import Dim, Place, Way, greatest, least
from casewright.geometry import Orientation
from casewright.room.model import Filler
from casewright.room.specs import RunSide, RunSpec
from casewright.survey.walls import SurveyedWall

__all__ = ["GAP_HEIGHTS", "FillerEnd", "build_filler"]

GAP_HEIGHTS = ("low", "middle", "high")
"""Where the gap beside a run is read: at the foot, half way up and at the head of its filler."""


@dataclass(frozen=True, slots=True)
class FillerEnd:
    """One end of a run that a filler closes.

    Parameters
    ----------
    space
        Gap at its narrowest, as planned [mm].
    beyond
        From the end of the wall to the outer edge of the gap: nothing, or in a corner how deep
        the other run stands [mm].
    case_edge
        Where the case's side stands, from the run's left datum [mm].
    """

    side: RunSide
    case: Case
    space: Dim
    beyond: Dim
    case_edge: Dim

    def lift(self, house: House) -> Dim:
        """Of the case's bottom above the floor [mm]."""
        return house.style_dim("wall_bottom") if self.case.spec.is_hung else house.zero


def build_filler(
    house: House,
    run: RunSpec,
    end: FillerEnd,
    widths: Iterable[tuple[Fraction | None, Dim]],
    wall: SurveyedWall | None,
) -> Filler:
    """The filler of one end.

    Its face is as wide as the widest gap and the scribe allowance; the gap counts as it was read
    beside the hung cases, until then as the readings of the wall have it.

    Parameters
    ----------
    widths
        Readings of the wall that count for the run, each with its height above the floor [mm].
    wall
        As surveyed; None: not.
    """
    place = house.chain.place(f"run.{run.key}.filler_{end.side}")
    planned = _gaps(end, tuple(widths), _leans(house, end, wall))
    gaps = tuple(
        place.follows(f"gap_{name}", gap, how="as the wall was read, until it is read itself")
        for name, gap in zip(GAP_HEIGHTS, planned, strict=True)
    )
    widest = place.let("widest_gap", greatest(*gaps))
    narrowest = place.let("narrowest_gap", least(*gaps))
    place.let("taper", widest - narrowest)
    wide, step = widest + house.style_dim("scribe"), house.style_dim("cut_step").value
    if step:
        wide, _ = place.rounded("width_to_cut", wide, step, Way.UP)
    foot = _foot(end, run)
    height = end.case.height if foot is None else end.case.height - foot
    face = _piece(house, end, place, (height, wide), foot)
    place.fit("scribe_left", face.finished.width - widest, Fraction(0), wide.value, face.path)
    lip = _lip(house, end, place, face, narrowest)
    return Filler(place.path, end.side, end.space, face, lip, gaps, end.beyond)


def _gaps(
    end: FillerEnd, widths: tuple[tuple[Fraction | None, Dim], ...], leans: tuple[Dim, Dim, Dim]
) -> tuple[Dim, ...]:
    """Gap at the foot, half way up and at the head [mm].

    What the wall is wider there than at its narrowest may all be at this end.
    """
    if not widths or end.beyond.value:
        return tuple(end.space + lean if lean.value else end.space for lean in leans)
    narrow = least(*(dim for _, dim in widths))
    if all(height is not None for height, _ in widths):
        widths = tuple(sorted(widths, key=lambda row: row[0] or 0))
    dims = [dim for _, dim in widths]
    count = -(-len(dims) // 3)
    start = len(dims) // 3
    parts = (dims[:count], dims[start : start + count], dims[-count:])
    return tuple(
        end.space + greatest(*((lean,) if lean.value else ()), *(dim - narrow for dim in part))
        for part, lean in zip(parts, leans, strict=True)
    )


def _leans(house: House, end: FillerEnd, wall: SurveyedWall | None) -> tuple[Dim, Dim, Dim]:
    """How much wider the lean of the wall at this end makes the gap, low, middle and high."""
    zero = house.zero
    if wall is None or end.beyond.value:
        return zero, zero, zero
    for number, plumb in enumerate(wall.spec.plumbs, start=1):
        if plumb.of == end.side and plumb.lean.value:
            out = wall.read[f"plumb_{number}"] * (end.case.height.value / plumb.over)
            if plumb.lean.value > 0:
                return out, out / 2, zero
            return zero, -out / 2, -out
    return zero, zero, zero


def _foot(end: FillerEnd, run: RunSpec) -> Dim | None:
    """Where it begins over a toe skin that goes on to the wall; None: with its case."""
    if run.trims.toe_skin is None:
        return None
    return next((level.low for level in end.case.levels if level.role == "bottom"), None)


def _piece(
    house: House, end: FillerEnd, place: Place, size: tuple[Dim, Dim], foot: Dim | None
) -> Part:
    """The face of a filler: its case edge at the case, the rest of it over the gap and beyond."""
    left = end.side == "left"
    own = _size(house, end, place, size)
    edges = ("corner edge" if end.beyond.value else "wall edge", "case edge")
    return Part(
        path=place.path,
        mark=house.next_mark(),
        case=place.path.rpartition(".")[0],
        role="filler",
        title=f"{end.side} filler",
        hand=None,
        stock=end.case.spec.box_stock,
        finished=own,
        blank=own,
        grain=True,
        ends=("bottom", "top", *(edges[::-1] if left else edges)),
        edges=(),
        shows=("t1",),
        features=(),
        placed=PlacedAt(
            end.case_edge if left else end.case_edge + own.width,
            end.lift(house) if foot is None else end.lift(house) + foot,
            end.case.face_plane - own.thickness,
            Orientation.of("+y -x +z"),
        ),
    )  # fmt: skip


def _lip(house: House, end: FillerEnd, place: Place, face: Part, narrowest: Dim) -> Part | None:
    """The lip behind a filler's case edge; none where the gap hardly holds it."""
    own = place.at("lip")
    least_gap = face.finished.thickness + house.style_dim("scribe")
    if not own.over(narrowest, least_gap, "a lip behind the filler: the gap holds it"):
        return None
    left = end.side == "left"
    size = _size(house, end, own, (face.finished.length, house.style_dim("filler_lip")))
    x = end.case_edge - size.thickness if left else end.case_edge
    return Part(
        path=own.path,
        mark=house.next_mark(),
        case=face.case,
        role="filler lip",
        title=f"lip of the {face.title}",
        hand=None,
        stock=face.stock,
        finished=size,
        blank=size,
        grain=True,
        ends=("bottom", "top", "rear edge", "front edge"),
        edges=(),
        shows=(),
        features=(),
        placed=PlacedAt(
            x, face.placed.y, face.placed.z - size.width, Orientation.of("+y +z +x")
        ),
    )  # fmt: skip


def _size(house: House, end: FillerEnd, place: Place, size: tuple[Dim, Dim]) -> Size:
    """A piece cut to its size, both ways straying as the saw does."""
    length, width = (
        place.made(name, dim, house.causes(f"{place.path}.{name}", ""))
        for name, dim in zip(("length", "width"), size, strict=True)
    )
    stock = end.case.spec.box_stock
    thickness = place.follows(
        "thickness", house.thickness(stock), house.own_thickness_cause(place.path)
    )
    return Size(length, width, thickness)
