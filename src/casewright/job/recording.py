"""New entries for the record of a job, from what a person says."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import NoReturn

from casewright.casework.parts import Part
from casewright.dims import parse_length
from casewright.errors import LengthError, Location, Problem
from casewright.facts import Facts
from casewright.job.defaults import TOOL_ACCURACY
from casewright.job.expectation import doubt, expected, settles_doubt
from casewright.job.targets import Targets, all_sizes, cut_sizes
from casewright.job.writer import Writer
from casewright.record import Entry, Kind, RecordError, Sizes
from casewright.record.codec import body_of
from casewright.record.entry_reader import read_entry
from casewright.room.model import Room

__all__ = ["Drafts", "Said", "draft"]

_BETWEEN = re.compile(r"\s*[x×*]\s*", re.IGNORECASE)
_HALF = Fraction(1, 2)
_TOLD_ELSEWHERE: Mapping[Kind, tuple[str, str]] = {
    "accepted": ("a proposal is accepted where it is shown", "casewright resolve JOB --accept"),
    "tested": (
        "a test piece is told where the tool is set up", "casewright setup JOB CUT WHAT SIZE"
    ),
    "printed": ("the packet notes itself when it is printed", "casewright packet JOB"),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Said:
    """What a person says of one thing or several.

    Parameters
    ----------
    kind
        What it is: a reading, parts cut, minutes.
    words
        What it is about and how much, as typed.
    size
        Sizes as made, '34 1/2 x 23 1/4'; empty: by the numbers.
    tool
        What was read with; empty: the usual one.
    within
        How far it may be off, as a length; empty: as the tool usually is.
    note
        In words.
    corrects
        The entry in whose place it stands, or None.
    """

    kind: Kind
    words: tuple[str, ...]
    size: str = ""
    tool: str = ""
    within: str = ""
    note: str = ""
    corrects: Entry | None = None


@dataclass(frozen=True, slots=True)
class Drafts:
    """Entries to be written.

    Parameters
    ----------
    entries
        Not numbered yet.
    doubts
        What is hard to believe, in words: to be confirmed first.
    """

    entries: tuple[Entry, ...]
    doubts: tuple[str, ...] = ()


def draft(room: Room, facts: Facts, said: Said, writer: Writer) -> Drafts:
    """The entries that something said amounts to.

    Parameters
    ----------
    room
        As it is now.
    facts
        Those it was built with, besides the file's own.

    Raises
    ------
    RecordError
        When it has no meaning; a path that is not known comes with the nearest ones.
    """
    return _Clerk(room, facts, said, writer).drafts()


class _Clerk:
    """Writes down one thing that was said."""

    def __init__(self, room: Room, facts: Facts, said: Said, writer: Writer) -> None:
        self.room, self.facts, self.said, self.writer = room, facts, said, writer
        self.targets = Targets(room)
        self.doubts: list[str] = []

    def drafts(self) -> Drafts:
        match self.said.kind:
            case "reading":
                entries = [self._reading()]
            case "cut" | "machined":
                entries = list(self._made())
            case "assembled" | "finished" | "hung":
                entries = [*self._made_before(), *self._about_things()]
            case "spoiled":
                entries = self._about_things()
            case "offcut":
                entries = [self._offcut()]
            case "minutes":
                entries = [self._minutes()]
            case "note":
                entries = [self._note()]
            case "withdrawn":
                entries = [self._withdrawn()]
            case _:
                _refuse(*_TOLD_ELSEWHERE[self.said.kind])
        checked = tuple(self._checked(entry) for entry in entries)
        return Drafts(checked, tuple(self.doubts))

    def _reading(self) -> Entry:
        path, *rest = self.said.words or ("",)
        dim = self.targets.number(path)
        if not rest:
            _refuse(f"there is no size for {dim.path}", f"write {path} and what was read")
        value = self._length(" ".join(rest))
        if value < 0:
            _refuse(f"{' '.join(rest)} is under 0, and nothing reads so", "write what was read")
        tool = self.said.tool or ("calliper" if dim.path.endswith("thickness") else "tape")
        u = self._uncertainty(tool)
        self._weigh(dim.path, value, u)
        before = self._read_before(dim.path, tool)
        return self._entry(dim.path, sizes=(("", value),), tool=tool, u=u, against=before)

    def _read_before(self, path: str, tool: str) -> Sizes:
        """What the same tool read there before; nothing where that is put right now."""
        known = self.facts.get(path)
        if known is None or known.built is None or self.said.corrects is not None:
            return ()
        return (("", known.built),) if tool in {cause.tool for cause in known.causes} else ()

    def _made(self) -> Iterator[Entry]:
        self._needs_words()
        parts = [part for word in self.said.words for part in self.targets.parts(word)]
        given = self._sizes() if self.said.size else None
        if given is not None and self.said.kind != "cut":
            _refuse("--size goes with a piece that is cut", "leave it out")
        for part in dict.fromkeys(parts):
            if self.said.kind == "machined":
                yield self._entry(part.path, sizes=all_sizes(self.room, part))
            elif given is None:
                yield self._entry(part.path, sizes=cut_sizes(part), tool=_cut_with(part))
            else:
                yield self._as_it_came_out(part, given)

    def _as_it_came_out(self, part: Part, given: tuple[Fraction, Fraction]) -> Entry:
        """A piece that is cut, with its sizes as they were read, and what they were to be."""
        dims = (part.blank.length, part.blank.width)
        names = [dim.path.removeprefix(f"{part.path}.") for dim in dims]
        sizes = tuple(sorted(zip(names, given, strict=True)))
        for name, size in sizes:
            self._weigh(f"{part.path}.{name}", size, None)
        old = self.said.corrects
        against = old.against if old is not None and old.against else cut_sizes(part)
        tool, u = self.said.tool or _cut_with(part), self._uncertainty("tape")
        return self._entry(part.path, sizes=sizes, tool=tool, u=u, against=against)

    def _made_before(self) -> Iterator[Entry]:
        """What goes together was cut and machined: where that is not marked yet, it is now."""
        if self.said.corrects is not None:
            return
        parts = [part for word in self.said.words for part in self.targets.parts(word)]
        for part in dict.fromkeys(parts):
            if part.state in ("planned", "cut"):
                sizes = all_sizes(self.room, part)
                yield self._entry(part.path, kind="machined", sizes=sizes)

    def _about_things(self) -> list[Entry]:
        self._needs_words()
        return [self._entry(self._thing(word)) for word in self.said.words]

    def _offcut(self) -> Entry:
        stock, *rest = self.said.words or ("",)
        if stock not in self.room.spec.stock:
            known = ", ".join(self.room.spec.stock)
            _refuse(f"there is no stock called {stock}", f"name one of {known}")
        length, width = self._two(" ".join(rest))
        sizes = (("length", length), ("width", width))
        entry = self._entry("", sizes=sizes, stock=stock)
        return replace(entry, path=f"offcut.{entry.id[:8]}")

    def _minutes(self) -> Entry:
        number, *about = self.said.words or ("",)
        if not re.fullmatch(r"\d{1,5}(\.\d{1,3})?", number) or not Fraction(number):
            want = "write them first, then what they were spent on: minutes 45 sink"
            _refuse(f'"{number}" is no number of minutes', want)
        path = self._thing(about[0]) if about else ""
        return self._entry(path, minutes=Fraction(number), note=" ".join(about[1:]))

    def _note(self) -> Entry:
        """A note; when its first word is a thing of the job it is about that."""
        self._needs_words()
        first, *rest = self.said.words
        try:
            path = self._thing(first) if rest else ""
        except RecordError:
            path = ""
        return self._entry(path, note=" ".join(rest if path else self.said.words))

    def _withdrawn(self) -> Entry:
        if self.said.corrects is None:
            _refuse("it does not say which entry is withdrawn", "name its id")
        return self._entry(self.said.corrects.path)

    def _thing(self, word: str) -> str:
        if word.startswith("offcut."):
            return word
        return self.targets.thing(word)

    def _needs_words(self) -> None:
        if not self.said.words:
            want = "name marks or paths, as casewright parts JOB lists them"
            if self.said.kind == "note":
                want = "write it behind note"
            _refuse("it does not say what it is about", want)

    def _weigh(self, path: str, value: Fraction, u: Fraction | None) -> None:
        if settles_doubt(self.room, path, value, self.facts):
            return
        says = doubt(expected(self.room, path, self.facts), path, value, u)
        if says:
            self.doubts.append(says)

    def _length(self, text: str) -> Fraction:
        try:
            return parse_length(text, self.room.spec.unit)
        except LengthError as error:
            raise RecordError((_problem(error),)) from None

    def _two(self, text: str) -> tuple[Fraction, Fraction]:
        parts = _BETWEEN.split(text.strip())
        if len(parts) != 2:
            want = 'write length x width, such as "34 1/2 x 23 1/4"'
            _refuse(f'"{text}" is no length and width', want)
        return self._length(parts[0]), self._length(parts[1])

    def _sizes(self) -> tuple[Fraction, Fraction]:
        return self._two(self.said.size)

    def _uncertainty(self, tool: str) -> Fraction:
        """Half of how far it may be off; of a tool that is not known, as of a tape."""
        if self.said.within:
            return self._length(self.said.within) * _HALF
        owned: Mapping[str, Fraction] = {
            kind: owned.strays("").sigma for kind, owned in self.room.spec.shop.tools.items()
        }
        usual = {str(kind): accuracy.sigma for kind, accuracy in TOOL_ACCURACY.items()}
        return owned.get(tool, usual.get(tool, usual["tape"]))

    def _entry(
        self,
        path: str,
        *,
        kind: Kind | None = None,
        sizes: Sizes = (),
        tool: str = "",
        u: Fraction | None = None,
        minutes: Fraction | None = None,
        stock: str = "",
        note: str = "",
        against: Sizes = (),
    ) -> Entry:
        said, writer = self.said, self.writer
        words = ", ".join(word for word in (note, said.note) if word)
        return Entry(
            id=writer.new_id(),
            device=writer.device,
            seq=0,
            at=writer.now,
            kind=kind or said.kind,
            path=path,
            sizes=sizes,
            tool=said.tool or tool,
            u=u,
            minutes=minutes,
            stock=stock,
            note=words,
            corrects=said.corrects.id if said.corrects else "",
            against=against,
        )

    def _checked(self, entry: Entry) -> Entry:
        """An entry that can be read again; a correction that is about what it corrects."""
        old = self.said.corrects
        if old is not None and entry.kind != "withdrawn":
            same = entry.path == old.path or entry.kind == "offcut"
            if not same or entry.kind != old.kind:
                about = f"{old.kind} {old.path}".strip()
                want = "withdraw that one, and record this by itself"
                _refuse(f"entry {old.id[:8]} is about another thing ({about})", want)
            entry = replace(entry, path=old.path)
        return read_entry(json.loads(body_of(entry)), self.room.spec.unit, "")


def _cut_with(part: Part) -> str:
    """The tool that the numbers of a piece count on; empty where it is not one."""
    dims = (part.blank.length, part.blank.width)
    tools = {cause.tool for dim in dims for cause in dim.causes}
    return tools.pop() if len(tools) == 1 else ""


def _problem(error: LengthError) -> Problem:
    return Problem(Location("", word=error.text), error.what, error.want)


def _refuse(what: str, want: str) -> NoReturn:
    raise RecordError.of(what, want)
