"""Printing what came back."""

from __future__ import annotations

import json
import re
import shutil
import sys
import textwrap
from collections.abc import Iterable
from typing import Any

__all__ = ["folded", "print_json", "print_lines"]

_WIDEST = 110
_LEAD = re.compile(r"\s*(?:(?:[A-Z]{3,}|\d+|-|CAUTION)\s+)?")


def print_lines(lines: Iterable[str]) -> None:
    """Lines for people: folded between words on a terminal, whole when they go elsewhere."""
    if not sys.stdout.isatty():
        for line in lines:
            print(line)
        return
    width = min(shutil.get_terminal_size().columns, _WIDEST)
    for line in lines:
        print(folded(line, width))


def folded(line: str, width: int) -> str:
    """A line folded between words, its later lines under its first word.

    Parameters
    ----------
    width
        Of the terminal [columns].
    """
    lead = _LEAD.match(line)
    inset = " " * min(lead.end() if lead else 0, width // 2)
    return textwrap.fill(
        line, width, subsequent_indent=inset, break_long_words=False, break_on_hyphens=False
    )


def print_json(document: Any) -> None:
    """One JSON document for programs."""
    json.dump(document, sys.stdout, indent=1, ensure_ascii=False)
    print()
