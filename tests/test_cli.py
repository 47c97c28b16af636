"""The command line: exit status, one plain sentence, nothing loaded too early."""

import json
import re
import subprocess
import sys

import pytest

import dryward
from dryward import cli, evidence
from dryward.cli import pages
from dryward.cli.evidence import by_topic, summary
from dryward.evidence import Check


def run(*typed):
    return subprocess.run([sys.executable, "-m", "dryward", *typed], capture_output=True, text=True)


def test_version():
    done = run("--version")
    assert (done.returncode, done.stdout.strip()) == (0, f"dryward {dryward.__version__}")


@pytest.mark.parametrize("command", cli.COMMANDS)
def test_every_command_has_help(command, capsys):
    with pytest.raises(SystemExit, match="0"):
        cli.main([command, "--help"])
    assert capsys.readouterr().out.startswith(f"usage: dryward {command}")


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        (["frobnicate"], 'There is no command "frobnicate"; there are lessons, pages, '),
        (["chek"], 'There is no command "chek"; did you mean check?'),
        (["evidence", "--frobnicate"], '"--frobnicate" is not understood here; `dryward evidence --help`'),
        (["--lessn", "3"], '"--lessn" is not understood here; did you mean --lesson; `dryward lessons --help`'),
        (["lessons", "--port", "abc"], '--port is "abc"; it must be a whole number; `dryward lessons --help`'),
        (["pages", "--away", "long"], '--away is "long"; it must be a number;'),
        (["check", "vented-vault", "--units", "metric"], '--units is "metric"; it must be one of us, si;'),
        (["lessons", "--lesson", "99"], 'There is no lesson "99".'),
        (["lessons", "--lesson", "jully.ipynb"], 'There is no lesson "jully.ipynb"; did you mean 09-july.ipynb'),
        (["evidence", "units", "--readme"], "--readme writes the table of all topics; leave the topics out."),
        (["bench", "steady", "--readme"], "--readme writes the table of all groups; leave the groups out."),
        (["evidence", "psychrometrix"], 'There is no topic "psychrometrix"; did you mean psychrometrics'),
        (["check"], "FILE is missing"),
        (["check", "no-such-file.toml"], "no-such-file.toml"),
    ],
)
def test_a_mistake_is_one_sentence_and_status_two(typed, sentence, capsys):
    assert cli.main(typed) == 2
    out, err = capsys.readouterr()
    assert out == ""
    assert err.startswith("dryward: ")
    assert err.count("\n") == 1
    assert sentence in err


def test_evidence_prints_both_numbers_and_the_source(capsys):
    assert cli.main(["evidence", "psychrometrics"]) == 0
    out = capsys.readouterr().out
    count = len(evidence.read("psychrometrics"))
    assert f"{count} published or worked values computed again; none outside the allowed difference." in out
    assert re.search(r"3169\.7 +3169\.22 +−0\.48\d+ +0\.95\d+ +Pa", out)
    assert "ASHRAE Handbook" in out
    # As people read it: °C, and one sign for what is below zero.
    assert "saturation pressure at −20 °C" in out
    assert not re.search(r"degC|(?<!\S)-\d", out)


def test_evidence_as_json(capsys):
    assert cli.main(["evidence", "psychrometrics", "--json"]) == 0
    rows = json.loads(capsys.readouterr().out)
    assert len(rows) == len(evidence.read("psychrometrics"))
    assert all(row["passed"] and row["source"] and row["where"] and row["how_read"] for row in rows)


def test_evidence_fails_when_a_value_does(monkeypatch, capsys):
    wrong = Check("x", "half of 3", "arithmetic", "-", "by hand", 1.5, 1.6, 0.01, "m")
    monkeypatch.setattr(evidence, "checks", lambda *names: iter([wrong]))
    assert cli.main(["evidence", "psychrometrics", "--failed"]) == 1
    out = capsys.readouterr().out
    assert "! half of 3" in out
    assert "1 outside the allowed difference" in out


def test_summary_counts_by_source():
    right = Check("a", "half of 3", "arithmetic", "-", "by hand", 1.5, 1.505, 0.01, "")
    wrong = Check("b", "half of 5", "arithmetic", "-", "by hand", 2.5, 2.6, 0.01, "")
    assert "| arithmetic | 2 | 1 | 1000% |" in summary([right, wrong])


def test_the_front_pages_table_counts_how_values_were_read():
    read = Check("a", "half of 3", "arithmetic", "-", "read in a book", 1.5, 1.505, 0.01, "")
    recalled = Check("b", "half of 5", "arithmetic", "-", "from memory", 2.5, 2.6, 0.01, "")
    worked = Check("c", "half of 7", "algebra", "-", "computed outside the kit", 3.5, 3.5, 0.01, "")
    own = Check("d", "half of 9", "Teaching case of the kit", "-", "invented; computed by hand", 4.5, 5.0, 0.01, "")
    table = by_topic([("halves", read), ("halves", recalled), ("more_halves", worked), ("more_halves", own)])
    assert "| halves | 2 | 1 | 0 | 1 | 1 | 1 | 1000% | 0 |" in table
    assert "| more halves | 1 | 0 | 1 | 0 | 1 | 0 | 0% | 1 |" in table
    assert "| all | 3 | 1 | 1 | 1 | 2 | 1 | 1000% | 1 |" in table


