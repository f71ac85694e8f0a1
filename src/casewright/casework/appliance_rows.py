"""Rows that hold an appliance: as high as its sheet asks for, on a deck that cleats carry."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from casewright.casework.brads import fastener_row
from casewright.casework.carcase import Carcase, Opening
from casewright.casework.joints import Fastening, Surface
from casewright.casework.maker import Maker, Outline
from casewright.casework.parts import Part
from casewright.casework.specs import ApplianceOpening, CaseKind, Hand, RowSpec
from casewright.dims import Dim, Given, Origin, Unit, Way, tell
from casewright.findings import Finding, Severity
from casewright.sources import INCH

__all__ = [
    "add_cleats",
    "appliance_height",
    "appliance_number",
    "fit_appliances",
    "room_for_cleats",
    "usual_opening",
]

_PLANED = "a long board of the frame: plane it to thickness, rip it, then cut the cleats off"

_HANDS: tuple[Hand, Hand] = ("left", "right")
_USUAL: Mapping[str, Mapping[str, Fraction]] = {
    "width": {"in": Fraction(57, 2) * INCH, "mm": Fraction(560)},
    "height": {"in": Fraction(57, 2) * INCH, "mm": Fraction(590)},
    "depth": {"in": 23 * INCH, "mm": Fraction(550)},
}
"""Usual openings for an oven (common practice, from memory), until its sheet is at hand [mm]."""


_COLD: Mapping[str, Mapping[str, Fraction]] = {
    "width": {"in": Fraction(143, 4) * INCH, "mm": Fraction(908)},
    "height": {"in": 70 * INCH, "mm": Fraction(1780)},
    "depth": {"in": 24 * INCH, "mm": Fraction(610)},
}
"""The same for a refrigerator."""

_LINER: Mapping[str, Mapping[str, Fraction]] = {
    "width": {"in": Fraction(227, 8) * INCH, "mm": Fraction(720)},
    "height": {"in": 10 * INCH, "mm": Fraction(250)},
    "depth": {"in": Fraction(23, 2) * INCH, "mm": Fraction(290)},
}
"""The same for the liner of a hood."""

_THINNEST = Origin("cited", "thinnest cleat under a deck", "common practice")


def usual_opening(name: str, unit: Unit, kind: CaseKind = "tall") -> Fraction:
    """A usual width, height or depth [mm]: of an opening in a tall case, or of an appliance."""
    usual = {"surround": _COLD, "hood": _LINER}.get(kind, _USUAL)
    return usual[name][unit]


def appliance_number(maker: Maker, appliance: ApplianceOpening, name: str) -> Dim:
    """A size of the opening that the appliance's sheet asks for [mm]; a usual one until then."""
    known = maker.house.chain.nodes.get(f"appliance.{appliance.key}.{name}")
    if known is not None:
        return known
    asked: Given | None = getattr(appliance, name)
    if asked is None:
        asked = Given(
            usual_opening(name, maker.house.unit, maker.spec.kind),
            Origin("chosen", "a usual size, to be asked for"),
        )
    return maker.house.chain.place(f"appliance.{appliance.key}").given(name, asked)


def appliance_height(
    maker: Maker, row: RowSpec, name: str, *, lowest: bool, under_deck: bool
) -> Dim:
    """What an appliance takes of the face [mm], as a front of that height would.

    The opening is clear between the board under it and the one over it. The lines of the face run
    through the middle of boards between rows, and along the underside of the case's bottom. In a
    face frame it is what the opening takes, between a deck and the rail over it.

    Parameters
    ----------
    lowest
        Whether it stands on the case's bottom.
    under_deck
        Whether it stands under another one, and so under that one's cleats.

    Raises
    ------
    ValueError
        When the row holds no appliance: a defect of the program.
    """
    if row.appliance is None:
        msg = f"{name} holds no appliance"
        raise ValueError(msg)
    known = maker.house.chain.nodes.get(maker.path(f"{name}_height"))
    if known is not None:
        return known
    clear = appliance_number(maker, row.appliance, "height") + maker.style("appliance_air")
    if maker.spec.framed:
        return maker.place.let(f"{name}_height", clear)
    if under_deck:
        clear = clear + maker.style("deck_cleat")
    board, gap = maker.house.thickness(maker.spec.box_stock), maker.style("gap")
    if lowest:
        below = maker.style("bottom_reveal")
        return maker.place.let(f"{name}_height", clear + board * 3 / 2 - gap / 2 - below)
    return maker.place.let(f"{name}_height", clear + board - gap)


