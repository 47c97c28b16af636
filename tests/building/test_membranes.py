"""Dry cup and wet cup: two label values become two points of a curve."""

import pytest

from dryward.building import FixedMembrane, VariableMembrane
from dryward.building.library import cup_curve, cup_membrane
from dryward.checks import OutOfRange
from dryward.units import to_si


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
def test_bad_values_get_a_sentence(dry, wet, words):
    with pytest.raises(OutOfRange, match=words):
        cup_curve(dry, wet)
