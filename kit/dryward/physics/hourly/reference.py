"""The same equations by other hands: method of lines and SciPy's stiff integrator.

For tests and for the bench only; it needs minutes for what the march does in
a tenth of a second.  Nothing of the march is used: its own even grid, its
own look-up of the property curves, unknowns T and w instead of T and the
moisture potential, error-controlled steps of varying order instead of
implicit Euler.  What it knows is one roof with everything in it: a
humidity-variable membrane, sorption, a vented gap, sky and wind, and a leak
that seeps through the wool and goes straight into the gap, out or in.
"""

import numpy as np

from dryward import air
from dryward.building import AirSpace, Assembly, Layer, Material, VariableMembrane
from dryward.checks import Floats, NotConverged
from dryward.language import message
from dryward.physics.hourly import surfaces
from dryward.physics.hourly.air_paths import AirFlow
from dryward.physics.hourly.case import EVAPORATION, VAPOR_HEAT, WATER_HEAT
from dryward.physics.hourly.result import Hours
from dryward.physics.hourly.simulate import simulate
from dryward.physics.hourly.tables import AIR_CAPACITY, PORE_VAPOR
from dryward.physics.moving_air import AIR_SPECIFIC_HEAT, density
from dryward.units import HOUR, KELVIN, STEFAN_BOLTZMANN
from dryward.weather import Air, HourlyWeather

_GYPSUM = Material(
    "gypsum", "gypsum", 800.0, 1090.0, 0.16, 3e-11, sorption=((0.5, 3.0), (0.8, 6.0), (0.95, 12.0), (1.0, 70.0))
)  # fmt: skip
_WOOL = Material("wool", "wool", 30.0, 840.0, ((0.0, 0.036), (100.0, 0.08)), 1.6e-10)
_WOOD = Material(
    "wood", "wood", 500.0, 1600.0, ((0.0, 0.11), (150.0, 0.17)), ((0.2, 1e-12), (0.6, 3e-12), (0.95, 2e-11)),
    sorption=((0.1, 13.0), (0.3, 30.0), (0.5, 46.0), (0.7, 65.0), (0.9, 103.0), (0.99, 140.0), (1.0, 300.0)),
)  # fmt: skip
_MEMBRANE = VariableMembrane((0.3, 0.5, 0.8), (2e-11, 1e-10, 8e-10))
_GAP = AirSpace(0.1, 4e-8, vented=True)
_OUTER_VAPOR_FILM, _VENT, _EMITTANCE, _SLOPE = 2e-10, 0.004, 0.9, 35.0
#: The leak, air out of the room [kg/(s m2)], and the part of it that seeps [-].
LEAK, _LONG = 2e-4, 0.3
_ROOM, _START = Air(21.0, 0.45), Air(15.0, 0.7)
#: Layers from the room, and the cells SciPy gets for each; the membrane lies inside the wool.
LAYERS = {"gypsum": 10, "wool": 60, "panel": 30, "gap": 1, "deck": 40}


def roof() -> Assembly:
    """The roof of the comparison."""
    layers = (
        Layer(_GYPSUM, 0.0127, "gypsum"), Layer(_MEMBRANE, name="membrane"), Layer(_WOOL, 0.15, "wool"),
        Layer(_WOOD, 0.012, "panel"), Layer(_GAP, 0.04, "gap"), Layer(_WOOD, 0.018, "deck"),
    )  # fmt: skip
    return Assembly("roof", layers, slope=_SLOPE, exterior_vapor_film=_OUTER_VAPOR_FILM)


def part(weather: HourlyWeather, first: int, hours: int) -> HourlyWeather:
    """Some hours of a year, without its sun."""
    names = ("temperature", "vapor_pressure", "wind_speed", "sky_longwave")
    return HourlyWeather(**{name: getattr(weather, name)[first : first + hours] for name in names})


def by_march(weather: HourlyWeather, step: float = HOUR, refine: int = 1, leak: float = LEAK) -> Hours:
    """The comparison by the march."""
    return simulate(
        roof(), weather, _ROOM, initial=_START, step=step, refine=refine, vent=_VENT,
        leak=AirFlow(leak, _LONG), surface=surfaces.Surface(absorptance=0.0, emittance=_EMITTANCE),
    )  # fmt: skip


