"""Doors against what is beside them, and panes against their thickness: at the limits."""

from __future__ import annotations

from dataclasses import replace

import pytest
from tests.builders import SLAB, given, length
from tests.unit.checks.rooms import beside_wall, found_in, room_of, side_by_side, with_pane

from casewright.dims import Origin
from casewright.facts import Fact
from casewright.findings import Severity
from casewright.room.build import build


@pytest.mark.parametrize(
    ("between", "swing", "limit"),
    [
        ("1/16", "1.5", None),  # 3.175 mm between two doors that stand out 3 mm
        ("1/16", "1.6", "3.2 mm"),
        ("1/8", "3.1", None),
        ("1/8", "3.2", "6.4 mm"),
        ("1/32", "0.5", None),
        ("1/64", "0", '1/16"'),
    ],
)
def test_doors_hinged_at_one_seam(between: str, swing: str, limit: str | None) -> None:
    """Twice the reveal lies between them, and twice the hinge's stand-off must pass."""
    found = found_in("door beside front", side_by_side(between=between, swing=swing))
    assert [finding.limit for finding in found] == ([limit] if limit else [])


@pytest.mark.parametrize(("gap", "told"), [("1/8", 0), ("1/16", 0), ("1/32", 1), ("0", 1)])
def test_a_pair_needs_air_between_its_leaves(gap: str, told: int) -> None:
    """Common practice: never under 1/16 in. In this width the leaves lie on the cutting grid."""
    room = room_of(width="33 1/32", front=SLAB, overrides={"gap": given(gap)})
    assert len(found_in("door beside front", room)) == told


def test_leaves_that_were_cut_too_wide_are_told_once() -> None:
    """Each 1/8 in over: where 1/8 in of gap was wanted they lap by that; the fit tells it."""
    room = room_of(width="33 1/32", front=SLAB)
    tape = Origin("measured", "tape")
    facts = {
        part.path + ".width": Fact(tape, cut=part.finished.width.value + length("1/8"))
        for part in room.parts if part.role == "door"
    }  # fmt: skip
    wide = build(room.spec, facts)
    [told] = [each for each in found_in("fit band", wide) if "gap_1" in each.path]
    assert told.severity is Severity.STOP
    assert not found_in("door beside front", wide)


@pytest.mark.parametrize(("stand_off", "told"), [("0", 0), ("1.5", 0), ("8", 1)])
def test_the_open_leaf_counts_beside_a_wall(stand_off: str, told: int) -> None:
    """A pull of 30 mm, 1/8 in of air, a reveal of 1/16: a filler of 1 1/2 in leaves 6.5 mm."""
    room = beside_wall("34 1/2")
    hinge = replace(room.spec.hardware.hinge, stand_off=given(stand_off, "mm"))
    changed = build(replace(room.spec, hardware=replace(room.spec.hardware, hinge=hinge)))
    assert len(found_in("door beside wall", changed)) == told


@pytest.mark.parametrize(
    ("width", "height", "glazing", "thick", "severity"),
    [
        ("18", "40", "glass", "1/8", None),
        ("26", "50", "glass", "1/8", Severity.CARE),
        ("26", "50", "glass", "3/16", None),
        ("14", "20", "glass", "3/32", Severity.STOP),
        ("18", "40", "acrylic", "1/8", None),
        ("26", "40", "acrylic", "1/8", Severity.CARE),
        ("26", "40", "acrylic", "3/16", None),
    ],
)
def test_a_pane_by_its_thickness(
    width: str, height: str, glazing: str, thick: str, severity: Severity | None
) -> None:
    """Common practice: 1/8 for small doors, 3/16 for larger ones, nothing thinner."""
    found = found_in("pane size", with_pane(width, height, glazing, thick=thick))
    assert [finding.severity for finding in found] == ([severity] if severity else [])
