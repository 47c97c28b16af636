"""The index: the way through, what is done and due, settings; nothing on it waits for a prediction."""

import pytest
from lesson_page import open_page

from dryward.panels.learner import Settings
from dryward.teaching import lessons, pathways
from dryward.teaching.progress import Progress


def section(page, key):
    return next(each for each in page.widget.desk["sections"] if each["key"] == key)


def plan(page):
    """Rows of the plan: link, minutes, how it stands; the meeting before them, where there are meetings, left out."""
    table = next(each for each in section(page, "plan")["parts"] if each["kind"] == "table")
    return [row["cells"][-3:] for row in table["rows"]]


def parts_of(page, key):
    """All parts of a section by their keys, those in rows too."""
    found = {}
    for part in section(page, key)["parts"]:
        for each in part.get("parts", (part,)):
            found[each.get("key")] = each
    return found


def test_it_is_open_before_any_prediction(tmp_path):
    page = open_page("start", tmp_path)
    frame = page.widget.frame
    assert not frame["locked"]
    assert (frame["controls"], frame["pictures"], frame["readouts"], page.trouble) == ([], [], [], "")
    page.hear({"kind": "predict", "choice": 0})
    page.hear({"kind": "reveal"})
    assert page.widget.frame["reveal"]


@pytest.mark.parametrize("way", pathways.pathways(), ids=lambda way: way.id)
def test_each_pathway_lists_its_lessons(way, tmp_path):
    page = open_page("start", tmp_path)
    page.act("pathway", way.id)
    links = [row[0] for row in plan(page) if row[0]]
    assert [link["id"] for link in links] == [id for session in way.sessions for id in session.lessons]
    for link in links:
        this = lessons.lesson(link["id"])
        assert (link["file"], link["text"]) == (this.file, f"{this.number}. {this.title}")
    assert Progress(tmp_path).setting("pathway") == way.id


def test_it_follows_what_other_windows_did(tmp_path):
    page = open_page("start", tmp_path)
    assert parts_of(page, "plan")["resume"]["id"] == "read-the-air"
    other = open_page("which-way-vapor-goes", tmp_path)
    other.hear({"kind": "opened"})
    other.hear({"kind": "predict", "choice": 0})
    page.hear({"kind": "seen"})
    assert parts_of(page, "plan")["resume"]["id"] == "which-way-vapor-goes"
    assert "Which way vapor goes" in page.sentence
    row = next(row for row in plan(page) if row[0]["id"] == "which-way-vapor-goes")
    assert row[2] == "begun"
    for number, question in enumerate(other.questions.asked):
        right = [choice.right for choice in question.choices].index(True)
        other.hear({"kind": "answer", "number": number, "choice": right})
    page.hear({"kind": "seen"})
    row = next(row for row in plan(page) if row[0]["id"] == "which-way-vapor-goes")
    assert row[2] == "✓ done"
    assert page.sentence.startswith(f"1 of {len(lessons.pages())}")


def test_settings_are_kept_for_every_page(tmp_path):
    page = open_page("start", tmp_path)
    page.act("unit_system", "si")
    page.act("type_size", "20")
    page.act("projector", True)
    assert page.widget.frame["type_size"] == 20
    kept = Settings(Progress(tmp_path))
    assert (kept["unit_system"], kept["type_size"], kept["projector"]) == ("si", 20, True)
    other = open_page("read-the-air", tmp_path, kept["unit_system"])
    assert (other.widget.frame["type_size"], other.widget.frame["projector"]) == (20, True)
    assert other.live_pictures()[0].width > open_page("read-the-air", tmp_path / "new").live_pictures()[0].width


def test_ten_questions_place_a_learner(tmp_path):
    page = open_page("start", tmp_path)
    page.act("test")
    assert len(page.test) == 10
    for number, question in enumerate(page.test):
        page.act(f"answer:{number}", str([each.right for each in question.choices].index(True)))
    page.act("place")
    assert page.plan == pathways.placed([True] * 10)
    assert page.trouble == ""


def test_quiz_and_key_of_a_number(tmp_path):
    page = open_page("start", tmp_path)
    page.act("seed", "12")
    page.act("quiz")
    saved = parts_of(page, "paper")
    assert {"paper-quiz", "paper-key"} <= set(saved)
    assert saved["paper-quiz"]["name"] == "quiz-12.html"
    page.act("seed", "twelve")
    page.act("quiz")
    assert page.words == 'The number of the quiz is "twelve"; it must be a whole number, 0 to 999999999.'


@pytest.mark.browser
def test_its_links_open_lessons_and_nothing_is_covered(lab, screen):
    screen.goto(lab("00-start.ipynb"))
    screen.wait_for_selector(".dw-desk-table", timeout=90_000)
    assert screen.locator(".dw-sentence").is_visible()
    screen.select_option("[data-key=type_size]", "20")
    screen.wait_for_function("parseFloat(getComputedStyle(document.querySelector('.dw-page')).fontSize) > 17")
    screen.select_option("[data-key=type_size]", "16")
    assert screen.locator(".dw-desk-table .dw-lesson-link").count() == len(lessons.pages())
    screen.click("[data-key='open:which-way-vapor-goes']")
    screen.wait_for_selector(".dw-on-stage, .dw-prediction", timeout=90_000)
    assert "03-which-way" in screen.url
    assert screen.errors == []
    assert screen.strangers == []