def by_scipy(
    weather: HourlyWeather, cells: dict | None = None, rtol: float = 1e-06, atol: float = 1e-07, leak: float = LEAK
) -> dict:
    """The comparison by SciPy's LSODA, begun anew in every hour because the weather jumps there."""
    cells = cells or LAYERS
    solids = [layer for layer in roof().layers if not layer.is_membrane]
    lines = _Lines(
        [
            (each.air_space if each.name == "gap" else each.material, each.drawn_thickness, cells[each.name])
            for each in solids
        ],
        leak,
    )
    held = [each.material.water_content(0.7) if each.name != "gap" and each.material.sorption else 0.7 * PORE_VAPOR
            for each in solids]  # fmt: skip
    state = np.empty(2 * lines.n)
    state[::2], state[1::2] = _START.temperature, np.array(held)[lines.kind]
    film = surfaces.film(weather, 0.03, surfaces.Surface())
    sky = _EMITTANCE * surfaces.longwave(weather, _SLOPE)
    stream = _VENT * density(weather.temperature + KELVIN)
    found = []
    for k in range(weather.hours):
        airs = weather.temperature[k], weather.vapor_pressure[k], film[k], sky[k], stream[k]
        state = lines.hour(state, airs, rtol, atol)
        found.append((state[::2], lines.humidity(state[1::2]), state[1::2]))
    series = np.array(found)
    return {
        each.name: tuple(series[:, which, lines.kind == place] for which in range(3))
        for place, each in enumerate(solids)
    }


class _Lines:
    """Rates of change of temperature and water content in each cell of the roof."""

    def __init__(self, parts: list[tuple[Material | AirSpace, float, int]], leak: float) -> None:
        self.parts = parts
        self.seep, self.straight = _LONG * leak, (1.0 - _LONG) * leak
        self.kind = np.repeat(np.arange(len(parts)), [count for _, _, count in parts])
        self.width = np.concatenate([np.full(count, thickness / count) for _, thickness, count in parts])
        self.n = self.width.size
        self.cells = [np.flatnonzero(self.kind == place) for place in range(len(parts))]
        solid = [isinstance(material, Material) for material, _, _ in parts]
        self.gap = self.cells[solid.index(False)][0]
        self.membrane = self.cells[1][0]  # the face before the wool
        self.wool = self.cells[1]
        capacity = [m.density * m.specific_heat if isinstance(m, Material) else AIR_CAPACITY for m, _, _ in parts]
        self.capacity = np.array(capacity)[self.kind]

    def humidity(self, w: Floats) -> Floats:
        found = np.empty(self.n)
        for (material, _, _), cells in zip(self.parts, self.cells, strict=True):
            sorption = getattr(material, "sorption", ())
            if sorption:
                rh, held = np.array(((0.0, 0.0), *sorption)).T
                found[cells] = np.interp(w[cells], held, rh)
            else:
                found[cells] = np.minimum(w[cells] / PORE_VAPOR, 1.0)
        return np.maximum(found, 1e-9)

    def halves(self, phi: Floats, w: Floats) -> tuple[Floats, Floats]:
        """Thermal and vapor resistance of half of each cell."""
        r, z = np.empty(self.n), np.empty(self.n)
        for (material, _, _), cells in zip(self.parts, self.cells, strict=True):
            if isinstance(material, Material):
                r[cells] = 0.5 * self.width[cells] / material.conductivity_at(w[cells])
                z[cells] = 0.5 * self.width[cells] / material.permeability_at(phi[cells])
            else:  # moving air: a film on each side
                r[cells], z[cells] = material.thermal_resistance, 1.0 / material.vapor_permeance
        return r, z

    def hour(self, state: Floats, airs: tuple[float, ...], rtol: float, atol: float) -> Floats:
        """The state an hour later."""
        from scipy.integrate import solve_ivp

        found = solve_ivp(
            lambda _, now: self.rates(now, airs), (0.0, HOUR), state, "LSODA", lband=3, uband=3, rtol=rtol, atol=atol,
            t_eval=[HOUR],
        )  # fmt: skip
        if not found.success:
            raise NotConverged(message("physics.comparison-failed", said=str(found.message)))
        return found.y[:, -1]

    def rates(self, state: Floats, airs: tuple[float, ...]) -> Floats:
        t_out, p_out, film, sky, stream = airs
        t, w = state[::2], state[1::2]
        phi = self.humidity(w)
        p = phi * air.saturation_vapor_pressure(t)
        r, z = self.halves(phi, w)
        surface = _surface(t[-1], r[-1], t_out, film, sky)
        ta, tb = np.concatenate([[_ROOM.temperature], t]), np.concatenate([t, [surface]])
        q = (ta - tb) / (np.concatenate([[0.11], r]) + np.concatenate([r, [0.0]]))
        pa, pb = np.concatenate([[_ROOM.vapor_pressure], p]), np.concatenate([p, [p_out]])
        za, zb = np.concatenate([[1e4], z]), np.concatenate([z, [1.0 / _OUTER_VAPOR_FILM]])
        g = (pa - pb) / (za + zb)
        at = self.membrane
        middle = (t[at - 1] * r[at] + t[at] * r[at - 1]) / (r[at - 1] + r[at])
        g[at] = _through_membrane(pa[at], pb[at], za[at], zb[at], air.saturation_vapor_pressure(middle))
        e = q + (EVAPORATION + VAPOR_HEAT * 0.5 * (ta + tb)) * g
        water, heat = g[:-1] - g[1:], e[:-1] - e[1:]
        gap = self.gap
        per_pascal = air.MASS_RATIO / air.STANDARD_PRESSURE
        heat[gap] += _exchange(2.0 / _GAP.thermal_resistance, stream * AIR_SPECIFIC_HEAT) * (t_out - t[gap])
        moved = _exchange(2.0 * _GAP.vapor_permeance, stream * per_pascal) * (p_out - p[gap])
        water[gap] += moved
        heat[gap] += (EVAPORATION + VAPOR_HEAT * t[gap]) * moved
        self.leaking(water, heat, t, p, r, z, t_out, p_out)
        out = np.empty(2 * self.n)
        out[1::2] = water / self.width
        out[::2] = (heat / self.width - WATER_HEAT * t * out[1::2]) / (self.capacity + WATER_HEAT * w)
        return out

    def leaking(
        self, water: Floats, heat: Floats, t: Floats, p: Floats, r: Floats, z: Floats, t_out: float, p_out: float
    ) -> None:
        """What the leak adds to each cell, by the state of its air at every face it crosses."""
        per_pascal = air.MASS_RATIO / air.STANDARD_PRESSURE
        wool, gap, seep, straight = self.wool, self.gap, self.seep, self.straight

        def cross(rate: float, warmth: float, pressure: float, source: int | None, into: int | None) -> None:
            """Air of a state from one cell into another; None is beyond the roof."""
            carried = rate * per_pascal * pressure
            brought = rate * AIR_SPECIFIC_HEAT * warmth + EVAPORATION * carried
            for cell, sign in ((source, -1.0), (into, 1.0)):
                if cell is not None:
                    water[cell] += sign * carried
                    heat[cell] += sign * brought

        if seep > 0.0:
            cross(seep, _ROOM.temperature, _ROOM.vapor_pressure, None, wool[0])
            cross(seep, t[wool[-1]], p[wool[-1]], wool[-1], gap)
            cross(straight, _ROOM.temperature, _ROOM.vapor_pressure, None, gap)
            cross(seep + straight, t[gap], p[gap], gap, None)
        else:
            cross(-seep - straight, t_out, p_out, None, gap)
            cross(-straight, t[gap], p[gap], gap, None)
            cross(-seep, t[gap], p[gap], gap, wool[-1])
            cross(-seep, t[wool[0]], p[wool[0]], wool[0], None)
        # Inside the wool: the solution of steady conduction and flow between two planes, taken at the first.
        a, b = wool[:-1], wool[1:]
        carried = _at_face(seep * per_pascal * (z[a] + z[b]), p[a], p[b]) * seep * per_pascal
        brought = _at_face(seep * AIR_SPECIFIC_HEAT * (r[a] + r[b]), t[a], t[b]) * seep * AIR_SPECIFIC_HEAT
        brought = brought + EVAPORATION * carried
        for cells, sign in ((a, -1.0), (b, 1.0)):
            water[cells] += sign * carried
            heat[cells] += sign * brought


