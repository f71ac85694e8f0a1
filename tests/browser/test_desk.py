"""The desk in a real browser: drawn walls, numbers changed where they stand, why, undo."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from tests.browser.conftest import DESK, PATIENCE_MS, PHONE, serving
from tests.jobs import example

WALL = """format = 1
unit = "in"
name = "Small <b>kitchen</b>"

# The wall, read low, middle and high.
[case.left]
kind = "base"
[case.right]
kind = "base"
width = "30"  # as wide as the old one

[run.window]
cases = ["left", "right"]
wall = ["72 1/4", "72 1/8", "72 1/2"]
"""


@pytest.fixture(scope="module")
def place(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[str, Path]]:
    """Where a job with one run is served, and its file."""
    path = tmp_path_factory.mktemp("desk") / "kitchen.toml"
    path.write_text(WALL, "utf-8")
    with serving(path) as address:
        yield address, path


@pytest.fixture(autouse=True)
def _as_written(place: tuple[str, Path]) -> Iterator[None]:
    yield
    place[1].write_text(WALL, "utf-8")


def _touch(page: Page, path: str) -> None:
    """Click on the figures of a number."""
    page.locator(f'g.dimension[data-path="{path}"]').first.locator(".field").click()


def _width(page: Page) -> str:
    number = page.locator('g.dimension[data-path="right.overall_width"]').first
    expect(number).to_be_visible()
    return number.get_attribute("aria-label") or ""


def test_a_number_is_changed_where_it_stands(
    place: tuple[str, Path], opened: Callable[..., Page]
) -> None:
    """By keyboard alone; the file keeps its comments, the drawing follows, and back again."""
    address, path = place
    page = opened(address)
    expect(page.get_by_role("link", name="Small <b>kitchen</b>")).to_be_visible()
    assert _width(page).endswith(": 30")
    page.locator('g.dimension[data-path="right.overall_width"]').first.focus()
    page.keyboard.press("Enter")
    dialog = page.get_by_role("dialog")
    expect(dialog.get_by_role("textbox")).to_be_focused()
    page.keyboard.type("28 1/2")
    page.keyboard.press("Enter")
    expect(dialog).to_be_hidden()
    expect(page.locator('g.dimension[aria-label$=": 28 1/2"]').first).to_be_visible()
    assert 'width = "28 1/2"  # as wide as the old one' in path.read_text("utf-8")
    page.get_by_role("button", name="Undo").click()
    expect(page.locator('g.dimension[aria-label$="width: 30"]').first).to_be_visible()
    assert path.read_text("utf-8") == WALL


def test_what_has_no_meaning_is_told_beside_the_number(
    place: tuple[str, Path], opened: Callable[..., Page]
) -> None:
    """Nothing is written, and the words say what would be right."""
    address, path = place
    page = opened(address)
    _touch(page, "right.overall_width")
    page.get_by_role("dialog").get_by_role("textbox").fill("thirty")
    # The server's answer is a refusal, which the browser also notes in its console.
    with page.expect_response("**/api/numbers") as answer:
        page.keyboard.press("Enter")
    assert answer.value.status == 422
    expect(page.get_by_role("alert")).to_contain_text("thirty")
    assert path.read_text("utf-8") == WALL


def test_why_is_walked_down_and_back(place: tuple[str, Path], opened: Callable[..., Page]) -> None:
    """From the width of a case that shares what is left, to a reading of the wall."""
    page = opened(place[0])
    _touch(page, "left.overall_width")
    dialog = page.get_by_role("dialog")
    seen = []
    for _ in range(12):
        seen.append(dialog.get_by_role("heading").inner_text())
        inside = dialog.get_by_label("Rests on").get_by_role("button")
        onward = inside.filter(has_text=re.compile("clear|bottom|share|run window"))
        if not inside.count() or "kitchen.toml line" in dialog.inner_text():
            break
        (onward if onward.count() else inside).first.click()
        expect(dialog.get_by_role("heading")).not_to_have_text(seen[-1])
    assert "kitchen.toml line" in dialog.inner_text()
    for _ in range(8):
        page.keyboard.press("Tab")
        expect(dialog.locator(":focus")).to_have_count(1)
    page.keyboard.press("Escape")
    expect(dialog).to_be_hidden()


def test_an_edit_in_an_editor_shows(place: tuple[str, Path], opened: Callable[..., Page]) -> None:
    """So does a mistake there: the drawing stays as it was, with the place of the mistake."""
    address, path = place
    page = opened(address)
    assert _width(page).endswith(": 30")
    path.write_text(WALL.replace('width = "30"', 'width = "31"'), "utf-8")
    expect(page.locator('g.dimension[aria-label$="width: 31"]').first).to_be_visible()
    path.write_text(WALL.replace('width = "30"', "width = 30 1/2"), "utf-8")
    expect(page.get_by_role("alert")).to_contain_text("line 10")
    expect(page.locator('g.dimension[aria-label$="width: 31"]').first).to_be_visible()


def test_a_number_changed_in_an_editor_meanwhile_is_shown_not_overwritten(
    place: tuple[str, Path], opened: Callable[..., Page]
) -> None:
    """What was typed stays; what the file says now stands beside it, at the number as drawn."""
    address, path = place
    page = opened(address)
    _touch(page, "right.overall_width")
    dialog = page.get_by_role("dialog")
    dialog.get_by_role("textbox").fill("28")
    path.write_text(WALL.replace('width = "30"', 'width = "31"'), "utf-8")
    expect(dialog.get_by_role("status")).to_contain_text("became 31; it was 30")
    expect(page.locator('g.dimension[aria-label$="width: 31"]').first).to_be_visible()
    assert path.read_text("utf-8") == WALL.replace('width = "30"', 'width = "31"')
    page.wait_for_function(_BESIDE)
    expect(dialog.get_by_role("textbox")).to_have_value("28")
    dialog.get_by_role("button", name="Write").click()
    expect(page.locator('g.dimension[aria-label$="width: 28"]').first).to_be_visible()


_BESIDE = """() => {
  const [panel, number] = ['.why', 'g.dimension[data-path="right.overall_width"] .field'].map(
    (each) => document.querySelector(each)?.getBoundingClientRect());
  return Math.min(Math.abs(panel.top - number.bottom), Math.abs(number.top - panel.bottom)) < 20;
}"""


def test_two_desks_see_each_others_edits(
    place: tuple[str, Path], opened: Callable[..., Page]
) -> None:
    """An edit made on one is drawn on the other without being asked for."""
    one, other = opened(place[0]), opened(place[0])
    _width(other)
    _touch(one, "right.overall_width")
    one.get_by_role("dialog").get_by_role("textbox").fill("29")
    one.keyboard.press("Enter")
    expect(other.locator('g.dimension[aria-label$="width: 29"]').first).to_be_visible()


@pytest.mark.parametrize("size", [DESK, PHONE], ids=["desk", "phone"])
def test_every_page_of_the_job_can_be_reached(
    place: tuple[str, Path], opened: Callable[..., Page], size: dict[str, int]
) -> None:
    """No page is wider than the screen; each has one heading row and a name of its own."""
    page = opened(place[0], size)
    names = page.get_by_role("navigation", name="Pages of the job").get_by_role("link")
    expect(names.first).to_be_visible()
    for name in names.all_inner_texts():
        if name == "shop":
            continue
        page.get_by_role("link", name=name, exact=True).first.click()
        expect(page.get_by_role("link", name=name, exact=True).first).to_have_attribute(
            "aria-current", "page"
        )
        wide = page.evaluate("document.documentElement.scrollWidth")
        assert wide <= size["width"], name


def test_without_a_script_of_its_own_nothing_of_the_file_runs(
    place: tuple[str, Path], browser: Browser
) -> None:
    """A title that looks like markup is shown as it was typed."""
    address, path = place
    evil = '<img src=x onerror=\\"window.hit=1\\">'
    path.write_text(WALL.replace("Small <b>kitchen</b>", evil), "utf-8")
    context = browser.new_context()
    context.set_default_timeout(PATIENCE_MS)
    page = context.new_page()
    page.goto(address)
    expect(page.get_by_role("link", name="<img src=x")).to_be_visible()
    page.goto(f"{address}/cases")
    expect(page.locator("svg").first).to_be_visible()
    assert page.evaluate("window.hit") is None
    context.close()


def test_answers_stand_side_by_side_and_one_is_taken_then_changed_by_hand(
    place: tuple[str, Path], opened: Callable[..., Page]
) -> None:
    """Where nothing fits it says what would do; a width set by hand is no longer the layout's."""
    address, path = place
    page = opened(address)
    page.get_by_role("button", name="Other answers for this run").click()
    answers = page.get_by_label("Other answers")
    expect(answers).to_contain_text("left over")
    expect(answers.get_by_role("listitem").filter(has_text="wider").first).to_be_visible()
    path.write_text(WALL.replace('width = "30"', 'width = "34"'), "utf-8")
    page.get_by_role("button", name="Other answers for this run").click()
    first = answers.get_by_role("article").first
    expect(first.locator("svg")).to_be_visible()
    for number, said in (
        (first.locator("data.measure").first, "bound by"),
        (first.locator("g.dimension[role=button]").first, "With answer 1, if it were taken"),
    ):
        number.focus()
        page.keyboard.press("Enter")
        expect(page.get_by_role("dialog")).to_contain_text(said)
        page.keyboard.press("Escape")
    answers.get_by_role("button", name="Take answer 1").click()
    number = page.locator('g.dimension[data-path="left.overall_width"]').first
    expect(answers).to_be_hidden()
    assert "[run.window.solved]" in path.read_text("utf-8")
    expect(number).to_be_visible()
    _touch(page, "left.overall_width")
    page.get_by_role("dialog").get_by_role("textbox").fill("33")
    page.keyboard.press("Enter")
    expect(page.locator('g.dimension[aria-label$="width: 33"]').first).to_be_visible()
    text = path.read_text("utf-8")
    assert "solved" not in text
    assert '[case.left]\nkind = "base"\nwidth = "33"\n[case.right]' in text


