"""The job as a page is shown it first: names, pages, what was found, how far it is worked out."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.drawing.cased_wall import runs_on
from casewright.job.heights import has_heights
from casewright.job.island_layouts import open_islands
from casewright.room.model import Room
from casewright.web.editing import Editor
from casewright.web.live_job import LiveJob
from casewright.web.schema import (
    CaseView,
    FindingView,
    IslandView,
    JobView,
    ProblemView,
    QuestionView,
    RunView,
    Steps,
    WallView,
)
from casewright.web.snapshot import Standing

__all__ = ["job_view"]


def job_view(live: LiveJob, editor: Editor, build: str) -> JobView:
    """What a page shows first.

    Parameters
    ----------
    build
        Which build of the page is served.
    """
    standing = live.standing
    snapshot = standing.snapshot
    text = snapshot.loaded.file.text if snapshot else ""
    room = snapshot.worked.room if snapshot else None
    return JobView(
        name=room.spec.name if room else live.path.stem,
        file=live.path.name,
        unit=room.spec.unit if room else "in",
        build=build,
        steps=Steps.of(standing, live.version),
        pages=tuple(_pages(standing)),
        walls=tuple(_walls(room)) if room else (),
        runs=tuple(_runs(room)) if room else (),
        islands=tuple(_islands(room)) if room else (),
        has_heights=room is not None and has_heights(room),
        cases=tuple(
            CaseView(key=case.key, title=case.spec.title, kind=case.spec.kind)
            for case in room.cases
        ) if room else (),
        problems=tuple(map(ProblemView.of, standing.problems)),
        findings=tuple(map(FindingView.of, snapshot.findings)) if snapshot else (),
        questions=tuple(map(QuestionView.of, snapshot.questions)) if snapshot else (),
        sheets=_sheets(live),
        can_undo=editor.can_undo(text),
        can_redo=editor.can_redo(text),
        digest=snapshot.loaded.file.digest if snapshot else "",
    )  # fmt: skip


def _sheets(live: LiveJob) -> int | None:
    """Sheets to buy, of all goods, as last known [-]."""
    snapshot = live.standing.snapshot
    if snapshot is not None and snapshot.purchases is None and snapshot.count is not None:
        return snapshot.count.total
    planned = live.planned
    if planned is None or planned.purchases is None:
        return None
    plans = planned.purchases.breakdown.wanted
    return sum(plan.count for plan in plans if plan.kind == "sheets")


def _walls(room: Room) -> Iterator[WallView]:
    for key, wall in room.survey.walls.items():
        if runs_on(room, wall):
            yield WallView(key=key, title=wall.spec.title)


def _runs(room: Room) -> Iterator[RunView]:
    for run in room.runs:
        spec = run.spec
        free = any(case.spec.width is None or case.key in spec.solved for case in run.cases)
        yield RunView(
            key=spec.key, title=spec.title, wall=spec.on or None, cases=spec.cases, is_open=free
        )


def _islands(room: Room) -> Iterator[IslandView]:
    free = {island.key for island, _ in open_islands(room)}
    for island in room.islands:
        spec = island.spec
        yield IslandView(
            key=spec.key, title=spec.title, is_open=island.key in free,
            runs=tuple(run.spec.key for run in room.runs_of(island)),
        )  # fmt: skip


def _pages(standing: Standing) -> Iterator[str]:
    """Pages that have something on them, in the order of the work."""
    snapshot = standing.snapshot
    if snapshot is None:
        return
    room = snapshot.worked.room
    has = {
        "survey": bool(room.survey.walls),
        "layout": bool(room.runs),
        "cases": bool(room.boxes),
        "buy": True,
        "cut": True,
        "machine": bool(room.parts),
        "assemble": bool(room.boxes),
        "fronts": any(case.fronts for case in room.cases),
        "finish": bool(room.boxes),
        "install": bool(room.runs or room.free),
        "publish": not snapshot.worked.failures,
    }
    yield from (page for page, there in has.items() if there)
