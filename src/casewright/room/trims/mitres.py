"""How closely the mitres of a crown meet: by the reading of the corner and by the saw.

Two ends that are each cut at half the corner open by as much as it is misread, over the length of
the joint; each cut strays as the mitre saw does.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from casewright.casework.house import House
from casewright.dims import Cause, Dim, Place
from casewright.room.specs import RunSide
from casewright.room.trims.corners import CrownEnd

__all__ = ["fit_mitres"]

_MISREAD = (Fraction(436, 100_000), Fraction(873, 100_000))
"""How far a corner is misread off a bevel or by a triangle: a quarter of a degree, at most half a
degree [rad]: common practice, from memory."""

_OPEN = Fraction(4, 5)
"""What filler or caulk closes without showing, about 1/32 in [mm]: common practice."""

_DIAGONAL = Fraction(99, 70)
"""Root of 2: the joint over the projection, in plan; of a corner near to square."""

_BENT = Fraction(1083, 1000)
"""The same of a corner of 135 degrees: 1 / sin 67 1/2."""


def fit_mitres(
    house: House, place: Place, ends: Mapping[RunSide, CrownEnd], projection: Dim, owner: str
) -> None:
    """A fit for each corner that was read and is mitred; a cope takes up what a corner is off.

    Parameters
    ----------
    place
        Of the crown.
    projection
        Of the moulding [mm].
    owner
        Path of the piece that is cut to the corner.
    """
    for side, end in ends.items():
        if end.cut.kind not in ("inside mitre", "outside mitre") or not end.cut.is_read:
            continue
        path = f"{place.path}.mitre_{side}"
        long = projection.value * (_BENT if end.kind == "bend" else _DIAGONAL)
        sigma, limit = (long * angle for angle in _MISREAD)
        causes = (
            Cause(f"reading of the corner at {path}", sigma, limit),
            *house.causes(path, f"{place.path} mitre {side}", "mitre saw"),
        )
        gap = place.follows(f"mitre_{side}", house.zero, causes, how="closed, as it is planned")
        place.fit(f"mitre_{side}_fit", gap, -_OPEN, _OPEN, owner)
