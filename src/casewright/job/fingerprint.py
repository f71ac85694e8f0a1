"""A fingerprint of a job: the same for the same meaning, wherever it stands in the file."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Set
from dataclasses import fields, is_dataclass
from typing import Any

from casewright.room.model import Room
from casewright.room.specs import JobSpec

__all__ = ["fingerprint", "printed_fingerprint"]

_LEFT_OUT = ("where", "read_at", "learned")
"""Places in the file; and what the record's readings say of tools, which are told as facts."""


def fingerprint(spec: JobSpec) -> str:
    """Twelve characters that change whenever the meaning of a job does.

    Comments, the order of keys in a table, the file's name and line numbers do not count; the
    order of cases does.
    """
    text = repr([(name, _plain(value)) for name, value in _members(spec) if name != "source"])
    return hashlib.sha256(text.encode()).hexdigest()[:12]


def printed_fingerprint(room: Room) -> str:
    """As `fingerprint`, with what the record says: all that the pages of a packet hang on.

    That of the job alone as long as nothing was read or cut.
    """
    plain, own = fingerprint(room.spec), room.spec.file_facts
    facts = [
        (path, str(fact.cut), str(fact.built), [_plain(cause) for cause in fact.causes])
        for path, fact in sorted(room.chain.facts.items())
        if own.get(path) != fact
    ]
    states = [(part.path, part.state) for part in room.parts if part.state != "planned"]
    if not facts and not states:
        return plain
    return hashlib.sha256(repr((plain, facts, states)).encode()).hexdigest()[:12]


def _members(value: Any) -> list[tuple[str, Any]]:
    return [
        (each.name, getattr(value, each.name))
        for each in fields(value)
        if each.name not in _LEFT_OUT
    ]


def _plain(value: Any) -> Any:
    if is_dataclass(value):
        return [type(value).__name__, *((name, _plain(each)) for name, each in _members(value))]
    if isinstance(value, Mapping):
        return [(str(key), _plain(value[key])) for key in sorted(value, key=str)]
    if isinstance(value, Set):
        return sorted(map(str, value))
    if isinstance(value, tuple | list):
        return [_plain(each) for each in value]
    return str(value)
