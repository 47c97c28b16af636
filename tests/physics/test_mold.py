"""The mold index: growth, decline, classes, steps, and the wrong forms in circulation."""

import time

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryward.checks import OutOfRange, UnknownName
from dryward.physics import mold
from dryward.units import DAY, HOUR

WEEK = 7 * 24
DAMP = np.full(12 * WEEK, 20.0), np.full(12 * WEEK, 0.95)


def test_nothing_grows_in_dry_cold_or_hot_air():
    for temperature, humidity in ((20.0, 0.75), (-5.0, 1.0), (0.0, 1.0), (55.0, 1.0)):
        found = mold.index(np.full(1000, temperature), np.full(1000, humidity))
        assert (found == 0.0).all()


def test_damp_air_grows_toward_its_highest_and_never_past_it():
    found = mold.index(*DAMP)
    assert (np.diff(found) >= 0).all()
    assert 4.0 < found[-1] <= mold.highest_index(20.0, 0.95)


def test_visible_mold_grows_at_the_speed_of_its_class():
    """Far from the highest index: twice as fast above 1 as below it."""
    found = mold.index(np.full(WEEK * 3, 22.0), np.full(WEEK * 3, 1.0))
    rate = np.diff(found)
    below, above = rate[found[1:] < 0.9].mean(), rate[(found[1:] > 1.1) & (found[1:] < 2.0)].mean()
    assert above / below == pytest.approx(2.0, rel=0.001)


@given(
    st.lists(st.tuples(st.floats(-30, 70), st.floats(0, 1)), min_size=1, max_size=40),
    st.sampled_from(sorted(mold.SENSITIVITIES)),
    st.floats(0, 6),
    st.sampled_from([600.0, HOUR, 3 * HOUR, DAY, 30 * DAY]),
)
def test_it_never_leaves_the_scale(weather, kind, start, step):
    temperature, humidity = np.array(weather).T
    found = mold.index(temperature, humidity, kind, step, start)
    assert found.shape == temperature.shape
    assert (found >= 0.0).all()
    assert (found <= max(start, 6.0)).all()
    assert np.isfinite(found).all()


def test_decline_in_its_three_parts():
    dry = mold.index(np.full(48, 20.0), np.full(48, 0.3), start=3.0)
    assert dry[5] == pytest.approx(3.0 - 0.032 * 6 / 24)
    assert (dry[5:24] == dry[5]).all()
    assert dry[-1] == pytest.approx(dry[23] - 0.016)


def test_a_short_damp_spell_starts_the_clock_again():
    humidity = np.r_[np.full(30, 0.3), 0.95, np.full(6, 0.3)]
    found = mold.index(np.full(37, 20.0), humidity, start=3.0)
    assert found[36] - found[30] == pytest.approx(-0.032 * 6 / 24)


def test_decline_stops_at_nothing():
    found = mold.index(np.full(5000, 20.0), np.full(5000, 0.3), start=0.5)
    assert found.min() == found[-1] == 0.0


def test_a_class_that_declines_slower():
    from dataclasses import replace

    slow = replace(mold.sensitivity("very sensitive"), decline=0.25)
    lost = 3.0 - mold.index(np.full(240, 20.0), np.full(240, 0.3), start=3.0)[-1]
    assert 3.0 - mold.index(np.full(240, 20.0), np.full(240, 0.3), slow, start=3.0)[-1] == pytest.approx(lost / 4)


@pytest.mark.parametrize("step", [600.0, 1800.0, 3 * HOUR, DAY])
def test_other_steps_of_steady_air_come_to_the_same(step):
    count = round(8 * WEEK * HOUR / step)
    found = mold.index(np.full(count, 20.0), np.full(count, 0.95), step=step)[-1]
    assert found == pytest.approx(mold.index(*(part[: 8 * WEEK] for part in DAMP))[-1], rel=0.003)
    dry = mold.index(np.full(count, 20.0), np.full(count, 0.3), step=step, start=6.0)[-1]
    assert dry == pytest.approx(mold.index(np.full(8 * WEEK, 20.0), np.full(8 * WEEK, 0.3), start=6.0)[-1], rel=1e-6)


def test_the_more_sensitive_the_sooner():
    ends = [mold.index(*DAMP, kind)[-1] for kind in list(mold.SENSITIVITIES)[:4]]
    assert ends == sorted(ends, reverse=True)


def test_wood_of_the_first_model_uses_its_own_two_times():
    pine, spruce = (mold.index(*DAMP, kind)[3 * WEEK] for kind in ("pine", "spruce"))
    assert pine > spruce
    # One week from 1 to beyond at 22 degC and 97 %: the times say 2.00, as the class of pine does.
    warm = np.full(2 * WEEK, 22.0), np.full(2 * WEEK, 0.97)
    assert mold.index(*warm, "pine")[-1] == pytest.approx(mold.index(*warm, "very sensitive")[-1], rel=1e-3)


