"""What a caller sees: shapes, results by layer and month, what is refused and in which words."""

import numpy as np
import pytest

from dryward import building, weather
from dryward.building import Assembly, FixedMembrane, Layer
from dryward.checks import OutOfRange, UnknownName
from dryward.physics import hourly, mold, ventspace
from dryward.physics.hourly import grid
from dryward.weather import Air, indoor

VAULT = building.preset("vented-vault-osb")
YEAR = weather.demo("cold")
ROOM = Air(21.0, 0.4)


@pytest.fixture(scope="module")
def run():
    return hourly.simulate(VAULT, YEAR, ROOM, surface=hourly.Surface(), vent=0.003)


def test_shapes(run):
    n = run.depth.size
    assert run.time[[0, -1]].tolist() == [1.0, 8760.0]
    assert run.temperature.shape == run.relative_humidity.shape == run.water_content.shape == (8760, n)
    assert np.all(np.diff(run.depth) > 0)
    assert run.depth[-1] < VAULT.thickness
    assert run.width.sum() == pytest.approx(VAULT.thickness)
    for name in ("vapor_flux_in", "vapor_flux_out", "heat_flux_in", "vent_out", "surface_temperature", "condensed"):
        assert getattr(run, name).shape == (8760,)


def test_a_layer(run):
    deck = run.layer("deck")
    cells = run.cell_layer == VAULT.index("deck")
    assert deck.water_content * VAULT.layer("deck").thickness == pytest.approx(
        run.water_content[:, cells] @ run.width[cells]
    )
    density = VAULT.layer("deck").substance.density
    assert deck.moisture_content == pytest.approx(100 * deck.water_content / density)
    assert np.all(deck.highest_relative_humidity >= deck.relative_humidity - 1e-12)
    with pytest.raises(UnknownName, match='There is no layer "dek"; did you mean deck'):
        run.layer("dek")
    with pytest.raises(UnknownName, match='There is no layer with a thickness "paint"'):
        run.layer("paint")
    with pytest.raises(UnknownName, match='There is no face "left"'):
        run.face("deck", "left")


def test_mold_is_that_of_the_face_and_stays_in_its_scale(run):
    index = run.mold_index("outer layer", "sensitive", "inner")
    assert index == pytest.approx(mold.index(*run.face("outer layer"), "sensitive"))
    assert index.min() >= 0
    assert index.max() <= 6


def test_mold_in_a_wet_year_stays_in_its_scale():
    wet = hourly.simulate(VAULT, Air(25.0, 0.99), Air(25.0, 0.99), initial=Air(25.0, 0.99))
    index = wet.mold_index("deck", "very sensitive", "outer")
    assert 3 < index.max() <= 6
    assert np.all(np.diff(index) >= 0)


def test_hours_above(run):
    warm, humid = run.face("deck")
    assert run.hours_above("deck", 0.8, 5.0, "inner") == int(((humid >= 0.8) & (warm >= 5.0)).sum())
    assert run.hours_above("deck", 0.0) == 8760
    with pytest.raises(OutOfRange, match="Relative humidity is 120 %"):
        run.hours_above("deck", 1.2)


def test_months(run):
    months = run.monthly()
    assert months.month.tolist() == list(range(1, 13))
    gained = months.from_room - months.to_outdoors + months.leaked - months.vented
    start = run.initial_water @ run.width
    assert np.cumsum(gained) == pytest.approx(months.held - start, abs=1e-9)
    with pytest.raises(OutOfRange, match="a monthly budget needs a whole year"):
        hourly.simulate(VAULT, YEAR, ROOM, hours=100).monthly()


def test_what_passes_straight_is_no_water_of_the_layers():
    """In and out close with what is held; a leak that goes by to the vent space is in neither."""
    space = ventspace.VentSpace(0.04, 5.0, 35.0)
    for share in (0.0, 0.3):
        leaking = hourly.simulate(
            building.preset("vented-vault-osb"), YEAR, ROOM, vent=space, leak=hourly.AirFlow(3e-4, share)
        )
        months = leaking.monthly()
        brought, carried = months.in_and_out
        assert (brought >= 0).all()
        assert (carried >= 0).all()
        start = leaking.initial_water @ leaking.width
        assert np.cumsum(brought - carried) == pytest.approx(months.held - start, abs=1e-9)
        assert (abs(months.seeped).max() > 0.01) == (share > 0)
        assert months.leaked.max() > 1.0
        assert brought.max() < months.leaked.max()


