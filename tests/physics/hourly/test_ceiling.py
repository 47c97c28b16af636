"""A ceiling on water: no material holds more than it can, a face keeps so much, the rest runs off and is counted."""

from functools import cache

import numpy as np
import pytest

from dryward import building, weather
from dryward.building import Assembly, FixedMembrane, Layer, Material
from dryward.physics import airleak, hourly, ventspace
from dryward.physics.hourly.case import FACE_KEEPS
from dryward.weather import Air, HourlyWeather

WOOL = Material("wool", "wool", 30.0, 840.0, 0.036, 1.6e-10, ((0.5, 0.1), (0.95, 0.6), (0.9995, 1.5), (1.0, 200.0)))
DENSE = Material("dense", "dense", 500.0, 1600.0, 0.12, 5e-12, sorption=((0.5, 40.0), (0.99, 140.0), (1.0, 300.0)))
SOAKS = Material(
    "soaks", "soaks", 500.0, 1600.0, 0.12, 5e-12, sorption=((0.5, 40.0), (0.99, 140.0), (1.0, 300.0)),
    liquid_conductivity=((0.0, 0.0), (140.0, 1e-14), (300.0, 1e-11)),
)  # fmt: skip
MILD, FROST = Air(3.0, 0.9), Air(-12.0, 0.8)


def fleece(outdoor=MILD, hours=2500, refine=1, leak=None):
    """Wool between an open room and a tight sheet: drops gather in front of the sheet."""
    body = Assembly("fleece", [Layer(WOOL, 0.1, "wool"), Layer(FixedMembrane(1e-14), name="sheet")])
    return hourly.simulate(body, outdoor, Air(21.0, 0.6), hours=hours, refine=refine, leak=leak, initial=Air(15.0, 0.5))


def test_a_face_keeps_so_much_and_the_rest_runs_off():
    run = fleece()
    at_the_face = run.free_water[:, -1]
    assert at_the_face.max() == pytest.approx(FACE_KEEPS, rel=1e-6)
    assert at_the_face[-1] == pytest.approx(FACE_KEEPS, rel=1e-6)
    # A little hangs in the wool just before it, by the top of its curve.
    assert FACE_KEEPS < run.layer("wool").condensed.max() < 1.1 * FACE_KEEPS
    assert run.runoff[-1] == pytest.approx(run.vapor_flux_in[-1], rel=1e-3)  # in the end all of it
    assert run.balance_error < 1e-6
    assert run.heat_balance_error < 1e-6


@pytest.mark.parametrize("refine", [2, 4])
def test_it_does_not_hang_on_the_cells(refine):
    coarse, fine = fleece(), fleece(refine=refine)
    assert fine.condensed.max() == pytest.approx(coarse.condensed.max(), rel=0.05)
    assert fine.runoff.sum() == pytest.approx(coarse.runoff.sum(), rel=0.05)


def test_the_books_hold_what_runs_off():
    run = fleece(leak=hourly.AirFlow(3e-4, 1.0))
    into = 3600.0 * (run.vapor_flux_in + run.leak_in - run.vapor_flux_out - run.leak_out).sum()
    held = run.water[-1] - run.initial_water @ run.width
    off = 3600.0 * run.runoff.sum()
    assert off > 1.0
    assert into == pytest.approx(held + off, rel=1e-9)
    assert run.ran_off.sum() == pytest.approx(off, rel=1e-9)
    # Where it ran off: in front of the sheet.
    assert run.ran_off[:, -1].sum() == pytest.approx(off, rel=0.2)


def test_frost_stays_until_it_melts():
    frozen = fleece(FROST, hours=2500)
    assert frozen.runoff.sum() == 0.0
    assert frozen.condensed.max() > 5 * FACE_KEEPS
    hours = 2500
    thaw = HourlyWeather(np.r_[np.full(hours, -12.0), np.full(300, 8.0)], np.full(hours + 300, 150.0))
    run = fleece(thaw, hours=hours + 300)
    assert run.runoff[:hours].sum() == 0.0
    # What is no longer there after a day of thaw ran off, but for what the room and the wool took back.
    gone = run.water[hours - 1] - run.water[hours + 24]
    assert 3600.0 * run.runoff[hours : hours + 25].sum() == pytest.approx(gone, rel=0.05)
    assert run.free_water[hours + 24, -1] == pytest.approx(FACE_KEEPS, rel=1e-6)


