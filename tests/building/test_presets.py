"""The presets: what the lessons start from, layer by layer."""

import pytest

from dryward import building
from dryward.checks import UnknownName
from dryward.units import from_si

OUTERS = {"": (0.0, 50.0), "-osb": (0.6, 1.5), "-fiberboard": (4.0, 20.0), "-closed": (0.0, 0.1)}


def perms(thing):
    return from_si(thing.permeance, "perm")


def resistance(thing):
    return from_si(thing.thermal_resistance, "R")


def test_the_presets_there_must_be():
    assert {
        "vented-vault",
        "vented-vault-osb",
        "vented-vault-fiberboard",
        "vented-vault-closed",
        "vented-vault-variable",
        "unvented-vault-foam-above-deck",
        "wood-frame-wall",
        "wood-frame-wall-exterior-insulation",
    } <= set(building.presets())


@pytest.mark.parametrize(("outer", "numbers"), OUTERS.items())
def test_the_teaching_roof_is_round_numbers(outer, numbers):
    roof = building.preset("vented-vault" + outer)
    assert [layer.name for layer in roof.layers] == [
        "paint",
        "gypsum board",
        "service cavity",
        "inner membrane",
        "insulation",
        "outer layer",
        "vent space",
        "deck",
        "covering",
    ]
    assert from_si(roof.interior_film, "R") == pytest.approx(0.61)
    assert perms(roof.layer("paint")) == pytest.approx(7)
    assert perms(roof.layer("gypsum board")) == pytest.approx(40)
    assert resistance(roof.layer("gypsum board")) == pytest.approx(0.45)
    assert resistance(roof.layer("service cavity")) == pytest.approx(1)
    assert perms(roof.layer("service cavity")) == pytest.approx(80)
    assert perms(roof.layer("inner membrane")) == pytest.approx(1)
    assert resistance(roof.layer("insulation")) == pytest.approx(44)
    assert perms(roof.layer("insulation")) == pytest.approx(10)
    assert from_si(roof.layer("insulation").thickness, "in") == pytest.approx(12)
    assert resistance(roof.layer("outer layer")) == pytest.approx(numbers[0])
    assert perms(roof.layer("outer layer")) == pytest.approx(numbers[1])
    assert roof.layer("vent space").vented
    assert from_si(roof.outer_film, "R") == pytest.approx(0.6)


def test_paint_and_board_together():
    roof = building.preset("vented-vault")
    both = roof.layer("paint").vapor_resistance + roof.layer("gypsum board").vapor_resistance
    assert from_si(1 / both, "perm") == pytest.approx(5.96, abs=0.005)


def test_the_variable_film_is_the_only_difference():
    fixed, variable = building.preset("vented-vault"), building.preset("vented-vault-variable")
    differ = [a.name for a, b in zip(fixed.layers, variable.layers, strict=True) if a != b]
    assert differ == ["inner membrane"]
    assert isinstance(variable.layer("inner membrane").substance, building.VariableMembrane)


def test_the_comparison_roof_keeps_its_share_of_r_above_the_deck():
    roof = building.preset("unvented-vault-foam-above-deck")
    assert not any(layer.vented for layer in roof.layers)
    assert resistance(roof.layer("foam")) >= 20
    names = [layer.name for layer in roof.layers]
    assert names.index("insulation") < names.index("deck") < names.index("foam") < names.index("covering")


@pytest.mark.parametrize("name", ["wood-frame-wall", "wood-frame-wall-exterior-insulation"])
def test_walls_have_framing_and_stand_upright(name):
    wall = building.preset(name)
    assert wall.slope == 90
    assert wall.framing.share == 0.25
    assert wall.framing.layers == ("insulation",)


def test_layer_names_are_unique_and_every_layer_can_be_drawn():
    for name in building.presets():
        roof = building.preset(name)
        assert len({layer.name for layer in roof.layers}) == len(roof.layers)
        assert all(layer.thickness for layer in roof.layers if not layer.is_membrane)


@pytest.mark.parametrize("name", ["vented-valt", "../assemblies/vented-vault", "", None, 3])
def test_an_unknown_preset_gets_a_sentence(name):
    with pytest.raises(UnknownName, match="There is no preset"):
        building.preset(name)
