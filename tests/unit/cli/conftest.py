"""A small job to record in."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.record_shop import KITCHEN, Shop


@pytest.fixture
def job(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("CASEWRIGHT_DEVICE", "bench")
    file = tmp_path / "kitchen.toml"
    file.write_text(KITCHEN)
    return file


@pytest.fixture
def shop(job: Path, capsys: pytest.CaptureFixture[str]) -> Shop:
    return Shop(job, capsys)
