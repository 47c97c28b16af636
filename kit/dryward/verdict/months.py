"""The verdict of twelve monthly states: what gathers, and whether it leaves within the year."""

from dataclasses import replace

import numpy as np

from dryward.verdict.criteria import STATES, criterion
from dryward.verdict.findings import LATER, NEVER, WITHIN, Finding, Place, given, verdict
from dryward.verdict.steady import LEFT_OUT, bodies, moisture
from dryward.verdict.surfaces import class_of_surface, mold_limit

#: Humidity that wood is in balance with before the year's water comes to it [-]; common practice, no source.
_BEFORE = 0.80


def of_months(months):
    """What a balance of twelve months means.

    Parameters
    ----------
    months : Months
        Of `monthly.balance`.

    Returns
    -------
    Verdict
        The most held at each plane: in wood that lies there as its
        moisture, elsewhere as free water; what is left over at the year's
        end, and what grows from year to year; and wood or other surfaces
        that a month, if it lasted, would bring above their caution level.

    Examples
    --------
    >>> from dryward import building, weather
    >>> from dryward.physics import monthly
    >>> vault = building.preset("vented-vault")
    >>> of_months(monthly.balance(vault, weather.demo_climate("hot-dry"), weather.Air(21.0, 0.3))).state
    'dry'
    """
    given("The months of monthly.balance", months, "held", "ending", "assembly")
    found = [_held(months, plane) for plane in range(len(months.planes))]
    for what, value in (("growth", months.growth), ("carry-over", months.left)):
        limit = criterion(what)
        if value >= limit.caution:
            found.append(Finding(what, Place(), value, limit, limit.state(value)))
    for body in bodies(months):
        found += _lasting(months, *body)
    dries = {"no wetting": WITHIN, "dries": WITHIN, "holds": LATER, "grows": NEVER}[months.ending]
    return verdict("months", found, dries=dries, left_out=tuple(each for each in LEFT_OUT if each != "time"), years=1)


def _held(months, number):
    """The most held at one plane: as moisture of the wood it lies at, or as free water."""
    plane, series = months.planes[number], months.held[:, number]
    peak, layers = int(series.argmax()), months.assembly.layers
    inside = plane.inner_layer == plane.outer_layer
    place = Place(plane.inner_layer) if inside else Place(plane.inner_layer, "outer", plane.outer_layer)
    wood = None
    for places in months.assembly.bodies:
        names = [layers[each].name for each in places]
        made = layers[places[0]].substance
        if getattr(made, "wood", False) and made.sorption and {plane.inner_layer, plane.outer_layer} & set(names):
            wood = made, sum(layers[each].thickness for each in places), names[0]
    frost = bool(months.temperature[peak, plane.node] < 0.0)
    if wood is None:
        limit, values = criterion("free-water"), series
    else:
        made, thickness, name = wood
        limit = criterion("wood-moisture")
        full = 100.0 * made.water_content(1.0) / made.density
        values = np.minimum(moisture(made, _BEFORE) + 100.0 * series / (made.density * thickness), full)
        place, frost = Place(name), False
    value = float(values[peak])
    over = float((values >= limit.caution).sum())
    return Finding(limit.id, place, value, limit, limit.state(value), over, months.month[peak], frost)


def _lasting(months, places, first, last):
    """Wood and faces that a month would bring above caution if it lasted: damp at most."""
    made = first.substance
    nodes = {"inner": months.face(first.name, "inner"), "outer": months.face(last.name, "outer")}
    names = months.names
    beside = {
        "inner": names[places[0] - 1] if places[0] else "room air",
        "outer": names[places[-1] + 1] if places[-1] + 1 < len(names) else "outdoor air",
    }
    kind = class_of_surface(made)
    for side, node in nodes.items():
        humidity, warmth = months.relative_humidity[:, node], months.temperature[:, node]
        place = Place(first.name, side, beside[side])
        if made.wood and made.sorption:
            limit, values = criterion("wood-moisture"), moisture(made, humidity)
            yield _damp_at_most(months, limit, place, values, values >= limit.caution)
        if kind is not None:
            limit = criterion("face-humidity")
            level = mold_limit(warmth, kind)
            yield _damp_at_most(months, limit, place, humidity, humidity >= level, level)


def _damp_at_most(months, limit, place, values, over, level=None):
    worst = int(np.argmax(np.where(over, values, -1.0)) if over.any() else np.argmax(values))
    limit = limit if level is None else replace(limit, caution=float(level[worst]))
    state = STATES[int(over.any())]
    return Finding(
        limit.id, place, float(values[worst]), limit, state, float(over.sum()), months.month[worst], if_it_lasted=True
    )
