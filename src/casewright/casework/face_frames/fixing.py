"""A face frame fastened to its box: glued, and screwed or bradded to every front edge."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.box import Board, Box
from casewright.casework.brads import fastener_row, row_marks
from casewright.casework.face_frames.members import FrameParts, Rail
from casewright.casework.features import Plane
from casewright.casework.joints import Fastening, Surface
from casewright.casework.maker import Maker, Outline
from casewright.casework.pockets import bore_pockets
from casewright.casework.rows import boards_behind_rails
from casewright.casework.specs import CaseSpec, Hand
from casewright.dims import Dim

__all__ = ["fasten_frame"]

_HANDS: tuple[Hand, Hand] = ("left", "right")

_BLOCKS = ", on blocks that keep the feet of the stiles free"

_ACROSS = (
    "Stand the corner upright, its mouth to you; spread glue on the front edges of both strips "
    "and on the slants of bottom and top; set"
)
_INTO_STRIPS = (
    "brads through the stiles into the strips, set and filled. The long points of the bevels end "
    "in line with the outsides of both return sides"
)

_POINT = Fraction(5, 6)
"""How far into the blind stile the screws behind it may go (common practice)."""


def fasten_frame(maker: Maker, box: Box, members: FrameParts) -> None:
    """The frame on the front edges of the box, glued, and screwed or bradded."""
    spec = maker.spec
    # Where an end shows, its outside takes no pockets; where a shelf is fixed, its screws are in
    # their way; beside the strips of a diagonal corner no driver has room.
    fixed = spec.diagonal or (
        spec.fixed_shelves or spec.divider or spec.kind == "bookcase" or boards_behind_rails(spec)
    )
    screwed = spec.face_fixing == "pocket screws" and not (spec.finished or fixed)
    joints = [
        _on_side(maker, box, members, hand, screwed=screwed) for hand in _HANDS
    ]  # fmt: skip
    joints += [
        _on_board(maker, board, rail, screwed=screwed)
        for board, rail in _behind_rails(spec, box, members)
    ]
    mullion = _on_partition(maker, members)
    joints += mullion
    blind = _on_panel(maker, members)
    joints += blind
    cautions = ["clamp_screws"] if screwed else []
    cautions += ["brad_points"] if mullion or not screwed else []
    how = _INTO_STRIPS if spec.diagonal else _how(
        screwed=screwed, blind=bool(blind), mullion=bool(mullion), panels=spec.between_panels
    )  # fmt: skip
    maker.step(
        "fit", maker.path("frame"), "-z",
        f"{_lay(spec)} the face frame on, its bottom rail level with the bottom, as far out at "
        f"either side as marked; clamp all round; {how}.",
        joints=tuple(joints),
        marks=(
            (f"frame out beside the left {'strip' if spec.diagonal else 'side'}", _out(maker)),
            *row_marks(maker, joints),
        ),
        planes=_marked(maker) if screwed and not (mullion or blind) else (),
        cautions=("heavy_lift", *cautions),
    )  # fmt: skip


def _behind_rails(spec: CaseSpec, box: Box, members: FrameParts) -> Iterator[tuple[Board, Rail]]:
    """The boards of the box that a rail lies before."""
    boards = {board.name: board for board in box.boards}
    yield box.bottom, members.rails[-1]
    head = boards.get("top") or boards.get("front_stretcher")
    if head is not None:
        yield head, members.rails[0]
    if "divider" in boards:
        yield boards["divider"], members.rails[1]
    for number in boards_behind_rails(spec):
        yield boards[f"row_board.{number}"], members.rails[number]


def _lay(spec: CaseSpec) -> str:
    """How the box lies, or stands, for its frame."""
    if spec.diagonal is not None:
        return _ACROSS
    blocks = _BLOCKS if spec.between_panels else ""
    return f"Lay the box on its back{blocks}; spread glue on its front edges; set"


def _how(*, screwed: bool, blind: bool, mullion: bool, panels: bool) -> str:
    """How the frame is held while its glue sets."""
    how = "drive the pocket screws from outside the sides" if screwed else (
        f"brads through {'its rails' if panels else 'the frame'} into every edge, set and filled"
    )  # fmt: skip
    if blind:
        how = f"{how}; from inside, screws through the blind panel into the stile before it"
    if screwed and mullion:
        how = f"{how}; brads through the mullion into the partition, set and filled"
    return how


def _out(maker: Maker) -> Dim:
    part = maker.parts[maker.path("frame.stile_left")]
    return maker.place.at("frame").let("mark_out", -part.placed.x)


def _marked(maker: Maker) -> tuple[tuple[Surface, Surface], ...]:
    """The planes that its mark is measured between; rows of brads have none of their own."""
    stile, side = maker.path("frame.stile_left"), maker.path("side_left")
    return ((Surface(stile, "w0"), Surface(side, "t0")),)


def _glue(part: str, into: str) -> Fastening:
    return Fastening("glue", 1, None, (part,), into)


def _on_side(maker: Maker, box: Box, members: FrameParts, hand: Hand, *, screwed: bool) -> str:
    """A stile on the front edge of a side."""
    side = box.left if hand == "left" else box.right
    stile = members.left if hand == "left" else members.right
    name = f"frame.joint_side_{hand}"
    held: Fastening | None
    if screwed:
        start, reach = _between_boards(maker, box, side)
        count = bore_pockets(
            maker, side.path, "B", ("w0",), along="l0", start=start, reach=reach,
            mortises=tuple(_mortises(members, box.foot)),
        )  # fmt: skip
        screw = maker.house.pocket_screw(maker.spec.box_stock)
        held = Fastening("pocket screw", count, screw, (side.path,), stile.path)
    elif maker.spec.between_panels:
        # Brads go through it into the panel beside the side.
        held = None
    else:
        part = maker.parts[stile.path]
        out = maker.zero - part.placed.x
        if maker.spec.diagonal is not None:
            # From the edge that is seen: the outer one is bevelled.
            # Along the strip, which ends behind the rails.
            row = _brads(maker, name, stile, side.path, ("w1", side.thickness / 2), side.length)
            return _stile_joint(maker, name, side, stile, row)
        if hand == "right":
            out = part.placed.x - maker.parts[side.path].placed.x
        held = _brads(maker, name, stile, side.path, ("w0", out + side.thickness / 2))
    return _stile_joint(maker, name, side, stile, held)


def _stile_joint(
    maker: Maker, name: str, side: Outline, stile: Outline, held: Fastening | None
) -> str:
    return maker.join(
        name, "butt", (side.path, "w0"), (stile.path, "t0"),
        fastenings=(*((held,) if held else ()), _glue(stile.path, side.path)),
    )  # fmt: skip


def _mortises(members: FrameParts, foot: Dim) -> Iterator[tuple[Dim, Dim]]:
    """Where tenons of rails lie in the stiles, from the lower ends of the sides [mm]."""
    for rail in (*members.rails[1:-1], *members.backers) if members.tenon else ():
        low = rail.low if not foot.path and not foot.op else rail.low - foot
        yield low, low + rail.outline.width


def _between_boards(maker: Maker, box: Box, side: Outline) -> tuple[Dim, Dim]:
    """Stretch of a side, from its lower end, that takes pockets: clear of the boards' screws."""
    foot = box.foot
    low = box.bottom.underside + box.bottom.outline.thickness
    heads = [b.outline.thickness for b in box.boards if b.name in ("top", "front_stretcher")]
    high = side.length - heads[0] if heads else side.length
    return (low if foot is maker.zero else low - foot), high


