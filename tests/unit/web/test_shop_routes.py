"""The shop asks: cards of every station, what the record says, entries that are kept once each."""

from __future__ import annotations

import json
import re
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any, cast

import pytest
from fastapi import FastAPI
from starlette.testclient import TestClient
from tests.unit.web.conftest import HERE, PAGE

from casewright.job.packets import plan_purchases
from casewright.job.recorded import AsRecorded, as_recorded, read_entries
from casewright.job.starter import starter_text
from casewright.web.application import application
from casewright.web.guard import MARK
from casewright.web.live_job import LiveJob
from casewright.web.planner import Found, plan_begun
from casewright.web.site import Site
from casewright.web.snapshot import Snapshot

Json = dict[str, Any]


class PlansOnce:
    """Plans the cuts of the first version here and now, instead of in a process of its own."""

    def __init__(self, found: Callable[[int, Found], None]) -> None:
        self._found, self._done = found, False

    def ask(self, snapshot: Snapshot, *, begun: bool) -> None:
        """Plan it, once."""
        if not self._done:
            self._done = True
            if begun:
                plan = plan_begun(snapshot.loaded, snapshot.recorded)
                self._found(snapshot.version, Found(begun=plan))
            self._found(snapshot.version, Found(plan_purchases(snapshot.worked)))

    def stop(self) -> None:
        """Nothing is under way."""


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[TestClient, Path]]:
    """One job for all tests here, its thickness read, its cuts planned."""
    path = tmp_path_factory.mktemp("shop") / "kitchen.toml"
    path.write_text(read_job(path.name), "utf-8")
    with started(path) as client:
        yield client, path


def read_job(name: str) -> str:
    """The short job file, its thicknesses read."""
    stock = "".join(
        f'\n[stock.{key}]\nmeasured = "{size}"\n'
        for key, size in (("plywood", "0.72"), ("thin_plywood", "0.2"), ("fibreboard", "0.75"))
    )
    return f"{starter_text(name, 'in')}{stock}"


