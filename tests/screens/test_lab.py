"""A lesson in JupyterLab in a real Chromium: opened, unlocked, moved by keys, typed into."""

import pytest
from bare import IN_SIGHT, LOOK
from opening import to_the_free_page

pytestmark = pytest.mark.browser

PICTURE, SENTENCE = ".dw-picture", ".dw-sentence"


@pytest.fixture(scope="module")
def lesson(lab, browser):
    """Lesson 05 in a window of its own, unlocked by a prediction."""
    window = browser.new_page(viewport={"width": 1366, "height": 768})
    window.errors, window.strangers = [], []
    window.on("pageerror", lambda error: window.errors.append(str(error)))
    window.on("request", lambda request: window.strangers.append(request.url))
    window.goto(lab("05-where-it-gets-wet.ipynb"))
    window.wait_for_selector(".dw-page", timeout=60_000)
    window.covered = not (window.locator(SENTENCE).count() and window.locator(SENTENCE).is_visible())
    to_the_free_page(window)
    window.wait_for_selector(f"{PICTURE}[src]")
    yield window
    window.close()


def shown(window):
    """What the picture and the sentence show now, and what the alt text says."""
    picture = window.locator(PICTURE).first
    return picture.get_attribute("src"), window.inner_text(SENTENCE), picture.get_attribute("alt")


def changed(window, before):
    """Wait until picture and alt text are others than before."""
    window.wait_for_function(
        "([at, src, alt]) => { const i = document.querySelector(at);"
        " return i.src !== src && i.alt !== alt && i.complete && i.naturalWidth > 0 }",
        arg=[PICTURE, before[0], before[2]],
        timeout=10_000,
    )
    return shown(window)


def test_opens_by_itself_and_waits_for_a_bet(lesson):
    assert lesson.covered, "the answer shows before the bet"
    assert "between insulation and outer layer" in lesson.inner_text(SENTENCE)
    assert "In the middle of the insulation" in lesson.inner_text(".dw-said")


@pytest.mark.parametrize("name", ["T_out", "RH_in", "M_in"])
def test_a_key_on_each_slider_changes_picture_and_sentence(lesson, name):
    before = shown(lesson)
    slider = lesson.locator(f"[data-key=slider-{name}]")
    said = slider.get_attribute("aria-valuetext")
    slider.focus()
    for _ in range(3):
        lesson.keyboard.press("ArrowRight")
    after = changed(lesson, before)
    assert after[1] != before[1]
    assert slider.get_attribute("aria-valuetext") != said


def test_a_choice_by_key(lesson):
    before = shown(lesson)
    lesson.locator("[data-key=choice-Outer]").focus()
    lesson.keyboard.press("ArrowDown")
    assert changed(lesson, before)[1] != before[1]


def test_keys_of_lab_do_not_touch_the_lesson(lesson):
    cells = lesson.locator(".jp-Cell").count()
    lesson.locator("[data-key=slider-T_out]").focus()
    for key in ("m", "x", "d", "d", "y", "a", "b"):
        lesson.keyboard.press(key)
    assert lesson.locator(".jp-Cell").count() == cells
    assert lesson.locator(f"{PICTURE}[src]").count() == 1


def test_typed_numbers(lesson):
    box = lesson.locator("[data-key=typed-M_in]")
    before = shown(lesson)
    box.fill("sd 7 m")
    box.press("Enter")
    changed(lesson, before)
    lesson.wait_for_function("document.querySelector('[data-key=typed-M_in]').value === '0.5'", timeout=5000)
    held = shown(lesson)
    box.fill("eleven")
    box.press("Enter")
    lesson.wait_for_function("document.querySelector('[data-key=typed-M_in]').getAttribute('aria-invalid') === 'true'")
    assert "is not understood; write it like" in lesson.locator(".dw-error:not(:empty)").inner_text()
    assert shown(lesson) == held
    box.press("Escape")


def test_the_sentence_is_spoken_when_the_slider_rests(lesson):
    lesson.wait_for_timeout(600)
    slider, status = lesson.locator("[data-key=slider-T_out]"), lesson.locator(".dw-status")
    spoken = status.inner_text()
    slider.focus()
    lesson.keyboard.press("End")
    lesson.wait_for_function("t => document.querySelector('.dw-sentence').textContent !== t", arg=spoken)
    assert status.text_content() == spoken
    lesson.wait_for_function("t => document.querySelector('.dw-status').textContent !== t", arg=spoken)
    assert status.text_content() == lesson.locator(SENTENCE).text_content()


