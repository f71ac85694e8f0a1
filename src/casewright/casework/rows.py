"""Rows of a face: fronts one over the other, with the lines between them."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from casewright.casework.appliance_rows import appliance_height, room_for_cleats
from casewright.casework.box import Board, Box, cut_horizontal
from casewright.casework.carcase import Opening
from casewright.casework.fronts.face_edges import planned_thickness
from casewright.casework.maker import Maker
from casewright.casework.specs import CaseSpec, OverlayKind, RowSpec
from casewright.dims import Dim, greatest, least

__all__ = [
    "boards_behind_rails",
    "crown_drop",
    "cut_front_rail",
    "cut_row_boards",
    "edge_reveals",
    "front_rail_height",
    "part_into_rows",
    "row_boards",
    "row_heights",
    "row_names",
    "rows_overlay",
    "wants_front_rail",
]

_WORDS = {
    "drawer": "drawer",
    "false front": "false_front",
    "open": "open",
    "doors": "doors",
    "appliance": "appliance",
}


def row_names(rows: tuple[RowSpec, ...]) -> tuple[str, ...]:
    """A name for each row: main for the first doors, drawer_1, drawer_2, false_front.

    Examples
    --------
    >>> drawer, doors = RowSpec("drawer", None, None), RowSpec("doors", None, None)
    >>> row_names((drawer, drawer, doors))
    ('drawer_1', 'drawer_2', 'main')
    """
    total = Counter(row.kind for row in rows)
    seen: Counter[str] = Counter()
    names = []
    for row in rows:
        seen[row.kind] += 1
        number, word = seen[row.kind], _WORDS[row.kind]
        if row.kind == "doors" and number == 1:
            names.append("main")
        elif row.kind == "drawer" or total[row.kind] > 1:
            names.append(f"{word}_{number}")
        else:
            names.append(word)
    return tuple(names)


def _difference(one: Dim, other: Dim) -> Dim:
    """One less the other; nothing is left out of the formula."""
    return one - other if other.path or other.op else one


def _raised(base: Dim, by: Dim) -> Dim:
    """A height above a base; a base that is nothing is left out of the formula."""
    return base + by if base.path or base.op else by


def row_heights(maker: Maker) -> tuple[Dim | None, ...]:
    """Heights of the rows' fronts [mm], and None for each that takes a share of what is left.

    Where all are given the lowest takes what is left of the face, as it was built.
    """
    rows = maker.spec.rows
    given: list[Dim | None] = []
    above: RowSpec | None = None
    for row, name in zip(rows, row_names(rows), strict=True):
        if row.appliance is not None:
            under = above is not None and above.appliance is not None
            last = len(given) == len(rows) - 1
            given.append(appliance_height(maker, row, name, lowest=last, under_deck=under))
        else:
            asked = row.height
            given.append(None if asked is None else maker.number(f"{name}_height", asked))
        above = row
    if all(dim is not None for dim in given):
        given[max(n for n, row in enumerate(rows) if row.appliance is None)] = None
    return tuple(given)


def rows_overlay(spec: CaseSpec) -> OverlayKind:
    """How the fronts of a case's rows lie: all alike."""
    return next((row.front.overlay for row in spec.rows if row.front), "full")


def edge_reveals(maker: Maker, bottom: Dim, top: Dim) -> tuple[Dim, Dim]:
    """What the rows leave bare at the lower and the upper end of their face [mm]."""
    if not maker.spec.rows or rows_overlay(maker.spec) != "partial":
        return bottom, top
    bare = maker.style("partial_reveal")
    return greatest(bottom, bare), greatest(top, bare)


def _share(maker: Maker, heights: tuple[Dim | None, ...], low: Dim, high: Dim) -> Dim:
    """What each row without a height of its own takes [mm].

    Parameters
    ----------
    low, high
        Case heights of the lowest front's lower edge and the topmost one's upper edge [mm].
    """
    left = _difference(high, low)
    if len(heights) > 1:
        left = left - (len(heights) - 1) * maker.style("gap")
    for dim in heights:
        if dim is not None:
            left = left - dim
    sharing = sum(dim is None for dim in heights)
    return left if sharing == 1 else left / Fraction(sharing)


