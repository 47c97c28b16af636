"""Presets: the roofs and walls that the lessons start from."""

from functools import cache
from importlib import resources

from dryward.building import files
from dryward.checks import UnknownName


def _folder():
    return resources.files("dryward.building").joinpath("data", "assemblies")


@cache
def presets():
    """The ids of all presets, in alphabetical order.

    Returns
    -------
    tuple of str

    Examples
    --------
    >>> "vented-vault" in presets()
    True
    """
    return tuple(sorted(each.name[:-5] for each in _folder().iterdir() if each.name.endswith(".toml")))


@cache
def _read(name):
    return files.parse(_folder().joinpath(f"{name}.toml").read_text(encoding="utf-8"), f"{name}.toml")


def preset(id):
    """A preset assembly by its id.

    Parameters
    ----------
    id : str
        One of `presets()`.

    Returns
    -------
    Assembly

    Raises
    ------
    UnknownName
        With the nearest ids.

    Examples
    --------
    >>> preset("vented-vault").layer("inner membrane").is_membrane
    True
    """
    if id not in presets():
        raise UnknownName("preset", id, presets())
    return _read(id)
