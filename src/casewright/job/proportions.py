"""Sizes in a job file that cannot go together: a case too small for its own boards."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.specs import CaseSpec
from casewright.dims import Given, Unit, Way, round_to, shop_text
from casewright.job.content import Content
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.tables import BandTable
from casewright.room.specs import RunSpec
from casewright.sources import INCH
from casewright.stock import StockList
from casewright.style import Style

__all__ = ["check_proportions", "check_supplies"]

_CLEAR = Fraction(40)
"""Least clear space inside a case in every direction: a hand and a driver [mm]."""

_ARM = Fraction(235)
"""Least clear width of a case: a driver reaches its pocket screws from inside [mm]."""

_ROUND: dict[Unit, Fraction] = {"in": INCH / 8, "mm": Fraction(1)}
_LEAST_SHARE = Fraction(280)
_LABEL_LOW, _LABEL_HIGH = Fraction(7, 10), Fraction(13, 10)


class _Sizes:
    """Sizes of one case, and a voice to complain in."""

    def __init__(
        self, case: CaseSpec, stock: StockList, style: Style, reporter: Reporter, unit: Unit
    ) -> None:
        self.case = case
        self.style = style
        self.reporter = reporter
        self.unit = unit
        self.board = stock[case.box_stock].thickness.value
        back = case.box_stock if case.back == "inset" else case.back_stock
        self.back = stock[back].thickness.value

    def value(self, key: str) -> Fraction:
        """A style value, the case's own where it sets one."""
        return (self.case.overrides.get(key) or self.style[key]).value

    def text(self, value: Fraction) -> str:
        """A length as the job writes it."""
        return shop_text(value, self.unit)

    def at_least(self, value: Fraction) -> str:
        """A least length in round numbers, as an order."""
        return f"write {self.text(self._round(value, Way.UP))} or more"

    def at_most(self, value: Fraction) -> str:
        """A greatest length in round numbers, as an order."""
        return f"write {self.text(self._round(value, Way.DOWN))} or less"

    def _round(self, value: Fraction, way: Way) -> Fraction:
        return round_to(value, _ROUND[self.unit], way)[0]

    def tell(self, name: str, what: str, want: str) -> None:
        """Note a problem of a key of the case."""
        path: KeyPath = ("case", self.case.key, name)
        self.reporter.tell(path, what, want)

    @property
    def deck(self) -> Fraction:
        """Underside of the bottom above the case's lower end [mm]."""
        case = self.case
        if case.kind == "wall":
            return case.skirt.value if case.skirt else Fraction(0)
        if case.kind == "bookcase":
            return self.value("bookcase_toe_height")
        return self.value("toe_height") if case.toe != "none" else Fraction(0)


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
        sizes = _Sizes(case, stock, style, reporter, content.unit)
        _width(sizes)
        _height(sizes)
        _depth(sizes)
        _heights_inside(sizes)
    for run in runs.values():
        _share(run, cases, style, reporter, content.unit)


def _width(sizes: _Sizes) -> None:
    if sizes.case.width is None:
        return
    need = 2 * sizes.board + _ARM
    if sizes.case.width.value < need:
        what = f"two sides of {sizes.text(sizes.board)} leave no room for a driver in this width"
        sizes.tell("width", what, sizes.at_least(need))


def _height(sizes: _Sizes) -> None:
    need = sizes.deck + 2 * sizes.board + _CLEAR
    if sizes.case.crown:
        need += sizes.case.crown.value
    if sizes.case.height.value < need:
        what = "bottom and top leave no room in this height"
        sizes.tell("height", what, sizes.at_least(need))


def _depth(sizes: _Sizes) -> None:
    need = sizes.back + _CLEAR
    if sizes.case.kind == "base" and sizes.case.toe != "none":
        need += sizes.value("toe_setback") + sizes.board
        if sizes.case.toe == "plinth":
            need += sizes.board + _ARM - sizes.back - _CLEAR
    if sizes.case.depth.value < need:
        what = "back and toe leave no room in this depth"
        sizes.tell("depth", what, sizes.at_least(need))


def _heights_inside(sizes: _Sizes) -> None:
    """Divider and fixed shelves: each with clear space to its neighbours."""
    case, half = sizes.case, sizes.board / 2
    inside = [(given.value - half, f"fixed_shelves.{n}") for n, given in _fixed(case)]
    if case.divider:
        inside.append((case.divider.value, "divider"))
    low = sizes.deck + sizes.board
    ceiling = case.height.value - sizes.board
    for middle, name in sorted(inside):
        key, _, _ = name.partition(".")
        to_named = half if key == "divider" else 2 * half
        if middle - half < low + _CLEAR:
            want = sizes.at_least(low + _CLEAR + to_named)
            sizes.tell(key, "too little room is left under this height", want)
        elif middle + half > ceiling - _CLEAR:
            want = sizes.at_most(ceiling - _CLEAR - 2 * half + to_named)
            sizes.tell(key, "too little room is left over this height", want)
        low = middle + half


def _fixed(case: CaseSpec) -> list[tuple[int, Given]]:
    return list(enumerate(case.fixed_shelves))


def _share(
    run: RunSpec,
    cases: dict[str, CaseSpec],
    style: Style,
    reporter: Reporter,
    unit: Unit,
) -> None:
    """Whether a wall leaves every case without a width of its own a share worth building."""
    members = [cases[key] for key in run.cases if key in cases]
    sharing = [case for case in members if case.width is None]
    if not run.widths or not sharing:
        return
    free = min(given.value for given in run.widths)
    free -= style["filler"].value * [run.left, run.right].count("wall")
    free -= sum((case.width.value for case in members if case.width), Fraction(0))
    share = free / len(sharing)
    if share >= _LEAST_SHARE:
        return
    text = shop_text(max(share, Fraction(0)), unit)
    what = f"the wall leaves {text} for each case without a width: too little"
    names = ", ".join(case.key for case in sharing)
    reporter.tell(
        ("run", run.key, "wall"), what, f"take a case out, or narrow those beside {names}"
    )


def check_supplies(content: Content, reporter: Reporter) -> None:
    """Tell readings far from their label, and lists in the wrong order."""
    for key, goods in content.stock.items():
        if isinstance(goods, BandTable):
            continue
        for number, reading in enumerate(goods.measured):
            if not _LABEL_LOW <= reading / goods.thickness <= _LABEL_HIGH:
                text = shop_text(goods.thickness, content.unit)
                what = f"this reading is far from the label's {text}"
                want = "read it again, or put the right label into thickness"
                reporter.tell(("stock", key, "measured", number), what, want)
    bores = content.hardware.hinge.bore_distance
    if bores and bores[0] > bores[1]:
        path: KeyPath = ("hardware", "hinge", "bore_distance")
        reporter.tell(path, "the least distance comes first", "swap the two")
    saws = ("table saw", "circular saw")
    if content.shop.tools and not set(saws) & set(content.shop.tools):
        what = "sheets cannot be cut without a saw"
        reporter.tell(("shop", "tools"), what, 'add "table saw" or "circular saw"')
    heading = content.heading
    if heading and heading.precision and (heading.precision[:2] == "1/") != (content.unit == "in"):
        known = '"1/16", "1/32" or "1/64"' if content.unit == "in" else '"1", "0.1" or "0.01"'
        what = f"this is no step of {'an inch' if content.unit == 'in' else 'a millimetre'}"
        reporter.tell(("precision",), what, f"write {known}")
