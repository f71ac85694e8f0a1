"""Window seats: a box under a lid, hinged or fixed.

Source of the sizes: a set of trade constructions whose formulas were re-derived by placing the
parts in space; common practice, no publication. Figures transcribed.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from importlib.resources import as_file, files
from typing import Any

import pytest
from hypothesis import given as drawn
from hypothesis import settings
from hypothesis import strategies as st
from tests.builders import (
    INCH,
    SLAB,
    Unit,
    drawer_base,
    given,
    hardware,
    length,
    one_case,
    plain_style,
    rows,
    stock,
)

from casewright.buying.lids import lid_goods
from casewright.casework.cases import Case
from casewright.casework.cautions import CAUTIONS
from casewright.casework.features import Cut
from casewright.casework.parts import Part
from casewright.casework.proof import prove
from casewright.casework.specs import RowSpec
from casewright.casework.verification import verify
from casewright.errors import JobFileError
from casewright.findings import Severity
from casewright.job.load import load_job, read_job
from casewright.job.worked import work_out
from casewright.packet.trim_steps import trim_steps
from casewright.room.proof import prove_run

CHEST_ROW = (RowSpec("false front", None, SLAB, SLAB),)
BOX: dict[Unit, dict[str, str]] = {
    "in": {"side_left": "11 1/4 x 18", "side_right": "11 1/4 x 18", "bottom": "31 9/16 x 18"},
    "mm": {"side_left": "281 x 460", "side_right": "281 x 460", "bottom": "814.4 x 460"},
}
LID: dict[Unit, str] = {"in": "65 3/4 x 18 3/4", "mm": "1694 x 480"}


def seat(unit: Unit, lid: str = "hinged", **changes: Any) -> Case:
    """A seat 18 1/2 in (470 mm) high with a cushion of 3 in (80 mm)."""
    inch = unit == "in"
    toe, thick = ("3 1/2", "3/4") if inch else ("90", "19")
    goods = stock(unit)
    goods["lid"] = replace(goods["mdf"], key="lid", thickness=given(thick, unit))
    values: dict[str, Any] = {
        "kind": "base", "toe": "plinth", "back": "inset", "lid": lid, "lid_stock": "lid",
        "seated": True, "rows": CHEST_ROW if lid == "hinged" else (), "front": SLAB,
        "shelves": 0, "depth": "18" if inch else "460", "width": "33" if inch else "850",
        "goods": goods, "style": plain_style(unit, toe_height=toe, cut_step="0"),
    } | changes  # fmt: skip
    return one_case(unit, **values)


def _size(case: Case, name: str, unit: Unit) -> tuple[Fraction, Fraction]:
    size = case.part(f"upper.{name}").finished
    scale = INCH if unit == "in" else Fraction(1)
    return size.length.value / scale, size.width.value / scale


def _expected(text: str) -> tuple[Fraction, Fraction]:
    long, wide = text.split(" x ")
    return length(long, "mm"), length(wide, "mm")


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_box_of_a_seat(unit: Unit) -> None:
    """Two boxes of a seat 66 in (1700 mm) long: sides hs - hc - tl - k high, on their plinth."""
    case = seat(unit)
    for name, text in BOX[unit].items():
        assert _size(case, name, unit) == _expected(text), name
    assert case.height.value == length("14 3/4" if unit == "in" else "371", unit)
    assert verify(case, hardware=hardware(unit)).failures == ()


@pytest.mark.parametrize("unit", ["in", "mm"])
@pytest.mark.parametrize("lid", ["hinged", "fixed"])
def test_lid_of_a_seat(unit: Unit, lid: str) -> None:
    """A lid over the whole seat: a gap short at either end, proud of the box in front."""
    case = seat(unit, lid, width="66" if unit == "in" else "1700")
    assert _size(case, "lid", unit) == _expected(LID[unit])
    top = case.height.value + case.part("upper.lid").finished.thickness.value
    assert top == length("15 1/2" if unit == "in" else "390", unit)
    assert verify(case, hardware=hardware(unit)).failures == ()


@pytest.mark.parametrize("face", ["face frame", "strips"])
@pytest.mark.parametrize("unit", ["in", "mm"])
def test_a_fixed_lid_covers_the_face_before_its_box(unit: Unit, face: str) -> None:
    """Proud of a frame or of strips as of a bare box; a gap short of the frame's ends."""
    front = replace(SLAB, overlay="partial" if face == "face frame" else "full")
    case = seat(unit, "fixed", face=face, face_stock="board", front=front)
    assert verify(case, hardware=hardware(unit)).failures == ()
    lid, gap = case.part("upper.lid"), length("1/8" if unit == "in" else "3", unit)
    over = length("3/4" if unit == "in" else "20", unit)
    assert lid.finished.width.value == case.face_plane.value + over
    wide = case.overall_width.value if face == "face frame" else case.width.value
    assert lid.finished.length.value == wide - 2 * gap


