"""Ranges along a slider, batches, and bands: the same answers as one run at a time."""

import numpy as np
import pytest

from dryward import building, weather
from dryward.checks import OutOfRange, UnknownName
from dryward.physics import hourly, limits
from dryward.physics import spread as bands
from dryward.verdict import of_year
from dryward.weather import Air

WALL = building.preset("wood-frame-wall")
YEAR = weather.demo("cold")
ROOM = Air(21.0, 0.4)


def test_a_range_of_years_is_the_single_runs_one_by_one():
    humidity = np.array([0.2, 0.4, 0.6, 0.8])
    found = limits.dry_range(
        WALL, ROOM, None, "indoor_relative_humidity", humidity, weather=YEAR, years=1, surface=hourly.Surface()
    )
    alone = [of_year(hourly.simulate(WALL, YEAR, Air(21.0, rh), surface=hourly.Surface())).state for rh in humidity]
    assert found.states.tolist() == alone
    assert alone[0] == "dry" != alone[-1]
    assert found.spans[0][0] == 0.2


def test_a_range_with_a_leak_counts_it():
    """Air that seeps into the fill wets the roof that is dry without it; a slider of the leak itself says the same."""
    vault = building.preset("vented-vault-variable")
    seeping = hourly.AirFlow(3e-4, long_share=1.0)
    options = {"weather": YEAR, "years": 1}
    states = [
        limits.dry_range(vault, ROOM, None, "indoor_relative_humidity", [0.4], leak=leak, **options).states[0]
        for leak in (None, seeping)
    ]
    assert states[0] == "dry" != states[1]
    flows = [0.0, 3e-4]
    along = limits.dry_range(vault, ROOM, None, "leak", flows, leak=seeping, **options)
    assert along.states.tolist() == states


