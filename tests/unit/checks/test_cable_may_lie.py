"""Cables between outlets; the zones and the screws by hand.

Common practice: cables run sideways from outlet to outlet, mostly at their height. The usual
outlet box counts 4 in high, the style keeps 2 in over and under it free.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from tests.unit.checks.kitchens import wired
from tests.unit.checks.rooms import found_in

from casewright.room.cable_runs import cable_runs
from casewright.room.model import Room
from casewright.sources import INCH

DOOR = '[wall.w.fixed.d]\nkind = "door"\nleft = 40\nwidth = 20\nheight = 80\n'


def _zones(room: Room) -> list[tuple[Fraction, ...]]:
    return [
        tuple(edge / INCH for edge in (run.left, run.right, run.low, run.high))
        for run in cable_runs(room, room.survey.walls["w"])
    ]


@pytest.mark.parametrize(
    ("one", "other", "more", "zones"),
    [
        ("44", "44", "", [(2, 98, 42, 50)]),
        ("44", "46", "", [(2, 98, 42, 52)]),
        ("16", "44", "", [(2, 98, 14, 22), (2, 98, 42, 50)]),
        ("44", "44", DOOR, []),
    ],
)
def test_a_zone_as_high_as_each_of_the_two(
    one: str, other: str, more: str, zones: list[tuple[int, ...]]
) -> None:
    """Once where both are about as high, twice where they are not, never past a door."""
    assert _zones(wired(one, other=other, more=more)) == zones


@pytest.mark.parametrize(
    # The nailer under the top goes from 79 25/32 to 83 9/32: screws at 80 21/32 and 82 13/32.
    ("bottom", "told"),
    [("72", False), ("74 1/2", False), ("74 3/4", True), ("84 1/4", True), ("84 1/2", False)],
)
def test_the_screws_of_a_nailer_against_the_zone(bottom: str, told: bool) -> None:
    """From 2 below an outlet's lower edge to 2 above one 4 in high."""
    assert bool(found_in("cable may lie", wired(f'"{bottom}"'))) == told


@pytest.mark.parametrize(
    ("studs", "told"), [("[]", True), ("[16, 32, 48, 64, 80, 96]", True), ("[1, 99]", False)]
)
def test_only_studs_that_screws_go_into_count(studs: str, told: bool) -> None:
    """Until studs are found any place behind the case counts."""
    room = wired("80", more=f"studs = {studs}\n")
    assert bool(found_in("cable may lie", room)) == told
