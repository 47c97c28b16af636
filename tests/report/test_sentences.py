"""What is told to the client and the inspector agrees with what was found, for roofs and for walls."""

import dataclasses
import re
from types import SimpleNamespace

import pytest
from jobs_at_hand import OPEN, TIGHT
from jobs_at_hand import checked as at_hand

from dryward.building import preset, presets
from dryward.building.job import Job, Place
from dryward.language import message
from dryward.report import moisture_checks, review
from dryward.report.check import Limit
from dryward.report.sentences import for_client, for_inspector
from dryward.verdict.findings import criteria


@pytest.fixture(scope="module", params=presets())
def checked(request):
    return review(Job(preset(request.param)), hourly=False)


def test_without_the_hourly_year_no_humidity_is_promised(checked):
    second = for_client(checked)[1]
    assert "which were not run" in second
    assert not re.search(r"\d+ %", second)


def test_a_wall_is_called_a_wall(checked):
    wall = checked.job.assembly.slope >= 60
    for said in (for_client(checked)[1], for_inspector(checked)[2]):
        assert ("wall" in said) == wall
        assert ("roof" in said) == (not wall)


@pytest.mark.parametrize(
    ("limit", "words"),
    [
        (Limit(None, 0.15, 0.70, "damp"), "does not stay dry at any room humidity from 15 % up: seal the leaks"),
        (Limit(0.70, 0.15, 0.70, ""), "stays dry up to 70 % room humidity in winter (21.7 °F outside"),
        (Limit(0.24, 0.15, 0.70, "damp"), "with the air leak as tested, this roof stays dry only up to 24 %"),
        (Limit(0.38, 0.15, 0.70, "damp"), "Keep the rooms at or below 38 % humidity in winter"),
        (Limit(0.38, 0.15, 0.70, "damp"), "with the air leak as tested, one point more is damp."),
        (Limit(0.38, 0.15, 0.70, "damp"), "or lower if windows or cold corners get damp"),
    ],
)
def test_the_second_sentence_is_the_limit(limit, words):
    found = dataclasses.replace(review(Job(preset("vented-vault-osb")), hourly=False), limit=limit)
    assert words.replace("21.7", "22") in for_client(found)[1]


@pytest.mark.parametrize(
    ("edition", "words"),
    [
        (2009, "by the classes of IRC R601.3 and R601.3.1, edition 2009"),
        (2015, "by the classes of IRC R702.7 and R702.7.1, edition 2012 to 2018"),
        (None, "by the classes of IRC R702.7, Tables R702.7(2) and (3), edition 2021"),
    ],
)
def test_the_section_of_the_classes_is_that_of_the_edition(edition, words):
    found = review(Job(preset("vented-vault-closed"), Place(zone="6")), hourly=False, edition=edition)
    assert words in for_inspector(found)[0]


@pytest.mark.parametrize("job", [OPEN, TIGHT], ids=["open", "tight"])
def test_water_is_given_in_both_unit_systems(job):
    found = at_hand(job, True)
    said = [text for each in found.checks for text in (each.what, each.matters, each.limits, *each.lines)]
    said = [text for text in said if "g/m²" in text]
    assert said or job is OPEN
    for text in said:
        assert len(re.findall(r"g/m²", text)) == len(re.findall(r"(?:gr|lb)/ft²", text)), text


def test_the_inspector_reads_the_state_and_its_method(checked):
    proof = for_inspector(checked)[2]
    assert f" is {checked.state}: " in proof
    assert "monthly diffusion after ISO 13788, no air leak counted" in proof


#: Limits of a page's own state, or of a steady one: no year and no twelve months are held against them.
NO_YEAR = {"steady-gain", "window-edge", "window-glass", "winter-water", "night-frost", "night-melt", "vent-share"}


def test_every_limit_that_may_decide_a_year_has_its_advice():
    advised = moisture_checks._ADVISED
    assert set(advised) | NO_YEAR == set(criteria())
    assert not set(advised) & NO_YEAR
    for id, (why, change) in advised.items():
        assert message(change), id
        assert not why or message(why), id


@pytest.mark.parametrize("id", sorted(set(criteria())))
def test_a_limit_without_advice_is_not_given_that_of_another(id):
    judged = SimpleNamespace(state="wet", worst=SimpleNamespace(what=id))
    if id in NO_YEAR:
        with pytest.raises(KeyError, match=id):
            moisture_checks._advice(judged)
    else:
        assert moisture_checks._advice(judged)[1]
