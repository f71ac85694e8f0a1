"""Whatever a job file may ask for is refused with its reason, told of, or proves.

Cases of every kind over all their allowed sizes, in both hands and both units, of sheets of many
thicknesses, alone and in runs, read from the text a person would write.
"""

from __future__ import annotations

from typing import Literal

from hypothesis import event, given, settings
from hypothesis import strategies as st

from casewright.errors import JobFileError
from casewright.findings import Severity
from casewright.job.load import read_job
from casewright.job.worked import work_out

_Kind = Literal["wall", "base", "tall", "bookcase"]
_FRONTS = ("slab", "applied frame", "glass frame", "frame and panel", "mitred frame", "none")
# Box, thin back, slab, slab under strips, board, strip, glass: as read with a calliper.
_STOCK = {
    "in": ("0.205", "0.748", "0.625", "0.75", "0.1875", "0.125"),
    "mm": ("6.1", "18.2", "16", "20", "5", "4"),
}
_NAMES = ("thin_plywood", "fibreboard", "thin_fibreboard", "board", "strip", "glass")
_HINGE = """[hardware.hinge]
constant = "13 mm"
bore_distance = ["3 mm", "6 mm"]
plate_heights = ["0 mm", "2 mm", "4 mm"]
[hardware.pull]
centres = "96 mm"
"""


class _Writer:
    """Lines of a job file, drawn one by one."""

    def __init__(self, draw: st.DrawFn, unit: str) -> None:
        self.draw, self.unit = draw, unit
        self.lines: list[str] = []

    def chance(self) -> bool:
        return self.draw(st.booleans())

    def one(self, *words: str) -> str:
        return self.draw(st.sampled_from(words))

    def length(self, low: int, high: int) -> str:
        """Between two whole inches, or about as many centimetres and a half."""
        if self.unit == "mm":
            return str(self.draw(st.integers(low * 25, high * 25)))
        whole, part = divmod(self.draw(st.integers(low * 32, high * 32)), 32)
        return f'"{whole} {part}/32"' if part else str(whole)

    def say(self, key: str, value: str) -> None:
        self.lines.append(f"{key} = {value}")

    def perhaps(self, key: str, value: str) -> None:
        if self.chance():
            self.say(key, value)


def _front(writer: _Writer) -> str:
    construction = writer.one(*_FRONTS)
    if construction == "none" or writer.chance():
        return f'"{construction}"'
    more = [f'construction = "{construction}"']
    if writer.chance():
        more.append(f'leaves = 1, hinge = "{writer.one("left", "right")}"')
    elif writer.chance():
        more.append("leaves = 2")
    if writer.chance():
        more.append("pull = false")
    if construction == "frame and panel" and writer.chance():
        more.append(f"mid_rail = {writer.length(6, 40)}")
    if writer.chance():
        more.append(f'overlay = "{writer.one("full", "partial", "inset")}"')
    return f"{{ {', '.join(more)} }}"


def _heights(writer: _Writer, kind: _Kind) -> None:
    """What stands at a height of its own."""
    if kind != "bookcase":
        if writer.chance():
            writer.say("divider", writer.length(12, 40))
            writer.perhaps("upper_front", _front(writer))
            writer.perhaps("upper_shelves", str(writer.draw(st.integers(0, 3))))
        else:
            writer.perhaps("fixed_shelves", f"[{writer.length(3, 40)}]")
    if kind == "wall":
        writer.perhaps("skirt", writer.length(1, 3))
    if kind == "bookcase" or writer.draw(st.integers(0, 5)) == 0:
        writer.perhaps("nosing", writer.length(1, 3))
    if kind != "base":
        writer.perhaps("crown", writer.length(1, 7))


