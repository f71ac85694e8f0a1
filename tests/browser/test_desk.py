"""The desk in a real browser."""

from __future__ import annotations

from collections.abc import Callable

from playwright.sync_api import Page, expect


def test_the_desk_shows_the_job(served: str, opened: Callable[..., Page]) -> None:
    """Its name is the heading of the page."""
    page = opened(served)
    expect(page.get_by_role("heading", level=1)).not_to_be_empty()
