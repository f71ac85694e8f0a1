"""A blind corner base: pulled off the corner wall, half its front closed behind the other run.

X0 = D2 + bp + td + P2 + cl is how far out of the corner its door may begin: the depth of the
run round the corner, its bumper, door, pull and the air before that. The box stands q off the
corner wall, so that nothing there need be scribed. Source: common practice.
"""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.brads import fastener_row, row_marks
from casewright.casework.carcase import Carcase
from casewright.casework.cases import Front
from casewright.casework.features import Plane
from casewright.casework.fronts.face_edges import blind_edge
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.parts import Part
from casewright.dims import Dim, Way

__all__ = ["add_blind_filler", "add_blind_panel", "cut_blind_panel"]

_POINT = Fraction(5, 6)
"""How far into the filler the screws behind it may go (common practice)."""


def cut_blind_panel(maker: Maker, carcase: Carcase) -> Outline | None:
    """Cut what closes the blind part of the front, before hinges are planned in what it leaves.

    From the side's inner face to where the door begins.
    """
    hand = maker.spec.blind
    if hand is None:
        return None
    left = hand == "left"
    thick = carcase.left_thickness if left else carcase.right_thickness
    low, high = _clear(maker, carcase)
    return maker.outline(
        "blind", maker.spec.box_stock, high - low, _mouth(maker, carcase) - thick,
        edges=("w1",) if left else ("w0",), edge="painted", setting=f"{maker.spec.key} blind",
        way=Way.DOWN, matched=True,
    )  # fmt: skip


def add_blind_panel(maker: Maker, carcase: Carcase, outline: Outline | None) -> None:
    """Put the panel in last, over the shelves: they do not pass through what is left of the mouth.

    Parameters
    ----------
    outline
        As it was cut; None: the case has none.
    """
    hand = maker.spec.blind
    if hand is None or outline is None:
        return
    left = hand == "left"
    thick = carcase.left_thickness if left else carcase.right_thickness
    low, _ = _clear(maker, carcase)
    x = thick + outline.width if left else carcase.width - thick
    panel = maker.add(
        outline, role="blind panel", title="blind panel", lies="+y -x +z",
        at=(x, low, carcase.depth - outline.thickness),
        ends=("bottom", "top", *_edge_words(left)), shows=("t1",),
    )  # fmt: skip
    side = carcase.left if left else carcase.right
    edge: Plane = "w1" if left else "w0"
    joints = (
        *_fit_partition(maker, panel),
        _brad(maker, panel, (side, "t1", edge), _middle(panel)),
        _brad(maker, panel, (maker.path("bottom"), "t1", "l0"), _middle(panel)),
        _glue(maker, panel, (maker.path("front_stretcher"), "t1", "l1")),
    )
    maker.step(
        "fit", panel.path, "-z",
        "With the shelves on their pins, set the blind panel in glue against the "
        f"{hand} side, flush in front; brads through the side and up through the bottom, set.",
        joints=joints, marks=row_marks(maker, joints), cautions=("brad_points",),
    )  # fmt: skip


def _fit_partition(maker: Maker, panel: Part) -> tuple[str, ...]:
    """The partition of a drawer beside the blind part goes in before the panel closes it off.

    Returns
    -------
    Path of the joint that the panel closes with it, if there is one.
    """
    part = maker.parts.get(maker.path("partition"))
    if part is None:
        return ()
    glue = (Fastening("glue", 1, None, (panel.path,), part.path),)
    closes = maker.join("joint_blind_partition", "butt", (part.path, "l1"), (panel.path, "t0"),
                        fastenings=glue)  # fmt: skip
    far = "right" if maker.spec.blind == "left" else "left"
    clear = maker.house.chain.nodes[maker.path("partition.clear")]
    joints = tuple(
        joint.path for joint in maker.joints
        if part.path in (joint.one.part, joint.other.part) and joint.path != closes
    )  # fmt: skip
    maker.step(
        "fit", part.path, "-z",
        "Spread glue thinly on its upper edge and its rear end; bring the partition up under both "
        "stretchers from the front, its rear end tight, its front as far behind the front edges "
        "as the blind panel is thick; clamp, and drive two screws down through each stretcher.",
        joints=joints, marks=((f"its face from the inside of the {far} side", clear),),
        cautions=("clamp_screws",),
    )  # fmt: skip
    return (closes,)


def _clear(maker: Maker, carcase: Carcase) -> tuple[Dim, Dim]:
    """Case heights of the bottom's top and of the front stretcher's underside [mm]."""
    if carcase.frame is None:
        return carcase.openings[0].y0, carcase.openings[-1].y1
    bottom = maker.parts[maker.path("bottom")]
    top = bottom.placed.y + bottom.finished.thickness
    head = maker.parts[maker.path("front_stretcher")]
    return top, head.placed.y - head.finished.thickness


