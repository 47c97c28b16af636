"""The verdict of an hourly year, of twelve months, of one state that never ends, and of a single face or amount."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any, Protocol, TypeGuard, overload

import numpy as np
from numpy.typing import ArrayLike, NDArray

from dryward.building import Assembly, Layer, Material
from dryward.checks import Floats
from dryward.verdict.findings import (
    DRY,
    FIBERS,
    LATER,
    NEVER,
    STATES,
    WET,
    WITHIN,
    Criterion,
    Finding,
    Place,
    Verdict,
    class_of_surface,
    criterion,
    given,
    mold_limit,
    verdict,
)
from dryward.weather import YEAR

#: The shelf of what the weather reaches: rain, which is not counted, wets it, and it dries in the open.
COVERING = "roof coverings and cladding"
#: Water less than this is no finding [kg/m2]: a gram.
_GRAM = 1e-3
#: A yearly change below this share of the year before it fades: what the start was off by is settling [-].
_FADES = 0.7
#: Of what leaves in the drying season, from this many times the other way on it is called one way.
_MOSTLY = 4.0
#: Humidity up to which the curve of wood is bound water [-]; the step from there to free saturation takes flooding.
BOUND = 0.99
#: Humidity that wood is in balance with before the year's water comes to it [-]; common practice, no source.
_BEFORE = 0.80
#: What no steady state counts.
LEFT_OUT = ("time", "storage", "leak", "sun", "rain")


# --- what is read off a result ------------------------------------------------------


class Nodes(Protocol):
    """What is read off any state by nodes: one, or one of each month, or of each case of a sweep."""

    @property
    def assembly(self) -> Assembly: ...
    @property
    def names(self) -> Sequence[str]: ...
    @property
    def temperature(self) -> Floats: ...
    @property
    def relative_humidity(self) -> Floats: ...
    def face(self, layer: str, side: str, /) -> int: ...


class OneState(Nodes, Protocol):
    """What is read off a steady state."""

    @property
    def wet_planes(self) -> Sequence[Any]: ...  # steady.WetPlane, a floor above
    @property
    def gain(self) -> float: ...


class ManyStates(Nodes, Protocol):
    """What is read off a sweep."""

    @property
    def gain(self) -> Floats: ...


class TwelveStates(Nodes, Protocol):
    """What is read off a balance of twelve months."""

    @property
    def planes(self) -> Sequence[Any]: ...  # steady.WetPlane, a floor above
    @property
    def month(self) -> Sequence[int]: ...
    @property
    def held(self) -> Floats: ...
    @property
    def growth(self) -> float: ...
    @property
    def left(self) -> float: ...
    @property
    def ending(self) -> str: ...


class Run(Protocol):
    """What is read off an hourly run; series by hour, or by hour and cell."""

    @property
    def assembly(self) -> Assembly: ...
    @property
    def time(self) -> Floats: ...
    @property
    def width(self) -> Floats: ...
    @property
    def cell_layer(self) -> NDArray[np.int_]: ...
    @property
    def temperature(self) -> Floats: ...
    @property
    def water_content(self) -> Floats: ...
    @property
    def free_water(self) -> Floats: ...
    @property
    def most_bound(self) -> Floats: ...
    @property
    def water(self) -> Floats: ...
    @property
    def initial_water(self) -> Floats: ...
    @property
    def runoff(self) -> Floats: ...
    @property
    def ran_off(self) -> Floats: ...
    @property
    def vapor_flux_in(self) -> Floats: ...
    @property
    def vapor_flux_out(self) -> Floats: ...
    @property
    def vent_out(self) -> Floats: ...
    @property
    def leak_in(self) -> Floats: ...
    @property
    def leak_out(self) -> Floats: ...
    @property
    def leaking(self) -> bool: ...
    @property
    def start_humidity(self) -> float | None: ...
    def face(self, name: str, side: str = ..., /) -> tuple[Floats, Floats]: ...
    def mold_index(self, name: str, sensitivity: str, side: str = ..., /) -> Floats: ...


@dataclass(frozen=True)
class _Body:
    """A layer, or neighbors of one material that are judged as one, and what lies beside its faces."""

    places: tuple[int, ...]
    first: Layer
    last: Layer
    before: str
    behind: str

    @property
    def name(self) -> str:
        return self.first.name

    @property
    def at(self) -> dict[str, Place]:
        """Its two faces by their sides."""
        return {"inner": Place(self.name, "inner", self.before), "outer": Place(self.name, "outer", self.behind)}


def _bodies(assembly: Assembly, names: Sequence[str]) -> list[_Body]:
    """The bodies among the layers of those names; beyond the last of them lies the outdoor air."""
    layers, count = assembly.layers, len(names)
    return [
        _Body(
            places,
            layers[places[0]],
            layers[places[-1]],
            names[places[0] - 1] if places[0] else "room air",
            names[places[-1] + 1] if places[-1] + 1 < count else "outdoor air",
        )
        for places in assembly.bodies
        if places[-1] < count
    ]


def _is_wood(substance: object) -> TypeGuard[Material]:
    """Whether it is wood with a sorption curve."""
    return isinstance(substance, Material) and bool(substance.wood and substance.sorption)


def moisture(wood: Material, humidity: ArrayLike) -> Floats:
    """Moisture content of wood in balance with air [mass %]: bound water, as the curve has it short of saturation."""
    return 100.0 * np.asarray(wood.water_content(np.minimum(humidity, BOUND))) / wood.density


def _at_most_damp(limit: Criterion, value: float) -> str:
    """A state that never ends has no damage limit: wood that takes all the time there is does not rot at once."""
    return STATES[min(int(limit.rank(value)), 1)]


# --- an hourly year -----------------------------------------------------------------


def of_year(hours: Run) -> Verdict:
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
    given("hours", hours, "free_water", "ran_off", "assembly")
    count = hours.time.size
    last = slice(max(count - YEAR, 0), count)
    bodies = [_Cells(body, hours) for body in _bodies(hours.assembly, [each.name for each in hours.assembly.layers])]
    bodies = [body for body in bodies if body.cells.size]
    found: list[Finding] = []
    for body in bodies:
        found += _wood(hours, body, last)
        found += _mold(hours, body, last)
    found += _free_water(hours, bodies, last)
    change = yearly_change(hours) if count >= YEAR else None
    settling = _settling(hours)
    found += _growth(change, settling)
    # Every run begins with the year, so the hour of the judged stretch gives that of the year.
    found = [each if each.when is None else replace(each, when=(each.when + last.start) % YEAR) for each in found]
    left_out = ["rain"]
    left_out += ["framing"] if hours.assembly.framing else []
    left_out += [] if hours.leaking else ["leak"]
    tolerance = criterion("growth").damage
    made = verdict(
        "year", found, left_out=tuple(left_out), years=max(count // YEAR, 1),
        repeats=change is not None and abs(change) < tolerance, start=hours.start_humidity,
    )  # fmt: skip
    return _drying(made, hours, last, change, settling)


class _Cells:
    """The cells of a body."""

    def __init__(self, body: _Body, hours: Run) -> None:
        self.body, self.name, self.substance = body, body.name, body.first.substance
        self.cells = np.flatnonzero(np.isin(hours.cell_layer, body.places))
        self.width = hours.width[self.cells]

    def place(self, cell: int) -> Place:
        """The place of a cell: at a face of the body, or inside it."""
        if cell == self.cells[-1]:
            return self.body.at["outer"]
        return self.body.at["inner"] if cell == self.cells[0] else Place(self.name)


def _wood(hours: Run, body: _Cells, last: slice) -> Iterator[Finding]:
    made = body.substance
    if not _is_wood(made):
        return
    limit = criterion("cladding-moisture" if made.category == COVERING else "wood-moisture")
    share = body.width / body.width.sum()
    series = np.einsum("ij,j->i", hours.water_content[last][:, body.cells], share) * 100.0 / made.density
    peak = int(series.argmax())
    full = float((hours.most_bound[body.cells] * share).sum()) * 100.0 / made.density
    value = float(series[peak])
    yield Finding(
        limit.id, Place(body.name), value, limit, limit.state(value), float(limit.over(series).sum()), peak,
        full=value > 0.999 * full, unbound=unbound(value, made.density, float(body.width.sum())),
    )  # fmt: skip


def unbound(moisture: float, density: float, thickness: float) -> float:
    """Water or frost in the pores of wood [mass %, kg/m3 dry, m], beyond what its fibers bind [kg/m2].

    Examples
    --------
    By hand: 11 mm of OSB of 650 kg/m3 weigh 7.15 kg/m2, and 40 % of that are 2.86.

    >>> round(unbound(70.0, 650.0, 0.011), 2), unbound(26.0, 650.0, 0.011)
    (2.86, 0.0)
    """
    return max(0.0, moisture - FIBERS) / 100.0 * density * thickness


def _mold(hours: Run, body: _Cells, last: slice) -> Iterator[Finding]:
    kind = class_of_surface(body.substance)
    if kind is None:
        return
    limit = criterion("mold-index")
    for layer, (side, place) in zip((body.body.first, body.body.last), body.body.at.items(), strict=True):
        warmth, humidity = hours.face(layer.name, side)
        if (humidity < mold_limit(warmth, kind)).all():
            continue  # nothing grows there at any hour
        series = hours.mold_index(layer.name, kind, side)[last]
        peak = int(series.argmax())
        value = float(series[peak])
        if value >= 0.05:
            over = float(limit.over(series).sum())
            yield Finding(limit.id, place, value, limit, limit.state(value), over, peak)


def _free_water(hours: Run, bodies: Sequence[_Cells], last: slice) -> Iterator[Finding]:
    """In each body, with the drops on the faces of its neighbors that touch it; the same water is told once."""
    limit = criterion("free-water")
    taken: set[int] = set()
    found: list[tuple[float, int, Finding]] = []
    ran_off = _ran_off(hours, last)
    for k, body in enumerate(bodies):
        if getattr(body.substance, "category", "") == COVERING:
            continue  # dew on the outside is no finding
        cells = body.cells.tolist()
        for other in (bodies[k - 1] if k else None, bodies[k + 1] if k + 1 < len(bodies) else None):
            if other is not None and _touch(body, other):
                cells.append(int(other.cells[0] if other.cells[0] > body.cells[-1] else other.cells[-1]))
        if body.body.behind == "outdoor air":
            cells.remove(int(body.cells[-1]))
        if not cells:
            continue  # the one plane of an air space that ends outdoors
        cells.sort()
        held = hours.free_water[last][:, cells].sum(axis=1)
        off = ran_off[cells]
        peak = int(held.argmax())
        value, gone = float(held[peak]), float(off.sum())
        if value + gone < _GRAM:
            continue
        where = cells[int((hours.free_water[last][peak, cells] if value >= _GRAM else off).argmax())]
        over = float(limit.over(held).sum())
        place = next(each for each in bodies if where in each.cells).place(where)
        found.append((value + gone, where, Finding(
            limit.id, place, value + gone, limit, limit.state(value + gone), over, peak,
            frost=bool(hours.temperature[last][peak, where] <= 0.0), ran_off=gone,
        )))  # fmt: skip
    for _, where, each in sorted(found, key=lambda one: one[0], reverse=True):
        if not {where - 1, where, where + 1} & taken:
            taken.add(where)
            yield each


def _ran_off(hours: Run, last: slice) -> Floats:
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


def _touch(one: _Cells, other: _Cells) -> bool:
    """Whether two bodies lie on one another with no membrane between."""
    first, second = sorted((one.body.places, other.body.places))
    return second[0] - first[-1] == 1


@overload
def yearly_change(hours: Run) -> float: ...
@overload
def yearly_change(hours: Run, back: int) -> float | None: ...
def yearly_change(hours: Run, back: int = 0) -> float | None:
    """What the last year, or a shorter run in all, added to the water held [kg/m2].

    Or what the year so many years `back` added, None where it was not run.
    """
    end = hours.time.size - back * YEAR
    if back and end < YEAR:
        return None
    before = (hours.initial_water * hours.width).sum() if end <= YEAR else hours.water[end - YEAR - 1]
    return float(hours.water[end - 1] - before)


def _settling(hours: Run) -> bool | None:
    """Whether the last year's change is what the start was off by, which fades; None where that cannot be told yet."""
    change, before = yearly_change(hours), yearly_change(hours, back=1)
    if change is None or before is None:
        return None
    return before * change > 0 and abs(change) < _FADES * abs(before)


