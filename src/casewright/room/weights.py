"""What parts weigh, as formulas: each under the name of its part."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from casewright.casework.parts import Part
from casewright.dims import Dim, Given, Origin, total
from casewright.findings import Reckoning
from casewright.room.model import Room

__all__ = ["weight_of"]

_CUBIC = 10**9  # cubic millimetres in a cubic metre
_CLIPPED = Origin("solved", "what its clipped corners and bevels take off its face")


def weight_of(room: Room, own: Reckoning, parts: Iterable[Part]) -> Dim:
    """What parts weigh, as `Part.weight` has it [kg].

    Parameters
    ----------
    own
        Where it is worked out.
    """
    return total(*(_weight(room, own, part) for part in parts))


def _weight(room: Room, own: Reckoning, part: Part) -> Dim:
    size, key = part.finished, part.stock
    value = Fraction(getattr(room.spec.stock[key], "density", 0))
    origin = Origin("cited", f"{value} kg/m3")
    density = own.given(f"stock.{key}.density", Given(value / _CUBIC, origin), -3)
    area = size.length * size.width
    if part.clipped:
        area -= own.worked(f"{part.path}.clipped", part.clipped, _CLIPPED, power=2)
    return own.let(f"{part.path}.weight", area * size.thickness * density)
