"""How long a wet start takes to dry, by the hourly run."""

import dataclasses

import numpy as np

from dryward.building import Material
from dryward.report.check import Number
from dryward.report.year_checks import run_years
from dryward.verdict import LATER, NEVER, WITHIN, criterion
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
    caution = criterion("wood-moisture").caution
    wood = isinstance(substance, Material) and substance.wood
    if wood:
        start = {layer: substance.density * WET_WOOD / 100}
        words = f"the {layer} starts at {WET_WOOD:.0f} % MC"
        limit = f"below {caution:.0f} % MC"
    else:
        start, words = Air(20.0, WET_OTHER), f"all layers start at {WET_OTHER * 100:.0f} % humidity"
        limit = f"below {DRY_OTHER * 100:.0f} % humidity in its wettest part"
    passed = 0
    for _ in range(setting.job.years):  # a year at a time: most roofs are dry in the first
        run = run_years(setting, progress, years=1, initial=start)
        there = run.layer(layer)
        # The mean of a thick insulation is dry while its cold face still drips.
        level = there.moisture_content - caution if wood else there.highest_relative_humidity - DRY_OTHER
        day = level[: level.size // 24 * 24].reshape(-1, 24).max(axis=1)
        dry = np.flatnonzero(day < 0)
        if dry.size:
            return DryingTime(float(passed + dry[0] + 1), float(passed + day.size), words, limit)
        passed, start = passed + day.size, run
    return DryingTime(float("inf"), float(passed), words, limit)


def added(check, setting, layer, progress=None):
    """The check of a wet start, with its drying time beside the steady rates.

    Parameters
    ----------
    check : Check
        Of `steady_checks.wet_start`.
    setting : Setting
    layer : str
    progress : function, optional

    Returns
    -------
    Check
    """
    took = drying_time(setting, layer, progress)
    answer = WITHIN if took.days <= YEAR_OF_DAYS else LATER if np.isfinite(took.days) else NEVER
    if answer == NEVER:
        when = f"when {took.start} on January 1, it is not {took.limit} within {took.run_days:.0f} days"
    else:
        when = f"when {took.start} on January 1, its first whole day {took.limit} is day {took.days:.0f}"
    first = {
        WITHIN: f"By the hour, {when}.",
        LATER: f"When the {layer} is wet it takes more than a year to dry: {when}.",
        NEVER: f"When the {layer} is wet it does not dry: {when}.",
    }[answer]
    keep = "Keep it from getting wet, and open one side to vapor: the room side, or the outer side."
    return dataclasses.replace(
        check,
        answer=answer,
        what=first,
        lines=(check.what, *check.lines),
        change=check.change or ("" if answer == WITHIN else keep),
        numbers=(*check.numbers, Number("Time to dry", took.days, "", "days")),
        limits=f"{check.limits} The days are those of this one year of weather, without rain.",
        source=f"{check.source}; hourly heat and moisture after EN 15026",
    )
