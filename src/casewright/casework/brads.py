"""Rows of brads and retainers: how many, how far apart, and on which line."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction
from typing import Literal

from casewright.casework.features import Plane
from casewright.casework.joints import Fastening, FasteningKind
from casewright.casework.maker import Maker
from casewright.casework.naming import name_once, the
from casewright.casework.spacing import spread_along
from casewright.dims import Dim, Way

__all__ = ["fastener_row", "row_marks"]

_PLANES: tuple[Plane, ...] = ("l0", "l1", "w0", "w1")


def fastener_row(
    maker: Maker,
    joint: str,
    length: Dim,
    because: str,
    *,
    through: str,
    into: str,
    screw: Dim | None,
    line: tuple[Plane, Dim] | None = None,
    kind: FasteningKind = "brad",
    spacing: Literal["brad_spacing", "retainer_spacing"] = "brad_spacing",
) -> Fastening:
    """Fasteners in a row along a joint, evenly spread, from one end on by marks of the tape.

    Parameters
    ----------
    joint
        Name of the joint inside the case.
    length
        Along the joint [mm].
    because
        What is counted, in words, for `why`.
    screw
        Length of the fastener [mm], or None.
    line
        The edge or end of the outer part that the row runs along, and how far from it [mm].
    """
    place = maker.house.chain.place(maker.path(joint))
    edge, pitch, count = spread_along(
        place, length, maker.style(spacing), maker.style("pocket_edge"), because
    )
    step = maker.style("cut_step").value
    if step and pitch.value % step:
        pitch, _ = place.rounded(f"{kind}_pitch", pitch, step, Way.DOWN)
    for name, dim in (("edge", edge), ("pitch", pitch), ("line", line[1] if line else None)):
        name_once(place, f"{kind}_{name}", dim)
    return Fastening(kind, count, screw, (through,), into, edge, pitch, line)


def row_marks(maker: Maker, joints: Iterable[str]) -> tuple[tuple[str, Dim], ...]:
    """Where the rows of some joints run, in words, with each distance [mm].

    Rows of one number and pitch are told together, their lines first, each edge or end that they
    are measured from once; a line that two targets share is told once.

    Parameters
    ----------
    joints
        Paths of joints of the case.
    """
    wanted = set(joints)
    rows: dict[tuple[object, ...], list[Fastening]] = {}
    for joint in maker.joints:
        for held in joint.fastenings if joint.path in wanted else ():
            if held.edge is not None and held.pitch is not None:
                key = (held.kind, held.length, held.count, held.edge.value, held.pitch.value)
                rows.setdefault(key, []).append(held)
    return tuple(mark for group in rows.values() for mark in _row_marks(maker, group))


def _row_marks(maker: Maker, group: list[Fastening]) -> Iterator[tuple[str, Dim]]:
    first = group[0]
    what = f"{first.count} {first.kind}s"
    lines: dict[tuple[str, Fraction], tuple[list[str], Dim]] = {}
    for held in group:
        title = _short(maker, held.into)
        if held.line is not None:
            side, off = _side(maker, held.through[-1], held.line[0]), held.line[1]
            lines.setdefault((side, off.value), ([], off))[0].append(title)
    sides: dict[str, list[tuple[str, Dim]]] = {}
    for (side, _), (titles, off) in lines.items():
        sides.setdefault(side, []).append((_listed(titles), off))
    for side, held_by in sides.items():
        yield from _line_marks(what, side, held_by)
    if first.edge is None or first.pitch is None:
        return
    # A row of retainers runs along the frame, but is spread over the pane, a little shorter.
    ends = "ends" if first.kind != "retainer" else "corners of the pane"
    outer = f"from the {ends}"
    if not lines:
        members = _listed([_short(maker, held.into) for held in group])
        outer = f"{what} on {members}, {outer}"
    yield outer, first.edge
    if first.count > 2:
        yield "apart", first.pitch


def _line_marks(what: str, side: str, lines: list[tuple[str, Dim]]) -> Iterator[tuple[str, Dim]]:
    """Lines that are measured from one edge or end, which is named once."""
    (first, off), *others = lines
    if not others:
        yield f"{what} into {first}, on a line from the {side}", off
        return
    yield f"{what} each, on lines from the {side}, into {first}", off
    for titles, far in others:
        yield f"into {titles}", far


def _side(maker: Maker, part: str, plane: Plane) -> str:
    """An edge or end of a part in words; of a pair of edges that mirror each other, both."""
    own = maker.parts[part]
    word = own.ends[_PLANES.index(plane)]
    noun = "end" if plane in ("l0", "l1") else "edge"
    if word in ("left", "right"):
        return f"near edge of {_short(maker, part)}"
    return f"{word.removesuffix(f' {noun}')} {noun} of {_short(maker, part)}"


def _short(maker: Maker, part: str) -> str:
    """A part's title without what it belongs to."""
    return the(maker.parts[part].title.partition(" of ")[0])


def _listed(names: list[str]) -> str:
    *some, last = names
    return f"{', '.join(some)} and {last}" if some else last