def room_for_cleats(maker: Maker, row: RowSpec, underside: Dim) -> Dim:
    """Underside of what stands over the row below [mm]: of a deck, or of the cleats under it."""
    return underside - maker.style("deck_cleat") if row.kind == "appliance" else underside


def add_cleats(maker: Maker, carcase: Carcase) -> None:
    """Two cleats under every deck that carries an appliance, screwed to the sides.

    The case's bottom lies on its plinth or on the floor, which carries it.
    """
    for opening in carcase.openings:
        if opening.appliance is None:
            continue
        deck = next(
            part
            for part in maker.parts.values()
            if part.role in ("fixed shelf", "bottom")
            and (part.placed.y + part.finished.thickness).value == opening.y0.value
        )
        if deck.role == "bottom":
            continue
        _check_cleats(maker, carcase, opening.appliance)
        for hand in _HANDS:
            _cleat(maker, carcase, opening, deck, hand)


def _check_cleats(maker: Maker, carcase: Carcase, appliance: ApplianceOpening) -> None:
    """Behind a frame cleats are planed to what its stiles cover: nothing stands in the mouth."""
    if carcase.frame is None:
        return
    rooms = enumerate(carcase.frame.room)
    number, room = min(rooms, key=lambda pair: pair[1].value)
    known = any(found.path == maker.path("frame.cleats") for found in maker.findings)
    thinnest = maker.house.trade("cleat_thickness")
    if known or room.value >= thinnest.value:
        return
    own = maker.reckoning("appliance opening", maker.path("frame.cleats"))
    step, covers = maker.style("cut_step").value or Fraction(1), own.text(room, "room")
    least = own.given("cleat_thickness", Given(thinnest.value, _THINNEST))
    stile = own.rounded("stile", maker.style("face_stile") + least - room, step, Way.UP)
    maker.findings.append(
        Finding(
            rule="appliance opening",
            severity=Severity.STOP,
            path=maker.path("frame.cleats"),
            says=tell(
                "the {} stile covers {} of what is beside the opening for {}: too little for a "
                "cleat under its deck",
                _HANDS[number],
                covers,
                appliance.title,
            ),
            measured=covers.text,
            limit=tell("{}", thinnest),
            source="common practice",
            remedies=(tell("set face_stile to {} or more", own.text(stile)),),
            numbers=own.numbers,
        )
    )


def _cleat(maker: Maker, carcase: Carcase, opening: Opening, deck: Part, hand: Hand) -> None:
    name = opening.name
    left = hand == "left"
    frame = carcase.frame
    planed = None if frame is None else frame.pads[0 if left else 1]
    outline = maker.outline(
        f"{name}.cleat_{hand}", maker.spec.strip_stock if frame is None else maker.spec.face_stock,
        deck.finished.width, maker.style("deck_cleat"), planed=planed,
        setting=f"{maker.spec.key} cleats", way=Way.NEAREST, length_way=Way.DOWN,
    )  # fmt: skip
    x = carcase.left_thickness if left else carcase.width - carcase.right_thickness
    rear = deck.placed.z - deck.finished.width
    maker.add(
        outline, role="cleat", title=f"{hand} cleat of the {deck.title}",
        lies="+z +y +x" if left else "+z +y -x", at=(x, deck.placed.y - outline.width, rear),
        ends=("back", "front", "bottom", "top"), hand=hand, shows=("l1", "t1"), group="cleats",
        milled_from=_PLANED if planed else "",
    )  # fmt: skip
    _fasten(maker, carcase, outline, deck, hand, name)


