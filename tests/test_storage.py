"""Files written whole, by one writer at a time, with their version; and the user's cache."""

import errno
import json
import os
import subprocess
import sys
import threading
import time

import numpy as np
import platformdirs
import pytest

from dryward import storage
from dryward.checks import BadFile

# --- written whole -------------------------------------------------------------


def names(folder):
    """What lies in a folder, hidden files too."""
    return sorted(each.name for each in folder.iterdir())


@pytest.mark.parametrize("content", [b"\x00\xff", "Fläche 3 m²\n", ""])
def test_a_file_is_written_as_it_is_and_nothing_stays_beside_it(tmp_path, content):
    path = tmp_path / "roof.toml"
    path.write_text("before", "utf-8")
    storage.write_whole(path, content)
    assert path.read_bytes() == (content if isinstance(content, bytes) else content.encode("utf-8"))
    assert names(tmp_path) == ["roof.toml"]


FULL, NOT_OURS = "the disk is full", "this folder may not be written"


@pytest.mark.parametrize(
    ("where", "number", "words"),
    [
        ("fsync", errno.ENOSPC, FULL),
        ("fdopen", errno.EDQUOT, FULL),
        ("replace", errno.ENOSPC, FULL),
        ("open", errno.EROFS, NOT_OURS),
        ("replace", errno.EACCES, NOT_OURS),
    ],
)
def test_a_system_that_refuses_leaves_the_old_file_and_no_draft(tmp_path, monkeypatch, where, number, words):
    path = tmp_path / "roof.toml"
    path.write_text("before", "utf-8")

    def refused(*_):
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(storage.os, where, refused)
    with pytest.raises(OSError, match=os.strerror(number)) as told:
        storage.write_whole(path, "after")
    monkeypatch.undo()
    assert storage.reason(told.value) == words
    assert path.read_text("utf-8") == "before"
    assert names(tmp_path) == ["roof.toml"]


@pytest.mark.skipif(sys.platform == "win32", reason="no such permissions there")
@pytest.mark.skipif(hasattr(os, "geteuid") and os.geteuid() == 0, reason="root may write everywhere")
def test_a_folder_that_may_not_be_written_is_told_in_plain_words(tmp_path):
    tmp_path.chmod(0o500)
    try:
        with pytest.raises(PermissionError) as told:
            storage.write_whole(tmp_path / "roof.toml", "after")
        with pytest.raises(PermissionError), storage.locked(tmp_path / "roof.toml"):
            pass
    finally:
        tmp_path.chmod(0o700)
    assert storage.reason(told.value) == "this folder may not be written"


def test_other_reasons_are_the_systems_own_words():
    assert storage.reason(OSError(errno.ELOOP, "Too many links")) == "too many links"
    assert storage.reason(OSError("no number")) == "the system refused it"


def test_a_new_file_replaces_none(tmp_path):
    path = tmp_path / "town.epw"
    storage.write_whole(path, "first", new=True)
    with pytest.raises(FileExistsError):
        storage.write_whole(path, "second", new=True)
    assert path.read_text("utf-8") == "first"
    assert names(tmp_path) == ["town.epw"]


@pytest.mark.skipif(sys.platform == "win32", reason="no such permissions there")
def test_a_private_file_is_its_owners_and_permissions_stay(tmp_path):
    path = tmp_path / "key"
    storage.write_whole(path, b"secret", private=True)
    assert path.stat().st_mode & 0o777 == 0o600
    path.chmod(0o640)
    storage.write_whole(path, b"other")
    assert path.stat().st_mode & 0o777 == 0o640


def test_a_file_that_cannot_be_read_gets_a_free_name(tmp_path):
    path = tmp_path / "progress.json"
    for count in (1, 2):
        path.write_text(str(count), "utf-8")
        assert storage.set_aside(path) == tmp_path / f"progress-unreadable-{count}.json"
    assert names(tmp_path) == ["progress-unreadable-1.json", "progress-unreadable-2.json"]
    for count in range(3, 1000):
        (tmp_path / f"progress-unreadable-{count}.json").touch()
    path.touch()
    with pytest.raises(BadFile, match=r"too many unreadable copies of progress\.json"):
        storage.set_aside(path)


# --- one writer at a time, and one that is killed ------------------------------------

_WRITER = """
import sys, time
from pathlib import Path
from dryward import storage
path = Path(sys.argv[1])
for _ in range(25):
    with storage.locked(path, 60):
        count = int(path.read_text("utf-8"))
        time.sleep(0.001)
        storage.write_whole(path, str(count + 1))
"""
#: Stops for good between its draft and the file, with the lock held.
_HANGS = """
import sys, time
from dryward import storage
def hang(*_):
    print("hangs", flush=True)
    time.sleep(600)
storage.os.replace = hang
with storage.locked(sys.argv[1]):
    storage.write_whole(sys.argv[1], "half")
"""


