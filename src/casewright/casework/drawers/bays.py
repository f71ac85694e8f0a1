"""Bays that roll-outs run in: one between the sides, or one at either side of a partition.

A mullion of the face frame parts the mouth of a case, and no roll-out passes it. Behind it stands
a partition, from the bottom up, with pads on both of its faces that are planed flush with the
mullion's edges (common practice).
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from casewright.casework.brads import fastener_row, row_marks
from casewright.casework.carcase import Carcase, Opening
from casewright.casework.drawers.findings import no_partition
from casewright.casework.features import Plane
from casewright.casework.joints import Fastening
from casewright.casework.levels import extent
from casewright.casework.maker import Maker, Outline
from casewright.casework.packing import pad_face
from casewright.casework.parts import Part
from casewright.casework.specs import Hand
from casewright.dims import Dim, least

__all__ = ["Bay", "Wall", "bays_of"]

_THINNEST = Fraction(3)
"""Thinnest pad that is worth planing: about 1/8 in (common practice) [mm]."""
_OVER = ("stretcher", "top", "divider", "fixed shelf")


@dataclass(frozen=True, slots=True)
class Wall:
    """What pads of one side of a bay are fixed to.

    Parameters
    ----------
    hand
        Of the pads: at the left or at the right of the roll-out.
    board, plane
        Path of the side or the partition, and which of its planes.
    x
        Case x of that plane [mm].
    pad
        Thickness that its pad is planed to, flush with a mullion's edge [mm]; None at a side,
        where packing reaches the frame's edge and doors stand in.
    """

    hand: Hand
    board: str
    plane: Plane
    x: Dim
    pad: Dim | None = None


@dataclass(frozen=True, slots=True)
class Bay:
    """Where roll-outs run: what their names begin with, and the walls at its left and right."""

    name: str
    walls: tuple[Wall, Wall]


def bays_of(maker: Maker, carcase: Carcase, opening: Opening) -> tuple[Bay, ...]:
    """One bay between the sides; behind a mullion two, the partition between them built.

    None, with a finding, where the mullion does not hide that partition and pads beside it.
    """
    left, right = (_side(maker, carcase, hand) for hand in ("left", "right"))
    frame = carcase.frame
    if frame is None or frame.mullion is None:
        return (Bay("roll_out", (left, right)),)
    low, high = frame.mullion
    thick = maker.house.thickness(maker.spec.box_stock)
    board = maker.house.thickness(maker.spec.strip_stock)
    if not _THINNEST <= (high - low - thick).value / 2 <= board.value:
        maker.findings.append(no_partition(maker, (high - low, thick), (_THINNEST, board)))
        return ()
    part, pad = _add(maker, carcase, opening, (low, high))
    near, far = extent(part, 0)
    return (
        Bay("roll_out_left", (left, Wall("right", part.path, "t1", near, pad))),
        Bay("roll_out_right", (Wall("left", part.path, "t0", far, pad), right)),
    )


def _side(maker: Maker, carcase: Carcase, hand: Hand) -> Wall:
    path, thick = pad_face(maker, carcase, hand)
    return Wall(hand, path, "t1", thick if hand == "left" else carcase.width - thick)


def _add(
    maker: Maker, carcase: Carcase, opening: Opening, mullion: tuple[Dim, Dim]
) -> tuple[Part, Dim]:
    """Cut the partition to the box as it is, place it, join it, tell its step.

    Parameters
    ----------
    mullion
        Case x of its edges [mm].

    Returns
    -------
    The partition, and the room for a pad at either side of it, as thick as it is itself [mm].
    """
    bottom = maker.parts[maker.path("bottom")]
    low = bottom.placed.y + bottom.finished.thickness
    over = _over(maker, low)
    # Where a drawer runs over it, it ends with the rail under that.
    high = opening.y1 if over is None or _ends_under(maker, opening) else extent(over, 1)[0]
    behind = _behind(maker, carcase, (low, high))
    rear = carcase.seat if behind is None else extent(behind, 2)[1]
    outline = maker.outline(
        "partition", maker.spec.box_stock, high - low, carcase.depth - rear,
        setting=f"{maker.spec.key} partition", way=None, matched=True,
    )  # fmt: skip
    left, right = mullion
    pad = outline.place.let("pad_room", (right - left - outline.thickness) / 2)
    x = outline.place.let("x", left + pad)
    part = maker.add(
        outline, role="partition", title="partition", lies="+y -z -x",
        at=(x + outline.thickness, low, carcase.depth), ends=("bottom", "top", "front", "back"),
    )  # fmt: skip
    joints = tuple(_joined(maker, carcase, outline, (over, behind), high))
    words = ["up through the bottom"]
    words += ["through what is over it"] if any("over" in path for path in joints) else []
    words += ["through the back"] if any("back" in path for path in joints) else []
    mark = outline.place.let("mark_out", x - carcase.left_thickness)
    maker.step(
        "fit", part.path, "-z",
        "Spread glue thinly on its ends; slide the partition in from the front, square to the "
        f"bottom, flush with the front edges of the box; brads {', '.join(words)}, set.",
        joints=joints,
        marks=(("left face from the inside of the left side", mark), *row_marks(maker, joints)),
        cautions=("brad_points",),
    )  # fmt: skip
    return part, pad


def _ends_under(maker: Maker, opening: Opening) -> bool:
    """Whether a row of the face lies over the doors."""
    rows = [row.kind for row in maker.spec.rows]
    return bool(rows) and rows.index("doors") > 0 and opening.name == "main"


def _over(maker: Maker, low: Dim) -> Part | None:
    """The lowest board over the bottom that reaches from side to side, the front one first."""
    boards = [
        part
        for part in maker.parts.values()
        if part.role in _OVER and part.placed.y.value > low.value
    ]
    return min(boards, key=lambda p: (extent(p, 1)[0].value, -p.placed.z.value), default=None)


def _behind(maker: Maker, carcase: Carcase, span: tuple[Dim, Dim]) -> Part | None:
    """A nailer before the back, at the partition's height; None: the back itself is behind it."""
    low, high = span
    nailers = [
        part
        for part in maker.parts.values()
        if part.role == "nailer"
        and extent(part, 1)[0].value < high.value
        and extent(part, 1)[1].value > low.value
        and extent(part, 2)[1].value > carcase.seat.value
    ]
    return max(nailers, key=lambda part: extent(part, 2)[1].value, default=None)


