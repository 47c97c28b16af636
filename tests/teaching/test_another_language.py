"""What teaches in another language: the lists, the instructor's pages, the quiz, the tasks, the learner's file."""

import html
import re

import pytest

import made_up
from dryward import language
from dryward.checks import PlainError
from dryward.teaching import beliefs, guide, kinds, lessons, paper, pathways, practical, words
from dryward.teaching.progress import Progress


@pytest.fixture
def elsewhere():
    """The made-up language."""
    with made_up.spoken():
        yield


def shown(page):
    """What of a page in HTML is read."""
    body = re.sub(r"<style>.*?</style>", "", page, flags=re.DOTALL)
    return html.unescape(re.sub(r"<[^>]*>", " ", body))


def test_the_lists_of_words_have_their_twins(elsewhere):
    told = [
        text
        for each in (*beliefs.beliefs(), *beliefs.slips())
        for text in (each.claim, each.seems, each.right, each.hint)
    ]
    told += [text for each in words.glossary() for text in (each.term, each.meaning, each.avoid)]
    told += [text for each in words.cautions() for text in (each.title, each.text)]
    told += [text for way in pathways.pathways() for text in (way.title, way.who, *(s.title for s in way.sessions))]
    assert len(told) > 200
    for each in told:
        assert made_up.unmarked(words.shown(each)) == [], each


def test_the_lists_follow_the_language():
    before = beliefs.beliefs(), words.cautions(), pathways.pathways()
    with made_up.spoken():
        assert [each.id for each in beliefs.beliefs()] == [each.id for each in before[0]]
        assert beliefs.beliefs()[0].claim == made_up.longer(before[0][0].claim)
        assert words.cautions()[0].source == before[1][0].source
        assert [each.minutes for each in pathways.pathways()] == [each.minutes for each in before[2]]
        assert pathways.pathways() != before[2]
    assert (beliefs.beliefs(), words.cautions(), pathways.pathways()) == before


def test_what_a_language_does_not_give_is_english(tmp_path):
    home = tmp_path / "xx"
    home.mkdir()
    known = words.cautions()
    (home / "cautions.toml").write_text(f'[[caution]]\nid = "{known[1].id}"\ntitle = "Vorher"\n', encoding="utf-8")
    language.use(home)
    try:
        found = words.cautions()
        assert (found[1].title, found[1].text) == ("Vorher", known[1].text)
        assert (found[0], found[2:]) == (known[0], known[2:])
    finally:
        language.use(None)


def test_the_instructors_pages_speak_another_language(elsewhere):
    code = [guide._MAKE, "paper.paper(41, paper.EXIT)", 'unit_system="si"']  # what is typed to make a quiz
    code += [each.asked for each in beliefs.beliefs() if "/" in each.asked]  # a lesson's check, as it is typed
    for name, page in guide.pages().items():
        for typed in code:
            page = page.replace(typed, " ")
        left = made_up.unmarked(page, ("kPa", "explain", *kinds.KINDS))  # kinds of questions, as they are typed
        assert left == [], (name, left[:20])


def test_a_quiz_on_paper_speaks_another_language(elsewhere):
    quiz = paper.paper(7, (*paper.EXIT, "explain"))
    for page in (quiz.quiz(), quiz.key()):
        assert '<html lang="xx">' in page
        assert made_up.unmarked(shown(page), ("us",)) == []


@pytest.mark.parametrize("kind", kinds.KINDS)
def test_every_kind_of_question_speaks_another_language(elsewhere, kind):
    for system in ("us", "si"):
        for seed in (None, 1, 2, 3, 4, 5):
            asked = kinds.draw(kind, seed, system)
            said = [asked.prompt, str(asked.answer) if isinstance(asked.answer, str) else ""]
            said += [text for each in asked.choices for text in (each.text, each.reply, each.hint, each.why)]
            for each in said:
                assert made_up.unmarked(each) == [], each


def test_a_task_says_in_another_language_what_came_of_a_try(elsewhere):
    task = next(each for each in practical.tasks() if set(each.start) - set(each.may_change))
    kept = next(name for name in task.start if name not in task.may_change)
    told = practical.judge(task.id, {kept: task.start[kept] * 1.1}, labels={kept: "§"})
    assert made_up.unmarked(told.words) == []
    assert "§" in told.words


def test_the_learners_file_is_refused_in_another_language(elsewhere, tmp_path):
    said = []
    for text in ("{", "[]", '{"format": "dryward progress", "version": 99, "events": []}'):
        (tmp_path / "dryward-progress.json").write_text(text, encoding="utf-8")
        said.append(Progress(tmp_path).trouble)
    for name, value in (("type_size", 3), ("projector", "maybe")):
        with pytest.raises(PlainError) as refused:
            Progress(tmp_path / "new").set(name, value)
        said.append(str(refused.value))
    for each in said:
        assert "⟦" in each
        own = ("dryward", "progress", "json", "projector", "maybe", "True", "False")
        assert made_up.unmarked(each, own) == [], each


def test_what_cannot_be_asked_for_is_refused_in_another_language(elsewhere):
    for ask in (
        lambda: paper.paper(1, ()),
        lambda: paper.paper(None),
        lambda: paper.passed(paper.paper(1, ("direction",)), "AB"),
        lambda: kinds.draw("direction", -1),
        lambda: pathways.placed([True]),
        lambda: words.table("nothing.toml"),
        lambda: words.build(words.Term, {"term": "§"}, "§"),
        lambda: words.build(words.Term, {"§": "§"}, "§"),
    ):
        with pytest.raises(PlainError, match="⟦") as refused:
            ask()
        assert made_up.unmarked(str(refused.value), ("nothing", "toml", "meaning")) == []


def test_the_lessons_stay_the_same():
    english = lessons.pages()
    with made_up.spoken():
        assert lessons.pages() == english