def _rows(writer: _Writer, kind: _Kind) -> None:
    """Rows of a case behind a toe space: drawers, a drawer over doors, rows by name, a sink."""
    bowl = ("sink",) if kind == "base" else ()
    match writer.one("drawers", "top_drawer", "rows", *bowl):
        case "drawers":
            writer.say("drawers", str(writer.draw(st.integers(1, 5))))
            writer.perhaps("top_drawer", writer.length(4, 9))
        case "top_drawer":
            writer.say("top_drawer", writer.length(3, 12))
        case "sink":
            writer.say("sink", "true")
            return
        case _:
            kinds = writer.draw(st.lists(
                st.sampled_from(("drawer", "drawer", "doors", "open")), min_size=1, max_size=4
            ))  # fmt: skip
            high = [
                f" {writer.draw(st.integers(4, 12))} in" if writer.chance() else "" for _ in kinds
            ]
            rows = [f'"{kind}{size}"' for kind, size in zip(kinds, high, strict=True)]
            if writer.chance():
                rows.insert(0, '"false front 6 in"')
            writer.say("rows", f"[{', '.join(rows)}]")
            writer.perhaps("rails", "true")
    _drawers(writer)


def _drawer_over(writer: _Writer, *, may: bool) -> None:
    """One drawer over the door of a blind corner, where there may be one."""
    if may and writer.chance():
        writer.say("top_drawer", writer.length(3, 12))
        _drawers(writer)


def _drawers(writer: _Writer) -> None:
    joint = writer.one("butt", "rabbet", "dado", "box joint")
    slides = writer.one("side-mount", "undermount")
    writer.perhaps("drawer", f'{{ joint = "{joint}", slides = "{slides}" }}')


def _frame(writer: _Writer, *, blind: bool) -> None:
    """A face frame, with what it may have; in a corner its stile stands where a mullion would."""
    writer.say("face", '"face frame"')
    writer.perhaps("face_fixing", f'"{writer.one("pocket screws", "brads")}"')
    if blind:
        pass
    elif writer.chance():
        writer.say("mullion", "true")
    else:
        writer.perhaps("face_joint", '"tenons"')
    writer.perhaps("scribe", f'"{writer.one("left", "right")}"')


def _diagonal(writer: _Writer, key: str, kind: _Kind) -> None:
    """A case across a corner, with legs that leave it a door."""
    writer.lines.append(f"[case.{key}]")
    writer.say("kind", f'"{kind}"')
    deep = 12 if kind == "wall" else 24
    writer.say("width", writer.length(deep + 8, deep + 30))
    writer.say("diagonal", f'"{writer.one("left", "right")}"')
    writer.perhaps("height", writer.length(16, 60))
    writer.perhaps("depth", writer.length(8, deep + 2))
    writer.perhaps("edge", f'"{writer.one("band", "painted")}"')
    if writer.chance():
        writer.say("face", '"face frame"')
        writer.perhaps("face_joint", '"tenons"')
    writer.perhaps(
        "bottom", f'"{writer.one("between", "under") if kind == "wall" else "between"}"'
    )
    if kind == "base":
        writer.perhaps("toe", f'"{writer.one("notch", "plinth", "none")}"')
    if kind == "base" and writer.chance():
        writer.say("sink", "true")
        writer.perhaps("bowl", f"[{writer.length(12, 36)}, {writer.length(12, 24)}]")
    else:
        writer.perhaps("shelves", str(writer.draw(st.integers(0, 4))))
    writer.perhaps("front", _front(writer))


def _toe(writer: _Writer) -> None:
    """What a case stands on: of some other kind, or of the usual one with a register in it."""
    if writer.chance():
        writer.say("toe", f'"{writer.one("notch", "plinth", "none")}"')
    else:
        writer.perhaps("register_opening", f"[{writer.length(2, 9)}, {writer.length(1, 3)}]")