def test_writers_at_the_same_time_lose_nothing(tmp_path):
    path = tmp_path / "count.txt"
    path.write_text("0", "utf-8")
    running = [subprocess.Popen([sys.executable, "-c", _WRITER, str(path)]) for _ in range(3)]
    assert [each.wait(120) for each in running] == [0, 0, 0]
    assert path.read_text("utf-8") == "75"
    assert names(tmp_path) == ["count.txt"]


def test_threads_are_writers_too(tmp_path):
    path, inside, most = tmp_path / "file", [], []

    def write():
        with storage.locked(path):
            inside.append(1)
            most.append(len(inside))
            time.sleep(0.005)
            inside.pop()

    threads = [threading.Thread(target=write) for _ in range(6)]
    for each in threads:
        each.start()
    for each in threads:
        each.join()
    assert most == [1] * 6
    assert names(tmp_path) == []


def test_a_writer_that_was_killed_holds_nobody_up_and_its_draft_goes(tmp_path):
    path = tmp_path / "roof.toml"
    path.write_text("before", "utf-8")
    with subprocess.Popen([sys.executable, "-c", _HANGS, str(path)], stdout=subprocess.PIPE, text=True) as hangs:
        assert hangs.stdout.readline() == "hangs\n"
        with pytest.raises(BlockingIOError, match="another program is writing it"), storage.locked(path, 0.05):
            pass
        hangs.kill()
    (draft,) = (each for each in tmp_path.iterdir() if each.suffix == ".draft")
    with storage.locked(path, 0.05):
        storage.write_whole(path, "after")
    assert path.read_text("utf-8") == "after"
    assert draft.exists(), "it could be of somebody who still writes"
    os.utime(draft, (time.time() - storage.ABANDONED - 1,) * 2)
    storage.write_whole(path, "again")
    assert names(tmp_path) == ["roof.toml"]


def test_drafts_of_other_files_are_left_alone(tmp_path):
    other = tmp_path / ".roof.toml.bak.01234567.draft"
    mine, odd = tmp_path / ".roof.toml.01234567.draft", tmp_path / ".roof[1].toml.01234567.draft"
    for each in (other, mine, odd):
        each.touch()
        os.utime(each, (0, 0))
    storage.remove_leftovers(tmp_path / "roof.toml")
    assert names(tmp_path) == sorted([other.name, odd.name])
    storage.remove_leftovers(tmp_path / "roof[1].toml")
    assert names(tmp_path) == [other.name]


def test_a_lock_file_of_a_crash_is_no_lock(tmp_path):
    (tmp_path / ".roof.toml.lock").touch()
    with storage.locked(tmp_path / "roof.toml", 0.05):
        pass
    assert names(tmp_path) == []


@pytest.mark.skipif(sys.platform == "win32", reason="its locks are others")
def test_a_network_disk_without_locks_is_written_all_the_same(tmp_path, monkeypatch):
    def none(*_):
        raise OSError(errno.ENOLCK, os.strerror(errno.ENOLCK))

    monkeypatch.setattr(storage.fcntl, "flock", none)
    with storage.locked(tmp_path / "roof.toml", 0.05):
        storage.write_whole(tmp_path / "roof.toml", "after")
    assert names(tmp_path) == ["roof.toml"]


class Msvcrt:
    """The locks of Windows, as its manual tells them: refused at once where another handle has the byte."""

    LK_NBLCK, LK_UNLCK = 1, 2

    def __init__(self):
        self.held = {}

    def locking(self, handle, how, count):
        """Take or let go."""
        file = os.fstat(handle).st_ino
        if how == self.LK_UNLCK:
            assert self.held.pop(file) == handle
        elif file in self.held:
            raise PermissionError(errno.EACCES, "Permission denied")
        else:
            self.held[file] = handle


def test_without_the_locks_of_unix_those_of_windows_are_used(tmp_path, monkeypatch):
    monkeypatch.setattr(storage, "fcntl", None)
    monkeypatch.setattr(storage, "msvcrt", Msvcrt(), raising=False)
    path = tmp_path / "roof.toml"
    with storage.locked(path):
        with pytest.raises(BlockingIOError), storage.locked(path, 0.03):
            pass
        storage.write_whole(path, "after")
    with storage.locked(path, 0.03):
        pass
    assert names(tmp_path) == ["roof.toml"]


# --- a text and its token ------------------------------------------------------------


