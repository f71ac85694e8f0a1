"""Surrounds: a deep box over a refrigerator, between panels that reach the floor."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.appliance_rows import appliance_number
from casewright.casework.carcase import Carcase
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker
from casewright.casework.pockets import bore_pockets
from casewright.casework.specs import ApplianceOpening, Hand
from casewright.dims import Dim, tell
from casewright.findings import Finding, Severity

__all__ = ["add_floor_cleat", "opening_height"]


def _appliance(maker: Maker) -> ApplianceOpening:
    if maker.spec.appliance is None:
        msg = f"{maker.spec.key} surrounds nothing"
        raise ValueError(msg)
    return maker.spec.appliance


def opening_height(maker: Maker) -> Dim:
    """Underside of the box over the appliance [mm]: what stands there and the air over it.

    Raises
    ------
    ValueError
        When the case surrounds nothing: a defect of the program.
    """
    high = appliance_number(maker, _appliance(maker), "height")
    return maker.on_grid("opening_height", high + maker.style("surround_top_air"))


def _fit_opening(maker: Maker, carcase: Carcase) -> None:
    """The clear width between the panels, as built, against the appliance and its air.

    Behind a face frame that between its stiles is less.
    """
    appliance, place = _appliance(maker), maker.place.at("opening")
    need = appliance_number(maker, appliance, "width") + 2 * maker.style("surround_side_air")
    mouth = carcase.width
    if carcase.frame is not None:
        mouth = place.let("mouth", carcase.frame.right - carcase.frame.left)
    left = place.let("width_air", mouth - need)
    if left.value >= 0:
        place.fit("width_fit", left, Fraction(-1), left.value + 25, place.path)
        return
    own = maker.reckoning("appliance opening", place.path)
    lacks = own.text(-left, "lacks")
    uprights = "panels" if carcase.frame is None else "stiles"
    maker.findings.append(
        Finding(
            rule="appliance opening",
            severity=Severity.STOP,
            path=place.path,
            says=tell(
                "between the {} round {} {} is missing for it, its hinges and the air that its "
                "sheet asks for",
                uprights,
                appliance.title,
                lacks,
            ),
            measured=own.text(mouth).text,
            limit=own.text(need, "need").text,
            source=f"the sheet of {appliance.title}",
            remedies=(tell("a width {} greater", lacks), "the appliance's width read again"),
            numbers=own.numbers,
        )
    )


def add_floor_cleat(maker: Maker, carcase: Carcase) -> None:
    """A board between the panels' feet at the wall, screwed into both from behind.

    It holds the opening's width at the floor, and is what floor and wall hold the feet by. Where
    there are no panels there is none.
    """
    if not maker.spec.between_panels:
        return
    _fit_opening(maker, carcase)
    panels: list[tuple[Hand, str]] = [
        ("left" if ".end_left." in part.path else "right", part.path)
        for part in maker.parts.values()
        if part.role in ("end skin", "flush end")
    ]
    if len(panels) != 2:
        return
    spec = maker.spec
    outline = maker.outline(
        "floor_cleat", spec.box_stock, carcase.width, maker.style("nailer"),
        setting=f"{spec.key} horizontals", matched=True,
    )  # fmt: skip
    maker.add(
        outline, role="floor cleat", title="floor cleat", lies="+x +y +z",
        at=(maker.zero, maker.zero, maker.zero), ends=("left", "right", "bottom", "top"),
        shows=(), group="horizontals",
    )  # fmt: skip
    count = bore_pockets(maker, outline.path, "B", ("l0", "l1"))
    length = maker.house.pocket_screw(spec.box_stock)
    joints = tuple(
        maker.join(
            f"joint_floor_cleat_{hand}", "butt",
            (outline.path, "l0" if hand == "left" else "l1"), (panel, "t0"),
            fastenings=(
                Fastening("pocket screw", count, length, (outline.path,), panel),
                Fastening("glue", 1, None, (outline.path,), panel),
            ),
        )
        for hand, panel in sorted(panels)
    )  # fmt: skip
    maker.step(
        "fit", outline.path, "+z",
        "Set the floor cleat between the feet of the panels, flush with their rear edges and "
        "lower ends; clamp, and drive its pocket screws from behind. On the day it is screwed to "
        "the floor or to a stud, before the panels can be knocked out of their place.",
        joints=joints, cautions=("clamp_screws", "tall_tips"),
    )  # fmt: skip
