"""The order a case goes together, told once for all that is made alike."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import groupby

from casewright.casework.cases import AssemblyStep, Case, Door, Drawer, Front
from casewright.casework.cautions import caution
from casewright.dims import Dim, measure_of
from casewright.dims.units import Unit
from casewright.outputs.blocks import Block, CheckList, Heading, Step
from casewright.outputs.inlines import Blank, Inline, Rich, SignMark, Strong, Tick
from casewright.packet.step_runs import (
    content_of,
    marks_apart,
    other_words,
    runs,
    said_afterwards,
    works,
)
from casewright.packet.words import plane_word, unfold

__all__ = ["Stop", "ToldStep", "assembly_blocks", "told_steps"]

_READ = 12.5  # room to write a diagonal: two doors stand on one line [mm]
_ROWS = ("brad", "case screw")
_DRY_FIT = Step(
    "Edges done and insides sanded? Then a dry fit: everything clamped without glue, both "
    "diagonals alike."
)


@dataclass(frozen=True, slots=True)
class _Stage:
    """Steps that belong together: the box, doors that are alike, hanging.

    Parameters
    ----------
    names
        Of the doors that these steps make; empty for the box.
    """

    title: str
    steps: tuple[AssemblyStep, ...]
    names: tuple[str, ...] = ()

    @property
    def boxes(self) -> int:
        """How many things these steps make [-]."""
        return max(1, len(self.names))


@dataclass(frozen=True, slots=True)
class Stop:
    """A stop between the steps: something is measured before what waits comes in.

    Parameters
    ----------
    step
        What is measured, with its blank.
    parts
        Paths of the pieces that wait.
    """

    step: Step
    parts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ToldStep:
    """A step by itself, for a page that shows one at a time.

    Parameters
    ----------
    stage
        What is worked on: 'Left door'; empty for the box.
    makes
        Paths of the doors and drawers that the stage makes, alike; empty for the box, for hanging.
    step
        As it is told.
    parts
        Paths of what comes in.
    is_last
        Whether its stage is done with it.
    again
        Cautions that a step before it of its stage told already.
    """

    stage: str
    makes: tuple[str, ...]
    step: Step
    parts: tuple[str, ...]
    is_last: bool
    again: tuple[str, ...] = ()


def told_steps(case: Case, unit: Unit) -> Iterator[ToldStep]:
    """The steps of a case, those that differ only in the part that comes in told together."""
    paths = {work.title: work.path for work in works(case)}
    stages = list(_stages(case))
    number = 1
    if any(not stage.names for stage in stages if stage.title != "Hanging"):
        yield ToldStep("", (), _DRY_FIT, (), is_last=False)
        number = 2
    for stage in _alike(case, stages):
        steps = list(_told(case, stage, number, unit, points=False))
        number += len(steps)
        makes = tuple(paths[name] for name in stage.names)
        warned: set[str] = set()
        for step, run in zip(steps, runs(case, stage.steps), strict=True):
            parts = tuple(each.part for each in run if each.part)
            again = tuple(caution(key, unit) for key in run[0].cautions if key in warned)
            warned.update(run[0].cautions)
            yield ToldStep(stage.title, makes, step, parts, step is steps[-1], again)


def assembly_blocks(
    case: Case, unit: Unit, stops: Sequence[Stop] = (), *, left_only: bool = False
) -> Iterator[Block]:
    """Numbered steps under a heading for the box, for each kind of door, for hanging.

    A caution is said in full at the first step of each heading that it belongs to; the steps
    after it point there.

    Parameters
    ----------
    stops
        What is measured on the box; each comes before the first step that brings in what waits.
    left_only
        Whether what is put together already is left out.
    """
    stages = [each for each in _stages(case) if not (left_only and _is_done(case, each))]
    number = 1
    if any(not stage.names for stage in stages if stage.title != "Hanging"):
        yield CheckList((_DRY_FIT,))
        number = 2
    for stage in _stopped(_alike(case, stages), stops):
        if isinstance(stage, Stop):
            yield CheckList((stage.step,), number)
            number += 1
            continue
        if stage.title:
            yield Heading(stage.title, 3)
        steps = tuple(_told(case, stage, number, unit))
        yield CheckList(steps, number, stage.boxes)
        number += len(steps)


def _is_done(case: Case, stage: _Stage) -> bool:
    """Whether all that comes in at its steps is put together already."""
    apart = {part.path for part in case.parts if part.state in ("planned", "cut", "machined")}
    parts = {step.part for step in stage.steps} & {part.path for part in case.parts}
    return bool(parts) and not parts & apart


def _stopped(stages: Sequence[_Stage], stops: Sequence[Stop]) -> Iterator[_Stage | Stop]:
    """The stages with the stops where they belong; one in the middle of a stage cuts it in two."""
    left = list(stops)
    for stage in stages:
        steps: list[AssemblyStep] = []
        for step in stage.steps:
            due = [stop for stop in left if step.part in stop.parts]
            if due and steps and not stage.names:
                yield _Stage(stage.title, tuple(steps))
                steps = []
            if not steps:
                yield from due
                left = [stop for stop in left if stop not in due]
            steps.append(step)
        yield replace(stage, steps=tuple(steps))
    yield from left


def _stages(case: Case) -> Iterator[_Stage]:
    """The steps in order, cut where another thing is worked on."""
    fronts = {work.path: work for work in works(case)}
    made = {path: work for work in works(case) for path in work.parts}
    current = ""
    keyed: list[tuple[str, AssemblyStep]] = []
    for number, step in enumerate(case.assembly):
        if step.verb == "hold":  # it is told with what it holds up
            step_on = next((each.part for each in case.assembly[number:] if each.part), "")
            current = made[step_on].path if step_on in made else current
        elif step.verb == "hang":
            current = "hang"
        elif step.part in made:
            current = made[step.part].path
        elif step.part:
            current = ""
        keyed.append((current, step))
    for key, group in groupby(keyed, key=lambda each: each[0]):
        steps = tuple(step for _, step in group)
        if key in fronts:
            title = _sentence(fronts[key].title)
            yield _Stage(title, _nameless(fronts[key], steps), (fronts[key].title,))
        else:
            yield _Stage("Hanging" if key == "hang" else "", steps)


def _nameless(work: Front | Drawer, steps: Sequence[AssemblyStep]) -> tuple[AssemblyStep, ...]:
    """Steps that say 'the door' or 'the drawer' instead of its name."""
    name, word = f"the {work.title}", "the door" if isinstance(work, Door) else "the front"
    if isinstance(work, Drawer):
        name, word = work.title, "the drawer"
    return tuple(replace(step, words=step.words.replace(name, word)) for step in steps)


def _alike(case: Case, stages: Sequence[_Stage]) -> list[_Stage]:
    """Doors that are made by the same steps as one stage, where the first of them stands."""
    groups: dict[object, list[_Stage]] = {}
    for number, stage in enumerate(stages):
        told = tuple((*content_of(step), *_lengths(case, step)) for step in stage.steps)
        key = told if stage.names else number
        groups.setdefault(key, []).append(stage)
    return [_as_one(group) for group in groups.values()]


def _as_one(group: Sequence[_Stage]) -> _Stage:
    """Stages of the same steps told once, with a box to tick for each."""
    names = tuple(name for stage in group for name in stage.names)
    if len(names) < 2:
        return group[0]
    listed = f"{', '.join(names[:-1])} and {names[-1]}"
    title = f"{_sentence(listed)}: made alike, a box to tick for each in this order"
    return _Stage(title, group[0].steps, names)


def _lengths(case: Case, step: AssemblyStep) -> Iterator[tuple[str, Fraction]]:
    return ((role, length.value) for role, length in _sawn(case, step))


def _sawn(case: Case, step: AssemblyStep) -> tuple[tuple[str, Dim], ...]:
    """What strips that were cut long are sawn to, told where the first of them goes on."""
    strips = [part for part in case.parts if part.milled_from]
    front = next((part.front for part in strips if part.path == step.part), None)
    own = [part for part in strips if part.front == front]
    order = [each.part for each in case.assembly]
    if front is None or step.part != min((part.path for part in own), key=order.index):
        return ()
    found = {(part.role, part.finished.length.value): part.finished.length for part in own}
    return tuple((role, length) for (role, _), length in found.items())


def _told(
    case: Case, stage: _Stage, start: int, unit: Unit, *, points: bool = True
) -> Iterator[Step]:
    """The steps of a stage; each caution once, whoever needs it again is pointed there."""
    warned: dict[str, int] = {}
    for number, run in enumerate(runs(case, stage.steps), start):
        first = run[0]
        words: list[Inline] = [first.words, *_likewise(case, run, stage.boxes, unit)]
        words.append(said_afterwards(first, run[-1]))
        notes = list(_notes(case, first, stage.names, unit))
        again = sorted({warned[key] for key in first.cautions if points and key in warned})
        new = [key for key in first.cautions if key not in warned]
        warned |= dict.fromkeys(new, number)
        cautions: list[Rich] = [(SignMark("caution"), " " + caution(key, unit)) for key in new]
        if again and cautions:
            cautions[0] = (*_pointer(again), "  ", *unfold(cautions[0]))
        elif again and notes:
            notes[0] = unfold(notes[0], "  ", *_pointer(again))
        elif again:
            words += ["  ", *_pointer(again)]
        notes += cautions
        yield Step(tuple(words), tuple(notes))


def _likewise(case: Case, run: Sequence[AssemblyStep], boxes: int, unit: Unit) -> Iterator[Inline]:
    """The other parts of a run, each with its boxes and where it goes if that is elsewhere."""
    apart = marks_apart(run)
    for number, step in enumerate(run[1:], 1):
        yield f"{' Likewise' if number == 1 else ''} {other_words(case, run[0], step)}"
        yield from ("\u00a0", Tick()) * boxes
        for mark in apart:
            yield from (" at\u00a0", Strong(measure_of(step.marks[mark][1], unit)))
        yield "," if step is not run[-1] else "."


def _pointer(steps: Sequence[int]) -> tuple[Inline, ...]:
    """To the steps that say it in full."""
    numbers = ", ".join(map(str, steps))
    return (SignMark("caution"), f"\u00a0as\u00a0at\u00a0step\u00a0{numbers}")


def _notes(case: Case, step: AssemblyStep, names: Sequence[str], unit: Unit) -> Iterator[Rich]:
    """Where the part sits, on one line; then what is measured, for each thing that is made."""
    sawn: list[Inline] = []
    for role, length in _sawn(case, step):
        sawn += [", " if sawn else "strips sawn to length first: "]
        sawn += [f"{role} ", Strong(measure_of(length, unit))]
    if sawn:
        yield tuple(sawn)
    places: list[Inline] = []
    for words, dim in (*step.marks, *_untold_rows(case, step)):
        places += ["; "] if places else []
        places += [f"{words}: ", Strong(measure_of(dim, unit))] if dim.value else [_flush(words)]
    if places:
        yield tuple(places)
    if step.verb == "check square":
        for two in _pairs(names if len(names) > 1 else ("",)):
            line: list[Inline] = []
            for name in two:
                line += ["    " if line else "", f"{name}: " if name else "", "one diagonal "]
                blank = Blank(_READ) if len(two) > 1 else Blank()
                line += [blank, " the other ", blank]
            yield tuple(line)
    if step.check is not None:
        yield (f"{step.check_words}: ", Strong(measure_of(step.check, unit)))


def _pairs(names: Sequence[str]) -> Iterator[Sequence[str]]:
    return (names[start : start + 2] for start in range(0, len(names), 2))


def _untold_rows(case: Case, step: AssemblyStep) -> Iterator[tuple[str, Dim]]:
    """Rows of brads and screws that a step drives and its marks do not place."""
    if any(f" {kind}s " in words for words, _ in step.marks for kind in _ROWS):
        return
    parts = {part.path: part for part in case.parts}
    joints = {joint.path: joint for joint in case.joints}
    held = (each for path in step.joints for each in joints[path].fastenings)
    for row in (each for each in held if each.kind in _ROWS):
        if row.line is None or row.edge is None or row.pitch is None:
            continue
        (plane, off), through = row.line, parts[row.through[-1]]
        into = f"{row.count} {row.kind}s into the {parts[row.into].title}"
        yield (
            f"{into}, on a line from the {plane_word(through, plane)} of the {through.title}",
            off,
        )
        yield "from the ends", row.edge
        if row.count > 2:
            yield "apart", row.pitch


def _flush(words: str) -> str:
    """A distance of nothing: 'underside flush with the bottom ends of the sides'."""
    if "behind" in words:
        return "front edges flush"
    for between in (" above ", " from "):
        before, found, after = words.partition(between)
        if found:
            return f"{before} flush with {after}"
    return f"{words}: flush"


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}"
