"""What must hold for every picture: it draws, nothing is cut, and moving it is as good as drawing it anew."""

import io

import numpy as np
import pytest
from drawn import CASES, cut, overlapping
from matplotlib.text import Text
from PIL import Image

from dryward.pictures.drawing import DPI
from dryward.pictures.exhibits import static
from turns import in_turn

NAMES = list(CASES)


def pixels(data):
    return np.asarray(Image.open(io.BytesIO(data)).convert("RGB"))


@pytest.mark.parametrize(
    ("name", "way"),
    in_turn(NAMES, [(system, place) for place in ("", "narrow", "projector") for system in ("us", "si")], usual=2),
)
def test_words_are_whole_and_apart(name, way):
    unit_system, place = way
    kind, states = CASES[name]
    picture = kind(unit_system, projector=place == "projector", narrow=place == "narrow")
    for state in states:
        picture.paint(state)
        assert cut(picture) == []
        assert overlapping(picture) == []
        texts = [text for text in picture.figure.findobj(Text) if text.get_text() and text.get_visible()]
        assert not [text.get_text() for text in texts if place and "…" in text.get_text()]
        # In px: 20 of the 1080 of a projector, 12 of a phone.
        least = min(text.get_fontsize() for text in texts) * DPI / 72
        assert least >= {"projector": 20, "narrow": 12, "": 11}[place] - 1e-9
    if place == "narrow":
        assert picture.width <= 366
        assert picture.height <= 500


@pytest.mark.parametrize("name", NAMES)
def test_moving_is_as_good_as_drawing_anew(name):
    kind, (one, other, *_) = CASES[name]
    picture, anew = kind(), kind()
    first = picture.render(one)
    assert picture.render(other) != first
    assert picture.render(one) == first
    anew.redraw(one)
    assert np.array_equal(picture.pixels(), anew.pixels())
    # Nothing is lost on the way to the screen.
    assert np.array_equal(pixels(first), anew.pixels()[..., :3])
    assert pixels(first).shape[:2] == (picture.height, picture.width)


def straight(data):
    """Colors and opacity of a layer, as numbers."""
    sheet = np.asarray(Image.open(io.BytesIO(data)).convert("RGBA")).astype(float)
    return sheet[..., :3], sheet[..., 3:] / 255


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize(
    "place", ["", *(pytest.param(each, marks=pytest.mark.slow) for each in ("projector", "narrow"))]
)
def test_ground_and_layer_are_the_whole_picture(name, place):
    kind, states = CASES[name]
    look = {"projector": {"projector": True}, "narrow": {"narrow": True, "scale": 2.0}}.get(place, {})
    picture, alone = kind(**look), kind(**look)
    for state in (*states[:2], states[0]):
        ground, moving = picture.layers(state)
        (below, _), (above, cover) = straight(ground), straight(moving)
        scale = int(picture.scale)
        assert above.shape == below.shape == (scale * picture.height, scale * picture.width, 3)
        assert (cover == 0).mean() > 0.3, "the layer is mostly empty"
        assert cover.max() == 1
        assert np.array_equal(above * cover + below * (1 - cover), pixels(alone.render(state)))
        # One after the other, neither hurts the other.
        assert picture.render(state) == alone.render(state)
        assert picture.layers(state) == (ground, moving)


@pytest.mark.parametrize("name", NAMES)
def test_the_ground_is_packed_once_and_holds_nothing_that_moves(name):
    kind, (one, other, *_) = CASES[name]
    picture = kind()
    ground, moving = picture.layers(one)
    again, moved = picture.layers(other)
    assert moved != moving
    if picture.signature(one) == picture.signature(other):
        assert again is ground
    else:
        assert again != ground
    # A picture that never drew the first state has the same ground for the second.
    assert kind().layers(other)[0] == again


@pytest.mark.parametrize("name", NAMES)
def test_alt_says_what_it_shows_now(name):
    kind, (one, other, *_) = CASES[name]
    for system in ("us", "si"):
        picture = kind(system)
        assert picture.alt(one) != picture.alt(other)
        assert picture.alt(one).endswith(".")
    # A moisture content by mass is the same number in both systems.
    same = name in ("model traces", "compare")
    assert (kind("us").alt(one) == kind("si").alt(one)) is same


@pytest.mark.parametrize("name", NAMES)
def test_paper_is_gray_and_needs_no_color(name):
    kind, (one, *_) = CASES[name]
    picture = kind(paper=True)
    data = static(picture, one)
    with Image.open(io.BytesIO(data)) as sheet:
        assert sheet.mode == "L"
        assert sheet.width == 2 * picture.width
    picture.redraw(one)
    rgb = picture.pixels()[..., :3].astype(int)
    assert (rgb.max(axis=2) - rgb.min(axis=2)).max() <= 1


def test_a_drawing_for_paper_keeps_its_words():
    kind, (one, other, *_) = CASES["section and profile"]
    picture = kind(paper=True)
    drawing = static(picture, one, form="svg")
    assert drawing.startswith(b"<?xml")
    assert b">inner membrane</text>" in drawing
    assert static(picture, one, form="svg") == drawing
    assert static(picture, other, form="svg") != drawing


def test_a_printed_picture_does_not_hurt_the_live_one():
    kind, (one, *_) = CASES["section and profile"]
    picture = kind()
    live = picture.render(one)
    with Image.open(io.BytesIO(static(picture, one, dpi=96))) as sheet:
        assert np.array_equal(np.asarray(sheet.convert("RGB")), pixels(live))
    assert picture.render(one) == live
