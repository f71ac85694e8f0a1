"""A sheet or board as it is cut: passes in order, parts by their mark, offcuts to keep."""

from __future__ import annotations

from collections.abc import Callable, Container, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import product

from casewright.breakdown import Piece, StockPlan
from casewright.cutting.solution import Leaf, Rect, SheetTree, leaves
from casewright.cutting.steps import Step
from casewright.dims import Content, Measure, measure_of
from casewright.dims.units import Unit
from casewright.drawing.choice import Choice
from casewright.drawing.dimension import Dimensions, Span
from casewright.drawing.marks import Tag
from casewright.drawing.notes import Balloon, Leader, Text
from casewright.drawing.pens import CUT, FINE, THIN, VISIBLE, Ink
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element, line, rectangle
from casewright.drawing.symbols import GrainArrow, Sign

__all__ = ["cut_scene", "sheet_key", "sheet_scene"]

_Place = tuple[Fraction, Fraction]
_Box = tuple[Fraction, Fraction, Fraction, Fraction]

_ROOMY_MM = 150
_SHORT_CUT = 16  # a cut shorter than this part of its sheet is a short one [-]
_TIGHT_MM = 45
_SIZES = (2.7, 2.3, 2.0)  # lettering of a piece's size, the largest that lies clear [mm on paper]
_BY = tuple(Fraction(n, 8) for n in (4, 5, 3, 6))  # of a large piece, along it
_BESIDE, _BEFORE = (2.2, 1.9), tuple(Fraction(n, 16) for n in (6, 5, 8, 4))  # of a strip
_SHORT = {"test piece": "test", "spare": "spare", "strip blank": "blank", "lip": "lip"}
_SHARES = tuple(Fraction(n, 16) for n in (8, 6, 10, 4, 12, 3, 13, 2, 14))
_REACHES = tuple((u * far, v * far) for far in (4.0, 6.0, 9.0, 12.0, 16.0)
                 for u, v in ((0.7, 0.7), (-0.7, 0.7), (0.7, -0.7), (-0.7, -0.7),
                              (0.2, 1.0), (0.2, -1.0), (-0.2, 1.0), (-0.2, -1.0),
                              (1.0, 0.0), (-1.0, 0.0)))  # fmt: skip
_SET = 3.4  # figures of what is set [mm on paper]
_NOT_TRUE = "drawn wider than it is"
_LONG_ON_PAPER = 130  # about how long a board is drawn [mm on paper]
_NARROWEST = Fraction(9, 2)  # what a narrow piece takes across, to be lettered [mm on paper]
_WIDEST = 75  # what a board is at most stretched to across [mm on paper]


def _waits_for_nothing(_: str) -> str:
    return ""


def sheet_scene(
    plan: StockPlan,
    tree: SheetTree,
    unit: Unit,
    *,
    grain: bool,
    waits: Callable[[str], str] = _waits_for_nothing,
) -> Scene:
    """One sheet with its parts and the saw's passes, numbered in the order of work.

    Boards are drawn wider than they are, so that their strips can be lettered; their width then
    stands underlined, as what is not to scale does (ISO 129).

    Parameters
    ----------
    waits
        What a piece waits for in very few words, by its id; empty for most.
    """
    wide = _Wide(plan, _stretch(plan, tree))
    whole = wide.box(tree.root.rect)
    elements: list[Element] = [
        rectangle((whole[0], whole[1]), (whole[2], whole[3]), VISIBLE, fill=Ink.SHADE)
    ]
    steps = plan.order.on_sheet(tree.sheet)
    names = {leaf.rect: leaf.name for step in steps for leaf in step.leaves}
    lettering: list[Element] = []
    for leaf in leaves(tree.root):
        drawn, words = _leaf(wide, leaf, names.get(leaf.rect, ""), unit, waits)
        elements.extend(drawn)
        lettering.extend(words)
    elements.extend(_triangles(wide, tree))
    bound: list[Element] = []  # rings of short cuts have the least choice of place
    for step in steps:
        cut, ring = _pass(wide, step, is_at_hand=False)
        elements.append(cut)
        box = wide.box(step.piece.rect)
        short = (box[2] - box[0] if step.direction == "rip" else box[3] - box[1]) < (
            whole[2] - whole[0]
        ) / _SHORT_CUT
        (bound if short else lettering).append(ring)
    elements.append(Sign("datum", (whole[2] / 2, whole[1]), toward_deg=270, size_mm=3.0))
    elements.append(Sign("datum", (whole[0], whole[3] / 2), toward_deg=180, size_mm=3.0))
    if grain:
        elements.append(GrainArrow((whole[2] / 2, whole[3]), 16.0, shift_mm=(0.0, 3.0)))
    elements.extend(_size(wide, tree, whole, unit))
    return Scene((*elements, *bound, *lettering), f"{plan.stock} {tree.sheet + 1}")


