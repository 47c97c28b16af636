"""A case made ready for the march: everything as arrays."""

from dataclasses import dataclass

import numpy as np

from dryward import air
from dryward.building import AirSpace, Assembly
from dryward.checks import Floats, Ints, Numeric, OutOfRange, of_kind, subject, within
from dryward.language import called, message
from dryward.physics import moving_air
from dryward.physics.airleak import Leak
from dryward.physics.hourly import air_paths, grid, surfaces, tables
from dryward.physics.hourly import layout as n
from dryward.physics.hourly.layout import Cells, Constants, Curves, Faces, Paths
from dryward.physics.ventspace import VentSpace
from dryward.units import HOUR, KELVIN, STEFAN_BOLTZMANN, WATER_DENSITY
from dryward.weather import Air, HourlyWeather
from dryward.weather.indoor import Room

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
    """All that the march takes of one run, but its state: see `layout`."""

    assembly: Assembly
    grid: grid.Grid
    forcing: Floats
    constants: Constants
    cells: Cells
    faces: Faces
    curves: Curves
    paths: Paths


def as_weather(weather: HourlyWeather | Air, hours: int) -> HourlyWeather:
    """Weather, or one air as constant weather of so many hours."""
    if isinstance(weather, Air):
        _one("The weather", weather)
        return HourlyWeather.constant(weather, hours=hours)
    return of_kind("The weather", weather, HourlyWeather, "hourly weather or one air")


def ready(
    assembly: Assembly,
    weather: HourlyWeather,
    indoor: Room,
    *,
    step: float = HOUR,
    vent: VentSpace | Numeric | None = None,
    leak: Leak | air_paths.AirFlow | None = None,
    surface: surfaces.Surface | None = None,
    refine: int = 1,
) -> Case:
    """A case ready for the march, of what `hourly.simulate` is given."""
    of_kind("The assembly", assembly, Assembly, "an assembly")
    if surface is not None:
        of_kind("The surface", surface, surfaces.Surface, "a Surface")
    cut = grid.cells(assembly, refine)
    forcing = _weather(assembly, weather, indoor, surface)
    cells, table, vented = _materials(assembly, cut)
    faces, membranes = _faces(cut, cells.material, table)
    vent_flow, forcing[:, n.WIND] = air_paths.vent_air(vent, weather, assembly)
    leaking = air_paths.leak_air(leak, weather, forcing[:, n.T_IN])
    way = air_paths.path(assembly, cut, leaking)
    forcing[:, n.SEEP], forcing[:, n.STRAIGHT] = leaking.seeping, leaking.straight
    joints = leaking.long_share is not None
    if joints and not way.runs.size:  # nothing on its way to seep through
        forcing[:, n.STRAIGHT] += forcing[:, n.SEEP]
        forcing[:, n.SEEP] = 0.0
    vent_cell = vented[0] if vented else 0
    return Case(
        assembly,
        cut,
        forcing,
        _constants(assembly, weather, step, surface, vented[1] if vented else None),
        cells,
        faces._replace(air=way.face),
        Curves(table, tables.saturation(), membranes, vent_flow),
        Paths(vent_cell, way.runs, joints),
    )


def _one(words: str, state: Air) -> None:
    if np.ndim(state.temperature) or np.ndim(state.relative_humidity):
        raise OutOfRange(message("physics.one-air", what=subject(words)))


def _weather(assembly: Assembly, weather: HourlyWeather, indoor: Room, surface: surfaces.Surface | None) -> Floats:
    """The hourly series that drive the march, but for the air that moves."""
    forcing = np.zeros((weather.hours, n.COLUMNS))
    forcing[:, n.T_IN], forcing[:, n.P_IN] = _room(indoor, weather)
    forcing[:, n.T_OUT], forcing[:, n.P_OUT] = weather.temperature, weather.vapor_pressure
    forcing[:, n.FILM] = surfaces.film(weather, assembly.exterior_film, surface)
    if surface is not None:
        sun = surfaces.irradiance(weather, assembly.slope, surface.azimuth, surface.ground_reflectance)
        forcing[:, n.SUN] = surface.absorptance * sun
        forcing[:, n.SKY] = surface.emittance * surfaces.longwave(weather, assembly.slope)
    return forcing


def _room(indoor: Room, weather: HourlyWeather) -> tuple[Numeric, Numeric]:
    if isinstance(indoor, Air):
        _one("The room", indoor)
        return indoor.temperature, indoor.vapor_pressure
    if not hasattr(indoor, "at"):
        raise OutOfRange(message("physics.no-room", given=repr(str(indoor)[:40])))
    return indoor.at(weather)