def _at_face(ratio: Floats, before: Floats, behind: Floats) -> Floats:
    """What the air has at a face, so that with plain conduction the whole is that of exp(ratio x)."""
    return before + (before - behind) * (1.0 / np.expm1(ratio) - 1.0 / ratio)


def _surface(inner: float, resistance: float, t_out: float, film: float, sky: float) -> float:
    """Temperature of the outer surface by its own balance."""
    from scipy.optimize import brentq

    def gain(s: float) -> float:
        return (inner - s) / resistance + film * (t_out - s) + sky - _EMITTANCE * STEFAN_BOLTZMANN * (s + KELVIN) ** 4

    return brentq(gain, -80.0, 150.0, xtol=1e-9)


def _through_membrane(pa: float, pb: float, za: float, zb: float, ps: float) -> float:
    """Vapor flux through the variable membrane and the half cells beside it."""
    from scipy.optimize import brentq

    def miss(flux: float) -> float:
        inner, outer = np.clip([(pa - flux * za) / ps, (pb + flux * zb) / ps], 0.0, 1.0)
        return flux * (za + zb + 1.0 / _MEMBRANE.permeance(float(inner), float(outer))) - (pa - pb)

    most = abs(pa - pb) / (za + zb) + 1e-15
    return brentq(miss, -most, most, xtol=1e-22, rtol=1e-10)


def _exchange(surfaces_: float, stream: float) -> float:
    """Conductance from the mean air of a channel to outdoor air."""
    left = -np.expm1(-surfaces_ / stream) * stream / surfaces_
    return surfaces_ * left / (1.0 - left)
