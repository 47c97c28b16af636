"""Every command in a made-up language: what it prints, line by line, and what it refuses."""

import errno
import json
import os
import re
import sys
from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest

import dryward
import made_up
from dryward import building, cli, evidence, panels, weather
from dryward.building import codes
from dryward.building.job import DESIGNS
from dryward.cli import bench, check, lessons
from dryward.evidence import Check
from dryward.panels.learner import Settings
from dryward.physics import hourly
from dryward.school import folders
from dryward.teaching import lessons as taught
from dryward.teaching.progress import Progress

#: The product, its files, and the places and presets that are typed as they are named.
NAMES = ("dryward", ".pdf", ".html", ".toml", *weather.demos(), *building.presets())


@pytest.fixture(scope="module", autouse=True)
def spoken():
    """The made-up language."""
    with made_up.spoken():
        yield


@pytest.fixture(autouse=True)
def elsewhere(tmp_path, monkeypatch):
    """A folder of its own, and no terminal."""
    monkeypatch.chdir(tmp_path)
    return tmp_path


def told(capsys):
    """What was printed, both streams."""
    out, err = capsys.readouterr()
    return out + err


def foreign(text, *allowed):
    """The first lines with words or numbers that are not in the language; a text may go over several lines."""
    allowed = tuple(dict.fromkeys((*NAMES, *allowed)))
    lines = [line for line in made_up.bare(text).splitlines() if made_up.unmarked(line, allowed)]
    return [*lines, *made_up.points(text, allowed)][:4]


@pytest.mark.parametrize("command", ["", *cli.COMMANDS])
def test_the_help_of_a_command(command, capsys):
    with pytest.raises(SystemExit):
        cli.main([*([command] if command else []), "--help"])
    text = capsys.readouterr().out
    # Options are typed as they are, and stand in capitals for their own values.
    options = {option.upper().replace("-", "_") for option in re.findall(r"--([a-z0-9-]+)", text)}
    text = re.sub(r"-\n\s+", "-", text)  # a name may be broken at its hyphen
    for name in NAMES:
        text = text.replace(name, " ")
    text = re.sub(r"--?[a-z][a-z0-9-]*|\{[a-z0-9,\s-]*\}", "", text)
    typed = (*evidence.topics(), *bench.GROUPS, "lessons/guide/api.md", "ACH")
    assert foreign(text, *cli.COMMANDS, *options, *typed) == []


# --- check and report ---------------------------------------------------------------

#: What the rows of the codes and of the library cite, in the words of the documents.
CODES = {
    *(each for name in ("LIMITS", "RETARDERS", "CLASS_2") for row in codes.table(getattr(codes, name))
      for each in (row["section"], row["how_read"], row["source"], row["edition"])),
    *(building.library.source_of(each) for things in building.library.by_category().values() for each in things),
    "IRC", "IECC", "ASHRAE", "DIN", "ISO", "II", "III",
} - {"", "-"}  # fmt: skip

CHECKED = (
    ["vented-vault", "--steady", "--quick"],
    ["vented-vault", "--steady", "--quick", "--units", "si", "--place", "very-cold", "--zone", "7"],
    [
        "vented-vault-closed",
        "--steady",
        "--quick",
        "--humidity",
        "60",
        "--room-temperature",
        "75F",
        "--edition",
        "2015",
    ],
    ["vented-vault", "wood-frame-wall", "--steady", "--quick"],
)


@pytest.mark.parametrize("typed", CHECKED, ids=" ".join)
def test_what_is_checked_is_told(typed, capsys):
    assert cli.main(["check", *typed]) in (0, 1)
    assert foreign(told(capsys), *CODES) == []


