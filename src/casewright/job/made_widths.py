"""Cases whose width can no longer be another: something that rests on it is made."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from casewright.casework.cases import Case
from casewright.dims import Dim, PathReach

__all__ = ["made_cases"]


def made_cases(cases: Iterable[Case]) -> frozenset[str]:
    """Keys of cases of which a piece is cut, or a size read, that rests on their width."""
    return frozenset(case.key for case in cases if _is_made(case))


def _is_made(case: Case) -> bool:
    reach = PathReach((case.wanted[0].path,))
    return any(
        reach.of(arg)
        for dim in _sizes(case)
        if dim.is_held
        for arg in dim.args
        if isinstance(arg, Dim)
    )


def _sizes(case: Case) -> Iterator[Dim]:
    yield from (case.width, case.overall_width)
    for part in case.parts:
        yield from (part.blank.length, part.blank.width)
