"""The phone in the shop, in a real browser: ticks, readings, no signal, two devices, a lock."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from fractions import Fraction
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from tests.browser.conftest import PATIENCE_MS, PHONE, serving
from tests.unit.web.test_shop_routes import PlansOnce, read_job

from casewright.job.recorded import read_entries
from casewright.job.starter import starter_text
from casewright.record import Entry

OPEN = Callable[..., Page]


@pytest.fixture(scope="module")
def shop(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[str, Path]]:
    """One job served for all tests here, and its file."""
    job = tmp_path_factory.mktemp("shop") / "kitchen.toml"
    job.write_text(read_job(job.name), "utf-8")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("casewright.web.live_job.Planner", PlansOnce)
        with serving(job) as address:
            yield address, job


def kinds(job: Path) -> list[str]:
    """Kinds of all entries of the record, in order."""
    return [entry.kind for entry in read_entries(job)[0]]


def test_the_digits_of_a_setting_are_ten_millimetres_high(
    shop: tuple[str, Path], opened: OPEN
) -> None:
    """Those over and under a stroke too; figures of the typeface are 0.698 em high.

    Phones have 5.3 to 6.5 CSS px to the millimetre of glass (widths in px and in mm of phones of
    2016 to 2025, from memory): the finest counts.
    """
    page = opened(f"{shop[0]}/shop/saw", PHONE)
    digits = page.locator(".digits").first
    expect(digits).to_be_visible()
    sizes = page.evaluate(
        """() => [...document.querySelectorAll(".digits, .digits *")]
            .filter((each) => each.closest(".less, .hidden") === null)
            .map((each) => parseFloat(getComputedStyle(each).fontSize))"""
    )
    assert min(sizes) * 0.698 >= 10 * 6.5
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    small = page.evaluate(
        """() => [...document.querySelectorAll("button, a.button, input, header a")]
            .map((each) => each.getBoundingClientRect())
            .filter((box) => box.width > 0 && (box.height < 44 || box.width < 44)).length"""
    )
    assert small == 0  # WCAG 2.2, 2.5.5: 44 by 44 px


def test_without_a_signal_ticks_wait_and_are_sent_once(
    shop: tuple[str, Path], browser: Browser
) -> None:
    """The page says how many; a lock comes back to the same card, the tick still there."""
    context = browser.new_context(
        viewport={"width": 390, "height": 780}
    )  # its console tells of each failed request
    context.set_default_timeout(PATIENCE_MS)
    page = context.new_page()
    page.goto(f"{shop[0]}/shop")
    page.locator("a.station", has_text="Finish").click()
    tick = page.get_by_role("checkbox").last
    expect(tick).to_be_visible()
    expect(page.locator("header")).to_contain_text("all sent")
    page.route("**/api/**", lambda route: route.abort())
    before = len(kinds(shop[1]))
    tick.click()
    expect(tick).to_have_attribute("aria-checked", "true")
    expect(page.locator("header")).to_contain_text("1 not sent yet")
    there = page.url
    page.reload()
    expect(page.get_by_role("checkbox").last).to_have_attribute("data-state", "waiting")
    assert page.url == there
    assert len(kinds(shop[1])) == before
    page.unroute("**/api/**")
    page.evaluate("dispatchEvent(new Event('online'))")
    expect(page.locator("header")).to_contain_text("all sent")
    assert kinds(shop[1])[before:].count("finished") == 1
    context.close()


def test_two_devices_see_each_others_ticks(shop: tuple[str, Path], opened: OPEN) -> None:
    """What one ticks is ticked on the other without a touch; taken back, it is open on both."""
    pages = [opened(f"{shop[0]}/shop/machine", PHONE) for _ in range(2)]
    ticks = [page.get_by_role("checkbox").first for page in pages]
    for tick in ticks:
        expect(tick).to_be_visible()
    ticks[0].click()
    expect(ticks[1]).to_have_attribute("data-state", "done")
    ticks[0].click()
    pages[0].get_by_role("button", name="Take it back").click()
    expect(ticks[1]).to_have_attribute("data-state", "open")


def test_a_reading_out_of_band_is_asked_about(shop: tuple[str, Path], opened: OPEN) -> None:
    """Whole inches, then sixteenths; nothing is written until it is confirmed."""
    page = opened(f"{shop[0]}/shop/part/1", PHONE)
    before = len(kinds(shop[1]))
    page.get_by_role("button", name="Enter a reading").first.click()
    page.get_by_role("button", name="2", exact=True).click()
    page.get_by_role("button", name="1/16", exact=True).click()
    expect(page.get_by_label("reading so far")).to_have_text(re.compile(r"2 1/16"))
    page.get_by_role("button", name="Write it down").click()
    expect(page.get_by_role("dialog")).to_contain_text("under")
    assert len(kinds(shop[1])) == before
    page.get_by_role("button", name="It is so").click()
    expect(page.locator("header")).to_contain_text("all sent")
    assert kinds(shop[1])[before:] == ["reading"]


def test_a_timer_goes_on_after_a_reload(shop: tuple[str, Path], opened: OPEN) -> None:
    """It is kept as the moment it ends."""
    page = opened(f"{shop[0]}/shop/finish", PHONE)
    page.get_by_role("button", name="Paint: start a timer").click()
    page.get_by_role("button", name="60 min").click()
    expect(page.get_by_role("timer")).to_contain_text("Paint")
    page.reload()
    expect(page.get_by_role("timer")).to_contain_text(re.compile(r"5\d:"))


def _keys(page: Page, *names: str) -> None:
    for name in names:
        page.get_by_role("button", name=name, exact=True).click()


def _newest(job: Path) -> Entry:
    return read_entries(job)[0][-1]


def test_sixteenths_and_thirty_seconds_are_written_as_they_are_typed(
    shop: tuple[str, Path], opened: OPEN
) -> None:
    """Whole inches, a sixteenth and half of one more; the last figure is taken off by a key."""
    page = opened(f"{shop[0]}/shop/part/2", PHONE)
    page.get_by_role("button", name="Enter a reading").last.click()
    _keys(page, "1", "1", "7", "take the last one off", "5/16", "and 1/32")
    expect(page.get_by_label("reading so far")).to_have_text(re.compile("11 11/32"))
    _keys(page, "Write it down", "It is so")
    expect(page.locator("header")).to_contain_text("all sent")
    assert _newest(shop[1]).sizes[0][1] == Fraction(11 * 32 + 11, 32) * Fraction("25.4")


def test_a_spoiled_piece_is_asked_about_and_is_to_be_made_again(
    shop: tuple[str, Path], opened: OPEN
) -> None:
    """A glove that touched the wrong button spoils nothing."""
    page = opened(f"{shop[0]}/shop/part/3", PHONE)
    before = len(kinds(shop[1]))
    page.get_by_role("button", name="Spoiled").click()
    page.get_by_role("button", name="It is good").click()
    assert len(kinds(shop[1])) == before
    page.get_by_role("button", name="Spoiled").click()
    page.get_by_role("button", name="It is spoiled").click()
    expect(page.locator("article")).to_contain_text("spoiled, make it again")
    expect(page.locator("header")).to_contain_text("all sent")
    assert kinds(shop[1])[before:] == ["spoiled"]


def test_minutes_and_a_note_are_about_the_case_in_hand(
    shop: tuple[str, Path], opened: OPEN
) -> None:
    """By large keys that add up."""
    page = opened(f"{shop[0]}/shop/finish", PHONE)
    before = len(kinds(shop[1]))
    page.get_by_role("button", name="Minutes, or a note").click()
    _keys(page, "+30", "+15", "Write minutes down")
    page.get_by_label("Note about").fill("door side is proud")
    page.get_by_role("button", name="Write the note down").click()
    expect(page.locator("header")).to_contain_text("all sent")
    minutes, note = read_entries(shop[1])[0][before:]
    assert minutes.minutes == Fraction(45)
    assert note.note == "door side is proud"
    assert minutes.path == note.path == "upper"


def test_in_millimetres_readings_are_typed_as_figures(tmp_path: Path, opened: OPEN) -> None:
    """Whole millimetres and tenths; one that is a centimetre off is asked about."""
    job = tmp_path / "schrank.toml"
    job.write_text(starter_text(job.name, "mm"), "utf-8")
    with serving(job) as address:
        page = opened(f"{address}/shop/part/1", PHONE)
        box = page.locator("section.reading").first
        planned = (box.locator(".size").first.text_content() or "").replace("~", "")
        box.get_by_role("button", name="Enter a reading").click()
        assert page.get_by_role("button", name="1/16", exact=True).count() == 0
        _keys(page, *str(int(float(planned)) + 10))
        page.get_by_role("button", name="Write it down").click()
        expect(page.get_by_role("dialog")).to_contain_text("mm over")
        page.get_by_role("button", name="Measure again").click()
        assert kinds(job) == []
        _keys(page, *(["take the last one off"] * 8), *planned)
        page.get_by_role("button", name="Write it down").click()
        expect(page.locator("header")).to_contain_text("all sent")
        assert float(_newest(job).sizes[0][1]) == float(planned)
        page.close()


def test_a_piece_spoiled_at_the_saw_is_planned_anew_and_told_to_all(
    tmp_path: Path, opened: OPEN, monkeypatch: pytest.MonkeyPatch
) -> None:
    """From the tick on the card; the other phone's card stays and says what changed."""
    monkeypatch.setattr("casewright.web.live_job.Planner", PlansOnce)
    job = tmp_path / "kitchen.toml"
    job.write_text(read_job(job.name), "utf-8")
    with serving(job) as address:
        one, two = (opened(f"{address}/shop/saw/list", PHONE) for _ in range(2))
        for phone in (one, two):
            phone.get_by_role("link", name="setting 4 of").first.click()
            expect(phone.locator("h1")).to_contain_text("1.6")
        tick = one.locator("button.tick").first
        tick.click()
        expect(tick).to_have_attribute("data-state", "done")
        tick.click()
        one.get_by_role("link", name="is no good").click()
        _keys(one, "Spoiled", "It is spoiled", "Plan the rest anew now", "Plan it anew")
        told = two.get_by_role("alert", name="what changed")
        expect(told).to_contain_text("Planned anew")
        expect(two.locator(".stays")).to_contain_text("gave 3 bottom")
        expect(two.locator("h1")).to_contain_text("1.6")
        _keys(two, "I have seen what changed")
        expect(told).to_be_hidden()
        one.get_by_role("link", name="Where 3 bottom is cut").click()
        expect(one.locator("h1")).to_contain_text("piece 2.")
        for page in (one, two):
            page.close()