def part_into_rows(maker: Maker, box: Box, bay: Opening) -> tuple[Opening, ...]:
    """An opening parted into the rows that were asked for, from the bottom up.

    Parameters
    ----------
    bay
        The opening of the box that the rows share.
    """
    rows = maker.spec.rows
    if not rows:
        return (bay,)
    bottom, top = edge_reveals(maker, bay.bottom, bay.top)
    bay = replace(bay, bottom=bottom, top=top)
    given, names = row_heights(maker), row_names(rows)
    low, high = _raised(bay.face_y0, bay.bottom), bay.face_y1 - bay.top
    share = maker.place.let("row_share", _share(maker, given, low, high))
    heights = [share if height is None else height for height in given]
    half = maker.style("gap") / 2
    boards = {board.name: board for board in box.boards}
    found: list[Opening] = []
    hung = boards.get("crown_stretcher")
    ceiling = bay.y1 if hung is None or maker.spec.divider is not None else hung.underside
    if rows_overlay(maker.spec) == "inset":
        ceiling = _inner_head(box)
    line, clear, above = bay.face_y1, ceiling, bay.top
    for number, (row, name) in enumerate(zip(rows, names, strict=True), start=1):
        last = number == len(rows)
        low, under, floor = bay.face_y0, bay.bottom, bay.y0
        next_clear = clear
        if not last:
            board = boards.get(f"row_board.{number}")
            low, floor, next_clear = _line(maker, number, line - above - heights[number - 1],
                                           half, board)  # fmt: skip
            under = half
        inside = tuple(s for s in bay.shelves if floor.value < s.value < clear.value)
        found.append(
            replace(bay, name=name, y0=floor, y1=clear, face_y0=low, face_y1=line, bottom=under,
                    top=above, shelves=inside, row=row.kind, front=row.front,
                    appliance=row.appliance)
        )  # fmt: skip
        line, clear, above = low, room_for_cleats(maker, row, next_clear), half
    return tuple(reversed(found))


def _line(
    maker: Maker, number: int, lower_edge: Dim, half: Dim, board: Board | None
) -> tuple[Dim, Dim, Dim]:
    """Middle of the gap under a row, and what bounds the openings above and below it [mm]."""
    name = f"row_{number}_line"
    if board is None:
        line = maker.place.let(name, lower_edge - half)
        return line, line, line
    line = maker.place.let(name, board.underside + board.outline.thickness / 2)
    return line, board.underside + board.outline.thickness, board.underside


def cut_row_boards(maker: Maker, box: Box) -> None:
    """Boards between rows: whole ones where a row is open, rails where the job wants them."""
    if not row_boards(maker.spec):
        return
    thick, half = box.bottom.outline.thickness, maker.style("gap") / 2
    if rows_overlay(maker.spec) == "inset":
        _cut_between_inset(maker, box)
        return
    line, above, heights = _designed(maker, box)
    for number, (height, pair) in enumerate(
        zip(heights, pairwise(maker.spec.rows), strict=False), start=1
    ):
        line = line - above - height - half
        above = half
        if _holds_appliance(pair):
            # Where it is marked on the sides it stays, whatever sheet comes next.
            line = maker.place.made(f"row_{number}_mark", line)
        if _wants_board(maker.spec, pair):
            _cut_board(maker, box, number, line - thick / 2, whole=_is_whole(pair))


def row_boards(spec: CaseSpec) -> tuple[tuple[int, bool], ...]:
    """Numbers of the rows that a board or a rail lies over, and whether it is a whole board."""
    pairs = tuple(pairwise(spec.rows))
    asked = [number for number, pair in enumerate(pairs, start=1) if _wants_board(spec, pair)]
    if spec.framed:
        return tuple((number, True) for number in boards_behind_rails(spec))
    if not asked:
        return ()
    numbers = range(1, len(pairs) + 1) if rows_overlay(spec) == "inset" else asked
    return tuple((number, _is_whole(pairs[number - 1])) for number in numbers)


def boards_behind_rails(spec: CaseSpec) -> tuple[int, ...]:
    """Numbers of the rows that a board lies under, behind a rail of the face frame."""
    pairs = enumerate(pairwise(spec.rows), start=1)
    return tuple(number for number, pair in pairs if spec.framed and _is_whole(pair))


def _cut_between_inset(maker: Maker, box: Box) -> None:
    """A board between every two inset fronts: each fills its opening but for a gap all round."""
    thick, air = box.bottom.outline.thickness, 2 * maker.style("inset_gap")
    given = row_heights(maker)
    ceiling = _inner_head(box)
    clear = ceiling - box.bottom.underside - thick - (len(given) - 1) * thick - len(given) * air
    for dim in given:
        clear = clear if dim is None else clear - dim
    sharing = sum(dim is None for dim in given)
    share = maker.place.let("inset_share", clear if sharing == 1 else clear / Fraction(sharing))
    under = ceiling
    pairs = pairwise(maker.spec.rows)
    for number, (height, pair) in enumerate(zip(given, pairs, strict=False), start=1):
        tall = share if height is None else height
        under = under - tall - air - thick
        narrow = _before_bowl(maker, pair[0], tall) if maker.spec.sink else None
        _cut_board(maker, box, number, under, whole=_is_whole(pair), width=narrow)


def _before_bowl(maker: Maker, row: RowSpec, tall: Dim) -> Dim | None:
    """Width of the rail under an inset false front [mm]: no farther back than the rail on edge.

    A bowl hangs down behind both (common practice).
    """
    front = row.front
    if row.kind != "false front" or front is None:
        return None
    if row.low is not None and tall.value < 3 * maker.style("rail").value:
        front = row.low
    rail = maker.house.thickness(maker.spec.box_stock)
    return planned_thickness(maker, front) + maker.style("bumper") + rail


