"""The launcher: the learner's own copy, what the server is told, and where the lessons are."""

import json
import socket
import subprocess
import sys
from pathlib import Path

import jsonschema
import pytest

from dryward import cli
from dryward.checks import BadFile
from dryward.cli import lessons
from dryward.school import folders, lab

FIRST = "00-start.ipynb"
EXTENSIONS = lab.SETTINGS.parent / "labextensions"
SETTINGS = lab.SETTINGS / "labconfig" / "default_setting_overrides.json"


@pytest.fixture
def kit(tmp_path):
    """A small kit of two lessons and a guide."""
    source = tmp_path / "kit"
    (source / "guide").mkdir(parents=True)
    (source / FIRST).write_text("first")
    (source / "01-next.ipynb").write_text("next")
    (source / "guide" / "page.md").write_text("guide")
    (source / ".hidden").mkdir()
    (source / ".hidden" / "x").write_text("x")
    return source


def test_the_first_copy_is_whole(kit, tmp_path):
    done = folders.copy(kit, tmp_path / "own")
    assert done.new == (FIRST, "01-next.ipynb", "guide/page.md")
    assert folders.copy(kit, tmp_path / "own") == folders.Copied()


def test_a_newer_lesson_replaces_an_untouched_one(kit, tmp_path):
    folders.copy(kit, tmp_path / "own")
    (kit / FIRST).write_text("first, better")
    assert folders.copy(kit, tmp_path / "own").renewed == (FIRST,)
    assert (tmp_path / "own" / FIRST).read_text() == "first, better"


def test_what_the_learner_changed_is_never_overwritten(kit, tmp_path):
    own = tmp_path / "own"
    folders.copy(kit, own)
    (own / FIRST).write_text("mine")
    assert folders.copy(kit, own) == folders.Copied()
    (kit / FIRST).write_text("first, better")
    (beside,) = folders.copy(kit, own).beside
    assert (own / FIRST).read_text() == "mine"
    assert (own / beside).read_text() == "first, better"
    assert folders.copy(kit, own) == folders.Copied()  # offered once


def test_without_its_memory_everything_is_the_learners(kit, tmp_path):
    own = tmp_path / "own"
    folders.copy(kit, own)
    (own / folders.MANIFEST).write_text("{ broken")
    (kit / FIRST).write_text("first, better")
    assert len(folders.copy(kit, own).beside) == 1
    assert (own / FIRST).read_text() == "first"


def test_a_deleted_lesson_comes_back(kit, tmp_path):
    folders.copy(kit, tmp_path / "own")
    (tmp_path / "own" / FIRST).unlink()
    assert folders.copy(kit, tmp_path / "own").new == (FIRST,)


def test_a_folder_that_cannot_be_is_one_sentence(kit, tmp_path):
    (tmp_path / "own").write_text("a file")
    with pytest.raises(BadFile, match=r"The lessons cannot be copied to .*own: it is a file, not a folder\."):
        folders.copy(kit, tmp_path / "own")


def test_a_port_that_cannot_be_is_one_sentence(capsys):
    assert cli.main(["lessons", "--port", "70000"]) == 2
    assert capsys.readouterr().err == "dryward: The port is 70000; it must be 1 to 65535.\n"


def test_the_lessons_are_found_in_a_wheel_and_in_a_checkout(tmp_path, monkeypatch):
    assert (folders.shipped_lessons() / FIRST).is_file()
    package = tmp_path / "site" / "a" / "dryward"
    (package / "lessons").mkdir(parents=True)
    (package / "lessons" / FIRST).write_text("{}")
    monkeypatch.setattr(folders, "PACKAGE", package)
    assert folders.shipped_lessons() == package / "lessons"
    (package / "lessons" / FIRST).unlink()
    with pytest.raises(BadFile, match="The lessons that came with the kit are missing; install the kit again"):
        folders.shipped_lessons()


def test_the_server_is_for_this_machine_only_and_behind_a_token(tmp_path):
    told = lessons.options(tmp_path, FIRST, 8888, "abc", False)
    assert "--ServerApp.ip=127.0.0.1" in told
    assert "--IdentityProvider.token=abc" in told
    assert f"--ServerApp.root_dir={tmp_path}" in told


def test_settings_of_lab_are_read_as_json():
    for name in ("default_setting_overrides.json", "page_config.json"):
        assert json.loads((lab.SETTINGS / "labconfig" / name).read_text("utf-8"))
    package = json.loads((EXTENSIONS / "dryward-lessons" / "package.json").read_text("utf-8"))
    load = EXTENSIONS / "dryward-lessons" / package["jupyterlab"]["_build"]["load"]
    assert load.is_file()


def test_the_address_is_whole_and_the_kernel_does_not_wait(tmp_path):
    """A server on a port that is taken says the address it really has, and refuses strangers."""
    import re
    import urllib.error
    import urllib.request

    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        server = subprocess.Popen(
            [
                sys.executable,
                "-m",
                "dryward",
                "lessons",
                "--no-browser",
                "--folder",
                str(tmp_path),
                "--port",
                str(port),
            ],
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
        )
        try:
            said = next(found for line in server.stdout if (found := re.search(r"http://127\.0\.0\.1:(\d+)/\S+", line)))
            assert int(said.group(1)) != port
            assert urllib.request.urlopen(said.group()).status == 200
            with pytest.raises(urllib.error.HTTPError, match="403"):
                urllib.request.urlopen(f"http://127.0.0.1:{said.group(1)}/api/contents")
        finally:
            server.terminate()
            server.wait(20)
            server.stdout.close()


def _schema(plugin):
    """What the installed JupyterLab lets one of its parts be set to."""
    from jupyterlab.commands import get_app_dir

    extension, name = plugin.split(":")
    return json.loads((Path(get_app_dir()) / "schemas" / extension / f"{name}.json").read_text())


@pytest.mark.parametrize(("plugin", "chosen"), json.loads(SETTINGS.read_text()).items())
def test_each_setting_is_one_of_the_installed_lab(plugin, chosen):
    schema = _schema(plugin)
    assert set(chosen) <= set(schema["properties"])
    jsonschema.validate(chosen, {**schema, "required": []})


def test_a_page_is_answered_by_the_kernel_itself():
    """Messages sent to a second shell of the kernel are lost when that is not there yet or no longer."""
    chosen = json.loads(SETTINGS.read_text())["@jupyterlab/apputils-extension:kernels-settings"]
    assert chosen == {"commsOverSubshells": "disabled"}
