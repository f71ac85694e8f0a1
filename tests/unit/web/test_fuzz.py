"""Requests made up from the schema of the server, sense and nonsense: none of them is its fault.

Made by schemathesis, a fuzzer of HTTP interfaces, from the same OpenAPI schema as the page's
types; words that exist in the job are put into it, so that many get past the first look. The
stream of news is left out: it does not end by itself.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
import schemathesis
from hypothesis import HealthCheck, settings
from schemathesis.core import NOT_SET
from starlette.testclient import TestClient
from tests.unit.web.conftest import HERE, PAGE

from casewright.record import KINDS
from casewright.web.application import application
from casewright.web.guard import MARK
from casewright.web.openapi import schema
from casewright.web.planner import Found
from casewright.web.snapshot import Snapshot

JOB = "kitchen.toml"
TEXT = """format = 1
unit = "in"
name = "Small kitchen"

[case.left]
kind = "base"
[case.right]
kind = "base"
width = "30"

[wall.north]
width = ["72 1/4", "72 1/8", "72 1/2"]
stations = [
    { along = 0, down = "40 1/4", up = "66 1/8", whole = "106 3/8" },
    { along = 36, down = "40", up = "66" },
    { along = 72, down = "40 1/8", up = "66 1/8" },
]
studs = ["9 3/8", "25 1/2", "41 1/2", "57 3/8"]

[run.window]
cases = ["left", "right"]
on = "north"
"""


PAGES = ["survey", "layout", "cases", "buy", "cut", "machine", "assemble", "install", "publish"]


class NoPlanner:
    """Leaves the cuts unplanned."""

    def __init__(self, found: Callable[[int, Found], None]) -> None:
        """Nothing is begun."""

    def ask(self, snapshot: Snapshot, *, begun: bool) -> None:
        """Nothing is planned."""

    def stop(self) -> None:
        """Nothing is under way."""


def _known(words: list[str]) -> dict[str, Any]:
    return {"anyOf": [{"enum": words}, {"type": "string", "maxLength": 200}]}


def _api() -> dict[str, Any]:
    """The schema of the server, with words that exist in the job."""
    words = ["left", "right.overall_width", "left.side_left", "stock.plywood.thickness", "1",
             "30 1/2", "", "step.left.2", "overview", "run.window", "window", "layout", "cases",
             "cut"]  # fmt: skip
    api = schema()
    del api["paths"]["/api/events"]
    del api["paths"]["/api/packet"]["post"]  # a process of its own: see the tests of the packet
    parts = api["components"]["schemas"]
    entry, number = parts["EntryIn"]["properties"], parts["NewNumber"]["properties"]
    entry["kind"] = {"enum": [*KINDS, "sung"]}
    entry["words"]["items"] = _known(words)
    entry["id"] = {"enum": [f"{n:032x}" for n in range(200)]}
    number["path"], number["key"] = (
        _known(words),
        _known(["case.right.width", "wall.north.width", ""]),
    )
    number["value"] = _known(["30", "30 1/2", "0", "-1", "1/0", "\u00bd"])
    digest = {"enum": [hashlib.sha256(TEXT.encode()).hexdigest()]}
    number["digest"] = digest
    parts["Body_take_api_layouts__of__post"]["properties"]["digest"] = digest
    for operations in api["paths"].values():
        for operation in operations.values():
            for each in operation.get("parameters", []):
                if each["schema"].get("type") == "string":
                    each["schema"] = _known(PAGES if each["name"] == "page" else words)
    return api


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Iterator[TestClient]:
    """One server for all requests; an error of its own is an answer, as in a browser."""
    path = tmp_path_factory.mktemp("fuzz") / JOB
    path.write_text(TEXT, "utf-8")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("casewright.web.live_job.Planner", NoPlanner)
        app = application(path, PAGE)
    with TestClient(
        app, "http://127.0.0.1:8417", client=HERE, headers={MARK: "1"},
        raise_server_exceptions=False,
    ) as client:  # fmt: skip
        yield client


requests = schemathesis.openapi.from_dict(_api())
requests.config.phases.coverage.unexpected_methods = set()


def as_first_written(path: Path) -> None:
    """Every edit meets the same file."""
    if path.read_text("utf-8") != TEXT:
        new = path.with_suffix(".new")
        new.write_text(TEXT, "utf-8")
        new.replace(path)


@requests.parametrize()
@settings(
    max_examples=8, deadline=None, derandomize=True, database=None,
    suppress_health_check=list(HealthCheck),
)  # fmt: skip
def test_no_request_is_answered_with_a_server_error(case: Any, desk: TestClient) -> None:
    """It is done, or refused in words (RFC 9110: 5xx is the server's own fault)."""
    body = case.body
    given = (
        {} if body is NOT_SET else {"content": body} if isinstance(body, bytes) else {"json": body}
    )
    as_first_written(desk.app.state.site.live.path)  # type: ignore[attr-defined]
    times = 2 if case.method == "GET" else 1  # what was drawn once is drawn again
    for _ in range(times):
        answer = desk.request(case.method, case.formatted_path, params=case.query or None, **given)
        assert answer.status_code < 500, answer.text
        assert answer.status_code < 400 or answer.json().get("what")
