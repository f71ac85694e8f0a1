"""Plans of cuts in hand: kept beside the job, and the rest planned anew round what is begun."""

from __future__ import annotations

import json
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from starlette.testclient import TestClient
from tests.unit.web.conftest import HERE, PAGE, PlansNothing
from tests.unit.web.test_shop_routes import Json, entry, read_job, sent, started

from casewright.web.application import application
from casewright.web.hand_file import check_sum, plan_path


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """A job of one case, its thicknesses read."""
    path = tmp_path / "kitchen.toml"
    path.write_text(read_job(path.name), "utf-8")
    return path


def test_a_restarted_server_goes_on_with_the_very_same_cards(
    job: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """At once, by the plan that lies beside the job; one that was tampered with is not used."""
    with started(job) as first:
        book = first.get("/api/shop").json()
        _, cut = _first_cut(book)
        assert sent(first, entry(1, "cut", *cut["words"], note=cut["note"])) == ["kept"]
    monkeypatch.setattr("casewright.web.live_job.Planner", PlansNothing)
    assert _book(job) == book
    kept = json.loads(plan_path(job).read_text())
    for wrong in _tampered(kept):
        plan_path(job).write_text(wrong)
        found = _book(job)
        assert found["planned"] == "pending"
        assert "is not used: it is damaged" in found["says"]
    plan_path(job).write_text(json.dumps(kept))
    job.write_text(job.read_text().replace('"0.72"', '"0.7"'))
    assert "not for what is to be cut now" in _book(job)["says"]


def test_a_file_that_is_no_plan_of_ours_stays_as_it_is(job: Path) -> None:
    """Who gave it its name had something else in mind."""
    plan_path(job).write_text("mine")
    with started(job) as shop:
        assert "is a file of another kind" in shop.get("/api/shop").json()["says"]
    assert plan_path(job).read_text() == "mine"


def _book(job: Path) -> Json:
    """What a phone is given by a server that plans nothing."""
    with TestClient(application(job, PAGE), "http://127.0.0.1:8417", client=HERE) as client:
        book: Json = client.get("/api/shop").json()
        return book


def _tampered(kept: Json) -> Iterator[str]:
    """Plans with which something would be cut wrong, also where the check sum was made anew."""
    changes: tuple[tuple[tuple[str | int, ...], Any], ...] = (
        (("solutions", 0, "placements", 0, "x"), 7),
        (("solutions", 0, "steps", 0, "setting"), 500),
        (("solutions", 0, "steps", 0, "leaves", 0, "name"), "1.9"),
        (("solutions", 0, "steps"), []),
        (("name",), "00000000"),
        (("rest",), {"lost": 3}),
    )
    for way, value in changes:
        found = json.loads(json.dumps(kept))
        at = found["plans"][0]
        for step in way[:-1]:
            at = at[step]
        at[way[-1]] = value
        yield json.dumps(found | {"sum": check_sum(found["plans"], found["anew"])})
    kept = json.loads(json.dumps(kept))
    step = kept["plans"][0]["solutions"][0]["steps"][0]
    step["factory"] = not step["factory"]
    yield from ("", "[]", "{}", json.dumps(kept), json.dumps(kept)[:-40])


def test_the_rest_is_planned_anew_around_what_is_begun(
    job: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The begun sheet goes on by its plan; the spoiled piece comes from another, told to all."""
    monkeypatch.setattr("casewright.web.shop_plan.apart", lambda work, *given: work(*given))
    with started(job) as shop:
        before = shop.get("/api/shop").json()
        asked = {"plan": before["plan"]}
        assert shop.post("/api/shop/rest", json=asked).status_code == 422  # nothing was spoiled
        card, cut = _first_cut(before)
        path = cut["words"][0]
        assert sent(
            shop, entry(1, "cut", path, note=cut["note"]), entry(2, "spoiled", path)
        ) == ["kept", "kept"]  # fmt: skip
        rest = shop.get("/api/shop/rest").json()
        assert [each["path"] for each in rest["gone"]] == [path]
        assert shop.post("/api/shop/rest", json={"plan": "another"}).status_code == 422
        assert shop.post("/api/shop/rest", json=asked).status_code == 200
        while shop.get("/api/shop/rest").json()["state"] == "pending":
            time.sleep(0.02)
        after = shop.get("/api/shop").json()
        assert after["anew"]["gone"] == rest["gone"]
        assert "1 sheet more than before: see that it is there." in after["anew"]["says"]
        cards = {each["id"]: each for each in after["cards"]}
        others = [c for c in before["cards"] if c["station"] == "saw" and c["id"] != card["id"]]
        assert [cards[each["id"]] for each in others] == others  # nobody else's card changed
        assert path not in cards[card["id"]]["parts"]
        (again,) = (c for c in after["cards"] if c["station"] == "saw" and path in c["parts"])
        assert "planned anew" in again["over"]
        assert "piece 2." in again["title"]
        drawn = shop.get(f"/api/shop/drawings/{again['figures'][0]['name']}")
        assert drawn.status_code == 200
        assert shop.get("/api/shop/rest").json()["gone"] == []
    monkeypatch.setattr("casewright.web.live_job.Planner", PlansNothing)
    assert _book(job) == after


def _first_cut(book: Json) -> tuple[Json, Json]:
    """The first card that gives a part, and its tick."""
    return next(
        (card, tick) for card in book["cards"] for row in card["rows"] for tick in row["ticks"]
        if tick["kind"] == "cut"
    )  # fmt: skip
