"""Numbers that are read on the real thing, with what each is expected within."""

from __future__ import annotations

from fractions import Fraction

from casewright.dims import Dim, measure_of
from casewright.dims.slack import slack
from casewright.job.defaults import TOOL_ACCURACY
from casewright.job.expectation import allowed_off
from casewright.job.targets import Targets
from casewright.room.model import Room
from casewright.web.shop_lines import line_of
from casewright.web.shop_schema import Line, ShopReading

__all__ = ["Readable"]


class Readable:
    """Says of numbers of a room how they are read."""

    def __init__(self, room: Room) -> None:
        self._room = room
        self._targets = Targets(room)

    def reading(
        self, dim: Dim | None, label: str, *, tool: str = "", go: Line = (), sound: Line = ()
    ) -> ShopReading | None:
        """How a number is read; None where nothing real has this size.

        Parameters
        ----------
        tool
            It is read with; empty: the usual one.
        """
        dim = None if dim is None else self._targets.read_on(dim.path)
        if dim is None:
            return None
        unit = self._room.spec.unit
        tool = tool or ("calliper" if dim.path.endswith("thickness") else "tape")
        planned = dim.value if dim.built is None else dim.wanted
        allowed = allowed_off(slack(dim).worst, self._uncertainty(tool))
        return ShopReading(
            path=dim.path,
            label=label,
            tool=tool,
            planned=line_of(measure_of(dim, unit)),
            planned_mm=_decimal(planned),
            low=_decimal(planned - allowed),
            high=_decimal(planned + allowed),
            go=go,
            sound=sound,
            read=() if dim.built is None else line_of(measure_of(dim, unit)),
        )

    def _uncertainty(self, tool: str) -> Fraction:
        owned = {str(kind): each.sigma for kind, each in self._room.spec.shop.tools.items()}
        usual = {str(kind): each.sigma for kind, each in TOOL_ACCURACY.items()}
        return owned.get(tool, usual[tool])


def _decimal(value: Fraction) -> str:
    return f"{float(value):.4f}"
