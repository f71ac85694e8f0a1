"""What one wood screw holds by the published design equations, and when they do not apply.

Floats, because nothing is cut to them. Pounds and inches inside, as the equations are printed.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import NamedTuple

from casewright.sources import INCH, POUND, WOOD_SCREWS

__all__ = [
    "DURATION", "GRAVITIES", "LEAST_DIAMETERS", "Member", "ScrewValue", "bearing_strength_psi",
    "lateral_reference_lb", "screw_value", "withdrawal_lb_per_in", "yield_loads_lb",
]  # fmt: skip

GRAVITIES = (0.36, 0.42, 0.50)
"""Specific gravities that studs are reckoned with: the lightest softwoods that are graded
together, spruce-pine-fir, Douglas fir-larch [-] (`nds`, from memory)."""

DURATION = 0.9
"""Load duration factor of a load that stays [-] (`nds` table 2.3.2)."""

LEAST_DIAMETERS = 6.0
"""Diameters that a screw must be in the stud for the lateral equations [-] (`nds` 12.1.5, from
memory); under 10 the value falls with the depth."""

_FULL_DIAMETERS = 10.0
_TIP_DIAMETERS = 2.0  # of the point, not counted as thread (`nds`, from memory)
_SIDE_GRAVITY = 0.42  # of the nailer: a light plywood or softwood
_NEWTON_PER_LB = float(POUND) * 9.80665
_BENDING_PSI = {6: 100e3, 8: 90e3, 9: 90e3, 10: 80e3, 12: 80e3}  # `nds` table I1, from memory


class Member(NamedTuple):
    """A piece of wood that a screw bears on.

    Parameters
    ----------
    bears_in
        Length that it bears on [in].
    strength_psi
        Dowel bearing strength [psi].
    """

    bears_in: float
    strength_psi: float


def withdrawal_lb_per_in(gravity: float, diameter_in: float) -> float:
    """Reference withdrawal value of a wood screw in side grain, for an inch of thread.

    W = 2850 G^2 D.

    Parameters
    ----------
    gravity
        Specific gravity of the wood, ovendry [-].
    diameter_in
        Of the shank [in].

    Returns
    -------
    Value [lb/in], without any factor.

    Sources
    -------
    `nds` equation 12.2-2, read in a secondary copy.

    Examples
    --------
    >>> round(withdrawal_lb_per_in(0.50, 0.164))
    117
    """
    return 2850 * gravity * gravity * diameter_in


def bearing_strength_psi(gravity: float) -> float:
    """Dowel bearing strength for fasteners under a quarter inch: 16 600 G^1.84 [psi].

    Sources
    -------
    `nds` table 12.3.3, from memory.
    """
    return 16_600 * math.pow(gravity, 1.84)


def yield_loads_lb(
    side: Member, main: Member, root_in: float, bending_psi: float, gap_in: float = 0.0
) -> tuple[float, ...]:
    """Loads at which a screw in single shear yields, in each of six ways.

    Is, Im, II, IIIm, IIIs, IV, without the reduction term; with a gap between the two pieces,
    such as a wallboard that bears nothing.

    Parameters
    ----------
    side, main
        What the head lies on, and what the point is in.
    root_in
        Diameter of the thread's root [in].
    bending_psi
        Bending yield strength of the screw [psi].
    gap_in
        Between the two [in].

    Returns
    -------
    Loads [lb].

    Sources
    -------
    General dowel equations, American Wood Council TR-12, from memory; without a gap they give
    the yield limit equations of `nds` table 12.3.1A.
    """
    q_side, q_main = side.strength_psi * root_in, main.strength_psi * root_in
    l_side, l_main = side.bears_in, main.bears_in
    moment = bending_psi * root_in**3 / 6
    half_side, half_main = 1 / (2 * q_side), 1 / (2 * q_main)

    def load(a: float, b: float, c: float) -> float:
        return (-b + math.sqrt(b * b + 4 * a * c)) / (2 * a)

    return (
        q_side * l_side,
        q_main * l_main,
        load((half_side + half_main) / 2, l_side / 2 + gap_in + l_main / 2,
             q_side * l_side**2 / 4 + q_main * l_main**2 / 4),
        load(half_side + half_main / 2, gap_in + l_main / 2, moment + q_main * l_main**2 / 4),
        load(half_side / 2 + half_main, l_side / 2 + gap_in, q_side * l_side**2 / 4 + moment),
        load(half_side + half_main, gap_in, 2 * moment),
    )  # fmt: skip


def lateral_reference_lb(side: Member, main: Member, screw: int, gap_in: float = 0.0) -> float:
    """Reference lateral value of a wood screw: the least of the six over the reduction term.

    Parameters
    ----------
    screw
        Its number.

    Returns
    -------
    Value [lb], without any factor.

    Sources
    -------
    `nds` table 12.3.1B, from memory: 2.2 up to a diameter of 0.17 in, over it 10 D + 0.5, with
    the diameter of the shank.
    """
    size = WOOD_SCREWS[screw]
    shank, root = float(size.shank / INCH), float(size.root / INCH)
    reduction = 2.2 if shank <= 0.17 else 10 * shank + 0.5
    return min(yield_loads_lb(side, main, root, _BENDING_PSI[screw], gap_in)) / reduction


@dataclass(frozen=True, slots=True)
class ScrewValue:
    """What one screw holds in a stud of a specific gravity.

    Parameters
    ----------
    withdrawal_n
        Pulled straight out [N].
    lateral_n
        Loaded across, down the wall [N]; None: too shallow for the equations.
    """

    gravity: float
    withdrawal_n: float
    lateral_n: float | None


def screw_value(
    gravity: float, diameter_mm: float, side_mm: float, gap_mm: float, bite_mm: float
) -> ScrewValue:
    """Design values of one wall screw, for a load that stays, in dry wood, side grain.

    The screw counts as the wood screw by number whose shank is next below its own. Its point
    counts as no thread; between nailer and stud lie back, shim and wallboard, which bear nothing.

    Parameters
    ----------
    gravity
        Of the stud [-].
    diameter_mm
        Of the screw [mm].
    side_mm, gap_mm, bite_mm
        Thickness of the nailer, from its rear to the stud, and depth in the stud [mm].

    Raises
    ------
    ValueError
        When the screw is thinner than the thinnest number.
    """
    inch = float(INCH)
    fit = [n for n in _BENDING_PSI if float(WOOD_SCREWS[n].shank) <= diameter_mm + 1e-9]
    if not fit:
        msg = f"no numbered wood screw is as thin as {diameter_mm} mm"
        raise ValueError(msg)
    number = max(fit)
    shank = float(WOOD_SCREWS[number].shank) / inch
    bite = bite_mm / inch
    thread = max(0.0, bite - _TIP_DIAMETERS * shank)
    pull = withdrawal_lb_per_in(gravity, shank) * thread * DURATION
    lateral = None
    if bite >= LEAST_DIAMETERS * shank:
        strength = bearing_strength_psi(gravity)
        side = Member(side_mm / inch, bearing_strength_psi(_SIDE_GRAVITY))
        reference = lateral_reference_lb(side, Member(bite, strength), number, gap_mm / inch)
        depth = min(1.0, bite / (_FULL_DIAMETERS * shank))
        lateral = reference * depth * DURATION * _NEWTON_PER_LB
    return ScrewValue(gravity, pull * _NEWTON_PER_LB, lateral)