def cut_scene(
    plan: StockPlan,
    tree: SheetTree,
    at_hand: Container[int],
    unit: Unit,
    *,
    waits: Callable[[str], str] = _waits_for_nothing,
) -> Scene:
    """The pieces of a sheet that are cut now, as they lie on it, with no other cut's number.

    A part too small for its mark bears none: the cut that gives it has a picture of its own.

    A cut that is made alone has its size from the edge that is measured from.

    Parameters
    ----------
    at_hand
        Numbers of the cuts that are made now: heavy, in the accent that says look here.
    waits
        As for `sheet_scene`.
    """
    wide = _Wide(plan, _stretch(plan, tree))
    steps = plan.order.on_sheet(tree.sheet)
    own = [step for step in steps if step.number in at_hand]
    names = {leaf.rect: leaf.name for step in steps for leaf in step.leaves}
    elements: list[Element] = []
    lettering: list[Element] = []
    for step in own:
        box = wide.box(step.piece.rect)
        elements.append(rectangle(box[:2], box[2:], VISIBLE, fill=Ink.SHADE))
    is_roomy = plan.kind == "sheets"  # of a board every piece is small
    for leaf in leaves(tree.root):
        if any(_lies_in(leaf.rect, step.piece.rect) for step in own):
            drawn, words = _leaf(wide, leaf, names.get(leaf.rect, ""), unit, waits, bare=is_roomy)
            elements.extend(drawn)
            lettering.extend(words)
    rings: list[Element] = []
    for step in own:
        cut, ring = _pass(wide, step, is_at_hand=True)
        elements.append(cut)
        rings.append(ring)
        elements.extend(_measured_from(wide, step))
    if len(own) == 1:
        elements.extend(_set(wide, own[0], unit))
    return Scene((*elements, *rings, *lettering), f"{plan.stock} {tree.sheet + 1}, at hand")


def sheet_key(plan: StockPlan, tree: SheetTree, at_hand: Container[int]) -> Scene:
    """A sheet without a word: where on it the pieces lie that are cut now."""
    wide = _Wide(plan, _stretch(plan, tree))
    whole = wide.box(tree.root.rect)
    elements: list[Element] = []
    for leaf in leaves(tree.root):
        if leaf.use not in ("waste", "offcut"):
            box = wide.box(leaf.rect)
            elements.append(rectangle(box[:2], box[2:], THIN))
    for step in plan.order.on_sheet(tree.sheet):
        if step.number in at_hand:
            box = wide.box(step.piece.rect)
            elements.append(rectangle(box[:2], box[2:], CUT, fill=Ink.LOOK))
    elements.append(rectangle(whole[:2], whole[2:], VISIBLE))
    return Scene(tuple(elements), f"{plan.stock} {tree.sheet + 1}, whole")


def _lies_in(rect: Rect, whole: Rect) -> bool:
    across = whole.y <= rect.y and rect.y1 <= whole.y1
    return across and whole.x <= rect.x and rect.x1 <= whole.x1


