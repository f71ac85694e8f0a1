"""The set-up coach: which way to move, and what several settings have in common.

Directions are common practice at the saw, the router and the drill, worked out by hand.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from casewright.shop import Axis, Setting, TestCut, leans, move_words

Q = Fraction
SAW = Setting("table saw", "saw blade", passes=2)


@pytest.mark.parametrize(
    ("setting", "axis", "off", "says"),
    [
        (SAW, "depth", 1, "lower the blade 1/64"),
        (SAW, "depth", -1, "raise the blade 1/64"),
        (Setting("router"), "depth", -1, "set the bit 1/64 deeper"),
        (Setting("hinge jig"), "depth", 1, "move the collar 1/64 nearer to the tip"),
        (SAW, "place", 1, "move the fence 1/64 towards the blade"),
        (Setting("router"), "place", -1, "move the guide 1/64 farther from the datum"),
        (Setting("table saw", by_stop=True), "place", 1, "move the stop 1/64 nearer to the cut"),
        (Setting("table saw", "dado stack packed to"), "width", 1, "take shims of 1/64 out"),
        (SAW, "width", -1, "for the last pass move the fence 1/64 more"),
    ],
)
def test_the_move_takes_back_what_is_off(
    setting: Setting, axis: Axis, off: int, says: str
) -> None:
    """Too deep: blade down. Too far from the fence: fence nearer. Too wide: a lesser last pass."""
    assert move_words(setting, axis, Q(off), "1/64") == says


def test_a_door_that_laps_too_far_has_its_cup_too_far_in() -> None:
    """Overlay grows with the distance from the door's edge to the cup."""
    over = move_words(Setting("hinge jig"), "lap over the case", Q(1), "1 mm")
    assert "nearer to the door's edge" in over
    assert "side screws" in over


def cuts(tool: str, *offs: str, axis: Axis = "depth") -> list[TestCut]:
    """A test piece of each of several settings."""
    return [TestCut(tool, axis, f"{tool} {n}", Q(off)) for n, off in enumerate(offs)]


def test_three_settings_to_one_side_have_one_cause() -> None:
    """0.7 to 0.9 mm over on three settings: the scale, not three slips of the hand."""
    (lean,) = leans(cuts("table saw", "0.8", "0.7", "0.9"))
    assert (lean.count, lean.off) == (3, Q("0.8"))
    assert lean.cause == "the height or depth scale of the table saw"


def test_several_tools_to_one_side_share_the_tape() -> None:
    """Fence and guide are set by one tape."""
    tests = cuts("table saw", "0.8", "0.7", axis="place") + cuts("router", "0.9", axis="place")
    (lean,) = leans(tests)
    assert lean.tools == ("router", "table saw")
    assert "tape" in lean.cause


def test_settings_to_both_sides_have_none() -> None:
    assert not leans(cuts("table saw", "0.8", "-0.7", "0.2", "-0.4"))
    assert not leans(cuts("table saw", "0.8", "0.9"))


def test_only_the_first_test_piece_of_a_setting_tells_of_it() -> None:
    """After the move it is right: that says nothing of how it was set."""
    first = cuts("table saw", "0.8", "0.7", "0.9")
    moved = [TestCut(t.tool, t.axis, t.setting, Q(0)) for t in first]
    assert leans(first + moved) == leans(first)


@given(st.lists(st.fractions(-2, 2, max_denominator=32), max_size=8))
def test_the_order_of_settings_does_not_matter(offs: list[Fraction]) -> None:
    """Nor does mirroring change more than the side."""
    tests = [TestCut("router", "place", str(n), off) for n, off in enumerate(offs)]
    assert leans(tests) == leans(list(reversed(tests)))
    mirrored = [TestCut(t.tool, t.axis, t.setting, -t.off) for t in tests]
    assert [-lean.off for lean in leans(tests)] == [lean.off for lean in leans(mirrored)]
