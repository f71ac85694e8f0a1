"""A part as it lies on the bench, one face up, everything dimensioned from its datums."""

from __future__ import annotations

from typing import TypeGuard

from casewright.casework.features import Cut, Face, Feature
from casewright.casework.parts import Part
from casewright.dims.units import Unit
from casewright.drawing.part_dimensions import part_dimensions
from casewright.drawing.part_features import feature_elements, outline
from casewright.drawing.part_frame import PartFrame
from casewright.drawing.part_lettering import edge_cut_notes, feature_letters_on, part_signs
from casewright.drawing.scene import Scene
from casewright.drawing.shapes import Element

__all__ = ["feature_letters", "part_scene"]


def feature_letters(part: Part) -> dict[str, str]:
    """A letter for every feature by its path, in the order of machining.

    Slots of a box joint that are as wide share one.
    """
    letters = "abcdefghijklmnopqrstuvwxyz"
    numbers: dict[object, int] = {}
    found = {}
    for feature in part.features:
        shared = feature.width.value if _is_slot(feature) else feature.path
        n = numbers.setdefault(shared, len(numbers))
        found[feature.path] = letters[n % 26] * (1 + n // 26)
    return found


def _is_slot(feature: Feature) -> TypeGuard[Cut]:
    return isinstance(feature, Cut) and feature.kind == "finger"


def part_scene(
    part: Part, face: Face, unit: Unit, *, standing: bool = False, letters: bool = True
) -> Scene:
    """One face of a part with its features and their dimensions.

    Parameters
    ----------
    standing
        Its length upright, its datum end down, for pairs side by side; else it lies with its
        datum edge nearest to you.
    letters
        Whether each feature has its letter, for a table that names them.
    """
    frame = PartFrame(part, face, unit, standing)
    elements: list[Element] = [outline(frame)]
    for feature in part.features:
        elements.extend(feature_elements(frame, feature))
    elements.extend(part_dimensions(frame))
    elements.extend(edge_cut_notes(frame))
    if letters:
        elements.extend(feature_letters_on(frame, feature_letters(part)))
    elements.extend(part_signs(frame))
    return Scene(tuple(elements), f"{part.title}, face {face}")
