"""Why a number is what it is: the formula, its numbers, and where each of them ends."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from casewright.dims.causes import Cause
from casewright.dims.chain import Branch, Chain
from casewright.dims.dim import Dim, Origin

__all__ = ["Why", "explain", "formula_text", "why"]

_LOOSE = {"+": 1, "-": 1, "total": 1, "*": 2, "/": 2}
_SIGNS = {"+": " + ", "-": " - ", "total": " + ", "*": " x ", "/": " / "}


@dataclass(frozen=True, slots=True)
class Why:
    """One named number of an explanation.

    Parameters
    ----------
    path, formula, op, args
        Name; formula in words with numbers; operator; paths of the named dims it rests on.
    designed, wanted, cut, built
        The four values [mm]; designed is None where no other build was given.
    power
        1 for a length [-].
    origin
        Where the formula ends, or None.
    causes
        Its own deviations.
    branches
        Decisions taken at its very place, in words.
    """

    path: str
    formula: str
    op: str
    args: tuple[str, ...]
    designed: Fraction | None
    wanted: Fraction
    cut: Fraction | None
    built: Fraction | None
    power: int
    origin: Origin | None
    causes: tuple[Cause, ...]
    branches: tuple[str, ...]


def _named_args(dim: Dim) -> list[Dim]:
    """The nearest named dims below this one, left to right, each once."""
    found: dict[int, Dim] = {}
    stack = [a for a in reversed(dim.args) if isinstance(a, Dim)]
    while stack:
        node = stack.pop()
        if node.path:
            found.setdefault(id(node), node)
        else:
            stack.extend(a for a in reversed(node.args) if isinstance(a, Dim))
    return list(found.values())


def formula_text(
    dim: Dim,
    show: Callable[[Dim], str],
    number: Callable[[Fraction], str],
    grid: Callable[[Fraction], str] | None = None,
) -> str:
    """The formula behind a dim as a person would write it.

    Parameters
    ----------
    show
        How a named dim is written: its short name and value.
    number
        How a plain factor is written.
    grid
        How the step of a rounding is written, a length [mm]; None: as a plain factor.
    """
    text: dict[int, tuple[str, int]] = {}
    stack: list[tuple[Dim, bool]] = [(dim, False)]
    while stack:
        node, done = stack.pop()
        if id(node) in text:
            continue
        if node is not dim and (node.path or not node.args):
            text[id(node)] = (show(node).strip(), 9)
        elif done:
            plain = grid or number if node.op == "round" else number
            text[id(node)] = _joined(node, text, plain)
        else:
            stack.append((node, True))
            stack.extend((a, False) for a in node.args if isinstance(a, Dim))
    return text[id(dim)][0]


def _joined(
    node: Dim, text: dict[int, tuple[str, int]], number: Callable[[Fraction], str]
) -> tuple[str, int]:
    level = _LOOSE.get(node.op, 0)
    parts: list[str] = []
    inner = 9
    for index, arg in enumerate(node.args):
        if not isinstance(arg, Dim):
            parts.append(number(arg))
            continue
        words, inner = text[id(arg)]
        tighter = inner < level or (index == 1 and inner == level and node.op in "-/")
        parts.append(f"({words})" if tighter else words)
    if node.op in _SIGNS:
        return _SIGNS[node.op].join(parts), level
    if node.op in ("least", "greatest", "root"):
        return f"{node.op} of ({', '.join(parts)})", 9
    if node.op == "by":
        return f"by {', '.join(parts)}", 0
    if node.op == "round":
        return f"{parts[0]}, on the grid of {parts[1]}", 0
    return parts[0] if parts else "", inner


def explain(
    dim: Dim,
    formula: str,
    *,
    branches: tuple[str, ...] = (),
    designed: Chain | None = None,
) -> Why:
    """One step of `why`: a dim with its formula and the decisions already in words."""
    ideal = designed.nodes.get(dim.path) if designed else None
    return Why(
        path=dim.path,
        formula=formula,
        op=dim.op or "given",
        args=tuple(a.path for a in _named_args(dim)),
        designed=ideal.value if ideal else None,
        wanted=dim.wanted,
        cut=dim.cut,
        built=dim.built,
        power=dim.power,
        origin=dim.origin,
        causes=dim.causes,
        branches=branches,
    )


def why(
    chain: Chain,
    path: str,
    *,
    show: Callable[[Dim], str],
    number: Callable[[Fraction], str],
    branch: Callable[[Branch], str],
    grid: Callable[[Fraction], str] | None = None,
    designed: Chain | None = None,
) -> tuple[Why, ...]:
    """Everything a number rests on: itself first, then breadth first, each once.

    Parameters
    ----------
    show, number, grid
        As for `formula_text`.
    branch
        How a decision is written.
    designed
        The same build without facts, or None.

    Raises
    ------
    KeyError
        When no dim has this path.
    """
    start = chain.nodes[path]
    order, seen = [start], {id(start)}
    for node in order:
        for arg in _named_args(node):
            if id(arg) not in seen:
                seen.add(id(arg))
                order.append(arg)
    taken = _decisions(chain, order)
    return tuple(
        explain(
            node,
            formula_text(node, show, number, grid),
            branches=tuple(branch(b) for b in taken.get(node.path, ())),
            designed=designed,
        )
        for node in order
    )


def _decisions(chain: Chain, order: list[Dim]) -> dict[str, list[Branch]]:
    """The decisions these numbers hung on, each under the first of them at its place.

    A decision belongs when it was taken at the very place of one of them and weighed nothing but
    these numbers and given ones; `why` of a width does not tell about brads.
    """
    known = {id(node) for node in order}
    first: dict[str, str] = {}
    for node in order:
        for place in (node.path, node.path.rpartition(".")[0]):
            first.setdefault(place, node.path)
    found: dict[str, list[Branch]] = {}
    for taken in chain.branches:
        if taken.place not in first:
            continue
        roots = [*_roots(taken.left), *_roots(taken.right)]
        weighed = [id(root) in known for root in roots if root.op]
        if weighed and all(weighed):
            found.setdefault(first[taken.place], []).append(taken)
    return found


def _roots(dim: Dim) -> list[Dim]:
    return [dim] if dim.path else _named_args(dim)
