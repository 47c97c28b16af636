"""A layer on the wrong side is told by every way out: review, command, page, paper and JSON."""

import dataclasses
import io
import json

import pytest
from pypdf import PdfReader

from dryward import building, cli
from dryward.building import layer_order, preset
from dryward.building.job import Job, save_job
from dryward.report import document, many, printed, review


def turned(id):
    built = preset(id)
    return dataclasses.replace(built, layers=built.layers[::-1], framing=None)


@pytest.fixture
def roofs(tmp_path):
    """A right roof, and one with its underlayment inside."""
    wrong = preset("vented-vault").replace("inner membrane", building.membrane("synthetic-underlayment"))
    save_job(Job(preset("vented-vault")), tmp_path / "right.toml")
    save_job(Job(wrong), tmp_path / "wrong.toml")
    return tmp_path, layer_order.warnings(wrong)[0]


@pytest.mark.parametrize("id", building.presets())
def test_a_roof_turned_round_is_reviewed_and_says_so_first(id):
    found = review(Job(turned(id)), hourly=False)
    assert found.notes[0] == layer_order.warnings(turned(id))[0]
    assert found.checks, "nothing is refused"
    assert many.plain(found)["warnings"] == list(layer_order.warnings(turned(id)))
    assert not set(review(Job(preset(id)), hourly=False).notes) & set(found.notes[:1])


def test_the_command_says_it_before_the_verdict_and_once(roofs, capsys):
    folder, warning = roofs
    cli.main(["check", str(folder / "wrong.toml"), "--steady"])
    out = capsys.readouterr().out
    assert out.splitlines()[1] == warning
    assert out.count(warning) == 1
    cli.main(["check", str(folder / "right.toml"), "--steady"])
    assert "listed from inside" not in capsys.readouterr().out


def test_in_a_folder_it_stands_under_its_roof(roofs, capsys):
    folder, warning = roofs
    cli.main(["check", str(folder), "--steady", "--workers", "1"])
    lines = capsys.readouterr().out.splitlines()
    assert len(lines) == 3
    assert "wrong.toml" in lines[1]
    assert lines[2].strip() == warning


def test_json_has_it_as_a_warning_and_as_a_note(roofs, capsys):
    folder, warning = roofs
    cli.main(["check", str(folder / "wrong.toml"), "--steady", "--json"])
    told = json.loads(capsys.readouterr().out)
    assert told["warnings"] == [warning]
    assert warning in told["notes"]


def test_both_forms_of_the_report_have_it():
    made = document.document(review(Job(turned("vented-vault")), hourly=False))
    (warning,) = layer_order.warnings(turned("vented-vault"))
    assert warning in printed.html(made)
    words = " ".join(each.extract_text() for each in PdfReader(io.BytesIO(printed.pdf(made))).pages)
    assert warning in " ".join(words.split())
