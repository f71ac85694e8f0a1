"""What an entry is about: a number, a part, a front or a case, by its path or its mark."""

from __future__ import annotations

import difflib
from collections.abc import Collection, Iterable
from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.cases import Front
from casewright.casework.parts import Part
from casewright.dims import Dim
from casewright.record import RecordError, Sizes
from casewright.room.model import Room

__all__ = ["Targets", "all_sizes", "cut_sizes"]

_OUTSIDE = ("length", "width", "height", "depth", "thickness")
_OUTLINE = ("length", "width", "blank_length", "blank_width", "thickness")
_READ = ("stock", "hardware", "shop")
_BEFORE = ("survey", "run", "island", "appliance", "stock", "hardware", "shop")
"""What stands before the name of a wall, a run or goods, and is easily left out."""
_NEAREST = 4
_WANT_LIST = (
    "casewright parts JOB lists the parts with their marks, casewright why JOB the numbers"
)


@dataclass(frozen=True, slots=True)
class Targets:
    """Everything in a room that an entry can be about."""

    room: Room

    def parts(self, word: str) -> tuple[Part, ...]:
        """The parts that a mark, or the path of a part, a front or a case means.

        A case means the parts of its box: its fronts are marked by themselves.

        Raises
        ------
        RecordError
            With the nearest ones when there is none.
        """
        parts, word = self.room.parts, self._full(word, self._things())
        for found in (
            [part for part in parts if word in (part.path, part.mark)],
            [part for part in parts if part.front == word],
            [part for part in parts if part.case == word and not part.front],
        ):
            if found:
                return tuple(found)
        raise self._unknown(word, self._things())

    def thing(self, word: str) -> str:
        """Path of the part, front or case that is meant.

        Raises
        ------
        RecordError
            With the nearest ones when there is none.
        """
        by_mark = [part.path for part in self.room.parts if part.mark == word]
        if by_mark:
            return by_mark[0]
        things = self._things()
        known = self._full(word, things)
        if known in things:
            return known
        raise self._unknown(word, things)

    def number(self, word: str) -> Dim:
        """The number that was read.

        Raises
        ------
        RecordError
            When there is none of this path, with the nearest; or when nothing real stands for it.
        """
        nodes = self.room.chain.nodes
        word = self._number_path(word)
        dim = nodes.get(word)
        if dim is None:
            readable = [path for path, node in nodes.items() if self._is_read(node)]
            dim = nodes.get(self._full(word, readable))
            if dim is None:
                raise self._unknown(word, readable)
        if not self._is_read(dim):
            raise self._not_read(dim)
        return dim

    def read_on(self, path: str) -> Dim | None:
        """The number of exactly that path, None where nothing real stands for it."""
        dim = self.room.chain.nodes.get(path)
        return dim if dim is not None and self._is_read(dim) else None

    def front(self, path: str) -> Front | None:
        """The front of that path, or None."""
        fronts = (front for case in self.room.cases for front in case.fronts)
        return next((front for front in fronts if front.path == path), None)

    def _number_path(self, word: str) -> str:
        """A number of a part by its mark: 12.width."""
        mark, dot, name = word.partition(".")
        if dot and mark.isdigit():
            for part in self.room.parts:
                if part.mark == mark:
                    return f"{part.path}.{name}"
        return word

    def _full(self, word: str, known: Collection[str]) -> str:
        """The one path that a word stands for, said as in the job file or without its beginning.

        `case.sink.width` is `sink.width`; `wall.bed.width` the first of `survey.wall.bed`;
        `plywood` its thickness.
        """
        word = word.removeprefix("case.") if "." in word else word
        if word in known or not word:
            return word
        ways = [f"{first}.{word}" for first in _BEFORE]
        ways = [*ways, *(f"{way}_1" for way in ways), f"stock.{word}.thickness"]
        found = [way for way in ways if way in known]
        if not found and "." in word:
            found = [path for path in known if path.endswith(f".{word}")]
        return found[0] if len(found) == 1 else word

    def _things(self) -> list[str]:
        fronts = [front.path for case in self.room.cases for front in case.fronts]
        frames = [part.front for part in self.room.parts if part.front]
        cases = [case.key for case in self.room.cases]
        return list(dict.fromkeys([*cases, *fronts, *frames, *(p.path for p in self.room.parts)]))

    def _is_read(self, dim: Dim) -> bool:
        origin = dim.origin
        if origin is None or dim.power != 1 or dim.path.startswith("style."):
            return False
        return origin.kind in ("made", "measured") or dim.path.partition(".")[0] in _READ

    def _not_read(self, dim: Dim) -> RecordError:
        nodes = self.room.chain.nodes
        near = [a.path for a in _resting(dim) if self._is_read(a)][:_NEAREST]
        if dim.origin is not None:
            what = f"{dim.path} is chosen, not measured"
            want = "change it in the job file"
        else:
            what = f"{dim.path} is worked out, nothing real has this size"
            want = "read what it follows from"
        if not near:
            own = [path for path, node in nodes.items() if self._is_read(node)]
            near = difflib.get_close_matches(dim.path, own, _NEAREST, 0.6)
        if near:
            want = f"{want}; what can be read near it: {', '.join(near)}"
        return RecordError.of(what, want)

    def _unknown(self, word: str, known: Iterable[str]) -> RecordError:
        if word.partition(".")[0].isdigit():
            marks = [part.mark for part in self.room.parts if part.mark.isdigit()]
            want = f"they go from 1 to {max(map(int, marks), default=0)}; {_WANT_LIST}"
            return RecordError.of(f"no part has the mark {word.partition('.')[0]}", want)
        known = list(known)
        inside = [path for path in known if path.startswith(f"{word}.")]
        inside.sort(key=_outer_first)
        ends = [path for path in known if path.endswith(f".{word}")]
        close = difflib.get_close_matches(word, known, _NEAREST, 0.6)
        bare = {path.partition(".")[2]: path for path in known if path.startswith(_BEFORE)}
        close += (bare[each] for each in difflib.get_close_matches(word, bare, _NEAREST, 0.7))
        near = list(dict.fromkeys([*inside, *_nearest(word, close), *ends]))[:_NEAREST]
        want = f"did you mean {', or '.join(near)}?" if near else _WANT_LIST
        what = f"there is nothing called {word}" if word else "it does not say what it is about"
        return RecordError.of(what, want)


