"""What is told of a job file that has no meaning: the word, its place, what would be right."""

from __future__ import annotations

from typing import get_args

import pytest
from tests.jobs import FIVE_LINES, HEAD, UPPER, example, problem, problems

from casewright.job.tables.case import FrontKind

_KINDS = [f'"{kind}"' for kind in get_args(FrontKind)]
_FRONTS = f"write {', '.join(_KINDS[:-1])} or {_KINDS[-1]}"


@pytest.mark.parametrize(
    ("line", "word", "column", "want"),
    [
        ("depth = 11 7/8", "11 7/8", 9, 'put quotes round it: "11 7/8"'),
        ('depth = 11 7/8"', '11 7/8"', 9, "put quotes round it: '11 7/8\"'"),
        ("depth = 7/8", "7/8", 9, 'put quotes round it: "7/8"'),
        ("depth = 12 in", "12 in", 9, 'put quotes round it: "12 in"'),
        ("depth = .5", ".5", 9, 'put quotes round it: ".5"'),
        ('depth = "11 7/8""', '"11 7/8""', 9, 'write depth = "11 7/8" or depth = \'11 7/8"\''),
        ('depth = "11" in', '"11" in', 9, 'write depth = "11 in"'),
        ("joint = dado", "dado", 9, 'put quotes round it: "dado"'),
        ("front = False", "False", 9, "write front = false"),
        ("shelves = 05", "05", 11, "write shelves = 5"),
        ("depth = 011", "011", 9, "write depth = 11"),
        ("depth = 12,5", "12,5", 9, "write depth = 12.5"),
        ("depth = 12.5.1", "12.5.1", 9, "write depth = 12.5"),
        ("depth = \u201c12\u201d", "\u201c12\u201d", 9, 'write depth = "12"'),
        ('depth = "12";', '"12";', 9, 'write depth = "12"'),
        ('depth = "12",', '"12",', 9, 'write depth = "12"'),
        ("depth == 12", "= 12", 8, "write depth = 12"),
        ("depth\u00a0= 12", "depth\u00a0= 12", 1, "type the line again"),
        ('front = { hinge = "left"', '{ hinge = "left"', 9, 'write front = { hinge = "left" }'),
        ("[shop.tool.table saw]", "shop.tool.table saw", 2, 'write [shop.tool."table saw"]'),
        ("[case.k\u00fcche]", "[case.k\u00fcche]", 1, 'write [case."k\u00fcche"]'),
        ("shelves =", "shelves", 1, 'write shelves = "..." or take the line out'),
        ("depth: 12", "depth: 12", 1, "write depth = ..."),
        ("depth", "depth", 1, "write key = value, [section], or # and a note"),
        ('title = "left', '"left', 9, 'write title = "left"'),
        (r'title = "a\q"', r'"a\q"', 9, "put single quotes round it, or write / for \\"),
        ("fixed_shelves = [12, 14 1/2]", "14 1/2", 22, 'put quotes round it: "14 1/2"'),
        ("depth = 12;", "12;", 9, "write depth = 12"),
        ("depth = 11 7/8,", "11 7/8,", 9, 'write depth = "11 7/8"'),
        ('depth = "12\u201d', '"12\u201d', 9, 'write depth = "12"'),
        ("depth = `12`", "`12`", 9, 'write depth = "12"'),
        ("fixed_shelves = (12, 14)", "(12, 14)", 17, "write fixed_shelves = [12, 14]"),
        ('finished = ["left" "right"]', '"left" "right"', 13, 'write "left", "right"'),
        ('front = { hinge: "left" }', 'hinge: "left"', 11, 'write hinge = "left"'),
        ("h\u00f6he = 3", "h\u00f6he", 1, "docs/job-file.md lists the keys"),
        ("[case left]", "case left", 2, "write [case.left]"),
        ("[case.left", "[case.left", 1, "write [case.left]"),
    ],
)
def test_a_slip_of_the_pen_names_the_cure(line: str, word: str, column: int, want: str) -> None:
    """What cannot be TOML is told as what was probably meant."""
    found = problem(f"{FIVE_LINES}{line}\n")
    assert (found.location.line, found.location.column) == (6, column)
    assert found.location.word.rstrip() in (word, line[column - 1 :])
    assert found.want == want


