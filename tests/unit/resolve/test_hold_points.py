"""Where measuring before the next cut is worth it, in the gallery of drawers and in small jobs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from functools import cache

import pytest
from tests.jobs import example, read

from casewright.casework.parts import Part
from casewright.dims import Cause, Origin
from casewright.facts import Fact
from casewright.resolve import HoldPoint, hold_points
from casewright.room.build import build
from casewright.room.model import Room
from casewright.room.simulation import chance_outside
from casewright.room.specs import JobSpec
from casewright.shop import Tool

OPENING = "trays.clear_width"
RULE = Origin("measured", "steel rule")


@cache
def spec() -> JobSpec:
    """Boxes of drawers, every sheet measured."""
    return read(example("gallery"))


def room(facts: Mapping[str, Fact] | None = None, *, job: JobSpec | None = None) -> Room:
    """The gallery as it is with some sizes read."""
    return build(job or spec(), facts or {})


def point_at(path: str, where: Room) -> HoldPoint:
    """The hold point that reads a number."""
    return next(point for point in hold_points(where) if point.path == path)


def read_as(value: Fraction) -> Fact:
    """The opening as a rule shows it."""
    causes = (Cause(f"reading of {OPENING}", Fraction(1, 5), Fraction(2, 5)),)
    return Fact(RULE, built=value, causes=causes)


def accurate(sigma: Fraction) -> JobSpec:
    """The gallery made with tools that stray by no more than that."""
    shop = spec().shop
    tools = {
        kind: replace(tool, sigma=min(tool.sigma, sigma), limit=min(tool.limit, 2 * sigma))
        for kind, tool in shop.tools.items()
    }
    return replace(spec(), shop=replace(shop, tools=tools))


def test_an_opening_is_read_before_the_drawers_and_the_back_that_go_into_it() -> None:
    """Two drawers and a back wait; each is likelier to fit with the reading than without."""
    point = point_at(OPENING, room())
    assert point.read is None
    assert point.reading.tool == "steel rule"
    assert {"trays.drawer_1.front_end", "trays.drawer_2.front_end", "trays.back"} <= set(
        point.parts
    )
    assert all(each.with_it < each.without / 2 for each in point.watched)
    assert point.saved_minutes > point.cost_minutes


def test_the_worth_of_a_hold_point_is_the_chance_it_saves_times_the_mending() -> None:
    """Summed over its fits, by hand."""
    point = point_at(OPENING, room())
    saved = sum(each.minutes * (each.without - each.with_it) for each in point.watched)
    assert point.saved_minutes == pytest.approx(saved)


def test_true_tools_need_no_hold_point() -> None:
    """With cuts to a twentieth of a millimetre and a frame that is let go its way, fewer."""
    sloppy, true = hold_points(room()), hold_points(room(job=accurate(Fraction(1, 20))))
    assert len(true) < len(sloppy)


def test_a_tool_that_reads_no_better_than_the_saw_cuts_brings_none() -> None:
    """A rule that is 5 mm off: nothing is gained by it."""
    shop = spec().shop
    rule = Tool("steel rule", Fraction(5), Fraction(10))
    tape = Tool("tape", Fraction(5), Fraction(10))
    tools = {**shop.tools, "steel rule": rule, "tape": tape}
    blind = replace(spec(), shop=replace(shop, tools=tools))
    assert OPENING not in {point.path for point in hold_points(room(job=blind))}


def test_a_reading_turns_its_hold_point_into_a_passed_one() -> None:
    """And only that one: the others stay open."""
    before = room()
    value = before.chain.nodes[OPENING].value + Fraction(2)
    after = room({OPENING: read_as(value)})
    assert point_at(OPENING, after).read == value
    still = {point.path for point in hold_points(after) if point.read is None}
    assert still == {p.path for p in hold_points(before)} - {OPENING}


def test_what_is_cut_waits_no_more() -> None:
    """Drawers and back cut without the reading: the stop would come too late."""
    plain = room()
    waiting = set(point_at(OPENING, plain).parts)

    def cut(part: Part) -> Part:
        return replace(part, state="cut") if part.path.startswith("trays.") else part

    cases = tuple(
        replace(case, parts=tuple(cut(part) for part in case.parts)) for case in plain.cases
    )
    found = hold_points(replace(plain, cases=cases))
    assert waiting
    assert OPENING not in {point.path for point in found}


def _cut_as_printed(point: HoldPoint, read: Fraction) -> Room:
    """The gallery with the opening read so, and all that waits for it cut as it was printed."""
    nodes = room().chain.nodes
    facts = {OPENING: read_as(read)}
    for path in point.parts:
        for name in ("length", "width", "blank_length", "blank_width"):
            node = nodes.get(f"{path}.{name}")
            if node is not None and node.origin and node.origin.kind == "made":
                facts[node.path] = Fact(Origin("made", "cut as printed"), cut=node.value)
    return room(facts)


def test_a_go_is_a_go() -> None:
    """At either end of the band, cut as printed, no more than one in ten misses to that side.

    That holds for every fit, for those that the reading was not advised for as well.
    """
    point = point_at(OPENING, room())
    assert point.go is not None
    usual = _cut_as_printed(point, point.planned).chain.fits
    for end in point.go:
        for path, fit in _cut_as_printed(point, end).chain.fits.items():
            before = usual[path]
            chance = chance_outside(before.gap, before.low, before.high)
            assert chance_outside(fit.gap, fit.low, fit.high) <= 0.10 + chance, path


def test_no_go_is_where_the_box_itself_is_out_of_size() -> None:
    """The case may be 1/16 in off in width: just inside the band it holds, just outside not."""
    point = point_at(OPENING, room())
    assert point.sound is not None
    low, high = point.sound
    for value, holds in (
        (low, True), (low - Fraction(1), False), (high, True), (high + Fraction(1), False),
    ):  # fmt: skip
        assert room({OPENING: read_as(value)}).chain.fits["trays.width_error"].holds is holds


def test_a_sheet_that_was_not_measured_is_the_first_thing_to_read() -> None:
    """By its label a sheet may be 0.6 mm off, in both sides of every box at once."""
    job = read('format = 1\nunit = "mm"\n[case.base]\nkind = "base"\nwidth = "900 mm"\n')
    forecast = {point.path: point for point in hold_points(build(job))}
    assert all(point.reading.tool == "calliper" for path, point in forecast.items()
               if path.startswith("stock."))  # fmt: skip


def test_a_hold_point_is_weighed_by_the_minutes_of_this_shop() -> None:
    """Nothing is measured that costs more than it saves; where drawers are dear, more is saved."""
    shop = spec().shop
    plain = point_at(OPENING, room())

    def found(**minutes: int) -> tuple[HoldPoint, ...]:
        own = replace(shop, mending=replace(shop.mending, **minutes))
        return hold_points(room(job=replace(spec(), shop=own)))

    assert not found(measure=480)
    dear = {point.path: point for point in found(measure=10, drawer=90)}[OPENING]
    assert dear.cost_minutes == 10
    assert plain.cost_minutes == shop.mending.measure
    drawers = [each for each in dear.watched if "drawer" in each.fit.path]
    assert {each.minutes for each in drawers} == {90}
    assert dear.saved_minutes > plain.saved_minutes
