"""What stands in bold: it names the first fault and counts the rest, and says what was not looked at."""

import dataclasses

import numpy as np
import pytest
from jobs_at_hand import TIGHT, TYPED

from dryward.building import preset
from dryward.building.job import Job, Place
from dryward.panels.bench.comparing import difference
from dryward.physics.drying import Drying
from dryward.report import drying_time, page, review, sheet, steady_checks
from dryward.report.findings import NO, SLOWLY, YES, Number, Review
from dryward.report.sentences import for_client
from dryward.report.setting import setting

LAYER = "outer layer"


@pytest.fixture(scope="module")
def steady():
    return review(TIGHT, hourly=False)


def changed(found, **goods):
    """The same review with other outcomes of some checks."""
    names = {id.replace("_", "-"): good for id, good in goods.items()}
    return Review(found.job, tuple(dataclasses.replace(each, good=names.get(each.id, True)) for each in found.findings))


@pytest.fixture(scope="module")
def all_good(steady):
    years, mold = (
        dataclasses.replace(steady.finding("winter"), id=id, what=what)
        for id, what in (("years", "The last year ends wetter. It does."), ("mold", "The mold index peaks at 4.5."))
    )
    return changed(Review(TIGHT, (*steady.findings, years, mold)))


def test_the_first_fault_and_how_many_more(all_good):
    one = changed(all_good, winter=False)
    assert one.verdict.startswith("By these checks the roof dries over the year, but look closer: vapor turns to")
    assert "more point" not in one.verdict
    assert "; and 1 more point." in changed(all_good, winter=False, summer=False).verdict
    assert "; and 2 more points." in changed(all_good, winter=False, summer=False, wet_start=False).verdict


def test_mold_alone_is_not_failing_to_dry(all_good):
    mold = changed(all_good, mold=False)
    assert (mold.dries, mold.outcome) == (False, "too wet on the way")
    assert mold.verdict.startswith("By these checks the roof dries over the year but gets too wet on the way: the mold")
    years = changed(all_good, mold=False, years=False)
    assert years.outcome == "does not dry"
    assert years.verdict.startswith("By these checks the roof does not dry: the last year ends wetter; and 1 more")


def test_two_roofs_are_told_apart_by_their_outcomes(all_good):
    mold, years = changed(all_good, mold=False), changed(all_good, years=False)
    assert "now dries over the year, and then dries over the year but gets too wet on the way." in difference(
        (all_good, mold), ("now", "then")
    )
    assert "both dry over the year but get too wet on the way." in difference((mold, mold), ("now", "then"))
    assert "then does not dry over the year." in difference((mold, years), ("now", "then"))
    assert "both fail to dry over the year." in difference((years, years), ("now", "then"))


def test_what_can_turn_is_said(all_good):
    def turning(id):
        return Review(
            TIGHT, tuple(dataclasses.replace(each, turns=each.id == id) for each in changed(all_good).findings)
        )

    assert turning("").verdict.endswith("goes out again within the year.")
    assert turning("twelve-months").verdict.endswith("some water can stay at the year's end.")
    assert turning("winter").verdict.endswith("water can gather in the coldest or the warmest month.")
    assert turning("mold").verdict.endswith("an answer can turn.")
    wet = review(dataclasses.replace(TIGHT, assembly=preset("vented-vault-osb")), hourly=False).findings
    assert all(each.turns == ("can turn" in each.matters) for each in wet)


def test_without_the_hourly_years(steady, all_good):
    assert steady.verdict.startswith("By the steady checks alone the roof ")
    assert "wood moisture and mold were not checked" in " ".join(steady.notes)
    assert "wood moisture and mold were not checked" in " ".join(review(TYPED).notes)
    assert all_good.verdict.startswith("By these checks the roof ")


def test_the_small_print_is_what_holds(all_good, steady):
    assert all_good.limits == (
        "A calculation, not a permit, an inspection or an approval. Rain is not counted. The weather is invented."
    )
    assert "Air leaks are not counted." in steady.limits
    assert "invented" not in review(TYPED).limits
    untested = Review(dataclasses.replace(TIGHT, tightness=None), all_good.findings)
    assert "Air leaks are not counted." in untested.limits
    assert sheet.sheet(steady, "si").limits == steady.limits


def test_a_typed_zone_is_not_compared_with_the_weather():
    said = "Zone 2 was typed; it is not compared with the weather used."
    place = Place("demo", "cold", zone="2")
    assert said in review(dataclasses.replace(TIGHT, place=place), hourly=False).notes
    untyped = review(dataclasses.replace(TIGHT, place=Place("demo", "cold")), hourly=False)
    assert "Zone" not in " ".join(untyped.notes)


def test_marks_and_what_they_mean(steady):
    document = page.html(sheet.sheet(steady))
    assert sheet.LEGEND in document
    assert all(mark in sheet.LEGEND for mark in sheet.MARKS.values())


@pytest.mark.parametrize(
    ("days", "answer", "good", "line"),
    [
        (168.0, YES, True, "When the outer layer is wet it dries"),
        (365.0, YES, True, "When the outer layer is wet it dries"),
        (930.0, SLOWLY, False, "When the outer layer is wet it takes 930 days to dry, more than one year; tell us"),
        (np.inf, NO, False, "When the outer layer is wet it is not dry within 1095 days; tell us"),
    ],
)
def test_a_layer_that_stays_wet_is_no_yes(monkeypatch, all_good, days, answer, good, line):
    took = drying_time.DryingTime(days, 1095.0, "it starts wet", "below 20 % MC")
    monkeypatch.setattr(drying_time, "drying_time", lambda *_: took)
    here = setting(TIGHT)
    found = drying_time.added(steady_checks.wet_start(here, LAYER), here, LAYER)
    assert (found.answer, found.good, bool(found.change)) == (answer, good, not good)
    others = tuple(each for each in all_good.findings if each.id != "wet-start")
    whole = Review(TIGHT, (*others, found))
    assert whole.dries
    assert ("look closer" in whole.verdict) == (not good)
    assert for_client(whole)[2].startswith(line)


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
    assert steady_checks._way(Drying(inward, outward, 0.0)) == words


def test_a_roof_that_takes_in_more_in_winter():
    job = Job(preset("unvented-vault-foam-above-deck"), Place("demo", "very-cold"))
    found = steady_checks.wet_start(setting(job), "upper deck")
    assert "takes in more than it gives off in winter and dries mostly inward in summer" in found.what


@pytest.mark.parametrize("system", ["us", "si"])
def test_no_rate_is_shown_with_a_minus(system):
    shown = sheet.amount(Number("Winter, inward", -5e-8, "vapor flux"), system)
    assert shown.startswith("takes in ")
    assert "-" not in shown