def test_kiln_dried_wood_starts_later():
    ratio = mold.weeks_to_start(20.0, 0.9, kiln_dried=True) / mold.weeks_to_start(20.0, 0.9)
    assert ratio == pytest.approx(np.exp(-0.33))


def test_the_sheathing_of_one_year_takes_milliseconds():
    hours = np.arange(8760)
    temperature = 8 + 12 * np.sin(hours / 8760 * 2 * np.pi) + 4 * np.sin(hours / 24 * 2 * np.pi)
    humidity = np.clip(0.8 + 0.15 * np.cos(hours / 8760 * 2 * np.pi), 0, 1)
    best = min(_timed(temperature, humidity) for _ in range(3))
    assert best < 0.1  # about 0.005 s on one quiet core


def _timed(temperature, humidity):
    start = time.perf_counter()
    mold.index(temperature, humidity)
    return time.perf_counter() - start


# --- wrong forms in circulation -------------------------------------------


def test_the_sign_of_the_linear_term():
    """With +3.13 T the critical humidity at 20 degC would be 205 %; right, it joins 80 % there."""
    wrong = -0.00267 * 20**3 + 0.160 * 20**2 + 3.13 * 20 + 100
    assert wrong == pytest.approx(205.24)
    assert mold.critical_humidity(20.0) == pytest.approx(mold.critical_humidity(20.001), abs=0.001)
    assert (np.diff(mold.critical_humidity(np.linspace(0.0, 14.0, 50))) < 0).all()


def test_the_bracket_of_the_speed_factor():
    """2 / (t_v / (t_m - 1)) is in a published program; right is 2 / (t_v / t_m - 1)."""
    start, sight = 4.2019, 7.7336
    assert mold.speed_when_visible(20.0, 0.9) == pytest.approx(2 / (sight / start - 1), rel=1e-4)
    assert abs(mold.speed_when_visible(20.0, 0.9) - 2 / (sight / (start - 1))) > 1.0


def test_the_decline_is_not_ten_times_too_slow():
    lost = 3.0 - mold.index(np.full(1, 20.0), np.full(1, 0.3), start=3.0)[0]
    assert lost == pytest.approx(0.001333, rel=1e-3)
    assert lost > 5 * 0.000133


# --- what is refused ------------------------------------------------------


@pytest.mark.parametrize(
    ("ask", "sentence"),
    [
        (
            lambda: mold.index([20.0, 20.0], [0.9]),
            "The mold index needs series of one length; they have 2 and 1 values.",
        ),
        (lambda: mold.index([200.0], [0.9]), "Surface temperature is 200 °C; it must be −60 to 95 °C."),
        (lambda: mold.index([20.0], [90.0]), "Relative humidity is 9000 %; it must be 0 to 100 %."),
        (lambda: mold.index([20.0], [0.9], step=1.0), "Time step is 1 s; it must be 60 to"),
        (lambda: mold.index([20.0], [0.9], start=9.0), "Mold index at the start is 9; it must be 0 to 6."),
        (lambda: mold.critical_humidity(99.0), "Surface temperature is 99 °C; it must be −60 to 95 °C."),
        (lambda: mold.critical_humidity(9.0, 2.0), "Lowest humidity of the class is 200 %; it must be 0 to 100 %."),
        (lambda: mold.weeks_to_start(0.0, 0.9), "Surface temperature is 0 °C; it must be above 0 and at most 50 °C."),
        (lambda: mold.weeks_to_sight(20.0, 0.0), "Relative humidity is 0 %; it must be above 0 and at most 100 %."),
        (lambda: mold.weeks_to_start(20.0, 0.9, "oak"), 'The wood is "pine" or "spruce", not "oak".'),
        (lambda: mold.speed_when_visible(20.0, 0.9, "oak"), 'The wood is "pine" or "spruce", not "oak".'),
        (lambda: mold.highest_index(20.0, 2.0), "Relative humidity is 200 %; it must be 0 to 100 %."),
        (lambda: _class(speed=11.0), "Growth speed is 11; it must be 0 to 10."),
        (lambda: _class(visible_speed=-1.0), "Growth speed when visible is −1; it must be 0 to 10."),
        (lambda: _class(a=99.0), "Term of the highest index is 99; it must be −10 to 10."),
        (lambda: _class(lowest_humidity=0.1), "Lowest humidity of the class is 10 %; it must be 50 to 100 %."),
        (lambda: _class(decline=2.0), "Share of the decline is 2; it must be 0 to 1."),
    ],
)
def test_out_of_range(ask, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        ask()


def _class(**changes):
    from dataclasses import replace

    return replace(mold.sensitivity("resistant"), **changes)


def test_unknown_class():
    with pytest.raises(UnknownName, match='There is no sensitivity class "sensitiv"; did you mean sensitive'):
        mold.index([20.0], [0.9], "sensitiv")
