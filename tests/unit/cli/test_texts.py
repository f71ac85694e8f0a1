"""What the commands print for people."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from tests.jobs import EXAMPLES, FIVE_LINES, HEAD, example

from casewright.breakdown import break_down
from casewright.buying import buy_list
from casewright.cli.commands import load_and_work_out
from casewright.cli.cut_texts import cut_lines
from casewright.cli.main import main
from casewright.cli.printing import folded
from casewright.cutting.engine import Stop
from casewright.findings import Severity
from casewright.job.cut_documents import cut_document
from casewright.job.starter import DEMO_FILE
from casewright.outputs.blocks import Bullets, Callout
from casewright.outputs.document import LETTER
from casewright.outputs.inlines import rich_text
from casewright.packet.cover import cover_section
from casewright.sources import source_words


def shown(capsys: pytest.CaptureFixture[str], *arguments: object) -> list[str]:
    """Lines a command prints."""
    with pytest.raises(SystemExit):
        main([str(argument) for argument in arguments])
    return capsys.readouterr().out.splitlines()


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """An upper with a reading, so that numbers have more than one value."""
    file = tmp_path / "kitchen.toml"
    file.write_text(FIVE_LINES + '[stock.plywood]\nmeasured = "0.703"\n')
    return file


def test_why_reads_like_a_chain(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Formula with short names, then each number with who decided it; branches beside it."""
    lines = shown(capsys, "why", job, "upper.face.leaf_width")
    assert lines[0].startswith("upper.face.leaf_width = (width ")
    assert " - 2 x reveal 1/16 - gap 1/8) / 2 = " in lines[0]
    assert any(
        line.split() == ["reveal", "1/16", "chosen:", "style", '"painted"'] for line in lines
    )
    over = "is over widest_single_door 22"
    assert any("two doors" in line and over in line for line in lines)