def _growth(change: float | None, settling: bool | None) -> Iterator[Finding]:
    """What is left over; the first year settles what the start was off by, so it is told from the second."""
    more, less = criterion("growth"), criterion("carry-over")
    if change is None or settling or settling is None:
        return
    if change >= more.damage:
        yield Finding(more.id, Place(), change, more, more.state(change))
    if -change >= less.caution:
        yield Finding(less.id, Place(), -change, less, less.state(-change))


def _always_wet(made: Verdict) -> bool:
    """Whether wood or free water was above its caution limit in every hour of the judged year."""
    wet = [each for each in made.findings if each.what in ("wood-moisture", "free-water") and each.state != DRY]
    return any(each.lasted is not None and each.lasted >= YEAR for each in wet)


def _drying(made: Verdict, hours: Run, last: slice, change: float | None, settling: bool | None) -> Verdict:
    """Whether and whither the water leaves."""
    tolerance = criterion("growth").damage
    dries: str | None
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


# --- twelve months ------------------------------------------------------------------


def of_months(months: TwelveStates) -> Verdict:
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
    given("months", months, "held", "ending", "assembly")
    bodies = _bodies(months.assembly, months.names)
    found = [_held(months, bodies, plane) for plane in range(len(months.planes))]
    for what, value in (("growth", months.growth), ("carry-over", months.left)):
        limit = criterion(what)
        if value >= limit.caution:
            found.append(Finding(what, Place(), value, limit, limit.state(value)))
    for body in bodies:
        found += _lasting(months, body)
    dries = {"no wetting": WITHIN, "dries": WITHIN, "holds": LATER, "grows": NEVER}[months.ending]
    return verdict("months", found, dries=dries, left_out=tuple(each for each in LEFT_OUT if each != "time"), years=1)


