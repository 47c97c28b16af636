"""Five invented logger files, each a mess in its own way."""

from datetime import datetime, timedelta

from dryward import air
from dryward.units import from_si
from dryward.weather.loggers import roof_story
from dryward.weather.loggers.wood_meter import moisture_content

#: The year written in the files; no leap year, as the invented weather.
YEAR = 2023


def shown_humidity(temperature, vapor):
    """What a humidity sensor shows: over liquid water, in frost too.

    Parameters
    ----------
    temperature : array of n
        [degC], -60 to 95.
    vapor : array of n
        [Pa], 0 or more.

    Returns
    -------
    array of n
        [%].

    Examples
    --------
    >>> round(float(shown_humidity(20.0, 1169.4)), 1)
    50.0
    """
    return 100 * vapor / air.saturation_vapor_pressure(temperature, over="water")


def dial(moisture, temperature):
    """What a pin meter shows: the correction for cold wood, backwards.

    Parameters
    ----------
    moisture : array of n
        Of the wood [mass %], 0 to 60.
    temperature : array of n
        Of the wood [degC], -35 to 60.

    Returns
    -------
    array of n
        On the dial [mass %].

    Examples
    --------
    >>> round(float(dial(moisture_content(15.0, -7.0), -7.0)), 6)
    15.0
    """
    zero, one = moisture_content(0.0, temperature), moisture_content(1.0, temperature)
    return (moisture - zero) / (one - zero)


def _some(cause, where, count):
    story = roof_story.hours(cause)
    temperature, vapor = (series[:count] for series in getattr(story, where))
    return temperature, vapor, shown_humidity(temperature, vapor)


def semicolon():
    """Decimal comma, day first, date and clock apart, the Windows alphabet, a doubled row, a word for no reading.

    Returns
    -------
    bytes

    Examples
    --------
    >>> len(semicolon()) > 1000
    True
    """
    temperature, _, humidity = _some("nothing", "cavity", 96)
    lines = ["Logger im Dach;;;", "Datum;Uhrzeit;Temperatur °C;rel. Feuchte %"]
    start = datetime(YEAR, 1, 8, 0, 0)
    for i, (t, rh) in enumerate(zip(temperature, humidity, strict=True)):
        at = start + timedelta(hours=i)
        lines.append(f"{at:%d.%m.%Y;%H:%M};{t:.1f};{rh:.1f}".replace(".", ",").replace(",", ".", 2))
    lines.insert(40, lines[39])
    lines[60] = lines[60].rsplit(";", 2)[0] + ";Fehler;---"
    return ("\r\n".join(lines) + "\r\n").encode("cp1252")


def report():
    """Lines of a report above and below, month first, AM and PM, °F, and the clock put back in November.

    Returns
    -------
    bytes

    Examples
    --------
    >>> len(report()) > 1000
    True
    """
    temperature, _, humidity = _some("air-leak", "indoors", 120)
    lines = [
        "Plot title: upstairs hall",
        "Serial number: 0000-0000",
        "Sample rate: 30 min",
        "",
        "#,Date Time,Temp (°F),RH (%),Battery (V)",
    ]
    summer = datetime(YEAR, 11, 3, 0, 0)
    for i in range(239):
        at = summer + timedelta(minutes=30 * i)
        if at >= datetime(YEAR, 11, 5, 2, 0):
            at -= timedelta(hours=1)
        t, rh = from_si(temperature[i // 2], "degF"), humidity[i // 2]
        lines.append(f"{i + 1},{at.month}/{at.day}/{at:%y %I:%M:%S %p},{t:.2f},{rh:.1f},3.0{i % 3}")
    lines += ["", "End of file,,,,", "Maximum,,80,60,"]
    return ("\n".join(lines) + "\n").encode("utf-8-sig")


def dew_point():
    """Tabs, UTF-16, times with their zone, dew point in place of humidity, gaps and dashes.

    Returns
    -------
    bytes

    Examples
    --------
    >>> len(dew_point()) > 1000
    True
    """
    temperature, vapor, _ = _some("indoor-humidity", "cavity", 110)
    dew = air.dew_point(vapor, over="water")
    lines = ["Timestamp\tTemp, °C\tDew Point, °C\tLight (lux)"]
    start = datetime(YEAR, 2, 1, 0, 0)
    for i in range(110):
        if 30 <= i < 39:
            continue
        cell = "--" if i in (70, 71) else f"{dew[i]:.2f}"
        lines.append(f"{start + timedelta(hours=i):%Y-%m-%dT%H:%M:%S}-05:00\t{temperature[i]:.2f}\t{cell}\t0")
    return ("\n".join(lines) + "\n").encode("utf-16")


def no_titles():
    """No titles at all, quoted decimal commas between commas, days and months that could be either.

    Returns
    -------
    bytes

    Examples
    --------
    >>> len(no_titles()) > 1000
    True
    """
    temperature, _, humidity = _some("nothing", "indoors", 72)
    lines = []
    start = datetime(YEAR, 3, 4, 6, 0)
    for i in range(72):
        t, rh = (f"{v:.1f}".replace(".", ",") for v in (temperature[i], humidity[i]))
        at = start + timedelta(hours=i)
        lines.append(f'"{at:%d/%m/%Y %H:%M}","{t}","{rh}"')
    return ("\n".join(lines) + "\n").encode()


def three_places():
    """Three places in one file, humidity as a fraction, rows out of order, error codes, a last line cut off.

    Returns
    -------
    bytes

    Examples
    --------
    >>> len(three_places()) > 1000
    True
    """
    story = roof_story.hours("rain-leak")
    titles = "Time;Room T [C];Room RH [-];Ridge T [C];Ridge RH [-];Outside T [C];Outside RH [-];Wood MC [%]"
    start, rows = datetime(YEAR, 3, 25, 0, 0), []
    shown = dial(story.wood, story.cavity[0])
    for i in range(72):
        at = start + timedelta(hours=i)
        if at >= datetime(YEAR, 3, 26, 2, 0):
            at += timedelta(hours=1)
        cells = []
        for where in ("indoors", "cavity", "outdoors"):
            temperature, vapor = getattr(story, where)
            cells += [f"{temperature[i]:.1f}", f"{shown_humidity(temperature[i], vapor[i]) / 100:.3f}"]
        cells.append(f"{shown[i]:.1f}")
        if i in (20, 21):
            cells[2] = "-999"
        rows.append(f"{at:%Y/%m/%d %H:%M};" + ";".join(cells))
    rows[50], rows[51] = rows[51], rows[50]
    return ("\n".join([titles, *rows]) + "\n2023/03/28").encode()
