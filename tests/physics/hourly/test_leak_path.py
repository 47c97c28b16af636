"""Where leaking air goes, what it leaves there, and what must not change.

The closed solution of steady conduction (or diffusion) with a steady flow of
air in balance with the layer, f(x) = f0 + (f1 - f0) (exp(Pe x/L) - 1) /
(exp(Pe) - 1), is that of any textbook on transport; the three cases and
their values at four depths were worked out apart from the kit.
"""

import dataclasses
from functools import cache
from itertools import pairwise

import numpy as np
import pytest

from dryward import air, building, weather
from dryward.building import AirSpace, Assembly, FixedMembrane, Layer, Material
from dryward.checks import OutOfRange
from dryward.physics import airleak, hourly, ventspace
from dryward.physics.moving_air import AIR_SPECIFIC_HEAT
from dryward.weather import Air

WOOL = Material("wool", "wool", 30.0, 840.0, 0.036, 1.6e-10)
DECK = Material("deck", "deck", 500.0, 1600.0, 0.12, 5e-12, sorption=((0.5, 40.0), (0.8, 80.0), (1.0, 150.0)))
ROOM, COLD = Air(21.0, 0.4), weather.demo("cold")

# R [m2 K/W], Z [s m2 Pa/kg], air [kg/(s m2)], temperatures [degC] and vapor pressures [Pa] of the faces;
# then what was worked out at a quarter, half, three quarters and nine tenths of the way.
CLOSED = {
    "out": (
        (7.5, 2e9, 2e-5, 20, -5, 900, 350),
        (14.0991, 7.9713, 1.6080, -2.3269),
        (774.890, 641.860, 500.408, 411.273),
    ),
    "out, fast": (
        (4.0, 6e9, 8e-5, 21, -10, 600, 200),
        (14.1590, 6.7448, -1.2909, -6.4320),
        (575.856, 525.422, 420.070, 307.744),
    ),
    "in": (
        (7.5, 2e9, -3e-5, 24, 30, 1400, 2400),
        (25.6296, 27.1696, 28.6248, 29.4592),
        (1685.513, 1945.910, 2183.401, 2315.746),
    ),
}
#: Ways to say that air passes the layer in balance with it.
WAYS = {"even": (hourly.AirFlow, None), "seeping": (lambda rate: hourly.AirFlow(rate, long_share=1.0), True)}


def closed(name, way="even", pieces=1, turned=False, refine=1):
    """A layer of one material between two airs, in the end: depth share, temperature, vapor pressure, and the run."""
    (r, z, rate, t_in, t_out, p_in, p_out), *_ = CLOSED[name]
    flow, open_to_air = WAYS[way]
    block = Material("block", "block", 40.0, 1000.0, 0.3 / r, 0.3 / z)
    layers = [Layer(block, 0.3 / pieces, open_to_air=open_to_air) for _ in range(pieces)]
    airs = [Air(t, p / air.saturation_vapor_pressure(t)) for t, p in ((t_in, p_in), (t_out, p_out))]
    if turned:
        airs, rate = airs[::-1], -rate
    body = Assembly("body", layers, interior_film=0.0, exterior_film=0.0)
    run = hourly.simulate(body, airs[1], airs[0], hours=4000, leak=flow(rate), refine=refine)
    t = run.temperature[-1]
    return run.depth / 0.3, t, air.vapor_pressure(t, run.relative_humidity[-1]), run


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("name", CLOSED)
def test_air_through_a_layer(name, way):
    """To a thousandth of the difference of the faces, in the usual cells and at the four depths."""
    (r, z, rate, t0, t1, p0, p1), warmth, vapor = CLOSED[name]
    x, t, p, run = closed(name, way)

    def line(f0, f1, number, at):
        return f0 + (f1 - f0) * np.expm1(number * at) / np.expm1(number)

    heat, water = rate * AIR_SPECIFIC_HEAT * r, rate * air.MASS_RATIO / air.STANDARD_PRESSURE * z
    assert t == pytest.approx(line(t0, t1, heat, x), abs=1e-3 * abs(t1 - t0))
    assert p == pytest.approx(line(p0, p1, water, x), abs=1e-3 * abs(p1 - p0))
    # At the four depths, with cells thin enough that a straight line between them is good.
    x, t, p, run = closed(name, way, refine=6)
    for at, warm, moist in zip((0.25, 0.5, 0.75, 0.9), warmth, vapor, strict=True):
        assert np.interp(at, x, t) == pytest.approx(warm, abs=1e-3 * abs(t1 - t0))
        assert np.interp(at, x, p) == pytest.approx(moist, abs=1e-3 * abs(p1 - p0))
    assert run.balance_error < 1e-6
    assert run.heat_balance_error < 1e-6


