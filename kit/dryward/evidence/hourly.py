"""The hourly engine against closed solutions and converged benchmarks."""

from functools import cache

import numpy as np

from dryward import air
from dryward.building import Assembly, Layer, Material
from dryward.checks import Floats
from dryward.evidence.table import Answers, Row
from dryward.physics import hourly
from dryward.physics.moving_air import AIR_SPECIFIC_HEAT
from dryward.units import DAY, HOUR
from dryward.weather import Air, HourlyWeather

#: Points of a curve of a material.
Pairs = tuple[tuple[float, float], ...]


def _pairs(at: Floats, values: Floats) -> Pairs:
    return tuple(zip(at, values, strict=True))


def block(conductivity: float = 1.0, capacity: float = 1e6, permeability: float = 0.0) -> Material:
    """A material for heat alone: conductivity [W/(m K)] and density x specific heat [J/(m3 K)]."""
    return Material("block", "block", capacity / 1000.0, 1000.0, conductivity, permeability)


def _isothermal(name: str, permeability: float | Pairs, sorption: Pairs) -> Material:
    """A material that stays at one temperature: heat passes and rests in it as in nothing real."""
    return Material(name, name, 20000.0, 10000.0, 500.0, permeability, sorption)


@cache
def benchmark_material(kelvin: float = 303.15) -> Material:
    """The material of EN 15026 annex A, its curves over suction taken at one temperature [K].

    The front of the benchmark lies where the temperature is within 0.2 K of 30 degC.
    """
    humidity = np.concatenate([[5e-4], np.linspace(0.01, 1.0, 400)])
    gas_constant = 8.314 / 0.018  # of vapor, as the standard rounds it [J/(kg K)]
    suction = -1000.0 * gas_constant * kelvin * np.log(humidity)
    held = 146.0 / (1.0 + (8e-8 * suction) ** 1.6) ** 0.375
    empty = 1.0 - held / 146.0
    permeability = 1.0 / (gas_constant * kelvin) * 26.1e-6 / 200.0 * empty / (0.503 * empty**2 + 0.497)
    wet = np.linspace(20.0, 146.0, 200)
    y = wet - 73.0
    log_k = -39.2619 + y * (0.0704 + y * (-1.7420e-4 + y * (-2.7953e-6 + y * (-1.1566e-7 + y * 2.5969e-9))))
    return Material(
        "benchmark",
        "benchmark",
        1824.0,
        1000.0,
        ((0.0, 1.5), (146.0, 1.5 + 15.8 * 0.146)),
        _pairs(humidity, permeability),
        _pairs(humidity, held),
        _pairs(wet, np.exp(log_k)),
    )


@cache
def semi_infinite(refine: int = 8, hours: int = 720) -> hourly.Hours:
    """The benchmark of EN 15026 annex A: 20 degC and 50 %, its face at 30 degC and 95 % from the start."""
    layers = tuple(Layer(benchmark_material(), each) for each in (0.1, 0.2, 0.7, 3.0, 3.0, 3.0))
    half_space = Assembly("half space", layers, interior_film=0.0, exterior_film=0.0)
    return hourly.simulate(
        half_space,
        Air(20.0, 0.5),
        Air(30.0, 0.95),
        hours=hours,
        initial={layer.name: 42.92 for layer in half_space.layers},
        refine=refine,
    )


def _benchmark(row: Row) -> float:
    run = semi_infinite()
    quantity, depth = row.text("quantity"), row.number("depth_m", 0.0)
    last = int(row.number("time")) * 24 - 1
    if quantity == "uptake":
        return run.water[last] - run.initial_water @ run.width
    series = run.water_content if quantity == "water" else run.temperature
    return np.interp(depth, run.depth, series[last])


