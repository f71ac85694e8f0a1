"""Words of the schema at any table of a job file, with values it would take: none is left out."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from functools import cache
from typing import Any

from hypothesis import strategies as st

from casewright.dims import parse_length
from casewright.job.editor_schema import job_schema

__all__ = ["add_word"]

_Json = dict[str, Any]
_Path = tuple[Any, ...]
_NAMED = ("stock", "case", "run", "wall", "appliance", "island")
_GOODS = ["plywood", "thin_plywood", "fibreboard", "board", "strip"]
_DEEP = 2
_WORDS = ["", "25 kg", "90", "62.40, 3 May", "drawer 6"]


@cache
def _schema() -> _Json:
    return job_schema()


def _choices(schema: _Json) -> list[_Json]:
    """What may stand there: each alternative by itself."""
    while "$ref" in schema:
        schema = _schema()["$defs"][schema["$ref"].rpartition("/")[2]]
    found = [inner for each in (*schema.get("anyOf", ()), *schema.get("oneOf", ()))
             for inner in _choices(each)]  # fmt: skip
    return found or [schema]


def _tables(data: Any, schema: _Json, path: _Path = ()) -> Iterator[tuple[_Path, _Json]]:
    """Every table of a file, with its schema."""
    for choice in _choices(schema):
        known, other = choice.get("properties", {}), choice.get("additionalProperties")
        if isinstance(data, dict) and (known or isinstance(other, dict)):
            if known:
                yield path, known
            for key, inner in data.items():
                if key in known or isinstance(other, dict):
                    yield from _tables(inner, known.get(key, other), (*path, key))
        elif isinstance(data, list) and "items" in choice:
            for number, inner in enumerate(data):
                yield from _tables(inner, choice["items"], (*path, number))


def add_word(data: _Json, draw: st.DataObject) -> None:
    """Write one word of the schema into one of the file's tables, over what stands there."""
    tables = dict(_tables(data, _schema()))
    path = draw.draw(st.sampled_from(sorted(tables, key=str)))
    words, table = tables[path], data
    for step in path:
        table = table[step]
    key = draw.draw(st.sampled_from(sorted(set(words) - {"unit", "format"})))
    table[key] = _value(words[key], data, draw, 0)


def _value(schema: _Json, data: _Json, draw: st.DataObject, deep: int) -> Any:
    """Something that the schema takes there."""
    choice = draw.draw(st.sampled_from(_choices(schema)))
    kind = choice.get("type")
    if "const" in choice or "enum" in choice:
        return draw.draw(st.sampled_from(choice.get("enum", [choice.get("const")])))
    if "x-range" in choice:
        return draw.draw(_length(choice["x-range"], data.get("unit")))
    if kind == "array":
        least, most = choice.get("minItems", 0), min(choice.get("maxItems", 4), 4)
        many = range(draw.draw(st.integers(least, max(least, most))))
        return [_value(choice["items"], data, draw, deep + 1) for _ in many]
    if kind == "object":
        return _table(choice, data, draw, deep)
    if kind == "boolean":
        return draw.draw(st.booleans())
    if kind in ("integer", "number"):
        low = int(choice.get("minimum", 0))
        return draw.draw(st.integers(low, min(int(choice.get("maximum", 100)), low + 30)))
    return draw.draw(st.sampled_from([*choice.get("examples", ()), *_names(data), *_WORDS]))


def _table(choice: _Json, data: _Json, draw: st.DataObject, deep: int) -> _Json:
    """What it needs, and a few of its other words; or some names with what stands under them."""
    known, other = choice.get("properties", {}), choice.get("additionalProperties")
    if not known and isinstance(other, dict):
        names = draw.draw(st.lists(st.sampled_from(_names(data)), max_size=2))
        return {name: _value(other, data, draw, deep + 1) for name in names}
    keys = list(choice.get("required", ()))
    if deep < _DEEP:
        keys += draw.draw(st.lists(st.sampled_from(sorted(known)), max_size=3))
    return {key: _value(known[key], data, draw, deep + 1) for key in dict.fromkeys(keys)}


def _length(bounds: dict[str, str], unit: Any) -> st.SearchStrategy[str]:
    """A length in its range, as a tape shows it: the ends more often than what lies between."""
    word: Any = unit if unit in ("in", "mm") else "in"
    low, high = (parse_length(each, word) for each in bounds[word].split(" to "))
    step = Fraction(254, 10) / 16 if word == "in" else Fraction(1)
    least, most = -(-low // step), high // step
    found = st.integers(least, most) | st.integers(least, least + (most - least) // 8)
    return (found | st.sampled_from([least, most])).map(
        lambda steps: str(steps) if word == "mm" else f"{steps}/16"
    )


def _names(data: _Json) -> list[str]:
    tables = [data.get(each) for each in _NAMED]
    found = {str(key) for each in tables if isinstance(each, dict) for key in each}
    return sorted(found | set(_GOODS))
