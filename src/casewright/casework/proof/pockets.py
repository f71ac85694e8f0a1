"""Pockets: each leaves its board mid-thickness, through a joint, and ends inside the mate."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from fractions import Fraction

from casewright.casework.proof.assembled import Assembled
from casewright.casework.proof.failure import Failure
from casewright.casework.proof.pocket_screws import PARTS, TANGENT, PocketScrew, screws_of
from casewright.geometry import Box, subtract

__all__ = ["check_pockets"]

# How far off the middle of the end's thickness a screw may come out: what a jig's stop and a
# test piece give (common practice).
_OFF_MIDDLE = Fraction(1, 4)


def check_pockets(case: Assembled, screws: Iterable[PocketScrew]) -> Iterator[Failure]:
    """Pockets whose screws miss, and joints whose screws have not a pocket each."""
    counted: Counter[tuple[str, str]] = Counter()
    for screw in screws:
        paths = (screw.row.bores.path, screw.board)
        yield from _check_exit(case, screw)
        if screw.joint is None:
            yield Failure("pockets", paths, "a pocket's screw comes out where nothing is joined")
            continue
        counted[screw.joint.path, screw.board] += 1
        if screw.metal is None:
            if screws_of(screw.joint, screw.board) is not None:
                says = "a pocket's screws are too short to reach what they hold"
                yield Failure(
                    "pockets", (*paths, screw.joint.path), says, mended_by="a longer one"
                )
        else:
            rest = subtract(screw.metal, case.solids[screw.mate].pieces)
            if rest:
                says = f"a pocket's screw does not stay inside {screw.mate}"
                yield Failure(
                    "pockets", (*paths, screw.mate), says, _out(case, screw),
                    mended_by="a shorter one" if _is_too_long(case, screw, rest) else None,
                )  # fmt: skip
    yield from _check_counts(case, counted)


def _check_exit(case: Assembled, screw: PocketScrew) -> Iterator[Failure]:
    half = case.solids[screw.board].size[2] * PARTS // 2
    off = max(abs(screw.run * bound - half) for bound in TANGENT)
    if off > case.units.down(_OFF_MIDDLE) * PARTS:
        says = "a pocket's screw does not leave the board at the middle of its thickness"
        paths = (screw.row.bores.path, screw.board)
        yield Failure("pockets", paths, says, Fraction(off, case.units.per_mm * PARTS))


def _is_too_long(case: Assembled, screw: PocketScrew, rest: list[Box]) -> bool:
    """Whether all that comes out of the mate does so on its far side."""
    metal, outer = screw.metal, case.solids[screw.mate].outer
    if metal is None or screw.joint is None:
        return False
    axis = case.solids[screw.board].way(screw.row.bores.toward or "l0").axis
    aside = [n for n in range(3) if n != axis]
    inside = all(
        outer[2 * n] <= metal[2 * n] and metal[2 * n + 1] <= outer[2 * n + 1] for n in aside
    )
    return inside and not any(piece.meets(outer) for piece in rest)


def _out(case: Assembled, screw: PocketScrew) -> Fraction:
    """How far the screw's envelope reaches out of the mate's box [mm]."""
    metal, outer = screw.metal, case.solids[screw.mate].outer
    if metal is None:
        return Fraction(0)
    beyond = max(
        max(outer[n] - metal[n], metal[n + 1] - outer[n + 1], 0) for n in (0, 2, 4)
    )  # fmt: skip
    return case.units.length(beyond)


def _check_counts(case: Assembled, counted: Counter[tuple[str, str]]) -> Iterator[Failure]:
    """Every pocket screw on the list has its pocket, every pocket its screw."""
    for joint in case.joints:
        for board in dict.fromkeys((joint.one.part, joint.other.part)):
            held = screws_of(joint, board)
            listed = 0 if held is None else held.count
            if listed != counted[joint.path, board]:
                says = (
                    f"{listed} pocket screws are listed for {counted[joint.path, board]} pockets"
                )
                yield Failure("pockets", (joint.path, board), says)
