"""Plans for solid boards: parts, lips for edges, and rips for thin strips."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from casewright.breakdown.desk import Desk
from casewright.breakdown.lots import StockDraft
from casewright.breakdown.pieces import Piece, lipped_edges, part_piece
from casewright.breakdown.set_ups import test_pieces
from casewright.breakdown.solving import Offered, draft, on_hand
from casewright.casework.naming import the
from casewright.casework.parts import Part
from casewright.dims import Dim, least, shop_text
from casewright.stock import Board, StockList, hundredths

__all__ = ["board_lengths", "draft_boards", "lip_source", "lips", "usable_lengths"]


def lip_source(stock: StockList, key: str, width: Fraction) -> Board | None:
    """The board that lips are ripped off: the named one, or the thinnest that is thick enough.

    Parameters
    ----------
    width
        Of the lip: the board's thickness must hold it [mm].
    """
    boards = [
        board
        for board in stock.values()
        if isinstance(board, Board) and not board.moulded and board.thickness.value >= width
    ]
    named = [board for board in boards if board.key == key]
    return min(named or boards, key=lambda b: (b.thickness.value, b.key), default=None)


def lips(desk: Desk, parts: Sequence[Part]) -> Iterator[tuple[Board | None, Piece]]:
    """Solid lips of the parts' edges, each with the board it is ripped off.

    A lip is ripped as wide as it is thick on the edge; the board's thickness is its width.
    """
    room, end = desk.room, desk.style("strip_end")
    for part in parts:
        for edge, length in lipped_edges(part):
            width = part.finished.thickness.value + room.spec.style["lip_proud"].value
            word = part.ends[("l0", "l1", "w0", "w1").index(edge.edge)]
            yield (
                lip_source(room.spec.stock, edge.stock, width),
                Piece(
                    id=f"{part.path}.lip_{edge.edge}",
                    kind="lip",
                    title=f"lip for the {word} of {the(part.title)}",
                    mark=part.mark,
                    long=length + end,
                    wide=edge.thickness,
                    rough=True,
                    case=part.case,
                    serves=(part.path,),
                ),
            )


def board_lengths(desk: Desk, board: Board) -> tuple[Dim, ...]:
    """The lengths a board is sold in."""
    return tuple(
        desk.given(f"stock.{board.key}.length_{number}", length)
        for number, length in enumerate(board.lengths, start=1)
    )


def usable_lengths(desk: Desk, board: Board) -> tuple[Dim, ...]:
    """What is left of the lengths a board is sold in when its ends are trimmed."""
    whole = board_lengths(desk, board)
    if board.trim is None:
        return whole
    trim = desk.given(f"stock.{board.key}.trim", board.trim)
    return tuple(_usable(desk, length, trim) for length in whole)


def _usable(desk: Desk, length: Dim, trim: Dim) -> Dim:
    path = f"{length.path}_usable"
    place, _, name = path.rpartition(".")
    known = desk.chain.nodes.get(path)
    return desk.chain.place(place).let(name, length - trim * 2) if known is None else known


def draft_boards(
    desk: Desk, board: Board, parts: Sequence[Part], others: Sequence[Piece]
) -> StockDraft:
    """Parts, lips and strip blanks, to be cut from the lengths the yard has.

    Parameters
    ----------
    others
        Lips and strip blanks.
    """
    unit, width = desk.room.spec.unit, desk.given(f"stock.{board.key}.width", board.width)
    tests = test_pieces(
        board.key, parts, length=desk.style("test_piece_length"),
        width=least(desk.style("test_piece_width"), width), turns=False, unit=unit,
    )  # fmt: skip
    pieces = (*(part_piece(part) for part in parts), *others, *tests)
    offered = (
        *(
            Offered(
                f"{board.key} {shop_text(long.value, unit)}",
                long,
                width,
                price=hundredths(board.price_of(long.value) or "") if board.prices else None,
            )
            for long in board_lengths(desk, board)
        ),
        *on_hand(desk, board.key),
    )
    drafted = draft(desk, board, offered, pieces, ends=board.lost / 2)
    return StockDraft(board.key, "boards", pieces, (drafted,))