@pytest.mark.parametrize(
    ("lines", "at", "word", "want"),
    [
        ("widht = 30", (6, 1), "widht", "did you mean width?"),
        ('joint = "dadoes"', (6, 9), '"dadoes"', 'did you mean "dado"?'),
        ('shelves = "2"', (6, 11), '"2"', "write 2, without quotes"),
        ("doors = 2", (6, 1), "doors", "did you mean front?"),
        ('hinge = "left"', (6, 1), "hinge",
         "it belongs to the doors: front = { hinge = ... }"),
        ("thickness = 1", (6, 1), "thickness",
         "it belongs under the stock, such as [stock.plywood]"),
        ('bore_distance = ["3 mm", "6 mm"]', (6, 1), "bore_distance",
         "it belongs under [hardware.hinge]"),
        ("front = false", (6, 9), "false", _FRONTS),
        ("finished = true", (6, 12), "true", 'write "left", "right" or "both"'),
        ("fixed_shelves = 12", (6, 17), "12", "write [12], a list"),
        ("width = 30", (6, 1), "width", "delete one of the two"),
        ('sheet = "band"', (6, 9), '"band"',
         "write plywood, thin_plywood, fibreboard, thin_fibreboard or drawer_plywood"),
        ('[case.low]\nkind = "plinth"\nwidth = 30', (7, 8), '"plinth"',
         'write "wall", "base", "tall", "bookcase", "surround" or "hood"'),
        ('[case.low]\nkind = "locker"\nwidth = 30', (7, 8), '"locker"', 'write kind = "tall"'),
        ('[case.low]\nkind = "Bench"\nwidth = 30', (7, 8), '"Bench"',
         'write kind = "base" with lid = "hinged" or "fixed"'),
        ('[low]\nkind = "base"\nwidth = 30', (6, 2), "low", "write [case.low]"),
        ('[case.low]\nkind = "base"\nwidth = 30\n[run.a]\ncases = ["upper", "low"]', (10, 19),
         '"low"', "put cases that hang and cases that stand below them into runs of their own"),
        ('[case.books]\nkind = "bookcase"\nwidth = 30\njoint = "pocket screws"', (9, 9),
         '"pocket screws"', 'take it out, or write joint = "dado"'),
        ("[run.a]\ncases = []", (7, 9), "[]", "entries it needs: 1 or more"),
        ('[stock.thin_plywood]\nmeasured = "2.05"', (7, 12), '"2.05"',
         "read it again, or put the right label into thickness"),
        ("title = 4", (6, 9), "4", "write text in quotes"),
        ("depth = true", (6, 9), "true", 'write a length such as "11 7/8", 36 or "302 mm"'),
        ("depth = -3", (6, 9), "-3", "write 3 in to 48 in"),
        ("depth = 400", (6, 9), "400", 'write 3 in to 48 in; if mm was meant: "400 mm"'),
        ("depth = 0.5", (6, 9), "0.5", "write 3 in to 48 in"),
        ("depth = nan", (6, 9), "nan", "write a length that fits a room"),
        ("depth = 1e99", (6, 9), "1e99", "write a length that fits a room"),
        ("shelves = 99", (6, 11), "99", "write 20 or less"),
        ('front = "shaker"', (6, 9), '"shaker"', _FRONTS),
        ('sheet = "plywod"', (6, 9), '"plywod"', "did you mean plywood?"),
        ('sheet = "board"', (6, 9), '"board"', "did you mean fibreboard?"),
        ('toe = "notch"', (6, 7), '"notch"',
         "take it out; only a base case or a tall case has one"),
        ('upper_front = "slab"', (6, 15), '"slab"',
         "write divider = ... (its height), or take upper_front out"),
        ('front = { leaves = 2, hinge = "left" }', (6, 31), '"left"',
         "take hinge out, or write leaves = 1"),
        ('front = { hinge = "left" }', (6, 19), '"left"', "take hinge out, or write leaves = 1"),
        ("divider = 29", (6, 11), "29", "write 25 1/8 or less"),
        ('[stock.oak]\nkind = "bord"', (7, 8), '"bord"', "did you mean board?"),
        ('[stock.plywood]\nmeasured = "0.3"', (7, 12), '"0.3"',
         "read it again, or put the right label into thickness"),
        ("[hardware.hinge]\nconstant = 13", (7, 12), "13",
         'write 0 in to 1 1/4 in; if mm was meant: "13 mm"'),
        ('end = "skin"', (6, 7), '"skin"', 'take it out, or write finished = "left"'),
        ('finished = "left"\nend = "skinn"', (7, 7), '"skinn"', 'did you mean "skin"?'),
        ('finished = "left"\nend_sheet = "plywood"', (7, 13), '"plywood"',
         'take it out, or write end = "skin" or "flush"'),
        ('finished = "left"\nend = "flush"\nface = "face frame"', (7, 7), '"flush"',
         'write end = "skin" or "plain" for upper'),
        ('lid = "hinged"', (6, 7), '"hinged"', 'take lid out, or write kind = "base"'),
        ('lid_sheet = "plywood"', (6, 13), '"plywood"', 'take it out, or write lid = "hinged"'),
        ('blind = "left"', (6, 9), '"left"', 'take blind out, or write kind = "base"'),
        ("corner_depth = 24", (6, 16), "24", 'take it out, or write blind = "left"'),
        ('[case.corner]\nkind = "base"\nblind = "left"\nwidth = 30', (9, 9), "30",
         "write 32 1/2 or more"),
        ("[shop]\nlift = 25", (7, 8), "25", 'write one such as "25 kg" or "55 lb"'),
        ('[shop]\ntools = ["router"]', (7, 9), '["router"]',
         'add "table saw" or "circular saw"'),
        ('[run.a]\ncases = ["uper"]', (7, 10), '"uper"', "did you mean upper?"),
        ('[run.a]\ncases = ["upper"]\nleft = "wall"', (8, 8), '"wall"',
         'write wall = ["...", "...", "..."], or left = "open"'),
        ("[cases.b]\nx = 1", (6, 2), "cases", "did you mean case?"),
        ('[case.style]\nkind = "wall"\nwidth = 19', (6, 7), "style", "name it style_case"),
        ('[case.Upper]\nkind = "wall"\nwidth = 30', (6, 7), "Upper", "give one another name"),
        ('[case."a b"]\nkind = "wall"\nwidth = 30', (6, 7), '"a b"', "write a_b"),
    ],
)  # fmt: skip
def test_a_word_that_means_nothing_names_what_would(
    lines: str, at: tuple[int, int], word: str, want: str
) -> None:
    """Unknown keys, wrong kinds of value, sizes no case has, names that are not there."""
    found = problem(f"{FIVE_LINES}{lines}\n")
    assert (found.location.line, found.location.column) == at
    assert found.location.word == word
    assert found.want == want


