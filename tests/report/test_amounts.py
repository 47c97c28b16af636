"""Numbers as they are printed: no power of ten, no figure that means nothing, no wood wetter than wet."""

import dataclasses
import re

import pytest
from jobs_at_hand import OPEN

from dryward.building import preset
from dryward.building.job import Job, Place, Room, Tightness, Vent
from dryward.report import moisture_checks, review, trials
from dryward.report.check import Number
from dryward.report.document import amount
from dryward.report.setting import setting
from dryward.verdict import words
from dryward.weather import Air


@pytest.mark.parametrize(
    ("number", "shown"),
    [
        (Number("worst", 0.0348, "", "of 6", label="Peak mold index"), "0.0 of 6"),
        (Number("most-held", 1787.6, "", "% MC"), "1788 % MC"),
        (Number("most-held", 20.63, "", "% MC"), "20.6 % MC"),
        (Number("growth", 0.00002, "", "of what passed"), "0.00002 of what passed"),
        (Number("balance-error", 2e-13, "", "of what passed"), "none; the water books balance"),
        (Number("balance-error", 2e-3, "", "of what passed"), "0.002 of what passed"),
        (Number("most-held", 123.0, "area density"), "25.2 lb/ft²"),
        (Number("most-held", 0.1, "area density"), "143 gr/ft²"),
    ],
)
def test_a_number_of_a_check(number, shown):
    assert amount(number, "us") == shown


def test_much_water_has_larger_units():
    assert amount(Number("most-held", 41.3, "area density"), "si") == "41.3 kg/m²"
    assert words.amount(41.265, "kg/m2", None) == "8.45 lb/ft² (41.3 kg/m²)"


def test_wood_does_not_hold_more_than_it_can_and_the_rest_runs_off():
    job = Job(
        preset("vented-vault-osb"),
        Place("demo", "very-cold"),
        Room(relative_humidity=0.6),
        Tightness(12.0),
        Vent(12, 0.012, 0.010),
        years=2,
    )
    found = review(job, with_trials=False)
    years = found.check("years")
    worst = years.verdict.finding("wood-moisture")
    wood = job.assembly.layer(worst.place.layer).substance
    assert worst.full
    assert worst.value <= 100 * wood.water_content(1.0) / wood.density
    assert "soaked" in " ".join(years.lines)
    assert years.number("ran-off") > 0.0
    (line,) = [each for each in years.lines if each.startswith("Run off in the judged year: ")]
    assert re.search(r"(pints|fl oz) \(.* L\) from 603 ft² \(56 m²\)\.$", line)
    for each in found.checks:
        for system in ("us", "si"):
            assert "e+" not in " ".join(amount(number, system) for number in each.numbers)


def test_the_first_year_is_not_left_out():
    job = dataclasses.replace(OPEN, assembly=preset("vented-vault-osb"), start_humidity=0.98)
    found = review(job, with_trials=False)
    years = found.check("years")
    first = years.data.layer("outer layer").moisture_content[:8760].max()
    assert first > years.verdict.finding("wood-moisture").value + 1
    assert years.what.endswith(
        f"In the first year, from the start humidity of 98 %, the outer layer peaks at {first:.0f} %."
    )


def test_insulation_is_dry_when_its_wettest_part_is():
    shut = Job(preset("vented-vault-closed"), Place("demo", "cold"), years=1)
    closed = moisture_checks.drying_time(setting(shut), "insulation")
    opened = moisture_checks.drying_time(setting(dataclasses.replace(OPEN, years=1)), "insulation")
    assert 30 < opened.days < closed.days < 365
    assert (opened.wood, opened.limit) == (False, moisture_checks.DRY_OTHER)
    run = moisture_checks.run_years(setting(shut), years=1, initial=Air(20.0, moisture_checks.WET_OTHER))
    fill = run.layer("insulation")
    before = int(closed.days - 1) * 24
    assert fill.highest_relative_humidity[before : before + 24].max() < moisture_checks.DRY_OTHER
    assert fill.highest_relative_humidity[before - 24 : before].max() >= moisture_checks.DRY_OTHER
    assert fill.relative_humidity[before - 24 : before].max() < moisture_checks.DRY_OTHER, (
        "its mean would say so sooner"
    )


@pytest.mark.parametrize(
    ("states", "words"),
    [
        (["dry"] * 5, "All 5 draws are dry."),
        (["dry", "wet", "dry"], "Of 3 draws 2 dry and 1 wet."),
        (["damp", "wet", "dry"], "Of 3 draws 1 dry, 1 damp and 1 wet."),
    ],
)
def test_states_of_draws(states, words):
    assert trials.of_draws(states) == words
