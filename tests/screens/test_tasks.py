"""The jobs for the sliders on their pages: judged by the page's own verdict, refused in the page's own words."""

import re

import pytest
from lesson_page import open_page

from dryward.teaching import practical
from dryward.units import to_si
from turns import in_turn

#: Task -> settings of its page that it allows.
TRIES = {
    "dry-the-deck": [{"M_in": m, "M_out": o} for m in (0.1, 0.22, 0.3, 3.0) for o in (1.5, 6.0, 50.0)],
    "july-film": [
        {"Roof": roof, "T_in": room}
        for roof in ("plastic", "three-perm", "variable", "open-sheet", "none")
        for room in (70, 72, 75, 76, 78, 80)
    ],
    "warm-film": [{"R_in": r, "RH_in": rh} for r in (5, 13, 15, 17.5, 22) for rh in (35, 50, 60)],
}
STATE = re.compile(r"\b(Dry|Damp|Wet): ")


def press(page, what, task):
    page.hear({"kind": "desk", "key": f"task:{what}:{task}"})
    return page.tasks.words.get(task, (None, ""))


def put(page, **values):
    for name, value in values.items():
        control = page.controls[name]
        control.value = value if control.options else control.shown(to_si(float(value), UNITS[name]))


UNITS = {"M_in": "perm", "M_out": "perm", "T_in": "degF", "R_in": "R", "RH_in": "%", "T_out": "degF"}


@pytest.mark.parametrize(("id", "system"), in_turn(TRIES, ("us", "si")))
def test_a_task_says_the_state_that_the_page_shows(id, system, tmp_path):
    page = open_page(practical.task(id).lesson, tmp_path, system)
    press(page, "start", id)
    start = {name: control.value for name, control in page.controls.items()}
    assert page.readouts["state"] == "wet"  # as the words of all three tasks have it
    seen = set()
    for moves in TRIES[id]:
        for name, value in start.items():
            page.controls[name].value = value
        put(page, **moves)
        solved, said = press(page, "check", id)
        (state,) = STATE.findall(said)
        assert state.lower() == page.readouts["state"], (moves, said, page.sentence)
        assert not (solved and state != "Dry"), (moves, said)
        seen.add((solved, state))
    assert {state for _, state in seen} == {"Dry", "Damp", "Wet"}
    assert any(solved for solved, _ in seen)


@pytest.mark.parametrize(
    ("id", "moves", "label"),
    [
        ("dry-the-deck", {"T_out": 30}, "Outdoor temperature"),
        ("july-film", {"T_out": 80}, "Outdoors, or wet wood in the sun"),
        ("warm-film", {"T_out": 20}, "Outdoor temperature"),
        ("warm-film", {"Outer": "fiberboard"}, "Outer layer"),
    ],
)
def test_what_must_stay_is_called_what_the_page_calls_it(id, moves, label, tmp_path):
    page = open_page(practical.task(id).lesson, tmp_path)
    press(page, "start", id)
    put(page, **moves)
    assert label in {control.words for control in page.controls.values()}
    assert press(page, "check", id) == (False, f"Not yet. {label} stays as it is in this task; set it back.")


def test_another_roof_is_not_a_film(tmp_path):
    page = open_page("july", tmp_path)
    press(page, "start", "july-film")
    put(page, Roof="foam")
    solved, said = press(page, "check", "july-film")
    assert page.readouts["state"] == "dry"
    assert (solved, said) == (
        False, "Not yet. This task is about the vented roof; choose one of its inner layers.",
    )  # fmt: skip