@contextmanager
def started(path: Path) -> Iterator[TestClient]:
    """A server of a job whose cuts are planned."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("casewright.web.live_job.Planner", PlansOnce)
        app = application(path, PAGE)
    with TestClient(app, "http://127.0.0.1:8417", client=HERE, headers={MARK: "1"}) as client:
        deadline = time.monotonic() + 600
        while client.get("/api/shop").json()["planned"] != "there":
            assert time.monotonic() < deadline
            time.sleep(0.1)
        yield client


@pytest.fixture
def shop(shared: tuple[TestClient, Path]) -> TestClient:
    """A phone in the shop."""
    return shared[0]


def entry(number: int, kind: str, *words: str, **more: object) -> Json:
    """An entry as a page sends it."""
    return {"id": f"{number:032x}", "kind": kind, "words": list(words), **more}


def sent(shop: TestClient, *entries: Json) -> list[str]:
    """What became of entries."""
    answer = shop.post("/api/entries", json=list(entries))
    assert answer.status_code == 200, answer.text
    return [each["became"] for each in answer.json()]


def text(line: list[Any]) -> str:
    """A line in plain words."""
    return "".join(bit if isinstance(bit, str) else bit["text"] for bit in line)


def test_the_stations_come_in_the_order_of_work(shop: TestClient) -> None:
    """Those that exist for this job; a card asked for again is not sent again."""
    book = shop.get("/api/shop").json()
    keys = [station["key"] for station in book["stations"]]
    assert keys == [key for key in ("holds", "saw", "machine", "assemble", "finish", "hang")
                    if key in keys]  # fmt: skip
    assert {"saw", "machine", "assemble", "finish", "hang"} <= set(keys)
    assert shop.get("/api/shop", params={"have": book["stamp"]}).status_code == 204


def test_every_part_is_cut_at_one_setting(shop: TestClient) -> None:
    """No piece is forgotten at the saw, none is cut twice."""
    book = shop.get("/api/shop").json()
    cut = [
        path
        for card in book["cards"] if card["station"] == "saw"
        for row in card["rows"]
        for tick in row["ticks"]
        for path in tick["parts"]
    ]  # fmt: skip
    assert sorted(cut) == sorted(part["path"] for part in book["parts"])


def test_every_drawing_that_a_card_names_is_there(shop: TestClient) -> None:
    """And what it says is for those who cannot see it."""
    book = shop.get("/api/shop").json()
    figures = [figure for each in (*book["cards"], *book["parts"]) for figure in each["figures"]]
    names = [name for figure in figures for name in (figure["name"], figure["key"]) if name]
    by_kind = {name.partition(".")[0]: name for name in names}
    assert {"cut", "sheet", "view", "step"} <= set(by_kind)
    for figure in by_kind.values():
        assert drawn(shop, figure).startswith("<svg")
    for none in ("cut.x.y.1.1", "sheet.x.y.1.1", "step.none.99", "view.C.none", "lift.none", "."):
        assert shop.get(f"/api/shop/drawings/{none}").status_code == 404


def drawn(shop: TestClient, name: str) -> str:
    """A drawing."""
    answer = shop.get(f"/api/shop/drawings/{name}")
    assert answer.status_code == 200, name
    return answer.text


def test_at_the_saw_the_piece_at_hand_is_drawn_large(shop: TestClient) -> None:
    """Its cuts bear their numbers, no other cut does; where it lies is shown without a word."""
    book = shop.get("/api/shop").json()
    cards = [card for card in book["cards"] if card["station"] == "saw"]
    numbers = {row["label"] for card in cards for row in card["rows"]}
    assert any(figure["key"] for card in cards for figure in card["figures"])
    for card in cards:
        own = {row["label"] for row in card["rows"]}
        for figure in card["figures"]:
            picture = drawn(shop, figure["name"])
            rings = re.findall(r'<g class="balloon">.*?>(\d+)</text>', picture)
            assert set(rings) & numbers <= own
            assert rings
            if figure["key"]:
                assert "<text" not in drawn(shop, figure["key"])


def test_step_pictures_are_never_empty(shop: TestClient) -> None:
    """The first shows all of the box apart; one at which nothing comes in what stands by then."""
    cards = [c for c in shop.get("/api/shop").json()["cards"] if c["station"] == "assemble"]
    for card in cards:
        (figure,) = card["figures"]
        drawn = shop.get(f"/api/shop/drawings/{figure['name']}").text
        assert drawn.count("<path") + drawn.count("<polygon") + drawn.count("<line") > 5, figure


def test_ticking_a_cut_keeps_the_plan_in_hand(shared: tuple[TestClient, Path]) -> None:
    """The sheet on the bench goes on by the plan that it was begun by, after a restart as well."""
    shop, path = shared
    before = shop.get("/api/shop").json()
    rows = [row for card in before["cards"] if card["station"] == "saw" for row in card["rows"]]
    tick = next(tick for row in rows for tick in row["ticks"] if tick["kind"] == "cut")
    said = {"shown": tick["shown"], "note": tick["note"]}
    assert sent(shop, entry(1, "cut", *tick["words"], **said)) == ["kept"]
    assert shop.get("/api/shop/now").json()["states"] == {tick["words"][0]: "cut"}
    after = shop.get("/api/shop").json()
    assert after["plan"] == before["plan"]
    with started(path) as other:
        assert other.get("/api/shop").json()["plan"] == before["plan"]
    assert sent(shop, entry(2, "withdrawn", corrects=f"{1:032x}")) == ["kept"]
    assert shop.get("/api/shop/now").json()["states"] == {}


def test_a_spoiled_piece_has_no_place_on_the_sheet_that_it_was_cut_from(shop: TestClient) -> None:
    """What else is left goes on by the plan in hand; then the next plan takes over."""
    book = shop.get("/api/shop").json()
    paths = [part["path"] for part in book["parts"]]
    first, last = paths[0], paths[-1]
    assert sent(shop, *(entry(80 + n, "cut", path) for n, path in enumerate(paths[:-1]))) == [
        "kept" for _ in paths[:-1]
    ]
    settled(shop)
    assert sent(shop, entry(180, "spoiled", first)) == ["kept"]
    settled(shop)
    assert shop.get("/api/shop").json()["plan"] == book["plan"]
    assert sent(shop, entry(181, "cut", last)) == ["kept"]
    settled(shop)
    assert shop.get("/api/shop").json()["planned"] == "pending"
    undone = (180, 181, *range(80, 80 + len(paths) - 1))
    assert set(sent(shop, *(
        entry(200 + number, "withdrawn", corrects=f"{number:032x}") for number in undone
    ))) == {"kept"}  # fmt: skip
    settled(shop)
    assert shop.get("/api/shop").json()["plan"] == book["plan"]


def settled(shop: TestClient) -> None:
    """Wait until what was written last is worked out."""
    shop.get("/api/why", params={"path": "stock.plywood.thickness"})


def test_others_hear_of_an_entry_before_anything_is_worked_out(
    shared: tuple[TestClient, Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    """From the record alone, however long the model takes."""
    shop, goes_on, told = shared[0], threading.Event(), list[str]()

    def held_up(path: Path) -> AsRecorded:
        goes_on.wait(30)
        return as_recorded(path)

    monkeypatch.setattr("casewright.web.live_job.as_recorded", held_up)
    site: Site = cast("FastAPI", shop.app).state.site
    monkeypatch.setattr(site.news, "tell", lambda kind, _: told.append(kind))
    try:
        part = shop.get("/api/shop").json()["parts"][-1]["path"]
        assert sent(shop, entry(70, "cut", part)) == ["kept"]
        assert "record" in told
        assert shop.get("/api/shop/now").json()["states"][part] == "cut"
        assert sent(shop, entry(71, "withdrawn", corrects=f"{70:032x}")) == ["kept"]
    finally:
        goes_on.set()


def test_a_note_at_the_saw_ticks_a_cut_that_gives_no_part(shop: TestClient) -> None:
    """Every device sees it."""
    key = "sawn: cut 3 of plan.plywood plan 00112233"
    assert sent(shop, entry(3, "note", key)) == ["kept"]
    assert shop.get("/api/shop/now").json()["noted"] == [key]


def test_putting_together_is_taken_back_with_all_that_it_wrote(shop: TestClient) -> None:
    """Marking a box assembled marks its parts machined: the one withdrawal takes back both."""
    case = shop.get("/api/job").json()["cases"][0]["key"]
    assert sent(shop, entry(4, "assembled", case)) == ["kept"]
    states = shop.get("/api/shop/now").json()["states"]
    assert set(states.values()) == {"assembled"}
    assert sent(shop, entry(5, "withdrawn", corrects=f"{4:032x}")) == ["kept"]
    assert shop.get("/api/shop/now").json()["states"] == {}


def test_marks_one_after_the_other_need_no_size_worked_out(
    shop: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Each is answered at once, and putting together marks what is not marked yet, once."""
    part = next(part for part in shop.get("/api/shop").json()["parts"] if part["hand"])
    why = {"path": f"{part['path']}.length"}  # waits until all before is worked out
    assert shop.get("/api/why", params=why).status_code == 200
    monkeypatch.setattr("casewright.web.entries.room_with", None)
    monkeypatch.setattr(LiveJob, "_work_out", lambda live, version: time.sleep(0.05))
    case = part["path"].partition(".")[0]
    before = len(shop.get("/api/shop/entries").json())
    assert sent(shop, entry(30, "machined", part["path"])) == ["kept"]
    assert sent(shop, entry(31, "note", "between")) == ["kept"]
    assert sent(shop, entry(32, "assembled", case)) == ["kept"]
    monkeypatch.undo()
    found = shop.get("/api/shop/entries", params={"about": part["path"]}).json()
    assert [each["kind"] for each in found].count("machined") == 1
    undone = [entry(33 + n, "withdrawn", corrects=f"{30 + 2 * n:032x}") for n in (1, 0)]
    assert sent(shop, *undone) == ["kept", "kept"]
    assert len(shop.get("/api/shop/entries").json()) > before
    assert shop.get("/api/shop/now").json()["states"] == {}


