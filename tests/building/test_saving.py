"""Assembly files are written whole or not at all, and a second writer is told."""

import dataclasses
import stat
import sys
import threading

import pytest

from dryward import building, storage
from dryward.building.assembly import load_with_token, save
from dryward.checks import BadFile


def roof_file(folder):
    path = folder / "roof.toml"
    save(building.preset("vented-vault"), path)
    return path


def test_a_second_writer_is_told(tmp_path):
    path = roof_file(tmp_path)
    first, token = load_with_token(path)
    _, same = load_with_token(path)
    newer = save(dataclasses.replace(first, name="first"), path, expect=token)
    with pytest.raises(BadFile, match=r"roof.toml: it was changed or removed since it was opened"):
        save(dataclasses.replace(first, name="second"), path, expect=same)
    assert building.load(path).name == "first"
    save(dataclasses.replace(first, name="third"), path, expect=newer)
    assert building.load(path).name == "third"
    path.unlink()
    with pytest.raises(BadFile, match="changed or removed"):
        save(first, path, expect=newer)
    assert not path.exists()


def test_a_new_file_does_not_replace_an_old_one(tmp_path):
    path = roof_file(tmp_path)
    before = path.read_bytes()
    with pytest.raises(BadFile, match="there is already a file of that name; it was left as it is"):
        save(building.preset("wood-frame-wall"), path, expect=storage.NEW)
    assert path.read_bytes() == before
    save(building.preset("wood-frame-wall"), tmp_path / "wall.toml", expect=storage.NEW)
    assert building.load(tmp_path / "wall.toml").slope == 90


def test_of_many_writers_with_one_token_exactly_one_wins(tmp_path):
    path = roof_file(tmp_path)
    roof, token = load_with_token(path)
    told = []

    def write(number):
        try:
            save(dataclasses.replace(roof, name=f"writer {number}"), path, expect=token)
        except BadFile:
            told.append(number)

    writers = [threading.Thread(target=write, args=(number,)) for number in range(8)]
    for writer in writers:
        writer.start()
    for writer in writers:
        writer.join()
    assert len(told) == 7
    assert building.load(path).name.startswith("writer ")
    assert [each.name for each in tmp_path.iterdir()] == ["roof.toml"], "no drafts, no locks left"


def test_a_failed_save_leaves_the_old_file(tmp_path, monkeypatch):
    path = roof_file(tmp_path)
    before = path.read_bytes()

    def full(*_):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(storage.os, "replace", full)
    with pytest.raises(BadFile, match=r"roof.toml: it cannot be written \(No space left on device\)\."):
        save(building.preset("wood-frame-wall"), path)
    assert path.read_bytes() == before
    assert [each.name for each in tmp_path.iterdir()] == ["roof.toml"]


def test_what_could_not_be_read_again_is_not_written(tmp_path):
    path = roof_file(tmp_path)
    before = path.read_bytes()
    with pytest.raises(BadFile, match="name must be a text of at most 80 characters"):
        save(dataclasses.replace(building.load(path), name="n" * 300), path)
    assert path.read_bytes() == before


def test_a_writer_waits_for_another_and_then_says_so(tmp_path, monkeypatch):
    path = roof_file(tmp_path)
    monkeypatch.setattr(storage, "PATIENCE", 0.1)
    with storage.locked(path), pytest.raises(BadFile, match=r"roof.toml: another program is writing it; try again\."):
        save(building.preset("wood-frame-wall"), path)


@pytest.mark.parametrize("where", ["no/such/folder/roof.toml", "a\0b.toml"])
def test_an_impossible_place_gets_a_sentence(where, tmp_path):
    with pytest.raises(BadFile, match="it cannot be written"):
        save(building.preset("vented-vault"), f"{tmp_path}/{where}")


@pytest.mark.skipif(sys.platform == "win32", reason="no such permissions there")
def test_links_and_permissions_stay(tmp_path):
    path = roof_file(tmp_path)
    path.chmod(0o600)
    link = tmp_path / "link.toml"
    link.symlink_to(path)
    save(building.preset("wood-frame-wall"), link)
    assert link.is_symlink()
    assert building.load(path).slope == 90
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