def test_a_token_says_whether_somebody_else_has_written(tmp_path):
    path = tmp_path / "roof.toml"
    first = storage.save_text("one", path, storage.NEW)
    assert storage.read_text(path, "a roof") == ("one", first)
    second = storage.save_text("two", path, first)
    with pytest.raises(BadFile, match=r"^roof\.toml: it was changed or removed since it was opened; open it again, or"):
        storage.save_text("three", path, first)
    with pytest.raises(BadFile, match=r"^roof\.toml: there is already a file of that name; it was left as it is\.$"):
        storage.save_text("three", path, storage.NEW)
    assert storage.read_text(path, "a roof") == ("two", second)
    assert storage.save_text("two", path) == second


def test_what_is_no_text_of_sensible_size_is_not_read(tmp_path):
    (tmp_path / "large").write_bytes(b" " * (storage.LARGEST + 1))
    (tmp_path / "picture").write_bytes(b"\xff\xfe\x00")
    for name, said in (
        ("large", "it is larger than 500000 bytes, too large for a roof."),
        ("picture", "it is not a text file."),
        ("nothing", "there is no such file."),
        ("", "it is a folder, not a file."),
    ):
        with pytest.raises(BadFile, match=said):
            storage.read_text(tmp_path / name, "a roof")


# --- versions --------------------------------------------------------------------------


def test_a_file_of_each_earlier_version_becomes_one_of_today():
    kind = storage.Format("a roof", 3, {1: lambda body: {"b": body["a"]}, 2: lambda body: {**body, "c": 1}})
    assert kind.current(kind.headed({"b": 5})) == {"format": "a roof", "version": 3, "b": 5}
    assert kind.current({"format": "a roof", "version": 1, "a": 5}) == {
        "format": "a roof",
        "version": 3,
        "b": 5,
        "c": 1,
    }
    assert kind.current({"format": "a roof", "version": 2, "b": 5}) == kind.headed({"b": 5, "c": 1})
    assert json.loads(json.dumps(kind.headed({}))) == {"format": "a roof", "version": 3}


@pytest.mark.parametrize(
    ("body", "said"),
    [
        ({}, "it is empty"),
        ({"format": "a wall", "version": 1}, 'it does not begin with format = "a roof"'),
        ({"format": "a roof", "version": True}, "its version must be a whole number from 1 to 2"),
        ({"format": "a roof", "version": 0}, "its version must be a whole number from 1 to 2"),
        ({"format": "a roof", "version": "2"}, "its version must be a whole number from 1 to 2"),
    ],
)
def test_another_kind_of_file_is_refused(body, said):
    with pytest.raises(BadFile, match=said) as told:
        storage.Format("a roof", 2).current(body)
    assert not isinstance(told.value, storage.NewerFile)


def test_a_later_version_is_told_apart():
    with pytest.raises(storage.NewerFile, match="it is of version 3, newer than this kit, which reads up to version 2"):
        storage.Format("a roof", 2).current({"format": "a roof", "version": 3})


# --- the cache ---------------------------------------------------------------------------


@pytest.fixture
def folder(tmp_path, monkeypatch):
    monkeypatch.setattr(storage, "cache_folder", lambda: tmp_path / "cache")
    return tmp_path / "cache"


class Counted:
    """A function that counts its calls."""

    def __init__(self):
        self.calls = 0

    def series(self):
        """The function, cached."""

        def three(start, step):
            self.calls += 1
            return start, start + step, start + 2 * step

        return storage.cached("numpy")(three)


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


def test_without_a_folder_nothing_is_cached(tmp_path, monkeypatch):
    (tmp_path / "cache").write_text("a file where the folder should be", encoding="utf-8")
    monkeypatch.setattr(storage, "cache_folder", lambda: tmp_path / "cache")
    counted = Counted()
    series = counted.series()
    assert series(1.0, 2.0).tolist() == series(1.0, 2.0).tolist() == [1.0, 3.0, 5.0]
    assert counted.calls == 2


def test_the_oldest_files_go(folder, monkeypatch):
    monkeypatch.setattr(storage, "CACHED", 3)
    series = Counted().series()
    for step in range(6):
        series(1.0, float(step))
    assert len(list(folder.iterdir())) == 3


_RUN = """
import hashlib, sys
from pathlib import Path
from dryward import storage
storage.cache_folder = lambda: Path({folder!r})
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
    assert storage.cache_folder().is_relative_to(platformdirs.user_cache_dir("dryward", appauthor=False))


def test_what_is_cached_is_what_pvlib_says(folder):
    """To the last bit, from the function itself and from the file."""
    from dryward.weather import generator, places

    place = places.place("hot-dry")
    cloud = np.linspace(0.1, 0.9, 8760)
    haze = np.full(8760, 3.0)
    itself = np.asarray(generator._sun.__wrapped__(place, cloud, haze))
    assert generator._sun(place, cloud, haze).tobytes() == itself.tobytes()
    assert generator._sun(place, cloud, haze).tobytes() == itself.tobytes()