@pytest.mark.parametrize("name", CLOSED)
def test_a_flow_turned_round_is_the_mirror_image(name):
    x, t, p, run = closed(name)
    there, t_back, p_back, back = closed(name, turned=True)
    assert there == pytest.approx(1.0 - x[::-1])
    assert t_back[::-1] == pytest.approx(t, abs=1e-3)
    assert p_back[::-1] == pytest.approx(p, abs=0.05)
    assert back.vapor_flux_out[-1] == pytest.approx(-run.vapor_flux_in[-1], rel=1e-4)


@pytest.mark.parametrize("name", CLOSED)
def test_what_passes_is_the_same_at_every_depth(name):
    """Water and heat that come in at one face leave at the other, however they are shared."""
    *_, run = closed(name, "seeping")
    ways = ("vapor_flux", "leak"), ("heat_flux", "leak_heat")
    for diffused, carried in ways:
        into, out = (sum(getattr(run, f"{each}_{side}")[-1] for each in (diffused, carried)) for side in ("in", "out"))
        assert into == pytest.approx(out, rel=1e-6)


def test_no_flow_leaves_straight_lines():
    (r, z, _, t0, t1, p0, p1), *_ = CLOSED["out"]
    block = Material("block", "block", 40.0, 1000.0, 0.3 / r, 0.3 / z)
    body = Assembly("body", [Layer(block, 0.3, open_to_air=True)], interior_film=0.0, exterior_film=0.0)
    airs = [Air(t, p / air.saturation_vapor_pressure(t)) for t, p in ((t1, p1), (t0, p0))]
    still = hourly.simulate(body, *airs, hours=100)
    little = hourly.simulate(body, *airs, hours=100, leak=hourly.AirFlow(1e-12, long_share=1.0))
    assert little.temperature == pytest.approx(still.temperature, abs=1e-5)
    assert little.water_content == pytest.approx(still.water_content, rel=1e-5)


# --- where it goes ---------------------------------------------------------------------------------


def gap():
    return Layer(AirSpace(0.1, 4e-8, vented=True), 0.04, "gap")


def stretches(layers):
    """The runs of open cells, by the names of their first and last layers."""
    from dryward.physics.hourly import air_paths, grid

    built = Assembly("built", layers)
    cut = grid.cells(built)
    way = air_paths.path(built, cut, hourly.AirFlow(1e-5, long_share=0.5))
    return [tuple(built.layers[cut.layer[cell - 1]].name for cell in run) for run in way.runs]


def test_what_is_open_and_what_is_tight():
    sheet, cavity = Layer(FixedMembrane(1e-10), name="sheet"), Layer(AirSpace(0.18), 0.04, "cavity")
    wool, deck = Layer(WOOL, 0.2, "wool"), Layer(DECK, 0.02, "deck")
    assert stretches([deck, cavity, sheet, wool, deck]) == [("cavity", "wool")]
    assert stretches([cavity, deck, wool, sheet]) == [("cavity", "cavity"), ("wool", "wool")]
    assert stretches([wool, sheet, gap(), wool]) == [("wool", "wool")]  # a vent space ends it
    assert stretches([deck, sheet]) == []
    assert stretches([Layer(DECK, 0.02, "planks", open_to_air=True), wool]) == [("planks", "wool")]
    assert stretches([Layer(WOOL, 0.2, "taped", open_to_air=False), cavity]) == [("cavity", "cavity")]


