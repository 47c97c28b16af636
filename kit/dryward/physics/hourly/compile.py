"""Compiling once: the compiled march is kept where the user may write.

Numba looks for a folder itself: beside the module, else in the user's own
cache.  Where neither can be written the march is compiled for this process
only; nothing else changes.
"""

import numba

# error_model "numpy": no test for a zero divisor; a NaN is caught by the solver.
_HOW = {"nogil": True, "error_model": "numpy", "fastmath": {"contract", "arcp", "nsz"}}


def compiled(function):
    """The function, compiled on its first call and kept if that is possible."""
    try:
        return numba.njit(cache=True, **_HOW)(function)
    except RuntimeError:  # numba: "no locator available", no folder to write to
        return numba.njit(**_HOW)(function)
