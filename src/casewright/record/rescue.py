"""Damage: what is whole in a record is kept, the damaged file is kept aside.

Every sealed entry lies within one page, as ASCII text with its check sum; so it is found in the
raw bytes, whatever happened to the tables around it. Nothing that was acknowledged is ever
deleted, so what is found in an older damaged file belongs into the record as well.
"""

from __future__ import annotations

import json
import re
import shutil
from collections.abc import Callable, Iterable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import TypeVar

from casewright.record.codec import LONGEST_BODY, entry_of_body, unsealed
from casewright.record.connection import filled, journal_of, sweep, telling
from casewright.record.entry import Entry
from casewright.record.errors import DamageError, RecordError
from casewright.record.folder_lock import alone
from casewright.record.store import Store

__all__ = ["Rescue", "damaged_files", "with_store"]

_START = b'{"at":"'
_SEAL = 17  # '#' and the check sum
_ASIDE = ".damaged-"
_COUNT = re.compile(rb"entry(\d{1,9}) [0-9a-f]{24,32}")  # the sum over all entries, as it is kept
_Result = TypeVar("_Result")


@dataclass(frozen=True, slots=True)
class Rescue:
    """What was done about a damaged record.

    Parameters
    ----------
    file, aside
        Its name, and that of the damaged file.
    what
        Where the damage showed.
    kept
        Entries that were whole.
    lost
        Entries that are gone; None when that cannot be told.
    """

    file: str
    aside: str
    what: str
    kept: int
    lost: int | None

    def __str__(self) -> str:
        lost = "how many are lost cannot be told"
        if self.lost is not None:
            lost = f"{self.lost} lost" if self.lost else "none is lost"
        return (
            f"{self.file} was damaged ({self.what}): {self.kept} entries were whole and are kept, "
            f"{lost}; the damaged file is {self.aside}"
        )


def with_store(path: Path, work: Callable[[Store], _Result]) -> tuple[_Result, Rescue | None]:
    """Work on a record; where it turns out to be damaged, put it right first and begin again.

    Parameters
    ----------
    path
        Its file; made when it is not there.

    Raises
    ------
    RecordError
        When it cannot be used, or nothing in it is whole.
    """
    sweep(path.parent)
    try:
        if not path.exists() and (journal_of(path).exists() or damaged_files(path)):
            raise DamageError(path.name, "its file is gone")
        with Store(path) as store:
            return work(store), None
    except DamageError as damage:
        done = _rescue(path, damage)
    try:
        with Store(path) as store:
            return work(store), done
    except DamageError as damage:
        raise RecordError(damage.problems) from None


def damaged_files(path: Path) -> tuple[Path, ...]:
    """Damaged files of a record that were put aside, the first first."""
    number, found = 1, []
    while (aside := _aside(path, number)).exists():
        found.append(aside)
        number += 1
    return tuple(found)


def _aside(path: Path, number: int) -> Path:
    return path.with_name(f"{path.name}{_ASIDE}{number}")


def _rescue(path: Path, damage: DamageError) -> Rescue | None:
    """Put a record right; None when somebody else did it in the meantime."""
    with alone(path.parent), telling(path):
        if path.exists() and _is_sound(path):
            return None
        old = damaged_files(path)
        sources = [path, journal_of(path), *old, *(journal_of(aside) for aside in old)]
        contents = [source.read_bytes() for source in sources if source.is_file()]
        entries = {entry.id: entry for content in contents for entry in _whole_entries(content)}
        if not entries:
            _refuse(path, damage)
        lost = _lost(contents, len(entries))
        aside = _put_aside(path, old)
        with filled(path.parent) as made:
            with Store(made) as store:
                store.add(sorted(entries.values(), key=lambda entry: entry.order))
            made.replace(path)
        return Rescue(path.name, aside.name, damage.what, len(entries), lost)


def _is_sound(path: Path) -> bool:
    try:
        with Store(path) as store:
            store.check()
    except DamageError:
        return False
    return True


def _refuse(path: Path, damage: DamageError) -> None:
    what = f"no entry can be read in it ({damage.what})"
    want = "put back a copy of it, or move it away to begin a new record"
    raise RecordError.of(what, want, file=path.name)


def _put_aside(path: Path, old: tuple[Path, ...]) -> Path:
    """The damaged file under another name; it keeps its own until the new one takes it."""
    if not path.exists():
        with suppress(OSError):
            journal_of(path).rename(journal_of(_aside(path, len(old) + 1)))
        return old[-1] if old else journal_of(_aside(path, 1))
    aside = _aside(path, len(old) + 1)
    _twin(path, aside)
    journal = journal_of(path)
    if journal.exists():
        _twin(journal, journal_of(aside))
        journal.unlink()
    return aside


def _twin(path: Path, other: Path) -> None:
    try:
        other.hardlink_to(path)
    except OSError:
        shutil.copy2(path, other)


def _whole_entries(content: bytes) -> Iterator[Entry]:
    """Entries in the raw bytes of a file whose check sum is right."""
    decoder = json.JSONDecoder()
    at = content.find(_START)
    while at >= 0:
        text = content[at : at + LONGEST_BODY + _SEAL].decode("latin-1")
        with suppress(ValueError, RecursionError, RecordError):
            _, end = decoder.raw_decode(text)
            body = unsealed(content[at : at + end + _SEAL])
            if body is not None:
                yield entry_of_body(body)
        at = content.find(_START, at + 1)


def _lost(contents: Iterable[bytes], kept: int) -> int | None:
    """How many entries there were beside those kept, by the record's own count of them."""
    counts = [int(found) for content in contents for found in _COUNT.findall(content)]
    return max(max(counts) - kept, 0) if counts else None
