"""Each belief is broken by a pair in one lesson, asked for on screen and on paper, and asked for again at the end."""

import functools
import re
import tempfile

import pytest
from lesson_page import bet_all, first_visit

from dryward.building.library import wood_moisture
from dryward.teaching import beliefs, guide, kinds, lessons, paper, words

ALL = beliefs.beliefs()
EACH = pytest.mark.parametrize("belief", ALL, ids=lambda each: each.id)
SEEDS = (None, 0, 1, 2, 3)


def wrong_answers(question):
    return [each for each in question.choices if not each.right]


@EACH
def test_a_question_always_offers_it(belief):
    """Whatever numbers are drawn, who holds it finds it among the choices, in words and not as a number alone."""
    for seed in SEEDS:
        for system in ("us", "si") if seed is None else ("us",):
            question = kinds.draw(belief.asked, seed, system)
            told = [each for each in wrong_answers(question) if each.belief == belief.id]
            assert told, (belief.asked, seed)
            assert all(each.value is None for each in told), (belief.asked, seed)
            others = [each.reply for each in wrong_answers(question) if each.belief != belief.id]
            assert not {each.reply for each in told} & set(others), (belief.asked, seed)


def texts(told):
    """All texts in what the browser is told."""
    if isinstance(told, dict):
        told = told.values()
    elif isinstance(told, str):
        return [told]
    elif not isinstance(told, list | tuple):
        return []
    return [text for each in told for text in texts(each)]


@functools.cache
def steps(lesson, system):
    """Of each step of a lesson: what somebody bets on and is wrong, by its belief; and all that is said there."""
    found = []
    with tempfile.TemporaryDirectory() as folder:
        page = first_visit(lesson, folder, system)
        for number, beat in enumerate(page.stage.beats):
            page.hear({"kind": "beat", "number": number})
            said = texts(page.stage.frame())
            bet_all(page)
            right = {bet.name: bet.right(page.stage.states) for bet in beat.bets}
            misled = {spot.belief for bet in beat.bets for spot in bet.spots if spot.key != right[bet.name]}
            said += texts([page.stage.frame(), page.stage.live()])
            said += [page.stage._reply(bet, spot.key) for bet in beat.bets for spot in bet.spots]
            control = page.controls.get(beat.unlocks)
            for value in () if control is None else control.options or [control.at(k / 4) for k in range(5)]:
                page.hear({"kind": "moved", "serial": 1, "system": system, "values": {control.name: value}})
                said += texts(page.stage.live())
            assert page.trouble == ""
            found.append((beat, misled, numbers(" ; ".join(said))))
    return found


_UNITS = (
    *("in. Hg", "in²", "in.", "fl oz", "ft²", "ft/min", "ft", "quarts", "pints", "gallons", "buckets", "perm", "cfm"),
    *("m sd", "m³/h", "m²", "mm", "mL", "cm²", "m", "L", "Pa", "%", "°F", "°C", "ACH50", "days", "weeks"),
)
_NUMBER = re.compile(
    r"(?<![\w.,])(−?)(?:(\d+)-)?(\d[\d,]*(?:\.\d+)?)(?:/(\d+))?(?!\w)(?: (" + "|".join(map(re.escape, _UNITS)) + r"))?"
)


def numbers(text):
    """The numbers of a text: the value, how many figures it has behind the point, and its unit, where one follows."""
    found = []
    for sign, whole, number, part, unit in _NUMBER.findall(text.replace("\xa0", " ")):
        value = float(number.rstrip(",").replace(",", "")) / float(part or 1) + float(whole or 0)
        found.append((-value if sign else value, 9 if part else len(number.partition(".")[2]), unit))
    return found


def agree(one, other):
    """Whether two numbers are the same as far as both are written, and of one unit if both have one."""
    apart, digits = abs(one[0] - other[0]), min(one[1], other[1])
    return apart <= 0.5001 * 10**-digits and (one[2] == other[2] or not (one[2] and other[2]))


@EACH
def test_its_pair_is_in_the_lesson_and_goes_against_its_holder(belief):
    """The holder's choice is there and is wrong, and both bets are made before either is shown."""
    beat, misled, _ = steps(belief.lesson, "us")[belief.step - 1]
    assert belief.id in beat.beliefs
    assert belief.id in lessons.lesson(belief.lesson).beliefs
    assert belief.id in misled, "who holds it has nothing to bet on, or is right"


@pytest.mark.parametrize("system", ["us", "si"])
@EACH
def test_what_breaks_it_is_told_with_the_numbers_of_the_lesson(belief, system):
    """Each number stands in its step, or in another one that is named beside it."""
    walked = steps(belief.lesson, system)
    named = [belief.step, *map(int, re.findall(r"[Ss]tep (\d)", belief.broken))]
    there = [each for number in named for each in walked[number - 1][2]]
    told = numbers(re.sub(r"[Ss]tep \d", "", words.shown(belief.broken, system)))
    assert told, "no number breaks it"
    missing = [each for each in told if not any(agree(each, other) for other in there)]
    assert not missing, missing


def test_wood_in_what_is_right_is_the_librarys():
    """Two of them say where wood ends at 90 %, and say the same."""
    drier, damper = (f"{100 * float(wood_moisture(each, 7.0)):.0f} %" for each in (0.8, 0.9))
    assert f"At 80 % RH it sits near {drier} MC, at 90 % near {damper}." in beliefs.belief("no-drops-no-problem").right
    assert f"at 90 % lumber ends at about {damper}" in beliefs.belief("logger-90-means-wet").right


def test_a_number_that_is_no_more_so_is_found():
    """As far as both are written: a rounded one is the same, a stale one is not, nor one of another unit."""
    ((shown,), (rounded,), (stale,), (other,)) = map(numbers, ("9.82 perm", "9.8 perm", "9.7 perm", "9.82 gallons"))
    assert agree(shown, rounded)
    assert not agree(shown, stale)
    assert not agree(shown, other)
    assert numbers("4-3/4 in. and −6.7 °C, 1,370 ft") == [(4.75, 9, "in."), (-6.7, 1, "°C"), (1370, 0, "ft")]


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
