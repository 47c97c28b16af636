"""The base of all pictures: what stands is drawn once, long lines are thinned."""

import io
from dataclasses import replace
from types import SimpleNamespace

import numpy as np
import pytest
from drawn import CASES, DAMP, HOT, ROOM, profile_state, roof
from PIL import Image

from dryward.course.read_the_air.scene import AirsOnCurve, Curve
from dryward.panels import page
from dryward.pictures import drawing
from dryward.pictures.drawing import PictureCache, arrow, ceiling, png, thinned
from dryward.pictures.section import FULL_ARROW, SectionAndProfile


def counting(picture):
    """Let a picture count how often it is drawn whole."""
    whole, picture.count = picture.canvas.draw, 0

    def draw():
        picture.count += 1
        whole()

    picture.canvas.draw = draw
    return picture


def test_what_stands_is_drawn_once():
    picture = counting(SectionAndProfile())
    for humidity in (0.3, 0.4, 0.5, 0.6):
        picture.render(profile_state(roof(), type(ROOM)(ROOM.temperature, humidity)))
    assert picture.count == 1


def test_a_new_axis_is_drawn_anew():
    picture = counting(Curve())
    picture.render(AirsOnCurve(ROOM, DAMP))
    picture.render(AirsOnCurve(ROOM, ROOM))
    assert picture.count == 1
    picture.render(AirsOnCurve(HOT, ROOM))
    assert picture.count == 2


@pytest.mark.parametrize("name", list(CASES))
def test_a_state_is_not_changed_by_drawing(name):
    kind, states = CASES[name]
    picture = kind()
    before = picture.alt(states[0])
    picture.render(states[0])
    assert picture.alt(states[0]) == before


def test_drying_arrows_are_as_wide_as_the_rate():
    # 5 and 9 g a day: widths in that ratio, one to each side.
    picture = SectionAndProfile()
    picture.redraw(profile_state(roof()))
    inward, outward = (shape.get_xy() for shape in picture.section.arrows)
    widths = [abs(xy[0, 1] - xy[6, 1]) for xy in (inward, outward)]
    assert widths[1] / widths[0] == pytest.approx(9 / 5)
    assert inward[3, 0] < inward[0, 0]
    assert outward[3, 0] > outward[0, 0]
    assert FULL_ARROW > 9e-3 / 86400


@pytest.mark.parametrize(
    ("inward", "outward", "words"),
    [
        (2e-8, 1e-8, "would dry 1.73 g/m² day inward and 0.864 g/m² day outward."),
        (-2e-8, 1e-8, "would take in 1.73 g/m² day from the room and lose 0.864 g/m² day outward."),
        (2e-8, -1e-8, "would lose 1.73 g/m² day to the room and take in 0.864 g/m² day from outdoors."),
        (-2e-8, -1e-8, "would take in 1.73 g/m² day from the room and 0.864 g/m² day from outdoors."),
    ],
)
def test_a_wet_layer_is_never_said_to_dry_less_than_nothing(inward, outward, words):
    state = profile_state(roof())
    rates = SimpleNamespace(inward=inward, outward=outward)
    said = SectionAndProfile("si").section.alt(replace(state, drying=rates))
    assert said.endswith(words)


def test_the_dew_point_mark_and_the_wet_mark_are_two_places():
    state = profile_state(roof(3), DAMP)
    picture = SectionAndProfile()
    picture.redraw(state)
    part = picture.section
    isotherm, drops = part.isotherm.get_xdata()[0], part.drops.get_xdata()[0]
    assert isotherm == pytest.approx(part.x(state.profile.dew_point_depth))
    assert drops == pytest.approx(part.x(state.profile.wet_planes[0].depth))
    assert drops - isotherm > 50


def test_no_mark_where_nothing_is_wet():
    picture = SectionAndProfile()
    picture.redraw(profile_state(roof(1, 50)))
    assert not picture.section.drops.get_visible()
    picture.redraw(profile_state(roof(3), DAMP))
    assert picture.section.drops.get_visible()


def test_thinning_keeps_every_peak():
    y = np.sin(np.arange(8760) / 7.0)
    y[4321] = 9.0
    y[1234] = -9.0
    x, thin = thinned(np.arange(8760.0), y, 600)
    assert len(x) <= 1200
    assert thin.max() == 9.0
    assert thin.min() == -9.0
    assert (np.diff(x) > 0).all()


def test_thinning_lets_gaps_be_gaps():
    y = np.ones(1000)
    y[300:700] = np.nan
    x, thin = thinned(np.arange(1000.0), y, 100)
    assert np.isnan(thin[(x > 310) & (x < 690)]).all()
    assert not np.isnan(thin[x < 290]).any()


