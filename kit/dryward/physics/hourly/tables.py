"""Property tables: every curve of a material over its moisture potential.

One row holds ten numbers, a value and its rise for each of: water content,
thermal resistivity, vapor resistivity, liquid conductivity K, and the integral
of K / u, by which liquid flows in one material.  The rows stand
at equal steps of relative humidity, so a look-up is one multiplication; the
row after the last is saturation, where only the free water grows.
"""

from functools import cache, lru_cache

import numpy as np

from dryward import air
from dryward.building import AirSpace, Material, VariableMembrane
from dryward.checks import Floats
from dryward.physics.moving_air import AIR_SPECIFIC_HEAT
from dryward.units import KELVIN

#: Steps of relative humidity from 0 to 1.
STEPS = 2000
#: Water [kg/m3] by which free water grows as the potential goes from 1 to 2.
FREE = 1000.0
#: Vapor that the pores of a material without sorption hold, by RH [kg/m3]: saturated air at 20 degC.
PORE_VAPOR = 0.0173
#: A vapor resistance no lower than this [m2 s Pa/kg], a two-hundredth of a millimeter of air.
LEAST = 1.0e4
#: The tightest material [m s Pa/kg].
TIGHTEST = 1e24
#: Range and step of the saturation table [degC].
COLD, HOT, FINE = -95.0, 150.0, 0.02
#: Air in a closed space: density x specific heat [J/(m3 K)].
AIR_CAPACITY = 1.2 * AIR_SPECIFIC_HEAT

RH = np.linspace(0.0, 1.0, STEPS + 1)


@cache
def saturation() -> Floats:
    """Saturation pressure by straight pieces: value, slope, start of the piece (rows, 3).

    The piece length of 0.02 K keeps the straight line within 3e-7 of the
    curve of `air.saturation_vapor_pressure`.
    """
    t = np.linspace(COLD, HOT, round((HOT - COLD) / FINE) + 1)
    p = air.saturation_vapor_pressure(t)
    slope = np.diff(p) / np.diff(t)
    return np.ascontiguousarray(np.column_stack([p[:-1], slope, t[:-1]]))


def _rows(water: Floats, resistivity: Floats, vapor: Floats, liquid: Floats) -> Floats:
    rows = np.zeros((STEPS + 1, 10))
    middle = 0.5 * (liquid[1:] + liquid[:-1]) / (0.5 * (RH[1:] + RH[:-1]))
    drawn = np.concatenate([[0.0], np.cumsum(middle / STEPS)])
    for place, values in enumerate((water, resistivity, vapor, liquid, drawn)):
        rows[:, 2 * place] = values
        rows[:-1, 2 * place + 1] = np.diff(values) * STEPS
    rows[-1, 1] = FREE
    return rows


def water(material: Material) -> Floats:
    """Water content at each step of relative humidity, rising throughout [kg/m3] (steps + 1)."""
    if not material.sorption:
        return PORE_VAPOR * RH
    held = material.water_content(RH)
    # A curve that has no points up to 1 stays level there; pore vapor keeps it rising.
    rise = np.maximum(np.diff(held), PORE_VAPOR / STEPS)
    return held[0] + np.concatenate([[0.0], np.cumsum(rise)])


def bound(table: Floats) -> float:
    """Water that a material binds, from its table: what it holds beyond is free [kg/m3].

    One that soaks up liquid binds all up to its free saturation, another all
    but what hangs between its fibers at the last step of humidity.
    """
    soaks_up = table[-1, 6] > 0.0
    return float(table[-1 if soaks_up else -2, 0])


def _liquid(held: Floats, curve: tuple[tuple[float, float], ...]) -> Floats:
    """Liquid conductivity: straight on a log scale between points, straight from a point of none."""
    points, values = (np.array(each) for each in zip(*curve, strict=True))
    found = np.interp(held, points, values)
    between = np.clip(np.searchsorted(points, held, side="right") - 1, 0, points.size - 2)
    both = (values[between] > 0.0) & (values[between + 1] > 0.0)
    logs = np.log(np.where(values > 0.0, values, 1.0))
    found[both] = np.exp(np.interp(held, points, logs))[both]
    return found


@lru_cache(maxsize=16)  # a roof's own, run after run: a short run took most of its time to make them anew
def of(material: Material) -> Floats:
    """The table of a material (steps + 1, 10); read only."""
    held = water(material)
    liquid = np.zeros_like(RH)
    if material.liquid_conductivity is not None:
        liquid = _liquid(held, material.liquid_conductivity)
    permeability = np.maximum(material.permeability_at(RH), 1.0 / TIGHTEST)
    rows = _rows(held, 1.0 / material.conductivity_at(held), 1.0 / permeability, liquid)
    rows.flags.writeable = False
    return rows


def of_air(space: AirSpace, width: float, film: float) -> Floats:
    """The table of an air space: its resistances spread over the width of its cell.

    `film`: vapor resistance of one film, where the space is vented.
    """
    if space.vented:  # a film on each side of the moving air
        r = 2.0 * space.thermal_resistance
        z = 2.0 * film
    else:
        r = space.thermal_resistance
        z = 1.0 / space.vapor_permeance
    full = np.ones_like(RH)
    return _rows(PORE_VAPOR * RH, full * max(r, 1e-9) / width, full * max(z, LEAST) / width, 0.0 * full)


def membrane(curve: VariableMembrane) -> Floats:
    """Points of a variable membrane at equal steps ALONG its curve: mean RH, resistance (steps + 1, 2).

    Length along the curve counts humidity and the logarithm of resistance
    both, so that a cliff has as many points as it is high.  Before the first
    and behind the last point of the curve the resistance stays.
    """
    humidity, levels = np.array(curve.points).T
    humidity = np.concatenate([[min(-0.2, humidity[0] - 0.1)], humidity, [max(1.2, humidity[-1] + 0.1)]])
    log = -np.log(np.concatenate([[levels[0]], levels, [levels[-1]]]))
    length = np.concatenate([[0.0], np.cumsum(4.0 * np.diff(humidity) + np.abs(np.diff(log)))])
    even = np.linspace(0.0, length[-1], STEPS + 1)
    return np.column_stack([np.interp(even, length, humidity), np.exp(np.interp(even, length, log))])


def along_membrane(points: Floats, mean: float) -> float:
    """Place along the points of a membrane at a mean relative humidity [-]."""
    return float(np.interp(mean, points[:, 0], np.arange(len(points))))


def capacity(substance: Material | AirSpace) -> float:
    """Heat storage of the dry layer [J/(m3 K)]."""
    return substance.density * substance.specific_heat if isinstance(substance, Material) else AIR_CAPACITY


def film_vapor(thermal_resistance: float) -> float:
    """Vapor resistance of an air film from its thermal one, by the Lewis relation [m2 s Pa/kg].

    Permeance = h / (density c R_v T), at 10 degC about 7e-9 h.  The film's
    radiant share is taken as convective too, which makes it a little too open;
    the film is small beside any board.
    """
    per_h = 1.0 / (AIR_CAPACITY * air.VAPOR_GAS_CONSTANT * (KELVIN + 10.0))
    return max(thermal_resistance / per_h, LEAST)


def potential(rows: Floats, held: float) -> float:
    """Moisture potential at a water content [kg/m3], by a material's table."""
    k = int(np.clip(np.searchsorted(rows[:, 0], held, side="right") - 1, 0, STEPS))
    return k / STEPS + (held - rows[k, 0]) / rows[k, 1]
