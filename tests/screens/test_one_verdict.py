"""One verdict: sentence, strip under the handle, readouts, picture and its words say the same state.

On every page that judges, at both ends and the middle of every control and
for every choice.  Beside the state itself no other word of state stands in
the sentence: "dry", "damp" and "wet" are kept for it.
"""

import re

import pytest
from lesson_page import open_page

from dryward import language
from dryward.panels.filling import Filling
from dryward.teaching import lessons
from dryward.verdict import STATES
from turns import in_turn

#: Pages that show physics without judging a roof by it.
TEACH_ONLY = {"read-the-air", "which-way-vapor-goes", "how-fast-perms", "your-readings"}
JUDGING = [id for id in lessons.pages() if id not in TEACH_ONLY]
WORDS = re.compile(rf"\b({'|'.join(STATES)})\b", re.IGNORECASE)


def settings_of(page):
    """Set each control to both ends and the middle, or to every choice, alone; gives its name and value."""
    for name, control in page.controls.items():
        start = control.value
        along = page.along(name, 3)
        for value in control.options or [control.shown(each) for each in along]:
            control.value = value if control.options else min(max(value, control.min), control.max)
            yield name, value
        control.value = start


def under_the_handle(page, name):
    """The state that the strip of a control shows where its handle is, or for the option chosen; None for no strip."""
    shown, control = page.strips_shown.get(name), page.controls[name]
    if shown is None:
        return None
    if control.options:
        label = control.label()
        # A label may itself have ". " in it, as after "12 in", or "; "; it stands in quotes.
        for part in re.split(rf"\. (?=(?:{'|'.join(STATES)}) with )", shown["words"], flags=re.IGNORECASE):
            state, _, names = part.partition(" with ")
            if "every one of them" in names or f'"{label}"' in names:
                return state.lower()
        raise AssertionError((label, shown["words"]))
    here = min(max(control.fraction(control.value), 0.0), 1.0)
    return next(state for low, high, state in shown["spans"] if low - 1e-9 <= here <= high + 1e-9)


NUMBER = r"(-?[\d.]+)"
#: A stretch in words -> whether a number lies in it.
STRETCHES = (
    (rf"up to {NUMBER}", lambda at, high: at <= high),
    (rf"at least {NUMBER}", lambda at, low: at >= low),
    (rf"from {NUMBER} on", lambda at, low: at >= low),
    (rf"below {NUMBER}", lambda at, high: at < high),
    (rf"above {NUMBER}", lambda at, low: at > low),
    (rf"just (?:above|below) {NUMBER}", lambda at, near: False),
    (NUMBER, lambda at, only: at == only),
    (rf"{NUMBER} to {NUMBER}", lambda at, *ends: min(ends) <= at <= max(ends)),
    (rf"between {NUMBER} and {NUMBER}", lambda at, *ends: min(ends) < at < max(ends)),
    (rf"above {NUMBER} to {NUMBER}", lambda at, low, high: low < at <= high),
    (rf"below {NUMBER} to {NUMBER}", lambda at, high, low: low <= at < high),
    (rf"{NUMBER} to just below {NUMBER}", lambda at, low, high: low <= at < high),
    (rf"{NUMBER} to just above {NUMBER}", lambda at, high, low: low < at <= high),
)


def told_of(words, unit, at):
    """The states that the words under a slider give to a number; none where it lies between two that were tried."""
    every = re.fullmatch(r"(\w+) at every setting", words)
    if every or words.startswith("Not known yet"):
        return {every[1].lower()} if every else set()
    found = set()
    for piece in words.lower().split(", "):
        state, stretch = re.fullmatch(rf"({'|'.join(STATES)}) (.+)", piece).groups()
        stretch = stretch.replace(f" {unit.lower()}", "") if unit else stretch
        ((holds, ends),) = [(holds, ends) for form, holds in STRETCHES if (ends := re.fullmatch(form, stretch))]
        if holds(at, *map(float, ends.groups())):
            found.add(state)
    return found


def says_one_state(page, where):
    state = page.verdict.state
    assert state in STATES, where
    assert page.sentence.startswith(f"{state.capitalize()}. "), (where, page.sentence)
    assert {each.lower() for each in WORDS.findall(page.sentence)} == {state}, (where, page.sentence)
    assert page.readouts["state"] == state, where
    for view in page.result.views:
        assert view.verdict == state, where
    for alt in page.alts:
        assert alt.endswith(f"Verdict: {state}."), (where, alt)
    for name in page.strips_shown:
        found = under_the_handle(page, name)
        assert found in (None, state), (where, name, found, state, page.strips_shown[name]["words"])
        control = page.controls[name]
        shown = None if control.options else float(language.typed(control.say(control.value)))
        if shown == pytest.approx(control.value, abs=1e-9):
            said = told_of(language.typed(page.strips_shown[name]["words"]), control.unit, control.value)
            assert said <= {state}, (where, name, said, state, page.strips_shown[name]["words"])
    assert page.widget.live["state"] == state, where


@pytest.mark.parametrize(("id", "system"), in_turn(JUDGING, ("us", "si")))
def test_everything_on_a_page_says_the_same(id, system, tmp_path, monkeypatch):
    # Strips of the slow pages are worked out for their own tests; here they stand as they begin.
    monkeypatch.setattr(Filling, "start", lambda self, work, known=None: None)
    page = open_page(id, tmp_path, system)
    says_one_state(page, "start")
    for where in settings_of(page):
        says_one_state(page, where)


def filled_at_once(self, work, known=None):
    """Stands for `Filling.start`: the strips are worked out before it is done, at a few places."""
    self.places = 3
    self.shown = {name: self.page.put_strip(name, strip) for name, strip in self.now(work).items()}


@pytest.mark.parametrize("id", ["hour-by-hour"])
def test_the_filled_strips_of_a_slow_page_say_the_same(id, tmp_path, monkeypatch):
    monkeypatch.setattr(Filling, "start", filled_at_once)
    page = open_page(id, tmp_path)
    filled = set(page.strips_shown)
    assert filled
    says_one_state(page, "start")
    assert all(under_the_handle(page, name) == page.verdict.state for name in filled)
    for name in filled:
        seen = set()
        for place, state in zip(
            page.filling.along(name), page.filling.now(page.work(page.at))[name].states, strict=True
        ):
            control = page.controls[name]
            control.put(place if control.options else control.shown(place))
            assert page.judge(page.compute(page.at)).state == state, (name, place)
            seen.add(state)
        assert len(seen) > 1, name
        control.put(control.choice.start if control.options else control.scale.start)


@pytest.mark.parametrize("id", sorted(TEACH_ONLY))
def test_a_page_that_only_teaches_gives_no_state(id, tmp_path):
    page = open_page(id, tmp_path)
    assert page.verdict is None
    assert "state" not in page.readouts
    assert not page.sentence.startswith(tuple(f"{each.capitalize()}. " for each in STATES))