def test_the_library_knows_what_air_seeps_through():
    tight = {"eps", "xps", "spray-foam-closed-cell", "osb", "plywood", "gypsum-board", "fiberboard-250", "cork-board"}
    open_ = {"cellulose-dense", "glass-fiber-batt", "mineral-wool-board", "wood-fiber-batt", "straw-bale", "sheep-wool"}
    for id in tight | open_:
        assert Layer(building.material(id), 0.1).lets_air_through == (id in open_), id
    for id in building.presets():
        roof = building.preset(id)
        assert roof.layer("insulation").lets_air_through
        assert not roof.layer("gypsum board").lets_air_through


def test_straight_air_touches_no_layer():
    """In a wall it goes by; in a vented roof it loads the air of the vent space, and nothing inside of that."""
    wall = Assembly("wall", [Layer(WOOL, 0.2), Layer(DECK, 0.02)])
    none, straight = (
        hourly.simulate(wall, Air(-9.0, 0.8), ROOM, hours=900, leak=each) for each in (None, hourly.AirFlow(5e-3, 0.0))
    )
    assert straight.temperature == pytest.approx(none.temperature, abs=1e-9)
    assert straight.water_content == pytest.approx(none.water_content, abs=1e-9)
    carried = 5e-3 * air.MASS_RATIO / air.STANDARD_PRESSURE * ROOM.vapor_pressure
    assert straight.leak_in == pytest.approx(np.full(900, carried))
    assert straight.leak_out == pytest.approx(straight.leak_in)
    assert not straight.leak_left.any()


@pytest.mark.parametrize("rate", [2e-3, -2e-3])
def test_air_in_the_vent_space_is_a_mixture(rate):
    """With no conduction to speak of, the vent space has the mean of what comes in, by mass."""
    shut = Layer(AirSpace(5.0, 1e-15, vented=True), 0.04, "gap")
    thick = Material("thick", "thick", 50.0, 1000.0, 0.001, 1e-16)
    roof = Assembly("roof", [Layer(thick, 0.5, "inside"), shut, Layer(thick, 0.5, "outside")])
    outdoor, flow = Air(-5.0, 0.8), 4e-3
    vent = flow / (101325.0 / (287.055 * 268.15))
    run = hourly.simulate(roof, outdoor, ROOM, hours=2000, vent=vent, leak=hourly.AirFlow(rate, 0.0), initial=outdoor)
    cell = np.flatnonzero(run.cell_layer == 1)[0]
    pressure = air.vapor_pressure(run.temperature[-1, cell], run.relative_humidity[-1, cell])
    # Room air that comes in evenly along the channel: on the mean of its length, by the integral of the mixture.
    part = 1.0 - flow / rate * np.log1p(rate / flow) if rate > 0.0 else 0.0
    more = part * (ROOM.vapor_pressure - outdoor.vapor_pressure)
    assert pressure == pytest.approx(outdoor.vapor_pressure + more, abs=12.0)
    assert run.temperature[-1, cell] == pytest.approx(-5.0 + part * 26.0, abs=0.4)


def test_water_falls_out_where_it_is_too_cold_for_it():
    """Along wool in steady cold: none before the air is saturated, then as much as it can no longer carry."""
    outdoor, rate = Air(-15.0, 0.8), 1e-4
    wall = Assembly("wall", [Layer(WOOL, 0.2, "wool"), Layer(FixedMembrane(1e-15), name="tight")])
    run = hourly.simulate(wall, outdoor, ROOM, hours=1500, leak=hourly.AirFlow(rate, 1.0), refine=4)
    t = run.temperature[-1]
    gained = np.diff(run.free_water, axis=0)[-500:].mean(axis=0)
    wet = t < ROOM.dew_point
    assert gained[~wet].sum() == pytest.approx(0.0, abs=1e-9)
    per_pascal = rate * air.MASS_RATIO / air.STANDARD_PRESSURE
    left = per_pascal * (ROOM.vapor_pressure - air.saturation_vapor_pressure(t[-1])) * 3600.0
    assert 3600.0 * run.leak_left[-1] == pytest.approx(left, rel=1e-3)
    assert gained.sum() == pytest.approx(3600.0 * (run.leak_left[-1] + run.vapor_flux_in[-1]), rel=1e-2)
    assert (gained[wet] > 0).sum() > 3  # along the way, not in one plane


