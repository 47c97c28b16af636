"""`dryward check` and `dryward report`: words, JSON, exit status, and files left alone."""

import json

import pytest
from jobs_at_hand import OPEN, TIGHT, checked

from dryward import cli
from dryward.building import preset
from dryward.building.job import DESIGNS, Job, save_job
from dryward.report import document, many
from dryward.report.setting import setting
from dryward.units import read_in


@pytest.fixture
def folder(tmp_path):
    save_job(OPEN, tmp_path / "open.toml")
    save_job(TIGHT, tmp_path / "tight.toml")
    return tmp_path


@pytest.mark.parametrize(("name", "status"), [("open", 0), ("tight", 1)])
def test_status_says_whether_it_is_dry(folder, name, status, capsys):
    assert cli.main(["check", str(folder / f"{name}.toml"), "--quick"]) == status
    out = capsys.readouterr().out
    assert "the building official decides" in out
    assert read_in(checked(OPEN if name == "open" else TIGHT).headline, "us") in out


def test_each_question_has_its_mark(folder, capsys):
    cli.main(["check", str(folder / "tight.toml"), "--steady"])
    out = capsys.readouterr().out.splitlines()
    assert document.legend() in out
    assert any(line.startswith("▲ How wet would it get if the coldest month never ended? Wet.") for line in out)
    assert any(line.startswith("✓ How wet would it get if the warmest month never ended? Dry.") for line in out)
    assert "A calculation, not a permit, an inspection or an approval." in out[2]
    assert "Zone" not in out[2]


def test_many_roofs_have_one_line_each(folder, capsys):
    cli.main(["check", str(folder), "--steady", "--workers", "1"])
    out = capsys.readouterr().out.splitlines()
    assert len(out) == 2
    assert out[0].startswith("dry  ")
    assert "Dry (by twelve monthly means alone, no air leak counted): " in out[0]


def test_json_is_the_review_to_the_last_digit(folder, capsys):
    # With its trials on the page of a roof of one's own: `test_page_command_line_and_report_agree_to_the_last_digit`.
    cli.main(["check", str(folder / "open.toml"), "--json", "--quick"])
    assert json.loads(capsys.readouterr().out) == json.loads(
        json.dumps(many.plain(checked(OPEN), str(folder / "open.toml")))
    )


def test_a_folder_with_a_broken_file(folder, capsys):
    (folder / "broken.toml").write_text("version = ")
    assert cli.main(["check", str(folder), "--steady", "--workers", "1"]) == 2
    out, err = capsys.readouterr()
    assert out.count("open.toml") == 1
    assert "broken.toml: it is not written as TOML" in err


def test_hidden_folders_are_left_alone(folder, capsys):
    (folder / ".venv").mkdir()
    (folder / ".venv" / "pyproject.toml").write_text("[project]")
    assert cli.main(["check", str(folder / "open.toml"), str(folder), "--steady", "--workers", "1"]) in (0, 1)
    assert "pyproject" not in "".join(capsys.readouterr())


def test_an_empty_folder(tmp_path, capsys):
    assert cli.main(["check", str(tmp_path)]) == 2
    assert "there is no .toml file in this folder" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        (["--humidity", "140"], "Room humidity is 140 %; it must be 5 to 95 %."),
        (["--place", "mars"], 'There is no demo climate "mars"; there are very-cold, cold, '),
        (["--spread", "5"], "The spread is of the hourly years: leave out --steady or --spread."),
        (["--room-temperature", "warm"], 'The temperature "warm" is not understood; write it like "20 F" or "-7 C".'),
        (["--room-temperature", "300F"], "Room temperature is 300 °F; it must be 50 to 95 °F."),
        (["--room-temperature", "1e400F"], "The temperature 1e400F is too large a number to work with."),
        (["--humidity", "eleven"], 'The relative humidity "eleven" is not understood; write it like "40 %".'),
        (["--zone", "banana"], 'There is no climate zone "banana"; it must be 0 to 8, with or without A, B or C.'),
        (["--years", "0"], "The number of years is 0; it must be 1 to 10."),
        (["--epw", "none.epw"], "none.epw"),
    ],
)
def test_bad_input_is_a_sentence_and_status_two(typed, sentence, capsys):
    assert cli.main(["check", "vented-vault", "--steady", *typed]) == 2
    assert sentence in capsys.readouterr().err


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        ("vented-valt", 'There is no file, folder or preset "vented-valt"; did you mean vented-vault'),
        ("", 'There is no file, folder or preset "".'),
        ("roof.toml", "roof.toml: there is no such file."),
    ],
)
def test_what_is_not_there_is_a_sentence(name, sentence, tmp_path, monkeypatch, capsys):
    monkeypatch.chdir(tmp_path)
    assert cli.main(["check", name, "--steady"]) == 2
    assert sentence in capsys.readouterr().err


def test_a_folder_of_broken_files_alone(tmp_path, capsys):
    (tmp_path / "broken.toml").write_text("version = ")
    assert cli.main(["check", str(tmp_path), "--steady"]) == 2
    assert "it is not written as TOML" in capsys.readouterr().err


def test_a_report_is_written_once(folder, capsys):
    target = folder / "roof.pdf"
    assert cli.main(["report", str(folder / "open.toml"), "-o", str(target), "--steady"]) == 0
    assert target.read_bytes().startswith(b"%PDF")
    before = target.read_bytes()
    assert cli.main(["report", str(folder / "tight.toml"), "-o", str(target), "--steady"]) == 2
    assert "there is already a file of that name" in capsys.readouterr().err
    assert target.read_bytes() == before
    assert cli.main(["report", str(folder / "tight.toml"), "-o", str(target), "--steady", "--overwrite"]) == 0
    assert target.read_bytes() != before
    assert [each.name for each in folder.iterdir() if each.name.startswith(".")] == []


def test_a_report_in_html(folder, capsys):
    target = folder / "roof.html"
    assert cli.main(["report", "vented-vault", "-o", str(target), "--steady", "--units", "si"]) == 0
    assert "size: A4" in target.read_text()


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        (["vented-vault", "-o", "roof.docx"], "The report is written as .pdf or .html, not .docx."),
        (["vented-vault", "-o", "no/such/folder/roof.pdf", "--steady"], "there is no folder no/such/folder."),
    ],
)
def test_a_report_that_cannot_be_written(typed, sentence, capsys):
    assert cli.main(["report", *typed]) == 2
    assert sentence in capsys.readouterr().err


@pytest.mark.parametrize("design", DESIGNS)
def test_the_design_year_can_be_typed(design, capsys):
    cli.main(["check", "vented-vault-osb", "--steady", "--design", design])
    assert setting(Job(preset("vented-vault-osb"), design=design)).notes[0] in capsys.readouterr().out
