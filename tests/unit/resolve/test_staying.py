"""Pieces that can be cut as they were planned: against every choice tried, and by hand."""

from __future__ import annotations

from fractions import Fraction
from itertools import combinations

import pytest
from tests.jobs import read

from casewright.casework.verification import verify
from casewright.dims import Origin
from casewright.facts import Fact, Facts
from casewright.resolve import propose, stay
from casewright.room.build import build
from casewright.room.model import Room

_BASE = """
format = 1
unit = "in"
[stock.plywood]
measured = "0.720"
[case.sink]
kind = "base"
width = "24"
shelves = 0
"""
_PLAIN = build(read(_BASE))


def _thinner(off: Fraction) -> Room:
    path = "stock.plywood.thickness"
    reading = Fact(Origin("measured", "calliper"), built=_PLAIN.chain.nodes[path].value + off)
    return build(read(_BASE), {path: reading})


def _with(room: Room, paths: tuple[str, ...]) -> Room:
    """Pieces of a room frozen at the size of the plain one."""
    planned = {part.path: part.blank for part in _PLAIN.parts}
    facts: dict[str, Fact] = {}
    for path in paths:
        for dim in (planned[path].length, planned[path].width):
            facts[dim.path] = Fact(Origin("made", "tried"), cut=dim.value)
    known: Facts = {k: f for k, f in room.chain.facts.items() if isinstance(f, Fact)}
    return build(read(_BASE), {**known, **facts})


def _holds(room: Room) -> bool:
    fits = all(fit.holds for fit in room.chain.fits.values())
    grid = room.spec.style["cut_step"].value
    return fits and not any(
        failure.amount > Fraction(1, 2)
        for case in room.cases
        for failure in verify(case, hardware=room.spec.hardware, grid=grid).failures
        if failure.check != "size"
    )


@pytest.mark.parametrize("off", [Fraction(-3, 10), Fraction(-1), Fraction(1, 2)])
def test_no_choice_changes_fewer_pieces(off: Fraction) -> None:
    """Every set of pieces frozen as planned, largest first, until all fits and joints hold."""
    after = _thinner(off)
    loose = [part.path for part in after.parts if part.stock != "thin_plywood"]
    loose = [path for path in loose if "side" not in path]
    fewest = next(
        size
        for size in range(len(loose) + 1)
        if any(
            _holds(_with(after, tuple(path for path in loose if path not in follow)))
            for follow in combinations(loose, size)
        )
    )
    found = stay(_PLAIN, after)
    assert found.changed == fewest
    assert _holds(_with(after, tuple(each.part.path for each in found.kept)))


def test_a_sheet_a_hair_thinner_leaves_every_piece_as_planned() -> None:
    """The box comes out 0.6 mm narrower, which its width may stray by; by hand."""
    found = stay(_PLAIN, _thinner(Fraction(-3, 10)))
    assert found.changed == 0
    assert found.is_fewest
    assert "sink.bottom" in {each.part.path for each in found.kept}


def test_what_is_kept_is_no_change_any_more() -> None:
    """The frozen sizes are those planned, so nothing is told of them."""
    after = _thinner(Fraction(-3, 10))
    found = stay(_PLAIN, after)
    facts = {k: f for k, f in after.chain.facts.items() if isinstance(f, Fact)}
    told = propose(_PLAIN, build(read(_BASE), {**facts, **found.facts}))
    assert not [change for change in told.changes if change.difference.old]
