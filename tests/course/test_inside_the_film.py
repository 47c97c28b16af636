"""Lesson 16: the page against the steady state, its known numbers, its ends."""

import dataclasses
from types import SimpleNamespace

import asked
import pytest
from lesson_page import check_replies, first_visit, open_page, strips_are_the_page, to_both_ends

from dryward import building, units
from dryward.building import AirSpace, FixedMembrane
from dryward.course.inside_the_film import beats, layers_scene
from dryward.physics import steady
from dryward.pictures import scenery
from dryward.teaching import lessons, questions, vault
from dryward.units import from_si, to_si
from dryward.verdict import of_steady
from dryward.weather import Air

ID = "inside-the-film"
FILM, CAVITY = "inner membrane", "service cavity"
OUTER = {"open-sheet": "vented-vault", "fiberboard": "vented-vault-fiberboard", "osb": "vented-vault-osb"}
OUTER |= {"closed-sheet": "vented-vault-closed", "open-sheet-deep": "vented-vault"}


def profile(at):
    """The roof on the sliders, with the R in a still air space: another way to the same R."""
    roof = building.preset(OUTER[at.Outer])
    roof = roof.replace(FILM, building.preset("vented-vault-variable").layer(FILM))
    space, fill = roof.layer(CAVITY), roof.layer("insulation")
    roof = roof.replace(CAVITY, AirSpace(at.R_in, space.substance.vapor_permeance))
    if at.Outer == "open-sheet-deep":
        roof = roof.replace("insulation", dataclasses.replace(fill, thickness=fill.thickness * 66 / 44))
    return steady.profile(roof, Air(units.to_si(70, "degF"), at.RH_in), Air(at.T_out, 0.8))


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_physics(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for name, value, *_ in to_both_ends(page):
        page.controls[name].value = value
        if page.at.R_in > 5.0:  # more than an air space may have
            continue
        found = profile(page.at)
        face = found.face(FILM, 0)
        assert page.readouts["film_temperature"] == pytest.approx(found.temperature[face])
        assert page.readouts["inside_face"] == pytest.approx(found.relative_humidity[face], rel=1e-6)
        assert page.readouts["permeance"] == pytest.approx(found.permeance[FILM], rel=1e-6)
        assert page.readouts["gain"] == pytest.approx(found.gain, rel=1e-5, abs=1e-14)
        assert page.readouts["state"] == of_steady(found).state
        assert ("No water gathers" in page.sentence) == (not found.wet_planes)


@pytest.mark.parametrize(
    ("inside", "share", "warm", "perm", "gain"),
    [
        (1.0, None, 66.9, 0.50, 0.0),
        (5.5, 0.11, 61.0, 0.73, 0.0),
        (11.0, 0.20, 55.0, 1.2, 0.0),
        (22.0, 0.33, 46.0, 3.1, 1.9),
        (30.0, 0.41, None, None, 4.9),
    ],
)
def test_known_numbers(tmp_path, inside, share, warm, perm, gain):
    page = open_page(ID, tmp_path)
    page.controls["R_in"].value = inside
    if share:
        assert page.readouts["share"] == pytest.approx(share, abs=0.005)
    if warm:
        assert units.from_si(page.readouts["film_temperature"], "degF") == pytest.approx(warm, abs=0.3)
        assert units.from_si(page.readouts["permeance"], "perm") == pytest.approx(perm, rel=0.02)
    assert units.from_si(page.readouts["gain"], "g/m2/day") == pytest.approx(gain, rel=0.02)


@pytest.mark.parametrize("system", ["us", "si"])
def test_the_arithmetic_ends_where_the_page_does(system, tmp_path):
    """At the gain, summer and several wet planes too; with none at the humidity of the face."""
    page = open_page(ID, tmp_path, system)
    for moves in ({}, {"T_out": page.controls["T_out"].max}, {"R_in": page.controls["R_in"].max}, {"RH_in": 70}):
        for name, value in moves.items():
            page.controls[name].value = value
        last, found = page.steps(page.state)[-1], page.state.profile
        humid = found.relative_humidity[found.face("outer layer", 0)]
        gain = page.readouts["gain"]
        assert last.result == (page.show(gain, "vapor flux") if gain else page.show(humid, "relative humidity")), moves
    page.controls["T_out"].value = page.controls["T_out"].min
    assert len(page.state.profile.wet_planes) > 5
    assert page.steps(page.state)[-1].result == page.show(page.readouts["gain"], "vapor flux")


def test_the_room_side_sees_86_percent_at_r_22(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["R_in"].value = 22
    assert page.readouts["inside_face"] == pytest.approx(0.86, rel=0.02)


def test_the_picture_passes_through_the_page(tmp_path):
    page = open_page(ID, tmp_path)
    state = page.views(page.state)
    place = list(state.share).index(state.now)
    assert state.temperature[place] == page.readouts["film_temperature"]
    assert state.permeance[place] == page.readouts["permeance"]
    assert (state.temperature[1:] < state.temperature[:-1]).all()
    assert (state.permeance[1:] >= state.permeance[:-1] * (1 - 1e-9)).all()


def test_strips_are_the_page_itself(tmp_path):
    page = open_page(ID, tmp_path)
    page.controls["R_in"].value = 17
    assert strips_are_the_page(page, every=12) == {"dry", "damp", "wet"}


@pytest.mark.parametrize(
    ("moved", "state"),
    [
        ({}, "dry"),
        ({"T_out": -10}, "wet"),
        ({"RH_in": 60}, "wet"),
        ({"Outer": "osb"}, "wet"),
        ({"Outer": "fiberboard"}, "damp"),
        ({"R_in": 22}, "wet"),
        ({"R_in": 5.5}, "dry"),
    ],
)
def test_a_batt_in_the_cavity_is_dry_in_this_weather_only(moved, state, tmp_path):
    """What the words of the lesson say of R-13: dry at 0 degF and 50 %, wet in more cold, more damp or behind OSB."""
    page = open_page(ID, tmp_path)
    for name, value in {"R_in": 13, **moved}.items():
        page.controls[name].value = value
    assert page.readouts["state"] == state
    limits = " ".join(lessons.lesson(ID).limits)
    assert "R-13 in the cavity is dry at 0 °F and 50 %. It is wet at −10 °F, at 60 %, or behind OSB." in limits


def test_the_known_case_goes_from_dry_to_wet(tmp_path):
    page = open_page(ID, tmp_path)
    assert page.controls["R_in"].value == 1
    assert page.readouts["state"] == "dry"
    page.controls["R_in"].value = 22
    assert page.readouts["state"] == "wet"
    reveal = lessons.lesson(ID).prediction.reveal
    assert f"{page.show(page.readouts['gain'], 'vapor flux')} gather at the outer layer" in reveal
    assert reveal.endswith("the roof goes from dry to wet.")


def test_the_rate_at_a_place_is_what_gathers_there(tmp_path):
    """In deep cold water gathers over a stretch of the fill too: the place gets its own rate, the rest is told."""
    page = open_page(ID, tmp_path)
    for name, value in {"T_out": -20, "R_in": 22, "RH_in": 60}.items():
        page.controls[name].value = value
    planes = page.state.profile.wet_planes
    assert len(planes) > 1
    most = max(planes, key=lambda plane: plane.rate)
    place = "inside the insulation" if most.inner_layer == most.outer_layer else "between insulation and outer layer"
    assert f"{page.show(most.rate, 'vapor flux')} gather {place}" in page.sentence
    rest = page.show(page.state.profile.gain - most.rate, "vapor flux")
    assert f"{rest} elsewhere" in page.sentence
    note = next(each.note for each in page.readout_list if each.name == "gain")
    assert note == f"{page.show(most.rate, 'vapor flux')} of it {place}"


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))


