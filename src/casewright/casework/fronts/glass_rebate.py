"""The rebate behind a frame: routed all round once the frame is glued up."""

from __future__ import annotations

from dataclasses import dataclass

from casewright.casework.features import Cut, Setup
from casewright.casework.fronts.frames import Frame
from casewright.casework.fronts.leaves import LeafPlan, report
from casewright.casework.maker import Maker, Outline
from casewright.dims import Dim, Place, Way, tell
from casewright.findings import Finding, Severity

__all__ = ["Rebate", "rout_rebate"]


@dataclass(frozen=True, slots=True)
class Rebate:
    """The rebate as routed.

    Parameters
    ----------
    width, depth
        [mm].
    radius
        Left in its corners by the bit [mm].
    """

    width: Dim
    depth: Dim
    radius: Dim


def rout_rebate(maker: Maker, leaf: LeafPlan, frame: Frame) -> Rebate:
    """Rout the seat of the pane: deep enough for it and its retainers.

    The bit leaves round corners: the pane's corners are rounded to match.
    """
    place = maker.place.at(leaf.name).at("rebate")
    causes = maker.house.causes
    bit = maker.style("rebate_bit")
    wanted = maker.house.thickness(leaf.front.glazing) + maker.style("retainer")
    step = maker.style("cut_step").value
    if step and wanted.value % step:
        wanted, _ = place.rounded("depth_to_rout", wanted, step, Way.UP)
    rebate = Rebate(
        place.made("width", maker.style("rebate_width"), causes(f"{place.path}.width", "")),
        place.made("depth", wanted, causes(f"{place.path}.depth", "")),
        place.let("radius", bit / 2),
    )
    _check_depth(maker, leaf, frame, rebate)
    setup = _setup(maker, place, rebate, bit)
    for member, near, far in (
        (frame.left, frame.bottom, frame.top),
        (frame.right, frame.bottom, frame.top),
        (frame.bottom, frame.left, frame.right),
        (frame.top, frame.right, frame.left),
    ):
        _cut(maker, maker.path(f"{leaf.name}.pane"), member, rebate, setup, ends=(near, far))
    return rebate


def _cut(
    maker: Maker,
    pane: str,
    member: Outline,
    rebate: Rebate,
    setup: Setup,
    *,
    ends: tuple[Outline, Outline],
) -> None:
    """The stretch of the rebate in one member, into the corners with the members at its ends."""
    place = member.place.at("rebate")
    maker.machine(
        member.path,
        Cut(
            path=place.path,
            kind="rebate",
            face="B",
            runs="l",
            datum="w1",
            at=maker.zero,
            width=rebate.width,
            depth=rebate.depth,
            start=place.let("start", ends[0].width - rebate.width),
            end=place.let("end", member.length - ends[1].width + rebate.width),
            asked_by=pane,
            setup=setup,
            radius=rebate.radius,
        ),
    )


def _setup(maker: Maker, place: Place, rebate: Rebate, bit: Dim) -> Setup:
    bite = maker.style("router_bite")
    whole = place.times(rebate.depth, bite, "passes of the router for the rebate")
    passes = whole if bite.value * whole == rebate.depth.value else whole + 1
    return Setup(
        "router", depth=rebate.depth, passes=passes, bit="rebate bit with a bearing",
        bit_size=bit, check=rebate.width,
        check_words="width of the rebate on a test piece, from the frame's inner edge",
        cautions=("router_rebate",),
    )  # fmt: skip


def _check_depth(maker: Maker, leaf: LeafPlan, frame: Frame, rebate: Rebate) -> None:
    """The rebate must leave enough wood in front of the pane."""
    left = frame.left.thickness - rebate.depth
    floor = maker.style("cup_floor")
    if left.value >= floor.value:
        return
    own = maker.reckoning("rebate depth", maker.path(leaf.name))
    wood, lacks = own.text(left, "left"), own.text(floor - left, "lacks")
    report(
        maker,
        Finding(
            rule="rebate depth",
            severity=Severity.STOP,
            path=maker.path(leaf.name),
            says=tell(
                "a rebate {} deep leaves only {} of the frame in front of the pane",
                own.text(rebate.depth),
                wood,
            ),
            measured=wood.text,
            limit=own.text(floor).text,
            source="common practice",
            remedies=(tell("a frame {} thicker", lacks), tell("a pane {} thinner", lacks)),
            numbers=own.numbers,
        ),
    )
