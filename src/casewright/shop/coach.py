"""What to move on a tool when a test piece comes out off its number."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

__all__ = ["Axis", "Lean", "Setting", "TestCut", "leans", "move_words"]

Axis = Literal["depth", "place", "width", "lap over the case"]
"""What a setting decides: how deep a cut goes, how far it lies from its datum, how wide it is, how
far a door laps over its case."""

_LEAST_SETTINGS = 3
_COVER = 2


@dataclass(frozen=True, slots=True)
class Setting:
    """How a tool is set.

    Parameters
    ----------
    tool
        Its kind.
    bit
        Bit or blade in words.
    passes
        Passes side by side [-].
    by_stop
        Whether a stop decides the place, and no fence.
    """

    tool: str
    bit: str = ""
    passes: int = 1
    by_stop: bool = False


def move_words(setting: Setting, axis: Axis, off: Fraction, size: str) -> str:
    """What to move, in words; 'raise the blade 1/64'.

    Parameters
    ----------
    off
        How far the cut is over its number (under it: negative), not 0 [mm].
    size
        By how much to move, in words.
    """
    match axis:
        case "depth":
            return _depth(setting, size, too_deep=off > 0)
        case "place":
            return _place(setting, size, too_far=off > 0)
        case "width":
            return _width(setting, size, too_wide=off > 0)
        case _:
            edge = "nearer to" if off > 0 else "farther from"
            turn = "back" if off > 0 else "on"
            return (
                f"move the jig's fence {size}, so that the cup comes {edge} the door's edge; on a "
                f"door that is bored already turn the side screws {size} {turn}"
            )


def _depth(setting: Setting, size: str, *, too_deep: bool) -> str:
    if "saw" in setting.tool:
        return f"{'lower' if too_deep else 'raise'} the blade {size}"
    if "router" in setting.tool:
        return f"set the bit {size} {'shallower' if too_deep else 'deeper'}"
    return f"move the collar {size} {'nearer to' if too_deep else 'farther from'} the tip"


def _place(setting: Setting, size: str, *, too_far: bool) -> str:
    if setting.by_stop:
        return f"move the stop {size} {'nearer to' if too_far else 'away from'} the cut"
    if setting.tool == "table saw":
        return f"move the fence {size} {'towards' if too_far else 'away from'} the blade"
    if setting.tool == "router table":
        return f"move the fence {size} {'forward' if too_far else 'back'}"
    guide = "guide" if setting.tool in ("router", "circular saw") else "jig"
    return f"move the {guide} {size} {'nearer to' if too_far else 'farther from'} the datum"


def _width(setting: Setting, size: str, *, too_wide: bool) -> str:
    if "dado stack" in setting.bit:
        return f"{'take' if too_wide else 'put'} shims of {size} {'out' if too_wide else 'in'}"
    if setting.passes > 1:
        guide = "fence" if "table" in setting.tool else "guide"
        return f"for the last pass move the {guide} {size} {'less' if too_wide else 'more'}"
    if too_wide:
        return f"take a bit or blade that is {size} narrower; it wobbles if it should not be"
    return f"take a second pass, the fence or guide {size} on"


@dataclass(frozen=True, slots=True)
class TestCut:
    """What a test piece showed of a setting.

    Parameters
    ----------
    tool
        Kind of tool.
    axis
        What was measured.
    setting
        Path of the cut or the holes it was set for.
    off
        How far it was over its number [mm].
    """

    __test__ = False  # it is no test of the program

    tool: str
    axis: Axis
    setting: str
    off: Fraction


@dataclass(frozen=True, slots=True)
class Lean:
    """Settings that all came out to the same side: one thing is off that they share.

    Parameters
    ----------
    axis
        What was measured.
    tools
        The tools they were made on.
    count
        How many settings [-].
    off
        Their mean over their numbers [mm].
    """

    axis: Axis
    tools: tuple[str, ...]
    count: int
    off: Fraction

    @property
    def cause(self) -> str:
        """What they share, in words."""
        if len(self.tools) > 1:
            return "the tape or rule that all of them are set by"
        what = {"depth": "the height or depth scale", "place": "the fence's scale"}
        return f"{what.get(self.axis, 'what it is set by')} of the {self.tools[0]}"


def leans(tests: Iterable[TestCut]) -> tuple[Lean, ...]:
    """Where settings lean to one side, by the first test piece of each.

    At least three settings, their mean over twice its standard error (JCGM 100:2008, 4.2, `gum`):
    of one tool, or, where several tools lean alike, of all of them.
    """
    first: dict[tuple[Axis, str], TestCut] = {}
    for test in tests:
        first.setdefault((test.axis, test.setting), test)
    found: list[Lean] = []
    for axis in dict.fromkeys(axis for axis, _ in first):
        own = [test for test in first.values() if test.axis == axis]
        tools = tuple(sorted({test.tool for test in own}))
        groups = {tool: [test for test in own if test.tool == tool] for tool in tools}
        leaning = [_lean(axis, (tool,), group) for tool, group in groups.items()]
        together = _lean(axis, tools, own) if len(tools) > 1 else None
        same = together and all(_mean(group) * together.off > 0 for group in groups.values())
        found.extend([together] if together and same else [each for each in leaning if each])
    return tuple(found)


def _lean(axis: Axis, tools: tuple[str, ...], tests: Sequence[TestCut]) -> Lean | None:
    count = len(tests)
    if count < _LEAST_SETTINGS:
        return None
    mean = _mean(tests)
    variance = sum(((test.off - mean) ** 2 for test in tests), Fraction(0)) / (count - 1)
    if mean**2 * count <= _COVER**2 * variance or not mean:
        return None
    return Lean(axis, tools, count, mean)


def _mean(tests: Sequence[TestCut]) -> Fraction:
    return sum((test.off for test in tests), Fraction(0)) / len(tests)
