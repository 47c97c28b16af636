"""Sample files of our own making: five that are a mess, and four roofs with a hidden cause.

Every file is written by `files` from the invented roofs of `roof_story`::

    python -c "from dryward.weather.loggers import samples; samples.write('somewhere')"
"""

from contextlib import contextmanager
from datetime import datetime, timedelta
from importlib.resources import as_file
from importlib.resources import files as resources
from pathlib import Path

import numpy as np

from dryward import air
from dryward.checks import UnknownName
from dryward.units import from_si
from dryward.weather.loggers import roof_story
from dryward.weather.loggers.wood_meter import moisture_content

_YEAR = 2023  # no leap year, as the invented weather
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
        "messy-semicolon": _semicolon(),
        "messy-report": _report(),
        "messy-dew-point": _dew_point(),
        "messy-no-titles": _no_titles(),
        "messy-three-places": _three_places(),
    }
    return made | {f"cause-{cause}": cause_file(cause) for cause in CAUSES}


def _shown_humidity(temperature, vapor):
    """What a sensor shows [%]: over liquid water, in frost too."""
    return 100 * vapor / air.saturation_vapor_pressure(temperature, over="water")


def _dial(moisture, temperature):
    """What a pin meter shows [%]: the correction for cold wood, backwards."""
    zero, one = moisture_content(0.0, temperature), moisture_content(1.0, temperature)
    return (moisture - zero) / (one - zero)


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
        columns += [from_si(temperature, "degF"), _shown_humidity(temperature, vapor)]
    titles += ["Pin meter MC in the roof deck (%)", "Outdoors rain (mm)"]
    columns += [_dial(story.wood, story.cavity[0]), story.rain]
    lines = [",".join(titles)]
    start = datetime(_YEAR, 1, 1) + timedelta(hours=story.first_hour + 1)
    for i in range(story.wood.size):
        cells = [f"{column[i]:.1f}" for column in columns]
        lines.append(",".join([f"{start + timedelta(hours=i):%Y-%m-%d %H:%M}", *cells]))
    return ("\n".join(lines) + "\n").encode()


def _some(cause, where, count):
    story = roof_story.hours(cause)
    temperature, vapor = (series[:count] for series in getattr(story, where))
    return temperature, vapor, _shown_humidity(temperature, vapor)


def _semicolon():
    """Decimal comma, day first, date and clock apart, the Windows alphabet, a doubled row, a word for no reading."""
    temperature, _, humidity = _some("nothing", "cavity", 96)
    lines = ["Logger im Dach;;;", "Datum;Uhrzeit;Temperatur °C;rel. Feuchte %"]
    start = datetime(_YEAR, 1, 8, 0, 0)
    for i, (t, rh) in enumerate(zip(temperature, humidity, strict=True)):
        at = start + timedelta(hours=i)
        lines.append(f"{at:%d.%m.%Y;%H:%M};{t:.1f};{rh:.1f}".replace(".", ",").replace(",", ".", 2))
    lines.insert(40, lines[39])
    lines[60] = lines[60].rsplit(";", 2)[0] + ";Fehler;---"
    return ("\r\n".join(lines) + "\r\n").encode("cp1252")


def _report():
    """Lines of a report above and below, month first, AM and PM, °F, and the clock put back in November."""
    temperature, _, humidity = _some("air-leak", "indoors", 120)
    lines = [
        "Plot title: upstairs hall",
        "Serial number: 0000-0000",
        "Sample rate: 30 min",
        "",
        "#,Date Time,Temp (°F),RH (%),Battery (V)",
    ]
    summer = datetime(_YEAR, 11, 3, 0, 0)
    for i in range(239):
        at = summer + timedelta(minutes=30 * i)
        if at >= datetime(_YEAR, 11, 5, 2, 0):
            at -= timedelta(hours=1)
        t, rh = from_si(temperature[i // 2], "degF"), humidity[i // 2]
        lines.append(f"{i + 1},{at.month}/{at.day}/{at:%y %I:%M:%S %p},{t:.2f},{rh:.1f},3.0{i % 3}")
    lines += ["", "End of file,,,,", "Maximum,,80,60,"]
    return ("\n".join(lines) + "\n").encode("utf-8-sig")


def _dew_point():
    """Tabs, UTF-16, times with their zone, dew point in place of humidity, gaps and dashes."""
    temperature, vapor, _ = _some("indoor-humidity", "cavity", 110)
    dew = air.dew_point(vapor, over="water")
    lines = ["Timestamp\tTemp, °C\tDew Point, °C\tLight (lux)"]
    start = datetime(_YEAR, 2, 1, 0, 0)
    for i in range(110):
        if 30 <= i < 39:
            continue
        cell = "--" if i in (70, 71) else f"{dew[i]:.2f}"
        lines.append(f"{start + timedelta(hours=i):%Y-%m-%dT%H:%M:%S}-05:00\t{temperature[i]:.2f}\t{cell}\t0")
    return ("\n".join(lines) + "\n").encode("utf-16")


def _no_titles():
    """No titles at all, quoted decimal commas between commas, days and months that could be either."""
    temperature, _, humidity = _some("nothing", "indoors", 72)
    lines = []
    start = datetime(_YEAR, 3, 4, 6, 0)
    for i in range(72):
        t, rh = (f"{v:.1f}".replace(".", ",") for v in (temperature[i], humidity[i]))
        at = start + timedelta(hours=i)
        lines.append(f'"{at:%d/%m/%Y %H:%M}","{t}","{rh}"')
    return ("\n".join(lines) + "\n").encode()


def _three_places():
    """Three places in one file, humidity as a fraction, rows out of order, error codes, a last line cut off."""
    story = roof_story.hours("rain-leak")
    titles = "Time;Room T [C];Room RH [-];Ridge T [C];Ridge RH [-];Outside T [C];Outside RH [-];Wood MC [%]"
    start, rows = datetime(_YEAR, 3, 25, 0, 0), []
    dial = _dial(story.wood, story.cavity[0])
    for i in range(72):
        at = start + timedelta(hours=i)
        if at >= datetime(_YEAR, 3, 26, 2, 0):
            at += timedelta(hours=1)
        cells = []
        for where in ("indoors", "cavity", "outdoors"):
            temperature, vapor = getattr(story, where)
            cells += [f"{temperature[i]:.1f}", f"{_shown_humidity(temperature[i], vapor[i]) / 100:.3f}"]
        cells.append(f"{dial[i]:.1f}")
        if i in (20, 21):
            cells[2] = "-999"
        rows.append(f"{at:%Y/%m/%d %H:%M};" + ";".join(cells))
    rows[50], rows[51] = rows[51], rows[50]
    return ("\n".join([titles, *rows]) + "\n2023/03/28").encode()


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
    import re

    text = raw.decode("utf-16" if raw[:2] == b"\xff\xfe" else "cp1252")
    return np.array([float(n.replace(",", ".")) for n in re.findall(r"\d+[.,]\d+|\d+", text)])
