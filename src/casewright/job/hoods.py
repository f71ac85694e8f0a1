"""Hoods as they are written: what they are round and over, and what they cannot have."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from casewright.casework.hood_spec import HoodSpec
from casewright.casework.specs import CaseSpec
from casewright.dims import Given
from casewright.job.content import Content
from casewright.job.origins import Origins
from casewright.job.positions import KeyPath
from casewright.job.problems import Reporter
from casewright.job.supplies import title_of
from casewright.job.tables import CaseTable, SheetTable
from casewright.style import Style

__all__ = ["as_hood", "check_hood"]

_NEVER = (
    "front", "upper_front", "divider", "shelves", "upper_shelves", "fixed_shelves", "drawers",
    "top_drawer", "rows", "roll_outs", "sink", "blind", "lid", "finished", "end", "end_sheet",
    "skirt", "crown", "nosing", "mullion", "scribe",
)  # fmt: skip
"""What no hood has: its face is one panel, and inside it is its liner."""


def as_hood(
    spec: CaseSpec, table: CaseTable, content: Content, origins: Origins, style: Style
) -> CaseSpec:
    """A hood, with what it is round and over; any other case as it is."""
    if table.kind != "hood":
        return spec
    over, key = table.over or "", table.appliance or ""
    cooking, liner = content.appliances.get(over), content.appliances.get(key)

    def of(name: str, appliance: str, value: Fraction | None) -> Given | None:
        return None if value is None else origins.given(value, ("appliance", appliance, name))

    base = _base(over, content, origins, style)
    counter = base.value + style["counter"].value
    high = None if cooking is None else of("height", over, cooking.height)
    duct = None
    if liner is not None and liner.duct is not None:
        sizes = liner.duct * 2 if len(liner.duct) == 1 else liner.duct
        duct = (origins.given(sizes[0], ("appliance", key, "duct")),
                origins.given(sizes[1], ("appliance", key, "duct")))  # fmt: skip
    hood = HoodSpec(
        over=over,
        over_title=title_of(over, cooking.title if cooking else None),
        surface=high if high is not None and high.value > counter else None,
        base=base,
        clear=None if cooking is None else of("clear_above", over, cooking.clear_above),
        liner_clear=None if liner is None else of("above_cooking", key, liner.above_cooking),
        duct=duct,
        duct_back=None if liner is None else of("duct_back", key, liner.duct_back),
        bottom=style["wall_bottom"],
        face_stock=table.face_sheet or "fibreboard",
    )
    return replace(spec, hood=hood, finished=("left", "right"), end="plain", face="frameless")


def _base(over: str, content: Content, origins: Origins, style: Style) -> Given:
    """Height of the highest base case of the run that the cooking appliance stands in [mm]."""
    found = [style["base_height"]]
    for run in content.runs.values():
        if over not in run.cases:
            continue
        tables = [(key, content.cases[key]) for key in run.cases if key in content.cases]
        found = [
            origins.given(table.height, ("case", key, "height"))
            for key, table in tables
            if table.kind == "base" and table.height is not None
        ]
        if len(found) < sum(table.kind == "base" for _, table in tables) or not found:
            found.append(style["base_height"])
    return max(found, key=lambda given: given.value)


def check_hood(key: str, case: CaseTable, content: Content, reporter: Reporter) -> None:
    """Tell what a hood lacks or cannot have, and words of hoods in other cases."""
    base: KeyPath = ("case", key)
    if case.kind != "hood":
        for name in ("over", "face_sheet"):
            if getattr(case, name) is not None:
                reporter.tell((*base, name), f"only a hood has {name}",
                              'take it out, or write kind = "hood"')  # fmt: skip
        return
    for name in _NEVER:
        if getattr(case, name):
            reporter.tell((*base, name), f"a hood has no {name}: one panel closes it",
                          "take it out")  # fmt: skip
    face = case.face or content.boxes.face or "frameless"
    if case.face is not None and face != "frameless":
        reporter.tell((*base, "face"), "on the face of a hood is one panel", "take it out")
    if case.appliance is None:
        reporter.tell((*base, "kind"), "a hood is built round a liner, and none is named",
                      'write appliance = "...", and its [appliance....]')  # fmt: skip
    _over(case, base, content, reporter)
    if case.face_sheet is not None and ("stock", case.face_sheet) not in content.lost:
        sheets = [each for each, goods in content.stock.items() if isinstance(goods, SheetTable)]
        if case.face_sheet not in sheets:
            what = f"{case.face_sheet} is no sheet"
            reporter.unknown((*base, "face_sheet"), case.face_sheet, sheets, what)
    _ends(key, content, reporter)


def _over(case: CaseTable, base: KeyPath, content: Content, reporter: Reporter) -> None:
    """What is cooked on below it: known, cooked on, in a run of base cases."""
    if {("appliance",), ("appliance", case.over or "")} & content.lost:
        return
    cooks = [key for key, table in content.appliances.items() if table.cooks]
    if case.over is None:
        reporter.tell((*base, "kind"), "a hood hangs over what is cooked on, and nothing is named",
                      f"write over = \"{cooks[0] if cooks else '...'}\"")  # fmt: skip
    elif case.over not in content.appliances:
        what = f"there is no appliance {case.over}"
        reporter.unknown((*base, "over"), case.over, cooks or list(content.appliances), what)
    elif case.over not in cooks:
        reporter.tell((*base, "over"), f"{case.over} is not cooked on",
                      f"under [appliance.{case.over}] write cooks = true")  # fmt: skip


def _ends(key: str, content: Content, reporter: Reporter) -> None:
    """A filler is as high as its case: a hood begins higher than the wall beside it wants one."""
    for run_key, run in content.runs.items():
        usual = "wall" if run.wall or run.on else "open"
        for number, name in ((0, "left"), (len(run.cases) - 1, "right")):
            end = getattr(run, name) or usual
            if run.cases[number] == key and end in ("wall", "corner"):
                what = f"at its {name} end a hood hangs: its filler would show below it"
                want = f'write {name} = "open", or a wall case between it and the {end}'
                reporter.tell(("run", run_key, "cases", number), what, want)
