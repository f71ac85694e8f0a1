"""Every way a case can be off by a small step, one at a time, as cases of their own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Any

from casewright.casework.cases import AssemblyStep, Case, Door, Face, Front
from casewright.casework.features import Bores, Cut, Feature, Setup
from casewright.casework.joints import Fastening
from casewright.casework.parts import Part, PlacedAt
from casewright.casework.specs import Hand
from casewright.dims import Dim
from casewright.geometry import Direction, Orientation

STEP = Fraction(127, 80)
"""1/16 in [mm]."""


@dataclass(frozen=True, slots=True)
class Perturbed:
    """One case with one thing off.

    Parameters
    ----------
    key
        What is off, in general: 'side: width'. The same for all cases and both signs.
    what
        What is off, exactly: 'upper.side_left: width +1/16'.
    case
        The case with it.
    """

    key: str
    what: str
    case: Case


def moved(dim: Dim, by: Fraction) -> Dim:
    """A dim of another value, with nothing behind it."""
    return Dim("", (), dim.value + by, dim.power)


def perturbations(case: Case, step: Fraction = STEP) -> Iterator[Perturbed]:
    """All of them: parts, features, hands, joints, fronts, faces, the case itself, its steps."""
    for part in case.parts:
        yield from _of_part(case, part, step)
    yield from _of_pairs(case, step)
    yield from _of_joints(case, step)
    yield from _of_fronts(case, step)
    yield from _of_drawers(case, step)
    yield from _of_faces(case, step)
    yield from _of_sizes(case, step)
    yield from _of_steps(case)


def _word(name: str) -> str:
    """A name without its sign."""
    return name.rstrip("+- ")


def _signs(step: Fraction) -> tuple[tuple[str, Fraction], ...]:
    return (("+", step), ("-", -step))


def with_part(case: Case, part: Part) -> Case:
    """The case with one part replaced."""
    return replace(case, parts=tuple(part if p.path == part.path else p for p in case.parts))


def _of_part(case: Case, part: Part, step: Fraction) -> Iterator[Perturbed]:
    for name, changed in (
        *_sizes(part, step),
        *_films(part, step),
        *_places(part, step),
        *_hands(part),
    ):
        yield Perturbed(f"{part.role}: {_word(name)}", f"{part.path}: {name}",
                        with_part(case, changed))  # fmt: skip
    for feature in part.features:
        for name, other in _of_feature(feature, step):
            changed = _with_feature(part, feature, other)
            yield Perturbed(f"{part.role}: {feature.kind} {_word(name)}",
                            f"{feature.path}: {name}", with_part(case, changed))  # fmt: skip


def _sizes(part: Part, step: Fraction) -> Iterator[tuple[str, Part]]:
    """Cut too long or too short; a blank or an edge that does not fit the finished size."""
    for sign, by in _signs(step):
        for name in ("length", "width", "thickness"):
            sizes: Any = {
                state: replace(size, **{name: moved(getattr(size, name), by)})
                for state, size in (("finished", part.finished), ("blank", part.blank))
            }
            yield f"{name} {sign}", replace(part, **sizes)
            yield f"blank {name} {sign}", replace(part, blank=sizes["blank"])
        for number, edge in enumerate(part.edges):
            edges = list(part.edges)
            edges[number] = replace(edge, thickness=moved(edge.thickness, by))
            yield f"edge thickness {sign}", replace(part, edges=tuple(edges))


def _films(part: Part, step: Fraction) -> Iterator[tuple[str, Part]]:
    """The film of a pane cut otherwise, or laid with its edges elsewhere."""
    if part.film is None:
        return
    for sign, by in _signs(step):
        for name in ("length", "width", "margin"):
            at: Any = {name: moved(getattr(part.film, name), by)}
            yield f"film {name} {sign}", replace(part, film=replace(part.film, **at))


def _places(part: Part, step: Fraction) -> Iterator[tuple[str, Part]]:
    for sign, by in _signs(step):
        for axis in ("x", "y", "z"):
            at: Any = {axis: moved(getattr(part.placed, axis), by)}
            yield f"placed {axis} {sign}", replace(part, placed=replace(part.placed, **at))


def _hands(part: Part) -> Iterator[tuple[str, Part]]:
    """Made in the other hand; turned end for end; turned edge for edge; turned over."""
    other: Any = {"left": "right", "right": "left", None: "left"}[part.hand]
    yield "named the other hand ", replace(part, hand=other)
    for name, flips in (("mirrored end for end", (0,)), ("turned end for end", (0, 1)),
                        ("turned over", (0, 2))):  # fmt: skip
        yield f"{name} ", replace(part, placed=_flipped(part, flips))


def _flipped(part: Part, flips: tuple[int, ...]) -> PlacedAt:
    """The part's own axes turned round inside the box it takes up."""
    size = part.finished
    lengths = (size.length.value, size.width.value, size.thickness.value)
    at = {"x": part.placed.x, "y": part.placed.y, "z": part.placed.z}
    ways = list(part.placed.orientation)
    for own in flips:
        way = ways[own]
        axis = "xyz"[way.axis]
        at[axis] = moved(at[axis], way.sign * lengths[own])
        ways[own] = way.opposite
    return PlacedAt(at["x"], at["y"], at["z"], Orientation(*ways))


