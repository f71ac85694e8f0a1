"""A room that keeps and a room that breaks each rule."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

from tests.builders import (
    APPLIED,
    GLASS,
    INCH,
    PANEL,
    SLAB,
    drawer_base,
    given,
    length,
    stock,
)
from tests.island_room import island_room
from tests.unit.checks.kitchens import kitchen, wired
from tests.unit.checks.rooms import (
    BASE,
    BOOKCASE,
    beside_wall,
    changed,
    framed,
    leaf,
    only_case,
    over_counter,
    room_of,
    side_by_side,
    soft_stock,
    with_hinge_moved,
    with_leaf,
    with_pane,
    without,
)
from tests.unit.checks.surveyed_rooms import (
    CROWN,
    DOOR,
    WINDOW,
    before_wall,
    beside_door,
    cooking,
    corner,
    corner_case,
    drawers_beside,
    falling,
    galley,
    glass_beside,
    hooded,
    landing,
    pulled,
    reached,
    read_gap,
    round_corner,
    seats,
    under,
    washing,
    waving,
)

from casewright.dims import Origin
from casewright.facts import Fact
from casewright.room.build import build
from casewright.room.model import Room
from casewright.shop import ToolKind
from casewright.sources import POUND
from casewright.stock import EdgeBand, Emission, Sheet, Stock

__all__ = ["FAILS", "PASSES", "in_shop", "read_as"]

Make = Callable[[], Room]


def _cut_back(width: str) -> Room:
    fact = Fact(Origin("measured", "tape"), cut=length(width))
    return room_of(facts={"upper.back.width": fact})


def read_as(label: str, inches: Fraction) -> Room:
    fact = Fact(Origin("measured", "calliper"), built=inches * INCH)
    return room_of(goods=stock(ply=label), facts={"stock.ply18.thickness": fact})


def _left_open(room: Room) -> Room:
    """Bored to be plugged, but nobody plugs."""
    return changed(room, spec=replace(only_case(room).spec, pockets="hidden"))


def in_shop(room: Room, *lost: ToolKind) -> Room:
    """The same job in a shop that lacks some tools."""
    shop = room.spec.shop
    tools = {kind: tool for kind, tool in shop.tools.items() if kind not in lost}
    return build(replace(room.spec, shop=replace(shop, tools=tools)))


def _with_band(width: str) -> dict[str, Stock]:
    goods = stock()
    band = goods["band"]
    assert isinstance(band, EdgeBand)
    goods["band"] = replace(band, width=given(width, "mm"))
    return goods


def heavy_door(thick: str, width: str, height: str) -> Room:
    """One door of fibreboard so thick before a tall box."""
    goods = stock()
    sheet = goods["mdf"]
    assert isinstance(sheet, Sheet)
    goods["mdf"] = replace(sheet, thickness=given(thick))
    tall = BASE | {"height": height, "depth": "12", "width": width}
    return room_of(goods=goods, front=replace(SLAB, leaves=1), **tall)


def with_tools(room: Room, *more: ToolKind) -> Room:
    """The same job in a shop that has some tools besides."""
    shop = room.spec.shop
    tools = dict(shop.tools) | {kind: replace(shop.tools["router"], kind=kind) for kind in more}
    return build(replace(room.spec, shop=replace(shop, tools=tools)))


def sawn(*lost: ToolKind, guide: str = "98", width: str = "30", opens: str = "25") -> Room:
    """A bookcase of 84 x 12, so wide, in a shop whose fence opens so far [in].

    Parameters
    ----------
    lost
        Tools that the shop has not.
    guide
        Longest guide.
    """
    room = in_shop(room_of(**BOOKCASE | {"width": width}), *lost)
    shop = room.spec.shop
    tools = dict(shop.tools)
    if "table saw" in tools:
        tools["table saw"] = replace(tools["table saw"], reach=given(opens))
    shop = replace(shop, tools=tools, straightedge=given(guide))
    return build(replace(room.spec, shop=shop))


def labelled(emission: Emission, key: str = "ply18") -> Room:
    """An upper out of sheets of that class."""
    goods = stock()
    sheet = goods[key]
    assert isinstance(sheet, Sheet)
    goods[key] = replace(sheet, emission=emission)
    return room_of(goods=goods)


def drawers_on(pounds: int | None, width: str = "24") -> Room:
    """Three drawers in a base so wide on slides that carry so much, or on usual ones."""
    room = room_of(**drawer_base("in", "drawer", "drawer", "drawer", width=width))
    sheets = room.spec.hardware
    load = None if pounds is None else pounds * POUND
    slide = replace(sheets.slide, load=load)
    return build(replace(room.spec, hardware=replace(sheets, slide=slide)))


def bowl_in(wide: str) -> Room:
    """A sink base 36 in wide, a bowl so wide and 18 in deep in it."""
    asked = drawer_base(
        "in",
        "false front 7",
        "doors",
        width="36",
        sink=True,
        back="open",
        bowl=(given(wide), given("18")),
    )
    return room_of(**asked)


def _of_fibreboard() -> dict[str, Stock]:
    goods = stock(ply="3/4")
    sheet = goods["ply18"]
    assert isinstance(sheet, Sheet)
    goods["ply18"] = replace(sheet, material="fibreboard", density=Fraction(770))
    return goods


def _one_by_one(*inches: str) -> Room:
    """Sheets of the box's stock, read one by one."""
    goods = stock()
    sheet = goods["ply18"]
    assert isinstance(sheet, Sheet)
    by_sheet = tuple((f"sheet_{n}", length(text)) for n, text in enumerate(inches))
    goods["ply18"] = replace(sheet, by_sheet=by_sheet)
    return room_of(goods=goods)


