"""Laying out the runs of a job: tasks from its walls and cases, answers in the job's unit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from itertools import pairwise

from casewright.casework.cases import Case
from casewright.casework.fronts import end_stock
from casewright.casework.specs import CaseSpec
from casewright.dims import Told, Unit, Way, round_to, shop_text, tell
from casewright.job.layout_bounds import bounds_of, stretch_words
from casewright.job.layout_corners import CornerStop
from casewright.job.layout_ends import (
    FREE_WIDTHS,
    GRID,
    RunEnds,
    blind_off,
    end_bands,
    end_filler,
    end_needs,
    filler_beside_corner,
    is_free,
    run_ends,
    steps_up,
)
from casewright.job.layout_numbers import NARROWEST, WIDEST, RunNumbers
from casewright.job.layout_walls import StandsIn, kept_clear, parted, standing_in
from casewright.job.made_widths import made_cases
from casewright.job.section_edits import put_section, set_names
from casewright.job.splicing import basic_string
from casewright.layout.answers import LayoutAnswer, answers
from casewright.layout.conflicts import LayoutConflict, conflicts
from casewright.layout.tasks import Preferences, RunPlace, WallTask
from casewright.room.floor import middle_of
from casewright.room.model import Room, Run
from casewright.room.run_ends import SIDES

__all__ = ["RunLayout", "accepted", "because_of", "layouts"]

_PER_INCH: dict[Unit, int] = {"in": 16, "mm": 25}
_NONE = Fraction(0)


@dataclass(frozen=True, slots=True)
class RunLayout:
    """What a run could be.

    Parameters
    ----------
    cases
        Keys of its cases and appliances, as they are listed.
    free
        Those whose width is left open.
    answers
        Up to five, the best first; none when nothing fits.
    conflicts
        Why nothing fits.
    step
        Of the grid [mm].
    in_it
        What stands on the wall where its cases would: then it has no answers.
    stretch
        What there is to fill, and from where to where, in words.
    parts
        Keys of what would stand left and right of the first of these; empty: nothing stands in it.
    made
        Widths, as the file has them, of those that keep theirs: something of them is made.
    has_open_end
        Whether one end closes against nothing, so that the row may stand short of it.
    corners
        Why nothing opens in a corner at one of its ends: then it has no answers.
    numbers
        Tells its lengths.
    """

    key: str
    title: str
    cases: tuple[str, ...]
    free: tuple[str, ...]
    answers: tuple[LayoutAnswer, ...]
    conflicts: tuple[LayoutConflict, ...]
    step: Fraction
    unit: Unit
    numbers: RunNumbers
    in_it: tuple[StandsIn, ...] = ()
    stretch: str = ""
    parts: tuple[tuple[str, ...], ...] = ()
    made: Mapping[str, str] = field(default_factory=dict)
    has_open_end: bool = False
    corners: tuple[CornerStop, ...] = ()

    def text(self, steps: int) -> str:
        """Steps as the job writes a length."""
        return shop_text(steps * self.step, self.unit)

    def widths(self, answer: LayoutAnswer) -> Iterator[Told]:
        """The widths of an answer from the left: 'pots 26 1/2', 'sink 36'."""
        say = self.numbers.within(f"answer_{self.answers.index(answer) + 1}")
        pairs = zip(answer.layout.task.places, answer.layout.widths, strict=True)
        yield from (tell("{} {}", place.key, say(width, place.key)) for place, width in pairs)

    def conflict_text(self, conflict: LayoutConflict) -> Told:
        """What stands against any answer: what is needed, what is there, what it lacks."""
        numbers, at = self.numbers, self.conflicts.index(conflict)
        limits = (numbers.told(numbers.own.limit(each)) for each in (NARROWEST, WIDEST))
        open_ones = tell("widths left open are {} to {}", *limits)
        words = "{}at most {} can be filled, {} is there: {} left over; {}"
        if conflict.short > 0:
            words = "{}at least {} is needed, {} is there: {} short; {}"
        given = [key for key in self.cases if key not in self.free or key in self.made]
        sizes = numbers.short_of(at + 1, conflict, given)
        return tell(words, self._between(conflict), *sizes, open_ones)

    def _between(self, conflict: LayoutConflict) -> str:
        """Where the stretch lies that cannot be filled, if seams are pinned."""
        if conflict.after and conflict.before:
            return f"from the pinned seam of {conflict.after} to that of {conflict.before}, "
        if conflict.before:
            return f"left of the pinned seam of {conflict.before}, "
        return f"right of the pinned seam of {conflict.after}, " if conflict.after else ""


def layouts(
    room: Room, *, only: str | None = None, best_alone: bool = False
) -> Iterator[RunLayout]:
    """Every run that closes against a wall and has a case whose width is free.

    A width that an accepted layout gave is free, until something of the case is made that rests
    on it. A run over another goes by the seams that the other has in the room.

    Parameters
    ----------
    only
        Key of a run: the others are left alone, and take no time.
    best_alone
        Whether the first answer is enough.
    """
    for run in room.runs:
        free = tuple(case.key for case in run.cases if is_free(run, case.spec))
        wall = room.chain.nodes.get(f"run.{run.spec.key}.wall")
        closed = {"wall", "corner", "flush"} & {run.spec.left, run.spec.right}
        if only in (None, run.spec.key) and wall is not None and free and closed:
            yield _laid_out(room, run, free, wall.value, best_alone=best_alone)


def _laid_out(
    room: Room, run: Run, free: tuple[str, ...], wall: Fraction, *, best_alone: bool
) -> RunLayout:
    unit = room.spec.unit
    made, step = made_cases(run.cases), GRID[unit]
    numbers = RunNumbers(room, run, step)
    ends = run_ends(numbers, set(free) - set(made))
    task = _task(room, run, wall, ends)
    in_it = tuple(standing_in(room, run))
    shut = bool(in_it) or any(end.is_shut for end in ends)
    found = () if shut else answers(task, numbers, best_alone=best_alone)
    against = () if shut else conflicts(task)
    stops = tuple(dict.fromkeys(stop for end in ends for stop in end.stops))
    laid_out = RunLayout(
        run.spec.key,
        run.spec.title,
        run.spec.places,
        free,
        found,
        against,
        step,
        unit,
        numbers,
        in_it,
        stretch_words(room, run, shop_text(wall, unit)),
        parted(room, run, in_it[0]) if in_it else (),
        {
            case.key: shop_text(case.spec.width.value, unit)
            for case in run.cases
            if case.key in made and case.key in free and case.spec.width is not None
        },
        "open" in (run.spec.left, run.spec.right),
        () if found or in_it or (against and run.spec.is_free) else stops,
    )
    for number, answer in enumerate(found, start=1):
        numbers.explain(number, answer, because_of(laid_out, answer))
    return laid_out


def _task(room: Room, run: Run, wall: Fraction, ends: RunEnds) -> WallTask:
    """In whole steps: sizes that are given count up to the next one, the wall down."""
    unit = room.spec.unit
    step = GRID[unit]
    framed = sum((_frames(room, case) for case in run.cases if case.spec.dressed), _NONE)
    low, high = (int(each // step) for each in FREE_WIDTHS[unit])
    return WallTask(
        int(wall // step) - steps_up(framed, step),
        tuple(_places(room, run, ends)),
        filler_beside_corner(end_filler(room, run, "left"), ends[0], step),
        filler_beside_corner(end_filler(room, run, "right"), ends[1], step),
        _likes(room, run),
        is_free=run.spec.is_free,
        beside=run.spec.beside,
        seams=tuple(_seams(room, run)),
        another=(low, high),
        clear=tuple(kept_clear(room, run, step)),
        proportions=tuple(_proportions(run)),
    )


def _proportions(run: Run) -> Iterator[tuple[str, str, int, int]]:
    """Each case that is compared with the next one that is, in the order they are listed."""
    parts = dict(run.spec.proportions)
    yield from (
        (one, other, parts[one], parts[other])
        for one, other in pairwise(key for key in run.spec.cases if key in parts)
    )


def _likes(room: Room, run: Run) -> Preferences:
    """The usual preferences; a run with one end in a corner has no middle to mirror about."""
    likes = Preferences.usual(_PER_INCH[room.spec.unit])
    ends = {run.spec.end(side) == "corner" or blind_off(room, run, side) is not None
            for side in SIDES}  # fmt: skip
    return likes if len(ends) == 1 else replace(likes, mirror=0)


def _places(room: Room, run: Run, ends: RunEnds) -> Iterator[RunPlace]:
    step = GRID[room.spec.unit]
    free = tuple(int(each // step) for each in FREE_WIDTHS[room.spec.unit])
    built, made = {case.key: case for case in run.cases}, made_cases(run.cases)
    cases = {key: case.spec for key, case in built.items()}
    pins = _pinned(room, run)
    widths = {each.spec.key: each.width.value for each in run.appliances}
    for key in run.spec.places:
        case, centre = cases.get(key), _centre(room, run, key)
        if case is None:
            width = steps_up(widths[key], step)
            yield RunPlace(key, width, width, start=pins.get(key), centre=centre, opening=True,
                           sort=key)  # fmt: skip
            continue
        low, high = free
        if key in made:
            low = high = steps_up(built[key].width.value, step)
        elif case.width is not None and not is_free(run, case):
            low = high = steps_up(case.width.value, step)
        needs = end_needs(room, run, built[key], ends)
        at_end = (case.blind or case.diagonal) if run.spec.is_free else None
        yield RunPlace(key, low, high, start=pins.get(key), centre=centre, sort=_sort(case),
                       at_end=at_end, needs=needs,
                       corners=end_bands(room, built[key], ends))  # fmt: skip


def _pinned(room: Room, run: Run) -> dict[str, int]:
    """Where left sides are pinned, from the run's left datum, in steps of the grid.

    Frames on finished ends before it are no part of what is laid out.
    """
    step, begins = GRID[room.spec.unit], run.begins.value
    frames = {case.key: _frames(room, case) for case in run.cases if case.spec.dressed}
    found: dict[str, int] = {}
    for key, at in run.spec.seams:
        before = run.spec.places[: run.spec.places.index(key)]
        free = at.value - begins - sum((frames.get(each, _NONE) for each in before), _NONE)
        found[key] = int(round_to(free, step, Way.NEAREST)[0] // step)
    return found


def _frames(room: Room, case: Case) -> Fraction:
    """Thickness of the frames on a case's finished ends; of a surround's stiles [mm].

    Another face frame is as wide as its case, whatever is on its ends.
    """
    spec = case.spec
    if spec.framed:
        own = spec.width.value if spec.between_panels and spec.width else case.overall_width.value
        return case.overall_width.value - own
    thick = room.chain.nodes[f"stock.{end_stock(case.spec)}.thickness"].value
    return thick * len(case.spec.dressed)


def _sort(case: CaseSpec) -> str:
    """What is seen of a case from across the room, whatever its width."""
    rows = ", ".join(row.kind for row in case.rows)
    return f"{case.kind} {rows}"


def _seams(room: Room, run: Run) -> Iterator[int]:
    """Seams of the run below, from this one's left datum, in steps of the grid."""
    below = next((each for each in room.runs if each.spec.key == run.spec.over), None)
    if below is None or not run.spec.on:
        return
    step = GRID[room.spec.unit]
    off = below.begins.value - run.begins.value
    ends = [*below.starts, *(each.start for each in below.appliances), below.cases_end]
    for at in sorted({off + end.value for end in ends}):
        seam = int(round_to(at, step, Way.NEAREST)[0] // step)
        if seam > 0:
            yield seam


def _centre(room: Room, run: Run, key: str) -> int | None:
    """The middle of what a case is to stand on: on the wall, or in another run [half steps]."""
    thing, step = dict(run.spec.centre).get(key), GRID[room.spec.unit]
    if thing is None or run.spec.on not in room.survey.walls:
        return None
    middle = middle_of(room, thing, run.spec.on)
    if middle is None:
        return None
    return int(round_to(2 * (middle - run.begins.value), step, Way.NEAREST)[0] // step)


def because_of(run: RunLayout, answer: LayoutAnswer) -> str:
    """What spoke for an answer, and what bound it, in words."""
    bound = ", ".join((run.stretch, *bounds_of(answer.layout, run.text)))
    return "; ".join((*answer.trade, f"bound by {bound}"))


def accepted(text: str, run: RunLayout, number: int) -> str:
    """The text of a job file with an answer written into it, and what spoke for it.

    Parameters
    ----------
    number
        Of the answer, from 1.

    Raises
    ------
    EditError
        When a section cannot be edited.
    """
    answer = run.answers[number - 1]
    layout = answer.layout
    keys = [place.key for place in layout.task.places]
    widths = ", ".join(
        f'{key} = "{run.made.get(key) or run.text(width)}"'
        for key, width in zip(keys, layout.widths, strict=True)
        if key in run.free
    )
    lines = [f"widths = {{ {widths} }}"]
    if layout.task.has_like_fillers:
        lines.append(f'left_filler = "{run.text(layout.left)}"')
    lines.append(f"because = {basic_string(because_of(run, answer))}")
    if keys != list(run.cases):
        text = set_names(text, ("run", run.key, "cases"), keys)
    return put_section(text, ("run", run.key, "solved"), tuple(lines))
