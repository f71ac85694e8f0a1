"""What the card of an appliance's panel says first."""

from __future__ import annotations

from dataclasses import replace

from casewright.casework.cases import Case
from casewright.casework.lifted import lift_path
from casewright.dims import Measure, Told, as_said, joined, measure_of, tell
from casewright.outputs.inlines import Inline, Link, PageNumber, Rich, Strong
from casewright.packet.weight_words import weight_of
from casewright.packet.words import sizes
from casewright.room.model import Room
from casewright.sources import POUND

__all__ = ["panel_summary"]


def panel_summary(room: Room, case: Case) -> Rich:
    """Its size, its place between the cases, its weight against what its sheet lets it weigh."""
    unit = room.spec.unit
    [front], [face] = case.fronts, case.faces
    each = next(a for run in room.runs for a in run.panelled
                if case.key in {panel.key for panel, _ in a.panels})  # fmt: skip
    second, upper = each.spec.second_panel, each.panel is not None and each.panel.key == case.key
    lined = f"{case.key}.step_1" in room.chain.nodes
    where = "in line with the fronts beside it" if lined else "over the height of a toe space"
    if second is not None and second.place == "below" and upper:
        where = "over the lower panel"
    beside: tuple[Inline, ...] = (
        ", in an opening ", Strong(measure_of(case.width, unit)), " wide: ",
        measure_of(face.left, unit), " of air at either side",
    )  # fmt: skip
    if second is not None and second.place == "right":
        air = room.chain.nodes[f"appliance.{each.spec.key}.second_panel.air"]
        beside = (": ", measure_of(face.left, unit), " from the case beside it, ",
                  measure_of(air, unit), " from the other panel")  # fmt: skip
    words: list[Inline] = [
        "Panel on the front of an appliance, ",
        *sizes(front.width, front.height, front.thickness, unit=unit, strong=True),
        " (width × height × thickness)", *beside, ". It begins ",
        Strong(measure_of(front.y, unit)), f" above the floor, {where}.",
    ]  # fmt: skip
    words.append(_weighs(room, case))
    words.append(_screws(room, case))
    words += [" ", Link("Part cards", f"parts:{case.key}"), ", page ",
              PageNumber(f"parts:{case.key}"), "."]  # fmt: skip
    return tuple(words)


def _weighs(room: Room, case: Case) -> Told:
    own = weight_of(room, case.parts, lift_path(case.key, "panel_weight"))
    sheet = case.spec.panel
    most = None if sheet is None else sheet.most_weight
    allowed = "" if most is None else tell(
        ", and its sheet lets it weigh {}",
        _weight(room, Measure(most.value, room.spec.unit, lift_path(case.key, "most_weight"))),
    )  # fmt: skip
    return tell(" It weighs about {} without its pull{}.", _weight(room, own), allowed)


def _weight(room: Room, weight: Measure) -> Measure:
    """Both units to a tenth: it is held against a sheet."""
    kilos = f"{float(weight.value):.1f} kg"
    pounds = f"{float(weight.value / POUND):.1f} lb ({kilos})"
    return replace(weight, said=kilos if room.spec.unit == "mm" else pounds)


def _screws(room: Room, case: Case) -> Told:
    """Where the screws of its brackets go, or that their holes wait for the sheet."""
    sheet = case.spec.panel
    if sheet is None or sheet.screws_apart is None or not sheet.screw_rows:
        return Told(" Bore nothing for its brackets before their sheet is at hand.")
    unit, nodes = room.spec.unit, room.chain.nodes
    rows = [nodes[f"{case.key}.screw_row_{n}"] for n, _ in enumerate(sheet.screw_rows, 1)]
    rows.sort(key=lambda row: row.value)
    return tell(
        " Its brackets' screws: {} below its upper edge, {} apart, from behind.",
        joined(" and ", (as_said(row, unit) for row in rows)),
        as_said(nodes[f"{case.key}.screws_apart"], unit),
    )
