"""Things counted, as one says them."""

from __future__ import annotations

__all__ = ["counted"]


def counted(number: int, noun: str) -> str:
    """'1 sheet', '2 sheets'.

    Parameters
    ----------
    noun
        Of one; more of them take an s.
    """
    return f"{number} {noun}{'' if number == 1 else 's'}"