@cache
def linear_drying(refine: int = 8, step: float = 600.0, hours: int = 1000) -> hourly.Hours:
    """A layer of 200 mm whose moisture diffusivity is the same at any water content."""
    humidity = np.linspace(0.02, 1.0, 491)

    def held(h: Floats) -> Floats:
        return 116.0 / (1.0 - np.log(h) / 0.118) ** 0.869

    slope = np.gradient(held(humidity), humidity, edge_order=2)
    permeability = 6e-10 * slope / air.saturation_vapor_pressure(20.0)
    board = _isothermal("drying", _pairs(humidity, permeability), _pairs(humidity, held(humidity)))
    layer = Assembly("layer", (Layer(board, 0.2),), interior_film=0.0, exterior_film=0.0)
    return hourly.simulate(
        layer, Air(20.0, 0.65), Air(20.0, 0.45), hours=hours, initial=Air(20.0, 0.95), step=step, refine=refine
    )


def _drying(row: Row) -> float:
    run = linear_drying()
    held = run.water_content[int(row.number("time")) - 1]
    if row.text("quantity") == "mean":
        return held @ run.width / run.width.sum()
    return np.interp(row.number("depth_m"), run.depth, held)


@cache
def slab(biot: float = np.inf, refine: int = 10, steps: int = 20) -> tuple[Floats, hourly.Hours, float, float]:
    """Half a slab of 50 mm that cools from 1 to 0, with as many steps an hour: shares by hour, and the grid.

    Returns the shares (hours, cells), the run, the Fourier number of an hour and the half thickness [m].
    """
    length, hours = 0.05, 1500 if np.isinf(biot) else 100
    conductivity, fourier = (0.01, 1e-3) if np.isinf(biot) else (0.5, 0.05)
    capacity = conductivity * HOUR / (fourier * length**2)
    film = 0.0 if np.isinf(biot) else length / (biot * conductivity)
    body = Assembly("slab", (Layer(block(conductivity, capacity), 2 * length),), interior_film=film, exterior_film=film)
    run = hourly.simulate(
        body, Air(0.0, 0.5), Air(0.0, 0.5), hours=hours, initial=Air(20.0, 0.5), step=HOUR / steps, refine=refine
    )
    return run.temperature / 20.0, run, fourier, length


def _slab(row: Row) -> float:
    biot = row.number("parameter", np.inf)
    shares, run, fourier, length = slab(biot, steps=20 if np.isinf(biot) else 360)
    left, depth, width = shares[round(row.number("time") / fourier) - 1], run.depth, run.width
    where = row.text("quantity")
    if where == "mean":
        return left @ width / width.sum()
    if where == "centre":
        # A parabola through the two cells at the axis and their neighbors.
        near = np.argsort(np.abs(depth - length))[:4]
        return np.polyfit((depth[near] - length) ** 2, left[near], 1)[1]
    # Surface: the flux out of the film over its conductance.
    return left[0] / (1.0 + biot * depth[0] / length)


@cache
def heat_step(film: float) -> hourly.Hours:
    """Softwood at 0 degC, its face warmed to 1 (20 K) through a film coefficient [W/(m2 K)]; 0 for none."""
    wood = block(0.13, 8e5)
    layers = (Layer(wood, 0.1), Layer(wood, 0.9))
    body = Assembly("wood", layers, interior_film=1.0 / film if film else 0.0, exterior_film=0.0)
    return hourly.simulate(body, Air(0.0, 0.5), Air(20.0, 0.5), hours=6, initial=Air(0.0, 0.5), step=10.0, refine=6)


def _heat_step(row: Row) -> float:
    run = heat_step(row.number("parameter"))
    share = run.temperature[int(row.number("time")) - 1] / 20.0
    depth = row.number("depth_m")
    if depth == 0.0:
        bi = row.number("parameter") * run.depth[0] / 0.13
        return (share[0] + bi) / (1.0 + bi)
    return np.interp(depth, run.depth, share)


