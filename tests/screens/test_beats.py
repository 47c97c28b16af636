"""The beats of lessons that are played: what is sent and when, and how it looks at every size, by keyboard alone."""

import json
import re

import pytest
from bare import IN_SIGHT, LETTERS, LOOK, SIZES, Bare
from chromium import findings
from lesson_page import bet_all, first_visit, open_page, to_beat

import made_up
from dryward.panels.protocol import PageWidget
from dryward.panels.stage import LESSON
from dryward.teaching import lessons
from dryward.teaching.beliefs import belief
from turns import in_turn, turn

PLAYED = [id for id in (*lessons.pages(), "start") if lessons.module(id, "page").PAGE.play is not None]


def to_free_page(page):
    """Go on from a beat through all that are left."""
    while page.stage.on:
        bet_all(page)
        page.hear({"kind": "beat", "number": page.stage.at + 1})


def beats():
    """(lesson, number of a beat) of all."""
    return [(id, k) for id in PLAYED for k in range(len(lessons.module(id, "page").PAGE.play.beats))]


def sent(page):
    """What the browser holds, as a text."""
    widget = page.widget
    return json.dumps([widget.frame, widget.live, widget.stills, [len(each) for each in widget.grounds]])


@pytest.mark.parametrize("id", PLAYED)
def test_a_lesson_is_three_to_five_beats_with_the_free_page(id, tmp_path):
    page = first_visit(id, tmp_path)
    assert 3 <= len(page.stage.beats) + 1 <= 5
    assert page.stage.beats[0].bets[0].name == LESSON
    assert page.controls.keys() == open_page(id, tmp_path / "again").controls.keys()
    start = {name: control.value for name, control in page.controls.items()}
    assert start == {name: control.start for name, control in page.controls.items()}, "the first bet is the page's case"


def kinds_styled():
    """The kinds of lines and shapes that the style sheet of the stage knows."""
    return set(re.findall(r"\.sc-([a-z-]+)", PageWidget._css))


@pytest.mark.parametrize(("id", "number"), beats())
def test_a_beat_fits_its_page_and_its_scene(id, number, tmp_path):
    """What it names is there: controls, spots for all choices, beliefs, axes in every shape, a look for each line."""
    page = first_visit(id, tmp_path)
    beat = to_beat(page, number)
    shapes = ("wide", "tall") if len(beat.cases) == 1 else ("post", "strip")  # alone, or two of them
    stills = [[still[shape] for shape in shapes] for still in page.stage.stills()]
    assert 1 <= len(beat.cases) <= 2
    assert not beat.unlocks or beat.unlocks in page.controls
    for case in beat.cases:
        assert case.keys() <= page.controls.keys()
        for name, value in case.items():
            control = page.controls[name]
            before = control.value
            control.put_si(value)  # in its range
            control.put(before)
    for held in beat.beliefs:
        belief(held)
    for bet in beat.bets:
        assert len({spot.key for spot in bet.spots}) == len(bet.spots)
        if bet.name == LESSON:
            assert {spot.key for spot in bet.spots} == {each.key for each in page.prediction.asked.choices}
        for spot in bet.spots:
            assert spot.glyph in ("", "in", "out", "none")
            assert not spot.belief or belief(spot.belief)
            assert all(spot.at[0] in shape["axes"] for shape in stills[spot.scene])
    bet_all(page)
    styled = kinds_styled()
    for still, live in zip(page.stage.stills(), page.widget.live["stage"]["scenes"], strict=True):
        for shape in (still[each] for each in shapes):
            drawn = set(re.findall(r'class="sc-([a-z-]+)"', shape["svg"]))
            assert drawn <= styled, drawn - styled
            places = [place for part in ("marks", "flows") for each in live[part] for place in each["points"]]
            assert {place[0] for place in places} | {tag["at"][0] for tag in live["tags"]} <= shape["axes"].keys()


