"""A room with an island in it: two runs face each other, one of them with drawers and a washer."""

from __future__ import annotations

from casewright.job.load import read_job
from casewright.room.build import build
from casewright.room.model import Room

__all__ = ["ISLAND_WORDS", "island_room", "island_text"]

_CASE = 'kind = "base"\ntoe = "plinth"\n'


def island_text(
    *,
    deep: str = "180",
    place: str = 'run = "sinks"\noff = 42\nalong = 40',
    island: str = "",
    unit: str = "in",
    opens: str = "",
    corner: str = "",
    head: str = "",
    island_more: str = "",
) -> str:
    """Text of the job: a run along the west wall, one along the east, a north wall between them.

    Parameters
    ----------
    deep
        Width of the wall between the two.
    place
        What the island's place says.
    island
        More of the island itself.
    opens
        How far the dishwasher's door opens.
    corner
        What is said of both corners.
    """
    size = {"in": ("36", "24", "30", "144"), "mm": ("900", "600", "760", "3600")}[unit]
    wash = f'opens = "{opens}"\n' if opens else ""
    corners = "".join(
        f'[corner.{name}]\nwalls = ["{one}", "{other}"]\n{corner}\n'
        for name, one, other in (("nw", "west", "north"), ("ne", "north", "east"))
    )
    return (
        f'format = 1\nunit = "{unit}"\n{head}[hardware.slide]\nlengths = ["21 in"]\n'
        f'[wall.west]\nwidth = "{size[3]}"\n[wall.north]\nwidth = "{deep}"\n'
        f'[wall.east]\nwidth = "{size[3]}"\n{corners}'
        f'[case.sink]\n{_CASE}width = "{size[0]}"\n'
        f'[case.pots]\n{_CASE}width = "{size[0]}"\ndrawers = 3\n'
        f'[case.pans]\n{_CASE}width = "{size[0]}"\n'
        f'[case.trays]\n{_CASE}width = "{size[2]}"\ndrawers = 3\n'
        f'[case.linen]\n{_CASE}width = "{size[2]}"\n'
        f'[appliance.washer]\nwashes = true\nwidth = "{size[1]}"\n{wash}'
        '[run.sinks]\ncases = ["pots", "washer", "sink"]\non = "west"\nleft = "open"\n'
        'right = "open"\n[run.stoves]\ncases = ["pans"]\non = "east"\nleft = "open"\n'
        f'right = "open"\n{island_more}[run.cooks]\ncases = ["trays", "linen"]\n'
        f'[island.main]\nfront = "cooks"\n{island}[island.main.place]\n{place}\n'
    )  # fmt: skip


def island_room(**changes: str) -> Room:
    """The room of that text."""
    return build(read_job(island_text(**changes), "island.toml"))


ISLAND_WORDS = (
    island_text(
        opens="25",
        place='run = "sinks"\noff = [42, 48]\ncentre = "sink"\nside = "front"\n'
        'floor = ["40", "40 1/8", "40 1/4", "40"]',
        island="length = [62, 70]\n",
        island_more="seams = { pans = 0 }\n",
    )
    + """\
[island.main.solved]
off = "42"
along = "40"
side = "front"
because = "as long as can be"
[heights]
wall_bottom = "54"
wall_height = "36"
because = "all of it closes"
[case.hutch]
kind = "tall"
width = 30
[case.hutch.place]
wall = "north"
off = 0
along = 70
side = "back"
"""
)
"""Every word of a place on the floor, of an island laid out, of heights and of pinned seams."""