@pytest.mark.parametrize("seed", [None, *range(8)])
def test_a_filled_cavity_says_what_becomes_of_the_roof(seed):
    found = questions.checks("inside-the-film", seed)[0]
    g = found.given
    film = asked.vault("open membrane", "variable")
    fill = film.layer("insulation")
    states = []
    for inside in (1.0, g["inside"]):
        through = film.layer("service cavity").substance.vapor_permeance
        roof = film.replace("service cavity", AirSpace(to_si(float(inside), "R"), through))
        conductivity = fill.thickness / to_si(float(g["outside"]), "R")
        roof = roof.replace("insulation", dataclasses.replace(fill.substance, conductivity=conductivity))
        states.append(
            of_steady(steady.profile(roof, asked.outside(70, g["rh"]), asked.outside(g["outdoor"], 80))).state
        )
    first, then = states
    said = f"from {first} to {then}" if first != then else f"The roof is {then}"
    assert said in found.right.reply
    assert f"{100 * g['inside'] / (g['inside'] + g['outside']):.0f} % of the R inside" in found.right.reply


@pytest.mark.parametrize("seed", [None, *range(8)])
def test_a_steamy_bath_and_its_bedroom_are_judged(seed):
    found = questions.checks("inside-the-film", seed)[2]
    g = found.given
    built = asked.vault("OSB", "variable")
    space = built.layer("service cavity").substance
    for rh, film, r, words in (
        (40, None, 11.0, "that is wet too behind OSB"),
        (g["steam"], 0.1, 1.0, "which is wet still"),
    ):
        roof = built.replace("service cavity", AirSpace(to_si(r, "R"), space.vapor_permeance))
        roof = roof if film is None else roof.replace("inner membrane", FixedMembrane(to_si(film, "perm")))
        state = of_steady(steady.profile(roof, asked.outside(70, rh), asked.outside(g["outdoor"], 80))).state
        assert (words in " ".join(each.reply for each in found.choices)) == (state == "wet")


