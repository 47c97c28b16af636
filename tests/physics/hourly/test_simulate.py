"""What the hourly room takes, refuses and gives back; and what is left out."""

import few_hours
import numpy as np
import pytest

from dryward import building, weather
from dryward.building import AirSpace, Assembly, FixedMembrane, LaminateMembrane, Layer, Material, VariableMembrane
from dryward.checks import OutOfRange, UnknownName
from dryward.physics import hourly, mold, steady, ventspace
from dryward.physics.hourly import case, grid, surfaces, vary
from dryward.weather import Air, HourlyWeather, indoor

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
        ({"initial": {"deck": -1.0}}, OutOfRange, r"Water in deck is −1 kg/m³; it must be 0 to 2000"),
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


WALL = Assembly("wall", [Layer(few_hours.PANEL, 0.012, "panel")])
SHEET = VariableMembrane((0.3, 0.8), (2e-11, 8e-10))


def test_a_property_that_is_none():
    with pytest.raises(UnknownName, match='There is no property "color"'):
        vary.changed(WALL, "panel", "color", 1.0)


def test_more_sorption_keeps_the_conductivity_with_the_humidity():
    new = vary.changed(WALL, "panel", "sorption", 1.2).layer("panel").substance
    assert new.sorption == tuple((rh, pytest.approx(1.2 * w)) for rh, w in few_hours.PANEL.sorption)
    assert new.conductivity == tuple((pytest.approx(1.2 * w), k) for w, k in few_hours.PANEL.conductivity)


def test_a_laminate_has_its_backing_on_the_side_it_is():
    backing = pytest.approx(1 / 3e-10)
    assert grid.parts(LaminateMembrane(SHEET, 3e-10)) == (SHEET, 0.0, backing)
    assert grid.parts(LaminateMembrane(SHEET, 3e-10, turned=True)) == (SHEET, backing, 0.0)
    assert grid.parts(SHEET) == (SHEET, 0.0, 0.0)


def test_direct_sun_alone_is_only_a_part():
    still = np.zeros(24)
    half = HourlyWeather(still, still + 300.0, direct_normal=still + 100.0, latitude=45.0, longitude=8.0)
    with pytest.raises(OutOfRange, match="The weather has only a part of the sun"):
        surfaces.irradiance(half, 30.0, 180.0)


WOOL = Material("wool", "wool", 30.0, 840.0, 0.036, 1.6e-10)
BOARD = Material("board", "board", 800.0, 1090.0, 0.16, 3e-11, sorption=((0.5, 3.0), (0.8, 6.0), (1.0, 70.0)))
PANEL = Material("panel", "panel", 600.0, 1700.0, 0.12, 2e-12, sorption=((0.5, 40.0), (0.8, 90.0), (1.0, 300.0)))
VARIABLE = VariableMembrane((0.25, 0.5, 0.75, 0.95), (2e-11, 1e-10, 6e-10, 1e-9))


def roof(*inner, outer=FixedMembrane(5e-10)):  # noqa: B008 - frozen
    return Assembly(
        "roof", [Layer(BOARD, 0.0127), *map(Layer, inner), Layer(WOOL, 0.2), Layer(PANEL, 0.012), Layer(outer)]
    )


def same_as_steady(assembly, indoor, outdoor, hours=60000, refine=4, share=3e-3, initial=Air(10.0, 0.5)):
    run = hourly.simulate(assembly, outdoor, indoor, hours=hours, initial=initial, refine=refine)
    want = steady.profile(assembly, indoor, outdoor)
    assert run.vapor_flux_in[-1] == pytest.approx(want.vapor_flux_in, rel=share)
    assert run.vapor_flux_out[-1] + run.vent_out[-1] == pytest.approx(want.vapor_flux_out, rel=share)
    assert run.balance_error < 1e-6
    return run, want


@pytest.mark.parametrize(
    "inner",
    [
        (),
        (FixedMembrane(2e-11),),
        (VARIABLE,),
        (LaminateMembrane(VARIABLE, 2e-10),),
        (LaminateMembrane(VARIABLE, 2e-10).flipped(),),
    ],
    ids=["none", "fixed", "variable", "laminate", "flipped laminate"],
)
def test_dry_steady_flow(inner):
    """Where nothing gets wet, each kind of membrane ends at the flow of the steady solver."""
    run, _ = same_as_steady(roof(*inner), Air(20.0, 0.35), Air(5.0, 0.6))
    assert run.condensed[-1] == 0.0


def test_wetting_ends_at_the_steady_rate():
    """Condensing for ever: what arrives and what leaves are those of the stretched string.

    2 %: the heat that condensation sets free warms the plane by 0.2 K, which the steady solver leaves out.
    """
    assembly, indoor, outdoor = roof(outer=FixedMembrane(1e-11)), Air(20.0, 0.5), Air(-10.0, 0.8)
    run, want = same_as_steady(assembly, indoor, outdoor, hours=20000, refine=8, share=0.02, initial={"panel": 290.0})
    gain = (run.water[-1] - run.water[-2]) / 3600.0
    assert sum(plane.rate for plane in want.wet_planes) == pytest.approx(gain, rel=0.01)


