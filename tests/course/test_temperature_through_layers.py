"""Lesson 4: the page against a wall added up by hand, its framing, its beats, its strips, its checks."""

import itertools
from math import sqrt
from types import SimpleNamespace

import asked
import pytest
from lesson_page import check_replies, first_visit, open_page, strips_are_the_page

from dryward import air, building, units
from dryward.building import Assembly, Layer, Material
from dryward.course.temperature_through_layers import beats
from dryward.course.temperature_through_layers.wall import wall_with
from dryward.physics import steady
from dryward.teaching import lessons, questions, vault
from dryward.units import from_si, to_si
from dryward.weather import Air

ID = "temperature-through-layers"
ROOM = Air(to_si(70, "degF"), 0.4)
#: By hand: air film and drywall, OSB and the outer film.
BEFORE, AFTER = to_si(0.68 + 0.45, "R"), to_si(0.62 + 0.17, "R")
BAYS = {"2x6": (5.5, 20), "2x12": (11.25, 40)}


def go(page, **values):
    for name, value in values.items():
        page.controls[name].value = value
    return page.readouts


def by_hand(wall, r):
    """R before the face that is asked about and behind it; foam in the bay takes the place of fill."""
    deep, fill = (to_si(each, unit) for each, unit in zip(BAYS[wall.split("-")[0]], ("in", "R"), strict=True))
    if wall == "2x12-foam" and r > 1e-3:
        thick = min(deep, r * building.material("polyiso-foil-faced").conductivity)
        r = thick / building.material("polyiso-foil-faced").conductivity
        return BEFORE + fill * (1 - thick / deep), AFTER + r
    return BEFORE + fill, AFTER + (r if r > 1e-3 else 0.0)


