"""What an appliance's sheet does not let its panel be, with the numbers and what would help."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from casewright.casework.cases import Front
from casewright.casework.features import Bores
from casewright.casework.maker import Maker
from casewright.casework.specs import PanelSheet
from casewright.dims import Dim, Given, Measure, tell
from casewright.findings import Finding, Reckoning, Severity
from casewright.sources import POUND

__all__ = ["panel_findings"]

_RULE = "appliance panel"
_LEFT = Fraction(1, 6)
"""Of the thickness of what a screw is driven into, left before its point (common practice)."""


def panel_findings(
    maker: Maker, sheet: PanelSheet, weight: Dim, front: Front, *, upper: bool = False
) -> Iterator[Finding]:
    """Limits of the sheet that the panel does not keep, and what they take from its looks.

    Parameters
    ----------
    weight
        Of the panel [kg].
    upper
        Whether it is over another one: it begins at that one's upper edge, at no line of fronts.
    """
    yield from _no_room(maker)
    if upper:
        yield from _upper_height(maker, sheet, front)
    else:
        yield from _height(maker, sheet, front)
        yield from _raised(maker, sheet)
    yield from _width(maker, sheet, front)
    yield from _thickness(maker, sheet, front)
    yield from _weight(maker, sheet, weight)
    yield from _screws(maker, sheet, front)


def _sums(maker: Maker, word: str) -> Reckoning:
    """Where the numbers of one of its findings are worked out."""
    return maker.reckoning(_RULE, maker.path(word))


def _finding(
    maker: Maker,
    own: Reckoning,
    severity: Severity,
    says: str,
    sizes: tuple[Measure, Measure],
    *remedies: str,
) -> Finding:
    measured, limit = (size.text for size in sizes)
    source = f"the sheet of {maker.spec.title}"
    return Finding(
        _RULE, severity, maker.spec.key, says, measured, limit, source, remedies, own.numbers
    )


def _no_room(maker: Maker) -> Iterator[Finding]:
    """Lines, gaps and limits that leave less than can be made."""
    nodes = maker.house.chain.nodes
    for word in ("width", "height"):
        own, wanted = _sums(maker, f"no_{word}"), f"wanted_{word}"
        left, least = nodes[maker.path(f"{wanted}_left")], nodes[maker.path(f"least_{wanted}")]
        if left.value < least.value:
            told, asked = own.text(left), own.text(least)
            more = own.text(least - left, "more")
            yield _finding(
                maker, own, Severity.STOP,
                tell(
                    "no room for {}: what is left of its {} is {}, and less than {} is not made",
                    maker.spec.title, word, told, asked,
                ),
                (told, asked),
                tell("{} more of {} for it", more, word), "no panel on this appliance",
            )  # fmt: skip


def _too_low(maker: Maker, sheet: PanelSheet, front: Front, helps: str) -> Iterator[Finding]:
    """A panel under the least height of its sheet; `helps`, by what is missing."""
    own, least = _sums(maker, "too_low"), sheet.least_height
    if least is not None and front.height.value < least.value:
        low = maker.number("least_height", least)
        high, asked = own.text(front.height), own.text(low)
        missing = own.text(low - front.height, "missing")
        yield _finding(
            maker, own, Severity.STOP,
            tell(
                "{} would be {} high, and the sheet wants at least {}: {} is missing",
                maker.spec.title, high, asked, missing,
            ),
            (high, asked), tell(helps, missing),
            "another appliance, or its sheet read again",
        )  # fmt: skip


def _height(maker: Maker, sheet: PanelSheet, front: Front) -> Iterator[Finding]:
    yield from _too_low(maker, sheet, front, "a toe space {} lower beside it")
    yield from _off_the_line(
        maker, sheet, "height",
        "{} ends {} above the line of the fronts beside it: its sheet lets it be {} high, from "
        "line to line it is {}",
        ("a toe space {} higher beside it", "leave the step: the toe board shows below it"),
    )  # fmt: skip


def _upper_height(maker: Maker, sheet: PanelSheet, front: Front) -> Iterator[Finding]:
    """The height of the upper one of two panels, by its own limits."""
    helps = "line {} lower, if its sheet parts the doors there"
    yield from _too_low(maker, sheet, front, helps)
    yield from _off_the_line(
        maker, sheet, "upper_height",
        "{} begins {} higher over the lower one than apart says: its sheet lets it be {} high, "
        "and up to the upper line of the fronts beside it there is room for {}",
        ("line {} higher, if its sheet parts the doors there",
         "leave the step: the edge of its door shows below it"),
    )  # fmt: skip


def _off_the_line(
    maker: Maker, sheet: PanelSheet, word: str, says: str, helps: tuple[str, str]
) -> Iterator[Finding]:
    """A panel that may not be as high as from line to line.

    Parameters
    ----------
    word
        Under which its sums stand.
    says
        With places for the panel, the step, what the sheet lets it be, and from line to line.
    helps
        The first with a place for the step.
    """
    between = maker.house.chain.nodes[maker.path("between_lines")]
    most = sheet.most_height
    if most is None or most.value >= between.value:
        return
    own, high = _sums(maker, word), maker.number("most_height", most)
    step, lets, line = own.text(between - high, "step"), own.text(high), own.text(between)
    by_step, or_else = helps
    yield _finding(
        maker, own, Severity.CARE, tell(says, maker.spec.title, step, lets, line), (line, lets),
        tell(by_step, step), or_else,
    )  # fmt: skip


def _raised(maker: Maker, sheet: PanelSheet) -> Iterator[Finding]:
    """What has to stay free below it takes it off the line of the fronts beside it."""
    step = maker.house.chain.nodes.get(maker.path("step_1"))
    if sheet.free_below is None or step is None or step.value <= maker.style("gap").value:
        return
    own = _sums(maker, "raised")
    free, off = own.text(maker.number("free_below", sheet.free_below)), own.text(step)
    yield _finding(
        maker, own, Severity.CARE,
        tell(
            "{} begins {} above the line of the fronts beside it: its sheet keeps {} above the "
            "floor free",
            maker.spec.title, off, free,
        ),
        (off, free),
        tell("a toe space {} higher beside it", off),
        "leave the step: a vent is never covered",
    )  # fmt: skip


def _width(maker: Maker, sheet: PanelSheet, front: Front) -> Iterator[Finding]:
    most = sheet.most_width
    between = maker.house.chain.nodes[maker.path("between_gaps")]
    if most is None or most.value >= between.value:
        return
    own, wide = _sums(maker, "width"), maker.number("most_width", most)
    less, lets = own.text(between - wide, "less"), own.text(wide)
    half = own.text((between - wide) / 2, "half")
    yield _finding(
        maker, own, Severity.CARE,
        tell(
            "{} is {} narrower than its opening and gaps want: its sheet lets it be {} wide",
            maker.spec.title, less, lets,
        ),
        (own.text(between), lets),
        tell("an opening {} narrower, if the appliance still goes in", less),
        tell("a strip {} wide on the edge of the case at each side", half),
    )  # fmt: skip


def _thickness(maker: Maker, sheet: PanelSheet, front: Front) -> Iterator[Finding]:
    own, thick = _sums(maker, "thickness"), front.thickness
    for name, word, short in (
        ("least_thickness", "at least", 1),
        ("most_thickness", "at most", -1),
    ):
        given = getattr(sheet, name)
        if given is None or (given.value - thick.value) * short <= 0:
            continue
        limit = maker.number(name, given)
        off = own.text(limit - thick if short > 0 else thick - limit, "off")
        told, asked = own.text(thick), own.text(limit)
        yield _finding(
            maker, own, Severity.STOP,
            tell("{} is {} thick, and its sheet wants {} {}", maker.spec.title, told, word, asked),
            (told, asked),
            tell("a sheet {} {} for its slab", off, "thicker" if short > 0 else "thinner"),
            "the thickness of the sheet read again",
        )  # fmt: skip


def _weight(maker: Maker, sheet: PanelSheet, weight: Dim) -> Iterator[Finding]:
    most = sheet.most_weight
    if most is None or weight.value <= most.value:
        return
    share = round((1 - most.value / weight.value) * 100 + Fraction(1, 2))
    own = _sums(maker, "weight")
    weighs = own.said(weight, _kilograms(maker, weight.value), "own_weight")
    carry = own.said(own.given(maker.path("most_weight"), most, 0),
                     _kilograms(maker, most.value), "weight")  # fmt: skip
    yield _finding(
        maker, own, Severity.STOP,
        tell(
            "{} would weigh {}, and the springs of its door carry {} by its sheet",
            maker.spec.title, weighs, carry,
        ),
        (weighs, carry),
        f"a slab {share} % lighter: thinner, or of a lighter sheet",
        "springs for a heavier panel, where its maker has them",
    )  # fmt: skip


def _kilograms(maker: Maker, weight: Fraction) -> str:
    kilos = f"{_tenths(weight)} kg"
    return kilos if maker.house.unit == "mm" else f"{_tenths(weight / POUND)} lb ({kilos})"


def _tenths(number: Fraction) -> str:
    whole, tenth = divmod(round(number * 10), 10)
    return f"{whole}.{tenth}"


def _screws(maker: Maker, sheet: PanelSheet, front: Front) -> Iterator[Finding]:
    """Screws that miss the panel, come through its face, or meet the holes of its pull."""
    if not sheet.screw_rows or sheet.screws_apart is None or sheet.screw_depth is None:
        return
    yield from _beside(maker, sheet, sheet.screws_apart, front)
    own = _sums(maker, "screw_depth")
    deep = maker.number("screw_depth", sheet.screw_depth)
    slab = maker.parts[front.parts[0]].finished.thickness
    most = slab * (1 - _LEFT)
    if deep.value > most.value:
        go = own.text(deep)
        yield _finding(
            maker, own, Severity.STOP,
            tell(
                "screws that go {} into {} come through its face or show in it: its slab is {}",
                go, maker.spec.title, own.text(slab),
            ),
            (go, own.text(most, "most")),
            tell("screws {} shorter", own.text(deep - most, "shorter")),
            "a thicker slab, if its sheet lets it",
        )  # fmt: skip
    yield from _at_the_pull(maker, sheet, front)


def _beside(maker: Maker, sheet: PanelSheet, apart: Given, front: Front) -> Iterator[Finding]:
    """Rows of screws that reach past the panel's lower end or its edges."""
    pilot = maker.style("panel_pilot")
    reach = max(
        (maker.number(f"screw_row_{n}", row) for n, row in enumerate(sheet.screw_rows, 1)),
        key=lambda row: row.value,
    )  # fmt: skip
    for size, whole, edges, words in (
        (reach, front.height, 1, ("screw_rows", "high")),
        (maker.number("screws_apart", apart), front.width, 2, ("screws_apart", "wide")),
    ):
        room = whole - pilot * edges
        if size.value > room.value:
            own = _sums(maker, words[0])
            less = own.text(size - room, "less")
            yield _finding(
                maker, own, Severity.STOP,
                tell(
                    "screws of the brackets would miss {}: {} takes them to {}, and it is {} {}",
                    maker.spec.title, words[0], own.text(size), own.text(whole), words[1],
                ),
                (own.text(size), own.text(room, "room")),
                tell("{} {} less, if its sheet has other holes", words[0], less),
                "its sheet read again",
            )  # fmt: skip


