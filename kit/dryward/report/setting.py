"""From the plain numbers of a job to weather, room air, vent space and leak."""

from dataclasses import dataclass

from dryward import weather
from dryward.building.job import Job
from dryward.checks import OutOfRange
from dryward.weather import Air

#: Room air of the summer check: cooled to 24 degC at 50 %; common practice, no source.
SUMMER_ROOM = Air(24.0, 0.5)


@dataclass(frozen=True)
class Setting:
    """A job as physics takes it.

    Attributes
    ----------
    job : Job
    months : MonthlyClimate
    hours : HourlyWeather or None
        None for typed means: there is no hourly run then.
    room : indoor rule
    winter, summer : Air
        Outdoor air of the coldest and the warmest month.
    winter_room : Air
    place_name : str
    notes : tuple of str
    """

    job: Job
    months: object
    hours: object
    room: object
    winter: Air
    summer: Air
    winter_room: Air
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
    cold, warm = int(months.temperature.argmin()), int(months.temperature.argmax())
    return Setting(
        job,
        months,
        hours,
        room_rule(job.room),
        Air(float(months.temperature[cold]), float(months.relative_humidity[cold])),
        Air(float(months.temperature[warm]), float(months.relative_humidity[warm])),
        Air(job.room.temperature, job.room.relative_humidity),
        name,
        notes,
    )


def room_rule(room):
    """The rule of `weather.indoor` that a room names."""
    rules = weather.indoor
    if room.kind == "constant":
        return rules.constant(Air(room.temperature, room.relative_humidity))
    if room.kind == "class":
        return rules.humidity_class(room.humidity_class, room.temperature)
    if room.kind == "by outdoor temperature":
        return rules.by_outdoor_temperature(room.occupancy)
    return rules.moisture_balance(room.production, room.fresh_air, room.temperature)


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
