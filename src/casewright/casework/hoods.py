"""Hoods: a case round a liner, as high over what is cooked on as the sheets and the code ask."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from casewright.casework.appliance_rows import appliance_number
from casewright.casework.box import Box
from casewright.casework.carcase import Carcase
from casewright.casework.features import Cut
from casewright.casework.hood_spec import HoodSpec
from casewright.casework.maker import Maker
from casewright.casework.setups import cutout_setup
from casewright.casework.specs import ApplianceOpening
from casewright.dims import Dim, Given, Measure, Origin, Way, greatest, tell
from casewright.findings import Finding, Reckoning, Severity
from casewright.sources import INCH

__all__ = ["BARE", "PROTECTED", "cut_for_liner", "hood_foot"]

BARE, PROTECTED = 30 * INCH, 24 * INCH
"""Free height over a cooking surface: up to bare wood, and the least that any sheet is followed
to [mm]. Source: `irc`, M1901.1, read in a secondary copy."""

_DUCT: Mapping[str, Fraction] = {"in": 8 * INCH, "mm": Fraction(150)}
"""A usual duct, until its sheet is at hand (common practice, from memory) [mm]."""


def _hood(maker: Maker) -> tuple[HoodSpec, ApplianceOpening]:
    hood, liner = maker.spec.hood, maker.spec.appliance
    if hood is None or liner is None:
        msg = f"{maker.spec.key} is no hood"
        raise ValueError(msg)
    return hood, liner


def _surface(maker: Maker, hood: HoodSpec) -> Dim:
    """Height of what is cooked on above the floor: as written, or the counter's [mm]."""
    if hood.surface is not None:
        return maker.number("surface", hood.surface)
    known = maker.house.chain.nodes.get(maker.path("surface"))
    if known is not None:
        return known
    base = maker.number("base_below", hood.base)
    return maker.place.let("surface", base + maker.style("counter"))


def _least_clear(maker: Maker, hood: HoodSpec) -> Dim:
    """What has to stay free over the surface [mm]: the greatest of the sheets and the code."""
    code = Origin("cited", "the code's figure up to wood that nothing protects", "irc")
    floor = Origin("cited", "the code's least, whatever a sheet says", "irc")
    asked = [
        maker.number("cooking_clear", hood.clear or Given(BARE, code)),
        maker.number("least_clear", Given(PROTECTED, floor)),
    ]
    if hood.liner_clear is not None:
        asked.append(maker.number("liner_clear", hood.liner_clear))
    return maker.place.let("clear", greatest(*asked))


def hood_foot(maker: Maker) -> Dim:
    """Underside of the case over the undersides of wall cases [mm]: zc + clr, never below them.

    Source: common practice; with the cooking surface zc and what has to stay free above it clr.

    Raises
    ------
    ValueError
        When the case is no hood: a defect of the program.
    """
    hood, _ = _hood(maker)
    place = maker.place
    bottom = maker.number("wall_bottom", hood.bottom)
    need = place.let("underside", _surface(maker, hood) + _least_clear(maker, hood))
    foot = _on_grid(maker, need + maker.style("hood_air") - bottom)
    place.let("hangs_at", bottom + foot)
    return foot


def _on_grid(maker: Maker, over: Dim) -> Dim:
    place, step = maker.place, maker.style("cut_step").value
    if place.over(maker.zero, over, "no lower than wall cases, which hang high enough"):
        return maker.zero
    if not over.value or not step:
        return place.let("wanted_foot", over) if over.value else maker.zero
    return place.rounded("wanted_foot", over, step, Way.UP)[0]


def _usual(maker: Maker) -> tuple[Given, Given]:
    usual = Given(_DUCT[maker.house.unit], Origin("chosen", "a usual duct, to be asked for"))
    return usual, usual


def cut_for_liner(maker: Maker, box: Box, carcase: Carcase) -> None:
    """The liner's hole in the bottom, the duct's in the top; the air round both, as fits."""
    if maker.spec.hood is None:
        return
    hood, liner = _hood(maker)
    air = maker.style("liner_air")
    wide, deep = (appliance_number(maker, liner, name) + 2 * air for name in ("width", "depth"))
    place = maker.place
    place.let("liner_hole", wide)
    nailer = maker.parts.get(maker.path("nailer_bottom"))
    rear = carcase.seat if nailer is None else carcase.seat + nailer.finished.thickness
    room = place.let("room_for_liner", carcase.depth - rear)
    front = place.let("front_pad", (room - deep) / 2)
    _cutout(maker, maker.path("bottom"), "liner_hole", (wide, deep), front)
    duct = hood.duct or _usual(maker)
    duct_wide, duct_deep = (
        maker.number(name, size) + 2 * air
        for name, size in zip(("duct_width", "duct_depth"), duct, strict=True)
    )
    middle = (
        rear + room / 2 if hood.duct_back is None else maker.number("duct_back", hood.duct_back)
    )
    back = place.let("duct_pad", middle - duct_deep / 2 - rear)
    _cutout(
        maker, maker.path("top"), "duct_hole", (duct_wide, duct_deep),
        carcase.depth - middle - duct_deep / 2,
    )  # fmt: skip
    side = place.let("side_pad", (carcase.clear_width - wide) / 2)
    _fits(maker, side)
    _findings(maker, box, carcase, (side, front, back))


