"""Pads on the sides of a framed box: they bring hinges and slides out to the frame's edge."""

from __future__ import annotations

from casewright.casework.brads import fastener_row
from casewright.casework.carcase import Carcase
from casewright.casework.features import Plane
from casewright.casework.joints import Fastening, Surface
from casewright.casework.maker import Maker
from casewright.casework.naming import roll_out_title
from casewright.casework.parts import Part
from casewright.casework.specs import Hand
from casewright.dims import Dim, Way, tell
from casewright.findings import Finding, Severity

__all__ = ["PAD_GROUP", "fit_pad", "fit_pads", "hinge_pad", "pad_face", "slide_pad"]

PAD_GROUP = "frame pads"
"""Match group of the pads: one thickness, planed in one go."""

_RULE = "pads behind the frame"
_PLANED = "a long board of the frame: plane it to thickness, rip it, then cut the pads off"

_THINNEST = 3
"""Thinnest pad that is worth planing: about 1/8 in (common practice) [mm]."""


def pad_face(maker: Maker, carcase: Carcase, hand: Hand) -> tuple[str, Dim]:
    """What hardware at a side is screwed to without a pad: the side, and its thickness [mm]."""
    if hand == "left":
        return carcase.left, carcase.left_thickness
    return carcase.right, carcase.right_thickness


def hinge_pad(maker: Maker, carcase: Carcase, hand: Hand, name: str, height: Dim) -> Part | None:
    """A pad for one hinge plate; None where the side itself reaches the frame's edge.

    Parameters
    ----------
    height
        Case height of the plate's middle [mm].
    """
    size = maker.style("hinge_pad")
    part = f"pad_{name}_{hand}"
    words = name.removeprefix("plate_").removeprefix("main_").replace("_", " ")
    return _pad(maker, carcase, hand, (part, f"hinge {words}"), (size, size), height)


def slide_pad(
    maker: Maker,
    carcase: Carcase,
    hand: Hand,
    name: str,
    sizes: tuple[Dim, Dim, Dim],
    *,
    word: str = "pad",
) -> Part | None:
    """A pad for one slide; None where the side itself reaches the frame's edge.

    Parameters
    ----------
    sizes
        Its length and width, and the case height of the slide's line [mm].
    word
        What it is called: of a roll-out it is the packing under its pad.
    """
    length, width, line = sizes
    title = roll_out_title(name) if name.startswith("roll_out") else name.replace("_", " ")
    named = (f"{name}.{word}_{hand}", title)
    return _pad(maker, carcase, hand, named, (length, width), line)


def _pad(
    maker: Maker,
    carcase: Carcase,
    hand: Hand,
    named: tuple[str, str],
    size: tuple[Dim, Dim],
    middle: Dim,
) -> Part | None:
    """Cut and place a pad: for a hinge upright as the side, for a slide along it.

    Parameters
    ----------
    named
        Its name in the case, and what it is for, in words.
    middle
        Case height of its middle [mm].
    """
    frame = carcase.frame
    if frame is None:
        return None
    number = 0 if hand == "left" else 1
    thick = frame.pads[number]
    if thick is None:
        return None
    _check(maker, frame.room[number], maker.house.thickness(maker.spec.face_stock))
    outline = maker.outline(
        named[0], maker.spec.face_stock, size[0], size[1], setting=f"{maker.spec.key} pads",
        way=Way.NEAREST, planed=thick,
    )  # fmt: skip
    left = hand == "left"
    upright = named[1].startswith("hinge")
    tall = outline.length if upright else outline.width
    low = outline.place.let("low", middle - tall / 2)
    x = carcase.left_thickness if left else carcase.width - carcase.right_thickness
    word = named[0].rpartition(".")[2].removesuffix(f"_{hand}")
    title = f"{hand} {'pad' if upright else word} of {named[1]}"
    shows: tuple[Plane, ...] = ("t1",)
    if upright:
        return maker.add(
            outline, role="pad", title=title, lies="+y -z +x" if left else "+y -z -x",
            at=(x, low, carcase.depth), ends=("bottom", "top", "front", "back"), hand=hand,
            shows=shows, group=PAD_GROUP, milled_from=_PLANED,
        )  # fmt: skip
    return maker.add(
        outline, role="pad", title=title, lies="+z +y +x" if left else "+z +y -x",
        at=(x, low, carcase.depth - outline.length), ends=("back", "front", "bottom", "top"),
        hand=hand, shows=shows, group=PAD_GROUP, milled_from=_PLANED,
    )  # fmt: skip


