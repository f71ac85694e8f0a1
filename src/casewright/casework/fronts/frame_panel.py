"""The panel of a frame, cut to the grooves as made, free to move in them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.features import Plane
from casewright.casework.fronts.constructions import Corner
from casewright.casework.fronts.frames import Frame
from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.fronts.panel_groove import PanelGroove
from casewright.casework.maker import Maker, Outline
from casewright.dims import Dim

__all__ = ["PanelRoom", "add_panel"]

# A panel pushed to one side still lies this deep in the groove of the other (common practice).
_HELD = Fraction(3)


@dataclass(frozen=True, slots=True)
class PanelRoom:
    """What lies between the floors of the grooves.

    Parameters
    ----------
    wide, tall
        [mm].
    left, bottom
        Where it begins, in case axes x and y [mm].
    """

    wide: Dim
    tall: Dim
    left: Dim
    bottom: Dim


def add_panel(
    maker: Maker, leaf: LeafPlan, frame: Frame, groove: PanelGroove, room: PanelRoom, at: Corner
) -> tuple[Outline, tuple[str, ...]]:
    """Cut a panel of a sheet and place it in the middle of its grooves.

    Returns
    -------
    The panel, and the paths of its joints.
    """
    air = maker.style("tongue_relief") + maker.style("panel_clearance")
    panel = maker.outline(
        f"{leaf.name}.panel", leaf.front.panel, room.tall - 2 * air, room.wide - 2 * air,
        setting=f"{maker.spec.key} {leaf.opening.name} panels",
    )  # fmt: skip
    side = panel.place.let("air_side", (room.wide - panel.width) / 2)
    end = panel.place.let("air_end", (room.tall - panel.length) / 2)
    maker.add(
        panel, role="panel", title=f"panel of the {leaf.title}", lies="+y -x +z",
        at=(
            room.left + side + panel.width,
            room.bottom + end,
            at.z + frame.left.thickness - groove.at - panel.thickness,
        ),
        ends=("bottom", "top", "right edge", "left edge"), shows=("t1",),
        group=f"{leaf.opening.name} panels", front=maker.path(leaf.name),
    )  # fmt: skip
    _fits(maker, panel, groove, room)
    return panel, tuple(_join(maker, leaf, panel, frame, side, end))


def _fits(maker: Maker, panel: Outline, groove: PanelGroove, room: PanelRoom) -> None:
    """Play in all: never tight, never so much that the panel leaves a groove."""
    place = panel.place
    high = groove.depth.value - _HELD
    for name, gap in (
        ("side_play", room.wide - panel.width),
        ("end_play", room.tall - panel.length),
    ):
        place.fit(f"{name}_fit", place.let(name, gap), Fraction(0), high, panel.path)


def _join(
    maker: Maker, leaf: LeafPlan, panel: Outline, frame: Frame, side: Dim, end: Dim
) -> list[str]:
    joints = []
    edges: tuple[tuple[str, Outline, Plane, Dim], ...] = (
        ("left", frame.left, "w1", side),
        ("right", frame.right, "w0", side),
        ("bottom", frame.bottom, "l0", end),
        ("top", frame.top, "l1", end),
    )
    for word, member, edge, air in edges:
        slot, name = f"{member.path}.groove", f"{leaf.name}.panel_{word}"
        joints.append(maker.join(name, "groove", (panel.path, "t1"), (member.path, "t1", slot)))
        joints.append(
            maker.join(f"{name}_air", "loose", (panel.path, edge), (member.path, "w0", slot),
                       gap=air)
        )  # fmt: skip
    return joints
