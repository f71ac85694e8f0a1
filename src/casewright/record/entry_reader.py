"""Reading an entry from what JSON or a table holds: everything wrong with it is told at once."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from datetime import datetime
from fractions import Fraction
from typing import Any

from casewright.dims import Unit, parse_length
from casewright.errors import LengthError, Location, Problem
from casewright.record.entry import KINDS, Entry, Kind, Sizes
from casewright.record.errors import RecordError

__all__ = ["FIELDS", "read_entry"]

FIELDS = (
    "id", "at", "device", "seq", "kind", "path", "sizes", "tool", "u", "minutes", "stock",
    "note", "corrects", "text", "against",
)  # fmt: skip

_ID = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]{0,63}")
_EXACT = re.compile(r"-?\d{1,24}(/[1-9]\d{0,23})?")
_DECIMAL = re.compile(r"\d{1,6}(\.\d{1,6})?|\d{1,9}/[1-9]\d{0,8}")
_LONGEST = {"device": 60, "path": 200, "tool": 60, "stock": 60, "note": 1000, "text": 6000}
_NEEDED: Mapping[str, tuple[tuple[str, str, str], ...]] = {
    "minutes": (("minutes", "there are no minutes", "write how many were spent"),),
    "note": (("note", "there is nothing in the note", "write it under note"),),
    "withdrawn": (
        ("corrects", "it does not say which entry is withdrawn", "name it under corrects"),
    ),
    "printed": (
        ("note", "it does not say which packet was printed", "write its fingerprint under note"),
        ("text", "it does not say what it was printed from", "write the packed text under text"),
    ),
}
_FURTHEST = Fraction(1_000_000)  # mm; nothing in a room is a kilometre long
_YEARS = range(1970, 3000)
_MOST_SIZES = 60
_MOST_SEQ = 2**53
_LONGEST_WORD = 40


def read_entry(data: object, unit: Unit, file: str, line: int = 0) -> Entry:
    """The entry that a JSON object describes.

    Parameters
    ----------
    data
        As JSON gives it, numbers as text or number.
    unit
        Of lengths written without one.
    file, line
        Where it stands, for messages.

    Raises
    ------
    RecordError
        With everything that is wrong in it.
    """
    reader = _Reader(data if isinstance(data, Mapping) else {}, unit, file, line)
    if not isinstance(data, Mapping):
        reader.fault("", "this is no entry", "write an object with id, device, kind, path and at")
    entry = reader.entry() if not reader.problems else None
    if reader.problems or entry is None:
        raise RecordError(tuple(reader.problems))
    return entry


class _Reader:
    """Reads one object, and keeps what is wrong in it."""

    def __init__(self, data: Mapping[str, Any], unit: Unit, file: str, line: int) -> None:
        self.data, self.unit = data, unit
        self.file, self.line = file, line
        self.problems: list[Problem] = []

    def fault(self, word: object, what: str, want: str) -> None:
        text = word if isinstance(word, str) else ascii(word)
        place = Location(self.file, self.line, word=text[:_LONGEST_WORD])
        self.problems.append(Problem(place, what, want))

    def entry(self) -> Entry | None:
        for key in self.data:
            if key not in FIELDS:
                self.fault(key, "there is no such field", f"use {', '.join(FIELDS)}")
        kind = self._kind()
        at = self._at()
        entry_id = self._id("id", needed=True)
        path = self._text("path")
        if kind == "offcut" and not path:
            path = f"offcut.{entry_id}"
        device = self._text("device")
        if not device:
            self.fault(
                "", "it does not say who wrote it", "name the device, such as desk or phone"
            )
        read: dict[str, Any] = {
            "device": device,
            "seq": self._seq(),
            "path": path,
            "sizes": self._sizes("sizes"),
            "tool": self._text("tool"),
            "u": self._uncertainty(),
            "minutes": self._minutes(),
            "stock": self._text("stock"),
            "note": self._text("note"),
            "corrects": self._id("corrects", needed=False),
            "text": self._text("text"),
            "against": self._sizes("against"),
        }
        if kind is None or at is None or self.problems:
            return None
        entry = Entry(id=entry_id, at=at, kind=kind, **read)
        self._check_kind(entry)
        return entry

    def _kind(self) -> Kind | None:
        given = self.data.get("kind", "")
        for kind in KINDS:
            if given == kind:
                return kind
        self.fault(given, "this is no kind of entry", f"use one of {', '.join(KINDS)}")
        return None

    def _at(self) -> datetime | None:
        given, want = self.data.get("at", ""), "write it as 2026-05-12T09:30:00+02:00"
        try:
            at = datetime.fromisoformat(given) if isinstance(given, str) else None
        except ValueError:
            at = None
        if at is None:
            self.fault(given, "this is no date with a time", want)
        elif at.utcoffset() is None:
            self.fault(given, "the time has no zone", want)
        elif at.year not in _YEARS:
            self.fault(given, "no job was done in that year", want)
        else:
            return at
        return None

    def _id(self, key: str, *, needed: bool) -> str:
        given = self.data.get(key)
        if given in (None, "") and not needed:
            return ""
        if isinstance(given, str) and _ID.fullmatch(given):
            return given
        want = "write 1 to 64 letters, digits and . _ -, that no other entry has"
        self.fault("" if given is None else given, f"{key} is no name of an entry", want)
        return ""

    def _seq(self) -> int:
        given = self.data.get("seq", 0)
        text = given if isinstance(given, str) else str(given)
        whole = not isinstance(given, bool) and re.fullmatch(r"\d{1,16}", text)
        if whole and int(text) <= _MOST_SEQ:
            return int(text)
        self.fault(given, "seq is no count", "write a whole number from 1")
        return 0

    def _text(self, key: str) -> str:
        given = self.data.get(key)
        if given is None:
            return ""
        if not isinstance(given, str):
            self.fault(given, f"{key} is no text", 'write it in quotes: "..."')
            return ""
        text = given.strip()
        most = _LONGEST[key]
        if len(text) > most:
            self.fault(text, f"{key} is too long", f"write at most {most} characters")
        if any(unicodedata.category(c) in ("Cc", "Cs", "Zl", "Zp") for c in text):
            what = f"there is a sign in {key} that cannot be printed"
            self.fault(ascii(text), what, "write letters, digits and spaces on one line")
        return text

    def _sizes(self, key: str) -> Sizes:
        given = self.data.get(key)
        if given in (None, {}):
            return ()
        if not isinstance(given, Mapping) or "mm" in given or "text" in given:
            size = self._length(given, key)
            return () if size is None else (("", size),)
        if len(given) > _MOST_SIZES:
            self.fault(key, "too many sizes for one entry", f"write at most {_MOST_SIZES}")
            return ()
        found = {}
        for name, value in given.items():
            if not isinstance(name, str) or not re.fullmatch(r"\w[\w.]{0,99}", name):
                want = "write the name of a number, such as length"
                self.fault(name, "this is no name of a size", want)
                continue
            size = self._length(value, name)
            if size is not None:
                found[name] = size
        return tuple(sorted(found.items()))

    def _length(self, given: object, name: str) -> Fraction | None:
        """A length: {"mm": "3302/5"}, or as a woodworker writes it."""
        if isinstance(given, Mapping):
            exact = given.get("mm")
            if isinstance(exact, int) and not isinstance(exact, bool):
                exact = str(exact)
            if isinstance(exact, str) and _EXACT.fullmatch(exact):
                return self._near(Fraction(exact), name)
            want = 'write {"mm": "3302/5"}, or a length in quotes'
            self.fault(exact, f"{name} has no millimetres", want)
            return None
        if isinstance(given, bool) or not isinstance(given, str | int | float):
            self.fault(given, f"{name} is no length", 'write a length in quotes: "11 7/8"')
            return None
        try:
            return self._near(parse_length(str(given), self.unit), name)
        except LengthError as error:
            self.fault(given, f"{name}: {error.what}", error.want)
            return None

    def _near(self, size: Fraction, name: str) -> Fraction | None:
        if abs(size) <= _FURTHEST and size.denominator < 10**24:
            return size
        self.fault(name, "no room has such a length", "look at the number and its unit")
        return None

    def _uncertainty(self) -> Fraction | None:
        given = self.data.get("u")
        if given in (None, ""):
            return None
        size = self._length(given, "u")
        if size is not None and size < 0:
            self.fault("u", "an uncertainty is under 0", "write how far the reading may be off")
        return size

    def _minutes(self) -> Fraction | None:
        given = self.data.get("minutes")
        if given in (None, ""):
            return None
        text = given if isinstance(given, str) else str(given)
        if not isinstance(given, bool) and _DECIMAL.fullmatch(text) and Fraction(text) > 0:
            return Fraction(text)
        self.fault(given, "this is no number of minutes", "write a number over 0, such as 45")
        return None

    def _check_kind(self, entry: Entry) -> None:
        """What each kind cannot do without."""
        names = {name for name, _ in entry.sizes}
        least = min((size for _, size in entry.sizes), default=Fraction(1))
        if not names >= {name for name, _ in entry.against}:
            what = "it is held against a size that it does not have"
            self.fault("against", what, "name the same sizes as under sizes")
        if entry.corrects == entry.id:
            self.fault(entry.id, "an entry cannot correct itself", "name another one")
        for field, what, want in _NEEDED.get(entry.kind, ()):
            if not getattr(entry, field):
                self.fault(entry.path, what, want)
        match entry.kind:
            case "reading" | "cut" | "tested" if not names:
                what = f"a {entry.kind.replace('tested', 'test piece')} without a size"
                self.fault(entry.path, what, "write what was read, under sizes")
            case "cut" if least <= 0:
                self.fault(entry.path, "a piece is over 0 in length and width", "look again")
            case "accepted" if least <= 0:
                self.fault(entry.path, "a piece is over 0 in length and width", "look again")
            case "offcut" if not {"length", "width"} <= names or least <= 0 or not entry.stock:
                what = "an offcut has a stock, a length and a width"
                self.fault(entry.path, what, "write all three")
            case (
                "reading" | "cut" | "machined" | "assembled" | "finished" | "hung" | "spoiled"
                | "tested"
            ):  # fmt: skip
                self._needs_path(entry)
            case _:
                pass

    def _needs_path(self, entry: Entry) -> None:
        if not entry.path:
            want = "name the number, part or case under path"
            self.fault(entry.kind, "it does not say what it is about", want)
