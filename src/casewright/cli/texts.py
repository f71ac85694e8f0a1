"""What the command line prints for people: plain lines that need no colour."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from casewright.casework.parts import Part
from casewright.dims import Origin, Unit, Why, shop_text
from casewright.findings import Finding, Question, findings_together, questions_together
from casewright.job.reasons import number_text, short_name
from casewright.job.worked import WorkedJob
from casewright.room.forecast_words import cause_text, fine_text, tool_text
from casewright.shop import Shop
from casewright.sources import SOURCES, source_words

__all__ = ["check_lines", "origin_text", "parts_lines", "why_lines"]


def _findings(findings: Sequence[Finding]) -> Iterator[str]:
    """Of one rule, with one set of remedies; where all say the same, it is said once."""
    first = findings[0]
    paths: dict[str, list[str]] = {}
    for each in findings:
        paths.setdefault(each.says, []).append(each.path)
    lines = [f"{', '.join(where)}: {says}" for says, where in paths.items()]
    head = f"  {first.severity.value.upper()}  "
    if len(lines) == 1:
        yield head + lines[0]
    else:
        yield f"{head}{first.rule}, {len(findings)} times"
        yield from (f"        {line}" for line in lines)
    yield from (f"        - {remedy}" for remedy in first.remedies)
    if first.source:
        yield f"        source: {source_words(first.source)}"


def _questions(questions: Sequence[Question]) -> Iterator[str]:
    """Asked for one reason."""
    first = questions[0]
    if len(questions) == 1:
        yield f"  ASK   {first.needs}: {first.because}"
        yield from _answer(first, "        ")
        return
    yield f"  ASK   {len(questions)} things: {first.because}"
    for each in questions:
        yield f"        {each.needs}"
        yield from _answer(each, "          ")


def _answer(question: Question, indent: str) -> Iterator[str]:
    yield f"{indent}{question.how}"
    if question.waiting:
        shown = ", ".join(question.waiting[:4])
        more = f" and {len(question.waiting) - 4} more" if len(question.waiting) > 4 else ""
        yield f"{indent}waiting: {shown}{more}"


def check_lines(worked: WorkedJob) -> Iterator[str]:
    """What is open and what was found, then the sum."""
    room = worked.room
    for key, failure in worked.failures:
        yield f"  PROOF {key}: {failure.says} ({', '.join(failure.paths)})"
    for questions in questions_together(worked.questions):
        yield from _questions(questions)
    for findings in findings_together(worked.findings):
        yield from _findings(findings)
    cases = f"{len(room.boxes)} case{'s' if len(room.boxes) != 1 else ''}"
    proof = "proved to go together" if worked.holds else "does not go together with these goods"
    if worked.failures:
        proof = "the proof of assembly failed"
    yield (
        f"{room.spec.name}: {cases}, {len(room.parts)} parts, {proof}; "
        f"{len(worked.questions)} open, {len(worked.findings)} found"
    )


def parts_lines(worked: WorkedJob) -> Iterator[str]:
    """Under the name of each stock a line for every piece: mark, what to cut, state, path.

    A star where it waits for an answer, a plus where it waits for a reading. The path, which may
    be long, stands last: so lines seldom fold.
    """
    from casewright.resolve import hold_points, readings_awaited  # nothing else here needs it

    room = worked.room
    read = readings_awaited(hold_points(room))
    rows = {
        part.path: _part_row(part, room.spec.unit, waits=part.path in read) for part in room.parts
    }
    is_begun = any(row[2] for row in rows.values())
    heads = ("mark", "length x width", "state" if is_begun else "", "part")
    wide = [max(len(row[n]) for row in (heads, *rows.values())) for n in range(3)]

    def line(row: tuple[str, ...]) -> str:
        columns = [cell.ljust(width) for cell, width in zip(row, wide, strict=False) if width]
        return "  ".join((*columns, row[-1]))

    yield line(heads)
    for stock in dict.fromkeys(part.stock for part in room.parts):
        yield f"{stock}: {room.spec.stock[stock].title}"
        yield from (line(rows[part.path]) for part in room.parts if part.stock == stock)
    if any(part.waits_for for part in room.parts):
        yield "* not to be cut yet: `casewright check` says what it waits for"
    if read:
        yield "+ waits at a hold point: `casewright forecast` says what is measured first"


def _part_row(part: Part, unit: Unit, *, waits: bool) -> tuple[str, str, str, str]:
    size = f"{_text(part.blank.length.value, unit)} x {_text(part.blank.width.value, unit)}"
    state = "" if part.state == "planned" else part.state
    mark = f"{part.mark}{'*' if part.waits_for else ''}{'+' if waits else ''}"
    return (mark, size, state, part.path)


def _text(value: object, unit: Unit) -> str:
    return shop_text(value, unit)  # type: ignore[arg-type]


def why_lines(nodes: tuple[Why, ...], unit: Unit, shop: Shop | None = None) -> Iterator[str]:
    """The chain under a number: each once, indented by how far down it stands.

    Parameters
    ----------
    shop
        Whose tools make it; None: how far it strays is not told.
    """
    asked = nodes[0].path
    by_path = {node.path: node for node in nodes}
    told = {asked}
    stack = [(nodes[0], 0)]
    while stack:
        node, depth = stack.pop()
        children = [by_path[p] for p in dict.fromkeys(node.args) if p in by_path]
        fresh = [child for child in children if child.path not in told]
        told.update(child.path for child in fresh)
        yield from _node_lines(node, depth, asked, unit)
        if depth == 0 and shop is not None:
            yield from _strays_lines(node, shop, unit)
        leaves = [child for child in fresh if not child.args]
        width = max((len(short_name(leaf.path, asked)) for leaf in leaves), default=0)
        for leaf in leaves:
            yield from _leaf_lines(leaf, depth + 1, (asked, width), unit)
        stack.extend((child, depth + 1) for child in reversed(fresh) if child.args)


def _value(node: Why, unit: Unit) -> str:
    known = [value for value in (node.built, node.cut, node.wanted) if value is not None]
    return number_text(known[0], unit, node.power, node.path)


def _node_lines(node: Why, depth: int, asked: str, unit: Unit) -> Iterator[str]:
    pad = "  " * depth
    name = node.path if depth == 0 else short_name(node.path, asked)
    formula = f" = {node.formula}" if node.args else ""
    origin = f"   {origin_text(node.origin)}" if node.origin else ""
    yield f"{pad}{name}{formula} = {_value(node, unit)}{origin}"
    yield from _notes(node, f"{pad}  ", unit, all_branches=depth == 0)


def _strays_lines(node: Why, shop: Shop, unit: Unit) -> Iterator[str]:
    """How far it strays from its number, and what the shop's readings say of its tool."""
    if not node.causes:
        return
    told = (f"{fine_text(cause.sigma, unit)} by {cause_text(cause)}" for cause in node.causes)
    yield f"  strays {', '.join(told)}"
    for tool in dict.fromkeys(cause.tool for cause in node.causes):
        says = tool_text(shop, tool, unit)
        if says:
            yield f"  {says}"