def test_why_shows_values_side_by_side(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Designed to the label, built as read."""
    lines = shown(capsys, "why", job, "upper.side_left.thickness")
    assert any("designed 23/32" in line and "built 0.703" in line for line in lines)
    assert any("measured: calliper, kitchen.toml line 7" in line for line in lines)


def test_why_writes_the_unit_of_the_job(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Millimetres in a metric job; a metric hole in an inch job says mm."""
    metric = tmp_path / "a.toml"
    metric.write_text(HEAD.replace('"in"', '"mm"') + '[case.a]\nkind = "wall"\nwidth = 600\n')
    assert shown(capsys, "why", metric, "a.wanted_width")[0].startswith("a.wanted_width = 600 ")
    inch = tmp_path / "b.toml"
    inch.write_text(FIVE_LINES)
    assert "37 mm" in shown(capsys, "why", inch, "style.pin_line")[0]


def test_why_says_what_a_weight_is_in(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A door of 3/4 in fibreboard: kilograms, with pounds in a job in inches; density as usual."""
    lines = shown(capsys, "why", job, "upper.door_left.weight")
    assert re.search(r" = \d+\.?\d* kg \(\d+\.?\d* lb\)$", lines[0])
    assert any("kg/m3" in line for line in lines)


def test_why_lists_what_can_be_asked(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Every path of the job, and each can be asked."""
    paths = shown(capsys, "why", job)
    assert "upper.bottom.length" in paths
    assert "stock.plywood.thickness" in paths
    for path in paths[:: len(paths) // 7]:
        assert shown(capsys, "why", job, path)[0].startswith(path)


def test_parts_stand_in_columns(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """One line a piece under its stock, the sizes under one another."""
    heading, *lines, note = shown(capsys, "parts", job)
    assert note.startswith("* not to be cut yet")
    place = heading.index("length x")
    rows = [line for line in lines if line[0].isdigit()]
    assert len(rows) == 11
    assert all(row[place - 1] == " " and row[place].isdigit() for row in rows)
    stocks = [line.partition(":")[0] for line in lines if line not in rows]
    assert stocks == list(dict.fromkeys(stocks))
    assert "plywood" in stocks


def test_parts_of_a_room_fit_a_terminal(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Eighty columns are what a terminal opens with (common practice)."""
    file = tmp_path / "room.toml"
    file.write_text(example("garden_room"))
    assert max(len(line) for line in shown(capsys, "parts", file)) <= 80


def test_what_is_found_in_several_places_is_said_once(
    capsys: pytest.CaptureFixture[str],
) -> None:
    """On the screen and on the cover, and nothing of it is lost."""
    file = EXAMPLES / DEMO_FILE
    lines = shown(capsys, "check", file)
    worked = load_and_work_out(file)
    blocks = cover_section(
        worked.room, worked.findings, worked.questions, LETTER, sections=9, title=""
    ).blocks
    called = [b for b in blocks if isinstance(b, Callout) and b.sign == "look"]
    (page,) = [block for block in called if block.title.startswith("Narrow rip")]
    listed = blocks[blocks.index(page) + 1]
    rips = [each for each in worked.findings if each.rule == "narrow rip"]
    assert len(rips) > 1
    assert isinstance(listed, Bullets)
    assert len(listed.items) == len({rip.says for rip in rips})
    rules = [block.title.removeprefix("Stop. ").partition(":")[0] for block in called]
    kinds = {(each.rule, each.severity) for each in worked.findings}
    assert len(rules) == len(kinds)  # of one rule and one gravity they stand together
    assert f"  NOTE  narrow rip, {len(rips)} times" in lines
    for remedy in rips[0].remedies:
        assert lines.count(f"        - {remedy}") == 1
        assert rich_text(page.text).count(remedy) == 1
    for words in {source_words(finding.source) for finding in worked.findings}:
        assert f"        source: {words}" in lines
        assert any(f"Source: {words}." in rich_text(block.text) for block in called)
    told = {q.needs for q in worked.questions} | {f.says for f in worked.findings}
    for each in told:
        assert sum(each in line for line in lines) == 1, each


def test_nothing_needs_colour(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Plain text, whatever it is shown on."""
    for command in ("check", "parts", "cut", "why"):
        assert "\x1b" not in "\n".join(shown(capsys, command, job))


def test_a_long_line_is_folded_under_its_first_word() -> None:
    """On a terminal; no word is lost or broken."""
    line = '  CARE  upper.shelf.1: would sag 3/16" under books, the eye sees 5/64"'
    lines = folded(line, 40).splitlines()
    assert max(len(each) for each in lines) <= 40
    assert all(each.startswith(" " * 8) for each in lines[1:])
    assert " ".join(" ".join(lines).split()) == " ".join(line.split())


def test_cut_says_what_it_takes(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Cuts, settings and time of each plan, under the goods."""
    lines = shown(capsys, "cut", job)
    place = lines.index("3/4 in fibreboard")
    assert re.search(
        r"1 sheet .* cuts at \d+ settings? \(.* for these cuts\), about \d+ min", lines[place + 1]
    )


def test_strips_are_milled_not_bought(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Boards are bought; what strips are milled from is named."""
    file = tmp_path / "framed.toml"
    file.write_text(FIVE_LINES + 'front = "applied frame"\n')
    lines = shown(capsys, "cut", file)
    milled = [line for line in lines if line.startswith("MILL")]
    assert milled
    assert all(" from " in line for line in milled)
    assert not any(line.startswith("BUY") and "strip" in line for line in lines)


def test_boards_beyond_the_plan_are_told_as_on_the_buy_list() -> None:
    """A crown out of one length asks for one more: `cut` and the buy list name the same boards."""
    room = load_and_work_out(EXAMPLES / "gallery_trims.toml").room
    breakdown = break_down(room, stop=Stop(1_000))
    [spare] = [
        line.removeprefix("      and ")
        for line in cut_lines(breakdown, room)
        if line.startswith("      and ")
    ]
    [bought] = [
        line for line in buy_list(room, breakdown) if line.aisle == "boards" and line.spare
    ]
    assert spare.startswith(f'{bought.spare} more of 96": for trims a tenth of ')
    assert bought.why.endswith(spare.partition(": ")[2])
    [told] = [each for each in cut_document(room, breakdown)["wanted"] if each["spare"]]
    assert told["spare"] == {"crown 96": bought.spare}


def test_cut_says_what_to_buy_and_what_waits(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Sheets for all parts; those that hang on the unmeasured back wait."""
    lines = shown(capsys, "cut", job)
    assert lines[0] == "BUY   1 sheet of 3/4 in cabinet plywood"
    assert any(
        line.startswith("WAIT") and "stock.thin_plywood.thickness" in line for line in lines
    )


def test_new_writes_a_file_that_can_be_checked(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """In either unit, with a schema beside it when wished."""
    wishes: list[list[object]] = [[], ["--metric"], ["--schema", tmp_path / "s.json"]]
    for number, more in enumerate(wishes):
        file = tmp_path / f"my kitchen {number}.toml"
        shown(capsys, "new", file, *more)
        assert "proved to go together" in shown(capsys, "check", file)[-1]
    assert (tmp_path / "s.json").read_text().startswith("{")


def test_demo_keeps_what_the_person_changed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """The demo is copied once; a changed copy is used, not replaced."""
    out = tmp_path / "demo"
    file = out / DEMO_FILE
    out.mkdir()
    file.write_text(FIVE_LINES)
    lines = shown(capsys, "demo", "--out", out)
    assert file.read_text() == FIVE_LINES
    assert str(out / "packet.pdf") in lines
    assert (out / "packet.pdf").exists()


def test_the_demo_is_a_whole_kitchen_that_nothing_stops() -> None:
    """Three crooked walls, sink, dishwasher, range, hood, refrigerator and a seat; no more than
    questions and cares. It is worked out here alone: what a packet has, smaller examples prove.
    """
    worked = load_and_work_out(EXAMPLES / DEMO_FILE)
    room = worked.room
    assert not worked.failures
    assert not [each for each in worked.findings if each.severity is Severity.STOP]
    assert len(room.survey.walls) == 3
    assert {wall.spread.value > 0 for wall in room.survey.walls.values() if wall.spread} == {True}
    assert {"sink", "pantry", "cold_store", "chest"} <= {case.key for case in room.boxes}
    assert {each.spec.key for run in room.runs for each in run.appliances} == {
        "dishwasher", "range",
    }  # fmt: skip
    things = {each.spec.key for wall in room.survey.walls.values() for each in wall.things}
    assert {"window", "hood", "tap", "socket"} <= things
