"""The order a frame and panel goes together in: test joint, panel, rails, stiles."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from casewright.casework.fronts.frame_panel import Panel
from casewright.casework.fronts.frames import Frame, Level
from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.fronts.tongues import Tongue
from casewright.casework.maker import Maker, Outline
from casewright.casework.specs import Hand
from casewright.casework.wood import is_solid
from casewright.dims import tell

__all__ = ["close_frame", "hold_for_test_joint", "lay_panel", "panel_glue"]

_LOOSE = "no glue near it"
_CENTRED = (
    "a spot of glue in the middle of its groove only: the panel stays centred and moves to both "
    "sides"
)


def hold_for_test_joint(maker: Maker, leaf: LeafPlan, tongue: Tongue) -> None:
    """Stop before the rails are cut to length and tongued."""
    maker.step(
        "hold", "", None,
        f"Hold: before the rails of the {leaf.title} are cut to length, groove and tongue a test "
        "joint in scraps of the same boards. It goes together by hand, faces flush, and holds "
        "when it is lifted. Measure both stiles as ripped: by what they are wider than on their "
        "card, the rails are cut shorter.",
        check=tongue.thick, check_words="thickness of the tongue",
    )  # fmt: skip


def lay_panel(maker: Maker, leaf: LeafPlan, panel: Panel) -> None:
    """The panel in one piece, or its boards glued edge to edge."""
    first, *others = panel.pieces
    words = f"Lay the panel of the {leaf.title} on the bench, its edges sealed or painted first."
    if others:
        words = (
            f"Joint the edges of the boards for the panel of the {leaf.title} and lay the first "
            "on the bench, the growth rings of its end turned the other way than its neighbour's."
        )
    maker.step("lay", first.path, None, words)
    for piece, seam in zip(others, panel.seams, strict=True):
        name = maker.parts[piece.path].title.partition(" of the ")[0]
        maker.step(
            "fit", piece.path, "-x",
            f"Glue the edge; push {name} against it, faces flush; clamp. When it is dry, scrape "
            "and sand the panel and seal it all round.",
            joints=(seam,),
        )  # fmt: skip


def panel_glue(maker: Maker, leaf: LeafPlan) -> str:
    """Where a panel is glued: solid wood in the middle of its ends, a sheet not at all."""
    return _CENTRED if is_solid(maker.house, leaf.front.panel) else _LOOSE


def close_frame(
    maker: Maker,
    leaf: LeafPlan,
    members: tuple[Frame, Sequence[tuple[Level, Outline]]],
    panels: Sequence[Panel],
    corners: Mapping[tuple[Level, Hand], tuple[str, ...]],
) -> None:
    """Rails onto the panels, then the stiles over tongues and panels.

    Parameters
    ----------
    members
        The frame, and all its rails from the bottom up.
    panels
        One, or the lower and the upper one.
    corners
        Paths of the joints at each corner.
    """
    glue = panel_glue(maker, leaf)
    frame, rails = members
    for level, rail in rails:
        panel = panels[-1] if level == "top" else panels[0]
        side = "top" if level == "middle" else level
        maker.step(
            "fit", rail.path, "+y" if level == "bottom" else "-y",
            f"Push the {level} rail onto the panel, {glue}.", joints=panel.seats[side],
        )  # fmt: skip
        if level == "middle":
            above = panels[-1]
            maker.step(
                "fit", above.pieces[0].path, "-y",
                "Set the upper panel into the groove of the middle rail, its edges sealed or "
                "painted first.",
                joints=above.seats["bottom"],
            )  # fmt: skip
    for hand, stile in frame.stiles:
        maker.step(
            "fit", stile.path, "+x" if hand == "left" else "-x",
            f"Glue on the tongues' cheeks only; push the {hand} stile onto both tongues and the "
            "panel, its ends flush with the rails; clamp across the rails until the shoulders "
            "close.",
            joints=(
                *(path for level, _ in rails for path in corners[level, hand]),
                *(path for panel in panels for path in panel.seats[hand]),
            ),
        )  # fmt: skip
    maker.step(
        "check square", "", None,
        tell(
            "Measure both diagonals of the {}: they must agree within {}; sight across both "
            "stiles that it lies flat. The panel still moves by hand. When the glue is dry, bore "
            "the stiles as their cards say.",
            leaf.title, maker.house.trade("frame_diagonals"),
        ),
        check_words="diagonals",
    )  # fmt: skip
