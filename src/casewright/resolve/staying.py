"""Which pieces still to be made can be cut as they were planned, so that the fewest change.

A number that moves moves whatever rests on it; but most fits have a band, and many pieces would
keep them at the size that was planned. Of all such choices the one is looked for that changes the
fewest pieces, then takes the fewest settings that were not planned, then moves sizes the least.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from casewright.casework.cases import Case
from casewright.casework.parts import Part
from casewright.casework.proof import Proof, as_findings
from casewright.casework.proof.prove import GRID
from casewright.casework.verification import verify
from casewright.dims import Origin
from casewright.facts import NO_FACTS, Fact, Facts, merged
from casewright.findings import Severity
from casewright.resolve.moves import sides_of
from casewright.resolve.slopes import Slopes
from casewright.resolve.staying_model import Resize, StayingModel
from casewright.room.build import build
from casewright.room.model import Room

__all__ = ["Staying", "stay"]

_ROUNDS = 40


@dataclass(frozen=True, slots=True)
class Staying:
    """Pieces that keep the size they were planned at.

    Parameters
    ----------
    kept
        Each with its sizes as planned, in the order of the parts.
    changed
        How many pieces still to be cut are to be of another size all the same [-].
    is_fewest
        Whether it is proved that no choice changes fewer of them: to first order, as decisions
        and rounding are only tried and not foreseen.
    """

    kept: tuple[Resize, ...]
    changed: int
    is_fewest: bool

    @property
    def facts(self) -> Facts:
        """What freezes them."""
        return _frozen(self.kept)


def stay(before: Room, after: Room) -> Staying:
    """The pieces of one room that can be cut as they were planned in another.

    Parameters
    ----------
    before
        As it was agreed.
    after
        With the facts of now.
    """
    open_ = _open(before, after)
    model = StayingModel(after, open_, _settings(before))
    excluded = False
    for _ in range(_ROUNDS):
        kept = model.best()
        if not kept:
            break
        room = _with(after, _frozen(kept))
        broken = list(_broken(after, room, open_, kept))
        if not broken:
            return Staying(kept, len(open_) - len(kept), not excluded and model.is_proved)
        excluded = True
        for stays, follow in broken:
            model.exclude(stays, follow)
    changed = sum(each.is_changed for each in open_)
    return Staying((), changed, not excluded and model.is_proved)


def _with(room: Room, facts: Facts) -> Room:
    """The room with more sizes frozen."""
    held = room.chain.facts
    known = {path: fact for path, fact in held.items() if isinstance(fact, Fact)}
    spec = replace(room.spec, file_facts=NO_FACTS)
    return build(spec, merged(known, facts), designed=room.designed)


def _open(before: Room, after: Room) -> tuple[Resize, ...]:
    """Pieces still to be cut that are of another size, and those that follow them."""
    planned = {part.path: part for part in before.parts}
    known = {
        part.path: resize
        for part in after.parts
        if (old := planned.get(part.path)) is not None and (resize := _resize(old, part))
    }
    found = {path for path, each in known.items() if each.is_changed}
    while True:
        slopes = Slopes(dim for path in sorted(found) for dim, _ in known[path].sizes)
        more = {
            path
            for path, each in known.items()
            if path not in found and any(slopes.of(dim) for dim, _ in each.sizes)
        }
        if not more:
            return tuple(each for path, each in known.items() if path in found)
        found |= more


def _resize(old: Part, new: Part) -> Resize | None:
    """A piece still to be cut, with its sizes as planned; None for all others."""
    if new.state != "planned" or old.stock != new.stock:
        return None
    sizes = tuple(
        (dim, was.value) for (_, dim), (_, was) in zip(sides_of(new), sides_of(old), strict=True)
    )
    named = all(dim.path and dim.cut is None and dim.built is None for dim, _ in sizes)
    return Resize(new, sizes) if named else None


def _settings(room: Room) -> frozenset[tuple[str, object]]:
    """What is set at the saw as it was planned: by stock, every size of a piece."""
    return frozenset((part.stock, dim.value) for part in room.parts for _, dim in sides_of(part))


def _frozen(kept: Sequence[Resize]) -> Facts:
    origin = Origin("chosen", "kept as it was planned")
    return {dim.path: Fact(origin, cut=size) for each in kept for dim, size in each.sizes}


_Group = tuple[tuple[Resize, ...], tuple[Resize, ...]]


def _broken(
    after: Room, room: Room, changed: Sequence[Resize], kept: Sequence[Resize]
) -> Iterator[_Group]:
    """Pieces of a case that cannot be kept while others of it follow: something does not hold."""
    known = after.chain.fits
    failed = [
        fit
        for path, fit in room.chain.fits.items()
        if not fit.holds and (path not in known or known[path].holds)
    ]
    was = {case.key: case for case in after.cases}
    for case in room.cases:
        own = [each for each in changed if each.part.path.startswith(f"{case.key}.")]
        blamed: list[tuple[str, ...]] = [
            (fit.owner, fit.path) for fit in failed if fit.path.startswith(f"{case.key}.")
        ]
        if own:
            old = was.get(case.key)
            before = _stops(after, old) if old else {}
            blamed += [paths for says, paths in _stops(room, case).items() if says not in before]
        follow = tuple(each for each in own if each not in kept)
        for paths in blamed:
            stays = tuple(each for each in own if each in kept)
            close = tuple(each for each in stays if _is_named(each.part.path, paths))
            yield close or stays, follow
    # What fails in no case of its own is given up with everything that is kept.
    if any(fit.path.partition(".")[0] not in was for fit in failed):
        yield tuple(kept), ()


def _is_named(path: str, paths: tuple[str, ...]) -> bool:
    return any(each == path or each.startswith(f"{path}.") for each in paths)


def _stops(room: Room, case: Case) -> dict[str, tuple[str, ...]]:
    """What of a case does not go together and stops the work, with the paths it names."""
    grid = max(room.spec.style["cut_step"].value, GRID)
    found: dict[str, tuple[str, ...]] = {}
    for failure in verify(case, hardware=room.spec.hardware, grid=grid).failures:
        told = as_findings(Proof((failure,)), unit=room.spec.unit)
        if any(each.severity is Severity.STOP for each in told):
            found[f"{failure.check} {failure.paths} {failure.says}"] = failure.paths
    return found
