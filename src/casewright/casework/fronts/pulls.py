"""Pulls: at the free edge, near the end that the hand reaches first."""

from __future__ import annotations

from casewright.casework.features import Bores, Plane
from casewright.casework.fronts.constructions import Construction, Corner
from casewright.casework.fronts.kinds import corner_joint, inner_cut
from casewright.casework.fronts.leaves import LeafPlan, report
from casewright.casework.maker import Maker
from casewright.casework.setups import bore_setup
from casewright.dims import Dim, Place, greatest, tell
from casewright.findings import Finding, Severity

__all__ = ["bore_pull", "pull_too_long"]


def bore_pull(maker: Maker, leaf: LeafPlan, door: Construction, at: Corner) -> str:
    """Bore for the pull, through everything its screws pass.

    Doors of wall cases and upper doors are pulled near their bottom, doors near the floor near
    their top or, when that is out of reach, at a height that is in reach (common practice).

    Returns
    -------
    Path of the bores in the front piece; empty where the leaf gets no pull.
    """
    if not leaf.front.pull:
        return ""
    place = maker.place.at(leaf.name)
    centres = maker.house.pull("centres")
    if place.over(centres + maker.house.pull("hole") * 4, door.height, "no pull, it is too long"):
        report(maker, pull_too_long(maker, leaf, door.height))
        return ""
    datum, first = _first(maker, place, leaf, door, at)
    first = place.made("pull_from_end", first, maker.house.causes(f"{place.path}.pull", ""))
    line = place.let("pull_line", maker.style("pull_edge"))
    rows = (first,) if not centres.value else (first, first + centres)
    _check_line(maker, leaf, line)
    for path in door.pull_parts:
        part = maker.parts[path]
        edge: Plane = "w0" if part.role == "stile" else "w1"
        maker.machine(path, _bores(maker, path, (datum, edge), rows, line))
    return f"{door.pull_parts[0]}.pull"


def _first(
    maker: Maker, place: Place, leaf: LeafPlan, door: Construction, at: Corner
) -> tuple[Plane, Dim]:
    """The end that the pull is measured from, and the distance of its nearest hole."""
    centres, end = maker.house.pull("centres"), _end(maker, leaf)
    if place.over(2 * end + centres, door.height, "the pull in the middle, the door is low"):
        return "l0", (door.height - centres) / 2
    if maker.spec.kind == "wall" or leaf.opening.name == "upper":
        return "l0", end
    reach = maker.style("pull_reach")
    lowest = at.y + end + centres
    if place.over(lowest, reach, "the pull at the door's lower end, all of it is high up"):
        return "l0", end
    top = at.y + door.height - end
    if place.over(top, reach, "the pull lower than the door's top, to be in reach"):
        return "l0", reach - at.y - centres
    return "l1", end


def _end(maker: Maker, leaf: LeafPlan) -> Dim:
    """Nearest hole from the door's end; clear of the corner joints of a glass frame."""
    end = maker.style("pull_end")
    corner = corner_joint(maker, leaf)
    return end if corner is None else greatest(end, corner + maker.house.pull("hole"))


def _bores(
    maker: Maker, path: str, datum: tuple[Plane, Plane], rows: tuple[Dim, ...], line: Dim
) -> Bores:
    end, edge = datum
    hole = maker.house.pull("hole")
    return Bores(
        path=f"{path}.pull",
        kind="pull",
        face="A",
        datum_l=end,
        datum_w=edge,
        places=tuple((row, line) for row in rows),
        diameter=hole,
        depth=None,
        asked_by="hardware.pull",
        pitch=maker.house.pull("centres"),
        setup=bore_setup(
            "drill", line=line, depth=None, bit="brad-point bit", bit_size=hole, check=rows[0],
            check_words=f"from the {'bottom' if end == 'l0' else 'top'} end to the nearest hole",
        ),
    )  # fmt: skip


def _check_line(maker: Maker, leaf: LeafPlan, line: Dim) -> None:
    """A pull's screw must pass a frame's stile outside its rebate or groove."""
    inner = inner_cut(maker, leaf)
    if inner is None:
        return
    name, reach = inner
    wood = maker.style("stile") - reach
    need = line + maker.house.pull("hole") / 2
    if need.value <= wood.value:
        return
    rule = f"pull and {name.partition(' for')[0].removeprefix('glass ')}"
    own = maker.reckoning(rule, maker.path(leaf.name))
    lacks = own.text(need - wood, "lacks")
    report(
        maker,
        Finding(
            rule=rule,
            severity=Severity.STOP,
            path=maker.path(leaf.name),
            says=f"the pull of the {leaf.called} would be bored into the {name}",
            measured=own.text(need, "need").text,
            limit=own.text(wood, "wood").text,
            source="common practice",
            remedies=(
                tell("pull_edge {} smaller in the style", lacks),
                tell("stiles {} wider", lacks),
            ),
            numbers=own.numbers,
        ),
    )


def pull_too_long(maker: Maker, leaf: LeafPlan, along: Dim) -> Finding:
    """A pull is longer than the front is along it [mm], so that it gets no holes."""
    own = maker.reckoning("pull length", maker.path(leaf.name))
    most = own.text(along, "along")
    return Finding(
        rule="pull length",
        severity=Severity.CARE,
        path=maker.path(leaf.name),
        says=f"the pull is too long for the {leaf.called}: no holes are bored for it",
        measured=own.text(maker.house.pull("centres")).text,
        limit=most.text,
        source="common practice",
        remedies=(
            "a knob",
            tell("a pull with its screws under {} apart", most),
            "pull = false",
        ),
        numbers=own.numbers,
    )