def _case(writer: _Writer, key: str, kind: _Kind) -> None:
    writer.lines.append(f"[case.{key}]")
    writer.say("kind", f'"{kind}"')
    writer.say("width", writer.length(7, 60))
    writer.perhaps("height", writer.length(16, 108))
    writer.perhaps("depth", writer.length(9, 30))
    writer.perhaps("joint", f'"{writer.one("pocket screws", "dado", "rabbet")}"')
    writer.perhaps("back", f'"{writer.one("rabbeted", "grooved", "applied", "inset")}"')
    writer.perhaps("edge", f'"{writer.one("band", "lip", "painted")}"')
    writer.perhaps("pockets", f'"{writer.one("hidden", "plugged")}"')
    seat = kind == "base" and writer.draw(st.integers(0, 4)) == 0
    if seat:
        writer.say("lid", f'"{writer.one("hinged", "fixed")}"')
    blind = kind == "base" and not seat and writer.draw(st.integers(0, 5)) == 0
    if blind:
        writer.say("blind", f'"{writer.one("left", "right")}"')
        writer.perhaps("corner_depth", writer.length(14, 28))
    rowed = kind == "base" and not seat and not blind and writer.chance()
    framed = writer.draw(st.integers(0, 3)) == 0
    framed = framed or (blind and writer.chance())
    stands = kind in ("base", "tall")
    rowed = rowed or (kind == "tall" and writer.chance())
    _drawer_over(writer, may=blind and not framed)
    rolls = stands and not rowed and not blind and writer.chance()
    if rolls:
        writer.say("roll_outs", str(writer.draw(st.integers(1, 4))))
    if rowed:
        _rows(writer, kind)
    else:
        writer.perhaps("shelves", str(writer.draw(st.integers(0, 4))))
    if stands:
        _toe(writer)
    if writer.chance():
        writer.say("finished", f'"{writer.one("left", "right", "both")}"')
        writer.perhaps("end", f'"{writer.one("applied frame", "skin", "flush", "plain")}"')
    writer.perhaps("front", _front(writer))
    if not framed and not blind and (not rowed or writer.chance()):
        _heights(writer, kind)
    elif framed and not rowed and not blind:
        writer.perhaps("divider", writer.length(12, 40))
    _face(writer, framed=framed, blind=blind)


def _face(writer: _Writer, *, framed: bool, blind: bool) -> None:
    if framed:
        _frame(writer, blind=blind)
    elif not blind and writer.draw(st.integers(0, 3)) == 0:
        writer.say("face", '"strips"')


@st.composite
def _jobs(draw: st.DrawFn) -> str:
    """A job of one to three cases of a kind; several stand in a run, before a wall or free."""
    unit = draw(st.sampled_from(("in", "mm")))
    writer = _Writer(draw, unit)
    box = draw(st.integers(600, 790))
    read = f'"0.{box}"' if unit == "in" else str(box * 25 / 1000)
    writer.lines += ["format = 1", f'unit = "{unit}"', "[stock.plywood]", f"measured = {read}"]
    for name, size in zip(_NAMES, _STOCK[unit], strict=True):
        writer.lines += [f"[stock.{name}]", f'measured = "{size}"']
    writer.lines.append(_HINGE)
    kind: _Kind = draw(st.sampled_from(("wall", "base", "tall", "bookcase")))
    keys = "abc"[: draw(st.integers(1, 3))]
    for key in keys:
        across = kind in ("wall", "base") and draw(st.integers(0, 6)) == 0
        (_diagonal if across else _case)(writer, key, kind)
    if len(keys) > 1:
        writer.lines += ["[run.row]", f"cases = {list(keys)}"]
        writer.perhaps("wall", writer.length(20, 180))
    return "\n".join(writer.lines)


@settings(max_examples=100, deadline=None)
@given(_jobs())
def test_what_may_be_written_is_refused_told_of_or_proves(text: str) -> None:
    """No job that is read gives a failed proof."""
    try:
        spec = read_job(text, "drawn.toml")
    except JobFileError:
        event("refused")
        return
    worked = work_out(spec)
    stops = any(finding.severity is Severity.STOP for finding in worked.findings)
    event("told of" if stops else "proves")
    assert worked.failures == ()
