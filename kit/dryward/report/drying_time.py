"""How long a wet start takes to dry, by the hourly run."""

import dataclasses

import numpy as np

from dryward.building import Material
from dryward.report.findings import NO, SLOWLY, Number
from dryward.report.year_checks import WOOD_CAUTION, run_years
from dryward.weather import Air

#: Moisture content that a wet start of wood has [mass %]; common practice, no source: freshly wetted framing.
WET_WOOD = 25.0
#: Drying that takes longer than this is slow [days].
YEAR_OF_DAYS = 365
#: Humidity that a wet start of other layers has, and below which they count as dry [-]; assumptions.
WET_OTHER, DRY_OTHER = 0.98, 0.80


@dataclasses.dataclass(frozen=True)
class DryingTime:
    """A wet start and what came of it.

    Attributes
    ----------
    days : float
        Until the first whole day below the limit [days]; infinite when the run ended before.
    run_days : float
        Length of the run [days].
    start, limit : str
        Both in words.
    """

    days: float
    run_days: float
    start: str
    limit: str


def drying_time(setting, layer, progress=None):
    """Days until a wet layer is dry, the weather beginning in January.

    Parameters
    ----------
    setting : Setting
        With hourly weather.
    layer : str
    progress : function, optional
        Called with (hours done, hours in all); False ends the run.

    Returns
    -------
    DryingTime

    Raises
    ------
    NotConverged, Stopped
        As in `hourly.simulate`.
    """
    substance = setting.job.assembly.layer(layer).substance
    wood = isinstance(substance, Material) and substance.wood
    if wood:
        start = {layer: substance.density * WET_WOOD / 100}
        words = f"the {layer} starts at {WET_WOOD:.0f} % MC"
        limit = f"below {WOOD_CAUTION:.0f} % MC"
    else:
        start, words = Air(20.0, WET_OTHER), f"all layers start at {WET_OTHER * 100:.0f} % humidity"
        limit = f"below {DRY_OTHER * 100:.0f} % humidity in its wettest part"
    passed = 0
    for _ in range(setting.job.years):  # a year at a time: most roofs are dry in the first
        run = run_years(setting, progress, years=1, start=start)
        there = run.layer(layer)
        # The mean of a thick insulation is dry while its cold face still drips.
        level = there.moisture_content - WOOD_CAUTION if wood else there.highest_relative_humidity - DRY_OTHER
        day = level[: level.size // 24 * 24].reshape(-1, 24).max(axis=1)
        dry = np.flatnonzero(day < 0)
        if dry.size:
            return DryingTime(float(passed + dry[0] + 1), float(passed + day.size), words, limit)
        passed, start = passed + day.size, run
    return DryingTime(float("inf"), float(passed), words, limit)


def added(finding, setting, layer, progress=None):
    """The finding on a wet start, with its drying time beside the steady rates.

    Parameters
    ----------
    finding : Finding
        Of `steady_checks.wet_start`.
    setting : Setting
    layer : str
    progress : function, optional

    Returns
    -------
    Finding
    """
    took = drying_time(setting, layer, progress)
    answer, good, change = finding.answer, finding.good, finding.change
    first, takes = finding.what, ""
    if not np.isfinite(took.days):
        answer, good, takes = NO, False, f"is not dry within {took.run_days:.0f} days"
    elif took.days > YEAR_OF_DAYS:
        answer, good = SLOWLY, False
        takes = f"takes {took.days:.0f} days to dry, more than one year"
    if takes:
        wet = f"When the {layer} is wet it"
        first = f"{wet} {takes}. It{first.removeprefix(wet)}"
        change = change or "Keep it from getting wet, and open one side to vapor: the room side, or the outer side."
    if np.isfinite(took.days):
        said = f"By the hour, when {took.start} on January 1, its first whole day {took.limit} is day {took.days:.0f}."
    else:
        said = f"By the hour, when {took.start} on January 1, it is not {took.limit} within {took.run_days:.0f} days."
    return dataclasses.replace(
        finding,
        answer=answer,
        good=good,
        what=f"{first} {said}",
        change=change,
        numbers=(*finding.numbers, Number("Time to dry", took.days, "", "days")),
        limits=f"{finding.limits} The days are those of this one year of weather, without rain.",
        source=f"{finding.source}; hourly heat and moisture after EN 15026",
    )
