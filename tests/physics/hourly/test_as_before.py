"""Without a leak, and where nothing is wetter than its material holds, the march gives the numbers of version 0.1.0.

`data/version-0.1.0.csv` was written by that version's own code, on the cells
that tight layers have today (its `grid.widths` replaced): `python
test_as_before.py WIDTHS` does it, in an environment with that version.  Here
open layers get such cells too.
"""

import csv
import sys
from pathlib import Path

import numpy as np
import pytest

from dryward import weather
from dryward.building import AirSpace, Assembly, FixedMembrane, Layer, Material, VariableMembrane
from dryward.physics import hourly, ventspace
from dryward.physics.hourly import grid
from dryward.weather import Air

KEPT = Path(__file__).parent / "data" / "version-0.1.0.csv"
WOOL = Material(
    "wool", "wool", 30.0, 840.0, ((0.0, 0.036), (100.0, 0.08)), 1.6e-10, ((0.5, 0.1), (0.8, 0.3), (1.0, 1.5))
)
WOOD = Material(
    "wood", "wood", 500.0, 1600.0, ((0.0, 0.11), (150.0, 0.17)), ((0.2, 1e-12), (0.6, 3e-12), (0.95, 2e-11)),
    sorption=((0.1, 13.0), (0.3, 30.0), (0.5, 46.0), (0.7, 65.0), (0.9, 103.0), (0.99, 140.0), (1.0, 500.0)),
    liquid_conductivity=((0.0, 0.0), (140.0, 1e-16), (500.0, 1e-12)),
)  # fmt: skip
SHEET = VariableMembrane((0.3, 0.5, 0.8), (2e-11, 1e-10, 8e-10))


def roof():
    layers = [
        Layer(WOOD, 0.012), Layer(AirSpace(0.16, 5e-9), 0.04), Layer(SHEET), Layer(WOOL, 0.28), Layer(WOOD, 0.018),
        Layer(AirSpace(0.1, 4e-8, vented=True), 0.04), Layer(WOOD, 0.02), Layer(FixedMembrane(1e-11)),
    ]  # fmt: skip
    return Assembly("roof", layers, slope=35.0, exterior_vapor_film=2e-10)


def wall():
    return Assembly("wall", [Layer(WOOD, 0.012), Layer(WOOL, 0.14), Layer(WOOD, 0.012)], slope=90.0)


def runs():
    year = weather.demo("cold")
    space = ventspace.VentSpace(0.04, 5.0, 35.0)
    yield "roof", hourly.simulate(roof(), year, Air(21.0, 0.4), vent=space, surface=hourly.Surface(azimuth=0.0))
    yield "wall", hourly.simulate(wall(), year, Air(21.0, 0.35), hours=4000, surface=hourly.Surface())


def told():
    """Every twentieth day's end of each run: name, hour, and the numbers of some cells."""
    for name, run in runs():
        for hour in range(479, run.time.size, 480):
            numbers = [*run.temperature[hour, ::7], *run.relative_humidity[hour, ::7], *run.water_content[hour, ::7]]
            yield [
                name,
                hour,
                *(f"{each:.12g}" for each in (*numbers, 1e9 * run.vapor_flux_in[hour], run.heat_flux_out[hour])),
            ]


@pytest.fixture(autouse=True)
def the_same_cells(monkeypatch):
    monkeypatch.setattr(
        grid, "widths", lambda thickness, refine=1, seeps=False, made=grid.widths: made(thickness, refine)
    )


def test_the_numbers_of_version_0_1_0():
    kept = list(csv.reader(KEPT.read_text(encoding="utf-8").splitlines()[1:]))
    now = list(told())
    assert [row[:2] for row in kept] == [[name, str(hour)] for name, hour, *_ in now]
    for old, new in zip(kept, now, strict=True):
        assert np.array(new[2:], float) == pytest.approx(np.array(old[2:], float), rel=1e-6, abs=1e-6), old[:2]


def test_no_ceiling_is_reached_in_them():
    for name, run in runs():
        assert run.condensed.max() < 1e-9, name
        assert run.runoff.max() == 0.0, name


if __name__ == "__main__":
    scope = {"np": np}
    exec(Path(sys.argv[1]).read_text(encoding="utf-8"), scope)  # the widths of today, into the version of then
    grid.widths = scope["widths"]
    with KEPT.open("w", encoding="utf-8", newline="") as file:
        write = csv.writer(file, lineterminator="\n")
        write.writerow(["run", "hour", "numbers as in `told`"])
        write.writerows(told())