def settings(page):
    """Each place that is tried, not drawn: every wall with several boards, in three winters."""
    slider, winter = page.controls["R_out"], page.controls["T_out"]
    outside, cold = slider.along(4), winter.along(6)[:3]
    for wall, k in itertools.product(page.controls["Wall"].options, range(4)):
        place = {"Wall": wall, "R_out": outside[k], "T_out": cold[k % 3]}
        yield SimpleNamespace(**{**vars(page.at), **place})


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_ratio_of_r(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for at in settings(page):
        before, after = by_hand(at.Wall, at.R_out)
        share = after / (before + after)
        expected = at.T_out + (ROOM.temperature - at.T_out) * share
        state = page.compute(at)
        found = {each.name: each.value for each in page.numbers(state)}
        assert found["total"] == pytest.approx(before + after)
        assert found["share"] == pytest.approx(share)
        assert found["face"] == pytest.approx(expected)
        limit = air.saturation_vapor_pressure(expected) / air.saturation_vapor_pressure(ROOM.temperature)
        assert found["humidity_limit"] == pytest.approx(min(limit, 1.0))
        said = page.says(state)
        assert f"{share * 100:.1f}".removesuffix(".0") + " % of the way" in said
        assert page.show(expected, "temperature") in said
        assert ("No water gathers" in said) == (found["gain"] == 0)


def wall(*layers):
    """A wall of (R, perm) from room to yard, each a plate; between air films of R-0.68 and R-0.17."""
    made = [Layer(Material(f"m{k}", f"m{k}", 50, 1000, 0.01 / to_si(r, "R"), to_si(perm, "perm") * 0.01), 0.01, f"m{k}")
            for k, (r, perm) in enumerate(layers)]  # fmt: skip
    return Assembly("by hand", tuple(made), to_si(0.68, "R"), to_si(0.17, "R"))


@pytest.mark.parametrize(
    ("board", "r", "grams"),
    [("open", 0, 2.12), ("open", 3, 0.70), ("open", 5, 0.0), ("foil", 3, 2.26), ("foil", 5, 1.91), ("foil", 10, 1.15)],
)
def test_what_gathers_is_the_wall_by_hand(board, r, grams, tmp_path):
    """Drywall, 1 perm, fill, OSB and the board as plates of R and perms: another way to the same water."""
    page = open_page(ID, tmp_path)
    found = go(page, Wall={"open": "2x6", "foil": "2x6-foil"}[board], R_out=r)["gain"]
    assert from_si(found, "g/m2/day") == pytest.approx(grams, abs=0.006)
    gypsum = building.material("gypsum-board").permeability_at(0.5) / to_si(0.5, "in")
    foam = building.material("polyiso-foil-faced")
    layers = [(0.45, 1 / (1 / from_si(gypsum, "perm") + 1)), (20, 120 / 5.5), (0.62, 1.5)]
    if r and board == "open":
        layers.append((r, building.material("mineral-wool-board").permeability_at(0.5) / to_si(r / 4, "in")))
        layers[-1] = (r, from_si(layers[-1][1], "perm"))
    elif r:
        layers.append((r, from_si(foam.permeability_at(0.5) / (to_si(r, "R") * foam.conductivity), "perm")))
    state = steady.profile(wall(*layers), ROOM, Air(to_si(20, "degF"), 0.8))
    assert found == pytest.approx(state.gain, rel=0.01, abs=1e-12)


def test_a_board_in_the_bay_takes_the_place_of_fill_and_no_more_than_all_of_it():
    deep = {bay: to_si(inches, "in") for bay, (inches, _) in BAYS.items()}
    full = wall_with("2x6", "foil-inside", to_si(60, "R"))
    assert [layer.name for layer in full.layers] == ["gypsum board", "inner membrane", "foam", "sheathing"]
    assert full.layer("foam").thickness == pytest.approx(deep["2x6"])
    part = wall_with("2x12", "foil-inside", to_si(30, "R"))
    assert part.layer("foam").thickness + part.layer("bay").thickness == pytest.approx(deep["2x12"])


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_face_is_the_end_of_the_bay_that_the_page_says_it_is(system, tmp_path):
    """From the deepest cold to the greatest heat: coldest or warmest, and water there only where it gathers there."""
    page = open_page(ID, tmp_path, system)
    seen = set()
    for cold, wall, board in itertools.product(page.controls["T_out"].along(7), page.controls["Wall"].options, (0, 9)):
        values = {"T_out": cold, "Wall": wall, "R_out": page.controls["R_out"].along(10)[board]}
        state = page.compute(SimpleNamespace(**{**vars(page.at), **values}))
        profile, said = state.profile, page.says(state)
        faces = range(profile.face("inner membrane", 1), state.node + 1)
        most = (min if cold < ROOM.temperature else max)(profile.temperature[k] for k in faces)
        assert most == pytest.approx(state.temperature)
        note = page.numbers(state)[0].note
        assert ("coldest" in note) == (cold < ROOM.temperature)
        assert ("warmest" in note) == (cold > ROOM.temperature)
        places = {plane.node for plane in profile.wet_planes}
        assert ("comes through the film" in said) == (state.node in places)
        assert ("Not at that face" in said) == bool(places and state.node not in places)
        if "from outdoors" in said:
            assert cold > ROOM.temperature
        seen.add(state.gathers)
    assert seen == {"there", "elsewhere", "nowhere"}


@pytest.mark.parametrize(("wall", "share"), [("2x6", 0.0), ("2x6-some", 0.15), ("2x6-usual", 0.25)])
def test_the_whole_wall_is_both_paths_side_by_side(wall, share, tmp_path):
    """By hand: spruce of 0.12 W/(m K) is R-1.2 an inch, R-6.61 in 5.5 in."""
    page = open_page(ID, tmp_path)
    found = go(page, Wall=wall)["whole"]
    wood = to_si(5.5, "in") / 0.12
    rest = BEFORE + AFTER
    assert found == pytest.approx(1 / ((1 - share) / (rest + to_si(20, "R")) + share / (rest + wood)))
    line = page.readout_list[3].note
    counted = f"R-21.9 between studs; wood {100 * share:.0f} %"
    assert line == (counted if share else "between the studs alone, no wood counted")
    assert go(page)["total"] == pytest.approx(rest + to_si(20, "R")), "wood is not in the way of this line"


def test_known_numbers(tmp_path):
    page = open_page(ID, tmp_path)
    assert from_si(page.readouts["face"], "degF") == pytest.approx(22, abs=0.5)
    assert from_si(go(page, R_out=10)["face"], "degF") == pytest.approx(37, abs=0.5)
    for wall, r in (("2x6", 21.9), ("2x6-some", 17.7), ("2x6-usual", 15.7)):
        assert from_si(go(page, R_out=0, Wall=wall)["whole"], "R") == pytest.approx(r, abs=0.05)


def test_the_drawing_against_r_is_a_straight_line(tmp_path):
    page = open_page(ID, tmp_path)
    profile = page.state.profile
    apart = profile.thermal_resistance[1:] > profile.thermal_resistance[:-1]
    slopes = (profile.temperature[1:] - profile.temperature[:-1])[apart] / (
        profile.thermal_resistance[1:] - profile.thermal_resistance[:-1]
    )[apart]
    assert slopes == pytest.approx(slopes[0])
    by_depth = page.picture
    page.controls["Axis"].value = "resistance"
    assert page.picture != by_depth


def test_the_words_name_the_r_that_stops_the_drops_of_room_air(tmp_path):
    """The reveal: from about R-20 of open board on not even room air that leaks leaves any."""
    page = open_page(ID, tmp_path)
    assert go(page, R_out=19)["humidity_limit"] < ROOM.relative_humidity
    assert go(page, R_out=20.5)["humidity_limit"] > ROOM.relative_humidity
    assert "until about R-20 stands outside" in lessons.lesson(ID).prediction.reveal


@pytest.mark.parametrize("wall", ["2x6", "2x6-foil"])
def test_strips_are_the_page_itself(wall, tmp_path):
    page = open_page(ID, tmp_path)
    go(page, T_out=25, R_out=4, Wall=wall)
    strips_are_the_page(page, every=4)


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_arithmetic_ends_where_the_page_does(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for moves in ({}, {"Wall": "2x6-usual"}, {"R_out": page.controls["R_out"].max}, {"Wall": "2x12-foam"}):
        go(page, **moves)
        gain, steps = page.readouts["gain"], page.steps(page.state)
        humid = float(page.state.profile.relative_humidity[page.state.node])
        assert steps[-1].result == (page.show(gain, "vapor flux") if gain else page.show(humid, "relative humidity"))
        if moves == {"Wall": "2x6-usual"}:
            assert page.show(page.readouts["whole"], "thermal resistance") in [each.result for each in steps]


def test_checks_reply(tmp_path):
    page = open_page(ID, tmp_path)
    check_replies(page)


# --- the beats ---------------------------------------------------------------------


def states(page, beat):
    """The states of a beat, worked on the page."""
    start = {name: control.si for name, control in page.controls.items()}
    return tuple(page.compute(SimpleNamespace(**{**start, **case})) for case in beat.cases)


def rights(page, beat):
    return [bet.right(states(page, beat)) for bet in beat.bets]


def test_each_bet_is_right_by_the_physics(tmp_path):
    page = first_visit(ID, tmp_path)
    assert rights(page, beats.FIRST) == ["c"]
    assert rights(page, beats.OUTSIDE) == ["less", "more"]
    assert rights(page, beats.FOAM) == ["wet", "none"]
    assert rights(page, beats.LABEL) == ["more", "less"]


def test_two_boards_of_one_r_come_out_on_both_sides_of_the_bare_wall(tmp_path):
    page = first_visit(ID, tmp_path)
    bare = page.state.profile.gain
    opened, foil = states(page, beats.OUTSIDE)
    assert opened.temperature == pytest.approx(foil.temperature)
    assert opened.profile.gain < bare < foil.profile.gain
    assert beats.bare(opened).gain == pytest.approx(bare)


def test_an_inch_of_foam_is_a_sixth_of_the_r_and_half_of_it_is_enough(tmp_path):
    page = first_visit(ID, tmp_path)
    inch, enough = states(page, beats.FOAM)
    assert inch.wall.layer("foam").thickness == pytest.approx(to_si(1, "in"))
    assert (inch.share, enough.share) == (pytest.approx(0.16, abs=0.005), pytest.approx(0.56, abs=0.005))
    need = (ROOM.dew_point - to_si(20, "degF")) / (ROOM.temperature - to_si(20, "degF"))
    assert inch.share < need < enough.share
    # Behind foil the vapor of the room stands at the face: there it decides what a share is worth.
    for state, wet in ((inch, True), (enough, False)):
        assert (ROOM.vapor_pressure > state.full) == wet
    assert from_si(inch.profile.gain, "g/m2/day") == pytest.approx(2.1, abs=0.1)


def test_the_thermometers_stand_at_the_state(tmp_path):
    """Each head is as high as the temperature of its plane, on one scale; the line goes over all of them."""
    from dryward.pictures import wall as drawn

    page = first_visit(ID, tmp_path)
    for state in states(page, beats.FIRST):
        marks = drawn.readings(state.profile, state.wall, "sheathing")["marks"]
        line = next(each for each in marks if each["kind"] == "line")["points"]
        heads = {round(each["points"][2][2], 3): each["points"][2][1] for each in marks if each["kind"] == "area"}
        face = drawn.face_at(state.wall, "sheathing")
        assert any(abs(h - drawn.height(state.temperature)) < 1e-9 for h in heads.values())
        assert any(abs(s - drawn.height(state.temperature)) < 1e-9 and abs(d - face) < 1e-6 for _, s, d in line)
        assert line[0][1] == drawn.height(ROOM.temperature)
    assert drawn.height(to_si(50, "degF")) - drawn.height(to_si(40, "degF")) == pytest.approx(
        drawn.height(to_si(30, "degF")) - drawn.height(to_si(20, "degF"))
    )


def test_wood_takes_its_share_of_the_wall_that_is_drawn():
    from dryward.pictures import wall as drawn

    for share in (0.0, 0.15, 0.25):
        assert sum(b - a for a, b in drawn.studs(share)) == pytest.approx(share)


# --- the checks ----------------------------------------------------------------------


@pytest.mark.parametrize("seed", [None, *range(10)])
def test_every_draw_offers_the_three_beliefs(seed):
    found = questions.checks(ID, seed)
    for number, held in (
        (1, "outside-insulation-makes-water"),
        (2, "inch-of-foam-is-enough"),
        (3, "label-r-is-wall-r"),
    ):
        assert held in [each.belief for each in found[number].choices]


@pytest.mark.parametrize("seed", [None, *range(10)])
def test_a_deck_under_a_board_and_foam_under_a_deck_are_the_physics(seed):
    _, deck, foam, roof, batt = questions.checks(ID, seed)
    g = deck.given
    layers = [(0.45, 1 / (1 / 40 + 1)), (BAYS[g["bay"]][1], 120 / BAYS[g["bay"]][0]), (0.62, 1.5)]
    yard = vault.air(g["outside"], 80)
    without, with_board = (steady.profile(wall(*each), ROOM, yard).gain
                           for each in (layers, [*layers, (g["r"], 400 / g["r"])]))  # fmt: skip
    assert with_board < 0.85 * without
    g = foam.given
    face = vault.plane((("fill", 9, g["fill"]), ("foam", 1, 6.3)), 70, g["outside"], "fill")
    assert face < from_si(vault.air(70, g["rh"]).dew_point, "degF")
    g = roof.given
    part = g["part"] / 100
    assert roof.answer == pytest.approx(1 / ((1 - part) / g["fill"] + part / (1.2 * g["deep"])))
    g = batt.given
    assert f"about R-{g['r'] * sqrt(g['bay'] / g['full']):.0f}" in batt.right.text


#: A chart of compressed batts, printed in a trade magazine: (label, thickness, bay) -> R.
CHART = {(30, 10, 7.25): 26, (38, 12, 9.25): 33, (19, 6.25, 3.5): 14, (19, 6.25, 5.5): 18, (25, 8, 5.5): 20}


@pytest.mark.parametrize("batt", CHART)
def test_a_squeezed_batt_keeps_what_the_chart_says(batt):
    label, full, bay = batt
    assert label * sqrt(bay / full) == pytest.approx(CHART[batt], abs=1.0)


def test_the_cases_asked_are_in_the_chart():
    for seed in range(12):
        g = questions.checks(ID, seed)[4].given
        assert (g["r"], g["full"], g["bay"]) in CHART


def test_the_checks_with_their_fixed_numbers():
    plane, deck, foam, roof, squeezed = asked.fixed(ID)
    assert round(plane.answer, 1) == 32.5
    assert {round(each.value, 1) for each in plane.choices} >= {57.5, 45.0}
    assert deck.answer.startswith("It gets less")
    assert foam.answer.startswith("A face below its dew point")
    assert round(roof.answer, 1) == 25.6
    assert "Less than the label" in squeezed.answer


def test_the_prediction_and_its_numbers():
    inside = (("room film and drywall", 0.5, 1.1), ("batt", 5.5, 20))
    outside = ("sheathing and outer film", 0.5, 0.8)
    bare = vault.plane((*inside, outside), 70, 20, "batt")
    boarded = vault.plane((*inside, ("board", 2, 10), outside), 70, 20, "batt")
    assert bare == pytest.approx(22, abs=0.5)
    assert boarded == pytest.approx(37, abs=0.6)
    assert "R-10 of board outside" in lessons.lesson(ID).prediction.prompt
    assert units.show(to_si(2.12, "g/m2/day"), "vapor flux", "us") in asked.reveal(ID)
