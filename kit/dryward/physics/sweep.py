"""Many steady states at once: the same physics as `profile`, in arrays.

Sliders, strips and maps need thousands of cases; here each case is a row.
"""

from dataclasses import dataclass, field

import numpy as np

from dryward import air
from dryward.checks import OutOfRange, UnknownName, within
from dryward.physics.hull import tight_lines
from dryward.physics.humidity_state import settle
from dryward.physics.ladder import TIGHT, face, ladder
from dryward.physics.shape import seal
from dryward.results import Result, one_line
from dryward.verdict import STATES, UNKNOWN, states_of_sweep

_AIRS = ("indoor_temperature", "indoor_relative_humidity", "outdoor_temperature", "outdoor_relative_humidity")
_PROPERTIES = ("permeance", "thermal_resistance")


@dataclass(frozen=True)
class Sweep(Result):
    """Summaries of many steady states; each array has the broadcast shape.

    Attributes
    ----------
    gain : ndarray [kg/(s m2)]
        Water gained at all wet planes.
    highest_relative_humidity : ndarray [-]
    highest_depth : ndarray [m] and its place; wettest : ndarray of int (rung)
    wet_planes : ndarray of int
        How many planes are wet.
    dew_point_depth : ndarray [m]
        nan where there is none.
    heat_flux : ndarray [W/m2]
    vapor_flux_in, vapor_flux_out : ndarray [kg/(s m2)]
    temperature, vapor_pressure, relative_humidity : ndarray (..., rungs)
    depth : ndarray (rungs) [m]
    place : ndarray of int (pieces)
    names : tuple of str
    permeance : dict of ndarray
        Of the layers that answer to humidity [kg/(s m2 Pa)].
    assembly : Assembly
        That was swept.
    """

    gain: np.ndarray
    highest_relative_humidity: np.ndarray
    highest_depth: np.ndarray
    wettest: np.ndarray
    wet_planes: np.ndarray
    dew_point_depth: np.ndarray
    heat_flux: np.ndarray
    vapor_flux_in: np.ndarray
    vapor_flux_out: np.ndarray
    temperature: np.ndarray
    vapor_pressure: np.ndarray
    relative_humidity: np.ndarray
    depth: np.ndarray
    place: np.ndarray
    names: tuple
    permeance: dict
    assembly: object = field(repr=False)

    def __post_init__(self):
        seal(self)

    def __repr__(self):
        states = [str(each) for each in np.ravel(states_of_sweep(self))]
        counts = ", ".join(f"{states.count(each)} {each}" for each in (*STATES, UNKNOWN) if each in states)
        return one_line("Sweep", f"{self.assembly.name}, {len(states)} steady states: {counts}")

    def face(self, layer, side):
        """Rung at the inside face (0 or "inner") or the outside face (1 or "outer") of a layer."""
        return face(self.place, layer, side, self.names)


def variables(assembly):
    """What a sweep of this assembly can vary.

    Parameters
    ----------
    assembly : Assembly

    Returns
    -------
    dict
        Keyword -> (layer name, property) or (None, keyword) for an air.
    """
    found = {name: (None, name) for name in _AIRS}
    for layer in assembly.inner_layers:
        for what in _PROPERTIES:
            found[f"{layer.name.replace(' ', '_').replace('-', '_')}_{what}"] = (layer.name, what)
    return found


