"""Air leaks: the power law, the water they bring, and air through a layer."""

import numpy as np
import pytest

from dryward import air
from dryward.checks import OutOfRange
from dryward.physics import airleak, moving_air
from dryward.physics.airleak import Leak
from dryward.units import DAY, KELVIN, from_si, to_si
from dryward.weather import Air

ROOM = Air(21.11, 0.4)
PLANE = -6.67


def test_the_flow_follows_the_pressure_with_its_sign():
    leak = Leak(0.01, 0.65)
    flow = leak.airflow(np.array([-4.0, 0.0, 4.0]))
    assert flow[0] == -flow[2]
    assert flow[1] == 0.0
    assert flow[2] == pytest.approx(0.01 * 4**0.65)
    assert isinstance(leak.airflow(4.0), float)


def test_shares_of_a_house_add_up():
    whole = Leak.from_blower_door(3.0, 500.0)
    parts = [Leak.from_blower_door(3.0, 500.0, share) for share in (0.2, 0.3, 0.5)]
    assert sum(part.airflow(4.0) for part in parts) == pytest.approx(whole.airflow(4.0))
    assert whole.changes_at_50(500.0) == pytest.approx(3.0)


@pytest.mark.parametrize("exponent", [0.5, 0.65, 1.0])
def test_leakage_area_round_trip(exponent):
    leak = Leak.from_area(0.03, 10.0, 0.611, exponent)
    assert leak.leakage_area(10.0, 0.611) == pytest.approx(0.03)
    # A wide hole has one area at every pressure; fine cracks seem to grow.
    grown = leak.leakage_area(50.0, 0.611) / leak.leakage_area(10.0, 0.611)
    assert grown == pytest.approx(5 ** (exponent - 0.5))


def test_half_the_hole_half_the_water():
    one, half = (airleak.brought(airleak.orifice_flow(1.0, area), ROOM, PLANE) for area in (6.45e-4, 3.225e-4))
    for what in ("carried", "excess", "stays"):
        assert getattr(half, what) == pytest.approx(getattr(one, what) / 2)


def test_half_the_humidity_leaves_far_less_than_half():
    moist, dry = (airleak.brought(5e-4, Air(21.11, rh), PLANE).excess for rh in (0.4, 0.2))
    assert dry / moist == pytest.approx((3.09 - 2.14) / (6.21 - 2.14), abs=0.005)


def test_dry_air_and_warm_planes_leave_nothing():
    assert airleak.brought(5e-4, Air(21.11, 0.1), PLANE).excess == 0.0
    assert airleak.brought(5e-4, ROOM, 20.0).excess == 0.0
    assert airleak.brought(5e-4, ROOM, 20.0).carried > 0.0


def test_water_is_left_from_the_dew_point_of_the_room_on():
    """By volume it would begin some degrees colder: cold air shrinks, and a cubic meter of it is more air."""
    for rh in (0.15, 0.4, 0.7):
        room = Air(21.11, rh)
        above, below = (airleak.brought(5e-4, room, room.dew_point + step).excess for step in (0.01, -0.01))
        assert above == 0.0 < below


@pytest.mark.parametrize("plane", [-30.0, -6.67, 5.0])
def test_the_books_of_the_air_close(plane):
    """What comes in with the dry air is what goes on with it, saturated, and what is left."""
    flow, whole = 5e-4, airleak.brought(5e-4, ROOM, plane)
    kelvin, pressure = ROOM.temperature + KELVIN, ROOM.vapor_pressure
    dry = flow * (air.STANDARD_PRESSURE - pressure) / (air.AIR_GAS_CONSTANT * kelvin)
    assert whole.carried == pytest.approx(flow * pressure / (air.VAPOR_GAS_CONSTANT * kelvin), rel=1e-4)
    goes_on = dry * air.humidity_ratio(air.saturation_vapor_pressure(plane))
    assert whole.carried == pytest.approx(goes_on + whole.excess)
    assert whole.stays == whole.excess


