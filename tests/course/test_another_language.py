"""In another language the checks of a lesson say nothing in English; `tests/screens` asks the pages."""

import pytest

import made_up
from dryward.teaching import lessons, questions

PAGES = lessons.pages()


@pytest.fixture(scope="module")
def spoken():
    """The made-up language."""
    with made_up.spoken():
        yield


def unmarked(texts):
    """Each text that is not all marked, with the words that are not."""
    # A class of the code has a number, no name.
    return {text: found for text in texts if (found := made_up.unmarked(text, ("II",)) + made_up.points(text))}


@pytest.mark.parametrize("seed", [None, 1, 2])
@pytest.mark.parametrize("id", PAGES)
def test_the_checks_of_a_lesson(spoken, id, seed):
    texts = set()
    for system in ("us", "si"):
        for asked in questions.checks(id, seed, system):
            texts |= {
                asked.prompt,
                *(text for choice in asked.choices for text in (choice.text, choice.reply, choice.hint)),
            }
    assert unmarked(texts) == {}
