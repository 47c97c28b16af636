"""A job as physics takes it: weather, room air, vent space and leak; and the same as the page prints it.

One outdoor year and one rule for the room air serve all checks of a page: the
steady ones take their coldest and warmest month, the monthly one all twelve,
the hourly one every hour.
"""

from dataclasses import dataclass
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from dryward import air, units, weather
from dryward.building.framing import parallel_path
from dryward.building.job import Job, Room
from dryward.checks import OutOfRange
from dryward.physics.airleak import Leak
from dryward.physics.ventspace import VentSpace
from dryward.report.check import called
from dryward.weather import Air, HourlyWeather, MonthlyClimate
from dryward.weather.climate import COLDER
from dryward.weather.indoor import DAMPER

#: What each design year is and how it is made; {each} is "hour" or "month".
DESIGN_YEARS = {
    "typical": "A typical year: weather and room air as they are given, with no colder winter and no damper house.",
    "damp house": f"A damp house: the weather as it is given, and in the rooms {DAMPER * 100:.0f} points more relative "
    "humidity than given, all year; so much EN 15026 has between normal and high occupancy (from memory).",
    "cold winter": f"A cold winter: each {{each}} {COLDER:.0f} K colder than given, at the same relative humidity, sun "
    "and wind, with less radiation from the sky; EN 15026 takes such a year for one in ten (from memory).",
}


class RoomRule(Protocol):
    """A rule for the air of a room: what it gives under the months or the hours outdoors."""

    def at(self, outdoor: MonthlyClimate | HourlyWeather, /) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
        """Temperature [degC] and vapor pressure [Pa], as many as there are months or hours."""


@dataclass(frozen=True)
class Setting:
    """A job as physics takes it."""

    job: Job
    #: Months, hours and rule of the design year; typed means have no hours, and then there is no hourly run.
    months: MonthlyClimate
    hours: HourlyWeather | None
    room: RoomRule
    #: Outdoor air of the coldest and the warmest month, and what the rule gives in them.
    winter: Air
    summer: Air
    winter_room: Air
    summer_room: Air
    place_name: str
    #: The first says which design year it is and how it is made.
    notes: tuple[str, ...]

    @property
    def hourly(self) -> HourlyWeather:
        """The hours, for what runs by the hour; typed means have none."""
        if self.hours is None:
            raise TypeError("A job with typed means has no hours.")
        return self.hours


def setting(job: Job, given: HourlyWeather | None = None, rule: RoomRule | None = None) -> Setting:
    """The physics side of a job, with a year of hours or a rule for the room in place of its own where given."""
    place = job.place
    hours: HourlyWeather | None = None
    notes: tuple[str, ...] = ()
    if given is not None:
        hours, months, name, notes = given, given.monthly(), given.name or "hours given", tuple(given.notes)
    elif place.kind == "demo":
        hours = weather.demo(place.id)
        months, name = weather.demo_climate(place.id), f"{place.id.replace('-', ' ')} (an invented place)"
    elif place.kind == "file":
        hours = weather.read_epw(place.path)
        months, name, notes = hours.monthly(), hours.name or "weather file", tuple(hours.notes)
    else:
        months, name = (
            weather.MonthlyClimate(np.array(place.temperature), np.array(place.relative_humidity)),
            "typed monthly means",
        )
        notes = (
            "Typed means have no hours, so the hourly years are left out: wood moisture and mold were not checked.",
        )
    if place.zone:
        notes = (*notes, f"Zone {place.zone} was typed; it is not compared with the weather used.")
    if job.design == "cold winter":
        hours = None if hours is None else weather.colder(hours, COLDER)
        months = weather.colder(months, COLDER) if hours is None else hours.monthly()
    rule = design_room(job, rule)
    cold, warm = months.coldest, months.warmest
    return Setting(
        job,
        months,
        hours,
        rule,
        months.air(cold),
        months.air(warm),
        room_air(rule, months, cold),
        room_air(rule, months, warm),
        name,
        (design_year(job), *notes),
    )


def design_year(job: Job) -> str:
    """Which design year a job has and how it is made, in one sentence."""
    return DESIGN_YEARS[job.design].format(each="month" if job.place.kind == "means" else "hour")


def design_room(job: Job, rule: RoomRule | None = None) -> RoomRule:
    """The rule for room air of a job's design year, or another rule in that year."""
    rule = rule or room_rule(job.room)
    return weather.indoor.damper(rule, DAMPER) if job.design == "damp house" else rule


def room_rule(room: Room) -> RoomRule:
    """The rule of `weather.indoor` that a room names."""
    rules = weather.indoor
    if room.kind == "constant":
        summer = Air(room.summer_temperature, room.summer_relative_humidity)
        return rules.heated_and_cooled(Air(room.temperature, room.relative_humidity), summer)
    if room.kind == "class":
        return rules.humidity_class(room.humidity_class, room.temperature)
    if room.kind == "by outdoor temperature":
        return rules.by_outdoor_temperature(room.occupancy)
    return rules.moisture_balance(room.production, room.fresh_air, room.temperature)