def test_a_piece_cut_to_a_size_that_has_changed_is_asked_about(shop: TestClient) -> None:
    """What the page showed is what was cut: said so, it is kept at that size."""
    part = shop.get("/api/shop").json()["parts"][0]
    cut = entry(6, "cut", part["path"], shown="30 × 11 3/4")
    (doubted,) = shop.post("/api/entries", json=[cut]).json()
    assert doubted["became"] == "doubted"
    assert "was shown as 30 x 11 3/4" in doubted["says"][0]
    assert sent(shop, {**cut, "sure": True}) == ["kept"]
    found = shop.get("/api/shop/entries", params={"about": part["path"]}).json()
    assert found[0]["says"] == "30 × 11 3/4"
    assert sent(shop, entry(7, "withdrawn", corrects=f"{6:032x}")) == ["kept"]


def test_marks_after_a_reading_go_by_it(shop: TestClient, shared: tuple[TestClient, Path]) -> None:
    """In one batch, as a phone out of reach sends it: the cut size follows the reading."""
    thick = "stock.plywood.thickness"
    book = shop.get("/api/shop").json()
    shelf = next(part for part in book["parts"] if part["title"].startswith("shelf"))
    assert sent(shop, entry(8, "reading", thick, "0.70"), entry(9, "cut", shelf["path"])) == [
        "kept", "kept",
    ]  # fmt: skip
    entries, _ = read_entries(shared[1])
    sizes = dict(next(e for e in reversed(entries) if e.kind == "cut").sizes)
    # Why waits for what was written last; the book does not, so that a phone never has to.
    why = shop.get("/api/why", params={"path": f"{shelf['path']}.length"}).json()["nodes"][0]
    now = next(p for p in shop.get("/api/shop").json()["parts"] if p["path"] == shelf["path"])
    assert text(now["cut"]) != text(shelf["cut"])
    length = next(size for name, size in sizes.items() if "length" in name)
    assert float(length) == pytest.approx(float(_inches(why["value"])), abs=0.4)
    undone = [entry(10, "withdrawn", corrects=f"{n:032x}") for n in (9,)]
    undone.append(entry(11, "withdrawn", corrects=f"{8:032x}"))
    assert sent(shop, *undone) == ["kept", "kept"]


