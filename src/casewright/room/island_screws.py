"""What holds the rows of an island to one another, or its finished back to its boxes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.levels import extent
from casewright.casework.maker import Maker
from casewright.casework.parts import Part
from casewright.dims import Dim
from casewright.geometry import Box
from casewright.room.board_screws import BoardScrews
from casewright.room.island_places import IslandFrame, part_span, parts_in_island
from casewright.room.model import Run
from casewright.sources import INCH

__all__ = ["POINT", "back_to_back", "screws_along"]

POINT = Fraction(5, 6)
"""How far into a panel the screws behind it may go (common practice)."""

_LAP = 3 * INCH
"""Shortest stretch of two boards back to back that takes two screws (common practice) [mm]."""


def screws_along(maker: Maker, length: Dim) -> int:
    """Screws along so long a board [-]."""
    return 1 + max(1, maker.place.times(length, maker.style("island_screws"), "screws of a row"))


def back_to_back(maker: Maker, runs: tuple[Run, ...], end: Dim) -> Iterator[BoardScrews]:
    """From each nailer, or thick back, of the front row into what lies behind it.

    Parameters
    ----------
    end
        Thickness of the left end panel [mm].
    """
    nodes, key = maker.house.chain.nodes, maker.spec.key
    behind = nodes[f"{key}.back_depth"].value
    frame = IslandFrame(end.value, end.value + nodes[f"{key}.boxes_length"].value, behind)
    cases = {case.key: case for run in runs for case in run.cases}
    front = {case.key for case in runs[0].cases}
    rows: tuple[list[tuple[Part, Box]], ...] = ([], [])
    for part, box in parts_in_island(frame, runs):
        case = cases.get(part.case)
        if case is not None and part.role == ("back" if case.spec.back == "inset" else "nailer"):
            rows[part.case not in front].append((part, box))
    backs = (part for part in maker.parts.values() if part.role == "island back")
    rows[1].extend((part, part_span(part)) for part in backs)
    for part, box in rows[0]:
        for other, met in rows[1]:
            high = min(box.y1, met.y1) - max(box.y0, met.y0)
            lap = min(box.x1, met.x1) - max(box.x0, met.x0)
            if high > 0 and lap >= _LAP:
                yield _pair(maker, cases, (part, other), Fraction(lap))


def _pair(
    maker: Maker, cases: Mapping[str, Case], parts: tuple[Part, Part], lap: Fraction
) -> BoardScrews:
    """Screws through one board into another behind it, with the thin backs between them."""
    part, other = parts
    passed = part.finished.thickness
    for each in parts:
        rear = extent(each, 2)[0]
        if each.case in cases and rear.value:
            passed = passed + rear
    screw = maker.house.screw_for("drawer_screw", passed, other.finished.thickness * POINT)
    name = f"{maker.spec.key}.screws.{part.path}.{other.path.rpartition('.')[0]}"
    step = maker.style("island_screws").value
    return BoardScrews(name, 1 + max(1, int(lap // step)), screw, part.path, other.path)
