"""Who is told to put a hand into a roof or a wall is told there what to mind first."""

import re
from pathlib import Path

import pytest

from dryward import language
from dryward.teaching import beliefs, guide, kinds, lessons, questions, words
from dryward.teaching.practical import tasks

GUIDE = sorted((Path(__file__).parents[2] / "lessons" / "guide").rglob("*.md"))
MESSAGES = sorted(Path(language.__file__).parent.rglob("*.ftl"))
#: What is proposed to be done, and to what.
ACT = re.compile(
    r"\b(you|we|they|to|and|then|first) (open|cut|drill|feel|pull|reach|peel|probe|take (down|off|out))\b"
    r"|^(open|feel|cut|drill|reach|probe|pull|peel)\b|\b(your|a|one) (hand|finger) (in|into|first|behind|under)\b"
    r"|\bput a (meter|logger|probe|hand)\b",
    re.IGNORECASE,
)
PLACE = re.compile(
    r"\b(roof|vault|wall|ceiling|attic|bay|deck|sheathing|insulation|cavity|wood|rafter|drywall|plaster)s?\b|anything",
    re.IGNORECASE,
)
#: A sentence that warns of the act.
WARNS = re.compile(r"\bbefore you (open|reach)\b", re.IGNORECASE)


def proposed(text):
    """The sentences of a text that propose such an act."""
    found = re.split(r"(?<=[.?!:])\s+|\n", text)
    return [each for each in found if ACT.search(each) and PLACE.search(each) and not WARNS.search(each)]


def careful(text):
    """Whether a text says what to mind: the power and the dust."""
    return "power" in text and re.search(r"\b(mask|respirator|dust)\b", text)


def strings(thing):
    """Every text in what a lesson says."""
    if isinstance(thing, str):
        yield thing
    elif isinstance(thing, (tuple, list)):
        for each in thing:
            yield from strings(each)
    elif hasattr(thing, "__dataclass_fields__"):
        for name in thing.__dataclass_fields__:
            if name not in ("worked", "sources"):
                yield from strings(getattr(thing, name))


def test_an_act_is_seen():
    assert proposed("You open a vault in January: where do you feel for water first?")
    assert proposed("It is wet. Put a meter in the wood.")
    assert not proposed("The film opens in July. A roof that is open outside can take a lot.")


@pytest.mark.parametrize("lesson", lessons.lessons(), ids=lambda each: each.id)
def test_lessons(lesson):
    acts = [act for text in strings(lesson) for act in proposed(text) if not careful(text)]
    assert not acts or careful(lesson.care), acts


def test_the_lesson_that_opens_a_roof():
    lesson = lessons.lesson("where-it-gets-wet")
    assert proposed(lesson.question)
    assert proposed(lesson.takeaway)
    assert careful(lesson.care)
    assert guide.sheet(lesson.id).count(lesson.care) == 2


def of_questions():
    for id in lessons.pages():
        yield from questions.checks(id, 2)
    yield from (kinds.draw(kind, 2) for kind in kinds.KINDS)


def test_questions_beliefs_terms_and_tasks():
    for each in of_questions():
        for text in (each.prompt, *(choice.text for choice in each.choices), *(one.reply for one in each.choices)):
            assert not proposed(text) or careful(text), text
    for each in (*beliefs.beliefs(), *beliefs.slips(), *words.glossary(), *tasks()):
        for text in strings(each):
            assert not proposed(text) or careful(text), text


@pytest.mark.parametrize("path", MESSAGES, ids=lambda path: path.stem)
def test_messages(path):
    for line in path.read_text("utf-8").splitlines():
        text = line.partition("=")[2].strip() if re.match(r"[a-z]", line) else line.strip()
        assert line.startswith("#") or not proposed(text) or careful(text), line


@pytest.mark.parametrize("page", GUIDE, ids=lambda page: page.stem)
def test_the_guide(page):
    text = page.read_text("utf-8")
    assert not proposed(text) or careful(text), proposed(text)
