"""The example jobs, one case of each kind, worked with pencil and paper.

Formulas: the trade's, as re-derived by placing the parts in space; common practice, no
publication. W, H, D outside width, height, depth; t ply as measured; tb back; the arithmetic
stands beside each size. Sizes go onto the tape's 1/32 in, or 0.5 mm.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from importlib.resources import files

import pytest

from casewright.casework.parts import Part
from casewright.dims import parse_length
from casewright.job.load import read_job
from casewright.room.build import build
from casewright.room.model import Room

BASE = [
    # The least reading 100 1/4 less two fillers of 1 1/2 and the bench of 36: 61 1/4; half 30 5/8.
    # t = (0.703 + 0.706 + 0.702) / 3 = 0.7037; 30 5/8 - 2t = 29.2177, nearest 29 7/32.
    ("pots.bottom", "29 7/32", "23"),  # D 23 1/4 - tb 0.205 - band 1/32 = 23.014, down
    ("pots.side_left", "34 1/2", "23 7/32"),  # 23 1/4 - band 1/32
    ("pots.front_stretcher", "29 7/32", "3 31/32"),  # 4 - band 1/32
    ("pots.rear_stretcher", "29 7/32", "4"),
    ("pots.nailer_top", "29 7/32", "3 1/2"),
    ("pots.toe_board", "29 7/32", "4"),
    ("pots.back", "30 1/2", "29 31/32"),  # 34 1/2 - 4; 29 7/32 + 2 x 3/8
    ("pots.shelf.1", "29 3/32", "22"),  # less 2 x 1/16; 23 1/4 - 7/32 seat - 1 - band 1/32
    ("pots.door_left.slab", "30 3/8", "15 3/16"),  # 30 1/2 - 1/8; (30.626 - 1/8 - 1/8) / 2
    ("pots.door_left.stile_left", "30 3/8", "2 1/4"),
    ("pots.door_left.rail_top", "10 11/16", "2 1/4"),  # 15 3/16 - 2 x 2 1/4
    # Rest 100 1/4 - 2 x 30.626 - 36.001 = 2.997, half 1.498; + scribe 1/4 + lean 3/8 = 2.123, up.
    ("run.window_base.filler_left", "34 1/2", "2 1/8"),
]

STACK = [
    ("seed_tins.side_left", "48", "11 31/32"),
    ("seed_tins.divider", "25 19/32", "11 3/4"),  # 27 - 2t = 25.593; 12 - 0.205 - 1/32, down
    ("seed_tins.back", "48", "26 11/32"),  # 25 19/32 + 2 x 3/8
    ("seed_tins.door_left.slab", "26 15/16", "13 3/8"),  # 27 - 1/16; (27.001 - 1/4) / 2
    ("seed_tins.upper_door_left.stile_left", "20 7/8", "2 1/4"),  # 48 - 27 - 1/16 - 1/16
    ("seed_tins.upper_door_left.rail_top", "13 3/8", "2 1/4"),
    # 20 7/8 - 2 x 2 1/4 + 2 x 3/8 - 2 x 1/16; 13 3/8 likewise
    ("seed_tins.upper_door_left.pane", "17", "9 1/2"),
    ("seed_tins.end_left.rail_bottom", "7 1/2", "2 1/4"),  # 12 - 2 x 2 1/4
    # From the lower doors' top rail to the upper doors' bottom rail: 2 1/4 + 1/8 + 2 1/4.
    ("seed_tins.end_left.rail_middle", "7 1/2", "4 5/8"),
    ("seed_tins.end_left.rail_top", "7 1/2", "2 5/16"),  # 2 1/4 + reveal 1/16
]

SINGLE = [
    ("small_tools.bottom", "16 19/32", "11 3/4"),  # 18 - 2t = 16.593
    ("small_tools.door.slab", "29 15/16", "17 7/8"),  # 30 - 1/16; 18.001 - 2 x 1/16
    ("small_tools.door.rail_top", "13 3/8", "2 1/4"),
]

PLINTH = [
    ("coffee.side_left", "30 1/2", "23 7/32"),  # 34 1/2 - 4
    ("coffee.plinth.sleeper.1", "19 3/32", "4"),  # 23 1/4 - 2 3/4 - 2t = 19.093
    ("coffee.plinth.sleeper.3", "19 3/32", "4"),  # 32 is over 24: one in the middle
]

BOOKCASE = [
    ("catalogues.shelf.3", "29 3/32", "11"),  # 30 - 2t + 2 x 1/4; 11 1/4 - 0.205 - 1/32, down
    ("catalogues.nosing.top", "28 19/32", "1 1/2"),  # 30 - 2t
    ("catalogues.toe_board", "28 19/32", "3 1/2"),
    ("catalogues.back", "74 1/2", "29 11/32"),  # 78 - 3 1/2; 28 19/32 + 2 x 3/8
]

METRIC = [
    # The least reading 1639 - 2 x 38 = 1563, half 781.5; t = (17.8 + 17.9) / 2 = 17.85;
    # 781.5 - 35.7 = 745.8, nearest 746.
    ("tins.bottom", "746", "292.5"),  # 305 - 6.1 - lip 6 = 292.9, down
    ("tins.back", "760", "764"),  # 746 + 2 x 9
    ("tins.door_left.slab", "758.5", "387.5"),  # 760 - 1.5; (781.7 - 3 - 3) / 2 = 387.85, down
    ("machines.bottom", "864.5", "547.5"),  # 900 - 35.7 = 864.3; 560 - 6.1 - 6 = 547.9, down
    ("machines.back", "770", "882.5"),  # 870 - 100; 864.5 + 18
    ("machines.door_left.slab", "767", "447"),  # 770 - 3; (900.2 - 3 - 3) / 2 = 447.1, down
    # 1639 - 2 x 781.7 = 75.6, half 37.8; + scribe 6 + lean 6 = 49.8, up.
    ("run.gable.filler_left", "760", "50"),
]

LANDING = [
    ("landing.shelf.1", "30 19/32", "11 1/8"),  # 31 1/2 - 2 x 0.708 + 1/2 = 30.584
    ("landing.end_right.stile_front", "80", "2 1/2"),
    ("landing.end_right.rail_top", "6 3/8", "2 1/2"),  # 11 3/8 - 2 x 2 1/2
]

WORKED = [
    *(("garden_room.toml", *each) for each in (*BASE, *STACK, *SINGLE, *PLINTH, *BOOKCASE)),
    *(("paint_store_metric.toml", *each) for each in METRIC),
    *(("bookcase.toml", *each) for each in LANDING),
]


@cache
def _room(name: str) -> Room:
    text = (files("casewright.job") / "examples" / name).read_text()
    return build(read_job(text, name))


def _part(room: Room, path: str) -> Part:
    return next(part for part in room.parts if part.path == path)


@pytest.mark.parametrize(("name", "path", "long", "wide"), WORKED)
def test_a_part_is_cut_to_the_size_worked_by_hand(
    name: str, path: str, long: str, wide: str
) -> None:
    """Length and width before the edges are treated."""
    room = _room(name)
    blank = _part(room, path).blank
    unit = room.spec.unit
    assert blank.length.value == parse_length(long, unit)
    assert blank.width.value == parse_length(wide, unit)


def test_every_case_of_the_examples_closes_its_sums() -> None:
    """Sides and what is between them make the width; leaves and gaps make the front."""
    for name in ("garden_room.toml", "paint_store_metric.toml", "bookcase.toml"):
        for case in _room(name).boxes:
            sides = [part for part in case.parts if part.role == "side"]
            bottom = case.part(f"{case.key}.bottom")
            into = sum(
                (f.depth.value for s in sides for f in s.features
                 if f.kind in ("dado", "rabbet") and f.path.endswith("_bottom")),
                Fraction(0),
            )  # fmt: skip
            across = bottom.finished.length.value - into
            assert across + sum(s.finished.thickness.value for s in sides) == case.width.value
            for face in case.faces:
                leaves = [f.width.value for f in case.fronts if f.path in face.leaves]
                gaps = [face.left.value, *(g.value for g in face.gaps), face.right.value]
                assert sum(leaves) + sum(gaps) == case.width.value