def test_seeping_air_takes_water_up_again_where_it_can():
    wall = Assembly("wall", [Layer(WOOL, 0.2, "wool"), Layer(DECK, 0.02, "deck"), Layer(FixedMembrane(1e-15))])
    dry, still = (
        hourly.simulate(wall, Air(18.0, 0.5), Air(21.0, 0.3), hours=2000, initial={"deck": 140.0}, leak=leak)
        for leak in (hourly.AirFlow(1e-4, 1.0), None)
    )
    assert dry.leak_left.sum() < 0
    assert dry.layer("deck").water_content[-1] < still.layer("deck").water_content[-1] - 3.0


def test_air_comes_in_by_the_same_path_in_summer():
    """Humid outdoor air drawn in past a cold film leaves its water in the fill, not in the room."""
    humid, cooled = Air(33.0, 0.8), Air(20.0, 0.5)
    wall = Assembly("wall", [Layer(FixedMembrane(1e-13), name="film"), Layer(WOOL, 0.2, "wool"), Layer(DECK, 0.02)])
    run = hourly.simulate(wall, humid, cooled, hours=1000, leak=hourly.AirFlow(-1e-4, 1.0))
    assert run.leak_left[-1] > 0
    assert run.layer("wool").condensed[-1] > 0
    assert run.leak_out[-1] < 0  # outward is positive
    assert abs(run.leak_in[-1]) < abs(run.leak_out[-1])


@pytest.mark.parametrize("rate", [3e-4, -3e-4])
def test_a_tight_layer_between_two_open_ones_is_passed_by_its_joints(rate):
    """The board takes nothing from the air; what leaves one fill comes into the other; the books close."""
    wall = Assembly(
        "wall",
        [
            Layer(WOOL, 0.06, "inner"),
            Layer(DECK, 0.018, "board"),
            Layer(WOOL, 0.1, "outer"),
            Layer(FixedMembrane(1e-12)),
        ],
    )
    run = hourly.simulate(wall, COLD, Air(21.0, 0.5), leak=hourly.AirFlow(rate, 0.7), surface=hourly.Surface())
    assert run.balance_error < 1e-6
    assert run.heat_balance_error < 1e-6
    free = hourly.simulate(wall, COLD, Air(21.0, 0.5), surface=hourly.Surface())
    assert abs(run.layer("outer").temperature - free.layer("outer").temperature).max() > 0.3


# --- what must not change --------------------------------------------------------------------------


def leak(ach50, **more):
    return airleak.Leak.from_blower_door(ach50, 566.0, 0.2, area=56.0, **more) if ach50 else None


@cache
def year(preset, place, ach50, humidity=0.4):
    return built_year(building.preset(preset), place, ach50, humidity)


def built_year(roof, place="cold", ach50=3.0, humidity=0.4, **options):
    vented = next((layer for layer in roof.layers if layer.vented), None)
    if vented is not None:
        options["vent"] = ventspace.VentSpace(vented.thickness, 5.0, roof.slope, 0.01, 0.01)
    return hourly.simulate(
        roof, weather.demo(place), Air(21.0, humidity), leak=leak(ach50), surface=hourly.Surface(azimuth=0.0), **options
    )


def outside_the_fill(roof):
    """Layers with a thickness outside the main insulation and inside any vent space."""
    inner = [layer for layer in roof.inner_layers if not layer.is_membrane]
    fill = max(inner, key=lambda layer: layer.thermal_resistance)
    return fill.name, [layer.name for layer in inner[inner.index(fill) + 1 :]]


def at_the_cold_face(run, fill, outside):
    """Peak of the water in the fill's free water and the layer outside of it, with what ran off there [kg/m2]."""
    held = run.layer(fill).condensed
    cells = np.flatnonzero(np.isin(run.cell_layer, [run.assembly.index(name) for name in (fill, *outside[:1])]))
    for name in outside[:1]:
        held = held + run.layer(name).water_content * run.assembly.layer(name).thickness + run.layer(name).condensed
    return float(held.max() + run.ran_off[:, cells].sum())