_SOLVED = '[heights]\nwall_bottom = "54"\nwall_height = "36"\n'

PASSES: dict[str, Make] = {
    "sheets differ": lambda: _one_by_one("0.720", "0.722"),
    "fit band": room_of,
    "nailer missing": room_of,
    "wall screw bite": room_of,
    "fastener bite": lambda: room_of(screws={"back_brad": "3/4"}),
    "pocket screw length": room_of,
    "open pockets": lambda: room_of(pockets="plugged"),
    "cut depth": room_of,
    "hinge number": lambda: with_leaf(leaf("16 3/8", "38 15/16", ("3 1/2", "35"))),
    "hinge spread": lambda: with_leaf(leaf("16 3/8", "38 15/16", ("3 1/2", "35 7/16"))),
    "hinge beside shelf": lambda: with_leaf(leaf("16", "39", ("3 1/2", "35"))),
    "leaf size": lambda: with_leaf(leaf("16 3/8", "38 15/16")),
    "drawer bottom": lambda: room_of(**drawer_base("in", "drawer", "drawer")),
    "drawer load": lambda: drawers_on(100),
    "shelf sag": lambda: room_of(width="24"),
    "long shelf": lambda: room_of(width="30", goods=soft_stock()),
    "narrow rip": room_of,
    "band width": lambda: room_of(edge="band"),
    "sheet thickness": lambda: read_as("3/4", Fraction("0.703")),
    "case weight": room_of,
    "sheet weight": room_of,
    "emission class": lambda: labelled("TSCA Title VI"),
    "leaf weight": lambda: heavy_door("3/4", "16", "34 1/2"),
    "metal in path": lambda: room_of(front=APPLIED),
    "hardware meets": lambda: with_hinge_moved("0"),
    "tool missing": room_of,
    "fit forecast": lambda: room_of(front=SLAB),
    "tip over": lambda: room_of(**BASE),
    "door beside wall": lambda: beside_wall("34 1/2"),
    "door beside front": side_by_side,
    "pane size": lambda: with_pane("18", "40"),
    "over counter": lambda: over_counter("54"),
    "studs behind": room_of,
    "cable may lie": lambda: wired("44"),
    "small part": lambda: room_of(front=GLASS),
    "tilt up": lambda: room_of(**BOOKCASE),
    "toe space": lambda: room_of(**BASE),
    "wood movement": lambda: framed("yellow-poplar", "8"),
    "floor fall": lambda: before_wall("base", falling('"40 1/2"')),
    "pinned seam": lambda: island_room(island_more="seams = { pans = 0 }\n"),
    "ceiling wave": lambda: before_wall("wall", waving("56 1/8"), CROWN),
    "heights close": lambda: before_wall("wall", under(96), CROWN + _SOLVED),
    "read as built": lambda: read_gap("1 5/8"),
    "under ceiling": lambda: before_wall("wall", under(96)),
    "in the way": lambda: before_wall("base", WINDOW),
    "way in": lambda: before_wall("base", more=DOOR),
    "sharp corner": lambda: before_wall("base", more=corner("60 1/4"), right="wall"),
    "door swing": lambda: before_wall("base", more=beside_door(30)),
    "inside corner": lambda: round_corner("90"),
    "corner depth": lambda: corner_case("12"),
    "diagonal door": lambda: pulled("2 1/2"),
    "opens beside": lambda: drawers_beside("39"),
    "bowl room": lambda: bowl_in("30"),
    "larger than stock": lambda: room_of(**BOOKCASE),
    "larger than tools": lambda: sawn(),
    "dado stack": lambda: room_of(front=PANEL),
    "over cooking": lambda: cooking(above=30),
    "hood beside": hooded,
    "island stands": lambda: room_of(**BASE),
    "seats at counter": seats,
    "work aisle": lambda: galley("92"),
    "island aisle": island_room,
    "opens into aisle": lambda: island_room(place='run = "sinks"\noff = 60\nalong = 40'),
    "landing": cooking,
    "dishwasher place": lambda: washing(30),
    "preparation run": lambda: kitchen(36, 20, 20),
    "work triangle": lambda: kitchen(36, 20, 20),
    "counter in all": lambda: kitchen(60, 60, 40),
    "accessible reach": lambda: reached("32 1/2"),
    "safety glass": lambda: glass_beside(90),
}

