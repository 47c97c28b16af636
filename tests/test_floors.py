"""The floors of the house: which room may use which, and what a lesson may load.

The rules stand in pyproject.toml; this runs them, and measures in a fresh
process what a lesson really imports.
"""

import subprocess
import sys
from pathlib import Path

import pytest

from dryward.teaching import lessons

PROJECT = Path(__file__).parents[1]
HEAVY = ("numba", "scipy", "pvlib", "CoolProp", "fluids", "pandas")


def loaded_by(code):
    """The heavy modules a fresh process holds after running some code."""
    ask = f"{code}\nimport sys\nprint(*[m for m in {HEAVY!r} if m in sys.modules])"
    done = subprocess.run([sys.executable, "-c", ask], capture_output=True, text=True, check=True)
    return done.stdout.split()


def test_every_room_uses_only_the_rooms_below_it():
    done = subprocess.run(
        [Path(sys.executable).with_name("lint-imports"), "--no-cache"],
        cwd=PROJECT,
        capture_output=True,
        text=True,
    )
    assert done.returncode == 0, done.stdout[-3000:] + done.stderr[-500:]


@pytest.mark.parametrize(
    "code",
    [
        "import dryward.air, dryward.building, dryward.weather",
        "import dryward.physics.steady, dryward.physics.drying, dryward.physics.limits, dryward.physics.monthly",
        "import dryward.panels",
        "import dryward.cli",
        "from dryward import panels; panels.page('where-it-gets-wet').refresh()",
    ],
)
def test_a_steady_lesson_loads_nothing_heavy(code):
    assert loaded_by(code) == []


def test_pages_are_imported_without_the_library_that_draws():
    """It takes as long to load as all the rest, and a page needs it only when it is opened."""
    ask = "import dryward.panels, sys; print('matplotlib' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", ask], capture_output=True, text=True).stdout.strip() == "False"


def test_no_lesson_but_the_hourly_ones_loads_anything_heavy():
    """Opened one after the other in one process; fluids and pandas are heavy too."""
    ids = [each.id for each in lessons.lessons() if each.number and not each.hourly]
    assert len(ids) >= 13
    assert loaded_by(f"from dryward import panels\nfor id in {ids!r}: panels.page(id)") == []


def test_the_test_sees_a_heavy_import():
    assert "CoolProp" in loaded_by("from dryward import air; air.moist_air(20.0, 0.5)")
