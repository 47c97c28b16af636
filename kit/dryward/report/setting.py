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
from dryward.building.framing import with_framing
from dryward.building.job import Job, Room
from dryward.checks import OutOfRange
from dryward.language import called, message
from dryward.physics.airleak import Leak
from dryward.physics.ventspace import VentSpace
from dryward.report.check import designed, key, kind
from dryward.weather import Air, HourlyWeather, MonthlyClimate
from dryward.weather.climate import COLDER
from dryward.weather.indoor import DAMPER


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
        hours, months, name, notes = (
            given,
            given.monthly(),
            given.name or message("report.hours-given"),
            tuple(given.notes),
        )
    elif place.kind == "demo":
        hours = weather.demo(place.id)
        name = message("report.invented-place", id=place.id, place=place.id.replace("-", " "))
        months = weather.demo_climate(place.id)
    elif place.kind == "file":
        hours = weather.read_epw(place.path)
        months, name, notes = hours.monthly(), hours.name or message("report.weather-file"), tuple(hours.notes)
    else:
        months = weather.MonthlyClimate(np.array(place.temperature), np.array(place.relative_humidity))
        name, notes = message("report.typed-means"), (message("report.typed-means-have-no-hours"),)
    if place.zone:
        notes = (*notes, message("report.zone-was-typed", zone=place.zone))
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
    facts = {
        "points": units.number(100 * DAMPER, 0),
        "kelvin": units.number(COLDER, 0),
        "of": "months" if job.place.kind == "means" else "hours",
    }
    return message(f"report.year-{key(job.design)}", **facts)


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
        raise OutOfRange(message("report.layer-needs-thickness", layer=called(gap.name)))
    return VentSpace(gap.thickness, job.vent.length, job.assembly.slope, job.vent.inlet_area, job.vent.outlet_area)


def leak(job: Job) -> Leak | None:
    """The leak of a job, or None when the tightness is not known."""
    if job.tightness is None:
        return None
    tight = job.tightness
    return Leak.from_blower_door(tight.ach50, tight.volume, tight.share, area=tight.area)


#: Ways a slope can face, each an eighth of the circle from the one before, from north over east.
_WAYS = ("north", "northeast", "east", "southeast", "south", "southwest", "west", "northwest")


def _far(length: float, system: str) -> str:
    return units.show_in(length, "ft" if system == "us" else "m", 1)


def _percent(share: float, system: str) -> str:
    return units.show(share, "relative humidity", system)


def _air(air: Air, system: str) -> str:
    warm = units.show(air.temperature, "temperature", system)
    return message("report.air", temperature=warm, humidity=_percent(air.relative_humidity, system))


def _room(job: Job, air: Air, system: str) -> str:
    """The room air in winter, and the rule that gives it."""
    shown = _air(air, system)
    return shown if job.room.kind == "constant" else message(f"report.room-by-{_RULES[job.room.kind]}", air=shown)


#: Rules for the room air by the names of their messages.
_RULES = {"class": "class", "by outdoor temperature": "outdoor-temperature", "moisture balance": "moisture-balance"}


def _faces(job: Job, system: str) -> str:
    """Which way the slope faces; a file without a word on it means north."""
    if job.assembly.slope == 0:
        return message("report.flat")
    eighth = round(job.azimuth / 45)
    if abs(job.azimuth - 45 * eighth) < 0.5:
        way = message(f"report.faces-{_WAYS[eighth % 8]}")
    else:
        way = message("report.faces-degrees", azimuth=units.number(job.azimuth, 0))
    slope = units.slope(job.assembly.slope, system)
    return message("report.faces", slope=slope, way=way, assumed=job.azimuth == 0)


def _designed(design: str, system: str) -> str:
    """A design year in few words, with how far it is from the typical one."""
    named = designed(design)
    if design == "damp house":
        return message("report.damper-than-given", design=named, points=units.number(100 * DAMPER, 0))
    if design == "cold winter":
        colder = units.show(COLDER, "temperature difference", system)
        return message("report.colder-than-given", design=named, difference=colder)
    return named


def inputs(here: Setting, system: str, hourly: bool) -> tuple[tuple[str, str], ...]:
    """The rows under "What was checked"."""
    job, place = here.job, here.place_name
    if job.place.zone:
        place = message("report.place-and-zone", place=place, zone=job.place.zone)
    rows = {
        "place": place,
        "design-year": _designed(job.design, system),
        "coldest-month": _air(here.winter, system),
        "warmest-month": _air(here.summer, system),
        "room-in-winter": _room(job, here.winter_room, system),
        "room-in-summer": _air(here.summer_room, system),
        "between-framing": units.r_value(job.assembly.thermal_resistance, system),
        "slope": _faces(job, system),
        "films": message(
            "report.films",
            inside=units.r_value(job.assembly.interior_film, system, 2),
            outside=units.r_value(job.assembly.outer_film, system, 2),
        ),
    }
    if job.assembly.framing:
        rows["whole-assembly"] = units.r_value(with_framing(job.assembly).parallel, system)
    if job.tightness:
        changes, share = units.number(job.tightness.ach50), _percent(job.tightness.share, system)
        rows["blower-door"] = message("report.blower-door", changes=changes, share=share, kind=kind(job.assembly))
    if not (job.tightness and hourly):
        rows["air-leaks"] = message("report.leaks-none")
    if job.vent:
        rows["vent-path"] = _far(job.vent.length, system)
    if hourly:
        start = _percent(job.start_humidity, system)
        rows["hourly-years"] = message("report.at-most-years", years=job.years, start=start)
        rows["covering"] = message("report.of-the-sunlight", share=_percent(job.absorptance, system))
    framing = _percent(job.assembly.framing.share, system) if job.assembly.framing else ""
    return tuple((message(f"report.input-{id}", share=framing), said) for id, said in rows.items())
