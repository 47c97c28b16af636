"""A few hours through each road of the march, small enough to run without compiling.

As a script it prints the runs as JSON, for `test_uncompiled`.
"""

import json
import sys

import numpy as np

from dryward import building, weather
from dryward.building import Assembly, FixedMembrane, LaminateMembrane, Layer, Material, VariableMembrane
from dryward.physics import hourly, ventspace
from dryward.weather import Air, HourlyWeather

YEAR = weather.demo("cold")
WOOL = Material("wool", "wool", 30.0, 840.0, 0.036, 1.6e-10)
PANEL = Material(
    "panel", "panel", 600.0, 1700.0, ((0.0, 0.12), (150.0, 0.17)), ((0.2, 1e-12), (0.9, 9e-12)),
    sorption=((0.5, 40.0), (0.8, 90.0), (1.0, 300.0)),
)  # fmt: skip
BRICK, PLASTER = (
    Material(
        name, name, 1800.0, 850.0, 0.6, 2e-11, sorption=((0.5, 2.0), (0.9, 10.0), (0.99, 40.0), (1.0, 200.0)),
        liquid_conductivity=((0.0, 0.0), (20.0, 1e-15), (100.0, 1e-12), (200.0, most)),
    )
    for name, most in (("brick", 1e-9), ("plaster", 1e-11))
)  # fmt: skip
SHEET = VariableMembrane((0.3, 0.5, 0.8), (2e-11, 1e-10, 8e-10))
CLIFF = VariableMembrane((0.50, 0.505), (1e-12, 1e-9))


def swing(hours, low, high):
    """Outdoor air between two temperatures, dry, up and down in a day."""
    t = 0.5 * (low + high) + 0.5 * (high - low) * np.sin(2 * np.pi * np.arange(hours) / 24.0)
    return HourlyWeather(t, np.full(hours, Air(low, 0.7).vapor_pressure))


def roof():
    """Sun, sky, wind, a vent space of its own drive, and a leak that turns round."""
    vault = building.preset("vented-vault-osb")
    space = ventspace.VentSpace(0.04, 5.0, 35.0)
    to_and_fro = hourly.AirFlow(np.resize([2e-4, -2e-4], YEAR.hours), long_share=0.3)
    return hourly.simulate(vault, YEAR, Air(21.0, 0.4), hours=18, vent=space, leak=to_and_fro, surface=hourly.Surface())


def gusts():
    """Vent air that comes and stops, under a plain film."""
    vault = building.preset("vented-vault")
    return hourly.simulate(vault, YEAR, Air(21.0, 0.4), hours=6, vent=np.resize([0.004, 0.0], YEAR.hours))


def liquid():
    """Two materials that touch, one wet, one dry."""
    wall = Assembly("wall", [Layer(PLASTER, 0.02), Layer(BRICK, 0.1)])
    return hourly.simulate(wall, Air(5.0, 0.7), Air(20.0, 0.5), hours=4, initial={"brick": 180.0})


def wetting():
    """Wool that is wetted to saturation against a tight sheet, and dries."""
    wall = Assembly("wall", [Layer(WOOL, 0.05), Layer(FixedMembrane(1e-13))])
    return hourly.simulate(wall, swing(30, -20.0, 40.0), Air(22.0, 0.6), hours=30, initial=Air(20.0, 0.5))


def dripping():
    """A strong leak with a tight layer on its way: frost behind a tight sheet and on wood, that thaws and runs off."""
    wall = Assembly("wall", [
        Layer(WOOL, 0.05, "inner wool"), Layer(BRICK, 0.004, "board"), Layer(WOOL, 0.05), Layer(FixedMembrane(1e-13)),
        Layer(PANEL, 0.003), Layer(WOOL, 0.02, "outer wool"),
    ])  # fmt: skip
    leak = hourly.AirFlow(np.resize([5e-4] * 40 + [-5e-4] * 8, 48), long_share=0.9)
    return hourly.simulate(wall, swing(48, -25.0, 20.0), Air(22.0, 0.7), hours=48, leak=leak)


def membranes():
    """A cliff, a laminate and a plain curve, with air through all layers both ways."""
    wall = Assembly(
        "wall",
        [
            Layer(LaminateMembrane(SHEET, 3e-10)), Layer(PANEL, 0.012), Layer(CLIFF), Layer(SHEET),
            Layer(WOOL, 0.1), Layer(FixedMembrane(1e-11)),
        ],
    )  # fmt: skip
    through = hourly.AirFlow(np.resize([3e-5, 3e-5, 0.0, -3e-5], 24))
    return hourly.simulate(wall, swing(24, -25.0, 10.0), Air(20.0, 0.55), hours=12, leak=through)


RUNS = {each.__name__: each for each in (roof, gusts, liquid, wetting, dripping, membranes)}


def results():
    """Temperature and water of every cell at the end, and what went through, of each run."""
    return {
        name: [
            *run.temperature[-1],
            *run.relative_humidity[-1],
            *run.water_content[-1],
            *run.free_water[-1],
            1e6 * run.vapor_flux_in.sum(),
            1e6 * run.leak_out.sum(),
            1e6 * run.runoff.sum(),
        ]
        for name, run in ((name, make()) for name, make in RUNS.items())
    }


if __name__ == "__main__":
    json.dump({name: [float(each) for each in values] for name, values in results().items()}, sys.stdout)
