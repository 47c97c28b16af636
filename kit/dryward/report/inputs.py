"""What was checked: the place, the room and the roof, as label and value of the printed page."""

from dryward import units
from dryward.building.framing import parallel_path
from dryward.report.check import called
from dryward.weather.climate import COLDER
from dryward.weather.indoor import DAMPER

#: Ways a slope can face, each an eighth of the circle from the one before, from north over east.
_WAYS = ("north", "northeast", "east", "southeast", "south", "southwest", "west", "northwest")

#: How the room air is said.
_ROOMS = {
    "constant": "",
    "class": "by humidity class; ",
    "by outdoor temperature": "by outdoor temperature; ",
    "moisture balance": "from water made and fresh air; ",
}


def r_value(resistance, system):
    """The way the trade writes it: R-20, or RSI 3.5."""
    shown = units.show(resistance, "thermal resistance", system)
    return shown if system == "us" else f"RSI {shown.split()[0]}"


def _far(length, system):
    return f"{units.from_si(length, 'ft'):.1f} ft" if system == "us" else f"{length:.1f} m"


def _air(air, system):
    shown = units.show(air.temperature, "temperature", system)
    return f"{shown}, {units.show(air.relative_humidity, 'relative humidity', system)}"


def _faces(job):
    """Which way the slope faces; a file without a word on it means north."""
    if job.assembly.slope == 0:
        return "flat"
    eighth = round(job.azimuth / 45)
    near = abs(job.azimuth - 45 * eighth) < 0.5
    way = _WAYS[eighth % 8] if near else f"{job.azimuth:.0f}° from north over east"
    return f"{job.assembly.slope:.0f}°, faces {way}{', assumed unless typed' if job.azimuth == 0 else ''}"


def design_year(design, system):
    """A design year in few words, with how far it is from the typical one.

    Parameters
    ----------
    design : str
        One of `building.job.DESIGNS`.
    system : {"us", "si"}

    Returns
    -------
    str
    """
    far = {
        "typical": "",
        "damp house": f", rooms {DAMPER * 100:.0f} points damper than given",
        "cold winter": f", {units.show(COLDER, 'temperature difference', system)} colder than given",
    }
    return f"{design}{far[design]}"


def inputs(here, system, hourly):
    """The rows under "What was checked".

    Parameters
    ----------
    here : Setting
    system : {"us", "si"}
    hourly : bool
        Whether the hourly years were run.

    Returns
    -------
    tuple of (label, value)
    """
    job, share = here.job, "relative humidity"
    rows = [
        ("Place", here.place_name + (f", zone {job.place.zone}" if job.place.zone else "")),
        ("Design year", design_year(job.design, system)),
        ("Coldest month", _air(here.winter, system)),
        ("Warmest month", _air(here.summer, system)),
        ("Room air in winter", f"{_ROOMS[job.room.kind]}{_air(here.winter_room, system)}"),
        ("Room air in summer", _air(here.summer_room, system)),
        ("Thermal resistance between framing", r_value(job.assembly.thermal_resistance, system)),
        ("Slope, facing", _faces(job)),
    ]
    if job.assembly.framing:
        whole = f"Whole assembly, {job.assembly.framing.share * 100:.0f} % framing"
        rows.append((whole, r_value(parallel_path(job.assembly), system)))
    if job.tightness:
        rows.append(
            (
                "Blower door",
                f"{job.tightness.ach50:.3g} air changes an hour at 50 Pa, "
                f"{job.tightness.share * 100:.0f} % through the {called(job.assembly)}",
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
