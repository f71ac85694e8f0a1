"""What rules advise, and what can tip, fall or catch a hand."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction

import pytest
from tests.builders import INCH, PANEL, SLAB, Unit, case_spec, given, job, length, plain_style
from tests.jobs import read
from tests.unit.checks.examples import FAILS, drawers_on, labelled, with_tools
from tests.unit.checks.rooms import (
    BASE,
    BOOKCASE,
    beside_wall,
    found_in,
    over_counter,
    room_of,
    without,
)

from casewright.checks.beam import Rectangle, section_inertia, uniform_load_sag
from casewright.checks.drawer_load import full_drawer
from casewright.checks.shelves import shelf_modulus, shelf_span
from casewright.findings import Severity
from casewright.room.build import build
from casewright.room.model import Room
from casewright.sources import POUND


def _remedies(room: Room) -> list[str]:
    return [remedy for finding in found_in("leaf size", room) for remedy in finding.remedies]


def test_a_pair_that_is_too_wide_is_not_advised_to_become_a_pair() -> None:
    """A pair over 4 ft wide wants a narrower case; one leaf as wide wants a second leaf."""
    pair = _remedies(room_of(width="50", front=replace(SLAB, leaves=2)))
    assert pair
    assert not any("two leaves" in way for way in pair)
    single = _remedies(room_of(width="30", front=replace(SLAB, leaves=1)))
    assert any(way.startswith("two leaves, 14 15/16") for way in single)


def test_a_single_leaf_that_is_too_narrow_is_not_advised_to_become_one() -> None:
    """One leaf instead of two helps a narrow pair only."""
    single = _remedies(room_of(width="9", front=replace(SLAB, leaves=1)))
    assert 'a case 1/8" wider' in single
    assert not any("one leaf instead of two" in way for way in single)
    pair = _remedies(room_of(width="17", front=replace(SLAB, leaves=2)))
    assert any(way.startswith("one leaf instead of two") for way in pair)


def test_a_standing_case_that_nothing_holds_stops_the_work() -> None:
    """Furniture over 27 in is held against tipping (ASTM F2057, from memory)."""
    found = found_in("tip over", without(room_of(**BASE), "nailer"))
    assert [finding.severity for finding in found] == [Severity.STOP]
    assert not found_in("tip over", without(room_of(**BASE | {"height": "26"}), "nailer"))


def test_a_tall_narrow_case_tips_at_a_small_lean() -> None:
    """atan(12 / 84) = 8.13 degrees; fastened, it is a note to fasten it first."""
    [found] = found_in("tip over", room_of(**BOOKCASE))
    assert "8 degrees" in found.says
    assert found.severity is Severity.NOTE
    assert (found.measured, found.limit) == ("7.0 to 1", "4 to 1")


def test_a_box_on_a_plinth_is_tilted_up_without_it() -> None:
    """sqrt(95.5^2 - 24^2) = 92.435 in, so 92 27/64 at most: 94 on a plinth of 4 leaves 90."""
    tall = BASE | {"height": "94", "depth": "24"}
    [found] = found_in("tilt up", room_of(**tall))
    assert "92 27/64" in found.remedies[0]
    assert not found_in("tilt up", room_of(**tall | {"toe": "plinth"}))


@pytest.mark.parametrize(("width", "told"), [("15 31/32", True), ("16", False)])
def test_studs_behind_by_the_width(width: str, told: bool) -> None:
    """Between studs 16 apart a case of 16 or more always has one, and may have two."""
    assert bool(found_in("studs behind", room_of(width=width))) == told


def test_a_shallow_toe_space_is_told_in_either_unit() -> None:
    """2 in or 50 mm at least (common practice)."""
    shallow = room_of(**BASE, overrides={"toe_setback": given("1 1/2")})
    assert [f.limit for f in found_in("toe space", shallow)] == ['2"']
    metric = BASE | {"height": "870", "depth": "580"}
    deep = {"toe_setback": given("50", "mm")}
    assert not found_in("toe space", room_of(unit="mm", **metric, overrides=deep))


@pytest.mark.parametrize(("wall", "told"), [("34 5/16", False), ("34 9/32", True)])
def test_a_filler_takes_the_pull_of_the_door_beside_it(wall: str, told: bool) -> None:
    """A pull of 30 mm and 1/8 in want 1 5/16, rounded up to a mark (30 + 3.175 = 33.175 mm)."""
    assert bool(found_in("door beside wall", beside_wall(wall))) == told


def test_a_door_that_swings_from_the_wall_needs_no_filler_for_its_pull() -> None:
    """Hinged on the side away from the wall, its pull never turns to it."""
    away = replace(SLAB, leaves=1, hinge="right")
    room = beside_wall("22 3/4", width="22")
    turned = build(replace(room.spec, cases=(replace(room.spec.cases[0], front=away),)))
    assert not found_in("door beside wall", turned)


def test_the_usual_heights_leave_the_usual_space_over_a_counter() -> None:
    """54 - 34 1/2 - 1 1/2 = 18 in; 1370 - 870 - 40 = 460 mm (common practice)."""
    units: tuple[Unit, ...] = ("in", "mm")
    for unit in units:
        keys = {key: value for key, value in BASE.items() if key not in ("height", "depth")}
        style = plain_style(unit)
        sizes = {"height": style["base_height"], "depth": style["base_depth"]}
        base = case_spec(unit, key="base", **keys, **sizes)
        assert not found_in("over counter", build(job(base, case_spec(unit), unit=unit)))
    [found] = found_in("over counter", over_counter("50"))
    assert (found.measured, found.limit) == ('14"', '18"')


def test_a_full_drawer_by_the_load_that_drawers_are_tested_with() -> None:
    """15 lb on a square foot (ANSI/KCMA A161.1, section 7.1): 2 x 1.5 ft carry 45 lb.

    12 in high and to the rim: 24 x 18 x 12 in are 0.0850 m3, 25.5 kg at 300 kg/m3.
    """
    flat = full_drawer(length("24"), length("18"), length("4"))
    assert flat == 45 * Fraction(45359237, 10**8)
    deep = full_drawer(length("24"), length("18"), length("12"))
    assert round(float(deep), 1) == 25.5


def test_a_drawer_as_narrow_as_told_is_carried() -> None:
    """Its own weight falls as well, so that what is told is a little more than enough."""
    [told] = found_in("drawer load", drawers_on(50))
    by = next(way for way in told.remedies if "narrower" in way).split('"')[0].split()[2:]
    less = sum((Fraction(each) for each in by), Fraction(0))
    assert not found_in("drawer load", drawers_on(50, str(24 - less)))
    assert found_in("drawer load", drawers_on(50, str(24 - less + 1)))


def test_slides_whose_sheet_is_not_in_hand_make_a_note() -> None:
    """Usual ones carry 100 lb (from memory): a base 42 wide holds more when full."""
    [note] = found_in("drawer load", drawers_on(None, "42"))
    assert note.severity is Severity.NOTE
    assert note.limit.startswith("100 lb")
    [care] = found_in("drawer load", drawers_on(100, "42"))
    assert care.severity is Severity.CARE
    assert not found_in("drawer load", drawers_on(150, "42"))


def test_a_label_without_a_class_is_told_only_of_sheets_that_are_used() -> None:
    """Nothing of an upper without doors is cut from fibreboard."""
    assert found_in("emission class", labelled("none on its label"))
    assert not found_in("emission class", labelled("none on its label", "mdf"))
    assert not found_in("emission class", labelled("no added formaldehyde"))


def test_without_a_dado_stack_the_cards_are_written_for_another_way() -> None:
    """What is proposed is what the set-ups then are: the blade, or the router table."""
    plain = room_of(front=PANEL)
    [note] = found_in("dado stack", with_tools(plain, "dado stack"))
    assert "own blade" in note.remedies[0]
    assert {f.setup.bit for p in plain.parts for f in p.features if f.kind == "tongue"} == {
        "saw blade"
    }
    tabled = with_tools(plain, "router table", "slot cutter")
    [note] = found_in("dado stack", with_tools(tabled, "dado stack"))
    assert "router table" in note.remedies[0]
    tongues = {f.setup.tool for p in tabled.parts for f in p.features if f.kind == "tongue"}
    assert tongues == {"router table"}


_NO_NUMBER = {
    "nailer missing": "a nailer is there or is not",
    "pinned seam": "the layout's own answer has the numbers",
    "heights close": "the layout's own answer has the numbers",
    "sheets differ": "which sheet goes where is sorted by another command",
    "fit band": "what is left of a part that is cut already is told by another command",
    "open pockets": "a pocket is closed or is not",
    "narrow rip": "how it is guided, whatever its width",
    "small part": "how it is held, whatever its size",
    "sheet weight": "who lifts it",
    "island stands": "what is done first, whatever it weighs",
    "sheet thickness": "it is read again",
    "case weight": "what each of two lifts stands in what it says",
    "leaf weight": "what each of two lifts stands in what it says",
    "tool missing": "a tool is owned or is not",
    "read as built": "it is read again",
    "dado stack": "a stack may be used or may not",
}


@pytest.mark.parametrize("name", sorted(FAILS))
def test_a_remedy_says_by_how_much_wherever_a_number_helps(name: str) -> None:
    """Some remedy of each finding has a number in it, or the table says why none has."""
    for found in found_in(name, FAILS[name]()):
        told = any(char.isdigit() for way in found.remedies for char in way)
        assert told or name in _NO_NUMBER, (found.says, found.remedies)


def test_numbers_of_remedies_are_enough() -> None:
    """What is told as enough takes the finding away; a step less does not."""
    wide = room_of(width="30", front=replace(SLAB, leaves=1))
    assert 'a case 7 7/8" narrower' in _remedies(wide)
    assert not _remedies(room_of(width="22 1/8", front=replace(SLAB, leaves=1)))
    assert _remedies(room_of(width="22 5/32", front=replace(SLAB, leaves=1)))


def test_a_nosing_as_high_as_told_takes_the_sag_out_of_a_shelf() -> None:
    """Against the beam formula: with it the shelf stays under what the eye sees."""
    room = FAILS["shelf sag"]()
    first = found_in("shelf sag", room)[0]
    told = next(way for way in first.remedies if way.startswith("a nosing"))
    high = Fraction(sum(Fraction(each) for each in told.split('"')[0].split()[2:])) * INCH
    part = next(p for case in room.cases for p in case.parts if p.path == first.path)
    modulus = shelf_modulus(room, part)
    assert modulus is not None
    span = float(shelf_span(room, next(c for c in room.cases if c.key == part.case), part).value)
    load = 20 * float(POUND) * 9.80665 / 304.8

    def sag(nosing: float) -> float:
        deep, thick = (float(getattr(part.finished, n).value) for n in ("width", "thickness"))
        whole = [Rectangle(deep, thick, thick / 2), Rectangle(19.05, nosing, thick + nosing / 2)]
        return 1.5 * uniform_load_sag(span, load, modulus, section_inertia(whole))

    assert sag(float(high)) <= span / 384 < sag(float(high - INCH / 4))


def test_a_metric_job_hears_of_sag_in_its_own_units_as_a_tape_shows_them() -> None:
    """20 lb a foot are 29.8 kg a metre; spans are whole millimetres."""
    text = (
        'format = 1\nunit = "mm"\n[stock.plywood]\nmeasured = 17.8\nstiffness = 8300\n'
        '[case.books]\nkind = "wall"\nwidth = 1150.5\n'
    )
    (finding,) = found_in("shelf sag", build(read(text)))
    assert round(20 * float(POUND) / 0.3048) == 30
    assert "(30 kg a metre)" in finding.says
    for words in (finding.says, *finding.remedies):
        for span in re.findall(r"([\d.]+) mm between supports", words):
            assert "." not in span


def test_a_tall_case_without_a_stud_has_nothing_to_be_screwed_to() -> None:
    """Studs at 10 and 26 in: the case from 1 1/2 to 31 1/2 has two, from 31 1/2 to 61 1/2 none."""
    cases = "".join(f'[case.{key}]\nkind = "bookcase"\nwidth = 30\n' for key in ("near", "far"))
    wall = '[wall.w]\nwidth = 63\nstuds = [10, 26]\n[run.r]\ncases = ["near", "far"]\non = "w"\n'
    room = build(read(f'format = 1\nunit = "in"\n{cases}{wall}'))
    found = {each.path: each for each in found_in("tip over", room)}
    assert "tips at a lean" in found["near"].says
    assert found["far"].severity is Severity.CARE
    assert "none of the studs" in found["far"].says


def test_a_case_in_a_corner_is_not_told_to_be_two() -> None:
    """A blind corner base has one door, and the job file refuses a second leaf."""
    text = (
        'format = 1\nunit = "in"\n[wall.n]\nwidth = 90\n[wall.e]\nwidth = 90\n[corner.c]\n'
        'walls = ["n", "e"]\n[case.a]\nkind = "base"\nwidth = 48\nblind = "right"\n'
        '[case.b]\nkind = "base"\nwidth = 30\n[run.n]\ncases = ["a"]\non = "n"\nleft = "open"\n'
        '[run.e]\ncases = ["b"]\non = "e"\nleft = "corner"\nright = "open"\n'
    )
    room = build(read(text))
    told = [
        remedy
        for rule in ("leaf size", "case weight")
        for found in found_in(rule, room) if found.path.startswith("a")
        for remedy in found.remedies
    ]  # fmt: skip
    assert any("narrower" in remedy for remedy in told)
    assert "a helper that day" in told
    assert not [remedy for remedy in told if remedy.startswith("two ")]
