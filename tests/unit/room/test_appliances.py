"""An appliance between the cases of a run; by hand."""

from __future__ import annotations

import pytest
from tests.builders import INCH
from tests.jobs import problems, read

from casewright.dims import measure_of
from casewright.drawing.notes import Text
from casewright.drawing.run_elevation import run_scene
from casewright.drawing.shapes import Polyline
from casewright.room.build import build
from casewright.room.proof import prove_run

KITCHEN = """\
format = 1
unit = "in"
[stock.plywood]
measured = "23/32"
[case.pots]
kind = "base"
toe = "plinth"
[case.sink]
kind = "base"
width = 36
toe = "plinth"
[case.bins]
kind = "base"
toe = "plinth"
[appliance.dishwasher]
{width}
[run.below]
cases = ["pots", "sink", "dishwasher", "bins"]
wall = ["140 1/4", "140 3/8"]
"""
GIVEN = KITCHEN.format(width="width = 24")


def test_the_appliance_takes_its_room_and_the_run_closes() -> None:
    """140 1/4 less two fillers of 1 1/2, a sink of 36 and an opening of 24: two of 38 5/8."""
    room = build(read(GIVEN))
    pots, sink, bins = room.cases[:3]
    assert pots.width.value == bins.width.value == INCH * 309 / 8
    [below] = room.runs
    [dishwasher] = below.appliances
    assert dishwasher.width.value == 24 * INCH
    assert dishwasher.start.value == below.starts[1].value + sink.width.value
    assert below.starts[2].value == dishwasher.start.value + 24 * INCH
    assert below.length.value == INCH * 561 / 4
    assert prove_run(below, spacing=24 * INCH, grid=INCH / 32).holds


def test_what_stands_beside_an_opening_is_no_neighbour_of_what_stands_beyond() -> None:
    """No ladder goes on under the dishwasher to the bins."""
    room = build(read(GIVEN))
    [below] = room.runs
    assert [(a.key, b.key) for a, b in below.neighbours] == [("pots", "sink")]
    assert [plinth.carries for plinth in below.plinths] == [("pots", "sink")]


def test_its_width_is_asked_for_and_what_it_sizes_waits() -> None:
    """Until its own sheet is at hand; the sink has a width of its own and does not wait."""
    path = "appliance.dishwasher.width"
    assert path not in {question.path for question in build(read(GIVEN)).questions}
    room = build(read(KITCHEN.format(width="")))
    [asked] = [question for question in room.questions if question.path == path]
    assert "pots.bottom" in asked.waiting
    assert "bins.bottom" in asked.waiting
    assert "sink.bottom" not in asked.waiting


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('"dishwasher", "bins"]', '"bins", "dishwasher"]', "nothing holds a filler"),
        ('"dishwasher", "bins"]', '"bins"]', "appliance dishwasher stands in no run"),
        ("[appliance.dishwasher]", "[appliance.pots]", "a case is called pots as well"),
        ('"pots", "sink", "dishwasher", "bins"]', '"dishwasher"]\nright = "open"\nleft = "open"',
         "the run has appliances and no case"),
        ("width = 24", "width = 200", "200"),
        ("width = 24", "wide = 24", "wide"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_told_at_its_line(old: str, new: str, says: str) -> None:
    told = problems(GIVEN.replace(old, new))
    assert any(says in f"{each.location.word} {each.what}" for each in told), told


def test_it_is_drawn_in_its_place_and_leads_to_no_page() -> None:
    """An outline with its name, its seams and its width; it has no card of its own."""
    room = build(read(GIVEN))
    scene = run_scene(room.runs[0], room.spec.unit, measure_of(room.wall_bottom, "in"))
    drawn = [each for each in scene.elements if isinstance(each, Text | Polyline)]
    own = [each for each in drawn if each.tag.path == "appliance.dishwasher.width"]
    assert any(isinstance(each, Text) and each.content == "dishwasher" for each in own)
    assert not any(each.tag.target for each in own)


SKINNED = GIVEN + "toe_skin = true\n"


def test_a_toe_skin_ends_beside_an_appliance_and_goes_on_beyond_it() -> None:
    """Pots and sink, then the bins: two skins, each asked for by itself, both as they are read."""
    room = build(read(SKINNED))
    [below] = room.runs
    skins = [trim for trim in below.trims if trim.kind == "toe skin"]
    assert [trim.title for trim in skins] == ["toe skin 1", "toe skin 2"]
    assert prove_run(below, spacing=24 * INCH, grid=INCH / 32).holds
    edge = below.appliances[0].start.value
    assert skins[0].start is not None
    assert skins[1].start is not None
    assert skins[0].start.value + skins[0].open_lengths[0].value == edge
    assert skins[1].start.value == edge + 24 * INCH
    asked = [q for q in room.questions if ".toe_skin" in q.path]
    assert [q.path for q in asked] == ["run.below.toe_skin.along", "run.below.toe_skin_2.along"]
    assert all('write as_built = ["...", "..."], from the left' in q.how for q in asked)
    both = SKINNED.replace("toe_skin = true", 'toe_skin = { as_built = ["76 1/8", "40 1/8"] }')
    done = build(read(both))
    found = [trim for trim in done.runs[0].trims if trim.kind == "toe skin"]
    assert [trim.open_lengths[0].value / INCH for trim in found] == [76.125, 40.125]
    assert not [q for q in done.questions if ".toe_skin" in q.path]


def test_one_length_for_two_stretches_is_refused() -> None:
    told = problems(SKINNED.replace("toe_skin = true", 'toe_skin = { as_built = "76 1/8" }'))
    assert any("2 stretches between appliances, 1 are read" in each.what for each in told)
