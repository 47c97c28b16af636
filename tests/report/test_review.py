"""A review says what the physics says: each check against a direct call, and one verdict over all."""

import dataclasses

import pytest
from jobs_at_hand import OPEN, TIGHT, TYPED, checked

from dryward import verdict
from dryward.building import Layer, material, preset, presets
from dryward.building.job import Job
from dryward.physics import drying, hourly, monthly, steady
from dryward.report import check, review
from dryward.report.setting import leak, setting, vent_space
from dryward.verdict import DRY, STATES, UNKNOWN
from dryward.weather import Air

ANSWERS = {*STATES, UNKNOWN, check.MET, check.NOT_MET, check.CANNOT_TELL, check.CAN, "within the year", "later", "not"}


@pytest.fixture(scope="module")
def open_roof():
    return checked(OPEN)


@pytest.fixture(scope="module")
def tight_roof():
    return checked(TIGHT)


def direct(job):
    """The hourly run of a job, by hand."""
    here = setting(job)
    warmth, _ = here.room.at(here.hours)
    return hourly.simulate(
        job.assembly,
        here.hours,
        here.room,
        years=job.years,
        until_it_repeats=True,
        initial=Air(20.0, 0.8),
        vent=vent_space(job),
        leak=hourly.leak_flow(leak(job), here.hours, warmth, height=3.7),
        surface=hourly.Surface(absorptance=0.7, azimuth=0.0),
    )


def test_the_verdicts_differ(open_roof, tight_roof):
    assert open_roof.state == DRY
    assert open_roof.check("winter").answer == DRY
    assert tight_roof.state != DRY
    assert tight_roof.check("winter").answer == "wet"
    assert tight_roof.headline.startswith(f"{tight_roof.state.capitalize()} (hour by hour, with the air leak): ")


@pytest.mark.parametrize("job", [OPEN, TIGHT], ids=["open", "tight"])
def test_the_verdict_is_that_of_the_hourly_year(job, open_roof, tight_roof):
    found = open_roof if job is OPEN else tight_roof
    run = direct(job)
    assert found.verdict.findings == verdict.of_year(run).findings
    assert found.check("years").answer == found.verdict.state == found.state
    change = float(run.water[-1] - run.water[-8761])
    assert found.check("years").number("change") == pytest.approx(change, rel=1e-8, abs=1e-9)
    assert found.check("years").number("balance-error") < 1e-6


def test_every_wood_the_deck_and_the_fill_are_judged(tight_roof):
    wood = {each.place.layer for each in tight_roof.verdict.findings if each.what == "wood-moisture"}
    assert wood == {"outer layer", "deck"}
    for each in tight_roof.verdict.findings:
        assert any(each.place.layer in line for line in tight_roof.check("years").lines)


def test_a_deck_drawn_in_two_pieces_is_one_deck(tight_roof):
    built = TIGHT.assembly
    layers = list(built.layers)
    place = next(k for k, each in enumerate(layers) if each.name == "deck")
    half = layers[place].thickness / 2
    layers[place : place + 1] = [
        Layer(layers[place].substance, half, "deck"),
        Layer(layers[place].substance, half, "deck 2"),
    ]
    cut = review(
        dataclasses.replace(TIGHT, assembly=dataclasses.replace(built, layers=tuple(layers))), with_trials=False
    )
    assert cut.state == tight_roof.state
    for one, other in zip(cut.verdict.findings, tight_roof.verdict.findings, strict=True):
        assert (one.what, one.place.layer, one.state) == (other.what, other.place.layer, other.state)
        assert one.value == pytest.approx(other.value, rel=0.05, abs=0.02)


def test_winter_is_the_steady_state(tight_roof):
    here = setting(TIGHT)
    state = steady.profile(TIGHT.assembly, here.winter_room, here.winter)
    assert tight_roof.check("winter").number("water-gained") == state.gain
    assert tight_roof.check("winter").number("highest-humidity") == state.relative_humidity[state.dampest]
    assert tight_roof.check("winter").answer == verdict.of_steady(state).state


def test_twelve_months_are_the_monthly_balance(tight_roof):
    here = setting(TIGHT)
    months = monthly.balance(TIGHT.assembly, here.months, here.room)
    assert tight_roof.check("twelve-months").number("most-held") == months.peak
    assert tight_roof.check("twelve-months").answer == verdict.of_months(months).state


def test_a_wet_start_is_the_drying_rate(tight_roof):
    here = setting(TIGHT)
    rates = drying.rates(TIGHT.assembly, "outer layer", here.winter_room, here.winter)
    assert tight_roof.check("wet-start").number("winter-inward") == rates.inward


def test_a_leak_makes_it_wetter():
    roof = dataclasses.replace(OPEN, assembly=preset("vented-vault-osb"))
    leaky, tight = (review(job, with_trials=False) for job in (roof, dataclasses.replace(roof, tightness=None)))
    peaks = [each.verdict.finding("wood-moisture").value for each in (leaky, tight)]
    assert peaks[0] > peaks[1] + 2
    assert "spread evenly" in leaky.check("years").limits
    assert "10 % of it seeps" in leaky.check("years").limits
    assert "no blower-door number" in tight.check("years").limits
    assert "leak" in tight.verdict.left_out
    assert "leak" not in leaky.verdict.left_out


def test_typed_means_have_no_hours():
    found = review(TYPED)
    assert found.check("years") is None
    assert found.verdict.method == "months"
    assert any("no hours" in note for note in found.notes)


@pytest.mark.parametrize("id", presets())
def test_every_preset_can_be_reviewed_and_says_its_limits(id):
    found = review(Job(preset(id)), hourly=False)
    for each in found.checks:
        assert each.what.endswith(".")
        assert each.answer in ANSWERS
        assert each.limits or each.id == "vents"
        assert (each.verdict.state if each.verdict else each.answer) == each.answer


def test_no_check_promises_too_much(open_roof, tight_roof):
    for found in (open_roof, tight_roof):
        words = " ".join(
            f"{each.question} {each.what} {each.why} {each.change} {each.limits} {' '.join(each.lines)}"
            for each in found.checks
        ).lower()
        assert "safe" not in words
        assert "certif" not in words


def test_the_hourly_run_can_be_stopped():
    from dryward.physics.hourly.simulate import Stopped

    with pytest.raises(Stopped):
        review(OPEN, progress=lambda done, total: False)


def test_soft_wood_above_the_vent_space_is_judged_too():
    """The deck is wetted where the layers inside the vent space stay dry."""
    built = preset("vented-vault").replace("deck", material("osb"))
    found = review(dataclasses.replace(OPEN, assembly=built), with_trials=False)
    assert {each.place.layer for each in found.verdict.findings if each.what == "wood-moisture"} == {"deck"}