def test_what_only_hours_tell(capsys):
    """The lines of the design years and of the rooms' limit; `tests/report` has all that hours say."""
    cli.main(["check", "vented-vault", "--steady", "--quick", "--json"])
    result = json.loads(capsys.readouterr().out)
    for leak in (None, result["state"]):
        for limit in (0.415, None):
            more = {"with_assumed_leak": leak, "room_humidity_limit": {"humidity": limit}}
            check._print({**result, **more, "designs": dict.fromkeys(DESIGNS, "damp")}, "us", brief=False)
    assert foreign(told(capsys), *CODES) == []


def test_files_of_which_some_cannot_be_read(capsys, elsewhere):
    (elsewhere / "one").mkdir()
    (elsewhere / "one" / "good.toml").write_text(saved("vented-vault"), "utf-8")
    (elsewhere / "one" / "bad.toml").write_text("roof = 1\n", "utf-8")
    assert cli.main(["check", "one", "--steady", "--quick"]) == cli.REFUSED
    assert foreign(told(capsys), "one", "good.toml", "bad.toml", "format", "dryward assembly", *CODES) == []


def saved(id):
    """A preset as the text of a file."""
    path = Path(f"{id}.toml")
    building.save(building.preset(id), path)
    return path.read_text("utf-8")


def test_how_far_a_check_is(capsys, monkeypatch):
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True)
    check._progress()(1, 3, {})
    check._parts(1)(40, 100)
    text = told(capsys)
    assert made_up.OPEN in text
    assert foreign(text) == []


def test_a_check_for_a_program_is_json(capsys):
    """The names are the program's; the sentences in it are the reader's."""
    cli.main(["check", "vented-vault", "--steady", "--quick", "--json"])
    found = json.loads(capsys.readouterr().out)
    assert foreign("\n".join([found["headline"], found["small"], *found["notes"]])) == []


def test_a_report_is_written(capsys):
    typed = ["report", "vented-vault", "-o", "roof.html", "--steady", "--quick"]
    assert cli.main(typed) == 0
    assert foreign(told(capsys), "roof.html") == []
    assert cli.main(typed) == cli.REFUSED
    assert foreign(told(capsys), "roof.html", "--overwrite") == []


# --- evidence, api, bench, board ------------------------------------------------------


def documents(topic):
    """What the rows of a topic say in the words of their sources; numbers there are as the source prints them."""
    for each in evidence.checks(topic):
        yield from (each.what[:90], each.source, each.where, each.how_read, each.unit, str(each.got))
        yield str(each.expected) if isinstance(each.expected, str) else ""


def test_the_table_of_what_was_computed_again(capsys):
    assert cli.main(["evidence", "materials"]) == 0
    assert foreign(told(capsys), "MATERIALS", *filter(None, documents("materials"))) == []


@pytest.mark.parametrize("reading", ["read in a book", "invented"])
def test_a_value_that_fails(reading, monkeypatch, capsys):
    wrong = Check("x", "half", "arithmetic", "there", reading, 1.5, 1.6, 0.01, "m")
    monkeypatch.setattr(evidence, "checks", lambda *names: iter([wrong]))
    for typed in ([], ["--failed"], ["--summary"]):
        assert cli.main(["evidence", "units", *typed]) == 1
        assert foreign(told(capsys), "UNITS", "half", "arithmetic", "there", reading) == []


@pytest.mark.parametrize("command", ["evidence", "bench"])
def test_a_table_for_the_front_page(command, monkeypatch, capsys, elsewhere):
    topic = {"evidence": "proof", "bench": "speed"}[command]
    begin, end = cli.front_page.marks(topic)
    Path("README.md").write_text(f"{begin}\n{end}\n", "utf-8")
    wrong = Check("x", "half", "arithmetic", "there", "invented", 1.5, 1.6, 0.01, "m")
    monkeypatch.setattr(evidence, "checks", lambda *names: iter([wrong]))
    monkeypatch.setattr(bench, "GROUPS", {"one": lambda: iter([bench.Measurement(made_up.longer("work"), 1.5, "ms")])})
    cli.main([command, "--readme"])
    named = ("README.md", "half", "arithmetic", "there", "invented", "ms", "Linux", "Darwin", "Windows")
    python = ".".join(map(str, sys.version_info[:3]))
    topics = {each for topic in evidence.topics() for each in (topic, topic.replace("_", " "), topic.upper())}
    written = Path("README.md").read_text("utf-8").removeprefix(begin).strip().removesuffix(end)
    assert foreign(told(capsys) + written, *named, python, *topics) == []


