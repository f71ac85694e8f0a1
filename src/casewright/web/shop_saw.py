"""The saw: a card for every setting, with what is cut at it and from what."""

from __future__ import annotations

from collections.abc import Container, Iterator, Sequence
from dataclasses import replace

from casewright.breakdown import (
    CAUTION_WORDS,
    EDGE_WORDS,
    FACE_WORDS,
    METHOD_WORDS,
    InHand,
    Piece,
    SawCard,
    SawStep,
    StockPlan,
)
from casewright.breakdown import saw_cards as cards_of
from casewright.cutting.methods import Method
from casewright.dims import measure_of
from casewright.dims.count_text import counted
from casewright.dims.units import Unit
from casewright.outputs.inlines import Strong
from casewright.packet.hold_marks import HoldMarks
from casewright.packet.words import sizes
from casewright.room.model import Room
from casewright.web.hand_plan import HandPlan
from casewright.web.shop_lines import caution_line, line_of, sentence, size_text
from casewright.web.shop_notes import cut_note, kept_note, sawn_note
from casewright.web.shop_schema import Line, ShopCard, ShopFigure, ShopRow, ShopTick

__all__ = ["saw_cards"]

_LEADS: dict[Method, str] = {
    "straightedge": "cut line",
    "fence": "fence",
    "carrier": "fence",
    "sled": "stop",
}
_RIDES: dict[Method, str] = {
    "straightedge": "Measured from the {}",
    "fence": "The {} rides the fence",
    "carrier": "The {} rides the fence, the push block carries the piece",
    "sled": "The {} meets the stop",
}
_NOT_AT_THE_TABLE = frozenset(
    CAUTION_WORDS[key]
    for key in ("beyond fence", "wide against fence", "too wide for sled", "long crosscut")
)
"""Cautions that tell why a cut is made along the straightedge instead."""

_KEEP = (
    "Guard, riving knife and push block; nothing pinched between blade and fence; stand out of "
    "the blade's line. Eyes, ears and lungs protected. The saw maker's instructions come first."
)
_GUIDED = (
    "Clamp the straightedge at both ends and let the offcut lie; wait for the blade before "
    "lifting. Eyes, ears and lungs protected. The saw maker's instructions come first."
)


def saw_cards(
    room: Room, hand: HandPlan, holds: HoldMarks, gone: Container[str] = ()
) -> Iterator[ShopCard]:
    """A card for every setting of a plan in hand, stock by stock, in the order of work.

    Parameters
    ----------
    gone
        Parts that were spoiled and are made again by a plan that was made later.
    """
    for plan in hand.breakdown.plans:
        cards = tuple(cards_of(plan))
        for card in cards:
            steps = tuple(step for step in card.steps if hand.has(plan, step.sheet - 1))
            if steps:
                own = replace(card, steps=steps)
                yield _Setting(room, plan, own, hand, (holds, gone)).card(len(cards))


