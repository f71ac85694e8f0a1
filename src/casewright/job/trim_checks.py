"""Trims that have no meaning: stock that is not there, cases they cannot be fitted to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from casewright.job.content import Content, Goods
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.tables import BoardTable, CaseTable, RunTable, SheetTable
from casewright.job.tables.table import Table
from casewright.job.tables.trims import CrownTable, LightRailTable
from casewright.job.trims import USUAL_TRIMS
from casewright.room.run_ends import SIDES
from casewright.room.specs import JobSpec
from casewright.room.trims.corners import met_in_corner

__all__ = ["check_crowns", "check_trims"]

_GOODS: dict[str, dict[str, tuple[tuple[type[Goods], ...], str]]] = {
    "toe_skin": {"sheet": ((SheetTable,), "sheet")},
    "light_rail": {"boards": ((BoardTable,), "board")},
    "scribe_moulding": {"strips": ((BoardTable,), "board")},
    "crown": {"moulding": ((BoardTable,), "board"),
              "backing": ((SheetTable, BoardTable), "sheet or board")},
}  # fmt: skip
_KINDS: dict[str, tuple[tuple[str, ...], str]] = {
    "toe_skin": (("base", "tall"), "only base and tall cases have a toe space"),
    "light_rail": (("wall", "hood"), "only wall cases have their bottoms in sight"),
    "crown": (
        ("wall", "tall", "bookcase", "hood", "surround"),
        "only wall cases, tall cases, bookcases, surrounds and hoods have a crown",
    ),
}


def check_trims(content: Content, reporter: Reporter) -> None:
    """Tell every trim that cannot be fitted to its run."""
    for key, run in content.runs.items():
        for trim in _GOODS:
            table: Table | None = getattr(run, trim)
            if table is not None:
                _stock(trim, table, ("run", key, trim), content, reporter)
                for what, want in _unfit(trim, run, content):
                    reporter.tell(("run", key, trim), what, want)
            if isinstance(table, CrownTable | LightRailTable):
                hoods = [each for each in run.cases if _is_hood(each, content)]
                for name in table.at:
                    if name not in hoods and ("case", name) not in content.lost:
                        what = f"no hood {name} stands in this run"
                        reporter.unknown(("run", key, trim, "at", name), name, hoods, what)
        _ends(key, run, reporter)
        _heights(key, run, content, reporter)


def _is_hood(key: str, content: Content) -> bool:
    return key in content.cases and content.cases[key].kind == "hood"


def _stock(trim: str, table: Table, path: KeyPath, content: Content, reporter: Reporter) -> None:
    for name, (kind, word) in _GOODS[trim].items():
        stock: str = getattr(table, name) or USUAL_TRIMS[trim, name]
        goods = content.stock.get(stock)
        fitting = [key for key, each in content.stock.items() if isinstance(each, kind)]
        if ("stock", stock) in content.lost:
            continue
        if goods is None:
            reporter.unknown((*path, name), stock, fitting, f"there is no stock {stock}")
        elif not isinstance(goods, kind):
            what = f"{stock} is no {word}, here one is needed"
            reporter.unknown((*path, name), stock, fitting, what)


def _unfit(trim: str, run: RunTable, content: Content) -> Iterator[tuple[str, str]]:
    """What of the cases does not go with a trim, and what would."""
    word = trim.replace("_", " ")
    cases = {key: content.cases[key] for key in run.cases if key in content.cases}
    kinds, why = _KINDS.get(trim, ((), ""))
    other = [key for key, case in cases.items() if kinds and case.kind not in kinds]
    if other:
        yield f"case {other[0]} takes no {word}: {why}", "take it out, or part the run there"
    if trim in ("crown", "light_rail"):
        yield from _beside_hoods(trim, run, cases)
        cases = {key: case for key, case in cases.items() if case.kind != "hood"}
    for name in _ALIKE.get(trim, ()):
        sizes = {getattr(case, name) for case in cases.values()}
        if len(sizes) > 1:
            yield (
                f"the cases of this run differ in {name}, and one {word} goes along all of them",
                f"give them one {name}, or part the run where it changes",
            )
    if trim == "toe_skin":
        yield from _toe_spaces(run, content)
    skirted = [key for key, case in cases.items() if case.skirt is not None]
    if trim == "light_rail" and skirted:
        want = "take one of the two out"
        yield f"case {skirted[0]} has a skirt where the light rail would be", want


_ALIKE = {"light_rail": ("depth",), "crown": ("depth", "height", "kind"), "toe_skin": ("depth",)}


def _beside_hoods(
    trim: str, run: RunTable, cases: Mapping[str, CaseTable]
) -> Iterator[tuple[str, str]]:
    """Stretches of a trim between hoods; of a crown one goes on over a hood in line with it."""
    table = run.crown if trim == "crown" else run.light_rail
    hoods = [case.kind == "hood" for case in cases.values()]
    if trim == "light_rail" and hoods and all(hoods):
        yield "a hood takes no light rail: it goes under the cases beside it", "take it out"
    parted = sum(not own and (not n or hoods[n - 1]) for n, own in enumerate(hoods)) or 1
    read = 0 if table is None else len(table.as_built)
    if read > parted or (trim == "light_rail" and 0 < read < parted):
        word = trim.replace("_", " ")
        what = f"the {word} has {parted} stretches beside hoods, {read} are read here"
        yield what, "write one length for each in as_built, from the left"


def _toe_spaces(run: RunTable, content: Content) -> Iterator[tuple[str, str]]:
    cases = {key: content.cases[key] for key in run.cases if key in content.cases}
    read = len(run.toe_skin.as_built) if run.toe_skin is not None else 0
    stretches = _stretches(run, content)
    if read not in (0, stretches):
        what = f"the toe space has {stretches} stretches between appliances, {read} are read here"
        yield what, "write one length for each in as_built, from the left"
    bare = [key for key, case in cases.items() if case.toe == "none"]
    if bare:
        yield f"case {bare[0]} has no toe space", 'take toe = "none" out, or the toe skin'
    styled = {
        tuple(getattr(case.style, name, None) for name in ("toe_height", "toe_setback"))
        for case in cases.values()
    }
    if len(styled) > 1:
        yield (
            "the toe spaces of this run differ, and one toe skin goes along all of them",
            "give them one toe_height and one toe_setback, or part the run there",
        )


def _stretches(run: RunTable, content: Content) -> int:
    """How many times cases stand side by side with no appliance between them."""
    kinds = [key in content.appliances for key in run.cases]
    return sum(not own and (not n or kinds[n - 1]) for n, own in enumerate(kinds))


def _heights(key: str, run: RunTable, content: Content, reporter: Reporter) -> None:
    """Cases that are to reach up to a crown hang, and at least one names no height."""
    if run.crown is None or not run.crown.sets_height:
        return
    path = ("run", key, "crown", "sets_height")
    cases = [content.cases[each] for each in run.cases if each in content.cases]
    cases = [case for case in cases if case.kind != "hood"]
    if any(case.kind != "wall" for case in cases):
        reporter.tell(path, "only wall cases reach up to a crown", "take it out")
    elif not cases:
        what = "a hood is as high as its sheets and its own height say, and reaches up to no crown"
        reporter.tell(path, what, "take it out")
    elif all(case.height is not None for case in cases):
        what = "every case of this run has a height of its own"
        reporter.tell(path, what, "take the heights out, or this line")
    elif not run.crown.to_ceiling:
        what = "a crown that stands free sets no height"
        reporter.tell(path, what, "take to_ceiling = false out, or this line")


def _ends(key: str, run: RunTable, reporter: Reporter) -> None:
    """What is read or put at an end that is not there."""
    closed = "wall" if run.wall or run.on else "open"
    for side in SIDES:
        end = (run.left if side == "left" else run.right) or closed
        is_open = end == "open"
        if run.scribe_moulding is not None and side in run.scribe_moulding.ends and not is_open:
            what = f"the {side} end stands against a wall: a filler closes it"
            if end == "flush":
                what = f"the {side} end stands flush: no joint is left to cover"
            reporter.tell(("run", key, "scribe_moulding", "ends"), what, f"take {side} out")
        for trim in ("light_rail", "crown"):
            table: Table | None = getattr(run, trim)
            read = table is not None and getattr(table, f"{side}_return") is not None
            if read and end not in ("open", "flush"):
                what = f"nothing returns to the wall at the {side} end: it is closed"
                reporter.tell(("run", key, trim, f"{side}_return"), what, "take it out")
        gap = run.left_gap if side == "left" else run.right_gap
        if gap is not None and end in ("open", "flush"):
            what = f"no filler closes the {side} end: it is {end}"
            reporter.tell(("run", key, f"{side}_gap"), what, "take it out")


def check_crowns(spec: JobSpec, reporter: Reporter) -> None:
    """Tell crowns that meet in a corner and are not of one moulding."""
    for run in spec.runs:
        for side in SIDES:
            crown = run.trims.crown
            other = met_in_corner(spec, run, side) if crown is not None else None
            met = other.trims.crown if other is not None else None
            if crown is None or met is None:
                continue
            own = (crown.stock, crown.drop.value, crown.projection.value)
            if own != (met.stock, met.drop.value, met.projection.value):
                what = "this crown meets one of another moulding in a corner"
                want = "give both one moulding, drop and projection"
                reporter.tell(("run", run.key, "crown"), what, want)
