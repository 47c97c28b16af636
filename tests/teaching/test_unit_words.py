"""Each unit system has its own words: no perms beside an sd, no grains or inches for a metric reader."""

import re

import pytest
from reading import notes

from dryward.teaching import beliefs, kinds, lessons, practical, questions, words

SEEDS = (None, *range(15))
NAMES = [*(("kind", kind) for kind in kinds.KINDS), *(("checks", id) for id in lessons.pages())]
#: Units that only a US reader uses; in. Hg is never shown to a metric one either.
AMERICAN = re.compile(
    r"°F|\bgr/ft²|\bgrains?\b|\d in\.|\binches\b|\bfoot\b|\bfeet\b|\d ft\b|\bft[²³]|in²|\bcfm\b|\blb\b|\bpounds?\b"
    r"|\bR-\d|\bquarts?\b|\bpints?\b|\d perms?\b"
)
METRIC = re.compile(r"°C|\bg/m²|m sd\b|\bsd\b|\d mm\b|\bm³/h|\bRSI\b|\bkg\b|g in each cubic meter|centimeter")


def said(question):
    """All texts of a question."""
    return (question.prompt, *(text for each in question.choices for text in (each.text, each.reply)))


def of_lesson(lesson):
    """What a page says, without its sources, which are quoted as they were read."""
    guess = lesson.prediction
    yield from (lesson.question, lesson.takeaway, *lesson.objectives, *lesson.limits, guess.prompt, guess.reveal)
    yield from (each.text for each in guess.choices)


def no_strange_word(text, system):
    found = (METRIC if system == "us" else AMERICAN).search(text)
    assert not found, (found.group(), text)
    if re.search(r"m sd\b", text):
        assert not re.search(r"\bperms?\b", text), text


@pytest.mark.parametrize("system", ["us", "si"])
@pytest.mark.parametrize(("what", "name"), NAMES)
def test_questions(what, name, system):
    for seed in SEEDS:
        drawn = (kinds.draw(name, seed, system),) if what == "kind" else questions.checks(name, seed, system)
        for question in drawn:
            for text in said(question):
                no_strange_word(text, system)


@pytest.mark.parametrize("system", ["us", "si"])
@pytest.mark.parametrize("id", [each.id for each in lessons.lessons()])
def test_lessons(id, system):
    for text in of_lesson(lessons.lesson(id, system)):
        no_strange_word(text, system)


@pytest.mark.parametrize("system", ["us", "si"])
def test_beliefs_notes_and_tasks(system):
    texts = [text for each in (*beliefs.beliefs(), *beliefs.slips()) for text in (each.seems, each.right, each.grain)]
    for id in lessons.pages():
        note = notes(id)
        texts += [*note.ask, *note.props, *note.traps, note.split, note.more]
    texts += [each.text for each in practical.tasks()]
    for text in texts:
        no_strange_word(words.shown(text, system), system)


def test_a_claim_is_the_same_in_both_systems():
    """A key and a class list print the claim as it stands."""
    for each in (*beliefs.beliefs(), *beliefs.slips()):
        assert words.shown(each.claim, "us") == words.shown(each.claim, "si") == each.claim


def test_two_wordings_in_one_text():
    text = "{us: Turn {1 perm} over | si: Add {1 perm}}. It is {20 degF}."
    assert words.shown(text, "us") == "Turn 1 perm over. It is 20 °F."
    assert words.shown(text, "si") == "Add 3.5 m sd. It is −6.7 °C."


def test_a_row_comes_to_one_answer_in_each_system():
    us, si = (lessons.lesson("how-fast-perms", system).prediction for system in ("us", "si"))
    assert "0.46 perm" in us.choice(us.right).text
    assert "7.6 m sd" in si.choice(si.right).text
    assert "1/5.96 + 1/1 + 1/1" in us.reveal
    assert "0.6 + 3.5 + 3.5" in si.reveal
    assert "/" not in si.reveal


@pytest.mark.parametrize("seed", SEEDS)
def test_classes_run_down_in_sd(seed):
    text = kinds.draw("retarder-class", seed, "si").right.reply
    assert "Class I: 35 m sd or more. Class II: 3.5 to 35. Class III: 0.35 to 3.5." in text


@pytest.mark.parametrize("seed", SEEDS)
def test_a_flow_in_an_hour_needs_no_sixty(seed):
    us, si = (kinds.draw("air-changes", seed, system) for system in ("us", "si"))
    assert "60 minutes times" in us.right.reply
    assert "60" not in re.sub(r"[\d.]*\d (?=m³)|\d+\.\d+", "", si.right.reply)
    slip = next(each for each in si.choices if each.belief == "forgets-sixty")
    assert slip.value == pytest.approx(60 * si.answer)


@pytest.mark.parametrize("seed", SEEDS)
def test_an_average_is_of_what_the_reader_sees(seed):
    for system in ("us", "si"):
        found = kinds.draw("series-perms", seed, system)
        slip = next((each for each in found.choices if each.belief == "averages-layers"), None)
        if slip and system == "si":
            assert slip.value == pytest.approx(found.answer / 3)
