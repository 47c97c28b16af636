"""What stands in bold: the one verdict, what speaks against it beside, and what was not looked at."""

import dataclasses

import numpy as np
import pytest
from jobs_at_hand import OPEN, TIGHT, TYPED, checked

from dryward.building import preset
from dryward.building.job import Job, Place
from dryward.language import message
from dryward.panels.desk.results import difference
from dryward.physics.drying import Drying
from dryward.report import document, moisture_checks, printed, review
from dryward.report.check import MET, NOT_MET, Number, Review
from dryward.report.sentences import for_client
from dryward.report.setting import setting
from dryward.verdict import LATER, NEVER, STATES, UNKNOWN, WITHIN, words

LAYER = "outer layer"


@pytest.fixture(scope="module")
def steady():
    return review(TIGHT, hourly=False)


@pytest.fixture(scope="module")
def whole():
    return checked(TIGHT)


def changed(found, **answers):
    """The same review with other answers of some checks."""
    names = {id.replace("_", "-"): answer for id, answer in answers.items()}
    return dataclasses.replace(
        found, checks=tuple(dataclasses.replace(each, answer=names.get(each.id, each.answer)) for each in found.checks)
    )


def test_the_state_stands_first_then_all_three_parts(whole):
    assert whole.headline.startswith(
        message("verdict.head", state=whole.state)
        + f" (hour by hour, with the air leak): {words.account(whole.verdict)}."
    )
    assert [each for each in STATES if whole.headline.startswith(each.capitalize())] == [whole.state]


def test_what_counts_less_and_says_worse_is_named(whole):
    dry = changed(checked(OPEN), winter="wet", summer="dry", twelve_months="damp")
    assert dry.state == "dry"
    assert (
        "Plain diffusion says worse (damp over twelve months and wet if the coldest month never ended)" in dry.headline
    )
    assert "says worse" not in changed(dry, winter="dry", twelve_months="dry").headline


@pytest.mark.parametrize(("answer", "said"), [(WITHIN, False), (LATER, True), (NEVER, True)])
def test_a_wet_start_that_stays_wet_is_in_it(whole, answer, said):
    found = changed(whole, wet_start=answer)
    assert (found.check("wet-start").what in found.headline) == said


def test_code_rows_that_are_not_met_are_counted(whole):
    rows = [each.id.replace("-", "_") for each in whole.checks if each.id.startswith(("code-", "vents"))]
    none = changed(whole, **dict.fromkeys(rows, MET))
    assert "code row" not in none.headline
    assert changed(none, **{rows[0]: NOT_MET}).headline.endswith("A code row is not met.")
    assert changed(none, **dict.fromkeys(rows[:2], NOT_MET)).headline.endswith("2 code rows are not met.")


def test_two_roofs_are_told_apart_by_their_states(whole):
    dry = checked(OPEN)
    said = difference((whole, dry), ("now", "then"), "us")
    assert said.startswith(f"Hour by hour now is {whole.state}, and then is dry. Now: ")
    assert words.account(whole.verdict, "us") in said
    assert words.account(dry.verdict, "us") in said
    assert difference((dry, dry), ("now", "then"), "us").startswith("Hour by hour both are dry.")


def test_without_the_hourly_years(steady):
    assert steady.headline.startswith(
        f"{steady.state.capitalize()} (by twelve monthly means alone, no air leak counted): "
    )
    assert "no air leak, no storage and no mold was counted" in " ".join(steady.notes)
    assert "wood moisture and mold were not checked" in " ".join(review(TYPED).notes)


def test_the_small_print_is_what_holds(whole, steady):
    assert whole.limits == (
        "A calculation, not a permit, an inspection or an approval. Rain is not counted. The weather is invented."
    )
    assert "Air leaks are not counted." in steady.limits
    assert "invented" not in review(TYPED).limits
    untested = review(dataclasses.replace(TIGHT, tightness=None), with_trials=False)
    assert "Air leaks are not counted." in untested.limits
    assert "no air leak counted" in untested.headline
    assert document.document(steady, "si").limits == steady.limits


def test_a_typed_zone_is_not_compared_with_the_weather():
    said = "Zone 2 was typed; it is not compared with the weather used."
    place = Place("demo", "cold", zone="2")
    assert said in review(dataclasses.replace(TIGHT, place=place), hourly=False).notes
    untyped = review(dataclasses.replace(TIGHT, place=Place("demo", "cold")), hourly=False)
    assert "Zone" not in " ".join(untyped.notes)


def test_marks_and_what_they_mean(steady):
    shown_html = printed.html(document.document(steady))
    assert document.legend() in shown_html
    assert all(mark in document.legend() for mark in document.MARKS.values())
    assert {*STATES, UNKNOWN} <= set(document.MARKS)
    assert len({document.MARKS[state] for state in (*STATES, UNKNOWN)}) == 4, "each state its own sign"


@pytest.mark.parametrize(
    ("days", "answer", "said"),
    [
        (168.0, WITHIN, "Yes, within the year"),
        (365.0, WITHIN, "Yes, within the year"),
        (930.0, LATER, "Yes, but it takes more than a year"),
        (np.inf, NEVER, "No"),
    ],
)
def test_a_layer_that_stays_wet_is_no_yes(monkeypatch, whole, days, answer, said):
    took = moisture_checks.DryingTime(days, 1095.0, True, 25.0, 20.0)
    monkeypatch.setattr(moisture_checks, "drying_time", lambda *_: took)
    here = setting(TIGHT)
    found = moisture_checks.with_drying_time(moisture_checks.wet_start(here, LAYER), here, LAYER)
    assert (found.answer, found.said, bool(found.change)) == (answer, said, answer != WITHIN)
    others = tuple(each for each in whole.checks if each.id != "wet-start")
    client = for_client(Review(TIGHT, (*others, found)))
    assert ("in about 168 days" in client[2]) == (days == 168.0)
    assert client[2].startswith("Tell us at once" if answer != WITHIN else "What gets wet once can dry again")


@pytest.mark.parametrize(
    ("inward", "outward", "words"),
    [
        (-4.56, 0.003, "takes in more than it gives off"),
        (0.0, 0.0, "dries neither way"),
        (-1.0, np.inf, "dries mostly outward"),
        (3.0, 2.0, "dries both ways"),
        (9.0, 2.0, "dries mostly inward"),
    ],
)
def test_a_layer_that_gains_does_not_dry(inward, outward, words):
    assert moisture_checks._way(Drying(inward, outward, 0.0)) == words


def test_a_roof_that_takes_in_more_in_winter():
    job = Job(preset("unvented-vault-foam-above-deck"), Place("demo", "very-cold"))
    found = moisture_checks.wet_start(setting(job), "upper deck")
    assert "takes in more than it gives off in winter and dries mostly inward in summer" in found.what


@pytest.mark.parametrize("system", ["us", "si"])
def test_no_rate_is_shown_with_a_minus(system):
    shown = document.amount(Number("winter-inward", -5e-8, "vapor flux"), system)
    assert shown.startswith("takes in ")
    assert "-" not in shown
