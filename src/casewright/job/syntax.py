"""TOML text into plain data, or what is wrong with its form."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from decimal import Decimal
from functools import lru_cache
from typing import TypeAlias

import tomlkit
from tomlkit.exceptions import ParseError, TOMLKitError
from tomlkit.items import Float, Item

from casewright.errors import JobFileError, Location, Problem
from casewright.job.positions import DEEPEST, KeyPath, Positions, Span
from casewright.job.slips import explain_slip

__all__ = ["Plain", "copied", "dotted", "parse"]

Plain: TypeAlias = object
"""dict, list, str, bool, int, Decimal, or a date or time."""


def parse(name: str, positions: Positions) -> dict[str, Plain]:
    """The data of a job file.

    Numbers with a point come out as exact decimals.

    Raises
    ------
    JobFileError
        With every name that stands there twice, or else the first thing that is not TOML.
    """
    problems = [*_repeated(name, positions), *_too_deep(name, positions)]
    if problems:
        raise JobFileError(tuple(problems))
    try:
        data = _data(positions.text)
    except ParseError as error:
        slip = explain_slip(name, positions, error.line, error.col)
        raise JobFileError((slip,)) from None
    except (TOMLKitError, ValueError, OverflowError, RecursionError) as error:
        what = f"the file cannot be read: {str(error).rstrip('.').lower() or 'too deep'}"
        want = "write key = value lines under [section] lines"
        raise JobFileError((Problem(Location(name), what, want),)) from None
    return {key: copied(value) for key, value in data.items()}


@lru_cache(maxsize=4)
def _data(text: str) -> dict[str, Plain]:
    """Data of a text; an edit asks several times for that of the same.

    The library that keeps comments takes ten times as long: it is asked where the text has a
    mistake, whose place it tells.
    """
    try:
        return tomllib.loads(text, parse_float=Decimal)
    except ValueError:
        return {key: _plain(value) for key, value in tomlkit.parse(text).items()}


def copied(value: Plain) -> Plain:
    """The same again, so that a change of one is none of the other."""
    if isinstance(value, dict):
        return {key: copied(inner) for key, inner in value.items()}
    return [copied(inner) for inner in value] if isinstance(value, list) else value


def _plain(value: object) -> Plain:
    if isinstance(value, Float):
        return Decimal(value.as_string().replace("_", ""))
    if isinstance(value, Mapping):
        return {str(key): _plain(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [_plain(inner) for inner in value]
    return value.unwrap() if isinstance(value, Item) else value


def _repeated(name: str, positions: Positions) -> list[Problem]:
    found = []
    tables = {twice.path for twice in positions.repeated}
    for twice in positions.repeated:
        if any(twice.path[:length] in tables for length in range(1, len(twice.path))):
            continue
        first, _ = positions.at(twice.first.start)
        found.append(
            Problem(
                _location(name, positions, twice.again),
                f"{dotted(twice.path)} is written twice, first on line {first}",
                _cure_of_twice(twice.path),
            )
        )
    return found


def _cure_of_twice(path: KeyPath) -> str:
    """Cases, runs and stock may get another name; any other key may not."""
    is_named = len(path) == 2 and path[0] in ("case", "run", "stock")
    return (
        "give it another name, or delete one of the two" if is_named else "delete one of the two"
    )


def _too_deep(name: str, positions: Positions) -> list[Problem]:
    if positions.too_deep is None:
        return []
    return [
        Problem(
            _location(name, positions, positions.too_deep),
            f"lists or tables stand inside one another over {DEEPEST} deep",
            "take out the brackets that are too many",
        )
    ]


def _location(name: str, positions: Positions, span: Span) -> Location:
    return Location(name, *positions.at(span.start), positions.word(span))


def dotted(path: KeyPath) -> str:
    """A path as a person would write it: case.sink.width, run.left.wall, entry 2."""
    names = ".".join(str(key) for key in path if isinstance(key, str))
    numbers = [f", entry {key + 1}" for key in path if isinstance(key, int)]
    return names + "".join(numbers)
