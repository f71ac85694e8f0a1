"""What the wall screws of a room are worth by the equations, each length where it bites least."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction

from casewright.dims import Dim, Origin
from casewright.install.numbers import Numbers
from casewright.install.screw_values import GRAVITIES, screw_value
from casewright.install.stud_map import CaseScrews, WallScrew
from casewright.room.wall_fixing import wall_fixings

__all__ = ["ScrewWorth", "screw_worths"]

_WOODS = ("lightest graded softwoods", "spruce-pine-fir", "Douglas fir-larch")
_TENTHS = 10  # of a newton, that a computed force is taken to


@dataclass(frozen=True, slots=True)
class ScrewWorth:
    """What one screw holds in a stud of a kind of wood.

    Parameters
    ----------
    screw
        Of its length the one that bites least.
    wood
        Name and specific gravity.
    pulled, across
        Straight out, and down the wall [N]; None: too shallow for the equations.
    """

    screw: WallScrew
    wood: str
    pulled: Dim
    across: Dim | None


def screw_worths(numbers: Numbers, cases: Iterable[CaseScrews]) -> Iterator[ScrewWorth]:
    """For each length of screw and each wood; their numbers are entered into the chain."""
    seen: dict[Fraction, tuple[WallScrew, Dim]] = {}
    parts = {part.path: part for part in numbers.room.parts}
    heads = {
        fixing.case: parts[fixing.rows[0]].finished.thickness
        for fixing in wall_fixings(numbers.room)
    }
    for case in cases:
        for screw in case.screws:
            known = seen.get(screw.length.value)
            if screw.strip is None and (known is None or screw.bite.value < known[0].bite.value):
                seen[screw.length.value] = (screw, heads[case.place.case.key])
    for screw, head in seen.values():
        yield from _worths(numbers, screw, head)


def _worths(numbers: Numbers, screw: WallScrew, head: Dim) -> Iterator[ScrewWorth]:
    diameter = numbers.room.spec.hardware.wall_screw.diameter
    place = screw.bite.path.rpartition(".")[0]
    gap = screw.length.value - screw.bite.value - head.value
    sizes = (float(size) for size in (diameter, head.value, gap, screw.bite.value))
    thick, side, between, bite = sizes

    def force(newton: float, name: str, how: str, gravity: float) -> Dim:
        dim = Dim("by", (screw.bite, head), Fraction(round(newton * _TENTHS), _TENTHS), 0)
        note = f"{how} of one wood screw {thick:g} mm thick in wood of G {gravity:.2f}, x 0.9"
        dim.origin = Origin("solved", note, "nds")
        return numbers.chain.register(f"{place}.{name}_{round(gravity * 100)}_force", dim)

    for gravity, wood in zip(GRAVITIES, _WOODS, strict=True):
        value = screw_value(gravity, thick, side, between, bite)
        across = None
        if value.lateral_n is not None:
            across = force(value.lateral_n, "across", "lateral design value", gravity)
        yield ScrewWorth(
            screw,
            f"{wood}, G {gravity:.2f}",
            force(value.withdrawal_n, "pulled", "withdrawal design value", gravity),
            across,
        )
