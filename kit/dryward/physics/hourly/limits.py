"""Where along a slider a criterion holds for a whole year, with all else as it is."""

import numpy as np

from dryward.checks import UnknownName, within
from dryward.physics.hourly.batch import batch
from dryward.physics.hourly.vary import varied
from dryward.physics.limits import Range

#: Water a year may leave behind before it counts as growing [kg/m2]; 1 g/m2 is far below any reading.
KEPT = 1e-3


def no_free_water(run):
    """No water in any hour that a material cannot bind: a criterion.

    Parameters
    ----------
    run : Hours

    Returns
    -------
    bool

    Examples
    --------
    >>> from dryward import building
    >>> from dryward.physics import hourly
    >>> from dryward.weather import Air
    >>> still = Air(20.0, 0.5)
    >>> no_free_water(hourly.simulate(building.preset("wood-frame-wall"), still, still, hours=9, initial=still))
    True
    """
    return bool(run.condensed.max() < 1e-6)


def dries_out(run):
    """No more water at the end of the last year than at its start: a criterion.

    Parameters
    ----------
    run : Hours

    Returns
    -------
    bool

    Examples
    --------
    >>> from dryward import building
    >>> from dryward.physics import hourly
    >>> from dryward.weather import Air
    >>> dries_out(hourly.simulate(building.preset("wood-frame-wall"), Air(20.0, 0.4), Air(20.0, 0.4)))
    True
    """
    year = min(run.time.size, 8760)
    before = run.initial_water @ run.width if run.time.size <= year else run.water[-year - 1]
    return bool(run.water[-1] <= before + KEPT)


def moisture_content_below(layer, limit):
    """The mean moisture content of a layer stays below a limit: makes a criterion.

    Parameters
    ----------
    layer : str
    limit : float
        Mass of water by mass of dry material [%], 0 to 300.

    Returns
    -------
    function

    Raises
    ------
    OutOfRange
        For a limit out of range.

    Examples
    --------
    >>> callable(moisture_content_below("deck", 20.0))
    True
    """
    most = within("Moisture content", limit, 0.0, 300.0)

    def holds(run):
        return bool(run.layer(layer).moisture_content.max() < most)

    return holds


def mold_index_below(layer, sensitivity, limit=3.0, side="inner"):
    """The mold index at a face stays below a limit: makes a criterion.

    Parameters
    ----------
    layer : str
    sensitivity : str
        A class of `physics.mold`.
    limit : float
        Index [-], 0 to 6; ASHRAE 160 asks for less than 3 (from memory).
    side : {"inner", "outer"}

    Returns
    -------
    function

    Raises
    ------
    OutOfRange
        For a limit out of range.

    Examples
    --------
    >>> callable(mold_index_below("deck", "sensitive"))
    True
    """
    most = within("Mold index", limit, 0.0, 6.0)

    def holds(run):
        return bool(run.mold_index(layer, sensitivity, side).max() < most)

    return holds


#: Criteria that have a name.
CRITERIA = {"no free water": no_free_water, "dries out": dries_out}


def safe_range(
    assembly, weather, indoor, variable, values, criterion="dries out", *, found=None, workers=None, **options
):
    """Where along one variable the criterion holds through the hours.

    Parameters
    ----------
    assembly, weather, indoor
        As in `hourly.simulate`.
    variable : str
        A key of `hourly.variables`, such as ``"inner_membrane_permeance"``.
    values : array
        Of the variable [SI]; any that `hourly.variables` allows.
    criterion : str or function
        A name of `CRITERIA`, or a function from `Hours` to bool.
    found : function, optional
        Called with (place, bool) as each run ends, not in order; when it
        returns False, the rest is dropped and `Stopped` raised.
    workers : int, optional
        Runs at a time, 1 or more [-]; otherwise one for each core.
    **options
        Keywords of `hourly.simulate`.

    Returns
    -------
    physics.limits.Range

    Raises
    ------
    UnknownName
        For an unknown variable or criterion.

    Examples
    --------
    >>> from dryward import building
    >>> from dryward.weather import Air
    >>> wall = building.preset("wood-frame-wall")
    >>> air = Air(0.0, 0.8), Air(20.0, 0.4)
    >>> safe_range(wall, *air, "indoor_relative_humidity", [0.3, 0.9], hours=2000).holds
    array([ True, False])
    """
    if not callable(criterion):
        if criterion not in CRITERIA:
            raise UnknownName("criterion", criterion, CRITERIA)
        criterion = CRITERIA[criterion]
    values = np.atleast_1d(np.asarray(values, dtype=float))
    cases = []
    for value in values:
        built, room, rest = varied(assembly, indoor, options, variable, float(value))
        cases.append((built, weather, room, rest))
    holds = batch(cases, criterion, found, workers)
    return Range(variable, values, np.array(holds, dtype=bool))