def test_a_thinner_lid_makes_a_higher_box() -> None:
    """The finished height holds, whatever the sheet of the lid is."""
    case = seat("in", lid_stock="ply18")
    lid = case.part("upper.lid").finished.thickness.value
    assert case.height.value + lid + length("3") == length("18 1/2")


def test_a_lid_that_falls_is_warned_of_where_it_is_hung() -> None:
    """A hinged lid comes last before the fronts, with its caution; a fixed one without."""
    hung = [step for step in seat("in").assembly if step.part == "upper.lid"]
    assert ["lid_falls" in step.cautions for step in hung] == [True]
    still = [step for step in seat("in", "fixed").assembly if step.part == "upper.lid"]
    assert ["lid_falls" in step.cautions for step in still] == [False]


@settings(max_examples=25, deadline=None)
@drawn(
    unit=st.sampled_from(("in", "mm")),
    size=st.tuples(st.integers(28, 140), st.integers(28, 52), st.integers(0, 8)),
    lid=st.sampled_from(("hinged", "fixed")),
    back=st.sampled_from(("rabbeted", "grooved", "applied", "inset")),
    toe=st.sampled_from(("plinth", "notch", "none")),
    joint=st.sampled_from(("pocket screws", "dado", "rabbet")),
    ply=st.sampled_from(("45/64", "3/4", "5/8")),
)  # fmt: skip
def test_any_seat_proves(
    unit: Unit, size: tuple[int, int, int], lid: str, back: str, toe: str, joint: str, ply: str
) -> None:
    """Over its sizes, lids, backs, toes, joints and sheets it holds and goes together."""
    if lid == "hinged" and back == "grooved":
        back = "inset"  # the job file's checks refuse it: nothing holds a captured back above
    half = Fraction(1, 2) if unit == "in" else Fraction(25, 2)
    wide, deep, cushion = (str(count * half) for count in size)
    changes: dict[str, Any] = {
        "lid_stock": "ply18", "goods": stock(unit, ply=ply if unit == "in" else "18.2"),
        "back": back, "toe": toe, "joint": joint, "width": wide, "depth": deep,
        "style": plain_style(unit, seat_cushion=cushion),
    }  # fmt: skip
    if lid == "fixed" and size[0] % 2:
        changes |= {"rows": rows(unit, "drawer"), "drawer": drawer_base(unit)["drawer"]}
    case = seat(unit, lid, **changes)
    if not any(finding.severity.value == "stop" for finding in case.findings):
        assert verify(case, hardware=hardware(unit)).failures == ()


def test_the_gallery_of_ends_and_seats_can_be_built() -> None:
    """Every case of it proves, and nothing in it stops the work."""
    with as_file(files("casewright.job") / "examples" / "gallery_rooms.toml") as path:
        worked = work_out(load_job(path).spec)
    assert worked.failures == ()
    assert not [found for found in worked.findings if found.severity is Severity.STOP]


@pytest.mark.parametrize(("unit", "gap"), [("in", "1/2"), ("mm", "12")])
def test_no_finger_is_caught_between_a_hinged_lid_and_its_front(unit: Unit, gap: str) -> None:
    """Half an inch of air above the false front and the inner one (common practice)."""
    case = seat(unit)
    lid = case.part("upper.lid").placed.y.value
    inner = case.part("upper.front_rail")
    [front] = case.fronts
    for top in (
        inner.placed.y.value + inner.finished.width.value,
        front.y.value + front.height.value,
    ):
        assert lid - top == length(gap, unit)


