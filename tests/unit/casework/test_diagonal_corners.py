"""Diagonal corners: a leg along either wall, a door across the mouth at 45 degrees.

Source of the sizes: a set of trade constructions whose formulas were re-derived by placing the
parts in space (`DIAG`); common practice, no publication. Figures transcribed; those with a root
in them to a millionth of the unit.
"""

from __future__ import annotations

import math
from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given as drawn
from hypothesis import settings
from hypothesis import strategies as st
from tests.builders import (
    APPLIED,
    INCH,
    PANEL,
    SLAB,
    Unit,
    case_spec,
    given,
    hardware,
    house,
    length,
    plain_style,
    stock,
)
from tests.jobs import AROUND_A_CORNER

from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.diagonal import OVER_ROOT_2, UNDER_ROOT_2
from casewright.casework.features import Cut
from casewright.casework.proof import prove
from casewright.casework.verification import verify
from casewright.dims import Dim
from casewright.errors import JobFileError
from casewright.job.load import read_job
from casewright.job.worked import work_out

WORKED: dict[Unit, dict[str, str]] = {
    "in": {"A": "24", "d": "12 1/4", "td": "3/4", "r": "1/16", "H": "30"},
    "mm": {"A": "610", "d": "330", "td": "19", "r": "1.5", "H": "760"},
}
ROOTS: dict[Unit, dict[str, float]] = {
    "in": {"face": 16.61700935788387, "clear": 14.584077361972543, "door": 14.940232662587231},
    "mm": {"face": 395.9797974644666, "clear": 345.63379464398446, "door": 353.73715677734737},
}
BLANKS: dict[tuple[Unit, bool], tuple[str, str]] = {
    ("in", True): ("23 25/32", "11 3/4"),
    ("mm", True): ("603.8", "280"),
    # Between the sides: A - tb - t, clipped A - d - 2t.
    ("in", False): ("23 1/16", "10 5/16"),
    ("mm", False): ("586", "244.4"),
}


def corner(unit: Unit, hand: str, **by: Any) -> Case:
    """The worked corner, or one with other numbers."""
    return built(unit, hand, **by)[0]


def built(
    unit: Unit, hand: str, *, ply: str | None = None, step: str = "0", board: str = "",
    **by: Any,
) -> tuple[Case, dict[str, Dim]]:  # fmt: skip
    """The same with its numbers by path."""
    at = WORKED[unit] | {key: by.pop(key) for key in ("A", "d", "td", "H") if key in by}
    goods = stock(unit, ply=ply)
    goods["slab"] = replace(goods["mdf"], key="slab", thickness=given(at["td"], unit))
    if board:
        goods["board"] = replace(goods["board"], thickness=given(board, unit))
    style = plain_style(
        unit,
        cut_step=step,
        bumper=by.pop("bumper", "0"),
        reveal=at["r"],
        toe_setback="3" if unit == "in" else "75",
    )
    front = by.pop("front", replace(SLAB, slab="slab", leaves=1))
    changes = {"diagonal": hand, "width": at["A"], "depth": at["d"], "height": at["H"],
               "front": front, "shelves": 2} | by  # fmt: skip
    made = house(unit, style=style, goods=goods)
    case = build_case(made, case_spec(unit, **changes))
    return case, dict(made.chain.nodes)


def size(case: Case, name: str, unit: Unit) -> tuple[Fraction, Fraction]:
    """Finished length and width of a part, in the unit."""
    scale = INCH if unit == "in" else Fraction(1)
    part = case.part(f"upper.{name}")
    return part.finished.length.value / scale, part.finished.width.value / scale