def sweep(assembly, indoor, outdoor, saturation=None, **arrays):
    """Many steady states at once.

    Parameters
    ----------
    assembly : Assembly
    indoor, outdoor : Air
        May hold arrays.
    saturation : callable, optional
        As in `profile`.
    **arrays : array
        Any of ``indoor_temperature`` [degC], ``indoor_relative_humidity``
        [-], the same outdoors, and for each layer, by its name with
        underscores, ``..._permeance`` [kg/(s m2 Pa)] (a membrane that
        answers to humidity then counts as fixed) and
        ``..._thermal_resistance`` [m2 K/W].  All broadcast together.

    Returns
    -------
    Sweep

    Raises
    ------
    UnknownName
        For a keyword that is none of these.
    OutOfRange
        For a value out of range.
    NotConverged
        When permeances that answer to humidity find no steady state.

    Examples
    --------
    >>> from dryward.building import Assembly, Layer, Material
    >>> from dryward.weather import Air
    >>> board = Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> wall = Assembly("wall", [Layer(board, 0.016, "board")])
    >>> sweep(wall, Air(20, 0.3), Air(0, 0.8), board_permeance=[1e-10, 1e-9]).gain.shape
    (2,)
    """
    known = variables(assembly)
    for name in arrays:
        if name not in known:
            raise UnknownName("thing to vary", name, known)
    given = {
        "indoor_temperature": indoor.temperature,
        "indoor_relative_humidity": indoor.relative_humidity,
        "outdoor_temperature": outdoor.temperature,
        "outdoor_relative_humidity": outdoor.relative_humidity,
    }
    given.update({name: np.asarray(value, dtype=float) for name, value in arrays.items()})
    try:
        shape = np.broadcast_shapes(*(np.shape(value) for value in given.values()))
    except ValueError:
        raise OutOfRange("The arrays of a sweep do not fit together in shape.") from None
    if 0 in shape:
        raise OutOfRange("The arrays of a sweep are empty; they must hold at least one number.")
    flat = {name: np.broadcast_to(value, shape).reshape(-1) for name, value in given.items()}
    _check_airs(flat)
    steps, heat, vapor, answering = _pieces(assembly, known, flat)
    # Where only airs vary, one row of resistances serves all cases.
    cases = max(1, int(np.prod(shape)))
    rungs_r = np.concatenate((np.zeros((heat.shape[0], 1)), np.cumsum(heat, axis=1)), axis=1)
    indoors, outdoors = flat["indoor_temperature"][:, None], flat["outdoor_temperature"][:, None]
    drop = (indoors - outdoors) / np.where(rungs_r[:, -1:] > 0, rungs_r[:, -1:], np.inf)
    temperature = indoors - drop * rungs_r
    ceiling = (saturation or air.saturation_vapor_pressure)(temperature)
    start = flat["indoor_relative_humidity"] * ceiling[:, 0]
    end = flat["outdoor_relative_humidity"] * ceiling[:, -1]
    z, pressure = _settled(steps, answering, vapor, ceiling, start, end, cases)
    return _summary(assembly, shape, steps, answering, temperature, ceiling, z, pressure, drop[:, 0])


def _check_airs(flat):
    for side in ("indoor", "outdoor"):
        within("Air temperature", flat[f"{side}_temperature"], -60.0, 95.0, "°C")
        within("Relative humidity", flat[f"{side}_relative_humidity"], 0.0, 1.0, "%")


def _pieces(assembly, known, flat):
    """Resistances of the pieces by case, with what the sweep varies put in."""
    varied = {name: known[name] for name in flat if known[name][0]}
    most = {}
    for name, (layer, what) in varied.items():
        if what == "thermal_resistance":
            within(f"Thermal resistance of {layer}", flat[name], 0.0, 50.0, "m² K/W")
            most[layer] = float(flat[name].max())
    steps = ladder(assembly, most)
    heat, vapor = steps.heat[None, :], steps.vapor[None, :]
    answering = list(steps.answering)
    rows = len(next(iter(flat.values())))
    if varied:
        heat, vapor = np.repeat(heat, rows, axis=0), np.repeat(vapor, rows, axis=0)
    for name, (layer, what) in varied.items():
        place = steps.names.index(layer)
        here = np.flatnonzero(steps.place == place)
        if what == "thermal_resistance":
            heat[:, here] = flat[name][:, None] / len(here)
        else:
            level = within(f"Permeance of {layer}", flat[name], 0.0, np.inf, "kg/(s m² Pa)")
            resistance = np.where(level > 0, 1.0 / np.where(level > 0, level, 1.0), TIGHT)
            vapor[:, here] = resistance[:, None] / len(here)
            answering = [answer for answer in answering if answer.place != place]
    return steps, heat, vapor, answering


def _settled(steps, answering, vapor, ceiling, start, end, cases):
    def ladder_of(pieces):
        z = np.zeros((len(pieces), pieces.shape[1] + 1))
        np.cumsum(pieces, axis=1, out=z[:, 1:])
        return np.broadcast_to(z, (cases, z.shape[1]))

    if not answering:
        z = ladder_of(vapor)
        return z, tight_lines(z, ceiling, start, end)
    # Only what answers moves from round to round: the rest is summed once.
    fixed = np.array(vapor)
    for answer in answering:
        fixed[:, answer.first : answer.last] = 0.0
    fixed = ladder_of(fixed)

    def stretched(mean, rows):
        z = fixed[rows]
        for k, answer in enumerate(answering):
            whole = 1.0 / answer.permeance(mean[:, k])
            count = answer.last - answer.first
            for piece in range(1, count):
                z[:, answer.first + piece] += whole * piece / count
            z[:, answer.last :] += whole[:, None]
        return z

    def solve(mean, rows):
        top = ceiling[rows] if len(rows) < cases else ceiling
        p = tight_lines(stretched(mean, rows), top, start[rows], end[rows])
        return np.stack([0.5 * (p[:, a.first] / top[:, a.first] + p[:, a.last] / top[:, a.last]) for a in answering], 1)

    names = [steps.names[answer.place] for answer in answering]
    mean = settle(solve, len(names), names, np.full((cases, len(names)), 0.5))
    z = stretched(mean, np.arange(cases))
    return z, tight_lines(z, ceiling, start, end)


