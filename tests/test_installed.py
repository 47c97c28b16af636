"""The kit at work where there is no checkout.

The source archive is unpacked, the wheel is built from it, and a new
environment gets that wheel and nothing else of ours; what the kit needs from
others it takes from the environment of the tests.
"""

import os
import re
import subprocess
import sys
import sysconfig
import tarfile
import venv
import zipfile
from pathlib import Path

import pytest

import dryward

pytestmark = pytest.mark.slow
PROJECT = Path(__file__).parents[1]
BUILD = "import sys; from hatchling.build import build_{0}; print(build_{0}(sys.argv[1]))"


def built(what, folder, source=PROJECT):
    told = subprocess.run(
        [sys.executable, "-c", BUILD.format(what), str(folder)], cwd=source, capture_output=True, text=True, check=True
    )
    return folder / told.stdout.split()[-1]


@pytest.fixture(scope="module")
def folder(tmp_path_factory):
    return tmp_path_factory.mktemp("installed")


@pytest.fixture(scope="module")
def source(folder):
    """The source archive, unpacked."""
    with tarfile.open(built("sdist", folder)) as packed:
        packed.extractall(folder / "source", filter="data")
    return next((folder / "source").iterdir())


@pytest.fixture(scope="module")
def wheel(folder, source):
    return built("wheel", folder, source)


@pytest.fixture(scope="module")
def bare(folder, wheel):
    """Runs a command of the new environment in an empty folder; gives what it prints."""
    home = folder / "environment"
    venv.create(home, with_pip=False, symlinks=True)
    scripts = home / ("Scripts" if os.name == "nt" else "bin")
    library = Path(sysconfig.get_path("purelib", "venv", {"base": str(home), "platbase": str(home)}))
    # A plain line in a .pth file adds a folder without reading that folder's own .pth files,
    # so the checkout that is installed there for the tests is not found.
    others = {sysconfig.get_path("purelib"), sysconfig.get_path("platlib")}
    pip = [sys.executable, "-m", "pip", "--python", str(scripts / "python"), "install", "-q", "--no-deps", "--no-index"]
    subprocess.run([*pip, str(wheel)], check=True, capture_output=True, text=True)
    (library / "others.pth").write_text("\n".join(sorted(others)) + "\n")
    empty = folder / "empty"
    empty.mkdir()
    surroundings = {k: v for k, v in os.environ.items() if not k.startswith(("PYTHON", "VIRTUAL_ENV", "PYTEST"))}

    def run(name, *given):
        told = subprocess.run(
            [str(scripts / name), *given], cwd=empty, env=surroundings, capture_output=True, text=True, timeout=600
        )
        assert told.returncode == 0, told.stdout[-2000:] + told.stderr[-2000:]
        return told.stdout

    run.library, run.empty = library, empty
    return run


def test_it_is_the_installed_one(bare):
    where = Path(bare("python", "-c", "import dryward; print(dryward.__file__)").strip())
    assert where.is_relative_to(bare.library)
    assert not where.is_relative_to(PROJECT)


def test_it_tells_its_version(bare):
    assert dryward.__version__ in bare("dryward", "--version")


def test_every_published_number_holds(bare):
    told = bare("dryward", "evidence", "--summary")
    computed = re.search(r"(\d+) published or worked values computed again; none outside", told)
    assert computed, told[-500:]
    assert int(computed.group(1)) > 1000


def test_a_roof_is_checked(bare):
    assert "vented" in bare("dryward", "check", "vented-vault", "--steady").lower()


def test_the_lessons_are_inside(bare):
    asked = "from dryward.teaching import lessons; print(*(each.file for each in lessons.lessons()), sep='\\n')"
    files = bare("python", "-c", asked).split()
    assert len(files) >= 17
    for file in files:
        assert (bare.library / "dryward" / "lessons" / Path(file).name).is_file()


def test_its_own_examples_run(bare):
    """All doctests of the physics and of what stands below it, from the installed files."""
    rooms = ("air", "units", "checks.py", "storage.py", "building", "weather", "physics")
    told = bare(
        "python", "-m", "pytest", "-q", "-p", "no:cacheprovider", "--doctest-modules", "--import-mode=importlib",
        "-W", "error", *(str(bare.library / "dryward" / room) for room in rooms),
    )  # fmt: skip
    assert int(re.search(r"(\d+) passed", told).group(1)) > 60


def test_all_of_the_archive_is_in_the_wheel(source, wheel):
    inside = set(zipfile.ZipFile(wheel).namelist())
    for path in (source / "kit").rglob("*"):
        if path.is_file():
            assert path.relative_to(source / "kit").as_posix() in inside
    for name in ("README.md", "LICENSE", "tests/conftest.py"):
        assert (source / name).is_file()
