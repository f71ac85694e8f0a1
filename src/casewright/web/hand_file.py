"""The plans in hand as a file beside the job, kitchen.plan; each is checked before it is used."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any, NamedTuple

from casewright.errors import CasewrightError
from casewright.job.json_file import read_json
from casewright.job.kept_plans import KeptPlanError, kept_solutions, plan_from
from casewright.job.load import LoadedJob
from casewright.job.recorded import recorded_by
from casewright.job.rest_plan import Rest, room_of
from casewright.outputs.files import OutputError, write_file
from casewright.web.hand_plan import HandPlan, plan_name
from casewright.web.shop_schema import ShopAnew

__all__ = ["Kept", "check_sum", "keep_plans", "kept_plans", "plan_path"]

_SCHEMA = "casewright/plan in hand/1"
_BEGINNING = b'{"schema":"casewright/plan in hand/'


class Kept(NamedTuple):
    """What a file keeps.

    Parameters
    ----------
    plans
        In the order in which they were made; none where the file is of no use.
    anew
        What was told when the rest was last planned anew.
    says
        Why it is of no use; empty: there is none, or it is good.
    """

    plans: tuple[HandPlan, ...] = ()
    anew: ShopAnew | None = None
    says: str = ""


def plan_path(job: Path) -> Path:
    """Where the plans of a job lie: kitchen.plan beside kitchen.toml."""
    path = job.with_suffix(".plan")
    return job.with_name(f"{job.name}.plan") if path == job else path


def keep_plans(job: Path, plans: Sequence[HandPlan], anew: ShopAnew | None) -> str:
    """Keep plans.

    Returns
    -------
    Why they could not be kept; empty: they are.
    """
    held = [_document(plan) for plan in plans], None if anew is None else anew.model_dump()
    told = {"schema": _SCHEMA, "sum": check_sum(*held), "plans": held[0], "anew": held[1]}
    path = plan_path(job)
    if not _is_ours(path):
        return f"The plan of cuts is not kept: {path.name} is a file of another kind."
    try:
        write_file(path, json.dumps(told, separators=(",", ":")).encode())
    except OutputError as error:
        return (
            f"The plan of cuts cannot be kept in {path.name} ({error.problem}): "
            "started again, the server works it out once more."
        )
    return ""


def check_sum(*content: object) -> str:
    """Check sum: the check of a plan looks at its cuts, not at each word about them."""
    text = json.dumps(content, separators=(",", ":"))
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def _is_ours(path: Path) -> bool:
    """Whether a file may be replaced: it is none, or began as one of ours, whole or not."""
    try:
        with path.open("rb") as stream:
            return stream.read(len(_BEGINNING)) in (_BEGINNING, b"")
    except FileNotFoundError:
        return True
    except OSError:
        return False


def _document(plan: HandPlan) -> dict[str, Any]:
    rest = plan.rest
    return {
        "name": plan.name,
        "entries": list(plan.entries),
        "rest": None if rest is None else {
            "lost": sorted(rest.lost), "held": sorted(rest.held), "after": dict(rest.after),
            "dropped": rest.dropped,
        },
        "sheets": None if plan.sheets is None else sorted(map(list, plan.sheets)),
        "solutions": kept_solutions(plan.breakdown, rest),
    }  # fmt: skip


def kept_plans(job: Path, loaded: LoadedJob) -> Kept:
    """Plans that were kept, each checked against the job as it was when it was made."""
    path = plan_path(job)
    if not path.exists():
        return Kept()
    try:
        data = read_json(path, "plans of cuts")
        if not isinstance(data, Mapping) or data.get("schema") != _SCHEMA:
            msg = "it is damaged: it is no such file"
            raise KeptPlanError(msg)
        if data["sum"] != check_sum(data["plans"], data["anew"]):
            msg = "it is damaged: it does not agree with its check sum"
            raise KeptPlanError(msg)
        return Kept(tuple(_plans(job, loaded, data.get("plans"))), _anew(data.get("anew")))
    except CasewrightError as error:
        why = str(error) if isinstance(error, KeptPlanError) else "it is damaged"
    except Exception:  # whatever shape it has, the job goes on without it
        why = "it is damaged"
    return Kept(says=f"The plan of cuts kept in {path.name} is not used: {why}. It is made anew.")


def _plans(job: Path, loaded: LoadedJob, rows: object) -> Iterator[HandPlan]:
    if not isinstance(rows, list) or not rows:
        msg = "it is damaged: no plan is in it"
        raise KeptPlanError(msg)
    for row in rows:
        entries, rest = _words(row["entries"]), _rest(row["rest"])
        then = recorded_by(job, frozenset(entries))
        breakdown = plan_from(room_of(loaded, then), row["solutions"], rest)
        name = plan_name(breakdown)
        if name != row["name"]:
            msg = "it is damaged: its cuts are not those of its name"
            raise KeptPlanError(msg)
        sheets = row["sheets"]
        yield HandPlan(
            breakdown, name, entries, then.marks.spoiled, rest,
            None if sheets is None else frozenset((str(path), int(n)) for path, n in sheets),
        )  # fmt: skip


def _rest(row: Any) -> Rest | None:
    if row is None:
        return None
    after = {str(key): int(count) for key, count in row["after"].items()}
    return Rest(
        frozenset(_words(row["lost"])), frozenset(_words(row["held"])), after, int(row["dropped"])
    )


def _words(given: object) -> tuple[str, ...]:
    return tuple(map(str, given)) if isinstance(given, list) else ()


def _anew(row: object) -> ShopAnew | None:
    return None if row is None else ShopAnew.model_validate(row)
