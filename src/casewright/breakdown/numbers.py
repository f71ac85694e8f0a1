"""Numbers of a cutting plan on the chain: what each piece in hand measures, and every setting.

The plan itself is solved in whole numbers and lists cuts. What the saw is set to follows from the
parts beyond the cut and the kerfs between them; what a cut leaves is what it took, less setting
and kerf. A size that hangs on nothing but the choice of the plan is entered as solved.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from types import MappingProxyType
from typing import Protocol

from casewright.breakdown.pieces import Piece
from casewright.breakdown.units import WholeUnit
from casewright.cutting.steps import CutPlan, Step
from casewright.cutting.steps import Piece as CutPiece
from casewright.dims import Chain, Dim, Origin, total

__all__ = ["NO_NUMBERS", "PlanNumbers", "Planned", "Stocked", "plan_numbers"]

_Pair = tuple[Dim, Dim]
_Needs = list[Dim | None]
_NAMES = ("length", "width")


@dataclass(frozen=True, slots=True)
class PlanNumbers:
    """Sizes and settings of a plan on the chain.

    Parameters
    ----------
    sizes
        Length and width of every piece in hand, by its name: '2.7'; of a whole sheet: '2'.
    settings
        From the datum to the blade, by number of the setting.
    """

    sizes: Mapping[str, _Pair]
    settings: Mapping[int, Dim]


NO_NUMBERS = PlanNumbers(MappingProxyType({}), MappingProxyType({}))
"""Of a plan that is counted for buying and not printed."""


class Stocked(Protocol):
    """A piece of stock as bought."""

    @property
    def length(self) -> Dim:
        """Along the grain."""

    @property
    def width(self) -> Dim:
        """Across the grain."""


class Planned(Protocol):
    """What the numbers are worked out from: a solved plan of one stock."""

    @property
    def path(self) -> str:
        """Where its numbers stand on the chain."""

    @property
    def kind(self) -> str:
        """sheets, boards or strips."""

    @property
    def unit(self) -> WholeUnit:
        """What it counts in."""

    @property
    def order(self) -> CutPlan:
        """Its cuts in order."""

    @property
    def pieces(self) -> Mapping[str, Piece]:
        """What is cut."""

    @property
    def offered(self) -> Mapping[str, Stocked]:
        """Stock by id."""


def plan_numbers(chain: Chain, kerf: Dim, plan: Planned) -> PlanNumbers:
    """Enter the sizes and settings of a plan into the chain.

    `plan.ply18.sheet_2.width`, `plan.ply18.piece_2_7.length` for what is printed as piece 2.7,
    `plan.ply18.setting_4`; `plan.cut.<part>.length` for a part that is cut long.

    Parameters
    ----------
    chain
        Takes up the numbers, under the path of the plan.
    kerf
        Of the saw.
    plan
        Its pieces must be numbers of the chain.
    """
    desk = _Naming(chain, kerf, plan)
    for step in reversed(plan.order.steps):
        desk.need(step)
    for sheet in plan.order.sheets:
        desk.begin(sheet.stock, sheet.piece)
    for step in plan.order.steps:
        desk.saw(step)
    place = chain.place(plan.path)
    steps = {step.number: step for step in plan.order.steps}
    settings = {}
    for card in plan.order.cards:
        first = steps[card.steps[0]]
        size = desk.sizes[first.leaves[0].name][_axis(first)]
        settings[card.number] = place.let(f"setting_{card.number}", size)
    return PlanNumbers(desk.sizes, settings)


def _axis(step: Step) -> int:
    """What a cut shortens: 0 the length, 1 the width."""
    return 1 if step.direction == "rip" else 0


@dataclass(slots=True)
class _Naming:
    """Sizes by name of the piece: first what the parts ask for, then what is in hand.

    Raises
    ------
    ValueError
        When a plan gives a part that is none of its pieces: a defect of the program.
    """

    chain: Chain
    kerf: Dim
    plan: Planned
    needs: dict[str, _Needs] = field(default_factory=dict)
    sizes: dict[str, _Pair] = field(default_factory=dict)

    def need(self, step: Step) -> None:
        """What a piece must measure for the parts that come out of it; None: nothing asks."""
        axis, extents = _axis(step), self._extents(step.piece)
        leaves = [self._needs(leaf) for leaf in step.leaves]
        found: _Needs = [None, None]
        along = (need[1 - axis] for need in leaves)
        found[1 - axis] = next((need for need in along if need is not None), None)
        across = [need[axis] for need in leaves]
        known = [need for need in across if need is not None]
        if len(known) == len(across):
            asked = total(known[0], self.kerf, *known[1:])
            found[axis] = asked if asked.value == extents[axis] else None
        self.needs[step.piece.name] = found

    def _needs(self, piece: CutPiece) -> _Needs:
        known = self.needs.get(piece.name)
        if known is not None:
            return known
        part = self.plan.pieces.get(piece.part)
        found: _Needs = [None, None]
        if part is not None:
            long, wide = self._extents(piece)
            is_turned = (long, wide) != (part.length, part.width)
            found = [part.wide, part.long] if is_turned else [part.long, part.wide]
        self.needs[piece.name] = found
        return found

    def _extents(self, piece: CutPiece) -> tuple[Fraction, Fraction]:
        unit = self.plan.unit
        return unit.length(piece.rect.length), unit.length(piece.rect.width)

    def begin(self, stock: str, piece: CutPiece) -> None:
        """A sheet or board as it comes from the pile."""
        whole = self.plan.offered[stock]
        self._name(piece, (whole.length, whole.width))

    def saw(self, step: Step) -> None:
        """What lies there after a cut, the piece at the datum first."""
        axis = _axis(step)
        taken = self.sizes[step.piece.name]
        first, *rest = step.leaves
        note = f"the cutting plan, cut {step.number}"
        self._name(first, self._swapped(taken, axis, self._set(step, taken[axis])), note)
        for other in rest:
            left = taken[axis] - self.sizes[first.name][axis] - self.kerf
            self._name(other, self._swapped(taken, axis, left), note)

    def _set(self, step: Step, taken: Dim) -> Dim:
        """What the saw is set to: for the parts at the datum, else for those beyond the kerf."""
        axis = _axis(step)
        first, *rest = (self._needs(leaf)[axis] for leaf in step.leaves)
        if first is not None:
            return first
        if rest and rest[0] is not None:
            return taken - rest[0] - self.kerf
        chosen = Dim("", (), self._extents(step.leaves[0])[axis])
        chosen.origin = Origin("solved", f"the cutting plan, cut {step.number}")
        return chosen

    @staticmethod
    def _swapped(pair: _Pair, axis: int, size: Dim) -> _Pair:
        return (size, pair[1]) if axis == 0 else (pair[0], size)

    def _name(self, piece: CutPiece, sizes: _Pair, note: str = "") -> None:
        """Name the sizes of a piece in hand; a finished part goes by the names it has."""
        if piece.use == "part":
            long, wide = (self._asked(piece.part, need) for need in self._needs(piece))
            self.sizes[piece.name] = (long, wide)
            return
        word = "piece" if "." in piece.name else self.plan.kind.removesuffix("s")
        place = self.chain.place(f"{self.plan.path}.{word}_{piece.name.replace('.', '_')}")
        long, wide = (place.let(name, size) for name, size in zip(_NAMES, sizes, strict=True))
        for dim in (long, wide):
            if note and dim.origin is None:
                dim.origin = Origin("solved", note)
        self.sizes[piece.name] = (long, wide)

    def _asked(self, part: str, size: Dim | None) -> Dim:
        """A size that a part is cut to, under the part's name where it has none of its own."""
        if size is None:
            msg = f"no size is known for {part}"
            raise ValueError(msg)
        if not size.path:
            name = _NAMES[0 if size is self.plan.pieces[part].long else 1]
            self.chain.place(f"plan.cut.{part}").let(name, size)
        return size
