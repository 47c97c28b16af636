"""A slider's move, from the widget's change to the picture and the texts: short enough to be read, and quick."""

import sys
from collections import Counter
from pathlib import Path

from lesson_page import open_page

import dryward
from dryward.building import FixedMembrane
from dryward.physics.nodes import nodes_of

HOME = Path(dryward.__file__).parent


def run_through(act):
    """Our own files that are run through, with how often a function of each is called."""
    found = Counter()

    def note(frame, event, _):
        file = Path(frame.f_code.co_filename)
        if event == "call" and file.is_relative_to(HOME):
            found[file.relative_to(HOME).as_posix()] += 1

    sys.setprofile(note)
    try:
        act()
    finally:
        sys.setprofile(None)
    return found


def test_a_move_runs_through_few_files_and_few_calls(tmp_path):
    """Who wants to follow one has to open them all; and each call is some 0.4 µs of a learner's wait."""
    page = open_page("where-it-gets-wet", tmp_path)
    control = page.controls["RH_in"]
    for value in (41, 48, 52, 43):
        control.value = value
    found = run_through(lambda: setattr(control, "value", 46))
    assert {"panels/page.py", "physics/steady.py", "pictures/section.py"} <= set(found)
    assert len(found) <= 22, sorted(found)
    assert sum(found.values()) < 2600, found.most_common()


def test_what_stands_still_is_not_worked_out_again(tmp_path):
    """The judgment of a state, the places along a slider, and what the layers of a preset are made of."""
    page = open_page("where-it-gets-wet", tmp_path)
    verdict = page.verdict
    assert run_through(lambda: page.judge(page.state))["verdict/judgment.py"] == 0
    assert page.judge(page.state) is verdict
    assert not run_through(lambda: page.along("RH_in"))["units/table.py"]
    roof = page.state.roof.replace("inner membrane", FixedMembrane(1e-10))
    assert run_through(lambda: nodes_of(roof))["building/layers.py"] <= 2, "only what is new is asked"