@pytest.mark.parametrize(
    ("text", "line", "want"),
    [
        ("# a note\n", 0, "write format, unit and a case, or let `casewright new` write them"),
        (FIVE_LINES.replace("= 1", '= "1"'), 1, "write 1, without quotes"),
        (HEAD + '[case]\nkind = "wall"\n', 3, "write [case.left], or whatever you call it"),
        (HEAD + '[[case.up]]\nkind = "wall"\n', 3, "write [case.up], with single brackets"),
        (FIVE_LINES + 'gap = "1/8"\n', 6,
         "it belongs under [style], or under [case.upper.style]"),
        (FIVE_LINES.replace('"33"', '"331/2"'), 5,
         'write 4 in to 96 in; if a space is missing: "33 1/2"'),
        (FIVE_LINES + '[run.a]\ncases = "upper"\n', 7, 'write ["upper"], a list'),
        (FIVE_LINES + '[run.a]\ncases = "upper, lower"\n', 7, 'write ["upper", "lower"], a list'),
        (HEAD + 'joint = "dado"\n' + UPPER, 3, "it belongs under [boxes]"),
        (FIVE_LINES + 'shelves = "2"\n', 6, "write 2, without quotes"),
        (FIVE_LINES + 'front = ["slab"]\n', 6, "take the brackets away"),
        (FIVE_LINES + 'paper = "a4"\n', 6,
         "it stands at the top of the file, before the first section"),
        (FIVE_LINES + "[stock.plywood]\nmeasured = 17.9\n", 7,
         'write 1/16 in to 4 in; if mm was meant: "17.9 mm"'),
        (FIVE_LINES + '[run.a]\ncases = ["upper", "upper"]\n', 7, "take it out here"),
        ('{"format": 1}', 1, "write key = value, [section], or # and a note"),
    ],
)  # fmt: skip
def test_what_a_newcomer_does(text: str, line: int, want: str) -> None:
    """Each is told once, with what would be right."""
    found = problems(text)
    assert found[0].location.line == line
    assert found[0].want == want