def test_what_can_be_typed_in_python(capsys, elsewhere):
    """Names and docstrings are Python's, in English; the chapters and what is refused are the reader's."""
    assert cli.main(["api"]) == 0
    heads = [line for line in capsys.readouterr().out.splitlines() if line and not line.startswith((" ", "import "))]
    assert len(heads) > 10
    assert foreign("\n".join(heads)) == []
    (elsewhere / "lessons" / "guide").mkdir(parents=True)
    assert cli.main(["api", "--write"]) == 0
    assert foreign(told(capsys), "lessons/guide/api.md") == []
    assert cli.main(["api", "proflie"]) == cli.REFUSED
    assert foreign(told(capsys), "proflie", "profile", "Profile", "steady.profile") == []


@pytest.mark.parametrize("name", ["proflie", "zzzz"])
def test_a_name_that_is_not_there_in_python(name):
    with pytest.raises(AttributeError) as trouble:
        getattr(dryward, name)
    assert foreign(str(trouble.value), name, "profile") == []


def test_every_measurement(monkeypatch, capsys):
    """What is measured is named in the language: the clock stands still, so nothing takes long."""
    monkeypatch.setattr(bench, "medians", lambda *works, **keys: [1.5 * n for n in range(1, len(works) + 1)])
    monkeypatch.setattr(bench, "in_a_new_process", lambda *code, **keys: 1.5)
    monkeypatch.setattr(hourly, "simulate", lambda *case, **options: SimpleNamespace(depth=np.zeros(66)))
    monkeypatch.setattr(bench, "_beside_scipy", lambda: (1.5, 1.5, 0.011, 0.0098))
    assert cli.main(["bench"]) == 1
    assert foreign(told(capsys), "ns", "ms", "MB", *PEERS) == []


#: Libraries that the kit is timed beside, by their own names, and a library's method.
PEERS = ("CoolProp", "PsychroLib", "NumPy", "Numba", "SciPy", "Matplotlib")


def test_the_board_that_is_printed(capsys, elsewhere):
    settings = Settings(Progress(elsewhere / "class" / "one"))
    page = panels.page("where-it-gets-wet", "us", settings)
    page.hear({"kind": "predict", "choice": 0})
    page.hear({"kind": "answer", "number": 0, "choice": 0})
    for folder in ("class", "nobody"):
        (elsewhere / folder).mkdir(exist_ok=True)
        assert cli.main(["board", "--folder", folder]) == 0
        assert foreign(told(capsys), "one", folder) == []


# --- lessons and pages ----------------------------------------------------------------


def test_lessons_are_opened(monkeypatch, capsys, elsewhere):
    def serve(folder, lesson, port, browser):
        lessons._say("http://127.0.0.1:1/")

    monkeypatch.setattr(lessons, "serve", serve)
    shipped = elsewhere / "shipped"
    shipped.mkdir()
    monkeypatch.setattr(folders, "shipped_lessons", lambda: shipped)
    (shipped / "00-start.ipynb").write_text("{}", "utf-8")
    for text in ("{}", "newer", "newest"):
        (shipped / "00-start.ipynb").write_text(text, "utf-8")
        assert cli.main(["lessons", "--folder", "mine"]) == 0
        (elsewhere / "mine" / "00-start.ipynb").write_text("changed", "utf-8")
    files = [each.name for each in (elsewhere / "mine").iterdir()]
    assert len(files) > 2  # the newer one lies beside the one that was changed
    text = re.sub(r"http\S+", "", told(capsys))
    assert made_up.OPEN in text
    assert foreign(text, str(elsewhere / "mine"), *files) == []


