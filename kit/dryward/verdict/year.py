"""The verdict of an hourly year: wood, mold, free water and growth, in every layer."""

from dataclasses import replace

import numpy as np

from dryward.building import Material
from dryward.verdict.criteria import DRY, criterion
from dryward.verdict.findings import LATER, NEVER, WITHIN, Finding, Place, given, verdict
from dryward.verdict.surfaces import class_of_surface, mold_limit

#: Hours of a year.
YEAR = 8760
#: The shelf of what the weather reaches: rain, which is not counted, wets it, and it dries in the open.
COVERING = "roof coverings and cladding"
#: Water less than this is no finding [kg/m2]: a gram.
_GRAM = 1e-3
#: A yearly change below this share of the year before it fades: what the start was off by is settling [-].
_FADES = 0.7
#: Of what leaves in the drying season, from this many times the other way on it is called one way.
_MOSTLY = 4.0


def of_year(hours):
    """What an hourly run means.

    Parameters
    ----------
    hours : Hours
        Of `hourly.simulate`; the last 8760 hours are judged, or all where
        there are fewer.

    Returns
    -------
    Verdict
        Every layer of wood is judged by its moisture, every surface that can
        mold by its mold index, every face and fill by free water with what
        ran off, and the whole by what is left over from year to year.

    Notes
    -----
    A layer drawn in pieces is judged as one.  Whether water grows from year
    to year, or needs more than one to leave, can be told from the second year
    on; a change that fades by three tenths from one year to the next is what
    the start was off by.

    Examples
    --------
    >>> from dryward import building
    >>> from dryward.physics import hourly
    >>> from dryward.weather import Air
    >>> wall = building.preset("wood-frame-wall")
    >>> of_year(hourly.simulate(wall, Air(20.0, 0.4), Air(20.0, 0.4), years=2)).state
    'dry'
    """
    given("The hours of hourly.simulate", hours, "free_water", "ran_off", "assembly")
    count = hours.time.size
    last = slice(max(count - YEAR, 0), count)
    bodies = _bodies(hours)
    found = []
    for body in bodies:
        found += _wood(hours, body, last)
        found += _mold(hours, body, last)
    found += _free_water(hours, bodies, last)
    change, settling = _change(hours), _settling(hours)
    found += _growth(change, settling)
    found = [_dated(each, last.start) for each in found]
    left_out = ["rain"]
    left_out += ["framing"] if hours.assembly.framing else []
    left_out += [] if hours.leaking else ["leak"]
    tolerance = criterion("growth").damage
    made = verdict(
        "year", found, left_out=tuple(left_out), years=max(count // YEAR, 1),
        repeats=change is not None and abs(change) < tolerance, start=hours.start_humidity,
    )  # fmt: skip
    return _drying(made, hours, last, change, settling)


def _dated(finding, start):
    """The hour of the judged stretch as an hour of the year, which every run begins with."""
    return finding if finding.when is None else replace(finding, when=(finding.when + start) % YEAR)


class _Body:
    """A layer, or neighbors of one material: its cells, and what lies beside its faces."""

    def __init__(self, hours, places):
        layers = hours.assembly.layers
        self.places, self.layers = places, [layers[place] for place in places]
        self.name, self.substance = self.layers[0].name, self.layers[0].substance
        self.cells = np.flatnonzero(np.isin(hours.cell_layer, places))
        self.width = hours.width[self.cells]
        ends = places[0] - 1, places[-1] + 1
        self.before = layers[ends[0]].name if ends[0] >= 0 else "room air"
        self.behind = layers[ends[1]].name if ends[1] < len(layers) else "outdoor air"


def _bodies(hours):
    return [body for body in (_Body(hours, places) for places in hours.assembly.bodies) if body.cells.size]


def _is_wood(body):
    return isinstance(body.substance, Material) and body.substance.wood and bool(body.substance.sorption)


def _wood(hours, body, last):
    if not _is_wood(body):
        return
    made = body.substance
    limit = criterion("cladding-moisture" if made.category == COVERING else "wood-moisture")
    share = body.width / body.width.sum()
    series = np.einsum("ij,j->i", hours.water_content[last][:, body.cells], share) * 100.0 / made.density
    peak = int(series.argmax())
    full = float((hours.most_bound[body.cells] * share).sum()) * 100.0 / made.density
    value = float(series[peak])
    yield Finding(
        limit.id, Place(body.name), value, limit, limit.state(value), float((series >= limit.caution).sum()), peak,
        full=value > 0.999 * full,
    )  # fmt: skip


def _mold(hours, body, last):
    kind = class_of_surface(body.substance)
    if kind is None:
        return
    limit = criterion("mold-index")
    for layer, side, beside in ((body.layers[0], "inner", body.before), (body.layers[-1], "outer", body.behind)):
        warmth, humidity = hours.face(layer.name, side)
        if (humidity < mold_limit(warmth, kind)).all():
            continue  # nothing grows there at any hour
        series = hours.mold_index(layer.name, kind, side)[last]
        peak = int(series.argmax())
        value = float(series[peak])
        if value >= 0.05:
            over = float((series >= limit.caution).sum())
            yield Finding(limit.id, Place(body.name, side, beside), value, limit, limit.state(value), over, peak)


def _free_water(hours, bodies, last):
    """In each body, with the drops on the faces of its neighbors that touch it; the same water is told once."""
    limit, taken, found = criterion("free-water"), set(), []
    ran_off = _ran_off(hours, last)
    for k, body in enumerate(bodies):
        if getattr(body.substance, "category", "") == COVERING:
            continue  # dew on the outside is no finding
        cells = list(body.cells)
        for other in (bodies[k - 1] if k else None, bodies[k + 1] if k + 1 < len(bodies) else None):
            if other is not None and _touch(hours, body, other):
                cells.append(other.cells[0] if other.cells[0] > body.cells[-1] else other.cells[-1])
        if body.behind == "outdoor air":
            cells.remove(body.cells[-1])
        if not cells:
            continue  # the one plane of an air space that ends outdoors
        cells = np.array(sorted(cells))
        held = hours.free_water[last][:, cells].sum(axis=1)
        off = ran_off[cells]
        peak = int(held.argmax())
        value, gone = float(held[peak]), float(off.sum())
        if value + gone < _GRAM:
            continue
        most = held[peak] if value >= _GRAM else 0.0
        where = cells[int((hours.free_water[last][peak, cells] if most else off).argmax())]
        over = float((held >= limit.caution).sum())
        found.append((value + gone, where, Finding(
            limit.id, _face(bodies, where), value + gone, limit, limit.state(value + gone), over, peak,
            frost=bool(hours.temperature[last][peak, where] <= 0.0), ran_off=gone,
        )))  # fmt: skip
    for _, where, each in sorted(found, key=lambda one: one[0], reverse=True):
        if not {where - 1, where, where + 1} & taken:
            taken.add(where)
            yield each


def _ran_off(hours, last):
    """What ran off in the judged stretch, by cell [kg/m2].

    The run keeps it by years begun; of two that share the stretch each gives
    of all its cells the part that fell in it.
    """
    found = np.zeros(hours.width.size)
    for year, off in enumerate(hours.ran_off):
        begun = slice(year * YEAR, (year + 1) * YEAR)
        whole = hours.runoff[begun].sum()
        if whole > 0.0:
            found += off * (hours.runoff[max(begun.start, last.start) : begun.stop].sum() / whole)
    return found


def _always_wet(made):
    """Whether wood or free water was above its caution limit in every hour of the judged year."""
    wet = [each for each in made.findings if each.what in ("wood-moisture", "free-water") and each.state != DRY]
    return any(each.lasted >= YEAR for each in wet)


def _touch(hours, one, other):
    """Whether two bodies lie on one another with no membrane between."""
    first, second = sorted((one.places, other.places))
    return second[0] - first[-1] == 1


def _face(bodies, cell):
    """The place of a cell: at a face of its body, or inside it."""
    body = next(each for each in bodies if cell in each.cells)
    if cell == body.cells[-1]:
        return Place(body.name, "outer", body.behind)
    if cell == body.cells[0]:
        return Place(body.name, "inner", body.before)
    return Place(body.name)


def _change(hours, back=0):
    """What the last year added to the water held, or one so many years before it [kg/m2]; None for less than a year."""
    end = hours.time.size - back * YEAR
    if end < YEAR:
        return None
    before = (hours.initial_water * hours.width).sum() if end == YEAR else hours.water[end - YEAR - 1]
    return float(hours.water[end - 1] - before)


def _settling(hours):
    """Whether the last year's change is what the start was off by, which fades; None where that cannot be told yet."""
    change, before = _change(hours), _change(hours, back=1)
    if change is None or before is None:
        return None
    return before * change > 0 and abs(change) < _FADES * abs(before)


def _growth(change, settling):
    """What is left over; the first year settles what the start was off by, so it is told from the second."""
    more, less = criterion("growth"), criterion("carry-over")
    if change is None or settling or settling is None:
        return
    if change >= more.damage:
        yield Finding(more.id, Place(), change, more, more.state(change))
    if -change >= less.caution:
        yield Finding(less.id, Place(), -change, less, less.state(-change))


def _drying(made, hours, last, change, settling):
    """Whether and whither the water leaves."""
    tolerance = criterion("growth").damage
    if change is None:
        return made
    if made.repeats and _always_wet(made):
        dries = NEVER
    elif change >= tolerance:
        dries = NEVER if settling is False else None
    else:
        dries = LATER if settling is False and change <= -tolerance else WITHIN
    water = hours.water[last]
    wettest = int(water.argmax())
    series = np.roll(water, -wettest)
    months = int(series.argmin()) + 1
    span = (np.arange(months) + wettest) % water.size
    inward = -float(hours.vapor_flux_in[last][span].sum())
    outward = float((hours.vapor_flux_out + hours.vent_out + hours.leak_out - hours.leak_in)[last][span].sum())
    into, out = max(inward, 0.0), max(outward, 0.0)
    toward = None
    if into or out:
        toward = "outward" if out > _MOSTLY * into else "inward" if into > _MOSTLY * out else "both ways"
    return replace(made, dries=dries, toward=toward)
