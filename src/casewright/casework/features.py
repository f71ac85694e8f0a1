"""Features: what is machined into a part, each from a datum, each with its set-up."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from casewright.dims import Dim

__all__ = [
    "BoreKind",
    "Bores",
    "Cut",
    "CutFace",
    "CutKind",
    "Edge",
    "Face",
    "Feature",
    "MitredEnd",
    "Plane",
    "Setup",
]

Plane = Literal["l0", "l1", "w0", "w1", "t0", "t1"]
"""Planes of a part: ends l0 (datum end) and l1, edges w0 (datum edge) and w1, faces t0 (face B)
and t1 (face A, the face that shows)."""

Face = Literal["A", "B"]
Edge = Literal["w0", "w1"]
MitredEnd = Literal["m0", "m1"]

CutFace = Literal[Face, Edge, MitredEnd]
"""What a cut is made into: a face, a long edge, or the slanting face of a mitred end."""

CutKind = Literal[
    "rabbet",
    "dado",
    "groove",
    "notch",
    "lap",
    "rebate",
    "finger",
    "tongue",
    "mitre",
    "slot",
    "trim",
    "mortise",
    "clip",
    "bevel",
    "cutout",
]
BoreKind = Literal[
    "shelf pins", "hinge cup", "hinge plate", "pull", "pocket", "slide", "slide hook",
    "front screw", "pull play", "panel screw",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Setup:
    """How the tool is set for a feature.

    Parameters
    ----------
    tool
        Kind of tool the shop owns.
    fence
        Distance from the datum edge or end to the near side of the cut [mm].
    depth
        Height of the blade or depth of the bit [mm].
    passes
        Number of passes of the blade or bit [-].
    bit
        Bit or blade in words.
    bit_size
        Its diameter or kerf [mm], or None.
    stop
        Distance of a stop [mm].
    collar
        Depth collar on the drill, from the tip [mm].
    check
        What to measure on the first piece, and its size [mm].
    check_words
        The check in words.
    cautions
        Keys of the cautions that belong to this very set-up.
    """

    tool: str
    fence: Dim | None = None
    depth: Dim | None = None
    passes: int = 1
    bit: str = ""
    bit_size: Dim | None = None
    stop: Dim | None = None
    collar: Dim | None = None
    check: Dim | None = None
    check_words: str = ""
    cautions: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Cut:
    """A straight-walled cut: rabbet, dado, groove, notch, lap, rebate, or one cheek of a tongue.

    It runs along the part's length ("l") or width ("w"). `at` is measured square to that run,
    from `datum` to the near wall of the cut; `start` and `end` along the run, from the datum
    end or edge, None meaning right through. A cut into an edge runs along the length; its datum
    is a face, and its width lies across the thickness. A cutout goes right through, clear of all
    ends and edges.

    A clip takes off the corner of an end (`datum`) and the front edge w0 at 45 degrees, right
    through; its width and its end are how far it runs in along either.

    A bevel takes off the corner of a long edge (`datum`) and face A at 45 degrees, from end to
    end, as deep as the part is thick; its width is as much.

    A mitre takes off the corner of an end (`datum`) and the inner edge w1 at 45 degrees, right
    through; its width is how far it runs in along that edge. A slot takes a spline: it is cut into
    a mitred end, square to its slant, from edge to edge.

    Parameters
    ----------
    path
        Permanent name.
    kind
        What it is.
    face
        Face or edge it is cut into.
    runs
        Direction of the cut, along length or width.
    datum
        Plane `at` is measured from.
    at, width, depth
        [mm]. Depth is from `face`, also of an edge; a notch goes right through the thickness.
    start, end
        Where it begins and ends along its run [mm], from l0 or w0.
    asked_by
        Path of the joint or hardware that needs it.
    radius
        Radius left in its inside corners by a round cutter [mm], or None.
    """

    path: str
    kind: CutKind
    face: CutFace
    runs: Literal["l", "w"]
    datum: Plane
    at: Dim
    width: Dim
    depth: Dim
    start: Dim | None
    end: Dim | None
    asked_by: str
    setup: Setup
    radius: Dim | None = None

    @property
    def edge(self) -> Edge | None:
        """The edge it is cut into; None for any other cut."""
        match self.face:
            case "w0" | "w1":
                return self.face
            case _:
                return None

    @property
    def is_square(self) -> bool:
        """Whether its walls run along the part; not those of a clip, a bevel, a mitre."""
        return self.kind not in ("clip", "bevel") and self.mitred_end is None

    @property
    def mitred_end(self) -> Literal["l0", "l1"] | None:
        """The end that a mitre, or a slot in one, is at; None for a cut square to the part."""
        if self.kind == "mitre":
            return "l0" if self.datum == "l0" else "l1"
        if self.face in ("m0", "m1"):
            return "l0" if self.face == "m0" else "l1"
        return None


@dataclass(frozen=True, slots=True)
class Bores:
    """Round holes of one kind in one face.

    Parameters
    ----------
    places
        Distance of each hole along the length from `datum_l` and along the width from
        `datum_w` [mm].
    diameter
        [mm].
    depth
        [mm]; None: right through.
    toward
        For pockets: the end or edge the screw comes out of; else None.
    pitch
        From one hole to the next [mm], where hardware decides it; else None.
    asked_by
        Path of the joint or hardware that needs them.
    """

    path: str
    kind: BoreKind
    face: Face
    datum_l: Plane
    datum_w: Plane
    places: tuple[tuple[Dim, Dim], ...]
    diameter: Dim
    depth: Dim | None
    asked_by: str
    setup: Setup
    toward: Plane | None = None
    pitch: Dim | None = None


Feature = Cut | Bores
