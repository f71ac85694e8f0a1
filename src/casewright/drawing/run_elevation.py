"""A run as it stands on its wall: cases, fillers, seams from one datum, heights."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.dims import Measure, measure_of
from casewright.dims.units import Unit
from casewright.drawing.case_front import closed_elements
from casewright.drawing.dimension import Dimensions, Span
from casewright.drawing.hatching import SECTION
from casewright.drawing.marks import Tag
from casewright.drawing.notes import Balloon, Text
from casewright.drawing.pens import NEIGHBOUR, THIN, VISIBLE, Ink
from casewright.drawing.plan_names import wrapped, written
from casewright.drawing.run_trims import top_of_trims, trim_elements
from casewright.drawing.running import Running, Stop
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, line, moved, rectangle
from casewright.room.model import Filler, Run

__all__ = ["run_elements", "run_scene", "run_top", "run_widths"]


def run_scene(run: Run, unit: Unit, wall_bottom: Measure, *, named: bool = False) -> Scene:
    """Elevation of a run.

    Parameters
    ----------
    wall_bottom
        Underside of wall cases above the finished floor.
    named
        Cases bear their names, not their numbers in the run.
    """
    hangs = all(case.spec.is_hung for case in run.cases)
    lift = wall_bottom.value if hangs else Fraction(0)
    elements = [
        *_floor_and_walls(run, lift),
        *run_elements(run, lift, named=named),
        *_dimensions(run, unit, lift, wall_bottom if hangs else None),
    ]
    return Scene(tuple(elements), run.spec.title)


def run_elements(run: Run, lift: Fraction, *, named: bool = False) -> Iterator[Element]:
    """What stands or hangs in a run: outlines, fillers, trims, numbers; x from its left datum.

    Parameters
    ----------
    lift
        Of its wall cases above the floor [mm].
    named
        Cases bear their names, not their numbers in the run.
    """
    for plinth in run.plinths:
        drawn = closed_elements(plinth.case)
        yield from (moved(element, plinth.start.value, Fraction(0)) for element in drawn)
    for number, (case, start) in enumerate(zip(run.cases, run.starts, strict=True), start=1):
        own = lift if case.spec.is_hung else Fraction(0)
        box = start.value + case.left_frame.value
        yield from (moved(element, box, own) for element in closed_elements(case))
        middle = (start.value + case.overall_width.value / 2, own + case.height.value / 2)
        tag = Tag(target=case.key, path=case.key, title=case.spec.title)
        if named:
            across, down = float(case.overall_width.value), float(case.height.value)
            yield from written(wrapped(case.spec.title, across, down), middle, tag)
        else:
            yield Balloon(middle, str(number), height=3.0, tag=tag)
    yield from _appliances(run, lift)
    yield from _fillers(run, lift)
    yield from trim_elements(run)


def run_top(run: Run, lift: Fraction) -> Fraction:
    """Upper edge of a run and of what is on it, above the floor [mm]."""
    tops = [case.height.value + (lift if case.spec.is_hung else 0) for case in run.cases]
    return max(*tops, top_of_trims(run))


def _floor_and_walls(run: Run, lift: Fraction) -> Iterator[Element]:
    length = run.length.value
    over = length / 40
    high = run_top(run, lift) * Fraction(21, 20)
    yield line((-over, Fraction(0)), (length + over, Fraction(0)), VISIBLE)
    if run.spec.left == "wall":
        yield line((Fraction(0), Fraction(0)), (Fraction(0), high), NEIGHBOUR)
    if run.spec.right == "wall":
        yield line((length, Fraction(0)), (length, high), NEIGHBOUR)


def _appliances(run: Run, lift: Fraction) -> Iterator[Element]:
    """Appliances, broken lines, with their names; over them their panels."""
    for each in run.panelled:
        for panel, start in each.panels:
            drawn = closed_elements(panel)
            yield from (moved(element, start.value, Fraction(0)) for element in drawn)
    for each in run.appliances:
        left, high = each.start.value, lift + each.spec.height.value
        right = left + each.width.value
        path = each.width.path
        tag = Tag(path=path, title=each.spec.title)
        yield rectangle((left, lift), (right, high), NEIGHBOUR, tag=tag)
        yield Text(((left + right) / 2, (lift + high) / 2), each.spec.title, 2.5, ground=Ink.PAPER,
                   tag=tag)  # fmt: skip


def _fillers(run: Run, lift: Fraction) -> Iterator[Element]:
    for filler in run.fillers:
        case = run.cases[0] if filler.side == "left" else run.cases[-1]
        base = lift if case.spec.is_hung else Fraction(0)
        x0 = _filler_start(run, filler)
        top = base + case.height.value
        yield rectangle(
            (x0, top - filler.part.finished.length.value), (x0 + filler.width.value, top), THIN,
            fill=Ink.SHADE, hatch=SECTION,
            tag=Tag(path=filler.path, title=filler.part.title, target=filler.path),
        )  # fmt: skip


def _filler_start(run: Run, filler: Filler) -> Fraction:
    """Left edge of the gap that a filler closes, from the run's left datum [mm]."""
    if filler.side == "left":
        return filler.beyond.value
    return run.length.value - filler.beyond.value - filler.width.value


def _dimensions(run: Run, unit: Unit, lift: Fraction, bottom: Measure | None) -> Iterator[Element]:
    length = run.length.value
    starts = [*run.starts, *(each.start for each in run.appliances)]
    stops = [
        Stop(start.value, measure_of(start, unit))
        for start in sorted(starts, key=lambda start: start.value)
        if start.value
    ]
    if run.cases_end.value != length:
        stops.append(Stop(run.cases_end.value, measure_of(run.cases_end, unit)))
    stops.append(Stop(length, measure_of(run.length, unit), emphasis=True))
    yield Running("below", Fraction(0), Fraction(0), tuple(stops))
    widths = tuple(run_widths(run, unit, Fraction(0)))
    yield Dimensions("above", run_top(run, lift), widths, offset_mm=9.0)
    heights: dict[tuple[Fraction, Fraction], Span] = {}
    for case in run.cases:
        base = lift if case.spec.is_hung else Fraction(0)
        span = (base, base + case.height.value)
        heights.setdefault(span, Span(*span, measure_of(case.height, unit)))
    if bottom is not None:
        heights[Fraction(0), lift] = Span(Fraction(0), lift, bottom)
    yield Dimensions("left", Fraction(0), tuple(heights.values()), offset_mm=6.0)


def run_widths(run: Run, unit: Unit, begins: Fraction) -> Iterator[Span]:
    """Widths of what stands in a run, side by side.

    Parameters
    ----------
    begins
        Where its left datum is drawn [mm].
    """
    for case, start in zip(run.cases, run.starts, strict=True):
        left = begins + start.value
        yield Span(left, left + case.overall_width.value,
                   measure_of(case.overall_width, unit), emphasis=True)  # fmt: skip
    for each in run.appliances:
        left = begins + each.start.value
        yield Span(left, left + each.width.value, measure_of(each.width, unit))
    for filler in run.fillers:
        left = begins + _filler_start(run, filler)
        yield Span(left, left + filler.width.value, measure_of(filler.width, unit))
