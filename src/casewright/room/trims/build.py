"""The trims of all runs, built once the cases stand."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from casewright.casework.house import House
from casewright.dims import Dim
from casewright.findings import Finding, Severity
from casewright.room.model import Run
from casewright.room.seam_strips import build_seam_strips
from casewright.room.seat_lids import build_seat_lid
from casewright.room.specs import JobSpec
from casewright.room.trims.bends import bends_of
from casewright.room.trims.crowns import build_crown
from casewright.room.trims.light_rails import build_light_rails
from casewright.room.trims.model import Trim
from casewright.room.trims.scribe_mouldings import build_scribe_moulding
from casewright.room.trims.toe_skins import build_toe_skins
from casewright.sources import INCH
from casewright.survey.survey import Survey

__all__ = ["build_trims"]

_OPEN = {"in": INCH / 32, "mm": Fraction(4, 5)}
"""Widest joint of a trim that is filled [mm]."""


def build_trims(
    house: House, spec: JobSpec, runs: Sequence[Run], measured: Survey
) -> tuple[tuple[Run, ...], tuple[Finding, ...]]:
    """The runs with their trims, in the order they are put on at the wall."""
    by_key = {run.spec.key: run for run in runs}
    done: list[Run] = []
    findings: list[Finding] = []
    for run in runs:
        asked, bends = run.spec.trims, bends_of(spec, run, by_key)
        first = (build_seam_strips(house, spec, run), build_seat_lid(house, run))
        trims: list[Trim] = [trim for trim in first if trim is not None]
        crowns, found = build_crown(house, spec, run, by_key, measured, bends)
        trims.extend(crowns)
        findings.extend(found)
        if asked.light_rail is not None:
            known = (spec, by_key)
            trims.extend(build_light_rails(house, run, asked.light_rail, bends, known))
        if asked.scribe_moulding is not None:
            trims.append(build_scribe_moulding(house, run, asked.scribe_moulding))
        if asked.toe_skin is not None:
            wall = measured.walls.get(run.spec.on)
            trims.extend(build_toe_skins(house, run, asked.toe_skin, wall, bends))
        findings.extend(_without_saw(house, run, trims))
        done.append(replace(run, trims=tuple(trims)) if trims else run)
        for trim in trims:
            _hold(house, trim)
    return tuple(done), tuple(findings)


def _without_saw(house: House, run: Run, trims: Sequence[Trim]) -> Iterator[Finding]:
    """Strips to mitre at a diagonal corner, and no saw whose table turns."""
    for trim in trims:
        bends = any(cut.is_bend for each in trim.pieces for cut in (each.left, each.right))
        if bends and trim.kind in ("toe skin", "light rail") and not house.shop.has("mitre saw"):
            yield Finding(
                rule="no mitre saw",
                severity=Severity.CARE,
                path=trim.path,
                says=f"the {trim.title} of {run.spec.title} turns across a diagonal corner, and "
                "the shop has no mitre saw",
                source="common practice",
                remedies=(
                    "the table saw's blade tilted 22.5 degrees, the strip flat at the mitre gauge",
                    "a mitre box and a hand saw, the strip on edge in it",
                    "a mitre saw borrowed for the day",
                ),
            )


def _hold(house: House, trim: Trim) -> None:
    """Declare that each piece is long enough for what was read; what is too long is trimmed.

    A joint that opens no more than 1/32 in, or 0.8 mm, is filled (common practice). Where a trim
    is joined along the run the pieces are marked at the joint.
    """
    if not trim.open_lengths or not trim.is_read:
        return
    open_ = _OPEN[house.unit]
    along = [piece.part for piece in trim.along]
    for part in trim.parts:
        if part in along and len(along) > 1:
            continue
        length = part.finished.length
        wanted = length.args[0]
        if isinstance(wanted, Dim):
            place = house.chain.place(part.path)
            place.fit("left_to_trim", length - wanted, -open_, 16 * open_, part.path)