def clip_of(case: Case, name: str) -> Cut:
    """The clip of a board."""
    [cut] = [f for f in case.part(f"upper.{name}").features if f.kind == "clip"]
    assert isinstance(cut, Cut)
    return cut


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize("under", [False, True])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_sides_blanks_and_clips_of_the_worked_corner(unit: Unit, under: bool, hand: str) -> None:
    """Both positions of the bottom and both hands, against the worked construction."""
    case, at = corner(unit, hand, under=under), WORKED[unit]
    scale = INCH if unit == "in" else Fraction(1)
    blank, leg = (length(text, "mm") for text in BLANKS[unit, under])
    assert size(case, "bottom", unit) == (blank, blank)
    cut = clip_of(case, "bottom")
    assert cut.width.value / scale == leg
    assert cut.end is not None
    assert cut.end.value == cut.width.value
    for side in ("left", "right"):
        tall, deep = size(case, f"side_{side}", unit)
        assert deep == length(at["d"], "mm")
        thick = case.part("upper.bottom").finished.thickness.value / scale
        assert tall == length(at["H"], "mm") - (thick if under else 0)
    assert (case.width.value, case.depth.value) == (length(at["A"], unit),) * 2
    assert verify(case, hardware=hardware(unit)).failures == ()


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_face_mouth_and_door_of_the_worked_corner(unit: Unit) -> None:
    """Multiples of the root of 2: a hair under, where they must fit between."""
    case, nodes = built(unit, "left")
    scale = float(INCH) if unit == "in" else 1.0
    found = {name: float(nodes[f"upper.mouth.{name}"].value) / scale for name in ROOTS[unit]}
    assert float(case.doors[0].width.value) / scale == found["door"]
    for name, wanted in ROOTS[unit].items():
        assert found[name] == pytest.approx(wanted, rel=1e-6)
        assert found[name] <= wanted


def test_the_root_lies_between_its_two_fractions() -> None:
    """Squares miss 2 by one part in the square of the denominator: convergents of the root."""
    assert UNDER_ROOT_2**2 < 2 < OVER_ROOT_2**2
    for each in (UNDER_ROOT_2, OVER_ROOT_2):
        assert abs(each.numerator**2 - 2 * each.denominator**2) == 1
        assert float(each) == pytest.approx(math.sqrt(2), rel=1e-6)


def test_square_edges_of_the_door_clear_the_neighbours() -> None:
    """Its outer edges end the reveal behind the planes of both neighbours' sides, and no more."""
    case = corner("mm", "left", bumper="2")
    [door] = case.doors
    mouth = case.mouth
    assert mouth is not None
    out = float(door.z.value + door.thickness.value - mouth.front.value)
    aside = float(door.x.value + door.width.value - mouth.width.value / 2)
    far = (float(mouth.reach.value) + math.sqrt(2) * (out + aside)) / 2
    assert float(case.width.value) - far == pytest.approx(1.5, abs=1e-3)


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_a_pair_shares_what_one_door_would_close(unit: Unit, hand: str) -> None:
    """Each leaf half of (A - d - 2r) sqrt(2) - 2 td, less the gap between them."""
    size = {"in": ("34", "14", "1/8"), "mm": ("850", "350", "3")}[unit]
    wide = {"A": size[0], "d": size[1]}
    one = corner(unit, hand, **wide).doors[0].width.value
    case = corner(unit, hand, **wide, front=replace(SLAB, slab="slab", leaves=2))
    left, right = case.doors
    assert left.width.value == right.width.value == (one - length(size[2], unit)) / 2
    assert (left.hinge_side, right.hinge_side) == ("left", "right")
    assert verify(case, hardware=hardware(unit)).failures == ()


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_an_inset_door_hangs_between_strips_that_are_deeper_by_it(unit: Unit, hand: str) -> None:
    """(A - d - t) sqrt(2) - 2 t - 2 g wide, flush with the face; plates as far behind the door.

    Source: plane geometry, and what a strip is behind any other door.
    """
    scale = float(INCH) if unit == "in" else 1.0
    case, nodes = built(unit, hand, front=replace(SLAB, slab="slab", leaves=1, overlay="inset"))
    at = {key: float(length(text, "mm")) for key, text in WORKED[unit].items()}
    [door] = case.doors
    thick = float(case.part("upper.strip_left").finished.thickness.value) / scale
    gap = float(nodes["style.inset_gap"].value) / scale
    wide = (at["A"] - at["d"] - thick) * math.sqrt(2) - 2 * thick - 2 * gap
    assert float(door.width.value) / scale == pytest.approx(wide, rel=1e-6)
    assert case.mouth is not None
    assert door.z.value + door.thickness.value == case.mouth.front.value
    over = corner(unit, hand).mouth
    assert over is not None
    assert case.mouth.front.value - over.front.value == length(WORKED[unit]["td"], unit)
    assert verify(case, hardware=hardware(unit)).failures == ()


