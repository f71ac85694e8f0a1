"""Toe skins: thin sheet over the toe boards of a run, put on after the floor is laid."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

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

__all__ = ["build_toe_skins"]


def build_toe_skins(
    house: House, run: Run, spec: ToeSkinSpec, wall: SurveyedWall | None
) -> tuple[Trim, ...]:
    """The skins along the toe space, from wall to wall or to the outside of the end cases.

    Where an appliance stands between cases, one skin ends and the next begins: it has a foot of
    its own. They are ripped as high as the toe space and the fall of the floor, and scribed to the
    floor. Between two walls a skin is cut a little long and sprung in (common practice).
    """
    groups = _stretches(run)
    return tuple(_skin(house, run, spec, wall, at) for at in _spans(house, run, groups))


@dataclass(frozen=True, slots=True)
class _Span:
    """Cases side by side with no appliance between them, and where the skin before them ends."""

    number: int
    of: int
    cases: tuple[Case, ...]
    left: Dim
    right: Dim
    held: bool

    @property
    def name(self) -> str:
        """The first has the name of the run's only one."""
        return "toe_skin" if self.number == 1 else f"toe_skin_{self.number}"

    @property
    def title(self) -> str:
        """Numbered where there are several."""
        return "toe skin" if self.of == 1 else f"toe skin {self.number}"


def _stretches(run: Run) -> list[list[str]]:
    """Keys of cases side by side, an entry for each stretch between appliances."""
    cases = {case.key for case in run.cases}
    groups: list[list[str]] = [[]]
    for key in run.spec.places:
        if key in cases:
            groups[-1].append(key)
        else:
            groups.append([])
    return [group for group in groups if group]


def _spans(house: House, run: Run, groups: list[list[str]]) -> Iterator[_Span]:
    place = house.chain.place(f"run.{run.spec.key}.toe_skin")
    setback = _setback(house, place, run.cases[0])
    at = {case.key: (case, start) for case, start in zip(run.cases, run.starts, strict=True)}
    places = run.spec.places
    for number, group in enumerate(groups, start=1):
        first, last = group[0], group[-1]
        ends = {"left": first == places[0], "right": last == places[-1]}
        case, start = at[last]
        left = _end(house, run, "left", setback) if ends["left"] else at[first][1]
        right = start + case.overall_width
        right = _end(house, run, "right", setback) if ends["right"] else right
        held = all(ends[side] and run.spec.end(side) != "open" for side in ("left", "right"))
        cases = tuple(at[key][0] for key in group)
        yield _Span(number, len(groups), cases, left, right, held)


def _skin(house: House, run: Run, spec: ToeSkinSpec, wall: SurveyedWall | None, at: _Span) -> Trim:
    place = house.chain.place(f"run.{run.spec.key}.{at.name}")
    first = at.cases[0]
    toe = next(level for level in first.levels if level.role == "bottom").low
    fall = wall.fall if wall is not None and wall.fall is not None else house.zero
    plane = _plane(run, _setback(house, place, first))
    own = stretch(place, at.left, at.right)
    shape = TrimShape("toe skin", at.title, spec.stock, place.let("high", toe + fall), toe,
                  plane, hangs=True)  # fmt: skip
    sprung = house.style_dim("spring") if at.held else None
    most = longest_piece(house, spec.stock)
    most = most if sprung is None else most - sprung
    joints = joints_along(place, own, seams_of(run), most)
    longer = ((), () if sprung is None else (sprung,))
    pieces = straight_pieces(house, place, shape, own, joints, longer=longer)
    return Trim(place.path, "toe skin", at.title, (own.along,), pieces, own.start, sprung)


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
