"""Replay of whole cases whose steps, pockets or sizes are plainly wrong."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tests.builders import GLASS, SLAB, one_case
from tests.perturbation import moved, with_part

from casewright.casework.cases import AssemblyStep, Case
from casewright.casework.features import Bores
from casewright.casework.proof import Failure
from casewright.casework.replay import replay
from casewright.geometry import Direction


def _failures(case: Case, check: str) -> list[Failure]:
    return [f for f in replay(case).failures if f.check == check]


def _ordered(case: Case, *first: str) -> Case:
    """The case with the steps of some parts taken first, in that order."""
    early = [step for name in first for step in case.assembly if step.part == f"upper.{name}"]
    late = [step for step in case.assembly if step not in early]
    return replace(case, assembly=(*early, *late))


def _step(case: Case, name: str) -> AssemblyStep:
    return next(step for step in case.assembly if step.part == f"upper.{name}")


def _with_step(case: Case, new: AssemblyStep) -> Case:
    steps = tuple(new if step.part == new.part else step for step in case.assembly)
    return replace(case, assembly=steps)


def test_a_plain_upper_goes_together() -> None:
    """The steps of a plain upper with a pair of doors can be carried out as they stand."""
    assert replay(one_case(front=SLAB)).failures == ()


def test_a_part_that_no_step_brings_in() -> None:
    """A shelf left out of the steps is found, and so are the joints nobody closes."""
    case = one_case()
    steps = tuple(step for step in case.assembly if step.part != "upper.shelf.1")
    found = _failures(replace(case, assembly=steps), "order")
    assert ("upper.shelf.1",) in {f.paths for f in found}
    assert "the steps close the joint 0 times" in {f.says for f in found}


def test_a_part_brought_in_twice() -> None:
    """A step done twice is found."""
    case = one_case()
    twice = replace(case, assembly=(*case.assembly, _step(case, "shelf.1")))
    assert "the steps bring in upper.shelf.1 2 times" in {
        f.says for f in _failures(twice, "order")
    }


def test_a_part_that_does_not_exist() -> None:
    """A step for a part the case does not have is found."""
    case = one_case()
    ghost = replace(_step(case, "shelf.1"), part="upper.shelf.9")
    case = replace(case, assembly=(*case.assembly, ghost))
    assert "the steps bring in upper.shelf.9, which does not exist" in {
        f.says for f in _failures(case, "order")
    }


def test_a_joint_closed_before_its_other_part_is_there() -> None:
    """The right side cannot be joined to a bottom that has not come in yet."""
    found = _failures(_ordered(one_case(), "side_left", "side_right"), "order")
    says = "a step closes a joint with a part that is not there yet"
    assert ("upper.joint_bottom_right", "upper.side_right") in {
        f.paths for f in found if f.says == says
    }


def test_a_captured_back_cannot_follow_the_last_side() -> None:
    """Once both sides are on, a back in grooves all round has no way in from any side."""
    case = one_case(back="grooved")
    back = _step(case, "back")
    late = [step for step in case.assembly if step.part != "upper.back"]
    closing = next(n for n, step in enumerate(late) if step.part == "upper.side_right") + 1
    for way in ("+x", "-x", "+y", "-y", "+z", "-z"):
        step = replace(back, enters=Direction.of(way))
        steps = (*late[:closing], step, *late[closing:])
        found = _failures(replace(case, assembly=steps), "path")
        assert "upper.back" in {f.paths[0] for f in found}, way


def test_a_shelf_that_would_have_to_pass_the_back() -> None:
    """An adjustable shelf does not come in from behind, where the back is."""
    case = one_case()
    step = replace(_step(case, "shelf.1"), enters=Direction.of("+z"))
    found = _failures(_with_step(case, step), "path")
    assert ("upper.shelf.1", "upper.back") in {f.paths for f in found}


def test_a_part_without_a_way_in() -> None:
    """After the first part every one needs a direction it comes from."""
    case = one_case()
    step = replace(_step(case, "bottom"), enters=None)
    found = _failures(_with_step(case, step), "path")
    assert [f.paths for f in found] == [("upper.bottom",)]


@pytest.mark.parametrize(("clear", "blocked"), [("234", False), ("232", True)])
def test_a_driver_between_two_sides(clear: str, blocked: bool) -> None:
    """A pocket in the inside face of a bottom wants about 233 mm between the sides.

    The last side is on when its screws are driven, and the other one stands in the driver's
    way. By hand, in 17.8 mm stock: the axis runs 28/15 x 17.8 = 33.2 mm to the mouth; bit and
    head take 200 cos 15 + 25 sin 15 = 199.7 mm more.
    """
    width = str(Fraction(clear) + 2 * Fraction("17.8"))
    case = one_case("mm", back="applied", shelves=0, width=width)
    bottom = case.part("upper.bottom")
    turned = tuple(
        replace(f, face="A") if isinstance(f, Bores) else f for f in bottom.features
    )  # fmt: skip
    parts = tuple(p for p in case.parts if not p.role.startswith("nailer"))
    case = with_part(replace(case, parts=parts), replace(bottom, features=turned))
    found = {f.paths[2] for f in _failures(case, "driver")}
    assert ("upper.side_left" in found) is blocked


def test_a_screw_where_a_pin_hole_runs() -> None:
    """A shelf pin bored into the level of a fixed shelf's pocket screws is found."""
    case = one_case(fixed_shelves=("14",), shelves=0)
    shelf = case.part("upper.fixed_shelf.1")
    pocket = next(f for f in shelf.features if isinstance(f, Bores))
    side = case.part("upper.side_left")
    middle = shelf.placed.y.value + shelf.finished.thickness.value / 2 + 3
    hole = replace(
        pocket,
        path="upper.side_left.pins",
        kind="shelf pins",
        face="A",
        datum_l="l0",
        datum_w="w0",
        places=((moved(pocket.places[0][0], middle - pocket.places[0][0].value),
                 pocket.places[0][1]),),
        diameter=moved(pocket.diameter, 5 - pocket.diameter.value),
        depth=moved(pocket.diameter, 10 - pocket.diameter.value),
        toward=None,
    )  # fmt: skip
    case = with_part(case, replace(side, features=(*side.features, hole)))
    found = _failures(case, "metal")
    assert {(f.paths[0], f.paths[2]) for f in found} == {
        ("upper.side_left.pins", "upper.side_left")
    }


