"""The way back to the picture: after it the page shows what the words that deny a belief say."""

import re

import pytest
from lesson_page import open_page

from dryward import units
from dryward.teaching import lessons, words
from turns import in_turn

#: A number and what it counts: ``0.5 perm``, ``88 days``, ``R-5``.
_COUNTED = re.compile(r"(R-|RSI )?(?<![\w.,])(\d+(?:\.\d+)?)(?![.,]?\d)[ \u00a0\u202f]?([^\s\d]*)")
#: Beliefs whose words name nothing to set on the page.
NOTHING_TO_SET: frozenset[tuple[str, str]] = frozenset()
#: Fields of the desk, away from what the words ask for.
AWAY = {"your-readings": {"sample": "cause-rain-leak", "spot:humidity": "40 %", "meter:reading": "30 %"}}
#: Lessons that take a year by the hour for each place: they are not moved away first.
HOURLY = ("hour-by-hour",)
WITH_WORDS = [each.id for each in lessons.lessons() if each.still]


def counted(*texts):
    """The numbers of texts, each as its digits and its unit, or what it counts."""
    found = [each for text in texts for each in _COUNTED.findall(re.sub("[()]", "", text).replace("−", ""))]
    return {(digits, head or unit.rstrip(".,:;?")) for head, digits, unit in found if head or unit}


def on_page(said, shown):
    """Those numbers that stand on the page, or are one of its own rounded."""
    return {
        (digits, unit)
        for digits, unit in said
        for here, its in shown
        if its == unit and round(float(here), len(digits.partition(".")[2])) == float(digits)
    }


def texts_of(thing):
    """All texts of what the browser is told."""
    if isinstance(thing, str):
        return [thing]
    inner = thing.values() if isinstance(thing, dict) else thing if isinstance(thing, list | tuple) else ()
    return [text for each in inner for text in texts_of(each)]


def page_texts(page):
    """What the page says as it stands: sentence, readouts, pictures in words, arithmetic and desk."""
    live = page.widget.live
    told = [live[name] for name in ("sentence", "readouts", "alts", "steps")]
    return texts_of([*told, page.widget.desk])


def said_as(asked, system):
    """A place of a control as the words have it in a reader's units."""
    number, unit = asked.split(" ")
    return words.number(number, unit, system) if unit in units.UNITS else asked


@pytest.mark.parametrize(("id", "system"), in_turn(WITH_WORDS, ("us", "si")))
def test_the_way_back_shows_what_its_words_say(id, system, tmp_path):
    """It sets all that the words name and nothing else, and then a number of theirs stands on the page that did not."""
    page = open_page(id, tmp_path, system)
    page.hear({"kind": "fold", "key": "arithmetic", "open": True})
    raw, sets = dict(lessons.read(page.lesson.folder).still), dict(page.lesson.sets)
    for belief, said in page.lesson.still:
        if (id, belief) in NOTHING_TO_SET:
            assert belief not in sets
            continue
        for control in page.controls.values():
            if id not in HOURLY:
                control.put(control.options[-1] if control.options else control.max)
        page.refresh()
        for key, value in AWAY.get(id, {}).items():
            page.act(key, value)
        before = counted(*page_texts(page)) if id not in HOURLY else set()
        page.hear({"kind": "set_out", "belief": belief})
        assert page.trouble == ""
        places = set()
        for name, control in page.controls.items():
            asked = sets[belief].get(name)
            if asked is None:
                assert control.value == control.start
            elif control.options:
                assert control.value == asked
            else:
                assert asked in raw[belief] or asked in said, "a number that the words do not name"
                assert control.value == control.read(asked)
                places |= counted(said_as(asked, system))
        for name in sets[belief].keys() - page.controls.keys():
            assert sets[belief][name] in texts_of(page.widget.desk)
            places |= counted(sets[belief][name])
        left = counted(said) - places
        assert on_page(left, counted(*page_texts(page)) - before), (belief, left, page_texts(page))
    before = vars(page.at)
    page.hear({"kind": "set_out", "belief": "rh-drives-vapor" if id == "july" else "barrier-always-inside"})
    assert vars(page.at) == before, "a belief that sets nothing is refused"
