"""Lids over several window seats: one board along a run, laid on when its boxes stand joined.

L - 2g long and D + oh wide, as a lid over one box is (common practice).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Literal

from casewright.casework.features import Plane
from casewright.casework.house import House
from casewright.casework.parts import EdgeTreatment, Part, PlacedAt, Size
from casewright.casework.specs import CaseSpec
from casewright.dims import Dim, Place, total
from casewright.geometry import Orientation
from casewright.room.board_screws import BoardScrews
from casewright.room.model import Run
from casewright.room.trims.model import Trim, TrimPiece

__all__ = ["build_seat_lid"]

_POINT = Fraction(5, 6)
"""How far into a fixed lid the screws under it may go (common practice)."""

_TREATED: tuple[Plane, ...] = ("l0", "l1", "w0")


def build_seat_lid(house: House, run: Run) -> Trim | None:
    """The lid of a run of seats; None where each case has its own, or none."""
    if not run.spec.one_lid:
        return None
    path = f"run.{run.spec.key}.seat_lid"
    part = _board(house, run, house.chain.place(path).at("piece"))
    screws = tuple(_screws(house, run, path, part))
    return Trim(path, "seat lid", "seat lid", (), (TrimPiece(part),), screws=screws)


def _screws(house: House, run: Run, path: str, lid: Part) -> Iterator[BoardScrews]:
    """Up through the stretchers of every box into a fixed lid, short of its face."""
    place, apart = house.chain.place(path), house.style_dim("lid_screws")
    for case in run.cases if run.cases[0].spec.lid == "fixed" else ():
        for part in case.parts:
            if part.role != "stretcher":
                continue
            most = lid.finished.thickness * _POINT
            screw = house.screw_for("drawer_screw", part.finished.thickness, most)
            along = place.times(part.finished.length, apart, "screws along a stretcher")
            name = f"{path}.screws.{part.path}"
            yield BoardScrews(name, max(2, along), screw, part.path, lid.path)


def _board(house: House, run: Run, place: Place) -> Part:
    first, last, gap = run.cases[0], run.cases[-1], house.style_dim("gap")
    start = place.let("start", run.starts[0] + gap)
    end = run.starts[-1] + last.overall_width - gap
    edges = _edges(house, first.spec)
    own = house.own_thickness_cause(place.path)
    thickness = place.follows("thickness", house.thickness(first.spec.lid_stock), own)
    long, long_blank = _cut(house, place, "length", end - start, edges)
    reach = first.face_plane + house.style_dim("lid_overhang")
    wide, wide_blank = _cut(house, place, "width", reach, edges)
    _hold_fingers(house, run, place)
    return Part(
        path=place.path, mark=house.next_mark(), case=f"run.{run.spec.key}", role="lid",
        title="seat lid", hand=None, stock=first.spec.lid_stock,
        finished=Size(long, wide, thickness), blank=Size(long_blank, wide_blank, thickness),
        grain=True, ends=("left", "right", "front", "back"), edges=edges,
        shows=(*_TREATED, "t1"), features=(),
        placed=PlacedAt(start, first.height, wide, Orientation.of("+x -z +y")),
    )  # fmt: skip


def _edges(house: House, spec: CaseSpec) -> tuple[EdgeTreatment, ...]:
    """Both ends and the front edge treated as those of its boxes are."""
    if spec.edge == "painted":
        thick, stock = house.painted_edge(spec.lid_stock), ""
    else:
        is_band = spec.edge == "band"
        thick = house.style_dim("band" if is_band else "lip")
        stock = spec.band_stock if is_band else spec.strip_stock
    return tuple(EdgeTreatment(plane, spec.edge, thick, stock) for plane in _TREATED)


def _cut(
    house: House, place: Place, name: Literal["length", "width"], wanted: Dim,
    edges: tuple[EdgeTreatment, ...],
) -> tuple[Dim, Dim]:  # fmt: skip
    """Its finished size and its blank's, which is less by what its edges add [mm]."""
    added = [e.thickness for e in edges if e.edge[0] == name[0] and e.thickness.value]
    causes = house.causes(f"{place.path}.{name}", "")
    if not added:
        size = place.made(name, wanted, causes)
        return size, size
    blank = place.made(f"blank_{name}", wanted - total(*added), causes)
    return place.follows(name, total(blank, *added), how="cut, then its edges treated"), blank


def _hold_fingers(house: House, run: Run, place: Place) -> None:
    """Under a hinged lid the fronts end so low that no finger is caught."""
    if run.cases[0].spec.lid != "hinged":
        return
    tops = [front.y + front.height for case in run.cases for front in case.fronts]
    top = max(tops, key=lambda each: each.value, default=run.cases[0].height)
    air = place.let("front_air", run.cases[0].height - top)
    wanted, play = house.style_dim("finger_gap").value, house.style_dim("gap_tolerance").value
    place.fit("finger_gap_fit", air, wanted - play, wanted + play, place.path)
