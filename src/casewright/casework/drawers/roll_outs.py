"""Roll-outs: drawers behind doors, on pads that keep them clear of the open doors."""

from __future__ import annotations

from collections.abc import Iterator

from casewright.casework.brads import fastener_row
from casewright.casework.carcase import Carcase, Opening
from casewright.casework.drawers.findings import no_roll_outs
from casewright.casework.drawers.slides import DrawerPlan
from casewright.casework.features import Bores
from casewright.casework.joints import Fastening, Surface
from casewright.casework.maker import Maker, Outline
from casewright.casework.setups import bore_setup
from casewright.casework.specs import Hand, SlideKind
from casewright.dims import Dim, Way, least
from casewright.hardware import LAST_HOLE

__all__ = ["add_pads"]

_HANDS: tuple[Hand, Hand] = ("left", "right")


def add_pads(
    maker: Maker, carcase: Carcase, length: Dim | None, hinges: tuple[Dim, ...]
) -> tuple[DrawerPlan, ...]:
    """Pads on the sides with the slides' holes in them; the roll-outs planned, lowest first.

    To be called when the box is put together.

    Parameters
    ----------
    length
        Of the slides [mm]; None: there are none.
    hinges
        Case heights of the hinges [mm], which pads keep clear of.
    """
    spec = maker.spec.drawer
    rows = [o for o in carcase.openings if o.row == "doors" and o.name == "main"]
    if not maker.spec.roll_outs or spec is None or length is None or not rows:
        return ()
    lines = _lines(maker, carcase, rows[0], spec.slides, hinges)
    return tuple(
        _planned(maker, carcase, rows[0], spec.slides, (f"roll_out_{number}", line, length))
        for number, line in enumerate(lines, start=1)
    )


def _lines(
    maker: Maker, carcase: Carcase, opening: Opening, kind: SlideKind, hinges: tuple[Dim, ...]
) -> list[Dim]:
    """Case heights of the slides' lines, evenly spread, moved up past hinges [mm].

    None at all, with a finding, where not every one has room.
    """
    count, place = maker.spec.roll_outs, maker.place.at("roll_outs")
    line, tall = maker.house.slide(kind, "line"), maker.style("roll_out_height")
    base = opening.y0 + maker.house.slide(kind, "below") + line
    bay = place.let("bay", (opening.y1 - opening.y0) / count)
    keep = place.let("keep", maker.style("roll_out_pad") / 2 + maker.style("hinge_clear"))
    pitch = tall + maker.style("drawer_room")
    found: list[Dim] = []
    for number in range(count):
        at = base + bay * number if number else base
        if found and place.over(found[-1] + pitch, at, "a roll-out moved up, over the one below"):
            at = found[-1] + pitch
        for hinge in sorted(hinges, key=lambda each: each.value):
            near = abs(at.value - hinge.value) < keep.value
            if near and place.over(hinge + keep, at, "a roll-out moved up, past a hinge"):
                at = hinge + keep
        found.append(_to_mark(maker, carcase, f"line_{number + 1}", at))
    top = found[-1] - line + tall + maker.style("drawer_room") / 2
    if place.over(top, opening.y1, "no roll-outs, there is no room for every one"):
        maker.findings.append(no_roll_outs(maker, count, top - opening.y1))
        return []
    return found


def _to_mark(maker: Maker, carcase: Carcase, name: str, at: Dim) -> Dim:
    """A height on the grid that it is marked in from the sides' lower ends."""
    foot, step = maker.parts[carcase.left].placed.y, maker.style("cut_step").value
    up = at if foot is maker.zero else at - foot
    if step and up.value % step:
        up = maker.place.at("roll_outs").rounded(f"{name}_to_mark", up, step, Way.UP)[0]
    return up if foot is maker.zero else foot + up


