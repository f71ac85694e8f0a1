"""Everything a job file says, with defaults filled in and every number knowing its origin."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from casewright.casework.specs import CaseSpec, PanelSheet
from casewright.dims import Given
from casewright.facts import NO_FACTS, Facts
from casewright.hardware import HardwareList
from casewright.room.floor_spec import FloorPlace
from casewright.room.island_spec import IslandSpec
from casewright.room.trims.specs import NO_TRIMS, RunTrims
from casewright.shop import Shop
from casewright.stock import Moisture, StockList, usual_moisture
from casewright.style import Style
from casewright.survey.specs import NO_SURVEY, SurveySpec

__all__ = [
    "ApplianceSpec", "DoorPanel", "JobSpec", "MatchSpec", "RunEnd", "RunSide", "RunSpec", "Unit",
]  # fmt: skip

Unit = Literal["in", "mm"]
RunEnd = Literal["wall", "corner", "flush", "open"]
RunSide = Literal["left", "right"]


@dataclass(frozen=True, slots=True)
class RunSpec:
    """Cases side by side along a wall.

    Parameters
    ----------
    key, title
        Permanent id; name in words.
    cases
        Keys of its cases, left to right.
    widths
        Readings of the wall's width between the two ends [mm]; the least governs. Empty when the
        run is free at both ends.
    left, right
        What stands at each end: a wall, or in an inside corner the fronts of the other run (a
        filler is cut before either); flush, against what it ends at without one; or open.
    where
        Place in the job file.
    on
        Key of the surveyed wall whose readings count instead of `widths`; empty: none.
    after, before
        Keys of what on the wall, or of which case or appliance of another run there, it begins
        after and ends before; empty: the wall's ends.
    left_filler
        Width of the left one of two fillers [mm]; None: both alike.
    centre
        Keys of cases and of what on the wall each is to stand on the middle of.
    appliances
        Keys of its appliances, left to right, each with how many of its cases stand left of it.
    is_free
        Whether a layout may put them in another order.
    beside
        Keys of two that must be neighbours then.
    over
        Key of the run on whose seams its own are best to stand; empty: none.
    solved
        Keys of the cases whose width an accepted layout gave.
    seams
        Keys of cases and appliances whose left side is pinned, each with how far it is to stand
        from the wall's left end [mm].
    one_lid
        Whether one lid lies over its window seats.
    proportions
        Keys of cases whose widths a layout compares, each with its number: three to two.
    trims
        What is fitted to it once it stands.
    """

    key: str
    title: str
    cases: tuple[str, ...]
    widths: tuple[Given, ...]
    left: RunEnd
    right: RunEnd
    where: str = ""
    on: str = ""
    after: str = ""
    before: str = ""
    left_filler: Given | None = None
    centre: tuple[tuple[str, str], ...] = ()
    appliances: tuple[tuple[str, int], ...] = ()
    is_free: bool = False
    beside: tuple[tuple[str, str], ...] = ()
    over: str = ""
    solved: frozenset[str] = frozenset()
    seams: tuple[tuple[str, Given], ...] = ()
    one_lid: bool = False
    proportions: tuple[tuple[str, int], ...] = ()

    @property
    def places(self) -> tuple[str, ...]:
        """Keys of its cases and appliances, left to right."""
        return tuple(
            key
            for number in range(len(self.cases) + 1)
            for key in (
                *(other for other, before in self.appliances if before == number),
                *self.cases[number : number + 1],
            )
        )

    trims: RunTrims = NO_TRIMS

    def end(self, side: RunSide) -> RunEnd:
        """What stands at an end."""
        return self.left if side == "left" else self.right


@dataclass(frozen=True, slots=True)
class DoorPanel:
    """The panel on the second door of an appliance, and how it and the first part.

    Parameters
    ----------
    sheet
        What the appliance's sheet says of it.
    place
        Where its door is, from the first.
    line
        Middle of the gap between the two: above the floor, or from the left end of the opening
        [mm]; None: not known yet.
    apart
        That gap [mm]; None: not known yet.
    """

    sheet: PanelSheet
    place: Literal["right", "below"]
    line: Given | None = None
    apart: Given | None = None


@dataclass(frozen=True, slots=True)
class ApplianceSpec:
    """An appliance between the cases of a run.

    Parameters
    ----------
    key, title
        Permanent id; name in words.
    width
        That its sheet asks for [mm]; None: not known yet.
    height
        How high the appliance stands [mm].
    where
        Place in the job file.
    cooks
        Whether it is cooked on.
    washes
        Whether it is a dishwasher.
    cools
        Whether it is a refrigerator.
    clear_above
        What its sheet wants free above it then [mm]; None: not known yet.
    panel
        What its sheet says of a panel on its front; None: it gets none.
    second_panel
        That of its second door; None: it has one door, or that gets none.
    opens
        How far its door stands out before it when it is open [mm]; None: not known.
    depth
        How far it stands out from the wall [mm]; None: as the cases beside it.
    """

    key: str
    title: str
    width: Given | None
    height: Given
    where: str = ""
    cooks: bool = False
    washes: bool = False
    cools: bool = False
    clear_above: Given | None = None
    panel: PanelSheet | None = None
    opens: Given | None = None
    depth: Given | None = None
    second_panel: DoorPanel | None = None


@dataclass(frozen=True, slots=True)
class MatchSpec:
    """Fronts through which the grain runs.

    Parameters
    ----------
    key
        Its name.
    cases
        Keys of cases and of appliances with panels, left to right.
    """

    key: str
    cases: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class JobSpec:
    """A job: what `build` needs besides the facts.

    Parameters
    ----------
    name
        Title of the job.
    unit
        in or mm: how lengths are read and written.
    paper
        letter or a4.
    style, stock, hardware, shop, cases, runs, appliances, islands, matches
        The rest of the file.
    floor_places
        Where islands, and cases in no run, stand.
    moisture
        Of solid wood, as it is cut and as the room makes it.
    file_facts
        Readings typed in the file itself: measured thicknesses.
    survey
        The room as measured.
    address, wishes
        Free text for the cover.
    accessible
        Whether somebody in a wheelchair is to work there.
    two_cooks
        Whether more than one person is to work there at once.
    """

    name: str
    unit: Unit
    paper: Literal["letter", "a4"]
    style: Style
    stock: StockList
    hardware: HardwareList
    shop: Shop
    cases: tuple[CaseSpec, ...]
    runs: tuple[RunSpec, ...]
    moisture: Moisture = field(default_factory=usual_moisture)
    file_facts: Facts = field(default_factory=lambda: NO_FACTS)
    survey: SurveySpec = NO_SURVEY
    appliances: tuple[ApplianceSpec, ...] = ()
    islands: tuple[IslandSpec, ...] = ()
    floor_places: tuple[FloorPlace, ...] = ()
    address: str = ""
    wishes: tuple[str, ...] = ()
    accessible: bool = False
    two_cooks: bool = False
    source: str = ""
    matches: tuple[MatchSpec, ...] = ()