def test_lessons_of_ones_own(monkeypatch, capsys, elsewhere):
    monkeypatch.setattr(taught, "remember_own", lambda folder: None)
    monkeypatch.setattr(lessons, "serve", lambda *asked, **how: None)
    assert cli.main(["lessons", "--own", "own", "--folder", "mine"]) == 0
    assert cli.main(["lessons", "--own", "-"]) == 0
    assert foreign(told(capsys), str(elsewhere / "own"), str(elsewhere / "mine")) == []


def test_what_follows_from_the_folders(monkeypatch, capsys):
    monkeypatch.setattr(lessons, "_lessons_folder", lambda: Path("lessons"))
    monkeypatch.setattr(lessons.notebooks, "table", lambda: "| one |")
    for stale in ([], ["00-start.ipynb"]):
        Path("README.md").write_text("\n".join([*cli.front_page.marks("lessons"), "| one |"]), "utf-8")
        changes = lessons.notebooks.Changes(tuple(stale), tuple(stale))
        monkeypatch.setattr(lessons.notebooks, "stale", lambda folder, found=stale: found)
        monkeypatch.setattr(lessons.notebooks, "write", lambda folder, found=changes: found)
        cli.main(["lessons", "--check"])
        cli.main(["lessons", "--write"])
        assert foreign(told(capsys), "lessons/00-start.ipynb", "README.md") == []


@pytest.mark.parametrize("typed", [[], ["--share", "--address", "127.0.0.1"], ["--mine"]], ids=" ".join)
def test_pages_are_served(typed, monkeypatch, capsys, elsewhere):
    pytest.importorskip("voila")
    from dryward.school import server

    monkeypatch.setattr(server, "serve", lambda settings, people, secrets, address, certificate, say: say())
    assert cli.main(["pages", "--no-browser", "--folder", "class", *typed]) == 0
    text = re.sub(r"http\S+", "", told(capsys))
    password = re.findall(rf"(?m)^ *{made_up.OPEN}password +[^{made_up.CLOSE}]*{made_up.CLOSE}(\S+)", text)
    assert foreign(text, str(elsewhere / "class"), *password) == []


# --- what is refused ------------------------------------------------------------------

REFUSED = (
    ["frobnicate"], ["chek"], ["--lessn", "3"],
    ["check"], ["check", "none.toml"], ["check", "vented-vualt"], ["check", "zzz"], ["check", ""], ["check", "."],
    ["check", "vented-vault", "--place", "cloud"], ["check", "vented-vault", "--humidity", "300"],
    ["check", "vented-vault", "--humidity", "wet"], ["check", "vented-vault", "--room-temperature", "9999 F"],
    ["check", "vented-vault", "--zone", "12"], ["check", "vented-vault", "--epw", "x.epw"],
    ["check", "vented-vault", "--years"], ["check", "vented-vault", "--years", "0"],
    ["check", "vented-vault", "--years", "soon"], ["check", "vented-vault", "--units", "metric"],
    ["check", "vented-vault", "--edition", "1999"], ["check", "vented-vault", "--steady", "--spread"],
    ["check", "vented-vault", "--place", "cold", "--epw", "x.epw"], ["check", "vented-vault", "--workers", "0"],
    ["report", "vented-vault"], ["report", "vented-vault", "-o", "roof.doc"], ["report", "vented-vault", "-o", "roof"],
    ["report", "vented-vault", "-o", "there/roof.pdf"], ["report", "none.toml", "-o", "roof.pdf"],
    ["evidence", "unitz"], ["evidence", "units", "--readme"], ["evidence", "--readme"], ["evidence", "--frobnicate"],
    ["api", "--write"], ["bench", "steedy"], ["bench", "zz"], ["bench", "steady", "--readme"],
    ["lessons", "--port", "abc"], ["lessons", "--port", "0"], ["lessons", "--lesson", "99"],
    ["lessons", "--lesson", "jully.ipynb"], ["lessons", "--check"], ["lessons", "--new", "A b"],
    ["pages", "--port", "0"], ["pages", "--away", "long"], ["pages", "--away", "0"], ["pages", "--ready", "0"],
    ["pages", "--most", "0"], ["pages", "--certificate", "x"],
    ["pages", "--certificate", "x", "--certificate-key", "y"], ["pages", "--address", "frog"],
    ["pages", "--address", "8.8.8.8"], ["pages", "--mine", "--share"],
)  # fmt: skip


