"""The house in section: the air in it is the house's own, and the neutral level stands where it is."""

import pytest

from dryward.physics.house_air import at_push, balanced
from dryward.pictures import house, scenery
from dryward.units import to_si

ROOM, COLD, LEAK = 21.0, -7.0, to_si(80.0, "cfm")


def air(fan=0.0):
    return balanced(LEAK, house.PLACES, ROOM, COLD, to_si(float(fan), "cfm"))


@pytest.mark.parametrize("shape", scenery.SHAPES)
@pytest.mark.parametrize("inside", ["family", "electric", "burner"])
def test_it_is_drawn_in_every_shape_within_its_edges(shape, inside):
    scene = scenery.begin(shape)
    house.draw(scene, "winter", inside)
    wide, high = scene.size
    axes = scene.axes["house"]
    for place in ((-0.36, 0.0), (1.36, 1.0), (0.5, 1.28)):  # as far as moving air is drawn
        x, y = axes.at(*place)
        assert -0.04 * wide < x < 1.04 * wide
        assert 0 <= y <= high
    assert {"house", "pane", "fan", "outdoors"} <= scene.axes.keys()


@pytest.mark.parametrize("system", ["us", "si"])
@pytest.mark.parametrize("fan", [0, 40, 150])
def test_darts_go_by_in_real_time_at_the_flows_of_the_house(system, fan):
    found = air(fan)
    rates = sum(each["rate"] for each in house.moving(found, system)["flows"])
    moved = sum(abs(flow) for flow in found.flows) + found.fan
    assert rates == pytest.approx(moved * 60 / house.DART[system])


def test_arrows_turn_around_with_the_neutral_level():
    """An arrow points out over the level and in under it; all of them in once it is over the roof."""
    for fan in (0, 40, 150):
        found = air(fan)
        ends = [mark["points"] for mark in house.arrows(found)["marks"] if mark["points"][0][2] > 0.8]
        out = all(end[2] > start[2] for start, end in ends)
        assert out == (found.neutral < house.HEIGHT)
    flows = air(150).flows
    assert max(flows) < 0


def test_the_neutral_level_is_a_line_while_it_is_in_sight_and_a_word_beyond():
    line = house.neutral(air(40), across=True)["marks"]
    assert [d for _, _, d in line[0]["points"]] == pytest.approx([air(40).neutral / house.HEIGHT] * 2)
    over, under = air(300), at_push(LEAK, house.PLACES, ROOM, COLD, 9.0, house.HEIGHT)
    for found, word in ((over, "over the roof"), (under, "under the floor")):
        told = house.neutral(found)
        assert "marks" not in told
        assert told["tags"][0]["text"].endswith(word)
    assert under.fan < 0
    assert any("in" in tag["text"].split() for tag in house.named(under, "us")["tags"])


@pytest.mark.parametrize("share", [0.0, 0.3, 0.58, 0.8, 1.0])
def test_the_level_fills_the_room_and_no_more(share):
    places = house.inside(share)
    assert max(d for _, _, d in places) == pytest.approx(share)
    for _, s, d in places:
        half = 0.5 * max(0.0, d - house.EAVE) / (1 - house.EAVE)
        assert half - 1e-9 <= s <= 1 - half + 1e-9


def test_the_pane_is_wet_at_its_edge_first():
    assert house.wet_pane(-0.1) == []
    assert len(house.wet_pane(0.2)) < len(house.wet_pane(1.2))
