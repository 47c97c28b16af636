"""Pictures kept for each look of the standing part: the same pixels, and no more of them than told."""

import pytest

from dryward.panels import page
from dryward.pictures import kept

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
    monkeypatch.setattr(kept, "KEPT", most)
    kind, states = shown
    pictures = kept.Kept(kind, "us")
    for state, alone in states:
        assert pictures.render(state) == alone
        assert pictures.alt(state) == kind("us").alt(state)
        assert len(pictures._drawn) <= most


def test_layers_are_kept_too_and_a_ground_that_comes_back_is_the_same(shown):
    kind, states = shown
    pictures, grounds = kept.Kept(kind, "us"), {}
    for state, _ in states:
        ground, moving = pictures.layers(state)
        assert (ground, moving) == kind("us").layers(state)
        assert grounds.setdefault(kind("us").signature(state), ground) is ground
    assert 1 < len(grounds) <= kept.KEPT


def test_an_axis_that_changes_back_is_not_drawn_again(shown, monkeypatch):
    kind, states = shown
    drawings = []
    begin = kind._begin
    monkeypatch.setattr(kind, "_begin", lambda self, state: (drawings.append(1), begin(self, state)))
    pictures = kept.Kept(kind, "us")
    for state, _ in states[:5]:
        pictures.render(state)
    first = len(drawings)
    assert 1 < first <= kept.KEPT
    for state, _ in states[4::-1]:
        pictures.render(state)
    assert len(drawings) == first
