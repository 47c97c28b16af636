"""A review says what the physics says: each finding against a direct call."""

import dataclasses

import pytest
from jobs_at_hand import OPEN, TIGHT, TYPED

from dryward.building import preset, presets
from dryward.building.job import Job
from dryward.physics import drying, hourly, monthly, steady
from dryward.report import review
from dryward.report.setting import leak, setting, vent_space
from dryward.weather import Air


@pytest.fixture(scope="module")
def open_roof():
    return review(OPEN)


@pytest.fixture(scope="module")
def tight_roof():
    return review(TIGHT)


def test_the_verdicts_differ(open_roof, tight_roof):
    assert open_roof.dries
    assert open_roof.finding("winter").answer == "no"
    assert not tight_roof.dries
    assert tight_roof.finding("winter").answer == "yes"
    assert tight_roof.verdict.startswith("By these checks the roof does not dry: ")


def test_winter_is_the_steady_state(tight_roof):
    here = setting(TIGHT)
    state = steady.profile(TIGHT.assembly, here.winter_room, here.winter)
    assert tight_roof.finding("winter").number("Water gained") == state.gain
    assert tight_roof.finding("winter").number("Highest humidity") == state.relative_humidity[state.wettest]


def test_twelve_months_are_the_monthly_balance(tight_roof):
    here = setting(TIGHT)
    months = monthly.balance(TIGHT.assembly, here.months, here.room)
    assert tight_roof.finding("twelve-months").number("Most held") == months.peak


def test_the_years_are_the_hourly_run(open_roof):
    here = setting(OPEN)
    run = hourly.simulate(
        OPEN.assembly,
        here.hours,
        here.room,
        years=2,
        initial=Air(20.0, 0.8),
        vent=vent_space(OPEN),
        leak=hourly.leak_flow(leak(OPEN), here.hours, 21.0, OPEN.assembly, height=3.7),
        surface=hourly.Surface(absorptance=0.7, azimuth=0.0),
    )
    found = open_roof.finding("years")
    change = float(run.water[-1] - run.water[8759])
    assert found.number("Change over the last year") == pytest.approx(change, rel=1e-8, abs=1e-9)
    assert found.number("Balance error") < 1e-6


def test_a_wet_start_is_the_drying_rate(tight_roof):
    here = setting(TIGHT)
    rates = drying.rates(TIGHT.assembly, "outer layer", here.winter_room, here.winter)
    assert tight_roof.finding("wet-start").number("Winter, inward") == rates.inward


def test_a_leak_makes_it_wetter():
    roof = dataclasses.replace(OPEN, assembly=preset("vented-vault-osb"))
    leaky, tight = review(roof), review(dataclasses.replace(roof, tightness=None))
    label = "Peak moisture content"
    assert leaky.finding("peak").number(label) > tight.finding("peak").number(label) + 2
    assert "spread evenly" in leaky.finding("years").limits
    assert "no blower-door number" in tight.finding("years").limits


def test_typed_means_have_no_hours():
    found = review(TYPED)
    assert found.finding("years").answer == "cannot tell"
    assert any("no hours" in note for note in found.notes)


@pytest.mark.parametrize("id", presets())
def test_every_preset_can_be_reviewed_and_says_its_limits(id):
    found = review(Job(preset(id)), hourly=False)
    for each in found.findings:
        assert each.what.endswith(".")
        assert each.answer in ("yes", "no", "cannot tell")
        assert each.limits or each.good is None or each.id in ("vents",)


def test_no_finding_promises_too_much(open_roof, tight_roof):
    for found in (open_roof, tight_roof):
        words = " ".join(
            f"{each.question} {each.what} {each.why} {each.change} {each.limits}" for each in found.findings
        ).lower()
        assert "safe" not in words
        assert "certif" not in words


def test_the_hourly_run_can_be_stopped():
    from dryward.physics.hourly.simulate import Stopped

    with pytest.raises(Stopped):
        review(OPEN, progress=lambda done, total: False)