def room_air(rule: RoomRule, months: MonthlyClimate, month: int) -> Air:
    """The room air that a rule gives in one month, 1 to 12."""
    warmth, vapor = (float(series[month - 1]) for series in rule.at(months))
    # Twelve digits: 40 % goes through the vapor pressure and is 40 % again.
    return Air(warmth, round(air.relative_humidity(warmth, vapor), 12))


def vent_space(job: Job) -> VentSpace | None:
    """The vent space of a job, or None."""
    gap = next((layer for layer in job.assembly.layers if layer.vented), None)
    if gap is None or job.vent is None:
        return None
    if gap.thickness is None:
        raise OutOfRange(f"The layer {gap.name} needs a thickness, above 0 to 0.5 m.")
    from dryward.physics.ventspace import VentSpace

    return VentSpace(gap.thickness, job.vent.length, job.assembly.slope, job.vent.inlet_area, job.vent.outlet_area)


def leak(job: Job) -> Leak | None:
    """The leak of a job, or None when the tightness is not known."""
    if job.tightness is None:
        return None
    from dryward.physics.airleak import Leak

    tight = job.tightness
    return Leak.from_blower_door(tight.ach50, tight.volume, tight.share, area=tight.area)


#: Ways a slope can face, each an eighth of the circle from the one before, from north over east.
_WAYS = ("north", "northeast", "east", "southeast", "south", "southwest", "west", "northwest")

#: How the room air is said.
_ROOMS = {
    "constant": "",
    "class": "by humidity class; ",
    "by outdoor temperature": "by outdoor temperature; ",
    "moisture balance": "from water made and fresh air; ",
}


def _far(length: float, system: str) -> str:
    return units.show_in(length, "ft" if system == "us" else "m", 1)


def _air(air: Air, system: str) -> str:
    shown = units.show(air.temperature, "temperature", system)
    return f"{shown}, {units.show(air.relative_humidity, 'relative humidity', system)}"


def _faces(job: Job) -> str:
    """Which way the slope faces; a file without a word on it means north."""
    if job.assembly.slope == 0:
        return "flat"
    eighth = round(job.azimuth / 45)
    near = abs(job.azimuth - 45 * eighth) < 0.5
    way = _WAYS[eighth % 8] if near else f"{job.azimuth:.0f}° from north over east"
    return f"{job.assembly.slope:.0f}°, faces {way}{', assumed unless typed' if job.azimuth == 0 else ''}"


def design_words(design: str, system: str) -> str:
    """A design year in few words, with how far it is from the typical one."""
    far = {
        "typical": "",
        "damp house": f", rooms {DAMPER * 100:.0f} points damper than given",
        "cold winter": f", {units.show(COLDER, 'temperature difference', system)} colder than given",
    }
    return f"{design}{far[design]}"


def inputs(here: Setting, system: str, hourly: bool) -> tuple[tuple[str, str], ...]:
    """The rows under "What was checked"."""
    job, share = here.job, "relative humidity"
    rows = [
        ("Place", here.place_name + (f", zone {job.place.zone}" if job.place.zone else "")),
        ("Design year", design_words(job.design, system)),
        ("Coldest month", _air(here.winter, system)),
        ("Warmest month", _air(here.summer, system)),
        ("Room air in winter", f"{_ROOMS[job.room.kind]}{_air(here.winter_room, system)}"),
        ("Room air in summer", _air(here.summer_room, system)),
        ("Thermal resistance between framing", units.r_value(job.assembly.thermal_resistance, system)),
        ("Slope, facing", _faces(job)),
    ]
    if job.assembly.framing:
        whole = f"Whole assembly, {units.show(job.assembly.framing.share, share, system)} framing"
        rows.append((whole, units.r_value(parallel_path(job.assembly), system)))
    if job.tightness:
        rows.append(
            (
                "Blower door",
                f"{units.number(job.tightness.ach50)} air changes an hour at 50 Pa, "
                f"{units.show(job.tightness.share, share, system)} through the {called(job.assembly)}",
            )
        )
    if not (job.tightness and hourly):
        rows.append(("Air leaks", "not counted"))
    if job.vent:
        rows.append(("Vent path", _far(job.vent.length, system)))
    if hourly:
        start = units.show(job.start_humidity, share, system)
        rows.append(("Hourly years", f"at most {job.years}, all layers at {start} at the start"))
        rows.append(("Covering takes in", f"{units.show(job.absorptance, share, system)} of the sunlight"))
    return tuple(rows)
