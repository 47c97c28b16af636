"""One number in, one number out."""

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