@pytest.mark.parametrize("id", PLAYED)
def test_no_title_over_a_scene_says_what_a_choice_says(id, tmp_path):
    """Over the scenes stands what is compared: a title in the words of one choice would give the answer away."""
    page = first_visit(id, tmp_path)
    for number in range(len(page.stage.beats)):
        to_beat(page, number)
        frame = page.widget.frame["stage"]
        for bet in frame["bets"]:
            if len({choice["scene"] for choice in bet["choices"]}) > 1:
                continue  # which of the scenes: a choice is named as its scene is
            own = [set(re.findall(r"[a-z]{3,}", choice["text"].lower())) for choice in bet["choices"]]
            for title in frame["titles"]:
                words = set(re.findall(r"[a-z]{3,}", title.lower()))
                # What all choices share tells nothing.
                told = [len(words & each - set.intersection(*own)) for each in own]
                assert max(told) < 3 or told.count(max(told)) > 1, title
        bet_all(page)


@pytest.mark.parametrize(("beat", "system"), in_turn(beats(), ("si", "us")))
def test_a_beat_tells_nothing_before_its_bets_and_all_after(beat, system, tmp_path):
    id, number = beat
    page = first_visit(id, tmp_path, system)
    beat = to_beat(page, number)
    frame = page.widget.frame["stage"]
    assert len(frame["say"].split()) <= 20, frame["say"]
    for before in range(len(beat.bets)):
        live, stage = page.widget.live, page.widget.frame["stage"]
        for empty in ("pictures", "alts", "readouts", "strips", "sentence", "state", "steps"):
            assert not live[empty], empty
        assert (live["stage"]["told"], live["stage"]["also"], live["stage"]["done"]) == ("", "", False)
        assert all(each["right"] is None and each["reply"] == "" for each in stage["bets"])
        # What is drawn is what the question says: gauges, say.
        asked = [page.stage.given(state).get("marks", []) for state in page.stage.states]
        assert [each["marks"] for each in live["stage"]["scenes"]] == asked
        assert not any(each["flows"] for each in live["stage"]["scenes"])
        held = sent(page)
        page.hear({"kind": "bet", "choice": before % len(beat.bets[before].spots)})
    shown = page.widget.live["stage"]
    if beat.bets:
        told = page.widget.frame["stage"]["bets"]
        assert all(each["right"] is not None and len(each["reply"]) > 15 for each in told)
        later = [tag["text"] for scene in shown["scenes"] for tag in scene["tags"]] + [each["reply"] for each in told]
        known = [tag["text"] for each in page.stage.states for tag in page.stage.given(each).get("tags", ())]
        for text in later:
            assert text in known or json.dumps(text)[1:-1] not in held, f"{text} was there before the bet"
    if beat.unlocks and beat.aim:
        assert page.widget.frame["stage"]["control"] == beat.unlocks
    else:
        assert shown["done"]
        assert shown["told"]


@pytest.mark.parametrize(("beat", "system"), in_turn(beats(), ("us", "si")))
def test_every_choice_has_its_own_reply(beat, system, tmp_path):
    id, number = beat
    replies, page = {}, first_visit(id, tmp_path, system)
    beat = to_beat(page, number)
    for k, bet in enumerate(beat.bets):
        for choice, spot in enumerate(bet.spots):
            page.stage.again()
            bet_all(page, [choice if each == k else 0 for each in range(len(beat.bets))])
            told = page.widget.frame["stage"]["bets"][k]
            assert told["chosen"] == choice
            assert (told["right"] == choice) == (bet.right(page.stage.states) == spot.key)
            if told["right"] != choice:
                assert told["reply"] not in replies, (replies.get(told["reply"]), spot.key)
                replies[told["reply"]] = spot.key


@pytest.mark.parametrize(("id", "number"), beats())
def test_what_a_beat_unlocks_goes_to_both_ends_and_reaches_its_aim(id, number, tmp_path):
    page = first_visit(id, tmp_path)
    beat = to_beat(page, number)
    bet_all(page)
    if not beat.unlocks:
        return
    control, reached = page.controls[beat.unlocks], False
    steps = 6 if page.slow else 20  # each a run of some years
    for value in [*(control.options or [control.at(k / steps) for k in range(steps + 1)])]:
        page.widget.moves = {"serial": 1, "system": "us", "values": {beat.unlocks: value}}
        assert page.trouble == "", value
        assert page.stage.on
        live = page.widget.live["stage"]
        reached = reached or live["done"]
        # The answer once the aim is reached; before, nothing but what the beat says is so until then.
        yet = f"beat-{beat.id}-yet" in page.play.texts
        assert live["done"] or bool(live["told"]) == yet
        assert not live["done"] or live["told"].startswith(page.stage._text("answer")[:20])
    assert reached, "the aim can be reached"


