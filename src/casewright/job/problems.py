"""What the tables refuse, told to a woodworker: where it stands and what would be right."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Sequence
from decimal import Decimal
from typing import Any, Literal, get_args, get_origin

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from casewright.errors import Location, Problem
from casewright.job.homes import home_of, kind_called
from casewright.job.positions import KeyPath, Positions
from casewright.job.syntax import Plain, dotted
from casewright.job.tables import Heading, Table

__all__ = ["Reporter", "nearest"]

_TYPES = {
    "string_type": "text in quotes",
    "int_type": "a whole number without quotes",
    "bool_type": "true or false, without quotes",
    "list_type": "a list between [ and ]",
    "model_type": "a table of keys and values",
    "model_attributes_type": "a table of keys and values",
    "dict_type": "a table of keys and values",
}

_LONGEST_WORD = 60
_MOST_LISTED = 30
_JOINED = re.compile(r"\s*[,;]\s*|\s+[x\u00d7]\s+")
_RUN_TOGETHER = re.compile(r"(\d+)/(\d+)")


def nearest(word: str, known: Iterable[str]) -> str:
    """The known word most like another, or empty when none is."""
    found = difflib.get_close_matches(word.lower(), sorted(known), n=1, cutoff=0.6)
    return found[0] if found else ""


def _apart(typed: object) -> str:
    """33 1/2 for 331/2; empty where no space is missing."""
    match = _RUN_TOGETHER.fullmatch(typed.strip()) if isinstance(typed, str) else None
    digits, under = match.groups() if match else ("", "")
    for place in range(1, len(digits)):
        if 0 < int(digits[place:]) < int(under):
            return f"{digits[:place]} {digits[place:]}/{under}"
    return ""


def _as_list(text: str) -> str:
    """What was run together in one text, as the entries of a list: ["a", "b"] for "a, b"."""
    entries = [entry for entry in _JOINED.split(text.strip()) if entry]
    return f"[{', '.join(_named(entry)[:_LONGEST_WORD] for entry in entries) or _named(text)}]"


def _listed(words: Sequence[str], joiner: str = "or") -> str:
    """Words as a list in a sentence."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {joiner} {words[-1]}"


