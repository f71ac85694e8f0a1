"""Jobs served to a real browser, Debian's Chromium, with a fresh profile."""

from __future__ import annotations

import gc
import os
import re
import shutil
import socket
import threading
import time
import warnings
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import replace
from pathlib import Path

import pytest
import uvicorn
from playwright.sync_api import (
    Browser,
    BrowserContext,
    ConsoleMessage,
    Page,
    expect,
    sync_playwright,
)

from casewright.job.starter import starter_text
from casewright.web.application import application
from casewright.web.built_page import BuiltPage
from casewright.web.page_build import built_page_folder

DESK = {"width": 1366, "height": 850}
PHONE = {"width": 390, "height": 780}
PATIENCE_MS = 180_000
"""How long anything may take to appear where much else is at work: no test waits it out."""

_FLAGS = (
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-sync",
    "--disable-background-networking", "--disable-component-update",
)  # fmt: skip


def free_port() -> int:
    """One that nobody is given by chance: the system gives others from 32768 on (Linux)."""
    for port in range(20_000 + os.getpid() * 10 % 12_000, 32_768):
        with socket.socket() as tried, suppress(OSError):
            tried.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            tried.bind(("127.0.0.1", port))
            return port
    raise AssertionError


@contextmanager
def serving(job: Path, port: int = 0, build: str = "") -> Iterator[str]:
    """A job served as `casewright serve` does; where it is found. `build`: of another page."""
    page = BuiltPage.read(built_page_folder())
    app = application(job, replace(page, build=build) if build else page)
    config = uvicorn.Config(app, port=port, log_level="error", timeout_graceful_shutdown=1)
    server = uvicorn.Server(config)
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    while not server.started:
        time.sleep(0.02)
    port = server.servers[0].sockets[0].getsockname()[1]
    try:
        yield f"http://127.0.0.1:{port}"
    finally:
        app.state.site.news.close()
        server.should_exit = True
        thread.join(PATIENCE_MS / 1000)
        del app, config, server, thread
        with warnings.catch_warnings(action="ignore", category=ResourceWarning):
            gc.collect()  # a socket that the browser still held is dropped here, in no other test


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """One browser for all tests of a module."""
    where = shutil.which("chromium")
    assert where is not None, "the tests of the page need Debian's chromium"
    expect.set_options(timeout=PATIENCE_MS)
    with sync_playwright() as play:
        started = play.chromium.launch(executable_path=where, args=_FLAGS)
        yield started
        started.close()


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """The short job file that `casewright new` writes."""
    path = tmp_path / "kitchen.toml"
    path.write_text(starter_text(path.name, "in"), "utf-8")
    return path


@pytest.fixture
def served(job: Path) -> Iterator[str]:
    """Where the short job is found."""
    with serving(job) as address:
        yield address


@pytest.fixture
def opened(browser: Browser) -> Iterator[Callable[..., Page]]:
    """Opens pages, each a device of its own; whatever it asks elsewhere or complains of fails."""
    contexts: list[BrowserContext] = []
    complaints: list[str] = []

    def new_page(address: str, size: dict[str, int] = DESK, **options: object) -> Page:
        context = browser.new_context(viewport=size, **options)  # type: ignore[arg-type]
        context.set_default_timeout(PATIENCE_MS)
        contexts.append(context)
        page = context.new_page()
        page.on("console", lambda m: _note_complaint(m, complaints))
        page.on("pageerror", lambda error: complaints.append(str(error)))
        page.on("request", lambda r: _note_stranger(r.url, complaints))
        page.goto(address)
        return page

    yield new_page
    for context in contexts:
        context.close()
    assert not complaints, complaints


def _note_complaint(message: ConsoleMessage, complaints: list[str]) -> None:
    """An error, unless it is the browser's own note of an answer that says no in words.

    A drawing may be asked for in the moment in which the plan that it is of gives way to another.
    """
    said_no = re.search(r"responded with a status of 4(01|09|22)\b", message.text)
    is_gone = "status of 404" in message.text and "/shop/drawings/" in message.location["url"]
    if message.type == "error" and not said_no and not is_gone:
        complaints.append(message.text)


def _note_stranger(url: str, complaints: list[str]) -> None:
    if not url.startswith(("http://127.0.0.1:", "data:", "blob:")):
        complaints.append(f"asked elsewhere: {url}")
