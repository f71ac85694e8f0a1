"""Where a case begins: the lower ends of its sides, and the underside of its bottom."""

from __future__ import annotations

from casewright.casework.hoods import hood_foot
from casewright.casework.maker import Maker
from casewright.casework.surrounds import opening_height
from casewright.dims import Dim

__all__ = ["lower_ends"]


def lower_ends(maker: Maker) -> tuple[Dim, Dim]:
    """Case heights wished for the sides' lower ends and for the bottom's underside [mm]."""
    spec, place, zero = maker.spec, maker.place, maker.zero
    match spec.kind:
        case "wall":
            drop = None if spec.skirt is None else place.given("skirt_drop", spec.skirt)
            return zero, zero if drop is None else maker.on_grid("skirt_drop", drop)
        case "bookcase":
            toe = maker.style("bookcase_toe_height")
            return zero, maker.on_grid("bookcase_toe_height", toe)
        case "surround":
            over = opening_height(maker)
            return over, over
        case "hood":
            under = hood_foot(maker)
            return under, under
        case "base" | "tall" if spec.toe != "none":
            toe = maker.on_grid("toe_height", maker.style("toe_height"))
            return (toe if spec.toe == "plinth" else zero), toe
        case _:
            return zero, zero