def test_arrow_ends_where_it_should():
    assert arrow(0, 5, 100, 10)[:, 0].max() == 100
    assert arrow(100, 5, 0, 10)[:, 0].min() == 0
    assert np.ptp(arrow(0, 5, 100, 10)[:, 1]) == pytest.approx(16)


def test_ceiling_takes_the_last_step_for_more():
    assert ceiling(99, (1, 10)) == 10


PLACES = (-20, 0, 20, 60, 85, 100, 60, 20, -20)


@pytest.fixture
def shown(tmp_path, monkeypatch):
    """States of lesson 5 along the outdoor temperature, with what each looks like drawn alone."""
    monkeypatch.chdir(tmp_path)
    this = page("where-it-gets-wet")
    (kind,) = this.kinds
    found = []
    for place in PLACES:
        this.controls["T_out"].put(place)
        state = this.views(this.compute(this.at))
        found.append((state, kind("us").render(state)))
    return kind, found


@pytest.mark.parametrize("most", [1, 2, 5])
def test_what_is_kept_shows_what_is_drawn_alone(shown, monkeypatch, most):
    monkeypatch.setattr(drawing, "CACHED", most)
    kind, states = shown
    pictures = PictureCache(kind, "us")
    for state, alone in states:
        assert pictures.render(state) == alone
        assert pictures.alt(state) == kind("us").alt(state)
        assert len(pictures._drawn) <= most


def test_layers_are_kept_too_and_a_ground_that_comes_back_is_the_same(shown):
    kind, states = shown
    pictures, grounds = PictureCache(kind, "us"), {}
    for state, _ in states:
        ground, moving = pictures.layers(state)
        assert (ground, moving) == kind("us").layers(state)
        assert grounds.setdefault(kind("us").signature(state), ground) is ground
    assert 1 < len(grounds) <= drawing.CACHED


def test_an_axis_that_changes_back_is_not_drawn_again(shown, monkeypatch):
    kind, states = shown
    drawings = []
    begin = kind._begin
    monkeypatch.setattr(kind, "_begin", lambda self, state: (drawings.append(1), begin(self, state)))
    pictures = PictureCache(kind, "us")
    for state, _ in states[:5]:
        pictures.render(state)
    first = len(drawings)
    assert 1 < first <= drawing.CACHED
    for state, _ in states[4::-1]:
        pictures.render(state)
    assert len(drawings) == first


@pytest.mark.parametrize("size", [(1, 1), (3, 2), (40, 86), (1, 300)])
def test_what_is_written_is_read(size):
    pixels = np.random.default_rng(7).integers(0, 256, (*size, 4), dtype=np.uint8)
    with Image.open(io.BytesIO(png(pixels))) as sheet:
        assert sheet.format == "PNG"
        sheet.verify()  # the check sums
    with Image.open(io.BytesIO(png(pixels))) as sheet:
        assert sheet.mode == "RGBA"
        assert np.array_equal(np.asarray(sheet), pixels)


def test_nothing_takes_next_to_nothing():
    assert len(png(np.zeros((400, 860, 4), np.uint8))) < 400 * 860 * 4 / 150


def test_what_comes_to_a_wet_face_is_told_from_what_leaves_it():
    wet = profile_state(roof(3), DAMP)
    at = float(wet.profile.wet_planes[0].depth)
    picture = SectionAndProfile()
    picture.redraw(replace(wet, drying=SimpleNamespace(inward=-8e-8, outward=8e-8), drying_depth=at))
    part = picture.section
    leaves, comes = ([each.get_visible() for each in shapes] for shapes in (part.arrows, part.supplies))
    assert (leaves, comes) == ([False, True], [True, False])
    spot = part.x(at)
    assert part.supplies[0].get_xy()[3, 0] == pytest.approx(spot)  # its point is at the wet face
    assert part.arrows[1].get_xy()[0, 0] == pytest.approx(spot)  # its tail is
    assert part.arrows[1].get_facecolor() != part.supplies[0].get_facecolor()


def test_no_arrow_starts_at_a_dry_face():
    wet = profile_state(roof(3), DAMP)
    picture = SectionAndProfile()
    rates = SimpleNamespace(inward=8e-8, outward=8e-8)
    picture.redraw(replace(wet, drying=rates, drying_depth=float(wet.profile.wet_planes[0].depth) / 2))
    assert not any(each.get_visible() for each in (*picture.section.arrows, *picture.section.supplies))
