"""Plinths that several cases of a run share.

Source of sizes: a set of trade constructions whose formulas and sizes were re-derived by placing
the parts in space (base boxes on a separate ladder plinth); common practice, no publication.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import INCH, Unit, case_spec, given, hardware, job, length, plain_style
from tests.perturbation import STEP, moved, with_part

from casewright.casework.cases import Case
from casewright.casework.verification import verify
from casewright.dims import Origin
from casewright.facts import Fact
from casewright.room.build import build
from casewright.room.model import Room, Run
from casewright.room.proof import prove_run
from casewright.room.specs import RunSpec

_SIZES: dict[Unit, tuple[str, str, str]] = {
    "in": ("27", "34 1/2", "23 1/4"), "mm": ("700", "870", "580"),
}  # fmt: skip
_TOES: dict[Unit, tuple[str, str]] = {"in": ("4 1/2", "3"), "mm": ("120", "75")}


def _row(unit: Unit = "in", count: int = 3, **changes: Any) -> Room:
    """Base cases side by side, each asking for a plinth."""
    width, height, depth = _SIZES[unit]
    style = {"cut_step": "0", "toe_height": _TOES[unit][0], "toe_setback": _TOES[unit][1]}
    style.update(changes.pop("style", {}))
    others = changes.pop("others", {})
    base = {
        "kind": "base", "toe": "plinth", "shelves": 0, "height": height, "depth": depth,
        "width": width, **changes,
    }  # fmt: skip
    keys = tuple("abcdefgh"[:count])
    cases = [case_spec(unit, key=key, **{**base, **others.get(key, {})}) for key in keys]
    run = RunSpec("row", "Row", keys, (), "open", "open")
    return build(job(*cases, unit=unit, runs=(run,), style=plain_style(unit, **style)))


def _plinths(room: Room) -> list[Case]:
    return [plinth.case for plinth in room.runs[0].plinths]


def _failures(run: Run, spacing: str = "24") -> list[str]:
    return [f.says for f in prove_run(run, spacing=length(spacing), grid=INCH / 32).failures]


@pytest.mark.parametrize(
    ("unit", "spacing", "rail", "sleeper", "count"),
    [
        ("in", "27", "81 x 4 1/2", "18 13/16 x 4 1/2", 4),
        ("mm", "700", "2100 x 120", "469.4 x 120", 4),
        ("in", "24", "81 x 4 1/2", "18 13/16 x 4 1/2", 7),
        ("mm", "600", "2100 x 120", "469.4 x 120", 7),
    ],
)
def test_three_boxes_stand_on_one_ladder(
    unit: Unit, spacing: str, rail: str, sleeper: str, count: int
) -> None:
    """Three boxes of 27 in (700 mm): rails of 81 in (2100 mm), sleepers at ends and seams: 4.

    Where sleepers may not be over 24 in (600 mm) apart each box gets one more: 7.
    """
    room = _row(unit, style={"sleeper_spacing": spacing})
    [plinth] = _plinths(room)
    sizes = {part.path.removeprefix("run.row.plinth."): part.finished for part in plinth.parts}
    for name, text in (("front", rail), ("back", rail), ("sleeper.1", sleeper)):
        long, wide = text.split(" x ")
        assert sizes[name].length.value == length(long, unit)
        assert sizes[name].width.value == length(wide, unit)
    assert sum(part.role == "sleeper" for part in plinth.parts) == count
    assert not [
        p for case in room.boxes for p in case.parts if p.role in ("sleeper", "plinth rail")
    ]
    assert verify(plinth, hardware=hardware(unit)).failures == ()
    for case in room.boxes:
        assert verify(case, hardware=hardware(unit)).failures == ()
        assert case.part(f"{case.key}.side_left").finished.length.value == length(
            "30" if unit == "in" else "750", unit
        )


def test_sleepers_stand_under_the_seams() -> None:
    """Boxes of 27: sleepers of 23/32 centred at 27 and 54, flush at both ends (by hand)."""
    [plinth] = _plinths(_row(style={"sleeper_spacing": "27"}))
    lefts = [p.placed.x.value / INCH for p in plinth.parts if p.role == "sleeper"]
    half = Fraction(23, 64)
    assert lefts == [0, 27 - half, 54 - half, 81 - 2 * half]


def test_a_ladder_ends_at_the_seam_that_a_sheet_still_reaches() -> None:
    """Five boxes of 27 are 135 long, a sheet 96: ladders of 81 and of 54."""
    room = _row(count=5)
    first, second = _plinths(room)
    assert [p.width.value / INCH for p in (first, second)] == [81, 54]
    assert [p.start.value / INCH for p in room.runs[0].plinths] == [0, 81]
    assert second.parts[0].path == "run.row.plinth_2.front"
    assert _failures(room.runs[0]) == []


@pytest.mark.parametrize(
    "other",
    [
        {"toe": "notch"}, {"depth": "20"}, {"overrides": {"toe_height": given("4")}},
        {"overrides": {"toe_setback": given("2")}},
    ],
    ids=["notch", "depth", "height", "setback"],
)  # fmt: skip
def test_a_case_unlike_its_neighbours_parts_the_row(other: dict[str, Any]) -> None:
    """The middle one of three is another: the outer ones keep plinths of their own."""
    room = _row(others={"b": other})
    assert _plinths(room) == []
    assert room.boxes[0].part("a.plinth.front").finished.length.value == 27 * INCH
    assert _failures(room.runs[0]) == []


def test_a_case_of_another_height_of_box_shares_the_plinth() -> None:
    """What counts is the ladder, not what stands on it."""
    room = _row(others={"c": {"height": "30", "width": "18"}})
    [plinth] = _plinths(room)
    assert plinth.width.value / INCH == 72


def test_a_dressed_end_stands_out_beyond_the_ladder() -> None:
    """The ladder begins under the box, not under the frame on its end."""
    room = _row(others={"a": {"finished": ("left",)}})
    run = room.runs[0]
    frame = run.cases[0].left_frame
    assert frame.value > 0
    assert run.plinths[0].start.value == frame.value
    assert run.plinths[0].case.width.value == 81 * INCH
    assert _failures(run) == []


def test_frames_between_two_cases_are_spanned() -> None:
    """Two frames of 3/4 between the boxes: the ladder is longer, its sleeper in the middle."""
    others = {"a": {"finished": ("right",)}, "b": {"finished": ("left",)}}
    room = _row(count=2, others=others, style={"sleeper_spacing": "30"})
    [plinth] = _plinths(room)
    assert plinth.width.value / INCH == 27 + Fraction(3, 2) + 27
    middle = [p.placed.x.value / INCH for p in plinth.parts if p.role == "sleeper"][1]
    assert middle == 27 + Fraction(3, 4) - Fraction(23, 64)
    assert _failures(room.runs[0], "30") == []


def test_a_side_cut_short_no_longer_stands_level() -> None:
    """One box came out 1/8 low: a fit says so before it is set on the ladder."""
    spec = _row().spec
    sides = {
        f"b.side_{hand}.length": Fact(Origin("made", "saw"), cut=length("29 7/8"))
        for hand in ("left", "right")
    }
    room = build(spec, sides)
    fits = {path: fit.holds for path, fit in room.chain.fits.items() if ".under_" in path}
    assert fits == {
        "run.row.plinth.under_a": True,
        "run.row.plinth.under_b": False,
        "run.row.plinth.under_c": True,
    }
    assert "does not rest on" in " ".join(_failures(room.runs[0]))


def test_what_is_off_by_a_sixteenth_in_a_run_is_caught() -> None:
    """Cases, ladders, rails and sleepers each moved by 1/16 in, one at a time."""
    room = _row(style={"sleeper_spacing": "27"})
    run = room.runs[0]
    assert _failures(run, "27") == []
    for number in range(1, len(run.starts)):
        starts = list(run.starts)
        starts[number] = moved(starts[number], STEP)
        assert _failures(replace(run, starts=tuple(starts)), "27")
    [plinth] = run.plinths
    ladder = plinth.case
    for part in ladder.parts:
        for name in ("x", "y"):
            change: Any = {name: moved(getattr(part.placed, name), STEP)}
            off = with_part(ladder, replace(part, placed=replace(part.placed, **change)))
            found = _failures(replace(run, plinths=(replace(plinth, case=off),)), "27")
            both = found or verify(off, hardware=hardware()).failures
            # A middle sleeper a sixteenth off its seam still carries both sides.
            assert both or (part.role == "sleeper" and name == "x")
    away = [part for part in ladder.parts if part.role == "sleeper"][1]
    at = replace(away.placed, x=moved(away.placed.x, 20 * STEP))
    off = with_part(ladder, replace(away, placed=at))
    says = _failures(replace(run, plinths=(replace(plinth, case=off),)), "27")
    assert "no sleeper stands under a seam" in says
    bare = replace(run, plinths=())
    assert "stands on no plinth" in " ".join(_failures(bare))


def test_fillers_that_do_not_fill_are_caught() -> None:
    """A filler's space 1/16 off leaves the end of the run open."""
    run = RunSpec("wall", "Wall", ("upper",), (given("36"),), "wall", "open")
    room = build(job(case_spec(), runs=(run,)))
    [placed] = room.runs
    assert _failures(placed) == []
    [filler] = placed.fillers
    wrong = replace(filler, width=moved(filler.width, -STEP))
    assert _failures(replace(placed, fillers=(wrong,))) == [
        "the left end of the run is not closed"
    ]
