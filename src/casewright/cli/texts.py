"""What the command line prints for people: plain lines that need no colour."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.dims import Unit, Why, shop_text
from casewright.findings import Finding, Question
from casewright.job.worked import WorkedJob

__all__ = ["check_lines", "parts_lines", "why_lines"]


def _finding(finding: Finding) -> Iterator[str]:
    yield f"  {finding.severity.value.upper()}  {finding.path}: {finding.says}"
    for remedy in finding.remedies:
        yield f"        - {remedy}"


def _question(question: Question) -> Iterator[str]:
    yield f"  ASK   {question.needs}: {question.because}"
    yield f"        {question.how}"
    if question.waiting:
        shown = ", ".join(question.waiting[:4])
        more = f" and {len(question.waiting) - 4} more" if len(question.waiting) > 4 else ""
        yield f"        waiting: {shown}{more}"


def check_lines(worked: WorkedJob) -> Iterator[str]:
    """What is open and what was found, then the sum."""
    room = worked.room
    for key, failure in worked.failures:
        yield f"  PROOF {key}: {failure.says} ({', '.join(failure.paths)})"
    for question in worked.questions:
        yield from _question(question)
    for finding in worked.findings:
        yield from _finding(finding)
    cases = f"{len(room.cases)} case{'s' if len(room.cases) != 1 else ''}"
    proof = "the proof of assembly failed" if worked.failures else "proved to go together"
    yield (
        f"{room.spec.name}: {cases}, {len(room.parts)} parts, {proof}; "
        f"{len(worked.questions)} open, {len(worked.findings)} found"
    )


def parts_lines(worked: WorkedJob) -> Iterator[str]:
    """A line for every piece: mark, path, what to cut, stock."""
    unit = worked.room.spec.unit
    rows = [
        (
            part.mark,
            part.path,
            f"{_text(part.blank.length.value, unit)} x {_text(part.blank.width.value, unit)}",
            part.stock,
            "waits" if part.waits_for else "",
        )
        for part in worked.room.parts
    ]
    rows.insert(0, ("mark", "part", "cut to (length x width)", "stock", ""))
    widths = [max(len(row[n]) for row in rows) for n in range(4)]
    for row in rows:
        cells = (cell.ljust(width) for cell, width in zip(row, widths, strict=False))
        yield f"{'  '.join(cells)}  {row[4]}".rstrip()


def _text(value: object, unit: Unit) -> str:
    return shop_text(value, unit)  # type: ignore[arg-type]


def why_lines(nodes: tuple[Why, ...], unit: Unit) -> Iterator[str]:
    """The chain under a number: each once, indented by how far down it stands."""
    by_path = {node.path: node for node in nodes}
    told: set[str] = set()
    stack = [(nodes[0], 0)]
    while stack:
        node, depth = stack.pop()
        told.add(node.path)
        yield from _node_lines(node, depth, unit)
        fresh = [by_path[p] for p in dict.fromkeys(node.args) if p not in told and p in by_path]
        told.update(child.path for child in fresh)
        stack.extend((child, depth + 1) for child in reversed(fresh))


def _node_lines(node: Why, depth: int, unit: Unit) -> Iterator[str]:
    pad = "  " * depth
    value = next(v for v in (node.built, node.cut, node.wanted) if v is not None)
    text = shop_text(value, unit) if node.power == 1 else str(value)
    formula = f" = {node.formula}" if node.formula and node.args else ""
    yield f"{pad}{node.path}{formula} = {text}"
    known = [
        (word, each)
        for word, each in (
            ("designed", node.designed), ("wanted", node.wanted),
            ("cut", node.cut), ("built", node.built),
        )
        if each is not None
    ]  # fmt: skip
    if len({each for _, each in known}) > 1:
        yield f"{pad}  " + ", ".join(f"{word} {shop_text(each, unit)}" for word, each in known)
    if node.origin is not None:
        tail = " ".join(
            each
            for each in (
                node.origin.note,
                f"[{node.origin.source}]" if node.origin.source else "",
                f"({node.origin.where})" if node.origin.where else "",
            )
            if each
        )
        yield f"{pad}  {node.origin.kind}: {tail}"
    for branch in node.branches if depth == 0 else ():
        yield f"{pad}  {branch}"
