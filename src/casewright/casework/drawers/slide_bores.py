"""The pilot holes of a slide in a board that lies along it: a pad, a partition."""

from __future__ import annotations

from collections.abc import Iterable

from casewright.casework.features import Bores
from casewright.casework.maker import Maker
from casewright.casework.parts import Part
from casewright.casework.setups import bore_setup
from casewright.casework.specs import SlideKind
from casewright.dims import Dim, least

__all__ = ["bore_along"]


def bore_along(
    maker: Maker, part: Part, feature: str, kind: SlideKind, line: Dim, holes: Iterable[Dim],
    *, asked_by: str,
) -> str:  # fmt: skip
    """Bore them in a row along the board; returns their path.

    Parameters
    ----------
    feature
        Name of the row on the part.
    line
        Of the row, above the board's lower edge [mm].
    holes
        From the board's front end, the nearest first [mm].
    asked_by
        Name of the drawer or roll-out on its case.
    """
    house, places = maker.house, tuple((hole, line) for hole in holes)
    depth = least(house.slide(kind, "depth"), part.finished.thickness * 2 / 3)
    path = f"{part.path}.{feature}"
    maker.machine(
        part.path,
        Bores(
            path=path, kind="slide", face="A", datum_l="l1", datum_w="w0", places=places,
            diameter=house.slide(kind, "hole"), depth=depth, asked_by=maker.path(asked_by),
            setup=bore_setup(
                "drill", line=line, depth=depth, bit="twist bit",
                bit_size=house.slide(kind, "hole"), check=places[0][0],
                check_words="from the front end to the first hole",
            ),
        ),
    )  # fmt: skip
    return path
