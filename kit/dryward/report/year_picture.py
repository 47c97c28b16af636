"""The hourly run of a review as the state of a picture."""

import numpy as np

from dryward.pictures.year import MoistureYear
from dryward.verdict import criterion

#: Hours between points.
_EVERY = 6
#: Curves in one picture.
_MOST = 3


def woods(review):
    """Names of the layers of wood that are judged, at most three, the wettest first.

    Parameters
    ----------
    review : Review
        With an hourly run.

    Returns
    -------
    tuple of str
    """
    found = {each.place.layer: each for each in review.check("years").verdict.findings if each.what == "wood-moisture"}
    return tuple(sorted(found, key=lambda name: found[name].value, reverse=True)[:_MOST])


def moisture(run, name):
    """Moisture content of wood through a run [mass %]; of a layer drawn in pieces the mean of all.

    Parameters
    ----------
    run : Hours
    name : str
        Of the first piece.

    Returns
    -------
    ndarray (hours)
    """
    layers = run.assembly.layers
    places = next(each for each in run.assembly.bodies if layers[each[0]].name == name)
    cells = np.flatnonzero(np.isin(run.cell_layer, places))
    held = run.water_content[:, cells] @ run.width[cells] / run.width[cells].sum()
    return 100.0 * held / layers[places[0]].substance.density


def state(review):
    """The moisture of the wood through the run; None without wood.

    Parameters
    ----------
    review : Review
        With an hourly run.

    Returns
    -------
    MoistureYear or None
    """
    names = woods(review)
    if not names:
        return None
    check = review.check("years")
    run = check.data
    brought, carried = run.monthly().in_and_out
    limit = criterion("wood-moisture")
    return MoistureYear(
        days=run.time[::_EVERY] / 24,
        planes=tuple((name, moisture(run, name)[::_EVERY]) for name in names),
        bands=((limit.caution, "caution"), (limit.damage, "decay")),
        brought=brought,
        carried=carried,
        temperature=run.layer(names[0]).temperature[::_EVERY],
    )
