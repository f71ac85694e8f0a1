"""Face strips against a worked construction of the trade, alone and in a run.

Source: a set of trade constructions whose formulas and sizes were re-derived by placing the
parts in space (`APPFACE`); common practice, no publication. Figures transcribed.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import (
    INCH,
    SLAB,
    Unit,
    case_spec,
    drawer_base,
    hardware,
    job,
    length,
    one_case,
    plain_style,
    stock,
)
from tests.jobs import HEAD, problems

from casewright.casework.cases import Case
from casewright.casework.features import Cut
from casewright.casework.verification import verify
from casewright.room.build import build
from casewright.room.model import Room
from casewright.room.specs import RunSpec
from casewright.room.trims.proof import trim_failures

STRIPS: dict[str, Any] = {"face": "strips", "face_stock": "board", "shelves": 0, "front": SLAB}
# Ends, seam, across the first and the second box: length x width; clear openings.
APPFACE: dict[Unit, tuple[str, ...]] = {
    "in": ("30 1/2 x 25/32", "30 1/2 x 1 9/16", "28 7/16 x 25/32", "22 7/16 x 25/32",
           "28 9/16", "22 9/16"),
    "mm": ("760 x 19.3", "760 x 38.6", "761.4 x 19.3", "561.4 x 19.3", "764.4", "564.4"),
}  # fmt: skip


def _room(unit: Unit, **changes: Any) -> Room:
    widths, high = (("30", "24"), "30 1/2") if unit == "in" else (("800", "600"), "760")
    cases = [
        case_spec(unit, key=key, width=width, height=high, **{**STRIPS, **changes})
        for key, width in zip(("one", "two"), widths, strict=True)
    ]
    run = RunSpec("row", "row", ("one", "two"), (), "open", "open")
    return build(job(*cases, unit=unit, runs=(run,), style=plain_style(unit, cut_step="0")))


def _sizes(length_: Fraction, width: Fraction, unit: Unit) -> tuple[Fraction, Fraction]:
    scale = INCH if unit == "in" else Fraction(1)
    return length_ / scale, width / scale


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_strips_of_two_boxes_and_their_seam(unit: Unit) -> None:
    """Every strip has its worked size before it is trimmed, every opening after."""
    room = _room(unit)
    end, seam, wide, narrow, *openings = APPFACE[unit]
    parts = {part.path: part for part in room.parts}
    for path, text in (
        ("one.face_strips.end_left", end), ("two.face_strips.end_right", end),
        ("run.row.seam_strips.1", seam), ("one.face_strips.bottom", wide),
        ("one.face_strips.top", wide), ("two.face_strips.bottom", narrow),
        ("two.face_strips.top", narrow),
    ):  # fmt: skip
        wanted = tuple(length(each, "mm") for each in text.split(" x "))
        size = parts[path].finished
        assert _sizes(size.length.value, size.width.value, unit) == wanted, path
    assert "one.face_strips.end_right" not in parts
    assert "two.face_strips.end_left" not in parts
    for case, text in zip(room.cases, openings, strict=True):
        assert case.frame is not None
        _, clear, _ = case.frame.openings[0]
        assert clear.value == length(text, unit)
    assert list(trim_failures(room.runs[0])) == []
    assert all(verify(case, hardware=hardware(unit)).holds for case in room.cases)


def _trimmed(case: Case, name: str) -> Fraction:
    part = case.part(f"upper.face_strips.{name}")
    cut = next(f for f in part.features if f.kind == "trim")
    return part.finished.width.value - cut.width.value


@pytest.mark.parametrize("ply", ["16", "17.8", "19"])
def test_strips_are_trimmed_to_the_boards_as_measured(ply: str) -> None:
    """Whatever the sheets are thick, what is left of a strip is as wide as its edge."""
    case = one_case("mm", goods=stock("mm", ply=ply), **STRIPS)
    for name in ("end_left", "end_right", "bottom", "top"):
        assert _trimmed(case, name) == Fraction(ply)
    assert verify(case, hardware=hardware("mm")).holds


def test_doors_hang_as_on_a_frameless_box() -> None:
    """The same leaves on the same plates, all of it out by the strips' thickness."""
    plain = one_case(front=SLAB, shelves=0)
    strips = one_case(**STRIPS)
    thick = strips.part("upper.face_strips.top").finished.thickness.value
    for one, other in zip(plain.doors, strips.doors, strict=True):
        assert (one.width.value, one.height.value) == (other.width.value, other.height.value)
        assert (one.plate_height.value, one.x.value) == (other.plate_height.value, other.x.value)
        assert one.z.value == other.z.value
    assert plain.depth.value - strips.depth.value == thick


