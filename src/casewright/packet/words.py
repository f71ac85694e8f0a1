"""Numbers and settings in the words of the packet."""

from __future__ import annotations

from casewright.casework.features import Bores, Cut, Feature, Plane, Setup
from casewright.casework.parts import Part
from casewright.dims import Dim, Measure, measure_of
from casewright.dims.units import Unit
from casewright.outputs.inlines import Inline, Rich, Strong
from casewright.room.model import Room

__all__ = [
    "at_words",
    "edge_words",
    "feature_name",
    "place_titles",
    "plane_word",
    "setup_lines",
    "size_words",
    "sizes",
    "unfold",
]

_TREAT = {"band": "band", "lip": "lip", "painted": "fill and paint"}
_PLANES: tuple[Plane, ...] = ("l0", "l1", "w0", "w1")


def unfold(*items: Rich) -> tuple[Inline, ...]:
    """Several lines as one."""
    found: list[Inline] = []
    for item in items:
        found.extend(item if isinstance(item, tuple) else (item,))
    return tuple(found)


def sizes(*dims: Dim, unit: Unit, strong: bool = False) -> tuple[Inline, ...]:
    """Sizes with a cross between them, on one line."""
    found: list[Inline] = []
    for number, dim in enumerate(dims):
        if number:
            found.append("\u00a0×\u00a0")
        measure = measure_of(dim, unit)
        found.append(Strong(measure) if strong else measure)
    return tuple(found)


def plane_word(part: Part, plane: Plane) -> str:
    """An end, edge or face of a part in words: 'front edge', 'bottom end', 'face A'."""
    if plane == "t0":
        return "face B"
    if plane == "t1":
        return "face A"
    noun = "end" if plane in ("l0", "l1") else "edge"
    return f"{part.ends[_PLANES.index(plane)].removesuffix(f' {noun}')} {noun}"


_CUTS = {"finger": "slot of the box joint", "tongue": "cheek of the tongue",
         "mitre": "mitre", "slot": "slot for a spline in the mitre",
         "clip": "corner clipped at 45°, when the blank is cut",
         "bevel": "bevel along the outer edge",
         "cutout": "opening, right through"}  # fmt: skip
_SLANTED = {"mitre": "45°, the long point at the datum edge",
            "bevel": "45°, over the whole thickness: the long point is behind"}  # fmt: skip
_LISTED = ("slide", "front screw", "pull play", "panel screw")
"""Holes that are told by each of their distances."""


def edge_words(part: Part) -> str:
    """What is done to the edges: 'band the front edge', 'band all four edges'."""
    by_kind: dict[str, list[str]] = {}
    for edge in part.edges:
        by_kind.setdefault(_TREAT[edge.kind], []).append(plane_word(part, edge.edge))
    words = []
    for verb, planes in by_kind.items():
        where = "all four edges" if len(planes) == len(_PLANES) else f"the {' and '.join(planes)}"
        words.append(f"{verb} {where}")
    return "; ".join(words) or "edges stay bare"


def place_titles(room: Room) -> dict[str, str]:
    """Names in words of all that parts belong to: cases by key, runs by `run.<key>`."""
    titles = {case.key: case.spec.title for case in room.cases}
    return titles | {f"run.{run.spec.key}": run.spec.title for run in room.runs}


def feature_name(part: Part, feature: Feature) -> str:
    """What a feature is and where it runs."""
    if isinstance(feature, Bores):
        if feature.kind == "pocket" and feature.toward is not None:
            return f"{len(feature.places)} pockets toward the {plane_word(part, feature.toward)}"
        count = len(feature.places)
        names = {
            "shelf pins": f"{count} shelf-pin holes",
            "hinge cup": "hinge cup",
            "hinge plate": f"{count} holes for the hinge plate",
            "pull": f"{count} pull hole{'s' if count > 1 else ''}",
            "slide": f"{count} pilot holes for the slide",
            "slide hook": "hook hole",
            "front screw": f"{count} holes for the screws of the front",
            "pull play": f"{count} holes, with play, for the screws of the pull",
            "panel screw": f"{count} pilot holes for the appliance's screws",
        }
        return names.get(feature.kind, feature.kind)
    along = "along the length" if feature.runs == "l" else "across the width"
    if feature.kind in _CUTS:
        return _CUTS[feature.kind]
    if feature.kind == "notch":
        return "toe notch" if part.role == "side" else "rear notch"
    if feature.edge is not None:
        return f"{feature.kind} in the {plane_word(part, feature.edge)}"
    return f"{feature.kind} {along}"


def at_words(part: Part, feature: Feature, unit: Unit) -> Rich:
    """Where a feature is, from its datum."""
    if isinstance(feature, Cut):
        return _cut_at(part, feature, unit)
    if feature.kind == "hinge plate":
        return _plate_words(part, feature, unit)
    if feature.kind in _LISTED:
        return _listed_words(part, feature, unit)
    first = feature.places[0]
    row: tuple[Inline, ...] = (
        measure_of(first[0], unit), f" from the {plane_word(part, feature.datum_l)}, ",
        measure_of(first[1], unit), f" from the {plane_word(part, feature.datum_w)}",
    )  # fmt: skip
    if len(feature.places) == 1:
        return row
    return unfold(_others(feature, unit), row)


