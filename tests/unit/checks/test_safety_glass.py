"""Places where the code asks for a category of glass: IRC R308.4, by secondary copies."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from tests.unit.checks.rooms import found_in
from tests.unit.checks.surveyed_rooms import glass_beside

from casewright.findings import Finding, Severity
from casewright.job.load import read_job
from casewright.room.build import build


@pytest.mark.parametrize(("door", "asked"), [(40, True), (56, True), (64, False)])
def test_within_24_in_of_a_door(door: int, *, asked: bool) -> None:
    """The pane of the right door ends some 2 in before the case does, at 34."""
    told = found_in("safety glass", glass_beside(door))
    assert bool(told) == asked
    assert all(finding.limit == "category I" for finding in told)


def test_a_pane_that_begins_60_in_up_is_passed_over() -> None:
    """Its frame takes 2 1/4 in: hung at 58 it begins at 60 1/4, hung at 54 at 56 1/4."""
    assert found_in("safety glass", glass_beside(40))
    assert not found_in("safety glass", glass_beside(40, bottom=58))


@pytest.mark.parametrize(
    ("height", "bottom", "asked"),
    [(60, 14, True), (60, 18, False), (20, 14, False)],
)
def test_a_wide_pane_low_down(height: int, bottom: int, *, asked: bool) -> None:
    """Over 9 sq ft, from under 18 to over 36 in: two leaves of 30, their panes 25 1/2 wide."""
    told = found_in("safety glass", glass_beside(110, width=60, height=height, bottom=bottom))
    assert [finding.limit for finding in told] == ["category II"] * asked


def test_plastic_there_is_a_note_and_wants_the_mark_of_its_own_test() -> None:
    """Approved rigid plastic is safety glazing too (IRC R308, by a secondary copy)."""
    glass, plastic = (found_in("safety glass", glass_beside(40, glazing=stock))[0]
                      for stock in ("glass", "acrylic"))  # fmt: skip
    assert (glass.severity, plastic.severity) == (Severity.CARE, Severity.NOTE)
    assert "this plastic" in plastic.remedies[0]
    assert not any("instead of glass" in way for way in plastic.remedies)


def test_how_far_it_must_go_from_the_door_is_told() -> None:
    """24 in less what lies between: the pane's edge is some 2 1/4 in inside the case."""
    near, far = (found_in("safety glass", glass_beside(door))[0] for door in (40, 50))
    words = [each.remedies[1] for each in (near, far)]
    assert all("farther from" in each for each in words)
    assert words[0] != words[1]


def _round(thing: str, *, along: int = 0, bottom: int = 54, corner: str = "") -> list[Finding]:
    """A wall case so far along its wall from a corner; something on the other wall."""
    beam = f'[wall.w.fixed.beam]\nkind = "chimney"\nleft = 0\nwidth = {along}\n' if along else ""
    starts = 'after = "beam"\nleft = "open"' if along else 'left = "open"'
    text = (
        f'format = 1\nunit = "in"\n[style]\nwall_bottom = {bottom}\nwall_depth = "12 1/4"\n'
        '[case.a]\nkind = "wall"\nwidth = 36\nheight = 39\n'
        'front = { construction = "glass frame" }\n'
        f'[run.r]\ncases = ["a"]\non = "w"\n{starts}\nright = "open"\n'
        f"[wall.v]\nwidth = 100\n[wall.w]\nwidth = 250\n{beam}"
        f'[corner.c]\nwalls = ["v", "w"]\n{corner}\n[wall.v.fixed.thing]\n{thing}\n'
    )
    return found_in("safety glass", build(read_job(text, "glass.toml")))


_DOOR = 'kind = "door"\nright = 10\nwidth = 32\n'


@pytest.mark.parametrize(
    ("thing", "corner", "severity"),
    [
        (_DOOR + 'swing = "right"', "", Severity.CARE),
        (_DOOR + 'swing = "left"', "", None),  # its hinges are 42 in out from the corner
        (_DOOR, "", Severity.NOTE),
        (_DOOR + 'swing = "right"', "outside = true", None),  # nobody walks through a corner
    ],
)
def test_round_a_corner_the_hinges_of_a_door_count(
    thing: str, corner: str, severity: Severity | None
) -> None:
    """Within 24 in of the hinge side of a door that swings in (IRC R308.4.2, from memory).

    The pane stands some 13 in out from its wall, so 3 in beside a door that ends at 10.
    """
    assert [each.severity for each in _round(thing, corner=corner)] == [severity] * bool(severity)


@pytest.mark.parametrize(
    ("kind", "along", "bottom", "asked"),
    [("tub", 0, 54, True), ("shower", 30, 54, True), ("tub", 0, 58, False),
     ("tub", 88, 54, False), ("stairs", 0, 30, True), ("stairs", 0, 34, False)],
)  # fmt: skip
def test_beside_water_and_stairs(kind: str, along: int, bottom: int, *, asked: bool) -> None:
    """Within 60 in, begun under 60 in beside water, under 36 beside stairs (IRC, from memory).

    The frame takes 2 1/4 in: hung at 58 the pane begins at 60 1/4.
    """
    told = _round(f'kind = "{kind}"\nright = 0\nwidth = 60\nout = 30', along=along, bottom=bottom)
    assert bool(told) == asked


def test_what_is_told_as_far_enough_is() -> None:
    """The pane's edge is 2 3/16 in inside its case; a little short of what is told is not."""
    tub = 'kind = "tub"\nright = 40\nwidth = 60\nout = 30'
    words = _round(tub)[0].remedies[1]
    told = float(sum(Fraction(each) for each in words.split('"')[0].split()[2:]))
    assert 0 < told < 90
    assert not _round(tub, along=math.ceil(told))
    assert _round(tub, along=math.floor(told))
