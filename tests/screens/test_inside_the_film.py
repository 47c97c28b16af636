"""Lesson 16: the page against the steady state, its known numbers, its ends."""

import pytest
from lesson_page import check_replies, open_page, to_both_ends

from dryward import building, units
from dryward.building import AirSpace
from dryward.physics import steady
from dryward.weather import Air

ID = "inside-the-film"
FILM, CAVITY = "inner membrane", "service cavity"
OUTER = {"open-sheet": "vented-vault", "fiberboard": "vented-vault-fiberboard", "osb": "vented-vault-osb"}
OUTER["closed-sheet"] = "vented-vault-closed"


def profile(at):
    """The roof on the sliders, with the R in a still air space: another way to the same R."""
    roof = building.preset(OUTER[at.Outer])
    roof = roof.replace(FILM, building.preset("vented-vault-variable").layer(FILM))
    space = roof.layer(CAVITY)
    roof = roof.replace(CAVITY, AirSpace(at.R_in, space.substance.vapor_permeance))
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
        assert ("no face gains water" in page.sentence) == (not found.wet_planes)


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
    for name, strip in page.strips(page.at, page.state).items():
        control = page.controls[name]
        start = control.value
        places = control.options or control.along(len(strip.holds))
        for place in range(0, len(places), max(1, len(places) // 6)):
            control.value = places[place] if control.options else control.shown(places[place])
            assert bool(strip.holds[place]) == (page.readouts["gain"] == 0), (name, place)
        control.value = start


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))
