"""What one sheet adds to the work of a plan, so that plans can be compared sheet by sheet."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import NamedTuple

from casewright.cutting.pattern import (
    Content,
    Ground,
    Kind,
    Panel,
    Pattern,
    Slot,
    Strip,
    divisions,
    ground_of,
    inner_divisions,
)
from casewright.cutting.problem import Problem
from casewright.cutting.rates import WorkModel
from casewright.cutting.row_work import GUIDED, CutRow, GivenPiece, SetUp, pair_of, row_of
from casewright.cutting.solution import Leaf, Node, Rect, SheetTree, Split, leaves
from casewright.cutting.tree import Axis, Cell, divide, transpose
from casewright.cutting.work import lost_datums

__all__ = ["SheetWork", "WorkCounter"]


class SheetWork(NamedTuple):
    """One sheet's share of the work.

    What other sheets may share are numbers, another for each thing.

    Parameters
    ----------
    own
        Work that no other sheet shares [hundredths of a minute].
    set_ups
        Settings it needs.
    ways
        For parts of a group: the kind with the settings that give it.
    lays
        Ways to parts of a group that a straightedge is laid for, never twice alike.
    members
        Kinds of parts of a group.
    lies
        For parts of a group, which, and whether they are turned.
    orders
        Pairs of settings of which the second needs a piece that the first gives. The straightedge
        is passed over.
    shared
        All that may be shared.
    """

    own: int
    set_ups: frozenset[SetUp]
    ways: frozenset[int]
    lays: int
    members: frozenset[int]
    lies: frozenset[int]
    orders: frozenset[int]
    shared: tuple[int, ...]


class _Way(NamedTuple):
    """A part of a group: its kind, turned or not, the last settings along and across the stock."""

    kind: int
    turned: bool
    rip: int = GUIDED
    crosscut: int = GUIDED


class _Piece(NamedTuple):
    """The share of a piece; see `SheetWork` and `CutRow`. `laid` has what a straightedge gives."""

    own: int
    row: CutRow | None
    set_ups: frozenset[SetUp]
    heads: frozenset[SetUp]
    orders: frozenset[int]
    ways: frozenset[_Way]
    laid: tuple[tuple[int, bool, int], ...]


_NONE: frozenset[int] = frozenset()
_NOTHING = _Piece(0, None, _NONE, _NONE, _NONE, frozenset(), ())

_Key = tuple[object, ...]

_Frame = tuple[int, bool]
"""Place of the stock in the problem, and whether the pattern lies across it."""

_MOST_KNOWN = 50_000
"""Sheets, pieces of them and rows, each, of which the work is remembered."""

_WAY = 80
"""Bits of two settings."""


@dataclass(frozen=True, slots=True)
class WorkCounter:
    """Counts the work of sheets, each by itself (`WorkCount` adds them up).

    Parameters
    ----------
    problem, kinds
        What is cut, and the parts put together by what they are.
    model
        What work is reckoned by.
    """

    problem: Problem
    kinds: Sequence[Kind]
    model: WorkModel
    _sheets: dict[_Key, SheetWork] = field(default_factory=dict)
    _pieces: dict[_Key, _Piece] = field(default_factory=dict)
    _rows: dict[_Key, CutRow | None] = field(default_factory=dict)
    _groups: dict[str, int] = field(default_factory=dict)
    _alike: dict[tuple[str, int, int], int] = field(default_factory=dict)

    def pattern_work(self, pattern: Pattern) -> SheetWork:
        """The share of a sheet."""
        for known in (self._sheets, self._pieces, self._rows):
            if len(known) > _MOST_KNOWN:
                known.clear()
        key = (pattern.stock, pattern.swapped, tuple(_key(panel) for panel in pattern.panels))
        found = self._sheets.get(key)
        if found is None:
            frame = pattern.stock, pattern.swapped
            ground, divided = ground_of(self.problem, pattern), divisions(self.problem, pattern)
            # Patterns begin at the low edges; where these are trimmed, the others are too.
            trim = self.problem.stock[pattern.stock].trim
            lost = (trim.left > 0) + (trim.bottom > 0)
            found = self._sheet_work(self._piece_work(ground, divided, frame), lost)
            self._sheets[key] = found
        return found

    def tree_work(self, tree: SheetTree) -> SheetWork:
        """The share of a cut tree whose parts are named by the numbers of their kinds."""
        stock = next(i for i, item in enumerate(self.problem.stock) if item.id == tree.stock)
        parts = [leaf.rect for leaf in leaves(tree.root) if leaf.use == "part"]
        lost = lost_datums(parts, self.problem.stock[stock]) if parts else 0
        return self._sheet_work(self._node_work(tree.root, stock), lost)

    def _sheet_work(self, piece: _Piece, lost: int) -> SheetWork:
        """The share of a sheet that is brought to the saw, and has lost some datum edges."""
        lift = piece.row.lift if piece.row is not None else 0
        members = {way.kind for way in piece.ways} | {kind for kind, *_ in piece.laid}
        lies = {self._lie(way.kind, turned=way.turned) for way in piece.ways}
        lies.update(self._lie(kind, turned=turned) for kind, turned, _ in piece.laid)
        ways = frozenset(
            (kind + 1) << _WAY | pair_of(rip, crosscut) for kind, _, rip, crosscut in piece.ways
        )
        numbers = frozenset(-1 - 2 * kind for kind in members)
        return SheetWork(
            piece.own + lift + lost * self.model.rates.lost_datum, piece.set_ups, ways,
            sum(count for *_, count in piece.laid), numbers, frozenset(lies), piece.orders,
            (*piece.set_ups, *ways, *numbers, *lies, *piece.orders),
        )  # fmt: skip

    def _lie(self, kind: int, *, turned: bool) -> int:
        """Number of how a group lies: below 0 and even, turned two less than not turned."""
        group = self._groups.setdefault(self.kinds[kind].group or "", len(self._groups))
        return -4 * group - 2 - 2 * turned

    def _node_work(self, node: Node, stock: int) -> _Piece:
        if isinstance(node, Leaf):
            if node.use != "part":
                return _NOTHING
            return self._part_work(int(node.part), node.rect.length, node.rect.width)
        kept = [p for p in node.pieces if isinstance(p, Split) or p.use == "part"]
        pieces = tuple(
            Leaf(piece.rect, "part") if piece in kept else piece for piece in node.pieces
        )
        row = row_of(self.problem, self.model, stock, replace(node, pieces=pieces))
        return self._put_together(row, [self._node_work(piece, stock) for piece in kept])

    def _piece_work(
        self, ground: Ground, divided: tuple[Axis, list[tuple[int, Content]]], frame: _Frame
    ) -> _Piece:
        """The share of a piece: its own cuts, and the shares of what they leave."""
        axis, sized = divided
        row = self._row(ground, axis, tuple([size for size, _ in sized]), frame)
        inner = [
            self._content_work(one, _cut_off(ground, axis, size - self.problem.kerf), axis, frame)
            for size, one in sized
        ]
        return inner[0] if row is None else self._put_together(row, inner)

    def _content_work(self, content: Content, ground: Ground, axis: Axis, frame: _Frame) -> _Piece:
        if isinstance(content, Slot) and axis == "y":
            kerf = self.problem.kerf
            sides = content.du - kerf, content.dv - kerf
            return self._part_work(content.kind, *(sides[::-1] if frame[1] else sides))
        key = (frame, ground, _key(content))
        found = self._pieces.get(key)
        if found is None:
            found = self._piece_work(ground, inner_divisions(content), frame)
            self._pieces[key] = found
        return found

    def _part_work(self, kind: int, length: int, width: int) -> _Piece:
        own = self.kinds[kind]
        if own.group is None:
            return _NOTHING
        size = (own.length, own.width)
        # Whether it may be turned tells kinds apart, but not what is cut at one setting.
        like = self._alike.setdefault((own.group, *size), kind)
        return _NOTHING._replace(ways=frozenset([_Way(like, (length, width) != size)]))

    def _row(
        self, ground: Ground, axis: Axis, sizes: tuple[int, ...], frame: _Frame
    ) -> CutRow | None:
        """The row that a piece is divided into; None: nothing is cut."""
        key = (frame, ground, axis, sizes)
        if key not in self._rows:
            kerf, keep = self.problem.kerf, self.problem.keep
            low = ground.u0 if axis == "x" else ground.v0
            cells = []
            for size in sizes:
                cells.append(Cell(low, low + size - kerf, _stub))
                low += size
            root = divide(Rect(0, 0, ground.du, ground.dv), axis, cells, kerf, keep)
            root = transpose(root) if frame[1] else root
            self._rows[key] = (
                row_of(self.problem, self.model, frame[0], root)
                if isinstance(root, Split)
                else None
            )
        return self._rows[key]

    def _put_together(self, row: CutRow, inner: Sequence[_Piece]) -> _Piece:
        """A piece with all that it is divided into."""
        own, set_ups, heads, orders = row.own, row.set_ups, row.heads, row.orders
        ways = set[_Way]()
        laid: list[tuple[int, bool, int]] = []
        guided = set[_Way]()
        for given, piece in zip(row.given, inner, strict=True):
            if piece is _NOTHING:
                continue
            own += piece.own + self._handling(piece.row, row, given)
            if piece.set_ups:
                set_ups |= piece.set_ups
                orders |= piece.orders
                if not given.last:
                    heads |= piece.heads
                else:
                    orders |= {
                        pair_of(given.last, one) for one in piece.heads if one != given.last
                    }
            laid += piece.laid
            for way in piece.ways:
                if row.is_rip and not way.rip:
                    way = way._replace(rip=given.way)
                elif not row.is_rip and not way.crosscut:
                    way = way._replace(crosscut=given.way)
                (guided if min(way.rip, way.crosscut) < 0 else ways).add(way)
        laid += ((*kind, n) for kind, n in Counter(way[:2] for way in guided).items())
        return _Piece(own, row, set_ups, heads, orders, frozenset(ways), tuple(laid))

    def _handling(self, piece: CutRow | None, row: CutRow, given: GivenPiece) -> int:
        """Turning a piece for its first cut, and lifting it to the saw."""
        if piece is None:
            return 0
        turn = self.model.rates.turn if piece.is_rip != row.is_rip else 0
        return turn if given.way < 0 and piece.is_guided else turn + piece.lift


def _stub(rect: Rect) -> Node:
    return Leaf(rect, "part")


def _cut_off(ground: Ground, axis: Axis, size: int) -> Ground:
    """A piece of a row, cut off along an axis."""
    if axis == "x":
        return Ground(size, ground.dv, 0, ground.v0)
    return Ground(ground.du, size, ground.u0, 0)


def _key(content: Content) -> _Key:
    """What tells a content from others."""
    if isinstance(content, Panel):
        return content.over, tuple([_key(strip) for strip in content.strips])
    if isinstance(content, Strip):
        return content.over, *content.slots
    return content
