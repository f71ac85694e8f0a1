"""A JSON file of cutting, or standard input: read whole, or refused in words with the place."""

from __future__ import annotations

import json
import sys
import unicodedata
from collections.abc import Sequence
from pathlib import Path
from typing import Any, NoReturn

from casewright.cutting.problem import Fault
from casewright.errors import CasewrightError, Location, Problem

__all__ = ["STANDARD_INPUT", "CutFileError", "faults_error", "file_name", "read_json"]

STANDARD_INPUT = Path("-")
"""Stands for what is piped in."""

_LARGEST_FILE = 100_000_000
_LONGEST_WORD = 40
_LONGEST_PLACE = 90

_SLIPS = (
    ("Expecting value", "a value is missing here", 'write a number, a "text", a list, an object'),
    ("Expecting property name", "a key in double quotes is missing here",
     'write "key": value, and no comma behind the last'),
    ("Expecting ',' delimiter", "a comma or a closing bracket is missing here",
     "put a comma between two entries, and ] or } behind the last"),
    ("Expecting ':' delimiter", "a colon is missing here", 'write "key": value'),
    ("Extra data", "nothing stands behind the object", "write one JSON object alone"),
    ("Unterminated string", "the closing quote is missing", 'close the text with "'),
    ("Invalid control character", "a text ends on its line", 'close the text with "'),
    ("Invalid \\", "a backslash has a meaning of its own", "write two of them"),
)  # fmt: skip


class CutFileError(CasewrightError, ValueError):
    """A file that is no cutting problem, or no plan, with everything that is wrong in it.

    Parameters
    ----------
    problems
        At least one.
    """

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        super().__init__(problems)
        self._problems = problems

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Each with its place where it has one."""
        return self._problems

    def __str__(self) -> str:
        return "\n".join(str(problem) for problem in self.problems)


class _SlipError(CasewrightError, ValueError):
    """Something in the text of a file that its grammar allows and we do not."""

    def __init__(self, word: str, what: str, want: str) -> None:
        super().__init__(what)
        self.word, self.what, self.want = word[:_LONGEST_WORD], what, want


def read_json(path: Path, holds: str) -> Any:
    """What a JSON file holds.

    Parameters
    ----------
    path
        The file; '-' for standard input.
    holds
        What is to stand in it: 'unit, kerf, stock and parts'.

    Raises
    ------
    CutFileError
        When it cannot be read, is too long, or is no JSON; a key that stands twice in one object,
        a number of thousands of digits and a text that cannot be printed are refused as well.
    """
    name, content = file_name(path), _content(path)
    want = f"write one JSON object with {holds}"
    try:
        return json.loads(content, object_pairs_hook=_object, parse_int=_whole)
    except json.JSONDecodeError as error:
        _refuse_form(name, error, want)
    except RecursionError:
        _refuse(Location(name), "lists stand inside one another too deep", want)
    except _SlipError as slip:
        _refuse(Location(name, word=slip.word), slip.what, slip.want)
    except ValueError:
        _refuse(Location(name), "this is no JSON text in UTF-8", want)


def faults_error(path: Path, faults: Sequence[Fault]) -> CutFileError:
    """What is wrong with the values of a file, each told with its place."""
    return CutFileError(
        tuple(
            Problem(
                Location(file_name(path), word=_short(fault.where)),
                f"{fault.field} is {fault.found}",
                f"it must be {fault.want}{_hint(fault)}",
            )
            for fault in faults
        )
    )


def file_name(path: Path) -> str:
    """A file as messages name it."""
    return "standard input" if path == STANDARD_INPUT else path.name


def _short(where: str) -> str:
    """A place deep in a document, without what stands between."""
    return where if len(where) <= _LONGEST_PLACE else f"{where[:50]} ... {where[-20:]}"


def _hint(fault: Fault) -> str:
    """A number with a fraction wants a finer unit."""
    whole, dot, rest = fault.found.partition(".")
    is_fraction = dot and whole.lstrip("-").isdigit() and rest.isdigit()
    if not is_fraction or not fault.want.startswith("a whole number"):
        return ""
    return "; for fractions count everything in a finer unit, such as 0.1 mm or 1/32 in"


def _content(path: Path) -> bytes:
    try:
        if path == STANDARD_INPUT:
            content = sys.stdin.buffer.read(_LARGEST_FILE + 1)
        else:
            with path.open("rb") as stream:
                content = stream.read(_LARGEST_FILE + 1)
    except IsADirectoryError:
        _refuse(Location(str(path)), "this is a folder", "name the JSON file in it")
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        _refuse(Location(str(path)), reason.lower(), "name a JSON file that may be read")
    if len(content) > _LARGEST_FILE:
        what = "the file is over 100 MB, nothing to cut is that long"
        _refuse(Location(file_name(path)), what, "name the file itself")
    return content


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for key, value in pairs:
        if key in found:
            raise _SlipError(key, "this key stands twice in one object", "keep one of the two")
        for text in (key, value):
            if isinstance(text, str) and not _is_printable(text):
                what = "there is a sign in this text that cannot be printed"
                raise _SlipError(ascii(text), what, "write letters, digits and spaces")
        found[key] = value
    return found


def _is_printable(text: str) -> bool:
    """Whether no sign in it is a control character or half of a character."""
    return text.isprintable() or all(unicodedata.category(c) not in ("Cc", "Cs") for c in text)


def _whole(digits: str) -> int:
    try:
        return int(digits)
    except ValueError:
        what, want = f"this number has {len(digits)} digits", "write one that can be measured"
        raise _SlipError(digits, what, want) from None


def _refuse_form(name: str, error: json.JSONDecodeError, plain: str) -> NoReturn:
    line = error.doc.split("\n")[error.lineno - 1]
    word = line[error.colno - 1 :].strip()[:_LONGEST_WORD]
    if not error.doc.strip():
        what, want = "there is nothing in it", plain
    elif not error.pos:
        what, want = "this is no JSON", plain
    elif not error.doc[error.pos :].strip():
        what, want = "the file ends too soon", "close every list with ] and every object with }"
    else:
        found = (slip[1:] for slip in _SLIPS if error.msg.startswith(slip[0]))
        what, want = next(found, ("this is no JSON", "write one JSON object"))
    _refuse(Location(name, error.lineno, error.colno, word), what, want)


def _refuse(where: Location, what: str, want: str) -> NoReturn:
    raise CutFileError((Problem(where, what, want),)) from None
