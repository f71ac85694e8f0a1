"""Glass doors: laps, rebate, pane and its retainers."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from tests.builders import GLASS, Unit, case_spec, house, length, one_case, plain_style
from tests.unit.checks.rooms import room_of

from casewright.buying.panes import films
from casewright.casework.build import build_case
from casewright.casework.cases import Case
from casewright.casework.features import Cut
from casewright.findings import Severity
from casewright.outputs.inlines import rich_text
from casewright.packet.card_words import card_facts
from casewright.packet.part_groups import group_parts


def _door(**style: str) -> Case:
    return one_case("in", width="16 1/2", height="30", front=GLASS, shelves=0,
                    style=plain_style("in", **style))  # fmt: skip


def _cuts(case: Case, name: str, kind: str) -> list[Cut]:
    part = case.part(f"upper.door.{name}")
    return [f for f in part.features if isinstance(f, Cut) and f.kind == kind]


def test_stiles_show_full_length_and_rails_lie_behind() -> None:
    """Stiles are lapped from the back, rails from the front; the two halves make the whole."""
    case = _door()
    stile, rail = _cuts(case, "stile_left", "lap"), _cuts(case, "rail_top", "lap")
    assert {cut.face for cut in stile} == {"B"}
    assert {cut.face for cut in rail} == {"A"}
    assert stile[0].depth.value + rail[0].depth.value == length("3/4")


def test_rebate_takes_pane_and_retainers_and_is_rounded_in_its_corners() -> None:
    """The rebate is as deep as pane and retainers, and keeps the bit's radius in its corners."""
    case = _door()
    for name in ("stile_left", "stile_right", "rail_bottom", "rail_top"):
        (rebate,) = _cuts(case, name, "rebate")
        assert rebate.depth.value == length("1/8") + length("1/8")
        assert rebate.radius is not None
        assert rebate.radius.value == length("5/8")
    pane = case.part("upper.door.pane")
    assert pane.corner_radius is not None
    assert pane.corner_radius.value == length("5/8")


def test_pane_lies_under_its_retainers_with_air_all_round() -> None:
    """The pane touches the rebate's floor, has 1/16 in of air at each edge, and is retained."""
    case = _door()
    seats = [j for j in case.joints if ".seat_" in j.path]
    floor = [j for j in seats if j.form == "face"]
    air = [j for j in seats if j.form == "loose"]
    assert {j.gap.value for j in floor} == {Fraction(0)}
    assert {j.gap.value for j in air} == {length("1/16")}
    held = [f for j in floor for f in j.fastenings]
    assert all(f.kind == "retainer" and f.count >= 2 for f in held)
    assert len(held) == 4


def test_the_step_with_the_pane_warns_of_its_edges() -> None:
    """Gloves and tempered glass or plastic are spoken of where the pane is set."""
    (step,) = [s for s in _door().assembly if s.part == "upper.door.pane"]
    assert step.cautions == ("glass_edges",)


def test_frame_too_thin_for_its_pane_is_stopped() -> None:
    """A rebate that leaves less than 5 mm in front of the pane is a stop."""
    case = _door(retainer="1/2")
    (finding,) = [f for f in case.findings if f.rule == "rebate depth"]
    assert finding.severity is Severity.STOP


def test_wide_bit_is_told_where_the_pane_would_not_reach_its_corner() -> None:
    """Rounded as the largest bits leave it, a pane does not cover the frame's inner corner."""
    [told] = {f.remedies for f in _door(rebate_bit="3").findings if f.rule == "pane corner"}
    bit, wide = (way.split('"')[0].partition(start)[2] for way, start in zip(
        told, ("a rebate bit of ", "rebate_width "), strict=False))  # fmt: skip
    for changes in ({"rebate_bit": bit}, {"rebate_bit": "3", "rebate_width": wide}, {}):
        assert "pane corner" not in [f.rule for f in _door(**changes).findings]
    for size, changes in ((bit, {}), (wide, {"rebate_bit": "3"})):
        by = length("-1/16" if changes else "1/16")
        off = (length(size) + by) / length("1")
        near = changes | {"rebate_width" if changes else "rebate_bit": str(off)}
        assert "pane corner" in [f.rule for f in _door(**near).findings]


def test_cards_tell_which_boards_run_full_length_on_the_show_face() -> None:
    """Stiles, lapped from behind, do; rails, lapped in front, end at them."""
    room = room_of(width="16 1/2", height="30", front=GLASS, shelves=0)
    told = {
        group.first.role: rich_text(card_facts(group, room))
        for group in group_parts(room.parts)
        if group.first.role in ("stile", "rail")
    }
    assert "full length on the show face" in told["stile"]
    assert "On the show face it ends" in told["rail"]


@pytest.mark.parametrize("unit", ["in", "mm"])
def test_film_is_cut_smaller_than_its_panel(unit: Unit) -> None:
    """An eighth (3 mm) at every edge, which lies behind the frame (common practice)."""
    made = house(unit)
    asked: dict[str, Any] = {"front": replace(GLASS, film=True), "shelves": 0}
    case = build_case(made, case_spec(unit, **asked))
    pane = next(part for part in case.parts if part.role == "pane")
    less = 2 * length("1/8" if unit == "in" else "3", unit)
    assert pane.film is not None
    tall, wide = pane.film.length.value, pane.film.width.value
    size = pane.finished
    assert (size.length.value - tall, size.width.value - wide) == (less, less)
    sight = size.width.value - 2 * length("5/16" if unit == "in" else "8.5", unit)
    assert wide > sight
    step = next(step for step in case.assembly if step.part == pane.path)
    assert "Lay the film" in step.words
    assert "film_knife" in step.cautions
    assert ("film cut high", tall) in [(name, dim.value) for name, dim in step.marks]
    assert not [f for f in case.findings if f.rule == "film in sight"]


def test_film_whose_edge_shows_is_told_with_the_margin_that_hides_it() -> None:
    """A rebate of 3/8 less 1/16 of air covers 5/16 of the pane."""
    case = one_case(
        "in", front=replace(GLASS, film=True), shelves=0, style=plain_style(film_margin="3/8")
    )
    [told] = {(f.measured, f.limit) for f in case.findings if f.rule == "film in sight"}
    assert told == ('3/8"', '5/16"')


def test_film_is_bought_by_size_and_none_without_it() -> None:
    """Two panes of a pair are of one size."""
    with_film = room_of(width="33", front=replace(GLASS, film=True), shelves=0)
    [line] = films(with_film)
    assert line.need == 2
    assert "window film" in line.what
    assert not list(films(room_of(width="33", front=GLASS, shelves=0)))
