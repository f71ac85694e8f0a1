"""What a job file means, and which numbers it does not need to say."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from tests.jobs import EXAMPLE_NAMES, EXAMPLES, FIVE_LINES, HEAD, UPPER, problems, read

from casewright.dims import parse_length
from casewright.errors import JobFileError
from casewright.job.load import load_job
from casewright.job.text import LARGEST_FILE
from casewright.stock import Board, EdgeBand, Glazing, Sheet

INCH = Fraction(127, 5)


def test_a_plain_upper_takes_five_lines() -> None:
    """Everything else has a default."""
    case = read(FIVE_LINES).cases[0]
    assert len(FIVE_LINES.splitlines()) == 5
    assert case.width is not None
    assert (case.width.value, case.height.value, case.depth.value) == (
        33 * INCH, 30 * INCH, 12 * INCH,
    )  # fmt: skip
    assert (case.joint, case.back, case.toe, case.shelves) == (
        "pocket screws", "rabbeted", "none", 2,
    )  # fmt: skip
    assert case.front is not None
    assert case.front.construction == "slab"


def test_a_number_knows_its_line() -> None:
    """What the person wrote says where; what the style says, names the style."""
    case = read(FIVE_LINES).cases[0]
    assert case.width is not None
    assert (case.width.origin.kind, case.width.origin.where) == ("chosen", "kitchen.toml line 5")
    assert (case.height.origin.note, case.height.origin.where) == ('style "painted"', "")


def test_a_style_value_names_style_and_line() -> None:
    """A changed default says who changed it."""
    gap = read(f'{FIVE_LINES}[style]\nname = "gate green"\ngap = "3/32"\n').style["gap"]
    assert gap.value == Fraction(3, 32) * INCH
    assert (gap.origin.note, gap.origin.where) == ('style "gate green"', "kitchen.toml line 8")


def test_a_usual_size_names_its_source() -> None:
    """A label's size is cited, not chosen."""
    sheet = read(FIVE_LINES).stock["plywood"]
    assert (sheet.thickness.origin.kind, sheet.thickness.origin.source) == ("cited", "ps1")
    assert sheet.thickness.value == Fraction(23, 32) * INCH


@pytest.mark.parametrize("written", ["33", '"33"', '"33.0"', "33.0", '"2\' 9"', '"838.2 mm"'])
def test_a_length_may_be_text_or_number(written: str) -> None:
    """All of these are the same width, exactly."""
    case = read(f'{HEAD}[case.upper]\nkind = "wall"\nwidth = {written}\n').cases[0]
    assert case.width is not None
    assert case.width.value == 33 * INCH


def test_a_decimal_number_is_exact() -> None:
    """No binary fraction comes between the file and the number."""
    case = read(f'{HEAD}[case.upper]\nkind = "wall"\nwidth = 30.1\n').cases[0]
    assert case.width is not None
    assert case.width.value == Fraction(301, 10) * INCH


def test_a_metric_job_counts_in_millimetres() -> None:
    """Bare numbers, defaults and paper follow the unit."""
    job = read('format = 1\nunit = "mm"\n[case.a]\nkind = "base"\nwidth = 600\n')
    assert (job.unit, job.paper) == ("mm", "a4")
    assert job.cases[0].width is not None
    assert (job.cases[0].width.value, job.cases[0].height.value) == (
        Fraction(600), Fraction(870),
    )  # fmt: skip


def test_a_reading_becomes_a_fact() -> None:
    """The label stays in the stock; what was read is built."""
    job = read(f'{FIVE_LINES}[stock.plywood]\nmeasured = ["0.703", "0.705"]\n')
    fact = job.file_facts["stock.plywood.thickness"]
    assert fact.built == Fraction("0.704") * INCH
    assert (fact.origin.kind, fact.origin.where) == ("measured", "kitchen.toml line 7")
    assert job.stock["plywood"].thickness.value == Fraction(23, 32) * INCH


def test_stock_of_every_kind() -> None:
    """The section of the contract, and one of each other kind."""
    job = read(
        FIVE_LINES + '[stock.ply18]\nkind = "sheet"\nsize = ["96", "48"]\ngrain = "length"\n'
        'thickness = "23/32"\nmeasured = "0.703"\n'
        '[stock.oak]\nkind = "board"\nthickness = "3/4"\nwidth = 5\nlengths = 96\n'
        '[stock.tape]\nkind = "band"\nthickness = "0.5 mm"\nwidth = "7/8"\nroll = "50\' 0"\n'
        '[stock.pane]\nkind = "glazing"\nthickness = "3 mm"\nmaterial = "acrylic"\n'
    )
    kinds = [type(job.stock[key]) for key in ("ply18", "oak", "tape", "pane")]
    assert kinds == [Sheet, Board, EdgeBand, Glazing]
    assert job.stock["pane"].title == "pane"
    sheet = job.stock["ply18"]
    assert isinstance(sheet, Sheet)
    assert sheet.grain