def test_the_kits_own_are_listed_apart(capsys):
    rows = evidence.read("materials")
    own = [row for row in rows if "invented" in row.text("how_read")]
    assert len(own) == 13
    assert cli.main(["evidence", "materials"]) == 0
    out = capsys.readouterr().out
    assert f"{len(rows) - 13} published or worked values computed again; none outside the allowed difference." in out
    assert "Not counted: 13 of the kit's own, invented for teaching; none outside the allowed difference." in out
    before, _, after = out.partition("MATERIALS, THE KIT'S OWN, NOT COUNTED")
    assert all(row.text("what")[:40] in after and row.text("what")[:40] not in before for row in own)
    assert cli.main(["evidence", "materials", "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert [each["reading"] == "the kit's own" for each in told] == [False] * (len(rows) - 13) + [True] * 13
    assert cli.main(["evidence", "materials", "--summary"]) == 0
    lines = [line for line in capsys.readouterr().out.splitlines() if line.startswith("|")]
    assert [line.startswith("| not counted, the kit's own: Teaching") for line in lines[-3:]] == [False, True, True]


def test_the_kits_own_that_is_wrong_is_told_and_fails(monkeypatch, capsys):
    own = Check("x", "half of 3", "Teaching case of the kit", "-", "invented", 1.5, 1.6, 0.01, "m")
    monkeypatch.setattr(evidence, "checks", lambda *names: iter([own]))
    assert cli.main(["evidence", "psychrometrics"]) == 1
    out = capsys.readouterr().out
    assert "0 published or worked values computed again; none outside the allowed difference." in out
    assert "1 of the kit's own, invented for teaching; 1 outside the allowed difference." in out


def test_only_the_typed_command_is_loaded():
    ask = (
        "import sys; from dryward import cli; cli.main(['evidence', 'units', '--json']);"
        "print('dryward.cli.bench' in sys.modules, 'jupyterlab' in sys.modules, file=sys.stderr)"
    )
    done = subprocess.run([sys.executable, "-c", ask], capture_output=True, text=True)
    assert done.stderr.strip() == "False False"


def test_nobody_reading_on_is_no_error():
    done = subprocess.run(
        f"{sys.executable} -m dryward evidence units | head -1", shell=True, capture_output=True, text=True
    )
    assert "Traceback" not in done.stderr


def test_a_fault_of_the_kit_is_one_sentence_too(monkeypatch, capsys):
    def broken(args):
        raise RuntimeError("a table\nis missing")

    monkeypatch.delenv(cli.TRACEBACK, raising=False)
    monkeypatch.setattr("dryward.cli.evidence.run", broken)
    assert cli.main(["evidence"]) == 3
    told = capsys.readouterr().err
    assert told.startswith("dryward: the kit itself failed (RuntimeError: a table is missing); please report it.")
    assert told.count("\n") == 1
    monkeypatch.setenv(cli.TRACEBACK, "1")
    with pytest.raises(RuntimeError, match="a table"):
        cli.main(["evidence"])


def test_an_interrupt_stops_it(monkeypatch, capsys):
    def stopped(args):
        raise KeyboardInterrupt

    monkeypatch.setattr("dryward.cli.evidence.run", stopped)
    assert cli.main(["evidence"]) == 130
    assert capsys.readouterr().err == "dryward: stopped.\n"


def test_without_a_command_the_lessons_open(monkeypatch):
    given = []
    monkeypatch.setattr("dryward.cli.lessons.run", given.append)
    assert cli.main([]) == 0
    assert cli.main(["--no-browser"]) == 0
    assert [args.no_browser for args in given] == [False, True]


def test_without_the_pages_libraries_it_says_how_to_add_them(monkeypatch, capsys):
    # Whatever other tests have loaded of it counts as missing too: else the pages would be served here for good.
    for name in ["voila", *(name for name in sys.modules if name.startswith("voila."))]:
        monkeypatch.setitem(sys.modules, name, None)
    for name in [name for name in sys.modules if name.startswith("dryward.school")]:
        monkeypatch.delitem(sys.modules, name)
    assert cli.main(["pages", "--no-browser"]) == 2
    told = capsys.readouterr().err
    assert told.startswith("dryward: The pages need voila")
    assert told.count("\n") == 1
    assert "[pages]" in told


@pytest.mark.parametrize(
    ("origin", "words"),
    [
        (None, "`pip install 'dryward[pages]'`"),
        ('{"url": "file:///opt/kit.whl", "archive_info": {}}', "`pip install 'dryward[pages]'`"),
        ('{"url": "file:///opt/my%20kit", "dir_info": {"editable": true}}', "'.[pages]'`, typed in /opt/my kit with"),
    ],
)
def test_how_to_add_them_follows_how_the_kit_was_installed(origin, words, monkeypatch):
    class Installed:
        def read_text(self, name):
            return origin

    monkeypatch.setattr("importlib.metadata.distribution", lambda name: Installed())
    monkeypatch.setattr("os.name", "posix")
    assert words in pages.how_to_add()
