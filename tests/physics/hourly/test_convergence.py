"""Finer cells and shorter steps come nearer to the exact answer, at the order the method has.

Cells: second order.  Steps: first order (implicit Euler).  Air that passes
cells is, between two of them, as the exact solution has it.  The usual cells
are held to 5 % of the swing of the year in twelve cases.
"""

import dataclasses

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


def test_air_flow_needs_no_thin_cells():
    """Vapor flux with an air flow, against the closed form: what is left is how near the first cell is to the face."""
    wool = Material("wool", "wool", 30.0, 840.0, 0.035, 2e-10)
    wall = Assembly("wall", [Layer(wool, 0.2)], interior_film=0.0, exterior_film=0.0)
    indoor, outdoor, rate = Air(20.0, 0.5), Air(-5.0, 0.8), 1e-4
    carried = rate * air.MASS_RATIO / air.STANDARD_PRESSURE
    p1, p2 = indoor.vapor_pressure, outdoor.vapor_pressure
    exact = carried * (p1 + (p1 - p2) / np.expm1(carried * 0.2 / 2e-10))
    for refine in (1, 4):
        run = hourly.simulate(wall, outdoor, indoor, hours=400, leak=hourly.AirFlow(rate), refine=refine)
        assert run.vapor_flux_in[-1] == pytest.approx(exact, rel=1e-4)


def _arctic():
    """The very cold year, 12 K colder."""
    from dryward import weather

    year = weather.demo("very-cold")
    t = year.temperature - 12.0
    vapor = np.minimum(year.relative_humidity, 1.0) * air.saturation_vapor_pressure(t)
    sky = year.sky_longwave * ((t + 273.15) / (year.temperature + 273.15)) ** 4
    return dataclasses.replace(year, temperature=t, vapor_pressure=vapor, sky_longwave=sky)


def _laminate_and_variable():
    """A wall with a variable sheet inside its fill and a laminate outside of it."""
    from dryward import building

    wall = building.preset("wood-frame-wall")
    place = wall.index("insulation")
    layers = list(wall.layers)
    layers[place : place + 1] = [
        Layer(building.membrane("teaching-variable"), name="variable"), layers[place],
        Layer(building.membrane("teaching-laminate"), name="laminate"),
    ]  # fmt: skip
    return dataclasses.replace(wall, layers=tuple(layers))


#: Name -> roof or wall (a preset, and its inner membrane), place, room humidity, ACH50, facing.
TWELVE = {
    "OSB, arctic": (("vented-vault-osb",), "arctic", 0.4, 0, 0.0),
    "OSB, arctic, leak": (("vented-vault-osb", "teaching-variable"), "arctic", 0.4, 3, 0.0),
    "OSB, cold, leak": (("vented-vault-osb", "teaching-variable"), "cold", 0.4, 3, 0.0),
    "closed, very cold, leak": (("vented-vault-closed",), "very-cold", 0.4, 1, 0.0),
    "fiberboard, cold, leak": (("vented-vault-fiberboard",), "cold", 0.4, 5, 0.0),
    "open, very cold, humid, leak": (("vented-vault",), "very-cold", 0.55, 3, 0.0),
    "variable, hot and humid, leak": (("vented-vault-variable",), "hot-humid", 0.5, 3, 180.0),
    "wall with laminate and variable": (None, "very-cold", 0.55, 0, 0.0),
    "wall, cold, leak": (("wood-frame-wall",), "cold", 0.4, 3, 0.0),
    "foam above, very cold, leak": (("unvented-vault-foam-above-deck",), "very-cold", 0.55, 3, 0.0),
    "wall insulated outside, leak": (("wood-frame-wall-exterior-insulation",), "mixed-humid", 0.4, 3, 180.0),
    "laminate, marine, leak": (("vented-vault-osb", "teaching-laminate"), "cool-marine", 0.55, 1, 0.0),
}


def _held(run):
    """Water of all layers together, and of each that is wood or lets air through, by hours [kg/m2]."""
    found = {"all": run.water}
    for place, layer in enumerate(run.assembly.layers):
        cells = run.cell_layer == place
        if cells.any() and (getattr(layer.substance, "wood", False) or layer.lets_air_through):
            found[layer.name] = run.water_content[:, cells] @ run.width[cells] + run.free_water[:, cells].sum(axis=1)
    return found


@pytest.mark.parametrize("name", TWELVE)
def test_the_usual_cells_lose_little_of_the_swing(name):
    """Against cells of a fourth: daily means within 5 % of the year's swing, or of 20 g/m2."""
    from dryward import building, weather
    from dryward.physics import airleak, ventspace

    preset, place, humidity, ach50, azimuth = TWELVE[name]
    roof = _laminate_and_variable() if preset is None else building.preset(preset[0])
    if preset and preset[1:]:
        roof = roof.replace("inner membrane", building.membrane(preset[1]))
    gap = next((layer for layer in roof.layers if layer.vented), None)
    options = {
        "vent": ventspace.VentSpace(gap.thickness, 5.0, 35.0, 0.01, 0.01) if gap and ach50 else None,
        "leak": airleak.Leak.from_blower_door(ach50, 566.0, 0.2, area=56.0) if ach50 else None,
        "surface": hourly.Surface(azimuth=azimuth),
    }
    year = _arctic() if place == "arctic" else weather.demo(place)
    usual, fine = (_held(hourly.simulate(roof, year, Air(21.0, humidity), refine=n, **options)) for n in (1, 4))
    for layer, series in fine.items():
        days, exact = (each.reshape(-1, 24).mean(axis=1) for each in (usual[layer], series))
        assert np.abs(days - exact).max() <= 0.05 * max(np.ptp(exact), 0.02), layer


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
