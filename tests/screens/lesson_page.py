"""What every lesson page must do, for the tests of single lessons."""

import itertools

from dryward import panels
from dryward.panels.learner import Settings
from dryward.teaching import lessons
from dryward.teaching.progress import Progress


def open_page(id, folder, system="us"):
    """The free page of a lesson, as who has been there comes back to it, with settings of its own."""
    settings = Settings(Progress(folder))
    settings.predicted(id, lessons.lesson(id).prediction.right)
    return panels.page(id, unit_system=system, settings=settings)


def first_visit(id, folder, system="us"):
    """A lesson as it is met for the first time: on its first beat, or covered until a bet is made."""
    return panels.page(id, unit_system=system, settings=Settings(Progress(folder)))


def to_beat(page, number):
    """Go to a beat, every earlier bet made."""
    for k in range(number):
        bet_all(page)
        page.hear({"kind": "beat", "number": k + 1})
        assert page.trouble == ""
    return page.stage.beat


def bet_all(page, choices=()):
    """Make the open bets of a beat, the first choice where none is given."""
    for choice in itertools.chain(choices, itertools.repeat(0)):
        if page.stage.open_bet is None:
            return
        page.hear({"kind": "bet", "choice": choice})
        assert page.trouble == ""


def on_beat(id, folder, number, system="us"):
    """A page on one of its beats, all bets before it and on it made."""
    page = first_visit(id, folder, system)
    to_beat(page, number)
    bet_all(page)
    return page


def on_the_way(page, choice=0):
    """From a first visit to the free page: every bet made, and what a beat unlocks moved along; stops at each place."""
    yield page
    while page.covered:
        if page.stage.on and page.stage.open_bet is None:
            control = page.controls.get(page.stage.beat.unlocks)
            for value in () if control is None else control.options or [control.at(k / 4) for k in range(5)]:
                page.hear({"kind": "moved", "serial": 1, "system": page.unit_system, "values": {control.name: value}})
                assert page.trouble == ""
                yield page
            page.hear({"kind": "beat", "number": page.stage.at + 1})
        else:
            page.hear({"kind": "predict", "choice": choice})
        assert page.trouble == ""
        yield page


def to_both_ends(page):
    """Move each control to both ends and through every choice, alone, and back.

    Gives ``(name, value, readouts, sentence)`` of each place.
    """
    seen = []
    for name, control in page.controls.items():
        start = control.value
        for value in control.options or (control.min, control.max):
            control.value = value
            assert control.value == value
            assert page.trouble == ""
            assert page.sentence.endswith(".")
            assert "day a day" not in page.sentence, "the unit of a flux says it already"
            assert page.picture[8:12] == b"WEBP"
            assert all(page.alts)
            assert len([each for each in page.readout_list if not each.hidden]) <= 5
            assert set(page.strips_shown) == set(page.controls), "a strip under every control"
            assert page.steps(page.state)
            for each in page.readout_list:
                shown = each.shown(page.unit_system)
                assert not {"nan", "inf"} & set(f"{shown['value']} {shown['also']}".split())
            seen.append((name, value, dict(page.readouts), page.sentence))
        control.value = start
    return seen


def replies(page):
    """Whether each answer to each check is right, and its reply; on the fixed and on drawn numbers."""
    found = []
    for _ in range(2):
        for number, question in enumerate(page.questions.asked):
            for choice in range(len(question.choices)):
                page.hear({"kind": "answer", "number": number, "choice": choice})
                card = page.widget.frame["questions"][number]
                found.append((number, card["right"], card["reply"]))
        page.hear({"kind": "new_questions"})
    return found


def check_replies(page):
    """One right answer to each check, a reply to every wrong one."""
    found = replies(page)
    asked = len(page.questions.asked)
    assert 3 <= asked <= 5
    assert sum(right for _, right, _ in found) == 2 * asked
    assert all(len(reply) > 15 for _, right, reply in found if not right)
    assert {number for number, *_ in found} == set(range(asked))


def places(page):
    """Each control at both ends and at every choice, alone, the others at their start; gives page.at there."""
    for control in page.controls.values():
        start = control.value
        for value in control.options or (control.min, control.max):
            control.value = value
            yield page.at
        control.value = start


def strips_are_the_page(page, every=6):
    """Each strip says at some of its places what the page says when the control is moved there."""
    seen = set()
    for name, strip in page.strips(page.at, page.state).items():
        control = page.controls[name]
        start, states = control.value, strip.states
        places = control.options or control.along(len(states))
        for place in range(0, len(places), 1 if control.options else max(1, len(places) // every)):
            shown = (
                places[place] if control.options else min(max(control.shown(places[place]), control.min), control.max)
            )
            control.value = shown
            assert states[place] == page.readouts["state"], (name, shown, states[place], page.sentence)
            seen.add(states[place])
        control.value = start
    return seen
