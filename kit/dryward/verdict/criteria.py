"""What counts as dry, damp and wet: the three states, and the limits between them with their sources.

There is one meaning of these words in the kit.  ``wet``: a damage limit is
passed, or water grows from year to year.  ``damp``: a caution limit is
passed.  ``dry``: neither.  A fourth word, ``not known yet``, stands where
nothing was worked out.
"""

import csv
import math
from dataclasses import dataclass
from functools import cache
from importlib import resources

import numpy as np

from dryward.checks import BadFile, UnknownName

DRY, DAMP, WET, UNKNOWN = "dry", "damp", "wet", "not known yet"
#: From the best to the worst.
STATES = (DRY, DAMP, WET)


def worst_state(states):
    """The worst of some states; dry for none."""
    known = [each for each in states if each in STATES]
    return max(known, key=STATES.index, default=DRY)


@dataclass(frozen=True)
class Criterion:
    """One limit that is judged by: a row of the table.

    Attributes
    ----------
    id : str
    what : str
        The quantity, in words.
    unit : str
        Of the limits; empty for a plain share.
    caution, damage : float
        From the first on a value is damp, from the second on wet.
    source, where, how_read, note : str
    """

    id: str
    what: str
    unit: str
    caution: float
    damage: float
    source: str
    where: str
    how_read: str
    note: str = ""

    def state(self, value):
        """Dry, damp or wet.

        Parameters
        ----------
        value : float or array
            In the unit of the limits.

        Returns
        -------
        str or array of str
        """
        found = np.asarray(STATES, dtype=object)[self.rank(value)]
        return found if np.ndim(value) else str(found)

    def rank(self, value):
        """The same as a number: 0 dry, 1 damp, 2 wet."""
        value = np.asarray(value, dtype=float)
        return (value >= self.caution).astype(int) + (value >= self.damage)

    def reach(self, value):
        """How far a value is on the way to damage [-]; what has no damage limit goes by caution."""
        return float(value) / (self.damage if math.isfinite(self.damage) else 2.0 * self.caution)


def criterion(id):
    """The limit of that id.

    Parameters
    ----------
    id : str

    Returns
    -------
    Criterion

    Raises
    ------
    UnknownName
        When there is none.

    Examples
    --------
    >>> criterion("wood-moisture").state([12.0, 22.0, 30.0]).tolist()
    ['dry', 'damp', 'wet']
    """
    rows = criteria()
    if id not in rows:
        raise UnknownName("criterion", id, rows)
    return rows[id]


@cache
def criteria():
    """All limits.

    Returns
    -------
    dict of str to Criterion

    Raises
    ------
    BadFile
        When a row lacks its source or a number.

    Examples
    --------
    >>> all(each.caution <= each.damage for each in criteria().values())
    True
    """
    text = resources.files("dryward.verdict").joinpath("data/criteria.csv").read_text(encoding="utf-8")
    found = {}
    for row in csv.DictReader(text.splitlines()):
        if not all(row[key] for key in ("id", "what", "source", "where", "how_read")):
            raise BadFile(f"The row {row['id'] or '?'} of the criteria lacks its source or how it was read.")
        try:
            row["caution"], row["damage"] = float(row["caution"]), float(row["damage"])
        except ValueError:
            raise BadFile(f"The row {row['id']} of the criteria has a limit that is no number.") from None
        found[row["id"]] = Criterion(**row)
    return found
