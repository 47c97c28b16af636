"""Air in the vent space, and air that leaks: limits, the exact exponential, and the rule of mixtures."""

import numpy as np
import pytest

from dryward import air, building, weather
from dryward.building import AirSpace, Assembly, FixedMembrane, Layer, Material
from dryward.checks import OutOfRange
from dryward.physics import airleak, hourly, moving_air, ventspace
from dryward.weather import Air, HourlyWeather

WOOL = Material("wool", "wool", 30.0, 840.0, 0.036, 1.6e-10)
DECK = Material("deck", "deck", 500.0, 1600.0, 0.12, 5e-12, sorption=((0.5, 40.0), (0.8, 80.0), (1.0, 150.0)))
FILM, VAPOR = 0.1, 4e-8


def vault(space):
    layers = [Layer(FixedMembrane(5e-11)), Layer(WOOL, 0.2), Layer(space, 0.04, "gap"), Layer(DECK, 0.02)]
    return Assembly("vault", layers, slope=30)


def open_gap():
    return vault(AirSpace(FILM, VAPOR, vented=True))


def test_no_flow_is_a_closed_air_space():
    closed = vault(AirSpace(2 * FILM, VAPOR / 2))
    year = weather.demo("cold")
    one = hourly.simulate(open_gap(), year, Air(20.0, 0.4), hours=2000, vent=0.0)
    two = hourly.simulate(closed, year, Air(20.0, 0.4), hours=2000)
    assert one.temperature == pytest.approx(two.temperature, abs=1e-9)
    assert one.relative_humidity == pytest.approx(two.relative_humidity, abs=1e-9)
    assert np.all(one.vent_out == 0)


def test_great_flow_is_outdoor_air():
    outdoor = Air(-5.0, 0.8)
    run = hourly.simulate(open_gap(), outdoor, Air(20.0, 0.4), hours=3000, vent=10.0)
    gap = np.flatnonzero(run.cell_layer == 2)[0]
    assert run.temperature[-1, gap] == pytest.approx(-5.0, abs=0.01)
    assert run.relative_humidity[-1, gap] == pytest.approx(0.8, abs=0.002)
    # The layers below then see outdoor air behind the film, as the steady method has it.
    inner = Assembly(
        "inner", [Layer(FixedMembrane(5e-11)), Layer(WOOL, 0.2)], exterior_film=FILM, exterior_vapor_film=VAPOR
    )
    alone = hourly.simulate(inner, outdoor, Air(20.0, 0.4), hours=3000)
    assert run.vapor_flux_in[-1] == pytest.approx(alone.vapor_flux_in[-1], rel=1e-3)


@pytest.mark.parametrize("flow", [1e-5, 3e-4, 3e-3, 0.05])
def test_in_between_the_exponential(flow):
    """Mean air and leaving air of a channel whose faces are at one temperature each: the closed solution."""
    run = hourly.simulate(open_gap(), Air(0.0, 0.8), Air(20.0, 0.4), hours=20000, vent=flow)
    cells = {place: np.flatnonzero(run.cell_layer == place) for place in (1, 2, 3)}
    t, gap = run.temperature[-1], cells[2][0]
    below, above = cells[1][-1], cells[3][0]
    # Temperatures of the two faces from the cells beside them, film and half cell in series.
    inner = t[below] + (t[gap] - t[below]) * (r := 0.5 * run.width[below] / 0.036) / (r + FILM)
    outer = t[above] + (t[gap] - t[above]) * (r := 0.5 * run.width[above] / 0.12) / (r + FILM)
    stream = flow * moving_air.density(273.15) * moving_air.AIR_SPECIFIC_HEAT
    units = 2 / FILM / stream
    faces = 0.5 * (inner + outer)
    mean = faces + (0.0 - faces) * ventspace.mean_approach(units)
    assert t[gap] == pytest.approx(mean, abs=1e-4)
    assert run.vent_flow[-1] == pytest.approx(flow * moving_air.density(273.15))
    # And vapor, by the film's permeance.
    carried = flow * moving_air.density(273.15) * air.MASS_RATIO / air.STANDARD_PRESSURE
    leaving = run.vent_out[-1] / carried  # excess vapor pressure of the air that leaves
    middle = air.vapor_pressure(t[gap], run.relative_humidity[-1, gap]) - air.vapor_pressure(0.0, 0.8)
    units = 2 * VAPOR / carried
    whole = -np.expm1(-units)
    assert middle == pytest.approx(leaving / whole * (1 - whole / units), rel=1e-3, abs=3e-4)


