"""What few numbers of a row stand for: the curve of wood, liquid conductivity by a soaking test, two cup values."""

import numpy as np
import pytest

from dryward import air, building, units
from dryward.building import FixedMembrane, VariableMembrane
from dryward.building.library import (
    cup_curve,
    cup_membrane,
    humidity_of_wood,
    liquid_conductivity,
    lowest_diffusivity,
    wood_moisture,
    wood_points,
)
from dryward.checks import OutOfRange
from dryward.units import to_si


def test_the_wood_curve_rises_and_falls_with_warmth():
    rh = np.linspace(0, 1, 101)
    assert np.all(np.diff(wood_moisture(rh)) > 0)
    assert wood_moisture(0.8, 40.0) < wood_moisture(0.8, 0.0)
    assert wood_moisture(0.0) == 0.0
    assert 0.25 < wood_moisture(1.0) < 0.35, "fiber saturation"


@pytest.mark.parametrize("rh", [0.05, 0.3, 0.65, 0.9, 0.93])
def test_the_inverse_comes_back(rh):
    assert humidity_of_wood(float(wood_moisture(rh, 10.0)), 10.0) == pytest.approx(rh, abs=1e-9)


def test_points_end_at_free_saturation():
    points = wood_points(500.0, 600.0, 0.85)
    assert points[-1] == (1.0, 600.0)
    assert dict(points)[0.5] == pytest.approx(0.85 * 500 * float(wood_moisture(0.5)), abs=1e-3)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: wood_moisture(1.4), "Relative humidity is 140 %; it must be 0 to 100 %"),
        (lambda: wood_moisture(0.5, 200.0), "Wood temperature is 200 °C"),
        (lambda: humidity_of_wood(0.4), "Moisture content of wood is 40 %; it must be 0 to 25 %"),
        (lambda: wood_points(0.0, 600.0), "Density is 0 kg/m³"),
        (lambda: wood_points(500.0, 100.0), "Free saturation is 100 kg/m³; it must be above"),
        (lambda: wood_points(500.0, 600.0, 2.0), "Share of the wood curve is 2"),
        (lambda: lowest_diffusivity(-1.0, 200.0), "Water absorption coefficient is −1"),
        (lambda: lowest_diffusivity(0.1, 0.0), "Free saturation is 0 kg/m³"),
        (lambda: lowest_diffusivity(0.1, 200.0, 190.0), "Water content where liquid begins to move is 190"),
    ],
)
def test_bad_values_get_a_sentence(call, words):
    with pytest.raises(OutOfRange, match=words):
        call()


def soaked(absorption, held, hours=0.5, cells=40, depth=0.04):
    """Water taken up [kg/m2] by a slab with a wet face, from K and the sorption curve alone.

    Explicit finite volumes on w, with D = K ds/dw taken from the points that
    the library makes; nothing of the formula behind K is used.
    """
    points = liquid_conductivity(absorption, held)
    full = held[-1][1]
    w_at, k_at = np.array(points).T
    rh_at, hold_at = np.array(((0.0, 0.0), *held)).T
    pull = units.WATER_DENSITY * air.VAPOR_GAS_CONSTANT * (20.0 + units.KELVIN)

    def diffusivity(w):
        humidity = np.interp(w, hold_at, rh_at)
        piece = np.clip(np.searchsorted(hold_at, w, side="left"), 1, len(hold_at) - 1)
        slope = (hold_at[piece] - hold_at[piece - 1]) / (rh_at[piece] - rh_at[piece - 1])
        return np.interp(w, w_at, k_at) * pull / np.maximum(humidity, 1e-6) / slope

    dx = depth / cells
    w = np.zeros(cells)
    step = 0.4 * dx**2 / diffusivity(np.array([full]))[0]
    for _ in range(int(hours * 3600 / step)):
        faces = np.concatenate(([full], w))
        mean = 0.5 * (diffusivity(faces[:-1]) + diffusivity(faces[1:]))
        gaps = np.concatenate(([dx / 2], np.full(cells - 1, dx)))
        flux = mean * (faces[:-1] - faces[1:]) / gaps
        w = w + step / dx * (flux - np.append(flux[1:], 0.0))
    return w.sum() * dx


def test_a_soaking_test_gives_back_the_absorption_coefficient():
    held = ((0.5, 4.0), (0.8, 8.0), (0.95, 18.0), (1.0, 200.0))
    taken = soaked(0.1, held)
    assert taken / 1800**0.5 == pytest.approx(0.1, rel=0.06)
    assert soaked(0.05, held) / taken == pytest.approx(0.5, rel=0.05), "half the coefficient, half the water"


@pytest.mark.parametrize("name", ["spruce", "osb", "gypsum-board", "brick", "concrete"])
def test_liquid_does_not_count_twice_what_the_cups_have_measured(name):
    thing = building.material(name)
    w, k = np.array(thing.liquid_conductivity).T
    assert np.interp(thing.water_content(0.95), w, k) == 0.0
    assert np.interp(thing.water_content(0.999), w, k) > 0.0
    assert np.all(np.diff(k) >= 0)


def test_library_wood_takes_up_little_water_across_the_grain():
    points = building.material("spruce").liquid_conductivity
    assert points[0] == (0.0, 0.0)
    assert all(later[1] >= 0 for later in points)


def test_the_curve_passes_through_both_values():
    points = cup_curve(1e-12, 1e-11)
    assert points[0] == (0.25, 1e-12)
    assert points[-1] == (0.75, 1e-11)
    assert points[2] == pytest.approx((0.5, 10**-11.5)), "straight on a log scale"


def test_one_value_twice_is_no_curve():
    assert cup_curve(2e-12, 2e-12) == 2e-12
    assert isinstance(cup_membrane(2e-12, 2e-12), FixedMembrane)


def test_a_membrane_reads_its_two_cups():
    film = cup_membrane(to_si(1.0, "perm"), to_si(5.6, "perm"))
    assert isinstance(film, VariableMembrane)
    assert film.permeance(0.0, 0.5) == pytest.approx(to_si(1.0, "perm")), "the dry cup"
    assert film.permeance(0.5, 1.0) == pytest.approx(to_si(5.6, "perm")), "the wet cup"
    assert film.permeance(0.0, 0.0) == pytest.approx(to_si(1.0, "perm")), "level below what was measured"
    assert film.permeance(1.0, 1.0) == pytest.approx(to_si(5.6, "perm"))


@pytest.mark.parametrize(
    ("dry", "wet", "words"),
    [
        (0.0, 1e-12, r"Dry-cup value is 0 kg/\(s m Pa\); it must be above 0"),
        (1e-12, -1.0, r"Wet-cup value is −1 kg/\(s m Pa\)"),
        (2e-12, 1e-12, r"The wet-cup value 1e-12 kg/\(s m Pa\) is below the dry-cup value 2e-12"),
    ],
)
def test_bad_cup_values_get_a_sentence(dry, wet, words):
    with pytest.raises(OutOfRange, match=words):
        cup_curve(dry, wet)
