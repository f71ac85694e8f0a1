"""What can be done about a fit that real things no longer keep, the least work first.

The order is common practice: adjust, shim, trim, move a filler, re-band, glue a strip, recut the
piece smaller elsewhere, recut from an offcut or from new stock, design anew. Only those are told
that apply, with the size by which; each that moves a piece is tried on the model first.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

from casewright.casework.parts import Part
from casewright.dims import Dim, Fit, Origin, Way, round_to, size_text
from casewright.facts import NO_FACTS, Fact
from casewright.resolve.slopes import slope
from casewright.resolve.spoiled import Offcut, smallest_holding
from casewright.room.build import build
from casewright.room.model import Room

__all__ = ["Remedy", "Rung", "remedies"]

Rung = Literal[
    "adjust", "shim", "trim", "move a filler", "re-band", "glue a strip",
    "recut smaller elsewhere", "recut from an offcut", "recut", "design anew",
]  # fmt: skip

_MINUTES: dict[Rung, int] = {
    "adjust": 6, "shim": 5, "trim": 5, "move a filler": 0, "re-band": 12, "glue a strip": 40,
    "recut smaller elsewhere": 8, "recut from an offcut": 8, "recut": 8, "design anew": 0,
}  # fmt: skip
"""Touch time of one skilled person: common practice, from memory; gluing with its clamps."""

_THICKEST_BAND, _THICKEST_SHIM = Fraction(3), Fraction(6)
"""Common practice: edge band is sold up to 3 mm; what is shimmed more shows [mm]."""

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
    """

    rung: Rung
    says: str
    minutes: int
    stock: str = ""


def remedies(room: Room, fit: Fit, offcuts: Sequence[Offcut] = ()) -> tuple[Remedy, ...]:
    """What can be done about a fit outside its band, the least work first.

    Parameters
    ----------
    room
        As things are.
    fit
        One of its fits.
    offcuts
        Those on hand.
    """
    return tuple(_Ladder(room, fit, offcuts).climb())


@dataclass(frozen=True, slots=True)
class _Move:
    """A made piece that would have to be longer or wider by `by` (shorter when negative) [mm]."""

    part: Part
    side: Literal["length", "width"]
    dim: Dim
    by: Fraction

    @property
    def size(self) -> tuple[Fraction, Fraction]:
        """Length and width it would have to be [mm]."""
        length, width = self.part.blank.length.value, self.part.blank.width.value
        if self.side == "length":
            return length + self.by, width
        return length, width + self.by