def _plane(plane: Any) -> Place:
    """Where a plane lies: inside a layer, or between two."""
    if plane.inner_layer == plane.outer_layer:
        return Place(plane.inner_layer)
    return Place(plane.inner_layer, "outer", plane.outer_layer)


def _held(months: TwelveStates, bodies: Sequence[_Body], number: int) -> Finding:
    """The most held at one plane: as moisture of the wood it lies at, or as free water."""
    plane, series = months.planes[number], months.held[:, number]
    peak, layers = int(series.argmax()), months.assembly.layers
    place, frost = _plane(plane), bool(months.temperature[peak, plane.node] < 0.0)
    limit, values = criterion("free-water"), series
    for body in bodies:
        made, parts = body.first.substance, [layers[each] for each in body.places]
        if _is_wood(made) and {plane.inner_layer, plane.outer_layer} & {each.name for each in parts}:
            limit, place, frost = criterion("wood-moisture"), Place(body.name), False
            mass = made.density * sum(each.thickness or 0.0 for each in parts)
            full = 100.0 * made.water_content(1.0) / made.density
            values = np.minimum(moisture(made, _BEFORE) + 100.0 * series / mass, full)
    value = float(values[peak])
    over = float(limit.over(values).sum())
    return Finding(limit.id, place, value, limit, limit.state(value), over, months.month[peak], frost)