def _at_the_pull(maker: Maker, sheet: PanelSheet, front: Front) -> Iterator[Finding]:
    """A row of screws at the height of the pull's holes may run into them."""
    if not front.pull or sheet.screws_apart is None:
        return
    half = sheet.screws_apart.value / 2
    need = maker.house.pull("hole") / 2 + maker.style("panel_pilot") / 2
    holes = list(_pull_holes(maker, front))
    upright = len({height.value for height, _ in holes}) > 1
    words = "pull_end" if upright else "panel_pull"
    for number, row in enumerate(sheet.screw_rows, start=1):
        up = front.height - maker.number(f"screw_row_{number}", row)
        near = [height for height, across in holes if abs(abs(across) - half) < need.value
                and abs(up.value - height.value) < need.value]  # fmt: skip
        if not near:
            continue
        pull = near[0]
        moved = need - (up - pull if up.value >= pull.value else pull - up)
        own = _sums(maker, f"pull_{number}")
        yield _finding(
            maker, own, Severity.STOP,
            f"a screw of the brackets of {maker.spec.title} meets a hole of its pull",
            (own.text(need - moved, "apart"), own.text(need, "need")),
            tell("{} {} more or less in the style", words, own.text(moved, "moved")),
            "a pull of other centres",
        )  # fmt: skip


def _pull_holes(maker: Maker, front: Front) -> Iterator[tuple[Dim, Fraction]]:
    """Holes of the pull: above the panel's lower end, and off its middle [mm]."""
    for bores in maker.parts[front.parts[0]].features:
        if not isinstance(bores, Bores) or bores.kind != "pull":
            continue
        for along, across in bores.places:
            up = along if bores.datum_l == "l0" else front.height - along
            yield up, across.value - front.width.value / 2