def test_a_box_that_nobody_checks_for_square() -> None:
    """Without the check, or with the check after the back is on, the box may be racked."""
    case = one_case()
    checks = [step for step in case.assembly if step.verb == "check square"]
    rest = [step for step in case.assembly if step.verb != "check square"]
    assert _failures(case, "square") == []
    for steps in (rest, [*rest, *checks], [*checks, *rest]):
        found = _failures(replace(case, assembly=tuple(steps)), "square")
        assert [f.paths for f in found] == [("upper.back",)]


def test_a_captured_back_is_checked_right_after_it_is_closed_in() -> None:
    """With the back in its grooves, the check follows the last side at once."""
    case = one_case(back="grooved")
    checks = [step for step in case.assembly if step.verb == "check square"]
    rest = [step for step in case.assembly if step.verb != "check square"]
    assert _failures(case, "square") == []
    late = replace(case, assembly=(*rest, *checks))
    assert [f.paths for f in _failures(late, "square")] == [("upper.back",)]


def test_a_glass_frame_is_checked_before_its_pane() -> None:
    """A frame that nobody squares before its pane goes in is found."""
    case = one_case(front=GLASS, width="18")
    doors = [n for n, step in enumerate(case.assembly)
             if step.verb == "check square" and "door" in step.words]  # fmt: skip
    assert _failures(case, "square") == []
    steps = tuple(step for n, step in enumerate(case.assembly) if n not in doors)
    assert len(_failures(replace(case, assembly=steps), "square")) == 1


def test_a_door_hung_before_it_is_whole() -> None:
    """A door whose rail comes after it is hung is found."""
    case = one_case(front=GLASS, width="18")
    (front,) = case.doors
    hang = next(step for step in case.assembly if step.part == front.path)
    rail = next(step for step in case.assembly if step.part.endswith("rail_top"))
    rest = [step for step in case.assembly if step not in (hang, rail)]
    found = _failures(replace(case, assembly=(*rest, hang, rail)), "order")
    assert (front.path, rail.part) in {f.paths for f in found}


@pytest.mark.parametrize(("choice", "shows"), [("hidden", True), ("plugged", False)])
def test_pockets_in_a_face_that_shows(choice: str, shows: bool) -> None:
    """Pockets in a show face are found, unless they are to be plugged."""
    case = one_case()
    bottom = case.part("upper.bottom")
    case = with_part(case, replace(bottom, shows=("t0", "t1")))
    spec = replace(case.spec, pockets="hidden" if choice == "hidden" else "plugged")
    found = _failures(replace(case, spec=spec), "show")
    assert {f.paths[1] for f in found} == ({"upper.bottom"} if shows else set())


def test_a_mark_that_would_put_a_board_elsewhere() -> None:
    """A mark 3 mm off the board's place is found, with the words of the mark."""
    case = one_case()
    step = _step(case, "top")
    (words, up), back = step.marks
    off = replace(step, marks=((words, moved(up, Fraction(3))), back))
    (found,) = _failures(_with_step(case, off), "marks")
    assert (found.paths, found.amount) == (("upper.top",), Fraction(3))
    assert found.says == f"the part does not sit on its mark: {words}"
