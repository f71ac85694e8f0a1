"""Rooms of one case before a surveyed wall, as a job file tells them."""

from __future__ import annotations

from functools import cache

from tests.jobs import read

from casewright.room.build import build
from casewright.room.model import Room

_CASES = {
    "base": 'kind = "base"\nwidth = 36\n',
    "wall": 'kind = "wall"\nwidth = 36\n',
    "long": 'kind = "base"\nwidth = 60\nheight = 40\ndepth = 34\n',
}


@cache
def before_wall(
    kind: str, wall: str = "", more: str = "", *, width: str = '["100", "100", "100"]',
    right: str = "open",
) -> Room:  # fmt: skip
    """A base case 36 wide, a wall case or a long chest, at the left end of a wall of 100.

    Parameters
    ----------
    kind
        base, wall or long.
    wall
        What else is told of the wall.
    more
        Other sections.
    width
        Readings of the wall.
    right
        What is at the right end of the case; "wall": it stands at the right end of the wall.
    """
    return build(
        read(
            f'format = 1\nunit = "in"\n[case.a]\n{_CASES[kind]}'
            f'[run.r]\ncases = ["a"]\non = "w"\nleft = "open"\nright = "{right}"\n'
            f"{more}\n[wall.w]\nwidth = {width}\n{wall}"
        )
    )


def _fixed(kind: str, bottom: str) -> str:
    thing = f'kind = "{kind}"\nleft = 20\nwidth = 30\nbottom = {bottom}\nheight = 36\n'
    return f"[wall.w.fixed.thing]\n{thing}"


WINDOW = _fixed("window", "42")
OUTLET = '[wall.w.fixed.thing]\nkind = "outlet"\ncentre = 20\nbottom = 16\n'
DOOR = '[way_in.d]\nkind = "door"\nwidth = "31 1/2"\nheight = 79\n'


def falling(fall: str) -> str:
    """A floor that falls so much along the wall."""
    low = f"{{ along = 90, down = {fall} }}"
    return f'stations = [{{ along = 0, down = "40" }}, {low}]\n'


CROWN = """
[stock.crown]
kind = "board"
thickness = "11/16"
width = "3 5/8"
lengths = [96, 144]
[run.r.crown]
moulding = "crown"
drop = "2 7/8"
projection = "2 1/4"
"""


def read_gap(gap: str) -> Room:
    """A base case beside a wall 1 1/2 away, whose gap was read as that, low, middle and high."""
    text = (
        'format = 1\nunit = "in"\n[case.a]\nkind = "base"\nwidth = 36\n'
        f'[run.r]\ncases = ["a"]\nwall = "37 1/2"\nleft = "open"\nright_gap = ["{gap}", '
        f'"{gap}", "{gap}"]\n'
    )
    return build(read(text))


def waving(up: str) -> str:
    """A ceiling that rises from 56 over the level line to so much."""
    high = f'{{ along = 40, down = 40, up = "{up}" }}'
    return f"stations = [{{ along = 0, down = 40, up = 56 }}, {high}]\n"


def under(ceiling: int) -> str:
    """A ceiling so high over the floor."""
    return f"stations = [{{ along = 0, whole = {ceiling} }}]\n"


@cache
def round_corner(
    side: str,
    kind: str = "base",
    *,
    front: str = "slab",
    inner: str = '"none"',
    width: int = 36,
    depth: str = "23 1/4",
) -> Room:
    """A base that ends 1 1/2 before a corner, and a case in the middle of the wall round it.

    Parameters
    ----------
    side
        Width of the second wall: its case of 30 stands half of what is left out of the corner.
    kind, front, depth
        Of the second case.
    inner, width
        Doors of the base in the corner, as a job file has them, and its width.
    """
    return build(
        read(
            f'format = 1\nunit = "in"\n[case.a]\nkind = "base"\nwidth = {width}\n'
            f'front = {inner}\n[case.b]\nkind = "{kind}"\nwidth = 30\nfront = "{front}"\n'
            f'depth = "{depth}"\n[run.r]\ncases = ["a"]\non = "w"\nleft = "open"\n'
            f'right = "wall"\n[run.s]\ncases = ["b"]\non = "side"\n[wall.w]\n'
            f'width = "{width + 1} 1/2"\n[wall.side]\nwidth = "{side}"\n'
            '[corner.c]\nwalls = ["w", "side"]\n'
        )
    )


