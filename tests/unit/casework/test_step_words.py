"""What the steps of a case say of the very part in hand, in the job's own unit."""

from __future__ import annotations

from typing import Any

import pytest
from tests.builders import GLASS, Unit, one_case

from casewright.casework.cases import Case


def _words(case: Case, part: str) -> str:
    return " ".join(step.words for step in case.assembly if step.part == part)


@pytest.mark.parametrize(
    ("unit", "said"), [("in", "1/16 in (1.5 mm)"), ("mm", "1.5 mm (1/16 in)")]
)
def test_a_box_is_checked_square_in_the_unit_of_the_job(unit: Unit, said: str) -> None:
    """The unit that the job's tape reads comes first, the other in brackets."""
    [square] = [step for step in one_case(unit).assembly if step.verb == "check square"]
    assert f"agree within {said};" in square.words


@pytest.mark.parametrize(("unit", "said"), [("in", "1/32 in (1 mm)"), ("mm", "1 mm (1/32 in)")])
def test_a_glass_frame_is_checked_square_in_the_unit_of_the_job(unit: Unit, said: str) -> None:
    """As the box is, twice as closely."""
    size = {"in": ("16 1/2", "30"), "mm": ("420", "760")}[unit]
    case = one_case(unit, width=size[0], height=size[1], front=GLASS, shelves=0)
    squares = [step.words for step in case.assembly if step.verb == "check square"]
    assert [words for words in squares if f"agree within {said}." in words]


@pytest.mark.parametrize(("joint", "screwed"), [("pocket screws", True), ("dado", False)])
def test_a_thick_back_is_drawn_up_with_what_it_has(joint: str, *, screwed: bool) -> None:
    """Its step names the screws where it is bored for them, else clamps; never both."""
    case = one_case(joint=joint, back="inset")
    back = case.part("upper.back")
    assert any(feature.kind == "pocket" for feature in back.features) is screwed
    said = _words(case, back.path)
    assert ("its pocket screws" in said, "clamps" in said) == (screwed, not screwed)


def test_retainers_are_placed_from_the_corners_of_the_pane() -> None:
    """They are spread over the pane, not over the frame that they are screwed to."""
    sizes: dict[str, Any] = {"width": "16 1/2", "height": "30", "front": GLASS, "shelves": 0}
    case = one_case("in", **sizes)
    [step] = [step for step in case.assembly if step.part == "upper.door.pane"]
    outer = [words for words, _ in step.marks if "from the" in words]
    assert outer
    assert all(words.endswith("from the corners of the pane") for words in outer)
