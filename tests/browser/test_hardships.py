"""What goes wrong in a shop: slow networks, dead servers, a page of yesterday, a locked phone."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
import urllib.request
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from tests.browser.conftest import PATIENCE_MS, PHONE, free_port, serving
from tests.unit.web.test_fuzz import TEXT, NoPlanner

from casewright.job.recorded import read_entries
from casewright.web.page_build import built_page_folder

OPEN = Callable[..., Page]


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """A job with two cases on a wall."""
    path = tmp_path / "kitchen.toml"
    path.write_text(TEXT, "utf-8")
    return path


@pytest.fixture(autouse=True)
def _unplanned(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("casewright.web.live_job.Planner", NoPlanner)


@pytest.fixture
def phone(browser: Browser) -> Iterator[Page]:
    """A phone; what it complains of while nobody answers is no fault of the page."""
    context = browser.new_context(viewport=PHONE)  # type: ignore[arg-type]
    context.set_default_timeout(PATIENCE_MS)
    yield context.new_page()
    context.close()


def _kinds(job: Path) -> list[str]:
    return [entry.kind for entry in read_entries(job)[0]]


def _first_tick(page: Page, address: str) -> None:
    page.goto(f"{address}/shop/machine")
    expect(page.locator("button.tick").first).to_be_visible()
    expect(page.locator("header")).to_contain_text("all sent")


def _told_again(page: Page) -> None:
    """The phone notices that the network is back."""
    page.evaluate("dispatchEvent(new Event('online'))")


def test_on_a_slow_network_a_tick_stands_at_once(job: Path, phone: Page) -> None:
    """What is not sent yet is told, then it is sent; nobody waits for it."""
    with serving(job) as address:
        _first_tick(phone, address)
        devtools = phone.context.new_cdp_session(phone)
        devtools.send("Network.enable")
        slow = {"offline": False, "latency": 600, "downloadThroughput": 20_000,
                "uploadThroughput": 20_000}  # fmt: skip
        devtools.send("Network.emulateNetworkConditions", slow)
        tick = phone.locator("button.tick").first
        tick.click()
        expect(tick).to_have_attribute("data-state", "waiting")
        expect(phone.locator("header")).to_contain_text("1 not sent yet")
        expect(phone.locator("header")).to_contain_text("all sent")
        assert _kinds(job) == ["machined"]


def test_an_answer_that_was_lost_doubles_nothing(job: Path, phone: Page) -> None:
    """The entry came through, its answer did not: it is sent again and stands once."""
    with serving(job) as address:
        _first_tick(phone, address)
        lost = []

        def lose(route: object) -> None:
            route.fetch()  # type: ignore[attr-defined]
            route.abort()  # type: ignore[attr-defined]
            lost.append(route)

        phone.route("**/api/entries", lose, times=1)
        phone.locator("button.tick").first.click()
        expect(phone.locator("header")).to_contain_text("all sent")
        assert len(lost) == 1
        assert _kinds(job) == ["machined"]


@contextmanager
def _own_process(job: Path, port: int) -> Iterator[subprocess.Popen[bytes]]:
    """A server in a process of its own, which can be killed."""
    command = [sys.executable, "-m", "casewright.cli.main", "serve", str(job), "--port", str(port)]
    process = subprocess.Popen(  # noqa: S603 (our own command)
        command, stdout=subprocess.DEVNULL, start_new_session=True
    )
    try:
        while process.poll() is None:  # however long it takes to start
            try:
                urllib.request.urlopen(f"http://127.0.0.1:{port}/api/job", timeout=60).close()
                break
            except OSError:
                time.sleep(0.05)
        yield process
    finally:
        _kill(process)


def _kill(process: subprocess.Popen[bytes]) -> None:
    """It and all that it started, without a word."""
    with suppress(ProcessLookupError):
        os.killpg(process.pid, signal.SIGKILL)
    process.wait()


def test_a_server_killed_in_mid_entry_loses_and_doubles_nothing(job: Path, phone: Page) -> None:
    """Killed without a word; what was entered before, meanwhile and after stands once each."""
    built_page_folder()
    port = free_port()
    address = f"http://127.0.0.1:{port}"
    with _own_process(job, port) as server:
        _first_tick(phone, address)
        ticks = phone.locator("button.tick")
        phone.evaluate("setTimeout(() => document.querySelectorAll('button.tick')[0].click(), 30)")
        phone.wait_for_timeout(35)
        _kill(server)
        ticks.nth(1).click()
        expect(ticks.nth(0)).not_to_have_attribute("data-state", "open")
        expect(phone.locator("header")).to_contain_text("not sent yet")
        again = phone.context.new_page()  # from what the phone keeps: nobody answers
        again.goto(f"{address}/shop/machine")
        phone.close()
        expect(again.locator("button.tick").nth(1)).to_have_attribute("data-state", "waiting")
    with _own_process(job, port):
        _told_again(again)
        expect(again.locator("header")).to_contain_text("all sent")
        assert _kinds(job) == ["machined", "machined"]
        assert len({entry.path for entry in read_entries(job)[0]}) == 2


def test_a_page_of_yesterday_is_told_and_keeps_what_it_holds(job: Path, phone: Page) -> None:
    """Another page is served by now: it says so, and what was not sent is sent all the same."""
    port = free_port()
    with serving(job, port) as address:
        _first_tick(phone, address)
    phone.locator("button.tick").first.click()
    expect(phone.locator("header")).to_contain_text("1 not sent yet")
    with serving(job, port, build="of today"):
        expect(phone.get_by_text("A newer page is there.")).to_be_visible()
        expect(phone.locator("header")).to_contain_text("all sent")
        assert _kinds(job) == ["machined"]
        there = phone.url
        phone.get_by_role("button", name="Load it").click()
        expect(phone.get_by_text("A newer page is there.")).to_be_hidden()
        assert phone.url == there
        expect(phone.locator("button.tick").first).to_have_attribute("data-state", "done")


def test_a_card_that_lies_open_stays_and_tells_what_changed(job: Path, phone: Page) -> None:
    """Another size by now, then gone: neither is swapped under the thumb."""
    with serving(job) as address:
        _first_tick(phone, address)
        there = phone.url
        less_deep = TEXT.replace('kind = "base"', 'kind = "base"\ndepth = "22"')
        job.write_text(less_deep, "utf-8")
        told = phone.get_by_role("alert")
        expect(told).to_contain_text("× 22 ×")
        phone.get_by_role("button", name="I have seen it").click()
        expect(told).to_be_hidden()
        title = phone.locator("h1").inner_text()
        job.write_text(less_deep.replace("left", "port"), "utf-8")
        expect(told).to_contain_text("is another by now")
        assert (phone.url, phone.locator("h1").inner_text()) == (there, title)
        told.get_by_role("link").click()
        expect(told).to_be_hidden()
        expect(phone.locator("h1")).to_be_visible()


def test_a_locked_phone_comes_back_to_its_card(job: Path, phone: Page) -> None:
    """Frozen as a phone does it, then ended: the same card, the time still running."""
    with serving(job) as address:
        _first_tick(phone, address)
        phone.goto(f"{address}/shop/finish")
        phone.get_by_role("button", name="Next").click()
        phone.get_by_role("button", name="Paint: start a timer").click()
        phone.get_by_role("button", name="60 min").click()
        there, title = phone.url, phone.locator("h1").inner_text()
        devtools = phone.context.new_cdp_session(phone)
        devtools.send("Page.setWebLifecycleState", {"state": "frozen"})
        devtools.send("Page.setWebLifecycleState", {"state": "active"})
        expect(phone.locator("h1")).to_have_text(title)
        again = phone.context.new_page()
        phone.close()
        again.goto(f"{address}/shop")
        again.get_by_role("link", name="Go on where you were").click()
        expect(again.locator("h1")).to_have_text(title)
        assert again.url == there
        expect(again.get_by_role("timer")).to_contain_text("Paint")


def test_a_browser_that_was_ended_loses_nothing(job: Path, phone: Page) -> None:
    """Local storage reaches the disk late; what stands in the database is there at once."""
    with serving(job) as address:
        _first_tick(phone, address)
        phone.goto(f"{address}/shop/finish")
        phone.get_by_role("button", name="Paint: start a timer").click()
        phone.get_by_role("button", name="60 min").click()
        phone.route("**/api/**", lambda route: route.abort())
        phone.get_by_role("checkbox").first.click()
        phone.wait_for_function(_ON_DISK)
        phone.evaluate("localStorage.clear()")  # as if it had never been written
        again = phone.context.new_page()
        phone.close()
        again.goto(f"{address}/shop/finish")
        expect(again.get_by_role("timer")).to_contain_text("Paint")
        expect(again.locator("header")).to_contain_text("all sent")
        assert _kinds(job).count("finished") == 1


_ON_DISK = """() => new Promise((done) => {
  const request = indexedDB.open("casewright-shop", 1);
  request.onsuccess = () => {
    const keys = request.result.transaction("kept").objectStore("kept").getAllKeys();
    keys.onsuccess = () => {
      const has = (name) => keys.result.some((key) => String(key).startsWith(`small ${name}`));
      done(has("out.") && has("timers"));
    };
  };
})"""


EVIL = (
    "<img src=x onerror='window.hit=1'><svg onload='window.hit=1'>"
    r"\"><script>window.hit=1</script>"
)
PLACES = (
    "/", "/survey", "/cases/left", "/machine/left", "/install", "/solid",
    "/shop/machine", "/shop/assemble", "/shop/finish", "/shop/hang", "/shop/part/1",
)  # fmt: skip


def test_words_of_the_job_file_are_never_run(job: Path, opened: OPEN) -> None:
    """Titles, a note and a device's name that look like markup are shown, on every page.

    The page's own policy would complain of anything tried in vain, which fails as well.
    """
    text = TEXT.replace("Small kitchen", EVIL)
    for table in ("case.left", "wall.north", "run.window"):
        text = text.replace(f"[{table}]", f'[{table}]\ntitle = "{EVIL}"')
    job.write_text(f'{text}\n[stock.plywood]\ntitle = "{EVIL}"\n', "utf-8")
    with serving(job) as address:
        page = opened(f"{address}/shop/part/1", PHONE)
        page.get_by_role("button", name="Minutes, or a note").click()
        page.get_by_label("Note about").fill("<img src=x onerror='window.hit=1'>")
        page.get_by_role("button", name="Write the note down").click()
        expect(page.locator("header")).to_contain_text("all sent")
        page.get_by_role("button", name="What was written").click()
        expect(page.locator(".written")).to_contain_text("<img src=x")
        for place in PLACES:
            page.goto(f"{address}{place}")
            filled = page.locator("main svg, main section, main canvas, main .rows, main .tick")
            expect(filled.first).to_be_attached()
            assert page.evaluate("window.hit") is None, place
            assert page.locator("img, script:not([src])").count() == 0, place
        page.close()