def _moisture_step(row: Row) -> float:
    """The same for moisture at one temperature: a step of humidity, diffusivity 1e-9 m2/s."""
    run = moisture_step()
    if row.text("quantity") == "uptake":
        gained = run.water - run.initial_water @ run.width
        return gained[int(row.number("time")) - 1] / 10.0
    share = (run.relative_humidity[int(row.number("time")) - 1] - 0.4) / 0.1
    return np.interp(row.number("depth_m"), run.depth, share)


@cache
def moisture_step() -> hourly.Hours:
    """Humidity 40 % stepping to 50 % at a face; 100 kg/m3 of water for all of the humidity, straight."""
    permeability = 1e-9 * 100.0 / air.saturation_vapor_pressure(20.0)
    body = _isothermal("even", permeability, ((0.0, 0.0), (1.0, 100.0)))
    wall = Assembly("even", (Layer(body, 0.02), Layer(body, 0.98)), interior_film=0.0, exterior_film=0.0)
    return hourly.simulate(wall, Air(20.0, 0.4), Air(20.0, 0.5), hours=720, initial=Air(20.0, 0.4), step=60.0, refine=8)


@cache
def penetration(conductivity: float, capacity: float, period: float) -> float:
    """Depth at which a swing of outdoor temperature is left at 1/e [m], by projection on the swing."""
    body = block(conductivity, capacity)
    reach = np.sqrt(conductivity / capacity * period / np.pi)
    thick = min(reach, 3.0)
    layers = (Layer(body, thick),) * round(6 * reach / thick)
    hours = int(period / HOUR)
    swing = 10.0 * np.sin(2 * np.pi * (np.arange(hours) + 0.5) / hours)
    weather = HourlyWeather(swing, np.full(hours, 100.0))
    run = hourly.simulate(
        Assembly("body", layers, interior_film=1.0, exterior_film=0.0),
        weather,
        Air(0.0, 0.3),
        hours=8 * hours,
        initial=Air(0.0, 0.3),
        step=60.0 if hours < 100 else HOUR,
        refine=4 if hours < 100 else 1,
    )
    phase = np.exp(-2j * np.pi * np.arange(hours) / hours)
    size = np.abs(phase @ run.temperature[-hours:])
    below = run.width.sum() - run.depth
    use = (below > 0.3 * reach) & (below < 2.0 * reach)
    return -1.0 / np.polyfit(below[use], np.log(size[use]), 1)[0]


def _penetration(row: Row) -> float:
    return penetration(row.number("parameter"), row.number("capacity"), row.number("time") * DAY)


@cache
def air_flow(rate: float, refine: int = 8) -> hourly.Hours:
    """Diffusion and air flow together through 200 mm of mineral wool, in the end."""
    wool = Material("wool", "wool", 30.0, 840.0, 0.035, 2e-10)
    wall = Assembly("wool", (Layer(wool, 0.2),), interior_film=0.0, exterior_film=0.0)
    indoor = Air(20.0, 1168.476 / air.saturation_vapor_pressure(20.0))
    outdoor = Air(-5.0, 320.945 / air.saturation_vapor_pressure(-5.0))
    return hourly.simulate(wall, outdoor, indoor, hours=500, leak=hourly.AirFlow(rate), refine=refine)


def _air_flow(row: Row) -> float:
    """Sensible heat flux, or vapor flux, through the inner face."""
    rate = row.number("parameter")
    run = air_flow(rate)
    if row.text("quantity") == "vapor":
        return run.vapor_flux_in[-1]
    t = run.temperature[-1]
    return 0.035 * (20.0 - t[0]) / run.depth[0] + AIR_SPECIFIC_HEAT * rate * 20.0


_HOURLY: Answers = {
    "benchmark": _benchmark,
    "linear drying": _drying,
    "slab": _slab,
    "heat step": _heat_step,
    "moisture step": _moisture_step,
    "penetration": _penetration,
    "air flow": _air_flow,
}

#: How each kind of row is computed, by topic.
TOPICS = {"hourly": _HOURLY}