def under_one_lid(unit: Unit, lid: str = "hinged", **by: str) -> str:
    """A job of two boxes of the worked seat under one lid."""
    wide, toe, deep = ("33", "3 1/2", "18") if unit == "in" else ("850", "90", "460")
    read = ("23/32", "7/32", "3/4") if unit == "in" else ("17.8", "6.2", "19")
    lines = ["format = 1", f'unit = "{unit}"', "[style]", f'toe_height = "{toe}"']
    for key, size in zip(("plywood", "thin_plywood", "fibreboard"), read, strict=True):
        lines += [f"[stock.{key}]", f'measured = "{size}"']
    for key in ("one", "two"):
        lines += [f"[case.{key}]", 'kind = "base"', f'lid = "{by.get(key, lid)}"',
                  'lid_sheet = "fibreboard"', 'toe = "plinth"', 'back = "inset"',
                  'edge = "painted"', f'width = "{wide}"', f'depth = "{deep}"']  # fmt: skip
    return "\n".join([*lines, "[run.window]", 'cases = ["one", "two"]', "one_lid = true"])


@pytest.mark.parametrize("unit", ["in", "mm"])
@pytest.mark.parametrize("lid", ["hinged", "fixed"])
def test_one_lid_lies_over_both_boxes(unit: Unit, lid: str) -> None:
    """L - 2g long over two boxes of half the length, D + oh wide (the worked seat, `SEAT`)."""
    worked = work_out(read_job(under_one_lid(unit, lid), "seat.toml"))
    assert worked.failures == ()
    assert not any(part.role == "lid" for case in worked.room.cases for part in case.parts)
    [run] = worked.room.runs
    [board] = [part for part in run.own_parts if part.role == "lid"]
    scale = INCH if unit == "in" else Fraction(1)
    long, wide = _expected(LID[unit])
    # Boxes are cut to the grid, so that a seat comes out up to half a step longer or shorter.
    assert abs(board.finished.length.value / scale - long) <= Fraction(1, 2)
    whole = run.starts[-1].value + run.cases[-1].overall_width.value
    gap = length("1/8" if unit == "in" else "3", unit)
    assert board.finished.length.value == whole - 2 * gap
    assert board.finished.width.value / scale == wide
    assert board.placed.y.value == run.cases[0].height.value


def test_a_lid_off_its_seats_is_caught() -> None:
    """Moved a sixteenth along the wall, up, or out of the wall."""
    worked = work_out(read_job(under_one_lid("in"), "seat.toml"))
    [run] = worked.room.runs
    for axis in ("x", "y", "z"):

        def moved(part: Part, axis: str = axis) -> Part:
            at = getattr(part.placed, axis)
            by: Any = {axis: at + at / (16 * at.value / INCH)}
            return replace(part, placed=replace(part.placed, **by))

        off = run.with_parts(lambda p, move=moved: move(p) if p.role == "lid" else p)  # type: ignore[misc]
        assert prove_run(off, spacing=Fraction(600), grid=Fraction(1)).failures, axis


