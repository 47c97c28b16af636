"""What the printed page says besides the checks, and that it keeps each check whole."""

import dataclasses
import io

import pytest
from jobs_at_hand import OPEN, TIGHT, TYPED
from pypdf import PdfReader

from dryward import cli
from dryward.building import preset, presets
from dryward.building.job import Job, Vent
from dryward.report import document, many, printed, review
from dryward.report.sentences import for_inspector
from dryward.report.setting import inputs, setting


def rows(job, hourly=True, system="us"):
    return dict(inputs(setting(job), system, hourly))


def test_what_went_in_is_listed():
    tight, loose = rows(TIGHT), rows(dataclasses.replace(TIGHT, tightness=None))
    assert tight["Hourly years"] == "at most 2, all layers at 80 % at the start"
    assert tight["Covering takes in"] == "70 % of the sunlight"
    assert tight["Room air in summer"] == "74.8 °F, 50 %"  # the warmest month there does not reach 20 degC
    assert "Air leaks" not in tight
    assert loose["Air leaks"] == "not counted"
    steady = rows(TIGHT, hourly=False)
    assert steady["Air leaks"] == "not counted", "the steady checks have none"
    assert "Hourly years" not in steady


@pytest.mark.parametrize(
    ("azimuth", "slope", "said"),
    [
        (0.0, 35.0, "35°, faces north, assumed unless typed"),
        (180.0, 35.0, "35°, faces south"),
        (359.8, 35.0, "35°, faces north"),
        (200.0, 90.0, "90°, faces 200° from north over east"),
        (180.0, 0.0, "flat"),
    ],
)
def test_which_way_it_faces(azimuth, slope, said):
    built = dataclasses.replace(preset("vented-vault"), slope=slope)
    assert rows(Job(built, azimuth=azimuth))["Slope, facing"] == said


#: One that is vented, one with foam, and the rest with --slow.
USUAL = ("vented-vault", "unvented-vault-foam-above-deck")


@pytest.mark.parametrize("id", [id if id in USUAL else pytest.param(id, marks=pytest.mark.slow) for id in presets()])
def test_sources_are_whole_and_without_empty_places(id):
    made = document.document(review(Job(preset(id)), hourly=False))
    for each in made.sources:
        assert "…" not in each
        assert "-;" not in each
        assert not each.rstrip(".").endswith(("-", ";", ","))


def test_a_grain_is_explained_once_on_screen_and_paper(capsys):
    cli.main(["check", "vented-vault", "--steady"])
    assert capsys.readouterr().out.count("7000 gr = 1 lb") == 1
    assert printed.html(document.document(review(OPEN, hourly=False))).count("7000 gr = 1 lb") == 1


def test_typed_means_are_called_so():
    assert many.plain(review(TYPED, hourly=False))["place"] == "typed monthly means"


def test_the_depth_of_a_vent_space_is_in_builders_inches():
    built = dataclasses.replace(preset("wood-frame-wall"), slope=40.0)
    found = review(Job(built, vent=Vent()), hourly=False)
    assert "Vent space 3/8 in. deep" in for_inspector(found)[1]


def test_blocks_are_shared_out_whole():
    assert printed._split([3.0, 3.0, 3.0, 3.0], 100.0) == 2
    assert printed._split([9.0, 3.0, 3.0, 3.0], 100.0) == 1
    assert printed._split([5.0, 5.0, 5.0, 5.0, 5.0], 10.5) == 2, "as many as fit, the rest on the next page"
    assert printed._fitting([5.0, 5.0, 5.0], 4.0 - printed._UNDER) == 0


@pytest.mark.parametrize("size", ["letter", "a4"])
def test_no_check_runs_over_a_page(size):
    found = review(OPEN, hourly=False)
    many_more = [dataclasses.replace(each, what=f"{each.what} " * k) for k in (1, 2, 3, 4) for each in found.checks]
    made = dataclasses.replace(document.document(found), checks=tuple(many_more))
    texts = [" ".join(each.extract_text().split()) for each in PdfReader(io.BytesIO(printed.pdf(made, size))).pages]
    assert len(texts) > 2
    for each in many_more:
        whole = " ".join(f"{each.said}. {each.what} {each.why}".split())
        assert any(whole in text for text in texts)


def test_a_layer_is_asked_about_by_its_name():
    found = review(Job(preset("unvented-vault-foam-above-deck")), hourly=False).check("wet-start")
    assert found.question == "When the upper deck is wet, does it dry?"
