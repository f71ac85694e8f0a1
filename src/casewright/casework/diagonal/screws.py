"""Screws through a board of a diagonal corner, and into the ends of its uprights."""

from __future__ import annotations

from casewright.casework.features import Plane
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.parts import Part
from casewright.dims import Dim

__all__ = ["case_screw", "screw_ends"]


def case_screw(maker: Maker, passed: Dim) -> Dim:
    """Length of the screws through a board into the edge or the end of another [mm]."""
    return maker.house.screw_for("drawer_screw", passed, 2 * passed)


def screw_ends(
    maker: Maker, part: Part, bottom: Outline, top: tuple[Outline, Plane] | None
) -> None:
    """Two screws up through the bottom and two down from above into an upright's ends.

    Parameters
    ----------
    top
        What lies on it, and which of its planes looks down; None: nothing does.
    """
    name = part.path.rpartition(".")[2]
    ends: list[tuple[str, Outline, Plane, Plane]] = [("bottom", bottom, "l0", "t1")]
    if top is not None:
        ends.append(("top", top[0], "l1", top[1]))
    for word, board, end, plane in ends:
        screws = Fastening(
            "case screw", 2, case_screw(maker, board.thickness), (board.path,), part.path
        )
        glue = Fastening("glue", 1, None, (part.path,), board.path)
        maker.join(f"joint_{name}_{word}", "butt", (part.path, end), (board.path, plane),
                   fastenings=(screws, glue))  # fmt: skip