def _with_feature(part: Part, old: Feature, new: Feature | None) -> Part:
    features = [new if f is old else f for f in part.features]
    return replace(part, features=tuple(f for f in features if f is not None))


def _of_feature(feature: Feature, step: Fraction) -> Iterator[tuple[str, Feature | None]]:
    """The feature made otherwise; without its set-up, so that its fit alone is judged."""
    yield from _of_setup(feature, step)
    feature = replace(feature, setup=Setup(feature.setup.tool))
    yield "left out ", None
    yield _turned(feature)
    for sign, by in _signs(step):
        match feature:
            case Cut():
                for name in ("at", "width", "depth", "start", "end", "radius"):
                    dim = getattr(feature, name)
                    if dim is not None:
                        change: Any = {name: moved(dim, by)}
                        yield f"{name} {sign}", replace(feature, **change)
            case Bores():
                yield from _of_bores(feature, sign, by)


def _turned(feature: Feature) -> tuple[str, Feature]:
    """The feature in the face or the edge that is opposite."""
    if isinstance(feature, Cut) and feature.edge is not None:
        return "in the other edge ", replace(feature, face="w0" if feature.edge == "w1" else "w1")
    if isinstance(feature, Cut) and feature.face in ("m0", "m1"):
        return "in the other end ", replace(feature, face="m0" if feature.face == "m1" else "m1")
    return "in the other face ", replace(feature, face="A" if feature.face == "B" else "B")


def _of_setup(feature: Feature, step: Fraction) -> Iterator[tuple[str, Feature]]:
    """A tool set to another number than its feature's."""
    for sign, by in _signs(step):
        for name in ("fence", "depth", "stop", "collar", "check"):
            dim = getattr(feature.setup, name)
            if dim is not None:
                change: Any = {name: moved(dim, by)}
                setup = replace(feature.setup, **change)
                yield f"set-up {name} {sign}", replace(feature, setup=setup)


