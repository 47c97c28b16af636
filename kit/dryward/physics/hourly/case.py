"""A case made ready for the march: everything as arrays."""

from dataclasses import dataclass

import numpy as np

from dryward import air
from dryward.building import AirSpace, Assembly
from dryward.checks import OutOfRange, of_kind, within
from dryward.physics import moving_air
from dryward.physics.hourly import air_paths, grid, surfaces, tables
from dryward.physics.hourly import names as k
from dryward.units import HOUR, KELVIN, STEFAN_BOLTZMANN, WATER_DENSITY
from dryward.weather import Air, HourlyWeather

#: Heat of evaporation at 0 degC [J/kg], specific heats of water and of vapor [J/(kg K)]:
#: ASHRAE Handbook of Fundamentals 2017 ch. 1, equations 30 and 33.
EVAPORATION, WATER_HEAT, VAPOR_HEAT = 2.501e6, 4186.0, 1860.0
#: Largest change of the last iteration, of moisture potential [-]; 100 times it in K.
TOLERANCE = 1e-4
#: Shortest step [s].
SHORTEST = 1.0
#: Free water that a face keeps, drops hanging on, before it runs off [kg/m2]: the amount from which DIN 4108-3
#: expects water to run or drip off a face that does not soak up, by common reading (from memory).
FACE_KEEPS = 0.2
#: Air in balance with all layers at the start, where nothing else is said: common practice, no source.
START = Air(20.0, 0.8)


@dataclass(frozen=True, eq=False)
class Case:
    """All the arrays of one run, in the order the march takes them."""

    assembly: object
    grid: grid.Grid
    drive: np.ndarray
    number: np.ndarray
    material: np.ndarray
    width: np.ndarray
    capacity: np.ndarray
    table: np.ndarray
    face_r: np.ndarray
    face_z: np.ndarray
    face_kind: np.ndarray
    face_sheet: np.ndarray
    sheet_za: np.ndarray
    sheet_zb: np.ndarray
    sheets: np.ndarray
    vent_cell: int
    vent_flow: np.ndarray
    face_air: np.ndarray
    runs: np.ndarray
    joints: bool
    bound: np.ndarray
    full: np.ndarray
    rise: np.ndarray
    beside: np.ndarray


def as_weather(weather, hours):
    """Weather, or one air as constant weather.

    Parameters
    ----------
    weather : HourlyWeather or Air
    hours : int
        Length of constant weather [h], 1 or more.

    Returns
    -------
    HourlyWeather

    Raises
    ------
    OutOfRange
        For anything else.

    Examples
    --------
    >>> as_weather(Air(0.0, 0.8), 24).hours
    24
    """
    if isinstance(weather, Air):
        _one("The weather", weather)
        return HourlyWeather.constant(weather, hours=hours)
    return of_kind("The weather", weather, HourlyWeather, "hourly weather or one air")


