"""What must hold for every picture: it draws, nothing is cut, and moving it is as good as drawing it anew."""

import io

import numpy as np
import pytest
from drawn import CASES, cut, overlapping
from PIL import Image

from dryward.pictures.printed import static

NAMES = list(CASES)


def pixels(data):
    return np.asarray(Image.open(io.BytesIO(data)).convert("RGB"))


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("unit_system", ["us", "si"])
@pytest.mark.parametrize("projector", [False, True])
def test_words_are_whole_and_apart(name, unit_system, projector):
    kind, states = CASES[name]
    picture = kind(unit_system, projector=projector)
    for state in states:
        data = picture.render(state)
        assert data[:4] == b"RIFF"
        assert data[8:12] == b"WEBP"
        assert cut(picture) == []
        assert overlapping(picture) == []


@pytest.mark.parametrize("name", NAMES)
def test_projector_letters_are_large(name):
    kind, states = CASES[name]
    picture = kind(projector=True)
    picture.render(states[0])
    sizes = [
        text.get_fontsize() for text in picture.figure.findobj(lambda a: hasattr(a, "get_fontsize")) if text.get_text()
    ]
    assert sizes
    assert min(sizes) >= 20


@pytest.mark.parametrize("name", NAMES)
def test_same_state_same_bytes_other_state_other_bytes(name):
    kind, (one, other, *_) = CASES[name]
    picture = kind()
    first = picture.render(one)
    assert picture.render(other) != first
    assert picture.render(one) == first
    assert kind().render(one) == first


@pytest.mark.parametrize("name", NAMES)
def test_moving_is_as_good_as_drawing_anew(name):
    kind, (one, other, *_) = CASES[name]
    moved = kind()
    moved.render(other)
    moved.render(one)
    moved.paint(other)
    anew = kind()
    anew.redraw(other)
    assert np.array_equal(moved.pixels(), anew.pixels())


@pytest.mark.parametrize("name", NAMES)
def test_the_picture_is_not_lossy(name):
    kind, (one, *_) = CASES[name]
    picture = kind()
    data = picture.render(one)
    assert np.array_equal(pixels(data), picture.pixels()[..., :3])
    assert pixels(data).shape[:2] == (picture.height, picture.width)


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
    drawing = static(picture, one, form="svg")
    assert b"<svg" in drawing
    assert static(picture, one, form="svg") == drawing