@pytest.mark.parametrize("typed", REFUSED, ids=" ".join)
def test_a_mistake_is_told(typed, capsys, monkeypatch):
    if "--readme" in typed:  # refused when all has been computed
        monkeypatch.setattr(evidence, "checks", lambda *names: iter([]))
    assert cli.main(typed) == cli.REFUSED
    text = told(capsys)
    assert text.count("\n") == 1
    assert foreign(text, *known(typed)) == []


def known(typed):
    """What a refusal may name: what was typed, and what could be typed in its place."""
    yield from typed
    yield from (part for each in typed for part in (*Path(each).parts, Path(each).suffix) if part)
    yield os.strerror(errno.ENOENT).lower()
    command = typed[0] if typed[0] in cli.COMMANDS else "lessons"
    for action in cli.parser(command)._subparsers._group_actions[0].choices[command]._actions:
        yield from (*action.option_strings, *map(str, action.choices or ()))
    yield from (*cli.COMMANDS, *evidence.topics(), *bench.GROUPS, *(each.file for each in taught.lessons()))
    yield from (str(Path("lessons", "guide")), "README.md", "proof", "-o", "0.05", "127.0.0.1", "192.168.1.20")


def test_a_fault_of_the_kit_and_a_stop(monkeypatch, capsys):
    for trouble in (RuntimeError("boom"), KeyboardInterrupt()):

        def broken(args, trouble=trouble):
            raise trouble

        monkeypatch.setattr(cli.board, "run", broken)
        cli.main(["board"])
        assert foreign(told(capsys), "RuntimeError", "boom", cli.TRACEBACK) == []


def test_every_message_of_argparse_is_known():
    """What argparse would say in English is put into the language: each kind of mistake that the commands can meet."""
    parser = cli._Parser(prog="dryward")
    parser.add_argument("--count", type=int)
    parser.add_argument("--size", type=float)
    parser.add_argument("--unit", choices=("us", "si"))
    parser.add_argument("name")
    either = parser.add_mutually_exclusive_group()
    either.add_argument("--a", action="store_true")
    either.add_argument("--b", action="store_true")
    for typed in (
        ["--count", "x", "n"], ["--size", "x", "n"], ["--unit", "x", "n"], [], ["n", "--zz"], ["n", "--coumt", "1"],
        ["n", "--count"], ["n", "--a", "--b"], ["n", "--a=1"], ["n", "--=1"],
    ):  # fmt: skip
        with pytest.raises(cli._Stop) as trouble:
            parser.parse_args(typed)
        options = ("--help", "--count", "--size", "--unit", "us", "si", "name", "--a", "--b")
        assert foreign(str(trouble.value), *typed, *options) == []


def test_seats_of_a_class(capsys, elsewhere):
    hub = pytest.importorskip("dryward.school.hub", exc_type=ImportError)
    assert hub.main(["2", "class"]) == 0
    given = dict(line.split() for line in made_up._MARKED.sub(" ", capsys.readouterr().out).splitlines())
    assert sorted(given) == ["seat-01", "seat-02"]
    for typed in (["2", "class"], ["900", "other"], ["two", "class"], []):
        assert hub.main(typed) == 2
        assert foreign(told(capsys), "register.json", "class") == []
