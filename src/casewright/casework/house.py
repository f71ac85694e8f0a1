"""The house: numbers that all cases of a job share, entered once each on the chain."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from casewright.casework.specs import SlideKind
from casewright.dims import (
    Cause,
    Chain,
    Dim,
    Given,
    Measure,
    Origin,
    Unit,
    as_said,
    shop_text,
    trade,
)
from casewright.hardware import HardwareList, SlideSheet, pocket_screw_length, screw_lengths
from casewright.shop import Shop, Tool, ToolKind
from casewright.stock import (
    Board,
    EdgeBand,
    Glazing,
    Moisture,
    Sheet,
    StockList,
    usual_moisture,
)
from casewright.style import Style

__all__ = ["House"]

_BATCH = (Fraction(3, 10), Fraction(6, 10))
_WITHIN = (Fraction(1, 20), Fraction(1, 10))
_HALF = Fraction(1, 2)


@dataclass(slots=True)
class House:
    """What every case of a job looks up.

    Parameters
    ----------
    chain
        The chain of this build.
    style, stock, hardware, shop, unit, moisture
        From the job.
    """

    chain: Chain
    style: Style
    stock: StockList
    hardware: HardwareList
    shop: Shop
    unit: Unit = "in"
    moisture: Moisture = field(default_factory=usual_moisture)
    zero: Dim = field(init=False)
    _known: dict[str, Dim] = field(init=False, default_factory=dict)
    _marks: int = field(init=False, default=0)
    _causes: dict[ToolKind, tuple[Cause, Cause]] = field(init=False, default_factory=dict)

    def __post_init__(self) -> None:
        self.zero = Dim("", (), Fraction(0))
        self.zero.origin = Origin("chosen", "nothing")

    def text(self, length: Dim) -> str:
        """A length as the job writes it, for findings."""
        return shop_text(length.value, self.unit, with_unit=True)

    def trade(self, name: str) -> Measure:
        """A round figure of the trade in both units, the job's first: '1/16 in (1.5 mm)'.

        Parameters
        ----------
        name
            In `TRADE_FIGURES`.
        """
        return trade(name, self.unit)

    def said(self, length: Dim, text: str = "") -> Measure:
        """A length as the job writes it, or as `text` has it, for sentences and findings."""
        return as_said(length, self.unit, text)

    def next_mark(self) -> str:
        """The next short number for a label."""
        self._marks += 1
        return str(self._marks)

    def enter(self, path: str, given: Given, causes: tuple[Cause, ...] = ()) -> Dim:
        """A number from outside, entered the first time it is asked for."""
        known = self._known.get(path)
        if known is None:
            place, _, name = path.rpartition(".")
            known = self.chain.place(place).enter(name, given.value, given.origin, causes=causes)
            self._known[path] = known
        return known

    def style_dim(self, key: str) -> Dim:
        """A style value, `style.<key>`."""
        return self._known.get(f"style.{key}") or self.enter(f"style.{key}", self.style[key])

    def thickness(self, key: str) -> Dim:
        """Thickness of a stock, by its label until a reading replaces it."""
        path = f"stock.{key}.thickness"
        known = self._known.get(path)
        if known is not None:
            return known
        goods = self.stock[key]
        batch = Cause(path, *_BATCH, bias=True)  # it is one for all its pieces, and not known
        return self.enter(path, goods.thickness, () if isinstance(goods, EdgeBand) else (batch,))

    def painted_edge(self, key: str) -> Dim:
        """What filling and painting adds to an edge: nothing; of fibreboard with the reason."""
        goods = self.stock[key]
        if not isinstance(goods, Sheet) or not goods.is_fibreboard:
            return self.zero
        note = f"the edges of {goods.material} are filled and painted; no band is ironed on"
        origin = Origin("cited", note, "common practice")
        return self.enter(f"stock.{key}.edge", Given(Fraction(0), origin))

    def own_thickness_cause(self, path: str) -> tuple[Cause, ...]:
        """How one piece's thickness strays from its batch (common practice)."""
        return (Cause(f"{path}.thickness", *_WITHIN),)

    def hinge(self, name: str) -> Dim:
        """A number of the hinge's sheet, `hardware.hinge.<name>`."""
        sheet = self.hardware.hinge
        return self.enter(f"hardware.hinge.{name}", getattr(sheet, name))

    def half_plate_pitch(self) -> Dim:
        """From the middle of a hinge plate to either of its holes."""
        path = "hardware.hinge.half_plate_pitch"
        known = self._known.get(path)
        if known is None:
            half = self.hinge("plate_pitch") / 2
            known = self._known[path] = self.chain.register(path, half)
        return known

    def plate_heights(self) -> tuple[Dim, ...]:
        """The hinge plates to be had, lowest first."""
        heights = self.hardware.hinge.plate_heights
        return tuple(
            self.enter(f"hardware.hinge.plate_height_{n}", given)
            for n, given in enumerate(heights, start=1)
        )

    def pull(self, name: str) -> Dim:
        """A number of the pull's sheet, `hardware.pull.<name>`."""
        return self.enter(f"hardware.pull.{name}", getattr(self.hardware.pull, name))

    def pin(self, name: str) -> Dim:
        """A number of the shelf pins' sheet, `hardware.pin.<name>`."""
        return self.enter(f"hardware.pin.{name}", getattr(self.hardware.pin, name))

    def pocket_screw(self, key: str) -> Dim:
        """Length of the pocket screws for boards of a stock.

        Where the job names none, the usual one for the thickness as chosen or read,
        `stock.<key>.pocket_screw`.
        """
        known = self._known.get(f"stock.{key}.pocket_screw")
        if known is not None:
            return known
        sheet, thick = self.hardware.pocket_screw, self.thickness(key)
        usual = pocket_screw_length(thick.value, self.unit) if sheet.placeholder else None
        if usual is None:
            return self.screw("pocket_screw")
        note = f"usual in boards of {self.text(thick)}, by the charts of pocket-hole jigs"
        origin = Origin("cited", note, "common practice")
        return self.enter(f"stock.{key}.pocket_screw", Given(usual, origin))

    def screw(self, name: str) -> Dim:
        """Length of a kind of screw, `hardware.<name>.length`."""
        return self.enter(f"hardware.{name}.length", getattr(self.hardware, name).length)

    def slide(self, kind: SlideKind, name: str) -> Dim:
        """A number of the slides' sheet, `hardware.slide.<name>`."""
        key, sheet = self.slide_sheet(kind)
        return self.enter(f"hardware.{key}.{name}", getattr(sheet, name))

    def slide_row(
        self, kind: SlideKind, name: Literal["lengths", "holes", "box_holes"]
    ) -> tuple[Dim, ...]:
        """A row of numbers of the slides' sheet, `hardware.slide.<name>_<n>`."""
        key, sheet = self.slide_sheet(kind)
        row: tuple[Given, ...] = getattr(sheet, name)
        word = {"lengths": "length", "holes": "hole", "box_holes": "box_hole"}[name]
        return tuple(
            self.enter(f"hardware.{key}.{word}_{n}", given) for n, given in enumerate(row, start=1)
        )

    def slide_sheet(self, kind: SlideKind) -> tuple[str, SlideSheet]:
        """The name of a kind's sheet in the job file, and the sheet."""
        if kind == "side-mount":
            return "slide", self.hardware.slide
        return "undermount", self.hardware.undermount

    def undermount(self, name: str) -> Dim:
        """A number that only the sheet of concealed slides has."""
        return self.enter(f"hardware.undermount.{name}", getattr(self.hardware.undermount, name))

    def screw_for(self, name: Literal["front_screw", "drawer_screw"], room: Dim, most: Dim) -> Dim:
        """Length of the screws through one board into another, `hardware.<name>.length`.

        Where the job names none: the longest sold that bites no deeper than allowed.

        Parameters
        ----------
        room
            What it passes before the second board [mm].
        most
            Farthest its point may go from there [mm].
        """
        sheet = getattr(self.hardware, name)
        if not sheet.placeholder:
            return self.screw(name)
        sold = [size for size in screw_lengths(self.unit) if size <= room.value + most.value]
        size = sold[-1] if sold else sheet.length.value
        path = f"hardware.{name}.length_{len(sold)}"
        note = f"longest sold that passes {self.text(room)} and goes at most {self.text(most)} in"
        return self.enter(path, Given(size, Origin("cited", note, "common practice")))

    def kerf(self) -> Dim:
        """Kerf of the table saw, else of the circular saw."""
        kind: ToolKind = "table saw" if self.shop.has("table saw") else "circular saw"
        tool = self.shop.tools.get(kind)
        given = (
            tool.kerf
            if tool and tool.kerf
            else Given(Fraction(16, 5), Origin("chosen", "usual kerf of a carbide blade"))
        )
        return self.enter("shop.kerf", given)

    def bit(self, widest: Dim) -> Dim | None:
        """The widest straight bit owned that is not wider than the cut."""
        best: Dim | None = None
        for number, given in enumerate(self.shop.bits, start=1):
            if given.value <= widest.value:
                best = self.enter(f"shop.bit_{number}", given)
        return best

    def causes(self, path: str, setting: str, tool: ToolKind | None = None) -> tuple[Cause, ...]:
        """Deviations of a cut: what its setting shares, and what is its own.

        It is made with the tool named, where something is known of it; else with the saw.
        """
        saw: ToolKind = "table saw" if self.shop.has("table saw") else "circular saw"
        used = self.shop.tools[tool if tool and tool in self.shop.tools else saw]
        shared, half = self._strays(used)
        own = half.named(path)
        offset = used.offset()
        return (shared.named(f"setting {setting}"), own, *offset) if setting else (own, *offset)

    def _strays(self, tool: Tool) -> tuple[Cause, Cause]:
        """How far a tool strays, and half of it: what is a cut's own."""
        known = self._causes.get(tool.kind)
        if known is None:
            known = self._causes[tool.kind] = (tool.strays(""), tool.strays("", share=_HALF))
        return known

    def density(self, key: str) -> Fraction:
        """Density of a stock [kg/m3]."""
        goods = self.stock[key]
        return goods.density if isinstance(goods, Sheet | Board | Glazing) else Fraction(0)
