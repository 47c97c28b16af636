"""Finer cells and shorter steps come nearer to the exact answer, at the order the method has.

Cells: second order.  Steps: first order (implicit Euler).  Air flow is
taken upwind: first order in the cells.
"""

import numpy as np
import pytest

from dryward import air
from dryward.building import Assembly, Layer, Material
from dryward.physics import hourly
from dryward.weather import Air

BLOCK = Material("block", "block", 14400.0, 1000.0, 0.01, 0.0)  # Fourier number 0.001 an hour for 50 mm
ROOTS = (np.arange(400) + 0.5) * np.pi


def exact_mean(fourier):
    return float(np.sum(2 / ROOTS**2 * np.exp(-(ROOTS**2) * fourier)))


def slab(refine, step, hours=100):
    """Mean of a cooling slab at Fourier number hours / 1000."""
    body = Assembly("slab", [Layer(BLOCK, 0.1)], interior_film=0.0, exterior_film=0.0)
    run = hourly.simulate(
        body, Air(0.0, 0.5), Air(0.0, 0.5), hours=hours, initial=Air(20.0, 0.5), step=step, refine=refine
    )
    return run.temperature[-1] @ run.width / 0.1 / 20.0


def order(errors):
    return np.log2(np.abs(errors[:-1]) / np.abs(errors[1:]))


def test_heat_in_cells():
    errors = np.array([slab(refine, 60.0) - exact_mean(0.1) for refine in (1, 2, 4)])
    finest = slab(16, 60.0) - exact_mean(0.1)  # what the step leaves
    assert order(errors - finest) == pytest.approx([2.0, 2.0], abs=0.35)
    assert abs(finest) < 1e-4


def test_heat_in_steps():
    reference = slab(2, 22.5)
    errors = np.array([slab(2, step) - reference for step in (3600.0, 1800.0, 900.0)])
    assert order(errors) == pytest.approx([1.0, 1.0], abs=0.15)


def drying(refine, step, hours=200):
    """Mean water of a layer of constant diffusivity, 1e-9 m2/s, drying from 80 % to 40 %."""
    even = Material(
        "even", "even", 20000.0, 10000.0, 500.0, 1e-9 * 100 / air.saturation_vapor_pressure(20.0),
        sorption=((0.0, 0.0), (1.0, 100.0)),
    )  # fmt: skip
    body = Assembly("layer", [Layer(even, 0.1)], interior_film=0.0, exterior_film=0.0)
    run = hourly.simulate(
        body, Air(20.0, 0.4), Air(20.0, 0.4), hours=hours, initial=Air(20.0, 0.8), step=step, refine=refine
    )
    return (run.water[-1] / 0.1 - 40.0) / 40.0


EXACT_DRYING = exact_mean(1e-9 * 200 * 3600 / 0.05**2)


def test_moisture_in_cells():
    errors = np.array([drying(refine, 120.0) - EXACT_DRYING for refine in (1, 2, 4)])
    finest = drying(16, 120.0) - EXACT_DRYING
    assert order(errors - finest) == pytest.approx([2.0, 2.0], abs=0.35)
    assert abs(finest) < 2e-4


def test_moisture_in_steps():
    reference = drying(2, 22.5)
    errors = np.array([drying(2, step) - reference for step in (3600.0, 1800.0, 900.0)])
    assert order(errors) == pytest.approx([1.0, 1.0], abs=0.15)


def test_air_flow_in_cells():
    """Vapor flux with an air flow, against the closed form."""
    wool = Material("wool", "wool", 30.0, 840.0, 0.035, 2e-10)
    wall = Assembly("wall", [Layer(wool, 0.2)], interior_film=0.0, exterior_film=0.0)
    indoor, outdoor, rate = Air(20.0, 0.5), Air(-5.0, 0.8), 1e-4
    carried = rate * air.MASS_RATIO / air.STANDARD_PRESSURE
    p1, p2 = indoor.vapor_pressure, outdoor.vapor_pressure
    exact = carried * (p1 + (p1 - p2) / np.expm1(carried * 0.2 / 2e-10))
    errors = []
    for refine in (1, 2, 4, 8):
        run = hourly.simulate(wall, outdoor, indoor, hours=400, leak=hourly.AirFlow(rate), refine=refine)
        errors.append(run.vapor_flux_in[-1] / exact - 1)
    assert order(np.array(errors))[1:] == pytest.approx([1.0, 1.0], abs=0.3)
    assert abs(errors[-1]) < 5e-3


def test_the_whole_year_of_a_roof():
    """A preset in demo weather: halving cells and steps moves its yearly answers little."""
    from dryward import building, weather

    vault, year = building.preset("vented-vault-osb"), weather.demo("cold")
    coarse, fine = (
        hourly.simulate(vault, year, Air(21.0, 0.4), surface=hourly.Surface(), vent=0.003, refine=refine, step=step)
        for refine, step in ((1, 3600.0), (3, 600.0))
    )
    for name in ("outer layer", "deck"):
        one, two = coarse.layer(name), fine.layer(name)
        assert one.moisture_content == pytest.approx(
            two.moisture_content, abs=0.4
        )  # mass %: the front that wets the board
        assert np.sqrt(np.mean((one.relative_humidity - two.relative_humidity) ** 2)) < 0.005
    assert coarse.water == pytest.approx(fine.water, rel=0.01)


def test_work_does_not_grow_faster_than_cells_and_hours():
    """Passes of the solver for each hour: the same with four times the cells, and with three times the years."""
    from dryward import building, weather

    wall, year = building.preset("wood-frame-wall"), weather.demo("cold")
    one, fine, long = (
        hourly.simulate(wall, year, Air(21.0, 0.4), surface=hourly.Surface(), refine=refine, years=years)
        for refine, years in ((1, 1), (4, 1), (1, 3))
    )
    assert fine.iterations < 1.1 * one.iterations
    assert long.iterations < 3.1 * one.iterations