def test_an_island_is_seen_in_three_dimensions_with_its_boxes(
    tmp_path: Path, opened: Callable[..., Page]
) -> None:
    """A piece leads to its card; the fronts open and come off; pieces come out one by one."""
    path = tmp_path / "islands.toml"
    path.write_text(example("gallery_islands"), "utf-8")
    with serving(path) as address:
        page = opened(f"{address}/layout", {"width": 500, "height": 400})
        page.get_by_role("link", name="Its panels").first.click()
        page.get_by_role("link", name="In three dimensions").click()
        expect(page.locator(".view canvas")).to_be_visible()
        pieces = page.locator(".pieces a")
        page.get_by_text(re.compile(r"All \d+ pieces")).click()
        expect(pieces.filter(has_text="top nailer").first).to_be_visible()
        for name in ("Open the fronts", "Take the fronts off", "One piece out"):
            page.get_by_role("button", name=name).click()
        expect(page.get_by_role("slider")).to_have_value("1")
        pieces.first.click()
        expect(page).to_have_url(re.compile("/machine/.+#"))
        page.close()


_IN_SIGHT = """() => {
  const under = document.querySelector('.contents').getBoundingClientRect().bottom;
  const { top, bottom } = document.querySelector('#trims h2').getBoundingClientRect();
  return top >= under - 1 && bottom <= innerHeight;
}"""


