"""Every lesson: each control to both ends and through every choice, in both unit systems; and in a real Chromium.

What a single lesson must show beside this, its numbers against direct physics
calls and the known numbers, is in a file of its own.
"""

import math
import re

import pytest
from lesson_page import first_visit, on_the_way, open_page
from opening import to_the_free_page

from dryward.panels.page import Page
from dryward.teaching import lessons, practical
from dryward.teaching.progress import Progress

IDS = lessons.pages()
#: Elements wider than the room they have, which would be cut off or lie over others.
SPILLED = """
    [...document.querySelectorAll('.dw-page *')]
        .filter(e => !e.closest('.dw-status, select, .dw-strip, .dw-desk') && e.clientWidth > 0)
        .filter(e => e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== 'inline')
        .map(e => e.className + ': ' + e.textContent.slice(0, 40))
"""
#: The fields of a page that is built rather than moved; it may have no slider.
MOST_CONTROLS, MOST_READOUTS = 4, 5
#: A shift in time moves the lines and changes no lowest, mean or highest value; the page says the lag in numbers.
SILENT = {("your-readings", "Shift")}
#: Where a page chooses what the task's slider would set.
CHOSEN = {"july-film": ("Roof", "variable")}


@pytest.fixture(scope="module", params=IDS)
def page(request, tmp_path_factory):
    shown = open_page(request.param, tmp_path_factory.mktemp("learner"))
    yield shown
    shown.widget.close()


def ends(control):
    return control.options or (control.min, control.max)


def shown(page):
    """The readouts as they stand on the screen."""
    return tuple(tuple(each.shown(page.unit_system).values()) for each in page.readout_list if not each.hidden)


def finite(page):
    """Whether no number of the page is broken, and every readout has something to say."""
    numbers = [value for value in page.readouts.values() if isinstance(value, float)]
    words = " ".join((page.sentence, *page.alts, *(text for row in shown(page) for text in row)))
    return (
        all(math.isfinite(value) for value in numbers)
        and not re.search(r"\b(nan|inf|None)\b", words)
        and not re.search(r"\de[+-]\d", words)  # nobody on a roof reads 1e+02
        and all(page.alts)
        and all(row[1] for row in shown(page))
    )


def test_it_opens_on_its_own_words(page):
    assert isinstance(page, Page)
    assert page.trouble == ""
    assert page.sentence.endswith((".", "!", "?"))
    assert all(picture[8:12] == b"WEBP" for picture in page.pictures)
    frame = page.widget.frame
    assert frame["question"]
    assert frame["takeaway"]
    assert frame["folds"]
    assert not frame["locked"]
    assert 3 <= len(frame["questions"]) <= 5
    assert len(frame["controls"]) <= MOST_CONTROLS
    assert 1 <= len(frame["readouts"]) <= MOST_READOUTS
    assert all(item["words"] for item in frame["readouts"])


@pytest.mark.parametrize("id", IDS)
def test_a_first_visit_waits_for_a_bet_and_holds_nothing_of_the_answer(id, tmp_path):
    page = first_visit(id, tmp_path)
    frame, live = page.widget.frame, page.widget.live
    assert frame["question"]
    assert frame["locked"] != page.stage.on, "covered, or on its first beat"
    for told in ("questions", "folds", "takeaway"):
        assert not frame[told], told
    for told in ("pictures", "alts", "readouts", "strips", "sentence", "state", "steps"):
        assert not live[told], told
    assert not page.widget.grounds
    list(on_the_way(page))
    frame, live = page.widget.frame, page.widget.live
    assert all(frame[told] for told in ("questions", "folds", "takeaway"))
    assert all(live[told] for told in ("pictures", "alts", "readouts", "sentence"))
    assert page.widget.grounds


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_control_reaches_both_ends_and_every_choice(page, system, pytestconfig):
    # `test_every_text.py` goes to the same ends in the other of the two systems.
    if (IDS.index(page.id) + (system == "si")) % 2 == 0 and not pytestconfig.getoption("--slow"):
        pytest.skip("slow: in both unit systems")
    page.hear({"kind": "system", "value": system})
    for control in page.controls.values():
        start, said, drawn, told = control.value, set(), set(), set()
        for value in ends(control):
            control.value = value
            assert page.trouble == "", (control.name, value)
            assert page.sentence.endswith((".", "!", "?"))
            assert finite(page)
            assert not any(re.search(r"\de\+\d", step.line) for step in page.steps(page.state))
            said.add((page.sentence, shown(page)))
            drawn.add(page.pictures)
            told.add(page.alts)
        assert len(drawn) > 1, f"{control.name} changes nothing in the picture"
        assert len(told) > 1 or (page.id, control.name) in SILENT, (
            f"{control.name} changes nothing in what is said of the picture"
        )
        # A choice may be one of view: the same numbers, drawn another way.
        assert control.options or len(said) > 1, f"{control.name} changes no word and no number"
        control.value = start
    page.hear({"kind": "system", "value": "us"})


