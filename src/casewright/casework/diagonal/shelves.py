"""Adjustable shelves of a diagonal corner: clipped, on pins in both sides and in the post."""

from __future__ import annotations

from casewright.casework.carcase import Opening
from casewright.casework.diagonal.clips import clip
from casewright.casework.diagonal.corner import Corner
from casewright.casework.diagonal.mouth import Mouth
from casewright.casework.diagonal.roots import across
from casewright.casework.features import Bores
from casewright.casework.maker import Maker
from casewright.casework.parts import Part
from casewright.casework.setups import bore_setup
from casewright.casework.shelves import PinRow, no_room, pin_heights, shelf_pins
from casewright.dims import Dim, Way

__all__ = ["add_corner_shelves", "bore_corner_pins"]


def _line(maker: Maker, mouth: Mouth) -> Dim:
    """How far the front of a shelf stands back from the face, along the walls [mm].

    Behind the strips and the air before them.
    """
    place = maker.place.at("mouth")
    known = maker.house.chain.nodes.get(f"{place.path}.shelf_line")
    if known is not None:
        return known
    return across(maker, place, "shelf_line", mouth.front + maker.style("shelf_setback"), Way.UP)


def _rear(maker: Maker, corner: Corner, post: Part) -> Dim:
    """Rear edges of a shelf from the wall: before the nailers and the post [mm]."""
    return corner.own_rabbet.width + post.finished.thickness + maker.style("shelf_side_clearance")


def bore_corner_pins(
    maker: Maker, corner: Corner, mouth: Mouth, post: Part, opening: Opening
) -> PinRow:
    """Two rows of pin holes in each return side and in the post, which carries the rear corner.

    Where only the two sides carry it, such a shelf tips into the corner: its middle lies behind
    the pins.
    """
    heights = pin_heights(maker, opening, ())
    if not heights:
        return ()
    hole = maker.house.pin("hole")
    rear = _rear(maker, corner, post) + 2 * hole
    front = _line(maker, mouth) - corner.own.thickness + 2 * hole
    place = maker.place.at("pins_main")
    for name, dim in (("rear_line", rear), ("front_line", front)):
        place.let(name, dim)
    for side in (corner.own, corner.far):
        foot = corner.foot if corner.foot.path else None
        rows = tuple(h if foot is None else h - foot for h in heights)
        _bore(maker, side.path, "front", rows, front, edge="w0")
        _bore(maker, side.path, "back", rows, rear, edge="w1")
    rows = tuple(h - corner.floor for h in heights)
    _bore(maker, post.path, "near", rows, 2 * hole, edge="w0")
    _bore(maker, post.path, "far", rows, post.finished.width / 3, edge="w0")
    return heights


def _bore(
    maker: Maker, path: str, word: str, rows: tuple[Dim, ...], line: Dim, *, edge: str
) -> None:
    pin = maker.house.pin
    maker.machine(
        path,
        Bores(
            path=f"{path}.pins_main_{word}", kind="shelf pins", face="A", datum_l="l0",
            datum_w="w0" if edge == "w0" else "w1", places=tuple((row, line) for row in rows),
            diameter=pin("hole"), depth=pin("depth"), asked_by=maker.path("shelf"),
            pitch=pin("pitch"),
            setup=bore_setup(
                "pin jig", line=line, depth=pin("depth"), bit="brad-point bit",
                bit_size=pin("hole"), check=rows[0],
                check_words="from the bottom end to the first hole",
            ),
        ),
    )  # fmt: skip


def add_corner_shelves(
    maker: Maker, corner: Corner, mouth: Mouth, post: Part, opening: Opening, pins: PinRow
) -> None:
    """Cut the shelves, clip them behind the strips, lay them on their pins."""
    count = maker.spec.shelves
    if not count:
        return
    heights = shelf_pins(maker, opening, pins, count)
    if len(heights) < count:
        maker.findings.append(no_room(maker, opening, len(heights)))
    air, rear = maker.style("shelf_side_clearance"), _rear(maker, corner, post)
    from_own = corner.width - corner.own.thickness - air
    from_far = corner.depth - corner.far.thickness - air
    ahead = _line(maker, mouth)
    for number, height in enumerate(heights, start=1):
        outline = maker.outline(
            f"shelf.{number}", maker.spec.box_stock, from_own - rear, from_far - rear,
            setting=f"{maker.spec.key} shelves", way=Way.DOWN,
        )  # fmt: skip
        reach = 2 * rear + outline.length + outline.width
        clip(maker, outline, "l1" if corner.left else "l0",
             reach - corner.width - corner.own.width + ahead)  # fmt: skip
        maker.add(
            outline, role="shelf", title=f"shelf {number}", lies="+x -z +y",
            at=(corner.low(rear, outline.length), height + maker.house.pin("hole") / 2,
                rear + outline.width),
            ends=("left", "right", "front", "back"), group="shelves",
        )  # fmt: skip
        _fit(maker, corner, number, (from_own - rear - outline.length,
                                     from_far - rear - outline.width))  # fmt: skip


def _fit(maker: Maker, corner: Corner, number: int, left: tuple[Dim, Dim]) -> None:
    """Air between a shelf and the return sides."""
    air, place = maker.style("shelf_side_clearance"), maker.place.at(f"shelf.{number}")
    own = place.let("own_air", left[0] + air)
    far = place.let("far_air", left[1] + air)
    end = "l1" if corner.left else "l0"
    shelf = maker.path(f"shelf.{number}")
    maker.join(f"air_shelf_{number}_own", "loose", (shelf, "l1" if end == "l1" else "l0"),
               (corner.own.path, "t1"), gap=own)  # fmt: skip
    maker.join(f"air_shelf_{number}_far", "loose", (shelf, "w0"), (corner.far.path, "t1"), gap=far)
    for name, dim in (("own", own), ("far", far)):
        maker.place.fit(f"shelf_{number}_{name}_air", dim, air.value / 2, air.value + 5, shelf)