@pytest.mark.parametrize("bare", ["1/8", "9/16"])
def test_a_partial_door_leaves_strips_bare_and_stays_behind_its_neighbours(bare: str) -> None:
    """The wider of what the style leaves bare and of what square edges need: common practice."""
    slab = replace(SLAB, slab="slab", leaves=1)
    full = corner("in", "left", front=slab).doors[0]
    changes = {"front": replace(slab, overlay="partial"),
               "overrides": {"partial_reveal": given(bare)}}  # fmt: skip
    case = corner("in", "left", **changes)
    [door], mouth = case.doors, case.mouth
    assert mouth is not None
    most = min(full.width.value, mouth.width.value - 2 * length(bare))
    assert door.width.value == most
    assert (most < full.width.value) == (bare == "9/16")
    assert verify(case, hardware=hardware("in")).failures == ()


def test_a_wider_door_stands_before_its_neighbour() -> None:
    """Proved by placing it, in exact numbers: a door a sixteenth wider is caught."""
    case = corner("in", "right", step="1/32")
    wide = replace(case, parts=tuple(
        replace(p, finished=replace(p.finished, width=p.finished.width + p.finished.width / 50))
        if p.role == "door" else p for p in case.parts
    ))  # fmt: skip
    says = {failure.says for failure in prove(wide).failures}
    assert "an edge of the door stands before the neighbouring case" in says


def test_shelves_go_in_before_the_top() -> None:
    """No shelf passes the mouth lying flat: the top comes after the last of them."""
    order = [step.part for step in corner("in", "left").assembly]
    assert order.index("upper.shelf.2") < order.index("upper.top")


def test_six_pins_carry_a_shelf_so_that_it_does_not_tip_into_the_corner() -> None:
    """Its middle lies between the pins of the post and those of the sides."""
    case = corner("mm", "left", step="1/2")
    shelf = case.part("upper.shelf.1")
    blank, leg = float(shelf.finished.length.value), float(clip_of(case, "shelf.1").width.value)
    area = blank**2 - leg**2 / 2
    middle = (blank**2 * blank / 2 - leg**2 / 2 * (blank - leg / 3)) / area
    from_corner = float(shelf.placed.x.value) + middle
    post = case.part("upper.post")
    rear = [float(post.placed.x.value - line.value) for f in post.features
            if f.kind == "shelf pins" for _, line in f.places[:1]]  # fmt: skip
    assert min(rear) + float(post.finished.thickness.value) < 2 * from_corner
    assert all(x > float(shelf.placed.x.value) for x in rear)


def test_toe_board_runs_across_behind_the_face() -> None:
    """Square to the face it stands back by the setback over the root of 2."""
    case = corner("in", "left", kind="base", toe="notch", A="36", d="23 1/4", H="34 1/2")
    board, mouth = case.part("upper.toe_board"), case.mouth
    assert mouth is not None
    front = board.placed.z.value + board.finished.thickness.value
    back = float((mouth.front.value - front) / INCH)
    assert back == pytest.approx(3 / math.sqrt(2), rel=1e-6)