def _inches(value: str) -> float:
    """A size in words as millimetres."""
    found = re.search(r"(\d+)(?: (\d+)/(\d+))?", value)
    assert found is not None
    whole, over, under = (int(each or 0) for each in found.groups())
    return (whole + (over / under if under else 0)) * 25.4


def test_twenty_phones_at_once_lose_nothing(
    shop: TestClient, shared: tuple[TestClient, Path]
) -> None:
    """Each entry is there once, though every phone sends each of its own twice."""
    before = len(read_entries(shared[1])[0])
    answers: list[list[str]] = []

    def phone(number: int) -> None:
        own = [entry(1000 + 10 * number + n, "note", f"phone {number} says {n}",
                     device=f"phone {number}") for n in range(3)]  # fmt: skip
        answers.append([*sent(shop, *own), *sent(shop, *own)])

    threads = [threading.Thread(target=phone, args=(number,)) for number in range(20)]
    for each in threads:
        each.start()
    for each in threads:
        each.join()
    assert answers == [["kept"] * 3 + ["there"] * 3] * 20
    entries, _ = read_entries(shared[1])
    assert len(entries) == before + 60
    assert len({each.id for each in entries}) == len(entries)


def test_a_timer_is_offered_where_glue_or_paint_has_to_dry(shop: TestClient) -> None:
    """Not at the dry fit, nor where the words say that there is no glue (common practice)."""
    cards = shop.get("/api/shop").json()["cards"]
    said = {card["id"]: f"{card['lead']}. {' '.join(map(text, card['lines']))}" for card in cards}
    timed = {card["id"] for card in cards if card["timer"] == "glue"}
    assert all("dry fit" not in said[key] for key in timed)
    assert any("dry fit" in words for words in said.values())
    assert {key for key, words in said.items() if "Spread glue" in words} <= timed
    painted = {card["station"] for card in cards if card["timer"] == "paint"}
    assert painted == {"finish"}


def test_nothing_of_paper_alone_is_left_on_a_card(shop: TestClient) -> None:
    """No page number's empty place, no space before a stop, a sign only where a line begins."""
    for card in shop.get("/api/shop").json()["cards"]:
        lines = [*card["lines"], *(line for row in card["rows"] for line in row["lines"])]
        for line in lines:
            assert not re.search(r"\bp\. *[:;,.]| [.,;:]|  ", text(line)), text(line)
            signs = [n for n, bit in enumerate(line) if isinstance(bit, dict)
                     and bit["kind"] == "sign"]  # fmt: skip
            assert signs in ([], [0]), text(line)


def test_what_makes_no_sense_is_refused_and_the_rest_is_kept(shop: TestClient) -> None:
    """Each entry is answered by itself."""
    assert sent(
        shop, entry(20, "sung", "1"), entry(21, "cut", "no.such.part"),
        entry(22, "withdrawn", corrects="f" * 32), entry(23, "note", "a good one"),
    ) == ["refused", "refused", "refused", "kept"]  # fmt: skip


def test_text_of_the_file_comes_as_text(shop: TestClient) -> None:
    """The book is data; no card carries markup."""
    assert "<script" not in json.dumps(shop.get("/api/shop").json())
