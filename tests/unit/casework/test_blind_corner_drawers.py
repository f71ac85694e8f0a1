"""A drawer over the door of a blind corner: it runs in the mouth, on a partition at that side.

Source of the mouth: the worked corner beside it; of air and play the sheet of the slides.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given as drawn
from hypothesis import settings
from hypothesis import strategies as st
from tests.builders import INCH, SLAB, Unit, given, length
from tests.unit.casework.test_blind_corners import (
    EXPECTED,
    FRAMELESS,
    ROOM,
    WORKED,
    corner,
    sheets,
)

from casewright.casework.specs import DrawerSpec, RowSpec
from casewright.casework.verification import verify
from casewright.errors import JobFileError
from casewright.job.load import read_job
from casewright.job.worked import work_out


def _with_drawer(unit: Unit, hand: str, **asked: Any) -> dict[str, Any]:
    """What makes it a corner with a drawer over its door."""
    hinge: Any = "right" if hand == "left" else "left"
    front = replace(SLAB, slab="slab", leaves=1, hinge=hinge, overlay=asked.pop("overlay", "full"))
    return FRAMELESS | {
        "rows": (RowSpec("drawer", given("6" if unit == "in" else "150", unit), front, front),
                 RowSpec("doors", None, front, front)),
        "drawer": DrawerSpec("rabbet", asked.pop("slides", "side-mount"), "drawer_ply", "ply6"),
    } | asked  # fmt: skip


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_a_drawer_over_the_door_runs_in_the_mouth(unit: Unit, hand: str) -> None:
    """As wide as the clear mouth less its slides' air; its front as the door, a gap over it.

    The worked mouth; air and play by the sheet of the slides.
    """
    case, at = corner(unit, hand, asked=_with_drawer(unit, hand)), WORKED[unit]
    scale, sheet = INCH if unit == "in" else Fraction(1), sheets(unit, at["P2"]).slide
    [drawer], [door] = case.drawers, case.doors
    front = next(front for front in case.fronts if front.path == drawer.front)
    mouth = length(EXPECTED[unit]["mouth"], "mm") * scale
    air = mouth - drawer.width.value
    assert 2 * sheet.air.value <= air <= 2 * sheet.air.value + sheet.play.value
    assert (front.x.value, front.width.value) == (door.x.value, door.width.value)
    filler = case.part("upper.blind_filler")
    assert filler.placed.y.value == door.y.value
    tall = front.y.value + front.height.value - door.y.value
    assert filler.finished.length.value == tall
    assert verify(case, hardware=sheets(unit, at["P2"])).failures == ()


def test_a_partition_carries_it_and_leaves_the_blind_part_to_be_reached() -> None:
    """Under both stretchers, before the panel closes it off; no lower than the drawer's row."""
    case = corner("mm", "left", asked=_with_drawer("mm", "left"))
    part, door = case.part("upper.partition"), case.doors[0]
    assert part.placed.y.value >= door.y.value + door.height.value
    held = {joint.path for joint in case.joints if part.path in (joint.one.part, joint.other.part)}
    assert {"upper.joint_partition_front_stretcher", "upper.joint_partition_rear_stretcher",
            "upper.joint_blind_partition", "upper.joint_partition_nailer"} == held  # fmt: skip
    order = [step.part for step in case.assembly]
    assert order.index("upper.partition") < order.index("upper.blind")


@settings(max_examples=20, deadline=None)
@drawn(
    unit=st.sampled_from(("in", "mm")),
    hand=st.sampled_from(("left", "right")),
    overlay=st.sampled_from(("full", "partial")),
    slides=st.sampled_from(("side-mount", "undermount")),
    back=st.sampled_from(
        (("rabbeted", "pocket screws"), ("grooved", "dado"), ("inset", "rabbet"))
    ),
    sizes=st.tuples(st.integers(40, 60), st.integers(18, 26), st.integers(0, 8)),
    ply=st.sampled_from(("45/64", "3/4", "5/8", "23/32")),
)
def test_any_blind_corner_with_a_drawer_proves(
    unit: Unit, hand: str, overlay: str, slides: str, back: tuple[str, str],
    sizes: tuple[int, int, int], ply: str,
) -> None:  # fmt: skip
    """Over its widths, depths, slides, backs and sheets, both hands; and it is replayed."""
    per = Fraction(1) if unit == "in" else Fraction(25)
    wide, deep, off = (str(size * per) for size in sizes)
    asked = _with_drawer(unit, hand, overlay=overlay, slides=slides, back=back[0], joint=back[1])
    case = corner(
        unit, hand, ply=ply if unit == "in" else "18.2", step="1/32" if unit == "in" else "1/2",
        W=wide, D2=deep, q=off, overlay="partial" if overlay == "partial" else "full", asked=asked,
    )  # fmt: skip
    if not any(finding.severity.value == "stop" for finding in case.findings):
        assert verify(case, hardware=sheets(unit, WORKED[unit]["P2"])).failures == ()


def test_a_drawer_that_would_be_drawn_into_pulls_is_told_with_what_would_do() -> None:
    """A run 23 1/4 in deep, reckoned with as 22: the drawer strikes its pulls; a filler clears."""
    text = ROOM.replace('blind = "right"', 'blind = "right"\ntop_drawer = 6\ncorner_depth = 22')
    text = text.replace("[case.round]", "[case.round]\nwidth = 30")
    worked = work_out(read_job(text, "room.toml"))
    assert worked.failures == ()
    [told] = [f for f in worked.findings if f.rule == "inside corner" and "is drawn" in f.says]
    assert (told.path, told.severity.value) == ("blind.drawer_1", "stop")
    assert told.remedies[0].startswith("corner_depth = 23")
    mended = text.replace("corner_depth = 22", 'corner_depth = "23 1/4"')
    found = work_out(read_job(mended, "room.toml")).findings
    assert not any("is drawn" in f.says for f in found)


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ('top_drawer = 6\nfront = { overlay = "inset" }', "no rail goes through"),
        ('top_drawer = 6\nface = "face frame"', "no drawer runs over"),
        ("top_drawer = 6\nrails = true", "run into the blind panel"),
        ('rows = ["drawer 6", "drawer 6", "doors"]', "at the most one drawer"),
        ("drawers = 3", "no room for drawers"),
    ],
)
def test_what_has_no_place_over_its_door_is_refused(more: str, says: str) -> None:
    """Each with its reason, at its own line."""
    text = ROOM.replace('blind = "right"', f'blind = "right"\n{more}')
    with pytest.raises(JobFileError) as caught:
        read_job(text.replace("width = 42", "width = 48"), "room.toml")
    assert says in str(caught.value)
