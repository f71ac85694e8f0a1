"""What is told of drawers that cannot be made as asked."""

from __future__ import annotations

from fractions import Fraction

from casewright.casework.carcase import Opening
from casewright.casework.maker import Maker
from casewright.casework.specs import SlideKind
from casewright.dims import Dim
from casewright.findings import Finding, Severity

__all__ = [
    "holes_in_groove", "no_length", "no_partition", "no_roll_outs", "side_too_thick", "too_low",
    "too_narrow",
]  # fmt: skip

_PRACTICE = "common practice"


def no_length(maker: Maker, kind: SlideKind, room: Dim) -> Finding:
    """No slides are short enough for the case."""
    shortest = maker.house.slide_row(kind, "lengths")[0]
    text = maker.house.text
    return Finding(
        rule="slide length",
        severity=Severity.STOP,
        path=maker.place.path,
        says=f"slides of {text(shortest)}, the shortest there are, do not go into this case: "
        f"{text(room)} is left for them",
        measured=text(room),
        limit=text(shortest),
        source=_PRACTICE,
        remedies=(
            f"a case {text(shortest - room)} deeper",
            f"slides of {text(room)} or less, their lengths in the data sheet",
        ),
    )


def too_low(maker: Maker, path: str, opening: Opening, height: Dim, lowest: Dim) -> Finding:
    """A row too low for a drawer's box."""
    text = maker.house.text
    return Finding(
        rule="drawer height",
        severity=Severity.STOP,
        path=path,
        says=f"no room for a drawer: the box of {opening.name.replace('_', ' ')} would be "
        f"{text(height)} high, it takes at least {text(lowest)}",
        measured=text(height),
        limit=text(lowest),
        source=_PRACTICE,
        remedies=(f"a row {text(lowest - height)} higher", "fewer drawers"),
    )


def no_partition(maker: Maker, sizes: tuple[Dim, Dim], limits: tuple[Fraction, Dim]) -> Finding:
    """A mullion that does not hide a partition and the pads beside it.

    Parameters
    ----------
    sizes
        Width of the mullion, thickness of the partition [mm].
    limits
        Thinnest and thickest pad [mm].
    """
    text, (wide, thick), (thinnest, board) = maker.house.text, sizes, limits
    thin = wide.value < thick.value + 2 * thinnest
    least = thick.value + 2 * thinnest
    said = Dim("", (), least)
    return Finding(
        rule="narrow face frame" if thin else "pads behind the frame",
        severity=Severity.STOP,
        path=maker.path("roll_outs"),
        says=f"behind a mullion of {text(wide)} stands a partition of {text(thick)}, with a pad "
        f"at either side that is planed flush: {text((wide - thick) / 2)} is "
        + ("too thin to plane" if thin else f"thicker than boards of {text(board)}"),
        measured=text(wide),
        limit=text(said if thin else thick + board * 2),
        source=_PRACTICE,
        remedies=(
            f"set face_stile to {text(said)} or more"
            if thin
            else f"set face_stile to {text(thick + board * 2)} or less",
            "no mullion",
            "no roll_outs",
        ),
    )


def no_roll_outs(maker: Maker, count: int, lacks: Dim) -> Finding:
    """Roll-outs that do not all go behind their doors."""
    return Finding(
        rule="roll-out room",
        severity=Severity.STOP,
        path=maker.path("roll_outs"),
        says=f"no room for {count} roll-outs behind the doors, clear of their hinges: "
        f"{maker.house.text(lacks)} is missing",
        measured=maker.house.text(lacks),
        source=_PRACTICE,
        remedies=(
            f"{count - 1} roll-outs" if count > 1 else "no roll-outs",
            f"roll_out_height {maker.house.text(lacks / count)} lower in the style",
            f"a case {maker.house.text(lacks)} taller",
        ),
    )


def too_narrow(maker: Maker, path: str, title: str, length: Dim, least: Dim) -> Finding:
    """A box too narrow to be made."""
    text = maker.house.text
    return Finding(
        rule="drawer width",
        severity=Severity.STOP,
        path=path,
        says=f"no room for {title}: front and back of its box would be {text(length)} long, "
        f"at least {text(least)} is wanted",
        measured=text(length),
        limit=text(least),
        source=_PRACTICE,
        remedies=(f"a case {text(least - length)} wider",),
    )


def side_too_thick(maker: Maker, path: str, thickness: Dim) -> Finding:
    """Sides of a box that concealed slides do not take."""
    text, most = maker.house.text, maker.house.undermount("thickest")
    return Finding(
        rule="drawer side",
        severity=Severity.STOP,
        path=path,
        says=f"the sides of the drawer are {text(thickness)} thick, its slides take at most "
        f"{text(most)}",
        measured=text(thickness),
        limit=text(most),
        source=_PRACTICE,
        remedies=(f"a sheet {text(most)} thick or less for the drawers", "side-mounted slides"),
    )


def holes_in_groove(maker: Maker, path: str, words: tuple[str, str, str], sizes: tuple[Dim, Dim],
                    remedies: tuple[str, ...]) -> Finding:  # fmt: skip
    """Holes of a box, by the sheet of its slides, that would run into the bottom's groove.

    Parameters
    ----------
    words
        Whose holes; which of their edges; which edge of the groove that passes.
    sizes
        That edge of the holes, and that of the groove, above the lower edge of the box [mm].
    """
    text, (hole, groove) = maker.house.text, sizes
    whose, edge, other = words
    return Finding(
        rule="hole in the groove",
        severity=Severity.STOP,
        path=path,
        says=f"holes for {whose} would run into the groove of the drawer's bottom: {edge} "
        f"{text(hole)} above the edge of the box, {other} {text(groove)}",
        measured=text(hole),
        limit=text(groove),
        source="the sheet of the slides",
        remedies=remedies,
    )
