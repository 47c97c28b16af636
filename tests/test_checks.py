"""Range checks and the sentences a person reads."""

import numpy as np
import pytest

from dryward.checks import (
    BadFile,
    NotConverged,
    NotUnderstood,
    OutOfRange,
    PlainError,
    UnknownName,
    rising,
    together,
    within,
)


@pytest.mark.parametrize(
    ("given", "sentence"),
    [
        (("Relative humidity", 1.4, 0, 1, "%"), "Relative humidity is 140 %; it must be 0 to 100 %."),
        (("Thickness", -0.1, 0, 3, "m"), "Thickness is −0.1 m; it must be 0 to 3 m."),
        (("Pressure", -1.0, 0, float("inf"), "Pa"), "Pressure is −1 Pa; it must be at least 0 Pa."),
        (("Wind", float("nan"), 0, 60, "m/s"), "Wind is not a number; it must be 0 to 60 m/s."),
        (("Wind", float("inf"), 0, 60, "m/s"), "Wind is too large; it must be 0 to 60 m/s."),
        (("Wind", float("-inf"), 0, 60, "m/s"), "Wind is too small; it must be 0 to 60 m/s."),
        (("Class", 7, 1, 4), "Class is 7; it must be 1 to 4."),
        (("Wind", True, 2, 60, "m/s"), "Wind is 1 m/s; it must be 2 to 60 m/s."),
        (("Wind", "strong", 0, 60, "m/s"), "Wind must be a number, not 'strong'."),
        (("Wind", np.array([1.0, 99.0]), 0, 60, "m/s"), "Wind is 99 m/s; it must be 0 to 60 m/s."),
    ],
)
def test_one_sentence_with_quantity_value_range_and_unit(given, sentence):
    with pytest.raises(OutOfRange) as trouble:
        within(*given)
    assert str(trouble.value) == sentence


def test_above_leaves_out_the_lower_end():
    with pytest.raises(OutOfRange, match=r"Thickness is 0 m; it must be above 0 and at most 3 m\."):
        within("Thickness", 0.0, 0, 3, "m", above=True)
    with pytest.raises(OutOfRange, match=r"Permeance is 0 kg; it must be above 0 kg\."):
        within("Permeance", 0.0, 0, float("inf"), "kg", above=True)
    assert within("Thickness", 3.0, 0, 3, "m", above=True) == 3.0


def test_the_ends_are_allowed_and_the_shape_is_kept():
    assert within("x", 0, 0, 1) == 0.0
    assert isinstance(within("x", np.float64(0.5), 0, 1), float)
    assert within("x", [[0, 1], [0.5, 0.25]], 0, 1).shape == (2, 2)
    with pytest.raises(OutOfRange, match="x is not a number"):
        within("x", [0.5, float("nan")], 0, 1)


def test_rising():
    assert rising("Humidity", [0, 0.5, 1]) == (0.0, 0.5, 1.0)
    for values in ([0.0, 0.5, 0.5], [0.5, 0.4]):
        with pytest.raises(OutOfRange, match=r"Humidity must rise from point to point, but 0\.[45] follows 0\.5"):
            rising("Humidity", values)


def test_names_nearly_right_are_offered():
    with pytest.raises(UnknownName) as trouble:
        raise UnknownName("material", "gipsum", ["gypsum", "granite"])
    assert str(trouble.value) == 'There is no material "gipsum"; did you mean gypsum?'
    with pytest.raises(UnknownName) as trouble:
        raise UnknownName("material", "zzz", ["gypsum"])
    assert str(trouble.value) == 'There is no material "zzz"; there is gypsum.'


def test_every_error_is_a_plain_one_and_an_ordinary_one():
    assert issubclass(OutOfRange, ValueError)
    assert issubclass(UnknownName, KeyError)
    for kind in (OutOfRange, NotUnderstood, UnknownName, BadFile, NotConverged):
        assert issubclass(kind, PlainError)


def test_one_full_stop_after_an_abbreviated_unit():
    with pytest.raises(OutOfRange, match=r"^Vent gap is 9 in\.; it must be 0\.5 to 4 in\.$"):
        within("Vent gap", 9, 0.5, 4, "in.")


def test_arrays_that_do_not_fit_together():
    together(temperature=20, relative_humidity=[0.4, 0.5], pressure=np.ones((3, 1)))
    words = r"^Temperature \(3\) and relative humidity \(2 x 4\) do not fit together in shape\.$"
    with pytest.raises(OutOfRange, match=words):
        together(temperature=np.zeros(3), pressure=1.0, relative_humidity=np.zeros((2, 4)))
