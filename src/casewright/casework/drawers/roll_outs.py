"""Roll-outs: drawers behind doors, on pads that keep them clear of the open doors."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.brads import fastener_row
from casewright.casework.carcase import Carcase, Opening
from casewright.casework.drawers.bays import Bay, Wall, bays_of
from casewright.casework.drawers.findings import no_roll_outs
from casewright.casework.drawers.slides import DrawerPlan, roll_out_plane
from casewright.casework.features import Bores, Plane
from casewright.casework.fronts.face_edges import face_edges, planned_thickness
from casewright.casework.fronts.hinges import HingePlan
from casewright.casework.joints import Fastening, Surface
from casewright.casework.maker import Maker, Outline
from casewright.casework.naming import roll_out_title
from casewright.casework.packing import fit_pad, pad_face, slide_pad
from casewright.casework.parts import Part
from casewright.casework.setups import bore_setup
from casewright.casework.specs import FrontSpec, Hand, SlideKind
from casewright.dims import Dim, Way, greatest, least
from casewright.hardware import LAST_HOLE

__all__ = ["add_pads"]

_IN_SIDE, _IN_PARTITION = Fraction(5, 6), Fraction(9, 10)
"""How far into what is behind a pad its screws may go (common practice)."""
_HANDS: tuple[Hand, Hand] = ("left", "right")
_PLANED = "boards: plane them to thickness, rip them, then cut the pads off"


def add_pads(
    maker: Maker, carcase: Carcase, length: Dim | None, plan: HingePlan
) -> tuple[DrawerPlan, ...]:
    """Pads on the sides with the slides' holes in them; the roll-outs planned, lowest first.

    To be called when the box is put together; behind a face frame before that is on.

    Parameters
    ----------
    length
        Of the slides [mm]; None: there are none.
    plan
        Hinges of the case, which pads keep clear of, with the doors that hang on them.
    """
    spec = maker.spec.drawer
    rows = [o for o in carcase.openings if o.row == "doors" and o.name == "main"]
    if not maker.spec.roll_outs or spec is None or length is None or not rows:
        return ()
    bays = bays_of(maker, carcase, rows[0])
    lines = _lines(maker, carcase, rows[0], spec.slides, plan.heights) if bays else []
    beyond = _beyond(maker, carcase, rows[0], plan)
    return tuple(
        _planned(
            maker,
            carcase,
            (rows[0], bay),
            spec.slides,
            (f"{bay.name}_{number}", line, length),
            beyond,
        )
        for bay in bays
        for number, line in enumerate(lines, start=1)
    )


def _beyond(
    maker: Maker, carcase: Carcase, opening: Opening, plan: HingePlan
) -> tuple[Dim | None, int]:
    """How thick each layer of the pads is [mm], None: as their boards; and how many there are.

    Past the face frame's edge, or the side without one; alike at both sides, so that roll-outs
    lie in the middle. A door opened to a right angle stands over that by its thickness, less
    what it lies over the edge and what its hinge takes it out.
    """
    front = opening.front
    hands = {h.leaf.hinge for h in plan.leaves if h.leaf.opening.name == opening.name}
    needs = [_stands_in(maker, carcase, front, hand) for hand in _HANDS if hand in hands and front]
    if not needs:
        return None, 1
    place = maker.place.at("roll_outs")
    need = place.let("pads", greatest(*needs) if len(needs) > 1 else needs[0])
    board, layers = maker.house.thickness(maker.spec.strip_stock), 1
    while place.over(
        need, board * layers, f"{layers + 1} layers of pads, the open doors stand in"
    ):
        layers += 1
    return (None, 1) if layers == 1 else (need / layers, layers)


def _stands_in(maker: Maker, carcase: Carcase, front: FrontSpec, hand: Hand) -> Dim:
    """How far pads must stand out past the edge of frame or side to clear an open door [mm]."""
    edges, left = face_edges(maker, carcase, front), hand == "left"
    _, thick = pad_face(maker, carcase, hand)
    plane = thick if left else carcase.width - thick
    if carcase.frame is not None:
        plane = carcase.frame.faces[0 if left else 1]
    if left:
        over = plane - edges.edge if edges.x0 is maker.zero else plane - edges.x0 - edges.edge
    else:
        over = edges.x1 - edges.edge - plane
    stands = planned_thickness(maker, front) - maker.house.hinge("stand_off")
    return stands - over + maker.style("roll_out_air")


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
    clear = maker.style("hinge_clear")
    if carcase.frame is not None:
        clear = greatest(clear, maker.style("hinge_pad") / 2 + maker.style("cut_step"))
    keep = place.let("keep", maker.style("roll_out_pad") / 2 + clear)
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
    maker: Maker,
    carcase: Carcase,
    where: tuple[Opening, Bay],
    kind: SlideKind,
    named: tuple[str, Dim, Dim],
    beyond: tuple[Dim | None, int],
) -> DrawerPlan:
    """Cut, place and bore the pads of a roll-out, behind a face frame on packing.

    Parameters
    ----------
    where
        The row it lies behind, and its bay there.
    named
        Its name, case height of its slides' line, length of the slides [mm].
    beyond
        Thickness of each layer of its pads, and how many.
    """
    name, line, length = named
    opening, bay = where
    place = maker.place.at(name)
    front = place.let(
        "front_plane",
        roll_out_plane(maker, carcase, opening) - maker.house.slide(kind, "front"),
    )
    ends = [_stack(maker, carcase, wall, named, (front, beyond)) for wall in bay.walls]
    for part, _ in ends:
        _bore(maker, part, kind, (name, length))
    foot = maker.parts[carcase.left].placed.y
    place.let("slide_line", line if foot is maker.zero else line - foot)
    (left, wall), (right, far) = ends
    return DrawerPlan(
        name, roll_out_title(name), opening, kind, length,
        place.let("box_bottom", line - maker.house.slide(kind, "line")),
        maker.style("roll_out_height"), (f"{left.path}.slide", f"{right.path}.slide"),
        place.let("wall", wall), place.let("clear", far - wall), front,
    )  # fmt: skip


def _stack(
    maker: Maker,
    carcase: Carcase,
    wall: Wall,
    named: tuple[str, Dim, Dim],
    how: tuple[Dim, tuple[Dim | None, int]],
) -> tuple[Part, Dim]:
    """What carries a slide: packing out to a frame's edge, then its pads; the last of them.

    Returns
    -------
    The part that is bored, and the case x of its face [mm].
    """
    name, line, length = named
    front, (thick, layers) = how
    if wall.pad is not None:
        thick, layers = wall.pad, 1
    width, hand, left = maker.style("roll_out_pad"), wall.hand, wall.hand == "left"
    under, x = maker.parts[wall.board], wall.x
    packing = None
    if wall.pad is None:
        packing = slide_pad(maker, carcase, hand, name, (length, width, line), word="packing")
    if packing is not None:
        fit_pad(maker, packing, under)
        under, thickness = packing, packing.finished.thickness
        x = x + thickness if left else x - thickness
    for layer in range(1, layers + 1):
        word = "pad_inner" if wall.pad is not None else f"pad_{hand}"
        word = word if layer == layers else f"{word}_{layer}"
        outline = maker.outline(
            f"{name}.{word}", maker.spec.strip_stock, length, width,
            setting=f"{maker.spec.key} pads", way=Way.NEAREST, planed=thick,
        )  # fmt: skip
        low = maker.place.at(name).let(f"{word}_low", line - outline.width / 2)
        _put(maker, outline, hand, (low, front, x), layer if layers > 1 else None)
        plane = wall.plane if under is maker.parts[wall.board] else "t1"
        _fasten(
            maker, carcase, outline, (under.path, plane, wall), (f"{name}.joint_{word}", layer)
        )
        x = x + outline.thickness if left else x - outline.thickness
        under = maker.parts[outline.path]
    return under, x


def _put(
    maker: Maker,
    pad: Outline,
    hand: Hand,
    at: tuple[Dim, Dim, Dim],
    layer: int | None,
) -> None:
    """Give a pad its place.

    Parameters
    ----------
    at
        Case height of its lower edge, case z of its front end, case x of what it lies on [mm].
    layer
        Which one it is, of several that are planed; None: the only one.
    """
    low, front, x = at
    left = hand == "left"
    name, word = pad.path.split(".")[-2:]
    title = f"{word.split('_')[1]} pad of {roll_out_title(name)}"
    maker.add(
        pad, role="pad", title=f"{title}, layer {layer}" if layer else title,
        lies="+z +y +x" if left else "+z +y -x", at=(x, low, front - pad.length),
        ends=("back", "front", "bottom", "top"), hand=hand, shows=("l1", "t1"), group="pads",
        milled_from=_PLANED if layer else "",
    )  # fmt: skip


def _bore(maker: Maker, pad: Part, kind: SlideKind, named: tuple[str, Dim]) -> None:
    """The holes of a slide, all of them: a pad cut too short for one is told of by the proof.

    Parameters
    ----------
    named
        Name of the roll-out, and the length of its slides [mm].
    """
    house, (name, length) = maker.house, named
    most = length.value - LAST_HOLE
    holes = [hole for hole in house.slide_row(kind, "holes") if hole.value <= most]
    half = pad.finished.width / 2
    depth = least(house.slide(kind, "depth"), pad.finished.thickness * 2 / 3)
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


def _fasten(
    maker: Maker,
    carcase: Carcase,
    pad: Outline,
    on: tuple[str, Plane, Wall],
    named: tuple[str, int],
) -> None:
    """Glued to what it lies on, and screwed beside the slide's holes; its step.

    Parameters
    ----------
    on
        What it lies on, packing or the layer before, and with which plane; the wall behind.
    named
        Name of its joint, and which layer it is.
    """
    (joint, layer), (under, plane, wall) = named, on
    part, behind = maker.parts[pad.path], maker.parts[under]
    held = [Fastening("glue", 1, None, (pad.path,), under)]
    if layer == 1:
        # Where a screw's point would come out of a partition, it is in the pad behind it.
        share = _IN_SIDE if wall.pad is None else _IN_PARTITION
        bite = behind.finished.thickness * share
        held[:0] = [
            fastener_row(
                maker, joint, pad.length, "screws along a pad", through=pad.path, into=under,
                screw=maker.house.screw_for("drawer_screw", pad.thickness, bite),
                line=(_screw_edge(wall, under), pad.width / 4), kind="case screw",
            )
        ]  # fmt: skip
    path = maker.join(
        joint, "face", (pad.path, "t0"), (under, plane), fastenings=tuple(held)
    )  # fmt: skip
    how = "clamp; drive its screws" if layer == 1 else "clamp until the glue is dry"
    board = maker.parts[wall.board]
    maker.step(
        "fit", pad.path, "-z",
        f"Spread glue thinly; set the {part.title} on its marks{_face(wall)}, level; {how}.",
        joints=(path,), marks=tuple(_marks(maker, part, board, pad, carcase)),
        planes=((Surface(pad.path, "w0"), Surface(board.path, "l0")),
                (Surface(pad.path, "l1"), Surface(board.path, "w0"))),
        cautions=("clamp_screws",) if layer == 1 else (),
    )  # fmt: skip


def _face(wall: Wall) -> str:
    if wall.pad is None:
        return ""
    return f" on the {'left' if wall.hand == 'right' else 'right'} face of the partition"


def _screw_edge(wall: Wall, under: str) -> Plane:
    """Screws of pads keep off those of packing, and of pads on the other face of a board."""
    if wall.pad is not None:
        return "w0" if wall.hand == "left" else "w1"
    return "w0" if under == wall.board else "w1"


def _marks(
    maker: Maker, part: Part, board: Part, pad: Outline, carcase: Carcase
) -> Iterator[tuple[str, Dim]]:
    foot, low = board.placed.y, part.placed.y
    up = low if foot is maker.zero else low - foot
    side = board.role == "side"
    ends = "bottom ends of the sides" if side else f"lower end of the {board.title}"
    edge = "front edges of the sides" if side else f"front edge of the {board.title}"
    yield f"lower edge above the {ends}", pad.place.let("mark_up", up)
    behind = carcase.depth - part.placed.z - pad.length
    yield f"front end behind the {edge}", pad.place.let("mark_behind", behind)
