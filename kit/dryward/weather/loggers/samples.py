"""Sample files of our own making: five that are a mess, and four roofs with a hidden cause.

Every file is written by `files` from the invented roofs of `roof_story`::

    python -c "from dryward.weather.loggers import samples; samples.write('somewhere')"
"""

import re
from contextlib import contextmanager
from datetime import datetime, timedelta
from importlib.resources import as_file
from importlib.resources import files as resources
from pathlib import Path

import numpy as np

from dryward.checks import UnknownName
from dryward.units import from_si
from dryward.weather.loggers import messy, roof_story

CAUSES = ("indoor-humidity", "air-leak", "built-in-water", "rain-leak")
_NAMES = (
    "messy-semicolon",
    "messy-report",
    "messy-dew-point",
    "messy-no-titles",
    "messy-three-places",
    *(f"cause-{cause}" for cause in CAUSES),
)


def names():
    """The sample files there are.

    Returns
    -------
    tuple of str

    Examples
    --------
    >>> names()[0]
    'messy-semicolon'
    """
    return _NAMES


@contextmanager
def sample(name):
    """The path of a sample file, while it is looked at.

    Parameters
    ----------
    name : str
        One of `names`.

    Yields
    ------
    path

    Raises
    ------
    UnknownName
        When there is no such file.

    Examples
    --------
    >>> with sample("cause-air-leak") as path:
    ...     path.suffix
    '.csv'
    """
    if name not in _NAMES:
        raise UnknownName("sample file", name, _NAMES)
    with as_file(resources("dryward.weather") / "data" / "loggers" / f"{name}.csv") as path:
        yield path


def write(folder):
    """Writes every sample file into a folder.

    Parameters
    ----------
    folder : path
        It must exist; files of the same name are replaced.

    Returns
    -------
    tuple of path

    Examples
    --------
    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     len(write(folder))
    9
    """
    made = []
    for name, raw in files().items():
        path = Path(folder, f"{name}.csv")
        path.write_bytes(raw)
        made.append(path)
    return tuple(made)


def files():
    """The contents of every sample file, made anew.

    Returns
    -------
    dict of str to bytes

    Examples
    --------
    >>> files()["messy-semicolon"].decode("cp1252").splitlines()[1]
    'Datum;Uhrzeit;Temperatur °C;rel. Feuchte %'
    """
    made = {
        "messy-semicolon": messy.semicolon(),
        "messy-report": messy.report(),
        "messy-dew-point": messy.dew_point(),
        "messy-no-titles": messy.no_titles(),
        "messy-three-places": messy.three_places(),
    }
    return made | {f"cause-{cause}": cause_file(cause) for cause in CAUSES}


def cause_file(cause, place="cold"):
    """Four weeks of one roof in US units: room, cavity, outdoors, pin meter, rain.

    Parameters
    ----------
    cause : str
        A key of `roof_story.STORIES`.
    place : str, optional
        One of `weather.demos`.

    Returns
    -------
    bytes
        A CSV file.

    Examples
    --------
    >>> cause_file("air-leak").decode().count("\\n")
    673
    """
    story = roof_story.hours(cause, place)
    titles = ["Date and time"]
    columns = []
    for where in ("indoors", "cavity", "outdoors"):
        temperature, vapor = getattr(story, where)
        titles += [f"{where.capitalize()} temperature (F)", f"{where.capitalize()} RH (%)"]
        columns += [from_si(temperature, "degF"), messy.shown_humidity(temperature, vapor)]
    titles += ["Pin meter MC in the roof deck (%)", "Outdoors rain (mm)"]
    columns += [messy.dial(story.wood, story.cavity[0]), story.rain]
    lines = [",".join(titles)]
    start = datetime(messy.YEAR, 1, 1) + timedelta(hours=story.first_hour + 1)
    for i in range(story.wood.size):
        cells = [f"{column[i]:.1f}" for column in columns]
        lines.append(",".join([f"{start + timedelta(hours=i):%Y-%m-%d %H:%M}", *cells]))
    return ("\n".join(lines) + "\n").encode()


def checked_numbers(raw):
    """Every number in a file, to hold a kept file against a new one.

    Parameters
    ----------
    raw : bytes
        A sample file.

    Returns
    -------
    array
        [any], any numbers, in the order of the file.

    Examples
    --------
    >>> checked_numbers(b"a 1.5; 2,5").tolist()
    [1.5, 2.5]
    """
    text = raw.decode("utf-16" if raw[:2] == b"\xff\xfe" else "cp1252")
    return np.array([float(n.replace(",", ".")) for n in re.findall(r"\d+[.,]\d+|\d+", text)])
