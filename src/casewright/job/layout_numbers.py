"""Numbers of answers not taken yet, and of what stands against any: each with what bounds it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.dims import Dim, Measure, Origin, as_said, shop_text, total
from casewright.findings import Limit, Reckoning
from casewright.job.layout_walls import StandsIn
from casewright.layout.answers import LayoutAnswer
from casewright.layout.conflicts import LayoutConflict, Relief
from casewright.layout.tasks import Say
from casewright.layout.wall_layout import WallLayout
from casewright.room.model import Room, Run
from casewright.room.specs import RunSide

__all__ = ["LAYOUT", "NARROWEST", "WIDEST", "LayoutNumbers", "RunNumbers"]

LAYOUT = "layout"
"""Under which the numbers of answers stand on the chain, when one of them is asked for."""

NARROWEST = Limit("narrowest_case", "9", "230", "least width of a case that is left open")
WIDEST = Limit("widest_case", "36", "900", "greatest width of a case that is left open")
_ALONG = "from the wall's left end, with what is before it"
_ON_GRID = Origin("solved", "in whole marks of the tape")
_STRETCH = Origin("solved", "what there is to fill, in whole marks of the tape")
_FILLED = Origin("solved", "least that cases and fillers there take up together")
_FILLS = Origin("solved", "most that cases and fillers there may fill together")


class LayoutNumbers:
    """Tells numbers of a layout, in steps of its grid; each is made once, by its name.

    Parameters
    ----------
    kind, key
        `run`, `island` or `room`, and its name.
    step
        Of the grid [mm].
    """

    __slots__ = ("_known", "own", "room", "step")

    def __init__(self, room: Room, kind: str, key: str, step: Fraction) -> None:
        self.room, self.step = room, step
        self.own = Reckoning(kind, key, room.spec.unit, room.chain.nodes, LAYOUT)
        self._known: dict[str, Dim] = {}

    @property
    def numbers(self) -> tuple[Dim, ...]:
        """All that were told so far."""
        return self.own.numbers

    def __call__(self, steps: int, name: str) -> Measure:
        """Steps as a sentence tells them."""
        return self.told(self.number(name, steps * self.step))

    def within(self, name: str) -> Say:
        """How the numbers of an answer are told."""
        return lambda steps, own: self(steps, f"{name}.{own}")

    def told(self, dim: Dim) -> Measure:
        """A number as a sentence tells it."""
        unit = self.room.spec.unit
        return as_said(dim, unit, shop_text(dim.value, unit))

    def number(
        self, name: str, value: Fraction, origin: Origin = _ON_GRID, rests_on: Sequence[Dim] = ()
    ) -> Dim:
        """A number of that name: made the first time, and then as it is told last [mm]."""
        dim = self._known.get(name)
        if dim is None or dim.value != value:
            dim = self._known[name] = self.own.worked(name, value, origin, *rests_on)
        elif rests_on or origin is not _ON_GRID:
            dim.op, dim.args, dim.origin = "by" if rests_on else "", tuple(rests_on), origin
        return dim

    def formula(self, name: str, formula: Dim) -> Dim:
        """A number of that name by its formula, where it is exactly that [mm]."""
        dim = self._known.get(name)
        if dim is None:
            dim = self._known[name] = self.own.let(name, formula)
        elif dim.value == formula.value:
            dim.op, dim.args, dim.origin = "as", (formula,), None
        return dim

    def given(self, name: str, value: Fraction, dim: Dim) -> Dim:
        """A number of the room as it counts on the grid [mm]."""
        if dim.value == value:
            return self.formula(name, dim)
        return self.number(name, value, rests_on=(dim,))

    def of_room(self, *paths: str) -> Iterator[Dim]:
        """Numbers of the room, those that it has."""
        nodes = self.room.chain.nodes
        yield from (nodes[path] for path in paths if path in nodes)


class RunNumbers(LayoutNumbers):
    """Tells numbers of what a run could be."""

    __slots__ = ("run",)

    def __init__(self, room: Room, run: Run, step: Fraction) -> None:
        super().__init__(room, "run", run.spec.key, step)
        self.run = run

    @property
    def wall(self) -> Dim:
        """What there is to fill, as it was read."""
        return self.room.chain.nodes[f"run.{self.run.spec.key}.wall"]

    def wanted(self, key: str) -> Dim:
        """The width of a case or an appliance in the room as it is."""
        names = (f"{key}.wanted_width", f"{key}.width", f"appliance.{key}.width")
        return next(self.of_room(*names))

    def explain(self, number: int, answer: LayoutAnswer, because: str) -> None:
        """Enter what an answer decides: widths by what bounds them, a filler by what is left.

        Parameters
        ----------
        number
            Of the answer, from 1.
        because
            What spoke for it and bound it, in words.
        """
        layout, name = answer.layout, f"answer_{number}"
        widths = list(self._widths(name, layout, Origin("solved", because)))
        ends = {side: end for side, end in (("left", layout.left), ("right", layout.right)) if end}
        fillers = {
            side: self.number(f"{name}.{side}_filler", end * self.step,
                              Origin("solved", because), (self.wall, *widths))
            for side, end in ends.items()
        }  # fmt: skip
        for side in reversed(ends):  # the last of them takes what is left
            others = [dim for each, dim in fillers.items() if each != side]
            self.formula(f"{name}.{side}_filler", self.wall - total(*widths, *others))
            break
        self._middles(name, layout, list(fillers.values()) + widths)

    def _widths(self, name: str, layout: WallLayout, origin: Origin) -> Iterator[Dim]:
        pairs = list(zip(layout.task.places, layout.widths, strict=True))
        given = [self.wanted(place.key) for place, _ in pairs if place.low == place.high]
        for place, width in pairs:
            own, value = f"{name}.{place.key}", width * self.step
            if place.low == place.high:
                yield self.given(own, value, self.wanted(place.key))
                continue
            limit = {place.low: NARROWEST, place.high: WIDEST}.get(width)
            bounds = [] if limit is None else [self.own.limit(limit)]
            yield self.number(own, value, origin, (self.wall, *given, *bounds))

    def _middles(self, name: str, layout: WallLayout, rests_on: Sequence[Dim]) -> None:
        """How far those stand off that are to stand on the middle of something."""
        for n, place in enumerate(layout.task.places):
            if place.centre is None:
                continue
            thing = dict(self.run.spec.centre).get(place.key, "")
            path = f"survey.wall.{self.run.spec.on}.fixed.{thing}"
            edges = self.of_room(f"{path}.left_edge", f"{path}.right_edge")
            origin = Origin("solved", f"from the middle of {place.key} to that of {thing}")
            off = abs(layout.off_centre(n)) // 2 * self.step
            self.number(f"{name}.off_{place.key}", off, origin, (*edges, *rests_on))

    def short_of(
        self, number: int, conflict: LayoutConflict, given: Sequence[str]
    ) -> tuple[Measure, Measure, Measure]:
        """What a stretch asks for, what is there, and what it lacks or leaves.

        Parameters
        ----------
        number
            Of the conflict, from 1.
        given
            Keys of what has a width of its own.
        """
        room, short = conflict.end - conflict.start, conflict.short
        limit, origin = (NARROWEST, _FILLED) if short > 0 else (WIDEST, _FILLS)
        rests = [self.wanted(key) for key in conflict.places if key in given]
        rests.append(self.own.limit(limit))
        ends = self.of_room("style.filler_least", "style.filler")
        there = self.number(f"there_{number}", room * self.step, _STRETCH, (self.wall,))
        asked = self.number(f"asked_{number}", (room + short) * self.step, origin, (*rests, *ends))
        lacks = asked - there if short > 0 else there - asked
        found = asked, there, self.formula(f"{'short' if short > 0 else 'over'}_{number}", lacks)
        first, second, third = map(self.told, found)
        return first, second, third

    def relief(self, number: int, relief: Relief) -> Measure:
        """By how much something would have to change for a stretch to be filled.

        Parameters
        ----------
        number
            Of the conflict, from 1.
        """
        size = abs(relief.steps) * self.step
        lacks = (self._known.get(f"{name}_{number}") for name in ("short", "over"))
        same = next((dim for dim in lacks if dim is not None and dim.value == size), None)
        rests = (self.wall, *self.of_room("style.filler_least"))
        by = same or self.number(f"by_{number}_{relief.key}", size, _ON_GRID, rests)
        return self.told(by)

    def edge(self, thing: StandsIn, side: RunSide) -> Measure:
        """Where something that stands in the run begins or ends along the wall."""
        on = f"survey.wall.{self.run.spec.on}.fixed.{thing.key}"
        rests = list(self.of_room(f"{on}.{side}_edge", f"{on}.width"))
        for run in self.room.runs:
            key = thing.key if side == "left" else thing.last or thing.key
            rests += self.of_room(f"run.{run.spec.key}.start_{key}")
            rests += [self.wanted(key)] if rests and key in run.spec.places else []
        value = thing.left if side == "left" else thing.right
        name = f"{thing.key}_{side}"
        return self.told(self.number(name, value, Origin("solved", _ALONG), rests))
