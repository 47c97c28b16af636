"""The verdict of an hourly year, of twelve months, of one state that never ends, and of a single face or amount."""

from dataclasses import replace

import numpy as np

from dryward.building import Material
from dryward.verdict.findings import DRY, LATER, NEVER, STATES, WET, WITHIN, Finding, Place, criterion, given, verdict
from dryward.verdict.surfaces import class_of_surface, mold_limit
from dryward.weather import YEAR

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


#: What no steady state counts.
LEFT_OUT = ("time", "storage", "leak", "sun", "rain")


def of_steady(profile):
    """What a steady state means.

    Parameters
    ----------
    profile : Profile
        Of `steady.profile`.

    Returns
    -------
    Verdict
        Wet when water gathers at more than a least rate; damp when it
        gathers more slowly, or when wood or another surface that can mold
        would settle above its caution level.  There is no time in it.

    Examples
    --------
    >>> from dryward import building
    >>> from dryward.physics import steady
    >>> from dryward.weather import Air
    >>> of_steady(steady.profile(building.preset("vented-vault-osb"), Air(21.0, 0.4), Air(-7.0, 0.8))).state
    'wet'
    """
    given("The profile of steady.profile", profile, "wet_planes", "gain", "assembly")
    gain, found = criterion("steady-gain"), []
    # The state hangs on all planes together; each is told with the rate that is its own.
    whole = gain.state(profile.gain)
    for plane in profile.wet_planes:
        inside = plane.inner_layer == plane.outer_layer
        place = Place(plane.inner_layer) if inside else Place(plane.inner_layer, "outer", plane.outer_layer)
        found.append(Finding(gain.id, place, plane.rate, gain, whole, frost=plane.temperature < 0.0))
    for body in bodies(profile):
        found += _body(profile, *body)
    return verdict("steady", found, left_out=LEFT_OUT)


def bodies(state):
    """(places, first layer, last layer) of each body of a material that the state sees."""
    layers, count = state.assembly.layers, len(state.names)
    for places in state.assembly.bodies:
        if places[-1] < count and isinstance(layers[places[0]].substance, Material):
            yield places, layers[places[0]], layers[places[-1]]


def _body(profile, places, first, last):
    """Where a body would settle: its wood, and its two faces if they can mold."""
    made, names = first.substance, profile.names
    inside = names[places[0] - 1] if places[0] else "room air"
    outside = names[places[-1] + 1] if places[-1] + 1 < len(names) else "outdoor air"
    faces = (
        (Place(first.name, "inner", inside), profile.face(first.name, "inner")),
        (Place(first.name, "outer", outside), profile.face(last.name, "outer")),
    )
    humidity = [float(profile.relative_humidity[node]) for _, node in faces]
    if made.wood and made.sorption:
        limit = criterion("wood-moisture")
        value = float(max(moisture(made, each) for each in humidity))
        # A state that never ends has no damage limit: wood that takes all the time there is does not rot at once.
        state = STATES[min(int(limit.rank(value)), 1)]
        yield Finding(limit.id, faces[int(np.argmax(humidity))][0], value, limit, state)
    kind = class_of_surface(made)
    if kind is not None:
        for (place, node), value in zip(faces, humidity, strict=True):
            yield _face_humidity(place, float(profile.temperature[node]), value, kind)


def moisture(wood, humidity):
    """Moisture content of wood in balance with air [mass %]: bound water, as the curve has it short of saturation."""
    return 100.0 * np.asarray(wood.water_content(np.minimum(humidity, BOUND))) / wood.density


#: Humidity up to which the curve of wood is bound water [-]; the step from there to free saturation takes flooding.
BOUND = 0.99


def _face_humidity(place, temperature, humidity, kind="sensitive"):
    """A face against the humidity at which mold begins to grow there; water that gathers is another finding."""
    row = criterion("face-humidity")
    limit = replace(row, caution=float(mold_limit(temperature, kind)))
    return Finding(row.id, place, humidity, limit, STATES[int(humidity >= limit.caution)])


def states_of_sweep(summary):
    """The state of each case of a sweep: the same rule as `of_steady`, in arrays."""
    rank = np.asarray(criterion("steady-gain").rank(summary.gain))
    wood_limit = criterion("wood-moisture").caution
    for _, first, last in bodies(summary):
        made = first.substance
        nodes = [summary.face(first.name, "inner"), summary.face(last.name, "outer")]
        humidity = summary.relative_humidity[..., nodes]
        damp = np.zeros(rank.shape, bool)
        if made.wood and made.sorption:
            damp |= (moisture(made, humidity) >= wood_limit).any(axis=-1)
        kind = class_of_surface(made)
        if kind is not None:
            damp |= (humidity >= mold_limit(summary.temperature[..., nodes], kind)).any(axis=-1)
        rank = np.maximum(rank, damp)
    return np.asarray(STATES, dtype=object)[rank]


def of_face(temperature, vapor_pressure, saturation, substance=None, name="face"):
    """What air of a vapor pressure means to one face, if it gets there and stays."""
    humidity = vapor_pressure / saturation
    place, found = Place(name), []
    if humidity >= 1.0:
        row = criterion("face-humidity")
        found.append(Finding(row.id, place, humidity, row, row.state(humidity), frost=temperature < 0.0))
    else:
        found.append(_face_humidity(place, temperature, humidity, _class(substance)))
        if _settles(substance):
            limit, value = criterion("wood-moisture"), float(moisture(substance, humidity))
            found.append(Finding(limit.id, place, value, limit, STATES[min(int(limit.rank(value)), 1)]))
    return verdict("face", found, left_out=("time", "storage"))


def states_of_faces(temperature, vapor_pressure, saturation, substance=None):
    """The state of each of many faces: the same rule as `of_face`, in arrays."""
    row, humidity = criterion("face-humidity"), np.asarray(vapor_pressure, dtype=float) / saturation
    damp = humidity >= mold_limit(temperature, _class(substance))
    if _settles(substance):
        damp = damp | (criterion("wood-moisture").rank(moisture(substance, humidity)) > 0)
    return np.asarray(STATES, dtype=object)[np.where(humidity >= row.damage, STATES.index(WET), damp.astype(int))]


def _class(substance):
    """Sensitivity class of a face; as of wood where nobody knows what it is of."""
    return class_of_surface(substance) or "sensitive"


def _settles(substance):
    """Whether it is wood with a sorption curve."""
    return isinstance(substance, Material) and bool(substance.wood and substance.sorption)


def of_amount(method, what, value, place=None, left_out=(), **more):
    """What one amount means against one limit."""
    limit = criterion(what)
    found = Finding(what, place or Place(), float(value), limit, limit.state(float(value)), **more)
    return verdict(method, [found], left_out=tuple(left_out))
