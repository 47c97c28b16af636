"""Small doors of the building room that no larger test goes through."""

import numpy as np
import pytest

from dryward import building
from dryward.building import (
    AirSpace,
    Assembly,
    FixedMembrane,
    Framing,
    LaminateMembrane,
    Layer,
    Material,
    VariableMembrane,
    assembly,
    codes,
    job,
    library,
)
from dryward.building.framing import with_framing
from dryward.checks import BadFile, OutOfRange
from dryward.units import to_si

BOARD = Material("board", "board", 640, 1090, 0.16, 5e-11)
SHEET = VariableMembrane((0.3, 0.8), (3e-11, 8e-10))


def test_a_fixed_membrane_has_one_permeance_in_any_shape():
    film = FixedMembrane(5e-11)
    assert film.at_mean(0.3) == 5e-11
    assert film.at_mean(np.array([[0.1, 0.9]])).tolist() == [[5e-11, 5e-11]]
    assert film.flipped() is film


def test_a_curve_needs_as_many_permeances_as_humidities():
    with pytest.raises(OutOfRange, match="it has 2 humidities and 1 permeances"):
        VariableMembrane((0.3, 0.8), (3e-11,))


def test_the_sensitive_sheet_of_a_laminate_is_variable():
    with pytest.raises(OutOfRange, match="The sensitive sheet of a laminate must be a variable membrane"):
        LaminateMembrane(FixedMembrane(5e-11), 1e-10)
    assert LaminateMembrane(SHEET, 1e-10).backing.level == 1e-10


@pytest.mark.parametrize("points", [((0.0, 1.0),), ((0.0, 1.0, 2.0), (0.5, 1.0, 2.0))])
def test_a_curve_of_a_material_has_two_points_of_two_numbers(points):
    with pytest.raises(OutOfRange, match="must be one number or at least two points"):
        Material("board", "board", 640, 1090, 0.16, points)


def test_an_assembly_is_made_of_layers_and_a_layer_of_something():
    with pytest.raises(OutOfRange, match="An assembly is made of layers, not"):
        Assembly("wall", [BOARD])
    with pytest.raises(OutOfRange, match="A layer is made of a material, a membrane or an air space, not b'board'"):
        Layer(BOARD.id.encode(), 0.016)
    with pytest.raises(OutOfRange, match="The layer board needs a thickness"):
        Layer(BOARD)


def test_a_name_that_stands_twice_gets_a_number():
    wall = Assembly("wall", [Layer(BOARD, 0.01), Layer(BOARD, 0.02), Layer(BOARD, 0.03)])
    assert [layer.name for layer in wall.layers] == ["board", "board (2)", "board (3)"]


def test_transmittance_is_one_over_the_resistance():
    wall = Assembly("wall", [Layer(BOARD, 0.016)], 0.13, 0.04)
    assert wall.u_value == pytest.approx(1 / (0.13 + 0.1 + 0.04))


def test_an_assembly_saves_itself(tmp_path):
    roof = building.preset("vented-vault")
    roof.save(tmp_path / "roof.toml")
    assert building.load(tmp_path / "roof.toml") == roof


def test_a_layer_that_resists_nothing_adds_nothing_to_a_framed_wall():
    """By hand: films 0.17, board 0.016/0.16 beside wood 0.016/0.12, share 0.2; the empty gap counts for nothing."""
    wood = Material("wood", "wood", 450, 1600, 0.12, 5e-12)
    layers = [Layer(AirSpace(0.0), 0.02, "gap"), Layer(BOARD, 0.016)]
    whole = with_framing(Assembly("wall", layers, 0.13, 0.04, framing=Framing(0.2, wood, ("board",))))
    beside, through = 0.17 + 0.1, 0.17 + 0.016 / 0.12
    assert whole.isothermal == pytest.approx(0.17 + 1 / (0.8 / 0.1 + 0.2 / (0.016 / 0.12)))
    assert whole.parallel == pytest.approx(1 / (0.8 / beside + 0.2 / through))


@pytest.mark.parametrize(
    ("facts", "answer"),
    [
        ({"upper_share": 0.45}, "cannot tell"),
        ({"upper_share": 0.45, "upper_depth": 0.5, "permeance": to_si(0.7, "perm")}, "cannot tell"),
        ({"upper_share": 0.45, "upper_depth": 0.5, "zone": "6"}, "cannot tell"),
        ({"upper_share": 0.45, "upper_depth": 0.5, "zone": "3"}, "met"),
        ({"upper_share": 0.45, "upper_depth": 3.0, "zone": "3"}, "not met"),
    ],
)
def test_between_the_two_vent_areas_what_is_missing_cannot_be_told(facts, answer):
    verdict = codes.judge("vent-area", edition=2021, vented_area=100.0, free_area=100.0 / 250, **facts)
    assert verdict.answer == answer


def test_an_id_stands_in_one_table_only(monkeypatch):
    monkeypatch.setattr(library, "read_table", lambda name: {"same": name})
    with pytest.raises(BadFile, match="The id same stands in two tables of the library"):
        library._whole.__wrapped__()


@pytest.mark.parametrize(
    ("value", "words"),
    [
        ([1.0] * 13, "must have at most 12 values"),
        (True, "must be a number or a short text"),
        ("x" * 500, "must be a number or a short text"),
        (10**400, "must be a number of ordinary size"),
    ],
)
def test_values_of_a_job_file(value, words):
    with pytest.raises(BadFile, match=f"house, height {words}"):
        job._plain("house, height", value)


def test_an_old_table_with_something_else_for_a_layer_is_handed_on():
    new = assembly._from_1({"layers": [{"thickness_mm": 12, "perms": 2}, "paint"], "pitch": 30})
    assert new == {"layer": [{"thickness": "12 mm", "permeance": "2 perm"}, "paint"], "slope": 30}


def test_a_layer_taken_for_another_kind_says_what_it_is():
    roof = building.preset("vented-vault")
    assert roof.layer("insulation").material.density > 0
    assert roof.layer("inner membrane").membrane.permeance(0.5, 0.5) > 0
    assert roof.layer("service cavity").air_space.thermal_resistance > 0
    assert roof.layer("inner membrane").drawn_thickness == 0.0
    for name, kind in (("insulation", "membrane"), ("inner membrane", "air_space"), ("service cavity", "material")):
        with pytest.raises(OutOfRange, match=f"The layer {name} must be an? {kind.replace('_', ' ')}, not "):
            getattr(roof.layer(name), kind)