def _listed_words(part: Part, feature: Bores, unit: Unit) -> Rich:
    """Each distance of a row once, from the end and from the edge."""
    found: list[Inline] = []
    for axis, datum in ((0, feature.datum_l), (1, feature.datum_w)):
        dims = {place[axis].value: place[axis] for place in feature.places}
        for number, value in enumerate(sorted(dims)):
            found += [", " if number or axis else "", measure_of(dims[value], unit)]
        found.append(f" from the {plane_word(part, datum)}")
    return tuple(found)


def _cut_at(part: Part, cut: Cut, unit: Unit) -> Rich:
    where = plane_word(part, cut.datum)
    if cut.kind == "slot" and cut.mitred_end is not None:
        end = plane_word(part, cut.mitred_end)
        return (measure_of(cut.at, unit), f" from {where} to its near wall, at the {end}")
    if not cut.at.value:
        return f"at the {where}"
    named = where if cut.edge is not None else f"the {where}"
    return (measure_of(cut.at, unit), f" from {named} to its near wall")


def _plate_words(part: Part, feature: Bores, unit: Unit) -> Rich:
    """A plate by its middle, which a jig is set to, with its two holes either side."""
    (low, line), (high, _) = feature.places[0], feature.places[-1]
    middle = Measure((low.value + high.value) / 2, unit, f"{feature.path}.from_end")
    half = Measure(abs(high.value - low.value) / 2, unit, "hardware.hinge.half_plate_pitch")
    return (
        "middle ", middle, f" from the {plane_word(part, feature.datum_l)}, holes ", half,
        " to either side, ", measure_of(line, unit),
        f" from the {plane_word(part, feature.datum_w)}",
    )  # fmt: skip


def _others(feature: Bores, unit: Unit) -> Rich:
    if feature.pitch is None:
        return "first of the row; "
    pitch = measure_of(feature.pitch, unit)
    if feature.kind != "shelf pins":
        return ("two holes ", pitch, " apart, the first ")
    steps = {
        after[0].value - before[0].value
        for before, after in zip(feature.places, feature.places[1:], strict=False)
    }
    left_out = "some left out, see the drawing; " if steps != {feature.pitch.value} else ""
    return ("first hole of the row, the others ", pitch, f" apart; {left_out}")


def size_words(feature: Feature, unit: Unit) -> Rich:
    """Width and depth of a cut, diameter and depth of a hole."""
    if isinstance(feature, Cut):
        return _cut_size(feature, unit)
    across: tuple[Inline, ...] = ("Ø ", measure_of(feature.diameter, unit))
    if feature.kind == "pocket":
        return "as the jig bores"
    if feature.depth is None:
        return (*across, " right through")
    return (*across, " × ", measure_of(feature.depth, unit), " deep")


def _cut_size(cut: Cut, unit: Unit) -> Rich:
    if cut.kind in _SLANTED:
        return _SLANTED[cut.kind]
    if cut.kind == "clip":
        return (measure_of(cut.width, unit), " from the corner along either edge")
    if cut.kind == "finger":
        return (measure_of(cut.width, unit), " wide, right through")
    if cut.kind == "trim":
        return ("what stands ", measure_of(cut.width, unit), " proud, when the glue is dry")
    if cut.kind == "notch" and cut.end is not None:
        toe = cut.asked_by.endswith(".toe_board")
        between, last = (" high × ", " deep") if toe else (" long × ", " high")
        return (measure_of(cut.width, unit), between, measure_of(cut.end, unit), last)
    found: tuple[Inline, ...] = (
        measure_of(cut.width, unit), " wide × ", measure_of(cut.depth, unit), " deep",
    )  # fmt: skip
    if cut.start is not None or cut.end is not None:
        start = "the datum" if cut.start is None else measure_of(cut.start, unit)
        end = "the far side" if cut.end is None else measure_of(cut.end, unit)
        found = (*found, ", runs from ", start, " to ", end)
    return found


def setup_lines(setup: Setup, unit: Unit) -> Rich:
    """A set-up on one line: tool, fence, depth, bit, passes, stop, then the first-piece check."""
    found: list[Inline] = [Strong(setup.tool)]
    if setup.bit:
        found.append(f": {setup.bit}")
        if setup.bit_size is not None:
            found += [" ", measure_of(setup.bit_size, unit)]
    for word, dim in (
        ("fence or guide", setup.fence),
        ("depth", setup.depth if setup.collar is None else None),
        ("collar", setup.collar),
        ("stop", setup.stop),
    ):
        if dim is not None and dim.value:
            found += [f"; {word} ", Strong(measure_of(dim, unit))]
        elif dim is not None and word == "fence or guide":
            found.append("; flush with the fence")
    if setup.passes > 1:
        found.append(f"; {setup.passes} passes")
    if setup.check_words:
        found.append(f". First piece: {setup.check_words}")
        if setup.check is not None:
            found += [" ", Strong(measure_of(setup.check, unit))]
    found.append(".")
    return tuple(found)
