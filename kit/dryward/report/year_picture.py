"""The hourly run of a review as the state of a picture."""

import numpy as np

from dryward.building import Material
from dryward.pictures.year import YearState
from dryward.report.year_checks import WOOD_CAUTION

#: Share of a day in which a point is drawn.
_EVERY = 6


def woods(review):
    """Names of the wood layers inside any vent space, at most three, the wettest first."""
    run = review.finding("years").data
    year = run.time.size // review.job.years
    solid = [layer for layer in review.job.assembly.inner_layers if isinstance(layer.substance, Material)]
    peaks = {
        layer.name: float(run.layer(layer.name).moisture_content[-year:].max())
        for layer in solid
        if layer.substance.wood
    }
    return tuple(sorted(peaks, key=peaks.get, reverse=True)[:3])


def state(review):
    """The moisture of the wood through the run; None without wood.

    Parameters
    ----------
    review : Review
        With an hourly run.

    Returns
    -------
    YearState or None
    """
    names = woods(review)
    if not names:
        return None
    run = review.finding("years").data
    budget = run.monthly()
    net = budget.from_room + budget.leaked
    out = budget.to_outdoors + budget.vented
    return YearState(
        days=run.time[::_EVERY] / 24,
        planes=tuple((name, np.asarray(run.layer(name).moisture_content[::_EVERY])) for name in names),
        bands=((WOOD_CAUTION, "caution"), (28.0, "decay")),
        brought=np.maximum(net, 0.0) + np.maximum(-out, 0.0),
        carried=np.maximum(out, 0.0) + np.maximum(-net, 0.0),
        temperature=run.layer(names[0]).temperature[::_EVERY],
    )
