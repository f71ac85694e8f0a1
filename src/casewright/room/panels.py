"""Panels on the appliances of a run: which they line up with, and their cases."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from casewright.casework.appliance_panels import (
    PanelEdges,
    PanelPlace,
    build_panel,
    line_of,
    panel_spec,
)
from casewright.casework.cases import Case
from casewright.casework.house import House
from casewright.dims import Dim
from casewright.findings import Question
from casewright.room.model import Appliance, Room, Run
from casewright.room.specs import ApplianceSpec

__all__ = ["held_panels", "open_panels", "panel_questions", "run_panels"]

_LIMITS = (
    ("most_height", "height", "the greatest height of a panel"),
    ("most_width", "width", "the greatest width of a panel"),
    ("most_thickness", "thickness", "the greatest thickness of a panel"),
    ("most_weight", "weight", "the greatest weight of a panel, with its pull"),
)
_SCREWS = (
    ("screw_rows", "how far below its upper edge the screws of its brackets sit"),
    ("screws_apart", "how far apart the two screws of a row are"),
    ("screw_depth", "how deep its screws go in"),
)


def run_panels(house: House, run: Run) -> tuple[Run, tuple[Case, ...]]:
    """The run with the panels of its appliances, built in line with the fronts beside them."""
    panels: dict[str, Case] = {}
    for each in run.appliances:
        if each.spec.panel is not None:
            key = f"appliance.{each.spec.key}.panel"
            panels[each.spec.key] = _build(house, run, each, key)
    appliances = tuple(replace(each, panel=panels.get(each.spec.key)) for each in run.appliances)
    return replace(run, appliances=appliances), tuple(panels.values())


def _build(house: House, run: Run, each: Appliance, key: str) -> Case:
    nearest = _neighbours(run, each.spec.key)
    sheet = each.spec.panel
    if sheet is None:
        msg = f"{each.spec.key} has no panel"
        raise ValueError(msg)
    lines = tuple(_lines(nearest))
    first = nearest[0]
    back = max((f.z for f in first.wall_fronts), key=lambda z: z.value, default=None)
    under = first.height
    at = PanelPlace(
        opening=each.width,
        low=lines[0].low if lines else _foot(house, first),
        high=lines[0].high if lines else under - house.style_dim("base_top_reveal"),
        under=under,
        back=first.face_plane + house.style_dim("bumper") if back is None else back,
        beside=lines,
    )
    title = f"panel of {each.spec.title}"
    return build_panel(house, panel_spec(first.spec, key, title, sheet), at)


def _foot(house: House, case: Case) -> Dim:
    """Where fronts would begin beside a case that has none [mm]."""
    return house.style_dim("toe_height") if case.spec.has_toe else house.zero


def _neighbours(run: Run, key: str) -> list[Case]:
    """Cases beside an appliance, those that touch it first, the left one before the right."""
    by_key = {case.key: (number, case) for number, case in enumerate(run.cases)}
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
        for each in run.appliances:
            if each.panel is not None:
                yield each.spec, each.panel


def _missing(spec: ApplianceSpec) -> Iterator[tuple[str, str]]:
    """Numbers of a panel's sheet that nobody has given yet, each with its words."""
    sheet = spec.panel
    if sheet is None:
        return
    for name, word, needs in _LIMITS:
        if getattr(sheet, name) is None and word not in sheet.no_limit:
            yield name, needs
    for name, needs in _SCREWS:
        if not getattr(sheet, name):
            yield name, needs


def open_panels(room: Room) -> tuple[str, ...]:
    """Paths of what is missing of the sheets of panels."""
    return tuple(
        f"{panel.key}.{name}" for spec, panel in _panels(room) for name, _ in _missing(spec)
    )


def held_panels(room: Room) -> dict[str, tuple[str, ...]]:
    """By the path of a panel's part what it waits for: limits of its size, of its goods."""
    held: dict[str, tuple[str, ...]] = {}
    for spec, panel in _panels(room):
        asked = tuple(f"{panel.key}.{name}" for name, _ in _missing(spec))
        for part in panel.parts if asked else ():
            held[part.path] = asked
    return held


def panel_questions(room: Room, waiting: Mapping[str, list[str]]) -> Iterator[Question]:
    """One for each number of a panel's sheet that is missing."""
    for spec, panel in _panels(room):
        for name, needs in _missing(spec):
            path = f"{panel.key}.{name}"
            how = f'under [appliance.{spec.key}.panel] write {name} = "..."'
            word = next((word for each, word, _ in _LIMITS if each == name), "")
            if name == "screw_rows":
                how = how.replace('"..."', '["...", "..."]')
            if word:
                how += f', or no_limit = ["{word}"] where it sets none'
            yield Question(
                path=path,
                needs=f"{needs}, from the sheet of {spec.title}",
                because="a panel that its hinges do not carry or its brackets do not take is cut "
                "for nothing",
                waiting=tuple(waiting.get(path, ())),
                how=how,
            )
