"""A job that is served, asked as a browser on this machine would ask."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from casewright.job.starter import starter_text
from casewright.web.application import application
from casewright.web.built_page import BuiltPage, PageFile
from casewright.web.guard import MARK

PAGE = BuiltPage(
    {
        "index.html": PageFile(b"<!doctype html><title>front</title>", "text/html"),
        "assets/page.js": PageFile(b"0", "text/javascript"),
    },
    "build",
)
HERE = ("127.0.0.1", 50_000)
AT_HOME = ("192.168.7.9", 50_000)


@pytest.fixture
def job(tmp_path: Path) -> Path:
    """The short job file that `casewright new` writes."""
    path = tmp_path / "kitchen.toml"
    path.write_text(starter_text(path.name, "in"), "utf-8")
    return path


class PlansNothing:
    """In place of what plans the cuts in a process of its own: nobody here asks for them."""

    def __init__(self, found: object) -> None:
        """It finds nothing."""

    def ask(self, snapshot: object, *, begun: bool) -> None:
        """Not asked for."""

    def stop(self) -> None:
        """Nothing is under way."""


@pytest.fixture
def desk(job: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[TestClient]:
    """A browser on the machine that serves; cuts are not planned."""
    monkeypatch.setattr("casewright.web.live_job.Planner", PlansNothing)
    app = application(job, PAGE, ("http://192.168.7.2:8417/",), ("192.168.7.2",))
    headers = {MARK: "1"}
    with TestClient(app, "http://127.0.0.1:8417", client=HERE, headers=headers) as client:
        yield client
