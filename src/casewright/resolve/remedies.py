"""What can be done about a fit that real things no longer keep, the least work first.

The order is common practice: adjust, shim, trim, move a filler, re-band, glue a strip, recut the
piece smaller elsewhere, recut from an offcut or from new stock, design anew. Only those are told
that apply, with the size by which; each that moves a piece is tried on the model first.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.casework.cases import Door
from casewright.dims import Dim, Fit, Way, round_to, size_text
from casewright.resolve.misfits import with_size
from casewright.resolve.moves import MINUTES, Move, Remedy, mended, sides_of
from casewright.resolve.slopes import slope
from casewright.room.model import Room
from casewright.stock import Offcut

_THICKEST_SHIM = Fraction(6)
"""Common practice: what is shimmed more shows [mm]."""

__all__ = ["remedies"]


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
        others = tuple(mended(self.room, self.moves, self.offcuts))
        yield from (each for each in others if each.rung == "trim")
        yield from self._move_filler()
        yield from (each for each in others if each.rung != "trim")
        yield self._design_anew()

    def _moves(self) -> tuple[Move, ...]:
        """The made pieces that mend the gap alone; only its owner's where one of them does."""
        found = tuple(self._all_moves())
        own = self.fit.owner
        return tuple(m for m in found if own in (m.part.path, m.part.front)) or found

    def _all_moves(self) -> Iterator[Move]:
        for part in self.room.parts:
            if part.state not in ("cut", "machined"):
                continue
            for side, dim in sides_of(part):
                rate = slope(self.fit.gap, dim)
                tries = (dim.wanted - dim.value, self._on_grid(dim, rate)) if rate else ()
                moves = (Move(part, side, dim, by) for by in tries if by)
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

    def _mends(self, move: Move) -> bool:
        """Whether the fit holds with the piece at its new size, and no fit fails for it."""
        tried = with_size(self.room, move.dim, move).chain.fits
        known = self.room.chain.fits
        return tried[self.fit.path].holds and all(
            fit.holds or (path in known and not known[path].holds) for path, fit in tried.items()
        )

    @property
    def _is_front(self) -> bool:
        return self.fit.owner in {part.front for part in self.room.parts if part.front}

    def _adjust(self) -> Iterator[Remedy]:
        """The side screws of hinges move a door by what their data sheet says."""
        play = self.room.spec.hardware.hinge.side_play.value
        doors = {d.path for case in self.room.cases for d in case.fronts if isinstance(d, Door)}
        if self.fit.owner in doors and abs(self.lack) <= play:
            says = f"turn the side screws of the hinges by {self._text(abs(self.lack))}"
            yield Remedy("adjust", says, MINUTES["adjust"])

    def _shim(self) -> Iterator[Remedy]:
        is_gap = self.fit.low >= 0 and not self.fit.path.endswith("_error") and not self._is_front
        if is_gap and -_THICKEST_SHIM <= self.lack < 0:
            says = f"fill the gap with a shim, {self._text(-self.lack)} thick"
            yield Remedy("shim", says, MINUTES["shim"], "a strip of veneer or card")

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
