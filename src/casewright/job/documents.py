"""JSON documents that other programs may rely on. See docs/documents.md."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from casewright.casework.features import Bores, Cut, Feature, Setup
from casewright.casework.parts import Part, Size
from casewright.dims import Dim, Unit, Why, length_json
from casewright.errors import CasewrightError
from casewright.findings import Finding, Question
from casewright.job.fingerprint import fingerprint
from casewright.job.reasons import number_text
from casewright.job.worked import WorkedJob
from casewright.room.specs import JobSpec

__all__ = [
    "check_document",
    "errors_document",
    "finding_json",
    "head_json",
    "parts_document",
    "paths_document",
    "question_json",
    "why_document",
]

_Json = dict[str, Any]


def head_json(name: str, spec: JobSpec) -> _Json:
    """What every document of a job begins with."""
    return {
        "schema": f"casewright/{name}/1",
        "job": spec.name,
        "fingerprint": fingerprint(spec),
        "unit": spec.unit,
    }


def _length(dim: Dim | None, unit: Unit) -> _Json | None:
    if dim is None:
        return None
    return (
        {**length_json(dim.value, unit), "path": dim.path}
        if dim.path
        else dict(length_json(dim.value, unit))
    )


def errors_document(name: str, error: CasewrightError) -> _Json:
    """What a command with `--json` prints when its input has no meaning.

    Parameters
    ----------
    name
        Of the document that was asked for.
    """
    document: _Json = {
        "schema": f"casewright/{name}/1",
        "job": None,
        "fingerprint": None,
        "errors": [
            {
                "file": problem.location.file,
                "line": problem.location.line,
                "col": problem.location.column,
                "word": problem.location.word,
                "what": problem.what,
                "want": problem.want,
            }
            for problem in error.problems
        ],
    }
    if name == "check":
        document |= {"findings": [], "questions": [], "proof": None}
    return document


def check_document(worked: WorkedJob) -> _Json:
    """`check --json`: errors (none), findings, questions, proof."""
    return {
        **head_json("check", worked.room.spec),
        "errors": [],
        "findings": [finding_json(f) for f in worked.findings],
        "questions": [question_json(q) for q in worked.questions],
        "proof": {
            "holds": worked.holds,
            "failures": [
                {"case": key, "check": f.check, "paths": list(f.paths), "says": f.says}
                for key, f in worked.failures
            ],
        },
    }


def finding_json(finding: Finding) -> _Json:
    """A finding as data."""
    return {
        "rule": finding.rule,
        "severity": finding.severity.value,
        "path": finding.path,
        "says": finding.says,
        "measured": finding.measured,
        "limit": finding.limit,
        "source": finding.source,
        "remedies": list(finding.remedies),
    }


def question_json(question: Question) -> _Json:
    """A question as data."""
    return {
        "path": question.path,
        "needs": question.needs,
        "because": question.because,
        "waiting": list(question.waiting),
        "how": question.how,
    }


def parts_document(worked: WorkedJob) -> _Json:
    """`parts --json`: one entry for every physical piece."""
    from casewright.resolve import hold_points, readings_awaited  # nothing else here needs it

    spec = worked.room.spec
    read = readings_awaited(hold_points(worked.room))
    return {
        **head_json("parts", spec),
        "parts": [_part(part, spec.unit, read.get(part.path, ())) for part in worked.room.parts],
    }


def _size(size: Size, unit: Unit) -> _Json:
    return {
        "length": _length(size.length, unit),
        "width": _length(size.width, unit),
        "thickness": _length(size.thickness, unit),
    }


def _part(part: Part, unit: Unit, read: Sequence[str]) -> _Json:
    placed = part.placed
    return {
        "path": part.path,
        "mark": part.mark,
        "case": part.case,
        "role": part.role,
        "title": part.title,
        "hand": part.hand,
        "stock": part.stock,
        "blank": _size(part.blank, unit),
        "finished": _size(part.finished, unit),
        "grain": part.grain,
        "bands": [
            {
                "edge": edge.edge,
                "kind": edge.kind,
                "thickness": _length(edge.thickness, unit),
                "stock": edge.stock,
            }
            for edge in part.edges
        ],
        "features": [_feature(feature, unit) for feature in part.features],
        "placement": {
            "corner": [_length(d, unit) for d in (placed.x, placed.y, placed.z)],
            "lies": " ".join(str(direction) for direction in placed.orientation),
        },
        "state": part.state,
        "waits_for": list(part.waits_for),
        "reads_first": list(read),
    }


def _feature(feature: Feature, unit: Unit) -> _Json:
    common = {"path": feature.path, "kind": feature.kind, "face": feature.face}
    tail = {"for": feature.asked_by, "setup": _setup(feature.setup, unit)}
    if isinstance(feature, Cut):
        return {
            **common,
            "from": feature.datum,
            "at": _length(feature.at, unit),
            "runs": feature.runs,
            "size": {
                "width": _length(feature.width, unit),
                "depth": _length(feature.depth, unit),
                "start": _length(feature.start, unit),
                "end": _length(feature.end, unit),
            },
            **tail,
        }
    return {**common, **_bores(feature, unit), **tail}


def _bores(feature: Bores, unit: Unit) -> _Json:
    return {
        "from": [feature.datum_l, feature.datum_w],
        "at": [[_length(a, unit), _length(b, unit)] for a, b in feature.places],
        "size": {
            "diameter": _length(feature.diameter, unit),
            "depth": _length(feature.depth, unit),
        },
        "toward": feature.toward,
    }


def _setup(setup: Setup, unit: Unit) -> _Json:
    return {
        "tool": setup.tool,
        "fence": _length(setup.fence, unit),
        "depth": _length(setup.depth, unit),
        "passes": setup.passes,
        "bit": setup.bit,
        "bit_size": _length(setup.bit_size, unit),
        "stop": _length(setup.stop, unit),
        "collar": _length(setup.collar, unit),
        "check": {"what": setup.check_words, "size": _length(setup.check, unit)},
        "cautions": list(setup.cautions),
    }


def why_document(spec: JobSpec, nodes: tuple[Why, ...]) -> _Json:
    """`why --json`: a flat list of nodes, the one asked for first."""
    return {**head_json("why", spec), "nodes": [_node(node, spec.unit) for node in nodes]}


def paths_document(spec: JobSpec, paths: list[str]) -> _Json:
    """`why --json` without a path: what can be asked."""
    return {**head_json("paths", spec), "paths": paths}


def _node(node: Why, unit: Unit) -> _Json:
    def value(number: Any) -> Any:
        if number is None:
            return None
        if node.power == 1:
            return length_json(number, unit)
        return {"value": str(number), "text": number_text(number, unit, node.power, node.path)}

    origin = node.origin
    return {
        "path": node.path,
        "formula": node.formula,
        "op": node.op,
        "args": list(node.args),
        "designed": value(node.designed),
        "wanted": value(node.wanted),
        "cut": value(node.cut),
        "built": value(node.built),
        "origin": None
        if origin is None
        else {
            "kind": origin.kind,
            "note": origin.note,
            "source": origin.source,
            "where": origin.where,
        },
        "causes": [cause.key for cause in node.causes],
        "strays": [
            {
                "key": cause.key,
                "tool": cause.tool,
                "sigma": length_json(cause.sigma, unit),
                "limit": length_json(cause.limit, unit),
                "systematic": cause.bias,
            }
            for cause in node.causes
        ],
        "branches": list(node.branches),
    }