def _mouth(maker: Maker, carcase: Carcase) -> Dim:
    """From the outside of the box on the blind side to where its mouth begins [mm]."""
    if carcase.frame is None or carcase.frame.blind is None:
        return blind_edge(maker)
    low, high = carcase.frame.blind
    return high if maker.spec.blind == "left" else carcase.width - low


def _edge_words(left: bool) -> tuple[str, str]:
    return ("mouth edge", "side edge") if left else ("side edge", "mouth edge")


def _middle(panel: Part) -> Dim:
    """Brads run along the middle of the panel's thickness [mm]."""
    return panel.finished.thickness / 2


def _glue(maker: Maker, panel: Part, to: tuple[str, Plane, Plane]) -> str:
    path, plane, own = to
    glue = Fastening("glue", 1, None, (panel.path,), path)
    return maker.join(f"joint_blind_{own}", "butt", (panel.path, own), (path, plane),
                      fastenings=(glue,))  # fmt: skip


def _brad(maker: Maker, panel: Part, to: tuple[str, Plane, Plane], line: Dim) -> str:
    path, plane, own = to
    name = f"joint_blind_{own}"
    along = panel.finished.width if own == "l0" else panel.finished.length
    row = fastener_row(
        maker, name, along, "brads round the blind panel", through=path, into=panel.path,
        screw=maker.house.screw("brad"), line=("w0", line),
    )  # fmt: skip
    glue = Fastening("glue", 1, None, (panel.path,), path)
    return maker.join(name, "butt", (panel.path, own), (path, plane), fastenings=(glue, row))


def add_blind_filler(maker: Maker, carcase: Carcase) -> None:
    """The strip beside the door, in its plane: it clears the pulls of the run round the corner.

    P2 + cl wide; what is beyond it is behind that run's fronts. A face frame has a stile there;
    beside an inset door the panel itself is flush with it.
    """
    hand, asked = maker.spec.blind, maker.spec.front
    if hand is None or not maker.fronts or carcase.frame is not None:
        return
    low, *_, high = sorted((*maker.fronts, *maker.fronts), key=lambda each: each.y.value)
    if asked is not None and asked.overlay == "inset":
        return
    slab = asked is not None and asked.construction == "slab"
    stock = asked.slab if asked is not None and slab else maker.spec.strip_stock
    wide = maker.style("corner_clear")
    if maker.fronts[0].pull:
        wide = maker.house.pull("projection") + wide
    outline = maker.outline(
        "blind_filler", stock,
        low.height if low is high else high.y + high.height - low.y, wide,
        setting=f"{maker.spec.key} filler",
        way=Way.NEAREST, matched=True,
    )  # fmt: skip
    left = hand == "left"
    panel = maker.parts[maker.path("blind")]
    mouth = panel.placed.x if left else panel.placed.x - panel.finished.width
    x = mouth if left else mouth + outline.width
    part = maker.add(
        outline, role="blind filler", title="filler beside the door", lies="+y -x +z",
        at=(x, low.y, carcase.depth), ends=("bottom", "top", *_filler_words(left)),
        shows=("l0", "l1", "t1", "w0" if left else "w1"), front=outline.path,
    )  # fmt: skip
    _screw_filler(maker, part, (low, high))


def _filler_words(left: bool) -> tuple[str, str]:
    return ("door edge", "corner edge") if left else ("corner edge", "door edge")


def _screw_filler(maker: Maker, part: Part, fronts: tuple[Front, Front]) -> None:
    panel = maker.parts[maker.path("blind")]
    left = maker.spec.blind == "left"
    screw = maker.house.screw_for(
        "drawer_screw", panel.finished.thickness, part.finished.thickness * _POINT
    )
    row = fastener_row(
        maker, "joint_blind_filler", part.finished.length, "screws behind the filler",
        through=panel.path, into=part.path, screw=screw,
        line=("w0" if left else "w1", part.finished.width / 2), kind="case screw",
    )  # fmt: skip
    joint = maker.join("joint_blind_filler", "face", (part.path, "t0"), (panel.path, "t1"),
                       fastenings=(row,))  # fmt: skip
    low, high = fronts
    ends = f"those of the {low.title}"
    if low is not high:
        ends = f"the lower one of the {low.title} and the upper one of the {high.title}"
    maker.step(
        "fit", part.path, "-z",
        f"Set the filler on the blind panel, its edge even with the mouth and its ends with {ends}"
        "; screws from inside through the panel.",
        joints=(joint,), marks=row_marks(maker, (joint,)), cautions=("clamp_screws",),
    )  # fmt: skip
