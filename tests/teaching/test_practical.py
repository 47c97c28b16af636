"""Practical tasks and the pre-test."""

import math

import pytest

from dryward.building import FixedMembrane, preset
from dryward.checks import OutOfRange, UnknownName
from dryward.physics import steady
from dryward.teaching import lessons, pathways, practical
from dryward.units import to_si
from dryward.verdict import of_steady, words
from dryward.weather import Air

IDS = [each.id for each in practical.tasks()]


@pytest.mark.parametrize("id", IDS)
def test_a_task_starts_unsolved_and_can_be_solved(id):
    task = practical.task(id)
    assert not practical.judge(id, {}).solved
    assert practical.judge(id, task.one_way).solved
    assert practical.judge(id, task.one_way, "si").solved
    assert set(task.one_way) <= set(task.may_change) <= set(task.start)
    assert task.lesson in lessons.pages()


@pytest.mark.parametrize("id", IDS)
def test_a_task_refuses_a_control_that_must_stay(id):
    task = practical.task(id)
    fixed = next(name for name in task.start if name not in task.may_change)
    found = practical.judge(id, {**task.one_way, fixed: task.start[fixed] * 0.5}, labels={fixed: "That slider"})
    assert not found.solved
    assert found.words == "That slider stays as it is in this task; set it back."


def test_a_task_counts_the_changes():
    task = practical.task("dry-the-deck")
    moved = {"M_in": to_si(0.1, "perm"), "M_out": to_si(50, "perm"), "RH_in": 0.3}
    found = practical.judge("dry-the-deck", moved)
    assert task.most_changes == 2
    assert found.words == "You changed 3 things; 2 at most."
    assert not found.solved


@pytest.mark.parametrize("other", [{"M_out": to_si(50, "perm")}, {"RH_in": 0.2, "M_in": to_si(1, "perm")}])
def test_there_are_other_ways_to_dry_the_deck(other):
    assert practical.judge("dry-the-deck", other).solved


def deck(inner, outer, humidity=0.4):
    """The steady state of the roof of that task, built here again."""
    built = preset("vented-vault").replace("inner membrane", FixedMembrane(to_si(inner, "perm")))
    built = built.replace("outer layer", FixedMembrane(to_si(outer, "perm")))
    return steady.profile(built, Air(to_si(70, "degF"), humidity), Air(to_si(20, "degF"), 0.8))


@pytest.mark.parametrize(
    ("inner", "outer", "state"),
    [(3, 1.5, "wet"), (0.3, 1.5, "wet"), (0.23, 1.5, "damp"), (0.1, 1.5, "dry"), (3, 50, "dry")],
)
def test_the_deck_is_judged_by_the_verdict(inner, outer, state):
    """Also at 0.3 perm, where it gains less than half a gram a day: that is wet, and the task is not done."""
    found = of_steady(deck(inner, outer))
    assert found.state == state
    tried = practical.judge("dry-the-deck", {"M_in": to_si(inner, "perm"), "M_out": to_si(outer, "perm")})
    assert tried.solved == (state == "dry")
    assert tried.words == words.sentence(found, "us")
    assert math.isclose(tried.value, deck(inner, outer).gain, rel_tol=1e-9, abs_tol=1e-18)


@pytest.mark.parametrize(
    ("inner", "room", "state"),
    [(0.06, 70, "wet"), (10, 70, "damp"), (10, 75, "damp"), (10, 78, "dry"), (0.06, 85, "dry"), (1000, 75, "dry")],
)
def test_the_roof_of_july_is_judged_by_the_verdict(inner, room, state):
    tried = practical.judge("july-film", {"M_in": to_si(inner, "perm"), "T_in": to_si(room, "degF")})
    assert tried.words.startswith(f"{state.capitalize()}: ")
    assert tried.solved == (state == "dry")


@pytest.mark.parametrize(
    ("inside", "humidity", "tight", "state"),
    [
        (22, 50, False, "wet"),
        (17.5, 50, False, "damp"),
        (15, 50, False, "dry"),
        (5, 50, True, "dry"),
        (11, 45, True, "dry"),
    ],
)
def test_the_film_must_be_tight_and_the_roof_dry(inside, humidity, tight, state):
    tried = practical.judge("warm-film", {"R_in": to_si(inside, "R"), "RH_in": humidity / 100})
    assert (tried.value <= to_si(1.0, "perm")) == tight
    assert f". {state.capitalize()}: " in tried.words
    assert tried.solved == (tight and state == "dry")


def test_more_air_than_asked_does_not_count():
    assert not practical.judge("january-air", {"Fresh_air": to_si(150, "cfm")}).solved


def test_bad_input_is_one_sentence():
    with pytest.raises(UnknownName, match='There is no practical task "x"'):
        practical.judge("x", {})
    with pytest.raises(UnknownName, match='There is no control in this task "Gap"'):
        practical.judge("july-film", {"Gap": 1.0})
    with pytest.raises(OutOfRange, match="Fresh air is 0 m³/s; it must be above 0 m³/s"):
        practical.judge("january-air", {"Fresh_air": 0.0})


def test_the_pre_test_places():
    assert len(pathways.pretest_questions(5)) == 10
    assert pathways.pretest_questions(5) == pathways.pretest_questions(5)
    assert pathways.placed([False] * 10) == lessons.pages()
    one_wrong = [True] * 10
    one_wrong[list(pathways.pretest()).index("summer-face")] = False
    assert pathways.placed(one_wrong) == ("july", "your-roof")
    with pytest.raises(OutOfRange, match="The pre-test has 10 answers, not 3"):
        pathways.placed([True] * 3)