def _of_bores(bores: Bores, sign: str, by: Fraction) -> Iterator[tuple[str, Bores]]:
    yield f"diameter {sign}", replace(bores, diameter=moved(bores.diameter, by))
    if bores.depth is not None:
        yield f"depth {sign}", replace(bores, depth=moved(bores.depth, by))
    for number in sorted({0, len(bores.places) // 2, len(bores.places) - 1}):
        along, across = bores.places[number]
        for name, place in (("one along", (moved(along, by), across)),
                            ("one across", (along, moved(across, by)))):  # fmt: skip
            places = list(bores.places)
            places[number] = place
            yield f"{name} {sign}", replace(bores, places=tuple(places))
    for name, (far, wide) in (("all along", (by, Fraction(0))), ("all across", (Fraction(0), by))):
        places = [(moved(a, far), moved(b, wide)) for a, b in bores.places]
        yield f"{name} {sign}", replace(bores, places=tuple(places))


def _of_pairs(case: Case, step: Fraction) -> Iterator[Perturbed]:
    """A left and a right part off by the same setting."""
    by_path = {part.path: part for part in case.parts}
    for left in case.parts:
        head, found, tail = left.path.rpartition("left")
        right = by_path.get(f"{head}right{tail}") if found and left.hand == "left" else None
        if right is None:
            continue
        yield from _pair(case, left, right, dict(_sizes(left, step)), dict(_sizes(right, step)))
        for one, other in zip(left.features, right.features, strict=False):
            yield from _pair(case, left, right, _features(left, one, step),
                             _features(right, other, step))  # fmt: skip


def _features(part: Part, feature: Feature, step: Fraction) -> dict[str, Part]:
    return {
        f"{feature.kind} {name}": _with_feature(part, feature, other)
        for name, other in _of_feature(feature, step)
    }


def _pair(
    case: Case, left: Part, right: Part, lefts: dict[str, Part], rights: dict[str, Part]
) -> Iterator[Perturbed]:
    for name, one in lefts.items():
        if name in rights:
            both = with_part(with_part(case, one), rights[name])
            yield Perturbed(f"both {left.role}s: {_word(name)}",
                            f"{left.path} and {right.path}: {name}", both)  # fmt: skip


def _of_joints(case: Case, step: Fraction) -> Iterator[Perturbed]:
    for number, joint in enumerate(case.joints):
        for sign, by in _signs(step):
            joints = list(case.joints)
            joints[number] = replace(joint, gap=moved(joint.gap, by))
            yield Perturbed(f"joint {joint.form}: gap", f"{joint.path}: gap {sign}",
                            replace(case, joints=tuple(joints)))  # fmt: skip
        rows = [held for held in joint.fastenings if held.line is not None]
        for held in rows:
            yield from _of_row(case, number, held)


def _of_row(case: Case, number: int, held: Fastening) -> Iterator[Perturbed]:
    """A row of brads beside what it is to hold; one that is twice too long."""
    joint = case.joints[number]
    if held.line is None or held.pitch is None:
        return
    plane, off = held.line
    for name, other in (
        ("on no wood", replace(held, line=(plane, moved(off, Fraction(-3000))))),
        ("twice too long", replace(held, pitch=moved(held.pitch, 3 * held.pitch.value))),
    ):
        joints = list(case.joints)
        fastenings = tuple(other if each is held else each for each in joint.fastenings)
        joints[number] = replace(joint, fastenings=fastenings)
        yield Perturbed(f"row of {held.kind}s: {name}", f"{joint.path}: {held.kind} {name}",
                        replace(case, joints=tuple(joints)))  # fmt: skip


def _of_fronts(case: Case, step: Fraction) -> Iterator[Perturbed]:
    for number, front in enumerate(case.fronts):
        for name, other in _of_front(front, step):
            fronts = list(case.fronts)
            fronts[number] = other
            yield Perturbed(f"front: {_word(name)}", f"{front.path}: {name}",
                            replace(case, fronts=tuple(fronts)))  # fmt: skip


def _of_front(front: Front, step: Fraction) -> Iterator[tuple[str, Front]]:
    names = ["x", "y", "z", "width", "height", "thickness"]
    if isinstance(front, Door):
        other: Hand = "left" if front.hinge_side == "right" else "right"
        yield "hinge side ", replace(front, hinge_side=other)
        names += ["bore_distance", "plate_height", "overlay"]
        names += [] if front.crank is None else ["crank"]
    for sign, by in _signs(step):
        for name in names:
            change: Any = {name: moved(getattr(front, name), by)}
            yield f"{name} {sign}", replace(front, **change)
        if isinstance(front, Door):
            yield from _of_hinges(front, sign, by)


def _of_hinges(front: Door, sign: str, by: Fraction) -> Iterator[tuple[str, Front]]:
    for number, hinge in enumerate(front.hinges):
        for name in ("height", "on_door"):
            change: Any = {name: moved(getattr(hinge, name), by)}
            hinges = list(front.hinges)
            hinges[number] = replace(hinge, **change)
            yield f"hinge {name} {sign}", replace(front, hinges=tuple(hinges))


def _of_drawers(case: Case, step: Fraction) -> Iterator[Perturbed]:
    for number, drawer in enumerate(case.drawers):
        for sign, by in _signs(step):
            for name in ("x", "y", "z", "width", "height", "depth", "inside_width",
                         "slide_length"):  # fmt: skip
                change: Any = {name: moved(getattr(drawer, name), by)}
                drawers = list(case.drawers)
                drawers[number] = replace(drawer, **change)
                yield Perturbed(f"drawer: {name}", f"{drawer.path}: {name} {sign}",
                                replace(case, drawers=tuple(drawers)))  # fmt: skip


def _of_faces(case: Case, step: Fraction) -> Iterator[Perturbed]:
    for number, face in enumerate(case.faces):
        for name, other in _of_face(face, step):
            faces = list(case.faces)
            faces[number] = other
            yield Perturbed(f"face: {_word(name)}", f"{case.key} {face.opening} face: {name}",
                            replace(case, faces=tuple(faces)))  # fmt: skip


def _of_face(face: Face, step: Fraction) -> Iterator[tuple[str, Face]]:
    for sign, by in _signs(step):
        for name in ("x0", "x1", "y0", "y1", "left", "right", "bottom", "top"):
            change: Any = {name: moved(getattr(face, name), by)}
            yield f"{name} {sign}", replace(face, **change)
        for number, gap in enumerate(face.gaps):
            gaps = list(face.gaps)
            gaps[number] = moved(gap, by)
            yield f"gap {sign}", replace(face, gaps=tuple(gaps))


def _of_sizes(case: Case, step: Fraction) -> Iterator[Perturbed]:
    for sign, by in _signs(step):
        for name in ("width", "height", "depth", "standing", "overall_width"):
            change: Any = {name: moved(getattr(case, name), by)}
            yield Perturbed(f"case: {name}", f"{case.key}: {name} {sign}",
                            replace(case, **change))  # fmt: skip
        for number, name in enumerate(("width", "height", "depth")):
            wanted = list(case.wanted)
            wanted[number] = moved(wanted[number], by)
            w, h, d = wanted
            yield Perturbed(f"case: wanted {name}", f"{case.key}: wanted {name} {sign}",
                            replace(case, wanted=(w, h, d)))  # fmt: skip


def _of_steps(case: Case) -> Iterator[Perturbed]:
    """Steps left out, done twice, or with the part coming from the other side."""
    steps = case.assembly
    for number, step in enumerate(steps):
        before, after = steps[:number], steps[number + 1 :]
        name = f"step {number + 1} {step.verb} {step.part}"
        yield _steps(case, step, "left out", name, (*before, *after))
        if step.part:
            yield _steps(case, step, "done twice", name, (*before, step, step, *after))
        if step.enters is not None:
            back = replace(step, enters=Direction(step.enters.axis, -step.enters.sign))
            yield _steps(case, step, "from the other side", name, (*before, back, *after))


def _steps(
    case: Case, step: AssemblyStep, how: str, name: str, steps: tuple[AssemblyStep, ...]
) -> Perturbed:
    role = next((part.role for part in case.parts if part.path == step.part), step.verb)
    return Perturbed(f"step of {role}: {how}", f"{case.key}: {name} {how}",
                     replace(case, assembly=steps))  # fmt: skip
