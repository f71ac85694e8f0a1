"""Stock, hardware and shop of a job from their tables."""

from __future__ import annotations

from fractions import Fraction

from casewright.dims import Cause, Given
from casewright.facts import Fact
from casewright.hardware import HardwareList, HingeSheet, PinSheet, PullSheet, ScrewSheet
from casewright.job.content import Content, Goods
from casewright.job.defaults import TOOL_ACCURACY, USUAL_TOOLS
from casewright.job.origins import Origins
from casewright.job.positions import KeyPath
from casewright.job.slide_sheets import slide_sheet, undermount_sheet
from casewright.job.tables import (
    BandTable,
    BoardTable,
    GlazingTable,
    HardwareTable,
    ScrewTable,
    SheetTable,
    ShopTable,
    ToolTable,
)
from casewright.shop import Mending, Shop, Tool, ToolKind
from casewright.sources import DENSITIES, SPECIFIC_GRAVITY, wood_density
from casewright.stock import Board, EdgeBand, Glazing, Sheet, Stock

__all__ = ["hardware_list", "readings", "shop_of", "stock_list", "title_of"]

_MATERIALS = {
    "plywood": "hardwood plywood", "fibreboard": "fibreboard", "hardboard": "fibreboard",
    "melamine": "particleboard", "tempered glass": "glass", "acrylic": "acrylic",
}  # fmt: skip
_AVERAGE_WOOD = Fraction(550)
_HINGE_PROOF = ("constant", "bore_distance", "plate_heights")


def title_of(key: str, title: str | None) -> str:
    """A title, or the key in words."""
    return title or key.replace("_", " ").strip() or key


def _density(material: str, given: int | None) -> Fraction:
    return Fraction(given if given is not None else DENSITIES[_MATERIALS[material]].usual)


def _board_density(goods: BoardTable) -> Fraction:
    """As written, else by the species, else an average of woods for cabinets [kg/m3]."""
    if goods.density is not None:
        return Fraction(goods.density)
    gravity = SPECIFIC_GRAVITY.get(goods.species or "")
    return _AVERAGE_WOOD if gravity is None else wood_density(gravity.value)


def _thickness(key: str, goods: Goods, origins: Origins) -> Given:
    return origins.given(goods.thickness, ("stock", key, "thickness"))


def stock_list(content: Content, origins: Origins) -> dict[str, Stock]:
    """What can be bought, by its key."""
    return {key: _stock(key, goods, origins) for key, goods in content.stock.items()}


def _stock(key: str, goods: Goods, origins: Origins) -> Stock:
    title, thickness = title_of(key, goods.title), _thickness(key, goods, origins)
    base: KeyPath = ("stock", key)
    match goods:
        case SheetTable():
            length, width = (
                origins.given(size, (*base, "size", n)) for n, size in enumerate(goods.size)
            )
            return Sheet(
                key, title, length, width, thickness, goods.grain == "length", goods.material,
                _density(goods.material, goods.density), goods.stiffness,
                _mean(goods, base, origins), goods.price, *_in_hand(goods, base, origins),
                by_sheet=tuple(goods.sheets.items()), emission=goods.emission,
            )  # fmt: skip
        case BoardTable():
            lengths = tuple(
                origins.given(size, (*base, "lengths", n)) for n, size in enumerate(goods.lengths)
            )
            return Board(
                key, title, thickness, origins.given(goods.width, (*base, "width")), lengths,
                _board_density(goods), _mean(goods, base, origins), goods.price,
                goods.species or "", goods.sawn or "flat",
                trim=origins.given(goods.trim, (*base, "trim")) if goods.trim else None,
                prices=tuple(goods.prices),
            )  # fmt: skip
        case BandTable():
            return EdgeBand(
                key, title, thickness, origins.given(goods.width, (*base, "width")),
                origins.given(goods.roll, (*base, "roll")), goods.price,
            )  # fmt: skip
        case GlazingTable():
            return Glazing(
                key, title, thickness, goods.material, _density(goods.material, goods.density),
                _mean(goods, base, origins), goods.price,
            )  # fmt: skip


def _mean(
    goods: SheetTable | BoardTable | GlazingTable, base: KeyPath, origins: Origins
) -> Given | None:
    read, name = _read(goods)
    if not read:
        return None
    fact = origins.reading(read, (*base, name))
    return Given(fact.built or goods.thickness, fact.origin)


def _read(goods: SheetTable | BoardTable | GlazingTable) -> tuple[list[Fraction], str]:
    """Thicknesses as read, and the key they stand under: sheet by sheet, or all together."""
    if isinstance(goods, SheetTable) and goods.sheets:
        return list(goods.sheets.values()), "sheets"
    return goods.measured, "measured"


def _in_hand(
    goods: SheetTable, base: KeyPath, origins: Origins
) -> tuple[Given | None, Given | None]:
    """Length and width of the sheets as measured."""
    if goods.measured_size is None:
        return None, None
    length, width = (
        origins.governing(values, (*base, "measured_size", n), "tape")
        for n, values in enumerate(goods.measured_size)
    )
    return length, width


def readings(content: Content, origins: Origins) -> dict[str, Fact]:
    """Thicknesses read in the shop, as facts on `stock.<key>.thickness`."""
    return {
        f"stock.{key}.thickness": origins.reading(read, ("stock", key, name))
        for key, goods in content.stock.items()
        if not isinstance(goods, BandTable)
        for read, name in (_read(goods),)
        if read
    }


