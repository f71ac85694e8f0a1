"""Sizes of a case that the checks of a job file reckon with."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.appliance_rows import usual_opening
from casewright.casework.hood_spec import HoodSpec
from casewright.casework.hoods import BARE, PROTECTED
from casewright.casework.specs import CaseSpec, FrontSpec
from casewright.dims import Unit, Way, round_to, shop_text
from casewright.job.content import Content
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.sources import INCH
from casewright.stock import EdgeBand, Stock, StockList
from casewright.style import Style

__all__ = ["CaseSizes", "is_near_label"]

_LABEL_LOW, _LABEL_HIGH = Fraction(7, 10), Fraction(13, 10)

_ROUND: dict[Unit, Fraction] = {"in": INCH / 8, "mm": Fraction(1)}


def is_near_label(reading: Fraction, label: Fraction) -> bool:
    """Whether a thickness as read may be that of goods with this label."""
    return _LABEL_LOW <= reading / label <= _LABEL_HIGH


def _thickest(goods: Stock) -> Fraction:
    read = None if isinstance(goods, EdgeBand) else goods.measured
    label = goods.thickness.value
    # A reading far from the label is told by itself, once, and not again for each case.
    return max(label, read.value) if read and is_near_label(read.value, label) else label


class CaseSizes:
    """Sizes of one case, and a voice to complain in.

    Attributes
    ----------
    stock
        What can be bought, by its key.
    board, back
        Thickness of the box's boards and of its back, by the label or as read if that is
        more [mm].
    """

    def __init__(
        self,
        case: CaseSpec,
        stock: StockList,
        content: Content,
        style: Style,
        reporter: Reporter,
    ) -> None:
        self.case = case
        self.stock = stock
        self.content = content
        self.style = style
        self.reporter = reporter
        self.unit = content.unit
        self.board = _thickest(stock[case.box_stock])
        self.back = _thickest(stock[case.box_stock if case.back == "inset" else case.back_stock])

    def value(self, key: str) -> Fraction:
        """A style value, the case's own where it sets one."""
        return (self.case.overrides.get(key) or self.style[key]).value

    def text(self, value: Fraction) -> str:
        """A length as the job writes it."""
        return shop_text(value, self.unit)

    def rough(self, value: Fraction, way: Way = Way.DOWN) -> str:
        """A length that came out of others, in round numbers: nobody finds 2.925 on a tape."""
        return self.text(self._round(value, way))

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

    def thickness(self, key: str) -> Fraction:
        """Thickness of a stock, by the label or as read if that is more; 0 of an unknown one [mm].

        Whoever named that was told so; the rest of the case is judged all the same.
        """
        return _thickest(self.stock[key]) if key in self.stock else Fraction(0)

    def door_thickness(self, front: FrontSpec) -> Fraction:
        """Of a door of some front, from its back to its face [mm]."""
        if front.construction == "applied frame":
            return self.thickness(front.slab) + self.thickness(front.strip)
        return self.thickness(front.slab if front.construction == "slab" else front.frame)

    @property
    def deck(self) -> Fraction:
        """Underside of the bottom above the case's lower end [mm]."""
        behind = self.value("face_rail") - self.value("face_rise") - self.board
        return self.low + max(behind, Fraction(0)) if self.case.framed else self.low

    @property
    def low(self) -> Fraction:
        """Where the face begins above the case's lower end [mm]."""
        case = self.case
        if case.hood is not None:
            return self._under_hood(case.hood)
        if case.kind == "wall":
            return case.skirt.value if case.skirt else Fraction(0)
        if case.appliance is not None:
            high = case.appliance.height
            usual = usual_opening("height", self.unit, case.kind)
            return self.value("surround_top_air") + (usual if high is None else high.value)
        if case.kind == "bookcase":
            return self.value("bookcase_toe_height")
        return self.value("toe_height") if case.toe != "none" else Fraction(0)

    def _under_hood(self, hood: HoodSpec) -> Fraction:
        """How far a hood begins above the undersides of wall cases [mm]."""
        counter = hood.base.value + self.value("counter")
        surface = counter if hood.surface is None else hood.surface.value
        asked = [BARE if hood.clear is None else hood.clear.value, PROTECTED]
        asked += [] if hood.liner_clear is None else [hood.liner_clear.value]
        over = surface + max(asked) + self.value("hood_air") - hood.bottom.value
        return max(over, Fraction(0))

    def tell_style(self, key: str, what: str, want: str) -> None:
        """Note a problem of a style value, where it is set."""
        own: KeyPath = ("case", self.case.key, "style", key)
        shared: KeyPath = ("style", key)
        has = self.reporter.positions.has
        path = own if has(own) else shared if has(shared) else ("case", self.case.key, "sheet")
        self.reporter.tell(path, what, want)

    def tell_choice(self, key: str, what: str, want: str) -> None:
        """Note a problem of a choice that the case or all boxes make, where it is made."""
        own: KeyPath = ("case", self.case.key, key)
        shared: KeyPath = ("boxes", key)
        has = self.reporter.positions.has
        self.reporter.tell(shared if has(shared) and not has(own) else own, what, want)
