"""A room with an island in it: two runs face each other, one of them with drawers and a washer."""

from __future__ import annotations

from casewright.job.load import read_job
from casewright.room.build import build
from casewright.room.model import Room

__all__ = ["island_room", "island_text"]

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
