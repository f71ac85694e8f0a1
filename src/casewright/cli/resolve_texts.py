"""What `resolve` prints for people: a proposal in its three columns, one below the other."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from casewright.cli.record_texts import change_text
from casewright.dims import Unit, shop_text, size_text
from casewright.dims.count_text import counted
from casewright.findings import Finding
from casewright.resolve import (
    Change,
    Clash,
    Conflict,
    FactChange,
    Kept,
    Misfit,
    Proposal,
    Recut,
    Remedy,
    Staying,
)
from casewright.room.fit_words import fit_problem

__all__ = ["has_kept", "outgrown_lines", "proposal_lines", "staying_lines"]

_MOST = 40


def proposal_lines(proposal: Proposal, unit: Unit) -> Iterator[str]:
    """What stays, what is to be made otherwise and why, what is impossible now and what helps."""
    yield from _kept(proposal, unit)
    yield from _changes(proposal, unit)
    yield from _impossible(proposal, unit)


def outgrown_lines(outgrown: Iterable[Finding]) -> Iterator[str]:
    """Runs that no longer hold as they were laid out, and what they would be now."""
    for number, finding in enumerate(outgrown):
        if not number:
            yield "LAY OUT ANEW, before more is cut of it:"
        yield f"  {finding.severity.name}  {finding.path}: {finding.says}"
        yield from (f"        - {remedy}" for remedy in finding.remedies)


def has_kept(staying: Staying | None) -> bool:
    """Whether pieces are cut as they were planned all the same."""
    return staying is not None and bool(staying.kept)


def staying_lines(staying: Staying | None) -> Iterator[str]:
    """What is cut as it was planned all the same, where that was asked for."""
    if staying is None:
        return
    kept = [each for each in staying.kept if each.is_changed]
    if not kept:
        yield "AS PLANNED: no piece can stay that would change"
        return
    proof = ", and no choice changes fewer" if staying.is_fewest else ""
    yield f"AS PLANNED all the same: {counted(len(kept), 'piece')}; every fit is kept{proof}"
    yield from _shortened([f"  {each.part.mark:4}  {each.part.path}" for each in kept])


def _kept(proposal: Proposal, unit: Unit) -> Iterator[str]:
    yield f"KEEP: {counted(len(proposal.kept), 'made piece')}"
    yield from _shortened([_kept_line(each, unit) for each in proposal.kept])
    if proposal.untouched:
        yield f"  {counted(proposal.untouched, 'piece')} still to be made as planned"


def _kept_line(kept: Kept, unit: Unit) -> str:
    part = kept.part
    sizes = {"length": part.blank.length, "width": part.blank.width}
    size = " x ".join(shop_text(dim.value, unit) for dim in sizes.values())
    other = " and ".join(
        f"{shop_text(sizes[name].wanted, unit)} in {name}" for name in kept.otherwise
    )
    words = f"; cut now it would be {other}, the rest goes by it as it is" if other else ""
    return f"  {part.mark:4}  {part.path}  {size}, {part.state}{words}"


def _changes(proposal: Proposal, unit: Unit) -> Iterator[str]:
    if not (proposal.changes or proposal.again):
        yield "CHANGE: nothing"
        return
    yield f"CHANGE: {counted(len(proposal.changes) + len(proposal.again), 'piece')}"
    groups: dict[tuple[FactChange, ...], list[Change]] = {}
    for change in proposal.changes:
        groups.setdefault(change.because, []).append(change)
    for because, changes in groups.items():
        yield f"  because {_because(because, unit)}:"
        found = [change.difference for change in changes]
        lines = [f"  {each.mark:4}  {each.path}  {change_text(each)}" for each in found]
        yield from _shortened(lines)
    if proposal.again:
        yield "  because the piece was spoiled:"
        yield from _shortened([_again(each, unit) for each in proposal.again])


def _again(recut: Recut, unit: Unit) -> str:
    part, offcut = recut.part, recut.offcut
    size = " x ".join(shop_text(d.value, unit) for d in (part.blank.length, part.blank.width))
    if offcut is None:
        source = f"no offcut on hand holds it; {_on_sheets(recut.sheets)}"
    else:
        sides = " x ".join(shop_text(d, unit) for d in (offcut.length, offcut.width))
        source = f"out of {offcut.path}, {sides}"
    return f"  {part.mark:4}  {part.path}  cut it again, {size}, {source}"


def _on_sheets(more: int | None) -> str:
    if more is None:
        return "it goes onto the stock still to be cut"
    if not more:
        return "it fits onto the sheets still to be cut"
    return f"beside what is still to be cut it takes {counted(more, 'more sheet')}"


def _impossible(proposal: Proposal, unit: Unit) -> Iterator[str]:
    if not proposal.stops:
        yield "IMPOSSIBLE NOW: nothing"
        return
    yield f"IMPOSSIBLE NOW: {counted(proposal.stops, 'thing')}"
    for conflict in proposal.conflicts:
        yield from _conflict(conflict, unit)
    for misfit in proposal.misfits:
        yield from _misfit(misfit, unit)
    for clash in proposal.clashes:
        yield from _clash(clash, unit)


def _conflict(conflict: Conflict, unit: Unit) -> Iterator[str]:
    yield f"  STOP  {fit_problem(conflict.fit, unit)}"
    if conflict.because:
        yield f"        because {_because(conflict.because, unit)}"
    yield from _remedies(conflict.remedies)


def _misfit(misfit: Misfit, unit: Unit) -> Iterator[str]:
    part, dim = misfit.part, misfit.dim
    yield (
        f"  STOP  {part.mark} ({part.path}) is {size_text(dim.value, unit)} in {misfit.side}; "
        f"what is made beside it wants {size_text(dim.wanted, unit)}"
    )
    for says in misfit.says:
        yield f"        {says}"
    yield from _remedies(misfit.remedies)


def _clash(clash: Clash, unit: Unit) -> Iterator[str]:
    yield f"  STOP  {clash.path} does not go together as its pieces are"
    for says in clash.says:
        yield f"        {says}"
    if clash.because:
        yield f"        because {_because(clash.because, unit)}"
    yield from _remedies(clash.remedies)


def _remedies(remedies: tuple[Remedy, ...]) -> Iterator[str]:
    for remedy in remedies:
        costs = [f"about {remedy.minutes} min"] if remedy.minutes else []
        costs += [remedy.stock] if remedy.stock else []
        told = f" ({', '.join(costs)})" if costs else ""
        yield f"        - {remedy.rung}: {remedy.says}{told}"


def _because(changes: tuple[FactChange, ...], unit: Unit) -> str:
    return "; ".join(_fact(change, unit) for change in changes[:3]) + (
        f"; and {len(changes) - 3} more" if len(changes) > 3 else ""
    )


def _fact(change: FactChange, unit: Unit) -> str:
    fine = change.path.endswith("thickness")
    sizes = [size for size in (change.old, change.new) if size is not None]
    text = " -> ".join(size_text(size, unit, calliper=fine) for size in sizes)
    how = change.how or "no longer counted"
    return f"{change.path} {text} ({how})"


def _shortened(lines: list[str]) -> Iterator[str]:
    yield from lines[:_MOST]
    if len(lines) > _MOST:
        yield f"  and {len(lines) - _MOST} more"