def test_the_checks_with_their_fixed_numbers():
    filled, empty, _ = asked.fixed("inside-the-film")
    assert filled.answer.startswith("It cools")
    assert "66.9 °F" in asked.said(empty)
    built = asked.vault("open membrane", "variable")
    for r, warm, perms in ((1, 66.9, 0.50), (5.5, 61, 0.73), (11, 55, 1.2), (22, 46, 3.1)):
        space = AirSpace(to_si(r, "R"), built.layer("service cavity").substance.vapor_permeance)
        state = steady.profile(built.replace("service cavity", space), asked.outside(70, 50), asked.outside(0, 80))
        node = state.face("inner membrane", 0)
        assert from_si(float(state.temperature[node]), "degF") == pytest.approx(warm, abs=0.5)
        assert from_si(state.permeance["inner membrane"], "perm") == pytest.approx(perms, rel=0.02)


def test_the_prediction_and_its_numbers():
    for inside, warm, perms in ((1.0, 66.9, 0.50), (22.0, 46, 3.1)):
        built = vault.roof("variable", "open membrane", inside)
        assert vault.face(built, (70, 50), (0, 80), vault.FILM)[0] == pytest.approx(warm, abs=0.5)
        assert vault.film_state(built, (70, 50), (0, 80))[3] == pytest.approx(perms, rel=0.02)
    assert vault.film_state(built, (70, 50), (0, 80))[0] == pytest.approx(86, abs=0.5)
    assert vault.gain(built, (70, 50), (0, 80)) == pytest.approx(1.87, abs=0.005)
    states = [vault.verdict(vault.roof("variable", "open membrane", r), (70, 50), (0, 80)).state for r in (1.0, 22.0)]
    assert states == ["dry", "wet"]


# --- the beats ---------------------------------------------------------------------------


def states(page, beat):
    """The states of a beat, worked on the page."""
    start = {name: control.si for name, control in page.controls.items()}
    return tuple(page.compute(SimpleNamespace(**{**start, **case})) for case in beat.cases)


def test_each_bet_is_right_by_the_physics(tmp_path):
    page = first_visit(ID, tmp_path)
    rights = [[bet.right(states(page, beat)) for bet in beat.bets] for beat in beats.PLAY.beats]
    assert rights == [["b"], ["tight", "open"], ["tight", "open"], []]


