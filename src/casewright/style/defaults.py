"""The house defaults. Each is our own judgement unless a source is named; all may be changed."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from casewright.sources import INCH

__all__ = ["STYLE_KEYS", "StyleKey"]


@dataclass(frozen=True, slots=True)
class StyleKey:
    """One default.

    Parameters
    ----------
    name
        Key in the job file's [style].
    inches
        Value in an inch job [in].
    millimetres
        Value in a metric job [mm].
    meaning
        What it is, for the reference and for `why`.
    source
        Key in `casewright.sources` when it is a rule of the trade, else empty.
    """

    name: str
    inches: Fraction
    millimetres: Fraction
    meaning: str
    source: str = ""

    def value(self, unit: Literal["in", "mm"]) -> Fraction:
        """The default in a job of that unit [mm]."""
        return self.inches * INCH if unit == "in" else self.millimetres


def _key(name: str, inches: str, millimetres: str, meaning: str, source: str = "") -> StyleKey:
    whole, _, part = inches.partition(" ")
    value = Fraction(whole) + (Fraction(part) if part else 0)
    return StyleKey(name, value, Fraction(millimetres), meaning, source)


def _metric(name: str, millimetres: str, meaning: str, source: str = "") -> StyleKey:
    value = Fraction(millimetres)
    return StyleKey(name, value / INCH, value, meaning, source)


_PRACTICE = "common practice"

STYLE_KEYS: tuple[StyleKey, ...] = (
    _key("wall_height", "30", "760", "height of a wall case"),
    _key("wall_depth", "12", "305", "depth of a wall case, back included, doors excluded"),
    _key("wall_bottom", "54", "1370", "bottom of wall cases above the finished floor"),
    _key("tall_height", "90", "2280", "height of a tall case from the floor"),
    _key("tall_depth", "23 1/4", "580", "depth of a tall case, back included, doors excluded"),
    _key("base_height", "34 1/2", "870", "height of a base case from the floor, counter excluded"),
    _key("base_depth", "23 1/4", "580", "depth of a base case, back included, doors excluded"),
    _key("seat_height", "18 1/2", "470", "height of a window seat, its cushion pressed down"),
    _key("seat_cushion", "3", "80", "thickness of that cushion, pressed down"),
    _key("seat_depth", "18", "460", "depth of a window seat's box"),
    _key("lid_overhang", "3/4", "20", "how far a lid stands out before its box"),
    _key(
        "finger_gap",
        "1/2",
        "12",
        "air under the front of a hinged lid, above what is below it, where no finger is caught",
        _PRACTICE,
    ),
    _key("lid_screws", "8", "200", "distance of the screws that hold a fixed lid, at most"),
    _key("bookcase_height", "84", "2100", "height of a bookcase from the floor"),
    _key("bookcase_depth", "12", "300", "depth of a bookcase, back included"),
    _key("toe_height", "4", "100", "height of the toe space"),
    _key("toe_setback", "2 3/4", "70", "how far the toe board stands back from the case's front"),
    _key(
        "bookcase_toe_height", "3 1/2", "90", "height of the board under a bookcase's lowest shelf"
    ),
    _key("bookcase_toe_setback", "1/2", "12", "how far that board stands back from the front"),
    _key("reveal", "1/16", "1.5", "edge of the box left bare beside a door"),
    _key(
        "partial_reveal", "3/8", "10", "edge of the box left bare round a door of partial overlay"
    ),
    _key("inset_gap", "3/32", "2.5", "gap all round and between inset doors", _PRACTICE),
    _key("gap", "1/8", "3", "gap between neighbouring fronts", _PRACTICE),
    _key("face_stile", "1 1/2", "40", "width of the stiles and mullions of a face frame"),
    _key("face_rail", "1 1/2", "40", "width of the rails of a face frame"),
    _key("face_overhang", "1/8", "3", "how far a face frame stands out beside its box", _PRACTICE),
    _key("face_overlay", "1/2", "12", "how far a door of partial overlay lies over a face frame"),
    _key(
        "face_rise",
        "0",
        "0",
        "how far the top of a face frame's bottom rail stands above the bottom of its box",
    ),
    _key("face_tenon", "1", "25", "length of the tenons of a face frame", _PRACTICE),
    _key("strip_proud", "1/16", "1.5", "how far a face strip stands proud until it is trimmed"),
    _key("face_scribe", "3/4", "20", "how much wider a stile is that is scribed to a wall"),
    _key(
        "hinge_pad",
        "2 1/2",
        "65",
        "width and length of the pads that bring hinges out to the edge of a face frame",
    ),
    _key("top_reveal", "1/16", "1.5", "edge of a wall case left bare above its doors"),
    _key(
        "base_top_reveal",
        "1/8",
        "3",
        "edge of a base case left bare above its doors, for the counter",
    ),
    _key("bottom_reveal", "0", "0", "edge of the box left bare below its doors"),
    _key("gap_tolerance", "1/16", "1.5", "how far a gap beside a front may stray", _PRACTICE),
    _key("widest_single_door", "22", "560", "widest leaf hung alone; a wider opening gets two"),
    _key("widest_leaf", "30", "760", "widest leaf that is made at all: a wider one warps"),
    _key("narrowest_leaf", "6", "150", "narrowest leaf that is hung without a second look"),
    _key("tallest_leaf", "80", "2000", "tallest leaf that is hung without a second look"),
    _key("bumper", "1/16", "1.5", "air between the box's front and a closed door"),
    _key("shelf_side_clearance", "1/16", "1.5", "air at each end of an adjustable shelf"),
    _key("shelf_setback", "1/4", "6", "front of an adjustable shelf behind the front of the box"),
    _key("base_shelf_setback", "1", "25", "the same in a base case"),
    _key("nailer", "3 1/2", "90", "width of the nailers that the wall screws go through"),
    _key("stretcher", "4", "100", "width of a base case's top stretchers"),
    _key(
        "crown_stretcher",
        "3 1/2",
        "90",
        "least width of the front stretcher that a crown is nailed to",
    ),
    _key("dado_depth", "1/4", "6", "depth of dadoes in sides"),
    _key("rabbet_depth", "3/8", "9", "depth of the rabbet for a back: half a side", _PRACTICE),
    _key("end_rabbet_depth", "3/8", "9", "depth of the rabbets that top and bottom sit in"),
    _key("groove_depth", "1/4", "6", "depth of the grooves for a captured back"),
    _key(
        "groove_clearance",
        "1/16",
        "1.5",
        "how much smaller a captured back is than its grooves, in all",
    ),
    _key("groove_inset", "3/4", "19", "how far a captured back's groove is from the rear edge"),
    # 0.1 to 0.2 mm over the measured board: wetted by glue it binds in less, more holds no glue.
    _key(
        "dado_clearance",
        "1/200",
        "0.1",
        "how much wider a dado or a captured back's groove is than the board it takes",
        _PRACTICE,
    ),
    _key(
        "applied_back_margin", "1/16", "1.5", "how far an applied back is held in from each edge"
    ),
    _key("lip", "1/4", "6", "thickness of a solid lip on an edge"),
    _key("band", "1/32", "0.5", "thickness of iron-on edge band", _PRACTICE),
    _key("cut_step", "1/32", "0.5", "grid that parts are cut to"),
    _key("stile", "2 1/2", "65", "width of a door's stiles"),
    _key("rail", "2 1/2", "65", "width of a door's rails"),
    _key("tongue", "3/8", "10", "length of the tongues on a rail of a frame and panel"),
    _key(
        "tongue_relief", "1/32", "1", "how much deeper its grooves are than the tongues are long"
    ),
    _key("panel_clearance", "1/32", "1", "air at each edge of a panel, beside a tongue's length"),
    _key("rebate_width", "3/8", "10", "how far the glass lies behind each frame member"),
    _key("glass_clearance", "1/16", "1.5", "air between glass and rebate at each edge"),
    _key("rebate_bit", "1 1/4", "32", "diameter of the rebate bit: its corners keep half of it"),
    _key("retainer", "1/8", "3", "depth kept behind the glass for its retainers"),
    _key("retainer_spacing", "8", "200", "distance between retainers of the glass", _PRACTICE),
    _metric(
        "pin_line", "37", "shelf pins and hinge plates back from the box's front edge", _PRACTICE
    ),
    _key("pin_low", "8", "200", "lowest shelf pin above what lies under the opening"),
    _key("pin_high", "8", "200", "least distance of the highest shelf pin from what lies above"),
    _key("hinge_end", "3 1/2", "90", "outer hinges' centres from the door's ends"),
    _metric("plate_depth", "12", "depth of hinge plate holes, never over two thirds of a side"),
    _metric("bore_step", "1", "steps of the fence of the cup jig"),
    _metric("cup_floor", "5", "wood left under a hinge cup", _PRACTICE),
    _metric("hinge_clear", "32", "distance kept between a hinge and a shelf"),
    _key("sleeper_spacing", "24", "600", "greatest distance between the sleepers of a plinth"),
    _key("pull_edge", "1 1/4", "32", "pulls' centre from the door's free edge: middle of a stile"),
    _key("pull_end", "2 1/2", "65", "nearest pull hole from the door's end"),
    _key("pull_reach", "42", "1050", "highest pull on a door that starts near the floor"),
    _key(
        "two_pulls",
        "30",
        "760",
        "width of a drawer's front over which it gets two pulls",
        _PRACTICE,
    ),
    _key("drawer_room", "1", "25", "how much lower a drawer's box is than its opening", _PRACTICE),
    _key(
        "drawer_behind_front",
        "1 1/2",
        "38",
        "how much lower a drawer's box is than its front",
        _PRACTICE,
    ),
    _key("drawer_least", "2 1/2", "65", "lowest drawer's box that is worth making"),
    _key("drawer_joint_depth", "1/4", "6", "depth of the rabbets and dadoes in a drawer's sides"),
    _key("drawer_groove_depth", "1/4", "6", "depth of the grooves for a drawer's bottom"),
    _key(
        "drawer_groove_up",
        "3/8",
        "10",
        "grooves for a drawer's bottom above its lower edge, on side-mounted slides",
    ),
    _key(
        "drawer_bottom_play",
        "1/16",
        "2",
        "how much smaller a drawer's bottom is than its grooves, in all",
    ),
    _key(
        "drawer_back_inset",
        "1/2",
        "12",
        "how far a drawer's back stands in from the ends of its sides, in dadoes",
    ),
    _key("film_margin", "1/8", "3", "how far a film ends inside the edges of its pane", _PRACTICE),
    _key("finger", "1/2", "12", "width of the fingers of a box joint"),
    _key("front_screw_end", "2", "50", "screws of a drawer's front from the ends of its box"),
    _metric(
        "front_screw_hole", "6", "diameter of the holes for them: play to set the front", _PRACTICE
    ),
    _metric(
        "pull_play", "3", "how much wider a pull's holes are in a drawer's box than in its front"
    ),
    _key("roll_out_height", "4", "100", "height of a roll-out's box"),
    _key(
        "appliance_air",
        "1/16",
        "1.5",
        "how much higher than its sheet asks an opening for an appliance in a case is built",
    ),
    _key(
        "appliance_play", "1/8", "3", "by how much such an opening may exceed what the sheet asks"
    ),
    _key(
        "deck_cleat", "1 1/2", "40", "height of the cleats under a deck that carries an appliance"
    ),
    _key(
        "surround_side_air",
        "1/4",
        "6",
        "air beside a refrigerator, its hinges included, unless its sheet asks for more",
    ),
    _key("surround_top_air", "1", "25", "air over a refrigerator, unless its sheet asks for more"),
    _key("hood_depth", "18", "460", "depth of a hood's case, its face panel included"),
    _key("hood_air", "1/8", "3", "how much more is kept free under a hood than its sheets ask"),
    _key("liner_air", "1/8", "3", "air round the liner of a hood, and round its duct"),
    _key("hood_pad", "2", "50", "least wood beside the liner of a hood"),
    _key("island_side_overhang", "1 1/2", "38", "counter of an island beyond its end panels"),
    _key("island_front_overhang", "1 1/4", "30", "the same before its doors"),
    _key("island_seat_overhang", "15", "380", "the same over knees, where there are seats"),
    _key("island_screws", "12", "300", "distance of the screws that hold an island together"),
    _key("floor_cleat", "1 1/2", "38", "height of the cleats on the floor inside its ladders"),
    _key("floor_cleat_play", "1/16", "1.5", "air at either end of such a cleat"),
    _key("counter", "1 1/2", "40", "thickness of the counter on base cases", _PRACTICE),
    _key("panel_pull", "3", "75", "middle of the pull of an appliance's panel below its top"),
    _key("panel_pilot", "3/32", "2.5", "diameter of the holes for the screws of its brackets"),
    _key("surround_height", "91 1/2", "2330", "height of a surround from the floor"),
    _key("surround_depth", "25", "635", "depth of a surround's box and panels"),
    _key("roll_out_pad", "2", "50", "width of the pads that roll-outs run on"),
    _key("roll_out_air", "1/8", "3", "air between these pads and a door opened to a right angle"),
    _key("false_front", "7", "180", "height of the false front of a sink base"),
    _key("sink_rail", "6", "150", "height of the rail on edge behind it"),
    _key("pocket_spacing", "6", "150", "greatest distance between pocket screws", _PRACTICE),
    _key("pocket_edge", "1 1/2", "38", "outer pocket screws from the edges of the board"),
    _key("driver_room", "1/2", "13", "how much farther pockets keep from a board in the way"),
    _metric("pocket_diameter", "9.5", "diameter of a pocket", _PRACTICE),
    _key("brad_spacing", "6", "150", "distance between brads or staples", _PRACTICE),
    _key("filler", "1 1/2", "38", "filler wished for between a run and a wall"),
    _key("filler_least", "3/4", "19", "narrowest filler that can be scribed and fastened"),
    _key("scribe", "1/4", "6", "extra width left on a filler to scribe to the wall"),
    _key("spring", "1/16", "1.5", "how much longer a trim is cut that is sprung in between walls"),
    _key("light_rail", "1 1/2", "38", "height of a light rail"),
    _key("scribe_moulding", "3/4", "19", "width of a scribe moulding"),
    _key("frieze", "7/8", "22", "frieze that shows between cases and crown"),
    _key("knot_margin", "12", "300", "length of a trim board that a knot may cost", _PRACTICE),
    _key("crown_air", "1/8", "3", "air over the backing of a crown, below the ceiling"),
    _key("filler_lip", "2", "50", "width of the lip that a filler is screwed on by"),
    _key("blind_pull_off", "3", "80", "how far a blind corner base stands off the corner wall"),
    _key(
        "hinge_strip", "2 1/2", "64", "width of the strips that a diagonal corner's door hangs on"
    ),
    _key("corner_clear", "1/4", "6", "air before the pulls of the other run in an inside corner"),
    _key("jig_margin", "3/4", "20", "of a template, beyond its farthest hole"),
    _key(
        "guide_offset",
        "3/16",
        "4.5",
        "how far a router's guide bush holds its bit off a template: half of what the bush is "
        "wider than the bit",
        _PRACTICE,
    ),
    _key("jig_square", "8", "200", "longest leg of an assembly square"),
    _key("router_bite", "1/4", "6", "depth of one pass of the router", _PRACTICE),
    _key("strip_waste", "1/8", "3", "lost to jointing and planing for each milled strip"),
    _key(
        "sheet_spread",
        "1/128",
        "0.2",
        "greatest difference in thickness between sheets that go into one case",
    ),
    _key("sheet_trim", "0", "0", "cut off each edge of a sheet before parts are laid out"),
    _key(
        "sheet_slack",
        "1/16",
        "2",
        "least to spare across a sheet before its size and the kerf are measured",
        "ps1",
    ),
    _key("test_piece_length", "12", "300", "length of the scrap a tool is set up on"),
    _key("test_piece_width", "4", "100", "width of the scrap a tool is set up on"),
    _key("sled_reach", "24", "600", "widest piece the crosscut sled carries"),
    _key("sled_length", "60", "1500", "longest piece crosscut on the sled without a helper"),
    _key("fence_contact", "12", "300", "shortest edge that may ride the saw's fence", _PRACTICE),
    _key("narrow_rip", "2", "50", "narrowest rip without a push block that carries", _PRACTICE),
    _key("offcut_long", "24", "600", "long side of the least offcut worth keeping"),
    _key("offcut_short", "4", "100", "short side of the least offcut worth keeping"),
    _key("offcut_board", "1 1/2", "38", "width of the least leftover of a board worth keeping"),
    _key("shortest_milled", "14", "360", "shortest strip that goes through a planer", _PRACTICE),
    _key("strip_end", "1", "25", "extra length of a strip, sawn off when it is fitted"),
    _key("lip_proud", "1/32", "1", "how much wider a lip is than its edge, planed off later"),
    _key("band_tail", "4", "100", "extra band for each piece: the iron's start and end"),
    _key("wallboard", "1/2", "12.5", "thickness of the wall's board in front of the studs"),
    _key("wall_shim", "1/16", "1.5", "shim reckoned with behind a nailer, at a hollow"),
    _key("wall_bite", "7/8", "22", "least that a wall screw goes into the stud"),
    _key(
        "wall_bite_most",
        "1 1/4",
        "32",
        "most that it goes in before cables and pipes may be met",
        _PRACTICE,
    ),
    _key("cable_zone", "2", "50", "beside an outlet, a switch or a pipe: no wall screw there"),
    _key("stud_spacing", "16", "400", "distance of the wall's studs until they are found", "irc"),
    _key("ceiling", "96", "2440", "height of the ceiling until it is measured, at its lowest"),
    _key("ledger", "3 1/2", "90", "width of the straight board that carries cases as they hang"),
)
