"""Which of some numbers others rest on."""

from __future__ import annotations

from collections.abc import Iterable

from casewright.dims.dim import Dim

__all__ = ["PathReach"]

_NONE: frozenset[str] = frozenset()


class PathReach:
    """Which of some paths a number rests on; what is read or cut on the way ends the search.

    Parameters
    ----------
    paths
        Of the numbers that are looked for.
    """

    def __init__(self, paths: Iterable[str]) -> None:
        self._paths = frozenset(filter(None, paths))
        self._known: dict[int, frozenset[str]] = {}

    def of(self, number: Dim) -> frozenset[str]:
        """Those that lie under a number; it alone where it is one of them."""
        if not self._paths:
            return _NONE
        stack = [number]
        while stack:
            node = stack[-1]
            if id(node) in self._known:
                stack.pop()
                continue
            args = [] if node.path in self._paths else node.followed
            waiting = [arg for arg in args if id(arg) not in self._known]
            if waiting:
                stack.extend(waiting)
                continue
            own = [_NONE | {node.path}] if node.path in self._paths else []
            told = own + [found for arg in args if (found := self._known[id(arg)])]
            self._known[id(node)] = told[0] if len(told) == 1 else _NONE.union(*told)
        return self._known[id(number)]
