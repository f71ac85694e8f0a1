"""The desk asks: drawings, numbers, edits that keep the rest of the file as it is."""

from __future__ import annotations

import re
import tomllib
from html import unescape
from pathlib import Path

import pytest
from starlette.testclient import TestClient
from tests.jobs import example

from casewright.job.recorded import as_recorded
from casewright.web.chapters import chapter_html
from casewright.web.drawings import drawing_names, drawn
from casewright.web.guard import MARK
from casewright.web.live_job import LiveJob
from casewright.web.snapshot import Snapshot, Standing

EXAMPLES = Path(__file__).parents[3] / "examples"

RUN = """format = 1
unit = "in"
name = "Small kitchen"

# As wide as they come out.
[case.left]
kind = "base"
[case.right]
kind = "base"

[run.window]
cases = ["left", "right"]
wall = "72 1/4"
"""


@pytest.fixture
def open_run(job: Path) -> None:
    """A job whose cases have no widths yet, before it is served."""
    job.write_text(RUN, "utf-8")


def _digest(desk: TestClient) -> str:
    digest: str = desk.get("/api/job").json()["digest"]
    return digest


def test_a_number_is_changed_where_it_stands(desk: TestClient, job: Path) -> None:
    """One line of the file differs; the rest keeps its comments."""
    before = job.read_text("utf-8")
    case = desk.get("/api/job").json()["cases"][0]["key"]
    new = {"path": f"{case}.width", "value": "30 1/2", "digest": _digest(desk)}
    answer = desk.post("/api/numbers", json=new)
    assert answer.status_code == 200
    after = job.read_text("utf-8")
    differs = [
        (old, now)
        for old, now in zip(before.splitlines(), after.splitlines(), strict=True)
        if old != now
    ]
    assert len(differs) == 1
    assert "30 1/2" in differs[0][1]
    why = desk.get("/api/why", params={"path": f"{case}.width"}).json()["nodes"][0]
    assert why["typed"] == "30 1/2"
    assert desk.post("/api/undo").status_code == 200
    assert job.read_text("utf-8") == before
    assert desk.post("/api/redo").status_code == 200
    assert job.read_text("utf-8") == after


ENDED = """format = 1
unit = "in"
[case.a]
kind = "base"
width = "24"
finished = "right"
[run.r]
cases = ["a"]
"""


@pytest.fixture
def ended(job: Path) -> None:
    """A job with a case that has a finished end, before it is served."""
    job.write_text(ENDED, "utf-8")


@pytest.mark.usefixtures("ended")
def test_a_width_with_its_finished_end_is_changed_where_it_stands(desk: TestClient) -> None:
    """The box becomes narrower by what the panel takes: 30 over all is drawn as 30."""
    node = desk.get("/api/why", params={"path": "a.overall_width"}).json()["nodes"][0]
    assert node["key"] == "case.a.width"
    assert node["typed"] not in ("", "24")
    new = {"path": node["path"], "key": node["key"], "value": "30", "digest": _digest(desk)}
    assert desk.post("/api/numbers", json=new).status_code == 200
    after = desk.get("/api/why", params={"path": "a.overall_width"}).json()["nodes"][0]
    assert after["value"].removeprefix("~") == "30"
    assert after["rests_on"]
    new |= {"value": "wide", "digest": _digest(desk)}
    assert desk.post("/api/numbers", json=new).status_code == 422


@pytest.mark.usefixtures("open_run")
def test_a_case_taken_out_comes_back_with_its_solved_width(desk: TestClient, job: Path) -> None:
    """An accepted answer of the layout holds a width of it; the notes of the file stay."""
    taken = {"number": 1, "digest": _digest(desk)}
    assert desk.post("/api/layouts/run.window", json=taken).status_code == 200
    before = job.read_text("utf-8")
    assert set(tomllib.loads(before)["run"]["window"]["solved"]["widths"]) == {"left", "right"}
    answer = desk.post("/api/cases/left/out", json={"digest": _digest(desk)})
    assert answer.status_code == 200, answer.text
    after = tomllib.loads(job.read_text("utf-8"))
    assert set(after["case"]) == set(after["run"]["window"]["solved"]["widths"]) == {"right"}
    assert desk.post("/api/undo").status_code == 200
    assert job.read_text("utf-8") == before


@pytest.mark.usefixtures("open_run")
def test_an_answer_of_the_layout_never_goes_over_an_edit(desk: TestClient, job: Path) -> None:
    """The file was changed in an editor since the answers were looked at; both are kept apart."""
    digest = _digest(desk)
    assert desk.get("/api/layouts/run.window").json()["answers"]
    theirs = job.read_text("utf-8") + "\n# mine\n"
    job.write_text(theirs, "utf-8")
    answer = desk.post("/api/layouts/run.window", json={"number": 1, "digest": digest})
    assert answer.status_code == 409
    assert "was changed" in answer.json()["what"]
    assert job.read_text("utf-8") == theirs


def test_an_edit_never_goes_over_somebody_elses(desk: TestClient, job: Path) -> None:
    """The file was changed in an editor since the page was drawn."""
    case = desk.get("/api/job").json()["cases"][0]["key"]
    new = {"path": f"{case}.width", "value": "30", "digest": _digest(desk)}
    theirs = job.read_text("utf-8") + "\n# mine\n"
    job.write_text(theirs, "utf-8")
    answer = desk.post("/api/numbers", json=new)
    assert answer.status_code == 409
    assert job.read_text("utf-8") == theirs


