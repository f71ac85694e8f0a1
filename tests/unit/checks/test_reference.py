"""The page of the rules."""

from __future__ import annotations

import ast
from collections.abc import Iterator

from tests.fences.source_tree import ROOT

from casewright.checks import RULES
from casewright.checks.reference import reference_text
from casewright.checks.while_building import FOUND_WHILE_BUILDING
from casewright.sources import source


def test_the_page_is_up_to_date() -> None:
    """After a change: python -m casewright.checks.reference > docs/checks.md."""
    page = (ROOT / "docs" / "checks.md").read_text("utf-8")
    assert page == reference_text(), "python -m casewright.checks.reference > docs/checks.md"


def test_the_page_tells_every_rule_with_its_examples_and_its_source() -> None:
    """In the order in which they are looked at, each publication in full."""
    page = " ".join(reference_text().split())
    places = [page.index(f"## {rule.name.capitalize()} ") for rule in RULES]
    assert places == sorted(places)
    for rule in RULES:
        for told in (rule.explanation, rule.passes, rule.fails, rule.sources):
            assert " ".join(told.split()) in page
        if rule.source != "common practice":
            assert source(rule.source).citation in page


def _names() -> Iterator[str]:
    """First words of the rule of every finding that is made outside of the rules."""
    packages = [each for each in (ROOT / "src" / "casewright").iterdir() if each.is_dir()]
    for file in (file for each in packages for file in sorted(each.rglob("*.py"))
                 if each.name not in ("checks", "web")):  # fmt: skip
        text = file.read_text("utf-8")
        if "Finding(" not in text:
            continue
        tree = ast.parse(text)
        texts: dict[str, list[ast.expr]] = {}
        for name, value in _assigned(tree):
            texts.setdefault(name, []).append(value)
        for node in ast.walk(tree):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Finding":
                rules = [each.value for each in node.keywords if each.arg == "rule"]
                yield from _texts(rules[0] if rules else node.args[0], texts)


def _assigned(tree: ast.Module) -> Iterator[tuple[str, ast.expr]]:
    """Names with what they are set to, one by one or several at a time."""
    for node in ast.walk(tree):
        if not isinstance(node, ast.Assign):
            continue
        value = node.value
        for target in node.targets:
            names, values = [target], [value]
            if isinstance(target, ast.Tuple) and isinstance(value, ast.Tuple):
                names, values = target.elts, value.elts
            pairs = zip(names, values, strict=True)
            yield from ((name.id, to) for name, to in pairs if isinstance(name, ast.Name))


def _texts(node: ast.expr, texts: dict[str, list[ast.expr]]) -> Iterator[str]:
    match node:
        case ast.Constant(value=str(value)):
            yield value
        case ast.Name(id=name):
            for each in texts[name]:
                yield from _texts(each, texts)
        case ast.IfExp(body=one, orelse=other):
            yield from _texts(one, texts)
            yield from _texts(other, texts)
        case ast.JoinedStr(values=[ast.Constant(value=str(head)), *_]):
            yield f"{head}rebate, groove or frame"
        case _:
            yield "proof"


def test_what_is_found_while_building_stands_on_the_page() -> None:
    """Every finding that is made where a thing is made, and none that is made no more."""
    named = {each.rule for each in FOUND_WHILE_BUILDING}
    assert len(named) == len(FOUND_WHILE_BUILDING)
    assert named == set(_names()) - {rule.name for rule in RULES}
