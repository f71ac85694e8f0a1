"""Saving an edited job file."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.jobs import FIVE_LINES

from casewright.errors import JobFileError
from casewright.job.edits import set_value
from casewright.job.load import LoadedJob, load_job
from casewright.job.saving import save
from casewright.outputs.files import OutputError

MARK = b"\xef\xbb\xbf"


def _job(folder: Path, content: bytes = FIVE_LINES.encode()) -> LoadedJob:
    path = folder / "kitchen.toml"
    path.write_bytes(content)
    path.chmod(0o640)
    return load_job(path)


def test_an_edit_is_saved_in_the_form_of_the_file(tmp_path: Path) -> None:
    """Mark, line ends and permissions stay."""
    job = _job(tmp_path, MARK + FIVE_LINES.replace("\n", "\r\n").encode())
    saved = save(job, set_value(job.file.text, ("case", "upper", "width"), "36"))
    assert saved.spec.cases[0].width is not None
    wanted = FIVE_LINES.replace("\n", "\r\n").replace("33", "36")
    assert job.path.read_bytes() == MARK + wanted.encode()
    assert job.path.stat().st_mode & 0o777 == 0o640


def test_somebody_elses_change_is_not_lost(tmp_path: Path) -> None:
    """The file on disk is not the one that was loaded."""
    job = _job(tmp_path)
    job.path.write_text(FIVE_LINES + "# mine\n")
    with pytest.raises(OutputError, match="changed by somebody else"):
        save(job, FIVE_LINES.replace("33", "36"))
    assert job.path.read_text() == FIVE_LINES + "# mine\n"


def test_a_text_without_meaning_is_not_saved(tmp_path: Path) -> None:
    """The file stays as it was."""
    job = _job(tmp_path)
    with pytest.raises(JobFileError):
        save(job, FIVE_LINES.replace("33", "999"))
    assert job.path.read_text() == FIVE_LINES


def test_a_file_that_is_gone_is_told(tmp_path: Path) -> None:
    """Nothing is made in its place."""
    job = _job(tmp_path)
    job.path.unlink()
    with pytest.raises(OutputError):
        save(job, FIVE_LINES)
    assert not job.path.exists()