def _nearest(word: str, paths: Iterable[str]) -> list[str]:
    """Those most like a word first, whether or not their beginning is said."""

    def unlike(path: str) -> float:
        ways = (path, path.partition(".")[2])
        return -max(difflib.SequenceMatcher(None, word, way).ratio() for way in ways)

    return sorted(paths, key=unlike)


def cut_sizes(part: Part) -> Sizes:
    """The sizes a part is cut to by the numbers known now, by their names under its path [mm]."""
    return _named(part, (part.blank.length, part.blank.width))


def all_sizes(room: Room, part: Part) -> Sizes:
    """The sizes a part is cut to and those of all that is machined into it [mm]."""
    own = f"{part.path}."
    found = (
        node
        for path, node in room.chain.nodes.items()
        if path.startswith(own) and path.removeprefix(own) not in _OUTLINE
    )
    made = [dim for dim in found if dim.origin and dim.origin.kind == "made"]
    return _named(part, (part.blank.length, part.blank.width, *made))


def _named(part: Part, dims: Iterable[Dim]) -> Sizes:
    own = f"{part.path}."
    sizes: dict[str, Fraction] = {
        dim.path.removeprefix(own): dim.value for dim in dims if dim.path.startswith(own)
    }
    return tuple(sorted(sizes.items()))


def _outer_first(path: str) -> tuple[int, int, str]:
    """A thing's own sizes before those of what is in it."""
    name = path.rpartition(".")[2]
    return (path.count("."), _OUTSIDE.index(name) if name in _OUTSIDE else 9, path)


def _resting(dim: Dim) -> list[Dim]:
    """The named numbers that one rests on, the nearest first."""
    found: list[Dim] = []
    queue = [dim]
    for node in queue:
        for arg in node.args:
            if isinstance(arg, Dim):
                (found if arg.path else queue).append(arg)
    return found
