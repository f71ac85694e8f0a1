"""The toe space of a case whose sides reach the floor: notch and toe board."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from casewright.casework.box import Board, Box, cut_horizontal
from casewright.casework.features import Cut
from casewright.casework.maker import Maker, Outline
from casewright.casework.setups import cutout_setup, notch_setup
from casewright.dims import Dim, Given, Origin, greatest, tell
from casewright.findings import Finding, Severity

__all__ = ["BESIDE_REGISTER", "cut_toe_board", "notch_sides", "toe_setback"]

BESIDE_REGISTER = Fraction(50)
"""Wood left at either end of a toe board that is opened for a register [mm]."""
_BESIDE = Origin("cited", "wood left at either end of an opened toe board", "common practice")


def notch_sides(maker: Maker, sides: Iterable[Outline], height: Dim) -> None:
    """Cut the toe notch into the lower front corner of both sides, where a case wants one.

    Parameters
    ----------
    height
        Of the toe space [mm].
    """
    if maker.spec.toe != "notch" or not maker.spec.has_toe:
        return
    for outline in sides:
        place = outline.place.at("notch_toe")
        tall = maker.machined(place, "width", height)
        deep = maker.machined(place, "end", maker.style("toe_setback"))
        maker.machine(
            outline.path,
            Cut(
                path=place.path,
                kind="notch",
                face="A",
                runs="w",
                datum="l0",
                at=maker.zero,
                width=tall,
                depth=outline.thickness,
                start=maker.zero,
                end=deep,
                asked_by=maker.path("toe_board"),
                setup=notch_setup(along=tall, across=deep),
            ),
        )


def toe_setback(maker: Maker) -> Dim:
    """How far a toe board stands back from the case's front [mm].

    In a bookcase it makes room for the nosing of the bottom.
    """
    if maker.spec.kind != "bookcase":
        return maker.style("toe_setback")
    back = maker.style("bookcase_toe_setback")
    if maker.spec.nosing is None:
        return back
    return greatest(back, maker.house.thickness(maker.spec.strip_stock))


def cut_toe_board(maker: Maker, box: Box) -> Board:
    """The board that closes the toe space, between the sides; through it any register's air."""
    board = cut_horizontal(
        maker, box, "toe_board", "rail", "toe board", underside=box.foot,
        width=box.deck - box.foot if box.foot is not maker.zero else box.deck, edges=(),
    )  # fmt: skip
    if maker.spec.register is not None:
        _open_for_register(maker, board.outline, *maker.spec.register)
    return board


def _open_for_register(maker: Maker, board: Outline, wide: Given, high: Given) -> None:
    """An opening in the middle of a toe board, as large as the register's sheet asks for."""
    place = board.place.at("register")
    width = maker.machined(place, "width", maker.number("register_height", high), tool="router")
    at = maker.machined(place, "at", (board.width - width) / 2, tool="router")
    clear = maker.number("register_width", wide)
    _leaves_ends(maker, board, clear)
    start = place.let("start", (board.length - clear) / 2)
    thick = board.thickness
    play = place.let("play", width - maker.number("register_height", high))
    maker.place.fit("register_fit", play, Fraction(-1), Fraction(3), board.path)
    maker.machine(
        board.path,
        Cut(
            path=place.path, kind="cutout", face="A", runs="l", datum="w0", at=at, width=width,
            depth=thick, start=start, end=place.let("end", start + clear),
            asked_by=maker.spec.key,
            setup=cutout_setup(maker.house, place, at=at, width=width, depth=thick),
        ),
    )  # fmt: skip


def _leaves_ends(maker: Maker, board: Outline, clear: Dim) -> None:
    """Whether wood is left at the ends of the board; of a case that has a share of its run."""
    own = maker.reckoning("register opening", board.path)
    beside = own.given("register.beside", Given(BESIDE_REGISTER, _BESIDE))
    lacks = clear + beside * 2 - board.length
    if lacks.value <= 0:
        return
    most = clear - lacks
    wide, widest = own.text(clear, "opening"), own.text(most, "widest")
    maker.findings.append(
        Finding(
            rule="register opening", severity=Severity.STOP, path=board.path,
            says=tell(
                "an opening {} wide leaves nothing of a toe board {} long at its ends",
                wide, own.text(board.length),
            ),
            measured=wide.text, limit=widest.text, source="common practice",
            remedies=(
                *((tell("an opening {} wide at most", widest),) if most.value > 0 else ()),
                tell("a case {} wider", own.text(lacks, "wider")),
            ),
            numbers=own.numbers,
        )
    )  # fmt: skip
