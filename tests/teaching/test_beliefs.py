"""Each belief is broken by a pair in one lesson, asked for on screen and on paper, and asked for again at the end."""

import pytest
from lesson_page import first_visit, to_beat

from dryward.teaching import beliefs, guide, kinds, lessons, paper

ALL = beliefs.beliefs()
EACH = pytest.mark.parametrize("belief", ALL, ids=lambda each: each.id)


def wrong_answers(question):
    return [each for each in question.choices if not each.right]


@EACH
def test_a_question_always_offers_it(belief):
    """Whatever numbers are drawn, who holds it finds it among the choices; no other wrong answer has its reply."""
    for seed in (None, 1, 2):
        for system in ("us", "si") if seed is None else ("us",):
            question = kinds.draw(belief.asked, seed, system)
            told = [each.reply for each in wrong_answers(question) if each.belief == belief.id]
            assert told, (belief.asked, seed)
            others = [each.reply for each in wrong_answers(question) if each.belief != belief.id]
            assert not set(told) & set(others), (belief.asked, seed)


@EACH
def test_its_pair_is_in_the_lesson_and_goes_against_its_holder(belief, tmp_path):
    """The holder's choice is there and is wrong, and both bets are made before either is shown."""
    page = first_visit(belief.lesson, tmp_path)
    beat = page.stage.beats[belief.step - 1]
    assert belief.id in beat.beliefs
    assert belief.id in page.lesson.beliefs
    to_beat(page, belief.step - 1)
    states = page.stage.states
    misled = [
        bet for bet in beat.bets if belief.id in {spot.belief for spot in bet.spots if spot.key != bet.right(states)}
    ]
    assert misled, "who holds it has nothing to bet on, or is right"


@EACH
def test_what_denies_it_is_said_to_who_still_holds_it(belief):
    assert dict(lessons.lesson(belief.lesson).still)[belief.id]


def test_the_paper_of_all_beliefs_meets_every_one():
    made = paper.paper(5, paper.asks("beliefs"))
    offered = {each.belief for question in made.questions for each in question.choices}
    assert {each.id for each in ALL} <= offered


def test_the_guide_says_of_each_where_it_is_broken():
    page = guide.beliefs_page()
    for each in ALL:
        assert page.count(each.claim) == 2
        assert f"`{each.asked}`" in page
        assert each.broken
        assert each.changed
        assert each.survives
