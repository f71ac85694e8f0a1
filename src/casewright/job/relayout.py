"""Runs and heights that no longer hold as they were laid out, with what they would be now."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from functools import lru_cache

from casewright.dims import Told, joined, tell
from casewright.findings import Finding
from casewright.job.heights import room_heights
from casewright.job.hindrances import Hindrance, height_hindrances, run_hindrances
from casewright.job.layouts import RunLayout, layouts
from casewright.layout.answers import LayoutAnswer
from casewright.room.anew import HEIGHTS_ANEW, run_asked_for
from casewright.room.model import Room

__all__ = ["outgrown_runs", "told_anew", "widths_text"]


def told_anew(room: Room, findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings; those that ask for a layout anew say what it would be, and how to accept it.

    Nothing is laid out where none asks for it. What is made keeps its width.
    """
    run = lru_cache(maxsize=None)(lambda key: _run_anew(room, key))
    heights = lru_cache(maxsize=1)(lambda: _heights_anew(room))
    held = [finding for finding in findings if not _must_be_wide(room, finding)]
    return tuple(_told(finding, run, heights) for finding in held)


def outgrown_runs(room: Room) -> dict[str, Finding]:
    """By key, runs whose accepted layout no longer holds, each with what is wrong with it."""
    return {
        key: finding
        for finding in room.findings
        for remedy in finding.remedies
        if (key := run_asked_for(remedy)) and not _must_be_wide(room, finding)
    }


def _must_be_wide(room: Room, finding: Finding) -> bool:
    """Whether a filler is found wide that the layout proposes as wide: what opens needs it."""
    keys = [key for remedy in finding.remedies if (key := run_asked_for(remedy))]
    if finding.rule != "wide filler" or not keys:
        return False
    built = next(run for run in room.runs if run.spec.key == keys[0])
    found = next(layouts(room, only=keys[0]), None)
    widths = {case.key: case.spec.width.value for case in built.cases if case.spec.width}
    return found is not None and any(
        all(
            widths.get(place.key, found.step * width) == found.step * width
            for place, width in zip(answer.layout.task.places, answer.layout.widths, strict=True)
        )
        for answer in found.answers
    )


def widths_text(run: RunLayout, answer: LayoutAnswer) -> Told:
    """The widths of an answer from the left: 'pots 26 1/2, sink 36'."""
    return joined(", ", run.widths(answer))


def _told(
    finding: Finding, run: Callable[[str], tuple[str, ...]], heights: Callable[[], tuple[str, ...]]
) -> Finding:
    remedies: list[str] = []
    for remedy in finding.remedies:
        asked = run_asked_for(remedy)
        words = run(asked) if asked else heights() if remedy == HEIGHTS_ANEW else ()
        remedies.extend(words or (remedy,))
    return replace(finding, remedies=tuple(remedies))


def _run_anew(room: Room, key: str) -> tuple[str, ...]:
    run = next(layouts(room, only=key, best_alone=True), None)
    if run is None:
        return ()
    if not run.answers:
        return _nothing_fits(next(run_hindrances(run), None))
    best = run.answers[0]
    took = f"to take it: casewright layout JOB --run {key} --accept 1"
    widths, trade = widths_text(run, best), joined("; ", best.trade)
    return (tell("laid out anew: {} ({}); {}", widths, trade, took),)


def _heights_anew(room: Room) -> tuple[str, ...]:
    heights = room_heights(room)
    if heights is None:
        return ()
    if not heights.answers:
        return _nothing_fits(next(height_hindrances(heights), None))
    sizes = joined(", ", heights.sizes(heights.answers[0]))
    took = "to take it: casewright layout JOB --heights --accept 1"
    return (tell("laid out anew: {}; {}", sizes, took),)


def _nothing_fits(why: Hindrance | None) -> tuple[str, ...]:
    """Why no layout would help, and what each of the other ways is."""
    if why is None:
        return ()
    return (tell("no layout fits any more: {}", why.what), *why.reliefs)