def test_a_pair_breaks_what_its_holder_would_bet(tmp_path):
    """Two cases that look alike to who holds a belief: the same choice for both is not right twice."""
    pairs = 0
    for id, number in beats():
        page = first_visit(id, tmp_path / f"{id}-{number}")
        beat = to_beat(page, number)
        if len(beat.bets) < 2:
            continue
        right = [bet.right(page.stage.states) for bet in beat.bets]
        held = {spot.key for bet in beat.bets for spot in bet.spots if spot.belief in beat.beliefs}
        assert held, (id, beat.id)
        for key in held:
            assert any(key != each for each in right), (id, beat.id, key)
        pairs += 1
    assert pairs >= len(PLAYED)


def test_an_instructor_steps_and_shows_without_a_bet(tmp_path):
    page = first_visit(PLAYED[0], tmp_path)
    page.hear({"kind": "instructor", "value": True})
    assert page.widget.live["stage"]["told"] == ""
    for by in (1, 1, -1):
        page.hear({"kind": "hands", "choice": 1, "by": by})
    assert page.widget.frame["stage"]["bets"][0]["hands"][:2] == [0, 1]
    page.hear({"kind": "reveal"})
    assert page.widget.live["stage"]["told"]
    assert page.widget.frame["stage"]["bets"][0]["hands"][:2] == [0, 1], "beside what is so"
    told = page.widget.frame["stage"]["bets"][0]
    assert all(bool(reply) == (k in (1, told["right"])) for k, reply in enumerate(told["replies"]))
    page.hear({"kind": "reveal"})
    assert page.widget.live["stage"]["told"], "shown stays shown"
    pair = next(k for k, beat in enumerate(page.stage.beats) if len(beat.bets) == 2)
    page.hear({"kind": "beat", "number": pair})
    page.hear({"kind": "reveal"})
    assert page.widget.live["stage"]["told"] == "", "the second bet comes first"
    page.hear({"kind": "hands", "choice": 0, "by": 1})
    page.hear({"kind": "reveal"})
    assert page.widget.live["stage"]["told"]
    assert [sum(bet["hands"]) for bet in page.widget.frame["stage"]["bets"]] == [0, 1]
    for number in range(len(page.stage.beats) + 1):
        page.hear({"kind": "beat", "number": number})
        assert page.trouble == ""
    assert page.widget.live["pictures"]
    page.hear({"kind": "beat", "number": 99})
    assert page.trouble


@pytest.mark.browser
def test_the_keys_of_an_instructor_work_wherever_the_focus_is(bare, tmp_path):
    page = first_visit("where-it-gets-wet", tmp_path)
    for kind in ("instructor", "projector"):
        page.hear({"kind": kind, "value": True})
    bare.show(page)
    bare.window.click("header.top")
    for number, beat in enumerate(page.stage.beats):
        assert bare.window.locator(".dw-keys").inner_text()
        for bet in beat.bets:
            assert (page.stage.at, page.stage.shown) == (number, False)
            for choice in range(len(bet.spots)):  # each with its reply
                page.hear({"kind": "hands", "choice": choice, "by": 1})
            bare.press("n")
        assert (page.stage.at, page.stage.shown) == (number, True), "shown before it is left"
        answer = bare.window.locator(".dw-answer").bounding_box()
        assert answer["y"] + answer["height"] < bare.window.viewport_size["height"], "under the replies nobody sees it"
        bare.press("r")
        assert page.stage.shown
        if not beat.bets:
            assert bare.window.evaluate("document.activeElement.matches('.dw-card .dw-range')")
        bare.press("n")
    assert not page.stage.on
    bare.press("b", "b", "r")
    assert page.stage.at == len(page.stage.beats) - 2


@pytest.mark.browser
def test_each_bet_of_a_pair_begins_with_no_choice(bare, tmp_path):
    """And one that is asked again; what is picked and not laid stays when the page is built anew."""
    page = first_visit(PLAYED[0], tmp_path)
    pair = next(k for k, beat in enumerate(page.stage.beats) if len(beat.bets) == 2)
    to_beat(page, pair)
    bare.show(page)
    lay, picked = (
        bare.window.locator("[data-key=lay]"),
        bare.window.locator(".dw-open input:checked, .dw-picked:not(.dw-was-bet)"),
    )
    for _ in range(2):
        for _ in page.stage.beat.bets:
            assert picked.count() == 0
            assert lay.is_disabled()
            bare.window.locator(".dw-open input").last.check()
            for system in ("si", "us"):
                bare.window.click(f"[data-key={system}]")
                bare.settle()
                assert bare.window.locator(".dw-open input").last.is_checked()
            lay.click()
            bare.settle()
        bare.window.click("[data-key=again]")
        bare.settle()


