"""Rows, drawers and sink bases as a person writes them: what they become, what is refused."""

from __future__ import annotations

import pytest
from tests.jobs import HEAD, problem, problems, read

from casewright.casework.specs import CaseSpec
from casewright.dims import format_length
from casewright.job.worked import work_out

_BASE = HEAD + '[case.sink]\nkind = "base"\nwidth = 36\n'


def _case(lines: str) -> CaseSpec:
    return read(_BASE + lines).cases[0]


def _rows(lines: str) -> list[str]:
    return [
        f"{row.kind} {format_length(row.height.value, 'in') if row.height else '-'}"
        for row in _case(lines).rows
    ]


@pytest.mark.parametrize(
    ("lines", "rows"),
    [
        ("drawers = 3", ["drawer -", "drawer -", "drawer -"]),
        ('drawers = 3\ntop_drawer = "7"', ["drawer 7", "drawer -", "drawer -"]),
        ("top_drawer = 6", ["drawer 6", "doors -"]),
        ("sink = true", ["false front 7", "doors -"]),
        ("sink = true\n[case.sink.style]\nfalse_front = 6", ["false front 6", "doors -"]),
        ('rows = ["drawer 5 1/2", "drawer", "open 8"]', ["drawer 5 1/2", "drawer -", "open 8"]),
        ('rows = ["drawer 140 mm", "doors"]', ["drawer ~5 1/2", "doors -"]),
        ("", []),
    ],
)
def test_what_is_written_becomes_rows(lines: str, rows: list[str]) -> None:
    """Short words for the ordinary case, a list of rows for any other."""
    assert _rows(lines) == rows


def test_drawers_are_built_as_all_or_as_their_case_says() -> None:
    """[drawers] holds for all, [case.NAME.drawer] for one; else rabbets and slides beside."""
    plain = _case("drawers = 2").drawer
    assert plain is not None
    assert (plain.joint, plain.slides, plain.box_stock, plain.bottom_stock) == (
        "rabbet", "side-mount", "drawer_plywood", "thin_plywood",
    )  # fmt: skip
    shared = '[drawers]\njoint = "dado"\nslides = "undermount"\n'
    own = _case(f'drawers = 2\ndrawer = {{ joint = "butt" }}\n{shared}').drawer
    assert own is not None
    assert (own.joint, own.slides) == ("butt", "undermount")


def test_fronts_of_drawers_are_built_as_the_doors_or_plain() -> None:
    """Strips on a slab where the doors have them; what has no such form is a slab."""
    framed = _case('front = "applied frame"\ntop_drawer = 7')
    first, doors = framed.rows
    assert first.front is not None
    assert first.low is not None
    assert doors.front is not None
    assert (first.front.construction, first.low.construction) == ("applied frame", "slab")
    assert (first.front.slab, first.low.slab) == ("thin_fibreboard", "fibreboard")
    glazed = _case('front = "glass frame"\ntop_drawer = 7').rows[0].front
    assert glazed is not None
    assert glazed.construction == "slab"


def test_a_drawer_base_has_no_shelf_and_a_sink_base_none_either() -> None:
    """One over doors keeps the one shelf of a base case."""
    assert _case("drawers = 3").shelves == 0
    assert _case("sink = true").shelves == 0
    assert _case("top_drawer = 7").shelves == 1
    assert _case("sink = true").back == "open"