def _measured_from(wide: _Wide, step: Step) -> Iterator[Element]:
    """The edge that rides the fence or meets the stop: heavy, with the sign of a datum."""
    x0, y0, x1, y1 = wide.box(step.piece.rect)
    ends, middle, toward = {
        "bottom": (((x0, y0), (x1, y0)), ((x0 + x1) / 2, y0), 270),
        "top": (((x0, y1), (x1, y1)), ((x0 + x1) / 2, y1), 90),
        "left": (((x0, y0), (x0, y1)), (x0, (y0 + y1) / 2), 180),
        "right": (((x1, y0), (x1, y1)), (x1, (y0 + y1) / 2), 0),
    }[step.datum]
    yield line(*ends, CUT)
    yield Sign("datum", middle, toward_deg=toward, size_mm=3.4)


def _set(wide: _Wide, step: Step, unit: Unit) -> Iterator[Element]:
    """What is set, and the length and width of the piece that is cut."""
    x0, y0, x1, y1 = wide.box(step.piece.rect)
    setting = wide.plan.numbers.settings[step.card]
    at = wide.plan.length(step.setting)
    true = wide.stretch == 1
    sizes = wide.plan.numbers.sizes[step.piece.name]
    long, across = (measure_of(dim, unit) for dim in sizes)
    if step.direction == "rip":
        far = at * wide.stretch
        ends = (y0, y0 + far) if step.datum == "bottom" else (y1 - far, y1)
        yield Dimensions("left", x0, (Span(*ends, measure_of(setting, unit), emphasis=True,
                                           to_scale=true),), height=_SET)  # fmt: skip
    else:
        ends = (x0, x0 + at) if step.datum == "left" else (x1 - at, x1)
        set_to = Span(*ends, measure_of(setting, unit), emphasis=True)
        yield Dimensions("above", y1, (set_to,), height=_SET)
    yield Dimensions("below", y0, (Span(x0, x1, long),), offset_mm=5.0)
    yield Dimensions("right", x1, (Span(y0, y1, across, to_scale=true),), offset_mm=5.0)


@dataclass(frozen=True, slots=True)
class _Wide:
    """A plan whose sheet is drawn so many times as wide as it is."""

    plan: StockPlan
    stretch: Fraction

    def box(self, rect: Rect) -> _Box:
        """Left, lower, right and upper side in the picture [mm]."""
        x, y = self.plan.length(rect.x), self.plan.length(rect.y) * self.stretch
        return x, y, self.plan.length(rect.x1), self.plan.length(rect.y1) * self.stretch


def _triangles(wide: _Wide, tree: SheetTree) -> Iterator[Element]:
    """The triangle across each match: it tells its pieces' order, and where their tops are."""
    on = {leaf.part: leaf.rect for leaf in leaves(tree.root) if leaf.use == "part"}
    for match in wide.plan.problem.matches:
        boxes = [wide.box(on[part]) for part in match.parts if part in on]
        if boxes:
            lows, highs = [box[:2] for box in boxes], [box[2:] for box in boxes]
            x0, y0 = (min(side) for side in zip(*lows, strict=True))
            x1, y1 = (max(side) for side in zip(*highs, strict=True))
            inset = min(x1 - x0, y1 - y0) / 12
            low, high = (x0 + inset, y0 + inset), (x0 + inset, y1 - inset)
            tip = (x0 + inset + (x1 - x0) / 7, (y0 + y1) / 2)  # short: there is lettering
            yield from (line(low, high, THIN), line(low, tip, THIN), line(high, tip, THIN))


def _stretch(plan: StockPlan, tree: SheetTree) -> Fraction:
    """How many times as wide as they are boards and strips are drawn; sheets are true."""
    if plan.kind == "sheets":
        return Fraction(1)
    rect = tree.root.rect
    paper = plan.length(rect.x1 - rect.x) / _LONG_ON_PAPER  # model to paper
    across = [plan.length(leaf.rect.y1 - leaf.rect.y) for leaf in leaves(tree.root)
              if leaf.use not in ("waste", "offcut")]  # fmt: skip
    whole = plan.length(rect.y1 - rect.y)
    wanted = max((_NARROWEST * paper / each for each in across if each), default=Fraction(1))
    return max(Fraction(1), min(wanted, _WIDEST * paper / whole))


