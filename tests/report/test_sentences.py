"""What is told to the client and the inspector agrees with the findings, for roofs and for walls."""

import dataclasses
import re

import pytest
from jobs_at_hand import OPEN, TIGHT

from dryward.building import preset, presets
from dryward.building.job import Job
from dryward.report import review
from dryward.report.sentences import for_client, humidity_limit
from dryward.report.setting import setting


@pytest.fixture(scope="module", params=presets())
def checked(request):
    return review(Job(preset(request.param)), hourly=False)


def test_the_first_two_sentences_do_not_contradict(checked):
    first, second, _ = for_client(checked)
    assert checked.dries == ("does not dry" not in first)
    if checked.dries:
        assert "change the layers" not in second
    limit = humidity_limit(setting(checked.job))
    if limit is None or limit < 0.30:
        assert ("leaves again: ask us before you close it in." in second) == checked.dries


def test_what_does_not_dry_is_to_be_changed():
    found = review(Job(preset("vented-vault-osb")), hourly=False)
    assert found.dries
    wet = dataclasses.replace(found.finding("twelve-months"), good=False)
    others = tuple(each for each in found.findings if each.id != "twelve-months")
    worse = dataclasses.replace(found, findings=(wet, *others))
    assert for_client(worse)[1].endswith("change the layers first.")


def test_a_wall_is_called_a_wall(checked):
    wall = checked.job.assembly.slope >= 60
    said = " ".join(for_client(checked)[:2])
    assert checked.verdict.startswith(f"By the steady checks alone the {'wall' if wall else 'roof'} ")
    assert ("roof" in said) == (not wall)


def test_a_limit_of_the_roof_is_not_the_limit_of_the_windows():
    found = review(Job(preset("wood-frame-wall")), hourly=False)
    assert "or lower if windows or cold corners get damp" in for_client(found)[1]


@pytest.mark.parametrize("job", [OPEN, TIGHT], ids=["open", "tight"])
def test_water_is_given_in_both_unit_systems(job):
    found = review(job)
    said = [text for each in found.findings for text in (each.what, each.matters, each.limits)]
    said = [text for text in said if "g/m²" in text]
    assert said
    for text in said:
        assert len(re.findall(r"g/m²", text)) == len(re.findall(r"(?:gr|lb)/ft²", text)), text