def _lasting(months: TwelveStates, body: _Body) -> Iterator[Finding]:
    """Wood and faces that a month would bring above caution if it lasted: damp at most."""
    made = body.first.substance
    kind = class_of_surface(made)
    nodes = (months.face(body.first.name, "inner"), months.face(body.last.name, "outer"))
    for place, node in zip(body.at.values(), nodes, strict=True):
        humidity, warmth = months.relative_humidity[:, node], months.temperature[:, node]
        if _is_wood(made):
            limit, values = criterion("wood-moisture"), moisture(made, humidity)
            yield _damp_at_most(months, limit, place, values, limit.over(values))
        if kind is not None:
            limit = criterion("face-humidity")
            level = mold_limit(warmth, kind)
            yield _damp_at_most(months, limit, place, humidity, humidity >= level, level)


def _damp_at_most(
    months: TwelveStates,
    limit: Criterion,
    place: Place,
    values: Floats,
    over: NDArray[np.bool_],
    level: Floats | None = None,
) -> Finding:
    worst = int(np.argmax(np.where(over, values, -1.0)) if over.any() else np.argmax(values))
    limit = limit if level is None else replace(limit, caution=float(level[worst]))
    state = STATES[int(over.any())]
    return Finding(
        limit.id, place, float(values[worst]), limit, state, float(over.sum()), months.month[worst], if_it_lasted=True
    )


# --- a state that never ends --------------------------------------------------------


def of_steady(profile: OneState) -> Verdict:
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
    given("profile", profile, "wet_planes", "gain", "assembly")
    gain = criterion("steady-gain")
    # The state hangs on all planes together; each is told with the rate that is its own.
    whole = gain.state(profile.gain)
    found = [
        Finding(gain.id, _plane(each), each.rate, gain, whole, frost=each.temperature < 0.0)
        for each in profile.wet_planes
    ]
    for body in _bodies(profile.assembly, profile.names):
        found += _settled(profile, body)
    return verdict("steady", found, left_out=LEFT_OUT)