def _leaf_lines(leaf: Why, depth: int, column: tuple[str, int], unit: Unit) -> Iterator[str]:
    pad, (asked, width) = "  " * depth, column
    origin = origin_text(leaf.origin) if leaf.origin else ""
    name = short_name(leaf.path, asked).ljust(width)
    yield f"{pad}{name}  {_value(leaf, unit):8} {origin}".rstrip()
    yield from _notes(leaf, f"{pad}  ", unit, all_branches=False)


def _notes(node: Why, pad: str, unit: Unit, *, all_branches: bool) -> Iterator[str]:
    values = {
        "designed": node.designed, "wanted": node.wanted, "cut": node.cut, "built": node.built,
    }  # fmt: skip
    known = {word: value for word, value in values.items() if value is not None}
    if len(set(known.values())) > 1:
        texts = (
            f"{word} {number_text(value, unit, node.power, node.path)}"
            for word, value in known.items()
        )
        yield pad + ", ".join(texts)
    for branch in dict.fromkeys(node.branches):
        if all_branches or not branch.startswith("not: "):
            yield pad + branch


def origin_text(origin: Origin) -> str:
    """Who decided a number, in words: 'chosen: kitchen.toml line 12'."""
    source = ""
    if origin.source:
        source = SOURCES[origin.source].title if origin.source in SOURCES else origin.source
    known = (origin.note, source, origin.where)
    return f"{origin.kind}: {', '.join(dict.fromkeys(word for word in known if word))}"