class _Setting:
    """Tells one setting."""

    def __init__(
        self, room: Room, plan: StockPlan, card: SawCard, hand: HandPlan,
        about: tuple[HoldMarks, Container[str]],
    ) -> None:  # fmt: skip
        self.room, self.plan, self.given = room, plan, card
        self.holds, self.gone = about
        self.name, self.anew = hand.name, ", planned anew" if hand.rest else ""
        self.unit: Unit = room.spec.unit
        self.noun = plan.kind.removesuffix("s")

    def card(self, of: int) -> ShopCard:
        given, plan = self.given, self.plan
        method = given.method
        title = self.room.spec.stock[plan.stock].title
        digits = line_of(measure_of(given.setting, self.unit))
        sheets = sorted({step.sheet for step in given.steps})
        waits = tuple(sheet for sheet in sheets if sheet - 1 in plan.waiting_sheets)
        return ShopCard(
            id=f"saw.{self.name}.{plan.path}.{given.number}",
            station="saw",
            over=f"{title}{self.anew}: setting {given.number} of {of}",
            title=f"{counted(len(given.steps), 'cut')} {self._sources()}",
            lead=_LEADS[method],
            big=digits,
            stops=tuple(self._stops(waits)),
            lines=(
                *self._rides(),
                (sentence(FACE_WORDS[method]),),
                (sentence(METHOD_WORDS[method]),),
            ),
            first=_first_piece(digits, len(given.steps)),
            warns=tuple(self._warns()),
            figures=tuple(map(self._figure, sheets)),
            rows=tuple(map(self._row, given.steps)),
            parts=tuple(self._parts()),
        )

    def _figure(self, sheet: int) -> ShopFigure:
        name = f"{self.name}.{self.plan.path}.{self.given.number}.{sheet}"
        own = [step for step in self.given.steps if step.sheet == sheet]
        is_whole = any("." not in step.takes.name for step in own)
        what = f"{self.noun} {sheet}" if is_whole else f"pieces of {self.noun} {sheet}"
        return ShopFigure(
            name=f"cut.{name}", says=f"{what} with the cuts of this setting",
            key="" if is_whole or self.plan.kind != "sheets" else f"sheet.{name}",
        )  # fmt: skip

    def _parts(self) -> Iterator[str]:
        for step in self.given.steps:
            own = (piece.id for piece, _ in _given_parts(step))
            yield from (path for path in own if path not in self.gone)

    def _sources(self) -> str:
        """'from sheets 1, 2 and 3', 'from rips 1.3, 1.4'."""
        names = list(dict.fromkeys(step.takes.name for step in self.given.steps))
        whole = all("." not in name for name in names)
        noun = self.noun if whole else "piece"
        listed = ", ".join(names)
        return f"from {noun}{'s' if len(names) != 1 else ''} {listed}"

    def _rides(self) -> Iterator[Line]:
        """Which edge is measured from; where it differs from cut to cut, each cut says so."""
        edges = {_edge(step) for step in self.given.steps}
        if len(edges) == 1:
            yield (_RIDES[self.given.method].format(edges.pop()),)

    def _stops(self, waits: Sequence[int]) -> Iterator[Line]:
        if waits:
            numbers = ", ".join(map(str, waits))
            noun, it = (self.noun, "it") if len(waits) == 1 else (f"{self.noun}s", "them")
            yield (f"Parts just fit on {noun} {numbers}: measure {it} and the kerf first.",)
        begun = [each.id for step in self.given.steps for each in (*step.matched, *step.fixes)]
        if points := self.holds.points(*self._parts(), *begun):
            numbers = ", ".join(str(point.number) for point in points)
            yield (f"Some of it waits at hold point {numbers}: read that first.",)

    def _warns(self) -> Iterator[Line]:
        found = dict.fromkeys(words for step in self.given.steps for words in step.cautions)
        by_hand = self.given.method == "straightedge"
        why = [words for words in found if by_hand and words in _NOT_AT_THE_TABLE]
        yield from (caution_line(words) for words in found if words not in why)
        if why:
            said = "; ".join(f"{words[:1].lower()}{words[1:].rstrip('.')}" for words in why)
            yield (f"Not at the table saw: {said}.",)
        yield caution_line(_GUIDED if by_hand else _KEEP)

    def _row(self, step: SawStep) -> ShopRow:
        alike = len({_edge(each) for each in self.given.steps}) == 1
        what = line_of(
            f"{step.direction.capitalize()} {self._called(step.takes)}, ",
            sizes(step.takes.length, step.takes.width, unit=self.unit),
        )
        rides = () if alike else ((_RIDES[step.method].format(_edge(step)),),)
        lines = tuple(self._given(each) for each in step.gives)
        return ShopRow(
            label=str(step.number),
            what=what,
            lines=(*rides, *lines),
            ticks=tuple(self._ticks(step)),
        )

    def _called(self, piece: InHand) -> str:
        return f"piece {piece.name}" if "." in piece.name else f"{self.noun} {piece.name}"

    def _given(self, given: InHand) -> Line:
        size = sizes(given.length, given.width, unit=self.unit)
        if given.piece is not None:
            called = f"{given.piece.mark} {given.piece.title}".strip()
            if given.piece.id in self.gone:
                return line_of(
                    "gave ", Strong(called), ", spoiled: it is made again, planned anew"
                )
            return line_of("gives ", Strong(called), ", ", size)
        if given.use == "offcut":
            return line_of("keep ", given.name, ", ", size)
        if given.use == "waste":
            return ("the rest is waste",)
        return line_of("gives piece ", Strong(given.name), ", ", size)

    def _ticks(self, step: SawStep) -> Iterator[ShopTick]:
        """The cut by the parts that it gives; one that gives none by a note."""
        given = tuple(_given_parts(step))
        for piece, each in given:
            if piece.id in self.gone:
                continue
            size = size_text(line_of(sizes(each.length, each.width, unit=self.unit)))
            yield ShopTick(
                key=f"cut:{piece.id}", kind="cut", words=(piece.id,),
                label=line_of(Strong(piece.mark), f" {piece.title} cut"), parts=(piece.id,),
                shown="" if piece.rough else size, note=cut_note(self.name),
            )  # fmt: skip
        if not given:
            words = sawn_note(step.number, self.plan.path, self.name)
            yield ShopTick(key=words, kind="note", words=(words,), label=("Sawn",))
        for each in step.gives:
            if each.use == "offcut":
                size = size_text(line_of(sizes(each.length, each.width, unit=self.unit)))
                size = size.replace("\u00a0", " ").replace("~", "")
                note = kept_note(each.name, self.plan.path, self.name)
                yield ShopTick(
                    key=note, kind="offcut", words=(self.plan.stock, size), note=note,
                    label=(f"Keep offcut {each.name}",),
                )  # fmt: skip


def _first_piece(digits: Line, cuts: int) -> Line:
    """What is measured before anything else is cut by it."""
    if cuts == 1:
        return ("Measure it once it is cut: ", *digits)
    return ("First piece: measure ", *digits, " before the rest is cut")


def _given_parts(step: SawStep) -> Iterator[tuple[Piece, InHand]]:
    """Parts of the model that are done with a cut."""
    for each in step.gives:
        if each.piece is not None and each.piece.kind == "part":
            yield each.piece, each


def _edge(step: SawStep) -> str:
    return f"{'factory' if step.is_factory else 'sawn'} {EDGE_WORDS[step.datum]}"