def _cutout(maker: Maker, path: str, name: str, size: tuple[Dim, Dim], front: Dim) -> None:
    """An opening in the middle of a panel's length, so far behind its front edge."""
    part, place = maker.parts[path], maker.house.chain.place(f"{path}.{name}")
    wide, deep = size
    at = maker.machined(place, "at", front, tool="router")
    width = maker.machined(place, "width", deep, tool="router")
    start = place.let("start", (part.finished.length - wide) / 2)
    thick = part.finished.thickness
    maker.machine(
        path,
        Cut(
            path=place.path, kind="cutout", face="A", runs="l", datum="w0", at=at, width=width,
            depth=thick, start=start, end=place.let("end", start + wide),
            asked_by=maker.spec.key,
            setup=cutout_setup(maker.house, place, at=at, width=width, depth=thick),
        ),
    )  # fmt: skip


def _fits(maker: Maker, side: Dim) -> None:
    """The liner goes into its hole, and hangs as high as it must."""
    place, air = maker.place, maker.style("liner_air").value
    hole = maker.house.chain.nodes[f"{maker.path('bottom')}.liner_hole.width"]
    _, liner = _hood(maker)
    play = place.let("liner_play", hole - appliance_number(maker, liner, "depth"))
    place.fit("liner_fit", play, Fraction(0), 4 * air or Fraction(1), place.path)
    least = maker.style("hood_pad")
    place.fit("side_pad_fit", side, least.value, max(side.value, least.value) * 2, place.path)


def _findings(maker: Maker, box: Box, carcase: Carcase, pads: tuple[Dim, Dim, Dim]) -> None:
    """Too little wood round the liner, too little height for it, a duct that meets wood."""
    side, front, duct_back = pads
    least, own = maker.style("hood_pad"), maker.reckoning("hood")
    for pad, word, grows in (
        (side, "at each side of the liner", "wider"), (front, "before and behind the liner",
                                                       "deeper"),
    ):  # fmt: skip
        if pad.value < least.value:
            more = own.text((least - pad) * 2, grows)
            wood, asked = own.text(pad), own.text(least)
            says = tell("{} of wood would be left {}, and {} carry it", wood, word, asked)
            _tell(maker, own, says, (wood, asked), tell("a case {} {}", more, grows))
    _, liner = _hood(maker)
    tall = appliance_number(maker, liner, "height")
    inside = maker.place.let("inside_height", box.head - box.deck)
    if tall.value > inside.value:
        high, within = own.text(tall), own.text(inside)
        says = tell("{} is {} high, and the case {}", liner.title, high, within)
        more = own.text(tall - inside, "taller")
        _tell(maker, own, says, (within, high), tell("a case {} taller", more))
    duct_front = maker.house.chain.nodes[f"{maker.path('top')}.duct_hole.at"]
    for room, word in ((duct_back, "the nailer or the back"), (duct_front, "the face panel")):
        if room.value < 0:
            into = own.text(-room, f"into_{word.rpartition(' ')[2]}")
            says = tell("the duct of {} runs {} into {}", liner.title, into, word)
            way = tell("a case {} deeper, or a liner whose duct leaves it elsewhere", into)
            _tell(maker, own, says, (own.text(room), own.text(maker.zero)), way)


def _tell(
    maker: Maker, own: Reckoning, says: str, sizes: tuple[Measure, Measure], remedy: str
) -> None:
    _, liner = _hood(maker)
    maker.findings.append(
        Finding(
            rule="hood", severity=Severity.STOP, path=maker.spec.key,
            says=tell("in {}, {}", maker.spec.title, says),
            measured=sizes[0].text, limit=sizes[1].text,
            source=f"the sheet of {liner.title}",
            remedies=(remedy, "another liner, or its sheet read again"), numbers=own.numbers,
        )
    )  # fmt: skip
