"""A vent space: free area, flow, the warming of its air, and what it carries."""

import time

import numpy as np
import pytest

from dryward import air
from dryward.building import codes
from dryward.checks import OutOfRange
from dryward.physics import moving_air, ventspace
from dryward.physics.ventspace import VentSpace
from dryward.units import GRAVITY, KELVIN
from dryward.weather import Air

SPACE = VentSpace(0.038, 5.0, 30.0, 0.012, 0.012)


# --- friction and heat transfer between plates ----------------------------


@pytest.mark.parametrize("roughness", [0.0, 0.004, 0.02])
@pytest.mark.parametrize("reynolds", [3.0, 300.0, 1700.0, 2600.0, 8000.0, 2e5])
def test_the_table_is_the_friction_of_the_library(reynolds, roughness):
    from fluids.friction import Clamond, friction_laminar

    plates = ventspace.channel_curve(1.0, 0.0, roughness)
    drive = np.exp(np.interp(np.log(reynolds), plates.log_reynolds, plates.log_drive))
    rough = Clamond(reynolds, roughness) if reynolds > 500 else 0.0
    assert drive / reynolds**2 == pytest.approx(max(1.5 * friction_laminar(reynolds), rough), rel=2e-4)


def test_friction_has_no_step():
    plates = ventspace.channel_curve(60.0)
    assert (np.diff(plates.log_drive) > 0).all()
    assert np.diff(plates.log_drive).max() < 2.5 * np.diff(plates.log_reynolds).max()


def test_laminar_speed_solves_its_quadratic():
    """Without turbulence rho v^2/2 K + 12 mu L v / b^2 = p, to be solved by hand."""
    gap, length, losses, push, density, viscosity = 0.02, 4.0, 2.0, 0.2, 1.25, 1.77e-5
    plates = ventspace.channel_curve(length / (2 * gap), losses)
    got = ventspace.channel_speed(push, density, viscosity, 2 * gap, plates.log_drive, plates.log_reynolds)
    a, b = density / 2 * losses, 12 * viscosity * length / gap**2
    assert got == pytest.approx((-b + np.sqrt(b**2 + 4 * a * push)) / (2 * a), rel=2e-5)


def test_turbulent_flow_is_slower_than_the_laminar_law_says():
    space = VentSpace(0.05, 5.0, 30.0)
    laminar = 0.5562  # m/s by f = 96/Re, at a Reynolds number of 3800
    assert 0.8 * laminar < space.flow_at(7.5, 12.5) / space.height < 0.95 * laminar


@pytest.mark.parametrize("reynolds", [4000.0, 20000.0])
def test_heat_transfer_is_gnielinskis(reynolds):
    from ht.conv_internal import turbulent_Gnielinski

    plates = ventspace.channel_curve(1.0, 0.0)
    friction = np.exp(np.interp(np.log(reynolds), plates.log_reynolds, plates.log_drive)) / reynolds**2
    expected = turbulent_Gnielinski(Re=reynolds, Pr=ventspace.PRANDTL, fd=friction)
    assert np.interp(np.log(reynolds), plates.log_reynolds, plates.nusselt) == pytest.approx(expected, rel=1e-4)


def test_still_air_passes_the_heat_of_the_laminar_law():
    plates = ventspace.channel_curve(1.0)
    slow = plates.nusselt[plates.log_reynolds < np.log(2000)]
    assert slow.min() == slow.max() == pytest.approx(7.541)


def test_compiled_code_takes_the_speed_as_it_stands():
    import numba

    compiled = numba.njit(ventspace.channel_speed)
    given = (SPACE.diameter, SPACE.curve.log_drive, SPACE.curve.log_reynolds)
    for push in (-0.4, 0.0, 0.7):
        assert compiled(push, 1.25, 1.8e-5, *given) == pytest.approx(
            ventspace.channel_speed(push, 1.25, 1.8e-5, *given), abs=0
        )
    assert numba.njit(moving_air.density)(280.0, 101325.0) == moving_air.density(280.0)
    assert numba.njit(moving_air.viscosity)(280.0) == pytest.approx(moving_air.viscosity(280.0), rel=1e-12)


def test_viscosity_is_that_of_the_standard_atmosphere():
    from fluids.atmosphere import ATMOSPHERE_1976

    for kelvin in (233.15, 273.15, 313.15):
        assert moving_air.viscosity(kelvin) == pytest.approx(ATMOSPHERE_1976.viscosity(kelvin), rel=1e-6)


