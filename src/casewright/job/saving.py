"""Saving an edited job file: whole or not at all, and never over somebody else's change."""

from __future__ import annotations

import hashlib

from casewright.job.load import LoadedJob, read_job
from casewright.job.text import decode
from casewright.outputs.files import OutputError, write_file

__all__ = ["save"]


def save(job: LoadedJob, text: str) -> LoadedJob:
    """Put an edited text in the place of a job file.

    The file keeps its line ends, its byte order mark and its permissions.

    Parameters
    ----------
    job
        As it was loaded.
    text
        What the file is to say.

    Returns
    -------
    The job as it is now.

    Raises
    ------
    JobFileError
        When the text has no meaning; nothing is written.
    OutputError
        When the file on disk is not the one that was loaded, or cannot be written.
    """
    spec = read_job(text, job.file.name)
    try:
        on_disk = job.path.read_bytes()
        mode = job.path.stat().st_mode
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise OutputError(job.path.name, reason, "save it under another name") from None
    if hashlib.sha256(on_disk).hexdigest() != job.file.digest:
        problem = "it was changed by somebody else in the meantime"
        raise OutputError(job.path.name, problem, "load it again, then make the change")
    content = job.file.encoded(text)
    write_file(job.path.resolve(), content)
    job.path.chmod(mode)
    return LoadedJob(job.path, decode(content, job.file.name), spec)
