"""The lower face of a covering before frost: the same as the night's, for arrays, and within its ranges."""

import numpy as np
import pytest

from dryward.checks import OutOfRange
from dryward.physics import sky
from dryward.physics.sky import dry_underside, night
from dryward.weather import Air


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
        ({"indoor_temperature": 90.0}, r"Indoor temperature is 90 °C; it must be -60 to 60 °C\."),
        ({"emissivity": 2.0}, r"Emissivity is 2; it must be 0 to 1\."),
    ],
)
def test_out_of_range_is_one_sentence(given, sentence):
    with pytest.raises(OutOfRange, match=sentence):
        dry_underside(-6.7, **{"sky_cooling": 20.0, **given})
