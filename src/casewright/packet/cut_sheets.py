"""Cut sheets: each sheet with its passes, then every setting with its cuts, in order."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.breakdown import Breakdown, SawCard, StockPlan, saw_cards
from casewright.casework.cautions import CAUTIONS
from casewright.cutting.solution import SheetTree
from casewright.dims import joined, measure_of
from casewright.drawing import Plot, largest
from casewright.drawing.sheet_layout import sheet_scene
from casewright.outputs.blocks import (
    Beside,
    Block,
    Bullets,
    Caution,
    Figure,
    Heading,
    Keep,
    Paragraph,
    Table,
)
from casewright.outputs.document import Paper, Section
from casewright.packet.cut_places import SOLID, plan_anchor, sheet_anchor, sheet_name
from casewright.packet.cut_words import how_it_is_cut, plan_notes, plan_summary
from casewright.packet.hold_marks import HoldMarks
from casewright.packet.saw_rows import saw_columns, saw_rows
from casewright.packet.strip_table import strip_table
from casewright.room.model import Room

__all__ = ["cut_sheet_sections"]

_SHEET_TALL, _BOARD_TALL = 95.0, 115.0  # room for a drawing [mm]
_SHARES = (1.0, 9.0)  # of the name beside a board, and of its drawing
_SAW_CAUTION = (
    "Guard, splitter or riving knife and push block at the table saw; nothing pinched between "
    "blade and fence; stand out of the blade's line. Clamp the straightedge at both ends and let "
    "the offcut lie. Eyes, ears and lungs protected. The saw maker's instructions come first."
)
_READING = (
    "Numbers in rings are the cuts in the order of work; until it has its mark, a piece goes by "
    "the number of its sheet or board and one of its own. Measure the first piece of each "
    "setting, write that on the line, and cut the rest when it is right. Label every part as it "
    "comes off the saw; write number, stock, size and grain on what is kept."
)


def cut_sheet_sections(
    room: Room, breakdown: Breakdown, paper: Paper, holds: HoldMarks | None = None
) -> tuple[Section, ...]:
    """One section for each sheet stock, one for all boards and the strips out of them.

    Parameters
    ----------
    holds
        What pieces wait for that go by a reading; None: none does.
    """
    holds = holds or HoldMarks(room)
    plans = [plan for plan in breakdown.plans if plan.solution.tree]
    sections = [_sheets(room, plan, paper, holds) for plan in plans if plan.kind == "sheets"]
    solid = [plan for kind in ("boards", "strips") for plan in plans if plan.kind == kind]
    if solid:
        blocks: list[Block] = list(_start([card for plan in solid for card in saw_cards(plan)]))
        for plan in solid:
            heading = Heading(_title(room, plan), 2, plan_anchor(plan))
            blocks += [Keep((heading, *_about(plan))), *_cuts(room, plan, paper, holds)]
        sections.append(Section("Cutting: boards and strips", tuple(blocks), SOLID))
    return tuple(sections)


def _sheets(room: Room, plan: StockPlan, paper: Paper, holds: HoldMarks) -> Section:
    blocks = (*_about(plan), *_cuts(room, plan, paper, holds))
    title = f"Cutting: {room.spec.stock[plan.stock].title}"
    return Section(title, blocks, plan_anchor(plan))


def _title(room: Room, plan: StockPlan) -> str:
    """'1x6 board, planed'; of strips their width too, as there may be several."""
    title = room.spec.stock[plan.stock].title
    if plan.kind != "strips":
        return title
    wide = measure_of(plan.numbers.sizes["1"][1], room.spec.unit)
    return joined("", (f"{title}, ", wide, " wide"))


def _start(cards: Sequence[SawCard]) -> Iterator[Block]:
    """What holds for every cut that follows."""
    yield Paragraph(_READING)
    yield how_it_is_cut(cards)
    yield Caution(_SAW_CAUTION, "At every saw")


def _about(plan: StockPlan) -> Iterator[Block]:
    yield Paragraph(plan_summary(plan))
    yield from plan_notes(plan)


def _cuts(room: Room, plan: StockPlan, paper: Paper, holds: HoldMarks) -> Iterator[Block]:
    unit = room.spec.unit
    cards = tuple(saw_cards(plan))
    if plan.kind == "strips":
        yield strip_table(plan, unit, holds)
    else:
        yield from (_figure(room, plan, tree, paper, holds) for tree in plan.solution.tree)
    if plan.kind == "sheets":
        first, *others = _start(cards)
        yield Keep((Heading("At the saw, in this order", 2), first))
        yield from others
        yield Caution(CAUTIONS["dust"], "Dust")
    noun = plan.kind.removesuffix("s")
    yield Table(saw_columns(unit), saw_rows(cards, noun, unit, holds), small=True)
    if plan.from_offcuts:
        yield Heading("From what is left over", 3)
        yield Bullets(tuple(piece.title for piece in plan.from_offcuts))


def _figure(room: Room, plan: StockPlan, tree: SheetTree, paper: Paper, holds: HoldMarks) -> Block:
    name = sheet_name(plan, tree).capitalize()
    heading = Heading(name, 3, sheet_anchor(plan, tree))
    words = f"{name}, {room.spec.stock[plan.stock].title}: where it is cut"
    if plan.kind == "sheets":
        drawn = _drawn(room, plan, tree, (paper.text_width_mm, _SHEET_TALL), holds)
        return Keep((heading, Figure(drawn, alternative=words)))
    wide = (paper.text_width_mm - 6.0) * _SHARES[1] / sum(_SHARES)
    drawn = _drawn(room, plan, tree, (wide, _BOARD_TALL), holds)
    return Keep((Beside(((heading,), (Figure(drawn, alternative=words),)), _SHARES),))


def _drawn(
    room: Room, plan: StockPlan, tree: SheetTree, size: tuple[float, float], holds: HoldMarks
) -> Plot:
    grain = bool(getattr(room.spec.stock[plan.stock], "grain", False))
    unit = room.spec.unit
    scene = sheet_scene(plan, tree, unit, grain=grain, waits=holds.words)
    return largest(scene, *size, unit, at_most=Fraction(8))
