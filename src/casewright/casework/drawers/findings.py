"""What is told of drawers that cannot be made as asked."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.carcase import Opening
from casewright.casework.maker import Maker
from casewright.casework.specs import SlideKind
from casewright.dims import Dim, Origin, tell
from casewright.findings import Finding, Reckoning, Severity

__all__ = [
    "IN_GROOVE", "holes_in_groove", "no_length", "no_partition", "no_roll_outs",
    "side_too_thick", "too_low", "too_narrow",
]  # fmt: skip

_PRACTICE = "common practice"
IN_GROOVE = "hole in the groove"
_LENGTH, _HEIGHT = "slide length", "drawer height"
_THINNEST = Origin("cited", "thinnest pad that is planed", _PRACTICE)


def no_length(maker: Maker, kind: SlideKind, room: Dim) -> Finding:
    """No slides are short enough for the case."""
    own, shortest = maker.reckoning(_LENGTH), maker.house.slide_row(kind, "lengths")[0]
    left, least = own.text(room, "room"), own.text(shortest)
    return Finding(
        rule=_LENGTH,
        severity=Severity.STOP,
        path=maker.place.path,
        says=tell(
            "slides of {}, the shortest there are, do not go into this case: {} is left for them",
            least, left,
        ),
        measured=left.text,
        limit=least.text,
        source=_PRACTICE,
        remedies=(
            tell("a case {} deeper", own.text(shortest - room, "deeper")),
            tell("slides of {} or less, their lengths in the data sheet", left),
        ),
        numbers=own.numbers,
    )  # fmt: skip


def too_low(maker: Maker, path: str, opening: Opening, height: Dim, lowest: Dim) -> Finding:
    """A row too low for a drawer's box."""
    own = maker.reckoning(_HEIGHT, path)
    high, least = own.text(height, "height"), own.text(lowest, "least")
    return Finding(
        rule=_HEIGHT,
        severity=Severity.STOP,
        path=path,
        says=tell(
            "no room for a drawer: the box of {} would be {} high, it takes at least {}",
            opening.name.replace("_", " "), high, least,
        ),
        measured=high.text,
        limit=least.text,
        source=_PRACTICE,
        remedies=(tell("a row {} higher", own.text(lowest - height, "more")), "fewer drawers"),
        numbers=own.numbers,
    )  # fmt: skip


def no_partition(maker: Maker, sizes: tuple[Dim, Dim], limits: tuple[Fraction, Dim]) -> Finding:
    """A mullion that does not hide a partition and the pads beside it.

    Parameters
    ----------
    sizes
        Width of the mullion, thickness of the partition [mm].
    limits
        Thinnest and thickest pad [mm].
    """
    (wide, thick), (thinnest, board) = sizes, limits
    thin = wide.value < thick.value + 2 * thinnest
    rule = "narrow face frame" if thin else "pads behind the frame"
    own = maker.reckoning(rule, maker.path("roll_outs"))
    pad = own.worked("thinnest_pad", thinnest, _THINNEST) if thin else board
    limit = own.text(thick + pad * 2, "limit")
    board_words = tell("thicker than boards of {}", own.text(board, "board"))
    return Finding(
        rule=rule,
        severity=Severity.STOP,
        path=maker.path("roll_outs"),
        says=tell(
            "behind a mullion of {} stands a partition of {}, with a pad at either side that is "
            "planed flush: {} is {}",
            own.text(wide, "mullion"), own.text(thick, "partition"),
            own.text((wide - thick) / 2, "pad"), "too thin to plane" if thin else board_words,
        ),
        measured=own.text(wide).text,
        limit=limit.text,
        source=_PRACTICE,
        remedies=(
            tell("set face_stile to {} or {}", limit, "more" if thin else "less"),
            "no mullion",
            "no roll_outs",
        ),
        numbers=own.numbers,
    )  # fmt: skip


def no_roll_outs(maker: Maker, count: int, lacks: Dim) -> Finding:
    """Roll-outs that do not all go behind their doors."""
    own = maker.reckoning("roll-out room", maker.path("roll_outs"))
    missing, each = own.text(lacks, "missing"), own.text(lacks / count, "each")
    return Finding(
        rule="roll-out room",
        severity=Severity.STOP,
        path=maker.path("roll_outs"),
        says=tell(
            "no room for {} roll-outs behind the doors, clear of their hinges: {} is missing",
            count,
            missing,
        ),
        measured=missing.text,
        source=_PRACTICE,
        remedies=(
            f"{count - 1} roll-outs" if count > 1 else "no roll-outs",
            tell("roll_out_height {} lower in the style", each),
            tell("a case {} taller", missing),
        ),
        numbers=own.numbers,
    )


def too_narrow(maker: Maker, path: str, title: str, length: Dim, least: Dim) -> Finding:
    """A box too narrow to be made."""
    own = maker.reckoning("drawer width", path)
    long, asked = own.text(length), own.text(least, "least")
    return Finding(
        rule="drawer width",
        severity=Severity.STOP,
        path=path,
        says=tell(
            "no room for {}: front and back of its box would be {} long, at least {} is wanted",
            title, long, asked,
        ),
        measured=long.text,
        limit=asked.text,
        source=_PRACTICE,
        remedies=(tell("a case {} wider", own.text(least - length, "wider")),),
        numbers=own.numbers,
    )  # fmt: skip


def side_too_thick(maker: Maker, path: str, thickness: Dim) -> Finding:
    """Sides of a box that concealed slides do not take."""
    own = maker.reckoning("drawer side", path)
    thick, most = own.text(thickness), own.text(maker.house.undermount("thickest"))
    return Finding(
        rule="drawer side",
        severity=Severity.STOP,
        path=path,
        says=tell("the sides of the drawer are {} thick, its slides take at most {}", thick, most),
        measured=thick.text,
        limit=most.text,
        source=_PRACTICE,
        remedies=(
            tell("a sheet {} thick or less for the drawers", most),
            "side-mounted slides",
        ),
        numbers=own.numbers,
    )


def holes_in_groove(own: Reckoning, path: str, words: tuple[str, str, str], sizes: tuple[Dim, Dim],
                    remedies: tuple[str, ...]) -> Finding:  # fmt: skip
    """Holes of a box, by the sheet of its slides, that would run into the bottom's groove.

    Parameters
    ----------
    own
        `Maker.reckoning` of this rule and path.
    words
        Whose holes; which of their edges; which edge of the groove that passes.
    sizes
        That edge of the holes, and that of the groove, above the lower edge of the box [mm].
    """
    hole, groove = (own.text(size, name)
                    for size, name in zip(sizes, ("hole", "groove"), strict=True))  # fmt: skip
    whose, edge, other = words
    return Finding(
        rule=IN_GROOVE,
        severity=Severity.STOP,
        path=path,
        says=tell(
            "holes for {} would run into the groove of the drawer's bottom: {} {} above the edge "
            "of the box, {} {}",
            whose, edge, hole, other, groove,
        ),
        measured=hole.text,
        limit=groove.text,
        source="the sheet of the slides",
        remedies=remedies,
        numbers=own.numbers,
    )  # fmt: skip
