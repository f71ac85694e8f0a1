"""Names for the numbers of features and steps, so that every printed one answers why."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.features import Bores, Feature
from casewright.dims import Dim, Place

__all__ = ["name_feature", "name_once", "roll_out_title", "the"]


def name_once(place: Place, name: str, dim: Dim | None) -> None:
    """Name a number that has none yet; nothing at all (no origin, no formula) needs none."""
    if dim is not None and not dim.path and dim.op:
        place.let(name, dim)


def the(title: str) -> str:
    """A title with its article; one with a number has none: 'the bottom', 'shelf 1'."""
    return title if title[-1:].isdigit() else f"the {title}"


def roll_out_title(name: str) -> str:
    """A roll-out's name in words.

    Examples
    --------
    >>> roll_out_title("roll_out_2"), roll_out_title("roll_out_left_1")
    ('roll-out 2', 'left roll-out 1')
    """
    *_, bay, number = name.split("_")
    return f"roll-out {number}" if bay == "out" else f"{bay} roll-out {number}"


def name_feature(place: Place, feature: Feature) -> None:
    """Name what a card prints of a feature: places, sizes, settings.

    Parameters
    ----------
    place
        Of the feature.
    """
    if isinstance(feature, Bores):
        for number, (along, across) in enumerate(feature.places, start=1):
            if not along.path:
                name_once(place, f"hole_{number}", along)
            if not across.path:
                name_once(place, f"line_{number}", across)
    for name, dim in _numbers(feature):
        name_once(place, name, dim)


def _numbers(feature: Feature) -> Iterator[tuple[str, Dim | None]]:
    names: tuple[str, ...]
    if isinstance(feature, Bores):
        names = ("pitch", "diameter", "depth")
    else:
        names = ("at", "width", "depth", "start", "end", "radius")
    for name in names:
        yield name, getattr(feature, name)
    for name in ("fence", "depth", "stop", "collar", "check"):
        yield f"set_{name}", getattr(feature.setup, name)