def _settled(profile: OneState, body: _Body) -> Iterator[Finding]:
    """Where a body would settle: its wood, and its two faces if they can mold."""
    made = body.first.substance
    kind = class_of_surface(made)
    if kind is None and not _is_wood(made):
        return
    nodes = [profile.face(body.first.name, "inner"), profile.face(body.last.name, "outer")]
    humidity = [float(profile.relative_humidity[node]) for node in nodes]
    places = tuple(body.at.values())
    if _is_wood(made):
        limit = criterion("wood-moisture")
        value = float(max(moisture(made, each) for each in humidity))
        yield Finding(limit.id, places[int(np.argmax(humidity))], value, limit, _at_most_damp(limit, value))
    if kind is not None:
        for place, node, value in zip(places, nodes, humidity, strict=True):
            yield _face_humidity(place, float(profile.temperature[node]), value, kind)


def _face_humidity(place: Place, temperature: float, humidity: float, kind: str = "sensitive") -> Finding:
    """A face against the humidity at which mold begins to grow there; water that gathers is another finding."""
    row = criterion("face-humidity")
    limit = Criterion(**{**vars(row), "caution": mold_limit(temperature, kind)})  # quicker than `replace`
    return Finding(row.id, place, humidity, limit, STATES[int(humidity >= limit.caution)])


def states_of_sweep(summary: ManyStates) -> NDArray[np.object_]:
    """The state of each case of a sweep: the same rule as `of_steady`, in arrays."""
    rank = np.asarray(criterion("steady-gain").rank(summary.gain))
    wood_limit = criterion("wood-moisture")
    for body in _bodies(summary.assembly, summary.names):
        made = body.first.substance
        kind = class_of_surface(made)
        if kind is None and not _is_wood(made):
            continue
        nodes = [summary.face(body.first.name, "inner"), summary.face(body.last.name, "outer")]
        humidity = summary.relative_humidity[..., nodes]
        damp = np.zeros(rank.shape, bool)
        if _is_wood(made):
            damp |= wood_limit.over(moisture(made, humidity)).any(axis=-1)
        if kind is not None:
            damp |= (humidity >= mold_limit(summary.temperature[..., nodes], kind)).any(axis=-1)
        rank = np.maximum(rank, damp)
    return np.asarray(STATES, dtype=object)[rank]


# --- one face, one amount -----------------------------------------------------------


def of_face(
    temperature: float, vapor_pressure: float, saturation: float, substance: object = None, name: str = "face"
) -> Verdict:
    """What air of a vapor pressure means to one face, if it gets there and stays.

    Wet when drops form, damp when wood would settle above its caution level
    or mold could grow, dry otherwise.  Mold is judged as on wood where nobody
    knows what the face is of.

    >>> of_face(5.0, 900.0, 872.6).state, of_face(15.0, 900.0, 1705.0).state
    ('wet', 'dry')
    """
    humidity = vapor_pressure / saturation
    place, found = Place(name), []
    if humidity >= 1.0:
        row = criterion("face-humidity")
        found.append(Finding(row.id, place, humidity, row, row.state(humidity), frost=temperature < 0.0))
    else:
        found.append(_face_humidity(place, temperature, humidity, class_of_surface(substance) or "sensitive"))
        if _is_wood(substance):
            limit, value = criterion("wood-moisture"), float(moisture(substance, humidity))
            found.append(Finding(limit.id, place, value, limit, _at_most_damp(limit, value)))
    return verdict("face", found, left_out=("time", "storage"))


def states_of_faces(
    temperature: ArrayLike, vapor_pressure: ArrayLike, saturation: ArrayLike, substance: object = None
) -> NDArray[np.object_]:
    """The state of each of many faces of one substance: the same rule as `of_face`, in arrays."""
    row, humidity = criterion("face-humidity"), np.asarray(vapor_pressure, dtype=float) / saturation
    damp = humidity >= mold_limit(np.asarray(temperature, dtype=float), class_of_surface(substance) or "sensitive")
    if _is_wood(substance):
        damp = damp | (criterion("wood-moisture").over(moisture(substance, humidity)))
    return np.asarray(STATES, dtype=object)[np.where(humidity >= row.damage, STATES.index(WET), damp.astype(int))]


def of_amount(
    method: str, what: str, value: float, place: Place | None = None, left_out: Sequence[str] = (), **more: Any
) -> Verdict:
    """What one amount means against the limit of an id, in its unit; more: other attributes of its `Finding`."""
    limit = criterion(what)
    found = Finding(what, place or Place(), float(value), limit, limit.state(float(value)), **more)
    return verdict(method, [found], left_out=tuple(left_out))