def _fasten(
    maker: Maker, carcase: Carcase, cleat: Outline, deck: Part, hand: Hand, name: str
) -> None:
    """Glued to the deck, glued and screwed to the side; its step."""
    side = maker.parts[carcase.left if hand == "left" else carcase.right]
    held = fastener_row(
        maker, f"{name}.joint_cleat_{hand}", cleat.length, "screws along a cleat",
        through=cleat.path, into=side.path,
        screw=maker.house.screw_for(
            "drawer_screw", cleat.thickness, side.finished.thickness * 5 / 6
        ),
        line=("w0", cleat.width / 2), kind="case screw",
    )  # fmt: skip
    to_side = maker.join(
        f"{name}.joint_cleat_{hand}", "face", (cleat.path, "t0"), (side.path, "t1"),
        fastenings=(held, Fastening("glue", 1, None, (cleat.path,), side.path)),
    )  # fmt: skip
    to_deck = maker.join(
        f"{name}.joint_cleat_{hand}_deck", "butt", (cleat.path, "w1"), (deck.path, "t0"),
        fastenings=(Fastening("glue", 1, None, (cleat.path,), deck.path),),
    )  # fmt: skip
    part = maker.parts[cleat.path]
    up = part.placed.y if side.placed.y is maker.zero else part.placed.y - side.placed.y
    front = carcase.depth - part.placed.z - cleat.length
    maker.step(
        "fit", cleat.path, "-z",
        f"Spread glue on its face and its upper edge; push the {part.title} up against the "
        "deck, clamp, and drive its screws.",
        joints=(to_side, to_deck),
        marks=(
            ("lower edge above the bottom ends of the sides", cleat.place.let("mark_up", up)),
            ("front end behind the front edges of the sides",
             cleat.place.let("mark_behind", front)),
        ),
        planes=((Surface(cleat.path, "w0"), Surface(side.path, "l0")),
                (Surface(cleat.path, "l1"), Surface(side.path, "w0"))),
        cautions=("clamp_screws", "deck_load"),
    )  # fmt: skip


def fit_appliances(maker: Maker, carcase: Carcase) -> None:
    """Each opening, as it was built, against what the appliance's sheet asks for."""
    play = maker.style("appliance_play").value
    for opening in carcase.openings:
        if opening.appliance is None:
            continue
        place = maker.place.at(opening.name)
        for name, gap in _air(maker, carcase, opening, opening.appliance):
            left = place.let(f"{name}_air", gap)
            if left.value < 0:
                maker.findings.append(
                    _too_small(maker, opening.appliance, place.path, name, -left)
                )
            elif name == "width" and place.over(left, maker.style("appliance_play"),
                                                "more room beside an appliance than its trim may "
                                                "cover"):  # fmt: skip
                maker.findings.append(_too_wide(maker, opening.appliance, place.path, left))
            elif name != "depth":
                place.fit(f"{name}_fit", left, Fraction(0), play, place.path)


def _air(
    maker: Maker, carcase: Carcase, opening: Opening, appliance: ApplianceOpening
) -> Iterator[tuple[str, Dim]]:
    """What is left of an opening's width, height and depth [mm]: in a frame of its mouth."""
    frame = carcase.frame
    clear = {
        "width": carcase.clear_width if frame is None else frame.right - frame.left,
        "height": opening.y1 - opening.y0,
        "depth": carcase.front - carcase.seat,
    }
    for name, size in clear.items():
        yield name, size - appliance_number(maker, appliance, name)


def _too_small(
    maker: Maker, appliance: ApplianceOpening, path: str, name: str, lacks: Dim
) -> Finding:
    own, word = maker.reckoning("appliance opening", f"{path}.{name}"), {
        "width": "wider", "height": "taller", "depth": "deeper",
    }[name]  # fmt: skip
    asked, missing = appliance_number(maker, appliance, name), own.text(lacks, "lacks")
    return Finding(
        rule="appliance opening",
        severity=Severity.STOP,
        path=path,
        says=tell(
            "the opening for {} lacks {} of the {} that the appliance's sheet asks for",
            appliance.title,
            missing,
            name,
        ),
        measured=own.text(asked - lacks, "clear").text,
        limit=own.text(asked).text,
        source=f"the sheet of {appliance.title}",
        remedies=(
            tell("a case {} {}", missing, word),
            f"another appliance, or its {name} read again",
        ),
        numbers=own.numbers,
    )


def _too_wide(maker: Maker, appliance: ApplianceOpening, path: str, left: Dim) -> Finding:
    own = maker.reckoning("appliance opening", f"{path}.wide")
    over, half = own.text(left, "over"), own.text(left / 2, "half")
    return Finding(
        rule="appliance opening",
        severity=Severity.CARE,
        path=path,
        says=tell(
            "the opening for {} is {} wider than its sheet asks for: its trim may not cover the "
            "gaps",
            appliance.title,
            over,
        ),
        measured=over.text,
        limit=own.text(maker.style("appliance_play")).text,
        source=f"the sheet of {appliance.title}",
        remedies=(
            tell("a case {} narrower", over),
            tell("face_stile {} wider, in the style", half)
            if maker.spec.framed
            else tell("a strip of {} beside it at each side, behind its trim", half),
        ),
        numbers=own.numbers,
    )
