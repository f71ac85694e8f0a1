"""What the person asked for, case by case, with every default already filled in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from casewright.casework.hood_spec import HoodSpec
from casewright.dims import Given

__all__ = [
    "TOE_KINDS", "ApplianceOpening", "BackKind", "CaseKind", "CaseSpec", "DoorKind", "DrawerJoint",
    "DrawerSpec", "EdgeKind", "EndKind", "FaceFixing", "FaceJoint", "FaceKind", "FrontSpec",
    "Hand", "JointKind", "LidKind", "OverlayKind", "PanelSheet", "PocketKind", "RowKind",
    "RowSpec", "SlideKind", "ToeKind", "front_spec",
]  # fmt: skip

CaseKind = Literal[
    "wall", "base", "tall", "bookcase", "surround", "hood", "plinth", "panel", "island"
]
TOE_KINDS: tuple[CaseKind, ...] = ("base", "tall")
"""Cases that stand behind a toe space, and whose face may be parted into rows."""
BackKind = Literal["rabbeted", "grooved", "applied", "inset", "open"]
JointKind = Literal["pocket screws", "dado", "rabbet"]
DoorKind = Literal["slab", "applied frame", "glass frame", "frame and panel", "mitred frame"]
OverlayKind = Literal["full", "partial", "inset"]
EdgeKind = Literal["band", "lip", "painted"]
EndKind = Literal["applied frame", "skin", "flush", "plain"]
FaceKind = Literal["frameless", "face frame", "strips"]
FaceJoint = Literal["pocket screws", "tenons"]
FaceFixing = Literal["pocket screws", "brads"]
LidKind = Literal["hinged", "fixed"]
PocketKind = Literal["hidden", "plugged"]
ToeKind = Literal["notch", "plinth", "none"]
RowKind = Literal["doors", "drawer", "false front", "open", "appliance"]
DrawerJoint = Literal["butt", "rabbet", "dado", "box joint"]
SlideKind = Literal["side-mount", "undermount"]
Hand = Literal["left", "right"]


@dataclass(frozen=True, slots=True)
class FrontSpec:
    """The doors of one opening.

    Parameters
    ----------
    construction
        slab, applied frame (strips on a slab), glass frame (half-lapped, rebated), frame
        and panel (tongues on the rails, panel in grooves) or mitred frame (splined, with a panel).
    leaves
        1 or 2; None lets the width of the case decide.
    hinge
        Side of the hinges of a single door.
    slab, strip, frame, glazing, panel
        Keys of the stock each is made from; only those the construction needs are used.
    pull, film
        Whether pulls are bored, and whether its panes get a film.
    edge
        What is done to a slab's edges; None: fibreboard is filled and painted, other slabs get
        what the box gets.
    mid_rail
        Height of the middle of a rail that parts its panel in two, above the door's lower end
        [mm]; None: one panel. Of a frame and panel alone.
    overlay
        full: over the edges of the box but for a reveal; partial: over a part of them; inset:
        inside, flush with them.
    """

    construction: DoorKind
    leaves: Literal[1, 2] | None
    hinge: Hand
    slab: str
    strip: str
    frame: str
    glazing: str
    pull: bool = True
    edge: EdgeKind | None = None
    panel: str = ""
    overlay: OverlayKind = "full"
    mid_rail: Given | None = None
    film: bool = False


@dataclass(frozen=True, slots=True)
class DrawerSpec:
    """How the boxes of a case's drawers are built.

    Parameters
    ----------
    joint
        How front and back meet the sides.
    slides
        Beside the box, or concealed under it.
    box_stock, bottom_stock
        Keys of stock for sides, front and back, and for the bottom.
    """

    joint: DrawerJoint
    slides: SlideKind
    box_stock: str
    bottom_stock: str


@dataclass(frozen=True, slots=True)
class ApplianceOpening:
    """The opening that an appliance's own sheet asks for.

    Parameters
    ----------
    key, title
        Permanent id; name in words.
    width, height, depth
        Clear [mm]; None: not known yet.
    """

    key: str
    title: str
    width: Given | None
    height: Given | None
    depth: Given | None


@dataclass(frozen=True, slots=True)
class PanelSheet:
    """What an appliance's own sheet says of the panel on its front.

    Parameters
    ----------
    front
        How the panel is built.
    free_below
        Height above the floor that stays free of it: a vent, the kick [mm].
    least_height, most_height, most_width, least_thickness, most_thickness
        Limits [mm]; None: not known, or none.
    most_weight
        [kg]; None: not known, or none.
    screw_rows
        Heights of the screws of its brackets below its upper edge [mm]; none: not known.
    screws_apart, screw_depth
        Between the two screws of a row, both sides of the middle, and how far they go in [mm];
        None: not known.
    no_limit
        What the sheet sets no limit to: height, width, thickness, weight.
    hinge
        Side that its door swings on; None: none, or not known.
    """

    front: FrontSpec
    free_below: Given | None = None
    least_height: Given | None = None
    most_height: Given | None = None
    most_width: Given | None = None
    least_thickness: Given | None = None
    most_thickness: Given | None = None
    most_weight: Given | None = None
    screw_rows: tuple[Given, ...] = ()
    screws_apart: Given | None = None
    screw_depth: Given | None = None
    no_limit: frozenset[str] = frozenset()
    hinge: Hand | None = None


@dataclass(frozen=True, slots=True)
class RowSpec:
    """One row of a face.

    Parameters
    ----------
    kind
        doors, a drawer, a false front, open, or an appliance.
    height
        Of its fronts [mm]; None: an equal share of what the others leave.
    front
        How its fronts are built; None where it is open.
    low
        How a front is built that is too low for a frame.
    appliance
        What stands in it; None: nothing.
    """

    kind: RowKind
    height: Given | None
    front: FrontSpec | None
    low: FrontSpec | None = None
    appliance: ApplianceOpening | None = None


@dataclass(frozen=True, slots=True)
class CaseSpec:
    """One case.

    Parameters
    ----------
    key
        Permanent id from the job file.
    title
        What people call it.
    kind
        wall, base, tall, bookcase, surround or hood; or plinth, for one that several cases of a
        run share; or panel, for the front of an appliance.
    width
        Outside width [mm]; None: an equal share of its run.
    height, depth
        Outside height and depth of the box, back included, doors excluded [mm].
    joint, back, edge, pockets, toe
        Construction choices.
    shelves, upper_shelves
        Number of adjustable shelves in the main opening (under a divider), and above it.
    fixed_shelves
        Heights of the top faces of fixed shelves above the case's bottom edge [mm]. In a
        bookcase empty: its shelves are spread evenly, `shelves` of them.
    divider
        Height of the centreline of a fixed divider above the case's bottom edge [mm].
    finished
        Ends that show.
    end, end_stock
        What is on them: an applied frame, a skin behind the doors, a board flush with the doors'
        faces, or nothing but the side itself; and what a skin or a flush end is cut from.
    skirt, crown
        Drop of the sides below the bottom, closed by a strip; lap of a crown on the front [mm].
    nosing
        Height of a strip under the front edge of each fixed shelf of a bookcase [mm].
    front, upper_front
        Doors of the main opening and of the one above the divider.
    rows
        What the face of the main opening is parted into, from the top; none: its doors alone.
    row_rails
        Whether a rail between the sides parts each row from the next.
    drawer
        How the boxes of its drawers are built; None where it has none.
    roll_outs
        Number of drawers behind its doors.
    diagonal, under
        End of its run whose corner it fills: its width is its leg along either wall, its depth
        that of its return sides; whether its bottom lies under them.
    blind, corner_depth
        Side that stands blind in an inside corner, behind the fronts of the run round it; depth of
        that run [mm], None: as deep as base cases are.
    appliance
        What stands under it and between its panels, in a surround; the liner of a hood.
    hood
        What else a hood is built round and over; None: it is none.
    panel
        What its appliance's sheet says of it, where it is a panel.
    lid, lid_stock, shares_lid
        Whether it is a window seat, and its lid hinged or fixed; what that is cut from; whether
        one of its run's lies over it instead.
    register
        Width and height of an opening through its toe board [mm]; None: none.
    seated
        Whether the height of its box follows from that of the seat: cushion and lid come off.
    sink, bowl
        Whether a bowl hangs in it: no top, its back open; how large that is below the counter,
        across and from front to back [mm], None: not known.
    box_stock, back_stock, strip_stock, band_stock
        Keys of stock for the box, the thin back, strips and the edge band.
    overrides
        Style values set for this case alone, by style key.
    where
        Place in the job file, for messages.
    face
        frameless: fronts on the edges of the box; face frame: on a frame of stiles and rails, a
        little wider than the box, before it; strips: on strips over the edges of the box.
    face_stock, face_joint, face_fixing
        Key of the boards of the frame; how its rails meet its stiles, and it the box.
    mullion
        Whether an upright of the frame parts each pair of doors.
    scribes
        Hands of the stiles that are wider, to be scribed to a wall.
    """

    key: str
    title: str
    kind: CaseKind
    width: Given | None
    height: Given
    depth: Given
    joint: JointKind
    back: BackKind
    edge: EdgeKind
    pockets: PocketKind
    toe: ToeKind
    shelves: int
    fixed_shelves: tuple[Given, ...]
    divider: Given | None
    finished: tuple[Hand, ...]
    skirt: Given | None
    crown: Given | None
    nosing: Given | None
    front: FrontSpec | None
    upper_front: FrontSpec | None
    box_stock: str
    back_stock: str
    strip_stock: str
    band_stock: str
    overrides: Mapping[str, Given] = field(default_factory=dict)
    where: str = ""
    rows: tuple[RowSpec, ...] = ()
    row_rails: bool = False
    drawer: DrawerSpec | None = None
    sink: bool = False
    roll_outs: int = 0
    appliance: ApplianceOpening | None = None
    upper_shelves: int = 0
    face: FaceKind = "frameless"
    face_stock: str = ""
    face_joint: FaceJoint = "pocket screws"
    face_fixing: FaceFixing = "pocket screws"
    mullion: bool = False
    scribes: tuple[Hand, ...] = ()
    end: EndKind = "applied frame"
    end_stock: str = ""
    blind: Hand | None = None
    corner_depth: Given | None = None
    lid: LidKind | None = None
    lid_stock: str = ""
    shares_lid: bool = False
    seated: bool = False
    diagonal: Hand | None = None
    under: bool = False
    register: tuple[Given, Given] | None = None
    panel: PanelSheet | None = None
    hood: HoodSpec | None = None
    bowl: tuple[Given, Given] | None = None

    @property
    def is_hung(self) -> bool:
        """Whether it hangs on the wall."""
        return self.kind in ("wall", "hood")

    @property
    def is_open_inside(self) -> bool:
        """Whether its inside is seen: no doors before it, and no liner in it."""
        return self.front is None and self.hood is None

    @property
    def is_box(self) -> bool:
        """Whether it is a case: no plinth that several stand on, no panel of an appliance."""
        return self.kind not in ("plinth", "panel", "island")

    @property
    def topless(self) -> bool:
        """Whether it is open at the top: a bowl hangs in it, or a lid is hinged over it."""
        return self.sink or self.lid == "hinged"

    @property
    def has_toe(self) -> bool:
        """Whether it is of a kind that stands behind a toe space."""
        return self.kind in TOE_KINDS

    @property
    def between_panels(self) -> bool:
        """Whether its box is carried by panels that reach the floor."""
        return self.kind == "surround"

    @property
    def reaches_down(self) -> bool:
        """Whether its box begins above the plane its heights count from, on nothing of its own."""
        return self.between_panels or self.hood is not None

    def shelves_in(self, opening: str) -> int:
        """How many adjustable shelves were asked for in an opening, by its name."""
        return {"main": self.shelves, "upper": self.upper_shelves}.get(opening, 0)

    @property
    def dressed(self) -> tuple[Hand, ...]:
        """Ends that something is put on."""
        return () if self.end == "plain" else self.finished

    @property
    def covered(self) -> bool:
        """Whether something covers the front edges of its box."""
        return self.face != "frameless" or self.hood is not None

    @property
    def framed(self) -> bool:
        """Whether a face frame stands before the box."""
        return self.face == "face frame"


def front_spec(spec: CaseSpec, opening: str) -> FrontSpec | None:
    """What was asked for in front of an opening, by its name."""
    return spec.upper_front if opening == "upper" else spec.front
