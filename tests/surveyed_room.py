"""A job file with a survey in it: every word a survey may have stands here once."""

from __future__ import annotations

__all__ = ["BESIDE_WINDOW", "SURVEYED_ROOM"]

SURVEYED_ROOM = """\
format = 1
unit = "in"

[wall.window]
title = "window wall"
width = [
    { read = "100 1/4", height = 4 },
    { read = "100 3/8", height = 36, within = "1/8" },
    "100 5/8",
    { read = "100 1/8", height = 36, depth = "front", tool = "laser", sure = true },
]
stations = [
    { along = 0, down = "40", up = "66 1/4", whole = "106 1/4" },
    { along = 20, down = "40 1/8", up = { read = "66 1/8", tool = "laser" } },
    { along = 80, down = "40 1/2", depth = "front" },
]
plumb = [{ of = "left", over = 48, off = "1/8", leans = "in" },
         { of = "face", over = 48, off = "1/4", leans = "out" }]
studs = ["14 1/2", { read = "30 1/2", probed = true }, "46 1/2", "62 5/8"]
hollows = [{ along = "14 1/2", height = 81, off = 0 },
           { along = "30 1/2", height = 81, off = { read = "3/32", tool = "steel rule" } }]
baseboard = { height = "5 1/4", thickness = "3/4" }

[wall.window.fixed.big_window]
kind = "window"
title = "window over the sink"
left = "30 1/4"
width = { read = 40, tool = "steel rule" }
right = "30"
bottom = "42 1/2"
height = 40
top = "82 1/2"
out = "3/4"

[wall.window.fixed.outlet]
kind = "outlet"
centre = "80 1/2"
bottom = "44"

[wall.window.fixed.drain]
kind = "pipe"
left = 2
width = 3
bottom = 16
after = "big_window"

[wall.range]
width = ["132", "132 1/4", "132 3/8"]

[wall.range.fixed.cupboard]
kind = "counter"
left = 0
width = 40
built = false
tops = [{ along = 2, down = 4 }, { along = 30, down = { read = "4 1/8", sure = true } }]

[wall.range.fixed.door]
kind = "door"
right = 10
width = 36
swing = "left"

[corner.right]
title = "the corner at the range"
walls = ["window", "range"]
triangle = { left = 36, right = 48, across = "60 1/4" }
diagonal = "166 1/4"
outside = false

[way_in.front_door]
kind = "door"
title = "front door"
width = "31 1/2"
height = 79

[way_in.stair]
kind = "stair"
width = 36
height = { read = 80, tool = "level" }
landing = 42

[case.pots]
kind = "base"

[case.bench]
kind = "base"
width = 36

[run.below]
cases = ["pots", "bench"]
on = "window"
centre = { bench = "big_window" }
left_filler = "1 1/2"
"""

BESIDE_WINDOW = """
[case.cups]
kind = "wall"

[run.beside_window]
cases = ["cups"]
on = "window"
after = "big_window"
right = "wall"
left = "open"

[case.tins]
kind = "wall"

[run.left_of_window]
cases = ["tins"]
on = "window"
before = "big_window"
right = "open"
"""
"""Two runs of wall cases, on either side of the window."""
