"""Dadoes and grooves as fits: what is foretold of them, and what is found once they are cut.

Common practice: a dado is cut 0.005 in wider than the thickness read.
"""

from __future__ import annotations

import pytest
from tests.builders import Unit, length
from tests.jobs import example, read

from casewright.checks import check
from casewright.dims import Origin
from casewright.facts import NO_FACTS, Fact, Facts
from casewright.findings import Finding
from casewright.room.build import build
from casewright.room.model import Room

_SIZES: dict[Unit, str] = {"in": "width = 30\nheight = 60", "mm": "width = 750\nheight = 1500"}
_CALLIPER = Origin("measured", "calliper")


def _room(unit: Unit, more: str = "", facts: Facts = NO_FACTS) -> Room:
    """A bookcase with dadoes for its shelves and grooves for its back."""
    case = f'[case.books]\nkind = "bookcase"\njoint = "dado"\nback = "grooved"\n{_SIZES[unit]}'
    return build(read(f'format = 1\nunit = "{unit}"\n{case}\nshelves = 2\n{more}'), facts)


def _told(room: Room) -> list[Finding]:
    return [finding for finding in check(room) if finding.path.endswith("board_play_fit")]


@pytest.mark.parametrize(("unit", "clearance"), [("in", "0.005"), ("mm", "0.1")])
def test_every_dado_and_groove_is_a_fit_with_a_forecast(unit: Unit, clearance: str) -> None:
    """By the usual clearance boards go in; with none half of them would not, and it is said."""
    room = _room(unit)
    cuts = [f.path for part in room.parts for f in part.features if f.kind in ("dado", "groove")]
    fits = {path: fit for path, fit in room.chain.fits.items() if path.endswith("board_play_fit")}
    assert set(fits) == {f"{path}.board_play_fit" for path in cuts}
    assert {fit.gap.value for fit in fits.values()} == {length(clearance, unit)}
    assert not _told(room)
    told = _told(_room(unit, "[style]\ndado_clearance = 0"))
    [finding] = told
    assert (finding.rule, finding.measured) == ("fit forecast", "5 in 10")
    assert f"and {len(cuts) - 1} more like it" in finding.says


def test_a_drawer_keeps_the_same_clearance() -> None:
    """Dadoes for its back and grooves for its bottom, in the gallery of drawers."""
    room = build(read(example("gallery")))
    cuts = {
        feature.path
        for part in room.parts
        for feature in part.features
        if feature.kind in ("dado", "groove") and ".drawer" in feature.path
    }
    assert any("dado_back" in path for path in cuts)
    assert {f"{path}.board_play_fit" for path in cuts} <= set(room.chain.fits)
    assert not _told(room)


@pytest.mark.parametrize(
    ("play", "rules"),
    [("0", ["fit forecast"]), ("1/64", []), ("-0.003", ["fit band"]), ("1/32", ["fit band"])],
)
def test_a_dado_as_cut_is_held_against_its_board(play: str, rules: list[str]) -> None:
    """0.003 in too narrow a board does not go in; 1/32 in too wide it is loose; at 0 who knows."""
    path = "books.side_left.dado_bottom"
    board = _room("in").chain.nodes["books.bottom.thickness"].value
    built = board + (-length(play[1:]) if play[0] == "-" else length(play))
    told = _told(_room("in", facts={f"{path}.width": Fact(_CALLIPER, built=built)}))
    assert [finding.rule for finding in told] == rules
    assert all(finding.path == f"{path}.board_play_fit" for finding in told)
