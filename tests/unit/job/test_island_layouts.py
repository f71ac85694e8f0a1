"""Islands of a job laid out, and an answer written into its file.

Sources: kitchen planning guidelines (42 in work aisle, 44 in behind seats, 36 in walkway), read in
a secondary copy.
"""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path

import pytest
from tests.builders import INCH
from tests.island_room import island_text
from tests.jobs import problem, read
from tests.unit.cli.test_commands import run

from casewright.job.island_layouts import IslandLayout, accepted_island, island_layouts
from casewright.room.aisle_limits import aisle_limit
from casewright.room.aisles import aisles
from casewright.room.build import build

_OPEN = 'run = "sinks"\noff = [42, 48]\ncentre = "sink"'


def _text(place: str = _OPEN, *, length: str = "[48, 84]", deep: str = "180") -> str:
    """The island's two cases without widths, between two lengths."""
    text = island_text(place=place, island=f"length = {length}\n", deep=deep)
    for key in ("trays", "linen"):
        text = text.replace(f"[case.{key}]\n", f"[case.{key}]\n#")
    return text.replace('#kind = "base"\ntoe = "plinth"\nwidth = "30"',
                        'kind = "base"\ntoe = "plinth"')  # fmt: skip


def _layout(text: str) -> IslandLayout:
    [found] = island_layouts(build(read(text)))
    return found


def test_each_accepted_answer_keeps_its_aisles_in_the_room() -> None:
    """As the room is then built: aisles as asked for, widths and place as told."""
    text = _text()
    found = _layout(text)
    assert found.free == (("trays", "linen"),)
    assert 1 < len(found.answers) <= 5
    for number, answer in enumerate(found.answers, start=1):
        then = accepted_island(text, found, number)
        room = build(read(then))
        [stand] = room.free
        assert stand.side == answer.pose.side
        assert stand.counter[0].value == answer.left * INCH / 16
        assert stand.counter[1].value - stand.counter[0].value <= answer.size[0] * INCH / 16
        node = room.chain.nodes["trays.wanted_width"]
        assert node.value == answer.shares[0] * INCH / 16
        assert node.origin is not None
        assert node.origin.kind == "solved"
        asked = [(each.clear, aisle_limit(room, each)) for each in aisles(room)]
        short = [limit.least - clear for clear, limit in asked if limit is not None]
        assert short
        assert max(short) <= 0
        [again] = island_layouts(room)  # what was accepted stays free for another layout
        assert [a.cost for a in again.answers] == [a.cost for a in found.answers]


def test_an_aisle_that_is_short_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """In a room 25 5/16 + 42 + 41 1/16 + 44 less 2 1/2 deep no place is left."""
    file = tmp_path / "kitchen.toml"
    place = 'run = "sinks"\noff = [42, 48]\nalong = 70\nside = "front"'
    file.write_text(_text(place, length="[62, 66]", deep="149 7/8"))
    assert run("layout", file, "--island", "main") == 1
    told = capsys.readouterr().out
    assert "wished" in told
    assert "short" in told
    assert "less deep" in told
    run("layout", file, "--island", "main", "--json")
    [island] = json.loads(capsys.readouterr().out)["islands"]
    assert not island["answers"]
    assert Fraction(island["conflicts"][0]["short"]["mm"]) > 0


def test_accepting_needs_an_island_and_a_number(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """One that is there; else the file stays as it was."""
    file = tmp_path / "kitchen.toml"
    file.write_text(_text())
    assert run("layout", file, "--island", "mean", "--accept", "1") == 2
    assert run("layout", file, "--island", "main", "--accept", "7") == 2
    assert file.read_text() == _text()
    assert run("layout", file, "--island", "main", "--accept", "1") == 0
    assert "[island.main.solved]" in file.read_text()
    capsys.readouterr()


def test_a_place_that_is_said_leaves_nothing_open() -> None:
    """One distance, one place along, every width."""
    assert not list(island_layouts(build(read(island_text()))))


def test_a_distance_between_two_steps_of_the_grid_is_no_obstacle() -> None:
    """43 1/32 in lies between two sixteenths: the next one up is laid out."""
    found = _layout(_text('run = "sinks"\noff = "43 1/32"\nside = "front"'))
    assert {each.near - found.task.base for each in found.answers} == {43 * 16 + 1}


def test_a_distance_from_the_wall_asks_no_more_of_the_run_before_it() -> None:
    """68 in off the wall 25 5/16 in of run leave 42 11/16: 42 are asked for there."""
    found = _layout(_text('wall = "west"\noff = 68\nside = "front"'))
    assert found.answers
    for answer in found.answers:
        gap, across = answer.gaps()["near"]
        assert across.works
        assert gap >= 42 * 16


@pytest.mark.parametrize(
    ("length", "says"),
    [("[80, 60]", "least comes before"), ("[12, 60]", "too little")],
)
def test_lengths_without_meaning_are_told(length: str, says: str) -> None:
    """Crossed over; less than its cases can be."""
    text = _text(length=length)
    text = (
        text.replace("[case.linen]\n", '[case.linen]\nwidth = "30"\n') if "12" in length else text
    )
    assert says in problem(text).what


def test_solved_widths_of_cases_that_are_elsewhere_are_told() -> None:
    """A case of no row of it; one with a width of its own."""
    more = '[island.main.solved]\noff = 42\nalong = 40\nwidths = {{ {} = "20" }}\n'
    assert "is not in this island" in problem(_text() + more.format("pots")).what
    assert "width of its own" in problem(island_text() + more.format("trays")).what


def test_it_keeps_off_the_leaf_of_a_door_that_opens_into_the_room() -> None:
    """A door of 36 in the wall at the far end: what its leaf sweeps is left free, no aisle more.

    The wall is 180 wide; the door stands 70 to 106 along it, so its leaf reaches 36 out from it.
    """
    door = '[wall.north.fixed.door]\nkind = "door"\nleft = 70\nwidth = 36\nheight = 80\n{}'
    plain = _text() + door.format("")
    for text, swings in ((plain, False), (_text() + door.format('swing = "left"\n'), True)):
        found = _layout(text)
        swept = [each for each in found.task.obstacles if each.swept]
        assert len(swept) == swings
        for answer in found.answers:
            right, far = answer.left + answer.size[0], answer.near + answer.size[1]
            for each in swept:
                assert (right <= each.left or each.right <= answer.left
                        or far <= each.near or each.far <= answer.near)  # fmt: skip


def test_an_appliance_stands_out_as_far_as_it_is_said_to() -> None:
    """Cases of 24 with counters; a washer of 30 comes 30 in out, and leaves the aisle less."""
    deep = _text().replace("washes = true\n", "washes = true\ndepth = 30\n")
    usual, deeper = (
        next(each for each in _layout(text).task.obstacles if each.key == "appliance.washer")
        for text in (_text(), deep)
    )
    out = (deeper.far if deeper.near <= 0 else deeper.right) / 16
    assert out == 30
    assert (usual.far if usual.near <= 0 else usual.right) / 16 < 30