FAILS: dict[str, Make] = {
    "pinned seam": lambda: island_room(island_more="seams = { pans = 10 }\n"),
    "heights close": lambda: before_wall("wall", under(108), CROWN + _SOLVED),
    "sheets differ": lambda: _one_by_one("0.720", "0.703"),
    "fit band": lambda: _cut_back("29"),
    "door beside front": lambda: side_by_side(between="1/64"),
    "pane size": lambda: with_pane("26", "50"),
    "nailer missing": lambda: without(room_of(), "nailer"),
    "wall screw bite": lambda: room_of(screws={"wall_screw": "2"}),
    "fastener bite": lambda: room_of(screws={"back_brad": "1/4"}),
    "pocket screw length": lambda: room_of(screws={"pocket_screw": "1 1/2"}),
    "open pockets": lambda: _left_open(room_of(pockets="plugged")),
    "cut depth": lambda: room_of(overrides={"rabbet_depth": given("1/2")}),
    "hinge number": lambda: with_leaf(leaf("16", "41", ("3 1/2", "37"))),
    "hinge spread": lambda: with_leaf(leaf("20", "24", ("4 1/2", "19 1/2"))),
    "hinge beside shelf": lambda: with_leaf(leaf("16", "39", ("1 3/4", "35"))),
    "leaf size": lambda: with_leaf(leaf("24", "39")),
    "shelf sag": lambda: room_of(width="44"),
    "drawer bottom": lambda: room_of(**drawer_base("in", "drawer", "drawer", width="36")),
    "drawer load": lambda: drawers_on(50),
    "long shelf": lambda: room_of(width="40", goods=soft_stock()),
    "narrow rip": lambda: room_of(
        kind="bookcase", shelves=3, height="60", depth="12", nosing="1 1/2", key="upper"
    ),
    "case weight": lambda: room_of(width="60"),
    "emission class": lambda: labelled("E2"),
    "leaf weight": lambda: heavy_door("1", "30", "84"),
    "metal in path": lambda: room_of(front=APPLIED, height="22"),
    "hardware meets": lambda: with_hinge_moved("2"),
    "sheet weight": lambda: room_of(goods=_of_fibreboard()),
    "band width": lambda: room_of(edge="band", goods=_with_band("16")),
    "sheet thickness": lambda: read_as("3/4", Fraction("0.603")),
    "tip over": lambda: room_of(**BOOKCASE),
    "door beside wall": lambda: beside_wall("33 3/4"),
    "over counter": lambda: over_counter("50"),
    "studs behind": lambda: room_of(width="15"),
    "cable may lie": lambda: wired("80"),
    "small part": lambda: room_of(width="15", front=replace(GLASS, leaves=2)),
    "tilt up": lambda: room_of(**BASE | {"height": "94", "depth": "24"}),
    "toe space": lambda: room_of(**BASE, overrides={"toe_height": given("2")}),
    "fit forecast": lambda: room_of(front=SLAB, overrides={"gap_tolerance": given("1/64")}),
    "tool missing": lambda: in_shop(room_of(), "pocket-hole jig"),
    "wood movement": lambda: framed("northern red oak", "6"),
    "floor fall": lambda: before_wall("base", falling("41")),
    "ceiling wave": lambda: before_wall("wall", waving("56 3/8"), CROWN),
    "read as built": lambda: read_gap("2 1/2"),
    "under ceiling": lambda: before_wall("wall", under(80)),
    "in the way": lambda: before_wall("wall", WINDOW),
    "way in": lambda: before_wall("long", more=DOOR),
    "sharp corner": lambda: before_wall("base", more=corner("59"), right="wall"),
    "door swing": lambda: before_wall("base", more=beside_door(12)),
    "inside corner": lambda: round_corner("80", inner='"slab"'),
    "corner depth": lambda: corner_case("14"),
    "diagonal door": lambda: pulled("3/4"),
    "opens beside": lambda: drawers_beside("36 1/2"),
    "bowl room": lambda: bowl_in("36"),
    "dado stack": lambda: with_tools(room_of(front=PANEL), "dado stack"),
    "larger than tools": lambda: sawn(guide="50", width="41"),
    "over cooking": cooking,
    "hood beside": lambda: hooded(27),
    "island stands": seats,
    "seats at counter": lambda: seats(12),
    "work aisle": lambda: galley("84"),
    "island aisle": lambda: island_room(place='run = "sinks"\noff = "39 1/2"\nalong = 40'),
    "opens into aisle": lambda: island_room(opens="27"),
    "landing": lambda: landing(11),
    "dishwasher place": lambda: washing(42),
    "preparation run": lambda: kitchen(30, 17, 30),
    "work triangle": lambda: kitchen(36, 20, 90),
    "counter in all": lambda: kitchen(24, 24, 24),
    "accessible reach": lambda: reached("34 1/2"),
    "safety glass": lambda: glass_beside(40),
    "larger than stock": lambda: room_of(**BOOKCASE | {"height": "104"}),
}