def _summary(assembly, shape, steps, answering, temperature, ceiling, z, pressure, heat_flux):
    rh = pressure / ceiling
    gap, fall = np.diff(z, axis=1), -np.diff(pressure, axis=1)
    with np.errstate(divide="ignore", invalid="ignore"):
        flux = fall / gap
    # A piece without resistance (a film left out) passes what its neighbor does.
    open_in, open_out = np.argmax(gap > 0, axis=1), gap.shape[1] - 1 - np.argmax(gap[:, ::-1] > 0, axis=1)
    rows = np.arange(len(flux))
    flux_in, flux_out = flux[rows, open_in], flux[rows, open_out]
    # Where nothing resists, vapor passes without limit, or not at all.
    free = (gap <= 0).all(axis=1)
    drive = pressure[:, 0] - pressure[:, -1]
    unlimited = np.where(drive == 0, 0.0, np.copysign(np.inf, drive))
    flux_in, flux_out = np.where(free, unlimited, flux_in), np.where(free, unlimited, flux_out)
    scale = np.maximum(np.abs(flux_in), np.abs(flux_out))
    touching = rh[:, 1:-1] >= 1 - 1e-9
    passed = np.where(gap > 0, flux, 0.0)
    bend = np.where(gap[:, 1:] > 0, passed[:, :-1] - passed[:, 1:], 0.0)
    wet = touching & (bend > np.maximum(1e-12, 1e-9 * scale[:, None]))
    # A surface below the dew point with no film resistance before it takes
    # vapor without limit.
    sweats_in = (gap[:, 0] <= 0) & (fall[:, 0] > 0) & ~free
    sweats_out = (gap[:, -1] <= 0) & (fall[:, -1] < 0) & ~free
    flux_in, flux_out = np.where(sweats_in, np.inf, flux_in), np.where(sweats_out, -np.inf, flux_out)
    gains = wet.any(axis=1) | sweats_in | sweats_out
    gain = np.where(gains, flux_in, 0.0) - np.where(gains, flux_out, 0.0)
    inner = rh[:, 1:-1]
    wettest = 1 + np.argmax(inner, axis=1)
    return Sweep(
        gain=gain.reshape(shape),
        highest_relative_humidity=inner.max(axis=1).reshape(shape),
        highest_depth=steps.depth[wettest].reshape(shape),
        wettest=wettest.reshape(shape),
        wet_planes=(wet.sum(axis=1) + sweats_in + sweats_out).reshape(shape),
        dew_point_depth=_dew_point_depths(temperature, steps.depth, pressure[:, 0]).reshape(shape),
        heat_flux=heat_flux.reshape(shape),
        vapor_flux_in=flux_in.reshape(shape),
        vapor_flux_out=flux_out.reshape(shape),
        temperature=temperature.reshape(*shape, -1),
        vapor_pressure=pressure.reshape(*shape, -1),
        relative_humidity=rh.reshape(*shape, -1),
        depth=steps.depth,
        place=steps.place,
        names=steps.names,
        permeance={steps.names[a.place]: _whole(steps, z, a.place).reshape(shape) for a in answering},
        assembly=assembly,
    )


def _whole(steps, z, place):
    """Permeance of all of a layer: a laminate answers with one sheet and has two."""
    return 1.0 / (z[:, steps.face(place, 1)] - z[:, steps.face(place, 0)])


def _dew_point_depths(temperature, depth, vapor_pressure):
    found = np.full(len(vapor_pressure), np.nan)
    some = vapor_pressure >= 0.001
    dew = np.full_like(found, -np.inf)
    dew[some] = air.dew_point(vapor_pressure[some])
    warm, cold = temperature[:, 1:-2], temperature[:, 2:-1]
    crossed = (cold <= dew[:, None]) & (dew[:, None] < warm)
    hit = crossed.any(axis=1)
    k = np.argmax(crossed[hit], axis=1)
    rows = np.flatnonzero(hit)
    share = (warm[rows, k] - dew[rows]) / (warm[rows, k] - cold[rows, k])
    found[rows] = depth[k + 1] + (depth[k + 2] - depth[k + 1]) * share
    found[(temperature[:, 1] <= dew) & (temperature[:, 1] < temperature[:, 0])] = 0.0
    return found
