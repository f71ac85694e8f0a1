"""Panels on the appliances of a run: which they line up with, and their cases."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from casewright.casework.appliance_panels import (
    PanelEdges,
    PanelPlace,
    build_panel,
    line_of,
    panel_spec,
)
from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.casework.specs import CaseSpec, Hand, PanelSheet
from casewright.dims import Dim, tell
from casewright.findings import Question
from casewright.room.model import Appliance, Room, Run
from casewright.room.specs import ApplianceSpec, DoorPanel

__all__ = ["held_panels", "open_panels", "panel_questions", "run_panels"]

_LIMITS = (
    ("most_height", "height", "the greatest height of a panel"),
    ("most_width", "width", "the greatest width of a panel"),
    ("most_thickness", "thickness", "the greatest thickness of a panel"),
    ("most_weight", "weight", "the greatest weight of a panel, with its pull"),
)
_PARTED = (
    ("line", "where its two doors part"),
    ("apart", "the gap between the panels of its two doors"),
)
_SCREWS = (
    ("screw_rows", "how far below its upper edge the screws of its brackets sit"),
    ("screws_apart", "how far apart the two screws of a row are"),
    ("screw_depth", "how deep its screws go in"),
)


def run_panels(
    house: House, run: Run, appliances: Iterable[ApplianceSpec]
) -> tuple[Run, tuple[Case, ...]]:
    """The run with the panels of its appliances, built in line with the fronts beside them.

    Parameters
    ----------
    appliances
        All of the job, those in surrounds among them.
    """
    between = tuple(
        _with_panels(
            house, each, _neighbours(run, each.spec.key)[0].spec, _place(house, run, each)
        )
        for each in run.appliances
    )
    specs = {each.key: each for each in appliances if each.panel is not None}
    housed = tuple(
        _with_panels(house, Appliance(spec, opening.width, opening.start), case.spec, opening.at)
        for number, case in enumerate(run.cases)
        if case.spec.between_panels and case.spec.appliance is not None
        and (spec := specs.get(case.spec.appliance.key)) is not None
        for opening in (_surround_opening(house, run, number),)
    )  # fmt: skip
    run = replace(run, appliances=between, housed=housed)
    return run, tuple(case for each in run.panelled for case, _ in each.panels)


def _with_panels(
    house: House, each: Appliance, first: CaseSpec, at: PanelPlace
) -> Appliance:  # fmt: skip
    """An appliance with a panel on its door, or one on each of its two."""
    spec, second = each.spec, each.spec.second_panel
    if spec.panel is None:
        return each
    key = f"appliance.{spec.key}"
    if second is None:
        title = f"panel of {spec.title}"
        at = replace(at, hinge=spec.panel.hinge)
        panel = build_panel(house, panel_spec(first, f"{key}.panel", title, spec.panel), at)
        return replace(each, panel=panel)
    places, start, apart = _parted(house, f"{key}.second_panel", second, at)
    words = ("left", "right") if second.place == "right" else ("upper", "lower")
    one, other = (
        build_panel(house, panel_spec(first, f"{key}.{name}", f"{word} panel of {spec.title}",
                                      sheet), replace(place, hinge=sheet.hinge or side))
        for name, word, sheet, place, side in zip(
            ("panel", "second_panel"), words, (spec.panel, second.sheet), places,
            _outer(second), strict=True,
        )
    )  # fmt: skip
    _fit_between(house, f"{key}.second_panel", (one, other), start, apart)
    return replace(each, panel=one, second_panel=other, second_start=start)


def _outer(second: DoorPanel) -> tuple[Hand | None, Hand | None]:
    """Sides that two doors side by side swing on: the outer ones."""
    return ("left", "right") if second.place == "right" else (None, None)


def _parted(
    house: House, key: str, second: DoorPanel, at: PanelPlace
) -> tuple[tuple[PanelPlace, PanelPlace], Dim | None, Dim]:
    """Where each of two panels goes, where the room of the right one begins, the gap [mm].

    Of two side by side each has room of its own, a gap wider at either side than the panel, as
    one alone has; of two one over the other the lower one's ends where the upper one begins.
    While the sheet is missing they part in the middle, a gap apart.
    """
    place, gap, right = house.chain.place(key), house.style_dim("gap"), second.place == "right"
    usual = at.opening / 2 if right else (at.low + at.high) / 2
    line = place.let("line", usual) if second.line is None else place.given("line", second.line)
    apart = gap if second.apart is None else place.given("apart", second.apart)
    low, high = place.let("first_ends", line - apart / 2), place.let("begins", line + apart / 2)
    if right:
        start = place.let("start", high - gap)
        sides = tell(
            "{} from the case beside it, {} from the other panel",
            house.said(gap),
            house.said(apart),
        )
        at = replace(at, sides=sides)
        left = replace(at, opening=place.let("left_room", low + gap))
        return (left, replace(at, opening=place.let("room", at.opening - start))), start, apart
    hung = tell("{} below the upper panel", house.said(apart))
    upper = replace(at, low=high, upper=True)
    return (upper, replace(at, high=low, under=high, hung=hung)), None, apart


def _fit_between(
    house: House, key: str, panels: tuple[Case, Case], start: Dim | None, apart: Dim
) -> None:
    """The gap between the panels of two doors, as a fit; what a sheet takes of it is told."""
    (first, second), place = (case.fronts[0] for case in panels), house.chain.place(key)
    if start is None:
        air = first.y - second.y - second.height
    else:
        air = start + second.x - first.x - first.width
    step = house.style_dim("cut_step").value
    band = max(house.style_dim("gap_tolerance").value, 2 * step)
    air = place.let("air", air)
    if abs(air.value - apart.value) <= band:
        place.fit("stack_gap_fit", air, apart.value - band, apart.value + band, second.path)


@dataclass(frozen=True, slots=True)
class _Opening:
    """Where the panel of an appliance in a surround goes.

    Parameters
    ----------
    start
        Its left end from the run's left datum [mm].
    """

    start: Dim
    width: Dim
    at: PanelPlace


def _surround_opening(house: House, run: Run, number: int) -> _Opening:
    """Between the panels of a surround: from the line of the fronts beside it to those over it."""
    case = run.cases[number]
    place, nodes = house.chain.place(f"{case.key}.opening"), house.chain.nodes
    start, width = run.starts[number] + case.left_frame, nodes.get(f"{place.path}.mouth")
    if width is None or case.frame is None:
        width = case.width
    else:
        start = start + (case.width - width) / 2
    beside = [each for each in _neighbours(run, case.key) if each.spec.has_toe]
    lines = tuple(_lines(beside))
    under = place.let("under", min((f.y for f in case.wall_fronts), key=lambda y: y.value))
    at = PanelPlace(
        opening=width, low=lines[0].low if lines else house.style_dim("toe_height"),
        high=place.let("high", under - house.style_dim("gap")), under=under,
        back=max((f.z for f in case.wall_fronts), key=lambda z: z.value), beside=lines,
        hung=tell("{} below the doors over it", house.said(house.style_dim("gap"))),
    )  # fmt: skip
    return _Opening(start, width, at)


def _place(house: House, run: Run, each: Appliance) -> PanelPlace:
    nearest = _neighbours(run, each.spec.key)
    lines = tuple(_lines(nearest))
    first = nearest[0]
    back = max((f.z for f in first.wall_fronts), key=lambda z: z.value, default=None)
    under = first.height
    return PanelPlace(
        opening=each.width,
        low=lines[0].low if lines else _foot(house, first),
        high=lines[0].high if lines else under - house.style_dim("base_top_reveal"),
        under=under,
        back=first.face_plane + house.style_dim("bumper") if back is None else back,
        beside=lines,
    )


def _foot(house: House, case: Case) -> Dim:
    """Where fronts would begin beside a case that has none [mm]."""
    return house.style_dim("toe_height") if case.spec.has_toe else house.zero


def _neighbours(run: Run, key: str) -> list[Case]:
    """Cases beside a place of a run, those that touch it first, the left one before the right."""
    by_key = {case.key: (n, case) for n, case in enumerate(run.cases) if case.key != key}
    at = run.spec.places.index(key)
    order = {place: number for number, place in enumerate(run.spec.places)}
    near = sorted(by_key, key=lambda other: (abs(order[other] - at), order[other]))
    return [by_key[other][1] for other in near[:2]]


def _lines(cases: list[Case]) -> Iterator[PanelEdges]:
    """Lowest and highest edges of the fronts of cases that have some."""
    for case in cases:
        line = line_of(iter(case.wall_fronts))
        if line is not None:
            yield PanelEdges(case.spec.title, *line)


def _panels(room: Room) -> Iterator[tuple[ApplianceSpec, Case]]:
    for run in room.runs:
        for each in run.panelled:
            for panel, _ in each.panels:
                yield each.spec, panel


def _missing(room: Room, spec: ApplianceSpec, panel: Case) -> Iterator[tuple[str, str]]:
    """Paths of the numbers of a panel's sheet that nobody has given yet, each with its words."""
    sheet, second = panel.spec.panel, spec.second_panel
    for name, needs in () if sheet is None else _unsaid(sheet):
        yield f"{panel.key}.{name}", needs
    nodes = room.chain.nodes
    across = nodes.get(f"{panel.key}.pull_across")
    if across is not None and across.value > room.spec.style["pull_reach"].value:
        yield f"{panel.key}.hinge", "the side that its door swings on"
    for name, needs in () if second is None else _PARTED:
        if getattr(second, name) is None:
            yield f"appliance.{spec.key}.second_panel.{name}", needs


