"""One number in, one number out; and arrays that stay as they were handed out."""

import numpy as np


def plain(value):
    """A float where there is only one number, otherwise the array.

    Parameters
    ----------
    value : float or array

    Returns
    -------
    float or array

    Examples
    --------
    >>> plain(np.array(2.0))
    2.0
    """
    return float(value) if np.ndim(value) == 0 else value


def seal(result):
    """Make the arrays of a frozen result as unchangeable as the rest of it.

    Parameters
    ----------
    result : dataclass

    Examples
    --------
    >>> from types import SimpleNamespace
    >>> found = SimpleNamespace(depth=np.zeros(2))
    >>> seal(found)
    >>> found.depth.flags.writeable
    False
    """
    for value in vars(result).values():
        if isinstance(value, np.ndarray):
            value.flags.writeable = False
