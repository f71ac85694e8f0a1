"""A finished end: its side dressed with a frame that matches the doors, or with one board."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from casewright.casework.brads import row_marks
from casewright.casework.carcase import Carcase
from casewright.casework.cases import Front
from casewright.casework.fronts.end_skins import cover_end
from casewright.casework.fronts.strips import milled_from, strip_fastenings
from casewright.casework.joints import Fastening
from casewright.casework.maker import Maker, Outline
from casewright.casework.parts import Part
from casewright.casework.specs import CaseSpec, Hand
from casewright.dims import Dim, Place, tell, total
from casewright.findings import Finding, Severity

__all__ = ["EndFrames", "add_finished_ends", "end_stock"]


@dataclass(frozen=True, slots=True)
class EndFrames:
    """What is on the ends of a case.

    Parameters
    ----------
    left, right
        Thickness of what is on each end [mm]; nothing where there is none.
    overall_width
        Width of the case over its ends [mm].
    """

    left: Dim
    right: Dim
    overall_width: Dim


@dataclass(frozen=True, slots=True)
class _Rail:
    """A rail of the frame: its name, case height of its lower edge, its width [mm]."""

    name: str
    low: Dim
    width: Dim


@dataclass(frozen=True, slots=True)
class _End:
    """The side to be dressed and the stretch of it that the frame covers [mm]."""

    hand: Hand
    side: Part
    place: Place
    stock: str
    low: Dim
    high: Dim


def add_finished_ends(maker: Maker, carcase: Carcase) -> EndFrames:
    """Dress the ends that show. To be called after the doors, whose rails it lines up with.

    Frame, skin or flush end covers the side from its lower end, or from above the toe notch, to
    its top.
    """
    added = dict.fromkeys(("left", "right"), maker.zero)
    total = carcase.width
    for hand in maker.spec.dressed:
        end = _end(maker, carcase, hand)
        if maker.spec.end == "applied frame":
            outer = _dress(maker, carcase, end)
        else:
            outer = cover_end(maker, carcase, hand, end.side, (end.low, end.high))
        if outer is not None:
            added[hand] = outer.thickness
            total = total + outer.thickness
    overall = maker.place.let("overall_width", total)
    return EndFrames(added["left"], added["right"], overall)


def end_stock(spec: CaseSpec) -> str:
    """Stock of what is on a finished end: a frame's is that of the doors' strips, if any."""
    if spec.end != "applied frame":
        return spec.end_stock
    front = spec.front
    if front is not None and front.construction == "applied frame":
        return front.strip
    return spec.strip_stock


def _end(maker: Maker, carcase: Carcase, hand: Hand) -> _End:
    side = maker.parts[carcase.left if hand == "left" else carcase.right]
    foot = side.placed.y
    length = side.finished.length
    notched = maker.spec.has_toe and maker.spec.toe == "notch"
    return _End(
        hand=hand,
        side=side,
        place=maker.place.at(f"end_{hand}"),
        stock=end_stock(maker.spec),
        low=_lower_end(maker, carcase, foot, notched=notched),
        high=length if foot is maker.zero else foot + length,
    )


def _lower_end(maker: Maker, carcase: Carcase, foot: Dim, *, notched: bool) -> Dim:
    """Case height that what is on an end begins at [mm]: a panel of a surround at the floor."""
    if maker.spec.between_panels:
        return maker.zero
    return carcase.openings[0].face_y0 if notched else foot


def _dress(maker: Maker, carcase: Carcase, end: _End) -> Outline | None:
    """Cut the frame to the side as it is, and put it on; nothing where there is no room."""
    rails = list(_rails(maker, end))
    if not _has_room(maker, end, rails):
        return None
    tall = end.high if end.low is maker.zero else end.high - end.low
    front, back = (
        maker.outline(
            f"end_{end.hand}.stile_{word}", end.stock, tall, maker.style("stile"),
            setting=f"{maker.spec.key} end stiles", matched=True,
        )
        for word in ("front", "back")
    )  # fmt: skip
    face = maker.zero if end.hand == "left" else carcase.width
    for word, stile in (("front", front), ("back", back)):
        _place_stile(maker, end, stile, word, face)
        _fasten(maker, end, stile, f"{word} stile", ())
    between = end.side.finished.width - front.width - back.width
    for rail in rails:
        outline = maker.outline(
            f"end_{end.hand}.rail_{rail.name}", end.stock, between, rail.width,
            setting=f"{maker.spec.key} end rails", matched=True,
        )  # fmt: skip
        low = rail.low if rail.name != "top" else end.high - outline.width
        _place_rail(maker, end, outline, rail.name, (face, low, end.side.placed.z - front.width))
        _fasten(maker, end, outline, f"{rail.name} rail", _butts(maker, end, outline, front, back))
    return front


def _rails(maker: Maker, end: _End) -> Iterator[_Rail]:
    """Rails whose inner edges line up with those of the doors; a middle one at a divider."""
    rail = maker.style("rail")
    order = sorted(maker.fronts, key=lambda f: f.y.value)
    first, last = (order[0], order[-1]) if order else (None, None)
    if first is None or last is None:
        yield _Rail("bottom", end.low, rail)
        yield _Rail("top", end.high - rail, rail)
        return
    sill = first.y + rail
    yield _Rail("bottom", end.low, sill if end.low is maker.zero else sill - end.low)
    upper = next((f for f in order if f.opening == "upper"), None)
    lower = next((f for f in reversed(order) if f.opening != "upper"), None)
    if lower is not None and upper is not None:
        low = _top(lower) - rail
        yield _Rail("middle", low, upper.y + rail - low)
    head = _top(last) - rail
    yield _Rail("top", head, end.high - head)


def _top(front: Front) -> Dim:
    return front.y + front.height


def _has_room(maker: Maker, end: _End, rails: list[_Rail]) -> bool:
    """Whether stiles and rails leave a panel between them."""
    deep, up = end.side.finished.width, end.high - end.low
    across = deep - 2 * maker.style("stile")
    high = min(
        (up - total(*(rail.width for rail in rails)), *(rail.width for rail in rails)),
        key=lambda left: left.value,
    )
    if across.value <= 0:
        maker.findings.append(_too_small(maker, end, "stile", deep, across))
    elif high.value <= 0:
        maker.findings.append(_too_small(maker, end, "rail", up, high))
    return across.value > 0 and high.value > 0


def _too_small(maker: Maker, end: _End, name: str, whole: Dim, left: Dim) -> Finding:
    """What stiles or rails leave is nothing.

    Parameters
    ----------
    whole, left
        Depth or height of the end; what is left between them, 0 or below [mm].
    """
    own, more = maker.reckoning("finished end", end.place.path), "taller"
    if name == "stile":
        more = "deeper"
    take, size = own.text(whole - left, "take"), own.text(whole, "size")
    lacks = own.text(maker.zero - left, "lacks")
    return Finding(
        rule="finished end",
        severity=Severity.STOP,
        path=end.place.path,
        says=tell(
            "the {} end is too small for a frame like the doors': its {}s take {} of {}",
            end.hand, name, take, size,
        ),
        measured=take.text,
        limit=size.text,
        source="common practice",
        remedies=(
            tell("{} under {} in [style]", name, own.text(whole / 2, "half")),
            tell("a case more than {} {}", lacks, more)
            if left.value
            else f"a case a little {more}",
            "leave the end plain",
        ),
        numbers=own.numbers,
    )  # fmt: skip


def _place_stile(maker: Maker, end: _End, stile: Outline, word: str, face: Dim) -> None:
    """The front stile is flush with the side's front edge, the back one with its rear edge."""
    front = end.side.placed.z
    rear = front - end.side.finished.width
    near, far = (front, front - stile.width) if word == "front" else (rear + stile.width, rear)
    left = end.hand == "left"
    maker.add(
        stile, role="stile", title=f"{word} stile of the {end.hand} end",
        lies="+y -z -x" if left else "+y +z +x", at=(face, end.low, near if left else far),
        ends=("bottom", "top", "front", "back") if left else ("bottom", "top", "back", "front"),
        shows=("l0", "w0", "w1", "t1"), group="end stiles",
        front=end.place.path, milled_from=milled_from(maker, end.stock),
    )  # fmt: skip


