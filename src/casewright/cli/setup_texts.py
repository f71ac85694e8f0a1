"""What `setup` prints."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from casewright.casework.features import Feature
from casewright.casework.parts import Part
from casewright.dims import Dim, Unit, size_text
from casewright.job.coaching import Coached, trials
from casewright.job.move_text import move_size
from casewright.room.model import Room

__all__ = ["coached_lines", "setting_lines"]

_MOST = 8


def setting_lines(room: Room, part: Part, feature: Feature) -> Iterator[str]:
    """How a tool is set for a cut, and what can be measured on its test piece."""
    unit, setup = room.spec.unit, feature.setup
    yield f"{part.mark}, {part.title}: {feature.kind}, {feature.path}"
    sizes = (("fence", setup.fence), ("depth", setup.depth), ("stop", setup.stop))
    told = [f"{name} {_size(dim, unit)}" for name, dim in sizes if dim is not None]
    told += [f"{setup.passes} passes"] if setup.passes > 1 else []
    yield f"  {', '.join(filter(None, (setup.tool, setup.bit)))}: {'; '.join(told)}"
    known = trials(part, feature)
    if not known:
        check = "" if setup.check is None else f": {size_text(setup.check.value, unit)}"
        yield f"  on a test piece, {setup.check_words}{check}"
        return
    yield "  cut a test piece of the same stock, then type what it measures:"
    for trial in known:
        wanted = "over, under" if trial.wanted is None else (
            f"should be {size_text(trial.wanted, unit, calliper=True)}"
            if trial.wanted
            else "proud, sunk or flush"
        )  # fmt: skip
        yield f"        - {trial.what}: {trial.words}; {wanted}"


def coached_lines(room: Room, part: Part, feature: Feature, found: Coached) -> Iterator[str]:
    """The move, what else goes by the setting, and what settings have in common."""
    unit = room.spec.unit
    tool = feature.setup.tool
    if found.move:
        yield f"{_stands(found, unit)}: {found.move} ({tool})"
        yield "  then cut the test piece again"
    else:
        may = move_size(found.within, unit)
        yield f"{_stands(found, unit)}: leave it; a reading tells no more than {may} here"
    others = [each for each in found.same if each[1].path != feature.path]
    if others:
        yield f"  the same setting makes {_listed(others)} as well"
    if found.done and found.move:
        yield f"  LOOK: {_listed(found.done)} cut with that setting already: measure them"
    for lean in found.leaning:
        way = "over" if lean.off > 0 else "under"
        yield (
            f"  LOOK: {lean.count} settings came out {way}, about {move_size(lean.off, unit)} "
            f"each: {lean.cause} is off; put that right instead of each setting"
        )


def _stands(found: Coached, unit: Unit) -> str:
    trial, size = found.trial, move_size(found.off, unit)
    if not found.off:
        return f"{trial.what} is right"
    if trial.wanted:
        return f"{trial.what} is {size} {'over' if found.off > 0 else 'under'}"
    if trial.wanted is None:
        return f"{trial.what} is {size} {'over' if found.off > 0 else 'under'}"
    return f"{trial.what} stands {size} {'proud' if found.off > 0 else 'sunk'}"


def _listed(pairs: Sequence[tuple[Part, Feature]]) -> str:
    names = [f"{part.mark} {feature.path.rpartition('.')[2]}" for part, feature in pairs]
    more = f" and {len(names) - _MOST} more" if len(names) > _MOST else ""
    return f"{', '.join(names[:_MOST])}{more}"


def _size(dim: Dim, unit: Unit) -> str:
    return size_text(dim.value, unit)
