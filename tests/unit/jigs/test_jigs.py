"""Jigs of the job's own: each serves every piece it is named for; sizes by hand."""

from __future__ import annotations

from fractions import Fraction
from functools import cache

import pytest
from tests.builders import INCH
from tests.jobs import EXAMPLE_NAMES, example, read

from casewright.casework.features import Bores
from casewright.dims import Chain, Dim
from casewright.drawing.template_strips import pieces_of, template_plots
from casewright.jigs import Jigs, jigs
from casewright.job.reasons import reasons
from casewright.outputs.document import A4, LETTER, Paper
from casewright.room.build import build
from casewright.room.model import Room

BASES = """
format = 1
unit = "in"
[stock.plywood]
measured = "0.720"
[style]
gap = "1/8"
[hardware.pull]
centres = "96 mm"
[case.left]
kind = "base"
width = 30
[case.right]
kind = "base"
width = 30
[case.pans]
kind = "base"
width = 18
rows = ["drawer 6", "drawer", "drawer"]
"""


@cache
def _made(text: str) -> tuple[Room, Jigs]:
    room = build(read(text))
    return room, jigs(room, room.chain)


def _places(room: Room, path: str, kind: str) -> list[tuple[Fraction, Fraction]]:
    part = next(part for part in room.parts if part.path == path)
    bores = [f for f in part.features if isinstance(f, Bores) and f.kind == kind]
    return sorted((a.value, b.value) for f in bores for a, b in f.places)


@pytest.mark.parametrize("name", EXAMPLE_NAMES)
def test_every_hole_of_a_template_is_one_of_every_piece_it_serves(name: str) -> None:
    """Drilled through it, each piece has the holes of its own card, and no others of the sort."""
    room, made = _made(example(name))
    for template in made.templates:
        kind = "pull" if template.path.startswith("jig.pulls") else "hinge plate"
        holes = sorted((hole.along.value, hole.across.value) for hole in template.holes)
        assert len(template.uses) > 1
        for path in template.uses:
            assert _places(room, path, kind) == holes
        for hole in template.holes:
            assert hole.along.value < template.length.value
            assert hole.across.value < template.width.value


def test_four_doors_and_four_sides() -> None:
    """Pulls 2 1/2 from the end and 1 1/4 from the edge, plates 37 mm in from the front."""
    _, made = _made(BASES)
    pulls, plates = made.templates
    assert len(pulls.uses) == 4
    assert [(h.along.value, h.across.value) for h in pulls.holes] == [
        (INCH * 5 / 2, INCH * 5 / 4), (INCH * 5 / 2 + 96, INCH * 5 / 4),
    ]  # fmt: skip
    assert pulls.length.value == INCH * 5 / 2 + 96 + INCH * 3 / 4
    assert len(plates.uses) == 4
    assert {hole.across.value for hole in plates.holes} == {Fraction(37)}
    for middle, (low, high) in zip(
        plates.middles, zip(plates.holes[::2], plates.holes[1::2], strict=True), strict=True
    ):
        assert 2 * middle.value == low.along.value + high.along.value
        assert high.along.value - low.along.value == 32


def test_slides_are_marked_off_one_stick() -> None:
    """Three drawers: three lines that both sides share."""
    room, made = _made(BASES)
    [stick] = made.sticks
    assert stick.uses == ("pans.side_left", "pans.side_right")
    for path in stick.uses:
        rows = {row for row, _ in _places(room, path, "slide")}
        assert [mark.at.value for mark in stick.marks] == sorted(rows)


@pytest.mark.parametrize("name", EXAMPLE_NAMES)
def test_a_square_is_square_and_goes_into_the_smallest_box(name: str) -> None:
    """Euclid I.47 in whole numbers; half of the least width and depth holds it."""
    room, made = _made(example(name))
    for square in made.squares:
        long, short, across = (d.value for d in (square.long, square.short, square.across))
        assert long**2 + short**2 == across**2
        assert long > 0
        assert all(2 * long <= side.value for box in room.boxes for side in (box.width, box.depth))
        grid = INCH / 4 if room.spec.unit == "in" else Fraction(5)
        assert all(not size % grid for size in (long, short, across))


