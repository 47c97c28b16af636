"""The wheel carries all that the kit needs without its checkout."""

import os
import tomllib
import zipfile
from pathlib import Path

import pytest

PROJECT = Path(__file__).parents[1]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory):
    from hatchling.build import build_wheel

    folder, here = tmp_path_factory.mktemp("wheel"), Path.cwd()
    os.chdir(PROJECT)
    try:
        return zipfile.ZipFile(folder / build_wheel(str(folder)))
    finally:
        os.chdir(here)


def test_every_file_of_the_package_is_in_it(wheel):
    inside = set(wheel.namelist())
    for path in (PROJECT / "kit" / "dryward").rglob("*"):
        if path.is_file() and "__pycache__" not in path.parts and not path.name.startswith("."):
            assert path.relative_to(PROJECT / "kit").as_posix() in inside


def test_every_lesson_is_in_it(wheel):
    lessons = [path for path in (PROJECT / "lessons").rglob("*.ipynb") if ".ipynb_checkpoints" not in path.parts]
    assert lessons
    for path in lessons:
        assert f"dryward/{path.relative_to(PROJECT).as_posix()}" in wheel.namelist()


def test_it_is_typed_and_has_its_command(wheel):
    assert "dryward/py.typed" in wheel.namelist()
    name = next(name for name in wheel.namelist() if name.endswith("entry_points.txt"))
    assert "dryward = dryward.cli:main" in wheel.read(name).decode()


def test_it_carries_no_tests_and_no_learners_files(wheel):
    for name in wheel.namelist():
        assert not name.startswith("tests/")
        assert "checkpoint" not in name


def test_the_license_goes_with_it(wheel):
    assert any(name.endswith("LICENSE") for name in wheel.namelist())
    meta = wheel.read(next(name for name in wheel.namelist() if name.endswith("/METADATA"))).decode()
    project = tomllib.loads((PROJECT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    assert f"License-Expression: {project['license']}" in meta
    assert f"Requires-Python: {project['requires-python']}" in meta
