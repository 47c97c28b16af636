"""The quiz on paper and its key."""

import re

import pytest

from dryward.checks import OutOfRange, UnknownName
from dryward.teaching import kinds, paper


def test_the_same_seed_prints_the_same_pages():
    one, two = paper.paper(11), paper.paper(11)
    assert one.quiz() == two.quiz()
    assert one.key() == two.key()
    assert paper.paper(12).quiz() != one.quiz()


def test_the_quiz_holds_every_question_and_gives_nothing_away():
    found = paper.paper(4)
    page = found.quiz()
    assert page.count("<section>") == len(kinds.KINDS)
    assert "Right." not in page
    assert "Why it looked right" not in page
    assert "<script" not in page
    assert "http" not in page
    assert found.code in page
    assert found.code in found.key()


def test_another_choice_of_kinds_has_another_code():
    codes = {paper.paper(4, chosen).code for chosen in (None, paper.EXIT, paper.EXIT[::-1])}
    assert len(codes) == 3


def test_the_key_holds_the_letters():
    found = paper.paper(4)
    letters = re.findall(r'class="letter">([A-F])<', found.key())
    asked = [number for number, each in enumerate(found.questions) if each.choices]
    assert letters == [found.letter(number) for number in asked]
    assert found.key().count(". *</b>") == 4
    assert "0 to 2 points each" in found.key()


def test_metric_pages_have_no_fahrenheit():
    found = paper.paper(4, unit_system="si")
    assert "°F" not in found.quiz() + found.key()


def test_words_in_a_title_cannot_break_the_page():
    assert "<b>x</b>" not in paper.paper(1, paper.EXIT, title="<b>x</b>").quiz()


def test_a_pass_needs_four_of_five_and_those_with_a_star():
    quiz = paper.paper(9)
    right = [quiz.letter(number) for number in range(len(quiz.questions))]
    assert paper.passed(quiz, right) == (True, 15, 15)
    assert paper.passed(quiz, [letter.lower() for letter in right])[0]
    slips = list(right)
    for number in (0, 2, 3):
        slips[number] = "?"
    assert paper.passed(quiz, slips) == (True, 12, 15)
    slips[4] = ""
    assert paper.passed(quiz, slips) == (False, 11, 15)
    starred = list(right)
    starred[quiz.questions.index(next(each for each in quiz.questions if each.must))] = "?"
    assert paper.passed(quiz, starred) == (False, 14, 15)


def test_bad_input_is_one_sentence():
    with pytest.raises(UnknownName, match='There is no kind of question "x"'):
        paper.paper(1, ("x",))
    with pytest.raises(OutOfRange, match="A quiz needs at least one kind of question"):
        paper.paper(1, ())
    with pytest.raises(OutOfRange, match="A quiz needs a seed, a whole number from 0 up"):
        paper.paper(None)
    with pytest.raises(OutOfRange, match="A seed is a whole number from 0 up, not 'x'"):
        paper.paper("x")
    with pytest.raises(OutOfRange, match="The quiz has 6 questions; 2 answers were given"):
        paper.passed(paper.paper(1, paper.EXIT), ["A", "B"])
