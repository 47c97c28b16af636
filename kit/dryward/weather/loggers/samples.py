"""Sample files of our own making: five that are a mess, and six roofs with a hidden cause, or none.

All are made of one invented roof with something wrong with it.  Nothing here
is measured and nothing is meant for design: four nodes (room, cavity, deck
wood, outdoors), with just enough in them that each cause leaves its own trace
in the readings.  The weather is that of an invented place.

Room     outdoor vapor plus what people make, carried out by the fan over a
         few hours; a shower at seven and at nine in the evening.
Cavity   no storage: a mean of room, slow film, deck wood and outdoors, each
         weighted by how open the way is.
Deck     sun warms it, a clear sky cools it; its wood holds water and gives
         the vapor pressure that belongs to its moisture and temperature.
         What is above saturation there goes to frost, a part of it.
Rain     the same wet days in every story; only a leaky roof lets it in.

The files are written by::

    python -c "from dryward.weather.loggers import samples; samples.write('somewhere')"
"""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime, timedelta
from importlib.resources import as_file
from importlib.resources import files as resources
from os import PathLike
from pathlib import Path

import numpy as np

from dryward import air
from dryward.checks import Floats, UnknownName
from dryward.units import DAY, KELVIN, STEFAN_BOLTZMANN, from_si, to_si
from dryward.weather.indoor import vapor_excess
from dryward.weather.loggers.readings import moisture_content
from dryward.weather.places import demo

CAUSES = ("indoor-humidity", "air-leak", "blocked-vents", "built-in-water", "rain-leak")
#: The roof with no fault, in a foggy January.
FOG = "outdoor-air"
_NAMES = (
    "messy-semicolon",
    "messy-report",
    "messy-dew-point",
    "messy-no-titles",
    "messy-three-places",
    *(f"cause-{cause}" for cause in (*CAUSES, FOG)),
)


def names() -> tuple[str, ...]:
    """The sample files there are."""
    return _NAMES


@contextmanager
def sample(name: str) -> Iterator[Path]:
    """The path of a sample file, while it is looked at."""
    if name not in _NAMES:
        raise UnknownName("sample file", name, _NAMES)
    with as_file(resources("dryward.weather") / "data" / "loggers" / f"{name}.csv") as path:
        yield path


def write(folder: str | PathLike[str]) -> tuple[Path, ...]:
    """Writes every sample file into a folder."""
    made = []
    for name, raw in files().items():
        path = Path(folder, f"{name}.csv")
        path.write_bytes(raw)
        made.append(path)
    return tuple(made)


def files() -> dict[str, bytes]:
    """The contents of every sample file, made anew."""
    made = {
        "messy-semicolon": semicolon(),
        "messy-report": report(),
        "messy-dew-point": dew_point(),
        "messy-no-titles": no_titles(),
        "messy-three-places": three_places(),
    }
    return made | {f"cause-{cause}": cause_file(cause) for cause in (*CAUSES, FOG)}


def cause_file(cause: str, place: str = "cold") -> bytes:
    """Four weeks of one roof in US units: room, cavity, outdoors, pin meter, rain."""
    story = foggy_weeks(place) if cause == FOG else four_weeks(cause, place)
    titles = ["Date and time"]
    columns: list[Floats] = []
    for where in ("indoors", "cavity", "outdoors"):
        temperature, vapor = getattr(story, where)
        named = "Roof" if where == "cavity" else where.capitalize()
        titles += [f"{named} temperature (F)", f"{named} RH (%)"]
        columns += [from_si(temperature, "degF"), shown_humidity(temperature, vapor)]
    titles += ["Pin meter MC in the roof deck (%)", "Outdoors rain (mm)"]
    columns += [dial(story.wood, story.cavity[0]), story.rain]
    lines = [",".join(titles)]
    start = datetime(YEAR, 1, 1) + timedelta(hours=story.first_hour + 1)
    for i in range(story.wood.size):
        cells = [f"{column[i]:.1f}" for column in columns]
        lines.append(",".join([f"{start + timedelta(hours=i):%Y-%m-%d %H:%M}", *cells]))
    return ("\n".join(lines) + "\n").encode()


# --- the roof all files are made of ------------------------------------------------

DAYS = 28


@dataclass(frozen=True)
class Fault:
    """What is wrong, in numbers: openness of the ways to the cavity, and what the wood starts with."""

    first_day: int  # day of the year on which it begins
    fresh_air: float  # [m3/s]
    film: float  # openness of the slow way from the room [-]
    hole: float  # openness of the fast way from the room [-]
    outside: float  # openness to outdoors [-]
    wood: float  # openness to the wood [-]
    moisture: float  # of the wood at the start [mass %]
    rain_in: float = 0.0  # rise of the wood's moisture for each mm of rain [mass %]