def test_a_length_is_wrong_at_the_character() -> None:
    """The column points into the text."""
    found = problem(f'{FIVE_LINES}depth = "11 7/x"\n')
    assert (found.location.line, found.location.column) == (6, 15)
    assert found.location.word == '"11 7/x"'


def test_all_problems_are_told_at_once() -> None:
    """In the order of the file, each at its place."""
    found = problems(
        HEAD + '[case.a]\nkind = "wal"\nwidth = 900\n[case.b]\nkind = "base"\nwidht = 30\n'
        '[run.r]\ncases = ["a", "c"]\n[style]\ngapp = 1\n'
    )
    assert [each.location.line for each in found] == [4, 5, 8, 10, 12]


def test_one_slip_of_form_is_told_alone() -> None:
    """Behind it nothing can be trusted."""
    found = problem(f"{HEAD}[case.a]\nkind = wall\nwidth = 900000\n")
    assert found.location.line == 4


def test_every_name_written_twice_is_told() -> None:
    """With the line of the first."""
    found = problems(FIVE_LINES + UPPER + "[style]\ngap = 1\ngap = 2\n")
    assert [(each.location.line, each.location.word) for each in found] == [
        (6, "upper"), (11, "gap"),
    ]  # fmt: skip
    assert "line 3" in found[0].what


def test_a_case_stands_in_one_run_once() -> None:
    """The second time is told."""
    found = problem(f'{FIVE_LINES}[run.a]\ncases = ["upper"]\n[run.b]\ncases = ["upper"]\n')
    assert (found.location.line, found.want) == (9, "take it out of one of the two")


def test_a_case_needs_a_width_or_a_wall() -> None:
    """Alone, or in a run without readings, nobody can say how wide it is."""
    alone = problem(f'{HEAD}[case.a]\nkind = "wall"\n')
    free = problem(f'{HEAD}[case.a]\nkind = "wall"\n[run.r]\ncases = ["a"]\n')
    assert "put the case into a run" in alone.want
    assert "wall = [...] in [run.r]" in free.want


def test_a_wall_too_short_for_its_cases_is_told() -> None:
    """No case is squeezed into nothing."""
    found = problem(
        HEAD + '[case.a]\nkind = "wall"\n[case.b]\nkind = "wall"\nwidth = 60\n'
        '[run.r]\ncases = ["a", "b"]\nwall = 62\n'
    )
    assert (found.location.line, found.location.word) == (10, "62")


@pytest.mark.parametrize("head", ['unit = "in"\n', "format = 1\n", 'format = 2\nunit = "in"\n'])
def test_form_and_unit_are_needed(head: str) -> None:
    """Without them nothing after can be read for sure; no size is judged then."""
    found = problem(f"{head}{UPPER}")
    assert found.want.startswith("write ")


