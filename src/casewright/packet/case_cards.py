"""Cards of cases: pictures, parts, hardware, and the order it goes together."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.features import Cut
from casewright.dims import Measure, Unit, measure_of
from casewright.drawing import Plot, Plots, ScaleError, View, sheet
from casewright.drawing.case_front import closed_scene, open_scene
from casewright.drawing.case_section import section_scene
from casewright.drawing.island_plan import island_scene
from casewright.drawing.mouth_views import mouth_scene, open_mouth_scene, plan_of_corner
from casewright.drawing.plinth_plan import corner_plinth_scene, plinth_scene
from casewright.drawing.pulled_apart import pulled_apart_scene
from casewright.outputs.blocks import Beside, Block, Figure, Heading, Keep, Paragraph, Table
from casewright.outputs.document import Paper, Section
from casewright.outputs.inlines import Inline, Link, PageNumber, Rich, Strong
from casewright.packet.assembly_steps import assembly_blocks
from casewright.packet.case_parts import door_table, drawer_table, part_tables
from casewright.packet.door_sections import door_sections
from casewright.packet.hold_marks import HoldMarks
from casewright.packet.hold_pages import HoldPages
from casewright.packet.island_words import island_of, island_summary
from casewright.packet.panel_words import panel_summary
from casewright.packet.part_heights import list_height, paragraph_height
from casewright.packet.weight_words import case_weighs
from casewright.packet.words import sizes
from casewright.room.model import Room

__all__ = ["case_sections"]

_VIEWS_OF_TALL = 120.0  # the same for a case from floor to ceiling [mm]
_VIEWS_TALL, _APART_TALL = 68.0, 84.0  # room for the drawings above the parts [mm]
_VIEWS_MOST = 100.0  # room for the upper ones where the tables leave it [mm]
_APART_LEAST = 50.0  # under which a case pulled apart is too small to read [mm]
_TITLE, _CARD, _ROUND, _SPARE = 13.0, 6.5, 3.5, 0.5  # headings, round a figure, of a page [mm]
_BETWEEN = 6.0  # tables beside each other [mm]

_KINDS = {
    "wall": "Wall case",
    "base": "Base case",
    "tall": "Tall case",
    "bookcase": "Bookcase",
    "surround": "Surround",
    "hood": "Hood",
    "plinth": "Plinth",
}


def case_sections(
    room: Room, paper: Paper, holds: HoldPages, *, left_only: bool = False, only: str = ""
) -> tuple[Section, ...]:
    """One section a case.

    Parameters
    ----------
    left_only
        Whether steps are told only for what is not put together yet.
    only
        Key of the one case that is told; empty: all of them.
    """
    return tuple(
        Section(
            case.spec.title,
            (*_blocks(room, case, paper, holds.marks), *_steps(room, case, holds, left_only)),
            case.key,
        )
        for case in room.cases
        if only in ("", case.key)
    )


def _blocks(room: Room, case: Case, paper: Paper, holds: HoldMarks) -> list[Block]:
    unit = room.spec.unit
    width = paper.text_width_mm
    summary, tables = _summary(room, case), part_tables(room, case, holds)
    below = [_tables_height(tables, width)]
    if case.doors:
        doors = door_table(case, unit)
        below.insert(0, below[0] + _CARD + list_height(doors, width))
    if case.drawers:
        below.insert(0, below[0] + _CARD + list_height(drawer_table(room, case), width))
    page = paper.text_height_mm - _SPARE - _TITLE - paragraph_height(summary, width) - 2 * _ROUND
    least = _VIEWS_OF_TALL if case.spec.kind in ("tall", "surround") else _VIEWS_TALL
    tall = max(least, min(page - below[0] - _APART_TALL, _VIEWS_MOST))
    views = _views_within(room, case, width, (tall, _VIEWS_MOST, page))
    left = [page - views.area.height - each for each in below]
    apart = _apart(case, width, left, unit)
    words = f"{case.spec.title} pulled apart, every part with its mark"
    blocks: list[Block] = [Paragraph(summary), Figure(views, alternative=case.spec.title)]
    if len(case.parts) > 1:  # one piece alone cannot be pulled apart
        blocks.append(Figure(apart, alternative=words))
    if case.mouth is not None and case.spec.toe == "plinth":
        blocks.append(_plinth_of_corner(case, width, unit))
    blocks.append(tables)
    if case.doors:
        blocks.append(Keep((Heading("Doors", 3), door_table(case, unit))))
        blocks.extend(door_sections(room, case, width))
    if case.drawers:
        blocks.append(Keep((Heading("Drawers", 3), drawer_table(room, case))))
    return blocks


def _plinth_of_corner(case: Case, width_mm: float, unit: Unit) -> Figure:
    words = "Its plinth and toe board, from above"
    drawn = _first_fit(
        [[View(corner_plinth_scene(case, unit), words)]],
        width_mm,
        (_VIEWS_TALL, _VIEWS_MOST),
        unit,
    )
    return Figure(drawn, alternative=words)


def _views_within(room: Room, case: Case, width_mm: float, talls: Sequence[float]) -> Plot:
    """The views as low as they can be read: each height in turn, until they fit."""
    return _first_fit([_views(room, case)], width_mm, talls, room.spec.unit)


def _first_fit(
    rows: Sequence[Sequence[View]], width_mm: float, talls: Sequence[float], unit: Unit
) -> Plot:
    """Views in the first height that holds them."""
    plots = Plots()
    *some, last = talls
    for tall in some:
        with suppress(ScaleError):
            return sheet(rows, width_mm, tall, unit, bar=False, plots=plots)
    return sheet(rows, width_mm, last, unit, bar=False, plots=plots)


def _steps(room: Room, case: Case, holds: HoldPages, left_only: bool) -> list[Block]:
    steps = assembly_blocks(case, room.spec.unit, holds.stops(case), left_only=left_only)
    return [Heading("Putting it together", 2, f"assembly:{case.key}"), *steps]


def _apart(case: Case, width_mm: float, left_mm: Sequence[float], unit: Unit) -> Plot:
    """Pulled apart, so that as much of the tables as can be stands on the page below it.

    Parameters
    ----------
    left_mm
        Room left by all of the tables, then by the parts alone [mm].
    """
    view = [[View(pulled_apart_scene(case), "Pulled apart")]]
    talls = [min(tall, _APART_TALL) for tall in left_mm if tall >= _APART_LEAST]
    return _first_fit(view, width_mm, [*talls, _APART_TALL], unit)


def _tables_height(tables: Beside, width_mm: float) -> float:
    """Height of the higher of two tables beside each other [mm]."""
    half = (width_mm - _BETWEEN) / 2
    return max(
        sum(list_height(block, half) for block in column if isinstance(block, Table))
        for column in tables.columns
    )


def _standing_words(room: Room, case: Case) -> list[Inline]:
    """What is under its box, where the box does not stand on the floor."""
    if not case.standing.value:
        return []
    if case.spec.hood is not None:
        return _hood_words(room, case)
    around, unit = case.spec.appliance, room.spec.unit
    what = "is the plinth of its run" if around is None else f"stays open for {around.title}"
    return [" The lowest ", Strong(measure_of(case.standing, unit)), f" of the height {what}."]


def _hood_words(room: Room, case: Case) -> list[Inline]:
    """How high it hangs, and what its liner leaves of its bottom."""
    hood, unit, nodes = case.spec.hood, room.spec.unit, room.chain.nodes
    if hood is None:
        return []
    under = measure_of(nodes[f"{case.key}.hangs_at"], unit)
    pad = Measure(_pad(case), unit, f"{case.key}.side_pad")
    return [
        " Its heights count from the undersides of wall cases: the lowest ",
        Strong(measure_of(case.standing, unit)), " stay open, and its underside hangs ",
        Strong(under), f" above the floor, over {hood.over_title}. Beside the liner ",
        Strong(pad), " of the bottom are left at each side.",
    ]  # fmt: skip


def _pad(case: Case) -> Fraction:
    """Wood beside the hole for the liner, inside the case [mm]."""
    part = next(part for part in case.parts if part.role == "bottom")
    cut = next(f for f in part.features if isinstance(f, Cut) and f.kind == "cutout")
    wide = Fraction(0) if cut.start is None or cut.end is None else cut.end.value - cut.start.value
    sides = [p.finished.thickness.value for p in case.parts if p.role == "side"]
    return (case.width.value - sum(sides) - wide) / 2


def _views(room: Room, case: Case) -> list[View]:
    unit = room.spec.unit
    if case.is_plinth:
        return [View(plinth_scene(case, unit), "From above, front below")]
    if case.spec.kind == "island":
        return [View(island_scene(room, island_of(room, case)), "From above, front below")]
    if case.spec.panel is not None:
        return [View(closed_scene(case, unit), "Front, in its opening")]
    if case.mouth is not None:
        return [
            View(
                plan_of_corner(case, unit),
                "From above" if case.spec.sink else "From above, cut over the bottom",
            ),
            View(mouth_scene(case, unit), "The mouth, square to the door"),
            View(open_mouth_scene(case, unit), "Doors off" if case.fronts[1:] else "Door off"),
        ]
    section = View(section_scene(case, unit), "Section, from the right")
    if not case.fronts:
        return [View(open_scene(case, unit), "Front"), section]
    return [
        View(closed_scene(case, unit), "Front"),
        View(open_scene(case, unit), "Fronts and drawers off" if case.drawers else "Doors off"),
        section,
    ]


def _summary(room: Room, case: Case) -> Rich:
    spec, unit = case.spec, room.spec.unit
    if spec.panel is not None:
        return panel_summary(room, case)
    if spec.kind == "island":
        return island_summary(room, case)
    words: list[Inline] = [
        f"{_KINDS[spec.kind]}, outside ",
        *sizes(case.width, case.height, case.depth, unit=unit, strong=True),
    ]
    if case.is_plinth:
        words.append(" (length × height × depth).")
    else:
        doors = ", doors apart" if case.fronts else ""
        words.append(
            f" (width × height × depth{doors}). Joints: {_joints(case)}; back: {spec.back}; "
            f"edges: {spec.edge}."
        )
    words += (*_corner_words(room, case), *_register_words(room, case))
    words += _face_words(case, unit)
    words += _standing_words(room, case)
    words.append(case_weighs(room, case))
    if spec.lid is not None:
        words += _lid_words(room, case, unit)
    if spec.finished:
        kind = {"flush": "flush with the doors"}.get(spec.end, spec.end)
        words.append(f" Finished end: {' and '.join(spec.finished)}, {kind}.")
        if case.frame is None and spec.dressed:
            words += [" With that it is ", Strong(measure_of(case.overall_width, unit)), " wide."]
    words += [" ", Link("Part cards", f"parts:{case.key}"), ", page ",
              PageNumber(f"parts:{case.key}"), "."]  # fmt: skip
    return tuple(words)


def _lid_words(room: Room, case: Case, unit: Unit) -> list[Inline]:
    """How high a seat stands without its cushion."""
    if case.spec.shares_lid:
        return [" Window seat under one lid with its neighbours: see the trims of its run."]
    lid = next(part for part in case.parts if part.role == "lid")
    top = case.height.value + lid.finished.thickness.value
    high = Strong(Measure(top, unit, f"{lid.path}.top"))
    words: list[Inline] = [
        f" Window seat: its lid, {case.spec.lid}, is ", high, " above the floor, bare."
    ]  # fmt: skip
    air = room.chain.nodes.get(f"{lid.path}.front_air")
    if air is not None:
        words += [" Its front ends ", Strong(measure_of(air, unit)),
                  " below the lid, so that no finger is caught between them."]  # fmt: skip
    return words


def _joints(case: Case) -> str:
    return case.spec.joint if case.mouth is None else "screws through the sides"


_BOWL = (
    " Corner blocks and a rail on edge tie it in place of a top and of backs; try the bowl between"
    " them before the counter goes on."
)


def _corner_words(room: Room, case: Case) -> list[Inline]:
    """What its neighbours must be, and why its door is as wide as it is."""
    unit, nodes = room.spec.unit, room.chain.nodes
    if case.spec.blind is not None:
        return _blind_words(room, case)
    if case.mouth is None:
        return []
    pair = len(case.doors) > 1
    doors = "Its doors are" if pair else "Its door is"
    lies = f"{doors} so narrow that square edges stay behind the planes of the neighbours' sides."
    if case.spec.front is not None and case.spec.front.overlay == "inset":
        between = "hinge strips" if case.frame is None else "stiles"
        lies = f"Its {'doors hang' if pair else 'door hangs'} between the {between}."
    why = (
        f" from side to side. {lies} Try the corner of the walls with a square first: what stands "
        "in it, plaster or a bead of filler, comes off. It is screwed to the studs of both walls, "
        "through the nailers on either."
    )
    beside: list[Inline] = [" deep, as its return sides are; its face is "]
    face = "mouth.face"
    if case.frame is not None:
        beside = [
            " deep over their frames, its return sides ",
            Strong(measure_of(case.mouth.side, unit)),
            "; glue its bevels to the stiles beside it, and pack what is free between the sides ",
            "for the joining screws; its face is ",
        ]
        face = "frame.face_width"
    return [
        " Diagonal corner: its neighbours are ",
        Strong(measure_of(case.mouth.beside, unit)),
        *beside,
        Strong(measure_of(nodes[f"{case.key}.{face}"], unit)),
        why,
        _BOWL if case.spec.sink else "",
    ]


def _register_words(room: Room, case: Case) -> list[Inline]:
    """What goes through its toe board, and whose work that is."""
    if case.spec.register is None:
        return []
    unit, nodes = room.spec.unit, room.chain.nodes
    wide, high = (nodes[f"{case.key}.register_{name}"] for name in ("width", "height"))
    words = (
        " (width × height), by the register's sheet: the duct is brought to it by its own trade, "
        "and nothing covers it."
    )
    return [" Its toe board is open for a register, ",
            *sizes(wide, high, unit=unit, strong=True), words]  # fmt: skip


def _blind_words(room: Room, case: Case) -> list[Inline]:
    """How far a blind corner base stands off the corner wall, and where its door begins."""
    unit, nodes = room.spec.unit, room.chain.nodes
    off = nodes.get(f"{case.key}.blind_pull_off") or nodes["style.blind_pull_off"]
    front = case.spec.front
    over = case.spec.framed and front is not None and front.overlay != "inset"
    begins = "door" if over else "mouth"
    return [
        f" Blind at its {case.spec.blind}: it stands ", Strong(measure_of(off, unit)),
        f" off the corner wall, where nothing is seen or scribed, and its {begins} begins ",
        Strong(measure_of(nodes[f"{case.key}.first_edge"], unit)), " out of the corner.",
    ]  # fmt: skip


def _face_words(case: Case, unit: Unit) -> list[Inline]:
    """How large a face frame, or face strips, make a case."""
    if case.frame is None or case.mouth is not None:
        return []
    wide = [Strong(measure_of(case.overall_width, unit)), " wide and "]
    return [
        f" Its {case.frame.title} make{'s' if case.spec.framed or case.spec.hood else ''} it ",
        *(wide if case.spec.framed else ()), Strong(measure_of(case.face_plane, unit)), " deep.",
    ]  # fmt: skip