def _on_board(maker: Maker, board: Board, rail: Rail, *, screwed: bool) -> str:
    """A rail on the front edge of the bottom or of what closes the top."""
    outline, part = board.outline, maker.parts[rail.outline.path]
    name = f"frame.joint_{board.name.replace('.', '_')}"
    held: tuple[Fastening, ...] = (_glue(part.path, outline.path),)
    if maker.spec.diagonal is not None:
        # Its front is the slant of its clip.
        return maker.join(name, "butt", (outline.path, "w0", f"{outline.path}.clip"),
                          (part.path, "t0"), fastenings=held)  # fmt: skip
    if not screwed:
        up = board.underside if part.placed.y is maker.zero else board.underside - part.placed.y
        row: tuple[Plane, Dim] = ("w0", up + outline.thickness / 2)
        held = (_brads(maker, name, rail.outline, outline.path, row), *held)
    return maker.join(name, "butt", (outline.path, "w0"), (part.path, "t0"), fastenings=held)


def _on_partition(maker: Maker, members: FrameParts) -> list[str]:
    """The mullion on the front edge of the partition behind it, where there is one."""
    part = maker.parts.get(maker.path("partition"))
    mullion = next((m.outline for m in members.mullions if m.opening == "main"), None)
    if part is None or mullion is None:
        return []
    name = "frame.joint_partition"
    row: tuple[Plane, Dim] = ("w0", mullion.width / 2)
    held = (_brads(maker, name, mullion, part.path, row), _glue(mullion.path, part.path))
    return [maker.join(name, "butt", (part.path, "w0"), (mullion.path, "t0"), fastenings=held)]


def _on_panel(maker: Maker, members: FrameParts) -> list[str]:
    """The blind stile on the panel behind it, in a blind corner."""
    if members.blind is None:
        return []
    stile, panel = members.blind.outline, maker.parts[maker.path("blind")]
    left = maker.spec.blind == "left"
    screw = maker.house.screw_for(
        "drawer_screw", panel.finished.thickness, stile.thickness * _POINT
    )
    row = fastener_row(
        maker, "frame.joint_blind", stile.length, "screws behind the blind stile",
        through=panel.path, into=stile.path, screw=screw,
        line=("w0" if left else "w1", stile.width / 2), kind="case screw",
    )  # fmt: skip
    return [
        maker.join("frame.joint_blind", "face", (stile.path, "t0"), (panel.path, "t1"),
                   fastenings=(row, _glue(stile.path, panel.path)))
    ]  # fmt: skip


def _brads(
    maker: Maker,
    joint: str,
    member: Outline,
    into: str,
    line: tuple[Plane, Dim],
    along: Dim | None = None,
) -> Fastening:
    return fastener_row(
        maker, joint, member.length if along is None else along, "brads along the frame",
        through=member.path, into=into, screw=maker.house.screw("brad"), line=line,
    )  # fmt: skip
