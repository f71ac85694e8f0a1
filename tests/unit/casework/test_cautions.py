"""Every operation that can hurt has its own caution, at the very step that shows it.

Which hazard belongs to which operation is common practice of the trade.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

import pytest
from tests.jobs import EXAMPLE_NAMES, example, read

from casewright.casework.cautions import CAUTIONS
from casewright.casework.features import Cut, Feature
from casewright.room.build import build
from casewright.room.model import Room

_OWNED = {
    "": "",
    "everything": '"table saw", "circular saw", "router", "router table", "mitre saw", '
    '"dado stack", "slot cutter", ',
    "no table saw": '"circular saw", "router", ',
}
_JIGS = '"pocket-hole jig", "pin jig", "hinge jig", "drill", "tape", "calliper"'
JOBS = [
    *((name, "") for name in EXAMPLE_NAMES),
    *((name, shop) for name in ("gallery", "gallery_doors", "gallery_frames")
      for shop in list(_OWNED)[1:]),
]  # fmt: skip

# What a caution must speak of, by the tool and what is made with it.
_NAMES: dict[tuple[str, str], str] = {
    ("table saw", "rabbet"): "not come through",
    ("table saw", "groove"): "not come through",
    ("table saw", "finger"): "on end",
    ("table saw", "notch"): "mitre gauge",
    ("table saw", "tongue"): "Rail flat",
    ("table saw", "slot"): "cradle",
    ("table saw", "mitre"): "creeps",
    ("mitre saw", "mitre"): "offcut",
    ("circular saw", "mitre"): "guide",
    ("circular saw", "notch"): "Wait for the blade",
    ("circular saw", "clip"): "guide",
    ("router table", "groove"): "right to left",
    ("router table", "slot"): "45-degree block",
    ("router table", "tongue"): "square block",
    ("router", "dado"): "straightedge",
    ("router", "rabbet"): "straightedge",
    ("router", "finger"): "on end",
    ("router", "lap"): "side by side",
    ("router", "tongue"): "side by side",
    ("router", "mortise"): "narrow edge",
    ("router", "slot"): "narrow edge",
    ("router", "notch"): "small piece",
    ("router", "rebate"): "clockwise",
    ("router", "trim"): "brads",
    ("hinge jig", "hinge cup"): "cup bit",
    ("pocket-hole jig", "pocket"): "comes out of the end",
    ("pin jig", "shelf pins"): "other face",
    ("drill", "pull"): "comes out behind",
    ("drill", "pull play"): "comes out behind",
    ("drill", "front screw"): "comes out behind",
}
_HELD = {"pocket screw": "Clamp", "case screw": "Clamp", "front screw": "Clamp", "brad": "brad",
         "retainer": "glass"}  # fmt: skip


@cache
def made(name: str, shop: str) -> Room:
    """An example as it is made in a shop of other tools."""
    text = example(name)
    if shop:
        head, _, tail = text.partition("[shop]\n")
        rest = tail[tail.index("]") + 1 :] if tail else ""
        text = f"{head}\n[shop]\ntools = [{_OWNED[shop]}{_JIGS}]\n{rest}"
    return build(read(text))


def _told(keys: tuple[str, ...]) -> str:
    return " ".join(CAUTIONS[key] for key in keys)


def _features(room: Room) -> Iterator[Feature]:
    return (feature for part in room.parts for feature in part.features)


@pytest.mark.parametrize(("name", "shop"), JOBS)
def test_every_cut_and_hole_has_a_caution_of_its_own(name: str, shop: str) -> None:
    """Its words are about that cut with that tool, not about tools at large."""
    for feature in _features(made(name, shop)):
        told = _told(feature.setup.cautions)
        assert told, feature.path
        want = _NAMES.get((feature.setup.tool, feature.kind), "")
        assert want.lower() in told.lower(), (feature.path, feature.setup.cautions)
        if isinstance(feature, Cut) and feature.setup.bit.startswith("dado stack"):
            assert "riving knife" in told


@pytest.mark.parametrize(("name", "shop"), JOBS)
def test_every_step_that_drives_hangs_or_routs_warns_of_it(name: str, shop: str) -> None:
    """Screws, brads, glass, the weight of a door, a lid over fingers, a router at a whole box."""
    for case in made(name, shop).cases:
        joints = {joint.path: joint for joint in case.joints}
        doors = {door.path for door in case.doors}
        for step in case.assembly:
            told = _told(step.cautions)
            held = {f.kind for path in step.joints for f in joints[path].fastenings}
            for kind in held:
                assert _HELD.get(kind, "") in told, (step.part, kind)
            if step.part in doors:
                assert "weight" in told, step.part
            if case.spec.lid == "hinged" and step.part == f"{case.key}.lid":
                assert "falls" in told
            for word, warned in (("rout ", "bit's turn"), ("trim what", "bit's turn"),
                                 ("chisel", "chisel")):  # fmt: skip
                assert word not in step.words or warned in told, (step.part, step.words)


def test_no_caution_serves_for_everything() -> None:
    """One that stands beside ten kinds of work says nothing of any of them."""
    used: dict[str, set[tuple[str, str]]] = {}
    for name, shop in JOBS:
        for feature in _features(made(name, shop)):
            for key in feature.setup.cautions:
                used.setdefault(key, set()).add((feature.setup.tool, feature.kind))
    assert max(len(kinds) for kinds in used.values()) <= 5
    shown = {"saw_on_edge", "saw_cradle", "router_on_edge", "saw_finger_jig", "drill_cup"}
    assert shown <= set(used)
