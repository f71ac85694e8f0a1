"""Numbers on the page: why each is what it is, and where in the job file it can be changed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from casewright.dims import (
    PRECISION,
    Chain,
    Origin,
    Unit,
    Way,
    Why,
    parse_length,
    round_to,
    shop_text,
)
from casewright.errors import LengthError
from casewright.job.case_edits import own_width
from casewright.job.edits import set_value
from casewright.job.load import LoadedJob
from casewright.job.positions import KeyPath, Positions, scan
from casewright.job.reasons import number_text, reasons
from casewright.job.section_edits import put_section
from casewright.job.splicing import found_at, literal, parsed, refuse
from casewright.job.syntax import dotted
from casewright.sources import INCH, SOURCES
from casewright.style import STYLE_KEYS
from casewright.web.schema import WhyNode, WhyView
from casewright.web.snapshot import Snapshot

__all__ = ["chain_of_plans", "only_read", "why_view", "with_number"]

_CASE_SIZES = ("width", "height", "depth")
_SOLVED_STEPS = len(("run", "NAME", "solved"))
_BY_HAND = "changed by hand"
"""What speaks for a solved number that was changed since."""
_STYLES = frozenset(key.name for key in STYLE_KEYS)


def why_view(snapshot: Snapshot, path: str, chain: Chain | None = None) -> WhyView:
    """A number and all that it rests on.

    Parameters
    ----------
    chain
        That it stands on; None: it is looked for.

    Raises
    ------
    NoSuchPathError
        With the nearest paths.
    """
    room = snapshot.worked.room
    nodes = reasons(room, path, chain)
    places = _Places(snapshot.loaded)
    by_path = {node.path: node for node in nodes}
    return WhyView(nodes=tuple(_node(node, room.spec.unit, by_path, places) for node in nodes))


def chain_of_plans(snapshot: Snapshot, planned: Snapshot | None, path: str) -> Chain | None:
    """The chain of the cuts that are planned, where they have what the model does not.

    Parameters
    ----------
    planned
        The newest whose cuts are planned; of an older version they are not asked.
    """
    if planned is None or planned.purchases is None or planned.version != snapshot.version:
        return None
    if path in snapshot.worked.room.chain.nodes:
        return None
    chain = planned.purchases.chain
    return chain if path in chain.nodes else None


def only_read(view: WhyView) -> WhyView:
    """A number that can be asked why, but not changed: the job file does not say it yet."""
    still = {"key": "", "typed": ""}
    return WhyView(nodes=tuple(node.model_copy(update=still) for node in view.nodes))


def _node(node: Why, unit: Unit, known: Mapping[str, Why], places: _Places) -> WhyNode:
    numbers = (node.built, node.cut, node.wanted, node.designed)
    value = next((number for number in numbers if number is not None), None)
    shown = "" if value is None else number_text(value, unit, node.power, node.path)
    key, typed, origin = places.key_through(node, known), "", node.origin
    box = _box_within(node, known)
    if key is not None:
        typed = places.typed(key)
    elif box is not None:
        key, typed = places.key_through(box, known), shown.removeprefix("~")
    return WhyNode(
        path=node.path,
        value=shown,
        formula=node.formula,
        rests_on=node.args,
        origin="" if origin is None else _origin_words(origin),
        where="" if origin is None else origin.where,
        key="" if key is None else dotted(key),
        typed=typed,
    )


def _origin_words(origin: Origin) -> str:
    """'cited: fibreboard up to it counts as thin, TSCA Title VI'."""
    source = SOURCES[origin.source].title if origin.source in SOURCES else origin.source
    words = ", ".join(filter(None, (origin.note, source)))
    return ": ".join(filter(None, (origin.kind, words)))


def _box_within(node: Why, known: Mapping[str, Why]) -> Why | None:
    """The width of the box in that of a case with finished ends; None for any other number."""
    case, _, size = node.path.rpartition(".")
    box = known.get(f"{case}.width")
    if size != "overall_width" or box is None or box.path not in node.args:
        return None
    parts = [known[path].wanted for path in node.args]
    return box if sum(parts) == node.wanted else None


class _Places:
    """Where numbers stand in a job file, or would."""

    def __init__(self, loaded: LoadedJob) -> None:
        self.positions: Positions = scan(loaded.file.text)
        self.data = parsed(self.positions)
        self.name = loaded.file.name
        self.cases = {case.key for case in loaded.spec.cases}

    def key_through(self, node: Why, known: Mapping[str, Why]) -> KeyPath | None:
        """The key that sets a number, or the one that it is taken from as it is."""
        seen = {node.path}
        key = self.key(node)
        while key is None and len(node.args) == 1:
            (source,) = (known.get(path) for path in node.args)
            if source is None or source.path in seen or source.wanted != node.wanted:
                return None
            seen.add(source.path)
            node, key = source, self.key(source)
        return key

    def key(self, node: Why) -> KeyPath | None:
        """The key that sets a number, or None when none does by itself."""
        if node.origin is None:
            return None
        steps = node.path.split(".")
        return self._written(node.origin.where, steps[-1]) or self._usual(steps)

    def _written(self, where: str, name: str) -> KeyPath | None:
        """The value on the line that an origin names; of several, the one called like it."""
        found = [
            path
            for path in self.positions.values
            if where and where == f"{self.name} line {self.positions.line(path)}"
            and isinstance(found_at(self.data, path), str | int)
        ]  # fmt: skip
        named = [path for path in found if path[-1] == name]
        chosen = named or found
        if len(chosen) == 1 and chosen[0] in self.positions.solved_widths(str(chosen[0][-1])):
            return ("case", chosen[0][-1], "width")
        return chosen[0] if len(chosen) == 1 else None

    def _usual(self, steps: list[str]) -> KeyPath | None:
        """Where a number would stand that the house chose."""
        match steps:
            case [case, size] if case in self.cases and size in _CASE_SIZES:
                return ("case", case, size)
            case ["style", name] if name in _STYLES:
                return ("style", name)
            case _:
                return None

    def typed(self, key: KeyPath | None) -> str:
        """What the file says there; empty when nothing."""
        value = None if key is None else found_at(self.data, key)
        return str(value) if isinstance(value, str | int) else ""


def with_number(snapshot: Snapshot, path: str, key: str, value: str) -> str:
    """The text of the job file with a number changed.

    Parameters
    ----------
    path
        Of the number on the chain, or empty when `key` names its place.
    key
        Dotted place in the file, or empty.
    value
        As typed.

    Raises
    ------
    EditError
        When no single place sets this number.
    NoSuchPathError
        When there is no such number.
    """
    loaded = snapshot.loaded
    places = _Places(loaded)
    nodes = reasons(snapshot.worked.room, path) if path else ()
    place = _asked(nodes, places, key)
    if place is None:
        refuse(f"{path or key} follows from other numbers", "change one of those it rests on")
    value = _of_the_box(nodes, value, loaded.spec.unit)
    text = loaded.file.text
    if place[0] == "style" and len(place) == 2 and not _has_section(text, ("style",)):
        return put_section(text, ("style",), ("[style]", f"{place[1]} = {literal(value)}"))
    if place[2:] == ("width",) and places.positions.solved_widths(str(place[1])):
        return own_width(text, str(place[1]), value)
    old = found_at(places.data, place)
    counts = isinstance(old, int) and value.strip().isdecimal()
    changed = set_value(text, place, int(value) if counts else value)
    solved = place[:1] if place[0] == "heights" else place[:_SOLVED_STEPS]
    because = (*solved, "because")
    if because in places.positions.values and place != because:
        return set_value(changed, because, _BY_HAND)
    return changed


def _asked(nodes: Sequence[Why], places: _Places, key: str) -> KeyPath | None:
    known = {dotted(each): each for each in places.positions.values}
    if key in known:
        return known[key]
    if not nodes:
        return None
    by_path = {node.path: node for node in nodes}
    box = _box_within(nodes[0], by_path)
    return places.key_through(nodes[0], by_path) or (
        None if box is None else places.key_through(box, by_path)
    )


def _of_the_box(nodes: Sequence[Why], value: str, unit: Unit) -> str:
    """What the file says of a width asked for with its finished ends: to what the shop reads off.

    Anything else, and what is no length, is left as it was typed.
    """
    box = _box_within(nodes[0], {node.path: node for node in nodes}) if nodes else None
    if box is None:
        return value
    try:
        whole = parse_length(value, unit)
    except LengthError:
        return value
    step = (INCH if unit == "in" else Fraction(1)) / PRECISION[unit]
    own = whole - (nodes[0].wanted - box.wanted)
    return shop_text(round_to(own, step, Way.NEAREST)[0], unit)


def _has_section(text: str, path: KeyPath) -> bool:
    return any(header == path for header, _ in scan(text).headers)
