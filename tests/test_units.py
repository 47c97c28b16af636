"""Units: there and back, typed numbers, numbers for people, and what is refused.

Published factors are in tests/published.
"""

import csv
import math
import pickle
import re
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from dryward import units
from dryward.checks import NotUnderstood, OutOfRange, UnknownName


@pytest.mark.parametrize("name", units.UNITS)
@settings(max_examples=20)
@given(st.floats(1e-3, 1e3))
def test_there_and_back(name, value):
    assert units.from_si(units.to_si(value, name), name) == pytest.approx(value, rel=1e-12, abs=1e-9)


@pytest.mark.parametrize("system", units.SHOWN)
def test_every_quantity_is_shown_in_a_unit_of_its_own(system):
    for quantity, name in units.SHOWN[system].items():
        assert units.UNITS[name].quantity == quantity
    assert units.SHOWN["us"].keys() == units.SHOWN["si"].keys()


def test_symbols_tell_units_apart():
    for quantity in units.SHOWN["us"]:
        symbols = [unit.symbol for unit in units.UNITS.values() if unit.quantity == quantity]
        assert len(set(symbols)) == len(symbols), quantity


@pytest.mark.parametrize(
    ("typed", "quantity", "si"),
    [
        ("3/4 in", "length", 0.01905),
        ('1-1/2"', "length", 0.0381),
        ("1 1/2 in", "length", 0.0381),
        ("38 mm", "length", 0.038),
        ("0,5 mm", "length", 0.0005),
        ("R-20", "thermal resistance", 3.5222),
        ("R 13", "thermal resistance", 2.28943),
        ("0.7 perm", "permeance", 0.7 * 57.2135e-12),
        ("sd 2.5 m", "permeance", 8e-11),
        ("R-3.7 per in", "conductivity", 0.03898),
        ("0.04 W/(m K)", "conductivity", 0.04),
    ],
)
def test_what_stands_on_a_drawing_is_understood(typed, quantity, si):
    assert units.quantity(typed, quantity) == pytest.approx(si, rel=2e-5)


def test_a_bare_number_needs_a_unit_or_a_default():
    assert units.quantity("16", "length", "in") == pytest.approx(0.4064)
    with pytest.raises(NotUnderstood, match='The length "16" has no unit; write it like '):
        units.quantity("16", "length")


@pytest.mark.parametrize(
    ("typed", "quantity", "sentence"),
    [
        ("thick", "length", 'The length "thick" is not understood; write it like '),
        ("3/0 in", "length", 'The length "3/0 in" is not understood; write it like '),
        ("5 stone", "length", 'The length "5 stone" is not understood; write it like '),
        ("sd 0 m", "permeance", 'The permeance "sd 0 m" is not understood; write it like '),
        ("9" * 80 + " in", "length", 'The length "9{37}\\.\\.\\." is not understood'),
        ("", "permeance", 'The permeance "" is not understood; write it like '),
    ],
)
def test_what_cannot_be_read_is_one_sentence(typed, quantity, sentence):
    with pytest.raises(NotUnderstood, match=sentence):
        units.quantity(typed, quantity)


@pytest.mark.parametrize("typed", ["1e400 in", "9" * 50 + "e300 in", "-1e999 ft"])
def test_a_number_beyond_all_numbers(typed):
    with pytest.raises(OutOfRange, match=r"^The length .* is too large a number to work with\.$"):
        units.quantity(typed, "length")


def test_unknown_names():
    with pytest.raises(UnknownName, match='There is no unit "perms"; did you mean perm'):
        units.to_si(1.0, "perms")
    with pytest.raises(UnknownName, match='There is no unit "furlong"'):
        units.from_si(1.0, "furlong")
    with pytest.raises(UnknownName, match='There is no unit system "metric"'):
        units.shown_unit("length", "metric")
    with pytest.raises(UnknownName, match='There is no quantity "lenght"; did you mean length'):
        units.shown_unit("lenght", "us")
    with pytest.raises(UnknownName, match='There is no quantity "color"'):
        units.quantity("1 red", "color")


def formats():
    """Each quantity in each unit system, and how numbers of several sizes in its unit are written."""
    with (Path(__file__).parent / "data" / "shown.csv").open(encoding="utf-8", newline="") as table:
        head, *rows = csv.reader(table)
    sizes = [float(each) for each in head[2:]]
    return [
        pytest.param(quantity, system, sizes, cells, id=f"{quantity}-{system}") for quantity, system, *cells in rows
    ]


def test_the_table_of_formats_has_every_quantity():
    assert {each.values[:2] for each in formats()} == {
        (quantity, system) for system, quantities in units.SHOWN.items() for quantity in quantities
    }


@pytest.mark.parametrize(("quantity", "system", "sizes", "cells"), formats())
def test_numbers_are_written_as_the_table_has_them(quantity, system, sizes, cells):
    unit = units.shown_unit(quantity, system).name
    assert [units.show(units.to_si(size, unit), quantity, system) for size in sizes] == cells