def test_known_stock_may_be_changed_in_part() -> None:
    """A thickness of one's own keeps the rest, but not a title that would be wrong."""
    job = read(f'{FIVE_LINES}[stock.plywood]\nthickness = "5/8"\n')
    sheet = job.stock["plywood"]
    assert isinstance(sheet, Sheet)
    assert sheet.length.value == 96 * INCH
    assert sheet.title == "plywood"


def test_a_typed_hinge_sheet_is_no_placeholder() -> None:
    """Three numbers from the box are the sheet; two are not."""
    three = "constant = 0.5\nbore_distance = [0.12, 0.24]\nplate_heights = [0]\n"
    assert read(FIVE_LINES).hardware.hinge.placeholder
    assert not read(f"{FIVE_LINES}[hardware.hinge]\n{three}").hardware.hinge.placeholder
    two = three.partition("plate")[0]
    assert read(f"{FIVE_LINES}[hardware.hinge]\n{two}").hardware.hinge.placeholder


def test_sections_hold_for_every_case_until_it_says_otherwise() -> None:
    """boxes and doors are defaults; a case's own word wins."""
    job = read(
        HEAD + '[boxes]\nedge = "painted"\n[doors]\nconstruction = "applied frame"\n'
        '[case.a]\nkind = "wall"\nwidth = 20\n'
        '[case.b]\nkind = "wall"\nwidth = 20\nedge = "lip"\nfront = "slab"\n'
    )
    first, second = job.cases
    assert (first.edge, second.edge) == ("painted", "lip")
    assert first.front is not None
    assert second.front is not None
    assert (first.front.construction, first.front.slab) == ("applied frame", "thin_fibreboard")
    assert (second.front.construction, second.front.slab) == ("slab", "fibreboard")


def test_fronts_are_words_or_tables() -> None:
    """none takes the doors away; a divider brings the same doors above."""
    job = read(
        HEAD + '[case.open]\nkind = "wall"\nwidth = 20\nfront = "none"\n'
        '[case.stack]\nkind = "wall"\nwidth = 20\nheight = 48\ndivider = 27\n'
        'upper_front = "glass frame"\n[case.stack.front]\nhinge = "right"\nleaves = 1\n'
        '[case.books]\nkind = "bookcase"\nwidth = 30\n'
    )
    bare, stack, books = job.cases
    assert (bare.front, books.front, books.upper_front) == (None, None, None)
    assert stack.front is not None
    assert stack.upper_front is not None
    assert (stack.front.hinge, stack.front.leaves) == ("right", 1)
    assert stack.upper_front.construction == "glass frame"


def test_edges_follow_the_sheet_until_the_file_says_otherwise() -> None:
    """A box of fibreboard is painted, one of plywood banded; doors may choose for themselves."""
    plain, fibre, banded = read(
        FIVE_LINES
        + '[case.b]\nkind = "wall"\nwidth = 20\nsheet = "fibreboard"\n'
        + '[case.c]\nkind = "wall"\nwidth = 20\nsheet = "fibreboard"\nedge = "band"\n'
        + 'front = { edge = "lip" }\n'
    ).cases
    assert (plain.edge, fibre.edge, banded.edge) == ("band", "painted", "band")
    assert plain.front is not None
    assert banded.front is not None
    assert (plain.front.edge, banded.front.edge) == (None, "lip")


def test_a_run_shares_its_wall() -> None:
    """Cases without a width take equal shares; readings know the tape and the line."""
    job = read(
        HEAD + '[case.a]\nkind = "base"\n[case.b]\nkind = "base"\n'
        '[run.w]\ncases = ["a", "b"]\nwall = ["60 1/4", "60", 60.5]\nright = "open"\n'
    )
    run = job.runs[0]
    assert [case.width for case in job.cases] == [None, None]
    assert min(given.value for given in run.widths) == 60 * INCH
    assert (run.left, run.right) == ("wall", "open")
    assert run.widths[0].origin.kind == "measured"


def test_order_mark_and_line_ends_of_other_systems() -> None:
    """A byte order mark and carriage returns change nothing."""
    text = FIVE_LINES.replace("\n", "\r\n")
    assert read(text) == read(FIVE_LINES)


