"""The instructor's pack: made pages are as made, written ones are whole."""

import re
from pathlib import Path

import pytest
from reading import notes

from dryward.building import preset
from dryward.checks import UnknownName
from dryward.physics import drying
from dryward.teaching import beliefs, guide, lessons, pathways, words
from dryward.teaching.kinds import rubric
from dryward.teaching.vault import air as some_air
from dryward.teaching.vault import face, gain, roof, verdict
from dryward.units import from_si

GUIDE = Path(__file__).parents[2] / "lessons" / "guide"


@pytest.mark.parametrize("name", guide.pages())
def test_a_made_page_is_as_it_was_made(name):
    """Make them anew with ``dryward lessons --write`` after a change of the teaching data."""
    assert (GUIDE / name).read_text("utf-8") == guide.pages()[name]


def test_no_sheet_is_left_over():
    assert {each.name for each in (GUIDE / "sheets").iterdir()} == {
        name.removeprefix("sheets/") for name in guide.pages() if name.startswith("sheets/")
    }


@pytest.mark.parametrize("id", lessons.pages())
def test_a_sheet_says_what_an_instructor_needs(id):
    text = guide.sheet(id)
    lesson = lessons.lesson(id)
    for part in (
        "Ask first",
        "The prediction",
        "What they will say",
        "If the vote splits",
        "Props",
        "Traps",
        "Cautions",
    ):
        assert f"## {part}" in text
    assert f"{lesson.minutes} minutes" in text
    if id != "your-roof":
        for each in map(beliefs.belief, lesson.beliefs):
            (said,) = [line for line in text.splitlines() if line.startswith(f'- "{each.claim}"')]
            assert said.endswith(f"*Bet on it:* step {each.step}.") == (each.lesson == id)
    assert "{" not in text
    assert "°F" not in guide.sheet(id, "si")


def test_the_states_in_the_notes_are_the_pages():
    """What an instructor is told to show: damp with no drop, the sheet that only July likes, the batt that passes."""
    mild = verdict(roof(1.0, "OSB"), (70, 40), (36, 80))
    assert mild.state == "damp"
    assert f"the OSB would settle at {mild.worst.value:.0f} %" in " ".join(notes("where-it-gets-wet").traps)
    traps = " ".join(notes("july").traps)
    for inner, state in ((50.0, "dry"), ("variable", "damp")):
        assert verdict(roof(inner), (75, 50), (85, 75)).state == state
        assert f"{{{gain(roof(inner, 'OSB'), (70, 40), (20, 80)):.2f} g/m2/day}}" in traps
    assert [verdict(roof("variable"), (room, 50), (85, 75)).state for room in (75, 76)] == ["damp", "dry"]
    assert verdict(roof("variable"), (70, 40), (20, 80)).state == "dry"
    said = " ".join(notes("inside-the-film").traps)
    assert "{13 R} in the cavity is dry on this page" in said
    batt = {outer: roof("variable", outer, 13.0) for outer in ("open membrane", "OSB")}
    for (rh, cold, outer), state in (
        ((50, 0, "open membrane"), "dry"),
        ((50, -10, "open membrane"), "wet"),
        ((60, 0, "open membrane"), "wet"),
        ((50, 0, "OSB"), "wet"),
    ):
        assert verdict(batt[outer], (70, rh), (cold, 80)).state == state


def test_the_numbers_of_two_notes_are_the_kits():
    winter = (70, 40), (20, 80)
    right, wrong = (gain(roof(inner, "OSB"), *winter) for inner in (1.0, 50.0))
    assert f"{{{right:.1f} g/m2/day}} to {{{wrong:.1f} g/m2/day}}" in " ".join(notes("open-out-tight-in").traps)
    foam = preset("unvented-vault-foam-above-deck")
    said = notes("vent-space").more
    assert f"{{{face(foam, *winter, 'deck')[0]:.0f} degF}}" in said
    dries = drying.rates(foam, "deck", some_air(70, 45), some_air(60, 60))
    for rate in (dries.inward, dries.outward):
        assert f"{{{from_si(rate, 'g/m2/day'):.1f} g/m2/day}}" in said


def test_every_link_leads_somewhere():
    for page in GUIDE.rglob("*.md"):
        for target in re.findall(r"\]\(([^)#]+)\)", page.read_text("utf-8")):
            assert (page.parent / target).exists(), (page.name, target)


def test_the_rubric_on_paper_has_the_six_points():
    text = (GUIDE / "rubric.md").read_text("utf-8")
    rows = [line.split("|")[1].strip() for line in text.splitlines() if line.startswith("|")][2:]
    assert tuple(rows) == rubric()


def test_the_handouts_fit_one_page():
    found = list((GUIDE / "handouts").glob("*.md"))
    assert len(found) == 6
    for each in found:
        assert len(each.read_text("utf-8").splitlines()) <= 45


def test_pathways_add_up():
    half, course, alone = pathways.pathways()
    assert half.minutes == 240
    assert [each.minutes for each in course.sessions] == [120] * 9
    assert alone.minutes == sum(each.minutes for each in lessons.lessons()[1:])
    covered = [id for each in course.sessions for id in each.lessons]
    assert sorted(covered) == sorted(each.id for each in lessons.lessons())
    for way in (half, course, alone):
        for each in way.sessions:
            assert all(lessons.lesson(id) for id in each.lessons)
            assert each.walked <= each.minutes, each.title
    with pytest.raises(UnknownName, match='There is no pathway "half-dya"; did you mean half-day'):
        pathways.pathway("half-dya")


def test_a_lesson_without_a_sheet_is_one_sentence():
    with pytest.raises(UnknownName, match='There is no lesson with notes "start"'):
        guide.sheet("start")


def test_the_words_to_avoid_are_avoided():
    """Words the glossary warns of appear in the pack only where they are named as such."""
    for page in [*(GUIDE / "sheets").iterdir(), *(GUIDE / "handouts").iterdir()]:
        text = page.read_text("utf-8").lower()
        for word in ("breathable", "one-way membrane", "dead air space", "breathing roof", "certified"):
            assert word not in text, (page.name, word)


def test_the_class_limits_on_the_handout_are_the_kits():
    from dryward.teaching.kinds import CLASSES

    text = (GUIDE / "handouts" / "perms-at-a-glance.md").read_text("utf-8")
    for _, limit in CLASSES:
        assert f"{limit:g} perm" in text
    assert "0.5 perm" in text
    assert words.glossary()