@pytest.mark.parametrize(
    ("given", "sentence"),
    [
        ((2e4,), "Length over hydraulic diameter is 20000; it must be 0 to 10000."),
        ((10.0, -1.0), "Sum of the losses is −1; it must be 0 to 1e"),
        ((10.0, 1.0, 0.1), "Relative roughness is 0.1; it must be 0 to 0.05."),
    ],
)
def test_channels_out_of_range(given, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        ventspace.channel_curve(*given)


# --- flow and warmth together ---------------------------------------------


def test_the_settled_flow_balances():
    """Push and resistance agree at the mean temperature that the faces give the air."""
    found = SPACE.airflow(-5.0, 12.0, 2.0)
    assert SPACE.flow_at(-5.0, found.air_temperature, 2.0) == pytest.approx(found.flow, rel=1e-6)
    assert found.push == pytest.approx(SPACE.push(-5.0, found.air_temperature, 2.0))
    assert -5.0 < found.air_temperature < found.leaving_temperature < 12.0
    # The heat that the air takes up is what the films pass at the mean difference.
    carried = moving_air.density(-5.0 + KELVIN) * moving_air.AIR_SPECIFIC_HEAT * found.flow
    gained = carried * (found.leaving_temperature + 5.0)
    passed = 2 * found.film * SPACE.area * (12.0 - found.air_temperature)
    assert gained == pytest.approx(passed, rel=1e-6)


def test_push_is_stack_and_wind():
    stack = SPACE.push(0.0, 10.0)
    assert stack == pytest.approx(moving_air.stack_pressure(2.5, 10.0, 0.0), rel=1e-12)
    wind = SPACE.push(0.0, 10.0, 4.0) - stack
    assert wind == pytest.approx(0.5 * moving_air.density(KELVIN) * 0.1 * 16.0)
    assert SPACE.rise * GRAVITY == pytest.approx(2.5 * GRAVITY)


def test_cold_faces_turn_the_flow_and_mirror_it():
    warm, cold = SPACE.airflow(0.0, 4.0), SPACE.airflow(0.0, -4.0)
    assert cold.flow < 0 < warm.flow
    assert -cold.flow == pytest.approx(warm.flow, rel=0.05)
    assert cold.leaving_temperature < 0


def test_still_air_stays_still():
    still = SPACE.airflow(5.0, 5.0, 0.0)
    assert abs(still.flow) < 1e-12
    assert still.push == 0.0
    assert still.air_temperature == 5.0
    assert SPACE.drying_power(Air(5.0, 0.5)).carried == pytest.approx(0.0, abs=1e-15)


def test_a_flat_space_moves_only_with_wind():
    flat = VentSpace(0.038, 5.0, 0.0)
    assert abs(flat.airflow(0.0, 30.0).flow) < 1e-9
    assert flat.airflow(0.0, 30.0, 3.0).flow > 0.001


@pytest.mark.parametrize(
    ("change", "more"),
    [
        ({"height": 0.05}, True),
        ({"inlet_area": 0.006}, False),
        ({"outlet_area": 0.006}, False),
        ({"slope": 45.0}, True),
        ({"losses": 5.0}, False),
        ({"wind_coefficient": 0.3}, True),
    ],
)
def test_what_makes_more_air_move(change, more):
    from dataclasses import replace

    base, other = SPACE.airflow(0.0, 10.0, 4.0).flow, replace(SPACE, **change).airflow(0.0, 10.0, 4.0).flow
    assert (other > base) if more else (other < base)


def test_roughness_counts_in_turbulent_flow_only():
    from dataclasses import replace

    wide = VentSpace(0.1, 10.0, 45.0)
    assert replace(wide, roughness=0.003).flow_at(0.0, 12.0) < 0.98 * wide.flow_at(0.0, 12.0)
    narrow = VentSpace(0.015, 5.0, 30.0)
    assert replace(narrow, roughness=0.001).flow_at(0.0, 3.0) == narrow.flow_at(0.0, 3.0)


def test_a_small_opening_rules_the_flow():
    """A pinhole at the eave: the whole push is lost there, as in an orifice."""
    pinhole = VentSpace(0.05, 2.0, 60.0, inlet_area=1e-4)
    push = pinhole.push(0.0, 10.0)
    expected = moving_air.orifice_flow(push, 1e-4, 0.6, moving_air.density(10.0 + KELVIN))
    assert pinhole.flow_at(0.0, 10.0) == pytest.approx(expected, rel=0.01)


def test_inlet_and_outlet_count_alike():
    one, other = VentSpace(0.04, 5.0, 30.0, 0.004, 0.02), VentSpace(0.04, 5.0, 30.0, 0.02, 0.004)
    assert one.flow_at(0.0, 6.0) == pytest.approx(other.flow_at(0.0, 6.0), rel=1e-12)


def test_a_whole_year_at_once_is_each_hour_by_itself():
    hours = 8760
    rng = np.random.default_rng(5)
    outdoor = rng.uniform(-25, 30, hours)
    faces, wind = outdoor + rng.uniform(-8, 40, hours), rng.uniform(0, 9, hours)
    _ = SPACE.curve
    start = time.perf_counter()
    year = SPACE.airflow(outdoor, faces, wind)
    taken = time.perf_counter() - start
    assert year.flow.shape == (hours,)
    for hour in (0, 4000, 8759):
        one = SPACE.airflow(outdoor[hour], faces[hour], wind[hour])
        assert one.flow == pytest.approx(year.flow[hour], rel=1e-9)
        assert one.air_temperature == pytest.approx(year.air_temperature[hour], rel=1e-9)
    assert taken < 0.5  # about 0.025 s on one quiet core


def test_mean_of_an_exponential_approach():
    along = np.linspace(0.0, 1.0, 100001)
    for units in (0.3, 4.0):
        assert ventspace.mean_approach(units) == pytest.approx(np.trapezoid(np.exp(-units * along), along), rel=1e-8)
    assert ventspace.mean_approach(0.0) == pytest.approx(1.0)
    assert ventspace.mean_approach(np.inf) == 0.0
    with pytest.raises(OutOfRange, match=r"Number of transfer units is −1; it must be at least 0."):
        ventspace.mean_approach(-1.0)


# --- what the air carries -------------------------------------------------


def test_drying_power_never_passes_the_limit():
    outdoor = Air(np.array([-15.0, -5.0, 5.0, 15.0]), 0.8)
    power = SPACE.drying_power(outdoor, outdoor.temperature + 3.0, 3.0)
    assert (power.carried > 0).all()
    assert (power.carried < power.limit).all()
    assert (power.leaving_vapor_pressure < air.saturation_vapor_pressure(outdoor.temperature + 3.0)).all()
    assert (np.diff(power.carried) > 0).all()  # warmer air carries more


def test_a_long_space_saturates_its_air_and_a_short_one_does_not():
    short, long = (VentSpace(0.05, length, 30.0).drying_power(Air(0.0, 0.5), 2.0, 5.0) for length in (0.3, 30.0))
    assert short.carried / short.limit < 0.2
    assert long.carried / long.limit > 0.9


def test_vapor_taken_up_is_vapor_carried_away():
    power = SPACE.drying_power(Air(-5.0, 0.7), -2.0, 4.0)
    moving = power.airflow
    kelvin = moving.air_temperature + KELVIN
    difference = power.leaving_vapor_pressure - Air(-5.0, 0.7).vapor_pressure
    out = moving.flow * difference / (air.VAPOR_GAS_CONSTANT * kelvin)
    assert power.carried * SPACE.area == pytest.approx(out, rel=1e-9)


def test_a_face_below_the_frost_point_takes_water_from_the_air():
    assert SPACE.drying_power(Air(-6.0, 0.95), -9.0, 3.0).carried < 0
    assert SPACE.drying_power(Air(-6.0, 0.95), -6.0, 3.0, surface_humidity=0.9).carried < 0


def test_fog_carries_a_quarter():
    dry, fog = (ventspace.carrying_limit(0.0381, 0.1, 5.0, Air(-6.6667, rh)) for rh in (0.8, 0.95))
    assert fog / dry == pytest.approx(0.25)


def test_cooled_vent_air_drops_water():
    assert ventspace.carrying_limit(0.0381, 0.1, 5.0, Air(-6.6667, 0.95), warming=-2.0) < 0


def test_twice_the_gap_carries_twice_as_much_at_one_speed():
    one, two = (ventspace.carrying_limit(gap, 0.1, 5.0, Air(0.0, 0.8)) for gap in (0.02, 0.04))
    assert two == pytest.approx(2 * one)


@pytest.mark.parametrize(
    ("given", "sentence"),
    [
        ((0.0, 0.1, 5.0), "Height of the gap is 0 m; it must be above 0 and at most 1 m."),
        ((0.03, 30.0, 5.0), "Air speed is 30 m/s; it must be 0 to 20 m/s."),
        ((0.03, 0.1, 0.0), "Length of the vent space is 0 m; it must be above 0 and at most 100 m."),
    ],
)
def test_limits_out_of_range(given, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        ventspace.carrying_limit(*given, Air(0.0, 0.8))
    with pytest.raises(OutOfRange, match=r"Warming of the vent air is 80 K; it must be −30 to 60 K."):
        ventspace.carrying_limit(0.03, 0.1, 5.0, Air(0.0, 0.8), 80.0)


@pytest.mark.parametrize(
    ("change", "sentence"),
    [
        ({"height": 0.001}, "Height of the gap is 0.001 m; it must be 0.003 to 0.5 m."),
        ({"length": 80.0}, "Length of the vent space is 80 m; it must be 0.1 to 50 m."),
        ({"slope": 120.0}, "Slope is 120 degrees; it must be 0 to 90 degrees."),
        ({"inlet_area": 0.0}, "Inlet area is 0 m²; it must be above 0 m²."),
        ({"outlet_area": -1.0}, "Outlet area is −1 m²; it must be above 0 m²."),
        ({"width": 0.0}, "Width of the vent space is 0 m; it must be above 0 and at most 1000 m."),
        ({"losses": 500.0}, "Sum of the losses is 500; it must be 0 to 100."),
        ({"discharge": 1.2}, "Discharge coefficient is 1.2; it must be above 0 and at most 1."),
        ({"wind_coefficient": 3.0}, "Wind pressure coefficient is 3; it must be −2 to 2."),
        ({"roughness": 0.1}, "Roughness is 0.1 m; it must be 0 to 0.003 m."),
    ],
)
def test_spaces_out_of_range(change, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        VentSpace(**({"height": 0.04, "length": 5.0, "slope": 30.0} | change))


@pytest.mark.parametrize(
    ("given", "sentence"),
    [
        ((-200.0, 0.0, 0.0), "Outdoor temperature is −200 °C; it must be −80 to 120 °C."),
        ((0.0, 200.0, 0.0), "Temperature in the vent space is 200 °C; it must be −80 to 120 °C."),
        ((0.0, 0.0, -1.0), "Wind speed is −1 m/s; it must be 0 to 100 m/s."),
    ],
)
@pytest.mark.parametrize("ask", ["airflow", "flow_at", "push"])
def test_weather_out_of_range(ask, given, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        getattr(SPACE, ask)(*given)


# --- net free area --------------------------------------------------------


def test_need_and_provision_are_each_others_inverse():
    need = ventspace.net_free_area(55.74, 300.0, 0.45)
    ratio, high = ventspace.ratio_provided(55.74, need.upper, need.lower)
    assert (ratio, high) == pytest.approx((300.0, 0.45))


def test_without_a_ratio_it_is_that_of_the_newest_code_row():
    share = codes.required("vent-area-reduced")
    assert ventspace.net_free_area(55.74).total == pytest.approx(55.74 * share, rel=1e-12)
    lengths = {"eave_length": 10.0, "ridge_length": 10.0}  # without them two fields are NaN, equal to nothing
    assert ventspace.net_free_area(55.74, **lengths) == ventspace.net_free_area(55.74, 300.0, **lengths)


def test_no_openings_is_no_ratio():
    ratio, high = ventspace.ratio_provided(50.0, 0.0, 0.0)
    assert ratio == np.inf
    assert np.isnan(high)


def test_no_length_is_no_area_by_length():
    assert np.isnan(ventspace.net_free_area(50.0).upper_per_length)


@pytest.mark.parametrize(
    ("ask", "given", "sentence"),
    [
        ("net_free_area", (0.0,), "Vented area is 0 m²; it must be above 0 and at most 1e"),
        ("net_free_area", (50.0, 0.5), "Vent ratio is 0.5; it must be 1 to 2000."),
        ("net_free_area", (50.0, 300, 1.2), "Share of the openings that is high is 120 %; it must be 0 to 100 %."),
        ("net_free_area", (50.0, 300, 0.5, 0.0), "Length of the eave is 0 m; it must be above 0"),
        ("net_free_area", (50.0, 300, 0.5, 9.0, 0.0), "Length of the ridge is 0 m; it must be above 0"),
        ("ratio_provided", (0.0, 0.1, 0.1), "Vented area is 0 m²"),
        ("ratio_provided", (50.0, -0.1, 0.1), "Upper net free area is −0.1 m²; it must be 0 to 10000 m²."),
        ("ratio_provided", (50.0, 0.1, -0.1), "Lower net free area is −0.1 m²; it must be 0 to 10000 m²."),
        ("clear_area", (2.0, 0.36, 0.4), "Height of the gap is 2 m; it must be 0 to 1 m."),
        ("clear_area", (0.03, 0.5, 0.4), "Clear width between rafters is 0.5 m; it must be 0 to 0.4 m."),
        ("clear_area", (0.03, 0.3, 0.0), "Spacing of the rafters is 0 m; it must be above 0"),
    ],
)
def test_areas_out_of_range(ask, given, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        getattr(ventspace, ask)(*given)