def test_a_seam_strip_is_trimmed_between_the_boards_of_its_boxes() -> None:
    """Beside drawers, too, whose bottoms are thinner than the box's: from board to board."""
    changes = drawer_base("in", "drawer", "drawer")
    cases = [case_spec(**{**changes, **STRIPS, "key": key}) for key in ("one", "two")]
    run = RunSpec("row", "row", ("one", "two"), (), "open", "open")
    room = build(job(*cases, runs=(run,)))
    (trim,) = room.runs[0].trims
    cuts = [f for f in trim.parts[0].features if isinstance(f, Cut)]
    ends = [(c.start and c.start.value, c.end and c.end.value) for c in cuts]
    assert ends == [(length("23/32"), length("30 1/2") - length("23/32"))] * 2
    assert list(trim_failures(room.runs[0])) == []


@pytest.mark.parametrize("change", [{"height": "31"}, {"depth": "13"}, {"face": "frameless"}])
def test_unlike_neighbours_share_no_strip(change: dict[str, str]) -> None:
    """Where edges do not lie in line each box keeps its own strips."""
    cases = [case_spec(key="one", **STRIPS), case_spec(key="two", **{**STRIPS, **change})]
    run = RunSpec("row", "row", ("one", "two"), (), "open", "open")
    room = build(job(*cases, runs=(run,)))
    assert not room.runs[0].trims
    assert any(part.path == "one.face_strips.end_right" for part in room.parts)


def test_a_seam_strip_that_is_off_is_caught() -> None:
    """Moved a sixteenth, it is no longer trimmed flush with the inside of either box."""
    room = _room("in")
    (run,) = room.runs
    (trim,) = run.trims
    piece = trim.pieces[0]
    placed = piece.part.placed
    moved = replace(placed, x=placed.x + room.chain.nodes["style.strip_proud"])
    off = replace(trim, pieces=(replace(piece, part=replace(piece.part, placed=moved)),))
    failures = trim_failures(replace(run, trims=(off,)))
    assert any("trimmed flush" in failure.says for failure in failures)


def test_what_strips_would_leave_bare_is_told_at_its_line() -> None:
    """Sinks, skirts, crowns and nosings have no strips of their own."""
    head = f'{HEAD}[case.a]\nkind = "base"\nwidth = 24\nface = "strips"\n'
    assert any("strips" in p.what for p in problems(f"{head}sink = true\n"))
    head = head.replace('"base"', '"bookcase"')
    for line in ("crown = 3", "nosing = 2"):
        assert any("strips" in p.what for p in problems(f"{head}{line}\n")), line


_BOARDS: dict[str, tuple[dict[str, Any], str]] = {
    "fixed shelf": ({"fixed_shelves": ("400",)}, "fixed_shelf_1"),
    "divider": ({"divider": "400", "upper_front": SLAB, "upper_shelves": 0}, "divider"),
    "open bookcase": ({"kind": "bookcase", "joint": "dado", "front": None, "shelves": 1},
                      "shelf_1"),
}  # fmt: skip


