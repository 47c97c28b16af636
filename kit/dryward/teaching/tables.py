"""The teaching data of the package: TOML files, read once."""

import dataclasses
import tomllib
from functools import cache
from importlib.resources import files

from dryward.checks import BadFile

_DATA = files("dryward.teaching") / "data"


@cache
def table(*path):
    """One TOML file of the teaching data.

    Parameters
    ----------
    *path : str
        Folder and file names below ``data``.

    Returns
    -------
    dict

    Raises
    ------
    BadFile
        When the file is missing or is no TOML.

    Examples
    --------
    >>> "belief" in table("beliefs.toml")
    True
    """
    name = "/".join(path)
    try:
        return tomllib.loads(_DATA.joinpath(*path).read_text("utf-8"))
    except FileNotFoundError:
        raise BadFile(f"The teaching file {name} is missing; install the kit again.") from None
    except tomllib.TOMLDecodeError as reason:
        raise BadFile(f"The teaching file {name} cannot be read: {reason}.") from None


@cache
def names(folder):
    """The TOML files of one data folder, in order.

    Parameters
    ----------
    folder : str

    Returns
    -------
    tuple of str

    Examples
    --------
    >>> names("lessons")[0]
    '00-start.toml'
    """
    return tuple(sorted(each.name for each in (_DATA / folder).iterdir() if each.name.endswith(".toml")))


def build(kind, row, file):
    """One dataclass from one table of a file; a wrong key is said in one sentence.

    Parameters
    ----------
    kind : type
        A frozen dataclass; lists become tuples.
    row : dict
    file : str
        Named in the message.

    Returns
    -------
    object of `kind`

    Raises
    ------
    BadFile
        When a key is missing or not known.

    Examples
    --------
    >>> from dataclasses import dataclass
    >>> @dataclass
    ... class Word:
    ...     term: str
    >>> build(Word, {"term": "perm"}, "words.toml").term
    'perm'
    """
    known = dataclasses.fields(kind)
    needed = {each.name for each in known if each.default is dataclasses.MISSING}
    for key in sorted(set(row) - {each.name for each in known}):
        raise BadFile(f'The teaching file {file} has a key "{key}" that is not known.')
    for key in sorted(needed - set(row)):
        raise BadFile(f'The teaching file {file} lacks the key "{key}".')
    return kind(**{key: tuple(value) if isinstance(value, list) else value for key, value in row.items()})