def test_rules_for_room_air():
    for rule in (indoor.constant(ROOM), indoor.humidity_class(2), indoor.by_outdoor_temperature()):
        assert hourly.simulate(VAULT, YEAR, rule, hours=100).time.size == 100


def test_progress_and_stop():
    seen = []
    whole = hourly.simulate(VAULT, YEAR, ROOM, progress=lambda done, total: seen.append((done, total)))
    assert seen[-1] == (8760, 8760)
    assert len(seen) == 12
    assert whole.water == pytest.approx(hourly.simulate(VAULT, YEAR, ROOM).water, rel=1e-12)
    with pytest.raises(hourly.Stopped, match="The run was stopped after 1460 of 8760 hours"):
        hourly.simulate(VAULT, YEAR, ROOM, progress=lambda done, total: done < 1400)


def test_weather_repeats_as_needed():
    day = weather.HourlyWeather(np.arange(24.0), np.full(24, 300.0))
    run = hourly.simulate(VAULT, day, ROOM, hours=100)
    assert run.time.size == 100
    assert hourly.simulate(VAULT, day, ROOM, years=3).time.size == 72


def test_starts():
    wet = hourly.simulate(VAULT, YEAR, ROOM, hours=1, initial={"deck": 120.0})
    assert wet.layer("deck").water_content[0] == pytest.approx(120.0, rel=0.01)
    assert wet.initial_water[wet.cell_layer == VAULT.index("deck")] == pytest.approx(120.0)
    more = hourly.simulate(VAULT, YEAR, ROOM, hours=10, initial=wet)
    assert more.layer("deck").water_content[0] == pytest.approx(120.0, rel=0.01)


@pytest.mark.parametrize(
    ("options", "error", "words"),
    [
        ({"years": 0}, OutOfRange, "Years is 0; it must be a whole number, 1 to 100"),
        ({"hours": 0}, OutOfRange, "Hours is 0 h; it must be 1 to"),
        ({"hours": 1.5}, OutOfRange, "Hours is 1.5; it must be a whole number, 1 to 876000 h."),
        ({"step": 7200.0}, OutOfRange, "Step is 7200 s; it must be above 0 and at most 3600 s"),
        ({"refine": 0}, OutOfRange, "Refinement is 0; it must be a whole number, 1 to 50"),
        ({"initial": {"deck": -1.0}}, OutOfRange, r"Water in deck is -1 kg/m³; it must be 0 to 2000"),
        ({"initial": {"paint": 1.0}}, OutOfRange, "The layer paint has no thickness, so it holds no water"),
        ({"initial": {"roof": 1.0}}, UnknownName, 'There is no layer "roof"'),
        ({"initial": 0.8}, OutOfRange, "The start must be an air, water contents by layer or an earlier run"),
    ],
)
def test_what_is_refused(options, error, words):
    with pytest.raises(error, match=words):
        hourly.simulate(VAULT, YEAR, ROOM, **{"hours": 2, **options} if "years" not in options else options)


def test_more_that_is_refused():
    with pytest.raises(OutOfRange, match="The weather must be hourly weather or one air, not 'rain'"):
        hourly.simulate(VAULT, "rain", ROOM, hours=2)
    with pytest.raises(OutOfRange, match="The room must be an air or a rule for room air, not 'warm'"):
        hourly.simulate(VAULT, YEAR, "warm", hours=2)
    several = Air(np.array([0.0, 1.0]), 0.5)
    with pytest.raises(OutOfRange, match="The weather must be one air, not several"):
        hourly.simulate(VAULT, several, ROOM, hours=2)
    with pytest.raises(OutOfRange, match="The room must be one air, not several"):
        hourly.simulate(VAULT, YEAR, several, hours=2)
    with pytest.raises(OutOfRange, match="has only membranes"):
        hourly.simulate(Assembly("bag", [Layer(FixedMembrane(1e-10))]), YEAR, ROOM, hours=2)
    other = hourly.simulate(building.preset("vented-vault"), YEAR, ROOM, hours=2)
    with pytest.raises(OutOfRange, match="has other cells than this assembly"):
        hourly.simulate(building.preset("wood-frame-wall"), YEAR, ROOM, hours=2, initial=other)


@pytest.mark.parametrize("thickness", [1e-4, 0.001, 0.0127, 0.14, 0.3, 3.0])
def test_cells_fill_a_layer(thickness):
    width = grid.widths(thickness)
    assert width.sum() == pytest.approx(thickness)
    assert width == pytest.approx(width[::-1])
    assert width.size >= 4
    assert grid.widths(thickness, 3).size == 3 * width.size
