"""Cut sheets: each sheet with its passes, then every setting with its cuts, in order."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.breakdown import (
    CAUTION_WORDS,
    METHOD_WORDS,
    Breakdown,
    InHand,
    SawCard,
    SawStep,
    StockPlan,
    saw_cards,
)
from casewright.cutting.solution import SheetTree
from casewright.dims.units import Unit
from casewright.drawing import largest, measure_of
from casewright.drawing.sheet_layout import sheet_scene
from casewright.outputs.blocks import (
    Block,
    Bullets,
    Callout,
    Caution,
    Column,
    Figure,
    Heading,
    Keep,
    Paragraph,
    Row,
    Table,
)
from casewright.outputs.document import Paper, Section
from casewright.outputs.inlines import Blank, Inline, Link, Rich, SignMark, Strong
from casewright.packet.words import sizes, unfold
from casewright.room.model import Room

__all__ = ["cut_sheet_sections", "cutting_anchors"]

_EDGES = {"bottom": "lower edge", "top": "upper edge", "left": "left end", "right": "right end"}
_COLUMNS = (
    Column("Cut", "centre"), Column("What", share=2.6), Column("Datum", share=1.2),
    Column("Gives", share=4.2), Column("Done"),
)  # fmt: skip
_DANGERS = tuple(
    CAUTION_WORDS[key] for key in ("heavy", "narrow rip", "short piece", "beyond straightedge")
)
_SAW_CAUTION = (
    "Guard, splitter or riving knife and push block at the table saw; nothing pinched between "
    "blade and fence; stand out of the blade's line. Clamp the straightedge at both ends and let "
    "the offcut lie. Eyes, ears and lungs protected. The saw maker's instructions come first."
)


def cut_sheet_sections(room: Room, breakdown: Breakdown, paper: Paper) -> tuple[Section, ...]:
    """One section for each stock that is cut."""
    return tuple(
        Section(
            f"Cutting: {room.spec.stock[plan.stock].title}",
            tuple(_blocks(room, plan, paper)),
            _anchor(plan, number),
        )
        for number, plan in enumerate(breakdown.plans)
        if plan.solution.tree
    )


def cutting_anchors(room: Room, breakdown: Breakdown) -> dict[str, str]:
    """Where each stock is cut, with its title."""
    return {
        _anchor(plan, number): room.spec.stock[plan.stock].title
        for number, plan in enumerate(breakdown.plans)
        if plan.solution.tree
    }


def _anchor(plan: StockPlan, number: int) -> str:
    return f"cutting:{plan.stock}:{plan.kind}:{number}"


def _blocks(room: Room, plan: StockPlan, paper: Paper) -> Iterator[Block]:
    unit = room.spec.unit
    yield Paragraph(_summary(plan))
    if plan.milling is not None:
        yield Callout("look", plan.milling.words, "Milled strips")
    if plan.waiting_sheets:
        numbers = ", ".join(str(number + 1) for number in plan.waiting_sheets)
        yield Callout(
            "measure first",
            f"Number {numbers}: the parts just fit. Measure the sheet and the kerf before the "
            "first cut, and plan again if either is off.",
            "Just fits",
        )
    for tree in plan.solution.tree:
        yield _figure(room, plan, tree, paper)
    yield Heading("At the saw, in this order", 2)
    yield Caution(_SAW_CAUTION, "At every saw")
    rows = [row for card in saw_cards(plan) for row in _card_rows(card, unit)]
    yield Table(_COLUMNS, tuple(rows), small=True)
    extra = [f"{p.title}" for p in plan.from_offcuts]
    if extra:
        yield Heading("From what is left over", 2)
        yield Bullets(tuple(extra))


def _summary(plan: StockPlan) -> Rich:
    noun = {"sheets": "sheet", "boards": "board", "strips": "strip"}[plan.kind]
    count = plan.count
    settings = len(plan.order.cards)
    return (
        (
            f"{count} {noun}{'s' if count != 1 else ''} ({plan.verdict}), "
            f"{len(plan.order.steps)} cuts at {settings} setting{'s' if settings != 1 else ''}. "
            "The numbers in rings are the cuts in the order of work. Label every part as it comes "
            "off the saw."
        ),
    )


def _figure(room: Room, plan: StockPlan, tree: SheetTree, paper: Paper) -> Block:
    unit = room.spec.unit
    goods = room.spec.stock[plan.stock]
    noun = {"sheets": "Sheet", "boards": "Board", "strips": "Strip"}[plan.kind]
    scene = sheet_scene(plan, tree, unit, grain=bool(getattr(goods, "grain", False)))
    tall = 95.0 if plan.kind == "sheets" else 45.0
    drawn = largest(scene, paper.text_width_mm, tall, unit, at_most=Fraction(8))
    return Keep(
        (Heading(f"{noun} {tree.sheet + 1}", 3), Figure(drawn, alternative=f"{noun} layout"))
    )


def _card_rows(card: SawCard, unit: Unit) -> Iterator[Row]:
    count = len(card.steps)
    words: list[Inline] = [
        Strong(f"Setting {card.number}:  "),
        Strong(measure_of(card.setting, unit)),
        f"  on the {METHOD_WORDS[card.method]}; {count} cut{'s' if count != 1 else ''}",
    ]
    if card.marks:
        words.append(f", finishes {', '.join(card.marks)}")
    yield Row((tuple(words),))
    for step in card.steps:
        yield _step_row(step, unit)


def _step_row(step: SawStep, unit: Unit) -> Row:
    factory = "factory " if step.is_factory else "sawn "
    gives: list[Inline] = list(unfold(*_given(step, unit)))
    for words in step.cautions:
        if words in _DANGERS:
            gives += ["  ", SignMark("caution"), f" {words}"]
    return Row(
        (
            Strong(str(step.number)),
            (f"{step.direction.capitalize()} {_piece_name(step.takes)}, ",
             *_size(step.takes, unit)),
            f"{factory}{_EDGES[step.datum]}",
            tuple(gives),
            Blank(9.0),
        )
    )  # fmt: skip


def _piece_name(piece: InHand) -> str:
    return f"sheet {piece.name}" if "." not in piece.name else f"piece {piece.name}"


def _size(piece: InHand, unit: Unit) -> tuple[Inline, ...]:
    return sizes(piece.length, piece.width, unit=unit)


def _given(step: SawStep, unit: Unit) -> Iterator[Rich]:
    for number, given in enumerate(step.gives):
        if number:
            yield "; "
        if given.piece is not None:
            name = f"{given.piece.mark} {given.piece.title}".strip()
            target = given.piece.id if given.piece.kind == "part" else ""
            yield (Link(name, target) if target else name, " ", *_size(given, unit))
        elif given.use == "offcut":
            yield (f"{given.name}, keep: ", *_size(given, unit))
        elif given.use == "waste":
            yield "waste"
        else:
            yield (f"{given.name}: ", *_size(given, unit))
