"""The list of lessons: whole, in order, and each belief met and named."""

import re
import shutil

import pytest

from dryward.checks import BadFile, UnknownName
from dryward.teaching import beliefs, guide, lessons, words

ALL = lessons.lessons()
IDS = [each.id for each in ALL]


def test_lessons_are_numbered_without_a_gap_behind_the_index():
    assert [each.number for each in ALL] == list(range(len(ALL)))
    assert lessons.pages() == tuple(IDS[1:])
    assert lessons.lesson("july").file == "09-july.ipynb"


@pytest.mark.parametrize("lesson", ALL, ids=IDS)
def test_a_lesson_is_whole(lesson):
    assert lesson.question.endswith("?")
    assert lesson.objectives
    assert lesson.limits
    assert lesson.sources
    assert lesson.takeaway
    assert lesson.cautions
    assert set(lesson.levels) <= {"Remember", "Understand", "Apply", "Analyze"}
    assert set(lesson.needs) <= set(IDS[1 : max(lesson.number, 1)])
    for id in lesson.cautions:
        assert words.caution(id).text
    right = lesson.prediction.choice(lesson.prediction.right)
    assert right.belief == ""
    wrong = [each for each in lesson.prediction.choices if each != right]
    assert len(wrong) >= 2
    for each in wrong:
        assert beliefs.belief(each.belief)


@pytest.mark.parametrize("lesson", ALL[1:], ids=IDS[1:])
def test_a_lesson_names_the_beliefs_it_meets(lesson):
    """A belief is met when a prediction, another bet or a check of the lesson offers it as a wrong answer."""
    from dryward.teaching import questions

    if len(lesson.beliefs) == len(beliefs.beliefs()):
        return  # it looks back at all of them
    offered = {each.belief for each in lesson.prediction.choices}
    play = lessons.module(lesson.id, "page").PAGE.play
    offered |= {spot.belief for beat in (play.beats if play else ()) for bet in beat.bets for spot in bet.spots}
    for seed in (None, 1, 2, 3):
        for question in questions.checks(lesson.id, seed):
            offered |= {each.belief for each in question.choices}
    assert set(lesson.beliefs) <= offered


def test_the_lessons_take_as_long_as_the_self_study_says():
    hours, minutes = divmod(sum(each.minutes for each in ALL[1:]), 60)
    assert f"In all {hours} h {minutes} min." in guide.pathways_page()


def test_every_belief_is_met_before_the_last_lesson_looks_back_at_all():
    last = lessons.lesson("your-roof")
    assert {id for each in ALL if each != last for id in each.beliefs} == {each.id for each in beliefs.beliefs()}
    assert set(last.beliefs) == {each.id for each in beliefs.beliefs()}


def texts(thing):
    """Every text in a lesson, a belief or a term."""
    if isinstance(thing, str):
        yield thing
    elif isinstance(thing, tuple):
        for each in thing:
            yield from texts(each)
    elif hasattr(thing, "__dataclass_fields__"):
        for name in set(thing.__dataclass_fields__) - {"worked"}:  # code, and the words to it
            yield from texts(getattr(thing, name))


@pytest.mark.parametrize("system", ["us", "si"])
def test_numbers_are_shown_in_the_readers_units(system):
    for each in lessons.lessons(system):
        whole = " ".join(texts(each))
        assert "{" not in whole
        assert "}" not in whole
        assert ("°F" in whole) <= (system == "us")
        assert ("°C" in whole) <= (system == "si")


def test_the_two_unit_systems_say_the_same():
    us, si = lessons.lesson("july"), lessons.lesson("july", "si")
    assert "85 °F" in us.prediction.prompt
    assert "29.4 °C" in si.prediction.prompt


def test_spelling_and_promises():
    """US spelling, and none of the words that promise too much."""
    everything = (*ALL, *beliefs.beliefs(), *beliefs.slips(), *words.glossary(), *words.cautions())
    for each in everything:
        for text in texts(each):
            if "avoid" in getattr(each, "__dataclass_fields__", {}) and text == each.avoid:
                continue
            assert not re.search(r"vapour|colour|mould\b|metre\b|fibre\b|centre\b", text), text
            assert not re.search(r"\bsafe\b|certified", text), text


def test_an_unknown_lesson_or_unit_system_is_one_sentence():
    with pytest.raises(UnknownName, match='There is no lesson "jully"; did you mean july'):
        lessons.lesson("jully")
    with pytest.raises(UnknownName, match='There is no unit system "metric"'):
        lessons.lessons("metric")


def test_a_broken_teaching_file_is_one_sentence():
    row = {"term": "perm"}
    with pytest.raises(BadFile, match=r'The teaching file x\.toml lacks the key "meaning"'):
        words.build(words.Term, row, "x.toml")
    with pytest.raises(BadFile, match=r'The teaching file x\.toml has a key "mening" that is not known'):
        words.build(words.Term, {**row, "meaning": "m", "mening": "m"}, "x.toml")
    with pytest.raises(BadFile, match=r"The teaching file nothing\.toml is missing; install the kit again"):
        words.table("nothing.toml")


def test_a_teaching_file_that_is_no_toml_is_one_sentence(tmp_path, monkeypatch):
    (tmp_path / "bad.toml").write_text("a = = 1")
    monkeypatch.setattr(words, "_DATA", tmp_path)
    with pytest.raises(BadFile, match=r"The teaching file bad\.toml cannot be read"):
        words.table("bad.toml")


@pytest.mark.parametrize(
    ("was", "put", "sentence"),
    [
        ("prediction", "guess", r"The lesson file july/lesson\.toml lacks the table \[prediction\]"),
        ('right = "b"', 'right = "z"', r'july/lesson\.toml has a fault: There is no choice "z"'),
        (
            '"wet-and-moldy"',
            '"wet-and-mold"',
            'has a fault: There is no caution "wet-and-mold"; did you mean wet-and-moldy',
        ),
        ("number = 9", "number = -9", r"the number is -9; it must be a whole number from 0 up"),
        ("number = 9", "number = = 9", r"july/lesson\.toml cannot be read"),
        ("number = 9", "nomber = 9", r'has a key "nomber" that is not known'),
    ],
)
def test_a_broken_lesson_file_is_one_sentence(was, put, sentence, tmp_path):
    folder = tmp_path / "july"
    shutil.copytree(lessons.lesson("july").folder, folder)
    words_of_it = (folder / "lesson.toml").read_text("utf-8")
    assert was in words_of_it
    (folder / "lesson.toml").write_text(words_of_it.replace(was, put), "utf-8")
    with pytest.raises(BadFile, match=sentence):
        lessons.read(folder)


def test_a_choice_that_is_not_there_is_one_sentence():
    with pytest.raises(UnknownName, match='There is no choice "z"'):
        ALL[1].prediction.choice("z")
