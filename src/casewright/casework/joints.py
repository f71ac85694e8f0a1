"""Joints: where two parts meet, with what fastens them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from casewright.casework.features import Plane
from casewright.dims import Dim

__all__ = ["Fastening", "FasteningKind", "Joint", "JointForm", "Surface"]

JointForm = Literal["butt", "dado", "rabbet", "groove", "face", "lap", "loose", "mitre", "spline"]
FasteningKind = Literal[
    "pocket screw", "case screw", "front screw", "brad", "staple", "glue", "retainer"
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Surface:
    """A plane of a part, or, when `cut` is named, the wall of that cut on that side.

    The wall 'l1' of a dado is its far wall along the length; 't0' the floor of a cut in face A.
    """

    part: str
    plane: Plane
    cut: str = ""


@dataclass(frozen=True, slots=True)
class Fastening:
    """What holds a joint.

    Parameters
    ----------
    kind
        pocket screw, case screw, front screw, brad, staple, glue or retainer.
    count
        How many [-]; 1 for glue.
    length
        [mm]; None for glue.
    into
        Part the point ends in.
    through
        Parts it passes, head first.
    edge, pitch
        Of a row: the outer ones from the ends of the joint, and from one to the next [mm].
    line
        Of a row: the edge or end of the outer part that it runs along, and how far from it [mm].
    """

    kind: FasteningKind
    count: int
    length: Dim | None
    through: tuple[str, ...]
    into: str
    edge: Dim | None = None
    pitch: Dim | None = None
    line: tuple[Plane, Dim] | None = None


@dataclass(frozen=True, slots=True)
class Joint:
    """Two surfaces that meet, with the gap left between them by design.

    Parameters
    ----------
    path
        Permanent name.
    form
        butt, dado, rabbet, groove, face (a strip on a face), lap, or loose (no fastening).
    one, other
        The surfaces; they face each other.
    gap
        Distance left between them [mm]; 0 means contact.
    fastenings
        Everything that holds it.
    """

    path: str
    form: JointForm
    one: Surface
    other: Surface
    gap: Dim
    fastenings: tuple[Fastening, ...] = ()
