"""Constant airs for long enough end at the steady profile; equal airs leave all as it is."""

import numpy as np
import pytest

from dryward import building
from dryward.building import AirSpace, Assembly, FixedMembrane, LaminateMembrane, Layer, Material, VariableMembrane
from dryward.physics import hourly, steady
from dryward.weather import Air

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
