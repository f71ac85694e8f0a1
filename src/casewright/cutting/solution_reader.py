"""Cutting plans from JSON, whoever made them, so that they can be checked."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, TypeVar, cast, get_args

from casewright.cutting.cards import setting_cards
from casewright.cutting.json_reader import JsonReader
from casewright.cutting.problem import Fault, ProblemError
from casewright.cutting.solution import (
    Bound,
    Direction,
    Leaf,
    Measure,
    Node,
    Placement,
    Reason,
    Rect,
    SheetTree,
    Solution,
    Split,
    Status,
    Unplaced,
    Use,
)  # fmt: skip

__all__ = ["read_solution"]

_DEEPEST = 100
_Word = TypeVar("_Word", bound=str)


class _Reader(JsonReader):
    """Reads plans."""

    def rect(self, row: Mapping[str, Any], where: str) -> Rect:
        return Rect(*(self.whole(row, where, field, None) for field in ("x", "y", "l", "w")))

    def word(
        self, row: Mapping[str, Any], where: str, field: str, words: tuple[_Word, ...]
    ) -> _Word:
        value = row.get(field)
        for word in words:
            if value == word:
                return word
        self.fault(where, field, value, f"one of {', '.join(words)}")
        return words[0]

    def placement(self, row: Mapping[str, Any], where: str) -> Placement:
        turned = row.get("turned", False)
        if not isinstance(turned, bool):
            self.fault(where, "turned", turned, "true or false")
        return Placement(
            self.text(row, where, "part"), self.whole(row, where, "copy", None),
            self.whole(row, where, "sheet", None), self.rect(row, where), turned is True,
        )  # fmt: skip

    def stocks(self, data: Mapping[str, Any], of: Mapping[int, str]) -> None:
        """The stock that a placement names, where it does, is that of its sheet."""
        placements = data.get("placements")
        for index, row in enumerate(placements if isinstance(placements, list) else ()):
            if not isinstance(row, Mapping) or type(row.get("sheet")) is not int:
                continue
            stock = of.get(row["sheet"])
            if stock is not None and row.get("stock", stock) != stock:
                where = f"plan.placements[{index}]"
                self.fault(where, "stock", row["stock"], f'that of its sheet, "{stock}"')

    def tree(self, row: Mapping[str, Any], where: str) -> SheetTree:
        root = row.get("root")
        at = f"{where}.root"
        if not isinstance(root, Mapping):
            self.fault(where, "root", root, "an object")
            root = {"x": 0, "y": 0, "l": 1, "w": 1, "use": "waste"}
        return SheetTree(
            self.whole(row, where, "sheet", None), self.text(row, where, "stock"),
            self.node(root, at),
        )  # fmt: skip

    def node(self, row: Mapping[str, Any], where: str) -> Node:
        rect = self.rect(row, where)
        if "use" in row:
            use = cast("Use", self.word(row, where, "use", get_args(Use)))
            if use != "part":
                return Leaf(rect, use)
            return Leaf(
                rect, use, self.text(row, where, "part"), self.whole(row, where, "copy", None)
            )
        direction = cast("Direction", self.word(row, where, "direction", get_args(Direction)))
        cuts = row.get("cuts")
        if not isinstance(cuts, list) or any(type(cut) is not int for cut in cuts):
            self.fault(where, "cuts", cuts, "a list of whole numbers")
            cuts = []
        if where.count("pieces") > _DEEPEST:
            self.fault(where, "pieces", "cut into each other", f"at most {_DEEPEST} deep")
            return Leaf(rect, "waste")
        return Split(rect, direction, tuple(cuts), self.rows(row, where, "pieces", self.node))

    def bound(self, data: Mapping[str, Any]) -> Bound:
        row = data.get("bound")
        if not isinstance(row, Mapping):
            self.fault("plan", "bound", row, "an object")
            return Bound(0)
        measure = cast("Measure", self.word(
            {"measure": "sheets", **row}, "bound", "measure", get_args(Measure)
        ))  # fmt: skip
        return Bound(
            self.whole(row, "bound", "value", None), self.text(row, "bound", "scope"), measure
        )

    def unplaced(self, row: Mapping[str, Any], where: str) -> Unplaced:
        reasons = {reason.value: reason for reason in Reason}
        word = self.word(row, where, "reason", tuple(reasons))
        return Unplaced(
            self.text(row, where, "part"), self.whole(row, where, "count", None), reasons[word]
        )


def read_solution(data: object) -> Solution:
    """A plan from parsed JSON, in the shape that `write_solution` gives.

    The setting cards are counted anew from its cut trees.

    Raises
    ------
    ProblemError
        With everything that is wrong, each fault with its place: 'tree[2].root', 'cuts'.
    """
    if not isinstance(data, Mapping):
        raise ProblemError([Fault("plan", "document", type(data).__name__, "an object")])
    reader = _Reader()
    statuses = {status.value: status for status in Status}
    placements = reader.rows(data, "plan", "placements", reader.placement)
    trees = reader.rows(data, "plan", "tree", reader.tree)
    reader.stocks(data, {tree.sheet: tree.stock for tree in trees})
    bound = reader.bound(data)
    cost = reader.whole(data, "plan", "cost", None)
    status = statuses[reader.word(data, "plan", "status", tuple(statuses))]
    unplaced = reader.rows({"unplaced": [], **data}, "plan", "unplaced", reader.unplaced)
    if reader.faults:
        raise ProblemError(reader.faults)
    return Solution(placements, trees, setting_cards(trees), cost, bound, status, unplaced)
