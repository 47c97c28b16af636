"""Series that only a heavy library can work out, kept in the user's cache.

pvlib brings pandas and SciPy: 75 MB and a second in every learner's kernel,
for the sun of years that do not change.  What is in the cache is loaded
without them.  Where no folder can be written nothing is kept; nothing else
changes.
"""

import hashlib
import inspect
import os
import pickle
from contextlib import suppress
from functools import wraps
from importlib.metadata import version
from pathlib import Path

import numpy as np
import platformdirs

#: Files that are kept; the ones not made for longest go.
MOST = 200


def folder():
    """Where series are kept."""
    return Path(platformdirs.user_cache_dir("dryward", appauthor=False)) / "series"


def kept(function):
    """A function whose array is worked out once for each of its arguments.

    Parameters
    ----------
    function : function
        Of arguments that say all about its result; gives an array, or several
        of one length.

    Returns
    -------
    function
        The same, but the result is one array.

    Notes
    -----
    A result is known by the arguments, by the source of the function's module
    and by the versions of the libraries.

    Examples
    --------
    >>> double = kept(lambda series: 2.0 * series)
    >>> double(np.array([1.0, 2.5]))
    array([2., 5.])
    """
    source = inspect.getsource(inspect.getmodule(function))
    libraries = [version(name) for name in ("pvlib", "pandas", "numpy")]

    @wraps(function)
    def known(*args):
        what = pickle.dumps((source, libraries, function.__qualname__, args), protocol=5)
        path = folder() / f"{hashlib.sha256(what).hexdigest()[:32]}.npy"
        try:
            return np.load(path, allow_pickle=False)
        except (OSError, ValueError, EOFError):  # not there, or spoiled
            found = np.asarray(function(*args))
            _keep(path, found)
            return found

    return known


def _keep(path, found):
    part = path.with_name(f"{path.stem}.{os.getpid()}.part")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with part.open("wb") as file:
            np.save(file, found, allow_pickle=False)
        part.replace(path)  # whole or not at all, whoever reads meanwhile
        for old in sorted(path.parent.iterdir(), key=lambda each: each.stat().st_mtime)[:-MOST]:
            old.unlink(missing_ok=True)
    except OSError:
        with suppress(OSError):
            part.unlink()
