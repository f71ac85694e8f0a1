"""The model of a case: parts, joints, fronts, the order it goes together."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from casewright.casework.case_mouth import CaseMouth
from casewright.casework.joints import Joint, Surface
from casewright.casework.levels import ClearHeight, Level
from casewright.casework.parts import Part
from casewright.casework.specs import CaseSpec, DoorKind, Hand, SlideKind
from casewright.dims import Dim
from casewright.findings import Finding, Question
from casewright.geometry import Direction

__all__ = [
    "AssemblyStep",
    "Case",
    "Door",
    "Drawer",
    "Face",
    "FaceFrame",
    "Front",
    "Hinge",
    "StepVerb",
]

StepVerb = Literal["lay", "join", "check square", "hold", "fit", "fasten", "hang"]


@dataclass(frozen=True, slots=True)
class Hinge:
    """One hinge of a door.

    Parameters
    ----------
    path
        Permanent name.
    height
        Centre above the case's bottom edge (or the floor, for a case that stands) [mm], in
        case axes y.
    on_door
        Centre from the door's bottom end [mm].
    cup, plate
        Paths of the bores in the door and in the side.
    """

    path: str
    height: Dim
    on_door: Dim
    cup: str
    plate: str


@dataclass(frozen=True, slots=True)
class Front:
    """Anything that closes an opening, or part of one: a door, a drawer's front, a false front.

    Parameters
    ----------
    path, title
        Permanent name; name in words.
    construction
        slab, applied frame, glass frame, frame and panel.
    x, y, z
        Its lower left back corner in case axes [mm].
    width, height, thickness
        Outside size of the leaf [mm].
    parts
        Paths of its parts.
    pull
        Path of the pull's bores, or empty.
    opening
        Which row of the face it belongs to: main, upper, drawer_1.
    """

    path: str
    title: str
    construction: DoorKind
    x: Dim
    y: Dim
    z: Dim
    width: Dim
    height: Dim
    thickness: Dim
    parts: tuple[str, ...]
    pull: str
    opening: str


@dataclass(frozen=True, slots=True)
class Door(Front):
    """One door leaf.

    Parameters
    ----------
    hinge_side
        Side it swings on, seen from the room.
    hinges
        From the bottom up.
    bore_distance, plate_height, overlay
        Solved from the hinge's sheet [mm].
    crank
        Of the hinges' arm [mm]; None for a straight one.
    """

    hinge_side: Hand
    hinges: tuple[Hinge, ...]
    bore_distance: Dim
    plate_height: Dim
    overlay: Dim
    crank: Dim | None = None


@dataclass(frozen=True, slots=True)
class Drawer:
    """A drawer's box on its slides.

    Parameters
    ----------
    path, title
        Permanent name; name in words.
    slides
        Beside the box, or concealed under it.
    slide_length
        [mm].
    x, y, z
        Its lower left back corner in case axes [mm].
    width, height, depth
        Outside size of the box [mm].
    inside_width
        Between its sides [mm].
    parts
        Paths of its parts: sides, front, back, bottom.
    front
        Path of the front that is screwed to it.
    bores
        Paths of the slides' bores in the left and in the right side of the case.
    opening
        Which row of the face it belongs to: drawer_1.
    """

    path: str
    title: str
    slides: SlideKind
    slide_length: Dim
    x: Dim
    y: Dim
    z: Dim
    width: Dim
    height: Dim
    depth: Dim
    inside_width: Dim
    parts: tuple[str, ...]
    front: str
    bores: tuple[str, str]
    opening: str


@dataclass(frozen=True, slots=True)
class Face:
    """The front plane the fronts of one row must fill exactly.

    Left reveal, leaves, gaps, right reveal sum to the width; bottom reveal, leaf, top reveal
    (or half the gap to the next row) to the height.

    Parameters
    ----------
    x0, x1, y0, y1
        Edges of the face in case axes [mm]: what the leaves and the gaps round them sum to.
    left, right, bottom, top
        Reveals [mm].
    gaps
        Gaps between leaves, left to right [mm].
    leaves
        Paths of the fronts, left to right.
    """

    opening: str
    x0: Dim
    x1: Dim
    y0: Dim
    y1: Dim
    left: Dim
    right: Dim
    bottom: Dim
    top: Dim
    gaps: tuple[Dim, ...]
    leaves: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FaceFrame:
    """The frame of stiles and rails before a box.

    Parameters
    ----------
    path, title
        Permanent name; name in words.
    x, y, z
        Its lower left back corner in case axes [mm].
    width, height, thickness
        Outside size [mm].
    parts
        Paths of its members.
    front
        Plane z of its face [mm].
    openings
        Between its stiles, and between its rails, from the bottom up: (name, width, height) [mm].
    """

    path: str
    title: str
    x: Dim
    y: Dim
    z: Dim
    width: Dim
    height: Dim
    thickness: Dim
    front: Dim
    parts: tuple[str, ...]
    openings: tuple[tuple[str, Dim, Dim], ...]


@dataclass(frozen=True, slots=True)
class AssemblyStep:
    """One step of putting a case together.

    Parameters
    ----------
    verb
        lay (the first part on the bench), join, check square, hold (stop until something is
        tried or measured), fit, fasten, hang.
    part
        Path of the part that comes in; empty for a check or a hold.
    enters
        The direction it moves in as it comes in; None for the first part and for checks.
    joints
        Paths of the joints closed at this step.
    words
        The step as an order to the person.
    marks
        Where the part sits: words and distance [mm], measured on the parts already there.
    check
        A size to measure at this step [mm], or None; with `check_words`.
    cautions
        Keys of the cautions that belong to this very step.
    planes
        For each mark the two planes it is measured between, so that it can be held against the
        parts in place.
    """

    verb: StepVerb
    part: str
    enters: Direction | None
    joints: tuple[str, ...]
    words: str
    marks: tuple[tuple[str, Dim], ...] = ()
    check: Dim | None = None
    check_words: str = ""
    cautions: tuple[str, ...] = ()
    planes: tuple[tuple[Surface, Surface], ...] = ()


@dataclass(frozen=True, slots=True)
class Case:
    """One case as it is to be made.

    Parameters
    ----------
    spec
        What was asked for.
    width, height, depth
        Outside size of the box as it results from its parts [mm].
    wanted
        Outside size asked for: (width, height, depth) [mm].
    standing
        Plane its sides stand on, in case axes y [mm]: nothing, or the top of its run's plinth.
    overall_width
        With applied ends, or of the face frame [mm].
    left_frame
        How much of that stands out at the left of the box [mm].
    overall_depth
        With doors and nosings [mm].
    tolerance
        How far the outside of the box may stray from the size asked for, either way [mm].
    levels
        Its horizontals, from the floor up.
    clear_heights
        Between those that are fixed, from the floor up.
    parts, joints, fronts, faces, drawers, assembly
        The model.
    findings, questions
        What building it brought up.
    frame
        The face frame before its box; None without one.
    mouth
        Of a diagonal corner; None for any other case.
    """

    spec: CaseSpec
    width: Dim
    height: Dim
    depth: Dim
    wanted: tuple[Dim, Dim, Dim]
    standing: Dim
    overall_width: Dim
    left_frame: Dim
    overall_depth: Dim
    tolerance: Dim
    levels: tuple[Level, ...]
    clear_heights: tuple[ClearHeight, ...]
    parts: tuple[Part, ...]
    joints: tuple[Joint, ...]
    fronts: tuple[Front, ...]
    faces: tuple[Face, ...]
    assembly: tuple[AssemblyStep, ...]
    findings: tuple[Finding, ...] = field(default=())
    questions: tuple[Question, ...] = field(default=())
    drawers: tuple[Drawer, ...] = field(default=())
    frame: FaceFrame | None = None
    mouth: CaseMouth | None = None

    @property
    def face_plane(self) -> Dim:
        """Plane z of its front [mm]: of face frame, box, or a diagonal corner's neighbours."""
        if self.mouth is not None:
            return self.mouth.beside
        return self.depth if self.frame is None else self.frame.front

    @property
    def leaf_plane(self) -> Dim:
        """Plane z that its fronts lie against [mm], in the axes that they are placed in."""
        if self.mouth is None:
            return self.face_plane
        frame = self.frame
        return self.mouth.front if frame is None else frame.front

    @property
    def wall_fronts(self) -> tuple[Front, ...]:
        """Its fronts that lie along its wall: not one across a corner."""
        return self.fronts if self.mouth is None else ()

    @property
    def key(self) -> str:
        """Permanent id."""
        return self.spec.key

    @property
    def lifted(self) -> tuple[Part, ...]:
        """Parts of the box, of its ends and its face frame: what is lifted when fronts are off."""
        off = {front.path for front in self.fronts} | {drawer.path for drawer in self.drawers}
        return tuple(part for part in self.parts if part.front not in off)

    @property
    def doors(self) -> tuple[Door, ...]:
        """Its fronts that swing."""
        return tuple(front for front in self.fronts if isinstance(front, Door))

    @property
    def is_plinth(self) -> bool:
        """Whether it is no case, but what several cases of a run stand on."""
        return self.spec.kind == "plinth"

    def part(self, path: str) -> Part:
        """The part of that path.

        Raises
        ------
        KeyError
            When there is none.
        """
        for part in self.parts:
            if part.path == path:
                return part
        raise KeyError(path)
