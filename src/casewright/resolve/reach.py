"""Which made pieces stand behind which fits, and how fast each fit follows them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import NamedTuple

from casewright.dims import Dim, Fit
from casewright.resolve.slopes import Slopes

__all__ = ["Reach"]

_NONE: frozenset[str] = frozenset()


class _Under(NamedTuple):
    """What lies under a number: paths, and whether the least or greatest of several decides."""

    paths: frozenset[str]
    decided: bool


_EMPTY = _Under(_NONE, decided=False)


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
        self._dims = tuple(dims)
        self._known = {
            id(dim): _Under(frozenset((dim.path,)), decided=False) for dim in self._dims
        }
        self._slopes = Slopes(self._dims)
        self._of_size: dict[str, list[Fit]] = {}
        self._decided: set[str] = set()
        for path, fit in fits.items():
            under = self._under(fit.gap)
            if under.decided:
                self._decided.add(path)
            for each in under.paths:
                self._of_size.setdefault(each, []).append(fit)

    def fits_over(self, path: str) -> tuple[Fit, ...]:
        """Those that rest on a size in any way."""
        return tuple(self._of_size.get(path, ()))

    def rates(self, fit: Fit) -> Mapping[str, Fraction]:
        """By path of each size, how many mm the gap moves by for one of it [-]."""
        return self._slopes.of(fit.gap)

    def is_plain(self, fit: Fit) -> bool:
        """Whether its gap follows those rates however far a size moves, but for the grid."""
        return fit.path not in self._decided

    def _under(self, number: Dim) -> _Under:
        stack = [number]
        while stack:
            node = stack[-1]
            if id(node) in self._known:
                stack.pop()
                continue
            args = _args(node)
            waiting = [arg for arg in args if id(arg) not in self._known]
            if waiting:
                stack.extend(waiting)
                continue
            self._known[id(node)] = self._joined(node, [self._known[id(arg)] for arg in args])
        return self._known[id(number)]

    def _joined(self, node: Dim, found: list[_Under]) -> _Under:
        told = [under for under in found if under.paths]
        if not told:
            return _EMPTY
        chooses = node.op in ("least", "greatest", "/") or (node.op == "*" and len(told) > 1)
        if len(told) == 1 and not chooses:
            return told[0]
        paths = _NONE.union(*(under.paths for under in told))
        return _Under(paths, decided=chooses or any(under.decided for under in told))


def _args(node: Dim) -> list[Dim]:
    """What a number follows: nothing where it is read or cut."""
    if node.cut is not None or node.built is not None:
        return []
    return [arg for arg in node.args if isinstance(arg, Dim)]
