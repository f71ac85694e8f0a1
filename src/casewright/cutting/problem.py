"""A cutting problem: stock, parts, kerf and stages, in whole numbers of one unit.

The stock's length lies along x, left to right; its width along y, bottom to top. A part's
length lies along the stock's length unless the part is turned.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import chain
from typing import Literal

from casewright.errors import CasewrightError

__all__ = [
    "LARGEST", "MOST_NESTED", "MOST_PIECES", "Defect", "Fault", "Keep", "Match", "MatchWay",
    "PartDemand", "Problem", "ProblemError", "StockItem", "Trim",
]  # fmt: skip

LARGEST = 10**9
"""Greatest length, price or count that a problem may hold."""

MOST_PIECES = 100_000
"""Greatest number of pieces that a problem may ask for."""

MOST_NESTED = 8
"""Greatest number of matches within each other."""

MatchWay = Literal["across", "along"]
"""across: side by side, across the stock's grain; along: end to end, in line with it."""


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing wrong with a problem.

    Parameters
    ----------
    where
        What it is about: 'part "side"', 'stock "ply"', 'parts[3]'.
    field
        The word that is wrong: 'length', 'kerf'.
    found
        What stands there.
    want
        What would be right.
    """

    where: str
    field: str
    found: str
    want: str

    def __str__(self) -> str:
        return f"{self.where}: {self.field} is {self.found}; it must be {self.want}"


class ProblemError(CasewrightError, ValueError):
    """A problem has no meaning; `faults` holds everything that is wrong with it."""

    def __init__(self, faults: Sequence[Fault]) -> None:
        super().__init__("\n".join(str(fault) for fault in faults))
        self.faults = tuple(faults)


@dataclass(frozen=True, slots=True)
class Trim:
    """What is lost at each edge of a piece of stock, the blade's share included [unit]."""

    left: int = 0
    right: int = 0
    bottom: int = 0
    top: int = 0


@dataclass(frozen=True, slots=True)
class Defect:
    """A rectangle that no part may touch, from the stock's lower left corner [unit]."""

    x: int
    y: int
    length: int
    width: int


@dataclass(frozen=True, slots=True)
class StockItem:
    """Sheets or boards of one size.

    Parameters
    ----------
    id
        Opaque name.
    length, width
        Size; grain runs along the length [unit].
    count
        How many there are; None: as many as needed.
    price
        Of one piece, in whole money units; 0 for what is owned already.
    trim
        Lost at the edges.
    defects
        Rectangles to stay clear of, the same on every piece of this item.
    """

    id: str
    length: int
    width: int
    count: int | None = None
    price: int = 1
    trim: Trim = Trim()
    defects: tuple[Defect, ...] = ()

    @property
    def usable_length(self) -> int:
        """Length between the trims [unit]."""
        return self.length - self.trim.left - self.trim.right

    @property
    def usable_width(self) -> int:
        """Width between the trims [unit]."""
        return self.width - self.trim.bottom - self.trim.top


@dataclass(frozen=True, slots=True)
class PartDemand:
    """Parts of one size.

    Parameters
    ----------
    id
        Opaque name.
    length, width
        Blank size, length along the grain [unit].
    count
        How many.
    rotate
        Whether the part may be turned, its length across the stock.
    group
        Parts of one group are wanted in one setting, side by side.
    """

    id: str
    length: int
    width: int
    count: int = 1
    rotate: bool = False
    group: str | None = None


@dataclass(frozen=True, slots=True)
class Match:
    """Parts through which the grain runs: cut out of one piece, in their order, a kerf apart.

    Parameters
    ----------
    id
        Opaque name; that of a match within another tells nothing.
    way
        How they lie.
    of
        Ids of parts, with all their copies, or matches, from the lower left corner on.
    """

    id: str
    way: MatchWay
    of: tuple[str | Match, ...]

    @property
    def parts(self) -> tuple[str, ...]:
        """Ids of all its parts, in order."""
        own = ((one,) if isinstance(one, str) else one.parts for one in self.of)
        return tuple(chain.from_iterable(own))

    def size(self, parts: Mapping[str, PartDemand], kerf: int) -> tuple[int, int]:
        """Length and width of the piece that its parts are cut out of [unit]."""
        sizes: list[tuple[int, int]] = []
        for one in self.of:
            if isinstance(one, str):
                sizes += [(parts[one].length, parts[one].width)] * parts[one].count
            else:
                sizes.append(one.size(parts, kerf))
        kerfs = kerf * (len(sizes) - 1)
        lengths, widths = zip(*sizes, strict=True)
        if self.way == "across":
            return max(lengths), sum(widths) + kerfs
        return sum(lengths) + kerfs, max(widths)


@dataclass(frozen=True, slots=True)
class Keep:
    """The smallest leftover worth keeping: its long and its short side [unit]."""

    long: int
    short: int


