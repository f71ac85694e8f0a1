"""Readings that cannot all be right: told before any of them is used."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from statistics import median

from casewright.dims import Dim, Told, Unit, joined, tell, total
from casewright.survey.doubt_numbers import DoubtNumbers
from casewright.survey.plumb_doubts import plumb_checks
from casewright.survey.readings import variance
from casewright.survey.specs import FixedThing, WallSpec
from casewright.survey.walls import SurveyedWall, readings_of

__all__ = ["Doubt", "wall_doubts"]

_APART = {"in": Fraction(254, 10), "mm": Fraction(25)}
"""How far widths of one wall differ before one is doubted: 1 in, 25 mm (common practice)."""

_UNLEVEL = {"in": Fraction(508, 10), "mm": Fraction(50)}
"""How far heights differ before one is doubted: 2 in, 50 mm (own judgement)."""

_WANDER = Fraction(3)
"""How far a wall wanders from where its width was read to where its segments were [mm]."""

_SIGMAS = 3
"""Standard deviations that a sum may be off before it is doubted (common practice)."""


@dataclass(frozen=True, slots=True)
class Doubt:
    """Readings that cannot all be right.

    Parameters
    ----------
    paths
        The readings, the likeliest slip first.
    says
        What is odd about them.
    again
        What to read again.
    """

    paths: tuple[str, ...]
    says: Told
    again: Told


@dataclass(frozen=True, slots=True)
class _Row:
    """A reading with its name in words."""

    name: str
    words: Told
    dim: Dim
    variance: Fraction

    @property
    def value(self) -> Fraction:
        """As read [mm]."""
        return self.dim.value


def wall_doubts(wall: SurveyedWall, unit: Unit) -> tuple[Doubt, ...]:
    """What is doubtful about the readings of a wall; those that are sure are left alone."""
    return tuple(_Wall(wall, unit).doubts())


class _Wall:
    def __init__(self, wall: SurveyedWall, unit: Unit) -> None:
        self.wall, self.spec, self.unit = wall, wall.spec, unit
        self.readings = dict(readings_of(wall.spec))
        self.numbers = DoubtNumbers(wall, unit)

    def doubts(self) -> Iterator[Doubt]:
        """All of them, in the order of the form."""
        widths = [f"width_{n}" for n in range(1, len(self.spec.widths) + 1)]
        odd = list(self._odd(self._rows(widths, "width"), _APART[self.unit], "width"))
        yield from odd
        if not odd:
            yield from self._chains()
            yield from self._leans()
        yield from self._heights()
        for thing in self.spec.things:
            yield from self._upright(thing)
            tops = [f"fixed.{thing.key}.top_{n}" for n in range(1, len(thing.tops) + 1)]
            rows = self._rows(tops, f"height of {thing.title}")
            yield from self._odd(rows, _UNLEVEL[self.unit], f"height of {thing.title}")

    def _rows(self, names: Iterable[str], words: str) -> list[_Row]:
        return [self._row(name, f"{words} {n}") for n, name in enumerate(names, start=1)
                if name in self.readings]  # fmt: skip

    def _row(self, name: str, words: str) -> _Row:
        reading = self.readings[name]
        strays = variance(reading.accuracy, self.unit)
        return _Row(name, Told(words), self.wall.read[name], strays)

    def _sure(self, row: _Row) -> bool:
        """Whether it was read once more: said so, or recorded since, which asks by itself."""
        return self.readings[row.name].sure or self.wall.read[row.name].built is not None

    def _path(self, name: str) -> str:
        return f"{self.wall.place.path}.{name}"

    def _odd(self, rows: Sequence[_Row], within: Fraction, what: str) -> Iterator[Doubt]:
        """Readings of one thing that lie far from the others."""
        if len(rows) < 2:
            return
        middle = median(row.value for row in rows)
        if len(rows) == 2:
            if abs(rows[0].value - rows[1].value) > within:
                yield from self._apart(rows, what)
            return
        for row in rows:
            if abs(row.value - middle) <= within or self._sure(row):
                continue
            among = self._range([each.dim for each in rows if each is not row])
            says = tell("{} stands among {}", self.numbers.said(row.dim), among)
            says = _with(says, self.numbers.slip(row.name, row.dim, middle, within))
            yield Doubt((self._path(row.name),), says, Told(f"the {what} of {self.spec.title}"))

    def _apart(self, rows: Sequence[_Row], what: str) -> Iterator[Doubt]:
        one, other = rows
        unsure = [row for row in rows if not self._sure(row)]
        if not unsure:
            return
        numbers, within = self.numbers, _APART[self.unit]
        slip = numbers.slip(one.name, one.dim, other.value, within) or numbers.slip(
            other.name, other.dim, one.value, within
        )
        off = numbers.apart(f"{one.name}.apart", one.dim, other.dim)
        says = tell("{} and {} lie {} apart", numbers.said(one.dim), numbers.said(other.dim), off)
        yield Doubt(tuple(self._path(row.name) for row in unsure), _with(says, slip),
                    Told(f"the {what} of {self.spec.title}, a third time"))  # fmt: skip

    def _range(self, dims: Sequence[Dim]) -> Told:
        ends = [pick(dims, key=lambda dim: dim.value) for pick in (min, max)]
        low, high = (self.numbers.said(dim) for dim in ends)
        return tell("{}", low) if low.text == high.text else tell("{} to {}", low, high)

    def _chains(self) -> Iterator[Doubt]:
        """Segments from one end of the wall to the other against its width."""
        for chain in _chains(self.spec):
            rows = [self._row(f"fixed.{key}.{name}", words) for key, name, words in chain]
            whole = self._nearest_width(sum((row.value for row in rows), Fraction(0)))
            if whole is not None:
                yield from self._sum(rows, whole, "the segments along the wall", _WANDER)

    def _leans(self) -> Iterator[Doubt]:
        for check in plumb_checks(self.wall, self.unit):
            names = (check.high, check.low, *check.plumbs)
            rows = [self._row(name, "") for name in names]
            unsure = tuple(self._path(row.name) for row in rows if not self._sure(row))
            if unsure:
                says = tell("of {} {}", self.spec.title, check.says(self.numbers))
                again = f"its widths and the leans at its ends, {self.spec.title}"
                yield Doubt(unsure, says, Told(again))

    def _nearest_width(self, near: Fraction) -> _Row | None:
        names = [f"width_{n}" for n in range(1, len(self.spec.widths) + 1)]
        rows = self._rows(names, "width")
        for row in rows:
            if len(rows) == 1:
                return self._row(row.name, "width")
        return min(rows, key=lambda row: abs(row.value - near), default=None)

    def _sum(
        self, rows: Sequence[_Row], whole: _Row, what: str, wander: Fraction
    ) -> Iterator[Doubt]:
        """Segments that must sum to a whole."""
        reached = sum((row.value for row in rows), Fraction(0))
        off = reached - whole.value
        everything = (*rows, whole)
        variances = sum((row.variance for row in everything), wander**2)
        unsure = [row for row in everything if not self._sure(row)]
        if off**2 <= _SIGMAS**2 * variances or not unsure:
            return
        slips = [
            (row, text)
            for row, near in (
                *((row, row.value - off) for row in rows), (whole, reached),
            )
            if row in unsure and (text := self._slip(row, near, wander))
        ]  # fmt: skip
        says, again = self._unequal(rows, whole, what), Told(f"{what}, one by one")
        if slips:
            (first, meant), title = slips[0], self.spec.title
            says = tell("{}; of {}: {}", says, first.words, meant)
            again = tell("{} of {}", first.words, title)
            unsure.sort(key=lambda row: row is not first)
        yield Doubt(tuple(self._path(row.name) for row in unsure), says, again)

    def _slip(self, row: _Row, near: Fraction, wander: Fraction) -> Told:
        return self.numbers.slip(row.name, row.dim, near, _SIGMAS * (wander + 2))

    def _unequal(self, rows: Sequence[_Row], whole: _Row, what: str) -> Told:
        """Segments, their sum, and what the whole was read as."""
        numbers, last = self.numbers, rows[-1].name
        parts = joined(" + ", (tell("{} {}", row.words, numbers.said(row.dim)) for row in rows))
        reached = numbers.named(f"{last}.sum", total(*(row.dim for row in rows)))
        return tell(
            "{} of {} do not sum: {} = {}, {} {} than {} {}",
            what, self.spec.title, parts, numbers.said(reached),
            numbers.apart(f"{last}.off", reached, whole.dim),
            "more" if reached.value > whole.value else "less", whole.words,
            numbers.said(whole.dim),
        )  # fmt: skip

    def _heights(self) -> Iterator[Doubt]:
        for n in range(1, len(self.spec.stations) + 1):
            names = {name: f"station_{n}.{name}" for name in ("down", "up", "whole")}
            if all(name in self.readings for name in names.values()):
                at = self.numbers.said(self.wall.at[f"station_{n}.along"])
                rows = [replace(self._row(names[name], ""), words=tell("{} at {}", name, at))
                        for name in ("down", "up")]  # fmt: skip
                whole = self._row(names["whole"], "floor to ceiling")
                yield from self._sum(rows, whole, "the heights", Fraction(0))
        for name, what in (("down", "level line down"), ("up", "level line up")):
            read = [f"station_{n}.{name}" for n in range(1, len(self.spec.stations) + 1)]
            yield from self._odd(self._rows(read, what), _UNLEVEL[self.unit], what)

    def _upright(self, thing: FixedThing) -> Iterator[Doubt]:
        names = [f"fixed.{thing.key}.{name}" for name in ("bottom", "height", "top")]
        if all(name in self.readings for name in names):
            bottom, height, top = (
                self._row(name, f"{name.rpartition('.')[2]} of {thing.title}") for name in names
            )
            yield from self._sum([bottom, height], top, "the heights", Fraction(0))


def _chains(wall: WallSpec) -> Iterator[list[tuple[str, str, str]]]:
    """Closed rows of segments from the left end to the right: key, reading, words."""
    for last in wall.things:
        if last.right is None:
            continue
        row: list[tuple[str, str, str]] = [(last.key, "right", f"from {last.title} to the right")]
        thing: FixedThing | None = last
        while thing is not None:
            if thing.left is None or thing.width is None:
                break
            before = thing.after
            words = f"from {wall.thing(before).title}" if before else "from the left"
            row += [
                (thing.key, "width", thing.title), (thing.key, "left", f"{words} to {thing.title}")
            ]  # fmt: skip
            if before is None:
                yield row[::-1]
                break
            thing = wall.thing(before)


def _with(says: Told, slip: Told) -> Told:
    """What is odd, and what was probably meant."""
    return tell("{}; {}", says, slip) if slip else says