@pytest.mark.parametrize("size", [(1366, 768), (1920, 1080)], ids=["laptop", "large"])
def test_the_working_part_fits_between_the_bars_of_lab(lesson, size):
    lesson.set_viewport_size(dict(zip(("width", "height"), size, strict=True)))
    lesson.wait_for_timeout(300)
    # The reader scrolls the output to the top.
    lesson.evaluate("document.querySelector('.dw-page').scrollIntoView({ block: 'start' })")
    frame = lesson.locator(".jp-WindowedPanel-outer").first.bounding_box()
    for part in (".dw-layers", SENTENCE, *(f"[data-key={name}]" for name in ("slider-T_out", "slider-M_in"))):
        box = lesson.locator(part).first.bounding_box()
        assert box["y"] >= frame["y"] - 1, part
        assert box["y"] + box["height"] <= frame["y"] + frame["height"] + 1, part
        assert box["x"] + box["width"] <= size[0], part
    shown = lesson.locator(".dw-ground").first.bounding_box()["width"]
    drawn = lesson.evaluate("document.querySelector('.dw-ground').naturalWidth")
    assert 12 * shown / drawn >= 11, "letters of the picture"
    lesson.set_viewport_size({"width": 1366, "height": 768})


def test_nothing_is_cut_off(lesson):
    for mode in ("us", "projector", "si", "instructor"):
        lesson.click(f"[data-key={mode}]")
        lesson.wait_for_timeout(400)
        spilled = lesson.evaluate(
            "[...document.querySelectorAll('.dw-page *')].filter(e => !e.closest('.dw-status, select, .dw-strip')"
            " && e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).display !== 'inline' && e.clientWidth > 0)"
            ".map(e => e.className + ': ' + e.textContent.slice(0, 40))"
        )
        assert spilled == [], mode
    # Each switch builds the page anew: a click of the next test would fall on what is being replaced.
    for switch, pressed in (("instructor", "false"), ("projector", "false"), ("us", "true")):
        lesson.click(f"[data-key={switch}]")
        lesson.wait_for_selector(f"[data-key={switch}][aria-pressed={pressed}]")
    lesson.wait_for_timeout(400)


def test_every_control_is_reached_and_named(lesson):
    unnamed = lesson.evaluate(
        "[...document.querySelectorAll('.dw-page :is(input, select, button, summary)')]"
        ".filter(e => !(e.labels?.length || e.getAttribute('aria-label') || e.textContent.trim()))"
        ".map(e => e.outerHTML.slice(0, 80))"
    )
    unsheltered = lesson.evaluate(
        "[...document.querySelectorAll('.dw-page :is(input, select, button, summary)')]"
        ".filter(e => !e.hasAttribute('data-lm-suppress-shortcuts')).map(e => e.outerHTML.slice(0, 80))"
    )
    assert (unnamed, unsheltered) == ([], [])


def test_checks_reply_to_wrong_and_right(lesson):
    card = lesson.locator(".dw-check").nth(0)
    verdicts = []
    for choice in range(3):
        card.locator(f"[data-key=check-0-{choice}]").click()
        mark = card.locator(f".dw-choice:has([data-key=check-0-{choice}]) .dw-mark")
        mark.wait_for(timeout=5000)
        verdicts.append(mark.inner_text())
        assert card.locator(".dw-mark").count() == choice + 1, "each try stays marked"
        lesson.wait_for_function("document.querySelector('.dw-check .dw-reply').textContent.length > 20")
    assert sorted(verdicts) == ["✓ right", "✗ not this one", "✗ not this one"]


def test_nothing_is_fetched_from_elsewhere_and_nothing_breaks(lesson):
    outside = [
        url for url in lesson.strangers if not url.startswith(("http://127.0.0.1", "ws://127.0.0.1", "data:", "blob:"))
    ]
    assert outside == []
    assert lesson.errors == []


def test_a_beat_fits_between_the_bars_of_lab(lab, screen):
    """Scene, sentence and bet in sight together, before the bet and after it, at a desk and on a projector."""
    screen.goto(lab("05-where-it-gets-wet.ipynb"))
    screen.wait_for_selector(".dw-stage .dw-spot", timeout=90_000)
    least = {"width": 1366, "height": 768}, {"width": 1920, "height": 1080}
    for size in least:
        screen.set_viewport_size(size)
        screen.locator(".dw-page").evaluate("page => page.scrollIntoView()")
        screen.wait_for_timeout(400)
        assert screen.evaluate(LOOK, {"least": 11, "inSight": IN_SIGHT}) == [], size
    screen.locator(".dw-open input").first.focus()
    screen.keyboard.press("Space")
    screen.keyboard.press("Enter")
    screen.wait_for_selector(".dw-reply")
    for size in least:
        screen.set_viewport_size(size)
        screen.wait_for_timeout(400)
        assert screen.evaluate(LOOK, {"least": 11, "inSight": IN_SIGHT}) == [], size
    assert screen.errors == []


def test_the_first_page_lists_the_lessons(lab, screen):
    screen.goto(lab("00-start.ipynb"))
    screen.wait_for_selector("text=dew point of the room: 44.6", timeout=60_000)
    screen.click("a:text('Where it gets wet')")
    screen.wait_for_selector("h1:has-text('5. Where it gets wet') >> visible=true", timeout=60_000)
    screen.wait_for_selector(".dw-stage >> visible=true", timeout=60_000)
    assert screen.errors == []
    assert screen.strangers == []
