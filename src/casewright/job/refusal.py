"""How a field refuses what stands in it."""

from __future__ import annotations

from typing import Literal, NoReturn

from pydantic_core import PydanticCustomError

__all__ = ["refuse"]


def refuse(
    what: str, want: str, *, kind: Literal["form", "size"] = "form", position: int = 0
) -> NoReturn:
    """Refuse what stands in a field.

    Parameters
    ----------
    what
        What is wrong.
    want
        What would be right.
    kind
        form: it cannot be read. size: it is too small or too large in the job's unit.
    position
        Characters into the text that is wrong.

    Raises
    ------
    PydanticCustomError
        Always.
    """
    context = {"what": what, "want": want, "position": position}
    raise PydanticCustomError(kind, "{what}", context)
