"""An invented roof with something wrong with it, hour by hour: the origin of the sample files.

Nothing here is measured and nothing here is meant for design: four nodes
(room, cavity, deck wood, outdoors), with just enough in them that each cause
leaves its own trace in the readings.  The weather is that of an invented
place.

Room     outdoor vapor plus what people make, carried out by the fan over a
         few hours; a shower at seven and at nine in the evening.
Cavity   no storage: a mean of room, slow film, deck wood and outdoors, each
         weighted by how open the way is.
Deck     sun warms it, a clear sky cools it; its wood holds water and gives
         the vapor pressure that belongs to its moisture and temperature.
         What is above saturation there goes to frost, a part of it.
Rain     the same wet days in every story; only a leaky roof lets it in.
"""

from dataclasses import dataclass

import numpy as np

from dryward import air
from dryward.units import DAY, KELVIN, STEFAN_BOLTZMANN
from dryward.weather.house_moisture import vapor_excess
from dryward.weather.places import demo

DAYS = 28


@dataclass(frozen=True)
class Story:
    """What is wrong, in numbers: openness of the ways to the cavity, and what the wood starts with."""

    first_day: int  # day of the year on which it begins
    fresh_air: float  # [m3/s]
    film: float  # openness of the slow way from the room [-]
    hole: float  # openness of the fast way from the room [-]
    outside: float  # openness to outdoors [-]
    wood: float  # openness to the wood [-]
    moisture: float  # of the wood at the start [mass %]
    rain_in: float = 0.0  # rise of the wood's moisture for each mm of rain [mass %]


STORIES = {
    "indoor-humidity": Story(8, 0.011, 0.6, 0.0, 0.5, 1.5, 15.0),
    "air-leak": Story(318, 0.028, 0.03, 1.2, 1.4, 0.5, 14.0),
    "built-in-water": Story(66, 0.028, 0.03, 0.0, 0.5, 2.0, 29.0),
    "rain-leak": Story(276, 0.035, 0.03, 0.0, 0.8, 1.6, 13.0, 0.35),
    "nothing": Story(8, 0.032, 0.02, 0.0, 2.5, 0.4, 12.0),
}
_FROST = 1.5  # openness to a frosty deck [-]
# Wet spells: first hour, hours, mm an hour.
_RAIN = ((80, 7, 1.6), (201, 5, 2.2), (333, 9, 1.2), (452, 6, 1.8), (560, 4, 2.4))


@dataclass(frozen=True, eq=False)
class Hours:
    """The story's series, hourly: temperatures [degC], vapor pressures [Pa], wood [mass %], rain [mm]."""

    first_hour: int
    indoors: tuple
    cavity: tuple
    outdoors: tuple
    wood: np.ndarray
    rain: np.ndarray


def _wood_humidity(moisture):
    """Relative humidity at the wood's surface, from its moisture [mass %]; a rough S-curve."""
    return 1.0 - np.exp(-((moisture / 13.0) ** 1.9))


def _slow(series, hours):
    """A series behind a film: it follows over this many hours."""
    found, value = np.empty_like(series), series[:48].mean()
    for i, now in enumerate(series):
        value += (now - value) / hours
        found[i] = value
    return found


def _room(outdoor_vapor, story):
    clock = np.arange(outdoor_vapor.size) % 24
    made = 7.5 + 3.0 * np.isin(clock, (17, 18)) + 1.5 * (clock > 16)  # kg a day
    shower = np.isin(clock, (7, 21)).astype(float)
    temperature = 20.8 + 0.5 * np.cos(2 * np.pi * (clock - 19) / 24)
    level = _slow(outdoor_vapor, 6.0) + _slow(vapor_excess(made / DAY, story.fresh_air, 21.0), 5.0)
    steam, held = np.empty_like(level), 0.0
    for i, now in enumerate(shower):
        held = 0.45 * held + 260.0 * now
        steam[i] = held
    return temperature, np.minimum(level + steam, 0.98 * air.saturation_vapor_pressure(temperature))


def hours(cause, place="cold"):
    """Four weeks of an invented roof.

    Parameters
    ----------
    cause : str
        A key of `STORIES`.
    place : str, optional
        One of `weather.demos`.

    Returns
    -------
    Hours

    Examples
    --------
    >>> hours("air-leak").wood.size
    672
    """
    story, year = STORIES[cause], demo(place)
    pick = (np.arange(DAYS * 24) + (story.first_day - 1) * 24) % year.hours
    outside_temperature, outside_vapor = year.temperature[pick], year.vapor_pressure[pick]
    rain = np.zeros(pick.size)
    for start, count, rate in _RAIN:
        rain[start : start + count] = rate
    sky = year.sky_longwave[pick] / (STEFAN_BOLTZMANN * (outside_temperature + KELVIN) ** 4)
    deck = outside_temperature + 0.022 * year.global_horizontal[pick] - 12.0 * (1.0 - sky) + 0.6
    room_temperature, room_vapor = _room(outside_vapor, story)
    behind_film = _slow(room_vapor, 60.0)
    moisture, wood, vapor = story.moisture, np.empty(pick.size), np.empty(pick.size)
    ways = story.film + story.hole + story.outside + story.wood
    saturation = air.saturation_vapor_pressure(deck)
    # The sensor hangs a little inside of the deck, and leaking air is warm.
    hollow = deck + (0.12 + 0.12 * story.hole) * (room_temperature - deck)
    hollow_saturation = air.saturation_vapor_pressure(hollow)
    for i in range(pick.size):
        of_wood = _wood_humidity(moisture) * saturation[i]
        mixed = (
            story.film * behind_film[i] + story.hole * room_vapor[i]
            + story.outside * outside_vapor[i] + story.wood * of_wood
        ) / ways  # fmt: skip
        frost = _FROST if mixed > saturation[i] else 0.0
        vapor[i] = min((ways * mixed + frost * saturation[i]) / (ways + frost), 0.995 * hollow_saturation[i])
        moisture += 7e-5 * story.wood * (vapor[i] - of_wood) + story.rain_in * rain[i]
        wood[i] = moisture
    return Hours(
        int(pick[0]),
        (room_temperature, room_vapor),
        (hollow, vapor),
        (outside_temperature, outside_vapor),
        wood,
        rain,
    )
