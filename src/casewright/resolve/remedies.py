"""What can be done about a fit that real things no longer keep, the least work first.

The order is common practice: adjust, shim, scribe, trim, move a filler, re-band, glue a strip,
recut the piece smaller elsewhere, recut from an offcut or from new stock, design anew. Only those
are told that apply, with the size by which; each that moves a piece is tried on the model first.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from casewright.casework.cases import Door
from casewright.casework.parts import Part
from casewright.dims import Dim, Fit, Way, round_to, size_text
from casewright.resolve.misfits import TAKEN_UP, off_pieces
from casewright.resolve.moves import (
    MINUTES,
    THICKEST_SHIM,
    Move,
    Remedy,
    Side,
    all_mended,
    cut_anew,
    mended,
    sides_of,
)
from casewright.resolve.slopes import slope
from casewright.resolve.trials import Sizes, Trial, Trials
from casewright.room.model import Room
from casewright.stock import Offcut

_READ_AFTER = ("shim", "re-band")
"""Rungs after which a reading tells that the gap is in order."""

__all__ = ["remedies"]


def remedies(trials: Trials, fit: Fit, offcuts: Sequence[Offcut] = ()) -> tuple[Remedy, ...]:
    """What can be done about a fit outside its band, the least work first.

    Parameters
    ----------
    trials
        On the room as things are.
    fit
        One of its fits.
    offcuts
        Those on hand.
    """
    return tuple(_Ladder(trials, fit, offcuts).climb())


class _Ladder:
    """The remedies for one fit."""

    def __init__(self, trials: Trials, fit: Fit, offcuts: Sequence[Offcut]) -> None:
        self.trials, self.room, self.fit, self.offcuts = trials, trials.room, fit, offcuts
        wide = fit.gap.value > fit.high
        self.lack = (fit.high if wide else fit.low) - fit.gap.value
        self.moves = self._moves()

    def climb(self) -> Iterator[Remedy]:
        """From the least work to the most; what changes no piece's own size is read again then."""
        for remedy in self._rungs():
            if remedy.rung in _READ_AFTER:
                says = f"{remedy.says}; then read {self._met_last()} as it is with that"
                yield replace(remedy, says=says)
            else:
                yield remedy

    def _met_last(self) -> str:
        """The thing made last of those that the gap is between."""
        order = {path: place for place, path in enumerate(self.room.chain.nodes)}
        stack, found = [self.fit.gap], [""]
        while stack:
            node = stack.pop()
            if node.path and node.origin is not None and node.origin.kind == "made":
                found.append(node.path)
            else:
                stack.extend(arg for arg in node.args if isinstance(arg, Dim))
        return max(found, key=lambda path: order.get(path, -1))

    def _rungs(self) -> Iterator[Remedy]:
        yield from self._adjust()
        yield from self._shim()
        others = tuple(mended(self.room, self.moves, self.offcuts))
        fillers = {remedy.rung: remedy for remedy in reversed(tuple(self._fillers()))}
        yield from (each for each in (fillers.get("scribe"),) if each)
        yield from (each for each in others if each.rung == "trim")
        yield from (each for each in (fillers.get("move a filler"),) if each)
        yield from (each for each in others if each.rung != "trim")
        if not self.moves:
            yield from self._together()
        yield self._design_anew()

    def _together(self) -> Iterator[Remedy]:
        """Where no piece mends it alone: all of the case that are off, else all that are loose."""
        key = self.fit.path.partition(".")[0]
        parts = [part for part in self.trials.movable if part.case == key]
        off = off_pieces(parts)
        large = tuple(move for move in off if abs(move.by) > TAKEN_UP)
        for moves in filter(None, dict.fromkeys((large, off))):
            if self._mends({path: size for move in moves for path, size in move.sizes}):
                yield all_mended(self.room, moves, self.offcuts)
                return
        if parts and self._mends({dim.path: None for p in parts for _, dim in sides_of(p)}):
            yield cut_anew(self.room, parts)

    def _mends(self, sizes: Sizes) -> bool:
        tried = self.trials.at(sizes, self.fit)
        return self._holds_in(tried) and self.trials.spoils_nothing(tried)

    def _holds_in(self, tried: Trial) -> bool:
        """Whether the fit is there, and holds: at another size a front may be of two leaves."""
        fit = tried.fits.get(self.fit.path)
        return fit is not None and fit.holds

    def _moves(self) -> tuple[Move, ...]:
        """The made pieces that mend the gap alone; only its owner's where one of them does."""
        own = {part.path for part in self.room.parts if self.fit.owner in (part.path, part.front)}
        rates = self.trials.reach.rates(self.fit)
        for is_own in (True, False):
            parts = (part for part in self.trials.movable if (part.path in own) is is_own)
            found = tuple(move for part in parts for move in self._moves_of(part, rates))
            if found:
                return found
        return ()

    def _moves_of(self, part: Part, rates: Mapping[str, Fraction]) -> Iterator[Move]:
        for side, dim in sides_of(part):
            rate = rates.get(dim.path)
            tries = (dim.wanted - dim.value, self._on_grid(dim, rate)) if rate else ()
            moves = (self._tried(part, side, dim, by) for by in tries if by)
            move = next((move for move in moves if move is not None), None)
            if move is not None:
                yield move

    def _on_grid(self, dim: Dim, rate: Fraction) -> Fraction:
        """The least that a size has to change by, to the next size on the grid [mm]."""
        by = self.lack / rate
        way = Way.UP if by > 0 else Way.DOWN
        step = self.room.spec.style["cut_step"].value
        size = round_to(dim.value + by, step, way)[0] if step else dim.value + by
        return size - dim.value

    def _tried(self, part: Part, side: Side, dim: Dim, by: Fraction) -> Move | None:
        """The move, when the fit holds with the piece at its new size, and no fit fails for it."""
        sizes = {dim.path: dim.value + by}
        if not self.trials.may_mend(sizes, self.fit):
            return None
        tried = self.trials.at(sizes, self.fit)
        if not (self._holds_in(tried) and self.trials.keeps_fits(tried)):
            return None
        move = Move(part, side, dim, by, tuple(_alike(self.room, tried, part, (side, by))))
        together = self.trials.at(dict(move.sizes), self.fit) if move.alike else tried
        mends = self._holds_in(together) and self.trials.spoils_nothing(together)
        return move if mends else None

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
        name = self.fit.path.rpartition(".")[2]
        is_gap = (self.fit.low >= 0 and not name.endswith("_error")) or name.startswith("under_")
        if is_gap and not self._is_front and -THICKEST_SHIM <= self.lack < 0:
            says = f"fill the gap with a shim, {self._text(-self.lack)} thick"
            yield Remedy("shim", says, MINUTES["shim"], "a strip of veneer or card")
        if name == "height_error" and 0 < self.lack <= THICKEST_SHIM and self._stands():
            says = f"stand it on shims, {self._text(-self.fit.gap.value)} thick"
            yield Remedy("shim", says, MINUTES["shim"], "shims")

    def _stands(self) -> bool:
        """Whether the fit is of a case that stands on the floor."""
        case = next((case for case in self.room.cases if case.key == self.fit.owner), None)
        return case is not None and case.spec.kind not in ("wall", "plinth")

    def _fillers(self) -> Iterator[Remedy]:
        """A filler takes up what its boxes came out at: planned, it is cut so; cut, scribed so."""
        if not self.fit.path.endswith(".width_error"):
            return
        for run in self.room.runs:
            if self.fit.owner not in {case.key for case in run.cases}:
                continue
            width = self.room.chain.nodes[f"{self.fit.owner}.width"]
            for filler in run.fillers:
                if filler.part.state == "planned":
                    if not slope(filler.part.blank.width, width):
                        continue  # its own width was chosen: the one at the other end takes it
                    says = (
                        f"keep the box as it is: {filler.path} takes it up, and is cut to "
                        f"{self._text(filler.part.blank.width.value)}"
                    )
                    yield Remedy("move a filler", says, 0)
                elif self.room.chain.fits[f"{filler.path}.scribe_left"].holds:
                    widest = max(gap.value for gap in filler.gaps)
                    says = (
                        f"keep the box as it is: {filler.path} takes it up, scribed to the wall "
                        f"at {self._text(widest)} where the gap is widest"
                    )
                    yield Remedy("scribe", says, MINUTES["scribe"])

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


def _alike(
    room: Room, tried: Trial, moved: Part, move_by: tuple[Side, Fraction]
) -> Iterator[Part]:
    """Made pieces of the case that go by a moved one: off by as much as it was, once it is moved.

    The other end of a drawer, the boards between the same sides.
    """
    new, (side, by) = tried.parts, move_by
    for part in room.parts:
        if part is moved or part.state != moved.state or part.case != moved.case:
            continue
        now, then = dict(sides_of(part))[side], dict(sides_of(new[part.path]))[side]
        if then.wanted != now.wanted and then.wanted - now.value == by:
            yield part
