"""What `forecast` prints."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from casewright.dims import Unit, size_text
from casewright.dims.count_text import counted
from casewright.job.forecasting import Outlook
from casewright.packet.mark_words import mark_list
from casewright.record import Entry
from casewright.resolve import HoldPoint, hold_points
from casewright.room.fit_words import fit_name, gap_text
from casewright.room.forecast_words import (
    cause_text,
    chance_text,
    fine_text,
    main_text,
    spread_text,
    tool_text,
    with_text,
)
from casewright.room.forecasts import Forecast
from casewright.room.model import Room

__all__ = ["answer_lines", "forecast_lines"]

_TOLD = 0.001
"""Fits that miss less often are only counted [-]."""

_MOST, _NAMED = 20, 2


def forecast_lines(outlook: Outlook, *, everything: bool) -> Iterator[str]:
    """Fits by their chance to miss, then the hold points, then what the shop has learned.

    Parameters
    ----------
    everything
        All fits, each with all its causes.
    """
    room, unit = outlook.room, outlook.room.spec.unit
    groups = _alike(outlook.forecasts)
    told = [group for group in groups if everything or group[0].chance >= _TOLD]
    told = told if everything else told[:_MOST]
    yield "FITS, made by the numbers as they are, the likeliest to miss first"
    for group in told:
        yield from _fit_lines(group, unit, causes=everything)
    rest = [each for group in groups[len(told) :] for each in group]
    if rest:
        most = chance_text(rest[0].chance)
        yield f"  and {counted(len(rest), 'fit')} that miss {most} at the most"
    yield from _point_lines(outlook.points, room)
    yield from _tool_lines(room)


def _alike(forecasts: Iterable[Forecast]) -> list[list[Forecast]]:
    """Forecasts that read the same but for what they are of, where the first of them stands."""
    groups: dict[object, list[Forecast]] = {}
    for each in forecasts:
        fit = each.fit
        spread = (each.slack.worst, round(each.chance, 4), round(each.read_chance, 4))
        key = (fit_name(fit, owner=""), fit.gap.value, fit.low, fit.high, spread)
        groups.setdefault(key, []).append(each)
    return list(groups.values())


def _fit_lines(group: Sequence[Forecast], unit: Unit, *, causes: bool) -> Iterator[str]:
    forecast = group[0]
    fit, found = forecast.fit, forecast.slack
    now, low, high, least, most = (
        gap_text(fit, value, unit)
        for value in (fit.gap.value, fit.low, fit.high, found.low, found.high)
    )
    name = fit_name(fit, owner=_shortened([each.fit.owner for each in group]))
    yield (
        f"  {chance_text(forecast.chance):12}  {name} is {now}, must be {low} to {high}; at worst "
        f"{least} to {most}, strays {spread_text(forecast, unit)}"
    )
    if causes:
        for term in found.terms:
            adds = "adds" if term.cause.bias else "strays"
            sigma, worst = (fine_text(size, unit) for size in (term.sigma, term.worst))
            yield f"        - {cause_text(term.cause)}: {adds} {sigma}, at most {worst}"
    elif forecast.main is not None:
        yield f"        most of it: {main_text(forecast)}"
    if forecast.read:
        names = _shortened([each.dim.path for each in forecast.read])
        yield f"        with {names} read first: {chance_text(forecast.read_chance)}"


def _shortened(names: Sequence[str]) -> str:
    if len(names) <= _NAMED:
        return " and ".join(names)
    return f"{', '.join(names[:_NAMED])} and {len(names) - _NAMED} more"


def _point_lines(points: Iterable[HoldPoint], room: Room) -> Iterator[str]:
    points = tuple(points)
    if not points:
        yield "HOLD POINTS: none; nothing is worth measuring before the next cut"
        return
    yield "HOLD POINTS: measure before the next cut"
    for point in points:
        yield from _one_point(point, room)


def _one_point(point: HoldPoint, room: Room) -> Iterator[str]:
    unit, number = room.spec.unit, point.number
    planned, *ends = (
        size_text(value, unit, calliper=point.reading.tool == "calliper")
        for value in (point.planned, *(point.go or ()), *(point.sound or ()))
    )
    if point.read is not None:
        read = size_text(point.read, unit, calliper=point.reading.tool == "calliper")
        yield f"  {number}  {point.path}: passed, read {read}, planned {planned}"
    else:
        yield (
            f"  {number}  measure {point.path} {with_text(point.reading.tool)}; "
            f"planned {planned}, read ______"
        )
        yield f"        then cut {_marks(point, room)}"
        if point.go is not None:
            reach = ends[0] if ends[0] == ends[1] else f"{ends[0]} to {ends[1]}"
            yield f"        GO {reach}: cut them as they are printed"
        other = "any other reading" if point.go is not None else "whatever it is"
        yield (
            f"        {other}: write it down (casewright record JOB reading {point.path} ...) and "
            "cut them to the new sizes"
        )
        if point.sound is not None:
            yield f"        NO GO under {ends[-2]} or over {ends[-1]}: put it right first"
    yield f"        {_risk(point)}"


def answer_lines(room: Room, entries: Iterable[Entry]) -> Iterator[str]:
    """What readings mean for the hold points that were open before them: go, write, or no go."""
    readings = (e for e in entries if e.kind == "reading")
    read = {e.number_path(name): size for e in readings for name, size in e.sizes}
    points = hold_points(room) if read else ()
    for point in points:
        value = read.get(point.path)
        if value is None or point.read is not None or not point.parts:
            continue
        if point.sound is not None and not point.sound[0] <= value <= point.sound[1]:
            yield f"NO GO: put {point.path} right before {_marks(point, room)} are cut"
        elif point.go is not None and point.go[0] <= value <= point.go[1]:
            yield f"GO: {_marks(point, room)} may be cut as they are printed"
        else:
            yield f"Cut {_marks(point, room)} to the new sizes: print the packet again"


def _risk(point: HoldPoint) -> str:
    first, count = point.watched[0], len(point.watched)
    fits = f"each of {count} fits, such as {fit_name(first.fit)}" if count > 1 else (
        fit_name(first.fit)
    )  # fmt: skip
    return (
        f"misses {chance_text(first.without)} without, {chance_text(first.with_it)} with it: "
        f"{fits}; saves about {round(point.saved_minutes)} min of mending for "
        f"{point.cost_minutes} min"
    )


def _marks(point: HoldPoint, room: Room) -> str:
    marks = {part.path: part.mark for part in room.parts}
    return mark_list(marks[path] for path in point.parts if path in marks)


def _tool_lines(room: Room) -> Iterator[str]:
    shop = room.spec.shop
    for kind in shop.tools:
        says = tool_text(shop, kind, room.spec.unit)
        if says:
            yield f"  {says}"
