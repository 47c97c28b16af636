"""What a learner reads is for the eighth grade, lesson by lesson and kind by kind.

By the Flesch-Kincaid grade; `reading.grades` says how its syllables are
counted, and puts a plain word for a number with its unit, so that "gr/ft² day"
is no long word.  Short texts of one kind are pooled: a formula made for
passages says nothing of a line of four words.
"""

import re

import pytest
from lesson_page import open_page
from reading import grades

from dryward.teaching import lessons, questions
from turns import in_turn

GRADE = 8.0
LESSONS = lessons.pages()


def ended(text):
    """A text that ends like a sentence."""
    return text if text.rstrip().endswith((".", "?", "!")) else f"{text}."


def kinds_of(id, system, folder):
    """Kind -> the texts of it that a learner of the lesson reads."""
    lesson, said = lessons.lesson(id, system), {}
    guess = lesson.prediction
    said["question, care and takeaway"] = [lesson.question, lesson.care, lesson.takeaway]
    said["prediction"] = [guess.prompt, *(each.text for each in guess.choices), guess.reveal]
    said["replies to the prediction"] = [getattr(each, "reply", "") for each in guess.choices]
    said["limits"] = list(lesson.limits)
    page = open_page(id, folder, system)
    said["sentence and givens"] = [page.sentence, page.widget.live["given"]]
    asked = [each for seed in (None, 2) for each in questions.checks(id, seed, system)]
    said["checks"] = [text for each in asked for text in (each.prompt, *(choice.text for choice in each.choices))]
    said["replies to the checks"] = [choice.reply for each in asked for choice in each.choices]
    said["hints"] = [getattr(choice, "hint", "") for each in asked for choice in each.choices]
    return {kind: [text for text in texts if text] for kind, texts in said.items() if any(texts)}


@pytest.mark.parametrize(("id", "system"), in_turn(LESSONS, ("us", "si")))
def test_each_kind_of_text(id, system, tmp_path):
    for kind, texts in kinds_of(id, system, tmp_path).items():
        kincaid, _ = grades(" ".join(map(ended, texts)))
        assert kincaid <= GRADE, (kind, kincaid, texts)


def passages(id):
    """The messages of a lesson that are of three sentences or more."""
    catalog = (lessons.lesson(id).folder / "en.ftl").read_text("utf-8")
    for line in re.findall(r"^[a-z0-9-]+ = (.+)$", catalog, re.M):
        text = re.sub(r"\{ \$[\w-]+ \}", "ten", line)
        if len(re.findall(r"[.?!](?:\s|$)", text)) >= 3 and "{" not in text:
            yield text


@pytest.mark.parametrize("id", LESSONS)
def test_each_passage_of_three_sentences(id):
    for text in passages(id):
        assert grades(text)[0] <= GRADE, text


def test_all_sentences_of_a_lesson_together():
    """With the lines of its beats, where it has any."""
    for id in LESSONS:
        catalog = (lessons.lesson(id).folder / "en.ftl").read_text("utf-8")
        lines = [re.sub(r"\{ \$[\w-]+ \}", "ten", line) for line in re.findall(r" = (.+[.?!])$", catalog, re.M)]
        assert len(lines) > 3
        assert grades(" ".join(each for each in lines if "{" not in each))[0] <= GRADE, id


def test_a_hard_sentence_is_seen():
    hard = "Hygrothermal equilibrium of variable membranes necessitates simultaneous consideration of both faces."
    assert grades(hard)[0] > 14
