"""`resolve --json`: a proposal as data. See docs/documents.md."""

from __future__ import annotations

from typing import Any

from casewright.dims import Unit, length_json
from casewright.job.documents import head_json
from casewright.job.record_documents import difference_json
from casewright.job.resolving import Resolved
from casewright.record import Entry
from casewright.resolve import Clash, Conflict, FactChange, Misfit, Recut, Remedy, Staying
from casewright.room.specs import JobSpec

__all__ = ["resolve_document"]

_Json = dict[str, Any]


def resolve_document(spec: JobSpec, resolved: Resolved, yes: Entry | None) -> _Json:
    """What is kept, changed and impossible now, each with what it is because of."""
    proposal, unit = resolved.proposal, spec.unit
    return {
        **head_json("resolve", spec),
        "since": resolved.since.id if resolved.since else None,
        "accepted": yes.id if yes else None,
        "facts": [
            {
                "path": fact.path,
                "old": None if fact.old is None else length_json(fact.old, unit),
                "new": length_json(fact.new, unit),
                "how": fact.how,
            }
            for fact in proposal.facts
        ],
        "kept": [
            {"path": each.part.path, "state": each.part.state, "otherwise": list(each.otherwise)}
            for each in proposal.kept
        ],
        "as_planned": _as_planned(resolved.staying),
        "untouched": proposal.untouched,
        "changes": [
            {**difference_json(each.difference), "because": _paths(each.because)}
            for each in proposal.changes
        ],
        "again": [_again(each, unit) for each in proposal.again],
        "impossible": [_conflict(each, unit) for each in proposal.conflicts],
        "misfits": [_misfit(each, unit) for each in proposal.misfits],
        "clashes": [_clash(each, unit) for each in proposal.clashes],
        "outgrown": [
            {"path": each.path, "says": each.says, "remedies": list(each.remedies)}
            for each in resolved.outgrown
        ],
    }


def _as_planned(staying: Staying | None) -> _Json | None:
    """Pieces cut as they were planned all the same; null where that was not asked for."""
    if staying is None:
        return None
    kept = [each.part.path for each in staying.kept if each.is_changed]
    return {"kept": kept, "proved_fewest": staying.is_fewest}


def _again(recut: Recut, unit: Unit) -> _Json:
    size = recut.part.blank
    return {
        "path": recut.part.path,
        "length": length_json(size.length.value, unit),
        "width": length_json(size.width.value, unit),
        "offcut": recut.offcut.path if recut.offcut else None,
        "more_sheets": recut.sheets,
    }


def _conflict(conflict: Conflict, unit: Unit) -> _Json:
    fit = conflict.fit
    return {
        "fit": fit.path,
        "owner": fit.owner,
        "gap": length_json(fit.gap.value, unit),
        "low": length_json(fit.low, unit),
        "high": length_json(fit.high, unit),
        "because": _paths(conflict.because),
        "remedies": _remedies(conflict.remedies, unit),
    }


def _misfit(misfit: Misfit, unit: Unit) -> _Json:
    size = misfit.dim
    return {
        "path": misfit.part.path,
        "side": misfit.side,
        "is": length_json(size.value, unit),
        "wanted": length_json(size.wanted, unit),
        "says": list(misfit.says),
        "remedies": _remedies(misfit.remedies, unit),
    }


def _clash(clash: Clash, unit: Unit) -> _Json:
    return {
        "path": clash.path,
        "says": list(clash.says),
        "off": [
            {
                "path": move.part.path,
                "side": move.side,
                "is": length_json(move.dim.value, unit),
                "wanted": length_json(move.dim.wanted, unit),
            }
            for move in clash.off
        ],
        "because": _paths(clash.because),
        "remedies": _remedies(clash.remedies, unit),
    }


def _remedies(remedies: tuple[Remedy, ...], unit: Unit) -> list[_Json]:
    return [
        {
            "rung": each.rung,
            "says": each.says,
            "minutes": each.minutes,
            "stock": each.stock,
            "sizes": {path: length_json(size, unit) for path, size in each.sizes},
        }
        for each in remedies
    ]


def _paths(changes: tuple[FactChange, ...]) -> list[str]:
    return [change.path for change in changes]
