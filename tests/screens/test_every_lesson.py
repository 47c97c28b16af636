"""Every lesson: each control to both ends and through every choice, in both unit systems; and in a real Chromium."""

import re

import pytest

from dryward import panels
from dryward.panels.page import Page
from dryward.panels.settings import Settings
from dryward.teaching import lessons
from dryward.teaching.progress import Progress

IDS = lessons.pages()
#: Elements wider than the room they have, which would be cut off or lie over others.
SPILLED = """
    [...document.querySelectorAll('.dw-sheet *')]
        .filter(e => !e.closest('.dw-status, select, .dw-strip, .dw-bench') && e.clientWidth > 0)
        .filter(e => e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== 'inline')
        .map(e => e.className + ': ' + e.textContent.slice(0, 40))
"""
#: The fields of a page that is built rather than moved; it may have no slider.
MOST_CONTROLS, MOST_READOUTS = 4, 5


@pytest.fixture(scope="module", params=IDS)
def page(request, tmp_path_factory):
    settings = Settings(Progress(tmp_path_factory.mktemp("learner")))
    return panels.page(request.param, unit_system="us", settings=settings)


def ends(control):
    return control.options or (control.min, control.max)


def test_it_opens_on_its_own_words(page):
    assert isinstance(page, Page)
    assert page.trouble == ""
    assert page.sentence.endswith((".", "!", "?"))
    assert all(picture[8:12] == b"WEBP" for picture in page.pictures)
    frame = page.widget.frame
    assert frame["question"]
    assert frame["takeaway"]
    assert frame["locked"]
    assert len(frame["checks"]) == 3
    assert len(frame["controls"]) <= MOST_CONTROLS
    assert 1 <= len(frame["readouts"]) <= MOST_READOUTS
    assert all(item["words"] for item in frame["readouts"])


def test_every_control_reaches_both_ends_and_every_choice(page):
    for control in page.controls.values():
        start, sentences, alts = control.value, set(), set()
        for value in ends(control):
            control.value = value
            assert page.trouble == "", (control.name, value)
            assert page.sentence.endswith((".", "!", "?"))
            assert all(page.alts)
            sentences.add((page.sentence, tuple(each.shown("us")["value"] for each in page.readout_list)))
            alts.add(page.pictures)
        assert len(alts) > 1, f"{control.name} changes nothing in the picture"
        # A choice may be one of view: the same numbers, drawn another way.
        assert control.options or len(sentences) > 1, f"{control.name} changes no word and no number"
        control.value = start


def test_si_is_the_same_lesson(page):
    before = dict(page.readouts)
    page.desk.hear({"kind": "system", "value": "si"})
    assert page.trouble == ""
    for name, value in before.items():
        if isinstance(value, float):
            assert page.readouts[name] == pytest.approx(value, rel=1e-6, abs=1e-12), name
        else:
            assert page.readouts[name] == value
    shown = " ".join((page.sentence, *page.alts))
    assert not re.search(r"°F|\bperms?\b|gr/ft²|in\. Hg|\bcfm\b", shown), shown
    page.desk.hear({"kind": "system", "value": "us"})


def test_the_arithmetic_opens_and_follows(page):
    page.desk.hear({"kind": "fold", "key": "arithmetic", "open": True})
    steps = page.widget.live["steps"]
    assert bool(steps) == page.has_steps
    assert all(step["words"] and step["result"] for step in steps)
    page.desk.hear({"kind": "fold", "key": "arithmetic", "open": False})


def test_wrong_and_right_answers_are_replied_to(page):
    for number, question in enumerate(page.desk.checks.questions):
        replies = set()
        for choice, answer in enumerate(question.choices):
            page.desk.hear({"kind": "answer", "number": number, "choice": choice})
            shown = page.widget.frame["checks"][number]
            assert shown["right"] == answer.right
            assert shown["reply"]
            replies.add((shown["right"], shown["reply"]))
        assert len(replies) > 1


@pytest.mark.browser
@pytest.mark.parametrize("lesson", [each for each in lessons.lessons() if each.number], ids=lambda each: each.id)
def test_it_opens_unlocks_and_moves_in_a_browser(lab, screen, lesson):
    screen.goto(lab(lesson.file))
    screen.wait_for_selector(".dw-sheet", timeout=90_000)
    screen.click(".dw-prediction input[type=radio] >> nth=0")
    screen.wait_for_selector(".dw-said")
    sliders = screen.locator(".dw-range")
    assert sliders.count() + screen.locator(".dw-select, .dw-bench").count() >= 1
    for number in range(sliders.count()):
        slider = sliders.nth(number)
        said = slider.get_attribute("aria-valuetext")
        slider.focus()
        screen.keyboard.press("ArrowRight")
        if slider.get_attribute("aria-valuetext") == said:  # it stands at its right end
            screen.keyboard.press("ArrowLeft")
        assert slider.get_attribute("aria-valuetext") != said
    screen.wait_for_timeout(900)
    assert screen.locator(".dw-trouble").inner_text() == ""
    for mode in ("projector", "si"):
        spilled = screen.evaluate(SPILLED)
        assert spilled == [], mode
        screen.click(f"[data-key={mode}]")
        screen.wait_for_timeout(500)
    screen.click("[data-key=us]")
    screen.click("[data-key=projector]")
    screen.wait_for_timeout(300)
    assert screen.errors == []
    assert screen.strangers == []
