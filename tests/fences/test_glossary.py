"""The code uses the words of the glossary: one word for one thing, the trade's own first."""

from __future__ import annotations

import ast
import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from tests.fences.source_tree import ROOT, modules, up_to

# Packages that speak the trade's language. `sources` speaks each publication's own.
TRADE = up_to("room") - {"sources", "errors"}
# Words of any program, of geometry and of search, which need no explanation to who reads code.
GENERAL = {
    "action", "answer", "as", "assembled", "at", "away", "beam", "bin", "bound", "cell", "code",
    "column", "count", "counter", "demand", "direction", "expander", "failure", "fault", "found",
    "frozen", "generation", "held", "hung", "item", "json", "keep", "key", "kind", "laid", "limit",
    "list", "made", "maker", "misstep", "model", "orientation", "placed", "plan", "pricing",
    "problem", "progress", "reader", "reason", "rect", "search", "shape", "size", "slip",
    "solution", "spec", "split", "status", "task", "text", "token", "tree", "unit", "unplaced",
    "used", "walk", "way", "word",
}  # fmt: skip


@dataclass(frozen=True)
class Entry:
    """One row of the glossary."""

    word: str
    code: tuple[str, ...]
    never: tuple[str, ...]


@cache
def _sections() -> tuple[tuple[Entry, ...], ...]:
    text = (ROOT / "docs" / "glossary.md").read_text("utf-8")
    return tuple(tuple(_rows(section)) for section in text.split("\n## ")[1:])


def _rows(section: str) -> Iterator[Entry]:
    table = [line for line in section.splitlines() if line.startswith("|")]
    for line in table[2:]:
        word, _, code, never = (cell.strip() for cell in line.strip("|").split("|"))
        unwanted = tuple(filter(None, re.split(r",\s*", never)))
        yield Entry(word, tuple(re.findall(r"`([\w.]+)`", code)), unwanted)


def _entries() -> list[Entry]:
    return [entry for section in _sections() for entry in section]


@cache
def _explained() -> frozenset[str]:
    words = [entry.word for entry in _entries()]
    return frozenset(part for word in words for part in word.replace("-", "").split())


def _in_words(name: str) -> list[str]:
    """'HingeSheet' and 'hinge_sheet' as 'hinge', 'sheet'."""
    return [word.lower() for word in re.findall(r"[A-Z]?[a-z]+|[A-Z]+", name)]


def _public(kinds: tuple[type[ast.stmt], ...]) -> Iterator[tuple[str, str, str]]:
    """Package, name and place of every public definition."""
    for module in modules():
        for node in module.tree.body:
            if isinstance(node, kinds) and not (name := getattr(node, "name", "_")).startswith(
                "_"
            ):
                yield module.package, name, f"{module.where}:{node.lineno}"


def _classes() -> Iterator[tuple[str, str, str]]:
    return _public((ast.ClassDef,))


def _known(word: str) -> bool:
    words = _explained() | GENERAL
    return word in words or (word.endswith("s") and word[:-1] in words)


def test_every_trade_word_in_the_name_of_a_class_is_explained() -> None:
    """A class of the model is named in words that docs/glossary.md explains."""
    unexplained = [
        f"{where} {name}: {word}"
        for package, name, where in _classes()
        if package in TRADE
        for word in _in_words(name)
        if not _known(word)
    ]
    assert not unexplained, "\n".join(unexplained)


def test_no_word_is_both_explained_and_taken_as_known() -> None:
    """The list of general words hides nothing of the glossary."""
    both = GENERAL & {entry.word for entry in _entries()}
    assert not both


def test_the_glossary_is_in_order_and_has_each_word_once() -> None:
    """A reader finds a word where the alphabet has it."""
    words = [entry.word for entry in _entries()]
    assert len(words) == len(set(words))
    for section in _sections():
        assert [entry.word for entry in section] == sorted(entry.word for entry in section)


def test_the_glossary_names_classes_that_are_there() -> None:
    """What stands under 'in code' can be found in the code."""
    there = {f"{package}.{name}" for package, name, _ in _classes()}
    gone = {name for entry in _entries() for name in entry.code} - there
    assert not gone


def test_two_things_of_one_name_are_told_apart() -> None:
    """A name used for classes of two packages of the model is explained for each."""
    packages = defaultdict(set)
    for package, name, _ in _classes():
        if package in TRADE:
            packages[name].add(package)
    told = {name for entry in _entries() for name in entry.code}
    mixed = [
        f"{package}.{name}"
        for name, where in sorted(packages.items())
        if len(where) > 1
        for package in sorted(where)
        if f"{package}.{name}" not in told
    ]
    assert not mixed, ", ".join(mixed)


def test_no_name_uses_a_word_that_the_glossary_refuses() -> None:
    """One word for one thing: the other words for it stay out of the code."""
    refused = {word: entry.word for entry in _entries() for word in entry.never}
    used = [
        f"{where} {name}: say {right}"
        for package, name, where in _public((ast.ClassDef, ast.FunctionDef))
        if package != "sources"
        for wrong, right in refused.items()
        if f" {wrong} " in f" {' '.join(_in_words(name))} "
    ]
    assert not used, "\n".join(used)
