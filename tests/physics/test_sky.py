"""The sky, a roof surface under it, and a night of frost."""

import time

import numpy as np
import pytest

from dryward import air
from dryward.checks import NotConverged, OutOfRange
from dryward.physics import sky
from dryward.physics.sky import dry_underside, night
from dryward.weather import Air

COLD = (20.0 - 32.0) / 1.8  # 20 degF
DAMP = Air(COLD, 0.9)


def test_a_clear_sky_is_colder_than_the_air_and_clouds_warm_it():
    cover = np.linspace(0.0, 1.0, 11)
    found = sky.temperature(0.0, -3.0, cover)
    assert found[0] < -15.0
    assert (np.diff(found) > 0).all()
    assert found[-1] < 0.0


def test_damp_air_makes_a_warm_sky():
    for model in ("clark-allen", "berdahl-martin"):
        assert (np.diff(sky.temperature(20.0, np.array([-10.0, 0.0, 10.0, 18.0]), model=model)) > 0).all()


def test_hour_and_pressure_terms():
    plain = sky.clear_emissivity(5.0, "berdahl-martin")
    assert sky.clear_emissivity(5.0, "berdahl-martin", hour=0.0) - plain == pytest.approx(0.013)
    assert sky.clear_emissivity(5.0, "berdahl-martin", hour=12.0) - plain == pytest.approx(-0.013)
    assert sky.clear_emissivity(5.0, "berdahl-martin", pressure=9e4) - plain == pytest.approx(-0.012)
    assert sky.temperature(10.0, 5.0, model="berdahl-martin", hour=0.0) > sky.temperature(
        10.0, 5.0, model="berdahl-martin"
    )


def test_two_wrong_forms_in_circulation_are_not_ours():
    """Berdahl and Martin with cloud squared for the dew point, or with Tdp[K]/273 - 1."""
    ours = sky.clear_emissivity(10.0, "berdahl-martin")
    cloud_squared = 0.711 + 0.56 * 0.1 + 0.73 * 0.5**2
    kelvin_ratio = 0.711 + 0.56 * (283.15 / 273 - 1) + 0.73 * (283.15 / 273 - 1) ** 2
    assert ours == pytest.approx(0.7743)
    assert abs(ours - cloud_squared) > 0.1
    assert abs(ours - kelvin_ratio) > 0.03


def test_radiation_and_temperature_are_each_others_inverse():
    found = sky.temperature(np.array([-20.0, 0.0, 25.0]), -25.0)
    assert sky.from_long_wave(sky.long_wave(found)) == pytest.approx(found)


def test_a_slope_sees_part_of_the_sky():
    assert sky.view(0.0) == 1.0
    assert sky.view(90.0) == pytest.approx(0.5)
    flat, steep = (sky.roof_surface(0.0, -20.0, slope=slope) for slope in (0.0, 60.0))
    assert flat < steep < 0.0


def test_the_balance_holds():
    rng = np.random.default_rng(3)
    outdoor, cold = rng.uniform(-40, 40, 200), rng.uniform(-80, 20, 200)
    film, u, gain = rng.uniform(0.5, 30, 200), rng.uniform(0, 2, 200), rng.uniform(-50, 900, 200)
    surface = sky.roof_surface(outdoor, cold, film, u, 20.0, 0.85, gain=gain)
    radiated = 0.85 * sky.STEFAN_BOLTZMANN * ((surface + 273.15) ** 4 - (cold + 273.15) ** 4)
    assert radiated + film * (surface - outdoor) == pytest.approx(u * (20.0 - surface) + gain, abs=1e-6)


def test_limits_of_the_roof_surface():
    assert sky.roof_surface(5.0, -30.0, emissivity=0.0) == pytest.approx(5.0)  # bright metal: no sky
    assert sky.roof_surface(5.0, 5.0) == pytest.approx(5.0)
    assert sky.roof_surface(5.0, -15.0, coefficient=0.0) == pytest.approx(-15.0)  # no air: the sky itself
    calm, breeze, wind = (5.0 - sky.roof_surface(5.0, -15.0, h) for h in (3.0, 8.0, 20.0))
    assert calm > breeze > wind > 0


