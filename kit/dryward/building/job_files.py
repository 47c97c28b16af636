"""Job files: a roof, its place, its room and its leak in one TOML file.

A job file holds a whole assembly in the table ``[assembly]``, so it opens
without anything else.  A plain assembly file opens as a job too, with a
place and a room that the reader must then choose.
"""

import dataclasses
import tomllib
from pathlib import Path

import tomli_w

from dryward import storage
from dryward.building import files, written
from dryward.building.job import Job, Place, Room, Tightness, Vent
from dryward.checks import BadFile, PlainError, ended
from dryward.units import read

# Tables of the file: what they make, and which words may carry a unit.
_TABLES = {
    "place": (Place, {"temperature": "temperature", "relative_humidity": "relative humidity"}),
    "room": (
        Room,
        {
            "temperature": "temperature",
            "relative_humidity": "relative humidity",
            "summer_temperature": "temperature",
            "summer_relative_humidity": "relative humidity",
            "fresh_air": "air flow",
        },
    ),
    "tightness": (
        Tightness,
        {"volume": "volume", "area": "area", "share": "relative humidity", "height": "length"},
    ),
    "vent": (Vent, {"length": "length"}),
}
_TOP = {"azimuth": None, "absorptance": None, "start_humidity": "relative humidity", "years": None, "design": None}


def _from_1(table):
    """Version 1 knew one room air, and took this one for the warmest month of every roof; its year was the typical."""
    room = table.get("room", {})
    if isinstance(room, dict):  # anything else is refused where it is read
        room = {"summer_temperature": 24.0, "summer_relative_humidity": 0.5, **room}
    return {"design": "typical", **table, "room": room}


#: A whole job.
FORMAT = storage.Format("dryward job", 2, {1: _from_1})


def parse(text, name="the file"):
    """A job from the text of a job file or of an assembly file.

    Parameters
    ----------
    text : str
        TOML.
    name : str, optional
        What the message calls the file.

    Returns
    -------
    Job

    Raises
    ------
    BadFile
        One sentence with the place and what is wrong there.

    Examples
    --------
    >>> from dryward.building import preset
    >>> parse(words(Job(preset("vented-vault")))).place.id
    'cold'
    """
    name = str(name)[-60:]
    try:
        table = tomllib.loads(files.refuse_long_keys(text, name))
    except BadFile:
        raise
    except (ValueError, RecursionError):
        table = {}
    if table.get("format") != FORMAT.name:
        return Job(files.parse(text, name))  # an assembly file, or a sentence about what it is not
    try:
        return _job(table)
    except PlainError as error:
        raise BadFile(ended(f"{name}: {error}")) from None


def _job(table):
    table = FORMAT.current(table)
    for word in table:
        if word not in ("format", "version", "assembly", *_TABLES, *_TOP):
            raise BadFile(f'the top of the file: the word "{word[:40]}" is not known')
    if not isinstance(table.get("assembly"), dict):
        raise BadFile("the table [assembly] is missing")
    parts = {key: _part(key, table[key]) for key in _TABLES if key in table}
    top = {key: _value(key, table[key], quantity) for key, quantity in _TOP.items() if key in table}
    return Job(written.assembly(written.FORMAT.current(table["assembly"])), **parts, **top)


def _part(key, table):
    kind, units = _TABLES[key]
    if not isinstance(table, dict):
        raise BadFile(f"{key}: it must be a table of words and values")
    known = [field.name for field in dataclasses.fields(kind)]
    for word in table:
        if word not in known:
            raise BadFile(f'{key}: the word "{word[:40]}" is not known')
    try:
        return kind(**{word: _value(f"{key}, {word}", value, units.get(word)) for word, value in table.items()})
    except BadFile:
        raise
    except PlainError as error:
        raise BadFile(f"{key}: {str(error).rstrip('.?')}") from None
    except (TypeError, ValueError, OverflowError):
        raise BadFile(f"{key}: a value is not of the right kind") from None


def _value(place, value, quantity):
    if isinstance(value, list):
        if len(value) > 12:
            raise BadFile(f"{place} must have at most 12 values")
        return tuple(_value(place, each, quantity) for each in value)
    if isinstance(value, str):
        if quantity is None and len(value) <= 400:
            return value
        if quantity:
            return read(value, quantity)
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise BadFile(f"{place} must be a number or a short text")
    try:
        float(value)
    except OverflowError:
        raise BadFile(f"{place} must be a number of ordinary size") from None
    return value


def words(job):
    """A job as the text of a file.

    Parameters
    ----------
    job : Job

    Returns
    -------
    str
        TOML that opens without the library.

    Examples
    --------
    >>> from dryward.building import preset
    >>> words(Job(preset("vented-vault"))).splitlines()[0]
    'format = "dryward job"'
    """
    table = FORMAT.headed({key: getattr(job, key) for key in _TOP})
    for key in _TABLES:
        part = getattr(job, key)
        if part is not None:
            table[key] = {k: list(v) if isinstance(v, tuple) else v for k, v in dataclasses.asdict(part).items()}
    return tomli_w.dumps({**table, "assembly": written.table(job.assembly)})


def load(path):
    """A job and a token that says which state of the file it was.

    Parameters
    ----------
    path : str or Path
        A job file or an assembly file.

    Returns
    -------
    Job, str

    Raises
    ------
    BadFile
        One sentence with file, place and what is wrong there.
    """
    text, token = storage.read_text(path, "an assembly")
    return parse(text, Path(path).name), token


def save(job, path, expect=None):
    """Write a job as a file, whole or not at all.

    Parameters
    ----------
    job : Job
    path : str or Path
    expect : str, optional
        As in `storage.save_text`.

    Returns
    -------
    str
        The token of the written file.

    Raises
    ------
    BadFile
        When it cannot be written, or has changed; the old file is untouched.
    """
    return storage.save_text(words(job), path, expect)
