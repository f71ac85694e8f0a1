"""Printing what came back."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable
from typing import Any

__all__ = ["print_json", "print_lines"]


def print_lines(lines: Iterable[str]) -> None:
    """Lines for people."""
    for line in lines:
        print(line)


def print_json(document: Any) -> None:
    """One JSON document for programs."""
    json.dump(document, sys.stdout, indent=1, ensure_ascii=False)
    print()
