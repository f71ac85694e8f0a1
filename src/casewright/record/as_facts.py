"""What the record says of the real things: facts by path, and how far each piece has come.

- A reading gives the `built` size of its number, a piece marked cut or machined the `cut` sizes;
  of two for one number the later in order counts. A reading counts until another one is made, it
  is corrected or withdrawn, or the piece is spoiled.
- A spoiled piece is no longer there: what was read and marked before, on it and under its path,
  counts no more. What comes after is about the new piece.
- A size that an accepted proposal keeps counts as one that is cut, until the piece is spoiled or
  the acceptance filed under the same path, which names no size, is withdrawn.
- Marks only add up: a piece has come as far as its furthest mark.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

from casewright.dims import Cause, Origin, reading_causes
from casewright.facts import Fact, Facts
from casewright.record.entry import MARKS, Entry, Kind, Order
from casewright.record.standing import Standing

__all__ = ["NO_MARKS", "Marks", "facts_of", "marks_of", "offcuts_of", "outer_paths"]

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
    ordered = tuple(found)
    gone = _spoiled(ordered)
    agreed = {s.entry.path for s in ordered if s.entry.kind == "accepted" and not s.entry.sizes}
    for each in _there(ordered):
        entry = each.entry
        if entry.kind not in ("reading", "cut", "machined", "accepted"):
            continue
        if entry.kind == "accepted" and entry.path not in agreed:
            continue
        origin = _origin(entry, record)
        for name, size in entry.sizes:
            path = entry.number_path(name)
            if _is_gone(path, each.place, gone):
                continue
            known = facts.get(path, Fact(origin))
            if entry.kind == "reading":
                known = Fact(origin, known.cut, size, _causes(path, entry))
            elif known.built is None:
                known = Fact(origin, cut=size)
            else:
                known = replace(known, cut=size)
            facts[path] = known
    return MappingProxyType(dict(sorted(facts.items())))


@dataclass(frozen=True, slots=True)
class Marks:
    """How far things have come.

    Parameters
    ----------
    marked
        By path, its marks with their places in the order.
    spoiled
        By path, when a piece was last spoiled.
    """

    marked: Mapping[str, tuple[tuple[Kind, Order], ...]]
    spoiled: Mapping[str, Order]

    def furthest(self, path: str, without: Container[str] = ()) -> Kind | None:
        """The furthest mark of a piece: its own or one of what it lies in, since it was spoiled.

        Parameters
        ----------
        without
            Paths whose marks do not count for this piece.
        """
        around = tuple(outer_paths(path))
        gone = [self.spoiled[each] for each in around if each in self.spoiled]
        since = max(gone, default=None)
        found = [
            kind
            for each in around
            if each not in without
            for kind, place in self.marked.get(each, ())
            if since is None or place > since
        ]
        return max(found, key=MARKS.index, default=None)


NO_MARKS = Marks(MappingProxyType({}), MappingProxyType({}))


def marks_of(found: Iterable[Standing]) -> Marks:
    """What was marked cut, machined, assembled, finished or hung, and what was spoiled."""
    marked: dict[str, tuple[tuple[Kind, Order], ...]] = {}
    spoiled: dict[str, Order] = {}
    for each in sorted(found, key=lambda each: (each.place, each.entry.order)):
        entry = each.entry
        if entry.kind in MARKS:
            marked[entry.path] = (*marked.get(entry.path, ()), (entry.kind, each.place))
        elif entry.kind == "spoiled":
            spoiled[entry.path] = each.place
    return Marks(marked, spoiled)


def offcuts_of(found: Iterable[Standing]) -> tuple[Entry, ...]:
    """The offcuts that are there, in the order in which they were kept."""
    return tuple(each.entry for each in _there(found) if each.entry.kind == "offcut")


def outer_paths(path: str) -> Iterator[str]:
    """A path and those that it lies in, itself first: sink.shelf.1, sink.shelf, sink."""
    while path:
        yield path
        path = path.rpartition(".")[0]


def _there(found: Iterable[Standing]) -> Iterator[Standing]:
    """Entries about pieces that were not spoiled since, in order."""
    ordered = sorted(found, key=lambda each: (each.place, each.entry.order))
    gone = _spoiled(ordered)
    return (each for each in ordered if not _is_gone(each.entry.path, each.place, gone))


def _spoiled(found: Iterable[Standing]) -> dict[str, Order]:
    """When each piece was last spoiled."""
    spoiled: dict[str, Order] = {}
    for each in sorted(found, key=lambda each: (each.place, each.entry.order)):
        if each.entry.kind == "spoiled":
            spoiled[each.entry.path] = each.place
    return spoiled


def _is_gone(path: str, place: Order, spoiled: Mapping[str, Order]) -> bool:
    """Whether a piece, or what it lies in, was spoiled after a place in the order."""
    gone = (spoiled.get(outer) for outer in outer_paths(path))
    return any(after is not None and place < after for after in gone)


def _origin(entry: Entry, record: str) -> Origin:
    day = f"{entry.at.day} {entry.at:%b %Y}"
    if entry.kind == "accepted":
        return Origin("chosen", f"kept as planned, {day}", where=record)
    words = [word for word in (entry.tool, day, entry.note) if word]
    kind = entry.kind if entry.kind != "reading" else ""
    note = ", ".join([kind, *words] if kind else words)
    return Origin("measured" if entry.kind == "reading" else "made", note, where=record)


def _causes(path: str, entry: Entry) -> tuple[Cause, ...]:
    """How far a reading may be off: its own deviation, shared by all that goes by it."""
    if not entry.u:
        return ()
    return reading_causes(f"reading of {path}", entry.u, _COVER * entry.u, entry.tool)