def test_a_bare_covering_gets_colder_than_one_over_a_house():
    assert sky.roof_surface(0.0, -20.0, u_value=0.0) < sky.roof_surface(0.0, -20.0, u_value=0.3)


def test_frost_margin_shrinks_with_humidity():
    margin = sky.frost_margin(Air(COLD, np.array([0.7, 0.8, 0.9, 0.95])))
    assert (np.diff(margin) < 0).all()
    assert air.vapor_pressure(COLD, 0.9) == pytest.approx(air.saturation_vapor_pressure(COLD - margin[2]))


# --- a night --------------------------------------------------------------


def test_a_clear_calm_night_frosts_from_outdoor_air_alone():
    found = sky.night(DAMP, 20.0)
    assert (np.diff(found.frost) > 0).all()
    assert found.hour[-1] == 12.0
    assert (found.underside_temperature < found.frost_point).all()
    assert 0.01 < found.frost[-1] < 0.2  # kg/m2: what a cold night can bring


def test_each_step_balances_with_the_heat_of_the_frost():
    found = sky.night(DAMP, 20.0, resistance=0.3)
    rate = found.frost[0] / 900.0
    top, face = found.roof_temperature[0], found.underside_temperature[0]
    through = (face - top) / 0.3
    radiated = 0.9 * sky.STEFAN_BOLTZMANN * ((top + 273.15) ** 4 - (COLD - 20.0 + 273.15) ** 4)
    assert radiated + 8.0 * 0.6 * (top - COLD) == pytest.approx(through, abs=1e-4)
    gained = 8.0 * 0.4 * (COLD - face) + 0.126 * (21.1 - face) + rate * sky.SUBLIMATION_HEAT
    assert gained == pytest.approx(through, abs=1e-4)


def test_without_vapor_to_give_it_is_the_roof_surface():
    dry = sky.night(Air(COLD, 0.2), 20.0)
    expected = sky.roof_surface(COLD, COLD - 20.0, 8.0, 0.126, 21.1)
    assert dry.roof_temperature == pytest.approx(np.full(48, expected))
    assert (dry.frost == 0.0).all()
    assert COLD - expected == pytest.approx(9.9 / 1.8, abs=0.05)


@pytest.mark.parametrize(
    ("less", "change"),
    [
        ("clouds", {"sky_cooling": 5.0}),
        ("wind", {"coefficient": 30.0}),
        ("bright metal", {"emissivity": 0.2}),
        ("a layer under it", {"resistance": 0.5}),
    ],
)
def test_what_makes_less_frost(less, change):
    given = {"sky_cooling": 20.0} | change
    assert sky.night(Air(COLD, 0.85), **given).frost[-1] < sky.night(Air(COLD, 0.85), 20.0).frost[-1], less


def test_damper_air_more_frost():
    frost = [sky.night(Air(COLD, rh), 20.0).frost[-1] for rh in (0.6, 0.7, 0.8, 0.9, 1.0)]
    assert frost == sorted(frost)
    assert frost[-1] > frost[0]


def test_clouds_at_midnight_stop_it_and_frost_goes_again():
    clearing = np.r_[np.full(24, 20.0), np.full(24, 2.0)]
    found = sky.night(Air(COLD, 0.7), clearing)
    assert found.frost[23] == found.frost.max()
    assert 0.0 <= found.frost[-1] < found.frost[23]


def test_frost_never_falls_below_none():
    warm = np.r_[np.full(4, COLD), np.full(44, 15.0)]
    found = sky.night(Air(warm, 0.3), np.r_[np.full(4, 60.0), np.full(44, 0.0)], coefficient=2.0)
    assert found.frost.min() == 0.0
    assert found.frost[-1] == 0.0


