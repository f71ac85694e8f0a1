"""Building the page from its sources."""

from __future__ import annotations

import threading
from pathlib import Path

import pytest

from casewright.web import page_build


def test_the_page_is_built_once_however_many_start_at_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Two servers, or two workers that run tests, in a checkout where it was not built yet."""
    source, built = tmp_path / "page", tmp_path / "built"
    source.mkdir()
    (source / "front.ts").write_text("0", "utf-8")
    both, times = threading.Barrier(2), list[int]()

    def build() -> None:
        times.append(1)
        built.mkdir()
        (built / "index.html").write_text("front", "utf-8")

    monkeypatch.setattr(page_build, "SOURCE", source)
    monkeypatch.setattr(page_build, "BUILT", built)
    monkeypatch.setattr(page_build, "_build", build)
    starts = [
        threading.Thread(target=page_build.built_page_folder, args=(both.wait,)) for _ in range(2)
    ]
    for each in starts:
        each.start()
    for each in starts:
        each.join()
    assert len(times) == 1
    assert page_build.built_page_folder(both.abort) == built
    assert not both.broken