PIECES = [(0.5,), (0.1,), (0.9,), (0.97,), (1 / 3, 2 / 3)]


@pytest.mark.parametrize("cuts", PIECES, ids=str)
@pytest.mark.parametrize("preset", ["vented-vault", "vented-vault-osb", "vented-vault-closed", "wood-frame-wall"])
def test_a_layer_drawn_in_pieces_is_the_same_layer(preset, cuts):
    """The fill, and the layer outside of it, drawn in two or three: peak water within 5 %."""
    whole = building.preset(preset)
    fill, outside = outside_the_fill(whole)
    want = built_year(whole)
    for name in (fill, *outside[:1]):
        place, layer = whole.index(name), whole.layer(name)
        ends = [0.0, *cuts, 1.0]
        parts = [
            dataclasses.replace(layer, thickness=(b - a) * layer.thickness, name=f"{name} {k}")
            for k, (a, b) in enumerate(pairwise(ends))
        ]
        cut = dataclasses.replace(
            whole, framing=None, layers=(*whole.layers[:place], *parts, *whole.layers[place + 1 :])
        )
        got = built_year(cut)
        names = [part.name for part in parts]

        def water(run, these):
            return sum(
                run.layer(n).water_content * run.assembly.layer(n).thickness + run.layer(n).condensed for n in these
            )

        assert water(got, names).max() == pytest.approx(water(want, [name]).max(), rel=0.05), name
        assert got.water.max() == pytest.approx(want.water.max(), rel=0.05)
        assert got.condensed.max() + got.runoff.sum() * 3600 == pytest.approx(
            want.condensed.max() + want.runoff.sum() * 3600, rel=0.05, abs=0.01
        )


STEPS = {
    "foam": ("unvented-vault-foam-above-deck", "foam", np.linspace(0.04, 0.2, 17)),
    "fill under foam": ("unvented-vault-foam-above-deck", "insulation", np.linspace(0.08, 0.3, 12)),
    "fill": ("vented-vault-osb", "insulation", np.linspace(0.1, 0.4, 13)),
    "fill under a sheet": ("vented-vault", "insulation", np.linspace(0.1, 0.4, 13)),
    "board": ("vented-vault-osb", "outer layer", np.linspace(0.006, 0.03, 13)),
    "board of fiber": ("vented-vault-fiberboard", "outer layer", np.linspace(0.01, 0.08, 15)),
    "board outside": ("wood-frame-wall-exterior-insulation", "exterior insulation", np.linspace(0.01, 0.1, 10)),
}


@pytest.mark.parametrize("name", STEPS)
def test_no_thickness_has_a_cliff(name):
    """Peak water at the cold face along a thickness: no step is far from its neighbors' mean."""
    preset, layer, thicknesses = STEPS[name]
    roofs = [building.preset(preset).replace(layer, thickness=float(each)) for each in thicknesses]
    fill, outside = outside_the_fill(building.preset(preset))
    found = np.array([at_the_cold_face(built_year(roof, "very-cold"), fill, outside) for roof in roofs])
    jump = np.abs(found[1:-1] - 0.5 * (found[:-2] + found[2:]))
    # A change of slope is no jump: against the whole span it is small.
    assert jump.max() < 0.05 * found.max(), found


def test_a_leak_has_a_sum():
    small = leak(3.0)
    assert (small.long_share, small.area_share) == (0.1, 1.0)
    one = hourly.leak_flow(leak(3.0, area_share=0.1), COLD, 21.0)
    whole = hourly.leak_flow(small, COLD, 21.0)
    assert one.rate == pytest.approx(10.0 * whole.rate)
    assert whole.seeping + whole.straight == pytest.approx(whole.rate)
    with pytest.raises(OutOfRange, match="Long share of the leak is 120 %; it must be 0 to 100 %"):
        leak(3.0, long_share=1.2)
    with pytest.raises(OutOfRange, match="Share of the area with the leak is 0 %; it must be 1 to 100 %"):
        leak(3.0, area_share=0.0)
