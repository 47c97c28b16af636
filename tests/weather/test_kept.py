"""Series kept in the user's cache: the same numbers, without the heavy library, and nothing lost without a folder."""

import subprocess
import sys

import numpy as np
import platformdirs
import pytest

from dryward.weather import kept as cache
from dryward.weather.kept import kept


@pytest.fixture
def folder(tmp_path, monkeypatch):
    monkeypatch.setattr(cache, "folder", lambda: tmp_path / "kept")
    return tmp_path / "kept"


class Counted:
    """A function that counts its calls."""

    def __init__(self):
        self.calls = 0

    def series(self):
        """The function, kept."""

        def three(start, step):
            self.calls += 1
            return start, start + step, start + 2 * step

        return kept(three)


def test_each_series_is_worked_out_once(folder):
    counted = Counted()
    series = counted.series()
    assert series(1.0, 2.0).tolist() == [1.0, 3.0, 5.0]
    assert series(1.0, 2.0).tolist() == [1.0, 3.0, 5.0]
    assert counted.calls == 1
    assert series(1.0, 2.5).tolist() == [1.0, 3.5, 6.0]
    assert counted.calls == 2
    assert len(list(folder.iterdir())) == 2, "no unfinished files"


@pytest.mark.parametrize("spoil", [b"", b"\x93NUMPY", b"hello", None])
def test_a_spoiled_file_is_made_anew(folder, spoil):
    counted = Counted()
    series = counted.series()
    series(1.0, 2.0)
    (file,) = folder.iterdir()
    whole = file.read_bytes()
    file.write_bytes(whole[:-8] if spoil is None else spoil)
    assert series(1.0, 2.0).tolist() == [1.0, 3.0, 5.0]
    assert counted.calls == 2
    assert file.read_bytes() == whole


def test_without_a_folder_nothing_is_kept(tmp_path, monkeypatch):
    (tmp_path / "kept").write_text("a file where the folder should be", encoding="utf-8")
    monkeypatch.setattr(cache, "folder", lambda: tmp_path / "kept")
    counted = Counted()
    series = counted.series()
    assert series(1.0, 2.0).tolist() == series(1.0, 2.0).tolist() == [1.0, 3.0, 5.0]
    assert counted.calls == 2


def test_the_oldest_files_go(folder, monkeypatch):
    monkeypatch.setattr(cache, "MOST", 3)
    series = Counted().series()
    for step in range(6):
        series(1.0, float(step))
    assert len(list(folder.iterdir())) == 3


_RUN = """
import hashlib, sys
from pathlib import Path
from dryward.weather import kept
kept.folder = lambda: Path({folder!r})
from dryward import building, weather
from dryward.physics import hourly
from dryward.physics.hourly import surfaces
year = weather.demo("cold")
sun = (year.direct_normal, year.diffuse_horizontal, year.global_horizontal, surfaces.irradiance(year, 35.0, 0.0))
run = hourly.simulate(
    building.preset("vented-vault-osb"), year, weather.Air(21.0, 0.4), hours=72, surface=hourly.Surface(azimuth=0.0)
)
heavy = [name for name in ("pandas", "pvlib") if name in sys.modules]
print(*heavy, hashlib.sha256(b"".join(each.tobytes() for each in sun)).hexdigest(),
      run.layer("outer layer").moisture_content[-1])
"""


def test_an_invented_year_is_run_without_pandas(tmp_path):
    """The second process finds the sun in the cache: the same to the last bit, and neither pandas nor pvlib loaded."""
    code, told = _RUN.format(folder=str(tmp_path)), []
    for _ in range(2):
        done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
        told.append(done.stdout.split())
    first, second = told
    assert first[:2] == ["pandas", "pvlib"]
    assert second[0] == first[2], "the sun, and no word before it"
    # Code just compiled and the same code loaded again may differ in the last bits.
    assert float(second[1]) == pytest.approx(float(first[3]), rel=1e-9)


def test_the_cache_is_the_users_own():
    assert cache.folder().is_relative_to(platformdirs.user_cache_dir("dryward", appauthor=False))


def test_what_is_kept_is_what_pvlib_says(folder):
    """To the last bit, from the function itself and from the file."""
    from dryward.weather import generator, places

    place = places.place("hot-dry")
    cloud = np.linspace(0.1, 0.9, 8760)
    haze = np.full(8760, 3.0)
    itself = np.asarray(generator._sun.__wrapped__(place, cloud, haze))
    assert generator._sun(place, cloud, haze).tobytes() == itself.tobytes()
    assert generator._sun(place, cloud, haze).tobytes() == itself.tobytes()
