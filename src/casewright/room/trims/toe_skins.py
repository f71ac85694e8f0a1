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
from casewright.room.run_ends import SIDES
from casewright.room.specs import RunSide
from casewright.room.trims.bends import Bend, Bends, across_length, across_piece
from casewright.room.trims.model import SQUARE, Trim, TrimPiece
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
    house: House, run: Run, spec: ToeSkinSpec, wall: SurveyedWall | None, bends: Bends
) -> tuple[Trim, ...]:
    """The skins along the toe space, from wall to wall or to the outside of the end cases.

    Where an appliance stands between cases, one skin ends and the next begins: it has a foot of
    its own. They are ripped as high as the toe space and the fall of the floor, and scribed to the
    floor. Between two walls a skin is cut a little long and sprung in (common practice). At a
    diagonal corner it turns onto the toe board across it.
    """
    groups = _stretches(run)
    return tuple(_skin(house, run, spec, wall, at) for at in _spans(house, run, groups, bends))


@dataclass(frozen=True, slots=True)
class _Span:
    """Cases side by side with no appliance between them, and where the skin before them ends."""

    number: int
    of: int
    cases: tuple[Case, ...]
    left: Dim
    right: Dim
    held: bool
    bends: Bends

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


def _spans(house: House, run: Run, groups: list[list[str]], bends: Bends) -> Iterator[_Span]:
    place = house.chain.place(f"run.{run.spec.key}.toe_skin")
    setback = _setback(house, place, run.cases[0])
    at = {case.key: (case, start) for case, start in zip(run.cases, run.starts, strict=True)}
    places = run.spec.places
    for number, group in enumerate(groups, start=1):
        first, last = group[0], group[-1]
        ends = {"left": first == places[0], "right": last == places[-1]}
        case, start = at[last]
        left = _end(run, "left", setback, bends) if ends["left"] else at[first][1]
        right = start + case.overall_width
        right = _end(run, "right", setback, bends) if ends["right"] else right
        own = {side: bends[side] for side in SIDES if ends[side] and side in bends}
        held = all(ends[side] and run.spec.end(side) != "open" for side in SIDES) and not own
        cases = tuple(at[key][0] for key in group)
        yield _Span(number, len(groups), cases, left, right, held, own)


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
    left, right = (at.bends[side].turn if side in at.bends else SQUARE for side in SIDES)
    front = straight_pieces(house, place, shape, own, joints, (left, right), longer=longer)
    across = {
        side: _across(house, run, shape, bend) for side, bend in at.bends.items() if bend.owns
    }
    before, after = (tuple(across[s][1] for s in (side,) if s in across) for side in SIDES)
    lengths = (own.along, *(length for length, _ in across.values()))
    return Trim(place.path, "toe skin", at.title, lengths, (*before, *front, *after), own.start,
                sprung)  # fmt: skip


def _across(house: House, run: Run, shape: TrimShape, bend: Bend) -> tuple[Dim, TrimPiece]:
    """The skin on the toe board across a corner, with the length that is read for it."""
    place, mouth = house.chain.place(f"run.{run.spec.key}.toe_skin"), bend.case.mouth
    board = bend.case.part(f"{bend.case.key}.toe_board")
    if mouth is None:
        msg = f"{bend.case.key} is no diagonal corner"
        raise ValueError(msg)
    before = board.placed.z + board.finished.thickness - mouth.front
    length = across_length(house, place, bend, shape.z, before)
    return length, across_piece(house, place, shape, bend, (length,), before)


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
    first = next(case for case in run.cases if case.mouth is None)
    parts = run.plinths[0].case.parts if run.plinths else first.parts
    rails = [extent(part, 2)[1] for part in parts if part.role == "plinth rail"]
    return max(rails, key=lambda dim: dim.value, default=first.depth - setback)


def _end(run: Run, side: RunSide, setback: Dim, bends: Bends) -> Dim:
    """Where the toe space ends: at a bend, at the wall, in a corner at the other's toe space."""
    if side in bends:
        return bends[side].edge
    beyond = next((f.beyond for f in run.fillers if f.side == side), None)
    if beyond is None:
        return end_of(run, side)
    out = beyond - setback if beyond.value else beyond
    return out if side == "left" else run.length - out