@pytest.mark.parametrize(
    ("value", "options", "text"),
    [
        (2860.7, {}, "2861"),
        (2860.7, {"rounded": True}, "2860"),
        (9.996, {}, "10"),
        (99.96, {"figures": 2}, "100"),
        (413.0, {"figures": 2, "rounded": True}, "410"),
        (0.0012345, {}, "0.00123"),
        (0.0012345, {"most": 2}, "0.0012"),
        (0.125, {"most": 2}, "0.12"),
        (-0.04, {"digits": 1}, "0.0"),
        (-0.0, {}, "0"),
        (-12.34, {}, "−12.3"),
        (1.5e6, {}, "1500000"),
        (3e-13, {}, "3e-13"),
        (math.inf, {}, "inf"),
        (math.inf, {"digits": 1}, "inf"),
        (math.nan, {}, "nan"),
    ],
)
def test_bare_numbers(value, options, text):
    assert units.number(value, **options) == text


@pytest.mark.parametrize(
    ("inches", "text"),
    [
        (7 / 16, "7/16 in."),
        (1.5, "1-1/2 in."),
        (12, "12 in."),
        (0.79, "0.79 in."),
        (0.006, "0.006 in."),
        (0.068, "0.068 in."),
        (0.066, "1/16 in."),
    ],
)
def test_thickness_in_sixteenths_of_an_inch(inches, text):
    assert units.thickness(inches * units.INCH, "us") == text


def test_thickness_in_si_and_other_words_of_the_trade():
    assert (units.thickness(0.0381, "si"), units.thickness(0.00015, "si")) == ("38 mm", "0.15 mm")
    assert (units.r_value(3.5222, "us"), units.r_value(3.5222, "us", 0), units.r_value(3.5222, "si")) == (
        "R-20.0", "R-20", "RSI 3.52"
    )  # fmt: skip
    assert units.opening(0.022) == "10.4 in² per foot (220 cm² per meter)"
    assert units.opening(0.0022, "us") == "1.04 in² per foot"
    assert units.liquid(0.05, 56.0) == "5.9 pints (2.8 L) from 603 ft² (56 m²)"
    assert units.show_in(9.0, "lb/ft2", 1) == "1.8 lb/ft²"


def test_the_factor_of_a_temperature_difference_has_no_offset():
    assert units.to_si(18.0, "degF difference") == pytest.approx(10.0)
    assert units.to_si(0.0, "degF difference") == 0.0


def test_gravity_and_psi_belong_together():
    assert math.isclose(units.to_si(1.0, "psi"), units.POUND * units.GRAVITY / units.INCH**2)


def test_lists_are_taken_and_what_lets_nothing_through_has_no_end_of_resistance():
    assert units.to_si([32.0, 212.0], "degF") == pytest.approx([0.0, 100.0])
    assert units.from_si((0.0, 100.0), "degF") == pytest.approx([32.0, 212.0])
    assert units.from_si(0.0, "sd m") == math.inf
    assert units.to_si(0.0, "sd m") == math.inf
    assert units.to_si(math.inf, "sd m") == 0.0
    assert units.from_si([0.0, 2e-10], "sd m") == pytest.approx([math.inf, 1.0])
    for bad in ("wet", None, object(), ["1", "x"]):
        with pytest.raises(OutOfRange, match=r"^The permeance must be a number, not .+\.$"):
            units.to_si(bad, "perm")
        with pytest.raises(OutOfRange, match=r"^The permeance must be a number, not .+\.$"):
            units.from_si(bad, "sd m")


@pytest.mark.parametrize("rise", [0.5, 1, 2, 3, 4, 4.5, 6, 9, 12, 24])
def test_a_slope_is_said_back_as_the_trade_writes_it(rise):
    angle = units.quantity(f"{rise:g}/12", "slope")
    assert units.slope(angle) == units.slope(angle, "us") == f"{rise:g}/12"
    assert units.slope(angle, "si") == ("45°" if rise == 12 else f"{rise:g}/12")
    assert units.quantity(units.slope(angle), "slope") == angle


@pytest.mark.parametrize(
    ("angle", "said"), [(0.0, "0°"), (18.4, "18.4°"), (33.3333, "33.3°"), (35.0, "35°"), (90.0, "90°")]
)
def test_another_slope_is_said_in_degrees(angle, said):
    assert {units.slope(angle, system) for system in (None, "us", "si")} == {said}


def test_a_text_that_is_made_before_its_reader_is_known():
    """In both systems, the trade's own first; for a reader of one of them in that alone."""
    text = units.InBoth.of(lambda system: f"It holds {units.show(0.0147, 'area density', system)}.")
    assert text == "It holds 21.1 gr/ft² (14.7 g/m²)."
    assert [units.read_in(text, system) for system in ("us", "si", None)] == [
        "It holds 21.1 gr/ft².", "It holds 14.7 g/m².", text,
    ]  # fmt: skip
    assert units.read_in("dry", "si") == "dry"
    assert units.read_in(pickle.loads(pickle.dumps(text)), "si") == "It holds 14.7 g/m²."


@pytest.mark.parametrize("system", units.SHOWN)
@pytest.mark.parametrize("quantity", ["pressure", "temperature", "vapor flux", "length"])
@given(st.floats(1e-2, 4e3), st.floats(1e-2, 4e3))
def test_a_difference_is_that_of_the_numbers_shown(system, quantity, more, less):
    first, second, both = (
        Decimal(re.search(r"−?[\d.]+", text)[0].replace("−", "-"))
        for text in (
            units.show(more, quantity, system),
            units.show(less, quantity, system),
            units.difference(more, less, quantity, system),
        )
    )
    assert first - second == both