def test_all_controls_at_their_ends_together(page):
    starts = {name: control.value for name, control in page.controls.items()}
    for end in (0, -1):
        for control in page.controls.values():
            control.put(ends(control)[end])
        page.refresh()
        assert page.trouble == ""
        assert finite(page)
    for name, value in starts.items():
        page.controls[name].put(value)
    page.refresh()


def test_back_at_the_start_it_says_what_it_said(page):
    before = page.sentence, shown(page), page.alts
    for control in page.controls.values():
        start = control.value
        control.value = next(value for value in ends(control) if value != start)
        control.value = start
        assert (page.sentence, shown(page), page.alts) == before, control.name


def test_a_broken_callback_fails_the_test_and_says_one_sentence(page, monkeypatch):
    def broken(at):
        raise ZeroDivisionError

    picture, sentence = page.picture, page.sentence
    with monkeypatch.context() as patched:
        patched.setattr(page, "compute", broken)
        with pytest.raises(ZeroDivisionError):
            page.refresh()
        assert page.trouble == "This page could not work that out (ZeroDivisionError). Move a control back."
        for control in list(page.controls.values())[:1]:
            with pytest.raises(ZeroDivisionError):
                control.value = control.value
    assert (page.picture, page.sentence) == (picture, sentence)
    page.refresh()
    assert page.trouble == ""


@pytest.mark.parametrize("task", practical.tasks(), ids=lambda task: task.id)
def test_a_practical_job_is_solved_on_the_page(task, tmp_path):
    page = open_page(task.lesson, tmp_path)
    heard = page.hear

    def press(what):
        heard({"kind": "desk", "key": f"task:{what}:{task.id}"})
        return page.tasks.words.get(task.id, (None, ""))

    assert press("check") == (False, "First put the sliders at the start.")
    assert press("start") == (None, "")
    solved, said = press("check")
    assert not solved
    assert said.startswith("Not yet.")
    for name, value in task.one_way.items():
        if name in page.controls:
            page.controls[name].value = page.controls[name].shown(value)
    if task.id in CHOSEN:
        name, option = CHOSEN[task.id]
        page.controls[name].value = option
    solved, said = press("check")
    assert solved, said
    assert said.startswith("Solved.")
    assert Progress(tmp_path).events("task", task.lesson)


def test_si_is_the_same_lesson(page):
    before = dict(page.readouts)
    page.hear({"kind": "system", "value": "si"})
    assert page.trouble == ""
    for name, value in before.items():
        if isinstance(value, float):
            assert page.readouts[name] == pytest.approx(value, rel=1e-6, abs=1e-12), name
        else:
            assert page.readouts[name] == value
    shown = " ".join((page.sentence, *page.alts))
    assert not re.search(r"°F|\bperms?\b|gr/ft²|in\. Hg|\bcfm\b", shown), shown
    page.hear({"kind": "system", "value": "us"})


def test_the_arithmetic_opens_and_follows(page):
    page.hear({"kind": "fold", "key": "arithmetic", "open": True})
    steps = page.widget.live["steps"]
    assert bool(steps) == page.has_steps
    assert all(step["words"] and step["result"] for step in steps)
    page.hear({"kind": "fold", "key": "arithmetic", "open": False})


def test_wrong_and_right_answers_are_replied_to(page):
    for number, question in enumerate(page.questions.asked):
        replies = set()
        for choice, answer in enumerate(question.choices):
            page.hear({"kind": "answer", "number": number, "choice": choice})
            shown = page.widget.frame["questions"][number]
            assert shown["right"] == answer.right
            assert shown["reply"]
            replies.add((shown["right"], shown["reply"]))
        assert len(replies) > 1


#: Loggers.  The usual steady lesson is moved in Lab by `test_lab.py`, the own roof is built there by
#: `test_desk_by_hand.py`, and `test_pages.py` opens lessons as pages without code; all others with --slow.
IN_LAB = {"your-readings"}


@pytest.mark.browser
@pytest.mark.parametrize(
    "lesson",
    [
        pytest.param(each, id=each.id, marks=() if each.id in IN_LAB else pytest.mark.slow)
        for each in lessons.lessons()
        if each.number
    ],
)
def test_it_opens_unlocks_and_moves_in_a_browser(lab, screen, lesson):
    screen.goto(lab(lesson.file))
    to_the_free_page(screen)
    sliders = screen.locator(".dw-range")
    assert sliders.count() + screen.locator(".dw-select, .dw-desk").count() >= 1
    for number in range(sliders.count()):
        slider = sliders.nth(number)
        said = slider.get_attribute("aria-valuetext")
        slider.focus()
        keys = ["ArrowRight", "ArrowLeft"]
        screen.keyboard.press(keys[0])
        if slider.get_attribute("aria-valuetext") == said:  # it stands at its right end
            keys.reverse()
            screen.keyboard.press(keys[0])
        assert slider.get_attribute("aria-valuetext") != said
        screen.keyboard.press(keys[1])  # and back to where it opened, also where that is between two notches
        assert slider.get_attribute("aria-valuetext") == said
        screen.keyboard.press(keys[0])
    screen.wait_for_timeout(900)
    assert screen.locator(".dw-trouble").first.inner_text() == ""  # the page's own; a desk has others
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
