"""What can be wrong with a plan, as data."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

__all__ = ["Breach", "Violation"]


class Breach(Enum):
    """Which rule a plan breaks."""

    UNKNOWN_PART = "no such part"
    UNKNOWN_STOCK = "no such stock"
    MISSING = "a part is neither placed nor listed as unplaced"
    REPEATED = "a part is placed or listed too often"
    SIZE = "a part has the wrong size"
    GRAIN = "a part is turned against its grain"
    OUTSIDE = "a part reaches into a trim or over the edge"
    OVERLAP = "two parts overlap"
    KERF = "two parts lie closer than the kerf"
    DEFECT = "a part lies on a defect"
    MATCH = "matched parts do not lie beside each other in their order"
    STOCK_COUNT = "more sheets are used than there are"
    TREE = "the cuts do not give the pieces"
    PLACEMENT = "the cut tree and the placements differ"
    STAGES = "too many cutting directions"
    COST = "the cost is not that of the sheets"
    BOUND = "the bound is above the cost, or the status does not follow from it"
    CLAIM = "the bound cannot be for this problem"
    TOLD = "what is told beside the plan does not follow from it"
    CAUTION = "the cautions of a cut are not those that it needs"
    CARDS = "the setting cards do not count the pieces"


@dataclass(frozen=True, slots=True)
class Violation:
    """One breach: on which sheet (None: the plan as a whole), of which part, in words."""

    breach: Breach
    says: str
    sheet: int | None = None
    part: str = ""