def _size(wide: _Wide, tree: SheetTree, whole: _Box, unit: Unit) -> Iterator[Element]:
    sizes = wide.plan.numbers.sizes[f"{tree.sheet + 1}"]
    long, across = (measure_of(dim, unit) for dim in sizes)
    yield Dimensions("below", whole[1], (Span(whole[0], whole[2], long),), offset_mm=5.0)
    true = wide.stretch == 1
    if not true:
        at = (whole[2], whole[3])
        yield Text(at, _NOT_TRUE, 2.0, anchor="end", shift_mm=(0.0, 2.6), ink=Ink.SOFT)
    yield Dimensions("right", whole[2], (Span(whole[1], whole[3], across, to_scale=true),))


def _leaf(
    wide: _Wide, leaf: Leaf, name: str, unit: Unit, waits: Callable[[str], str], *,
    bare: bool = False,
) -> tuple[list[Element], list[Element]]:  # fmt: skip
    """A leaf of the plan, and its lettering; bare: none where it does not lie clear on it."""
    box = wide.box(leaf.rect)
    low, high = (box[0], box[1]), (box[2], box[3])
    if leaf.use == "waste":
        return [], []
    if leaf.use == "offcut":
        drawn = rectangle(low, high, FINE, fill=Ink.TINT)
        size = [measure_of(dim, unit) for dim in wide.plan.numbers.sizes[name]]
        return [drawn], [Choice(_keep(box, name, (size[0], " × ", size[1])))]
    piece = wide.plan.pieces[leaf.part]
    tag = Tag(path=piece.id, title=piece.title, target=piece.id if piece.kind == "part" else "")
    drawn = rectangle(low, high, THIN, fill=Ink.PAPER, tag=tag)
    words = waits(piece.id)
    label = _label(piece, box, unit, words)
    if bare and not words:
        label = (each for each in (*label, ()) if not any(isinstance(e, Leader) for e in each))
    return [drawn], [Choice(label)]


def _keep(box: _Box, name: str, size: tuple[str | Measure, ...]) -> Iterator[Sequence[Element]]:
    """The words on an offcut where they lie clear, without what is marked on it, else none."""
    x0, y0, x1, y1 = box
    at = ((x0 + x1) / 2, (y0 + y1) / 2)
    for words in ((f"keep {name}: ", *size), ("keep ", *size)):
        for height in (2.6, 2.2, 1.8):
            for turned in (0.0, 90.0):
                yield (Text(at, words, height, rotation_deg=turned, ink=Ink.SOFT),)
    yield ()


def _label(piece: Piece, box: _Box, unit: Unit, waits: str) -> Iterator[Sequence[Element]]:
    """Places of the mark of a piece: with its size, alone, at last beside it with a line to it.

    What it waits for is told with it wherever it stands.
    """
    x0, y0, x1, y1 = box
    long, wide = x1 - x0, y1 - y0
    turned = 90.0 if wide > long * Fraction(3, 2) else 0.0
    middle = ((x0 + x1) / 2, (y0 + y1) / 2)
    name = piece.mark or _SHORT.get(piece.kind, "")
    size = (measure_of(piece.long, unit), " × ", measure_of(piece.wide, unit))
    words: Content = (f"{waits}: ", *size) if waits else size
    if min(long, wide) > _ROOMY_MM and max(long, wide) > 2 * _ROOMY_MM:
        for share, height in product(_BY, _SIZES):
            at = (x0 + long * share, middle[1])
            at = (middle[0], y0 + wide * share) if turned else at
            yield _over_and_under(at, (name, words), height, turned)
    if piece.mark and max(long, wide) > 2 * _ROOMY_MM:
        yield from _beside(box, (name, words), turned)
    yield from _marks(f"{name} {waits}".rstrip(), box, turned)


