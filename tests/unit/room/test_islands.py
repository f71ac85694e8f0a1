"""Islands against a worked construction of the trade, in inches and millimetres.

Source: a set of trade constructions whose formulas and sizes were re-derived by placing the parts
in space (`ISLAND`); common practice, no publication. Figures transcribed.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.builders import length
from tests.jobs import loaded, problems
from tests.perturbation import Perturbed, moved, perturbations

from casewright.casework.verification import verify
from casewright.dims import Origin, Unit
from casewright.facts import Fact
from casewright.findings import Severity
from casewright.job.worked import WorkedJob, work_out
from casewright.room.island_proof import prove_island
from casewright.room.model import Room

KEY = "island.main"
GRID = Fraction(127, 160)

_SIZES: dict[Unit, dict[str, str]] = {
    "in": {"Wb": "30", "D1": "23 1/4", "D2": "12 1/4", "te": "3/4", "t": "23/32", "tb": "7/32",
           "step": "1/64"},
    "mm": {"Wb": "760", "D1": "580", "D2": "320", "te": "19", "t": "17.8", "tb": "6.2",
           "step": "0.1"},
}  # fmt: skip
WANTED: dict[Unit, dict[str, str]] = {
    "in": {"body_depth": "35 1/2", "body_length": "61 1/2", "counter_length": "64 1/2",
           "counter_depth": "39 1/2"},
    "mm": {"body_depth": "900", "body_length": "1558", "counter_length": "1634",
           "counter_depth": "998"},
}  # fmt: skip
SEATS: dict[Unit, str] = {"in": "41", "mm": "1028"}


def _text(unit: Unit = "in", *, seats: bool = False, more: str = "", **changes: str) -> str:
    s = _SIZES[unit] | changes
    cases = "".join(
        f'[case.{key}]\nkind = "base"\nwidth = "{width}"\ndepth = "{depth}"\ntoe = "plinth"\n'
        f'[case.{key}.style]\nstretcher = "{"3" if unit == "in" else "75"}"\n'
        f'toe_setback = "{"1" if unit == "in" else "25"}"\n'
        for key, width, depth in (
            ("a", s["Wb"], s["D1"]), ("b", s.get("Wb2", s["Wb"]), s["D1"]),
            ("c", s["Wb"], s["D2"]), ("d", s.get("Wb3", s["Wb"]), s["D2"]),
        )
    )  # fmt: skip
    goods = "".join(
        f'[stock.{name}]\nmeasured = "{size}"\n'
        for name, size in (("plywood", s["t"]), ("thin_plywood", s["tb"]), ("fibreboard", s["te"]))
    )
    runs = '[run.one]\ncases = ["a", "b"]\n[run.two]\ncases = ["c", "d"]\n'
    back = "" if seats else 'back = "two"\n'
    return (
        f'format = 1\nunit = "{unit}"\n[style]\nbumper = 0\ncut_step = "{s["step"]}"\n{goods}'
        f'{cases}{runs}[island.main]\nfront = "one"\n{back}end_sheet = "fibreboard"\n{more}'
    )


def _worked(text: str) -> WorkedJob:
    worked = work_out(loaded(text).spec)
    assert worked.failures == ()
    return worked


def _stops(worked: WorkedJob) -> list[str]:
    return [f.says for f in worked.findings if f.severity is Severity.STOP]


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_body_and_counter_of_the_worked_example(unit: Unit) -> None:
    """D1 + D2, n Wb + 2 te, both overhangs; and with seats instead of the boxes behind."""
    room = _worked(_text(unit)).room
    for name, value in WANTED[unit].items():
        assert room.chain.nodes[f"{KEY}.{name}"].value == length(value, unit), name
    for hand in ("left", "right"):
        end = room.case_of(room.islands[0]).part(f"{KEY}.end_{hand}")
        assert end.finished.width.value == length(WANTED[unit]["body_depth"], unit)
    seats = _worked(_text(unit, seats=True)).room
    assert seats.chain.nodes[f"{KEY}.counter_depth"].value == length(SEATS[unit], unit)


@settings(max_examples=10, deadline=None)
@given(
    unit=st.sampled_from(("in", "mm")),
    wide=st.integers(400, 800),
    deep=st.tuples(st.integers(450, 650), st.integers(400, 600)),
    ply=st.sampled_from(("17.2", "17.8", "18.4")),
    te=st.sampled_from(("18", "19")),
    step=st.sampled_from(("0.1", "0.5", "1")),
    seats=st.booleans(),
)
def test_it_goes_together_in_every_size(
    unit: Unit, wide: int, deep: tuple[int, int], ply: str, te: str, step: str, *, seats: bool
) -> None:
    """Boxes against ends and backs, cleats in their ladders, on every grid."""
    sizes = {"Wb": str(wide), "D1": str(deep[0]), "D2": str(deep[1]), "t": ply, "te": te,
             "tb": "6", "step": step}  # fmt: skip
    if unit == "in":
        sizes = {name: str(Fraction(size) * 5 / 127) for name, size in sizes.items()}
        sizes["step"] = "1/32"
    worked = _worked(_text(unit, seats=seats, **sizes))
    assert not _stops(worked)
    room = worked.room
    case = room.case_of(room.islands[0])
    assert verify(case).failures == ()
    ends = [part for part in case.parts if part.role == "island end"]
    assert {part.placed.y.value for part in ends} == {0}
    assert len([part for part in case.parts if part.role == "floor cleat"]) == (2 if seats else 4)


_FREE = {
    "floor cleat: length": "it lies between the rails with air at both ends",
    "floor cleat: width": "a cleat holds as well where it is higher or lower",
    "floor cleat: placed z": "it lies between the rails with air at both ends",
    "floor cleat: turned over": "a plain strip is the same from either face",
    "floor cleat: turned end for end": "a plain strip is the same from both ends",
    "island back: turned end for end": "a plain panel is the same from both ends",
    "island end: turned end for end": "a plain panel is the same from both ends",
    "floor cleat: thickness": "it lies against its sleeper, however thick",
    "step of floor cleat: from the other side": "nothing stands above the floor yet",
}


def _caught(room: Room, off: Perturbed) -> bool:
    changed = replace(room, cases=tuple(off.case if c.key == KEY else c for c in room.cases))
    proved = prove_island(changed, room.islands[0], grid=GRID)
    return not (proved.holds and not verify(off.case).failures)


def test_whatever_affects_a_fit_is_caught() -> None:
    """Panels and cleats off by 1/16 in, one number at a time; what is not caught has a reason."""
    missed: set[str] = set()
    for seats in (False, True):
        room = _worked(_text(seats=seats)).room
        case = room.case_of(room.islands[0])
        missed |= {off.key for off in perturbations(case) if not _caught(room, off)}
    assert missed == set(_FREE)


def test_rows_of_unlike_length_stop_with_the_difference() -> None:
    """The row behind is an inch longer."""
    worked = _worked(_text(Wb3="31"))
    [told] = [f for f in worked.findings if f.rule == "island rows"]
    assert told.severity is Severity.STOP
    assert 'two is 1" longer than one' in told.says
    assert 'together 1" narrower' in told.remedies[0]


def test_boxes_of_one_row_may_be_of_unlike_depth() -> None:
    """The ends reach past the deepest; each row still fills what is between them."""
    worked = _worked(_text().replace('depth = "23 1/4"', 'depth = "22"', 1))
    assert worked.failures == ()
    assert _stops(worked) == []


def test_a_row_behind_face_frames_stands_against_one_without() -> None:
    """Rounding may take a box a hair past the other row: its side lies on the end panel still."""
    text = _text(t="0.709", step="1/32").replace(
        'depth = "23 1/4"', 'depth = "24"\nface = "face frame"'
    )
    worked = _worked(text)
    assert worked.failures == ()
    assert _stops(worked) == []


def test_screws_in_hand_that_are_too_long_are_to_blame_themselves() -> None:
    """A screw of 3 in comes out of every panel: told with how much shorter, no fault of the model.

    Through a nailer of 23/32 and two backs of 7/32 into a nailer of 23/32 go 1 7/8 at the most.
    """
    worked = _worked(_text(more='[hardware.drawer_screw]\nlength = "3"\n'))
    assert worked.failures == ()
    told = [each for each in worked.findings if each.rule == "proof: fasteners"]
    assert told
    assert all("shorter" in each.remedies[0] and '"' in each.remedies[0] for each in told)


def test_no_wall_holds_it_and_no_wall_screw_is_counted() -> None:
    """It is told what it weighs and what tips it; its boxes are not asked for a wall."""
    worked = _worked(_text(seats=True))
    told = [f for f in worked.findings if f.path == KEY and f.rule == "island stands"]
    assert any("tip it" in f.says for f in told)
    assert any('15" over knees' in f.says for f in told)
    assert "a.wall_screw" not in worked.room.chain.nodes
    assert not [f for f in worked.findings if f.rule == "tip over"]


def test_what_holds_it_is_counted_and_does_not_come_through() -> None:
    """Into ends, from row to row, from ladders into cleats; a sixth of the wood is left."""
    room = _worked(_text()).room
    parts = {part.path: part for part in room.parts}
    for screws in room.islands[0].screws:
        passed = parts[screws.through].finished.thickness.value
        into = parts[screws.into].finished.thickness.value
        thin = room.chain.nodes["stock.thin_plywood.thickness"].value
        # Two thin backs lie between the nailers of two rows.
        more = 2 * thin if parts[screws.into].role == "nailer" else Fraction(0)
        assert passed + more < screws.length.value < passed + into + more
        assert screws.count >= 2


@pytest.mark.parametrize("seats", [False, True])
def test_screws_that_hold_nothing_are_caught(seats: bool) -> None:
    """Every row of them, put through another board, too long or too short: the proof fails."""
    room = _worked(_text(seats=seats)).room
    island, key = room.islands[0], room.islands[0].screws
    off = next(p.path for p in room.parts if p.role == "bottom")
    short, long = (moved(key[0].length, Fraction(by)) for by in (-80, 80))
    for number, screws in enumerate(key):
        for wrong in (replace(screws, through=off), replace(screws, length=short),
                      replace(screws, length=long)):  # fmt: skip
            others = (*key[:number], wrong, *key[number + 1 :])
            changed = replace(island, screws=others)
            assert not prove_island(room, changed, grid=GRID).holds, wrong


_WASHER = (
    "[appliance.washer]\nwidth = 24\nwashes = true\n[appliance.range]\nwidth = 30\ncooks = true\n"
)


def test_appliances_stand_between_the_boxes_of_an_island() -> None:
    """Their openings count in the body: n Wb + Wo + 2 te (`ISLAND`, `APPL_PANEL`)."""
    text = _text(seats=True).replace('"a", "b"', '"a", "washer", "range", "b"') + _WASHER
    room = _worked(text).room
    long = length("61 1/2") + length("24") + length("30")
    assert room.chain.nodes[f"{KEY}.body_length"].value == long
    # Its ladder is parted there: each piece has its own two cleats.
    cleats = [p for p in room.case_of(room.islands[0]).parts if p.role == "floor cleat"]
    assert len(cleats) == 4


def test_an_appliance_at_the_end_of_an_island_is_refused() -> None:
    """An end panel is screwed from a case."""
    [told] = problems(
        _text(seats=True).replace('"a", "b"', '"a", "range", "b", "washer"') + _WASHER
    )
    assert "right end" in str(told)
    assert "nothing holds the end panel" in str(told)


def test_its_ends_rows_and_cleats_are_fits() -> None:
    """What a forecast is told of."""
    fits = _worked(_text()).room.chain.fits
    wanted = {"end_left_fit", "end_right_fit", "length_fit", "height_fit", "cleat_1_fit"}
    assert {f"{KEY}.{name}" for name in wanted} <= set(fits)


@pytest.mark.parametrize(
    ("old", "new", "wrong", "right"),
    [
        ('back = "two"', 'back = "three"', "no run three", "two"),
        ('back = "two"', 'back = "one"', "stands in island main already", "of its own"),
        ("[run.two]", "[run.two]\nwall = 60", "at a wall", "take wall"),
        ('end_sheet = "fibreboard"', 'end_sheet = "board"', "no sheet", ""),
        ('end_sheet = "fibreboard"', 'back_sheet = "plywood"', "has no back", "take"),
        ('toe = "plinth"', 'toe = "notch"', "on ladders", "plinth"),
        ('kind = "base"', 'kind = "wall"', "base cases", "base"),
        ('toe = "plinth"', 'toe = "plinth"\nfinished = "left"', "of its own", "take it out"),
    ],
)
def test_what_cannot_be_is_told_with_what_would_be_right(
    old: str, new: str, wrong: str, right: str
) -> None:
    """The reason, and what would be right."""
    found = problems(_text().replace(old, new, 1))
    assert any(wrong in each.what and right in each.want for each in found)


def test_a_long_finished_back_is_of_pieces_that_meet_at_seams() -> None:
    """Grain upright: a sheet is 48 wide, the boxes are 60 together."""
    room = _worked(_text(seats=True, more='back_sheet = "plywood"\n')).room
    skins = [p for p in room.case_of(room.islands[0]).parts if p.role == "island back"]
    assert [part.finished.width.value for part in skins] == [length("30"), length("30")]


def test_behind_an_appliance_no_edge_of_the_finished_back_hangs_free() -> None:
    """Boxes of 30 beside an opening of 24, sheets 48 wide: a seam 4 in over the box, not at 54.

    A piece that ended at the far side of the opening would stand out 24 in, held by nothing.
    """
    text = _text(seats=True, more='back_sheet = "plywood"\n').replace(
        '"a", "b"', '"a", "washer", "b"'
    )
    room = _worked(text + _WASHER.partition("[appliance.range]")[0]).room
    island = room.islands[0]
    body = room.case_of(island)
    skins = [part for part in body.parts if part.role == "island back"]
    wide = [part.finished.width.value for part in skins]
    assert wide == [length("26"), length("32"), length("26")]
    first = replace(skins[0].finished, width=moved(skins[0].finished.width, length("28")))
    second = replace(skins[1].finished, width=moved(skins[1].finished.width, length("-28")))
    moved_x = replace(skins[1].placed, x=moved(skins[1].placed.x, length("28")))
    changed = {
        skins[0].path: replace(skins[0], finished=first),
        skins[1].path: replace(skins[1], finished=second, placed=moved_x),
    }
    cases = tuple(
        replace(case, parts=tuple(changed.get(part.path, part) for part in case.parts))
        for case in room.cases
    )
    failed = prove_island(replace(room, cases=cases), island, grid=GRID).failures
    assert any("no board behind it" in each.says for each in failed)


def test_one_box_alone_stands_on_a_ladder_of_its_own() -> None:
    """Its cleats go inside that."""
    text = _text(seats=True).replace('cases = ["a", "b"]', 'cases = ["a"]')
    text = text.replace('cases = ["c", "d"]', 'cases = ["b", "c", "d"]')
    room = _worked(text).room
    assert len([p for p in room.case_of(room.islands[0]).parts if p.role == "floor cleat"]) == 2


def test_what_was_built_goes_into_ends_back_and_counter() -> None:
    """A box came out 1/4 in wide: the finished back and the counter follow, nothing is lost."""
    job = loaded(_text(seats=True)).spec
    wide = length("30 1/4")
    made = work_out(job, {"a.width": Fact(Origin("measured", "tape"), built=wide)})
    nodes = made.room.chain.nodes
    assert nodes[f"{KEY}.counter_length"].value == length("64 3/4")
    assert nodes[f"{KEY}.body_length"].value == length("61 3/4")
    assert not [f for f in made.findings if f.rule == "lost reading"]


def test_a_row_built_too_long_stops_before_the_ends_are_put_on() -> None:
    """The row in front a quarter longer than the one behind."""
    job = loaded(_text()).spec
    fact = Fact(Origin("measured", "tape"), built=length("30 1/4"))
    told = [f.says for f in work_out(job, {"a.width": fact}).findings if f.rule == "island rows"]
    assert any('1/4" longer' in says for says in told)
