"""Cautions by key: shown at the very step they belong to. The maker's instructions come first."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from casewright.dims import Unit, tell, trade

__all__ = ["CAUTIONS", "caution"]

_HEAVY = "appliance_weight"
_DECK = (
    "This deck carries an appliance of {} and more: every screw and all the glue, no shortcut. "
    "The appliance goes in by two people or a lift, only once the case is screwed to the studs; "
    "its wiring or gas belongs to the licensed trade."
)

CAUTIONS: Mapping[str, str] = MappingProxyType(
    {
        "saw_partial_cut": (
            "The blade does not come through: board flat, its edge held to the fence by a "
            "featherboard before the blade, a push block carries it past, no hand over the "
            "blade's line. A guard that hangs from above stays on; one on the riving knife "
            "goes back at once. Eyes and ears protected; the saw's manual comes first."
        ),
        "saw_stopped_cut": (
            "Wait for the blade before lifting the saw out; finish the corner with a hand "
            "saw. Clamp the work; eyes and ears protected."
        ),
        "saw_on_edge": (
            "The piece stands on edge over a blade that does not come through: a high fence, a "
            "featherboard on the table, a push stick at the end, hands above the cut and never "
            "behind it. Refit guard and riving knife at once; eyes and ears protected."
        ),
        "saw_gauge_notch": (
            "The piece stands on edge over a blade that does not come through: screw a tall board "
            "to the mitre gauge and clamp the piece to it. A block clamped to the fence well "
            "before the blade is the stop. Hands on the gauge; refit the guard at once."
        ),
        "saw_finger_jig": (
            "The piece stands on end over an open blade: clamp it to the jig, whose runner rides "
            "the gauge's slot, with a block screwed on behind where the blade comes out. Hands on "
            "the jig, never behind it; wait for the blade before lifting off. Refit the guard at "
            "once; eyes and ears protected."
        ),
        "saw_rail_end": (
            "Rail flat against the mitre gauge, hand on the gauge; a block clamped to the fence "
            "well before the blade is the stop, so that nothing binds between fence and blade. "
            "Wait for the blade before taking the rail away."
        ),
        "dado_stack": (
            "A dado stack is allowed only where the saw is made for it and the law lets it be "
            "used: its maker says so. The riving knife comes off, so guard the cut from above."
        ),
        "mitre_saw": (
            "Hold or clamp the piece against the fence, hand well outside the blade's path; let "
            "the blade run up, lower it, let it stop before lifting. A short offcut between blade "
            "and stop is thrown: put the stop on the side of the piece that is kept."
        ),
        "saw_mitre": (
            "A mitred piece creeps along the gauge: clamp it to the gauge's fence or face that "
            "with abrasive paper. Never use the rip fence as a stop; wait for the blade before "
            "clearing the offcut."
        ),
        "saw_bevel": (
            "The fence goes on the side that the blade tilts away from: an offcut under a tilted "
            "blade is trapped and thrown. Featherboard before the blade, push stick at the end, "
            "stand aside; its long point is sharp, ease it by a stroke of sandpaper."
        ),
        "saw_guided": (
            "Clamp work and guide; the offcut falls free, never between blade and bench. Wait for "
            "the blade before lifting the saw."
        ),
        "saw_cradle": (
            "The end stands at 45 degrees over a blade that does not come through: in a cradle "
            "that rides the fence, the piece clamped into it, hands on the cradle. Never freehand."
        ),
        "router_mitre": (
            "The slanting end on the table, a 45-degree block behind it that carries the piece "
            "and backs the fibres; hands on the block, feed against the bit's turn. Unplug to "
            "change the bit."
        ),
        "router_table": (
            "Feed from right to left against the bit's turn, featherboards before and behind it, "
            "a push block at the end; fence closed up to the bit. Unplug to change the bit."
        ),
        "router_rail_end": (
            "Push the narrow rail along the fence with a square block behind it, which backs the "
            "fibres too; hands on the block. Shallow passes; unplug to change the bit."
        ),
        "cutout_drops": (
            "What is cut out drops at the last inch and throws the tool: screw it to a board "
            "across the opening first, and bear the panel up on both sides of the line."
        ),
        "router_feed": (
            "Feed against the bit's turn, never with it. Clamp straightedge and work; unplug to "
            "change the bit; eyes, ears and lungs protected."
        ),
        "router_on_edge": (
            "On a narrow edge the router tips: clamp the piece between two straight boards flush "
            "with that edge, so that the base stands on all three; edge guide against face A. "
            "Plunge in shallow passes, against the bit's turn; unplug to change the bit."
        ),
        "router_ganged": (
            "On one narrow piece the router tips: clamp all alike side by side, ends flush, a "
            "scrap at the far side to back the fibres, one straightedge square across them. "
            "Shallow passes, against the bit's turn; unplug to change the bit."
        ),
        "router_finger_jig": (
            "The piece stands on end: clamp it to the jig, a board behind it that takes the "
            "breakout. Push both straight past the bit, hands on the jig, and do not pull "
            "them back through the cut. Unplug to change the bit; eyes and ears protected."
        ),
        "router_small_notch": (
            "A small piece is snatched: clamp it between two boards as thick, which carry the "
            "base and back the fibres. Pass beside pass, against the bit's turn; unplug to change "
            "the bit."
        ),
        "router_rebate": (
            "Round the inside of a frame the router goes clockwise, seen from above, against the "
            "bit's turn; the other way it runs off. Frame clamped flat, scraps beside it that "
            "keep the base from tipping, one pass no deeper than the bit takes; unplug to change "
            "it. Eyes, ears and lungs protected."
        ),
        "router_trim": (
            "Look for brads first: metal chips the bit and is thrown. The bit is open on both "
            "sides: both hands on the trimmer, against the bit's turn, and let it stop before you "
            "lift it off. The chisel's corners: both hands behind its edge. Eyes and ears "
            "protected."
        ),
        "drill_clamp": (
            "Clamp the jig and the work; keep fingers off the far side; eyes protected."
        ),
        "drill_cup": (
            "A cup bit grabs and turns jig and door: clamp both, both hands on the drill, "
            "turning before it touches. Try the collar on scrap; eyes protected."
        ),
        "drill_pins": (
            "A bit too deep comes out of the other face: collar tight and tried on scrap, jig "
            "clamped; eyes protected."
        ),
        "drill_pocket": (
            "The bit comes out of the end at speed: clamp the board in the jig, no hand at "
            "its end. Back it out often, packed chips seize it; eyes protected."
        ),
        "drill_through": (
            "The bit comes out behind: clamp a scrap there, and no hand. Eyes protected."
        ),
        "clamp_screws": (
            "Clamp the joint before driving; hold the work where a screw that wanders out cannot "
            "reach your hand."
        ),
        "brad_points": (
            "A brad can turn in the grain and come out sideways: keep hands two brad lengths "
            "from the muzzle; eyes protected."
        ),
        "tall_tips": (
            "A tall case tips forward as soon as doors or roll-outs hang in front of its foot: "
            "screw it to the studs first, then hang them, and open one roll-out at a time."
        ),
        "deck_load": tell(_DECK, trade(_HEAVY, "in")),
        "island_floor": (
            "Pipes, heating and cables run in a floor: find out where before a screw goes in, "
            "ask the trade where you cannot tell; screws no longer than the floor is deep."
        ),
        "island_tips": (
            "Until its ladders are screwed to the cleats on the floor an island tips, most of all "
            "with a counter on that stands out over knees: nobody leans or climbs on it. Power "
            "from the floor is laid by the licensed trade before the boxes stand."
        ),
        "hood_work": (
            "Two people and a stand: a hood hangs forward of its screws. Fuse out before the "
            "liner is wired; its wiring and its duct belong to the licensed trade, its duct is "
            "metal to the outside. Its maker's clearances and the local code come first."
        ),
        "appliance_panel": (
            "Power, water and drain of an appliance belong to the licensed trade: nothing is "
            "connected or moved for a panel. Its door springs shut or drops while the panel is "
            "off: block it, fingers out of its hinges; tighten its springs as its sheet says."
        ),
        "heavy_lift": (
            "Heavy and awkward: lift with a helper or a cart. Weights shown are for planning, "
            "not a permission."
        ),
        "glass_edges": (
            "Cut edges of glass slice skin: gloves, and carry panes upright. Doors within reach "
            "take tempered glass or plastic, as local codes ask."
        ),
        "film_knife": (
            "A fresh blade slips off a pane: cut film on a board along a steel rule, away from "
            "the hand that holds it, and close the knife after each cut."
        ),
        "lid_falls": (
            "A lid that falls hurts heads and fingers, and can shut a child in: fit stays that "
            "hold it at any angle before anyone uses it, leave air holes, and no catch or lock."
        ),
        "chisel": (
            "Clamp the piece; both hands behind the chisel's edge, and pare away from yourself. A "
            "blunt one slips."
        ),
        "resaw": (
            "Resawing on edge the blade stands high and ends between two thin strips: a fence as "
            "high as the board, a featherboard low before the blade, push sticks, and two cuts "
            "turned end for end where one does not reach. At the planer: nothing shorter than its "
            "manual allows, thin strips on a board that carries them, hands off the mouth. Guards "
            "back on at once; ears and lungs protected."
        ),
        "plane_strips": (
            "At the planer: nothing shorter than its manual allows, thin strips on a board that "
            "carries them, hands off the mouth; stand aside, ears and lungs protected."
        ),
        "scribe_plane": (
            "Clamp the piece to a bench to saw or plane it, never on the knee; both hands on the "
            "plane, and saw on the waste's side, away from the hand that holds."
        ),
        "lift_door": "Support the door's weight until the last hinge is on.",
        "dust": "Fine dust harms lungs: extraction and a mask, fibreboard above all.",
    }
)


def caution(key: str, unit: Unit) -> str:
    """A caution in the unit of the job."""
    return tell(_DECK, trade(_HEAVY, unit)) if key == "deck_load" else CAUTIONS[key]
