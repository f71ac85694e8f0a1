"""Why a number is what it is: the formula, its numbers, and where each of them ends."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from casewright.dims.chain import Branch, Chain
from casewright.dims.dim import Dim, Origin

__all__ = ["Why", "explain", "formula_text", "why"]

_LOOSE = {"+": 1, "-": 1, "total": 1, "*": 2, "/": 2}


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
        Keys of its own deviations.
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
    causes: tuple[str, ...]
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


def formula_text(dim: Dim, show: Callable[[Dim], str], number: Callable[[Fraction], str]) -> str:
    """The formula behind a dim as a person would write it.

    Parameters
    ----------
    show
        How a named dim is written: its short name and value.
    number
        How a plain factor is written.
    """
    text: dict[int, tuple[str, int]] = {}
    stack: list[tuple[Dim, bool]] = [(dim, False)]
    while stack:
        node, done = stack.pop()
        if id(node) in text:
            continue
        if node.path and node is not dim:
            text[id(node)] = (show(node), 9)
        elif done:
            text[id(node)] = _joined(node, text, number)
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
    if node.op in ("+", "total"):
        return " + ".join(parts), 1
    if node.op == "*":
        return " x ".join(parts), 2
    if node.op in ("-", "/"):
        return f" {node.op} ".join(parts), level
    if node.op in ("least", "greatest"):
        return f"{node.op} of ({', '.join(parts)})", 9
    if node.op == "round":
        return f"{parts[0]}, on the grid of {parts[1]}", 0
    return parts[0] if parts else "", inner


def explain(
    chain: Chain,
    dim: Dim,
    *,
    show: Callable[[Dim], str],
    number: Callable[[Fraction], str],
    branch: Callable[[Branch], str],
    designed: Chain | None = None,
) -> Why:
    """One step of `why`."""
    ideal = designed.nodes.get(dim.path) if designed else None
    places = {dim.path, dim.path.rpartition(".")[0]}
    return Why(
        path=dim.path,
        formula=formula_text(dim, show, number),
        op=dim.op or "given",
        args=tuple(a.path for a in _named_args(dim)),
        designed=ideal.value if ideal else None,
        wanted=dim.wanted,
        cut=dim.cut,
        built=dim.built,
        power=dim.power,
        origin=dim.origin,
        causes=tuple(c.key for c in dim.causes),
        branches=tuple(branch(b) for b in chain.branches if b.place in places),
    )


def why(
    chain: Chain,
    path: str,
    *,
    show: Callable[[Dim], str],
    number: Callable[[Fraction], str],
    branch: Callable[[Branch], str],
    designed: Chain | None = None,
) -> tuple[Why, ...]:
    """Everything a number rests on: itself first, then breadth first, each once.

    Raises
    ------
    KeyError
        When no dim has this path.
    """
    start = chain.nodes[path]
    queue, seen, found = [start], {id(start)}, []
    for node in queue:
        found.append(
            explain(chain, node, show=show, number=number, branch=branch, designed=designed)
        )
        for arg in _named_args(node):
            if id(arg) not in seen:
                seen.add(id(arg))
                queue.append(arg)
    return tuple(found)
