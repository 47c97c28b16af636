"""From the plain numbers of a job to weather, room air, vent space and leak.

One outdoor year and one rule for the room air serve all checks of a page: the
steady ones take their coldest and warmest month, the monthly one all twelve,
the hourly one every hour.
"""

from dataclasses import dataclass

from dryward import air, weather
from dryward.building.job import Job
from dryward.checks import OutOfRange
from dryward.weather import Air
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


@dataclass(frozen=True)
class Setting:
    """A job as physics takes it.

    Attributes
    ----------
    job : Job
    months : MonthlyClimate
        Of the design year.
    hours : HourlyWeather or None
        Of the design year; None for typed means: there is no hourly run then.
    room : indoor rule
        Of the design year.
    winter, summer : Air
        Outdoor air of the coldest and the warmest month.
    winter_room, summer_room : Air
        What the rule gives in those months.
    place_name : str
    notes : tuple of str
        The first says which design year it is and how it is made.
    """

    job: Job
    months: object
    hours: object
    room: object
    winter: Air
    summer: Air
    winter_room: Air
    summer_room: Air
    place_name: str
    notes: tuple


def setting(job):
    """The physics side of a job.

    Parameters
    ----------
    job : Job

    Returns
    -------
    Setting

    Raises
    ------
    UnknownName, BadFile
        For an unknown place or a weather file that cannot be read.
    """
    place, notes, hours = job.place, (), None
    if place.kind == "demo":
        hours = weather.demo(place.id)
        months, name = weather.demo_climate(place.id), f"{place.id.replace('-', ' ')} (an invented place)"
    elif place.kind == "file":
        hours = weather.read_epw(place.id)
        months, name, notes = hours.monthly(), hours.name or "weather file", tuple(hours.notes)
    else:
        months, name = weather.MonthlyClimate(place.temperature, place.relative_humidity), "typed monthly means"
        notes = (
            "Typed means have no hours, so the hourly years are left out: wood moisture and mold were not checked.",
        )
    if place.zone:
        notes = (*notes, f"Zone {place.zone} was typed; it is not compared with the weather used.")
    if job.design == "cold winter" and hours is None:
        months = weather.colder(months, COLDER)
    elif job.design == "cold winter":
        hours = weather.colder(hours, COLDER)
        months = hours.monthly()
    rule = design_room(job)
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


def design_year(job):
    """Which design year a job has and how it is made, in one sentence."""
    return DESIGN_YEARS[job.design].format(each="month" if job.place.kind == "means" else "hour")


def design_room(job):
    """The rule for room air of a job's design year."""
    rule = room_rule(job.room)
    return weather.indoor.damper(rule, DAMPER) if job.design == "damp house" else rule


def room_rule(room):
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


def room_air(rule, months, month):
    """The room air that a rule gives in one month.

    Parameters
    ----------
    rule : indoor rule
    months : MonthlyClimate
    month : int
        1 to 12.

    Returns
    -------
    Air
    """
    warmth, vapor = (float(series[month - 1]) for series in rule.at(months))
    # Twelve digits: 40 % goes through the vapor pressure and is 40 % again.
    return Air(warmth, round(air.relative_humidity(warmth, vapor), 12))


def vent_space(job):
    """The vent space of a job, or None.

    Parameters
    ----------
    job : Job

    Returns
    -------
    VentSpace or None

    Raises
    ------
    OutOfRange
        When the vented layer has no thickness.
    """
    gap = next((layer for layer in job.assembly.layers if layer.vented), None)
    if gap is None or job.vent is None:
        return None
    if gap.thickness is None:
        raise OutOfRange(f"The layer {gap.name} needs a thickness, above 0 to 0.5 m.")
    from dryward.physics.ventspace import VentSpace

    return VentSpace(gap.thickness, job.vent.length, job.assembly.slope, job.vent.inlet_area, job.vent.outlet_area)


def leak(job):
    """The leak of a job, or None when the tightness is not known."""
    if job.tightness is None:
        return None
    from dryward.physics.airleak import Leak

    tight = job.tightness
    return Leak.from_blower_door(tight.ach50, tight.volume, tight.share, area=tight.area)
