"""Framing: the bounds, their limits, and the cavity beside the whole."""

import dataclasses

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryward import building
from dryward.building import AirSpace, Assembly, Framing, Layer, Material
from dryward.building.framing import with_framing
from dryward.checks import OutOfRange
from dryward.units import from_si, to_si


def plate(name, resistance):
    return Layer(Material(name, name, 500, 1000, 0.1 / resistance, 1e-11), 0.1)


def wall(share, fill, wood):
    stud = Material("stud", "stud", 450, 1600, 0.1 / wood, 1e-12)
    return Assembly(
        "wall", [plate("board", 0.1), plate("fill", fill)], 0.13, 0.04, framing=Framing(share, stud, ("fill",))
    )


@given(st.floats(0.0, 0.5), st.floats(0.1, 10.0), st.floats(0.1, 10.0))
def test_the_combined_value_lies_between_its_bounds(share, fill, wood):
    whole = with_framing(wall(share, fill, wood))
    assert whole.isothermal <= whole.combined * (1 + 1e-12)
    assert whole.combined <= whole.parallel * (1 + 1e-12)
    assert whole.error >= -1e-12
    low, high = sorted((whole.cavity, whole.through_framing))
    assert low * (1 - 1e-12) <= whole.combined <= high * (1 + 1e-12)


def test_no_framing_changes_nothing():
    roof = building.preset("vented-vault")
    whole = with_framing(roof)
    assert whole.share == 0.0
    for value in (whole.cavity, whole.parallel, whole.isothermal, whole.combined):
        assert value == pytest.approx(roof.thermal_resistance)
    assert whole.error == pytest.approx(0.0)


def test_a_2x6_wall_is_not_an_r_20_wall():
    whole = with_framing(building.preset("wood-frame-wall"))
    assert from_si(whole.combined, "R") < 0.85 * from_si(whole.cavity, "R")
    assert whole.u_isothermal > whole.u_value > whole.u_parallel


def test_r_20_fill_between_2x6_studs_is_a_layer_of_r_13_and_a_half():
    depth = to_si(5.5, "in")
    stud = Material("stud", "stud", 450, 1600, to_si(1.25, "R per in"), 1e-12)
    fill = Layer(Material("fill", "fill", 20, 840, depth / to_si(20, "R"), 1e-10), depth)
    layer = Assembly("layer", [fill], 0.0, 0.0, framing=Framing(0.25, stud, ("fill",)))
    assert from_si(with_framing(layer).isothermal, "R") == pytest.approx(13.5, abs=0.1)
    assert with_framing(layer).parallel == pytest.approx(with_framing(layer).isothermal), "one layer, one answer"


def test_insulation_outside_narrows_the_loss():
    bare = with_framing(building.preset("wood-frame-wall"))
    clad = with_framing(building.preset("wood-frame-wall-exterior-insulation"))
    assert clad.combined / clad.cavity > bare.combined / bare.cavity


def test_framing_beyond_the_vent_space_does_not_count():
    roof = building.preset("vented-vault")
    wood = building.material("spruce")
    beyond = dataclasses.replace(roof, framing=Framing(0.2, wood, ("deck",)))
    assert with_framing(beyond).parallel == pytest.approx(roof.thermal_resistance)


def test_framing_needs_a_thickness():
    wood = building.material("spruce")
    built = Assembly("wall", [Layer(AirSpace(0.18), name="gap")], framing=Framing(0.2, wood, ("gap",)))
    with pytest.raises(OutOfRange, match="The layer gap needs a thickness for the framing that runs through it"):
        with_framing(built)
