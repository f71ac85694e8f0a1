"""What differs between two states of a job, piece by piece."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, fields, is_dataclass
from functools import cache
from operator import attrgetter
from typing import Any, Literal

from casewright.casework.parts import Part
from casewright.dims import Dim, Unit, shop_text
from casewright.room.model import Room

__all__ = ["Difference", "differences"]


@dataclass(frozen=True, slots=True)
class Difference:
    """One piece that is not as it was.

    Parameters
    ----------
    path, mark, title
        Of the piece, as it is now; as it was where it is gone.
    what
        new, gone, or changed.
    old, new
        Size it is cut to, in words; empty where there is none, or it is the same.
    features
        Names of the cuts and rows of holes in it that are new, gone, moved or of another size.
    state
        How far the piece has come.
    """

    path: str
    mark: str
    title: str
    what: Literal["new", "gone", "changed"]
    old: str
    new: str
    features: tuple[str, ...]
    state: str


def differences(before: Room, after: Room) -> tuple[Difference, ...]:
    """Every piece that came, went, or is to be made otherwise, in the order of the parts.

    What is done is done: a piece that is cut keeps its size, one that is machined its cuts and
    holes, whatever a number says now. The thickness of a piece is that of its stock.
    """
    old = {part.path: part for part in before.parts}
    new = {part.path: part for part in after.parts}
    unit = after.spec.unit
    found = [
        difference
        for path, part in new.items()
        if (difference := _difference(old.get(path), part, unit)) is not None
    ]
    gone = (part for path, part in old.items() if path not in new)
    found.extend(
        Difference(part.path, part.mark, part.title, "gone", _size(part, unit), "", (), part.state)
        for part in gone
    )
    return tuple(found)


def _difference(old: Part | None, new: Part, unit: Unit) -> Difference | None:
    named = (new.path, new.mark, new.title)
    if old is None:
        return Difference(*named, "new", "", _size(new, unit), (), new.state)
    with_stock = old.stock != new.stock
    sizes = ("", "")
    if new.state == "planned" and _outline(old) != _outline(new):
        sizes = (_size(old, unit, with_stock=with_stock), _size(new, unit, with_stock=with_stock))
    features = _features(old, new) if new.state in ("planned", "cut") else ()
    if sizes == ("", "") and not features:
        return None
    return Difference(*named, "changed", *sizes, features, new.state)


def _outline(part: Part) -> tuple[object, ...]:
    return (part.stock, part.blank.length.value, part.blank.width.value)


def _features(old: Part, new: Part) -> tuple[str, ...]:
    before = {feature.path: feature for feature in old.features}
    after = {feature.path: feature for feature in new.features}
    paths = [path for path in after if not _alike(before.get(path), after[path])]
    paths += [path for path in before if path not in after]
    return tuple(path.removeprefix(f"{new.path}.") for path in paths)


def _alike(old: Any, new: Any) -> bool:
    """Whether two cuts or rows of holes are made to the same numbers in the same way.

    Where the numbers come from does not count.
    """
    kind = new.__class__
    if old is new or old.__class__ is not kind:
        return old is new
    if kind is Dim:
        return bool(old.value == new.value)
    if kind is tuple:
        return len(old) == len(new) and all(map(_alike, old, new))
    members = _members(kind)
    return all(map(_alike, members(old), members(new))) if members else bool(old == new)


@cache
def _members(kind: type) -> Callable[[Any], tuple[Any, ...]] | None:
    """Gives the members of a thing of that kind; None: it is taken as a whole."""
    if not is_dataclass(kind):
        return None
    names = [field.name for field in fields(kind)]
    return attrgetter(*names) if len(names) > 1 else lambda thing: (getattr(thing, names[0]),)


def _size(part: Part, unit: Unit, *, with_stock: bool = True) -> str:
    length, width = part.blank.length.value, part.blank.width.value
    stock = f" {part.stock}" if with_stock else ""
    return f"{shop_text(length, unit)} x {shop_text(width, unit)}{stock}"
