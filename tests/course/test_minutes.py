"""The minutes of a lesson that is played: walked at the speed of one who reads, not guessed."""

import pytest
from lesson_page import first_visit

from dryward.teaching import lessons

PLAYED = [id for id in lessons.pages() if lessons.module(id, "page").PAGE.play is not None]
#: Words a minute, and seconds for each act: a bet, a slider that is moved, an answer.
READ, ACT = 200.0, 20.0


def words(*texts):
    return sum(len(text.split()) for text in texts)


def walked(page):
    """Minutes from the first beat to the way on, each bet and each check wrong once."""
    read, acts = words(page.widget.frame["question"]), 0
    for number in range(len(page.stage.beats)):
        frame = page.widget.frame["stage"]
        read += words(frame["say"], frame["ask"], *frame["titles"])
        for bet in frame["bets"]:
            read += words("" if bet["said"] else bet["prompt"], *(each["text"] for each in bet["choices"]))
        while page.stage.open_bet:
            page.hear({"kind": "bet", "choice": 0})
            acts += 1
        if page.stage.beat.unlocks:
            control = page.controls[page.stage.beat.unlocks]
            for value in control.options or [control.at(k / 20) for k in range(21)]:
                page.widget.moves = {"serial": 1, "system": "us", "values": {control.name: value}}
                if page.widget.live["stage"]["done"]:
                    break
            acts += 1
        live = page.widget.live["stage"]
        assert live["done"]
        read += words(live["told"], live["also"], *(tag["text"] for scene in live["scenes"] for tag in scene["tags"]))
        read += words(*(bet["reply"] for bet in page.widget.frame["stage"]["bets"]))
        page.hear({"kind": "beat", "number": number + 1})
    frame = page.widget.frame
    read += words(page.widget.live["sentence"], frame["takeaway"], *(each["text"] for each in frame["cautions"]))
    acts += 1  # one move of one's own
    for number, question in enumerate(frame["questions"]):
        read += words(question["prompt"], *question["choices"])
        right = next(k for k, each in enumerate(page.questions.asked[number].choices) if each.right)
        for choice in (right - 1 if right else 1, right):
            page.hear({"kind": "answer", "number": number, "choice": choice})
            read += words(page.widget.frame["questions"][number]["reply"])
            acts += 1
    for each in page.widget.frame["still"]:
        read += words(each["claim"])
        acts += 1
    return read / READ + acts * ACT / 60.0


#: Where the learner's own work is done: a roof is built in more than its walk takes.
AT_THE_DESK = {"your-roof"}


@pytest.mark.parametrize("id", PLAYED)
def test_the_minutes_are_those_of_a_walk(id, tmp_path):
    found = walked(first_visit(id, tmp_path))
    if id in AT_THE_DESK:
        assert lessons.lesson(id).minutes > 3 * found
        return
    assert abs(lessons.lesson(id).minutes - found) <= 1.0, f"walked in {found:.1f} minutes"