def corner_case(depth: str, kind: str = "wall", corner: str = 'diagonal = "right"') -> Room:
    """A case in the corner at the right end of its run, and one of that depth round it.

    Parameters
    ----------
    corner
        What makes it a case for the corner.
    """
    width = 24 if kind == "wall" else 45
    return build(
        read(
            f'format = 1\nunit = "in"\n[case.a]\nkind = "{kind}"\nwidth = {width}\n{corner}\n'
            f'[case.b]\nkind = "{kind}"\nwidth = 30\ndepth = {depth}\n'
            '[run.r]\ncases = ["a"]\non = "w"\nleft = "open"\n'
            '[run.s]\ncases = ["b"]\non = "side"\nleft = "corner"\nright = "open"\n'
            "[wall.w]\nwidth = 72\n[wall.side]\nwidth = 96\n"
            '[corner.c]\nwalls = ["w", "side"]\n'
        )
    )


def pulled(edge: str, *, beside: str = "drawers = 3", hinge: str = "left") -> Room:
    """A diagonal base at the right end of its run, drawers beside it at its free edge.

    Parameters
    ----------
    edge
        How far its pull sits from the free edge of its door.
    beside
        What the case beside it in its run has.
    """
    return build(
        read(
            f'format = 1\nunit = "in"\n[style]\npull_edge = "{edge}"\n'
            '[hardware.pull]\ncentres = "96 mm"\nprojection = "1 3/8"\n'
            f'[case.a]\nkind = "base"\nwidth = 36\ndiagonal = "left"\n'
            f'front = {{ hinge = "{hinge}" }}\n'
            f'[case.b]\nkind = "base"\nwidth = 24\n{beside}\n'
            '[run.r]\ncases = ["a", "b"]\non = "w"\nright = "open"\n'
            "[wall.w]\nwidth = 96\n[wall.side]\nwidth = 96\n"
            '[corner.c]\nwalls = ["side", "w"]\n'
        )
    )


def corner(across: str) -> str:
    """A corner at the right end by a triangle of 36, 48 and so much across."""
    return (
        '[wall.side]\nwidth = 90\n[corner.c]\nwalls = ["w", "side"]\n'
        f'triangle = {{ left = 36, right = 48, across = "{across}" }}\n'
    )


def beside_door(free: int) -> str:
    """A wall at the right end with a door 32 wide, so far from the corner, that swings in."""
    return (
        '[wall.side]\nwidth = 90\n[corner.c]\nwalls = ["side", "w"]\n'
        f'[wall.side.fixed.door]\nkind = "door"\nright = {free}\nwidth = 32\nswing = "left"\n'
    )


def counter(down: str) -> str:
    """A counter that stands there already, so far under the level line at its highest place."""
    return (
        'stations = [{ along = 0, down = 40 }]\n[wall.w.fixed.old]\nkind = "counter"\nleft = 0\n'
        f"width = 50\ntops = [{{ along = 2, down = 5 }}, {{ along = 40, down = {down} }}]\n"
    )


@cache
def drawers_beside(
    wide: str, thing: str = "door", *, at: int = 26, more: str = "", front: str = "drawers = 3"
) -> Room:
    """A base of 36 that ends before a corner, and something on the wall round it.

    Parameters
    ----------
    wide
        Width of its wall.
    thing, at
        What is on the wall round the corner, 32 wide, 80 high, and how far out of the corner.
    more
        What else is told of it.
    front
        What closes the base.
    """
    return build(
        read(
            f'format = 1\nunit = "in"\n[case.a]\nkind = "base"\nwidth = 36\n{front}\n'
            '[run.r]\ncases = ["a"]\non = "w"\nleft = "open"\nright = "wall"\n'
            f'[wall.w]\nwidth = "{wide}"\n[wall.side]\nwidth = 90\n'
            f'[wall.side.fixed.thing]\nkind = "{thing}"\nleft = {at}\nwidth = 32\n'
            f"bottom = 0\nheight = 80\n{more}\n"
            '[corner.c]\nwalls = ["w", "side"]\n'
        )
    )


