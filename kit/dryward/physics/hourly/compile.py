"""Compiling once: the compiled march is kept where the user may write.

Numba keeps compiled code by the file it stands in and does not see that a
file it leans on has changed.  So all of it goes to a folder whose name
stands for all files of this room.  Where no folder can be written the march
is compiled for this process only; nothing else changes.
"""

import hashlib
import os
from pathlib import Path

import numba
import platformdirs

# error_model "numpy": no test for a zero divisor; a number that is none is caught by the solver.
_HOW = {"nogil": True, "error_model": "numpy", "fastmath": {"contract", "arcp", "nsz"}}


def _folder():
    """Where compiled code of exactly these files is kept."""
    here = Path(__file__).parent
    stamps = sorted((file.name, file.stat().st_size, file.stat().st_mtime_ns) for file in here.glob("*.py"))
    mark = hashlib.sha256(repr(stamps).encode()).hexdigest()[:16]
    return os.path.join(numba.config.CACHE_DIR or platformdirs.user_cache_dir("dryward", appauthor=False), mark)


def compiled(function):
    """The function, compiled on its first call and kept if that is possible."""
    return _compiled(function, {})


def inner(function):
    """The same for a function that only compiled code calls: without the door to the interpreter, which costs time."""
    return _compiled(function, {"no_cpython_wrapper": True, "no_cfunc_wrapper": True})


def _compiled(function, more):
    before = numba.config.CACHE_DIR
    try:
        numba.config.CACHE_DIR = _folder()
        return numba.njit(cache=True, **_HOW, **more)(function)
    except (RuntimeError, OSError):  # numba: "no locator available", no folder to write to
        return numba.njit(**_HOW, **more)(function)
    finally:
        numba.config.CACHE_DIR = before