def _place_rail(
    maker: Maker, end: _End, rail: Outline, word: str, at: tuple[Dim, Dim, Dim]
) -> None:
    """Lay a rail between the stiles; `at` is its lower front corner on the side's face."""
    x, y, front = at
    left = end.hand == "left"
    maker.add(
        rail, role="rail", title=f"{word} rail of the {end.hand} end",
        lies="+z +y -x" if left else "-z +y +x",
        at=(x, y, front - rail.length if left else front),
        ends=("back", "front", "bottom", "top") if left else ("front", "back", "bottom", "top"),
        shows=("w0", "w1", "t1"), group="end rails", front=end.place.path,
        milled_from=milled_from(maker, end.stock),
    )  # fmt: skip


def _butts(
    maker: Maker, end: _End, rail: Outline, front: Outline, back: Outline
) -> tuple[str, ...]:
    """Joints of a rail's ends with the stiles' inner edges."""
    left = end.hand == "left"
    name = rail.path.rpartition(".")[2]
    return tuple(
        maker.join(
            f"end_{end.hand}.joint_{name}_{word}", "butt",
            (rail.path, "l1" if (word == "front") == left else "l0"),
            (stile.path, "w1" if (word == "front") == left else "w0"),
            fastenings=(Fastening("glue", 1, None, (rail.path,), stile.path),),
        )
        for word, stile in (("front", front), ("back", back))
    )  # fmt: skip


def _fasten(maker: Maker, end: _End, strip: Outline, word: str, joints: tuple[str, ...]) -> None:
    name = f"end_{end.hand}.joint_{strip.path.rpartition('.')[2]}"
    held = strip_fastenings(maker, name, strip, end.side.path, end.side.finished.thickness)
    face = maker.join(name, "face", (strip.path, "t0"), (end.side.path, "t0"), fastenings=held)
    brads = any(f.kind == "brad" for f in held)
    maker.step(
        "fit", strip.path, "+x" if end.hand == "left" else "-x",
        f"Spread glue thinly; set the {word} on the {end.hand} end, flush with the side's edges; "
        f"{'hold it with brads' if brads else 'clamp it'}.",
        joints=(face, *joints), marks=row_marks(maker, (face,)),
        cautions=("brad_points",) if brads else (),
    )  # fmt: skip
