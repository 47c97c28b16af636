"""In another language a lesson says nothing in English: its page, its picture in words, its checks and tasks."""

import pytest
from lesson_page import open_page, places

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


@pytest.mark.parametrize("id", PAGES)
def test_what_a_page_says(spoken, id, tmp_path):
    system = ("us", "si")[PAGES.index(id) % 2]  # each page in one: the units themselves have their own test
    page, texts = open_page(id, tmp_path, system), set()
    for _ in places(page):
        texts |= {page.sentence, *page.alts, page.trouble}
        for readout in page.readout_list:
            shown = readout.shown(system)
            texts |= set() if readout.hidden else {readout.words, shown["value"], shown["also"]}
        texts |= {text for step in page.steps(page.state) for text in (step.words, step.sum, step.result)}
        if page.slow:
            break  # one run says it all
    assert unmarked(texts) == {}