def test_a_survey_that_is_refused_is_not_worked_out_for_a_crown() -> None:
    """A window read from a name that is on no wall, under a crown fitted to the ceiling."""
    text = example("kitchen").replace('left = "50 3/4"', 'left = "50 3/4"\nafter = "teas"', 1)
    assert problem(text).what == "there is no teas on this wall"


def test_boards_of_no_known_stock_are_told_beside_a_finished_end() -> None:
    """How thick its frame would be follows from them: the word is told, the rest judged on."""
    found = problem(f'{FIVE_LINES}finished = "left"\n[boxes]\nstrips = "rolls"\n')
    assert found.what == "there is no stock rolls"


def test_a_job_has_a_case() -> None:
    """An empty job is a slip."""
    assert problem(HEAD).want == "write one such as [case.upper]"


def test_deep_nesting_is_refused_where_it_is_deep() -> None:
    """Ten thousand brackets are a message, not a crash."""
    for text in ("[" * 10_000, "{a=" * 10_000, "[" * 10_000 + "]" * 10_000):
        found = problem(f"{FIVE_LINES}depth = {text}\n")
        assert found.location.line == 6


def test_a_list_that_does_not_end_is_told_where_it_begins() -> None:
    """Not at the end of the file."""
    found = problem(f"{FIVE_LINES}fixed_shelves = [\n  12,\n  14\nshelves = 2\n")
    assert (found.location.line, found.location.column) == (6, 17)


def test_a_missing_comma_is_told_on_its_line() -> None:
    """With the line on which the list begins."""
    found = problem(f'{FIVE_LINES}fixed_shelves = [\n  "12"\n  "14"\n]\n')
    assert (found.location.line, found.location.word) == (8, '"14"')
    assert "line 6" in found.what


def test_a_depth_that_cuts_through_is_told_where_it_is_set() -> None:
    """A rabbet deeper than the side is a slip of the style."""
    found = problem(f"{FIVE_LINES}[style]\nrabbet_depth = 0.75\n")
    assert (found.location.line, found.location.word) == (7, "0.75")
    own = problem(f"{FIVE_LINES}[case.upper.style]\nrabbet_depth = 0.75\n")
    assert (own.location.line, own.location.word) == (7, "0.75")


def test_shelves_that_leave_no_room_name_a_number_that_does() -> None:
    """Both ways out are told."""
    found = problem(f'{HEAD}[case.b]\nkind = "bookcase"\nwidth = 30\nheight = 40\nshelves = 9\n')
    assert found.location.word == "9"
    assert "shelves = 7" in found.want


def test_one_misspelt_case_is_told_once() -> None:
    """Neither its missing width nor what a layout gave it is told as well."""
    text = (
        'format = 1\nunit = "mm"\n[case.bins]\nkind = "base"\n[case.pots]\nkind = "base"\n'
        '[run.r]\ncases = ["bin", "pots"]\nwall = [1200]\n'
        '[run.r.solved]\nwidths = { bins = "500", pots = "600" }\n'
    )
    assert problem(text).want == "did you mean bins?"


def test_without_a_unit_no_row_is_too_high() -> None:
    """160 is a usual drawer in millimetres; that the unit is missing says all there is to say."""
    text = 'format = 1\n[case.a]\nkind = "base"\nwidth = 600\nrows = ["drawer 160", "doors"]\n'
    assert problem(text).what == "unit is missing"
    told = problem(text.replace("format = 1", 'format = 1\nunit = "mm"').replace("160", "16"))
    assert told.want == "write a height such as 180"


def test_inches_in_a_metric_job_are_offered_as_they_were_typed() -> None:
    """23 5/8 counts as millimetres there, and nobody writes 23.625 in."""
    told = problem('format = 1\nunit = "mm"\n[case.a]\nkind = "base"\nwidth = "23 5/8"\n')
    assert told.want.endswith('if in was meant: "23 5/8 in"')