FAULTS = {
    "indoor-humidity": Fault(8, 0.011, 0.6, 0.0, 0.5, 1.5, 15.0),
    "air-leak": Fault(318, 0.028, 0.03, 1.2, 1.4, 0.5, 14.0),
    # The ceiling is airtight; what seeps through it has no way out.
    "blocked-vents": Fault(318, 0.028, 0.22, 0.0, 0.06, 0.9, 14.0),
    "built-in-water": Fault(66, 0.028, 0.03, 0.0, 0.5, 2.0, 29.0),
    "rain-leak": Fault(276, 0.035, 0.03, 0.0, 0.8, 1.6, 13.0, 0.35),
    "nothing": Fault(8, 0.032, 0.02, 0.0, 2.5, 0.4, 12.0),
}
_FROST = 1.5  # openness to a frosty deck [-]
#: How much nearer to the room than the deck the sensor is, without a leak and for each openness of one [-].
_HOLLOW = 0.12, 0.12
# Wet spells: first hour, hours, mm an hour.
_RAIN = ((80, 7, 1.6), (201, 5, 2.2), (333, 9, 1.2), (452, 6, 1.8), (560, 4, 2.4))


@dataclass(frozen=True, eq=False)
class Story:
    """The story's series, hourly: temperatures [degC], vapor pressures [Pa], wood [mass %], rain [mm]."""

    first_hour: int
    indoors: tuple[Floats, Floats]
    cavity: tuple[Floats, Floats]
    outdoors: tuple[Floats, Floats]
    wood: Floats
    rain: Floats


def _wood_humidity(moisture: float) -> float:
    """Relative humidity at the wood's surface, from its moisture [mass %]; a rough S-curve."""
    return 1.0 - np.exp(-((moisture / 13.0) ** 1.9))


def _slow(series: Floats, hours: float) -> Floats:
    """A series behind a film: it follows over this many hours."""
    found, value = np.empty_like(series), series[:48].mean()
    for i, now in enumerate(series):
        value += (now - value) / hours
        found[i] = value
    return found


def _room(outdoor_vapor: Floats, fault: Fault) -> tuple[Floats, Floats]:
    clock = np.arange(outdoor_vapor.size) % 24
    made = 7.5 + 3.0 * np.isin(clock, (17, 18)) + 1.5 * (clock > 16)  # kg a day
    shower = np.isin(clock, (7, 21)).astype(float)
    temperature = 20.8 + 0.5 * np.cos(2 * np.pi * (clock - 19) / 24)
    level = _slow(outdoor_vapor, 6.0) + _slow(vapor_excess(made / DAY, fault.fresh_air, 21.0), 5.0)
    steam, held = np.empty_like(level), 0.0
    for i, now in enumerate(shower):
        held = 0.45 * held + 260.0 * now
        steam[i] = held
    return temperature, np.minimum(level + steam, 0.98 * air.saturation_vapor_pressure(temperature))


def four_weeks(cause: str, place: str = "cold") -> Story:
    """Four weeks of an invented roof with one of `FAULTS`, in one of `weather.demos`."""
    fault, year = FAULTS[cause], demo(place)
    pick = (np.arange(DAYS * 24) + (fault.first_day - 1) * 24) % year.hours
    outside_temperature, outside_vapor = year.temperature[pick], year.vapor_pressure[pick]
    assert year.sky_longwave is not None  # every invented year has a sky and a sun
    assert year.global_horizontal is not None
    rain = np.zeros(pick.size)
    for start, count, rate in _RAIN:
        rain[start : start + count] = rate
    sky = year.sky_longwave[pick] / (STEFAN_BOLTZMANN * (outside_temperature + KELVIN) ** 4)
    deck = outside_temperature + 0.022 * year.global_horizontal[pick] - 12.0 * (1.0 - sky) + 0.6
    room_temperature, room_vapor = _room(outside_vapor, fault)
    behind_film = _slow(room_vapor, 60.0)
    moisture, wood, vapor = fault.moisture, np.empty(pick.size), np.empty(pick.size)
    ways = fault.film + fault.hole + fault.outside + fault.wood
    saturation = air.saturation_vapor_pressure(deck)
    # The sensor hangs a little inside of the deck, and leaking air is warm.
    hollow = deck + (_HOLLOW[0] + _HOLLOW[1] * fault.hole) * (room_temperature - deck)
    hollow_saturation = air.saturation_vapor_pressure(hollow)
    for i in range(pick.size):
        of_wood = _wood_humidity(moisture) * saturation[i]
        mixed = (
            fault.film * behind_film[i] + fault.hole * room_vapor[i]
            + fault.outside * outside_vapor[i] + fault.wood * of_wood
        ) / ways  # fmt: skip
        frost = _FROST if mixed > saturation[i] else 0.0
        vapor[i] = min((ways * mixed + frost * saturation[i]) / (ways + frost), 0.995 * hollow_saturation[i])
        moisture += 7e-5 * fault.wood * (vapor[i] - of_wood) + fault.rain_in * rain[i]
        wood[i] = moisture
    return Story(
        int(pick[0]),
        (room_temperature, room_vapor),
        (hollow, vapor),
        (outside_temperature, outside_vapor),
        wood,
        rain,
    )


