"""Reads the package's own source for the tests that hold it to the house rules."""

import ast
import importlib
import inspect
import pkgutil
from functools import cache
from pathlib import Path

import dryward

ROOT = Path(dryward.__file__).parent


@cache
def modules():
    """Names of all modules of the package."""
    found = [module.name for module in pkgutil.walk_packages(dryward.__path__, "dryward.")]
    return ("dryward", *sorted(found))


def path(name):
    """The source file of a module."""
    parts = name.split(".")[1:]
    single = ROOT.joinpath(*parts).with_suffix(".py") if parts else ROOT / "__init__.py"
    return single if single.is_file() else ROOT.joinpath(*parts) / "__init__.py"


@cache
def tree(name):
    """The syntax tree of a module."""
    return ast.parse(path(name).read_text(encoding="utf-8"))


def room(name):
    """The room a module stands in: ``dryward.physics`` for all of physics."""
    return ".".join(name.split(".")[:2])


@cache
def all_names():
    """(module, syntax tree) of every function and class without an underscore."""
    return tuple(
        (name, node)
        for name in modules()
        for node in tree(name).body
        if isinstance(node, (ast.FunctionDef, ast.ClassDef)) and not node.name.startswith("_") and not overload(node)
    )


def overload(node):
    """Whether a function is one of the signatures above the function itself."""
    return any(getattr(each, "id", "") == "overload" for each in node.decorator_list)


def load(module, name):
    """The function or class itself."""
    return getattr(importlib.import_module(module), name)


def docstrings(name):
    """The constants of a module that are docstrings, not text for a reader of the screen."""
    for n in ast.walk(tree(name)):
        if isinstance(n, (ast.Module, ast.FunctionDef, ast.AsyncFunctionDef, ast.ClassDef)):
            first = n.body[0] if n.body else None
            if isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant):
                yield first.value


def parameters(thing):
    """Names a caller can give to a function or class."""
    sign = inspect.signature(thing)
    return [p.name for p in sign.parameters.values() if p.name != "self"]
