"""The way in: the first water in a few beats, and the index, which anybody may go to at once."""

import re

import pytest
from lesson_page import first_visit, open_page, to_beat

from dryward import air, units
from dryward.course.start import first_water
from dryward.panels.learner import Settings
from dryward.physics import steady
from dryward.teaching import lessons, pathways, vault
from dryward.teaching.progress import Progress
from dryward.units import to_si
from dryward.weather import Air, demo_climate


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


def test_the_index_is_open_to_anybody_at_once(tmp_path):
    page = first_visit("start", tmp_path)
    assert page.widget.frame["stage"]["may_leave"]
    page.hear({"kind": "beat", "number": len(page.stage.beats)})
    frame = page.widget.frame
    assert not frame["locked"]
    assert (frame["controls"], frame["pictures"], frame["readouts"], page.trouble) == ([], [], [], "")
    assert page.widget.live["given"] == ""
    assert not first_visit("start", tmp_path).stage.on, "who comes back is there"
    assert not open_page("start", tmp_path / "guessed").stage.on, "and who bet before there were beats"


def leaks(push, indoor, cold):
    """What the leaks leave at the deck [kg/(s m2)], worked by hand: a tenth of the air above saturation there."""
    flow = 0.2 * 3.0 * to_si(20_000.0, "ft3") / 3600 / 50**0.65 * push**0.65
    dry = (101_325 - indoor.vapor_pressure) / (287.055 * (indoor.temperature + 273.15))
    over = air.humidity_ratio(indoor.vapor_pressure) - air.humidity_ratio(air.saturation_vapor_pressure(cold))
    return 0.1 * flow * dry * max(float(over), 0.0) / to_si(600.0, "ft2")


def by_hand(inner, times, push, humidity, place="cold"):
    """Water of the OSB roof on a January day."""
    town = demo_climate(place)
    outdoor = Air(float(town.temperature[0]), float(town.relative_humidity[0]))
    indoor = Air(to_si(70.0, "degF"), humidity)
    found = steady.profile(vault.roof(inner, "OSB"), indoor, outdoor)
    cold = found.temperature[found.face("outer layer", 0)]
    return float(found.gain) + times * leaks(push, indoor, cold)


def test_the_first_bet_is_what_leaves_least_and_its_replies_have_the_numbers(tmp_path):
    page = first_visit("start", tmp_path)
    page.hear({"kind": "bet", "choice": 0})
    water = {
        "bare": by_hand(None, 1.0, 4.0, 0.4),
        "vents": by_hand(None, 1.0, 6.0, 0.4),
        "plastic": by_hand(0.06, 1.0, 4.0, 0.4),
        "sealed": by_hand("variable", 0.0, 4.0, 0.3),
    }
    assert [each.water for each in page.stage.states] == pytest.approx([water["bare"], water["sealed"]], rel=0.01)
    (bet,) = page.widget.frame["stage"]["bets"]
    assert bet["right"] == 3
    # A house that breathes: the same water in twice the air.
    breathes = first_water.in_january("breathes", "cold", 0.4)
    yard, room = (air.humidity_ratio(each.vapor_pressure) for each in (breathes.outdoor, page.stage.states[0].indoor))
    half = air.humidity_ratio(breathes.indoor.vapor_pressure)
    assert float(half - yard) == pytest.approx(float(room - yard) / 2)
    drier = by_hand(None, 2.0, 4.0, breathes.indoor.relative_humidity)
    assert breathes.water == pytest.approx(drier, rel=0.01)
    told = {"a": water["vents"], "b": water["plastic"], "c": breathes.water, "d": water["sealed"]}
    for system in ("us", "si"):
        for choice in lessons.lesson("start", system).prediction.choices:
            for flux in (told[choice.key], water["bare"]):
                if choice.key != "c" or flux != water["bare"]:
                    number = units.show(flux, "vapor flux", system).split()[0]
                    assert re.search(rf"\b{re.escape(number[:3])}", choice.reply), (number, choice.reply)
    assert f"{100 * breathes.indoor.relative_humidity:.0f} %" in lessons.lesson("start").prediction.choice("c").reply


def move(page, name, value):
    page.widget.moves = {"serial": 1, "system": page.unit_system, "values": {name: value}}
    assert page.trouble == ""
    return page.widget.live["stage"]


@pytest.mark.parametrize("system", ["us", "si"])
def test_one_gesture_dries_the_roof_and_the_room_makes_the_water_run(system, tmp_path):
    page = first_visit("start", tmp_path, system)
    to_beat(page, 1)
    done = {each: move(page, "Done", each)["done"] for each in page.controls["Done"].options}
    assert [each for each, reached in done.items() if reached] == ["sealed"]
    page.hear({"kind": "beat", "number": 2})
    assert page.stage.states[0].water == pytest.approx(by_hand("variable", 0.0, 4.0, 0.6))
    kinds = [mark["kind"] for mark in page.widget.live["stage"]["scenes"][0]["marks"]]
    assert "frost" in kinds
    live = move(page, "RH_in", 20)
    assert live["done"]
    assert live["scenes"][0]["marks"] == []
    page.hear({"kind": "beat", "number": 3})
    for place in page.controls["Place"].options:
        live = move(page, "Place", place)
        assert live["done"]
        assert ("no water" in live["told"]) == (by_hand(None, 1.0, 4.0, 0.4, place) <= to_si(0.1, "g/m2/day"))


def test_what_one_wants_to_know_leads_to_a_lesson(tmp_path):
    page = open_page("start", tmp_path)
    links = [each for key, each in parts_of(page, "wants").items() if key and key.startswith("want:")]
    assert len(links) >= 5
    assert all(lessons.lesson(each["id"]).file == each["file"] for each in links)


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
    screen.wait_for_selector(".dw-on-stage", timeout=90_000)
    screen.click("[data-key=leave]")
    screen.wait_for_selector(".dw-desk-table", timeout=90_000)
    assert screen.locator(".dw-sentence").is_visible()
    screen.select_option("[data-key=type_size]", "20")
    screen.wait_for_function("parseFloat(getComputedStyle(document.querySelector('.dw-page')).fontSize) > 17")
    screen.select_option("[data-key=type_size]", "16")
    assert screen.locator("[data-key='want:summer']").is_visible()
    assert screen.locator(".dw-desk-table .dw-lesson-link").count() == len(lessons.pages())
    screen.click("[data-key='open:which-way-vapor-goes']")
    screen.wait_for_selector(".dw-on-stage, .dw-prediction", timeout=90_000)
    assert "03-which-way" in screen.url
    assert screen.errors == []
    assert screen.strangers == []