def _over_and_under(
    middle: _Place, said: tuple[str, Content], size: float, turned: float
) -> Sequence[Element]:
    """The mark over the size, which is lettered so high [mm on paper]."""
    mark, up, down = 1.7 * size, 1.15 * size, 1.3 * size
    over, under = ((0.0, up), (0.0, -down)) if not turned else ((-up, 0.0), (down, 0.0))
    return (
        Text(middle, said[0], mark, weight=600, rotation_deg=turned, shift_mm=over),
        Text(middle, said[1], size, rotation_deg=turned, shift_mm=under),
    )


def _beside(box: _Box, said: tuple[str, Content], turned: float) -> Iterator[Sequence[Element]]:
    """Mark and size on one line, as on a strip."""
    x0, y0, x1, y1 = box
    for size, share in product(_BESIDE, _BEFORE):
        middle = (x0 + (x1 - x0) * share, (y0 + y1) / 2)
        if turned:
            middle = ((x0 + x1) / 2, y0 + (y1 - y0) * share)
        left, right = -0.7 * size, 0.7 * size
        across, along = ((0.0, left), (0.0, right)) if turned else ((left, 0.0), (right, 0.0))
        yield (
            Text(middle, said[0], size, weight=600, anchor="end", rotation_deg=turned,
                 shift_mm=across),
            Text(middle, said[1], size, anchor="start", rotation_deg=turned, shift_mm=along),
        )  # fmt: skip


def _marks(name: str, box: _Box, turned: float) -> Iterator[Sequence[Element]]:
    x0, y0, x1, y1 = box
    middle = ((x0 + x1) / 2, (y0 + y1) / 2)
    for height in (2.4, 2.0, 1.7):
        for share in _SHARES:
            along = (x0 + (x1 - x0) * share, middle[1])
            at = (middle[0], y0 + (y1 - y0) * share) if turned else along
            yield (Text(at, name, height, weight=600, rotation_deg=turned),)
    for reach in _REACHES:
        yield (Leader(middle, reach, (name,), height=2.0),)


def _pass(wide: _Wide, step: Step, *, is_at_hand: bool) -> tuple[Element, Element]:
    """The line a pass runs on, and its number where the saw enters or as near as is clear."""
    x0, y0, x1, y1 = wide.box(step.piece.rect)
    setting = wide.plan.length(step.setting)
    pen, ink = CUT if step.method == "straightedge" else VISIBLE, Ink.INK
    if is_at_hand:
        pen, ink = CUT, Ink.LOOK
    rips = step.direction == "rip"
    if rips:
        across = setting * wide.stretch
        y = y0 + across if step.datum == "bottom" else y1 - across
        start, end = (x0, y), (x1, y)
        first = min((x1 - x0) / 12, Fraction(70))
    else:
        x = x0 + setting if step.datum == "left" else x1 - setting
        start, end = (x, y0), (x, y1)
        first = min((y1 - y0) / 5, Fraction(70) * wide.stretch)
    ring = Choice(_rings(str(step.number), start, end, first), hides_lines=True)
    return line(start, end, pen, ink=ink), ring


def _rings(
    number: str, start: _Place, end: _Place, first: Fraction
) -> Iterator[Sequence[Element]]:
    """A ring on a line, as near its start as is clear; on a short line off it."""
    (x0, y0), (x1, y1) = start, end
    whole = max(x1 - x0, y1 - y0)
    shares = [first / whole if whole else Fraction(0), *(Fraction(n, 24) for n in range(1, 24))]
    places = [(x0 + (x1 - x0) * share, y0 + (y1 - y0) * share) for share in shares]
    for at in places:
        yield (Balloon(at, number, height=1.6),)
    for reach in _REACHES:
        for at in places[::3]:
            yield (Balloon(at, number, reach, height=1.6),)
