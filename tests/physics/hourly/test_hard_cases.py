"""Cases that break marches: none may fail, none may need more than four times the work of an easy one.

Work is counted in passes of the solver, which no other program on the
machine can disturb.
"""

import numpy as np
import pytest

from dryward import weather
from dryward.building import Assembly, FixedMembrane, Layer, Material, VariableMembrane
from dryward.checks import NotConverged
from dryward.physics import hourly
from dryward.units import to_si
from dryward.weather import Air, HourlyWeather

YEAR = weather.demo("cold")
HOT = weather.demo("hot-humid")
PERM = to_si(1.0, "perm")
ROOM = Air(21.0, 0.45)
WOOL = Material("wool", "wool", 30.0, 840.0, 0.036, 1.6e-10)
WOOD = Material(
    "wood", "wood", 500.0, 1600.0, 0.12, ((0.2, 1e-12), (0.6, 3e-12), (0.95, 2e-11)),
    sorption=((0.1, 13.0), (0.3, 30.0), (0.5, 46.0), (0.7, 65.0), (0.9, 103.0), (0.99, 140.0), (1.0, 300.0)),
)  # fmt: skip


def wall(*layers, **more):
    return Assembly("wall", [Layer(x) if not isinstance(x, tuple) else Layer(*x) for x in layers], **more)


def easy():
    return hourly.simulate(wall((WOOL, 0.15), (WOOD, 0.012)), YEAR, ROOM, surface=hourly.Surface())


def swing(hours=240):
    """From -35 °C to 35 °C and back within each day."""
    t = 35.0 * np.sin(2 * np.pi * np.arange(hours) / 24.0)
    cold = weather.Air(-35.0, 0.7).vapor_pressure
    return HourlyWeather(t, np.full(hours, cold))


CASES = {
    "tight skin over wet sheathing in July": lambda: hourly.simulate(
        wall((WOOL, 0.15), (WOOD, 0.012, "sheathing"), FixedMembrane(0.01 * PERM)),
        HOT, ROOM, surface=hourly.Surface(absorptance=0.95), initial={"sheathing": 290.0},
    ),
    "fifty perms in one cell": lambda: hourly.simulate(
        wall((WOOL, 0.15), FixedMembrane(50 * PERM), (WOOD, 0.001), FixedMembrane(0.05 * PERM), (WOOL, 0.02)),
        YEAR, ROOM,
    ),
    "minus 35 to plus 35 in a day": lambda: hourly.simulate(
        wall((WOOL, 0.15), (WOOD, 0.012)), swing(), ROOM, hours=8760
    ),
    "a membrane with a cliff": lambda: hourly.simulate(
        wall((WOOD, 0.012), VariableMembrane((0.60, 0.601), (0.01 * PERM, 50 * PERM)), (WOOL, 0.15), (WOOD, 0.012)),
        YEAR, ROOM, surface=hourly.Surface(),
    ),
    "a cliff at both sides of the wool": lambda: hourly.simulate(
        wall(
            (WOOD, 0.004), VariableMembrane((0.60, 0.601), (0.01 * PERM, 50 * PERM)), (WOOL, 0.15),
            VariableMembrane((0.80, 0.801), (0.01 * PERM, 50 * PERM)), (WOOD, 0.012),
        ),
        YEAR, Air(21.0, 0.6), surface=hourly.Surface(),
    ),
    "start at 99 %": lambda: hourly.simulate(
        wall((WOOL, 0.15), (WOOD, 0.012)), YEAR, ROOM, initial=Air(10.0, 0.99), surface=hourly.Surface()
    ),
    "start above saturation": lambda: hourly.simulate(
        wall((WOOL, 0.15, "wool"), (WOOD, 0.012)), YEAR, ROOM, initial={"wool": 50.0}, surface=hourly.Surface()
    ),
    "a leak through the wool": lambda: hourly.simulate(
        wall((WOOL, 0.15), (WOOD, 0.012, "sheathing"), FixedMembrane(0.1 * PERM)), YEAR, Air(21.0, 0.6),
        leak=hourly.AirFlow(5e-4, long_share=1.0), surface=hourly.Surface(),
    ),
    "metal": lambda: hourly.simulate(
        wall((WOOL, 0.15), (Material("steel", "steel", 7800.0, 450.0, 50.0, 0.0), 0.001)), YEAR, Air(21.0, 0.6),
        surface=hourly.Surface(),
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", CASES)
def test_no_case_fails_or_drags(name):
    run = CASES[name]()
    assert run.iterations / run.time.size < 4 * easy().iterations / 8760
    assert run.balance_error < 1e-6
    assert np.isfinite(run.temperature).all()
    assert run.relative_humidity.min() > 0
    assert run.relative_humidity.max() <= 1.0
    assert run.water_content.min() > -1e-6
    assert run.temperature.min() > -80
    assert run.temperature.max() < 110


def test_ten_years():
    run = hourly.simulate(wall((WOOL, 0.15), (WOOD, 0.012)), YEAR, ROOM, years=10, surface=hourly.Surface())
    assert run.time.size == 87600
    assert run.balance_error < 1e-6
    assert run.iterations / 87600 < 4 * easy().iterations / 8760
    ends = run.water[8759::8760]
    assert abs(ends[-1] - ends[-2]) < 1e-3 * ends[-1]  # it has found its yearly round
    assert run.monthly().held.size == 120


def test_many_strange_walls():
    """Random layers, membranes and airs: every one goes through a winter."""
    random = np.random.default_rng(7)
    for _ in range(25):
        layers = []
        for _ in range(random.integers(1, 6)):
            kind = random.integers(4)
            if kind == 0:
                layers.append((WOOL, float(random.uniform(0.01, 0.3))))
            elif kind == 1:
                layers.append((WOOD, float(random.uniform(0.001, 0.1))))
            elif kind == 2:
                layers.append(FixedMembrane(float(10 ** random.uniform(-14, -8.5))))
            else:
                low, jump = random.uniform(0.2, 0.8), random.uniform(0.001, 0.2)
                levels = np.sort(10 ** random.uniform(-13, -8.5, 2))
                layers.append(VariableMembrane((low, low + jump), levels))
        layers.append((WOOL, 0.05))
        run = hourly.simulate(
            wall(*layers), YEAR, Air(float(random.uniform(10, 30)), float(random.uniform(0.05, 0.95))),
            hours=1500, initial=Air(15.0, float(random.uniform(0.02, 0.999))),
            surface=hourly.Surface(absorptance=float(random.random())),
        )  # fmt: skip
        assert run.balance_error < 1e-6
        assert run.iterations < 1500 * 12


def test_a_failure_says_when_where_and_which_layer(monkeypatch):
    """Steps that may not settle: one sentence with the hour, the layer and its state."""
    from dryward.physics.hourly import case

    monkeypatch.setattr(case, "TOLERANCE", -1.0)
    with pytest.raises(
        NotConverged,
        match=r"found no answer in hour 1 of day 1 \(hour 1 of the run\), in w(ool|ood) at [\d.]+ mm from the room, "
        r"where it was [-\d.]+ °C and \d+ %",
    ):
        hourly.simulate(wall((WOOL, 0.15), (WOOD, 0.012)), YEAR, ROOM, hours=2)