def _unsaid(sheet: PanelSheet) -> Iterator[tuple[str, str]]:
    for name, word, needs in _LIMITS:
        if getattr(sheet, name) is None and word not in sheet.no_limit:
            yield name, needs
    for name, needs in _SCREWS:
        if not getattr(sheet, name):
            yield name, needs


def open_panels(room: Room) -> tuple[str, ...]:
    """Paths of what is missing of the sheets of panels."""
    found = (path for spec, panel in _panels(room) for path, _ in _missing(room, spec, panel))
    return tuple(dict.fromkeys(found))


def held_panels(room: Room) -> dict[str, tuple[str, ...]]:
    """By the path of a panel's part what it waits for: limits of its size, of its goods."""
    held: dict[str, tuple[str, ...]] = {}
    for spec, panel in _panels(room):
        asked = tuple(path for path, _ in _missing(room, spec, panel))
        for part in panel.parts if asked else ():
            held[part.path] = asked
    return held


def panel_questions(room: Room, waiting: Mapping[str, list[str]]) -> Iterator[Question]:
    """One for each number of a panel's sheet that is missing."""
    told: set[str] = set()
    for spec, panel in _panels(room):
        for path, needs in _missing(room, spec, panel):
            if path in told:
                continue
            told.add(path)
            table, _, name = path.rpartition(".")
            how = f'under [{table}] write {name} = "..."'
            word = next((word for each, word, _ in _LIMITS if each == name), "")
            if name == "hinge":
                how = how.replace('"..."', '"left" or "right"')
            if name == "screw_rows":
                how = how.replace('"..."', '["...", "..."]')
            if word:
                how += f', or no_limit = ["{word}"] where it sets none'
            yield Question(
                path=path,
                needs=f"{needs}, from the sheet of {spec.title}",
                because="its pull goes beside the other edge, in reach"
                if name == "hinge"
                else "a panel that its hinges do not carry or its brackets do not take is cut "
                "for nothing",
                waiting=tuple(waiting.get(path, ())),
                how=how,
            )