def test_spacers_are_as_thick_as_the_gap() -> None:
    _, made = _made(BASES)
    [spacer] = made.spacers
    assert spacer.thickness.value == INCH / 8


@pytest.mark.parametrize("name", EXAMPLE_NAMES)
def test_every_number_leads_to_an_origin_and_is_entered_once(name: str) -> None:
    """Asked for twice, the jigs are the same."""
    room, first = _made(example(name))
    assert first == jigs(room, room.chain)
    for path, node in room.chain.nodes.items():
        if path.startswith("jig."):
            assert _origins(node, room.chain)


def test_a_jig_can_say_why_it_is_so_long() -> None:
    """Though no packet was made yet: the pull's upper hole and the margin."""
    room = build(read(BASES))
    told = reasons(room, "jig.pulls.length")
    assert "jig_margin" in told[0].formula


def _origins(node: Dim, chain: Chain) -> bool:
    stack, found = [node], False
    while stack:
        each = stack.pop()
        found = found or each.origin is not None
        stack.extend(arg for arg in each.args if isinstance(arg, Dim))
    return found and chain.nodes[node.path] is node


def test_a_room_without_fronts_has_squares_alone() -> None:
    _, made = _made('format = 1\nunit = "in"\n[case.shelf]\nkind = "bookcase"\nwidth = 30\n')
    assert made.has_any
    assert not made.templates
    assert not made.spacers
    assert len(made.squares) == 1


GLAZED = """
format = 1
unit = "in"
[case.a]
kind = "wall"
width = 15
front = "glass frame"
"""


def test_a_corner_template_allows_for_the_guide_bush() -> None:
    """Common practice: a bush holds the bit off by half of what it is wider; the corner, too.

    The rebate bit of 1 1/4 leaves corners of 5/8; a bush of 5/8 with a bit of 1/4 keeps 3/16.
    """
    _, made = _made(GLAZED)
    [template] = made.corners
    assert template.radius.value == INCH * 5 / 8
    assert template.offset is not None
    assert template.offset.value == (INCH * 5 / 8 - INCH / 4) / 2
    assert template.inner.value == INCH * 7 / 16
    assert template.uses == ("a.door.pane",)


@pytest.mark.parametrize(
    "more", ['[shop]\ntools = ["table saw", "drill"]', '[style]\nguide_offset = "3/4"']
)
def test_without_a_router_that_can_round_it_a_corner_is_marked(more: str) -> None:
    """No router, or a bush that keeps the bit farther off than the corner is round."""
    _, made = _made(GLAZED + more)
    [template] = made.corners
    assert template.offset is None
    assert template.inner.value == template.radius.value


@pytest.mark.parametrize("name", EXAMPLE_NAMES)
@pytest.mark.parametrize("paper", [LETTER, A4], ids=["letter", "a4"])
def test_every_template_is_drawn_full_size_with_every_hole_and_a_bar(
    name: str, paper: Paper
) -> None:
    """In pieces where a page is too short: each hole once, whole; no drawing over its page."""
    room, made = _made(example(name))
    unit = room.spec.unit
    area = (paper.text_width_mm, paper.text_height_mm)
    for template in made.templates:
        pieces = pieces_of(template, 180.0, unit)
        for hole in template.holes:
            within = [p for p in pieces if p.low <= hole.along.value - hole.diameter.value
                      and hole.along.value + hole.diameter.value <= p.high]  # fmt: skip
            assert len(within) == 1
        for drawn in template_plots(template, unit, area):
            assert drawn.scale == 1
            assert any(group.tag.key == "check-bar" for group in drawn.groups)
            assert drawn.area.x1 - drawn.area.x0 <= area[0]
            assert drawn.area.y1 - drawn.area.y0 <= area[1]


def test_a_pull_of_128_mm_is_drawn_in_two_pieces_on_letter_paper() -> None:
    """Its holes lie 63.5 and 191.5 up; the second piece begins 7 in (177.8 mm) from the stop."""
    _, made = _made(BASES.replace("96 mm", "128 mm"))
    [pulls] = [each for each in made.templates if each.path == "jig.pulls"]
    first, second = pieces_of(pulls, 180.0, "in")
    assert (first.low, second.low, second.high) == (Fraction(0), 7 * INCH, pulls.length.value)
