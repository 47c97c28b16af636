"""Nothing is lost: water in, out and stored agree to 1e-6 of what went through, and heat too."""

import numpy as np
import pytest

from dryward import building, weather
from dryward.building import Assembly, FixedMembrane, Layer, Material, VariableMembrane
from dryward.physics import hourly
from dryward.weather import Air, HourlyWeather

WOOL = Material("wool", "wool", 30.0, 840.0, 0.036, 1.6e-10)
PANEL = Material("panel", "panel", 600.0, 1700.0, 0.12, 2e-12, sorption=((0.5, 40.0), (0.8, 90.0), (1.0, 300.0)))
BRICK = Material(
    "brick", "brick", 1800.0, 850.0, ((0.0, 0.6), (200.0, 1.2)), 2e-11,
    sorption=((0.5, 2.0), (0.9, 10.0), (0.99, 40.0), (1.0, 200.0)),
    liquid_conductivity=((0.0, 0.0), (20.0, 1e-15), (100.0, 1e-12), (200.0, 1e-9)),
)  # fmt: skip


def kept(run, limit=1e-6):
    """The balance from the arrays alone, without what the run says of itself."""
    into, out = (run.vapor_flux_in, run.leak_in), (run.vapor_flux_out, run.leak_out, run.vent_out, run.runoff)
    gone = sum(into) - sum(out)
    through = sum(np.abs(each).sum() for each in (*into, *out))
    stored = run.water[-1] - run.initial_water @ run.width
    assert abs(3600.0 * gone.sum() - stored) <= limit * 3600.0 * through
    hourly_gain = np.diff(run.water, prepend=run.initial_water @ run.width)
    assert 3600.0 * gone == pytest.approx(hourly_gain, abs=1e-9)
    assert run.balance_error <= limit
    assert run.heat_balance_error <= limit
    assert run.water_content.min() > -1e-6


def half_years(winter, summer, hours=4000):
    t = np.repeat([winter.temperature, summer.temperature], hours)
    p = np.repeat([winter.vapor_pressure, summer.vapor_pressure], hours)
    return HourlyWeather(t, p)


@pytest.mark.parametrize("id", building.presets())
def test_presets_through_a_year_of_weather(id):
    year = weather.demo(weather.demos()[0])
    kept(hourly.simulate(building.preset(id), year, Air(21.0, 0.4), surface=hourly.Surface()))


def test_wetting_ponding_at_a_membrane_and_drying_again():
    """Wool against a tight outer sheet: frost stands in the last cell of the wool, thaws, and goes again."""
    wall = Assembly("wall", [Layer(WOOL, 0.15), Layer(FixedMembrane(1e-13))])
    run = hourly.simulate(wall, half_years(Air(-10.0, 0.8), Air(30.0, 0.4)), Air(20.0, 0.4), initial=Air(20.0, 0.4))
    kept(run)
    assert run.condensed[3999] > 1.0
    assert run.relative_humidity[3999, -1] == 1.0
    assert run.condensed[-1] == 0.0
    assert run.relative_humidity[-1, -1] < 0.7


def test_panel_to_saturation_and_back():
    wall = Assembly("wall", [Layer(WOOL, 0.15), Layer(PANEL, 0.012), Layer(FixedMembrane(1e-13))])
    run = hourly.simulate(wall, half_years(Air(-10.0, 0.8), Air(30.0, 0.4)), Air(20.0, 0.5))
    kept(run)
    assert run.condensed[3999] > 0.1
    assert run.condensed[-1] == 0.0


def test_liquid_water_in_two_materials_that_touch():
    other = building.Material(
        "plaster", "plaster", 1200.0, 900.0, 0.5, 2e-11, sorption=((0.5, 5.0), (0.9, 20.0), (1.0, 150.0)),
        liquid_conductivity=((0.0, 0.0), (10.0, 1e-16), (150.0, 1e-10)),
    )  # fmt: skip
    wall = Assembly("wall", [Layer(other, 0.02), Layer(BRICK, 0.24), Layer(other, 0.02)])
    run = hourly.simulate(wall, Air(5.0, 0.7), Air(20.0, 0.5), hours=3000, initial={"brick": 180.0})
    kept(run)
    assert run.water[-1] < 0.9 * run.water[0]


def test_membrane_with_a_cliff():
    cliff = VariableMembrane((0.50, 0.505), (1e-12, 1e-9))
    wall = Assembly("wall", [Layer(PANEL, 0.012), Layer(cliff), Layer(WOOL, 0.15), Layer(FixedMembrane(1e-11))])
    year = weather.demo(weather.demos()[0])
    kept(hourly.simulate(wall, year, Air(20.0, 0.5), surface=hourly.Surface()))


def test_vent_and_leak_count():
    vault = building.preset("vented-vault-variable")
    year = weather.demo(weather.demos()[0])
    run = hourly.simulate(
        vault, year, Air(21.0, 0.4), vent=0.004, leak=hourly.AirFlow(2e-4, long_share=0.1), surface=hourly.Surface()
    )
    kept(run)
    assert np.abs(run.vent_out).sum() > 0
    assert run.leak_in.sum() > 0


@pytest.mark.parametrize("rate", [1e-3, -1e-3])
@pytest.mark.parametrize("preset", building.presets())
def test_a_leak_through_every_preset(preset, rate):
    """Out and in, most of it seeping, water running off: the books close."""
    year = weather.demo(weather.demos()[0])
    vented = any(layer.vented for layer in building.preset(preset).layers)
    kept(
        hourly.simulate(
            building.preset(preset), year, Air(21.0, 0.6), vent=0.002 if vented else None,
            leak=hourly.AirFlow(rate, long_share=0.7), surface=hourly.Surface(),
        )
    )  # fmt: skip


@pytest.mark.parametrize("rate", [3e-5, -3e-5])
def test_air_through_all_layers(rate):
    wall = building.preset("wood-frame-wall")
    year = weather.demo(weather.demos()[0])
    kept(hourly.simulate(wall, year, Air(21.0, 0.4), hours=4000, leak=hourly.AirFlow(rate)))


def test_a_run_goes_on_where_it_was():
    wall = building.preset("wood-frame-wall")
    year = weather.demo(weather.demos()[0])
    whole = hourly.simulate(wall, year, Air(21.0, 0.4), years=2)
    first = hourly.simulate(wall, year, Air(21.0, 0.4))
    second = hourly.simulate(wall, year, Air(21.0, 0.4), initial=first)
    assert second.water[-1] == pytest.approx(whole.water[-1], rel=1e-9)
    assert whole.time.size == 2 * year.hours


def test_what_is_shut_on_both_sides_has_no_error_to_speak_of():
    """Nothing goes through: what the sums miss is the last digit of what is held."""
    shut = FixedMembrane(0.0)
    box = Assembly("box", [Layer(shut, name="a"), Layer(PANEL, 0.05, "panel"), Layer(shut, name="b")])
    run = hourly.simulate(box, weather.HourlyWeather.constant(Air(0.0, 0.8)), Air(20.0, 0.5), initial={"panel": 60.0})
    assert np.abs(run.water - run.water[0]).max() < 1e-9
    assert run.balance_error <= 1e-6
