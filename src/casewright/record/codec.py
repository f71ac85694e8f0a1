"""Entries as JSON: one exact form for the store, a forgiving reader for what others send."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from datetime import datetime
from fractions import Fraction
from typing import Any

from casewright.dims import Unit, length_json
from casewright.record.entry import Entry, Sizes

__all__ = ["LONGEST_BODY", "body_of", "entry_json", "entry_of_body", "sealed", "unsealed"]

LONGEST_BODY = 7000
"""Longest entry that is kept [bytes]: it then lies within one page of the store."""

_SEAL = 16
"""Characters of the check sum behind a body."""


def body_of(entry: Entry) -> str:
    """An entry as text, always the same for the same entry: ASCII, without a line end."""
    return json.dumps(_plain(entry), separators=(",", ":"), sort_keys=True)


def sealed(body: str) -> str:
    """A body with its check sum."""
    return f"{body}#{_digest(body)}"


def unsealed(text: bytes) -> str | None:
    """The body in a sealed text; None when it is not as it was written."""
    try:
        body, mark, digest = text.decode("ascii").rpartition("#")
    except UnicodeDecodeError:
        return None
    return body if mark and digest == _digest(body) else None


def entry_of_body(body: str) -> Entry:
    """The entry of a body that this module wrote; its seal stands for its being well formed."""
    plain: dict[str, Any] = json.loads(body)
    u, minutes = plain.get("u"), plain.get("minutes")
    return Entry(
        plain["id"],
        plain["device"],
        plain["seq"],
        datetime.fromisoformat(plain["at"]),
        plain["kind"],
        plain.get("path", ""),
        _sizes_of(plain.get("sizes", {})),
        plain.get("tool", ""),
        None if u is None else Fraction(u["mm"]),
        None if minutes is None else Fraction(minutes),
        plain.get("stock", ""),
        plain.get("note", ""),
        plain.get("corrects", ""),
        plain.get("text", ""),
        _sizes_of(plain.get("against", {})),
    )


def _sizes_of(kept: dict[str, Any]) -> Sizes:
    if "mm" in kept:
        kept = {"": kept}
    return tuple((name, Fraction(size["mm"])) for name, size in sorted(kept.items()))


def entry_json(entry: Entry, unit: Unit) -> dict[str, Any]:
    """An entry for other programs: lengths exactly and as the job writes them."""

    def length(value: Fraction) -> dict[str, Any]:
        return {**length_json(value, unit)}

    return {
        "id": entry.id,
        "device": entry.device,
        "seq": entry.seq,
        "at": entry.at.isoformat(),
        "kind": entry.kind,
        "path": entry.path,
        "sizes": _named(entry.sizes, length),
        "tool": entry.tool,
        "u": None if entry.u is None else length(entry.u),
        "minutes": None if entry.minutes is None else str(entry.minutes),
        "stock": entry.stock,
        "note": entry.note,
        "corrects": entry.corrects,
        "text": entry.text,
        "against": _named(entry.against, length),
    }


def _plain(entry: Entry) -> dict[str, Any]:
    plain = {
        "against": _named(entry.against, _exact),
        "at": entry.at.isoformat(),
        "corrects": entry.corrects,
        "device": entry.device,
        "id": entry.id,
        "kind": entry.kind,
        "minutes": None if entry.minutes is None else str(entry.minutes),
        "note": entry.note,
        "path": entry.path,
        "seq": entry.seq,
        "sizes": _named(entry.sizes, _exact),
        "stock": entry.stock,
        "text": entry.text,
        "tool": entry.tool,
        "u": None if entry.u is None else _exact(entry.u),
    }
    return {key: value for key, value in plain.items() if value not in (None, "", {})}


def _named(sizes: Sizes, length: Any) -> Mapping[str, Any]:
    """Sizes by name; the one size of a number itself stands bare."""
    if len(sizes) == 1 and not sizes[0][0]:
        bare: Mapping[str, Any] = length(sizes[0][1])
        return bare
    return {name: length(value) for name, value in sizes}


def _exact(value: Fraction) -> dict[str, str]:
    return {"mm": str(value)}


def _digest(body: str) -> str:
    return hashlib.sha256(body.encode("ascii")).hexdigest()[:_SEAL]