@cache
def cooking(sheet: str = "", *, bottom: int = 54, above: int = 72, cooks: str = "true") -> Room:
    """A base of 36, a cooktop of 30 beside it, a wall case from the wall's left end on.

    Parameters
    ----------
    sheet
        What is told of the cooktop besides.
    bottom
        Height of wall cases.
    above
        Width of the wall case.
    cooks
        Whether it is cooked on.
    """
    return build(
        read(
            f'format = 1\nunit = "in"\n[style]\nwall_bottom = {bottom}\n[case.a]\nkind = "base"\n'
            f'width = 36\n[case.b]\nkind = "base"\nwidth = 24\n[case.c]\nkind = "wall"\n'
            f"width = {above}\n[appliance.top]\nwidth = 30\ncooks = {cooks}\n{sheet}"
            '[run.r]\ncases = ["a", "top", "b"]\non = "w"\nleft = "open"\nright = "open"\n'
            '[run.s]\ncases = ["c"]\non = "w"\nleft = "open"\nright = "open"\n'
            "[wall.w]\nwidth = 120\n"
        )
    )


def seats(knees: int = 15) -> Room:
    """Two boxes of 30 with seats behind them."""
    return build(
        read(
            'format = 1\nunit = "in"\n[case.a]\nkind = "base"\nwidth = 30\ntoe = "plinth"\n'
            '[case.b]\nkind = "base"\nwidth = 30\ntoe = "plinth"\n[run.r]\ncases = ["a", "b"]\n'
            f'[island.i]\nfront = "r"\n[style]\nisland_seat_overhang = {knees}\n'
        )
    )


def hooded(wide: int = 36, *, beside: int = 33) -> Room:
    """A cooktop of 30 from 36 on along a wall; over it a hood, beside a wall case.

    Parameters
    ----------
    wide, beside
        Widths of the hood and of the case on its left.
    """
    return build(
        read(
            'format = 1\nunit = "in"\n[case.a]\nkind = "base"\nwidth = 36\n[case.b]\n'
            'kind = "base"\nwidth = 24\n[case.c]\nkind = "wall"\n'
            f"width = {beside}\n[appliance.top]\nwidth = 30\ncooks = true\nclear_above = 30\n"
            "[appliance.liner]\nwidth = 20\nheight = 10\ndepth = 10\nabove_cooking = 27\n"
            'duct = 6\nduct_back = 7\n[case.hood]\nkind = "hood"\nappliance = "liner"\n'
            f'over = "top"\nwidth = {wide}\n'
            '[run.r]\ncases = ["a", "top", "b"]\non = "w"\nleft = "open"\nright = "open"\n'
            '[run.s]\ncases = ["c", "hood"]\non = "w"\nleft = "open"\nright = "open"\n'
            "[wall.w]\nwidth = 120\n"
        )
    )


@cache
def galley(wide: str, *, second: str = "", unit: str = "in") -> Room:
    """Two bases of 36 that face each other over a room so wide [in].

    Parameters
    ----------
    second
        What else is told of the second run: after what it begins.
    """
    return build(
        read(
            f'format = 1\nunit = "{unit}"\n[case.a]\nkind = "base"\nwidth = "36 in"\n'
            'front = "none"\n[case.b]\nkind = "base"\nwidth = "36 in"\nfront = "none"\n'
            '[run.r]\ncases = ["a"]\non = "w"\nleft = "open"\nright = "wall"\n'
            f'[run.s]\ncases = ["b"]\non = "e"\nleft = "open"\nright = "open"\n{second}'
            f'[wall.w]\nwidth = "37 1/2 in"\n[wall.n]\nwidth = "{wide} in"\n'
            '[wall.e]\nwidth = "100 in"\n'
            '[wall.e.fixed.old]\nkind = "tall case"\nleft = "0 in"\nwidth = "40 in"\n'
            '[corner.c]\nwalls = ["w", "n"]\n[corner.d]\nwalls = ["n", "e"]\n'
        )
    )