class Reporter:
    """Collects the problems of one job file, each at its place.

    Parameters
    ----------
    name
        What messages call the file.
    positions
        Where everything stands in it.
    judges_sizes
        False when the job's unit is not known: then no size is too large or too small.
    """

    def __init__(self, name: str, positions: Positions, *, judges_sizes: bool = True) -> None:
        self.name = name
        self.positions = positions
        self.judges_sizes = judges_sizes
        self.problems: list[Problem] = []

    def where(self, path: KeyPath, *, offset: int = 0, key: bool = False) -> Location:
        """Place of a path, else of the nearest table around it.

        Parameters
        ----------
        offset
            Characters into a text that is to be pointed at.
        key
            Point at the key, not at its value.
        """
        found = self.positions.keys.get(path) if key else None
        span = found or self.positions.nearest(path)
        if span is None:
            return Location(self.name)
        word = self.positions.word(span)
        line, column = self.positions.at(span.start)
        inside = word[:1] in "\"'" and "\\" not in word and 0 <= offset < len(word) - 1
        shown = word if len(word) <= _LONGEST_WORD else f"{word[:_LONGEST_WORD]}..."
        return Location(self.name, line, column + (offset + 1 if offset and inside else 0), shown)

    def tell(self, path: KeyPath, what: str, want: str, *, key: bool = False) -> None:
        """Note a problem."""
        self.problems.append(Problem(self.where(path, key=key), what, want))

    def unknown(self, path: KeyPath, word: str, known: Iterable[str], what: str) -> None:
        """Note a name that is not known, with the one that was probably meant."""
        known = list(known)
        like = nearest(word, known)
        other = f"write {_listed(known)}" if known else "take it out"
        want = f"did you mean {like}?" if like else other
        self.tell(path, what, want)

    def refuse(
        self, error: ValidationError, table: type[Table], path: KeyPath, data: Plain
    ) -> None:
        """Note everything a table refused.

        Parameters
        ----------
        table
            The table that was read.
        path
            Where it stands in the file.
        data
            What was given to it.
        """
        for detail in error.errors(include_url=False):
            self._one(detail, table, path, data)

    def _one(self, detail: ErrorDetails, table: type[Table], path: KeyPath, data: Plain) -> None:
        inner = _real_path(detail["loc"], data)
        context = detail.get("ctx", {})
        full = (*path, *inner, *context.get("inside", ()))
        match detail["type"]:
            case "extra_forbidden":
                self._unknown_key(full, _known_keys(table, inner[:-1]))
            case "missing":
                self._missing(full, _field_of(table, inner))
            case "literal_error" | "enum":
                self._not_one_of(full, detail["input"], str(context["expected"]))
            case "size" if not self.judges_sizes:
                pass
            case kind if kind in _TYPES:
                self._of_wrong_kind(full, detail["input"], kind, _field_of(table, inner))
            case _:
                self._other(full, detail, context)

    def _of_wrong_kind(self, path: KeyPath, value: object, kind: str, field: Any = None) -> None:
        word, want = _named(value), f"write {_listed(_choices(field)) or _TYPES[kind]}"
        if kind == "list_type" and isinstance(value, str):
            want = f"write {_as_list(value)}, a list"
        elif kind == "list_type" and isinstance(value, int | Decimal) and value is not True:
            want = f"write [{value}], a list"
        elif kind == "int_type" and isinstance(value, str) and value.strip().isdigit():
            want = f"write {value.strip()}, without quotes"
        elif isinstance(value, list) and len(value) == 1:
            want = "take the brackets away"
        self.tell(path, f"{word} cannot stand here", want)

    def _unknown_key(self, path: KeyPath, known: list[str]) -> None:
        word = str(path[-1])
        like = nearest(word, known)
        home = home_of(path, known)
        if home and (not like or word in Heading.model_fields):
            want = home
        elif like:
            want = f"did you mean {like}?"
        elif len(known) > _MOST_LISTED:
            want = f"docs/job-file.md lists what can stand{_inside(path) or ' there'}"
        else:
            want = f"known here: {_listed(known, 'and')}"
        self.tell(path, f"there is no key {word}{_inside(path)}", want, key=True)

    def _missing(self, path: KeyPath, field: Any) -> None:
        key, known = path[-1], _literals(getattr(field, "annotation", None))
        want = f"write {key} = {_listed(known)}"
        if not known:
            about = (getattr(field, "description", "") or "").partition("\n")[0].rstrip(".")
            want = f"write {key} = ..." + (f" ({about[:1].lower()}{about[1:]})" if about else "")
        self.tell(path[:-1], f"{key} is missing{_inside(path)}", want)

    def _not_one_of(self, path: KeyPath, value: object, expected: str) -> None:
        known = [word.strip("'\" ") for word in expected.replace(" or ", ", ").split(", ")]
        word = value if isinstance(value, str) else str(value)
        like = nearest(word, known) if isinstance(value, str) else ""
        if like == word and word.isdigit():
            self.tell(path, f"{_short(path)} is a number", f"write {word}, without quotes")
            return
        quoted = [f'"{each}"' if not each.isdigit() else each for each in known]
        want = f'did you mean "{like}"?' if like else f"write {_listed(quoted)}"
        if called := kind_called(path, word):
            want = f"write {called}"
        what = f"{_named(value)} is not known"
        self.tell(path, what if value == path[-1] else f"{what} as {_short(path)}", want)

    def _other(self, path: KeyPath, detail: ErrorDetails, context: dict[str, Any]) -> None:
        what, want = detail["msg"], context.get("want", "")
        if not want:
            what, want = _limits(detail["type"], context)
        apart = _apart(detail["input"]) if detail["type"] == "size" else ""
        if apart:
            want = f'{want.partition(";")[0]}; if a space is missing: "{apart}"'
        where = self.where(path, offset=context.get("position", 0))
        self.problems.append(Problem(where, what, want))