@pytest.mark.parametrize("ply", ["16", "17.8", "19"])
@pytest.mark.parametrize("board", _BOARDS)
def test_a_board_between_openings_has_a_strip_trimmed_flush_with_both_its_faces(
    board: str, ply: str
) -> None:
    """Proud of both faces; the upright ones are trimmed from board to board (common practice).

    As of a seam, which covers two edges: t + 2p wide before, t after (`APPFACE`: 2t + 2p).
    """
    changes, name = _BOARDS[board]
    case = one_case("mm", goods=stock("mm", ply=ply), **{**STRIPS, "height": "800", **changes})
    strip = case.part(f"upper.face_strips.{name}")
    cuts = [f for f in strip.features if isinstance(f, Cut)]
    assert {cut.datum for cut in cuts} == {"w0", "w1"}
    assert strip.finished.width.value - sum(cut.width.value for cut in cuts) == Fraction(ply)
    end = case.part("upper.face_strips.end_left")
    bays = sorted((cut.start.value, cut.end.value) for cut in end.features
                  if isinstance(cut, Cut) and cut.start and cut.end)  # fmt: skip
    assert len(bays) == 2
    assert bays[1][0] - bays[0][1] == Fraction(ply)
    assert verify(case, hardware=hardware("mm")).holds


@pytest.mark.parametrize("unit", ["in", "mm"])
@pytest.mark.parametrize(("end", "more"), [("skin", True), ("applied frame", True),
                                           ("flush", False), ("plain", False)])  # fmt: skip
def test_the_strip_on_a_finished_end_covers_what_is_on_it(
    unit: Unit, end: Any, *, more: bool
) -> None:
    """Side, what is on it, and what is trimmed; a flush end reaches past it (common practice)."""
    case = one_case(unit, **STRIPS, finished=("left",), end=end, end_stock="ply6")
    left, right = (case.part(f"upper.face_strips.end_{hand}") for hand in ("left", "right"))
    on_it = [p for p in case.parts if ".end_left." in p.path and p.role != "face strip"]
    thick = on_it[0].finished.thickness.value if more else Fraction(0)
    assert left.finished.width.value - right.finished.width.value == thick
    assert case.left_frame.value == (on_it[0].finished.thickness.value if on_it else 0)
    assert verify(case, hardware=hardware(unit)).holds


def test_a_seam_beside_boards_between_is_trimmed_from_each_to_the_next() -> None:
    """A box with one shelf and one with two; a stretch that is not trimmed is caught."""
    cases = [
        case_spec(**{**STRIPS, "key": key, "height": "40", "fixed_shelves": shelves})
        for key, shelves in (("one", ("20",)), ("two", ("12", "26")))
    ]
    run = RunSpec("row", "row", ("one", "two"), (), "open", "open")
    room = build(job(*cases, runs=(run,)))
    [run_made] = room.runs
    [trim] = run_made.trims
    [part] = trim.parts
    cuts = [f for f in part.features if isinstance(f, Cut)]
    assert [sum(cut.datum == edge for cut in cuts) for edge in ("w1", "w0")] == [2, 3]
    assert list(trim_failures(run_made)) == []
    for cut in cuts:
        left = tuple(f for f in part.features if f is not cut)
        piece = replace(trim.pieces[0], part=replace(part, features=left))
        off = replace(run_made, trims=(replace(trim, pieces=(piece,)),))
        assert any("trimmed" in failure.says for failure in trim_failures(off))


def test_no_seam_strip_beside_a_dressed_end() -> None:
    """Nothing is glued over a skin from the next box."""
    end: dict[str, Any] = {"finished": ("right",), "end": "skin", "end_stock": "ply6"}
    cases = [case_spec(key="one", **STRIPS, **end), case_spec(key="two", **STRIPS)]
    room = build(job(*cases, runs=(RunSpec("row", "row", ("one", "two"), (), "open", "open"),)))
    assert not room.runs[0].trims