def test_a_vent_space_finds_its_own_flow():
    space = ventspace.VentSpace(0.04, 5.0, 30.0, 0.02, 0.02)
    year = weather.demo("cold")
    run = hourly.simulate(open_gap(), year, Air(20.0, 0.4), vent=space, surface=hourly.Surface())
    gap = np.flatnonzero(run.cell_layer == 2)[0]
    warmer = np.concatenate([[20.0], run.temperature[:-1, gap]]) - year.temperature
    want = np.abs(space.flow_at(year.temperature, year.temperature + np.clip(warmer, -30, 60), year.wind_speed))
    want = want * moving_air.density(year.temperature + 273.15) / space.area
    assert run.vent_flow == pytest.approx(
        want, abs=0.1 * want.max()
    )  # the table is made at the year's mean temperature
    assert run.vent_flow.mean() == pytest.approx(want.mean(), rel=0.03)


def test_venting_dries_a_wet_deck():
    start = {"deck": 130.0}
    args = open_gap(), weather.demo("cold"), Air(20.0, 0.4)
    still = hourly.simulate(*args, hours=3000, initial=start, vent=0.0)
    vented = hourly.simulate(*args, hours=3000, initial=start, vent=0.01)
    assert vented.layer("deck").water_content[-1] < 0.8 * still.layer("deck").water_content[-1]


def test_a_blower_door_leak_follows_the_stack():
    leak = airleak.Leak.from_blower_door(3.0, 500.0, 0.2, area=60.0)
    wall = building.preset("wood-frame-wall")
    outdoor = HourlyWeather(np.array([-20.0, 0.0, 20.0, 35.0]), np.full(4, 80.0))
    flow = hourly.leak_flow(leak, outdoor, 20.0)
    assert np.all(np.diff(flow.rate) < 0)
    assert flow.rate[2] == pytest.approx(0.0)
    assert flow.rate[3] < 0
    run = hourly.simulate(wall, outdoor, Air(20.0, 0.4), leak=leak)
    assert run.leak_in[0] > 0
    assert run.leak_in[3] < 0


@pytest.mark.parametrize(
    ("options", "error", "words"),
    [
        ({"vent": 0.01}, OutOfRange, "has no vent space"),
        ({"leak": 3.0}, OutOfRange, "The leak must be an air leak or an air flow"),
        ({"leak": hourly.AirFlow([1e-5] * 10, 0.1)}, OutOfRange, "The air flow has 10 numbers; it must have one, or"),
        ({"leak": hourly.AirFlow([[1e-5, 1e-5]])}, OutOfRange, "The air flow has 1 by 2 numbers; it must have one, or"),
        ({"surface": 1}, OutOfRange, "The surface must be a Surface, not '1'"),
    ],
)
def test_what_does_not_fit(options, error, words):
    wall = Assembly("wall", [Layer(WOOL, 0.2), Layer(FixedMembrane(1e-10), name="skin")])
    with pytest.raises(error, match=words):
        hourly.simulate(wall, Air(0.0, 0.8), Air(20.0, 0.4), hours=2, **options)


@pytest.mark.parametrize("number", [[0.1, 0.2], True])
@pytest.mark.parametrize("name", ["coefficient", "exponent", "area", "long_share", "area_share"])
def test_a_leak_has_one_number_of_each(name, number):
    with pytest.raises(OutOfRange, match="must be one number, not"):
        airleak.Leak(**{"coefficient": 1e-4, name: number})


def test_an_assembly_is_no_name():
    with pytest.raises(OutOfRange, match="The assembly must be an assembly, not 'vented-vault'"):
        hourly.simulate("vented-vault", Air(0.0, 0.8), Air(20.0, 0.4), hours=2)


def test_more_that_does_not_fit():
    with pytest.raises(OutOfRange, match=r"Air flow is 1 kg/\(s m²\); it must be −0.1 to 0.1"):
        hourly.AirFlow(1.0)
    with pytest.raises(OutOfRange, match=r"Long share of a leak is 150 %; it must be 0 to 100 %"):
        hourly.AirFlow(1e-5, 1.5)
    with pytest.raises(OutOfRange, match="The membrane film has no thickness for air to seep through"):
        Layer(FixedMembrane(1e-10), name="film", open_to_air=True)
    gap = Layer(AirSpace(FILM, VAPOR, vented=True), 0.04)
    two = Assembly("two", [Layer(WOOL, 0.2), gap, Layer(DECK, 0.02), gap, Layer(DECK, 0.02)])
    with pytest.raises(OutOfRange, match="has two vent spaces"):
        hourly.simulate(two, Air(0.0, 0.8), Air(20.0, 0.4), hours=2)
    with pytest.raises(OutOfRange, match="Vent air flow is 20"):
        hourly.simulate(open_gap(), Air(0.0, 0.8), Air(20.0, 0.4), hours=2, vent=20.0)