def _check(maker: Maker, room: Dim, board: Dim) -> None:
    """Whether a pad of that thickness can be had from a board of the frame."""
    own, zero = maker.reckoning(_RULE, maker.path("frame")), maker.zero
    thin = 0 < room.value < _THINNEST
    short = room - board if room.value > board.value else zero
    known = any(found.rule == _RULE for found in maker.findings)
    if known or (not thin and short.value <= maker.style("cut_step").value):
        return
    side = maker.house.thickness(maker.spec.box_stock) + maker.style("face_overhang")
    pads, over = own.text(room, "pad"), own.text(short, "over")
    maker.findings.append(
        Finding(
            rule=_RULE,
            severity=Severity.STOP,
            path=maker.path("frame"),
            says=tell(
                "hardware needs pads of {} to reach the edge of the face frame: {}",
                pads,
                "too thin to plane" if thin else tell("thicker than its boards by {}", over),
            ),
            measured=pads.text,
            limit="" if thin else own.text(board).text,
            source="common practice",
            remedies=(
                tell(
                    "set face_stile to {}, so that the sides need no pads", own.text(side, "stile")
                ),
                tell(
                    "set face_stile to {}, so that they are as thick as the boards",
                    own.text(side + board, "stile_with_board"),
                ),
            ),
            numbers=own.numbers,
        ),
    )


def fit_pads(maker: Maker, carcase: Carcase) -> None:
    """Glue and screw the pads to the sides, from the front: the frame is not on yet."""
    for part in [p for p in maker.parts.values() if p.group == PAD_GROUP]:
        hand: Hand = "left" if part.hand == "left" else "right"
        fit_pad(maker, part, maker.parts[pad_face(maker, carcase, hand)[0]])


def fit_pad(maker: Maker, part: Part, side: Part) -> None:
    """Glue and screw one pad to its side; its step."""
    place = maker.house.chain.place(part.path)
    joint = f"{part.path.removeprefix(f'{maker.place.path}.')}_joint"
    upright = part.ends[0] == "bottom"
    line: tuple[Plane, Dim] = (
        ("w1", part.finished.width / 4) if upright else ("w0", part.finished.width / 4)
    )
    held = fastener_row(
        maker, joint, part.finished.length, "screws along a pad", through=part.path,
        into=side.path, screw=_screw(maker, part, side), line=line,
        kind="case screw",
    )  # fmt: skip
    path = maker.join(
        joint, "face", (part.path, "t0"), (side.path, "t1"),
        fastenings=(held, Fastening("glue", 1, None, (part.path,), side.path)),
    )  # fmt: skip
    foot = side.placed.y
    up = part.placed.y if foot is maker.zero else part.placed.y - foot
    maker.step(
        "fit", part.path, "-z",
        f"Spread glue thinly; set the {part.title} on its mark, its front end flush with the "
        "front edge of the side; clamp; drive its screws.",
        joints=(path,),
        marks=(
            ("lower edge above the bottom ends of the sides", place.let("mark_up", up)),
        ),
        planes=((Surface(part.path, "l0" if upright else "w0"), Surface(side.path, "l0")),),
        cautions=("clamp_screws",),
    )  # fmt: skip


def _screw(maker: Maker, part: Part, side: Part) -> Dim:
    """Through the pad, and no farther than five sixths of the side (common practice)."""
    return maker.house.screw_for(
        "drawer_screw", part.finished.thickness, side.finished.thickness * 5 / 6
    )
