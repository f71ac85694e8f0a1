"""Panels on the front of appliances: in line with the fronts beside them, by the maker's sheet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from casewright.casework.carcase import Opening
from casewright.casework.cases import Case, Face, Front
from casewright.casework.drawers.pulls import bore_panel_pull
from casewright.casework.features import Bores
from casewright.casework.fronts.constructions import Construction, Corner
from casewright.casework.fronts.doors import cut_leaf, gap_band
from casewright.casework.fronts.leaves import LeafPlan
from casewright.casework.fronts.pulls import bore_pull
from casewright.casework.fronts.weights import leaf_weight
from casewright.casework.house import House
from casewright.casework.maker import Maker
from casewright.casework.panel_findings import panel_findings
from casewright.casework.setups import bore_setup
from casewright.casework.specs import CaseSpec, FrontSpec, Hand, PanelSheet
from casewright.dims import Dim, Way, greatest, least, tell

__all__ = ["PanelEdges", "PanelPlace", "build_panel", "line_of", "panel_spec"]

_NAME = "front"


@dataclass(frozen=True, slots=True)
class PanelEdges:
    """The fronts of the case beside an appliance.

    Parameters
    ----------
    title
        The case in words.
    low, high
        Height of their lowest and of their highest edge above the floor [mm].
    """

    title: str
    low: Dim
    high: Dim


@dataclass(frozen=True, slots=True)
class PanelPlace:
    """Where a panel goes.

    Parameters
    ----------
    opening
        Width between the cases beside the appliance [mm].
    low, high, under
        Heights above the floor [mm]: of the line that the fronts beside it begin at, of the one
        they end at, and of the underside of the counter.
    back
        How far its back stands out from the wall [mm].
    beside
        The fronts it is to line up with, those it takes its heights from first.
    hung, sides
        How its upper edge and the gaps beside it are set, in words; empty: in line with the first
        of those, and alike.
    upper
        Whether it is the upper one of two: its pull sits at its lower edge.
    hinge
        Side that its door swings on: its pull stands upright beside the other one.
    """

    opening: Dim
    low: Dim
    high: Dim
    under: Dim
    back: Dim
    beside: tuple[PanelEdges, ...]
    hung: str = ""
    sides: str = ""
    upper: bool = False
    hinge: Hand | None = None


def panel_spec(beside: CaseSpec, key: str, title: str, sheet: PanelSheet) -> CaseSpec:
    """What is asked for by the panel of an appliance, after the case beside it."""
    return replace(
        beside, key=key, title=title, kind="panel", toe="none", back="open", shelves=0,
        upper_shelves=0, fixed_shelves=(), divider=None, finished=(), skirt=None, crown=None,
        nosing=None, front=sheet.front, upper_front=None, rows=(), row_rails=False, drawer=None,
        sink=False, roll_outs=0, appliance=None, lid=None, seated=False, blind=None,
        face="frameless", mullion=False, scribes=(), overrides={}, panel=sheet,
    )  # fmt: skip


def build_panel(house: House, spec: CaseSpec, at: PanelPlace) -> Case:
    """Build the model of a panel: hu - gt - kp high and Wo - 2g wide, no more than its sheet lets.

    Source: common practice; with the counter's underside hu, the gap gt below it, the line kp that
    the fronts beside it begin at, the opening Wo and the gap g.

    Raises
    ------
    ValueError
        When the spec has no sheet of a panel: a defect of the program.
    """
    sheet = spec.panel
    if sheet is None:
        msg = f"{spec.key} is no panel"
        raise ValueError(msg)
    maker = Maker(spec, house, house.chain.place(spec.key))
    low = _lower_end(maker, sheet, at)
    leaf = LeafPlan(
        _NAME, "panel", "panel", _opening(maker, at, low), sheet.front, _hinge(maker, sheet, at),
        _wide(maker, sheet, at), _tall(maker, sheet, at.high - low), "appliance panel",
        Way.DOWN,
    )  # fmt: skip
    panel = cut_leaf(maker, leaf)
    front = _put(maker, leaf, panel, at)
    _bore_screws(maker, sheet, panel)
    face = _face(maker, front, low, at)
    _fits(maker, front, face, at)
    maker.findings.extend(
        panel_findings(maker, sheet, leaf_weight(maker, leaf), front, upper=at.upper)
    )
    _hang(maker, sheet, front, at)
    return _case(maker, front, face, at)


def _limit(maker: Maker, sheet: PanelSheet, name: str) -> Dim | None:
    given = getattr(sheet, name)
    return None if given is None else maker.number(name, given)


def _lower_end(maker: Maker, sheet: PanelSheet, at: PanelPlace) -> Dim:
    """Height that it may begin at [mm]: the line of its neighbours, above what stays free."""
    free = _limit(maker, sheet, "free_below")
    return maker.place.let("low", at.low if free is None else greatest(at.low, free))


def _wide(maker: Maker, sheet: PanelSheet, at: PanelPlace) -> Dim:
    """A gap short of the opening at either side, and no wider than the sheet lets [mm]."""
    wide = maker.place.let("between_gaps", at.opening - 2 * maker.style("gap"))
    return _within(maker, "width", wide, _limit(maker, sheet, "most_width"), "stile")


def _tall(maker: Maker, sheet: PanelSheet, whole: Dim) -> Dim:
    """From line to line, and no taller than the sheet lets [mm]."""
    tall = maker.place.let("between_lines", whole)
    return _within(maker, "height", tall, _limit(maker, sheet, "most_height"), "rail")


def _within(maker: Maker, word: str, size: Dim, most: Dim | None, frame: str) -> Dim:
    """Under its limit, and never less than a frame with something in it takes [mm]."""
    least_size = maker.place.let(f"least_wanted_{word}", 3 * maker.style(frame))
    left = maker.place.let(f"wanted_{word}_left", size if most is None else least(size, most))
    return left if left.value >= least_size.value else greatest(left, least_size)


def _opening(maker: Maker, at: PanelPlace, low: Dim) -> Opening:
    return Opening(
        name="panel", y0=low, y1=at.under, face_y0=low, face_y1=at.under,
        bottom=maker.zero, top=maker.zero, row="appliance", front=maker.spec.front,
    )  # fmt: skip


def _put(maker: Maker, leaf: LeafPlan, panel: Construction, at: PanelPlace) -> Front:
    """In the middle of the opening, its upper edge in line with the fronts beside it."""
    place = maker.place.at(leaf.name)
    width = place.follows("width", panel.width)
    height = place.follows("height", panel.height)
    thickness = place.follows("thickness", panel.thickness)
    corner = Corner(
        place.let("x", (at.opening - width) / 2), place.let("y", at.high - height),
        place.let("z", at.back),
    )  # fmt: skip
    panel.put(corner)
    front = Front(
        path=place.path, title=leaf.title, construction=leaf.front.construction, x=corner.x,
        y=corner.y, z=corner.z, width=width, height=height, thickness=thickness,
        parts=panel.pieces, pull="", opening=leaf.opening.name,
    )  # fmt: skip
    if leaf.hinge is not None:
        pull = bore_pull(maker, leaf, panel, corner)
    else:
        down = _pull_down(maker, leaf.front)
        up = down if at.upper else height - down
        pull = bore_panel_pull(maker, leaf, panel, corner.y, None, up=up)
    front = replace(front, pull=pull)
    maker.fronts.append(front)
    return front


def _pull_down(maker: Maker, front: FrontSpec) -> Dim:
    """How far a pull that lies across sits from the panel's edge [mm]; clear of a frame's rail."""
    down = maker.style("panel_pull")
    if front.construction == "slab":
        return down
    return greatest(down, maker.style("rail") + 2 * maker.house.pull("hole"))


def _hinge(maker: Maker, sheet: PanelSheet, at: PanelPlace) -> Hand | None:
    """Side that its door swings on; left where it has to swing and nobody has said on which.

    Source: common practice; a pull lies across at the edge of a door that drops or draws out, and
    stands upright beside the free edge of one that swings, where the hand reaches it.
    """
    if at.hinge is not None or not sheet.front.pull:
        return at.hinge
    down = _pull_down(maker, sheet.front)
    across = maker.place.let("pull_across", at.low + down if at.upper else at.high - down)
    too_high = maker.place.over(
        across, maker.style("pull_reach"), "its pull is upright, in reach: its door swings"
    )
    return "left" if too_high else None


def _bore_screws(maker: Maker, sheet: PanelSheet, panel: Construction) -> None:
    """Pilot holes in its back, where its sheet wants the screws of the brackets; none unknown."""
    apart, depth = _limit(maker, sheet, "screws_apart"), _limit(maker, sheet, "screw_depth")
    rows = [maker.number(f"screw_row_{n}", row) for n, row in enumerate(sheet.screw_rows, 1)]
    if apart is None or depth is None or not rows:
        return
    slab = maker.parts[panel.cup_part]
    near = (panel.width - apart) / 2
    spots = tuple((row, across) for row in rows for across in (near, near + apart))
    pilot = maker.style("panel_pilot")
    maker.machine(
        slab.path,
        Bores(
            path=f"{slab.path}.screws", kind="panel screw", face="B", datum_l="l1", datum_w="w0",
            places=spots, diameter=pilot, depth=depth, asked_by=maker.spec.key,
            setup=bore_setup(
                "drill", line=near, depth=depth, bit="twist bit", bit_size=pilot, check=rows[0],
                check_words="from the top end to the upper holes",
            ),
        ),
    )  # fmt: skip


def _face(maker: Maker, front: Front, low: Dim, at: PanelPlace) -> Face:
    place = maker.place.at("face")
    return Face(
        opening="panel", x0=maker.zero, x1=at.opening, y0=low, y1=at.under,
        left=place.let("left", front.x),
        right=place.let("right", at.opening - front.x - front.width),
        bottom=place.let("bottom", front.y - low),
        top=place.let("top", at.under - front.y - front.height), gaps=(), leaves=(front.path,),
    )  # fmt: skip


def _fits(maker: Maker, front: Front, face: Face, at: PanelPlace) -> None:
    """The gap beside it and its lower line, as fits: what the sheet leaves of them is told."""
    gap = maker.style("gap")
    low, high = gap_band(maker, gap)
    for name, air in (("left", face.left), ("right", face.right)):
        if air.value <= high:
            maker.place.fit(f"{name}_fit", air, low, high, front.path)
    step = maker.style("cut_step").value
    band = maker.style("gap_tolerance").value + step
    for number, beside in enumerate(at.beside, start=1):
        off = maker.place.let(f"step_{number}", front.y - beside.low)
        if abs(off.value) <= band:
            maker.place.fit(f"step_{number}_fit", off, -band, band, front.path)


def _hang(maker: Maker, sheet: PanelSheet, front: Front, at: PanelPlace) -> None:
    where = at.hung or (f"in line with {at.beside[0].title}" if at.beside else "level")
    sides = at.sides or "the gaps at both sides alike"
    screws = "with the screws that came with it" if sheet.screw_rows else "by its own sheet"
    maker.step(
        "hang", front.path, "-z",
        tell(
            "Screw the appliance's brackets to the back of the panel {}; hang it on the "
            "appliance, set its upper edge {}, {} and its face in the plane of the doors {} it. "
            "Open and shut it: nothing rubs, no vent is covered.",
            screws, where, sides, "beside" if at.beside else "over",
        ),
        cautions=("appliance_panel",),
    )  # fmt: skip


def _case(maker: Maker, front: Front, face: Face, at: PanelPlace) -> Case:
    place = maker.place
    sizes = (
        place.let("width", at.opening), place.let("height", at.under),
        place.let("depth", at.back),
    )  # fmt: skip
    return Case(
        spec=maker.spec, width=sizes[0], height=sizes[1], depth=sizes[2], wanted=sizes,
        standing=maker.zero, overall_width=sizes[0], left_frame=maker.zero,
        overall_depth=place.let("overall_depth", front.z + front.thickness),
        tolerance=place.let("tolerance", greatest(
            maker.style("cut_step"), maker.style("gap_tolerance"))),
        levels=(), clear_heights=(), parts=tuple(maker.parts.values()),
        joints=tuple(maker.joints), fronts=(front,), faces=(face,),
        assembly=tuple(maker.steps), findings=tuple(maker.findings),
        questions=tuple(maker.questions),
    )  # fmt: skip


def line_of(fronts: Iterator[Front]) -> tuple[Dim, Dim] | None:
    """Lowest and highest edge of some fronts above the floor [mm]; None without any."""
    known = list(fronts)
    if not known:
        return None
    lowest = min(known, key=lambda front: front.y.value)
    highest = max(known, key=lambda front: front.y.value + front.height.value)
    return lowest.y, highest.y + highest.height
