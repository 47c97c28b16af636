"""Practical tasks and the pre-test."""

import math

import pytest

from dryward.building import FixedMembrane, preset
from dryward.checks import OutOfRange, UnknownName
from dryward.physics import steady
from dryward.teaching import lessons, placement, practical
from dryward.units import to_si
from dryward.weather.conditions import Air

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
    found = practical.judge(id, {**task.one_way, fixed: task.start[fixed] * 0.5})
    assert not found.solved
    assert found.words == f"{fixed} stays as it is in this task; set it back."


def test_a_task_counts_the_changes():
    task = practical.task("july-film")
    found = practical.judge("july-film", {"M_in": to_si(10, "perm"), "T_in": to_si(75, "degF")})
    assert task.most_changes == 1
    assert found.words == "You changed 2 things; 1 at most."
    assert not found.solved


@pytest.mark.parametrize("other", [{"M_out": to_si(50, "perm")}, {"RH_in": 0.2, "M_in": to_si(1, "perm")}])
def test_there_are_other_ways_to_dry_the_deck(other):
    assert practical.judge("dry-the-deck", other).solved


def test_the_deck_is_judged_by_the_steady_method():
    built = preset("vented-vault").replace("inner membrane", FixedMembrane(to_si(3, "perm")))
    built = built.replace("outer layer", FixedMembrane(to_si(1.5, "perm")))
    state = steady.profile(built, Air(to_si(70, "degF"), 0.4), Air(to_si(20, "degF"), 0.8))
    assert math.isclose(practical.judge("dry-the-deck", {}).value, state.gain, rel_tol=1e-9)


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
    assert len(placement.items(5)) == 10
    assert placement.items(5) == placement.items(5)
    assert placement.placed([False] * 10) == lessons.pages()
    one_wrong = [True] * 10
    one_wrong[list(placement.ITEMS).index("summer-face")] = False
    assert placement.placed(one_wrong) == ("july", "your-roof")
    with pytest.raises(OutOfRange, match="The pre-test has 10 answers, not 3"):
        placement.placed([True] * 3)
