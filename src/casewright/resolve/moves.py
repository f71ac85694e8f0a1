"""What can be done to a made piece that would have to be of another size."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

from casewright.casework.parts import Part
from casewright.dims import Dim, size_text
from casewright.resolve.spoiled import smallest_holding
from casewright.room.model import Room
from casewright.stock import Offcut

__all__ = [
    "LOOSE", "MINUTES", "THICKEST_SHIM", "Move", "Remedy", "Rung", "Side", "all_mended",
    "comes_off", "cut_anew", "mended", "packed_up", "sides_of",
]  # fmt: skip

Side = Literal["length", "width"]
Rung = Literal[
    "adjust", "shim", "scribe", "trim", "move a filler", "re-band", "glue a strip",
    "recut smaller elsewhere", "recut from an offcut", "recut", "design anew",
]  # fmt: skip

MINUTES: dict[Rung, int] = {
    "adjust": 6, "shim": 5, "scribe": 15, "trim": 5, "move a filler": 0, "re-band": 12,
    "glue a strip": 40, "recut smaller elsewhere": 8, "recut from an offcut": 8, "recut": 8,
    "design anew": 0,
}  # fmt: skip
"""Touch time of one skilled person: common practice, from memory; gluing with its clamps."""

THICKEST_SHIM = Fraction(6)
"""Common practice: what is shimmed more shows [mm]."""

LOOSE = ("cut", "machined")
"""States of a made piece that is fastened to nothing yet."""

_COMES_OFF = ("back", "shelf", "slab", "lid", "filler")
"""Roles of pieces that are put on whole, and come off again whole where they are not glued."""

_OFF_AND_ON = 10
"""Taking a piece off and putting it on again [min]: common practice, from memory."""

_THICKEST_BAND = Fraction(3)
"""Common practice: edge band is sold up to 3 mm [mm]."""

_THINNEST_GLUED = Fraction(9)
"""Common practice: a strip glued to the edge of anything thinner does not hold [mm]."""


@dataclass(frozen=True, slots=True)
class Remedy:
    """One thing that can be done.

    Parameters
    ----------
    rung
        What it is.
    says
        What to do, with its sizes, in words.
    minutes
        About how long it takes; 0 where nothing is made for it [-].
    stock
        What it uses up, in words; empty for nothing.
    sizes
        Paths of the sizes of made pieces that it changes, with the new ones [mm].
    anew
        Paths of pieces that are cut again by the numbers as they are then.
    """

    rung: Rung
    says: str
    minutes: int
    stock: str = ""
    sizes: tuple[tuple[str, Fraction], ...] = ()
    anew: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Move:
    """A made piece that would have to be longer or wider by `by` (shorter when negative) [mm].

    Parameters
    ----------
    alike
        Made pieces that are off as it is, and go with it: the other end of a drawer.
    """

    part: Part
    side: Side
    dim: Dim
    by: Fraction
    alike: tuple[Part, ...] = ()

    @property
    def count(self) -> int:
        """How many pieces it takes [-]."""
        return 1 + len(self.alike)

    @property
    def is_even(self) -> bool:
        """Whether they are all of one size."""
        return all(_size(part) == _size(self.part) for part in self.alike)

    @property
    def names(self) -> str:
        """The pieces by their marks and paths: '11 (pans.drawer_1.front_end) and 12 (...)'."""
        return _listed((self.part, *self.alike))

    @property
    def sizes(self) -> tuple[tuple[str, Fraction], ...]:
        """Paths of the sizes that change, with the new ones [mm]."""
        dims = [self.dim, *(dict(sides_of(part))[self.side] for part in self.alike)]
        return tuple((dim.path, dim.value + self.by) for dim in dims)

    @property
    def width(self) -> Fraction:
        """The width that it is ripped to [mm]."""
        return self.part.blank.width.value + self.by

    @property
    def anew(self) -> tuple[Fraction, Fraction]:
        """Length and width of the pieces cut again: the other side as it is wanted [mm]."""
        blank = self.part.blank
        if self.side == "length":
            return blank.length.value + self.by, blank.width.wanted
        return blank.length.wanted, blank.width.value + self.by

    @property
    def sizes_anew(self) -> tuple[tuple[str, Fraction], ...]:
        """Paths of the sizes that change when the pieces are cut again, with the new ones [mm]."""
        dims = [
            d for p in (self.part, *self.alike) for side, d in sides_of(p) if side != self.side
        ]
        return (*self.sizes, *((dim.path, dim.wanted) for dim in dims if dim.value != dim.wanted))


def sides_of(part: Part) -> tuple[tuple[Side, Dim], ...]:
    """The sizes a piece is cut to, by their names."""
    return (("length", part.blank.length), ("width", part.blank.width))


def comes_off(room: Room, part: Part) -> bool:
    """Whether a piece can be taken off what it is a part of already: nothing glues it in."""
    if part.role not in _COMES_OFF:
        return False
    joints = (joint for case in room.cases for joint in case.joints)
    own = (joint for joint in joints if part.path in (joint.one.part, joint.other.part))
    return not any(each.kind == "glue" for joint in own for each in joint.fastenings)


def mended(room: Room, moves: Sequence[Move], offcuts: Sequence[Offcut]) -> Iterator[Remedy]:
    """What brings one of these pieces to its size, the least work first.

    Parameters
    ----------
    moves
        Any one of them is enough.
    offcuts
        Those on hand.
    """
    bench = _Bench(room, offcuts)
    for move in moves:
        if move.by < 0:
            yield _taken_off(move, bench.shorten(move))
    for move in moves:
        if move.by > 0:
            yield from (_taken_off(move, each) for each in bench.lengthen(move))
    for move in moves:
        if move.by > 0:
            yield from (_taken_off(move, each) for each in bench.cut_again(move))


def _taken_off(move: Move, remedy: Remedy) -> Remedy:
    """The same for a piece that is fastened already."""
    if move.part.state in LOOSE:
        return remedy
    says = f"take {'them' if move.alike else 'it'} off first, then {remedy.says}"
    return replace(remedy, says=says, minutes=remedy.minutes + _OFF_AND_ON * move.count)


def all_mended(room: Room, moves: Sequence[Move], offcuts: Sequence[Offcut]) -> Remedy:
    """What brings all of these pieces to their sizes, each by what is the least work on it.

    Two sizes of one piece that both grow are one new piece; so is one that grows and shrinks.
    """
    by_part: dict[str, list[Move]] = {}
    for move in moves:
        by_part.setdefault(move.part.path, []).append(move)
    found: list[Remedy] = []
    for own in by_part.values():
        if any(move.by > 0 for move in own):
            found.append(_recut(room, own, offcuts))
        else:
            found.extend(next(mended(room, (move,), offcuts)) for move in own)
    rung = max((remedy.rung for remedy in found), key=tuple(MINUTES).index)
    return Remedy(
        rung,
        "; ".join(remedy.says for remedy in found),
        sum(remedy.minutes for remedy in found),
        " and ".join(remedy.stock for remedy in found if remedy.stock),
        tuple(size for remedy in found for size in remedy.sizes),
    )


def cut_anew(room: Room, parts: Sequence[Part]) -> Remedy:
    """Pieces that are cut again by the numbers as they are then."""
    goods = dict.fromkeys(room.spec.stock[part.stock].title for part in parts)
    return Remedy(
        "recut",
        f"cut {_listed(parts)} again, to the sizes that they get once they are marked spoiled",
        MINUTES["recut"] * len(parts),
        " and ".join(goods),
        anew=tuple(part.path for part in parts),
    )


def _recut(room: Room, moves: Sequence[Move], offcuts: Sequence[Offcut]) -> Remedy:
    """One piece cut again at other sizes: its length, its width or both."""
    if len(moves) == 1:
        return next(mended(room, moves, offcuts))
    part, by = moves[0].part, {move.side: move.by for move in moves}
    length = part.blank.length.value + by.get("length", 0)
    width = part.blank.width.value + by.get("width", 0)
    size = f"{size_text(length, room.spec.unit)} x {size_text(width, room.spec.unit)}"
    sizes = tuple(size for move in moves for size in move.sizes)
    offcut = smallest_holding(offcuts, part.stock, length, width, turns=not part.grain)
    if offcut is not None:
        says = f"cut {_name(part)} again, {size}, out of {offcut.path}"
        return Remedy("recut from an offcut", says, MINUTES["recut"], offcut.path, sizes)
    says = f"cut {_name(part)} again, {size}"
    stock = f"{size} of {room.spec.stock[part.stock].title}"
    return Remedy("recut", says, MINUTES["recut"], stock, sizes)


def packed_up(room: Room, move: Move) -> Iterator[Remedy]:
    """A side that is too short stands on a shim, where that does not show."""
    if 0 < move.by <= THICKEST_SHIM:
        by = size_text(move.by, room.spec.unit)
        yield Remedy(
            "shim", f"stand {move.names} on a shim, {by} thick", MINUTES["shim"], "a shim"
        )


@dataclass(frozen=True, slots=True)
class _Bench:
    """Where a piece is made longer, wider or anew."""

    room: Room
    offcuts: Sequence[Offcut]

    def shorten(self, move: Move) -> Remedy:
        says = f"take {self.text(-move.by)} off the {move.side} of {move.names}"
        return Remedy("trim", says, MINUTES["trim"] * move.count, sizes=move.sizes)

    def lengthen(self, move: Move) -> Iterator[Remedy]:
        planes = ("w0", "w1") if move.side == "width" else ("l0", "l1")
        banded = [edge for edge in move.part.edges if edge.kind == "band" and edge.edge in planes]
        thick = banded[0].thickness.value + move.by if banded else None
        if thick is not None and thick <= _THICKEST_BAND:
            says = f"band {move.names} anew, at least {self.text(thick)} thick"
            yield Remedy("re-band", says, MINUTES["re-band"] * move.count, "edge band")
        if not move.is_even:
            return
        if move.side == "width" and move.part.blank.thickness.value >= _THINNEST_GLUED:
            says = (
                f"glue a strip to an edge of {move.names} and rip "
                f"{'each' if move.alike else 'it'} to {self.text(move.width)}"
            )
            minutes = MINUTES["glue a strip"] * move.count
            yield Remedy("glue a strip", says, minutes, "a strip of that stock", move.sizes)

    def cut_again(self, move: Move) -> Iterator[Remedy]:
        if not move.is_even:
            yield self._each_again(move)
            return
        part, (length, width) = move.part, move.anew
        size = f"{self.text(length)} x {self.text(width)}"
        goods = self.room.spec.stock[part.stock].title
        used = f"{move.count} of {size}" if move.alike else size
        other = self._smaller(part)
        if other is not None:
            again = f"these again, {size} each" if move.alike else f"that one again, {size}"
            says = f"cut {_name(other)} out of {move.names}, and {again}"
            stock = f"{used} of {goods}, less what {_name(other)} would take"
            minutes = MINUTES["recut"] * move.count
            yield Remedy("recut smaller elsewhere", says, minutes, stock, move.sizes_anew)
        offcut = smallest_holding(self.offcuts, part.stock, length, width, turns=not part.grain)
        if offcut is not None and not move.alike:
            says = f"cut {_name(part)} again, {size}, out of {offcut.path}"
            minutes = MINUTES["recut"]
            yield Remedy("recut from an offcut", says, minutes, offcut.path, move.sizes_anew)
        else:
            says = f"cut {move.names} again, {size}"
            minutes = MINUTES["recut"] * move.count
            yield Remedy("recut", says, minutes, f"{used} of {goods}", move.sizes_anew)

    def _each_again(self, move: Move) -> Remedy:
        """Several pieces of different sizes that go by one another."""
        own = [replace(move, part=part, alike=()) for part in (move.part, *move.alike)]
        sizes = [" x ".join(self.text(size) for size in each.anew) for each in own]
        says = [f"{each.names} again, {size}" for each, size in zip(own, sizes, strict=True)]
        goods = self.room.spec.stock[move.part.stock].title
        minutes = MINUTES["recut"] * move.count
        used = f"{', '.join(sizes)} of {goods}"
        return Remedy("recut", f"cut {'; '.join(says)}", minutes, used, move.sizes_anew)

    def _smaller(self, part: Part) -> Part | None:
        """The largest piece still to be cut that comes out of a made one."""
        own = Offcut(part.path, part.stock, part.blank.length.value, part.blank.width.value)
        if part.state != "cut":
            return None
        fit = [
            each
            for each in self.room.parts
            if each.state == "planned" and each.stock == part.stock
            and own.holds(each.blank.length.value, each.blank.width.value, turns=not each.grain)
        ]  # fmt: skip
        return max(fit, key=lambda p: p.blank.length.value * p.blank.width.value, default=None)

    def text(self, size: Fraction) -> str:
        return size_text(size, self.room.spec.unit)


def _name(part: Part) -> str:
    return f"{part.mark} ({part.path})"


def _listed(parts: Iterable[Part]) -> str:
    *others, last = map(_name, parts)
    return f"{', '.join(others)} and {last}" if others else last


def _size(part: Part) -> tuple[Fraction, Fraction]:
    return part.blank.length.value, part.blank.width.value
