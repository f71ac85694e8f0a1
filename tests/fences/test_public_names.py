"""What is public is listed, is there, and says what it is."""

from __future__ import annotations

import ast
import importlib
import inspect
from collections import Counter
from collections.abc import Iterator
from functools import cache
from types import ModuleType

from tests.fences.source_tree import Module, modules

from casewright.errors import CasewrightError


@cache
def _loaded(name: str) -> ModuleType:
    return importlib.import_module(name)


def _listed(module: Module) -> list[str]:
    return list(getattr(_loaded(module.name), "__all__", []))


def _is_command(node: ast.stmt) -> bool:
    """Whether it is registered with the command line, which is how it is reached."""
    calls = [each for each in getattr(node, "decorator_list", []) if isinstance(each, ast.Call)]
    return any(ast.unparse(call.func).endswith((".command", ".callback")) for call in calls)


def _defined(module: Module) -> Iterator[str]:
    """Public functions and classes that stand in the file itself, to be imported from it."""
    for node in module.tree.body:
        kinds = ast.FunctionDef | ast.AsyncFunctionDef | ast.ClassDef
        if isinstance(node, kinds) and not (node.name.startswith("_") or _is_command(node)):
            yield node.name


def _classes() -> Iterator[tuple[Module, type]]:
    for module in modules():
        for name in _defined(module):
            thing = getattr(_loaded(module.name), name)
            if isinstance(thing, type):
                yield module, thing


def test_every_listed_name_is_there_once() -> None:
    """`__all__` promises nothing that is missing, and nothing twice."""
    broken = [
        f"{module.where}: {name}"
        for module in modules()
        for name, times in Counter(_listed(module)).items()
        if times > 1 or not hasattr(_loaded(module.name), name)
    ]
    assert not broken, "\n".join(broken)


def test_every_public_definition_is_listed() -> None:
    """A function or class without a leading underscore is meant for others, so it is listed."""
    forgotten = [
        f"{module.where}: {name}"
        for module in modules()
        for name in _defined(module)
        if name not in _listed(module)
    ]
    assert not forgotten, "\n".join(forgotten)


def test_every_public_function_and_class_is_explained() -> None:
    """The docstring is its own: one that Python makes up or inherits does not count."""
    silent = [
        f"{module.where}: {name}"
        for module in modules()
        for name in _listed(module)
        if (thing := getattr(_loaded(module.name), name, None)) is not None
        and (inspect.isfunction(thing) or isinstance(thing, type))
        and thing.__module__.startswith("casewright")
        and not _explained(thing)
    ]
    assert not silent, "\n".join(silent)


def _explained(thing: type | object) -> bool:
    text = vars(thing).get("__doc__") if isinstance(thing, type) else thing.__doc__
    made_up = f"{getattr(thing, '__name__', '')}("
    return bool(text and text.strip() and not text.startswith(made_up))


def test_every_module_says_what_it_holds() -> None:
    """The first line of a file tells what lives in it."""
    assert not [module.where for module in modules() if not ast.get_docstring(module.tree)]


def test_every_error_is_for_a_person_or_is_a_defect() -> None:
    """An exception is in the one tree, or its docstring calls it a defect of the program."""
    lost = [
        f"{module.where}: {thing.__name__}"
        for module, thing in _classes()
        if issubclass(thing, BaseException)
        and not issubclass(thing, CasewrightError)
        and "defect of the program" not in " ".join((thing.__doc__ or "").split())
    ]
    assert not lost, "\n".join(lost)
