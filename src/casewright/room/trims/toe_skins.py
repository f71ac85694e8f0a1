"""Toe skins: thin sheet over the toe boards of a run, put on after the floor is laid."""

from __future__ import annotations

from casewright.casework.cases import Case
from casewright.casework.features import Cut
from casewright.casework.house import House
from casewright.casework.levels import extent
from casewright.dims import Dim, Place
from casewright.room.model import Run
from casewright.room.specs import RunSide
from casewright.room.trims.model import Trim
from casewright.room.trims.specs import ToeSkinSpec
from casewright.room.trims.stretches import (
    TrimShape,
    end_of,
    joints_along,
    longest_piece,
    seams_of,
    straight_pieces,
    stretch,
)
from casewright.survey.walls import SurveyedWall

__all__ = ["build_toe_skin"]


def build_toe_skin(house: House, run: Run, spec: ToeSkinSpec, wall: SurveyedWall | None) -> Trim:
    """The skin along the toe space, from wall to wall or to the outside of the end cases.

    It is ripped as high as the toe space and the fall of the floor, and scribed to the floor.
    Between two walls it is cut a little long and sprung in (common practice).
    """
    place = house.chain.place(f"run.{run.spec.key}.toe_skin")
    first = run.cases[0]
    toe = next(level for level in first.levels if level.role == "bottom").low
    fall = wall.fall if wall is not None and wall.fall is not None else house.zero
    setback = _setback(house, place, first)
    plane = _plane(run, setback)
    own = stretch(place, _end(house, run, "left", setback), _end(house, run, "right", setback))
    shape = TrimShape("toe skin", "toe skin", spec.stock, place.let("high", toe + fall), toe,
                  plane, hangs=True)  # fmt: skip
    held = "open" not in (run.spec.left, run.spec.right)
    sprung = house.style_dim("spring") if held else None
    most = longest_piece(house, spec.stock)
    most = most if sprung is None else most - sprung
    joints = joints_along(place, own, seams_of(run), most)
    longer = ((), () if sprung is None else (sprung,))
    pieces = straight_pieces(house, place, shape, own, joints, longer=longer)
    return Trim(place.path, "toe skin", "toe skin", (own.along,), pieces, own.start, sprung)


def _setback(house: House, place: Place, case: Case) -> Dim:
    """How far its rear face stands back: the notch as cut, else the style's."""
    cuts = (cut for part in case.parts if part.role == "side" for cut in part.features)
    for cut in cuts:
        if isinstance(cut, Cut) and cut.kind == "notch" and cut.end is not None:
            return cut.end
    given = case.spec.overrides.get("toe_setback")
    return house.style_dim("toe_setback") if given is None else place.given("setback", given)


def _plane(run: Run, setback: Dim) -> Dim:
    """Plane z of what it lies on: the front rail of a plinth, else the toe boards."""
    first = run.cases[0]
    parts = run.plinths[0].case.parts if run.plinths else first.parts
    rails = [extent(part, 2)[1] for part in parts if part.role == "plinth rail"]
    return max(rails, key=lambda dim: dim.value, default=first.depth - setback)


def _end(house: House, run: Run, side: RunSide, setback: Dim) -> Dim:
    """Where the toe space ends: at the wall, in a corner at the other run's toe space."""
    beyond = next((f.beyond for f in run.fillers if f.side == side), None)
    if beyond is None:
        return end_of(run, side)
    out = beyond - setback if beyond.value else beyond
    return out if side == "left" else run.length - out
