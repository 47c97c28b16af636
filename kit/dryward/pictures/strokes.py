"""Small shapes and numbers of drawings: arrows, thinned lines, round axis ends, sentences."""

import numpy as np


def sentences(*parts):
    """Sentences as one text; a unit that ends in a dot needs no second one.

    Examples
    --------
    >>> sentences("It is 2 in..", "", "It is dry.")
    'It is 2 in. It is dry.'
    """
    return " ".join(part.replace("..", ".") for part in parts if part)


def arrow(start, y, end, width, head=None):
    """Corners of a level arrow from `start` to `end`, as wide as `width`."""
    head = 1.6 * width if head is None else head
    along = min(abs(end - start), 0.9 * head)
    neck = end - np.sign(end - start) * along
    half = width / 2
    return np.array(
        [(start, y - half), (neck, y - half), (neck, y - head / 2), (end, y),
         (neck, y + head / 2), (neck, y + half), (start, y + half)]
    )  # fmt: skip


def thinned(x, y, columns):
    """A long line as its lowest and highest value per pixel column.

    Parameters
    ----------
    x : array (n,)
        Rising.
    y : array (n,)
    columns : int
        Pixel columns the line covers.

    Returns
    -------
    tuple of array
        x and y with at most two points a column, in order; unchanged where
        they are no longer than that.

    Examples
    --------
    >>> x, y = thinned(np.arange(10.0), np.array([0, 9, 1, 2, 1, 0, 1, 2, 8, 1.0]), 2)
    >>> y
    array([0., 9., 0., 8.])
    """
    x, y = np.asarray(x, dtype=float), np.asarray(y, dtype=float)
    if len(x) <= 2 * columns:
        return x, y
    each = -(-len(x) // columns)
    rows = -(-len(x) // each)
    padded = np.full(rows * each, np.nan)
    padded[: len(y)] = y
    table = padded.reshape(rows, each)
    start = np.arange(rows) * each
    # A column without any number keeps its first point, so that a gap stays one.
    low = start + np.where(np.isnan(table), np.inf, table).argmin(axis=1)
    high = start + np.where(np.isnan(table), -np.inf, table).argmax(axis=1)
    kept = np.unique(np.concatenate([low, high]))
    return x[kept], y[kept]


def ceiling(value, steps):
    """The first step that is not below the value, for axes that seldom change.

    Examples
    --------
    >>> ceiling(2600, (1500, 3000, 6000))
    3000
    """
    for step in steps:
        if value <= step:
            return step
    return steps[-1]
