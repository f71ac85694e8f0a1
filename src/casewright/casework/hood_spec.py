"""What is asked for by a hood: a case round a liner, over what is cooked on."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.dims import Given

__all__ = ["HoodSpec"]


@dataclass(frozen=True, slots=True)
class HoodSpec:
    """A case round the liner of a hood.

    Parameters
    ----------
    over, over_title
        Key and name of what is cooked on below it.
    surface
        Height of the cooking surface above the floor, where it is written [mm]; None: that of a
        counter on the base cases there.
    base
        Height of those base cases [mm].
    clear
        What the cooking appliance's sheet wants free above it [mm]; None: not known yet.
    liner_clear
        What the liner's sheet wants between the surface and it [mm]; None: not known yet.
    duct
        Width and depth of the duct [mm], alike for a round one; None: not known yet.
    duct_back
        From the wall to the middle of the duct [mm]; None: not known yet.
    bottom
        Height of the undersides of wall cases above the floor [mm].
    face_stock
        Key of the sheet that its face panel is cut from.
    """

    over: str
    over_title: str
    surface: Given | None
    base: Given
    clear: Given | None
    liner_clear: Given | None
    duct: tuple[Given, Given] | None
    duct_back: Given | None
    bottom: Given
    face_stock: str
