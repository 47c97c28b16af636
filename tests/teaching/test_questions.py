"""The questions: each kind and each lesson's checks over many seeds, and the fixed numbers."""

import pytest

from dryward.checks import OutOfRange, UnknownName
from dryward.teaching import beliefs, kinds, lessons, questions

SEEDS = (None, *range(12))
NAMES = [*(("kind", kind) for kind in kinds.KINDS), *(("checks", id) for id in lessons.pages())]


def drawn(what, name, seed, unit_system="us"):
    if what == "kind":
        return (kinds.draw(name, seed, unit_system),)
    return questions.checks(name, seed, unit_system)


@pytest.mark.parametrize(("what", "name"), NAMES)
def test_every_question_is_sound(what, name):
    known = {each.id for each in (*beliefs.beliefs(), *beliefs.slips())}
    for seed in SEEDS:
        for question in drawn(what, name, seed):
            assert question.seed == seed
            assert question.prompt.endswith(("?", ".")), question.prompt
            if name == "explain":
                assert not question.choices
                continue
            assert [each.right for each in question.choices].count(True) == 1
            assert len(question.choices) >= 3
            texts = [each.text for each in question.choices]
            assert len(set(texts)) == len(texts)
            for each in question.choices:
                assert each.reply
                assert bool(each.belief) != each.right
                assert each.right or each.belief in known
                assert each.right or each.reply.startswith("Why it looked right: ")
                assert each.right or " What is right: " in each.reply
            assert question.right.reply.startswith("Right. ")
            assert "nan" not in question.prompt.split()
            whole = " ".join([question.prompt, *texts, *(each.reply for each in question.choices)])
            for slip in ("..", " inf", "nan %", "{", "}", "e+"):
                assert slip not in whole, whole


@pytest.mark.parametrize(("what", "name"), NAMES)
def test_numbers_stand_clear_of_each_other(what, name):
    for seed in SEEDS:
        for question in drawn(what, name, seed):
            if isinstance(question.answer, str):
                continue
            assert question.tolerance > 0
            assert question.right.value == question.answer
            for each in question.choices:
                assert each.right or abs(each.value - question.answer) > question.tolerance


@pytest.mark.parametrize(("what", "name"), NAMES)
def test_the_same_seed_gives_the_same_question(what, name):
    assert drawn(what, name, 7) == drawn(what, name, 7)


@pytest.mark.parametrize(("what", "name"), NAMES)
def test_seeds_give_other_numbers(what, name):
    given = {repr([each.given for each in drawn(what, name, seed)]) for seed in range(12)}
    assert len(given) >= 4


@pytest.mark.parametrize(("what", "name"), NAMES)
def test_the_metric_question_is_the_same_question(what, name):
    for us, si in zip(drawn(what, name, 3), drawn(what, name, 3, "si"), strict=True):
        assert us.given == si.given
        assert "°F" not in si.prompt
        assert [each.belief for each in us.choices] == [each.belief for each in si.choices]
        assert [each.right for each in us.choices] == [each.right for each in si.choices]


def test_there_are_sixteen_kinds_and_four_must_be_right():
    assert len(kinds.KINDS) == 16
    must = [kind for kind in kinds.KINDS if kinds.draw(kind, 1).must]
    assert must == ["direction", "line-or-water", "film-state", "leak-or-diffusion"]


def test_each_lesson_has_three_to_five_checks_and_the_index_none():
    assert questions.checks("start", 1) == ()
    for id in lessons.pages():
        assert 3 <= len(questions.checks(id)) <= 5


def test_an_unknown_kind_is_one_sentence():
    with pytest.raises(UnknownName, match='There is no kind of question "dew-pont"; did you mean dew-point'):
        kinds.draw("dew-pont")


def test_an_unknown_lesson_is_one_sentence():
    with pytest.raises(UnknownName, match='There is no lesson "jully"; did you mean july'):
        questions.checks("jully")


@pytest.mark.parametrize("seed", [-1, 2.5, "x", True])
def test_a_seed_is_a_whole_number(seed):
    with pytest.raises(OutOfRange, match="A seed is a whole number from 0 up"):
        kinds.draw("dew-point", seed)


def test_a_wrong_answer_may_have_a_reason_of_its_own():
    replies = {each.text: each.reply for check in questions.checks("your-readings", 0) for each in check.choices}
    assert replies["A broken logger."].startswith("Why it looked right: Loggers do fail")
    assert "comes and goes with the sun" in replies["A broken logger."]
    replies = {each.text: each.reply for check in questions.checks("which-way-vapor-goes", 0) for each in check.choices}
    assert "so vapor pushes up" in replies["Neither way. The warm air lies on top like a lid."]


def all_checks():
    """The checks of all lessons, fixed and drawn, in both unit systems."""
    for id in lessons.pages():
        for system in ("us", "si"):
            for seed in (None, 0, 1, 2, 3):
                yield from questions.checks(id, seed, system)


def all_questions():
    """Those, and the kinds of the generator."""
    yield from all_checks()
    for kind in kinds.KINDS:
        for system in ("us", "si"):
            for seed in (None, 0, 1, 2, 3):
                yield kinds.draw(kind, seed, system)


def test_each_wrong_answer_has_a_reply_of_its_own():
    for asked in all_questions():
        replies = [each.reply for each in asked.choices if not each.right]
        assert len(set(replies)) == len(replies), (asked.kind, asked.seed, replies)


def test_a_hint_points_and_does_not_tell():
    for asked in all_checks():
        assert asked.right.hint == ""
        for each in (each for each in asked.choices if not each.right):
            assert each.hint.endswith((".", "?")), (asked.kind, each.hint)
            told = {each.reply, each.reply.split("What is right: ")[1], asked.right.why or asked.right.reply}
            assert not any(part in each.hint or each.hint in part for part in told), (asked.kind, each.hint)
            assert asked.right.text.rstrip(".") not in each.hint, (asked.kind, each.hint)


def test_each_check_says_by_itself_where_to_look():
    """A belief stands behind answers to many questions: its own hint would often point elsewhere."""
    shared = {each.hint for each in (*beliefs.beliefs(), *beliefs.slips())}
    for asked in all_checks():
        hints = {each.hint for each in asked.choices if not each.right}
        assert len(hints) == 1, asked.kind
        if asked.kind not in SAME_AS_THE_BELIEF:
            assert hints.isdisjoint(shared), asked.kind


#: Checks on one belief or slip alone, whose own hint is the one to give.
SAME_AS_THE_BELIEF = ("how-fast-perms/class_of", "how-fast-perms/which_rules", "your-roof/direction")