class _Ladder:
    """The remedies for one fit."""

    def __init__(self, room: Room, fit: Fit, offcuts: Sequence[Offcut]) -> None:
        self.room, self.fit, self.offcuts = room, fit, offcuts
        wide = fit.gap.value > fit.high
        self.lack = (fit.high if wide else fit.low) - fit.gap.value
        self.moves = self._moves()

    def climb(self) -> Iterator[Remedy]:
        """From the least work to the most."""
        yield from self._adjust()
        yield from self._shim()
        for move in self.moves:
            if move.by < 0:
                says = f"take {self._text(-move.by)} off the {move.side} of {_name(move.part)}"
                yield Remedy("trim", says, _MINUTES["trim"])
        yield from self._move_filler()
        for move in self.moves:
            if move.by > 0:
                yield from self._lengthen(move)
        for move in self.moves:
            if move.by > 0:
                yield from self._cut_again(move)
        yield self._design_anew()

    def _moves(self) -> tuple[_Move, ...]:
        """The made pieces that mend the gap alone; only its owner's where one of them does."""
        found = tuple(self._all_moves())
        own = self.fit.owner
        return tuple(m for m in found if own in (m.part.path, m.part.front)) or found

    def _all_moves(self) -> Iterator[_Move]:
        for part in self.room.parts:
            if part.state not in ("cut", "machined"):
                continue
            sides: tuple[tuple[Literal["length", "width"], Dim], ...] = (
                ("length", part.blank.length),
                ("width", part.blank.width),
            )
            for side, dim in sides:
                rate = slope(self.fit.gap, dim)
                tries = (dim.wanted - dim.value, self._on_grid(dim, rate)) if rate else ()
                moves = (_Move(part, side, dim, by) for by in tries if by)
                move = next((move for move in moves if self._mends(move)), None)
                if move is not None:
                    yield move

    def _on_grid(self, dim: Dim, rate: Fraction) -> Fraction:
        """The least that a size has to change by, to the next size on the grid [mm]."""
        by = self.lack / rate
        way = Way.UP if by > 0 else Way.DOWN
        step = self.room.spec.style["cut_step"].value
        size = round_to(dim.value + by, step, way)[0] if step else dim.value + by
        return size - dim.value

    def _mends(self, move: _Move) -> bool:
        """Whether the fit holds with the piece at its new size, and no fit fails for it."""
        held = self.room.chain.facts
        facts = {path: fact for path, fact in held.items() if isinstance(fact, Fact)}
        facts[move.dim.path] = Fact(Origin("made", "tried"), cut=move.dim.value + move.by)
        spec = replace(self.room.spec, file_facts=NO_FACTS)
        tried = build(spec, facts).chain.fits
        known = self.room.chain.fits
        return tried[self.fit.path].holds and all(
            fit.holds or (path in known and not known[path].holds) for path, fit in tried.items()
        )

    def _adjust(self) -> Iterator[Remedy]:
        play = self.room.spec.hardware.hinge.side_play.value
        fronts = {part.front for part in self.room.parts if part.front}
        if self.fit.owner in fronts and abs(self.lack) <= play:
            says = f"turn the side screws of the hinges by {self._text(abs(self.lack))}"
            yield Remedy("adjust", says, _MINUTES["adjust"])

    def _shim(self) -> Iterator[Remedy]:
        is_gap = self.fit.low >= 0 and not self.fit.path.endswith("_error")
        if is_gap and -_THICKEST_SHIM <= self.lack < 0:
            says = f"fill the gap with a shim, {self._text(-self.lack)} thick"
            yield Remedy("shim", says, _MINUTES["shim"], "a strip of veneer or card")

    def _move_filler(self) -> Iterator[Remedy]:
        if not self.fit.path.endswith(".width_error"):
            return
        for run in self.room.runs:
            if self.fit.owner not in {case.key for case in run.cases}:
                continue
            for filler in run.fillers:
                if filler.part.state == "planned":
                    says = (
                        f"keep the box as it is: {filler.path} takes it up, and is cut to "
                        f"{self._text(filler.part.blank.width.value)}"
                    )
                    yield Remedy("move a filler", says, 0)
                    return

    def _lengthen(self, move: _Move) -> Iterator[Remedy]:
        planes = ("w0", "w1") if move.side == "width" else ("l0", "l1")
        banded = [edge for edge in move.part.edges if edge.kind == "band" and edge.edge in planes]
        thick = banded[0].thickness.value + move.by if banded else None
        if thick is not None and thick <= _THICKEST_BAND:
            says = f"band {_name(move.part)} anew, {self._text(thick)} thick"
            yield Remedy("re-band", says, _MINUTES["re-band"], "edge band")
        if move.side == "width" and move.part.blank.thickness.value >= _THINNEST_GLUED:
            says = (
                f"glue a strip to an edge of {_name(move.part)} and rip it to "
                f"{self._text(move.size[1])}"
            )
            yield Remedy("glue a strip", says, _MINUTES["glue a strip"], "a strip of that stock")

    def _cut_again(self, move: _Move) -> Iterator[Remedy]:
        part, (length, width) = move.part, move.size
        size = f"{self._text(length)} x {self._text(width)}"
        goods = self.room.spec.stock[part.stock].title
        other = self._smaller(part)
        if other is not None:
            says = f"cut {_name(other)} out of {_name(part)}, and that one again, {size}"
            stock = f"{size} of {goods}, less what {_name(other)} would take"
            yield Remedy("recut smaller elsewhere", says, _MINUTES["recut"], stock)
        offcut = smallest_holding(self.offcuts, part.stock, length, width, turns=not part.grain)
        if offcut is not None:
            says = f"cut {_name(part)} again, {size}, out of {offcut.path}"
            yield Remedy("recut from an offcut", says, _MINUTES["recut"], offcut.path)
        else:
            says = f"cut {_name(part)} again, {size}"
            yield Remedy("recut", says, _MINUTES["recut"], f"{size} of {goods}")

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

    def _design_anew(self) -> Remedy:
        owner = self.fit.owner
        size = self.fit.path.removeprefix(f"{owner}.").removesuffix("_error")
        real = self.room.chain.nodes.get(f"{owner}.{size}")
        if self.fit.path.endswith("_error") and real is not None:
            says = (
                f"take it as built: write {size} {self._text(real.value)} for {owner} in the job"
            )
        else:
            says = f"change what the job asks of {owner}"
        return Remedy("design anew", says, 0)

    def _text(self, size: Fraction) -> str:
        return size_text(size, self.room.spec.unit)


def _name(part: Part) -> str:
    return f"{part.mark} ({part.path})"