def test_a_thaw_does_not_hang_on_the_length_of_a_step():
    thaw = HourlyWeather(np.r_[np.full(1500, -12.0), np.full(100, 1.5)], np.full(1600, 150.0))
    body = Assembly("fleece", [Layer(WOOL, 0.1, "wool"), Layer(FixedMembrane(1e-14), name="sheet")])
    whole, short = (
        hourly.simulate(body, thaw, Air(21.0, 0.6), hours=1600, step=step, initial=Air(15.0, 0.5))
        for step in (3600.0, 600.0)
    )
    assert whole.runoff.sum() == pytest.approx(short.runoff.sum(), rel=0.05)


@pytest.mark.parametrize("material", [DENSE, SOAKS], ids=lambda each: each.id)
def test_no_material_holds_more_than_it_can(material):
    body = Assembly("board", [Layer(WOOL, 0.05), Layer(material, 0.012, "board"), Layer(FixedMembrane(1e-14))])
    run = hourly.simulate(body, MILD, Air(21.0, 0.75), hours=8760, leak=hourly.AirFlow(5e-4, 1.0))
    cells = run.cell_layer == 1
    assert run.water_content[:, cells].max() <= 300.0 + 1e-9
    assert run.layer("board").moisture_content.max() <= 60.0 + 1e-9
    # Free water: what hangs on its two faces, not more.
    assert run.free_water[:, cells].sum(axis=1).max() <= 2.0 * FACE_KEEPS + 1e-9
    assert run.runoff.sum() > 0


def test_two_layers_that_touch_have_one_face_between_them():
    """Drops between wool and a board hang on once, whichever of the two they were counted in."""
    body = Assembly("two", [Layer(WOOL, 0.05, "wool"), Layer(DENSE, 0.012, "board"), Layer(FixedMembrane(1e-14))])
    run = hourly.simulate(body, MILD, Air(21.0, 0.75), hours=8760, leak=hourly.AirFlow(5e-4, 1.0))
    last = np.flatnonzero(run.cell_layer == 0)[-1]
    assert run.free_water[:, last : last + 2].sum(axis=1).max() <= FACE_KEEPS + 1e-9


def test_a_layer_drawn_in_two_has_no_face_between():
    one = Assembly("one", [Layer(WOOL, 0.1, "wool"), Layer(FixedMembrane(1e-14))])
    two = Assembly("two", [Layer(WOOL, 0.07, "a"), Layer(WOOL, 0.03, "b"), Layer(FixedMembrane(1e-14))])
    strong = hourly.AirFlow(3e-4, 1.0)
    runs = [hourly.simulate(each, FROST, Air(21.0, 0.6), hours=1500, leak=strong) for each in (one, two)]
    assert runs[1].water.max() == pytest.approx(runs[0].water.max(), rel=0.02)


@cache
def vault(preset, place, ach50, humidity):
    roof = building.preset(preset)
    vented = next((layer for layer in roof.layers if layer.vented), None)
    vent = ventspace.VentSpace(vented.thickness, 5.0, roof.slope, 0.01, 0.01) if vented else None
    leak = airleak.Leak.from_blower_door(ach50, 566.0, 0.2, area=56.0)
    return hourly.simulate(
        roof,
        weather.demo(place),
        Air(21.0, humidity),
        years=2,
        vent=vent,
        leak=leak,
        surface=hourly.Surface(azimuth=0.0),
    )


@pytest.mark.parametrize("preset", building.presets())
def test_no_roof_of_the_kit_is_wetter_than_can_be(preset):
    """Very cold, a humid room, a very leaky ceiling."""
    run = vault(preset, "very-cold", 15.0, 0.6)
    for place in sorted(set(run.cell_layer[run.cell_layer >= 0])):
        layer = run.assembly.layers[place]
        if isinstance(layer.substance, Material) and layer.substance.sorption:
            most = layer.substance.water_content(1.0)
            assert run.water_content[:, run.cell_layer == place].max() <= most * (1 + 1e-9), layer.name
    assert run.balance_error < 1e-6
    assert run.heat_balance_error < 1e-6


def test_water_that_is_there_at_no_humidity_is_kept():
    """A curve that begins above nothing: the start and the end have it."""
    salty = Material("salty", "salty", 1000.0, 1000.0, 0.5, 1e-11, sorption=((0.0, 2.6), (0.5, 5.0), (1.0, 50.0)))
    body = Assembly("body", [Layer(salty, 0.05, "salty")])
    run = hourly.simulate(body, Air(20.0, 0.0001), Air(20.0, 0.0001), hours=8760, initial=Air(20.0, 0.3))
    assert run.initial_water == pytest.approx(np.full(run.width.size, salty.water_content(0.3)))
    assert run.water_content[-1] == pytest.approx(np.full(run.width.size, 2.6), abs=0.1)
