"""Heights of rows that do not sum to their face, or leave a row too low."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.appliance_rows import usual_opening
from casewright.casework.rows import rows_overlay
from casewright.casework.specs import RowKind
from casewright.dims import Way
from casewright.job.case_sizes import CaseSizes
from casewright.job.positions import KeyPath
from casewright.job.rows import written_rows

__all__ = ["check_rows"]

_LEAST: dict[RowKind, Fraction] = {
    "doors": Fraction(150), "drawer": Fraction(75), "false front": Fraction(50),
    "open": Fraction(60), "appliance": Fraction(150),
}  # fmt: skip
"""Least heights of rows [mm]."""

_DRIVER, _HEAD = Fraction(90), Fraction(26)
"""Room beside a board with pockets, and below one that they look out of [mm]."""


def _face(sizes: CaseSizes) -> Fraction:
    """What the fronts of the rows share out, gaps and reveals taken off [mm].

    In a face frame their openings do, its rails taken off.
    """
    case, gap = sizes.case, sizes.value("gap")
    if case.framed:
        rails = (len(case.rows) + 1) * sizes.value("face_rail")
        return case.height.value - sizes.low - rails
    overlay = rows_overlay(case)
    if overlay == "inset":
        head = sizes.board if case.divider is None else sizes.board / 2
        head = Fraction(0) if case.topless else head
        clear = (case.height.value if case.divider is None else case.divider.value) - head
        if case.divider is not None and case.toe == "plinth":
            clear += sizes.deck
        clear -= sizes.deck + sizes.board + (len(case.rows) - 1) * sizes.board
        return clear - 2 * len(case.rows) * sizes.value("inset_gap")
    bare = sizes.value("partial_reveal") if overlay == "partial" else Fraction(0)
    high = case.height.value - max(sizes.value("base_top_reveal"), bare)
    if case.divider is not None:
        high = case.divider.value - gap / 2
        if case.toe == "plinth":
            high += sizes.deck
    low = sizes.deck + max(sizes.value("bottom_reveal"), bare)
    return high - low - (len(case.rows) - 1) * gap


def _height(sizes: CaseSizes, number: int) -> Fraction | None:
    """What a row takes of the face, where that is known [mm]."""
    rows = sizes.case.rows
    row = rows[number]
    if row.appliance is None:
        return None if row.height is None else row.height.value
    asked, gap = row.appliance.height, sizes.value("gap")
    clear = usual_opening("height", sizes.unit) if asked is None else asked.value
    clear += sizes.value("appliance_air")
    if sizes.case.framed:
        return clear
    if number and rows[number - 1].appliance:
        clear += sizes.value("deck_cleat")
    if number == len(rows) - 1:
        return clear + sizes.board * 3 / 2 - gap / 2 - sizes.value("bottom_reveal")
    return clear + sizes.board - gap


def check_rows(sizes: CaseSizes) -> None:
    """Tell heights that do not go into the face, and rows that are left too little."""
    rows = sizes.case.rows
    if all(row.appliance for row in rows):
        return
    written = written_rows(sizes.case.key, sizes.content.cases[sizes.case.key])
    face = _face(sizes)
    given = [(row, path) for row, (_, _, path) in zip(rows, written, strict=True)]
    _check_false_front(sizes, written[0][2])
    heights = [_height(sizes, number) for number in range(len(rows))]
    total = sum((height for height in heights if height is not None), Fraction(0))
    sharing = [row for row, height in zip(rows, heights, strict=True) if height is None]
    base: KeyPath = ("case", sizes.case.key)
    where = next((path for row, path in reversed(given) if row.height), (*base, "drawers"))
    if not sharing:
        if total != face:
            last = rows[-1].height
            rest = face - total + (last.value if last else Fraction(0))
            framed = sizes.case.framed
            fronts, gaps = ("openings", "rails") if framed else ("fronts", "gaps")
            what = (
                f"these {fronts} are {sizes.text(total)} together, the face without its {gaps} is "
                f"{sizes.text(face)}"
            )
            want = "leave out the height of one row"
            if rest >= _LEAST[rows[-1].kind]:
                want += f", or write {sizes.text(rest)} for the last"
            elif total > face:
                want = f"lower them by {sizes.text(total - face)} together, or take a row out"
            sizes.reporter.tell(where, what, want)
        else:
            _check_boards_between(sizes, Fraction(0), where)
        return
    share = (face - total) / len(sharing)
    _check_boards_between(sizes, share, where)
    least = max(_LEAST[row.kind] for row in sharing)
    if share < least:
        what = f"{sizes.rough(max(share, Fraction(0)))} is left for each row without a height"
        lower = "lower rows above, " if total else ""
        want = f"{lower}fewer rows, or a case {sizes.text((least - share) * len(sharing))} higher"
        sizes.reporter.tell(where, what, want)


def _check_false_front(sizes: CaseSizes, where: KeyPath) -> None:
    """A false front must hide its rail, and a board under it leaves room for a driver."""
    rows, case = sizes.case.rows, sizes.case
    height = rows[0].height
    if rows[0].kind != "false front" or height is None:
        return
    need = _LEAST["false front"] + (Fraction(0) if case.sink else sizes.board)
    if case.row_rails or (len(rows) > 1 and rows[1].kind == "open"):
        need += sizes.board + 2 * sizes.value("driver_room")
    if height.value < need:
        what = f"a false front of {sizes.text(height.value)} hides no rail to hold it"
        sizes.reporter.tell(where, what, sizes.at_least(need))


def _check_boards_between(sizes: CaseSizes, share: Fraction, where: KeyPath) -> None:
    """Boards between rows need room for a driver, and whole ones to pass the nailer."""
    case = sizes.case
    free, whole_above = -sizes.board, False
    # Behind a frame the boards lie as far apart as the upper edges of the rails before them.
    between = sizes.value("face_rail") if case.framed else Fraction(0)
    for number, row in enumerate(case.rows):
        height = _height(sizes, number)
        free += between + (share if height is None else height)
        last = number == len(case.rows) - 1
        whole = not last and bool({"open", "appliance"} & {row.kind, case.rows[number + 1].kind})
        if not (whole or last or case.row_rails):
            continue
        need = _DRIVER
        if whole and not whole_above and case.back != "inset":
            need = max(need, sizes.value("nailer") + _HEAD)
        if free < need and (number or not last):
            what = f"{sizes.rough(max(free, Fraction(0)))} is left between the boards about row "
            what += f"{number + 1}: a driver and the nailer want {sizes.rough(need, Way.UP)}"
            want = "fewer or higher rows"
            if rows_overlay(case) != "inset":
                want += ", or rails = false"
            sizes.reporter.tell(where, what, want)
            return
        free, whole_above = -sizes.board, whole_above or whole
