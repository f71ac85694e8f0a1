"""What all tables of a job file have in common."""

from __future__ import annotations

import re
from typing import Annotated, Any, TypeAlias

from pydantic import AfterValidator, BaseModel, BeforeValidator, ConfigDict, StringConstraints

from casewright.job.refusal import refuse

__all__ = ["LONGEST_KEY", "Key", "Line", "LongLine", "OneOrMore", "Table", "check_key"]

LONGEST_KEY = 40
"""Longest name of a case, a run or a stock [characters]."""

_NO_KEY = re.compile(r"[^\w-]")


class Table(BaseModel):
    """A table whose keys are all known; values are taken as typed, never converted."""

    model_config = ConfigDict(
        extra="forbid", strict=True, frozen=True, arbitrary_types_allowed=True,
        use_attribute_docstrings=True,
        defer_build=True,  # a job has few of them, and the file as a whole is never read by one
    )  # fmt: skip


def _one_line(text: str) -> str:
    if not text.isprintable():
        what = "this text has line breaks or characters that cannot be printed"
        refuse(what, "write it as one line")
    return text


Line: TypeAlias = Annotated[
    str, StringConstraints(min_length=1, max_length=300), AfterValidator(_one_line)
]
"""One printable line of text."""

LongLine: TypeAlias = Annotated[
    str, StringConstraints(min_length=1, max_length=6000), AfterValidator(_one_line)
]
"""One that a command writes: of a long run every place is named in it."""


def check_key(text: str) -> str:
    """A key that may be part of a path.

    Raises
    ------
    PydanticCustomError
        When it has other characters than letters, digits, - and _.
    """
    if not text or len(text) > LONGEST_KEY or _NO_KEY.search(text):
        what = f"a name may hold letters, digits, - and _, at most {LONGEST_KEY} of them"
        refuse(what, f"write {re.sub(_NO_KEY, '_', text)[:LONGEST_KEY] or 'a name'}")
    return text


Key: TypeAlias = Annotated[str, AfterValidator(check_key)]
"""Name of a case, a run or a stock."""


def _as_list(value: Any) -> Any:
    return value if isinstance(value, list | dict) else [value]


def OneOrMore(item: Any) -> BeforeValidator:  # noqa: N802
    """A list that may also be written as a single value of a type."""
    return BeforeValidator(_as_list, json_schema_input_type=item | list[item])
