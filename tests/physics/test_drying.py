"""Which way it dries: from a wet layer to each side."""

import numpy as np
import pytest
from roofs import JANUARY, JULY, VARIABLE, fahrenheit, grams_a_day, perm, sheet, vault

from dryward import air
from dryward.checks import OutOfRange, UnknownName
from dryward.physics import drying
from dryward.weather import Air


def test_by_hand_through_one_membrane():
    """A wet outer layer dries outward through its own vent film alone: without limit;
    inward through known resistances."""
    roof = vault(sheet(1), 1.5, 0.6)
    spring = Air(fahrenheit(60), 0.6)
    found = drying.rates(roof, "fill", JANUARY[0], spring)
    outward = perm(1.5) * (air.saturation_vapor_pressure(_face(roof, spring)) - spring.vapor_pressure)
    assert found.outward == pytest.approx(outward, rel=1e-9)


def _face(roof, outdoor):
    from dryward.physics import steady

    state = steady.profile(roof, JANUARY[0], outdoor)
    return state.temperature[state.face("fill", 1)]


def test_an_open_outer_layer_dries_outward_and_plastic_blocks_inward():
    spring = Air(fahrenheit(60), 0.5)
    open_roof = drying.rates(vault(sheet(0.06), 50), "fill", JANUARY[0], spring)
    tight_roof = drying.rates(vault(sheet(0.06), 0.1), "fill", JANUARY[0], spring)
    assert open_roof.outward > 50 * tight_roof.outward
    assert grams_a_day(tight_roof.inward) < 1.0
    variable = drying.rates(vault(VARIABLE, 0.1), "fill", JANUARY[0], spring)
    assert variable.inward > 5 * tight_roof.inward
    assert open_roof.share_outward > 0.9


def test_the_answer_turns_with_the_season():
    winter = drying.rates(vault(VARIABLE, 1.5, 0.6), "fill", *JANUARY)
    summer = drying.rates(vault(VARIABLE, 1.5, 0.6), "fill", *JULY)
    assert summer.inward > winter.inward
    assert summer.total == pytest.approx(summer.inward + summer.outward)


def test_a_drier_layer_dries_slower():
    wetness = [0.5, 0.7, 0.9, 1.0]
    out = [drying.rates(vault(sheet(1), 1.5), "fill", *JANUARY, relative_humidity=w).outward for w in wetness]
    assert np.all(np.diff(out) > 0)


def test_plain_sentences():
    with pytest.raises(UnknownName, match='There is no layer "rafters"'):
        drying.rates(vault(), "rafters", *JANUARY)
    with pytest.raises(OutOfRange, match="Relative humidity of the wet layer is 0 %; it must be above 0"):
        drying.rates(vault(), "fill", *JANUARY, relative_humidity=0.0)
    with pytest.raises(OutOfRange, match="The layer vent lies beyond the vent space"):
        drying.rates(vault(), "vent", *JANUARY)


def test_a_bare_outer_board_dries_outward_without_limit():
    """Nothing stands between its outer face and the vent air: all that leaves, leaves there."""
    from dryward import building

    found = drying.rates(building.preset("vented-vault-osb"), "outer layer", Air(21, 0.4), Air(-7, 0.8))
    assert found.outward == np.inf
    assert found.share_outward == 1.0
    turned = drying.Drying(inward=np.inf, outward=1e-9, temperature=0.0)
    assert turned.share_outward == 0.0
