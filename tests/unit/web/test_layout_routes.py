"""Answers of the layout at the desk: a run, an island, the heights; looked at, one taken."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest
from starlette.testclient import TestClient

ROOM = """format = 1
unit = "in"
name = "Room with an island"

[wall.north]
width = "150 1/4"
stations = [
    { along = 0, down = "40 1/4", up = "56 1/8" },
    { along = 140, down = 40, up = 56 },
]
[wall.east]
width = "172 1/2"
[wall.south]
width = 150
[corner.one]
walls = ["north", "east"]
[corner.two]
walls = ["east", "south"]

[case.sink]
kind = "base"
width = 36
[case.pots]
kind = "base"   # as wide as comes out
[run.below]
cases = ["pots", "sink"]
on = "north"
before = "passage"
[wall.north.fixed.passage]
kind = "door"
left = 70
width = 36

[case.plates]
kind = "wall"
width = 30
[run.above]
cases = ["plates"]
on = "north"
left = "open"
right = "open"

[case.trays]
kind = "base"
toe = "plinth"
[case.linen]
kind = "base"
toe = "plinth"
[run.cooks_side]
cases = ["trays", "linen"]
[island.middle]
front = "cooks_side"
length = [48, 84]
[island.middle.place]
run = "below"
off = [42, 48]
centre = "sink"
"""


@pytest.fixture(autouse=True)
def _room(job: Path) -> None:
    job.write_text(ROOM, "utf-8")


@pytest.mark.parametrize(
    ("of", "section", "names"),
    [
        ("run.below", ("run", "below", "solved"), {"widths"}),
        ("island.middle", ("island", "middle", "solved"), {"off", "along", "side", "widths"}),
        ("heights", ("heights",), {"wall_bottom", "wall_height"}),
    ],
)
def test_an_answer_is_drawn_and_taken(
    desk: TestClient, job: Path, of: str, section: tuple[str, ...], names: set[str]
) -> None:
    """Its numbers get a section of their own; all other lines stay, and it can be undone."""
    view = desk.get("/api/job").json()
    assert [each["is_open"] for each in view["islands"]] == [True]
    assert view["has_heights"]
    found = desk.get(f"/api/layouts/{of}").json()
    assert not found["hindrances"]
    for answer in found["answers"]:
        assert answer["sizes"]
        assert answer["drawing"].startswith("<svg")
        assert not answer["taken"]
    taken = {"number": 1, "digest": view["digest"]}
    assert desk.post(f"/api/layouts/{of}", json=taken).status_code == 200
    text = job.read_text("utf-8")
    table = tomllib.loads(text)
    for key in section:
        table = table[key]
    assert set(table) >= names | {"because"}
    assert set(ROOM.splitlines()) <= set(text.splitlines())
    again = desk.get(f"/api/layouts/{of}").json()
    assert [each["taken"] for each in again["answers"]].count(True) == 1
    assert desk.post("/api/undo").status_code == 200
    assert job.read_text("utf-8") == ROOM


@pytest.mark.parametrize("of", ["run.above", "run.nothing", "island.nothing", "", "heights.more"])
def test_what_has_no_answers_says_so(desk: TestClient, of: str) -> None:
    """In words, and with nothing written."""
    answer = desk.get(f"/api/layouts/{of}")
    assert answer.status_code == 404
    assert answer.json()["what"]


def test_what_stands_against_an_island_comes_with_what_would_help(
    desk: TestClient, job: Path
) -> None:
    """An aisle that the room does not have, written by an editor a moment ago."""
    assert desk.get("/api/layouts/island.middle").json()["answers"]
    job.write_text(ROOM.replace("off = [42, 48]", "off = [120, 130]"), "utf-8")
    found = desk.get("/api/layouts/island.middle").json()
    assert found["answers"] == []
    assert any("short" in each["what"][-1] for each in found["hindrances"])
    assert all(each["reliefs"] for each in found["hindrances"])
    told = [
        part for each in found["hindrances"] for part in each["what"] if isinstance(part, dict)
    ]
    for length in told:
        [first, *_] = desk.get("/api/why", params={"path": length["path"]}).json()["nodes"]
        assert first["value"] == length["text"]


@pytest.mark.parametrize("of", ["run.below", "island.middle", "heights"])
def test_each_number_of_an_answer_says_why(desk: TestClient, of: str) -> None:
    """Those of its sentences as they are told, those of its drawing as they would be then."""
    for answer in desk.get(f"/api/layouts/{of}").json()["answers"]:
        told = [part for words in (*answer["sizes"], *answer["trade"]) for part in words]
        for length in (part for part in told if isinstance(part, dict)):
            [first, *rest] = desk.get("/api/why", params={"path": length["path"]}).json()["nodes"]
            assert first["value"] == length["text"]
            assert rest or first["origin"]
        drawn = set(re.findall(r'class="dimension[^"]*" data-path="([^"]+)"', answer["drawing"]))
        assert drawn
        for path in drawn:
            asked = desk.get(f"/api/layouts/{of}/{answer['number']}/why", params={"path": path})
            nodes = asked.json()["nodes"]
            assert nodes[0]["path"] == path
            assert not any(node["key"] for node in nodes)  # the file does not say it yet


def test_a_width_that_would_be_rests_on_its_answer(desk: TestClient) -> None:
    """As if it were taken: solved, in a line of the file as it would be; nothing was written."""
    path = {"path": "pots.wanted_width"}
    answer = desk.get("/api/layouts/run.below").json()["answers"][0]
    [now] = [node for node in desk.get("/api/why", params=path).json()["nodes"]
             if node["path"] == "pots.wanted_width"]  # fmt: skip
    [then] = desk.get("/api/layouts/run.below/1/why", params=path).json()["nodes"]
    assert not now["origin"].startswith("solved")
    assert then["origin"].startswith("solved: ")
    assert ["pots ", then["value"]] == [
        part if isinstance(part, str) else part["text"] for part in answer["sizes"][0]
    ]


def test_an_answer_that_is_not_there_has_no_numbers(desk: TestClient) -> None:
    """Neither the ninth of a run, nor the first of what has none."""
    for of, number in (("run.below", 9), ("run.above", 1), ("run.below", 0)):
        asked = desk.get(f"/api/layouts/{of}/{number}/why", params={"path": "sink.width"})
        assert asked.status_code in (404, 422)
        assert asked.json()["what"]
