"""Lessons 0 to 8 in a made-up language: what stands outside of its marks is a text left in the code."""

import pytest
from lesson_page import open_page
from matplotlib.text import Text

import made_up
from dryward.teaching import practical, questions

LESSONS = (
    "read-the-air",
    "winter-house",
    "which-way-vapor-goes",
    "temperature-through-layers",
    "where-it-gets-wet",
    "how-fast-perms",
    "open-out-tight-in",
    "the-film-that-changes",
)
#: Unit signs that a question still writes by itself.
UNITS = ("sd",)
#: The number of a class of the code.
CLASSES = ("II",)


@pytest.fixture
def made_up_language():
    """The made-up language, while a test runs."""
    with made_up.spoken():
        yield


def places(page):
    """The page as it opens, and with each control at its ends or at each option."""
    yield
    for control in page.controls.values():
        start = control.value
        for value in control.options or (control.min, control.max):
            control.value = value
            yield
        control.value = start


def said(page):
    """(what it is, the text) of all that a page says as it stands."""
    yield "sentence", page.sentence
    for alt in page.alts:
        yield "alt", alt
    for each in page.readout_list:
        shown = each.shown(page.unit_system)
        yield f"number {each.name}", f"{each.words} {shown['value']} {shown['also']}"
    for number, step in enumerate(page.steps(page.state)):
        yield f"step {number}", f"{step.words} {step.formula} {step.result}"


def drawn(page):
    """The texts of its pictures."""
    for kind, view in zip(page.kinds, page.result.views, strict=True):
        picture = kind(page.unit_system)
        picture.redraw(view)
        part = ""
        for text in picture.figure.findobj(Text):
            # A text that is folded is read as one: its marks stand at its two ends.
            part = f"{part} {text.get_text()}".strip()
            if part.count("⟦") <= part.count("⟧"):
                yield "picture", part
                part = ""
        yield "picture", part


def labels(page):
    """What its controls are called."""
    for control in page.controls.values():
        yield "control", control.words
        for id in control.options:
            yield "option", control.label(id)


def asked(lesson, system):
    """The texts of its questions, on the fixed and on drawn numbers, and of its tasks."""
    for seed in (None, 1, 2, 3, 4, 5):
        for question in questions.checks(lesson, seed, system):
            yield "prompt", question.prompt
            for choice in question.choices:
                yield f"answer {choice.belief}", choice.text
                yield f"reply {choice.belief}", choice.reply
    for task in practical.tasks(lesson):
        for values in ({}, task.one_way):
            yield "outcome", practical.judge(task.id, values, system).words


def left(texts, allowed=()):
    """What of the texts stands outside of marks."""
    found = {(what, text): made_up.unmarked(text, (*allowed, *CLASSES)) for what, text in texts}
    return [(*told, words) for told, words in found.items() if words]


@pytest.mark.parametrize("system", ["us", "si"])
@pytest.mark.parametrize("lesson", LESSONS)
def test_all_that_a_page_says_is_marked(lesson, system, made_up_language, tmp_path):
    page = open_page(lesson, tmp_path, system)
    assert left(labels(page)) == []
    for _ in places(page):
        assert page.trouble == ""
        assert left(said(page)) == []


@pytest.mark.parametrize("system", ["us", "si"])
@pytest.mark.parametrize("lesson", LESSONS)
def test_all_that_its_pictures_show_is_marked(lesson, system, made_up_language, tmp_path):
    page = open_page(lesson, tmp_path, system)
    assert left(drawn(page)) == []
    for control in page.controls.values():
        for option in control.options:
            control.value = option
            assert left(drawn(page)) == []


@pytest.mark.parametrize("system", ["us", "si"])
@pytest.mark.parametrize("lesson", LESSONS)
def test_all_that_its_questions_say_is_marked(lesson, system, made_up_language):
    assert left(asked(lesson, system), UNITS) == []
