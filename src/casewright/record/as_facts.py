"""What the record says of the real things: facts by path, and how far each piece has come.

- A reading gives the `built` size of its number, a piece marked cut or machined the `cut` sizes;
  of two for one number the later in order counts. A reading counts until another one is made, it
  is corrected or withdrawn, or the piece is spoiled.
- A spoiled piece is no longer there: what was read and marked before, on it and under its path,
  counts no more. What comes after is about the new piece.
- Marks only add up: a piece has come as far as its furthest mark.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from types import MappingProxyType

from casewright.dims import Cause, Origin
from casewright.facts import Fact, Facts
from casewright.record.entry import MARKS, Entry, Kind, Order
from casewright.record.standing import Standing

__all__ = ["facts_of", "marks_of", "offcuts_of", "outer_paths"]

_COVER = 2
"""Coverage factor: nearly all readings lie within so many standard uncertainties (JCGM 100)."""


def facts_of(found: Iterable[Standing], record: str = "record") -> Facts:
    """Sizes that were read or cut, as facts.

    Parameters
    ----------
    found
        What stands.
    record
        What origins call the record.
    """
    facts: dict[str, Fact] = {}
    for entry in _there(found):
        if entry.kind not in ("reading", "cut", "machined"):
            continue
        for name, size in entry.sizes:
            path = entry.number_path(name)
            known = facts.get(path, Fact(_origin(entry, record)))
            if entry.kind == "reading":
                causes = _causes(path, entry.u)
                known = Fact(_origin(entry, record), known.cut, size, causes)
            else:
                known = replace(known, cut=size)
            facts[path] = known
    return MappingProxyType(dict(sorted(facts.items())))


def marks_of(found: Iterable[Standing]) -> Mapping[str, Kind]:
    """By path the furthest mark: cut, machined, assembled, finished or hung."""
    marks: dict[str, Kind] = {}
    for entry in _there(found):
        if entry.kind not in MARKS:
            continue
        old = marks.get(entry.path)
        if old is None or MARKS.index(old) < MARKS.index(entry.kind):
            marks[entry.path] = entry.kind
    return MappingProxyType(dict(sorted(marks.items())))


def offcuts_of(found: Iterable[Standing]) -> tuple[Entry, ...]:
    """The offcuts that are there, in the order in which they were kept."""
    return tuple(entry for entry in _there(found) if entry.kind == "offcut")


def outer_paths(path: str) -> Iterator[str]:
    """A path and those that it lies in, itself first: sink.shelf.1, sink.shelf, sink."""
    while path:
        yield path
        path = path.rpartition(".")[0]


def _there(found: Iterable[Standing]) -> Iterator[Entry]:
    """Entries about pieces that were not spoiled since, in order."""
    ordered = sorted(found, key=lambda each: (each.place, each.entry.order))
    spoiled: dict[str, Order] = {}
    for each in ordered:
        if each.entry.kind == "spoiled":
            spoiled[each.entry.path] = each.place
    for each in ordered:
        gone = (spoiled.get(path) for path in outer_paths(each.entry.path))
        if not any(place is not None and each.place < place for place in gone):
            yield each.entry


def _origin(entry: Entry, record: str) -> Origin:
    day = f"{entry.at.day} {entry.at:%b %Y}"
    words = [word for word in (entry.tool, day, entry.note) if word]
    kind = entry.kind if entry.kind != "reading" else ""
    note = ", ".join([kind, *words] if kind else words)
    return Origin("measured" if entry.kind == "reading" else "made", note, where=record)


def _causes(path: str, u: Fraction | None) -> tuple[Cause, ...]:
    """How far a reading may be off: its own deviation, shared with nothing else."""
    if not u:
        return ()
    return (Cause(f"reading of {path}", u, _COVER * u, bias=True),)
