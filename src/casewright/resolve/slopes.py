"""How fast one number of the chain follows another."""

from __future__ import annotations

from fractions import Fraction

from casewright.dims import Dim

__all__ = ["slope"]

_ONE, _ZERO = Fraction(1), Fraction(0)


def slope(of: Dim, by: Dim) -> Fraction:
    """How many mm one number moves by for one of another, at the values known now [-].

    What is read or cut does not follow what it was worked out from. A size on the grid follows
    as its exact value does.
    """
    known: dict[int, Fraction] = {}
    stack = [of]
    while stack:
        node = stack[-1]
        if id(node) in known:
            stack.pop()
            continue
        if node is by:
            known[id(node)] = _ONE
            continue
        args = [] if _is_fixed(node) else [arg for arg in node.args if isinstance(arg, Dim)]
        waiting = [arg for arg in args if id(arg) not in known]
        if waiting:
            stack.extend(waiting)
            continue
        known[id(node)] = sum((rate * known[id(arg)] for arg, rate in _rates(node)), _ZERO)
    return known[id(of)]


def _is_fixed(node: Dim) -> bool:
    return node.cut is not None or node.built is not None


def _rates(node: Dim) -> list[tuple[Dim, Fraction]]:
    """The arguments of a formula, each with how fast the result follows it."""
    if _is_fixed(node):
        return []
    args = node.args
    match node.op:
        case "least" | "greatest":
            taken = (arg for arg in args if isinstance(arg, Dim) and arg.value == node.wanted)
            return [(arg, _ONE) for arg in taken][:1]
        case "*" | "/":
            one, other = (arg.value if isinstance(arg, Dim) else arg for arg in args)
            by_one = other if node.op == "*" else 1 / other
            by_other = one if node.op == "*" else -one / other**2
            rates = zip(args, (by_one, by_other), strict=True)
            return [(arg, rate) for arg, rate in rates if isinstance(arg, Dim)]
        case "-":
            rates = zip(args, (_ONE, -_ONE), strict=True)
            return [(arg, rate) for arg, rate in rates if isinstance(arg, Dim)]
        case _:
            return [(arg, _ONE) for arg in args if isinstance(arg, Dim)]