def test_only_the_seeping_part_stays():
    whole, part = airleak.brought(5e-4, ROOM, PLANE), airleak.brought(5e-4, ROOM, PLANE, 0.3)
    assert (part.carried, part.excess) == (whole.carried, whole.excess)
    assert part.stays == pytest.approx(0.3 * whole.excess)
    assert airleak.brought(5e-4, ROOM, PLANE, 0.0).stays == 0.0


def test_water_of_a_leak_over_its_area():
    leak = Leak.from_blower_door(3.0, 566.3, 0.2, area=55.74)
    brought = leak.moisture(4.0, ROOM, PLANE)
    by_hand = leak.airflow(4.0) / 55.74 * 1.188 * (6.211e-3 - 2.144e-3)
    assert brought.excess == pytest.approx(by_hand, rel=0.002)
    assert brought.stays == pytest.approx(airleak.LONG_SHARE * by_hand, rel=0.002)
    assert leak.moisture(-4.0, ROOM, PLANE).carried == 0.0
    many = leak.moisture(np.array([-1.0, 4.0]), ROOM, PLANE)
    assert many.stays == pytest.approx([0.0, brought.stays])


def test_a_leak_through_a_part_of_the_area_brings_more_to_it():
    spread, chase = (Leak.from_blower_door(3.0, 566.3, 0.2, area=55.74, area_share=each) for each in (1.0, 0.1))
    one, other = (each.moisture(4.0, ROOM, PLANE) for each in (spread, chase))
    assert other.stays == pytest.approx(10 * one.stays)


def test_air_beside_diffusion_at_the_lessons_start():
    """One square inch at 1 Pa and 32 ft2 of painted drywall: no one ratio, and not the same for what stays."""
    hole = airleak.brought(airleak.orifice_flow(1.0, to_si(1.0, "in2")), ROOM, PLANE, airleak.LONG_SHARE)
    through = (ROOM.vapor_pressure - air.saturation_vapor_pressure(PLANE)) * to_si(32.0, "ft2")
    perms = (5.96, 1.0, 0.2)
    past = [hole.excess / (to_si(perm, "perm") * through) for perm in perms]
    stay = [hole.stays / (to_si(perm, "perm") * through) for perm in perms]
    assert past == pytest.approx([3.64, 21.7, 108.5], rel=0.005)
    assert stay == pytest.approx([0.364, 2.17, 10.85], rel=0.005)
    assert to_si(5.96, "perm") * through * 150 * DAY == pytest.approx(8.6, abs=0.1)


def test_stack_pressure_by_hand_and_signs():
    pressure = airleak.stack_pressure(10.0, 20.0, -20.0)
    by_hand = 101325 / 287.042 * (1 / 253.15 - 1 / 293.15) * 9.80665 * 10
    assert pressure == pytest.approx(by_hand, rel=1e-9)
    assert airleak.stack_pressure(10.0, -20.0, 20.0) == -pressure
    assert airleak.stack_pressure(-10.0, 20.0, -20.0) == -pressure
    assert airleak.stack_pressure(10.0, 20.0, -20.0, 80000.0) < pressure
    assert airleak.outward_pressure(10.0, 20.0, -20.0, 2.0) == pytest.approx(pressure + 2.0)


def test_orifice_flow_is_the_square_root():
    flow = airleak.orifice_flow(np.array([-4.0, 1.0, 4.0]), 1e-3)
    assert flow == pytest.approx([-2 * flow[1], flow[1], 2 * flow[1]])


def test_film_permeance_is_seven_billionths_of_the_film():
    assert moving_air.film_permeance(5.0, 0.0) == pytest.approx(5 * 7e-9, rel=0.15)


# --- one layer with air through it ----------------------------------------

FACES = (20.0, 1168.476), (-5.0, 320.945)


