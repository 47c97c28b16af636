"""Compiling once: the compiled march is kept where the user may write.

Numba keeps compiled code by the file it stands in and does not see that a
file it leans on has changed.  So all of it goes to a folder whose name
stands for all files of this room.  Where no folder can be written the march
is compiled for this process only; nothing else changes.
"""

import hashlib
import os
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import numba
import platformdirs

Function = TypeVar("Function", bound=Callable[..., Any])
# error_model "numpy": no test for a zero divisor; a number that is none is caught by the solver.
_HOW: dict[str, Any] = {"nogil": True, "error_model": "numpy", "fastmath": {"contract", "arcp", "nsz"}}


def _folder() -> str:
    """Where compiled code of exactly these files is kept."""
    here = Path(__file__).parent
    stamps = sorted((file.name, file.stat().st_size, file.stat().st_mtime_ns) for file in here.glob("*.py"))
    mark = hashlib.sha256(repr(stamps).encode()).hexdigest()[:16]
    config: Any = numba.config
    return os.path.join(config.CACHE_DIR or platformdirs.user_cache_dir("dryward", appauthor=False), mark)


def compiled(function: Function) -> Function:
    """The function, compiled on its first call and kept if that is possible."""
    return _compiled(function, {})


def inner(function: Function) -> Function:
    """The same for a function that only compiled code calls: without the door to the interpreter, which costs time."""
    return _compiled(function, {"no_cpython_wrapper": True, "no_cfunc_wrapper": True})


def _compiled(function: Function, more: dict[str, Any]) -> Function:
    config: Any = numba.config  # a module that fills itself at import
    before = config.CACHE_DIR
    try:
        config.CACHE_DIR = _folder()
        return numba.njit(**{"cache": True, **_HOW, **more})(function)
    except (RuntimeError, OSError):  # numba: "no locator available", no folder to write to
        return numba.njit(**{**_HOW, **more})(function)
    finally:
        config.CACHE_DIR = before
