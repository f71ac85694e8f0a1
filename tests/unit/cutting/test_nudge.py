"""Nudges, against the sizes that common practice knows by heart."""

from __future__ import annotations

from dataclasses import replace

from tests.cutting_problems import IN, inches, part, sheet_problem

from casewright.cutting import Movable, Stop, nudge, solve, verify


def test_twelve_inch_shelves_lose_three_thirty_seconds() -> None:
    """Common practice: four strips come out of 48 in with a kerf of 1/8 up to 11 29/32 wide."""
    problem = sheet_problem(part("shelf", "96", "12", 4))
    assert solve(problem).cost == 2
    depth = Movable("depth", -IN, IN, {"shelf": (0, 1)})
    best, *_ = nudge(problem, (depth,))
    assert (best.name, best.by, best.saved) == ("depth", -3, 1)
    assert inches("12") + best.by == inches("11 29/32")


def test_a_part_shorter_by_a_fixed_amount_follows() -> None:
    """Three sides and a deck 1/4 in narrower are together 1/8 in too wide: 1/32 off each."""
    problem = sheet_problem(part("side", "96", "12", 3), part("deck", "96", "11 3/4"))
    depth = Movable("depth", -IN, 0, {"side": (0, 1), "deck": (0, 1)})
    best, *_ = nudge(problem, (depth,))
    assert best.saved == 1
    moved = replace(
        problem, parts=tuple(replace(p, width=p.width + best.by) for p in problem.parts)
    )
    assert verify(moved, best.solution) == ()
    over = 3 * inches("12") + inches("11 3/4") + 3 * problem.kerf - inches("48")
    assert 4 * best.by + over <= 0 < 4 * (best.by + 1) + over


def test_a_size_made_equal_to_another_saves_its_settings() -> None:
    """Two rips of 11 7/8 and two of 11 3/4 are four of one setting when the first give 1/8."""
    problem = sheet_problem(part("side", "96", "11 7/8", 2), part("shelf", "96", "11 3/4", 2))
    found = nudge(problem, (Movable("depth", -8, 8, {"side": (0, 1)}),), Stop(20_000))
    assert [(n.by, n.saved, n.settings) for n in found] == [(-4, 0, 1)]


def test_nothing_to_save() -> None:
    """One sheet with one part: no move saves anything."""
    problem = sheet_problem(part("panel", "40", "30"))
    assert nudge(problem, (Movable("depth", -IN, IN, {"panel": (1, 0)}),)) == ()


def test_a_part_is_never_thinner_than_the_blade() -> None:
    """A strip of 3/16 in cannot give 1/8."""
    problem = sheet_problem(part("strip", "90", "3/16"), part("stop", "90", "1/8"))
    found = nudge(problem, (Movable("width", -6, 0, {"strip": (0, 1)}),), Stop(1_000))
    assert all(n.by > -3 for n in found)
