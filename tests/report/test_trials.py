"""Other inputs, design years and rooms: each trial against the review of the job that it stands for."""

import dataclasses

import pytest
from jobs_at_hand import OPEN
from jobs_at_hand import checked as at_hand

from dryward.building import preset
from dryward.building.job import DESIGNS, Job, Place, Room, Tightness
from dryward.physics.airleak import LONG_SHARES
from dryward.report import many, review, trials
from dryward.report.moisture_checks import run_years
from dryward.report.sentences import for_client
from dryward.report.setting import setting
from dryward.verdict import DRY, STATES, of_year, words

OSB = dataclasses.replace(OPEN, assembly=preset("vented-vault-osb"), tightness=Tightness(3.0), years=5)


def state_of(job):
    return of_year(run_years(setting(job))).state


@pytest.fixture(scope="module")
def checked():
    return at_hand(OSB, True)


def test_the_leak_and_its_long_share_are_among_what_decides(checked):
    found = checked.verdict.decides
    assert found.what in ("leak", "long share")
    assert found.states[0] != found.states[1]
    matters = checked.check("years").matters
    assert words.decides(checked.verdict) in matters
    assert "size of the air leak" in matters
    assert "seeps through the insulation" in matters


def test_an_end_is_the_year_with_that_input(checked):
    """Both ends of the long share by hand, from the leak itself."""
    from dryward.report import moisture_checks

    here, worst = setting(OSB), checked.verdict.worst
    keys = moisture_checks.options(here)
    ends = trials.deciding(here, checked.verdict)
    (found,) = [each for each in ends if each.what == "long share"]
    for share, value, state in zip(LONG_SHARES, (found.low, found.high), found.states, strict=True):
        by_hand = of_year(run_years(here, leak=dataclasses.replace(keys["leak"], long_share=share)))
        assert by_hand.state == state
        assert trials.value_of(by_hand, worst) == pytest.approx(value, rel=1e-9)


def test_the_design_years_are_reviews_of_their_own(checked):
    assert [design for design, _ in checked.designs] == list(DESIGNS)
    for design, found in checked.designs:
        assert found.state == state_of(dataclasses.replace(OSB, design=design))
    states = dict(checked.designs)
    assert states["typical"].findings == checked.verdict.findings
    assert len({each.state for each in states.values()}) > 1, "a damp house or a cold winter says something else here"


ROOMS = [
    Room(relative_humidity=0.45),
    pytest.param(Room("class", humidity_class=2), marks=pytest.mark.slow),
    Room("by outdoor temperature"),
]


@pytest.mark.parametrize("room", ROOMS, ids=lambda each: each.kind)
def test_the_rooms_limit_is_tried_on_both_sides(room):
    job = dataclasses.replace(OSB, room=room)
    here = setting(job)
    limit = trials.humidity_limit(here)
    assert 0.15 <= limit.humidity < 0.70
    for humidity, expected in ((limit.humidity, DRY), (limit.humidity + 0.01, limit.beyond)):
        there = dataclasses.replace(here, room=trials.room_at(here, humidity))
        assert of_year(run_years(there)).state == expected
    if room.kind == "constant":  # the same as the reader typing it
        at = dataclasses.replace(job, room=dataclasses.replace(room, relative_humidity=limit.humidity))
        assert state_of(at) == DRY


def test_the_limit_counts_the_leak():
    tight, loose = (setting(dataclasses.replace(OSB, tightness=Tightness(ach50))) for ach50 in (0.6, 3.0))
    assert trials.humidity_limit(tight).humidity > trials.humidity_limit(loose).humidity


def test_a_roof_with_no_limit_and_one_with_none():
    dry = trials.humidity_limit(setting(Job(preset("vented-vault"), Place("demo", "hot-dry"))))
    assert (dry.humidity, dry.beyond) == (0.70, "")
    cool = Room(temperature=16.0, summer_temperature=16.0, summer_relative_humidity=0.9)
    soaked = dataclasses.replace(OSB, place=Place("demo", "hot-humid"), room=cool, tightness=Tightness(10.0), years=2)
    wet = trials.humidity_limit(setting(soaked))
    assert wet.humidity is None
    assert wet.beyond in STATES[1:]


def test_an_untested_house_is_tried_with_a_leak():
    untested = dataclasses.replace(OSB, tightness=None)
    leaky = trials.assumed_leak(setting(untested))
    assert leaky.state == state_of(OSB)
    assert trials.assumed_leak(setting(OSB)) is None
    found = dataclasses.replace(at_hand(untested), leaky=leaky)
    assert f"it would be {leaky.state}" in found.headline
    assert review(OSB, hourly=False).leaky is None


def test_what_is_handed_to_a_client_counts_a_leak_though_none_was_tested(checked):
    """The limit, the design years and what decides are those of the same house with the assumed leak."""
    untested, tested = review(dataclasses.replace(OSB, tightness=None)), checked
    assert OSB.tightness == Tightness(trials.ASSUMED)
    assert untested.leaky.state == tested.state
    assert untested.limit == tested.limit
    assert [(each, found.state) for each, found in untested.designs] == [
        (each, found.state) for each, found in tested.designs
    ]
    assert (untested.verdict.decides.what, untested.verdict.decides.states) == ("leak", (untested.state, tested.state))
    limit = next(each for each in for_client(untested) if "humidity" in each and "rooms" in each.lower())
    assert "3 air changes at 50 Pa assumed, not tested" in limit
    assert "with no air leak" not in limit
    said = untested.check("years").matters
    assert said.startswith("What decides: the size of the air leak")
    assert tested.check("years").matters[1:] in said


def test_an_untested_house_holds_only_with_the_assumed_leak_too():
    quick = review(dataclasses.replace(OSB, tightness=None), with_trials=False)
    assert (quick.state, quick.holds) == (DRY, False)
    assert quick.leaky.state != DRY
    assert many.plain(quick)["holds"] is False
    fine = review(Job(preset("vented-vault"), Place("demo", "hot-dry")), with_trials=False)
    assert (fine.state, fine.leaky.state, fine.holds) == (DRY, DRY, True)


def test_everything_is_in_the_plain_form(checked):
    data = many.plain(checked)
    assert data["state"] == data["verdict"]["state"] == checked.state
    assert data["room_humidity_limit"]["humidity"] == checked.limit.humidity
    assert data["designs"] == {design: each.state for design, each in checked.designs}
    decides = data["verdict"]["decides"]
    assert decides["what"] == checked.verdict.decides.what
    assert decides["low"] == pytest.approx(checked.verdict.decides.low, rel=1e-8)
    for found, each in zip(data["verdict"]["findings"], checked.verdict.findings, strict=True):
        assert found["value"] == pytest.approx(each.value, rel=1e-8)
        assert (found["state"], found["layer"]) == (each.state, each.place.layer)
        assert found["criterion"]["source"]


def test_trials_can_be_stopped():
    from dryward.physics.hourly import Stopped

    told = []

    def stop(done, total):
        told.append((done, total))
        return done < 20

    with pytest.raises(Stopped):
        review(OSB, progress=stop)
    assert told[-1][0] >= 20
    assert all(total == 100 for _, total in told)
