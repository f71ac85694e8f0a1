"""The job file as text: found, small enough, and in UTF-8."""

from __future__ import annotations

import difflib
import hashlib
import re
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from casewright.errors import JobFileError, Location, Problem

__all__ = ["LARGEST_FILE", "FileText", "decode", "read_file"]

LARGEST_FILE = 1_000_000
"""Larger files are refused unread [bytes]."""

_BYTE_ORDER_MARK = b"\xef\xbb\xbf"
_UTF_16 = (b"\xff\xfe", b"\xfe\xff")
_RICH_TEXT = b"{\\rtf"
_LONE_RETURN = re.compile(r"\r(?!\n)")


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
        raise _whole(name, f"there is no file {path}", _instead_of(path)) from None
    except IsADirectoryError:
        raise _whole(
            name, f"{path} is a folder", f"name the job file in it, such as {path / 'job.toml'}"
        ) from None
    except (OSError, ValueError) as error:
        reason = (getattr(error, "strerror", None) or str(error)).lower()
        raise _whole(
            name, f"{path} cannot be opened: {reason}", "name a file that may be read"
        ) from None
    return decode(content, name)


def _instead_of(path: Path) -> str:
    """What to name when there is no such file: one like it that is there, or a new one."""
    with suppress(OSError, ValueError):
        there = {file.stem.lower(): file for file in sorted(path.parent.glob("*.toml"))}
        like = difflib.get_close_matches(path.stem.lower(), there, n=1, cutoff=0.6)
        if like:
            return f"did you mean {there[like[0]]}?"
    return f"write one with `casewright new {path if path.suffix else f'{path}.toml'}`"


def decode(content: bytes, name: str) -> FileText:
    """Bytes of a job file as text.

    Raises
    ------
    JobFileError
        When there are more than `LARGEST_FILE`, they are not UTF-8, or no lines of text.
    """
    if len(content) > LARGEST_FILE:
        raise _whole(
            name,
            "the file is over 1 MB, no job file is that long",
            "name the job file itself, not a picture or an archive",
        )
    if _looks_like_utf_16(content):
        raise _whole(name, "the file is saved as UTF-16", "save it as UTF-8 in the editor")
    if content.startswith(_RICH_TEXT):
        want = "save it as plain text, in UTF-8"
        raise _whole(name, "this is a text processor's file, with its letters' looks", want)
    if b"\0" in content:
        want = "name the job file itself, not a picture, an archive or a text processor's file"
        raise _whole(name, "this is no plain text", want)
    marked = content.startswith(_BYTE_ORDER_MARK)
    body = content[len(_BYTE_ORDER_MARK) :] if marked else content
    try:
        text = body.decode()
    except UnicodeDecodeError as error:
        raise _not_text(name, body, error.start) from None
    lone = _LONE_RETURN.search(text)
    if lone:
        line = text.count("\n", 0, lone.start()) + 1
        what = "this line ends with a carriage return alone"
        want = "let the editor save the file with line ends LF or CRLF"
        raise JobFileError((Problem(Location(name, line), what, want),))
    return FileText(name, text, hashlib.sha256(content).hexdigest(), marked)


def _looks_like_utf_16(content: bytes) -> bool:
    """Whether every letter of the first lines takes two bytes; a mark in front is not needed."""
    start = content[:200]
    half = len(start) // 2
    empty = max(start[0::2].count(0), start[1::2].count(0))
    return content.startswith(_UTF_16) or (half > 0 and empty >= 0.9 * half)


def _whole(name: str, what: str, want: str) -> JobFileError:
    return JobFileError((Problem(Location(name), what, want),))


def _not_text(name: str, content: bytes, position: int) -> JobFileError:
    before = content[:position].decode()
    line = before.count("\n") + 1
    column = len(before) - (before.rfind("\n") + 1) + 1
    where = Location(name, line, column, f"byte {content[position]:#04x}")
    want = "save the file as UTF-8 in the editor"
    return JobFileError((Problem(where, "this is no letter in UTF-8", want),))