@dataclass(frozen=True, slots=True)
class Problem:
    """What to cut from what.

    n pieces in a row need n - 1 kerfs when the last is flush with the edge, n otherwise; a
    remainder narrower than the kerf is consumed by the blade.

    Parameters
    ----------
    unit
        Name of the unit that all lengths count: '1/32 in', '0.1 mm'.
    kerf
        Width of the blade's cut [unit].
    stages
        Most changes of cutting direction plus one; a final trim to size and the trimming of the
        stock's edges are not counted. None: any number.
    stock, parts
        What there is and what is wanted.
    keep
        Leftovers at least this large are offcuts, the others waste.
    matches
        Parts that are cut out of one piece; dividing that piece counts no stage.

    Raises
    ------
    ProblemError
        With every fault found.
    """

    unit: str
    kerf: int
    stages: int | None
    stock: tuple[StockItem, ...]
    parts: tuple[PartDemand, ...]
    keep: tuple[Keep, ...] = field(default=())
    matches: tuple[Match, ...] = field(default=())

    def __post_init__(self) -> None:
        faults = list(_faults(self))
        if faults:
            raise ProblemError(faults)


def _whole(value: int, low: int, where: str, name: str) -> Iterator[Fault]:
    if not low <= value <= LARGEST:
        yield Fault(where, name, str(value), f"a whole number from {low} to {LARGEST}")


def _faults(problem: Problem) -> Iterator[Fault]:
    yield from _whole(problem.kerf, 0, "problem", "kerf")
    if problem.stages is not None and problem.stages < 2:
        yield Fault("problem", "stages", str(problem.stages), '2, 3, more, or "free"')
    if not problem.stock:
        yield Fault("problem", "stock", "empty", "at least one sheet or board")
    yield from _repeats("stock", [item.id for item in problem.stock])
    yield from _repeats("part", [part.id for part in problem.parts])
    for item in problem.stock:
        yield from _stock_faults(item)
    for part in problem.parts:
        yield from _part_faults(part, problem.kerf)
    for size in problem.keep:
        yield from _whole(size.long, 1, "keep", "long side")
        yield from _whole(size.short, 1, "keep", "short side")
    yield from _match_faults(problem)
    pieces = sum(part.count for part in problem.parts)
    if pieces > MOST_PIECES:
        yield Fault("problem", "number of pieces", str(pieces), f"at most {MOST_PIECES}")


def _repeats(kind: str, names: list[str]) -> Iterator[Fault]:
    seen: set[str] = set()
    for name in names:
        if name in seen:
            yield Fault(f'{kind} "{name}"', "id", "used twice", "different for each")
        seen.add(name)


def _stock_faults(item: StockItem) -> Iterator[Fault]:
    where = f'stock "{item.id}"'
    yield from _whole(item.length, 1, where, "length")
    yield from _whole(item.width, 1, where, "width")
    yield from _whole(item.price, 0, where, "price")
    if item.count is not None:
        yield from _whole(item.count, 0, where, "count")
    for name in ("left", "right", "bottom", "top"):
        yield from _whole(getattr(item.trim, name), 0, where, f"trim {name}")
    if min(item.length, item.usable_length, item.width, item.usable_width) < 1:
        yield Fault(where, "trim", "as wide as the stock", "less, so that something is left")
    for spot in item.defects:
        inside = min(spot.x, spot.y) >= 0 and min(spot.length, spot.width) > 0
        inside &= spot.x + spot.length <= item.length and spot.y + spot.width <= item.width
        if not inside:
            text = f"{spot.length} x {spot.width} at {spot.x}, {spot.y}"
            yield Fault(where, "defect", text, "a rectangle on the stock")


def _part_faults(part: PartDemand, kerf: int) -> Iterator[Fault]:
    where = f'part "{part.id}"'
    yield from _whole(part.length, 1, where, "length")
    yield from _whole(part.width, 1, where, "width")
    yield from _whole(part.count, 1, where, "count")
    small = min(part.length, part.width)
    if 0 < small < kerf:
        yield Fault(where, "smaller side", str(small), f"at least the kerf, {kerf}: same unit?")


def _match_faults(problem: Problem) -> Iterator[Fault]:
    parts = {part.id: part for part in problem.parts}
    yield from _repeats("match", [match.id for match in problem.matches])
    seen: set[str] = set()
    for match in problem.matches:
        where, faults = f'match "{match.id}"', 0
        for fault in _members_faults(where, match, parts, seen):
            faults += 1
            yield fault
        if not faults and max(match.size(parts, problem.kerf)) > LARGEST:
            yield Fault(where, "size", "too large", f"at most {LARGEST} in all")


def _members_faults(
    where: str, match: Match, parts: Mapping[str, PartDemand], seen: set[str], depth: int = 1
) -> Iterator[Fault]:
    if not match.of:
        yield Fault(where, "of", "empty", "parts of the problem")
    for one in match.of:
        if isinstance(one, Match):
            if depth < MOST_NESTED:
                yield from _members_faults(where, one, parts, seen, depth + 1)
            else:
                yield Fault(where, "of", "nested too deep", f"at most {MOST_NESTED} deep")
        elif one not in parts:
            yield Fault(where, "of", f'"{one}"', "ids of parts of the problem")
        elif one in seen:
            yield Fault(where, "of", f'"{one}" once more', "each part in one place alone")
        elif parts[one].rotate:
            yield Fault(where, "of", f'"{one}", which may turn', "parts whose grain is fixed")
        else:
            seen.add(one)
