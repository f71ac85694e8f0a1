"""Shelves: fixed ones and dividers in the box, adjustable ones on pins."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.box import Board, Box, cut_horizontal
from casewright.casework.carcase import Carcase, Opening
from casewright.casework.features import Bores
from casewright.casework.fronts.face_edges import inset_by
from casewright.casework.levels import extent
from casewright.casework.maker import Maker
from casewright.casework.packing import PAD_GROUP
from casewright.casework.setups import bore_setup
from casewright.dims import Dim, Measure, Way, greatest, tell
from casewright.findings import Finding, Reckoning, Severity
from casewright.sources import INCH

__all__ = [
    "PinRow", "add_shelves", "bookcase_heights", "bore_pins", "cut_fixed", "no_room",
    "pin_heights", "shelf_pins", "shelves_in_rows",
]  # fmt: skip

PinRow = tuple[Dim, ...]


def bookcase_heights(maker: Maker, box: Box) -> list[Dim]:
    """Undersides of a bookcase's inner shelves: bays of equal clear height, on the grid.

    The rests of the rounding go into the topmost bay.
    """
    count = maker.spec.shelves
    board = box.bottom.outline.thickness
    bay = maker.place.let("bay", (box.head - box.deck - (count + 2) * board) / Fraction(count + 1))
    step = maker.style("cut_step").value
    heights = []
    for number in range(1, count + 1):
        exact = box.deck + (bay + board) * number
        height, _ = maker.place.rounded(f"shelf_{number}_underside", exact, step, Way.NEAREST)
        heights.append(height)
    return heights


def cut_fixed(maker: Maker, box: Box) -> list[Board]:
    """Fixed shelves and the divider, lowest first."""
    spec = maker.spec
    boards = []
    if spec.kind == "bookcase":
        for number, underside in enumerate(bookcase_heights(maker, box), start=1):
            boards.append(
                cut_horizontal(
                    maker, box, f"shelf.{number}", "fixed shelf", f"shelf {number}",
                    underside=underside,
                )
            )  # fmt: skip
        return boards
    thickness = box.bottom.outline.thickness
    for number, given in enumerate(spec.fixed_shelves, start=1):
        top = maker.place.given(f"fixed_shelf_{number}_top", given)
        boards.append(
            cut_horizontal(
                maker, box, f"fixed_shelf.{number}", "fixed shelf", f"fixed shelf {number}",
                underside=box.foot + top - thickness,
            )
        )  # fmt: skip
    if spec.divider is not None:
        centre = maker.place.given("divider_centre", spec.divider)
        boards.append(
            cut_horizontal(
                maker, box, "divider", "divider", "divider",
                underside=box.foot + centre - thickness / 2,
            )
        )  # fmt: skip
    return sorted(boards, key=lambda b: b.underside.value)


def pin_heights(maker: Maker, opening: Opening, skip: tuple[Dim, ...]) -> PinRow:
    """Case heights of the shelf pins of an opening, from one datum: what lies below it.

    Holes that would run into a hinge plate's, or into a fixed shelf or its screws, are left out;
    so are those beside a nailer in front of the back, where no shelf can lie.
    """
    place = maker.place.at(f"pins_{opening.name}")
    clear = place.let("clear", opening.y1 - opening.y0)
    low, high = maker.style("pin_low"), maker.style("pin_high")
    if place.over(low + high, clear, "an opening too low for the usual rows"):
        low = high = clear / 4
    pitch = maker.house.pin("pitch")
    count = place.times(clear - low - high, pitch, "pins in a row") + 1
    first = place.let("first", opening.y0 + low)
    rows = [place.let(f"row_{n}", first + pitch * (n - 1)) for n in range(2, count + 1)]
    near = maker.house.hinge("plate_hole").value + maker.house.pin("hole").value
    thick = maker.house.thickness(maker.spec.box_stock).value
    taken = [(hole.value - near, hole.value + near) for hole in skip]
    blocked = [(fixed.value - near, fixed.value + thick + near) for fixed in opening.shelves]
    blocked += [
        (nailer.placed.y.value - thick, nailer.placed.y.value + nailer.finished.width.value + near)
        for nailer in maker.parts.values()
        if nailer.role == "nailer" and nailer.placed.z.value > 0
    ]
    return tuple(
        row
        for row in (first, *rows)
        if not any(low <= row.value <= high for low, high in taken)
        and not any(low < row.value < high for low, high in blocked)
    )


def _front_line(maker: Maker) -> Dim:
    """The front row back from the front edge of the box [mm]; behind pads for hinges."""
    if not maker.spec.framed:
        return maker.style("pin_line")
    known = maker.house.chain.nodes.get(maker.path("pin_line_behind_pads"))
    behind = maker.style("hinge_pad") + maker.house.pin("hole")
    return known or maker.place.let("pin_line_behind_pads", behind)


def bore_pins(maker: Maker, box: Box, opening: Opening, plates: tuple[Dim, ...]) -> PinRow:
    """Bore two rows of pin holes into each side, all from the sides' lower ends.

    Returns
    -------
    Case heights of the holes [mm], lowest first.
    """
    heights = pin_heights(maker, opening, plates)
    if not heights:
        return ()
    depth, inset = maker.house.pin("depth"), inset_by(maker, opening)
    lines = {"front": _front_line(maker), "back": maker.style("pin_line")}
    if inset is not None:
        back = lines["front"] + inset
        name = f"pins_{opening.name}_line_to_set"
        lines["front"], _ = maker.place.rounded(name, back, Fraction(1, 2), Way.NEAREST)
    hole = maker.house.pin("hole")
    rows = tuple(h if box.foot is maker.zero else h - box.foot for h in heights)
    for outline in (box.left, box.right):
        for edge, word in (("w0", "front"), ("w1", "back")):
            maker.machine(
                outline.path,
                Bores(
                    path=f"{outline.path}.pins_{opening.name}_{word}",
                    kind="shelf pins",
                    face="A",
                    datum_l="l0",
                    datum_w="w0" if edge == "w0" else "w1",
                    places=tuple((row, lines[word]) for row in rows),
                    diameter=hole,
                    depth=depth,
                    asked_by=maker.path("shelf"),
                    pitch=maker.house.pin("pitch"),
                    setup=bore_setup(
                        "pin jig", line=lines[word], depth=depth, bit="brad-point bit",
                        bit_size=hole, check=rows[0],
                        check_words="from the bottom end to the first hole",
                    ),
                ),
            )  # fmt: skip
    return heights


def add_shelves(
    maker: Maker, carcase: Carcase, opening: Opening, pins: PinRow, hinges: tuple[Dim, ...]
) -> None:
    """Cut the adjustable shelves of an opening and lay them on the pins, evenly spread."""
    count = maker.spec.shelves_in(opening.name)
    if not count:
        return
    if not pins:
        maker.findings.append(no_room(maker, opening, 0))
        return
    side = maker.style("shelf_side_clearance")
    setback = maker.style("shelf_setback" if maker.spec.kind == "wall" else "base_shelf_setback")
    if maker.spec.blind is not None:
        setback = greatest(setback, maker.house.thickness(maker.spec.box_stock))
    inset = inset_by(maker, opening)
    if inset is not None:
        setback = maker.place.let(f"setback_{opening.name}", setback + inset)
    heights = shelf_pins(maker, opening, pins, count, hinges)
    if len(heights) < count:
        maker.findings.append(no_room(maker, opening, len(heights)))
    word, called = ("upper_shelf", "upper shelf") if opening.name == "upper" else ("shelf",) * 2
    for number, height in enumerate(heights, start=1):
        name = f"{word}.{number}"
        outline = maker.outline(
            name, maker.spec.box_stock, carcase.clear_width - 2 * side,
            carcase.depth - carcase.seat - setback, edges=("w0",),
            setting=f"{maker.spec.key} shelves", way=Way.DOWN,
        )  # fmt: skip
        x = carcase.left_thickness + side
        y = height + maker.house.pin("hole") / 2
        maker.add(
            outline, role="shelf", title=f"{called} {number}", lies="+x -z +y",
            at=(x, y, carcase.depth - setback), ends=("left", "right", "front", "back"),
            shows=("w0",) if maker.spec.front else ("w0", "t1"), group="shelves",
        )  # fmt: skip
        right = outline.place.let("right_air", carcase.clear_width - side - outline.length)
        maker.join(f"air_{word}_{number}_left", "loose", (outline.path, "l0"),
                   (carcase.left, "t1"), gap=side)  # fmt: skip
        maker.join(f"air_{word}_{number}_right", "loose", (outline.path, "l1"),
                   (carcase.right, "t1"), gap=right)  # fmt: skip
        maker.place.fit(
            f"{word}_{number}_air", carcase.clear_width - outline.length, Fraction(1, 2),
            Fraction(5), outline.path,
        )  # fmt: skip


def shelf_pins(
    maker: Maker, opening: Opening, pins: PinRow, count: int, hinges: tuple[Dim, ...] = ()
) -> list[Dim]:
    """Pins for so many shelves, lowest first; fewer where there is no room [mm]."""
    return _spread(maker, opening, _clear_pins(maker, opening, pins), hinges, count)


def _clear_pins(maker: Maker, opening: Opening, pins: PinRow) -> PinRow:
    """Pins on which a shelf runs into no nailer, stretcher or pad and nothing fixed."""
    thick = maker.house.thickness(maker.spec.box_stock).value
    rise = maker.house.pin("hole").value / 2
    taken = [
        (part.placed.y.value, part.placed.y.value + part.finished.width.value)
        for part in maker.parts.values()
        if part.role in ("nailer", "stretcher") and part.placed.orientation.width.axis == 1
    ]
    pads = [extent(p, 1) for p in maker.parts.values() if p.group == PAD_GROUP]
    taken += [(low.value, high.value) for low, high in pads]
    ends = [(opening.y0.value - thick, opening.y0.value), (opening.y1.value, opening.y1.value + 1)]
    kept = [(low - rise - thick, high - rise) for low, high in taken + ends]
    return tuple(
        pin for pin in pins if all(pin.value <= low or pin.value >= high for low, high in kept)
    )


def _spread(
    maker: Maker, opening: Opening, pins: PinRow, hinges: tuple[Dim, ...], count: int
) -> list[Dim]:
    """For each shelf the pin nearest to an even spread that keeps clear of the hinges."""
    keep = maker.style("hinge_clear").value
    thick = maker.house.thickness(maker.spec.box_stock).value
    hole = maker.house.pin("hole").value
    height = opening.y1.value - opening.y0.value
    away = [(h.value - thick - keep, h.value + keep) for h in hinges]
    calm = {
        pin.path for pin in pins if all(pin.value < low or pin.value > high for low, high in away)
    }
    chosen: list[Dim] = []
    taken = [shelf.value for shelf in opening.shelves]
    for number in range(1, count + 1):
        target = opening.y0.value + height * Fraction(number, count + 1)
        free = [
            pin for pin in pins if all(abs(pin.value - other) > thick + hole for other in taken)
        ]
        free = [pin for pin in free if pin.path in calm] or free
        if free:
            best = min(free, key=lambda pin: (abs(pin.value - target), pin.value))
            chosen.append(best)
            taken.append(best.value)
    return sorted(chosen, key=lambda pin: pin.value)


def no_room(maker: Maker, opening: Opening, most: int) -> Finding:
    """That fewer shelves have room than were asked for."""
    word = "upper_shelves" if opening.name == "upper" else "shelves"
    asked = maker.spec.shelves_in(opening.name)
    own = maker.reckoning("shelf room", maker.path(f"{opening.name}.shelf"))
    return Finding(
        rule="shelf room",
        severity=Severity.STOP,
        path=maker.path("shelf"),
        says=f"the {opening.name} opening has room for {most} of the {asked} adjustable shelves "
        "asked for",
        measured=str(asked),
        limit=str(most),
        source="common practice",
        remedies=(
            f"set {word} = {most}",
            tell("a case {} taller", _taller(maker, own, opening, most)),
        ),
        numbers=own.numbers,
    )


def _taller(maker: Maker, own: Reckoning, opening: Opening, most: int) -> Measure:
    """How much makes room for pins of all shelves asked for, rounded up."""
    pin = maker.house.pin
    thick = maker.house.thickness(maker.spec.box_stock)
    pins = (thick.value + pin("hole").value) // pin("pitch").value + 1
    more = pin("pitch") * ((maker.spec.shelves_in(opening.name) - max(most, 1)) * pins)
    if not most:
        kept = maker.style("pin_low") + maker.style("pin_high")
        more += greatest(kept - (opening.y1 - opening.y0), own.none)
    step = INCH / 8 if own.unit == "in" else Fraction(1)
    return own.length(own.rounded("taller", more, step, Way.UP))


def shelves_in_rows(maker: Maker, carcase: Carcase) -> None:
    """Tell fixed shelves where a drawer runs, an appliance stands or a board parts two rows."""
    parts = list(maker.parts.values())
    fixed = [extent(part, 1) for part in parts if ".fixed_shelf." in part.path]
    boards = [extent(p, 1) for p in parts if ".row_board." in p.path or p.role == "cleat"]
    for opening in carcase.openings:
        if opening.row in ("drawer", "appliance"):
            what = "a drawer runs" if opening.row == "drawer" else "an appliance stands"
            for under in opening.shelves:
                at = under + maker.house.thickness(maker.spec.box_stock)
                _not_there(maker, carcase, at, (opening.y0, opening.y1), what)
                fixed = [each for each in fixed if each[0].value != under.value]
    for low, high in fixed:
        for foot, head in boards:
            if low.value < head.value and foot.value < high.value:
                _not_there(maker, carcase, high, (foot, head), "a board parts two rows")
                break


def _not_there(maker: Maker, carcase: Carcase, at: Dim, taken: tuple[Dim, Dim], what: str) -> None:
    """A fixed shelf's upper face, what is there already, and where it may be."""
    own = maker.reckoning("shelf in a row", maker.path(f"fixed_shelves.{round(at.value)}"))
    thick, up = maker.house.thickness(maker.spec.box_stock), own.text(at, "up")
    free = [each for each in carcase.openings if each.row in ("doors", "open")]
    ways = tuple(
        tell(
            "between {} and {} up",
            own.text(each.y0 + thick, f"{each.name}.least"),
            own.text(each.y1, f"{each.name}.most"),
        )
        for each in free
    )
    maker.findings.append(
        Finding(
            rule="shelf in a row", severity=Severity.STOP, path=maker.path("fixed_shelves"),
            says=tell(
                "a fixed shelf {} up is where {}, from {} to {}",
                up, what, own.text(taken[0], "from"), own.text(taken[1], "to"),
            ),
            measured=up.text, limit=" or ".join(ways), source="common practice",
            remedies=(*(tell("its upper face {}", way) for way in ways), "no fixed_shelves"),
            numbers=own.numbers,
        )
    )  # fmt: skip