_STAYS = """() => {
  const listed = document.querySelector('.contents').getBoundingClientRect();
  const head = document.querySelector('header.top').getBoundingClientRect();
  const led = document.getElementById(decodeURIComponent(location.hash.slice(1)));
  const { top, bottom } = led?.getBoundingClientRect() ?? {};
  const isUnderHead = Math.abs(listed.top - head.bottom) <= 2 && scrollY > innerHeight;
  return isUnderHead && top >= listed.bottom - 1 && bottom <= innerHeight;
}"""


def test_a_long_page_is_read_section_by_section_and_printed_whole(
    tmp_path: Path, opened: Callable[..., Page]
) -> None:
    """By keyboard alone; what is led to is in sight under what stays there."""
    path = tmp_path / "kitchen.toml"
    path.write_text(example("kitchen"), "utf-8")
    with serving(path) as address:
        page = opened(f"{address}/install", {"width": 1024, "height": 700})
        listed = page.get_by_role("navigation", name="On this page")
        sections = page.locator(".chapter > section")
        trims = listed.get_by_role("link", name="Trims")
        trims.focus()
        page.keyboard.press("Enter")
        expect(trims).to_have_attribute("aria-current", "true")
        expect(sections.filter(visible=True)).to_have_count(1)
        page.wait_for_function(_IN_SIGHT)
        page.emulate_media(media="print")
        expect(sections.filter(visible=True)).to_have_count(sections.count())
        expect(page.get_by_role("heading", name="At the wall", exact=True)).to_be_visible()
        page.emulate_media(media="screen")
        listed.get_by_role("button", name="All on one page").click()
        expect(sections.filter(visible=True)).to_have_count(sections.count())
        for to, name in (("/machine", re.compile("^3: Plate template")), ("/machine/pots", "3")):
            page.goto(f"{address}{to}")
            listed.get_by_role("link", name=name).last.click()
            page.wait_for_function(_STAYS)
        page.close()