def test_without_air_it_conducts_and_diffuses():
    still = airleak.layer_flow(0.0, 0.175, 1e-9, *FACES)
    assert still.heat == pytest.approx(0.175 * 25)
    assert still.vapor == pytest.approx(1e-9 * (1168.476 - 320.945))


def test_much_air_carries_all_from_where_it_comes():
    out, back = (airleak.layer_flow(flow, 0.175, 1e-9, *FACES) for flow in (0.5, -0.5))
    assert out.heat == pytest.approx(1006 * 0.5 * 20.0)
    assert out.vapor == pytest.approx(air.MASS_RATIO / 101325 * 0.5 * 1168.476)
    assert back.heat == pytest.approx(-1006 * 0.5 * -5.0)
    assert back.vapor == pytest.approx(-air.MASS_RATIO / 101325 * 0.5 * 320.945)


def test_turned_round_the_layer_gives_the_opposite():
    one = airleak.layer_flow(1e-4, 0.175, 1e-9, *FACES)
    other = airleak.layer_flow(-1e-4, 0.175, 1e-9, *FACES[::-1])
    assert other.heat == pytest.approx(-one.heat)
    assert other.vapor == pytest.approx(-one.vapor)


def test_the_closed_form_meets_a_solver_in_small_steps():
    """d/dx (-k dT/dx + c m T) = 0 in 2000 cells, upwind against nothing: central differences."""
    flow, conductance, cells = 2e-4, 0.175, 2000
    carried, each = 1006 * flow, conductance * cells
    matrix = np.zeros((cells - 1, cells - 1))
    at = np.arange(cells - 1)
    matrix[at, at] = 2 * each
    matrix[at[1:], at[:-1]] = -each - carried / 2
    matrix[at[:-1], at[1:]] = -each + carried / 2
    right = np.zeros(cells - 1)
    right[0], right[-1] = (each + carried / 2) * 20.0, (each - carried / 2) * -5.0
    inside = np.linalg.solve(matrix, right)
    flux = each * (20.0 - inside[0]) + carried * (20.0 + inside[0]) / 2
    assert airleak.layer_flow(flow, conductance, 1e-9, *FACES).heat == pytest.approx(flux, rel=1e-6)


def test_a_breath_of_air_changes_little_and_smoothly():
    flows = np.array([-1e-12, 0.0, 1e-12, 1e-10, 1e-8])
    heat = airleak.layer_flow(flows, 0.175, 1e-9, *FACES).heat
    assert heat == pytest.approx(0.175 * 25 + 1006 * flows * (20.0 - 12.5), rel=1e-9)


def test_gaps_let_through_by_their_area():
    film, wall = to_si(0.1, "perm"), to_si(5.96, "perm")
    shares = np.linspace(0.0, 0.2, 5)
    found = from_si(airleak.permeance_with_gaps(film, wall, shares), "perm")
    assert found[0] == pytest.approx(0.1 * 5.96 / 6.06)
    assert np.diff(found) == pytest.approx(np.diff(found)[0])
    assert airleak.permeance_with_gaps(0.0, wall, 1.0) == pytest.approx(wall)


def test_natural_airflow_by_the_rule_of_twenty():
    assert from_si(airleak.natural_airflow(3.0, to_si(20000.0, "ft3")), "cfm") == pytest.approx(50.0)