def ready(assembly, weather, indoor, *, step=HOUR, vent=None, leak=None, surface=None, refine=1):
    """A case ready for the march.

    Parameters
    ----------
    assembly, weather, indoor, step, vent, leak, surface, refine
        As in `hourly.simulate`; `step` in [s], above 0 to 3600.

    Returns
    -------
    Case

    Raises
    ------
    OutOfRange
        For a value out of range, or two vent spaces.

    Examples
    --------
    >>> from dryward import building
    >>> board = building.Material("board", "board", 640, 1090, 0.16, 5e-11)
    >>> wall = building.Assembly("wall", [building.Layer(board, 0.016)])
    >>> ready(wall, as_weather(Air(0.0, 0.8), 24), Air(20.0, 0.4)).drive.shape[0]
    24
    """
    of_kind("The assembly", assembly, Assembly, "an assembly")
    if surface is not None:
        of_kind("The surface", surface, surfaces.Surface, "a Surface")
    cut = grid.cells(assembly, refine)
    n = cut.width.size
    drive = np.zeros((weather.hours, k.COLUMNS))
    warmth, vapor = _room(indoor, weather)
    drive[:, k.T_IN], drive[:, k.P_IN] = warmth, vapor
    drive[:, k.T_OUT], drive[:, k.P_OUT] = weather.temperature, weather.vapor_pressure
    drive[:, k.FILM] = surfaces.film(weather, assembly.exterior_film, surface)
    if surface is not None:
        sun = surfaces.irradiance(weather, assembly.slope, surface.azimuth, surface.ground_reflectance)
        drive[:, k.SUN] = surface.absorptance * sun
        drive[:, k.SKY] = surface.emittance * surfaces.longwave(weather, assembly.slope)

    number = np.zeros(k.NUMBERS)
    pressure = air.standard_pressure(weather.altitude)
    for place, value in (
        (k.STEP, within("Step", step, 0.0, HOUR, "s", above=True)),
        (k.EMIT, surface.emittance if surface else 0.0),
        (k.R_IN, max(assembly.interior_film, surfaces.NO_FILM)),
        (k.Z_IN, max(1.0 / assembly.interior_vapor_film, tables.LEAST)),
        (k.Z_OUT, max(1.0 / assembly.exterior_vapor_film, tables.LEAST)),
        (k.AIR_VAPOR, air.MASS_RATIO / pressure),
        (k.COLD, tables.COLD),
        (k.PER_KELVIN, 1.0 / tables.FINE),
        (k.PER_HUMIDITY, float(tables.STEPS)),
        (k.LATENT, EVAPORATION),
        (k.C_WATER, WATER_HEAT),
        (k.C_VAPOR, VAPOR_HEAT),
        (k.C_AIR, moving_air.AIR_SPECIFIC_HEAT),
        (k.SUCTION, WATER_DENSITY * air.VAPOR_GAS_CONSTANT),
        (k.STEFAN, STEFAN_BOLTZMANN),
        (k.ZERO_C, KELVIN),
        (k.DT_FIRST, air_paths.WARMER[0]),
        (k.DT_STEP, air_paths.WARMER[1] - air_paths.WARMER[0]),
        (k.TOLERANCE, TOLERANCE),
        (k.SMALLEST, SHORTEST),
        (k.KEEPS, FACE_KEEPS),
        (k.FREE, tables.FREE),
    ):
        number[place] = value

    # Materials: one table for each different substance and, for air, each width.
    kinds, rows, material, heat = {}, [], np.zeros(n + 2, np.int64), np.zeros(n + 2)
    width = np.zeros(n + 2)
    width[1:-1] = cut.width
    vent_cell = 0
    for cell, place in enumerate(cut.layer, start=1):
        substance = assembly.layers[place].substance if place >= 0 else AirSpace(0.0)
        key = (substance, width[cell]) if isinstance(substance, AirSpace) else substance
        if key not in kinds:
            kinds[key] = len(rows)
            if isinstance(substance, AirSpace):
                rows.append(tables.of_air(substance, width[cell], _vent_vapor(substance)))
            else:
                rows.append(tables.of(substance))
        material[cell] = kinds[key]
        heat[cell] = tables.capacity(substance)
        if isinstance(substance, AirSpace) and substance.vented:
            if vent_cell:
                raise OutOfRange(f"The assembly {assembly.name} has two vent spaces; one can be simulated.")
            vent_cell = cell
            number[k.VENT_FILM] = 2.0 / max(substance.thermal_resistance, 1e-6)
            number[k.VENT_VAPOR] = 2.0 / _vent_vapor(substance)
    table = np.ascontiguousarray(np.stack(rows))

    faces = _faces(cut, material, table)
    flow, drive[:, k.WIND] = air_paths.vent_air(vent, weather, assembly)
    leaking = air_paths.leak_air(leak, weather, warmth)
    way = air_paths.path(assembly, cut, leaking)
    drive[:, k.SEEP], drive[:, k.STRAIGHT] = leaking.seeping, leaking.straight
    joints = leaking.long_share is not None
    if joints and not way.runs.size:  # nothing on its way to seep through
        drive[:, k.STRAIGHT] += drive[:, k.SEEP]
        drive[:, k.SEEP] = 0.0
    bound, full, rise = (np.zeros(n + 2) for _ in range(3))
    bound[1:-1] = np.array([tables.bound(each) for each in table])[material[1:-1]]
    full[1:-1], rise[1:-1] = table[material[1:-1], -1, 0], table[material[1:-1], -2, 1]
    return Case(
        assembly, cut, drive, number, material, width, heat, table, *faces, vent_cell, flow, way.face, way.runs, joints,
        bound, full, rise, _beside(assembly, cut),
    )  # fmt: skip