def test_finer_steps_change_nothing_in_steady_weather():
    coarse, fine = (sky.night(DAMP, 20.0, steps_per_hour=n).frost[-1] for n in (1, 12))
    assert coarse == pytest.approx(fine, rel=1e-6)


@pytest.mark.parametrize(
    ("ask", "sentence"),
    [
        (lambda: sky.clear_emissivity(60.0), "Dew point is 60 °C; it must be −80 to 40 °C."),
        (lambda: sky.clear_emissivity(0.0, "old"), 'The sky model is "clark-allen" or "berdahl-martin", not "old".'),
        (lambda: sky.clear_emissivity(0.0, hour=3.0), 'The sky model "clark-allen" takes no hour and no pressure.'),
        (lambda: sky.clear_emissivity(0.0, "berdahl-martin", 30.0), "Hour is 30 h; it must be 0 to 24 h."),
        (lambda: sky.clear_emissivity(0.0, "berdahl-martin", pressure=1.0), "Air pressure is 1 Pa; it must be 40000"),
        (lambda: sky.cloud_factor(8), "Cloud cover is 800 %; it must be 0 to 100 %."),
        (lambda: sky.temperature(90.0, 0.0), "Air temperature is 90 °C; it must be −80 to 60 °C."),
        (lambda: sky.by_air_temperature(90.0), "Air temperature is 90 °C; it must be −80 to 60 °C."),
        (lambda: sky.from_long_wave(5.0), "Long-wave radiation of the sky is 5 W/m²; it must be 20 to 700 W/m²."),
        (lambda: sky.long_wave(-200.0), "Sky temperature is −200 °C; it must be −150 to 60 °C."),
        (lambda: sky.view(100.0), "Slope is 100 degrees; it must be 0 to 90 degrees."),
        (lambda: sky.roof_surface(99.0, 0.0), "Air temperature is 99 °C; it must be −100 to 60 °C."),
        (lambda: sky.roof_surface(0.0, 99.0), "Sky temperature is 99 °C; it must be −150 to 60 °C."),
        (lambda: sky.roof_surface(0.0, 0.0, -1.0), "Heat transfer coefficient is −1 W/"),
        (lambda: sky.roof_surface(0.0, 0.0, 1.0, 20.0), "U-value is 20 W/"),
        (lambda: sky.roof_surface(0.0, 0.0, 1.0, 1.0, 99.0), "Indoor temperature is 99 °C; it must be −60 to 60 °C."),
        (lambda: sky.roof_surface(0.0, 0.0, emissivity=2.0), "Emissivity is 2; it must be 0 to 1."),
        (lambda: sky.roof_surface(0.0, 0.0, gain=5000.0), "Heat gain is 5000 W/m²; it must be −2000 to 2000 W/m²."),
        (lambda: sky.roof_surface(0.0, 0.0, 0.0, emissivity=0.0), "A roof surface without emissivity, heat transfer"),
        (lambda: sky.night(DAMP, 80.0), "Sky cooling is 80 K; it must be 0 to 60 K."),
        (lambda: sky.night(DAMP, 20.0, 0.1), "Heat transfer coefficient is 0.1 W/"),
        (lambda: sky.night(DAMP, 20.0, emissivity=-1.0), "Emissivity is −1; it must be 0 to 1."),
        (lambda: sky.night(DAMP, 20.0, resistance=9.0), "Resistance under the covering is 9 m² K/W"),
        (lambda: sky.night(DAMP, 20.0, u_value=99.0), "U-value is 99 W/"),
        (lambda: sky.night(DAMP, 20.0, indoor_temperature=99.0), "Indoor temperature is 99 °C"),
        (lambda: sky.night(DAMP, 20.0, under_share=1.0), "Share of the lower face is 1; it must be 0.05 to 0.95."),
        (lambda: sky.night(DAMP, 20.0, hours=0), "Length of the night is 0 h; it must be 1 to 24 h."),
        (lambda: sky.night(DAMP, 20.0, hours=2.5), "Length of the night is 2.5; it must be a whole number."),
        (lambda: sky.night(DAMP, 20.0, steps_per_hour=0), "Steps in each hour is 0; it must be 1 to 60."),
        (lambda: sky.night(DAMP, np.zeros(5)), "Sky cooling has 5 values; the night has 48 steps."),
    ],
)
def test_out_of_range(ask, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        ask()


def test_no_balance_is_said(monkeypatch):
    monkeypatch.setattr(sky, "_STEPS", 1)
    with pytest.raises(NotConverged, match="The temperature of the roof surface was not found"):
        sky.roof_surface(0.0, -30.0)


def test_no_frost_rate_is_said(monkeypatch):
    monkeypatch.setattr(sky, "_ROUNDS", 0)
    with pytest.raises(NotConverged, match="The frost of a night was not found"):
        sky.night(DAMP, 20.0)


def test_a_night_is_quick_enough_for_a_slider():
    def once():
        start = time.perf_counter()
        sky.night(DAMP, 20.0)
        return time.perf_counter() - start

    assert min(once() for _ in range(5)) < 0.02  # about 0.002 s on one quiet core


@pytest.mark.parametrize("layer", [0.0, 0.2, 0.7])
@pytest.mark.parametrize("wind", [3.0, 8.0, 25.0])
def test_a_dry_night_ends_there(layer, wind):
    found = night(Air(-6.7, 0.05), 20.0, wind, resistance=layer)
    assert found.frost[-1] == 0.0
    assert dry_underside(-6.7, 20.0, wind, resistance=layer) == pytest.approx(found.underside_temperature[-1], abs=1e-9)


def test_a_bare_covering_is_the_roof_surface():
    top = sky.roof_surface(-6.7, -26.7, 8.0, u_value=0.126, indoor_temperature=21.1)
    assert dry_underside(-6.7, 20.0) == pytest.approx(top, abs=1e-9)


def test_arrays_are_the_same_numbers():
    cooling, layers = np.array([0.0, 10.0, 25.0]), np.array([0.0, 0.3, 0.7])
    for given, values in (("sky_cooling", cooling), ("resistance", layers)):
        keys = {"sky_cooling": 20.0, "resistance": 0.1}
        together = dry_underside(-6.7, **{**keys, given: values})
        alone = [float(dry_underside(-6.7, **{**keys, given: float(value)})) for value in values]
        assert together == pytest.approx(alone, abs=1e-9)


def test_frost_begins_where_it_is_below_the_frost_point():
    under = dry_underside(-6.7, 10.0)
    for humidity in np.linspace(0.6, 1.0, 9):
        outdoor = Air(-6.7, float(humidity))
        frosts = night(outdoor, 10.0, hours=1).frost[-1] > 0
        assert frosts == (under < outdoor.dew_point)


@pytest.mark.parametrize(
    ("given", "sentence"),
    [
        ({"sky_cooling": 70.0}, r"Sky cooling is 70 K; it must be 0 to 60 K\."),
        ({"coefficient": 0.1}, r"Heat transfer coefficient is 0\.1 W/\(m² K\); it must be 0\.5 to 200 W/\(m² K\)\."),
        ({"under_share": 1.0}, r"Share of the lower face is 1; it must be 0\.05 to 0\.95\."),
        ({"resistance": 9.0}, r"Resistance under the covering is 9 m² K/W; it must be 0 to 5 m² K/W\."),
        ({"u_value": 20.0}, r"U-value is 20 W/\(m² K\); it must be 0 to 10 W/\(m² K\)\."),
        ({"indoor_temperature": 90.0}, r"Indoor temperature is 90 °C; it must be −60 to 60 °C\."),
        ({"emissivity": 2.0}, r"Emissivity is 2; it must be 0 to 1\."),
    ],
)
def test_out_of_range_is_one_sentence(given, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        dry_underside(-6.7, **{"sky_cooling": 20.0, **given})
