"""Rows of brads: how many, where, and that the steps say it (common practice).

Worked by hand for an upper of 33 x 39 in, sides 23/32, back in rabbets 3/8 deep.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import INCH, hardware, length, one_case, plain_style
from tests.perturbation import moved

from casewright.casework.cases import Case
from casewright.casework.joints import Fastening, Joint
from casewright.casework.proof import prove


def _rows(case: Case) -> dict[str, tuple[Joint, Fastening]]:
    return {
        joint.path.partition(".")[2]: (joint, held)
        for joint in case.joints
        for held in joint.fastenings
        if held.line is not None
    }


def _upper(**changes: Any) -> Case:
    return one_case(style=plain_style(cut_step="0"), **changes)


@pytest.mark.parametrize(
    ("name", "count", "pitch", "plane", "line"),
    [
        # Back 39 long: 39 - 2 x 1 1/2 = 36, six gaps of 6. Rabbet 3/8: middle 3/16 in.
        ("joint_back_left", 7, "6", "w1", "3/16"),
        ("joint_back_right", 7, "6", "w0", "3/16"),
        # 33 - 2 x 23/32 = 31 9/16 clear; less 3: 28 9/16, five gaps. Middle of 23/32: 23/64.
        ("joint_back_bottom", 6, "5 57/80", "l0", "23/64"),
        ("joint_back_top", 6, "5 57/80", "l0", "38 41/64"),
    ],
)
def test_a_back_is_held_on_the_middle_of_what_it_lies_on(
    name: str, count: int, pitch: str, plane: str, line: str
) -> None:
    """At most 6 in apart, the outer ones 1 1/2 in from the ends."""
    _, held = _rows(_upper())[name]
    assert held.count == count
    assert held.edge is not None
    assert held.pitch is not None
    assert held.line is not None
    assert held.edge.value == length("1 1/2")
    assert held.pitch.value == length(pitch)
    assert (held.line[0], held.line[1].value) == (plane, length(line))


def test_brads_through_a_side_meet_the_middle_of_the_board() -> None:
    """Dadoed bookcase: the row lies at the shelf's underside and half its thickness."""
    case = one_case(kind="bookcase", joint="dado", height="60", depth="12", shelves=2)
    _, held = _rows(case)["joint_shelf_1_left"]
    shelf = case.part("upper.shelf.1")
    assert held.line is not None
    middle = shelf.placed.y.value + shelf.finished.thickness.value / 2
    assert held.line[1].value == middle


def test_steps_say_how_many_brads_and_where() -> None:
    """The step of the back names each line once, sides that mirror each other together."""
    case = _upper()
    [step] = [step for step in case.assembly if step.part == "upper.back"]
    said = [words for words, _ in step.marks]
    assert said == [
        "7 brads into the left side and the right side, on a line from the near edge of the back",
        "from the ends",
        "apart",
        "6 brads each, on lines from the bottom end of the back, into the bottom",
        "into the top",
        "from the ends",
        "apart",
    ]
    assert all(dim.path for _, dim in step.marks)


@pytest.mark.parametrize("name", ["joint_back_left", "joint_back_bottom"])
def test_a_row_that_misses_the_wood_is_caught(name: str) -> None:
    """A line half an inch off runs beside a side or a bottom of 23/32."""
    case = _upper()
    joint, held = _rows(case)[name]
    assert held.line is not None
    off = replace(held, line=(held.line[0], moved(held.line[1], INCH / 2)))
    wrong = replace(joint, fastenings=(off,))
    joints = tuple(wrong if each is joint else each for each in case.joints)
    found = prove(replace(case, joints=joints), hardware=hardware()).failures
    assert [f.says for f in found] == ["a row of brads runs beside what it is to hold"]
    assert Fraction(0) == found[0].amount