@pytest.mark.parametrize("hand", ["left", "right"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_a_plinth_carries_both_sides_and_the_board_goes_from_leg_to_leg(
    unit: Unit, hand: str
) -> None:
    """(A - d + s) sqrt(2) long, before ladder and arm that end d - s - t / sqrt(2) from the walls.

    Source: plane geometry. The step is fine, so that rounding is no part of it.
    """
    size = {"in": ("36", "23 1/4", "34 1/2", "3"), "mm": ("900", "580", "870", "75")}[unit]
    case = corner(unit, hand, kind="base", toe="plinth", A=size[0], d=size[1], H=size[2])
    scale = INCH if unit == "in" else Fraction(1)
    leg, deep, _, back = (float(length(text, "mm")) for text in size)
    board = case.part("upper.toe_board")
    long = float(board.finished.length.value / scale)
    assert long == pytest.approx((leg - deep + back) * math.sqrt(2), rel=1e-6)
    front = case.part("upper.plinth.front")
    thick = float(board.finished.thickness.value / scale)
    end = float((front.placed.z.value + front.finished.thickness.value) / scale)
    assert end == pytest.approx(deep - back - thick / math.sqrt(2), rel=1e-6)
    for side in ("left", "right"):
        foot = case.part(f"upper.side_{side}").placed.y.value
        assert foot == front.finished.width.value == board.finished.width.value
    assert verify(case, hardware=hardware(unit)).failures == ()


@settings(max_examples=25, deadline=None)
@drawn(
    unit=st.sampled_from(("in", "mm")),
    hand=st.sampled_from(("left", "right")),
    kind=st.sampled_from(("wall", "base")),
    under=st.booleans(),
    legs=st.tuples(st.integers(14, 48), st.integers(0, 31), st.integers(9, 26)),
    ply=st.sampled_from(("45/64", "3/4", "5/8", "23/32")),
    front=st.sampled_from((SLAB, APPLIED, PANEL)),
    edge=st.sampled_from(("painted", "band")),
    toe=st.sampled_from(("notch", "plinth")),
    leaves=st.sampled_from((1, 2)),
    overlay=st.sampled_from(("full", "partial", "inset")),
)
def test_any_diagonal_corner_proves(
    unit: Unit, hand: str, kind: str, under: bool, legs: tuple[int, int, int], ply: str,
    front: Any, edge: str, toe: str, leaves: int, overlay: str,
) -> None:  # fmt: skip
    """Over its legs, depths and sheets, both hands and every overlay, on the cutting grid."""
    per = Fraction(1) if unit == "in" else Fraction(25)
    more, part, deep = legs
    deep = max(deep, 16) if toe == "plinth" else deep  # the job file refuses a shallower one
    leg = (deep + more + Fraction(part, 32)) * per
    base = kind == "base"
    case = corner(
        unit, hand, ply=ply if unit == "in" else "18.2", step="1/32" if unit == "in" else "1/2",
        A=str(leg), d=str(deep * per), H=str(30 * per), kind=kind, toe=toe if base else "none",
        under=under and not base, front=replace(front, leaves=leaves, overlay=overlay), edge=edge,
        bumper=str(per / 16),
    )  # fmt: skip
    if not any(finding.severity.value == "stop" for finding in case.findings):
        assert verify(case, hardware=hardware(unit)).failures == ()


def test_it_fills_the_corner_of_both_runs() -> None:
    """No filler on either side of it: its run ends at the wall, the other begins at its leg."""
    worked = work_out(read_job(AROUND_A_CORNER, "room.toml"))
    runs = {run.spec.key: run for run in worked.room.runs}
    assert [filler.side for filler in runs["north"].fillers] == ["left"]
    assert runs["north"].length.value == length("72") == runs["north"].cases_end.value
    [corner_case] = [case for case in worked.room.cases if case.key == "corner"]
    assert runs["east"].starts[0].value == corner_case.depth.value
    assert [filler.side for filler in runs["east"].fillers] == ["right"]
    assert worked.failures == ()


@pytest.mark.parametrize(
    ("line", "word"),
    [
        ('kind = "tall"\nwidth = 24\ndiagonal = "left"', "wall or a base case"),
        ('kind = "wall"\nwidth = 24\ndiagonal = "left"\ndivider = 12', "divider"),
        ('kind = "wall"\nwidth = 24\ndiagonal = "left"\nback = "inset"', "rabbets"),
        ('kind = "wall"\nwidth = 16\ndiagonal = "left"', "no room for a door"),
        ('kind = "wall"\nwidth = 24\nbottom = "under"', "diagonal corner"),
        ('kind = "base"\nwidth = 34\ndiagonal = "left"\nfront = { leaves = 2 }', "pair of doors"),
        ('kind = "base"\nwidth = 30\ndepth = 14\ndiagonal = "left"\ntoe = "plinth"', "no arm of"),
        ('kind = "wall"\ndiagonal = "left"', "width"),
        ('kind = "wall"\nwidth = 24\ndepth = 6\ndiagonal = "left"', "two rows of pins"),
    ],
)
def test_what_it_cannot_be_is_refused_in_its_line(line: str, word: str) -> None:
    """Each with what would be right."""
    with pytest.raises(JobFileError) as told:
        read_job(f'format = 1\nunit = "in"\n[case.a]\n{line}\n', "job.toml")
    assert word in str(told.value)


def test_a_run_wider_than_its_wall_is_told_and_no_defect() -> None:
    """Where one end has no filler, either: the wall is what is too short."""
    worked = work_out(
        read_job(AROUND_A_CORNER.replace('width = "72"', 'width = "50"', 1), "room.toml")
    )
    assert worked.failures == ()
    assert "run too long" in {finding.rule for finding in worked.findings}
