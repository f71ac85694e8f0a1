"""Sizes in a job file that cannot go together: a case too small for its own boards."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import pairwise

from casewright.casework.fronts import end_stock
from casewright.casework.specs import CaseSpec
from casewright.dims import Unit, shop_text
from casewright.job.bays import check_bays, check_boards
from casewright.job.blind_corners import check_blind_width
from casewright.job.case_sizes import CaseSizes, is_near_label
from casewright.job.content import Content
from casewright.job.diagonals import check_diagonal_sizes
from casewright.job.drawer_sizes import check_drawer_boards
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.registers import check_register_sizes
from casewright.job.row_sizes import check_rows
from casewright.job.survey_edges import free_width
from casewright.job.tables import BandTable, BoardTable, SheetTable
from casewright.room.specs import RunSpec
from casewright.room.standing import LEAST_SHARE
from casewright.stock import StockList, hundredths
from casewright.style import Style

__all__ = ["check_proportions", "check_supplies"]

_CLEAR = Fraction(40)
"""Least clear space inside a case in every direction: a hand and a driver [mm]."""

_WIDE = Fraction(150)
"""Least clear width of a case that is worked out at all: a hand and a forearm [mm]."""

_ARM = Fraction(235)
"""Least clear depth of a plinth: a driver reaches its pocket screws from inside [mm]."""

_POCKET, _DRIVER = Fraction(28, 15), Fraction(201)
"""How far a pocket runs in, in thicknesses of its board; driver and bit behind it [mm]."""

_ROWS = Fraction(100)
"""Least clear depth: two rows of pins, and pockets beside a nailer [mm]."""

_BETWEEN = Fraction(20)
"""Least space between the two top stretchers of a base case [mm]."""

_OFF_LABEL = Fraction(30)
"""Sheets are sold up to an inch over their label; farther off it is another sheet [mm]."""


def check_proportions(
    content: Content,
    cases: dict[str, CaseSpec],
    runs: dict[str, RunSpec],
    stock: StockList,
    style: Style,
    reporter: Reporter,
) -> None:
    """Tell every size that leaves no room for what it must hold."""
    for case in cases.values():
        sizes = CaseSizes(case, stock, content, style, reporter)
        _width(sizes)
        _height(sizes)
        _depth(sizes)
        _hinge_side(sizes)
        check_boards(sizes)
        check_bays(sizes)
        check_rows(sizes)
        check_drawer_boards(sizes)
        check_blind_width(sizes)
        check_diagonal_sizes(sizes)
        check_register_sizes(sizes)
    for run in runs.values():
        _share(run, cases, style, reporter, content)
        _side_by_side(run, cases, style, reporter)


def _width(sizes: CaseSizes) -> None:
    if sizes.case.width is None:
        return
    need = 2 * sizes.board + _WIDE + _beside_frame(sizes)
    if sizes.case.width.value < need:
        what = f"two sides of {sizes.text(sizes.board)} leave no room for a hand in this width"
        sizes.tell("width", what, sizes.at_least(need))


def _beside_frame(sizes: CaseSizes) -> Fraction:
    """What a face frame takes of the width [mm]: it stands out beside the box."""
    if not sizes.case.framed:
        return Fraction(0)
    frame = 2 * sizes.value("face_overhang")
    frame += len(sizes.case.scribes) * sizes.value("face_scribe")
    ends = sizes.thickness(end_stock(sizes.case)) * len(sizes.case.dressed)
    return frame + ends


def _height(sizes: CaseSizes) -> None:
    need = sizes.deck + 2 * sizes.board + _CLEAR
    if sizes.case.crown:
        need += sizes.case.crown.value
    if sizes.case.height.value < need:
        what = "bottom and top leave no room in this height"
        sizes.tell("height", what, sizes.at_least(need))


def _depth(sizes: CaseSizes) -> None:
    need = sizes.back + sizes.board + _ROWS
    if sizes.case.has_toe:
        if sizes.case.kind == "base" and sizes.case.diagonal is None:
            need = sizes.back + 2 * sizes.value("stretcher") + _BETWEEN
        toe = sizes.value("toe_setback") + sizes.board
        if sizes.case.toe == "notch":
            need = max(need, sizes.back + _CLEAR + toe)
        elif sizes.case.toe == "plinth":
            arm = max(_ARM, _DRIVER + sizes.board * _POCKET)
            need = max(need, toe + sizes.board + arm)
    if sizes.case.covered:
        need += sizes.thickness(sizes.case.face_stock)
    if sizes.case.depth.value < need:
        boards = (
            "back, stretchers and toe leave" if sizes.case.kind == "base" else "the back leaves"
        )
        what = f"{boards} no room in this depth"
        sizes.tell("depth", what, sizes.at_least(need))


def _hinge_side(sizes: CaseSizes) -> None:
    """A side for the hinges is of no use where the width makes it a pair."""
    key, width = sizes.case.key, sizes.case.width
    if sizes.case.diagonal is not None:
        return  # its one door is narrower than the case by far
    if width is None or width.value <= sizes.value("widest_single_door"):
        return
    table = sizes.content.cases[key]
    for name, front in (("front", table.front), ("upper_front", table.upper_front)):
        if front is not None and front.hinge is not None and front.leaves is None:
            path: KeyPath = ("case", key, name, "hinge")
            what = "a case this wide gets a pair of doors, hinged on both sides"
            sizes.reporter.tell(path, what, "take hinge out, or write leaves = 1")


def _share(
    run: RunSpec,
    cases: dict[str, CaseSpec],
    style: Style,
    reporter: Reporter,
    content: Content,
) -> None:
    """Whether a wall leaves every case without a width of its own a share worth building."""
    members = [cases[key] for key in run.cases if key in cases]
    sharing = [case for case in members if case.width is None]
    wall = content.walls.get(run.on)
    free = min((each.value for each in run.widths), default=None)
    if wall is not None:
        free = free_width(content.runs[run.key], wall)
    if free is None or free <= 0 or not sharing:
        return
    taken = dict(_taken(run, members, style, content))
    left = free - sum(taken.values(), Fraction(0))
    if left / len(sharing) >= LEAST_SHARE:
        return
    names = ", ".join(case.key for case in sharing)
    if left > 0:
        text = shop_text(left / len(sharing), content.unit)
        what = f"the wall leaves {text} for each case without a width: too little"
    else:
        whole = shop_text(free, content.unit, with_unit=True)
        what = f"{_sum(taken, content)}, and the wall has {whole}: nothing is left for {names}"
        if left < 0:
            what += f", {shop_text(-left, content.unit, with_unit=True)} short"
    reporter.tell(
        ("run", run.key, "on" if wall else "wall"),
        what,
        f"take a case out, or narrow those beside {names}",
    )


def _taken(
    run: RunSpec, members: list[CaseSpec], style: Style, content: Content
) -> Iterator[tuple[str, Fraction]]:
    """What of a run has a width already, by name."""
    for case in members:
        if case.width:
            yield case.key, case.width.value
    for key, _ in run.appliances:
        table = content.appliances.get(key)
        if table is not None and table.width:
            yield key, table.width
    walls = [run.left, run.right].count("wall")
    if walls:
        yield "fillers" if walls > 1 else "filler", style["filler"].value * walls


def _sum(taken: Mapping[str, Fraction], content: Content) -> str:
    """'a 30 + b 24 = 54 of the wall'."""
    parts = " + ".join(f"{key} {shop_text(width, content.unit)}" for key, width in taken.items())
    whole = shop_text(sum(taken.values(), Fraction(0)), content.unit, with_unit=True)
    return f"{parts} = {whole}"


def _side_by_side(
    run: RunSpec, cases: dict[str, CaseSpec], style: Style, reporter: Reporter
) -> None:
    """Whether neighbours of a run meet at all: a wall case over a base stands in another run."""
    for number, (key, other) in enumerate(pairwise(run.cases), start=1):
        if key not in cases or other not in cases or key == other:
            continue
        low, high = sorted(_reach(cases[each], style) for each in (key, other))
        if high[0] >= low[1]:
            what = f"one of {key} and {other} hangs above the other: they do not meet"
            want = "put cases that hang and cases that stand below them into runs of their own"
            reporter.tell(("run", run.key, "cases", number), what, want)


def _reach(case: CaseSpec, style: Style) -> tuple[Fraction, Fraction]:
    """Heights above the floor between which a case stands or hangs [mm]."""
    foot = style["wall_bottom"].value if case.is_hung else Fraction(0)
    return foot, foot + case.height.value


def check_supplies(content: Content, reporter: Reporter) -> None:
    """Tell readings far from their label, and lists in the wrong order."""
    for key, goods in content.stock.items():
        if isinstance(goods, BandTable):
            continue
        places: dict[KeyPath, Fraction] = {
            ("stock", key, "measured", number): reading
            for number, reading in enumerate(goods.measured)
        }
        if isinstance(goods, SheetTable):
            places |= {("stock", key, "sheets", n): each for n, each in goods.sheets.items()}
        for place, reading in places.items():
            if not is_near_label(reading, goods.thickness):
                text = shop_text(goods.thickness, content.unit)
                what = f"this reading is far from the label's {text}"
                want = "read it again, or put the right label into thickness"
                reporter.tell(place, what, want)
        if isinstance(goods, SheetTable):
            _sizes_in_hand(key, goods, content.unit, reporter)
        if isinstance(goods, BoardTable):
            _boards(key, goods, content.unit, reporter)
    bores = content.hardware.hinge.bore_distance
    if bores and bores[0] > bores[1]:
        path: KeyPath = ("hardware", "hinge", "bore_distance")
        reporter.tell(path, "the least distance comes first", "swap the two")
    saws = ("table saw", "circular saw")
    if content.shop.tools and not set(saws) & set(content.shop.tools):
        what = "sheets cannot be cut without a saw"
        reporter.tell(("shop", "tools"), what, 'add "table saw" or "circular saw"')


def _boards(key: str, goods: BoardTable, unit: Unit, reporter: Reporter) -> None:
    """Tell prices that are not one for each length, and ends that leave nothing of a board."""
    if goods.prices and len(goods.prices) != len(goods.lengths):
        what = f"{len(goods.prices)} prices stand beside {len(goods.lengths)} lengths"
        reporter.tell(("stock", key, "prices"), what, "give one for each length, in their order")
    if goods.prices and goods.price:
        what = "the boards have one price, and one for each length"
        reporter.tell(("stock", key, "price"), what, "take price or prices out")
    for number, price in enumerate(goods.prices):
        if not hundredths(price):
            want = 'begin with the amount for one board: "6.40, 3 May"'
            reporter.tell(("stock", key, "prices", number), "no price can be read here", want)
    shortest = min(goods.lengths)
    if goods.trim and 2 * goods.trim >= shortest:
        what = f"both ends together are all of a board {shop_text(shortest, unit)} long"
        reporter.tell(("stock", key, "trim"), what, "trim less, or take that length out")


def _sizes_in_hand(key: str, goods: SheetTable, unit: Unit, reporter: Reporter) -> None:
    """Tell readings of a sheet that cannot be of this sheet, or stand there twice."""
    if goods.measured and goods.sheets:
        what = "the sheets are read one by one and all together"
        reporter.tell(("stock", key, "measured"), what, "take measured or sheets out")
    sides = zip(("length", "width"), goods.size, goods.measured_size or (), strict=False)
    for number, (side, label, read) in enumerate(sides):
        for entry, reading in enumerate(read):
            if abs(reading - label) > _OFF_LABEL:
                what = f"this reading is far from the label's {side}, {shop_text(label, unit)}"
                want = "read it again, or put the right label into size: length first, then width"
                path: KeyPath = ("stock", key, "measured_size", number, entry)
                reporter.tell(path, what, want)
