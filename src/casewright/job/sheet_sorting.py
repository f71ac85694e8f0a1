"""Sheets of several thicknesses sorted by case, and written into the job file."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from casewright.breakdown import break_down
from casewright.cutting.engine import Stop
from casewright.dims import Unit, shop_text
from casewright.facts import Facts
from casewright.job.edits import set_value
from casewright.job.load import read_job
from casewright.job.positions import scan
from casewright.job.section_edits import put_section, set_table
from casewright.job.splicing import found_at, parsed
from casewright.resolve import SheetGroup, assigned, grouped
from casewright.room.build import build
from casewright.room.model import Room
from casewright.stock import Sheet

__all__ = ["SheetSorting", "sorted_sheets"]

_WORK = Stop(nodes=2_000)
"""Enough to know how many sheets a stock takes."""

_FILLED = tuple(Fraction(number, 20) for number in range(19, 9, -1))
"""How much of its sheets a group is filled to, tried from the most [-]."""


@dataclass(frozen=True, slots=True)
class SheetSorting:
    """Groups of the sheets of one stock, and what is cut out of each.

    Parameters
    ----------
    stock
        Its key.
    groups
        Thinnest first.
    keys
        Key of the stock that each group has in the file then.
    cases
        By group, keys of the cases cut out of it.
    sheets
        By group, how many sheets the plan takes [-].
    text
        The job file with all of it written in; empty when the sheets do not suffice.
    """

    stock: str
    groups: tuple[SheetGroup, ...]
    keys: tuple[str, ...]
    cases: tuple[tuple[str, ...], ...]
    sheets: tuple[int, ...]
    text: str


def sorted_sheets(text: str, name: str, facts: Facts) -> Iterator[SheetSorting]:
    """Each stock whose sheets were read one by one and differ too much for one case.

    Parameters
    ----------
    text
        Of the job file.
    name
        What messages call it.
    facts
        Those of the record.
    """
    room = build(read_job(text, name), facts)
    for goods in room.spec.stock.values():
        if isinstance(goods, Sheet) and goods.by_sheet:
            groups = grouped(dict(goods.by_sheet), room.spec.style["sheet_spread"].value)
            if len(groups) > 1:
                yield _Sorter(room, goods, groups, text, name, facts).sorting()


class _Sorter:
    """Tries how much each group can take, from the most, and cuts it to know."""

    def __init__(
        self,
        room: Room,
        goods: Sheet,
        groups: tuple[SheetGroup, ...],
        text: str,
        name: str,
        facts: Facts,
    ) -> None:
        self.room, self.goods, self.groups = room, goods, groups
        self.text, self.name, self.facts = text, name, facts
        self.keys = self._keys()
        self.areas = self._areas()
        self.neighbours = [
            (one.key, other.key) for run in room.runs for one, other in run.neighbours
        ]

    def sorting(self) -> SheetSorting:
        """The first trial whose groups suffice; without a text when none does."""
        sheet = self.goods.length_in_hand.value * self.goods.width_in_hand.value
        for filled in _FILLED:
            room = [len(group.names) * sheet * filled for group in self.groups]
            chosen = assigned(self.areas, room, self.neighbours)
            if chosen is None:
                break
            text = self._written(chosen)
            sheets = self._sheets(text)
            if all(n <= len(g.names) for n, g in zip(sheets, self.groups, strict=True)):
                return self._told(chosen, sheets, text)
        return self._told({}, (), "")

    def _told(self, chosen: Mapping[str, int], sheets: tuple[int, ...], text: str) -> SheetSorting:
        cases = tuple(
            tuple(key for key, number in chosen.items() if number == n)
            for n in range(len(self.groups))
        )
        return SheetSorting(self.goods.key, self.groups, self.keys, cases, sheets, text)

    def _keys(self) -> tuple[str, ...]:
        """The group with the most sheets keeps the name."""
        counts = [len(group.names) for group in self.groups]
        first, number, keys = counts.index(max(counts)), 2, list[str]()
        for n in range(len(counts)):
            if n == first:
                keys.append(self.goods.key)
                continue
            while f"{self.goods.key}_{number}" in self.room.spec.stock:
                number += 1
            keys.append(f"{self.goods.key}_{number}")
            number += 1
        return tuple(keys)

    def _areas(self) -> dict[str, Fraction]:
        """Of the cases whose box is of this stock and of which nothing is cut yet [mm squared]."""
        found: dict[str, Fraction] = {}
        for case in self.room.boxes:
            own = [part for part in case.parts if part.stock == self.goods.key]
            fresh = all(part.state == "planned" for part in case.parts)
            if case.spec.box_stock == self.goods.key and own and fresh:
                found[case.key] = sum(
                    (part.blank.length.value * part.blank.width.value for part in own),
                    Fraction(0),
                )
        return found

    def _written(self, chosen: Mapping[str, int]) -> str:
        """The job file with the groups as stocks, and each case cut out of its own."""
        text = self.text
        for key, number in chosen.items():
            if self.keys[number] != self.goods.key:
                text = set_value(text, ("case", key, "sheet"), self.keys[number])
        for key, group in zip(self.keys, self.groups, strict=True):
            lines = self._readings(group)
            if key == self.goods.key:
                text = set_table(text, ("stock", key, "sheets"), lines)
            elif self.keys.index(key) in chosen.values():
                section = (*self._section(group), f"sheets = {{ {', '.join(lines)} }}")
                text = put_section(text, ("stock", key), section)
        return text

    def _readings(self, group: SheetGroup) -> tuple[str, ...]:
        """As they are typed."""
        typed = found_at(parsed(scan(self.text)), ("stock", self.goods.key, "sheets"))
        known = typed if isinstance(typed, dict) else {}
        return tuple(f"{name} = {json.dumps(str(known[name]))}" for name in group.names)

    def _section(self, group: SheetGroup) -> Iterator[str]:
        """The stock as it is, under another name and with these sheets."""
        goods, unit = self.goods, self.room.spec.unit
        yield 'kind = "sheet"'
        title = f"{goods.title}, {'sheet' if len(group.names) == 1 else 'sheets'} "
        yield f"title = {json.dumps(title + ', '.join(group.names), ensure_ascii=False)}"
        sides = (goods.length.value, goods.width.value)
        yield f"size = [{', '.join(_quoted(side, unit) for side in sides)}]"
        if goods.measured_length and goods.measured_width:
            read = (goods.measured_length.value, goods.measured_width.value)
            yield f"measured_size = [{', '.join(_quoted(side, unit) for side in read)}]"
        yield f"thickness = {_quoted(goods.thickness.value, unit)}"
        yield f'grain = "{"length" if goods.grain else "none"}"'
        yield f'material = "{goods.material}"'
        yield f"density = {int(goods.density)}"
        if goods.modulus is not None:
            yield f"stiffness = {goods.modulus}"
        if goods.price is not None:
            yield f"price = {json.dumps(goods.price, ensure_ascii=False)}"

    def _sheets(self, text: str) -> tuple[int, ...]:
        """How many sheets of each group the plan takes."""
        room = build(read_job(text, self.name), self.facts)
        plans = {plan.stock: plan for plan in break_down(room, stop=_WORK).wanted}
        return tuple(len(plans[key].solution.tree) if key in plans else 0 for key in self.keys)


def _quoted(length: Fraction, unit: Unit) -> str:
    return f'"{shop_text(length, unit)}"'