_LIMITS = {
    "greater_than_equal": ("this number is too small here", "write {ge} or more"),
    "less_than_equal": ("this number is too large here", "write {le} or less"),
    "too_short": ("this list is too short", "entries it needs: {min_length} or more"),
    "too_long": ("this list is too long", "entries it may have: {max_length} or fewer"),
    "string_too_short": ("nothing is written here", "write something, or take the line out"),
    "string_too_long": ("this text is too long", "write {max_length} characters at most"),
}


def _limits(kind: str, context: dict[str, Any]) -> tuple[str, str]:
    unknown = ("this cannot stand here", "see the reference of the job file")
    what, want = _LIMITS.get(kind, unknown)
    return what, want.format_map(context)


def _real_path(loc: Sequence[str | int], data: Plain) -> KeyPath:
    """The place of an error in the data: without the names of the kinds that were tried."""
    path: KeyPath = ()
    here: Plain = data
    for number, step in enumerate(loc):
        last = number == len(loc) - 1
        if _holds(here, step):
            here = here[step]  # type: ignore[index]
        elif not last or step == "[key]" or not isinstance(here, dict):
            continue
        path += (step,)
    return path


def _holds(here: Plain, step: str | int) -> bool:
    if isinstance(here, list):
        return isinstance(step, int) and step < len(here)
    return isinstance(here, dict) and step in here


def _table_of(table: type[Table], path: KeyPath) -> type[Table]:
    """The table that stands at a path inside another."""
    for step in path:
        field = table.model_fields.get(str(step))
        inner = _tables_in(field.annotation) if field else []
        if inner:
            table = inner[0]
    return table


def _tables_in(annotation: Any) -> list[type[Table]]:
    if isinstance(annotation, type) and issubclass(annotation, Table):
        return [annotation]
    found: list[type[Table]] = []
    for inner in getattr(annotation, "__args__", ()):
        found.extend(_tables_in(inner))
    return found


def _literals(annotation: Any) -> list[str]:
    """Values of a field that takes only some, as they are typed."""
    if get_origin(annotation) is not Literal:
        return []
    return [f'"{each}"' if isinstance(each, str) else str(each) for each in get_args(annotation)]


def _choices(field: Any) -> list[str]:
    """Words that a field takes in place of its list or table, as they are typed."""
    shapes = (getattr(each, "json_schema_input_type", None) for each in _metadata(field))
    return [word for shape in shapes for one in get_args(shape) for word in _literals(one)]


def _metadata(field: Any) -> tuple[Any, ...]:
    own = getattr(field, "metadata", ())
    annotation = getattr(field, "annotation", None)
    return (*own, *getattr(annotation, "__metadata__", ()))


def _known_keys(table: type[Table], path: KeyPath) -> list[str]:
    """Keys of a table, its own before those it shares."""
    found = _table_of(table, path)
    own = [key for key in found.model_fields if key in found.__annotations__]
    return [*own, *(key for key in found.model_fields if key not in own)]


def _field_of(table: type[Table], path: KeyPath) -> Any:
    return _table_of(table, path[:-1]).model_fields.get(str(path[-1]))


def _inside(path: KeyPath) -> str:
    around = dotted(path[:-1])
    return f" in [{around}]" if around else ""


def _short(path: KeyPath) -> str:
    names = [step for step in path if isinstance(step, str)]
    return names[-1] if names else "a value"


def _named(value: object) -> str:
    """A value in words."""
    match value:
        case bool():
            return str(value).lower()
        case str():
            return f'"{value if len(value) <= 40 else value[:40] + "..."}"'
        case int() | Decimal():
            text = str(value)
            return f"the number {text if len(text) <= 20 else text[:20] + '...'}"
        case list():
            return "a list"
        case dict():
            return "a table"
        case _:
            return "this"
