"""Scribe mouldings: thin strips over the joint between the end of a case and the wall."""

from __future__ import annotations

from casewright.casework.house import House
from casewright.room.model import Run
from casewright.room.trims.model import Trim, TrimPiece
from casewright.room.trims.specs import ScribeMouldingSpec
from casewright.room.trims.stretches import TrimShape, trim_part

__all__ = ["build_scribe_moulding"]


def build_scribe_moulding(house: House, run: Run, spec: ScribeMouldingSpec) -> Trim:
    """One upright strip on each end asked for, its edge scribed to the wall.

    As long as the end is high, as read; it hides a gap up to its width less its hold on the side.
    """
    place = house.chain.place(f"run.{run.spec.key}.scribe_moulding")
    lengths, pieces = [], []
    for side in spec.ends:
        left = side == "left"
        case = run.cases[0] if left else run.cases[-1]
        high = place.follows(f"high_{side}", case.height, how="as planned, until it is read")
        lengths.append(high)
        shape = TrimShape("scribe moulding", f"{side} scribe moulding", spec.stock,
                      house.style_dim("scribe_moulding"), run.lift, house.zero)  # fmt: skip
        edge = run.starts[0] if left else run.cases_end
        part = trim_part(
            house, place.at(side), shape, (high,), edge, lies="+y -z -x" if left else "+y +z +x",
            z=shape.width if left else shape.z,
        )  # fmt: skip
        pieces.append(TrimPiece(part))
    return Trim(place.path, "scribe moulding", "scribe moulding", tuple(lengths), tuple(pieces))
