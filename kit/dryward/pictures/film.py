"""A year as a film over the roof: sun, sky and season, vapor on its way, the moisture of the wood.

The film is cut from the hours of a year (`cut`) and sent to the browser once
(`frames`), some ten kilobytes, which plays it in twenty seconds
(``panels/static/film.js``).  A month goes by as one day and night: 365 of
them would only flicker.  That day is the mean one of its month, hour by hour;
the moisture of the wood is that of every day of the year.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from dryward.building import Assembly, Layer
from dryward.checks import Floats
from dryward.language import message
from dryward.physics import sky
from dryward.physics.hourly import Hours
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Scene
from dryward.units import HOUR, KELVIN, STEFAN_BOLTZMANN, amounts, show, to_si
from dryward.verdict.findings import SOAKED
from dryward.verdict.judgment import unbound
from dryward.verdict.words import month, month_of
from dryward.weather import DAYS, HourlyWeather

#: The film begins with September, before the wood takes up water, so that a winter is not cut in two.
FIRST = 9
_FIRST_DAY = int(np.sum(DAYS[: FIRST - 1]))
ORDER = tuple((FIRST - 1 + k) % 12 + 1 for k in range(12))
#: Steps of a day, and the parts of it that sentences tell of.
STEPS, PARTS = 8, ("night", "morning", "afternoon", "evening")
#: Top of the gauge and of the curve [mass %]: wood above it is told as soaked, and by the water in its pores.
TOP = SOAKED
#: Dots a minute for a fluid ounce a day: they cross in a tenth of a steady scene's time.
DOTS = 5
#: A year of the film, and a day of it [h].
_YEAR, _DAY = 8760, 24
#: Wood that takes up or gives up less than this in a week is told as steady [mass %].
_STEADY = 0.15
#: Water at the face from here on is told, and drawn [kg/m2].
_DROP = 1e-3
#: A tree has leaves when its month is warmer than the first; at the second they are all there [degC].
_BUDS, _GREEN = to_si(41.0, "degF"), to_si(59.0, "degF")


@dataclass(frozen=True)
class Film:
    """What a film shows of a year, January first; days count from January 1."""

    #: Of the wood, the highest of each day [mass %] (365).
    moisture: Floats
    #: At its inner face, the most of each day [kg/m2] (365).
    free: Floats
    #: Of the mean day of each month (12, steps): outdoor air [degC], share of cloud, and the
    #: vapor through the wood's two faces, positive outward [kg/(s m2)].
    outdoors: Floats
    cloud: Floats
    inner: Floats
    outer: Floats
    #: Of the place [deg].
    latitude: float

    @property
    def wettest(self) -> int:
        """The month of the highest day, 1 to 12."""
        return int(np.searchsorted(np.cumsum(DAYS), self.moisture.argmax(), side="right")) + 1

    @property
    def lowest(self) -> float:
        """On the driest day [mass %], as the film has it: to a tenth."""
        return round(float(self.moisture.min()), 1)

    @property
    def drips(self) -> bool:
        """Whether a drop stands at the face on any day."""
        return bool(self.free.max() > _DROP)


def cut(hours: Hours, weather: HourlyWeather, name: str) -> Film:
    """The last year of a run as a film of one wood layer.

    What passes its faces is asked of the books: what came from the room less
    what the layers before it hold more, and that less what the wood holds more.
    """
    assert weather.latitude is not None
    last = slice(hours.time.size - _YEAR, None)
    place = hours.assembly.index(name)
    held = hours.water_content * hours.width + hours.free_water
    before = held[:, (hours.cell_layer >= 0) & (hours.cell_layer < place)].sum(axis=1)
    wood = held[:, hours.cell_layer == place].sum(axis=1)
    start = hours.time.size - _YEAR - 1
    gained = [np.diff(each[start:]) / HOUR for each in (before, wood)]
    inner = hours.vapor_flux_in[last] + hours.leak_left[last] - gained[0]
    # Drops at the face of the wood are in the last cell before it, or in its own.
    face = np.flatnonzero(hours.cell_layer == place)[0]
    return Film(
        moisture=hours.layer(name).moisture_content[last].reshape(-1, _DAY).max(axis=1),
        free=hours.free_water[last, face - 1 : face + 1].sum(axis=1).reshape(-1, _DAY).max(axis=1),
        outdoors=_mean_days(weather.temperature),
        cloud=_mean_days(_cloud(weather)),
        inner=_mean_days(inner),
        outer=_mean_days(inner - gained[1]),
        latitude=weather.latitude,
    )


def _mean_days(hourly: Floats) -> Floats:
    """The mean day of each month, in `STEPS` (12, STEPS)."""
    ends = np.cumsum(DAYS)
    days = hourly.reshape(-1, STEPS, _DAY // STEPS).mean(axis=2)
    return np.array([days[end - long : end].mean(axis=0) for end, long in zip(ends, DAYS, strict=True)])


def _cloud(weather: HourlyWeather) -> Floats:
    """Share of the sky under cloud, from how much more it radiates than a clear one."""
    assert weather.sky_longwave is not None
    radiated = STEFAN_BOLTZMANN * (weather.temperature + KELVIN) ** 4
    more = weather.sky_longwave / (radiated * sky.clear_emissivity(weather.dew_point))
    shares = np.linspace(0.0, 1.0, 41)
    return np.interp(more, sky.cloud_factor(shares), shares)


# --- the scene ---------------------------------------------------------------------------

#: In each shape, as shares of width and height: the gauge (left, top, right, bottom), the board of the year, and
#: where someone stands.
_PLACES = {
    "wide": ((0.85, 0.45, 0.925, 0.7), (0.015, 0.765, 0.985, 0.988), 0.62),
    "tall": ((0.79, 0.5, 0.88, 0.71), (0.02, 0.765, 0.98, 0.988), 0.5),
    "post": ((0.76, 0.54, 0.86, 0.74), (0.02, 0.785, 0.98, 0.988), 0.44),
    "strip": ((0.855, 0.4, 0.91, 0.7), (0.012, 0.755, 0.988, 0.985), 0.56),
}
#: Lines to judge by, drawn on the gauge and along the year [mass %].
LINES = (20.0, 28.0)


def draw(scene: Scene, assembly: Assembly, name: str) -> None:
    """The vault under an open sky, a gauge of the wood's moisture and a board for the year.

    Axes: "year" goes from the first of September on, and across from 0 to
    `TOP` of moisture; "gauge" has the same across.  What moves, sky and tree
    too, is the browser's.
    """
    wide, high = scene.size
    scenery.vault(scene, assembly, "open", person_at=None)
    (a, b, c, d), board, stands = _PLACES[scene.shape]
    left, top, right, bottom = (k * size for k, size in zip(board, (wide, high, wide, high), strict=True))
    foot, slope = top - 2, scene.axes["slope"]
    roof = slope.at((stands * wide - slope.origin[0]) / slope.along[0], 0.0)[1]
    scenery.person(scene, (stands * wide, foot), 0.66 * (foot - roof))
    scene.shape_of([(left, top), (right, top), (right, bottom), (left, bottom)], "board")
    letters = 0.24 * (bottom - top) + 4
    year = scene.box("year", left + 8, top + 6, right - 8, bottom - letters)
    gauge = scene.box("gauge", a * wide, b * high, c * wide, d * high)
    # From the gauge to the wood it measures.
    depth = sum(scenery.across(assembly, name)) / 2
    spot, above = slope.at(0.93, depth), gauge.at(0.5, 1.0)
    scene.line([above, spot], "lens-line")
    scene.circle(spot, 9, "lens-spot")
    scene.filled(gauge.corners((0, 1), (0, 1)), "gauge", "")
    for k in range(13):
        scene.line([year.at(k / 12, 0.0), year.at(k / 12, -0.12)], "thin")
    scene.line([year.at(0, 0), year.at(1, 0)], "thin")
    for limit in LINES:
        scene.line([year.at(0, limit / TOP), year.at(1, limit / TOP)], "before")
        scene.line([gauge.at(-0.25, limit / TOP), gauge.at(1, limit / TOP)], "thin")


def given(system: str, label: str) -> dict[str, Any]:
    """What stands before the film is run: the letters of the months and the lines on the gauge, which has a label."""
    tags = [scenery.tag(label, ("gauge", 0.5, -0.04), "moisture content", "under")]
    for limit in LINES:
        tags.append(scenery.tag(_percent(limit, system), ("gauge", -0.3, limit / TOP), "", "left"))
    # Along the year the lines are too near each other for both to have their numbers in a small picture.
    sides = ("middle", "over")
    for limit, side in zip(LINES, sides, strict=True):
        tags.append(scenery.tag(_percent(limit, system), ("year", 0.05, limit / TOP), "", side, minor=True))
    for k, number in enumerate(ORDER):
        letter = message("pictures.month-letter", number=number)
        tags.append(scenery.tag(letter, ("year", (k + 0.5) / 12, -0.2), "letter"))
    return {"tags": tags}


def along_year(day: float) -> float:
    """Where a day of the year, counted from the first of January, is along the film, 0 to 1."""
    return ((day - _FIRST_DAY) % 365 + 0.5) / 365


def month_at(number: int) -> float:
    """Where the middle of a month is along the year, 0 to 1."""
    return ((number - FIRST) % 12 + 0.5) / 12


def _reading(moisture: float, system: str) -> str:
    """A moisture that the gauge can show, or that it is above what it shows."""
    if moisture > TOP:
        return message("pictures.over-the-gauge", top=_percent(TOP, system))
    return _percent(moisture, system)


def soaked(layer: Layer, moisture: float, system: str) -> str:
    """The water that the fibers of a wood layer do not bind, on the roof that amounts are told on, in words."""
    return amounts.whole_roof(unbound(moisture, layer.material.density, layer.drawn_thickness), system)


def side_of(along: float) -> str:
    """The side on which words at a place of the year stay on its board."""
    return "right" if along < 0.1 else "left" if along > 0.9 else "over"


def _percent(moisture: float, system: str) -> str:
    return show(moisture / 100, "relative humidity", system, 0)


# --- what the browser plays ------------------------------------------------------------


def shows(film: Film, system: str, assembly: Assembly, name: str, texts: Any) -> dict[str, Any]:
    """The film for the browser, and the two words of the scene that it writes into.

    `texts` are the lesson's messages; ``film-said`` is its sentence at a place
    in the year.
    """
    reading = {
        # With the longest text that it comes to have, so that its place is wide enough.
        **scenery.tag(
            _reading(max(TOP, float(film.moisture.max())), system), ("gauge", 0.5, 1.0), "moisture content", "over"
        ),
        "film": "moisture",
    }
    outdoors = {**scenery.tag(_warmth(-10.0, system), ("sky", 0.5, 0.06)), "film": "outdoors"}
    day = int(film.moisture.argmax())
    highest = float(film.moisture.max())
    if highest > TOP:
        water = soaked(assembly.layer(name), highest, system)
        text = message("pictures.soaked-in", water=water, area=amounts.roof_area(system), month=month_of(24 * day))
    else:
        text = message("pictures.peak-in", moisture=_percent(highest, system), month=month_of(24 * day))
    along = along_year(day)
    peak = {
        **scenery.tag(text, ("year", along, min(1.0, highest / TOP)), "moisture content", side_of(along)),
        "film": "peak",
    }
    return {"tags": [outdoors, reading, peak], "film": frames(film, system, assembly, name, texts)}


def _warmth(temperature: float, system: str) -> str:
    return show(temperature, "temperature", system, 0)


def frames(film: Film, system: str, assembly: Assembly, name: str, texts: Any) -> dict[str, Any]:
    """What the browser needs to play a film: numbers in the order of its months, texts ready to be shown."""
    rows = [number - 1 for number in ORDER]
    moisture, free = (np.roll(each, -_FIRST_DAY) for each in (film.moisture, film.free))
    whole = range(int(moisture.min()), int(moisture.max()) + 2)
    layers = scenery.layers_through(assembly)
    deep, _ = scenery.across(assembly, name)
    vents = [(start + end) / 2 for layer, kind, start, end in layers if kind == "vent"]
    return {
        "top": TOP,
        "lines": list(LINES),
        "wood": round(deep, 4),
        # What leaves the wood goes to the middle of the vent space, whose air takes it along.
        "vent": round(vents[0], 4) if vents else 1.3,
        "peak": int(moisture.argmax()) + 1,
        "moisture": [round(float(each), 1) for each in moisture],
        "readings": {str(each): _reading(each, system) for each in whole},
        "drops": [round(1000 * float(each)) for each in free] if free.max() > _DROP else [],
        "months": [int(DAYS[row]) for row in rows],
        "names": [month(number) for number in ORDER],
        "outdoors": [[_warmth(each, system) for each in film.outdoors[row]] for row in rows],
        "cloud": [[round(9 * float(each)) for each in film.cloud[row]] for row in rows],
        "inner": [[_dots(each) for each in film.inner[row]] for row in rows],
        "outer": [[_dots(each) for each in film.outer[row]] for row in rows],
        "leaves": _leaves(film.outdoors.mean(axis=1))[rows].tolist(),
        "sun": [[round(each, 3) for each in _sun(film.latitude, row)] for row in rows],
        "said": [[_said(film, row, part, texts) for part in range(len(PARTS))] for row in rows],
    }


def _dots(flux: float) -> int:
    """Dots a minute, below zero inward."""
    return round(float(np.sign(flux)) * vault.dots(float(flux), DOTS))


def _leaves(warmth: Floats) -> Floats:
    """Of each month: the share of leaves on a tree, below zero where they turn."""
    share = np.clip((warmth - _BUDS) / (_GREEN - _BUDS), 0.0, 1.0)
    turns = (np.roll(warmth, -1) < warmth) & (warmth < _GREEN)
    leaves: Floats = np.where(turns, -share, share).astype(float)
    return leaves.round(2)


def _sun(latitude: float, row: int) -> tuple[float, float]:
    """Of the middle of a month: sine of the sun's height is the first plus the second times the cosine of the hour."""
    day = float(np.sum(DAYS[:row])) + 0.5 * float(DAYS[row])
    # Cooper 1969, as books on solar heat have it (from memory).
    tilt = np.radians(23.45 * np.sin(2 * np.pi * (284 + day) / 365))
    place = np.radians(latitude)
    return float(np.sin(place) * np.sin(tilt)), float(np.cos(place) * np.cos(tilt))


def _said(film: Film, row: int, part: int, texts: Any) -> str:
    """What is so in a part of the mean day of a month; the browser puts temperature and moisture in."""
    start, long = int(np.sum(DAYS[:row])), int(DAYS[row])
    day = start + int(long * (part + 0.5) / len(PARTS))
    week = film.moisture[(day + 3) % 365] - film.moisture[day - 4]
    return str(
        texts(
            "film-said",
            part=PARTS[part],
            month=month(row + 1),
            outdoors="{outdoors}",
            moisture="{moisture}",
            trend="up" if week > _STEADY else "down" if week < -_STEADY else "steady",
            drops=bool(film.free[day] > _DROP),
        )
    )


def scale(system: str) -> str:
    """What the dots of a film stand for, in words."""
    return vault.scale(system, DOTS)
