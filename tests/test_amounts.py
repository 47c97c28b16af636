"""Water in the trade's words: against the definitions of the measures, by hand, and as it is read."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryward import units
from dryward.units import amounts

#: NIST Handbook 44, appendix C: a gallon is 231 cubic inches, and has 128 fluid ounces; how read stands in
#: evidence/data/units.csv.
OUNCE, GALLON = 29.5735295625e-6, 3.785411784e-3
#: 1000 ft2 with a foot of 0.3048 m.
ROOF = 92.90304
MEASURES = {"fl oz": OUNCE, "pint": GALLON / 8, "pints": GALLON / 8, "gallon": GALLON, "gallons": GALLON,
            "mL": 1e-6, "L": 1e-3}  # fmt: skip


def read(text):
    """Number and measure at the head of an amount."""
    number, measure = re.match(r"([\d.]+)\xa0(fl\xa0oz|\w+)", text).groups()
    return float(number), measure.replace("\xa0", " ")


@given(st.floats(5e-6, 10.0), st.sampled_from(["us", "si"]))
def test_an_amount_is_the_volume_it_was_made_of(volume, system):
    number, measure = read(amounts.water(volume, system))
    assert number * MEASURES[measure] == pytest.approx(volume, rel=0.051)


@given(st.floats(5e-6, 10.0), st.sampled_from(["us", "si"]))
def test_no_more_than_two_figures_and_few_digits_where_there_are_little(volume, system):
    text = amounts.water(volume, system)
    number = re.match(r"[\d.]+", text)[0]
    assert len(number.replace(".", "").strip("0")) <= 2
    if volume < (190e-3 if system == "us" else 1.0):  # fifty gallons, a cubic meter
        assert len(number) <= 4  # 0.17


@pytest.mark.parametrize(
    ("ounces", "text"),
    [(0.05, "less than 0.1 fl oz"), (0, "0 fl oz"), (1, "1 fl oz"), (31.9, "32 fl oz"), (33, "2.1 pints"),
     (127, "7.9 pints"), (128, "1 gallon"), (256, "2 gallons")],
)  # fmt: skip
def test_the_measure_fits_the_amount(ounces, text):
    assert amounts.water(ounces * OUNCE, "us").replace("\xa0", " ") == text


@given(st.floats(1e-10, 1e-4))
def test_a_flux_on_a_roof_and_through_a_winter(flux):
    kilograms = flux * 86400 * ROOF
    said = amounts.on_a_roof(flux, "us")
    if said.startswith("less"):
        assert kilograms < 0.1 * OUNCE * 1000
    else:
        number, measure = read(said)
        assert number * MEASURES[measure] * 1000 == pytest.approx(kilograms, rel=0.051)
    assert amounts.buckets(flux, "us") * 5 * GALLON * 1000 == pytest.approx(150 * kilograms)
    assert amounts.buckets(flux, "si") * 10 == pytest.approx(150 * flux * 86400 * 100)
    assert amounts.on_a_roof(-flux, "us") == amounts.on_a_roof(flux, "us")


def test_a_bucket_of_half_and_one():
    day = 1 / 86400
    one = 5 * GALLON * 1000 / ROOF / 150 * day
    assert amounts.a_winter(one, "us").startswith("1\xa0bucket of 5\xa0gallons on ")
    assert amounts.a_winter(0.4 * one, "us").startswith("2\xa0gallons on ")
    assert amounts.a_winter(0.1 * day, "si").startswith("150\xa0buckets of 10\xa0L on 100\xa0m² ")


def test_wood_takes_its_own_weight_of_water_at_a_hundred_points():
    assert amounts.wood_points(0.0111 * 650, 0.0111, 650) == pytest.approx(100)


@pytest.mark.parametrize(
    ("liters", "begins"),
    [(0.113, "10 minutes"), (1.1327, "1.7 hours"), (16.3, "24 hours"), (32.6, "2 days")],
)
def test_hours_of_a_fan(liters, begins):
    """By hand: 80 ft3 a minute, each of 28.316846592 L, with 5 g/m3: 11.3267 g a minute, 0.6796 kg an hour."""
    text = amounts.fan_hours(liters, 7.4e-3, 2.4e-3, "us").replace("\xa0", " ")
    assert text.startswith(f"{begins} of a bath fan at 80 cfm")


def test_both_fans_are_one_fan():
    assert amounts.FAN["us"] == pytest.approx(amounts.FAN["si"], rel=0.03)


@pytest.mark.parametrize("name", units.UNITS)
def test_no_number_is_parted_from_its_unit(name):
    kept = units.kept_together(f"so {units.with_unit('12', name)}, so")
    assert kept.split(" ") == ["so", f"{units.with_unit('12', name)},".replace(" ", "\xa0"), "so"]


def test_what_is_no_unit_is_left_alone():
    text = "Take 2 in the hand, 3 layers, 4 Pascals, 5 more; 6 dayshifts."
    assert units.kept_together(text) == text