@cache
def glass_beside(
    door: int, *, width: int = 36, height: int = 39, bottom: int = 54, glazing: str = "glass"
) -> Room:
    """A wall case with glass doors at the left end of a wall, and a room's door so far along it.

    Parameters
    ----------
    width, height, bottom, glazing
        Of the case, how high it hangs [in], and the key of its panes' stock.
    """
    return build(
        read(
            f'format = 1\nunit = "in"\n[style]\nwall_bottom = {bottom}\n[case.a]\n'
            f'kind = "wall"\nwidth = {width}\nheight = {height}\n'
            f'front = {{ construction = "glass frame", glazing = "{glazing}" }}\n'
            '[run.r]\ncases = ["a"]\non = "w"\nleft = "open"\nright = "open"\n'
            f'[wall.w]\nwidth = 150\n[wall.w.fixed.door]\nkind = "door"\nleft = {door}\n'
            "width = 32\n"
        )
    )


@cache
def landing(
    beside: int, what: str = "cooks = true", *, right: str = "open", sink: str = ""
) -> Room:
    """A base of 36, something 30 wide, a base so wide [in].

    Parameters
    ----------
    what
        What is told of the thing between: cooked on, or higher than the counter.
    right
        What stands at the right end, where a wall is 110 in from the other one.
    sink
        What is told of the last base, which may hold a bowl.
    """
    wall = "" if right == "open" else "wall = 110\n"
    return build(
        read(
            'format = 1\nunit = "in"\n[case.a]\nkind = "base"\nwidth = 36\n[case.b]\n'
            f'kind = "base"\nwidth = {beside}\n{sink}[appliance.top]\n'
            f"width = 30\n{what}\n"
            f'[run.r]\ncases = ["a", "top", "b"]\nleft = "open"\nright = "{right}"\n{wall}'
        )
    )


@cache
def reached(height: str, *, more: str = "", accessible: str = "true") -> Room:
    """A base of drawers so high and 36 in wide, for somebody in a wheelchair.

    Parameters
    ----------
    more
        Other cases.
    """
    return build(
        read(
            f'format = 1\nunit = "in"\naccessible = {accessible}\n[case.a]\nkind = "base"\n'
            f'width = 36\ndrawers = 3\nheight = "{height}"\n{more}'
        )
    )


@cache
def washing(between: int, *, sink_on: str = "w", right: str = "open") -> Room:
    """A dishwasher of 24, a base so wide [in], and a sink base, on the same wall or another.

    The sink's run is on the wall `sink_on`, and ends at its right as `right` says.
    """
    return build(
        read(
            'format = 1\nunit = "in"\n[case.a]\nkind = "base"\nwidth = 24\n[case.b]\n'
            f'kind = "base"\nwidth = {between}\n[case.s]\nkind = "base"\nwidth = 33\n'
            "sink = true\n[appliance.dish]\nwidth = 24\nwashes = true\n[wall.w]\nwidth = 160\n"
            f'[wall.e]\nwidth = 160\n[run.r]\ncases = ["a", "dish", "b"]\non = "w"\n'
            'left = "open"\nright = "open"\n[wall.w.fixed.mark]\nkind = "radiator"\n'
            f"left = {48 + between - 1}\nwidth = 1\nheight = 1\nbottom = 1\n"
            f'[run.t]\ncases = ["s"]\non = "{sink_on}"\nleft = "open"\nright = "{right}"\n'
            + ('after = "mark"\n' if sink_on == "w" else "")
        )
    )
