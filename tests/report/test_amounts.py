"""Numbers as they are printed: no power of ten, no figure that means nothing, no wood wetter than wet."""

import dataclasses
from types import SimpleNamespace

import numpy as np
import pytest
from jobs_at_hand import OPEN, TIGHT

from dryward.building import preset
from dryward.building.job import Job, Place, Room, Tightness, Vent
from dryward.report import amounts, drying_time, review, uncertain, year_checks
from dryward.report.findings import Number
from dryward.report.setting import setting
from dryward.report.sheet import amount

LAYER = "outer layer"


@pytest.mark.parametrize(
    ("number", "shown"),
    [
        (Number("Peak mold index", 0.0348, "", "of 6"), "0.0 of 6"),
        (Number("Peak moisture content", 1787.6, "", "% MC"), "1788 % MC"),
        (Number("Peak moisture content", 20.63, "", "% MC"), "20.6 % MC"),
        (Number("Share", 0.00002, "", "parts"), "0.00002 parts"),
        (Number("Balance error", 2e-13, "", "of what passed"), "none; the water books balance"),
        (Number("Balance error", 2e-3, "", "of what passed"), "0.002 of what passed"),
        (Number("Most free water", 123.0, "area density"), "25.2 lb/ft²"),
        (Number("Most free water", 0.1, "area density"), "143 gr/ft²"),
    ],
)
def test_a_number_of_a_finding(number, shown):
    assert amount(number, "us") == shown


def test_much_water_has_larger_units():
    assert amount(Number("Most free water", 41.3, "area density"), "si") == "41.3 kg/m²"
    assert amounts.water(41.265) == "41.3 kg/m² (8.5 lb/ft²)"
    assert amounts.water_span(0.5, 10.0) == "0.5 to 10.0 kg/m² (0.1 to 2.0 lb/ft²)"


def wood(contents, years=2):
    """The finding on wood with this moisture content through the hours."""
    job = dataclasses.replace(TIGHT, years=years)
    layer = SimpleNamespace(
        name=LAYER, moisture_content=contents, highest_relative_humidity=np.full(contents.size, 0.85)
    )
    run = SimpleNamespace(time=contents, layer=lambda name: layer)
    return year_checks._wood(setting(job), run, ((LAYER, "inner"),))


def test_wood_does_not_hold_more_than_it_can():
    full = year_checks.full_of_water(setting(TIGHT), LAYER)
    assert 60 < full < 250
    found = wood(np.full(100, 1788.0))
    assert found.number("Peak moisture content") == full
    assert "is soaked: more water comes than the wood can hold" in found.what
    assert "1788" not in found.what
    assert "soaked" not in wood(np.full(100, 40.0)).what


def test_the_first_year_is_not_left_out():
    contents = np.full(100, 17.0)
    contents[10] = 21.3
    found = wood(contents)
    assert found.good
    assert found.question == "In the last year, does the outer layer stay below the caution level?"
    assert found.what.endswith("In the first year, from the start humidity of 80 %, it peaks at 21 %.")
    assert "first year" not in wood(contents, years=1).what
    assert "first year" not in wood(np.full(100, 17.0)).what


def test_a_roof_that_drowns():
    job = Job(
        preset("vented-vault-osb"),
        Place("demo", "very-cold"),
        Room(relative_humidity=0.6),
        Tightness(12.0),
        Vent(12, 0.012, 0.010),
        years=1,
    )
    found = review(job)
    assert "soaked" in found.finding("peak").what
    for each in found.findings:
        for system in ("us", "si"):
            assert "e+" not in " ".join(amount(number, system) for number in each.numbers)


def test_insulation_is_dry_when_its_wettest_part_is():
    shut = Job(preset("vented-vault-closed"), Place("demo", "cold"), years=1)
    assert drying_time.drying_time(setting(shut), "insulation").days == np.inf
    opened = drying_time.drying_time(setting(dataclasses.replace(OPEN, years=1)), "insulation")
    assert 30 < opened.days < 365
    assert opened.limit.endswith("in its wettest part")


def test_alone_and_together():
    def said(ends, sample):
        return uncertain._most(
            [None], np.array([ends]), "the most held", uncertain._span(".0f", " g"), np.array(sample)
        )

    assert said([1.0, 1.0], [0.0, 46.0]).endswith("moves the most held by itself; several together can.")
    assert said([1.0, 1.0], [1.0, 1.0]).endswith("moves the most held by itself.")
