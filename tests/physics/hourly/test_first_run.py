"""Compiled once and kept where the user may write; where nothing can be written it works all the same."""

import subprocess
import sys

import numba
import pytest
from numba.core import caching

from dryward.physics.hourly.compile import compiled


def twice(x):
    return 2.0 * x


def test_without_a_place_to_keep_it_the_march_still_compiles(monkeypatch):
    monkeypatch.setattr(caching.CacheImpl, "_locator_classes", [])
    with pytest.raises(RuntimeError, match="no locator available"):
        numba.njit(cache=True)(twice)
    assert compiled(twice)(2.0) == 4.0


def test_it_is_kept_in_the_folder_that_is_named(tmp_path, monkeypatch):
    monkeypatch.setattr(numba.config, "CACHE_DIR", str(tmp_path))
    assert compiled(twice)(3.0) == 6.0
    assert list(tmp_path.rglob("*.nbc"))


def run(code):
    return subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout.split()


def test_nothing_compiled_or_heavy_is_loaded_before_the_first_run():
    loaded = run(
        "import sys; from dryward.physics import hourly, spread\n"
        "heavy = [m for m in ('numba', 'scipy', 'pvlib', 'pandas', 'CoolProp') if m in sys.modules]\n"
        "print(hourly.getting_ready(), *heavy)"
    )
    assert loaded == ["True"]


def test_a_warm_machine_is_ready_without_compiling():
    code = (
        "from dryward.physics import hourly\n"
        "first = hourly.getting_ready(); hourly.warm_up(); print(first, hourly.getting_ready())"
    )
    run(code)
    assert run(code) == ["True", "False"]