def test_a_size_without_meaning_is_told_and_changes_nothing(desk: TestClient, job: Path) -> None:
    """The same words as on the command line."""
    before = job.read_text("utf-8")
    case = desk.get("/api/job").json()["cases"][0]["key"]
    new = {"path": f"{case}.width", "value": "thirty", "digest": _digest(desk)}
    answer = desk.post("/api/numbers", json=new)
    assert answer.status_code == 422
    assert "thirty" in answer.text
    assert job.read_text("utf-8") == before


def test_text_of_the_file_stays_text(desk: TestClient, job: Path) -> None:
    """A name that looks like a script comes back as data."""
    new = {"key": "name", "value": "<script>x</script>", "digest": _digest(desk)}
    assert desk.post("/api/numbers", json=new).status_code == 200
    assert "<script>" in job.read_text("utf-8")
    drawing = desk.get("/api/drawings/overview", params={"version": 2})
    assert "&lt;script&gt;" in drawing.text
    assert "<script" not in drawing.text
    assert drawing.headers["content-type"].startswith("image/svg+xml")


def test_a_page_of_an_earlier_start_is_not_kept_waiting(
    desk: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    """It asks for a version that its server had reached; this one may never come to it."""
    asked: list[int] = []
    wait_for = LiveJob.wait_for

    def noted(live: LiveJob, version: int, seconds: float) -> Standing:
        asked.append(version)
        return wait_for(live, min(version, live.version), seconds)

    monkeypatch.setattr(LiveJob, "wait_for", noted)
    assert desk.get("/api/drawings/overview", params={"version": 10**9}).status_code == 200
    assert asked == [1]


def test_an_entry_sent_twice_is_kept_once(desk: TestClient) -> None:
    """A phone that heard no answer sends again."""
    case = desk.get("/api/job").json()["cases"][0]["key"]
    entry = {"id": "a" * 32, "kind": "note", "words": [case, "door side is proud"]}
    first = desk.post("/api/entries", json=[entry]).json()
    assert [each["became"] for each in first] == ["kept"]
    again = desk.post("/api/entries", json=[entry, {**entry, "id": "b" * 32}]).json()
    assert [each["became"] for each in again] == ["there", "kept"]


def test_an_entry_that_is_hard_to_believe_waits(desk: TestClient) -> None:
    """It is doubted, and kept when it is said to be so."""
    case = desk.get("/api/job").json()["cases"][0]["key"]
    entry = {"id": "c" * 32, "kind": "reading", "words": [f"{case}.width", "12"]}
    (doubted,) = desk.post("/api/entries", json=[entry]).json()
    assert doubted["became"] == "doubted"
    assert doubted["says"]
    (kept,) = desk.post("/api/entries", json=[{**entry, "sure": True}]).json()
    assert kept["became"] == "kept"


def test_a_request_without_meaning_is_no_failure(desk: TestClient) -> None:
    """It is told what is wrong, in one shape."""
    for path, body in (
        ("/api/entries", {"not": "a list"}),
        ("/api/numbers", []),
        ("/api/entries", [{"id": "short", "kind": "note", "words": []}]),
    ):
        answer = desk.post(path, json=body, headers={MARK: "1"})
        assert answer.status_code == 422
        assert answer.json()["what"]


@pytest.fixture
def island(job: Path) -> None:
    """A job with an island, before it is served."""
    job.write_text(example("gallery_islands"), "utf-8")


@pytest.mark.usefixtures("island")
def test_what_belongs_to_an_island_has_a_page(desk: TestClient) -> None:
    """Its body, its plinths, and how it is set: all that the packet tells."""
    cases = desk.get("/api/job").json()["cases"]
    own = [each["key"] for each in cases if each["kind"] in ("island", "plinth")]
    assert {each["kind"] for each in cases} > {"island", "plinth"}
    for key in own:
        answer = desk.get("/api/chapters/cases", params={"of": key})
        assert answer.status_code == 200
        assert "Putting it together" in answer.json()["html"]


@pytest.mark.usefixtures("island")
@pytest.mark.parametrize(("page", "words"), [("fronts", "Hinges"), ("finish", "test piece")])
def test_a_page_for_each_stage_after_the_boxes(desk: TestClient, page: str, words: str) -> None:
    """Doors and drawers; coats with their cautions."""
    assert page in desk.get("/api/job").json()["pages"]
    assert words in desk.get(f"/api/chapters/{page}").json()["html"]


@pytest.mark.parametrize("name", ["gallery_islands", "gallery_frames"])
def test_every_number_that_is_shown_can_say_why(name: str) -> None:
    """On cards of parts and of cases and in drawings: none leads to one that is not there."""
    loaded, recorded, worked = as_recorded(EXAMPLES / f"{name}.toml")
    snapshot, room = Snapshot(1, loaded, recorded, worked), worked.room
    shown = [drawn(room, each) or "" for each in drawing_names(room)]
    for case in room.cases[:5]:
        shown += [chapter_html(snapshot, page, case.key) or "" for page in ("machine", "cases")]
    number = re.compile(r'<(?:data class="measure"|g class="dimension") data-path="([^"]+)"')
    paths = {unescape(path) for each in shown for path in number.findall(each)}
    assert len(paths) > 200
    assert paths - room.chain.nodes.keys() == set()
