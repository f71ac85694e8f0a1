"""Fronts through which the grain is to run: which of them come out of one piece."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import chain, groupby, pairwise
from typing import NamedTuple

from casewright.breakdown.pieces import Piece
from casewright.casework.cases import Case, Front
from casewright.cutting.problem import Match
from casewright.findings import Finding, Severity
from casewright.room.matched import grained_slabs, match_cases, matched_slabs
from casewright.room.model import Room
from casewright.room.specs import MatchSpec

__all__ = ["Ground", "cut_apart", "grain_breaks", "left_out", "matches_of"]


class Ground(NamedTuple):
    """Length and width of a sheet between its trims, and the kerf [mm]."""

    length: Fraction
    width: Fraction
    kerf: Fraction


_Member = str | Match
_Size = tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class _Column:
    """The fronts of one case: what they are cut out of, and its size [mm]."""

    case: str
    of: _Member
    size: _Size


def matches_of(room: Room, pieces: Sequence[Piece], ground: Ground) -> tuple[Match, ...]:
    """The matches among pieces of one stock, by the ids of the pieces.

    Parameters
    ----------
    pieces
        What is cut out of it.
    ground
        Of its sheets; a match that is larger is broken between cases.
    """
    found: list[Match] = []
    for spec in room.spec.matches:
        for number, columns in enumerate(_broken(room, spec, pieces, ground), 1):
            name = spec.key if number == 1 else f"{spec.key} {number}"
            whole = _side_by_side(columns, ground)
            if isinstance(whole.of, Match):
                found.append(Match(name, whole.of.way, whole.of.of))
    return tuple(found)


def grain_breaks(
    room: Room, pieces: Sequence[Piece], ground: Ground, title: str
) -> Iterator[Finding]:
    """Where the grain of a match breaks, as no sheet of its stock is wide enough for all of it."""
    for spec in room.spec.matches:
        groups = _broken(room, spec, pieces, ground)
        for before, after in pairwise(groups):
            left, right = before[-1].case, after[0].case
            yield Finding(
                rule="grain breaks",
                severity=Severity.NOTE,
                path=left,
                says=f"the grain of match {spec.key} breaks between {left} and {right}: the "
                f"fronts on both sides together are wider than {title}",
                source="common practice",
                remedies=(
                    "put the break where it shows least: two matches in place of one",
                    "a wider sheet, or two in sequence from one flitch",
                ),
            )


def left_out(room: Room) -> Iterator[Finding]:
    """What stands in a match and cannot match: no slab with grain, or one of other goods."""
    stocks = {part.path: part.stock for part in room.parts}
    titles = {key: goods.title for key, goods in room.spec.stock.items()}
    for spec in room.spec.matches:
        own: dict[str, list[str]] = {}
        for key, column in match_cases(room, spec):
            slabs = [stocks[path] for case in column for path in grained_slabs(case)]
            own.setdefault(key, []).extend(slabs)
        first = next((stock for stock in chain.from_iterable(own.values())), "")
        for key in spec.cases:
            others = [stock for stock in own.get(key, ()) if stock != first]
            if key not in own:
                yield _nothing_to_match(key, spec, "it has no panel")
            elif not own[key]:
                yield _nothing_to_match(key, spec, "it has no slabs of a sheet with grain")
            elif others:
                why = f"its fronts are cut from {titles[others[0]]}, others from {titles[first]}"
                yield _nothing_to_match(key, spec, why)


def cut_apart(room: Room) -> Iterator[Finding]:
    """Fronts of a match that are cut anew, or later, while others of it are cut already."""
    states = {part.path: (part.state, part.mark) for part in room.parts}
    for name, slabs in matched_slabs(room).items():
        left = [slab for slab in slabs if states[slab][0] == "planned"]
        if left and len(left) < len(slabs):
            marks = ", ".join(states[slab][1] for slab in left)
            yield Finding(
                rule="grain breaks",
                severity=Severity.CARE,
                path=left[0],
                says=f"of match {name} all but {marks} is cut already: what is cut now comes "
                "out of another piece, and the grain does not run on through it",
                source="common practice",
                remedies=(
                    "out of what is left of the same sheet, beside where the others lay",
                    "cut the whole match anew: write the others down as spoiled",
                ),
            )


def _nothing_to_match(key: str, spec: MatchSpec, why: str) -> Finding:
    return Finding(
        rule="nothing to match",
        severity=Severity.CARE,
        path=key,
        says=f"{key} stands in match {spec.key}, but {why}: no grain runs through",
        source="common practice",
        remedies=("slabs of one sheet with grain", "take it out of the match"),
    )


def _broken(
    room: Room, spec: MatchSpec, pieces: Sequence[Piece], ground: Ground
) -> list[list[_Column]]:
    """The cases of a match, as many together as a sheet is wide enough for."""
    known = {piece.id: piece for piece in pieces}
    groups: list[list[_Column]] = []
    for key, cases in match_cases(room, spec):
        column = _column(key, cases, known, ground)
        if column is None:
            continue
        if groups and _fits([*groups[-1], column], ground):
            groups[-1].append(column)
        elif _fits([column], ground):
            groups.append([column])
    return groups


def _column(
    key: str, cases: Sequence[Case], pieces: Mapping[str, Piece], ground: Ground
) -> _Column | None:
    """The slabs with grain of a column, rows from the floor up, each from left to right."""
    slabs = [
        (front.y.value, front.x.value, piece)
        for case in cases
        for front in case.fronts
        for piece in _slab(front, pieces)
    ]
    rows: list[_Column] = []
    for _, row in groupby(sorted(slabs, key=lambda one: one[:2]), key=lambda one: one[0]):
        own = [_Column(key, one.id, (one.length, one.width)) for *_, one in row]
        rows.append(_side_by_side(own, ground))
    if not rows:
        return None
    if len(rows) == 1:
        return rows[0]
    kerfs = ground.kerf * (len(rows) - 1)
    size = sum(row.size[0] for row in rows) + kerfs, max(row.size[1] for row in rows)
    return _Column(key, Match("", "along", tuple(row.of for row in rows)), size)


def _slab(front: Front, pieces: Mapping[str, Piece]) -> Iterator[Piece]:
    if front.construction == "slab":
        yield from (pieces[p] for p in front.parts if p in pieces and not pieces[p].turns)


def _side_by_side(columns: Sequence[_Column], ground: Ground) -> _Column:
    if len(columns) == 1:
        return columns[0]
    kerfs = ground.kerf * (len(columns) - 1)
    size = (
        max(column.size[0] for column in columns),
        sum(column.size[1] for column in columns) + kerfs,
    )
    of: list[_Member] = []
    for column in columns:
        inner = column.of
        of += inner.of if isinstance(inner, Match) and inner.way == "across" else [inner]
    return _Column(columns[0].case, Match("", "across", tuple(of)), size)


def _fits(columns: Sequence[_Column], ground: Ground) -> bool:
    length, width = _side_by_side(columns, ground).size
    return length <= ground.length and width <= ground.width