#: Of the foggy January: the mean outdoors [degC], and how humid the fog is over water, on average and by how much more
#: or less [-].
_FOG_MEAN, _FOG_HUMIDITY, _FOG_SWING = to_si(21.0, "degF"), 0.90, 0.02


def foggy_weeks(place: str = "cold") -> Story:
    """Four weeks of a vented roof under snow in a foggy January: its air is the air outdoors."""
    story, fault = four_weeks("nothing", place), FAULTS["nothing"]
    outside = _FOG_MEAN + 0.25 * (story.outdoors[0] - story.outdoors[0].mean())
    hours = np.arange(outside.size)
    humidity = _FOG_HUMIDITY - _FOG_SWING * np.cos(2 * np.pi * (hours - 5) / 24)
    # Rime takes what is above saturation over ice.
    most = 0.99 * air.saturation_vapor_pressure(outside)
    vapor = np.minimum(humidity * air.saturation_vapor_pressure(outside, over="water"), most)
    room = _room(vapor, fault)
    moisture, wood = fault.moisture, np.empty(outside.size)
    of_wood = air.saturation_vapor_pressure(outside, over="water")
    for i in hours:
        moisture += 7e-5 * fault.wood * (vapor[i] - _wood_humidity(moisture) * of_wood[i])
        wood[i] = moisture
    dry = np.zeros(outside.size)
    return Story(story.first_hour, room, (outside, vapor), (outside, vapor), wood, dry)


# --- files that are a mess, each in its own way -----------------------------------

#: The year written in the files; no leap year, as the invented weather.
YEAR = 2023


def shown_humidity(temperature: Floats, vapor: Floats) -> Floats:
    """What a humidity sensor shows [%]: over liquid water, in frost too."""
    return 100 * vapor / air.saturation_vapor_pressure(temperature, over="water")


def dial(moisture: Floats, temperature: Floats) -> Floats:
    """What a pin meter shows: the correction for cold wood, backwards."""
    zero, one = moisture_content(0.0, temperature), moisture_content(1.0, temperature)
    return (moisture - zero) / (one - zero)


def _some(cause: str, where: str, count: int) -> tuple[Floats, Floats, Floats]:
    story = four_weeks(cause)
    temperature, vapor = (series[:count] for series in getattr(story, where))
    return temperature, vapor, shown_humidity(temperature, vapor)


def semicolon() -> bytes:
    """Decimal comma, day first, date and clock apart, the Windows alphabet, a doubled row, a word for no reading."""
    temperature, _, humidity = _some("nothing", "cavity", 96)
    lines = ["Logger im Dach;;;", "Datum;Uhrzeit;Temperatur °C;rel. Feuchte %"]
    start = datetime(YEAR, 1, 8, 0, 0)
    for i, (t, rh) in enumerate(zip(temperature, humidity, strict=True)):
        at = start + timedelta(hours=i)
        lines.append(f"{at:%d.%m.%Y;%H:%M};{t:.1f};{rh:.1f}".replace(".", ",").replace(",", ".", 2))
    lines.insert(40, lines[39])
    lines[60] = lines[60].rsplit(";", 2)[0] + ";Fehler;---"
    return ("\r\n".join(lines) + "\r\n").encode("cp1252")


def report() -> bytes:
    """Lines of a report above and below, month first, AM and PM, °F, and the clock put back in November."""
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


def dew_point() -> bytes:
    """Tabs, UTF-16, times with their zone, dew point in place of humidity, gaps and dashes."""
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


def no_titles() -> bytes:
    """No titles at all, quoted decimal commas between commas, days and months that could be either."""
    temperature, _, humidity = _some("nothing", "indoors", 72)
    lines = []
    start = datetime(YEAR, 3, 4, 6, 0)
    for i in range(72):
        t, rh = (f"{v:.1f}".replace(".", ",") for v in (temperature[i], humidity[i]))
        at = start + timedelta(hours=i)
        lines.append(f'"{at:%d/%m/%Y %H:%M}","{t}","{rh}"')
    return ("\n".join(lines) + "\n").encode()


def three_places() -> bytes:
    """Three places in one file, humidity as a fraction, rows out of order, error codes, a last line cut off."""
    story = four_weeks("rain-leak")
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
