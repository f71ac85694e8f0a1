"""What is found while a room is built and its cuts are planned: where the thing itself is made.

These findings need what only the code that builds has in hand; each is told there, beside the
decision. Here stands what each of them means, for the page of all that is checked.
"""

from __future__ import annotations

from typing import NamedTuple

__all__ = ["FOUND_WHILE_BUILDING", "Found"]

_PRACTICE = "common practice"
_SHEET = "the sheet of the appliance"


class Found(NamedTuple):
    """A finding of the build.

    Parameters
    ----------
    rule
        Its name, as findings bear it.
    about
        What is found, and why it matters.
    passes, fails
        An example of either side.
    source
        Where its limit comes from.
    """

    rule: str
    about: str
    passes: str
    fails: str
    source: str = _PRACTICE


FOUND_WHILE_BUILDING: tuple[Found, ...] = (
    Found("driver room", "Sides too near to each other for a driver in line with pocket screws "
          "between them.", "a case 12 in wide", "a pair of doors on a case 9 in wide"),
    Found("door size", "A leaf smaller than its construction takes: it is not made.",
          "a glass door 12 in wide", "a pair of glass doors on a case 12 in wide"),
    Found("door that warps", "A leaf so tall for its thickness, or so wide, that no board stays "
          "flat: refused, a split proposed.", "a door of 3/4, 84 in tall",
          "the same door 96 in tall"),
    Found("hinge load", "A door too tall or too heavy for five hinges.",
          "a door 84 in tall", "one 106 in tall, of 1 in board"),
    Found("hinge room", "Hinges that do not go in clear of fixed boards, ends and one another.",
          "a fixed shelf in the middle of a door 30 in tall",
          "one 3 1/2 in up behind a door 8 in tall"),
    Found("hinge overlay", "No plate in hand brings the door as far over its side as it is to "
          "lie, within what the side screw takes up.", "plates of 0, 2 and 4 mm",
          "plates of 9 mm alone", "the sheet of the hinge"),
    Found("wood under the cup", "Too little wood left under a hinge cup: the bit's point comes "
          "through.", "cups of 12.5 mm in 3/4 board", "the same in 1/2 board"),
    Found("cup and rebate, groove or frame", "Hinge cups that run into a rebate, a groove or a "
          "joint of a narrow stile.", "a glass door with stiles of 2 1/2", "stiles of 1 1/2"),
    Found("pull and rebate, groove or frame", "A pull's screw that misses the wood of its stile.",
          "a pull 1 1/4 from the edge of a glass door", "one 2 3/8 from it"),
    Found("pull length", "A pull longer than its front: no holes are bored.",
          "a pull of 96 mm on a drawer 18 in wide", "one of 20 in there"),
    Found("rebate depth", "A rebate for pane and retainers that leaves too little in front.",
          "a pane of 1/8 in boards of 3/4", "retainers 1/2 thick there"),
    Found("pane corner", "A pane rounded so far that its corners end in sight.",
          "a rebate bit of 1 1/4", "one of 3 in"),
    Found("film in sight", "A film whose edge shows beside the frame.",
          "a film that ends 1/8 inside its pane", "one 3/8 inside, where 5/16 are hidden"),
    Found("mid rail", "A mid rail without room for a panel, or between panels glued of boards.",
          "a mid rail half way up", "one right under the top rail"),
    Found("panel and frame", "A panel too thick for the groove of its frame.",
          "a panel of 1/4 in boards of 3/4", "a panel of 3/4"),
    Found("panel out of its groove", "A panel of boards that dries out of its grooves, or swells "
          "until it bursts them, by its wood and the room's moisture.",
          "a quarter-sawn panel 12 in wide", "a flat-sawn one 30 in wide", "wood-handbook"),
    Found("wide resaw", "Boards resawn on edge for thin panels, higher than a table saw cuts.",
          "boards 3 in wide", "boards 5 1/2 in wide"),
    Found("brads for strips", "No brad in hand holds the strips of a frame without coming "
          "through: they are glued and clamped.", "brads of 3/4 through 3/16 into 5/8",
          "none but brads of 1 1/4"),
    Found("finished end", "An end too small for a frame like the doors'.",
          "a side 12 in deep, stiles of 2 5/8", "a side 5 in deep"),
    Found("inset front", "An inset front thicker than its face frame.", "3/4 in a frame of 3/4",
          "1 in a frame of 3/4"),
    Found("narrow face frame", "A stile or rail that does not cover the edge behind it, or a "
          "mullion too thin for partition and pads.", "stiles of 1 1/2", "stiles of 3/4"),
    Found("pads behind the frame", "Pads too thin to plane, or thicker than the frame's boards.",
          "stiles of 1 1/2 over sides of 23/32", "stiles of 3 there"),
    Found("slide length", "No slides short enough for the depth of the case.",
          "slides of 18 in in a case 20 in deep", "slides of 24 in alone there"),
    Found("drawer height", "A row too low for a drawer's box.", "a drawer 5 in high",
          "one 2 in high"),
    Found("drawer width", "A box too narrow to be made between its slides.",
          "drawers in a case 12 in wide", "with slides that take 3 in at each side"),
    Found("drawer side", "Sides thicker than concealed slides take.", "sides of 1/2",
          "sides of 3/4", "the sheet of the slides"),
    Found("hole in the groove", "Holes for slides, or for the hooks of concealed ones, that run "
          "into the groove of the drawer's bottom.", "a bottom of 1/4, hooks 24 mm up",
          "one of 1/2 there", "the sheet of the slides"),
    Found("roll-out room", "Roll-outs that do not all go in, clear of hinges.",
          "two roll-outs in a base", "six"),
    Found("shelf room", "More adjustable shelves than the opening holds.", "two in 30 in",
          "twenty in 30 in"),
    Found("shelf in a row", "A fixed shelf where a drawer runs or an appliance stands.",
          "one behind the doors of a tall case", "one behind its drawers"),
    Found("register opening", "An opening for a register that leaves nothing of its toe board.",
          "12 in wide in a case of 24", "30 in wide there"),
    Found("appliance opening", "An opening smaller than the appliance's sheet asks for, or so "
          "much larger that its trim does not cover the gaps.", "28 1/2 for a sheet of 28 1/2",
          "28 for it", _SHEET),
    Found("appliance panel", "A panel that the appliance's sheet does not take: size, weight, "
          "thickness, screws.", "a panel of 30 3/8 x 23 3/4, its limits given",
          "one 2 kg too heavy", _SHEET),
    Found("hood", "Too little wood round a liner, too little height for it, a duct in the wood.",
          "a liner of 28 3/8 in a case of 36", "one of 34 there", "the sheet of the liner"),
    Found("island rows", "Two rows of an island of unlike length or height: no end lies on both.",
          "60 before and 60 behind", "60 before and 57 behind"),
    Found("run too long", "Cases wider than their wall.", "100 in of cases on a wall of 102",
          "104 on it"),
    Found("narrow filler", "A filler too narrow to be scribed and fastened.", "1 1/2 at each end",
          "1/4 at each end"),
    Found("wide filler", "A filler so wide that it shows, once a wall was read anew.",
          "2 in", "5 in"),
    Found("box as read", "A box read off what its pieces come to; its joints take that up.",
          "a box read 1/64 wide", "one read 1/8 wide"),
    Found("crown too high", "A ceiling that leaves too little for the crown over the cases.",
          "4 1/2 in over them for a crown of 3 5/8", "3 in for it"),
    Found("crown beside a case", "A crown that dies into the side of a case that ends too low.",
          "a pantry that reaches past the crown", "one that ends in the middle of it"),
    Found("crown at a hood", "A crown that can neither go round a hood nor die into its sides.",
          "a hood up to the crown's foot, or to its head", "one that ends between the two"),
    Found("no mitre saw", "Mitres of a trim in a shop without a mitre saw.",
          "a crown, a mitre saw owned", "the same without one"),
    Found("grain breaks", "The grain of a match breaks: no sheet is wide enough, or some of it is "
          "cut already.", "three fronts of 15 in out of a sheet of 48", "four of them"),
    Found("nothing to match", "A case in a match whose fronts have no grain.",
          "plywood fronts", "painted fibreboard"),
    Found("lost reading", "A reading of a name that is no longer in the job.",
          "a reading of a case that is there", "the case taken out", "the job's own record"),
    Found("lost mark", "A mark of the record of a name that is no longer in the job.",
          "a part marked cut that is there", "its case taken out", "the job's own record"),
    Found("open proposal", "What was read changes pieces, and nobody has said yes to it yet.",
          "a reading that changes nothing", "a sheet read thicker", "the job's own record"),
    Found("a depth that saves", "A slightly smaller depth takes a sheet fewer.",
          "a depth that fills its sheets", "1/8 over half a sheet's width"),
    Found("proof", "Parts that do not go together as cut and placed. While only the goods in hand "
          "are to blame it is told so; else the program is.", "any job", "a screw too long",
          "by the proof of assembly"),
)  # fmt: skip
"""Every finding that is told where a thing is made, in the order of the shop."""
