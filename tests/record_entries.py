"""Entries of a record for tests, and strategies for many of them."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, timezone
from fractions import Fraction
from typing import Any

from hypothesis import strategies as st

from casewright.record import KINDS, Entry, Kind

DAWN = datetime(2026, 5, 12, 8, tzinfo=UTC)
PATHS = ("sink.side_left", "sink.side_left.width", "sink", "stock.plywood.thickness")


def entry(number: int, kind: Kind = "reading", path: str = "sink.width", **more: Any) -> Entry:
    """An entry with its own id, as many minutes after dawn as its number says."""
    fields: dict[str, Any] = {
        "id": f"e{number}", "device": "desk", "seq": number,
        "at": DAWN + timedelta(minutes=number), "kind": kind, "path": path,
    }  # fmt: skip
    usual: dict[str, dict[str, Any]] = {
        "reading": {"sizes": (("", Fraction(800 + number)),)},
        "cut": {"sizes": (("length", Fraction(700)), ("width", Fraction(500 + number)))},
        "offcut": {
            "stock": "plywood", "path": f"offcut.e{number}",
            "sizes": (("length", Fraction(600)), ("width", Fraction(300))),
        },
        "minutes": {"minutes": Fraction(45)},
        "note": {"note": "glue on the floor"},
        "printed": {"note": "0123456789ab", "text": "1/1:eJwDAAAAAAE="},
    }  # fmt: skip
    return Entry(**{**fields, **usual.get(kind, {}), **more})


_TEXT = st.text(st.characters(exclude_categories=("Cc", "Cs", "Zl", "Zp")), max_size=12).map(
    str.strip
)
_SIZE = st.fractions(-2000, 4000, max_denominator=640)
_OVER = st.fractions(Fraction(1, 8), 4000, max_denominator=640)


@st.composite
def histories(draw: st.DrawFn, *, most: int = 9) -> list[Entry]:
    """Entries of all kinds from two devices, each at most once; corrections name each other."""
    count = draw(st.integers(1, most))
    found = []
    for number in range(1, count + 1):
        kind = draw(st.sampled_from(KINDS))
        path = draw(st.sampled_from(PATHS))
        corrects = f"e{draw(st.integers(1, count))}" if draw(st.booleans()) else ""
        if corrects == f"e{number}" or (kind == "withdrawn" and not corrects):
            corrects = f"e{number % count + 1}" if count > 1 else "gone"
        zone = timezone(timedelta(hours=draw(st.sampled_from((-5, 0, 2)))))
        at = DAWN.astimezone(zone) + timedelta(minutes=draw(st.integers(0, 40)))
        sizes = draw(st.dictionaries(st.sampled_from(("length", "width", "x.y")), _OVER))
        more: dict[str, Any] = {"sizes": tuple(sorted(sizes.items()))}
        if kind in ("reading", "cut", "tested") and not sizes:
            more["sizes"] = (("", draw(_OVER if kind == "cut" else _SIZE)),)
        if kind == "offcut":
            more["sizes"] = (("length", draw(_OVER)), ("width", draw(_OVER)))
            more["stock"] = "plywood"
        if kind == "minutes":
            more["minutes"] = draw(st.integers(1, 500).map(lambda n: Fraction(n, 2)))
        if draw(st.booleans()):
            more["against"] = tuple((name, draw(_SIZE)) for name, _ in more["sizes"])
        more["note"] = draw(_TEXT) or ("it fits" if kind in ("note", "printed") else "")
        more["tool"] = draw(_TEXT)
        more["u"] = draw(st.none() | st.fractions(0, 2, max_denominator=100))
        device = draw(st.sampled_from(("desk", "phone")))
        found.append(entry(number, kind, path, at=at, device=device, corrects=corrects, **more))
    return found
