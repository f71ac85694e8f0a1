"""The job file as text: found, small enough, and in UTF-8."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from pathlib import Path

from casewright.errors import JobFileError, Location, Problem

__all__ = ["LARGEST_FILE", "FileText", "decode", "read_file"]

LARGEST_FILE = 1_000_000
"""Larger files are refused unread [bytes]."""

_BYTE_ORDER_MARK = b"\xef\xbb\xbf"


@dataclass(frozen=True, slots=True)
class FileText:
    """Text of a job file.

    Parameters
    ----------
    name
        What messages call the file.
    text
        Its characters, line ends as they are, without a byte order mark.
    digest
        SHA-256 of its bytes, to notice when the file on disk is another.
    marked
        Whether it began with a byte order mark.
    """

    name: str
    text: str
    digest: str
    marked: bool = False

    def encoded(self, text: str) -> bytes:
        """Other text as bytes in the same form."""
        return (_BYTE_ORDER_MARK if self.marked else b"") + text.encode()


def read_file(path: Path) -> FileText:
    """Text of a job file.

    Raises
    ------
    JobFileError
        When there is no such file, it cannot be opened, is over `LARGEST_FILE`, or not UTF-8.
    """
    name = path.name or str(path)
    try:
        with path.open("rb") as stream:
            content = stream.read(LARGEST_FILE + 1)
    except FileNotFoundError:
        raise _whole(
            name, f"there is no file {path}", f"write one with `casewright new {path}`"
        ) from None
    except IsADirectoryError:
        raise _whole(
            name, f"{path} is a folder", f"name the job file in it, such as {path / 'job.toml'}"
        ) from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise _whole(
            name, f"{path} cannot be opened: {reason}", "name a file that may be read"
        ) from None
    return decode(content, name)


def decode(content: bytes, name: str) -> FileText:
    """Bytes of a job file as text.

    Raises
    ------
    JobFileError
        When there are more than `LARGEST_FILE`, or they are not UTF-8.
    """
    if len(content) > LARGEST_FILE:
        raise _whole(
            name,
            "the file is over 1 MB, no job file is that long",
            "name the job file itself, not a picture or an archive",
        )
    marked = content.startswith(_BYTE_ORDER_MARK)
    body = content[len(_BYTE_ORDER_MARK) :] if marked else content
    try:
        text = body.decode()
    except UnicodeDecodeError as error:
        raise _not_text(name, body, error.start) from None
    return FileText(name, text, hashlib.sha256(content).hexdigest(), marked)


def _whole(name: str, what: str, want: str) -> JobFileError:
    return JobFileError((Problem(Location(name), what, want),))


def _not_text(name: str, content: bytes, position: int) -> JobFileError:
    before = content[:position].decode()
    line = before.count("\n") + 1
    column = len(before) - (before.rfind("\n") + 1) + 1
    where = Location(name, line, column, f"byte {content[position]:#04x}")
    want = "save the file as UTF-8 in the editor"
    return JobFileError((Problem(where, "this is no letter in UTF-8", want),))