def _inner_head(box: Box) -> Dim:
    """Underside of what closes the opening that the rows share: a divider, or the stretchers."""
    divider = next((b for b in box.boards if b.role == "divider"), None)
    if divider is not None:
        return divider.underside
    return next((b.underside for b in box.boards if b.name == "front_stretcher"), box.head)


def wants_front_rail(spec: CaseSpec) -> bool:
    """Whether a rail on edge carries a false front; one that lies on a face frame needs none."""
    falses = [row for row in spec.rows if row.kind == "false front"]
    on_frame = spec.framed and any(r.front and r.front.overlay != "inset" for r in falses)
    return bool(falses) and not on_frame


def cut_front_rail(maker: Maker, box: Box, below: Dim) -> None:
    """A rail on edge in front, which a false front is screwed to; no higher than that.

    Parameters
    ----------
    below
        Case height that its upper edge reaches [mm].
    """
    if maker.spec.framed:
        given = row_heights(maker)[0]
        wide = maker.style("sink_rail")
        cut_horizontal(
            maker, box, "front_rail", "rail", "front rail on edge", underside=None, below=below,
            width=wide if given is None else least(wide, given), edges=(),
        )  # fmt: skip
        return
    if maker.spec.lid == "hinged":
        deck = box.bottom.underside + box.bottom.outline.thickness
        cut_horizontal(
            maker, box, "front_rail", "rail", "inner front", underside=deck,
            width=below - deck - maker.style("finger_gap"), edges=(),
        )  # fmt: skip
        return
    cut_horizontal(
        maker, box, "front_rail", "rail", "front rail on edge", underside=None, below=below,
        width=front_rail_height(maker, box, below), edges=(),
    )  # fmt: skip


def front_rail_height(maker: Maker, box: Box, below: Dim) -> Dim:
    """Height of a rail on edge [mm]: as the style has it, no more than its false front hides.

    Under a crown the front begins lower, and the rail reaches as far behind it as without one.
    """
    wide, most = maker.style("sink_rail"), _most_rail(maker, box, below)
    under_crown = crown_drop(maker)
    if under_crown is not None:
        lower = under_crown - maker.style("base_top_reveal")
        wide, most = wide + lower, most + lower
    return least(wide, most)


def crown_drop(maker: Maker) -> Dim | None:
    """How far below the top of the case fronts start under its crown [mm]: its lap and one gap.

    Source: common practice. None: it has no crown.
    """
    if maker.spec.crown is None:
        return None
    known = maker.house.chain.nodes.get(maker.path("crown_drop"))
    if known is not None:
        return known
    lap = maker.place.given("crown_lap", maker.spec.crown)
    return maker.place.let("crown_drop", lap + maker.style("gap"))


def _most_rail(maker: Maker, box: Box, below: Dim) -> Dim:
    """How high a false front lets the rail behind it be [mm]: a driver passes under it."""
    thick, driver = box.bottom.outline.thickness, 2 * maker.style("driver_room")
    if rows_overlay(maker.spec) == "inset":
        board = next((b for b in box.boards if b.name == "row_board.1"), box.bottom)
        return below - board.underside - board.outline.thickness - driver
    _, _, heights = _designed(maker, box)
    most = heights[0]
    first = next(pairwise(maker.spec.rows), None)
    if first is not None and _wants_board(maker.spec, first):
        most = most - thick - driver
    return most if below is box.head else most - thick


def _designed(maker: Maker, box: Box) -> tuple[Dim, Dim, tuple[Dim, ...]]:
    """Upper end of the face, what is left bare there, heights of the fronts, as designed [mm]."""
    divider = next((b for b in box.boards if b.role == "divider"), None)
    thick, half = box.bottom.outline.thickness, maker.style("gap") / 2
    line = box.head if divider is None else divider.underside + thick / 2
    bottom, top = edge_reveals(maker, maker.style("bottom_reveal"), maker.style("base_top_reveal"))
    above = top if divider is None else half
    given, low = row_heights(maker), _raised(box.deck, bottom)
    share = _share(maker, given, low, line - above)
    return line, above, tuple(share if height is None else height for height in given)


def _wants_board(spec: CaseSpec, pair: tuple[RowSpec, RowSpec]) -> bool:
    return spec.row_rails or _is_whole(pair)


def _holds_appliance(pair: tuple[RowSpec, RowSpec]) -> bool:
    return any(row.appliance is not None for row in pair)


def _is_whole(pair: tuple[RowSpec, RowSpec]) -> bool:
    """Whether a row that is open meets another there: a whole board parts the two."""
    return bool({"open", "appliance"} & {pair[0].kind, pair[1].kind})


def _cut_board(
    maker: Maker, box: Box, number: int, underside: Dim, *, whole: bool, width: Dim | None = None
) -> None:
    word = "board" if whole else "rail"
    cut_horizontal(
        maker, box, f"row_board.{number}", "fixed shelf" if whole else "stretcher",
        f"{word} under row {number}",
        underside=maker.place.let(f"row_{number}_board", underside),
        width=None if whole else width or maker.style("stretcher"),
    )  # fmt: skip
