"""Which packets were printed, and the job as each of them was printed from."""

from __future__ import annotations

import base64
import binascii
import zlib
from collections import defaultdict
from collections.abc import Iterable
from contextlib import suppress
from dataclasses import dataclass

from casewright.job.load import LoadedJob
from casewright.job.recorded import read_entries, with_record
from casewright.job.text import LARGEST_FILE
from casewright.job.writer import Writer
from casewright.record import Entry, Rescue

__all__ = ["Print", "note_print", "prints_in"]

_CHUNK = 5000  # characters, so that each entry is short enough to be kept


@dataclass(frozen=True, slots=True)
class Print:
    """A packet that was printed.

    Parameters
    ----------
    fingerprint
        As it stands on its pages.
    text
        The job file as it was.
    entry
        The last entry that tells of it.
    """

    fingerprint: str
    text: str
    entry: Entry


def note_print(job: LoadedJob, fingerprint: str, writer: Writer) -> Rescue | None:
    """Write down that a packet was printed, with the job file that it was printed from.

    Nothing is written when the last packet was the same.

    Raises
    ------
    RecordError
        When the record cannot be written.
    """
    entries, rescue = read_entries(job.path)
    before = prints_in(entries)
    if before and (before[-1].fingerprint, before[-1].text) == (fingerprint, job.file.text):
        return rescue
    packed = base64.b64encode(zlib.compress(job.file.text.encode(), 9)).decode("ascii")
    chunks = [packed[at : at + _CHUNK] for at in range(0, len(packed), _CHUNK)]
    new = [
        Entry(
            id=writer.new_id(),
            device=writer.device,
            seq=0,
            at=writer.now,
            kind="printed",
            path="",
            note=fingerprint,
            text=f"{number}/{len(chunks)}:{chunk}",
        )
        for number, chunk in enumerate(chunks, 1)
    ]
    _, again = with_record(job.path, lambda store: store.add(new))
    return rescue or again


def prints_in(entries: Iterable[Entry]) -> tuple[Print, ...]:
    """The packets that entries tell of, in order; one that is not whole is left out."""
    groups: dict[tuple[object, ...], list[Entry]] = defaultdict(list)
    for entry in entries:
        if entry.kind == "printed":
            groups[entry.at, entry.device, entry.note].append(entry)
    found = []
    for group in groups.values():
        text = _joined(group)
        if text is not None:
            last = max(group, key=lambda entry: entry.order)
            found.append(Print(last.note, text, last))
    return tuple(sorted(found, key=lambda each: each.entry.order))


def _joined(group: Iterable[Entry]) -> str | None:
    """The text in the pieces of some entries; None where one is missing or is none."""
    with suppress(ValueError, binascii.Error, zlib.error):
        pieces = {}
        for entry in group:
            place, _, chunk = entry.text.partition(":")
            number, _, count = place.partition("/")
            pieces[int(number)] = (int(count), chunk)
        counts = {count for count, _ in pieces.values()}
        if counts == {len(pieces)} and set(pieces) == set(range(1, len(pieces) + 1)):
            packed = "".join(pieces[number][1] for number in sorted(pieces))
            plain = zlib.decompressobj().decompress(base64.b64decode(packed), LARGEST_FILE)
            return plain.decode()
    return None