def test_a_range_runs_until_the_year_repeats_where_no_years_are_given():
    seen = {}

    def measure(run):
        seen[run.time.size // 8760] = of_year(run).state
        return seen[run.time.size // 8760]

    found = limits.dry_range(WALL, ROOM, None, "indoor_relative_humidity", [0.3], weather=YEAR)
    hourly.batch([(WALL, YEAR, Air(21.0, 0.3), limits.UNTIL_IT_REPEATS)], measure)
    (years,) = seen
    assert 2 <= years <= 5
    assert found.states.tolist() == list(seen.values())


def test_results_come_as_they_are_found_and_can_be_stopped():
    seen = []
    options = {"weather": YEAR, "hours": 50}
    found = limits.dry_range(
        WALL, ROOM, None, "indoor_temperature", [18.0, 20.0, 22.0], found=lambda *each: seen.append(each), **options
    )
    assert dict(seen) == dict(enumerate(found.states))
    options = {"weather": YEAR, "hours": 500}
    with pytest.raises(hourly.Stopped, match="The batch was stopped"):
        limits.dry_range(
            WALL, ROOM, None, "indoor_temperature", np.linspace(15, 25, 30), found=lambda *each: False, **options
        )


@pytest.mark.parametrize(
    ("variable", "value"),
    [
        ("sheathing_permeance", 3e-11),
        ("inner_membrane_permeance", 3e-11),
        ("insulation_thermal_resistance", 5.0),
        ("sheathing_thickness", 0.018),
        ("sheathing_sorption", 1.2),
        ("insulation_conductivity", 1.1),
        ("vent_space_permeance", 1e-8),
        ("indoor_temperature", 18.0),
        ("leak", 1e-5),
        ("vent", 0.01),
        ("absorptance", 0.2),
        ("azimuth", 0.0),
        ("slope", 45.0),
    ],
)
def test_every_variable_changes_the_answer(variable, value):
    options = {"hours": 400, "surface": hourly.Surface()}
    built, room, rest = hourly.varied(WALL, ROOM, options, variable, value)
    before = hourly.simulate(WALL, YEAR, ROOM, **options)
    after = hourly.simulate(built, YEAR, room, **rest)
    assert after.water[-1] != before.water[-1]
    assert variable in hourly.variables(WALL)


def test_a_changed_property_is_the_one_asked_for():
    vault = building.preset("vented-vault-osb")
    for what, value, read in (
        ("permeance", 2e-10, lambda layer: layer.permeance),
        ("thermal_resistance", 0.2, lambda layer: layer.thermal_resistance),
        ("thickness", 0.02, lambda layer: layer.thickness),
    ):
        new = hourly.varied(vault, ROOM, {}, f"outer_layer_{what}", value)[0]
        assert read(new.layer("outer layer")) == pytest.approx(value)


@pytest.mark.parametrize(
    ("call", "error", "words"),
    [
        (lambda: hourly.varied(WALL, ROOM, {}, "colour", 1.0), UnknownName, 'There is no thing to vary "colour"'),
        (
            lambda: hourly.varied(WALL, ROOM, {}, "absorptance", 0.5),
            OutOfRange,
            "only when the case has an outer surface",
        ),
        (
            lambda: hourly.varied(WALL, weather.indoor.humidity_class(2), {}, "indoor_temperature", 20.0),
            OutOfRange,
            "Room air that follows a rule has no temperature",
        ),
        (
            lambda: hourly.varied(WALL, ROOM, {}, "sheathing_thickness", 9.0),
            OutOfRange,
            "Thickness of sheathing is 9 m",
        ),
        (
            lambda: limits.dry_range(WALL, ROOM, None, "colour", [1.0], weather=YEAR),
            UnknownName,
            'There is no thing to vary "colour"',
        ),
        (lambda: bands.Uncertain("deck", "color", 1, 2), UnknownName, 'There is no uncertain property "color"'),
        (lambda: bands.Uncertain("deck", "permeance", 2, 1), OutOfRange, "the second must be larger"),
        (lambda: bands.factors([], 1), OutOfRange, "Draws is 1; it must be 2 to 10000"),
    ],
)
def test_what_is_refused(call, error, words):
    with pytest.raises(error, match=words):
        call()


def sheathing(run):
    return run.layer("sheathing").moisture_content


def test_a_band():
    band = bands.spread(WALL, YEAR, ROOM, sheathing, draws=24, hours=2000, leak=hourly.AirFlow(1e-4, long_share=0.1))
    assert band.draws.shape == (24, 2000)
    assert band.levels.shape == (5, 2000)
    assert np.all(np.diff(band.levels, axis=0) >= 0)
    middle = sheathing(hourly.simulate(WALL, YEAR, ROOM, hours=2000, leak=hourly.AirFlow(1e-4, long_share=0.1)))
    inside = (middle >= band.draws.min(axis=0)) & (middle <= band.draws.max(axis=0))
    assert inside[100:].mean() > 0.95
    assert {"leak", "long share"} <= {each.what for each in band.uncertain}


def test_a_band_is_the_same_for_the_same_seed_and_no_wider_than_its_ranges():
    one, two = (bands.spread(WALL, YEAR, ROOM, sheathing, draws=4, hours=50, seed=3) for _ in range(2))
    assert np.array_equal(one.draws, two.draws)
    for thing, column in zip(one.uncertain, one.factors.T, strict=True):
        assert column.min() >= thing.low
        assert column.max() <= thing.high
    sure = [bands.Uncertain("sheathing", "permeance", 1.0, 1.0)]
    none = bands.spread(WALL, YEAR, ROOM, sheathing, draws=3, hours=50, things=sure)
    assert np.ptp(none.draws, axis=0).max() < 1e-9


def test_a_hypercube_meets_every_stretch_once():
    sample = bands.factors([bands.Uncertain("a", "permeance", 1.0, np.e), bands.Uncertain("b", "leak", 1.0, np.e)], 50)
    for column in sample.T:
        assert np.sort((np.log(column) * 50).astype(int)).tolist() == list(range(50))


def test_a_leak_of_a_band_is_one():
    with pytest.raises(OutOfRange, match="The leak must be an air leak or an air flow"):
        bands.spread(WALL, YEAR, ROOM, sheathing, draws=2, hours=5, leak=3.0)