@pytest.mark.parametrize(
    ("lines", "at", "wrong", "right"),
    [
        ('rows = ["drawr 7"]', (6, 9), "this is no row", "drawer 7"),
        ('rows = ["drawer 7 1/"]', (6, 20), "", ""),
        ('rows = ["drawer 7 1/2 3"]', None, "", ""),
        ("drawers = 0", (6, 11), "", ""),
        ('rows = ["doors", "false front 7"]', (6, 18), "a false front hides a rail", "topmost"),
        ('rows = ["open"]', (6, 8), "all rows are open", "take rows out"),
        ("drawers = 2\nshelves = 1", (7, 11), "no row of this case has doors", "take shelves out"),
        (
            'drawers = 2\nrows = ["drawer", "doors"]',
            (6, 11),
            "rows says already",
            "one of the two",
        ),
        ('drawer = { joint = "dado" }', (6, 10), "this case has no drawers", "take it out"),
        ('top_drawer = 7\ndrawer = { joint = "dovetail" }', (7, 20), "", "dado"),
        ('top_drawer = 7\ndrawer = { sheet = "glass" }', (7, 20), "glass is no sheet", ""),
        ('sink = true\nback = "inset"', (7, 8), "a sink base has no back", "take it out"),
        ('sink = true\nrows = ["drawer 7", "doors"]', (7, 8), "topmost row", "false front"),
        ("top_drawer = 30", (6, 14), "left for each row", "higher"),
        ('rows = ["drawer 7", "drawer 7"]', (6, 21), "together", "for the last"),
        ("roll_outs = 2\nshelves = 1", (7, 11), "take the place of shelves", "one of the two"),
        ("drawers = 3\nroll_outs = 2", (7, 13), "behind doors", "take it out"),
        ("rails = true", (6, 9), "this case has no rows", "take it out"),
        ("drawers = 2\nnosing = 1", (7, 10), "no nosing where doors or rows close it", "open"),
        (
            'face = "face frame"\nmullion = true\nroll_outs = 1\nrows = ["doors", "drawer 7"]',
            (8, 13),
            "a partition, which stands on the bottom",
            "the lowest row",
        ),
        ("drawers = 2\nfront = { leaves = 2 }", (7, 20), "leaves means nothing", "take"),
    ],
)
def test_what_cannot_be_is_told_at_its_word(
    lines: str, at: tuple[int, int] | None, wrong: str, right: str
) -> None:
    """One problem, where it stands, with what would be right."""
    found = problem(_BASE + lines)
    if at is not None:
        assert (found.location.line, found.location.column) == at
    assert wrong in found.what
    assert right in found.want


def test_only_a_base_or_tall_case_has_rows() -> None:
    """A wall case with drawers is told of, not built without them."""
    for line in ("drawers = 2", "top_drawer = 5", 'rows = ["doors"]', "sink = true"):
        text = f'{HEAD}[case.upper]\nkind = "wall"\nwidth = 33\n{line}'
        assert any("only a base" in each.what for each in problems(text)), line


def test_heights_that_sum_to_the_face_are_kept() -> None:
    """30 1/2 of face less 1/8 above and two gaps of 1/8: 7 + 11 9/16 + 11 9/16."""
    lines = 'rows = ["drawer 7", "drawer 11 9/16", "drawer 11 9/16"]'
    assert _rows(lines) == ["drawer 7", "drawer 11 9/16", "drawer 11 9/16"]


def test_slides_nobody_typed_the_sheet_of_are_asked_for() -> None:
    """The boxes wait, and the sides that are bored; with the sheet typed in nothing does."""
    worked = work_out(read(_BASE + "drawers = 2\n"))
    [asked] = [each for each in worked.questions if each.path == "hardware.slide"]
    assert {"sink.side_left", "sink.drawer_1.side_left", "sink.drawer_1.bottom"} <= set(
        asked.waiting
    )
    boxes = [
        part
        for part in worked.room.parts
        if ".drawer_1." in part.path and part.stock != "fibreboard"
    ]
    assert all("hardware.slide" in part.waits_for for part in boxes)
    typed = (
        '[hardware.slide]\nair = "1/2"\nlengths = [16, 18, 20]\nline = "32 mm"\n'
        'holes = ["35 mm", "163 mm"]\n'
    )
    known = work_out(read(f"{_BASE}drawers = 2\n{typed}"))
    assert not [each for each in known.questions if each.path.startswith("hardware.slide")]


@pytest.mark.parametrize(
    ("lines", "wrong"),
    [
        ('drawers = 2\n[stock.drawer_plywood]\nthickness = "1/4"', "too thin for the boxes"),
        ('drawers = 2\ndrawer = { bottom = "plywood" }', "too thick for the bottom"),
        ('drawers = 2\n[style]\ndrawer_joint_depth = "7/16"', "cuts through the side"),
        ("drawers = 2\n[hardware.slide]\nholes = [1, 1, 4]", "runs into the one before it"),
        ("drawers = 2\n[hardware.slide]\nholes = [0, 4]", "the slide's front end"),
        ("drawers = 2\n[hardware.slide]\nholes = [2, 29]\nlengths = [16]", "one hole at the most"),
        ('rows = ["drawer 20", "drawer 20"]', "together"),
        ('rows = ["false front 1", "drawer"]', "hides no rail"),
    ],
)
def test_sizes_that_cannot_be_made_are_told_before_anything_is_built(
    lines: str, wrong: str
) -> None:
    """Thin sheets, deep cuts, holes in one another, heights that do not sum."""
    assert wrong in problem(_BASE + lines).what
