"""The door: what has no business here is refused before it is looked at."""

from __future__ import annotations

import httpx2
import pytest
from starlette.testclient import TestClient
from tests.unit.web.conftest import AT_HOME, PAGE

from casewright.web.devices import MOST_TRIES, PAUSE_S, Devices
from casewright.web.guard import MARK, MOST_BYTES


def test_a_name_that_is_not_ours_is_refused(desk: TestClient) -> None:
    """DNS rebinding: a stranger's name that points here gets nothing (OWASP, common practice)."""
    assert desk.get("/api/job", headers={"host": "stranger.example"}).status_code == 421
    assert desk.get("/api/job", headers={"host": "localhost:8417"}).status_code == 200


@pytest.mark.parametrize(
    "headers",
    [
        {"sec-fetch-site": "cross-site"},
        {"sec-fetch-site": "same-site"},
        {"origin": "https://stranger.example"},
        {"origin": "null"},
        {"origin": "https://127.0.0.1:8417"},
    ],
)
def test_a_page_of_another_site_is_refused(desk: TestClient, headers: dict[str, str]) -> None:
    """Fetch metadata (W3C) and Origin (RFC 6454) tell who asks."""
    assert desk.post("/api/undo", headers=headers).status_code == 403
    assert desk.get("/api/job", headers=headers).status_code == 403


def test_a_form_of_another_site_cannot_change_anything(desk: TestClient) -> None:
    """A change needs a header that no form can send (Fetch standard: no simple request)."""
    del desk.headers[MARK]
    assert desk.post("/api/undo").status_code == 403
    assert desk.get("/api/job").status_code == 200


def test_what_is_too_large_is_refused(desk: TestClient) -> None:
    """By its length as told, and by what comes where none is told."""
    body = b"[" + b" " * MOST_BYTES + b"]"
    assert desk.post("/api/entries", content=body).status_code == 413

    def bits() -> object:
        yield body

    assert desk.post("/api/entries", content=bits()).status_code == 413  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "path",
    ["/assets/../kitchen.toml", "/assets/%2e%2e/kitchen.toml", "/assets//etc/passwd",
     "/..%2fkitchen.toml", "/kitchen.toml", "/kitchen.record"],
)  # fmt: skip
def test_no_path_leads_out_of_the_page(desk: TestClient, path: str) -> None:
    """Only what was built is served; every other address shows the page itself."""
    answer = desk.get(path)
    assert answer.status_code == 404 or b"<title>front</title>" in answer.content


def test_answers_forbid_everything_from_elsewhere(desk: TestClient) -> None:
    """Content Security Policy level 3: scripts of ours alone, no frame, no other place."""
    for path in ("/", "/api/job", "/assets/page.js", "/api/nothing"):
        policy = desk.get(path).headers["content-security-policy"]
        assert "default-src 'none'" in policy
        assert "script-src 'self';" in policy
        assert "unsafe" not in policy
        assert "frame-ancestors 'none'" in policy


def at_home(desk: TestClient) -> TestClient:
    """A phone on the home network."""
    return TestClient(
        desk.app, "http://192.168.7.2:8417", client=AT_HOME, headers={MARK: "1"}
    )  # fmt: skip


def test_a_phone_joins_by_the_code_that_the_desk_shows(desk: TestClient) -> None:
    """Until then it is told nothing of the job."""
    phone = at_home(desk)
    assert phone.get("/api/job").status_code == 401
    assert phone.get("/api/join").json() == {"addresses": [], "code": "", "joined": False}
    shown = desk.get("/api/join").json()
    assert phone.post("/api/join", json={"code": "wrong"}).status_code == 403
    joined = phone.post("/api/join", json={"code": shown["code"].lower()})
    assert joined.status_code == 200
    assert "httponly" in joined.headers["set-cookie"].lower()
    assert "samesite=strict" in joined.headers["set-cookie"].lower()
    assert phone.get("/api/job").json()["name"] == desk.get("/api/job").json()["name"]


def test_guessing_changes_the_code(desk: TestClient) -> None:
    """After five wrong ones the right one is another."""
    phone, code = at_home(desk), desk.get("/api/join").json()["code"]
    for _ in range(5):
        phone.post("/api/join", json={"code": "AAAAAA"})
    assert desk.get("/api/join").json()["code"] != code
    answer: httpx2.Response = phone.post("/api/join", json={"code": code})
    assert answer.status_code == 429


def test_after_five_wrong_codes_none_is_taken_for_a_while() -> None:
    """Five guesses of 31**6 in half a minute: a month of it finds one once in 2,000 times.

    Afterwards the code that the desk shows by then is taken.
    """
    now = 0.0
    devices = Devices(clock=lambda: now)
    for _ in range(MOST_TRIES):
        assert devices.join("wrong") is None
    assert devices.is_paused
    assert devices.join(devices.code) is None
    now = PAUSE_S
    assert devices.knows(devices.join(devices.code))


def test_the_page_asks_for_the_code_at_every_address(desk: TestClient) -> None:
    """A phone opens what `serve` prints; the page itself holds nothing of the job."""
    for path in ("/", "/shop", "/shop/part/1", "/assets/page.js"):
        assert at_home(desk).get(path).content in (PAGE.files["assets/page.js"].content,
                                                   desk.get(path).content)  # fmt: skip
    for path in ("/api/shop", "/api/shop/now", "/api/events", "/api/solids", "/api/packet"):
        assert at_home(desk).get(path).status_code == 401


def test_the_code_of_a_label_opens_the_part(desk: TestClient) -> None:
    """Also on a phone that has not joined: it is asked for the code first."""
    for browser in (desk, at_home(desk)):
        answer = browser.get("/P/12", follow_redirects=False)
        assert (answer.status_code, answer.headers["location"]) == (307, "/shop/part/12")
        assert browser.get("/P/..%2F..%2Fjoin", follow_redirects=False).status_code != 307
        assert browser.get("/P/a b?c", follow_redirects=False).headers["location"] == (
            "/shop/part/a%20b"
        )


def test_what_cannot_be_read_is_told_in_one_shape(desk: TestClient) -> None:
    """Too deep, or no JSON at all, or a way of asking that is not known."""
    deep = b"[" * 100_000 + b"]" * 100_000
    headers = {"content-type": "application/json"}
    assert desk.post("/api/entries", content=deep, headers=headers).json()["what"]
    assert desk.put("/api/entries").json()["what"]
