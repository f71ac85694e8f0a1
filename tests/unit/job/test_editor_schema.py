"""The schema that editors use says what the reader says; the reference is written from it."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import jsonschema
import pytest
import tomlkit
from tests.jobs import EXAMPLE_NAMES, FIVE_LINES, example, read

from casewright.errors import JobFileError
from casewright.job.editor_schema import job_schema
from casewright.job.reference import reference_text
from casewright.job.starter import starter_text
from casewright.style import STYLE_KEYS

ROOT = Path(__file__).parents[3]


def _errors(text: str) -> list[str]:
    validator = jsonschema.Draft202012Validator(job_schema())
    data: Any = tomlkit.parse(text).unwrap()
    return [error.message for error in validator.iter_errors(data)]


def test_the_schema_is_a_schema() -> None:
    """By a validator that is not ours."""
    jsonschema.Draft202012Validator.check_schema(job_schema())


@pytest.mark.parametrize(
    "text", [FIVE_LINES, starter_text("a.toml", "in"), starter_text("a.toml", "mm"),
             *(example(name) for name in EXAMPLE_NAMES)],
)  # fmt: skip
def test_sound_files_pass_both(text: str) -> None:
    """No example that the reader takes is marked wrong in an editor."""
    assert read(text).cases
    assert _errors(text) == []


@pytest.mark.parametrize(
    "line",
    [
        "widht = 3", 'joint = "nails"', 'shelves = "2"', "depth = true", "front = 3",
        'front = "oak"', "title = 4", "finished = [1]", "style = { gapp = 1 }", "shelves = 99",
    ],
)  # fmt: skip
def test_wrong_files_fail_both(line: str) -> None:
    """What the reader refuses by form, the editor marks."""
    text = f"{FIVE_LINES}{line}\n"
    assert _errors(text)
    with pytest.raises(JobFileError):
        read(text)


def test_the_reference_is_up_to_date() -> None:
    """After a change: python -m casewright.job.reference > docs/job-file.md."""
    assert (ROOT / "docs" / "job-file.md").read_text("utf-8") == reference_text()


def test_the_reference_names_every_style_key() -> None:
    """With its meaning."""
    text = reference_text()
    assert [key.name for key in STYLE_KEYS if f"| `{key.name}` |" not in text] == []
