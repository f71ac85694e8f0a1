"""What a panel is cut from: a sheet in one piece, or boards to be glued edge to edge."""

from __future__ import annotations

from collections.abc import Sequence
from functools import reduce
from operator import add

from casewright.casework.fronts.leaves import LeafPlan, report
from casewright.casework.fronts.panel_groove import PanelGroove
from casewright.casework.maker import Maker, Outline
from casewright.dims import Dim, tell
from casewright.findings import Finding, Severity
from casewright.stock import THINNEST_SOLD, Board

__all__ = ["panel_names", "panel_outlines", "tell_airy", "tell_loose"]


def panel_outlines(
    maker: Maker, leaf: LeafPlan, tall: Dim, wide: Dim, name: str
) -> tuple[Outline, ...]:
    """Cut a panel's pieces: as many equal boards as it takes, the last one fills up.

    Parameters
    ----------
    tall, wide
        Size of the whole panel [mm].
    name
        Of what it belongs to: the leaf, or its upper half over a mid rail.
    """
    key = leaf.front.panel
    goods = maker.house.stock[key]
    setting = f"{maker.spec.key} {leaf.opening.name} panels"
    if not isinstance(goods, Board):
        return (maker.outline(f"{name}.panel", key, tall, wide, setting=setting),)
    count = _count(maker, leaf, goods, wide)
    _check_resaw(maker, leaf, goods)
    boards: list[Outline] = []
    for number in range(count):
        cut = [board.width for board in boards]
        share = wide / count if number < count - 1 or not cut else wide - reduce(add, cut)
        board = f"{name}.panel_{number + 1}" if count > 1 else f"{name}.panel"
        boards.append(maker.outline(board, key, tall, share, setting=setting))
    return tuple(boards)


def panel_names(name: str, pieces: Sequence[Outline]) -> tuple[str, ...]:
    """A name for each piece: the name itself for the first."""
    return (name, *(f"{name}_{number}" for number in range(2, len(pieces) + 1)))


def _count(maker: Maker, leaf: LeafPlan, goods: Board, wide: Dim) -> int:
    """How many boards a panel takes, each jointed on both edges."""
    place = maker.place.at(leaf.name).at("panel_room")
    usable = maker.house.enter(f"stock.{goods.key}.width", goods.width) - maker.style(
        "strip_waste"
    )
    whole = place.times(wide, usable, "boards of the panel, glued edge to edge")
    return whole if whole and wide.value == whole * usable.value else whole + 1


def _check_resaw(maker: Maker, leaf: LeafPlan, goods: Board) -> None:
    """Thin wide boards are resawn on edge: a table saw reaches so high only in two cuts."""
    wide = maker.house.enter(f"stock.{goods.key}.width", goods.width)
    most = maker.house.trade("resaw_height")
    if goods.thickness.value >= THINNEST_SOLD or wide.value <= most.value:
        return
    own = maker.reckoning("wide resaw", maker.path(leaf.name))
    told = own.text(wide)
    report(
        maker,
        Finding(
            rule="wide resaw",
            severity=Severity.CARE,
            path=maker.path(leaf.name),
            says=tell(
                "boards {} wide are resawn on edge for the panel of the {}: higher than a table "
                "saw cuts at once",
                told,
                leaf.called,
            ),
            measured=told.text,
            limit=tell("{}", most),
            source="common practice",
            remedies=(
                "a band saw, or boards planed to thickness by the yard",
                "narrower boards: more of them are glued together",
                "a panel of a sheet",
            ),
        ),
    )


def tell_loose(maker: Maker, leaf: LeafPlan, groove: PanelGroove, play: Dim) -> None:
    """A panel that would come out of a groove in the driest month."""
    says = (
        "in the driest month the panel of the {} has {} of play in two grooves {} deep: its edges "
        "may come out"
    )
    _tell(maker, leaf, groove, play, says)


def tell_airy(maker: Maker, leaf: LeafPlan, groove: PanelGroove, air: Dim) -> None:
    """A panel that wants more air, to swell or by the style, than its grooves can leave it."""
    says = (
        "the panel of the {} wants {} of air at each edge: grooves {} deep cannot leave it that "
        "and hold it"
    )
    _tell(maker, leaf, groove, air, says)


def _tell(maker: Maker, leaf: LeafPlan, groove: PanelGroove, size: Dim, says: str) -> None:
    """Tell it.

    Parameters
    ----------
    says
        With places for the leaf, the size and the depth of the groove.
    """
    own = maker.reckoning("panel out of its groove", maker.path(leaf.name))
    told, deep = own.text(size, "size"), own.text(groove.depth)
    report(
        maker,
        Finding(
            rule="panel out of its groove",
            severity=Severity.STOP,
            path=maker.path(leaf.name),
            says=tell(says, leaf.title, told, deep),
            measured=told.text,
            limit=deep.text,
            source="wood-handbook",
            remedies=(
                "a panel of a sheet, which hardly moves",
                "quarter-sawn boards, which move about half as much",
                tell("grooves over {} deep, their tongues as long: tongue in [style]", told),
                "boards as moist on the day they are cut as the room makes them",
            ),
            numbers=own.numbers,
        ),
    )