def test_a_learner_bets_before_going_on_and_comes_back_to_the_free_page(tmp_path):
    page = first_visit(PLAYED[0], tmp_path)
    page.hear({"kind": "beat", "number": len(page.stage.beats)})
    assert page.trouble
    assert page.stage.at == 0
    bet_all(page)
    page.hear({"kind": "beat", "number": 1})
    bet_all(page, [1])
    again = first_visit(PLAYED[0], tmp_path)
    assert again.stage.at == 1, "taken up where it was left"
    assert again.stage.gone.chosen == page.stage.gone.chosen
    to_free_page(page)
    again = first_visit(PLAYED[0], tmp_path)
    assert not again.stage.on
    assert again.widget.live["sentence"] == again.sentence
    for back in ({"kind": "beat", "number": 0}, {"kind": "predict", "choice": None}):
        again.hear({"kind": "beat", "number": len(again.stage.beats)})
        again.hear(back)
        assert again.stage.on
        assert not again.stage.shown, "it is played anew"


# --- in Chromium ---------------------------------------------------------------------


@pytest.fixture(scope="module")
def bare(browser):
    """A window for pages, with the letters in its scenes as wide as other machines have them."""
    found = Bare(browser, wider=0.07)
    yield found
    found.window.close()


def walked(bare, page, sizes, look):
    """Go through the beats of a page by keyboard alone; `look` is called at each size before each bet and after it."""
    bare.show(page, SIZES[sizes[0]])

    def at_each_size(where):
        for size in sizes:
            bare.window.set_viewport_size(dict(zip(("width", "height"), SIZES[size], strict=True)))
            if (size == "projector") != page.settings["projector"]:
                bare.window.focus("[data-key=projector]")
                bare.press("Enter")
            bare.settle()
            look(size, where)

    for number in range(len(page.stage.beats)):
        assert page.stage.at == number
        at_each_size(f"{number} before")
        while page.stage.open_bet is not None:
            bare.window.locator(".dw-open input").first.focus()
            bare.press("Space", "Enter")
        # Nobody is locked in, but the way on is loud only once it is done, and a year that runs was seen.
        way_on = bare.window.locator("[data-key=next]")
        assert way_on.is_enabled()
        loud = way_on.evaluate("each => getComputedStyle(each).fontWeight") >= "600"
        runs = bare.window.locator(".dw-rolling").count() > 0
        assert loud == (page.widget.live["stage"]["done"] and not runs)
        if page.stage.beat.unlocks:
            slider = bare.window.locator(".dw-card :is(.dw-range, .dw-select)")
            for key in ("Home", "End"):
                slider.focus()
                bare.press(key)
                at_each_size(f"{number} {key}")
        at_each_size(f"{number} after")
        bare.window.locator("[data-key=next]").focus()
        bare.press("Enter")
    assert not page.stage.on
    assert bare.errors == []


@pytest.mark.browser
def test_on_a_low_phone_what_is_focused_or_said_stands_over_the_buttons(bare, tmp_path):
    """They stay at the lower edge: a choice that has the focus is brought over them, and so is the end of an answer."""
    page = first_visit("the-hole-and-the-ceiling", tmp_path)
    bare.show(page, (390, 520))
    top = """(each) => [each.getBoundingClientRect().bottom,
        document.querySelector(".dw-walk").getBoundingClientRect().top]"""
    for number in range(2):
        while page.stage.open_bet is not None:
            for choice in bare.window.locator(".dw-open input").all():
                bare.window.evaluate("scrollTo(0, 0)")
                choice.focus()
                low, buttons = choice.evaluate(top)
                assert low <= buttons + 1, (number, choice)
            bare.press("Space", "Enter")
        answer = bare.window.locator(".dw-outcome")
        bare.window.evaluate("scrollTo(0, 0)")
        answer.evaluate("each => each.scrollIntoView({ block: 'nearest' })")
        low, buttons = answer.evaluate(top)
        assert low <= buttons + 1, number
        page.hear({"kind": "beat", "number": number + 1})
        bare.show(page, (390, 520))