def _planned(
    maker: Maker, carcase: Carcase, opening: Opening, kind: SlideKind, named: tuple[str, Dim, Dim]
) -> DrawerPlan:
    """Cut, place and bore the two pads of a roll-out.

    Parameters
    ----------
    named
        Its name, case height of its slides' line, length of the slides [mm].
    """
    name, line, length = named
    place = maker.place.at(name)
    width = maker.style("roll_out_pad")
    pads = {
        hand: maker.outline(
            f"{name}.pad_{hand}", maker.spec.strip_stock, length, width,
            setting=f"{maker.spec.key} pads", way=Way.NEAREST,
        )
        for hand in _HANDS
    }  # fmt: skip
    front = place.let("front_plane", carcase.depth - maker.house.slide(kind, "front"))
    for hand in _HANDS:
        low = place.let(f"pad_{hand}_low", line - pads[hand].width / 2)
        _put(maker, carcase, pads[hand], hand, (low, front))
        _bore(maker, pads[hand], kind, name)
        _fasten(maker, carcase, pads[hand], hand, name)
    foot = maker.parts[carcase.left].placed.y
    place.let("slide_line", line if foot is maker.zero else line - foot)
    left, right = pads["left"], pads["right"]
    return DrawerPlan(
        name, name.replace("roll_out_", "roll-out "), opening, kind, length,
        place.let("box_bottom", line - maker.house.slide(kind, "line")),
        maker.style("roll_out_height"), (f"{left.path}.slide", f"{right.path}.slide"),
        place.let("wall", carcase.left_thickness + left.thickness),
        place.let("clear", carcase.clear_width - left.thickness - right.thickness), front,
    )  # fmt: skip


def _put(maker: Maker, carcase: Carcase, pad: Outline, hand: Hand, at: tuple[Dim, Dim]) -> None:
    low, front = at
    left = hand == "left"
    x = carcase.left_thickness if left else carcase.width - carcase.right_thickness
    number = pad.path.split(".")[-2].rpartition("_")[2]
    maker.add(
        pad, role="pad", title=f"{hand} pad of roll-out {number}",
        lies="+z +y +x" if left else "+z +y -x", at=(x, low, front - pad.length),
        ends=("back", "front", "bottom", "top"), hand=hand, shows=("l1", "t1"), group="pads",
    )  # fmt: skip


def _bore(maker: Maker, pad: Outline, kind: SlideKind, name: str) -> None:
    house = maker.house
    most = pad.length.value - LAST_HOLE
    holes = [hole for hole in house.slide_row(kind, "holes") if hole.value <= most]
    half = pad.width / 2
    depth = least(house.slide(kind, "depth"), pad.thickness * 2 / 3)
    maker.machine(
        pad.path,
        Bores(
            path=f"{pad.path}.slide", kind="slide", face="A", datum_l="l1", datum_w="w0",
            places=tuple((hole, half) for hole in holes), diameter=house.slide(kind, "hole"),
            depth=depth, asked_by=maker.path(name),
            setup=bore_setup(
                "drill", line=half, depth=depth, bit="twist bit",
                bit_size=house.slide(kind, "hole"), check=holes[0],
                check_words="from the front end to the first hole",
            ),
        ),
    )  # fmt: skip


def _fasten(maker: Maker, carcase: Carcase, pad: Outline, hand: Hand, name: str) -> None:
    """Screwed to the side on a line below the slide's holes; its step."""
    side = maker.parts[carcase.left if hand == "left" else carcase.right]
    joint = f"{name}.joint_pad_{hand}"
    bite = side.finished.thickness * 5 / 6
    held = fastener_row(
        maker, joint, pad.length, "screws along a pad", through=pad.path, into=side.path,
        screw=maker.house.screw_for("drawer_screw", pad.thickness, bite),
        line=("w0", pad.width / 4), kind="case screw",
    )  # fmt: skip
    path = maker.join(
        joint, "face", (pad.path, "t0"), (side.path, "t1"),
        fastenings=(held, Fastening("glue", 1, None, (pad.path,), side.path)),
    )  # fmt: skip
    part = maker.parts[pad.path]
    marks = tuple(_marks(maker, part.placed.y, side.placed.y, pad, carcase, part.placed.z))
    maker.step(
        "fit", pad.path, "-z",
        f"Spread glue thinly; set the {part.title} on its marks, level; clamp; drive its screws.",
        joints=(path,), marks=marks,
        planes=((Surface(pad.path, "w0"), Surface(side.path, "l0")),
                (Surface(pad.path, "l1"), Surface(side.path, "w0"))),
        cautions=("clamp_screws",),
    )  # fmt: skip


def _marks(
    maker: Maker, low: Dim, foot: Dim, pad: Outline, carcase: Carcase, rear: Dim
) -> Iterator[tuple[str, Dim]]:
    up = low if foot is maker.zero else low - foot
    yield "lower edge above the bottom ends of the sides", pad.place.let("mark_up", up)
    behind = carcase.depth - rear - pad.length
    yield "front end behind the front edges of the sides", pad.place.let("mark_behind", behind)
