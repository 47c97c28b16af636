"""The end of a lesson without a browser: hints, replies, what is shown again, beliefs still held, the way on."""

import json
from dataclasses import replace

import pytest
from lesson_page import open_page

from dryward import panels
from dryward.panels.learner import Leaving, Prediction, Questions, Settings
from dryward.teaching import beliefs, lessons, pathways
from dryward.teaching.progress import Progress

ID = "which-way-vapor-goes"
MENDED = ("read-the-air", "which-way-vapor-goes", "where-it-gets-wet", "the-film-that-changes")


@pytest.fixture
def page(tmp_path):
    return open_page(ID, tmp_path)


def place(question, right, nth=0):
    """The place of the right choice, or of a wrong one."""
    return [at for at, each in enumerate(question.choices) if each.right == right][nth]


def answer(page, number, right, nth=0):
    page.hear({"kind": "answer", "number": number, "choice": place(page.questions.asked[number], right, nth)})
    return page.widget.frame["questions"][number]


def finish(page):
    """Answer all right; a page that is covered keeps its questions back, and hears the answers all the same."""
    for number, question in enumerate(page.questions.asked):
        page.hear({"kind": "answer", "number": number, "choice": place(question, True)})


@pytest.mark.parametrize("id", lessons.pages())
def test_a_first_wrong_try_gets_a_hint_and_nothing_that_tells(id):
    for system in ("us", "si"):
        asked = Questions(id, system)
        for number, question in enumerate(asked.asked):
            for nth in range(len(question.choices) - 1):
                asked.tries = {}
                made = asked.answer(number, place(question, False, nth))
                card = asked.frame()[number]
                assert (card["right"], card["hint"], card["wrong"]) == (False, True, [card["chosen"]])
                assert card["found"] is None
                assert made.hint in card["reply"]
                told = {each.reply for each in question.choices} | {each.why for each in question.choices if each.why}
                assert not any(each in json.dumps(card, ensure_ascii=False) for each in told)


def test_the_second_wrong_try_is_told_in_full(page):
    first, second = answer(page, 0, False), answer(page, 0, False, 1)
    made = page.questions.asked[0].choices[second["chosen"]]
    assert first["hint"]
    assert (second["hint"], second["right"], second["reply"]) == (False, False, made.reply)
    assert second["wrong"] == sorted({first["chosen"], second["chosen"]})
    right = answer(page, 0, True)
    assert (right["right"], right["hint"]) == (True, False)
    assert right["reply"].startswith("Right.")


def test_a_right_first_try_is_told_why_and_later_ones_are_no_riddle(page):
    assert answer(page, 1, True)["reply"] == page.questions.asked[1].right.reply
    later = answer(page, 1, False)
    assert (later["hint"], later["right"], later["found"]) == (False, False, place(page.questions.asked[1], True))


def test_the_same_choice_sent_twice_is_one_try(page):
    answer(page, 0, False)
    assert answer(page, 0, False)["hint"]


def test_nothing_sent_before_an_answer_depends_on_which_one_is_right(page, monkeypatch):
    """Whichever choice were the right one, the browser would get the same."""
    before = page.questions.frame()
    for question in page.questions.asked:
        for each in question.choices:
            object.__setattr__(each, "right", not each.right)
    assert page.questions.frame() == before
    assert all((card["reply"], card["right"], card["found"]) == ("", False, None) for card in before)


def test_opened_again_it_shows_the_answers_given(page, tmp_path):
    answer(page, 0, False)
    answer(page, 1, False), answer(page, 1, False, 1)
    answer(page, 2, False), answer(page, 2, True)
    again = open_page(ID, tmp_path)
    assert again.widget.frame["questions"] == page.widget.frame["questions"]
    # In the other units the texts are others, and the answers the same.
    other = open_page(ID, tmp_path, "si").widget.frame["questions"]
    told = ("chosen", "right", "wrong", "hint")
    assert [[card[key] for key in told] for card in other] == [
        [card[key] for key in told] for card in page.widget.frame["questions"]
    ]
    assert answer(again, 0, False, 1)["hint"] is False, "a second try, also after a day"


def test_opened_again_it_asks_with_the_numbers_used_last(page, tmp_path):
    answer(page, 0, True)
    page.hear({"kind": "new_questions"})
    answer(page, 1, False)
    again = open_page(ID, tmp_path)
    assert again.questions.seed == page.questions.seed == 1
    assert [card["chosen"] is None for card in again.widget.frame["questions"]] == [True, False, True, True, True]
    again.hear({"kind": "new_questions"})
    assert again.questions.seed == 2
    assert answer(again, 1, False)["hint"], "new numbers are a new first try"


def test_what_no_kit_has_written_is_left_out():
    asked = Questions(ID, "us")
    asked.again([{"question": 7, "seed": "x"}, {"question": "no/such", "text": ["?"], "seed": -3}], "us")
    assert (asked.seed, asked.tries) == (None, {})


# --- do you still say so, and the way on --------------------------------------------------


