"""How fast one number of the chain follows others."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from casewright.dims import Dim

__all__ = ["Slopes", "slope"]

_ONE, _ZERO = Fraction(1), Fraction(0)
_Rates = Mapping[str, Fraction]


def slope(of: Dim, by: Dim) -> Fraction:
    """How many mm one number moves by for one of another, at the values known now [-].

    What is read or cut does not follow what it was worked out from. A size on the grid follows
    as its exact value does.
    """
    return Slopes((by,)).of(of).get(by.path, _ZERO) if of is not by else _ONE


class Slopes:
    """How fast numbers follow certain others, each of which is held where it is reached.

    Parameters
    ----------
    by
        Named numbers.
    """

    def __init__(self, by: Iterable[Dim]) -> None:
        self._known: dict[int, _Rates] = {id(dim): {dim.path: _ONE} for dim in by}
        self._seen: list[Dim] = list(by)  # ids are only good as long as what they name is there

    def of(self, dim: Dim) -> _Rates:
        """By path, how many mm a number moves by for one of each [-].

        Of one of the numbers themselves: how it follows the others by its formula.
        """
        self._work_out(dim)
        return self._sum(dim)

    def _work_out(self, dim: Dim) -> None:
        """The rates of all that a number is worked out from."""
        stack = [arg for arg, _ in _rates(dim)]
        while stack:
            node = stack[-1]
            if id(node) in self._known:
                stack.pop()
                continue
            waiting = [arg for arg, _ in _rates(node) if id(arg) not in self._known]
            if waiting:
                stack.extend(waiting)
                continue
            self._seen.append(node)
            self._known[id(node)] = self._sum(node)

    def _sum(self, dim: Dim) -> _Rates:
        found: dict[str, Fraction] = {}
        for arg, rate in _rates(dim):
            for path, own in self._known[id(arg)].items():
                found[path] = found.get(path, _ZERO) + rate * own
        return {path: rate for path, rate in found.items() if rate}


def _rates(node: Dim) -> list[tuple[Dim, Fraction]]:
    """The arguments of a formula, each with how fast the result follows it."""
    if node.is_held:
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
        case "root":
            return [(arg, 1 / (2 * node.wanted)) for arg in args if isinstance(arg, Dim)]
        case _:
            return [(arg, _ONE) for arg in args if isinstance(arg, Dim)]
