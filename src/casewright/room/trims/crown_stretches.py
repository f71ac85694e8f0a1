"""Lengths of a crown along a run: past its hoods, round them, or into their sides."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.dims import Dim
from casewright.room.model import Run
from casewright.room.run_ends import SIDES
from casewright.room.specs import RunSide
from casewright.room.trims.crown_beside import CrownNeighbour, Kind
from casewright.room.trims.crown_face import crown_plane, hood_alone
from casewright.room.trims.crown_heights import CrownHeights
from casewright.room.trims.specs import AtHoodSpec
from casewright.room.trims.stretches import part_of

__all__ = ["CrownStretch", "crown_stretches", "hoods_without"]


@dataclass(frozen=True, slots=True)
class CrownStretch:
    """A length of crown between the ends of its run and the hoods in it.

    Parameters
    ----------
    run
        The run with the cases that it goes over, and no others.
    heights
        Where it stands: its top is that of the whole crown.
    inner
        What stands at its ends within the run.
    """

    run: Run
    number: int
    heights: CrownHeights
    inner: Mapping[RunSide, CrownNeighbour]

    @property
    def hood(self) -> str:
        """Key of the hood that it goes round by itself; empty: it goes over other cases."""
        return hood_alone(self.run)

    @property
    def name(self) -> str:
        """The first has the name of the run's only one."""
        if self.hood:
            return f"crown_at_{self.hood}"
        return "crown" if self.number == 1 else f"crown_{self.number}"

    @property
    def suffix(self) -> str:
        """What its titles end with."""
        if self.hood:
            return f" round {self.run.cases[0].spec.title}"
        return "" if self.number == 1 else f" {self.number}"


@dataclass(slots=True)
class _Unit:
    """Cases side by side that one length of crown goes over; or a hood without one."""

    cases: list[int]
    plane: Dim | None


def crown_stretches(
    house: House, run: Run, heights: CrownHeights, drop: Dim
) -> tuple[CrownStretch, ...]:
    """One along the whole run, or as many as its hoods make of it.

    A hood that ends below the crown's foot has a crown at the same height: in one line with that
    of the cases beside it where it is as deep and as high, round it where it stands farther out.
    Any other parts the crown, which dies into its sides.
    """
    hoods = [case.spec.hood is not None for case in run.cases]
    if len(hoods) == 1 or not any(hoods):
        return (CrownStretch(run, 1, heights, {}),)
    units = _units(house, run, heights, drop)
    views = [part_of(run, unit.cases) for unit in units]
    found: list[CrownStretch] = []
    for at, (unit, view) in enumerate(zip(units, views, strict=True)):
        if unit.plane is None:
            continue
        beside: dict[RunSide, int] = {"left": at - 1, "right": at + 1}
        inner = {
            side: CrownNeighbour(views[n], views[n].cases[0], _kind(unit, units[n]))
            for side, n in beside.items()
            if 0 <= n < len(units)
        }
        number = sum(not each.hood for each in found) + 1
        made = CrownStretch(_open(view, inner), number, heights, inner)
        found.append(_own_heights(house, made, drop) if made.hood else made)
    return tuple(found)


def _units(house: House, run: Run, heights: CrownHeights, drop: Dim) -> Sequence[_Unit]:
    foot, top = heights.top.value - drop.value, heights.cases_top.value
    plane, units = crown_plane(house, run), list[_Unit]()
    for number, case in enumerate(run.cases):
        own, high = plane, top
        if case.spec.hood is not None:
            own = crown_plane(house, part_of(run, [number]))
            high = run.lift.value + case.height.value
        carries = high <= foot and own.value >= plane.value
        alone = not carries or own.value != plane.value or high != top
        last = units[-1] if units else None
        if not alone and last is not None and last.plane is plane:
            last.cases.append(number)
        else:
            # A hood of its own is never joined on: its plane is its own number.
            units.append(_Unit([number], (own if alone else plane) if carries else None))
    return units


def _kind(own: _Unit, other: _Unit) -> Kind:
    if own.plane is None or other.plane is None:
        return "side"
    if own.plane.value == other.plane.value:
        return "straight"
    return "inside" if own.plane.value < other.plane.value else "turn"


def _open(view: Run, inner: Mapping[RunSide, CrownNeighbour]) -> Run:
    """Without what stands or was read at the ends of the whole run, where its own are others."""
    crown = view.spec.trims.crown
    if crown is None:
        return view
    at = crown.at_hoods.get(hood_alone(view), AtHoodSpec())
    left, right = (
        at.corner(side) if side in inner else crown.corner(side) for side in SIDES
    )  # fmt: skip
    asked = replace(crown, left_corner=left, right_corner=right)
    spec = replace(view.spec, trims=replace(view.spec.trims, crown=asked))
    fillers = tuple(each for each in view.fillers if each.side not in inner)
    return replace(view, spec=spec, fillers=fillers)


def _own_heights(house: House, made: CrownStretch, drop: Dim) -> CrownStretch:
    """Over a hood that ends lower or higher than the cases beside it."""
    place = house.chain.place(f"run.{made.run.spec.key}.{made.name}")
    top = place.let("cases_top", made.run.lift + made.run.cases[0].height)
    frieze = place.let("frieze", made.heights.top - top - drop)
    return replace(made, heights=replace(made.heights, cases_top=top, frieze=frieze))


def hoods_without(run: Run, stretches: Sequence[CrownStretch]) -> Iterator[Case]:
    """Hoods that no length of the crown goes over."""
    over = {case.key for each in stretches for case in each.run.cases}
    yield from (case for case in run.cases if case.key not in over)
