"""What was checked: the place, the room and the roof, as label and value of the printed page."""

from dryward import units
from dryward.building.framing import parallel_path
from dryward.report.findings import called
from dryward.report.setting import SUMMER_ROOM

#: Ways a slope can face, each an eighth of the circle from the one before, from north over east.
_WAYS = ("north", "northeast", "east", "southeast", "south", "southwest", "west", "northwest")

#: How the room air is said.
_ROOMS = {
    "constant": "",
    "class": "by humidity class; in the steady checks ",
    "by outdoor temperature": "by outdoor temperature; in the steady checks ",
    "moisture balance": "from water made and fresh air; in the steady checks ",
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
    room = _air(here.winter_room, system)
    rows = [
        ("Place", here.place_name + (f", zone {job.place.zone}" if job.place.zone else "")),
        ("Coldest month", _air(here.winter, system)),
        ("Warmest month", _air(here.summer, system)),
        ("Room air", f"{_ROOMS[job.room.kind]}{room}"),
        ("Room air of the warmest month", _air(SUMMER_ROOM, system)),
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
        rows.append(("Hourly years", f"{job.years}, all layers at {start} at the start"))
        rows.append(("Covering takes in", f"{units.show(job.absorptance, share, system)} of the sunlight"))
    return tuple(rows)
