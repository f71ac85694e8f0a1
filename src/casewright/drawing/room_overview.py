"""The whole room at a glance: every run and every case that stands alone, side by side."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from casewright.casework.cases import Case
from casewright.drawing.case_front import closed_elements
from casewright.drawing.marks import Tag
from casewright.drawing.notes import Text
from casewright.drawing.pens import NEIGHBOUR, THIN, VISIBLE, Ink
from casewright.drawing.plan_names import wrapped
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, Polyline, line, moved, rectangle
from casewright.room.model import Room, Run

__all__ = ["room_overview"]

_BETWEEN = Fraction(300)  # from one run to the next [mm of model]
_BELOW = Fraction(400)  # from a floor to the tops of the row under it
_OVER = Fraction(60)  # of the floor past a run
_NAME, _TITLE = 2.0, 2.5  # heights of lettering [mm on paper]
_LINE = 1.45  # from line to line, in heights of lettering


class _Placed(NamedTuple):
    """A case and where its left foot is in its run."""

    case: Case
    x: Fraction
    y: Fraction
    named: bool = True


class _Standing(NamedTuple):
    """What stands together: a run, or a case alone."""

    title: str
    target: str
    width: Fraction
    placed: tuple[_Placed, ...]
    walls: tuple[Fraction, ...]


def room_overview(
    room: Room, widest: Fraction | None = None, between: Fraction = _BETWEEN
) -> Scene:
    """Every run in elevation, simple, each case with its title; no dimensions.

    For the cover, at any scale: it bears none. Runs stand side by side on
    one floor in the order of the file, then the cases that are in no run; how runs stand to each
    other in the room is not shown. The tags of cases lead to their cards, those of the titles of
    runs to their elevations (`run:<key>`).

    Parameters
    ----------
    room
        The model.
    widest
        Of a row: what would pass it begins the next one below [mm of model]. None: one row.
    between
        From one run to the next [mm of model].
    """
    elements: list[Element] = []
    floor = Fraction(0)
    for number, row in enumerate(_rows(room, widest, between)):
        floor -= (max(map(_high, row)) + _BELOW) if number else 0
        left = Fraction(0)
        for group in row:
            elements.extend(_drawn(group, left, floor))
            left += group.width + between
    return Scene(tuple(elements), f"{room.spec.name}: overview")


def _rows(room: Room, widest: Fraction | None, between: Fraction) -> Iterator[list[_Standing]]:
    row: list[_Standing] = []
    for group in _standing(room):
        wide = sum((each.width + between for each in row), group.width)
        if row and widest is not None and wide > widest:
            yield row
            row = []
        row.append(group)
    if row:
        yield row


def _high(group: _Standing) -> Fraction:
    return max(p.y + p.case.height.value for p in group.placed)


def _standing(room: Room) -> Iterator[_Standing]:
    lift = room.wall_bottom.value
    for run in room.runs:
        yield _run(run, lift)
    placed = {case.key for run in room.runs for case in run.cases}
    for case in room.cases:
        if case.key not in placed and case.spec.is_box:
            yield _Standing(
                "", "", case.overall_width.value, (_placed(case, Fraction(0), lift),), ()
            )


def _run(run: Run, lift: Fraction) -> _Standing:
    cases = tuple(
        _placed(case, start.value, lift) for case, start in zip(run.cases, run.starts, strict=True)
    )
    plinths = tuple(_Placed(p.case, p.start.value, Fraction(0), named=False) for p in run.plinths)
    length = run.length.value
    ends = ((run.spec.left, Fraction(0)), (run.spec.right, length))
    walls = tuple(x for end, x in ends if end == "wall")
    return _Standing(run.spec.title, f"run:{run.spec.key}", length, (*plinths, *cases), walls)


def _placed(case: Case, x: Fraction, lift: Fraction) -> _Placed:
    return _Placed(case, x, lift if case.spec.is_hung else Fraction(0))


def _drawn(group: _Standing, left: Fraction, floor: Fraction) -> Iterator[Element]:
    yield line((left - _OVER, floor), (left + group.width + _OVER, floor), VISIBLE)
    for x in group.walls:
        yield line((left + x, floor), (left + x, floor + _high(group) + _OVER), NEIGHBOUR)
    for case, x, y, named in group.placed:
        box = left + x + case.left_frame.value
        yield from (moved(element, box, floor + y) for element in _front(case))
        if named:
            yield from _name(case, left + x, floor + y)
    if group.title:
        tag = Tag(target=group.target, title=group.title)
        at = (left + group.width / 2, floor)
        yield Text(at, group.title, _TITLE, weight=600, shift_mm=(0.0, -3.5), tag=tag)


def _front(case: Case) -> Iterator[Polyline]:
    """A case as seen from across the room: its doors plain, so that its name can be read."""
    if not case.wall_fronts:
        yield from closed_elements(case)
        return
    whole = (case.width.value, case.height.value)
    yield rectangle((Fraction(0), Fraction(0)), whole, VISIBLE, fill=Ink.PAPER)
    for front in case.fronts:
        x, y = front.x.value, front.y.value
        far = (x + front.width.value, y + front.height.value)
        glazed = any(part.role == "pane" for part in case.parts if part.front == front.path)
        yield rectangle((x, y), far, THIN, fill=Ink.GLASS if glazed else Ink.PAPER)


def _name(case: Case, x: Fraction, y: Fraction) -> Iterator[Element]:
    """The case's title on patches of paper, in as many lines as fill it best."""
    wide, high = case.overall_width.value, case.height.value
    at = (x + wide / 2, y + high / 2)
    words = wrapped(case.spec.title, float(wide), float(high))
    tag = Tag(target=case.key, path=case.key, title=case.spec.title)
    top = (len(words) - 1) / 2
    for number, word in enumerate(words):
        shift = (0.0, (top - number) * _LINE * _NAME)
        yield Text(at, word, _NAME, weight=600, shift_mm=shift, ground=Ink.PAPER, tag=tag)
