"""Islands: runs back to back on ladders, between finished ends, their counter as figures."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from casewright.casework.cases import Case
from casewright.casework.features import Plane
from casewright.casework.house import House
from casewright.casework.maker import Maker, Outline
from casewright.casework.parts import Part
from casewright.casework.specs import CaseSpec, EdgeKind
from casewright.dims import Dim, Given, Origin, Unit, greatest, tell
from casewright.findings import Finding, Severity
from casewright.room.board_screws import BoardScrews
from casewright.room.island_cleats import add_cleats, ladders
from casewright.room.island_screws import POINT, back_to_back, screws_along
from casewright.room.island_spec import IslandSpec
from casewright.room.model import Island, Run
from casewright.sources import INCH
from casewright.stock import Sheet

__all__ = ["build_islands"]

_OTHER = {"left": "right", "right": "left"}

_ROWS = 2
"""Rows of screws behind an end, for each case at it: near the front and near the rear."""


_LAP: Mapping[Unit, Fraction] = {"in": 4 * INCH, "mm": Fraction(100)}
_LAPS = Origin("cited", "of a finished back over the box beside an appliance", "common practice")


@dataclass(frozen=True, slots=True)
class _Body:
    """What stands between the ends [mm].

    Parameters
    ----------
    before, behind
        Depth of the boxes of the front, and of those behind them or of the finished back.
    """

    length: Dim
    height: Dim
    before: Dim
    behind: Dim


def build_islands(
    house: House, specs: Sequence[IslandSpec], runs: Sequence[Run]
) -> tuple[tuple[Island, Case], ...]:
    """Every island of a job, with its panels and cleats as a case of its own, round its runs."""
    by_key = {run.spec.key: run for run in runs}
    return tuple(_build(house, spec, by_key) for spec in specs)


def _build(house: House, spec: IslandSpec, runs: Mapping[str, Run]) -> tuple[Island, Case]:
    front, back = runs[spec.front], runs.get(spec.back)
    key = f"island.{spec.key}"
    maker = Maker(_as_case(front.cases[0].spec, spec, key), house, house.chain.place(key))
    body = _body(maker, spec, front, back)
    ends = _add_ends(maker, spec, body)
    skins = _add_skins(maker, spec, front, body, ends) if back is None else ()
    add_cleats(maker, (front, back), (ends[0].thickness, body.behind, body.length))
    _fits(maker, front, back, body, ends)
    _steps(maker, ends, skins, back)
    case = _as_built(maker, front, back, body)
    return Island(spec, key, tuple(_screws(maker, front, back, ends))), case


def _as_case(first: CaseSpec, spec: IslandSpec, key: str) -> CaseSpec:
    return replace(
        first, key=key, title=spec.title, kind="island", toe="none", back="open", shelves=0,
        upper_shelves=0, fixed_shelves=(), divider=None, finished=(), skirt=None, crown=None,
        nosing=None, front=None, upper_front=None, rows=(), row_rails=False, drawer=None,
        sink=False, roll_outs=0, appliance=None, lid=None, seated=False, blind=None,
        face="frameless", mullion=False, scribes=(), overrides={},
    )  # fmt: skip


def _deepest(cases: Sequence[Case]) -> Dim:
    """Depth of the deepest box, its face frame included [mm]."""
    return max((case.face_plane for case in cases), key=lambda depth: depth.value)


def _body(maker: Maker, spec: IslandSpec, front: Run, back: Run | None) -> _Body:
    place = maker.place
    behind = maker.house.thickness(spec.back_stock) if back is None else _deepest(back.cases)
    return _Body(
        length=place.let("boxes_length", front.cases_end),
        height=place.let("boxes_height", front.cases[0].height),
        before=place.let("front_depth", _deepest(front.cases)),
        behind=place.let("back_depth", behind),
    )


def _add_ends(maker: Maker, spec: IslandSpec, body: _Body) -> tuple[Outline, Outline]:
    """End panels D1 + D2 deep, from the floor to under the counter, their grain upright."""
    deep = maker.place.let("body_depth", body.before + body.behind)
    treated: tuple[Plane, ...] = ("w0", "w1")
    left, right = (
        maker.outline(
            f"end_{hand}", spec.end_stock, body.height, deep, edges=treated,
            edge=_edge(maker, spec.end_stock), setting=f"{maker.spec.key} ends", matched=True,
        )
        for hand in ("left", "right")
    )  # fmt: skip
    across = maker.place.let("body_length", left.thickness + body.length + right.thickness)
    zero = maker.zero
    front: tuple[str, str, str, str] = ("bottom", "top", "front", "back")
    rear: tuple[str, str, str, str] = ("bottom", "top", "back", "front")
    for hand, outline, lies, at, words in (
        ("left", left, "+y -z -x", (left.thickness, zero, deep), front),
        ("right", right, "+y +z +x", (across - right.thickness, zero, deep - right.width), rear),
    ):
        maker.add(
            outline, role="island end", title=f"{hand} end panel", lies=lies, at=at, ends=words,
            shows=("w0", "w1", "t1"), group="ends",
        )  # fmt: skip
    return left, right


def _edge(maker: Maker, stock: str) -> EdgeKind:
    goods = maker.house.stock[stock]
    fibre = isinstance(goods, Sheet) and goods.is_fibreboard
    return "painted" if fibre else maker.spec.edge


def _add_skins(
    maker: Maker, spec: IslandSpec, front: Run, body: _Body, ends: tuple[Outline, Outline]
) -> tuple[Part, ...]:
    """The finished back behind seats: from end to end, in pieces that meet at seams of boxes."""
    found: list[Part] = []
    x = ends[0].thickness
    for number, wide in enumerate(_pieces(maker, spec, front), start=1):
        outline = maker.outline(
            f"back.{number}", spec.back_stock, body.height, wide,
            setting=f"{maker.spec.key} backs", way=None, matched=True,
        )  # fmt: skip
        part = maker.add(
            outline, role="island back", title=f"finished back {number}", lies="+y +x -z",
            at=(x, maker.zero, body.behind), ends=("bottom", "top", "left", "right"),
            shows=("t1",), group="backs",
        )  # fmt: skip
        found.append(part)
        x = x + outline.width
    return tuple(found)


def _pieces(maker: Maker, spec: IslandSpec, front: Run) -> Iterator[Dim]:
    """Widths that a sheet gives, each over as many boxes as go onto it [mm]."""
    goods = maker.house.stock[spec.back_stock]
    if not isinstance(goods, Sheet):
        msg = f"{maker.spec.key} has its back from {spec.back_stock}, which is no sheet"
        raise TypeError(msg)
    most = goods.width.value if goods.grain else goods.length.value
    most -= 2 * maker.style("sheet_trim").value + maker.style("sheet_slack").value
    begins: Dim | None = None
    seam = _seam(maker, front, Fraction(0), most)
    while seam is not None:
        yield seam if begins is None else seam - begins
        begins = seam
        seam = _seam(maker, front, begins.value, most)
    yield front.cases_end if begins is None else front.cases_end - begins


def _seam(maker: Maker, front: Run, begins: Fraction, most: Fraction) -> Dim | None:
    """Where a piece that begins there ends, both it and the next held by a box; None: at the end.

    Behind an appliance nothing holds an edge: a seam lies where two boxes touch, as far along as
    the sheet goes, or else behind a box, so far in that its nailer holds both pieces. Where
    neither is near enough the piece is larger than its sheet, and found so.
    """
    if front.cases_end.value - begins <= most:
        return None
    boxes = list(zip(front.starts, front.cases, strict=True))
    touching = [
        start
        for (start, _), (before, case) in zip(boxes[1:], boxes, strict=False)
        if before.value + case.overall_width.value == start.value
    ]
    near = [seam for seam in touching if 0 < seam.value - begins <= most]
    later = [seam for seam in touching if seam.value > begins]
    if not near and front.appliances:
        lap = maker.house.enter("rule.island_back_lap", Given(_LAP[maker.house.unit], _LAPS))
        inside = [
            start + off
            for start, case in boxes
            if case.overall_width.value >= 2 * lap.value
            for off in (lap, case.overall_width - lap)
        ]
        near = [seam for seam in inside if 0 < seam.value - begins <= most]
    if near:
        return max(near, key=lambda seam: seam.value)
    return min(later, key=lambda seam: seam.value, default=None)


def _fits(
    maker: Maker, front: Run, back: Run | None, body: _Body, ends: tuple[Outline, Outline]
) -> None:
    """Ends as deep as the body, and both rows of boxes as long and as high as each other."""
    place, step = maker.place, maker.style("cut_step").value
    band = maker.style("gap_tolerance").value + step
    for hand, end in zip(("left", "right"), ends, strict=True):
        off = place.let(f"end_{hand}_short", body.before + body.behind - end.width)
        place.fit(f"end_{hand}_fit", off, -band, band, end.path)
    if back is None:
        return
    for word, one, other in (
        ("length", front.cases_end, back.cases_end),
        ("height", front.cases[0].height, back.cases[0].height),
    ):
        off = place.let(f"{word}_step", one - other)
        if abs(off.value) > band:
            maker.findings.append(_uneven(maker, front, back, word, off))
        else:
            place.fit(f"{word}_fit", off, -band, band, place.path)


def _uneven(maker: Maker, front: Run, back: Run, word: str, off: Dim) -> Finding:
    own = maker.reckoning("island rows")
    by = own.text(off if off.value > 0 else -off, f"{word}_by")
    shorter, longer = (back, front) if off.value > 0 else (front, back)
    adjective = {"length": "longer", "height": "higher"}[word]
    other = {"length": "narrower", "height": "lower"}[word]
    return Finding(
        rule="island rows", severity=Severity.STOP, path=maker.spec.key,
        says=tell(
            "in {}, {} is {} {} than {} behind it: no end panel lies flat on both",
            maker.spec.title, longer.spec.title, by, adjective, shorter.spec.title,
        ),
        measured=by.text, limit=maker.house.text(maker.zero), source="common practice",
        remedies=(
            tell(
                "cases of {} together {} {}" if word == "length" else "{} {} {}",
                longer.spec.title, by, other,
            ),
            tell(
                "a case of {} {} {}",
                shorter.spec.title, by, adjective.replace("longer", "wider"),
            ),
        ),
        numbers=own.numbers,
    )  # fmt: skip


def _as_built(maker: Maker, front: Run, back: Run | None, body: _Body) -> Case:
    """The island as a case; its counter's length and depth as numbers.

    Source: common practice: n Wb + 2 te + 2 ohs long, and D1 + D2 + 2 td + 2 ohf deep; with seats
    behind a finished back te, ohf + td + D1 + te + ohk.
    """
    place, nodes = maker.place, maker.house.chain.nodes
    length = nodes[maker.path("body_length")]
    depth = nodes[maker.path("body_depth")]
    place.let("counter_length", length + 2 * maker.style("island_side_overhang"))
    over = maker.style("island_front_overhang")
    out = [_out(maker, "front", front)]
    if back is None:
        counter = depth + out[0] + over + maker.style("island_seat_overhang")
    else:
        out.append(_out(maker, "back", back))
        counter = depth + out[0] + out[1] + 2 * over
    place.let("counter_depth", counter)
    sizes = (place.let("width", length), place.let("height", body.height),
             place.let("depth", depth))  # fmt: skip
    band = place.let("tolerance", greatest(maker.style("cut_step"), maker.style("gap_tolerance")))
    return Case(
        spec=maker.spec, width=sizes[0], height=sizes[1], depth=sizes[2], wanted=sizes,
        standing=maker.zero, overall_width=sizes[0], left_frame=maker.zero,
        overall_depth=sizes[2], tolerance=band, levels=(), clear_heights=(),
        parts=tuple(maker.parts.values()), joints=tuple(maker.joints), fronts=(), faces=(),
        assembly=tuple(maker.steps), findings=tuple(maker.findings),
        questions=tuple(maker.questions),
    )  # fmt: skip


def _out(maker: Maker, word: str, run: Run) -> Dim:
    """How far the doors of a row stand out before its boxes [mm]."""
    outs = [case.overall_depth - case.face_plane for case in run.cases]
    return maker.place.let(f"{word}_doors", max(outs, key=lambda out: out.value))


def _steps(
    maker: Maker,
    ends: tuple[Outline, Outline],
    skins: tuple[Part, ...],
    back: Run | None,
) -> None:
    """What is put on once the boxes stand: cleats have their own steps, before."""
    for skin in skins:
        maker.step(
            "fit", skin.path, "+z",
            "Spread glue on the backs of the boxes, low down too, where no nailer takes a screw; "
            f"set {skin.title} on them, grain upright, tight between its neighbours; clamp top "
            "and bottom, and drive screws from inside through the backs' nailers.",
            cautions=("clamp_screws",),
        )  # fmt: skip
    where = "both rows of boxes" if back is not None else "the boxes and the finished back's edge"
    for hand, end in zip(("left", "right"), ends, strict=True):
        maker.step(
            "fit", end.path, "+x" if hand == "left" else "-x",
            f"Set the {hand} end panel on {where}, flush with the tops and with the front edges; "
            "clamp, and drive the screws from inside through the sides of the boxes.",
            cautions=("clamp_screws", "island_tips"),
        )  # fmt: skip


def _screws(
    maker: Maker, front: Run, back: Run | None, ends: tuple[Outline, Outline]
) -> Iterator[BoardScrews]:
    """Screws from inside the boxes: into the ends, and from row to row or into the back."""
    for hand, end in zip(("left", "right"), ends, strict=True):
        for run in (front, back):
            if run is None:
                continue
            case = run.cases[0 if (hand == "left") == (run is front) else -1]
            # A row behind is turned half round: its right side is at the island's left end.
            side = case.part(f"{case.key}.side_{hand if run is front else _OTHER[hand]}")
            screw = maker.house.screw_for(
                "drawer_screw", side.finished.thickness, end.thickness * POINT
            )
            count = _ROWS * screws_along(maker, side.finished.length)
            yield BoardScrews(f"{end.path}.screws_{run.spec.key}", count, screw, side.path,
                               end.path)  # fmt: skip
    yield from _to_cleats(maker, (front, back))
    yield from back_to_back(maker, (front,) if back is None else (front, back), ends[0].thickness)


def _to_cleats(maker: Maker, runs: tuple[Run, Run | None]) -> Iterator[BoardScrews]:
    """Two through each end sleeper of a ladder into the cleat beside it."""
    cleats = [part for part in maker.parts.values() if part.role == "floor cleat"]
    sleepers = [
        sleeper
        for run in runs
        if run is not None
        for ladder in ladders(run)
        for sleeper in (ladder.sleepers[0], ladder.sleepers[-1])
    ]
    for cleat, sleeper in zip(cleats, sleepers, strict=True):
        screw = maker.house.screw_for(
            "drawer_screw", sleeper.finished.thickness, cleat.finished.thickness * POINT
        )
        yield BoardScrews(f"{cleat.path}.screws", 2, screw, sleeper.path, cleat.path)
