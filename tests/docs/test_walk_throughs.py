"""The pages that walk through an example, run as a reader would type it."""

from __future__ import annotations

import doctest
import json
import re
import shlex
from collections.abc import Iterator
from pathlib import Path

import pytest

from casewright.cli import progress
from casewright.cli.main import main

DOCS = Path(__file__).parents[2] / "docs"
BLOCK = re.compile(r"^```(?P<kind>\w+) ?(?P<name>[\w.-]*)\n(?P<body>.*?)^```$", re.M | re.S)


def _steps(page: str) -> Iterator[tuple[str, str, str]]:
    for match in BLOCK.finditer((DOCS / page).read_text("utf-8")):
        yield match["kind"], match["name"], match["body"]


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder to work in; what is slow here may be fast there, so no progress is told."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(progress, "_PATIENCE_S", 3600.0)
    return tmp_path


def follow(page: str, folder: Path, capsys: pytest.CaptureFixture[str]) -> int:
    """Files are typed, commands run, and every line printed is the line on the page.

    Returns
    -------
    How many commands there were.
    """
    checker = doctest.OutputChecker()
    commands = 0
    for kind, name, body in _steps(page):
        if name:
            (folder / name).write_text(body, "utf-8")
            continue
        if kind == "sh":
            continue
        first, _, wanted = body.partition("\n")
        program, *arguments = shlex.split(first.removeprefix("$ "))
        assert (kind, program) == ("console", "casewright")
        with pytest.raises(SystemExit) as left:
            main(arguments)
        assert left.value.code in (None, 0, 1, 2)
        shown = "".join(capsys.readouterr())
        options = doctest.ELLIPSIS | doctest.DONT_ACCEPT_BLANKLINE
        assert checker.check_output(wanted, shown, options), f"{first}\n{shown}"
        commands += 1
    return commands


def test_the_first_cabinet(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """From five lines to the packet."""
    assert follow("first-cabinet.md", shop, capsys) >= 8
    assert (shop / "out" / "linen" / "packet.pdf").read_bytes().startswith(b"%PDF")


def test_a_face_frame(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A base with a frame: what it asks nothing for, and where its numbers come from."""
    assert follow("frames.md", shop, capsys) == 3


def test_cutting_alone(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The example, its plan as JSON, and the names of all that stands in it."""
    assert follow("cutting.md", shop, capsys) == 2
    with pytest.raises(SystemExit):
        main(["cut", "--problem", "shelves.json", "--json"])
    document = json.loads(capsys.readouterr().out)
    page = (DOCS / "cutting.md").read_text("utf-8")
    assert not [key for key in document if key not in ("schema", "job") and f"`{key}`" not in page]


def test_the_record(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Readings and cuts, and what follows; commands that name an entry are not run."""
    assert follow("record.md", shop, capsys) >= 8
    assert (shop / "linen.record").exists()


def test_measuring_the_room(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Two figures swapped are found, and the form is written beside."""
    assert follow("survey.md", shop, capsys) == 1
    assert (shop / "out" / "corner" / "survey.pdf").read_bytes().startswith(b"%PDF")


def test_the_day_of_hanging(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A case with one stud behind it is told, a bite and a shim are explained."""
    assert follow("hanging.md", shop, capsys) == 3


def test_something_comes_out_otherwise(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Thinner sheets, a spoiled back, and one that is too wide."""
    assert follow("resolve.md", shop, capsys) >= 10


def test_a_window_seat(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The height of its box follows from the cushion and the lid."""
    assert follow("ends-and-seats.md", shop, capsys) == 1


def test_filling_a_wall(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """An answer is accepted, and what it gave is there for the run above."""
    assert follow("layout.md", shop, capsys) == 11
    assert "[run.below.solved]" in (shop / "kitchen.toml").read_text("utf-8")


def test_what_is_fitted_at_last(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A crown: heights under it, what is asked, a reading, and what follows."""
    assert follow("trims.md", shop, capsys) == 4


def test_measuring_before_the_next_cut(shop: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A forecast, a hold point passed by its reading, and a blade that is lowered."""
    assert follow("slack.md", shop, capsys) >= 7
    assert (shop / "kitchen.record").exists()