def test_a_file_with_a_byte_order_mark(tmp_path: Path) -> None:
    """Some editors put one in front of everything."""
    path = tmp_path / "kitchen.toml"
    path.write_bytes(b"\xef\xbb\xbf" + FIVE_LINES.encode())
    assert load_job(path).spec == read(FIVE_LINES)


@pytest.mark.parametrize("name", EXAMPLE_NAMES)
def test_examples_are_read(name: str) -> None:
    """Every example in the folder has a meaning."""
    assert load_job(EXAMPLES / f"{name}.toml").spec.cases


def _whole(path: Path) -> str:
    with pytest.raises(JobFileError) as caught:
        load_job(path)
    (problem,) = caught.value.problems
    assert problem.want
    return problem.what


def test_a_missing_file_offers_to_write_one(tmp_path: Path) -> None:
    """No traceback for a name that is mistyped."""
    assert "there is no file" in _whole(tmp_path / "kitchn.toml")


@pytest.mark.parametrize("typed", ["kitchn.toml", "kitchen"])
def test_a_missing_file_names_the_one_that_is_there(tmp_path: Path, typed: str) -> None:
    """Mistyped, or without its ending."""
    there = tmp_path / "kitchen.toml"
    there.write_text(FIVE_LINES)
    with pytest.raises(JobFileError, match=f"did you mean {there}?"):
        load_job(tmp_path / typed)


@pytest.mark.parametrize(
    ("content", "what"),
    [
        (FIVE_LINES.encode("utf-16"), "saved as UTF-16"),
        (FIVE_LINES.encode("utf-16-le"), "saved as UTF-16"),
        (FIVE_LINES.encode("utf-16-be"), "saved as UTF-16"),
        (b"{\\rtf1\\ansi " + FIVE_LINES.encode() + b"}", "a text processor's file"),
        (FIVE_LINES.encode() + b"\0", "no plain text"),
    ],
)
def test_what_an_editor_saved_otherwise_is_named(
    tmp_path: Path, content: bytes, what: str
) -> None:
    """With or without a mark at the beginning."""
    path = tmp_path / "kitchen.toml"
    path.write_bytes(content)
    assert what in _whole(path)


def test_a_folder_is_no_job_file(tmp_path: Path) -> None:
    """The message says what to name instead."""
    assert "is a folder" in _whole(tmp_path)


def test_a_large_file_is_refused_unread(tmp_path: Path) -> None:
    """A picture by mistake is not parsed."""
    path = tmp_path / "kitchen.toml"
    path.write_bytes(b"#" * (LARGEST_FILE + 1))
    assert "over 1 MB" in _whole(path)


def test_bytes_that_are_no_text_are_located(tmp_path: Path) -> None:
    """Line, column and byte."""
    path = tmp_path / "kitchen.toml"
    path.write_bytes(HEAD.encode() + 'name = "Küche '.encode() + b'\xff"\n')
    with pytest.raises(JobFileError) as caught:
        load_job(path)
    where = caught.value.problems[0].location
    assert (where.line, where.column, where.word) == (3, 15, "byte 0xff")


def test_titles_fall_back_to_names() -> None:
    """A name with _ is read as words; the job is called after its file."""
    job = read(HEAD + UPPER.replace("case.upper", "case.tall_left"))
    assert (job.cases[0].title, job.name) == ("tall left", "kitchen")


def test_the_size_and_the_kerf_in_hand() -> None:
    """The least reading of a sheet's side governs, of a kerf the greatest; the label stays."""
    spec = read(
        FIVE_LINES
        + '[stock.plywood]\nmeasured_size = [["96 1/16", "95 15/16"], "47 7/8"]\n'
        + '[shop.tool."table saw"]\nmeasured_kerf = ["0.126", "0.128"]\n'
    )
    sheet, saw = spec.stock["plywood"], spec.shop.tools["table saw"]
    assert isinstance(sheet, Sheet)
    assert sheet.length.value == parse_length("96", "in")
    assert sheet.length_in_hand.value == parse_length("95 15/16", "in")
    assert sheet.length_in_hand.origin.note == "tape, least of 2 readings"
    assert sheet.width_in_hand.origin.where == "kitchen.toml line 7"
    assert saw.kerf is not None
    assert saw.kerf.value == parse_length("0.128", "in")
    assert saw.kerf.origin.kind == "measured"


def test_a_size_far_from_its_label_is_a_slip() -> None:
    """Width before length, or a reading of another sheet."""
    told = problems(FIVE_LINES + '[stock.plywood]\nmeasured_size = ["48", "96"]\n')
    assert [each.location.word for each in told] == ['"48"', '"96"']
    assert "far from the label's length, 96" in told[0].what