@pytest.mark.parametrize(
    ("ask", "sentence"),
    [
        (lambda: Leak(-1.0), "Leakage coefficient is −1 m³/s; it must be 0 to 100 m³/s."),
        (lambda: Leak(0.1, 0.4), "Leakage exponent is 0.4; it must be 0.5 to 1."),
        (lambda: Leak(0.1, 0.6, 0.0), "Area of the leaky assembly is 0 m²; it must be above 0"),
        (lambda: Leak.from_blower_door(80.0, 400.0), "Air changes at 50 Pa is 80 1/h; it must be 0 to 50 1/h."),
        (lambda: Leak.from_blower_door(3.0, 0.0), "Volume of the house is 0 m³; it must be above 0"),
        (lambda: Leak.from_blower_door(3.0, 400.0, 1.5), "Share of the leak is 150 %; it must be 0 to 100 %."),
        (lambda: Leak.from_blower_door(3.0, 400.0, 1.0, 2.0), "Leakage exponent is 2; it must be 0.5 to 1."),
        (lambda: Leak.from_area(20.0), "Leakage area is 20 m²; it must be 0 to 10 m²."),
        (lambda: Leak.from_area(0.02, 0.0), "Reference pressure is 0 Pa; it must be above 0 and at most 100 Pa."),
        (lambda: Leak.from_area(0.02, exponent=3.0), "Leakage exponent is 3; it must be 0.5 to 1."),
        (lambda: Leak(0.1).airflow(2000.0), "Pressure is 2000 Pa; it must be −1000 to 1000 Pa."),
        (lambda: Leak(0.1).leakage_area(0.0), "Reference pressure is 0 Pa"),
        (lambda: Leak(0.1).leakage_area(4.0, 2.0), "Discharge coefficient is 2; it must be above 0 and at most 1."),
        (lambda: Leak(0.1).changes_at_50(0.0), "Volume of the house is 0 m³"),
        (lambda: airleak.brought(-1.0, ROOM, PLANE), "Leaking air is −1 m³/s; it must be 0 to 1000 m³/s."),
        (lambda: airleak.brought(1.0, ROOM, PLANE, 1.2), "Long share of the leak is 120 %; it must be 0 to 100 %."),
        (lambda: airleak.brought(1.0, ROOM, -120.0), "Temperature is −120 °C; it must be −100 to 200 °C."),
        (lambda: airleak.stack_pressure(2000.0, 20.0, 0.0), "Height is 2000 m; it must be −1000 to 1000 m."),
        (lambda: airleak.stack_pressure(2.0, 300.0, 0.0), "Temperature is 300 °C; it must be −100 to 200 °C."),
        (lambda: airleak.stack_pressure(2.0, 20.0, 0.0, 0.0), "Air pressure is 0 Pa; it must be 10000 to 200000 Pa."),
        (lambda: airleak.outward_pressure(2.0, 20.0, 0.0, 500.0), "Suction is 500 Pa; it must be −100 to 100 Pa."),
        (lambda: airleak.orifice_flow(1.0, -1.0), "Area of the hole is −1 m²; it must be 0 to 100 m²."),
        (lambda: airleak.orifice_flow(1.0, 1.0, 0.0), "Discharge coefficient is 0; it must be above 0"),
        (lambda: airleak.orifice_flow(1.0, 1.0, 0.6, 0.0), "Air density is 0 kg/m³; it must be above 0"),
        (lambda: airleak.natural_airflow(3.0, 400.0, 5.0), "Divisor is 5; it must be 10 to 35."),
        (lambda: airleak.layer_flow(2.0, 0.1, 1e-9, *FACES), "Air through the layer is 2 kg/"),
        (lambda: airleak.layer_flow(0.0, 0.0, 1e-9, *FACES), "Thermal conductance is 0 W/"),
        (lambda: airleak.layer_flow(0.0, 0.1, 0.0, *FACES), "Vapor permeance is 0 kg/"),
        (lambda: airleak.layer_flow(0.0, 0.1, 1e-9, (20.0, -5.0), FACES[1]), "Vapor pressure is −5 Pa"),
        (lambda: airleak.permeance_with_gaps(-1.0, 1e-9, 0.1), "Permeance of the film is −1 kg/"),
        (lambda: airleak.permeance_with_gaps(1e-9, 0.0, 0.1), "Permeance in line with the film is 0 kg/"),
        (lambda: airleak.permeance_with_gaps(1e-9, 1e-9, 2.0), "Share of gaps is 200 %; it must be 0 to 100 %."),
        (lambda: moving_air.film_permeance(-1.0, 0.0), "Heat transfer coefficient is −1 W/"),
    ],
)
def test_out_of_range(ask, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        ask()