def test_beliefs_and_the_way_on_come_after_the_last_right_answer(page):
    last = len(page.questions.asked) - 1
    for number in range(last):
        answer(page, number, True)
    assert (page.widget.frame["still"], page.widget.frame["on"]) == ([], {})
    page.hear({"kind": "still", "belief": "rh-drives-vapor", "holds": True})
    assert "did not understand" in page.trouble
    answer(page, last, True)
    claims = [each["claim"] for each in page.widget.frame["still"]]
    assert claims == [beliefs.belief(id).claim for id in page.lesson.beliefs]
    assert all(each["still"] is None and each["reply"] == "" for each in page.widget.frame["still"])
    page.hear({"kind": "new_questions"})
    assert page.widget.frame["on"], "whoever has finished may go on whatever numbers are asked"


def test_who_still_says_so_is_told_what_denies_it_here(page, tmp_path):
    finish(page)
    page.hear({"kind": "still", "belief": "rh-drives-vapor", "holds": True})
    page.hear({"kind": "still", "belief": "warm-to-cold", "holds": False})
    held, left = page.widget.frame["still"]
    assert beliefs.belief("rh-drives-vapor").right in held["reply"]
    assert dict(page.lesson.still)["rh-drives-vapor"] in held["reply"]
    assert beliefs.belief("warm-to-cold").grain in left["reply"]
    assert Progress(tmp_path).still_held(ID) == {"rh-drives-vapor": True, "warm-to-cold": False}
    assert open_page(ID, tmp_path).widget.frame["still"] == page.widget.frame["still"]
    page.hear({"kind": "still", "belief": "no-drops-no-problem", "holds": True})
    assert "did not understand" in page.trouble, "a belief that the lesson is not about"


@pytest.mark.parametrize("id", MENDED)
def test_the_lesson_says_what_denies_each_of_its_beliefs(id):
    lesson = lessons.lesson(id)
    assert [belief for belief, _ in lesson.still] == list(lesson.beliefs)


def test_a_lesson_on_all_beliefs_asks_for_the_ones_that_the_learner_showed(tmp_path):
    progress = Progress(tmp_path)
    lesson = lessons.lesson("your-roof")
    assert len(lesson.beliefs) == len(beliefs.beliefs())
    leaving = Leaving(lesson, Settings(progress))
    assert leaving.beliefs() == ()
    asked = Questions(ID, "us").asked[0]
    wrong = next(each for each in asked.choices if each.belief == "warm-to-cold")
    progress.answered(ID, asked, wrong)
    assert leaving.beliefs() == ("warm-to-cold",)


@pytest.mark.parametrize("way", pathways.pathways(), ids=lambda way: way.id)
def test_the_way_on_is_the_next_lesson_of_the_pathway(way, tmp_path):
    settings = Settings(Progress(tmp_path))
    settings.progress.set("pathway", way.id)
    on = pathways.order(way.id)
    for id in (ID, on[-1]):
        page = panels.page(id, settings=settings)
        finish(page)
        shown = page.widget.frame["on"]
        assert shown["chosen"] == way.id
        link = shown["links"][way.id]
        if id == on[-1]:
            assert (link["id"], link["file"]) == ("start", "00-start.ipynb")
        else:
            this = lessons.lesson(on[on.index(id) + 1])
            assert (link["id"], link["file"]) == (this.id, this.file)
            assert this.title in link["text"]


def test_a_lesson_that_is_not_on_the_way_leads_to_the_next_number():
    missing = next(id for id in lessons.pages() if id not in pathways.order("half-day"))
    at = lessons.pages().index(missing)
    assert pathways.around(missing, "half-day") == lessons.pages()[at - 1 : at + 2 : 2]


# --- the bet --------------------------------------------------------------------------------


@pytest.mark.parametrize("id", MENDED)
def test_before_the_bet_nothing_of_the_answer_is_sent(id, tmp_path):
    page = open_page(id, tmp_path)
    for choice in (None, *range(len(page.prediction.asked.choices))):
        if page.stage.on and choice is not None:
            break  # once more is played on the stage, where a bet is answered at once
        page.hear({"kind": "predict", "choice": choice})
        shown = page.widget.frame["prediction"]
        assert (shown["right"], shown["reply"]) == (None, "")
        sent = json.dumps(page.widget.frame, ensure_ascii=False)
        assert page.lesson.prediction.reveal not in sent
        assert not any(each.reply in sent for each in page.lesson.prediction.choices)


@pytest.mark.parametrize("id", MENDED)
def test_each_choice_of_the_bet_has_a_reply_of_its_own(id, tmp_path):
    page = open_page(id, tmp_path)
    replies = []
    for choice, option in enumerate(page.lesson.prediction.choices):
        page.hear({"kind": "predict", "choice": choice})
        page.hear({"kind": "reveal"})
        shown = page.widget.frame["prediction"]
        assert page.lesson.prediction.choices[shown["right"]].key == page.lesson.prediction.right
        assert shown["reply"] == option.reply
        replies.append(option.reply)
    assert all(replies)
    assert len(set(replies)) == len(replies)


def test_a_class_and_a_lesson_without_replies_hear_the_one_text(page, tmp_path):
    page.hear({"kind": "predict", "choice": 0})
    page.hear({"kind": "instructor", "value": True})
    assert page.widget.frame["prediction"]["right"] is None
    page.hear({"kind": "reveal"})
    assert page.widget.frame["prediction"]["reply"] == page.lesson.prediction.reveal
    asked = page.lesson.prediction
    bare = Prediction(replace(asked, choices=tuple(replace(each, reply="") for each in asked.choices)))
    bare.choose(0)
    assert bare.reply(to_class=False) == asked.reveal