def _constants(
    assembly: Assembly, weather: HourlyWeather, step: float, surface: surfaces.Surface | None, vented: AirSpace | None
) -> Constants:
    """The plain numbers of a case; `vented`: the vent space, where there is one."""
    return Constants(
        step=within("Step", step, 0.0, HOUR, "s", above=True),
        shortest=SHORTEST,
        tolerance=TOLERANCE,
        emittance=surface.emittance if surface else 0.0,
        r_in=max(assembly.interior_film, surfaces.NO_FILM),
        z_in=max(1.0 / assembly.interior_vapor_film, tables.LEAST),
        z_out=max(1.0 / assembly.exterior_vapor_film, tables.LEAST),
        air_vapor=air.MASS_RATIO / air.standard_pressure(weather.altitude),
        latent=EVAPORATION,
        c_water=WATER_HEAT,
        c_vapor=VAPOR_HEAT,
        c_air=moving_air.AIR_SPECIFIC_HEAT,
        suction=WATER_DENSITY * air.VAPOR_GAS_CONSTANT,
        stefan=STEFAN_BOLTZMANN,
        zero_c=KELVIN,
        coldest=tables.COLD,
        per_kelvin=1.0 / tables.FINE,
        per_humidity=float(tables.STEPS),
        free=tables.FREE,
        face_keeps=FACE_KEEPS,
        vent_film=2.0 / max(vented.thermal_resistance, 1e-6) if vented else 0.0,
        vent_vapor=2.0 / _vent_vapor(vented) if vented else 0.0,
        warmer_first=float(air_paths.WARMER[0]),
        warmer_step=float(air_paths.WARMER[1] - air_paths.WARMER[0]),
    )


def _materials(assembly: Assembly, cut: grid.Grid) -> tuple[Cells, Floats, tuple[int, AirSpace] | None]:
    """Cells, the tables of their materials, and the vent space with its cell where there is one.

    There is one table for each different substance and, for air, each width.
    """
    count = cut.width.size
    place_of: dict[object, int] = {}
    rows: list[Floats] = []
    material, heat, width = np.zeros(count + 2, np.int64), np.zeros(count + 2), np.zeros(count + 2)
    width[1:-1] = cut.width
    vented = None
    for cell, place in enumerate(cut.layer, start=1):
        substance = assembly.layers[place].substance if place >= 0 else AirSpace(0.0)
        key = (substance, width[cell]) if isinstance(substance, AirSpace) else substance
        if key not in place_of:
            place_of[key] = len(rows)
            if isinstance(substance, AirSpace):
                rows.append(tables.of_air(substance, width[cell], _vent_vapor(substance)))
            else:
                rows.append(tables.of(substance))
        material[cell] = place_of[key]
        heat[cell] = tables.capacity(substance)
        if isinstance(substance, AirSpace) and substance.vented:
            if vented:
                raise OutOfRange(message("physics.two-vent-spaces", name=called(assembly.name)))
            vented = cell, substance
    table = np.ascontiguousarray(np.stack(rows))
    bound, full, rise = (np.zeros(count + 2) for _ in range(3))
    bound[1:-1] = np.array([tables.bound(each) for each in table])[material[1:-1]]
    full[1:-1], rise[1:-1] = table[material[1:-1], -1, 0], table[material[1:-1], -2, 1]
    return Cells(material, width, heat, bound, full, rise, _beside(assembly, cut)), table, vented


def _beside(assembly: Assembly, cut: grid.Grid) -> Ints:
    """For each cell the one behind the face that it lies at: 0 for none, -1 where it lies at no face."""
    count = cut.width.size
    beside = np.full(count + 2, -1, np.int64)
    substance = [assembly.layers[place].substance if place >= 0 else None for place in cut.layer]
    # A layer drawn in pieces is one: no face lies between them.
    faces = [
        i in (0, count) or bool(cut.membranes[i]) or substance[i - 1] is None or substance[i - 1] != substance[i]
        for i in range(count + 1)
    ]
    for cell in range(1, count + 1):
        inner, outer = faces[cell - 1], faces[cell]
        if inner and outer:  # a layer of one cell: its faces are its own
            beside[cell] = 0
        elif inner or outer:
            face, other = (cell - 1, cell - 1) if inner else (cell, cell + 1)
            touches = 1 <= other <= count and not cut.membranes[face]
            single = touches and faces[other - 1] and faces[other]
            beside[cell] = other if touches and not single else 0
    return beside


def _vent_vapor(space: AirSpace) -> float:
    """Vapor resistance of one film of a vent space [m2 s Pa/kg]."""
    if np.isinf(space.vapor_permeance):
        return tables.film_vapor(space.thermal_resistance)
    return max(1.0 / space.vapor_permeance, tables.LEAST)


def _faces(cut: grid.Grid, material: Ints, table: Floats) -> tuple[Faces, Floats]:
    """What stands at every face between cells, membranes and whether liquid water passes; and the membranes' curves."""
    count = cut.width.size
    faces = Faces(
        r=np.zeros(count + 1),
        z=np.zeros(count + 1),
        liquid=np.full(count + 1, n.NO_LIQUID, np.int64),
        membrane=np.full(count + 1, -1, np.int64),
        z_before=np.zeros(count + 1),
        z_behind=np.zeros(count + 1),
        air=np.full(count + 1, n.NO_AIR, np.int64),
    )
    curves: list[Floats] = []
    wicks = table[:, -1, 6] > 0.0
    for face, membranes in enumerate(cut.membranes):
        curve = None
        for each in membranes:
            sensitive, inside, outside = grid.parts(each)
            if sensitive is None:
                faces.z[face] += inside
                (faces.z_behind if curve is not None else faces.z_before)[face] += inside
            else:
                faces.z_before[face] += inside
                faces.z_behind[face] += outside
                curve = sensitive
        if curve is not None:
            faces.membrane[face] = len(curves)
            curves.append(tables.membrane(curve))
        elif not membranes and 0 < face < count:
            a, b = material[face], material[face + 1]
            if wicks[a] and wicks[b]:
                faces.liquid[face] = n.ONE_MATERIAL if a == b else n.CONTACT
    return faces, np.ascontiguousarray(np.stack(curves) if curves else np.zeros((1, 2, 2)))