def _joined(
    maker: Maker,
    carcase: Carcase,
    part: Outline,
    met: tuple[Part | None, Part | None],
    high: Dim,
) -> list[str]:
    """Its joints with the bottom, with what it reaches over it, and with what is behind it.

    Parameters
    ----------
    met
        Boards over it and behind it.
    high
        Case height of its upper end [mm].
    """
    (over, behind), bottom = met, maker.parts[maker.path("bottom")]
    found = [_brads(maker, "partition.joint_bottom", part, "l0", bottom, part.width)]
    if over is not None and extent(over, 1)[0].value == high.value:
        shared = least(part.width, over.finished.width)
        found.append(_brads(maker, "partition.joint_over", part, "l1", over, shared))
    back = maker.parts.get(maker.path("back"))
    if behind is not None:
        glue = (Fastening("glue", 1, None, (part.path,), behind.path),)
        found.append(maker.join("partition.joint_nailer", "butt", (part.path, "w1"),
                                (behind.path, "t1"), fastenings=glue))  # fmt: skip
    elif back is not None:
        found.append(_brads(maker, "partition.joint_back", part, "w1", back, part.length))
    return found


def _brads(maker: Maker, name: str, part: Outline, own: Plane, board: Part, along: Dim) -> str:
    """Glued to a board, and bradded through it along the middle of the partition's edge.

    Parameters
    ----------
    own
        The end or edge of the partition that meets it.
    along
        How far they meet [mm].
    """
    lies, corner = board.placed.orientation, board.placed.x
    middle = maker.parts[part.path].placed.x - part.thickness / 2
    across = lies.length if lies.length.axis == 0 else lies.width
    line = middle - corner if across.sign > 0 else corner - middle
    edge: Plane = "l0" if lies.length.axis == 0 else "w0"
    inner: Plane = "t1"
    if own == "l1" and lies.thickness.sign > 0:
        inner = "t0"
    thin = board.role == "back" and maker.spec.back != "inset"
    row = fastener_row(
        maker, name, along, "brads along the partition", through=board.path, into=part.path,
        screw=maker.house.screw("back_brad" if thin else "brad"), line=(edge, line),
    )  # fmt: skip
    glue = Fastening("glue", 1, None, (part.path,), board.path)
    return maker.join(name, "butt", (part.path, own), (board.path, inner),
                      fastenings=(row, glue))  # fmt: skip
