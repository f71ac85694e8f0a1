"""Thin strips: what they are milled from, and the brads that hold them."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.brads import fastener_row
from casewright.casework.fronts.leaves import report
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.dims import Dim, tell
from casewright.findings import Finding, Severity
from casewright.stock import THINNEST_SOLD, Board, milling_source

__all__ = ["milled_from", "strip_fastenings"]

# A brad goes at least this far into the wood behind a strip, and ends this far short of its back.
_BITE = Fraction(6)
_SHORT = Fraction(3, 2)


def milled_from(maker: Maker, stock: str) -> str:
    """What a strip of that stock is milled from, in words; empty when it is bought so thin."""
    goods = maker.house.stock[stock]
    if not isinstance(goods, Board) or goods.thickness.value >= THINNEST_SOLD:
        return ""
    source = milling_source(goods, maker.house.stock, maker.style("strip_waste").value)
    name = source.title if source else "thicker boards"
    return f"{name}: rip to width, resaw, plane to thickness"


def strip_fastenings(
    maker: Maker, joint: str, strip: Outline, into: str, behind: Dim, *, line: Dim | None = None
) -> tuple[Fastening, ...]:
    """Glue, and brads where the job has some that hold without coming through.

    Parameters
    ----------
    joint
        Name of the joint inside the case.
    into
        Path of the part the strip lies on.
    behind
        Thickness of that part [mm].
    line
        Of the brads, from its edge w0 [mm]; None: its middle.
    """
    glue = Fastening("glue", 1, None, (strip.path,), into)
    brad = _brad(maker, strip.thickness, behind)
    if brad is None:
        _tell(maker, strip, behind)
        return (glue,)
    row = fastener_row(
        maker, joint, strip.length, "brads along the strip",
        through=strip.path, into=into, screw=brad, line=("w0", line or strip.width / 2),
    )  # fmt: skip
    return (glue, row)


def _brad(maker: Maker, strip: Dim, behind: Dim) -> Dim | None:
    """The longest brad of the job that bites and stays short of the far face."""
    low = strip.value + _BITE
    high = strip.value + behind.value - _SHORT
    brads = [maker.house.screw(name) for name in ("brad", "back_brad")]
    fit = [brad for brad in brads if low <= brad.value <= high]
    return max(fit, key=lambda brad: brad.value, default=None)


def _tell(maker: Maker, strip: Outline, behind: Dim) -> None:
    """Say which brads would do."""
    path = strip.path.rpartition(".")[0]
    low, high = strip.thickness, strip.thickness + behind
    owned = [maker.house.screw(name) for name in ("brad", "back_brad")]
    own = maker.reckoning("brads for strips", path)
    least, most = own.text(low), own.text(high, "most")
    report(
        maker,
        Finding(
            rule="brads for strips",
            severity=Severity.NOTE,
            path=path,
            says="none of the job's brads holds the strips without coming through: they are "
            "glued and clamped",
            measured=" and ".join(own.text(brad).text for brad in owned),
            limit=f"longer than {least.text}, shorter than {most.text}",
            source="common practice",
            remedies=(
                "clamp with cauls until the glue is dry",
                tell("brads between {} and {} long", least, most),
            ),
            numbers=own.numbers,
        ),
    )
