"""Pages as they are read: by a screen reader, in bright sun, by keyboard alone."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import pairwise
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from tests.browser.conftest import DESK, PHONE, serving
from tests.browser.looking import contrasts, nameless, ranks
from tests.unit.web.test_fuzz import TEXT
from tests.unit.web.test_shop_routes import PlansOnce

from casewright.job.recorded import read_entries

DESK_PAGES = ("/", "/survey", "/cases", "/cases/left", "/cut", "/machine", "/assemble", "/install",
              "/publish", "/devices")  # fmt: skip
SHOP_PAGES = ("/shop", "/shop/saw", "/shop/machine", "/shop/assemble", "/shop/finish",
              "/shop/hang", "/shop/hang/list", "/shop/holds", "/shop/part/1",
              "/shop/unsent")  # fmt: skip


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[str, Path]]:
    """Where a job with a surveyed wall is served, its cuts planned, and its file."""
    path = tmp_path_factory.mktemp("reading") / "kitchen.toml"
    path.write_text(TEXT, "utf-8")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("casewright.web.live_job.Planner", PlansOnce)
        with serving(path) as address:
            yield address, path


def _go(page: Page, path: str) -> None:
    """To a place of the page, as a link of its own leads there."""
    page.evaluate(
        "(to) => { history.pushState(null, '', to); dispatchEvent(new Event('popstate')) }", path
    )
    expect(page.locator("h1").first).to_be_attached()
    page.wait_for_load_state("networkidle")


@pytest.mark.parametrize(
    ("first", "paths", "size", "theme"),
    [
        ("/", DESK_PAGES, DESK, "light"),
        ("/", ("/", "/buy", "/cases/left", "/machine/left"), DESK, "sun"),
        ("/shop", SHOP_PAGES, PHONE, "light"),
        ("/shop", SHOP_PAGES, PHONE, "sun"),
    ],
    ids=["desk", "desk in the sun", "shop", "shop in the sun"],
)
def test_every_page_can_be_read(
    place: tuple[str, Path], opened: Callable[..., Page], first: str, paths: tuple[str, ...],
    size: dict[str, int], theme: str,
) -> None:  # fmt: skip
    """Names, headings in order, contrast to WCAG 2.2 AA, nothing wider than the screen."""
    page = opened(f"{place[0]}{first}", size)
    page.evaluate(
        "(theme) => localStorage.setItem('casewright.theme', JSON.stringify(theme))", theme
    )
    page.reload()
    expect(page.locator("h1").first).to_be_visible()
    if first == "/shop":
        expect(page.locator("a.station", has_text="Saw")).to_be_visible()
    seen = 0
    for path in paths:
        _go(page, path)
        read = contrasts(page)
        faint = [each for each in read if each["ratio"] < each["least"]]
        assert not faint, (path, faint[:5])
        assert not nameless(page), path
        levels = ranks(page)
        assert levels.count(1) == 1, (path, levels)
        assert all(after <= before + 1 for before, after in pairwise(levels)), (path, levels)
        assert page.evaluate("document.documentElement.scrollWidth") <= size["width"], path
        seen += len(read)
    assert seen > 100


_WEIGHTS = """() => [...document.querySelectorAll("article b, article strong, article .size, h1")]
  .filter((each) => each.checkVisibility() && each.closest("button, .hidden") === null)
  .map((each) => [each, each.closest("p, li, article")])
  .map(([each, round]) => [each, round === each ? round.parentElement : round])
  .map((two) => two.map((each) => Number(getComputedStyle(each).fontWeight)))"""


@pytest.mark.parametrize("theme", ["light", "sun"])
def test_words_that_carry_weight_stand_out(
    place: tuple[str, Path], opened: Callable[..., Page], theme: str
) -> None:
    """Two steps of the typeface above the words round them, in either contrast."""
    page = opened(f"{place[0]}/shop", PHONE)
    expect(page.locator("a.station", has_text="Saw")).to_be_visible()
    if theme == "sun":
        page.get_by_role("button", name="Bright sun").click()
        expect(page.locator(".shop.sun")).to_be_attached()
    seen = 0
    for path in ("/shop/machine", "/shop/assemble", "/shop/finish", "/shop/hang", "/shop/part/1"):
        _go(page, path)
        weights = page.evaluate(_WEIGHTS)
        assert all(own >= round_it + 200 for own, round_it in weights), (path, weights)
        seen += len(weights)
    assert seen > 10


def test_what_is_not_sent_is_told_where_it_is_read_aloud(
    place: tuple[str, Path], opened: Callable[..., Page]
) -> None:
    """In a live region (WCAG 2.2, 4.1.3), without taking the focus."""
    page = opened(f"{place[0]}/shop/hang", PHONE)
    expect(page.get_by_role("status").filter(has_text="sent")).to_have_count(1)


def test_a_station_is_worked_through_by_keyboard_alone(
    place: tuple[str, Path], opened: Callable[..., Page]
) -> None:
    """From the first page into the station, a tick, the next card; the focus is always seen."""
    page = opened(f"{place[0]}/shop", PHONE, reduced_motion="reduce")
    expect(page.locator("a.station", has_text="Machine")).to_be_visible()
    _tab_to(page, "a.station[href='/shop/machine']")
    page.keyboard.press("Enter")
    expect(page.get_by_role("navigation", name="cards")).to_be_visible()
    before = len(read_entries(place[1])[0])
    _tab_to(page, "button.tick")
    page.keyboard.press("Space")
    expect(page.locator("button.tick").first).to_have_attribute("data-state", "done")
    assert [entry.kind for entry in read_entries(place[1])[0][before:]] == ["machined"]
    title = page.locator("h1").inner_text()
    _tab_to(page, ".steps button.firm")
    page.keyboard.press("Enter")
    expect(page.locator("h1")).not_to_have_text(title)
    _tab_to(page, ".steps button:not(.firm)")
    page.keyboard.press("Enter")
    expect(page.locator("h1")).to_have_text(title)


def _tab_to(page: Page, selector: str) -> None:
    """Press Tab until it has the focus; what has it is never hidden (WCAG 2.2, 2.4.11)."""
    for _ in range(80):
        page.keyboard.press("Tab")
        shown = page.evaluate(
            """(selector) => {
              const own = document.activeElement;
              const box = own.getBoundingClientRect();
              const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
              const at = document.elementFromPoint(x, y);
              const isSeen = at !== null && (own.contains(at) || at.contains(own));
              const isBody = own === document.body;
              return [own.matches(selector), isBody || isSeen, own.outerHTML.slice(0, 120)];
            }""",
            selector,
        )
        assert shown[1], shown[2]
        if shown[0]:
            return
    raise AssertionError(selector)
