"""Which made pieces stand behind which fits, and how each fit follows them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from fractions import Fraction
from operator import mul, sub, truediv

from casewright.dims import Dim, Fit, PathReach
from casewright.dims.exact import side_of
from casewright.resolve.slopes import Slopes

__all__ = ["Reach"]

_OF_TWO: Mapping[str, Callable[[Fraction, Fraction], Fraction]] = {
    "*": mul,
    "/": truediv,
    "-": sub,
}
_OF_SEVERAL: Mapping[str, Callable[[Iterable[Fraction]], Fraction]] = {
    "least": min,
    "greatest": max,
    "root": lambda args: side_of(*args),
}


class Reach:
    """The fits that sizes of made pieces reach.

    Parameters
    ----------
    dims
        The sizes, each read or cut: what lies under them does not count.
    fits
        All fits of the room by their paths.
    """

    def __init__(self, dims: Iterable[Dim], fits: Mapping[str, Fit]) -> None:
        dims = tuple(dims)
        self._under = PathReach(dim.path for dim in dims)
        self._slopes = Slopes(dims)
        self._of_size: dict[str, list[Fit]] = {}
        for fit in fits.values():
            for each in self._under.of(fit.gap):
                self._of_size.setdefault(each, []).append(fit)

    def fits_over(self, path: str) -> tuple[Fit, ...]:
        """Those that rest on a size in any way."""
        return tuple(self._of_size.get(path, ()))

    def rates(self, fit: Fit) -> Mapping[str, Fraction]:
        """By path of each size, how many mm the gap moves by for one of it [-]."""
        return self._slopes.of(fit.gap)

    def gap(self, fit: Fit, sizes: Mapping[str, Fraction | None]) -> Fraction:
        """The gap by its formula, with made pieces at other sizes [mm].

        A size on the grid follows as its exact value does, so that the gap is off by what the
        grid may do. None stands for a piece that is still to be cut: it is as its formula has it.
        """
        known: dict[int, Fraction] = {}
        stack = [fit.gap]
        while stack:
            node = stack[-1]
            given = sizes.get(node.path) if node.path else None
            if id(node) in known:
                stack.pop()
            elif given is not None:
                known[id(node)] = given
            else:
                args = self._moving(node, sizes)
                waiting = [arg for arg in args if id(arg) not in known]
                stack.extend(waiting)
                if not waiting:
                    known[id(node)] = _result(node, known) if args else node.value
        return known[id(fit.gap)]

    def _moving(self, node: Dim, sizes: Mapping[str, Fraction | None]) -> list[Dim]:
        """The arguments that a number is worked out from anew; none where it stays as it is."""
        if node.path in sizes:
            return _formula(node)
        return [] if self._under.of(node).isdisjoint(sizes) else node.followed


def _formula(node: Dim) -> list[Dim]:
    return [arg for arg in node.args if isinstance(arg, Dim)]


def _result(node: Dim, known: Mapping[int, Fraction]) -> Fraction:
    """A formula with other values for what it acts on."""
    args = [known.get(id(arg), arg.value) if isinstance(arg, Dim) else arg for arg in node.args]
    if node.op == "round":
        (exact,) = _formula(node)
        return args[0] + node.value - exact.value
    if node.op in _OF_TWO:
        return _OF_TWO[node.op](*args)
    return _OF_SEVERAL.get(node.op, _sum)(args)


def _sum(args: Iterable[Fraction]) -> Fraction:
    return sum(args, Fraction(0))