def looker(bare, wrong):
    def look(size, where):
        found = bare.window.evaluate(LOOK, {"least": LETTERS[size], "inSight": IN_SIGHT})
        wrong.extend(f"{size} {where}: {each}" for each in found)

    return look


def test_a_refused_act_is_told_until_the_next_and_a_second_click_changes_nothing(tmp_path):
    """What was said of a bet left open goes with the next act; who clicks on to the free page twice stays there."""
    page = first_visit("july", tmp_path)
    for number in range(len(page.stage.beats)):
        if page.stage.open_bet:
            page.hear({"kind": "beat", "number": number + 1})
            assert page.widget.live["trouble"] == "First lay your bet on this step."
            page.hear({"kind": "fold", "key": "limits", "open": True})
            assert page.widget.live["trouble"] == ""
        while page.stage.open_bet:
            page.hear({"kind": "bet", "choice": 0})
            assert page.widget.live["trouble"] == ""
        page.hear({"kind": "beat", "number": number + 1})
    assert not page.stage.on
    page.controls["T_in"].value = 70
    for _ in range(3):
        page.hear({"kind": "beat", "number": len(page.stage.beats)})
        assert page.widget.live["trouble"] == ""
    assert page.controls["T_in"].value == 70


@pytest.mark.browser
@pytest.mark.parametrize("id", PLAYED)
def test_every_beat_is_in_sight_at_every_size(bare, axe, id, tmp_path, pytestconfig):
    """And axe finds nothing in it; a phone has the same elements as a laptop."""
    wrong = []
    look = looker(bare, wrong)
    others = [size for size in SIZES if size != "laptop"]
    if not pytestconfig.getoption("--slow"):  # one of them in turn
        others = turn(PLAYED.index(id), others)

    def looked(size, where):
        look(size, where)
        if size == "laptop" and not where.endswith(("Home", "End")):
            wrong.extend(f"{where}: {each}" for each in findings(bare.window, axe))

    walked(bare, first_visit(id, tmp_path), ("laptop", *others), looked)
    assert wrong == []


@pytest.mark.browser
@pytest.mark.parametrize(("size", "id"), in_turn(("phone", "laptop"), PLAYED, usual=5))
def test_nothing_is_cut_off_in_a_longer_language(bare, id, size, tmp_path):
    wrong = []
    with made_up.spoken():
        walked(bare, first_visit(id, tmp_path), (size,), looker(bare, wrong))
    assert [each for each in wrong if "out of sight" not in each] == []


@pytest.mark.browser
@pytest.mark.parametrize("id", PLAYED)
def test_dots_cross_at_the_states_own_flux(bare, id, tmp_path):
    """A minute of the clock of the dots: as many reach the end of each path as its rate says."""
    page = first_visit(id, tmp_path)
    bare.show(page)
    counted, moves = 0, False
    for number in range(len(page.stage.beats)):
        bet_all(page)
        bare.show(page)
        moves = moves or any(page.stage.shows(each).get("flows") for each in page.stage.states)
        if bare.window.locator("[data-key=pause]").is_visible():
            bare.window.click("[data-key=pause]")  # its own clock stands, and the test's goes
        for scene, live in enumerate(page.widget.live["stage"]["scenes"]):
            crossed = bare.window.evaluate(
                """(scene) => { const flows = document.querySelectorAll(".dw-vapor")[scene].flows;
                for (let k = 0; k < 300; k += 1) flows.step(0.1);
                const before = [...flows.crossed];
                for (let k = 0; k < 600; k += 1) flows.step(0.1);
                return flows.crossed.map((each, k) => each - before[k]); }""",
                scene,
            )
            assert len(crossed) == len(live["flows"])
            for count, flow in zip(crossed, live["flows"], strict=True):
                assert abs(count - flow["rate"]) <= 1.0, (number, flow)
                counted += 1
        page.hear({"kind": "beat", "number": number + 1})
    assert counted or not moves