def hardware_list(table: HardwareTable, origins: Origins) -> HardwareList:
    """Data sheets, each number with its origin."""
    return HardwareList(
        hinge=_hinge(table, origins),
        pull=_pull(table, origins),
        pin=_pin(table, origins),
        pocket_screw=_screw(table.pocket_screw, "pocket_screw", origins),
        wall_screw=_screw(table.wall_screw, "wall_screw", origins),
        brad=_screw(table.brad, "brad", origins),
        back_brad=_screw(table.back_brad, "back_brad", origins),
        front_screw=_screw(table.front_screw, "front_screw", origins),
        drawer_screw=_screw(table.drawer_screw, "drawer_screw", origins),
        slide=slide_sheet(table.slide, origins),
        undermount=undermount_sheet(table.undermount, origins),
    )


def _number(value: Fraction | None, path: KeyPath, origins: Origins) -> Given:
    if value is None:
        msg = f"{'.'.join(map(str, path))} has no usual value"
        raise ValueError(msg)
    return origins.given(value, path)


def _hinge(table: HardwareTable, origins: Origins) -> HingeSheet:
    hinge, base = table.hinge, ("hardware", "hinge")

    def number(key: str) -> Given:
        return _number(getattr(hinge, key), (*base, key), origins)

    low, high = hinge.bore_distance or (None, None)
    heights = sorted(enumerate(hinge.plate_heights or ()), key=lambda pair: pair[1])
    return HingeSheet(
        "hinge",
        title_of("hinge", hinge.title),
        constant=number("constant"),
        bore_low=_number(low, (*base, "bore_distance", 0), origins),
        bore_high=_number(high, (*base, "bore_distance", 1), origins),
        plate_heights=tuple(
            origins.given(height, (*base, "plate_heights", n)) for n, height in heights
        ),
        cup_diameter=number("cup_diameter"),
        cup_depth=number("cup_depth"),
        plate_line=number("plate_line"),
        plate_pitch=number("plate_pitch"),
        plate_hole=number("plate_hole"),
        side_play=number("side_play"),
        half_crank=number("half_crank"),
        inset_crank=number("inset_crank"),
        stand_off=number("stand_off"),
        placeholder=not all(origins.in_file((*base, key)) for key in _HINGE_PROOF),
    )


def _pull(table: HardwareTable, origins: Origins) -> PullSheet:
    pull, base = table.pull, ("hardware", "pull")
    return PullSheet(
        "pull",
        title_of("pull", pull.title),
        centres=_number(pull.centres, (*base, "centres"), origins),
        hole=_number(pull.hole, (*base, "hole"), origins),
        projection=_number(pull.projection, (*base, "projection"), origins),
        placeholder=not origins.in_file((*base, "centres")),
    )


def _pin(table: HardwareTable, origins: Origins) -> PinSheet:
    pin, base = table.pin, ("hardware", "pin")
    return PinSheet(
        "pin",
        title_of("pin", pin.title),
        hole=_number(pin.hole, (*base, "hole"), origins),
        depth=_number(pin.depth, (*base, "depth"), origins),
        pitch=_number(pin.pitch, (*base, "pitch"), origins),
    )


def _screw(screw: ScrewTable, key: str, origins: Origins) -> ScrewSheet:
    path = ("hardware", key)
    diameter = _number(screw.diameter, (*path, "diameter"), origins)
    return ScrewSheet(
        key,
        title_of(key, screw.title),
        _number(screw.length, (*path, "length"), origins),
        diameter.value,
        placeholder=not origins.in_file((*path, "length")),
    )


def shop_of(table: ShopTable, origins: Origins) -> Shop:
    """Tools owned; the bits smallest first."""
    kinds = table.tools or USUAL_TOOLS
    tools: dict[ToolKind, Tool] = {
        kind: _tool(kind, table.tool.get(kind, ToolTable()), origins) for kind in kinds
    }
    bits = sorted(enumerate(table.bits or ()), key=lambda pair: pair[1])
    return Shop(
        tools,
        tuple(origins.given(size, ("shop", "bits", n)) for n, size in bits),
        table.lift or Fraction(25),
        _number(table.straightedge, ("shop", "straightedge"), origins),
        Mending(**table.minutes.model_dump(exclude_none=True)),
    )


def _tool(kind: ToolKind, table: ToolTable, origins: Origins) -> Tool:
    path: KeyPath = ("shop", "tool", kind)
    usual = TOOL_ACCURACY[kind]
    if table.strays is None and table.at_most is not None:
        known = Cause.even(kind, table.at_most)
    else:
        sigma = usual.sigma if table.strays is None else table.strays
        known = Cause(kind, sigma, 2 * sigma if table.at_most is None else table.at_most)
    return Tool(
        kind,
        known.sigma,
        known.limit,
        _kerf(table, path, origins),
        None if table.reach is None else origins.given(table.reach, (*path, "reach")),
        law=known.law,
        is_stated=table.strays is not None or table.at_most is not None,
    )


def _kerf(table: ToolTable, path: KeyPath, origins: Origins) -> Given | None:
    if table.measured_kerf:
        where = (*path, "measured_kerf")
        return origins.governing(table.measured_kerf, where, "calliper, test cut", greatest=True)
    return None if table.kerf is None else origins.given(table.kerf, (*path, "kerf"))