def test_the_same_r_inside_and_outside_comes_out_opposite(tmp_path):
    """One batt of R-22: by hand the film is at 70 - 70 (R before it) / (R in all)."""
    page = first_visit(ID, tmp_path)
    outside, inside = states(page, beats.SWAP)
    assert outside.inside + outside.outside == pytest.approx(inside.inside + inside.outside)
    whole = [each.roof.thermal_resistance for each in (outside, inside)]
    assert whole[0] == pytest.approx(whole[1])
    for state in (outside, inside):
        before = state.profile.thermal_resistance[state.profile.face(FILM, 0)] / whole[0]
        assert from_si(state.temperature, "degF") == pytest.approx(70 - 70 * before, abs=0.05)
    assert (outside.does, inside.does) == ("tight", "open")
    assert not outside.profile.wet_planes
    assert from_si(inside.profile.gain, "g/m2/day") == pytest.approx(2.27, abs=0.05)
    assert inside.profile.gain == pytest.approx(vault.state(vault.roof(inside_r=23), (70, 50), (0, 80)).gain, rel=1e-3)


def test_a_damp_room_opens_it_in_the_same_january(tmp_path):
    page = first_visit(ID, tmp_path)
    bed, bath = states(page, beats.BATH)
    assert (bed.outdoor, bed.roof.thermal_resistance) == (bath.outdoor, pytest.approx(bath.roof.thermal_resistance))
    for state, rh in ((bed, 40), (bath, 70)):
        perms = vault.film_state(vault.roof(inside_r=5.5), (70, rh), (0, 80))[3]
        assert from_si(state.profile.permeance[FILM], "perm") == pytest.approx(perms, rel=1e-3)
    assert not bed.profile.wet_planes
    assert bath.profile.wet_planes


def test_frost_begins_where_the_slider_says(tmp_path):
    """The last beat: with an empty cavity none, and somewhere between R-16 and R-18 it begins."""
    page = first_visit(ID, tmp_path)
    control, starts = page.controls["R_in"], []
    for value in (control.min, 1, 16, 18, control.max):
        control.put(value)
        state = page.compute(page.at)
        starts.append(beats.FILL.aim(page, (state,)))
    assert starts == [False, False, False, True, True]


def test_a_batt_is_as_deep_as_its_r_and_the_film_moves_with_it(tmp_path):
    """R-44 in 12 in. of the fill: R-22 takes 6 in., R-5.5 the 1-1/2 in. that are there."""
    page = first_visit(ID, tmp_path)
    places = []
    for value, inches in ((1, 1.5), (5.5, 1.5), (22, 6.0)):
        page.controls["R_in"].put(value)
        state = page.compute(page.at)
        assert state.roof.layer(CAVITY).drawn_thickness == pytest.approx(to_si(inches, "in"))
        assert state.filled == (value > 2)
        places.append(layers_scene.film_at(state)[0])
    assert places[0] == places[1] < places[2] < 0.9


def test_a_roof_with_more_in_it_is_drawn_thicker(tmp_path):
    """To one scale: each scene of a beat is as thick as its layers are, in every shape."""
    page = first_visit(ID, tmp_path)
    for shape in ("wide", "tall", "post", "strip"):
        drawn = {}
        for beat in page.stage.beats:
            for case in beat.cases:
                state = page.compute(SimpleNamespace(**{**vars(page.at), **case}))
                scene = scenery.begin(shape)
                layers_scene.draw(scene, state)
                across = scene.axes["slope"].across
                deep = sum(layer.drawn_thickness for layer in state.roof.layers)
                drawn[round(deep, 4)] = (across[0] ** 2 + across[1] ** 2) ** 0.5 / deep
        assert len(drawn) > 2
        assert max(drawn.values()) == pytest.approx(min(drawn.values()))


@pytest.mark.parametrize("seed", [None, *range(10)])
def test_every_draw_asks_for_the_season_again(seed):
    for found in questions.checks(ID, seed):
        held = [each for each in found.choices if each.belief == "film-knows-the-season"]
        assert len(held) == 1
        assert "winter" in held[0].text.lower()
