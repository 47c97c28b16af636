"""The pinned environment, read by the reader that a cloud session uses, and by the shell."""

import json
import os
import re
import subprocess
import sys
import warnings
from importlib import metadata
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from served import ask
from session import TOKEN, session

BINDER = Path(__file__).parents[2] / "binder"
#: JupyterLab's settings of how it talks to kernels.
KERNELS = "@jupyterlab/apputils-extension:kernels-settings"


@pytest.fixture
def pack(monkeypatch):
    """The checkout as repo2docker understands it."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", DeprecationWarning)  # of its own imports
        from repo2docker.app import Repo2Docker

    monkeypatch.chdir(BINDER.parent)
    app = Repo2Docker()
    for kind in app.buildpacks:
        found = kind(app.base_image)
        if found.detect():
            found.platform = "linux/amd64"
            return found
    raise AssertionError("repo2docker does not know what this checkout is")


def plain(name):
    """A package's name as every index spells it."""
    return re.sub(r"[-_.]+", "-", name).lower()


def test_it_is_a_python_environment_of_the_binder_folder(pack):
    assert type(pack).__name__ == "PythonBuildPack"
    assert pack.binder_dir == "binder"
    assert pack.python_version == "3.11"


def test_what_it_installs_and_runs(pack):
    scripts = (*pack.get_preassemble_scripts(), *pack.get_assemble_scripts())
    assert "binder/requirements.txt" in " ".join(script for _, script in scripts)
    assert pack.get_post_build_scripts() == ["binder/postBuild"]
    assert pack.get_start_script().endswith("binder/start")
    recipe = pack.render()
    assert "binder/postBuild" in recipe
    assert "binder/start" in recipe


def test_every_pin_is_exact():
    for line in (BINDER / "requirements.txt").read_text().splitlines():
        if line and not line.startswith("#"):
            need = Requirement(line)
            assert [each.operator for each in need.specifier] == ["=="], line


def test_nothing_that_is_needed_is_left_unpinned():
    pins = [Requirement(line) for line in (BINDER / "requirements.txt").read_text().splitlines() if line[:1] not in "#"]
    pinned = {plain(pin.name): str(pin.specifier).removeprefix("==") for pin in pins}
    needed, waiting = {("dryward", extra) for extra in ("", "pages", "cluster")}, ["dryward"]
    while waiting:
        name = waiting.pop()
        # Another version than the pinned one may need other things: what it asks for says nothing about the pins.
        if name != "dryward" and metadata.version(name) != pinned.get(name):
            continue
        extras = [extra for each, extra in needed if each == name]
        for need in map(Requirement, metadata.requires(name) or ()):
            if need.marker and not any(need.marker.evaluate({"extra": extra}) for extra in extras):
                continue
            asked = {(plain(need.name), extra) for extra in ("", *need.extras)}
            if not asked <= needed:
                needed |= asked
                waiting.append(plain(need.name))
    names = {name for name, _ in needed} - {"dryward"}
    assert {"numpy", "voila", "jupyterhub", "dask"} <= names
    assert names <= {*pinned, "pip", "setuptools", "wheel"}


@pytest.mark.parametrize("script", ["postBuild", "start"])
def test_the_scripts_can_run(script):
    path = BINDER / script
    assert os.access(path, os.X_OK)
    assert subprocess.run(["bash", "-n", str(path)]).returncode == 0


def test_a_session_starts_as_the_launcher_does(tmp_path):
    env = {**os.environ, "TMPDIR": str(tmp_path), "PATH": f"{Path(sys.executable).parent}:{os.environ['PATH']}"}
    done = subprocess.run(
        [str(BINDER / "start"), "python", "-c", "import os, sys; print(os.environ['JUPYTER_CONFIG_PATH'], *sys.argv)"],
        capture_output=True,
        text=True,
        env=env,
    )
    assert done.returncode == 0, done.stderr
    config = done.stdout.split()[0].split(":")
    assert "lessons/05-where-it-gets-wet.ipynb" in (Path(config[0]) / "labconfig" / "page_config.json").read_text()
    assert (Path(config[1]) / "labconfig" / "default_setting_overrides.json").is_file()
    assert "dryward.school.kernels.NoDelay" in done.stdout


@pytest.mark.slow
def test_the_lines_of_post_build_that_warm_up():
    env = {**os.environ, "PATH": f"{Path(sys.executable).parent}:{os.environ['PATH']}"}
    for line in (BINDER / "postBuild").read_text().splitlines():
        if line.startswith("python -c"):
            assert subprocess.run(["bash", "-c", line], env=env).returncode == 0, line


@pytest.mark.parametrize("lessons", ["lessons", "kept"])
def test_a_session_serves_our_settings(tmp_path, lessons):
    with session(tmp_path, lessons) as address:
        status, _, page = ask(f"{address}doc/tree/{lessons}/05-where-it-gets-wet.ipynb?token={TOKEN}")
        assert status == 200
        assert f"{lessons}/05-where-it-gets-wet.ipynb" in re.search(r'"drywardLessons": "(.*?\])"', page).group(1)
        assert "@jupyterlab/apputils-extension:announcements" in page
        status, _, text = ask(f"{address}lab/api/settings/{KERNELS}?token={TOKEN}")
        assert status == 200
        # Messages to a second shell of the kernel could be lost; a slider would then do nothing.
        assert json.loads(text)["schema"]["properties"]["commsOverSubshells"]["default"] == "disabled"