def _beside(assembly, cut):
    """For each cell the one behind the face that it lies at: 0 for none, -1 where it lies at no face."""
    n = cut.width.size
    beside = np.full(n + 2, -1, np.int64)
    substance = [assembly.layers[place].substance if place >= 0 else None for place in cut.layer]
    # A layer drawn in pieces is one: no face lies between them.
    faces = [
        i in (0, n) or bool(cut.sheets[i]) or substance[i - 1] is None or substance[i - 1] != substance[i]
        for i in range(n + 1)
    ]
    for cell in range(1, n + 1):
        inner, outer = faces[cell - 1], faces[cell]
        if inner and outer:  # a layer of one cell: its faces are its own
            beside[cell] = 0
        elif inner or outer:
            face, other = (cell - 1, cell - 1) if inner else (cell, cell + 1)
            touches = 1 <= other <= n and not cut.sheets[face]
            single = touches and faces[other - 1] and faces[other]
            beside[cell] = other if touches and not single else 0
    return beside


def _one(words, state):
    if np.ndim(state.temperature) or np.ndim(state.relative_humidity):
        raise OutOfRange(f"{words} must be one air, not several.")


def _room(indoor, weather):
    if isinstance(indoor, Air):
        _one("The room", indoor)
        return indoor.temperature, indoor.vapor_pressure
    if not hasattr(indoor, "at"):
        raise OutOfRange(f"The room must be an air or a rule for room air, not {str(indoor)[:40]!r}.")
    return indoor.at(weather)


def _vent_vapor(space):
    """Vapor resistance of one film of a vent space [m2 s Pa/kg]."""
    if np.isinf(space.vapor_permeance):
        return tables.film_vapor(space.thermal_resistance)
    return max(1.0 / space.vapor_permeance, tables.LEAST)


def _faces(cut, material, table):
    """What stands at every face between cells: membranes, and whether liquid water passes."""
    n = cut.width.size
    r, z = np.zeros(n + 1), np.zeros(n + 1)
    za, zb = np.zeros(n + 1), np.zeros(n + 1)
    kind, which = np.zeros(n + 1, np.int64), np.full(n + 1, -1, np.int64)
    curves = []
    wicks = table[:, -1, 6] > 0.0
    for face, membranes in enumerate(cut.sheets):
        curve = None
        for each in membranes:
            sensitive, inside, outside = grid.parts(each)
            if sensitive is None:
                z[face] += inside
                (zb if curve is not None else za)[face] += inside
            else:
                za[face] += inside
                zb[face] += outside
                curve = sensitive
        if curve is not None:
            which[face] = len(curves)
            curves.append(tables.sheet(curve))
        elif not membranes and 0 < face < n:
            a, b = material[face], material[face + 1]
            if wicks[a] and wicks[b]:
                kind[face] = k.SAME if a == b else k.CONTACT
    sheets = np.stack(curves) if curves else np.zeros((1, 2, 2))
    return r, z, kind, which, za, zb, np.ascontiguousarray(sheets)