def test_a_fixed_lid_is_screwed_to_every_stretcher_under_it() -> None:
    """Two in each or more, 8 in apart at most; screws that hold something else are caught."""
    room = work_out(read_job(under_one_lid("in", "fixed"), "seat.toml")).room
    [run] = room.runs
    [trim] = [each for each in run.trims if each.kind == "seat lid"]
    under = [p for case in run.cases for p in case.parts if p.role == "stretcher"]
    assert {screws.through for screws in trim.screws} == {part.path for part in under}
    thick = trim.parts[0].finished.thickness.value
    for screws in trim.screws:
        point = screws.length.value - under[0].finished.thickness.value
        assert 0 < point <= thick * 5 / 6
        assert screws.count == max(2, int(under[0].finished.length.value // length("8")))
    first, *others = trim.screws
    for wrong in (replace(first, into="one.bottom"), replace(first, through="one.bottom"),
                  replace(first, length=room.chain.nodes["style.seat_height"])):  # fmt: skip
        off = replace(trim, screws=(wrong, *others))
        trims = tuple(off if each is trim else each for each in run.trims)
        found = prove_run(replace(run, trims=trims), spacing=Fraction(600), grid=Fraction(1))
        assert found.failures, wrong
    told = [str(line) for step in trim_steps(room, run, trim) for line in step.notes]
    assert any("through the front stretcher, in each of 2 boxes" in line for line in told)


def test_a_hinged_lid_is_hung_with_its_weight_told() -> None:
    """A lid of 33 x 18 3/4 x 3/4 in fibreboard of 750 kg/m3 weighs about 5.6 kg: L W T rho."""
    [step] = [step for step in seat("in", width="33").assembly if step.part == "upper.lid"]
    kilos = float((33 - Fraction(1, 4)) * Fraction(75, 4) * Fraction(3, 4) * INCH**3) * 750e-9
    assert f"({kilos:.1f} kg)" in step.words
    assert step.cautions == ("lid_falls", "clamp_screws")


def test_one_lid_has_its_hinges_its_stays_and_its_caution() -> None:
    """Counted on the one board, and told where it is laid on."""
    room = work_out(read_job(under_one_lid("in"), "seat.toml")).room
    hinges, stays = lid_goods(room)
    assert hinges.paths == stays.paths == ("run.window.seat_lid.piece",)
    assert hinges.need == 4
    assert stays.need == 2
    [run] = room.runs
    told = [line for trim in run.trims for step in trim_steps(room, run, trim)
            for line in step.cautions]  # fmt: skip
    assert CAUTIONS["lid_falls"] in told


@pytest.mark.parametrize(
    ("text", "word"),
    [
        (under_one_lid("in", two="fixed"), "one lid"),
        (under_one_lid("in").replace('["one", "two"]', '["one"]'), "two seats or more"),
        (under_one_lid("in").replace('lid = "hinged"\nlid_sheet = "fibreboard"\n', "", 1),
         "window seats alone"),
    ],
)  # fmt: skip
def test_what_cannot_be_under_one_lid_is_refused(text: str, word: str) -> None:
    """Cases that are no seats, or not alike."""
    with pytest.raises(JobFileError) as told:
        read_job(text, "seat.toml")
    assert word in str(told.value)


REGISTER = """format = 1
unit = "in"
[case.a]
kind = "base"
lid = "hinged"
back = "inset"
width = 33
register_opening = [12, "2 1/4"]
"""


def test_a_register_blows_through_the_toe_board() -> None:
    """An opening as large as its sheet asks for, in the middle of the board, right through."""
    worked = work_out(read_job(REGISTER, "seat.toml"))
    assert worked.failures == ()
    board = worked.room.cases[0].part("a.toe_board")
    [cut] = [f for f in board.features if f.kind == "cutout"]
    assert isinstance(cut, Cut)
    assert cut.start is not None
    assert cut.end is not None
    assert cut.end.value - cut.start.value == length("12")
    assert cut.width.value == length("2 1/4")
    assert cut.start.value + cut.end.value == board.finished.length.value
    assert 2 * cut.at.value + cut.width.value == board.finished.width.value


def test_a_register_that_is_moved_or_too_small_is_caught() -> None:
    """A sixteenth off its middle, or short of what was asked."""
    [case] = work_out(read_job(REGISTER, "seat.toml")).room.cases
    board = case.part("a.toe_board")
    [cut] = [f for f in board.features if isinstance(f, Cut)]
    step = cut.width / 36
    for off in (replace(cut, at=cut.at + step), replace(cut, width=cut.width - step)):
        features = tuple(off if f is cut else f for f in board.features)
        parts = tuple(replace(p, features=features) if p is board else p for p in case.parts)
        says = {failure.says for failure in prove(replace(case, parts=parts)).failures}
        assert any("register" in each for each in says)


@pytest.mark.parametrize(
    ("old", "new", "word"),
    [
        ('"2 1/4"', "4", "leaves no wood"),
        ("[12", "[31", "at its ends"),
        ("width = 33", 'width = 33\ntoe = "plinth"', "toe board"),
        ('[12, "2 1/4"]', "[12]", "too short"),
    ],
)
def test_an_opening_its_toe_board_cannot_have_is_refused(old: str, new: str, word: str) -> None:
    """With what would fit."""
    with pytest.raises(JobFileError) as told:
        read_job(REGISTER.replace(old, new), "seat.toml")
    assert word in str(told.value)