@pytest.mark.browser
@pytest.mark.parametrize("asked", ["reduce", "no-preference"])
def test_dots_run_but_for_who_asked_for_less_motion(browser, tmp_path, asked):
    """With less motion one sees where the vapor is, and nothing moves."""
    window = Bare(browser, reduced_motion=asked)
    page = first_visit("where-it-gets-wet", tmp_path)
    bet_all(page)
    window.show(page)
    places = "() => [...document.querySelectorAll('.dw-vapor')].map((each) => each.flows.dots.map((dot) => dot.part))"
    before = window.window.evaluate(places)
    window.window.wait_for_timeout(300)
    assert (before == window.window.evaluate(places)) == (asked == "reduce")
    assert all(before)
    window.window.close()


@pytest.mark.browser
def test_a_bet_is_made_with_the_pointer_in_the_picture(bare, tmp_path):
    page = first_visit("where-it-gets-wet", tmp_path)
    bare.show(page)
    spot = bare.window.locator("[data-scene='1'] .dw-spot", has_text="B")
    spot.click()
    assert bare.window.locator(".dw-open input").nth(1).is_checked()
    # Taken hold of and drawn to another place.
    here, there = spot.bounding_box(), bare.window.locator(".dw-spot", has_text="D").bounding_box()
    bare.window.mouse.move(here["x"] + 12, here["y"] + 12)
    bare.window.mouse.down()
    bare.window.mouse.move(there["x"] + 14, there["y"] + 14, steps=5)
    bare.window.mouse.up()
    bare.window.click("[data-key=lay]")
    bare.settle()
    assert page.prediction.key() == "d"
    assert "✓" in bare.window.inner_text(".dw-reply")


@pytest.mark.browser
def test_it_reads_aloud_where_there_is_a_voice_and_stops_when_touched(bare, tmp_path):
    page = first_visit("where-it-gets-wet", tmp_path)
    bare.show(page)
    assert bare.window.locator("[data-key=listen]").is_hidden(), "no voice in this browser"
    bare.window.evaluate("""() => {
      window.spoken = []; window.hushed = 0;
      Object.defineProperty(window, "speechSynthesis", { value: {
        getVoices: () => [{}], speak: (each) => window.spoken.push(each.text), cancel: () => { window.hushed += 1; },
        addEventListener: () => {} } });
    }""")
    page.hear({"kind": "system", "value": "us"})
    bare.window.click("[data-key=si]")
    bare.settle()
    listen = bare.window.locator("[data-key=listen]")
    listen.click()
    frame = page.widget.frame["stage"]
    (said,) = bare.window.evaluate("window.spoken")
    said = said.replace("\u00a0", " ")
    assert frame["say"] in said
    assert all(choice["text"] in said for choice in frame["bets"][0]["choices"])
    assert listen.get_attribute("aria-pressed") == "true"
    before = bare.window.evaluate("window.hushed")
    bare.window.click(".dw-say")
    assert bare.window.evaluate("window.hushed") > before
    assert listen.get_attribute("aria-pressed") == "false"


@pytest.mark.browser
@pytest.mark.parametrize("look", [{"color_scheme": "dark"}, {"forced_colors": "active"}])
def test_a_dark_theme_and_a_contrast_theme_keep_every_distinction(browser, axe, look, tmp_path):
    """The scene stays on its own light paper with its own colors; its words and the card can be read."""
    found = Bare(browser, **look)
    page = first_visit("where-it-gets-wet", tmp_path)
    bet_all(page)
    found.show(page)
    assert findings(found.window, axe) == []
    color = "(one) => getComputedStyle(document.querySelector(one)).%s"
    assert found.window.evaluate(color % "backgroundColor", ".dw-box") == "rgb(255, 253, 248)"
    assert found.window.evaluate(color % "color", ".dw-tag") == "rgb(28, 28, 28)"
    fills = {found.window.evaluate(color % "stroke", one) for one in (".sc-dew-point", ".sc-membrane", ".sc-frost")}
    assert len(fills) == 3
    found.window.close()


@pytest.mark.browser
def test_a_move_leaves_a_ghost_and_is_told(bare, tmp_path):
    page = first_visit("where-it-gets-wet", tmp_path)
    to_beat(page, 1)
    bare.show(page)
    bare.window.wait_for_timeout(800)
    bare.window.locator(".dw-card .dw-range").focus()
    bare.press("Home")
    assert bare.window.locator(".dw-ghost > *").count()
    bare.window.wait_for_timeout(600)
    assert bare.window.locator(".dw-status").inner_text() == page.widget.live["stage"]["status"]