def test_closed_air_space_is_its_resistance():
    layers = [Layer(BOARD, 0.0127), Layer(AirSpace(0.18, 4e-9), 0.03), Layer(PANEL, 0.012)]
    same_as_steady(Assembly("wall", layers), Air(20.0, 0.4), Air(5.0, 0.6))


def test_vapor_films_count():
    layers = [Layer(BOARD, 0.0127)]
    same_as_steady(
        Assembly("wall", layers, interior_vapor_film=1e-9, exterior_vapor_film=3e-9), Air(20.0, 0.4), Air(5.0, 0.6)
    )


def test_two_membranes_together():
    """Two that change with humidity lie on each other with a plane of air between."""
    layers = [Layer(BOARD, 0.0127), Layer(VARIABLE), Layer(LaminateMembrane(VARIABLE, 2e-10)), Layer(WOOL, 0.1)]
    same_as_steady(Assembly("wall", layers), Air(20.0, 0.4), Air(5.0, 0.6))


def test_membranes_at_both_faces():
    layers = [Layer(FixedMembrane(3e-10)), Layer(BOARD, 0.0127), Layer(VARIABLE)]
    same_as_steady(Assembly("wall", layers), Air(20.0, 0.6), Air(5.0, 0.9))


@pytest.mark.parametrize("id", building.presets())
def test_equal_airs_leave_all_as_it_is(id):
    still = Air(15.0, 0.6)
    run = hourly.simulate(building.preset(id), still, still, hours=500, initial=still)
    assert np.abs(run.temperature - 15.0).max() < 1e-6
    assert np.abs(run.relative_humidity - 0.6).max() < 1e-7
    assert np.abs(run.vapor_flux_in).max() < 1e-16


def test_mirror():
    """Turned inside out with the airs exchanged, the same happens from the other side."""
    layers = [Layer(BOARD, 0.0127), Layer(VARIABLE), Layer(WOOL, 0.1), Layer(PANEL, 0.012)]
    there = Assembly("there", layers, interior_film=0.1, exterior_film=0.1)
    back = Assembly("back", layers[::-1], interior_film=0.1, exterior_film=0.1)
    one = hourly.simulate(there, Air(-5.0, 0.8), Air(20.0, 0.5), hours=1000)
    two = hourly.simulate(back, Air(20.0, 0.5), Air(-5.0, 0.8), hours=1000)
    assert one.relative_humidity == pytest.approx(two.relative_humidity[:, ::-1], abs=2e-4)
    assert one.temperature == pytest.approx(two.temperature[:, ::-1], abs=2e-3)


@pytest.mark.parametrize("id", building.presets())
def test_presets_end_at_the_steady_profile(id):
    """Mild airs, so that nothing is wet; a vented space of which nothing is said holds outdoor air."""
    assembly, indoor, outdoor = building.preset(id), Air(20.0, 0.45), Air(10.0, 0.6)
    want = steady.profile(assembly, indoor, outdoor)
    run = Air(15.0, 0.55)
    for _ in range(60):  # between tight layers it takes decades
        run = hourly.simulate(assembly, outdoor, indoor, hours=20000, initial=run)
        fluxes = run.vapor_flux_in[-1], run.vapor_flux_out[-1] + run.vent_out[-1]
        if abs(fluxes[0] - fluxes[1]) < 1e-4 * abs(fluxes[0]):
            break
    assert fluxes == pytest.approx((want.vapor_flux_in, want.vapor_flux_out), rel=2e-3)


FUSION = 0.334e6  # J/kg, heat of fusion of ice


@pytest.mark.parametrize("id", ["vented-vault-osb", "wood-frame-wall", "vented-vault-closed"])
def test_heat_of_sublimation_everywhere(id, monkeypatch):
    """The largest it can be for vapor: every gram that comes or goes, in summer too, as ice (13 % more heat)."""
    year, room = weather.demo("very-cold"), Air(21.0, 0.4)

    def run():
        return hourly.simulate(building.preset(id), year, room, surface=hourly.Surface())

    without = run()
    monkeypatch.setattr(case, "EVAPORATION", case.EVAPORATION + FUSION)
    bound = run()
    assert np.sqrt(np.mean((without.temperature - bound.temperature) ** 2)) < 0.1  # K
    assert np.abs(without.temperature - bound.temperature).max() < 3.0
    assert without.water == pytest.approx(bound.water, rel=0.02)  # frost on the siding of a night
    assert np.sqrt(np.mean((without.relative_humidity - bound.relative_humidity) ** 2)) < 0.005


def test_thaw_comes_early_by_hours_not_by_days():
    """Frost of a whole winter in the vault against the warmth that reaches it: what the missing heat delays."""
    run = hourly.simulate(
        building.preset("vented-vault-closed"), weather.demo("cold"), Air(21.0, 0.4), surface=hourly.Surface()
    )
    frost = run.condensed.max()
    gain = np.abs(run.heat_flux_in).mean()
    assert frost * FUSION / gain / 3600.0 < 48.0  # hours
