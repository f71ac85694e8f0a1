"""A job kept worked out while others write its file, whatever the moment they do it in."""

from __future__ import annotations

import threading
from pathlib import Path

import pytest
from tests.unit.web.conftest import PlansNothing

from casewright.job.recorded import AsRecorded, as_recorded
from casewright.web import live_job
from casewright.web.live_job import LiveJob
from casewright.web.snapshot import Standing
from casewright.web.watching import Stamp, stamp


def _live(job: Path, told: list[Standing]) -> LiveJob:
    return LiveJob(job, told.append, lambda: None, lambda: None)


def test_who_asks_while_another_looks_sees_what_was_written_before(
    job: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The other had looked at the file already, and tells nothing new."""
    looked, goes_on = threading.Event(), threading.Event()

    def held_up(paths: tuple[Path, ...]) -> Stamp:
        found = stamp(paths)
        if not looked.is_set():
            looked.set()
            assert goes_on.wait(60)
        return found

    live = _live(job, [])
    with live.writing():
        """Nothing is written; what is there is seen."""
    monkeypatch.setattr(live_job, "stamp", held_up)
    other, asks = (threading.Thread(target=live.look) for _ in range(2))
    other.start()
    assert looked.wait(60)
    job.write_text(f"{job.read_text('utf-8')}# mine\n", "utf-8")
    asks.start()
    goes_on.set()
    for each in (asks, other):
        each.join()
    assert live.version == 2


def test_half_a_file_is_never_told(job: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Who has just begun to write is waited for, whether or not the half has a meaning."""
    whole = f"{job.read_text('utf-8')}\n# the end\n"
    still_written = [whole, whole.removesuffix("# the end\n")]

    def in_mid_write(path: Path) -> AsRecorded:
        try:
            return as_recorded(path)
        finally:
            if still_written:
                job.write_text(still_written.pop(), "utf-8")

    told: list[Standing] = []
    monkeypatch.setattr(live_job, "as_recorded", in_mid_write)
    monkeypatch.setattr(live_job, "Planner", PlansNothing)
    live = _live(job, told)
    job.write_text(whole.removesuffix(" end\n").replace("# the", "wid"), "utf-8")
    live.start()
    try:
        live.wait_for(1, 60)
    finally:
        live.stop()
    assert not any(each.problems for each in told)
    assert {each.snapshot.loaded.file.text for each in told if each.snapshot} == {whole}
