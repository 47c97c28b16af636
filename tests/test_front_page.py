"""The front page tells the truth: commands, lessons, version, and the pinned environment."""

import re
import subprocess
from importlib import metadata
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.version import Version

import dryward
from dryward import evidence
from dryward.checks import BadFile
from dryward.cli import COMMANDS, front_page
from dryward.evidence.table import OWN
from dryward.teaching import lessons

PROJECT = Path(__file__).parents[1]
README = (PROJECT / "README.md").read_text(encoding="utf-8")
PINS = {}
for line in (PROJECT / "binder" / "requirements.txt").read_text(encoding="utf-8").splitlines():
    if line and not line.startswith("#"):
        pin_name, pin_version = line.split("==")
        PINS[re.sub(r"[-_.]+", "-", pin_name).lower()] = pin_version


def test_exactly_two_commands_in_both_forms():
    assert len(re.findall(r"```sh\npython3 -m venv .*\n```", README)) == 2
    assert len(re.findall(r"```powershell\npy -m venv .*\n```", README)) == 2


def test_the_whole_proof_runs_the_front_pages_own_line():
    pattern = re.search(r"grep -m1 -E '(.*)' README.md", (PROJECT / ".ci" / "run").read_text(encoding="utf-8")).group(1)
    assert len(re.findall(pattern, README, re.MULTILINE)) == 1


def test_the_script_is_sound():
    assert subprocess.run(["bash", "-n", PROJECT / ".ci" / "run"]).returncode == 0


def test_every_lesson_is_in_the_table():
    for lesson in lessons.lessons():
        assert f"[{lesson.number:02d} {lesson.title}](lessons/{lesson.file})" in README, lesson.id
        assert (PROJECT / "lessons" / lesson.file).is_file(), lesson.file


@pytest.mark.parametrize("page", ["README.md", "DEVELOPERS.md"])
def test_every_link_leads_somewhere(page):
    for target in re.findall(r"\]\(([^)#:]+)\)", (PROJECT / page).read_text(encoding="utf-8")):
        assert (PROJECT / target).exists(), target


def test_every_command_is_named():
    for command in COMMANDS:
        assert f"`dryward {command}" in README or command == "lessons", command


def test_the_version_to_cite():
    assert f"version {dryward.__version__}" in README


@pytest.mark.parametrize("extra", ["", "pages", "cluster"])
def test_every_dependency_is_pinned_within_its_bounds(extra):
    for text in metadata.requires("dryward"):
        need = Requirement(text)
        if need.marker is None or need.marker.evaluate({"extra": extra}):
            name = re.sub(r"[-_.]+", "-", need.name).lower()
            assert name in PINS, f"{need.name} has no pin in binder/requirements.txt"
            assert Version(PINS[name]) in need.specifier


def test_a_table_goes_between_its_marks(tmp_path):
    page = tmp_path / "README.md"
    begin, end = front_page.marks("speed")
    page.write_text(f"before\n{begin}\nold\n{end}\nafter\n", encoding="utf-8")
    front_page.write("speed", "| new |", page)
    assert page.read_text(encoding="utf-8") == f"before\n{begin}\n\n| new |\n\n{end}\nafter\n"


@pytest.mark.parametrize("topic", ["speed", "proof"])
def test_the_front_page_has_both_marks(topic):
    assert all(README.count(mark) == 1 for mark in front_page.marks(topic))


def test_no_place_for_a_table(tmp_path):
    page = tmp_path / "README.md"
    with pytest.raises(BadFile, match=r"There is no .*README.md here; type the command in the folder of the checkout"):
        front_page.write("speed", "", page)
    page.write_text("nothing", encoding="utf-8")
    with pytest.raises(BadFile, match="has no place for the table"):
        front_page.write("speed", "", page)


def test_the_proof_on_the_front_page_is_of_today():
    total = apart = 0
    for topic in evidence.topics():
        own = sum(row.reading == OWN for row in evidence.read(topic))
        count = len(evidence.read(topic)) - own
        line = rf"^\| {topic.replace('_', ' ')} \| {count} \|.*\| {own} \|$"
        assert re.search(line, README, re.MULTILINE), "dryward evidence --readme"
        total, apart = total + count, apart + own
    assert re.search(rf"^\| all \| {total} \|.*\| {apart} \|$", README, re.MULTILINE)
