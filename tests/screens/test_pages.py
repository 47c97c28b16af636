"""The lessons as web pages in a real Chromium: opened, moved, on every screen, with nothing fetched from elsewhere."""

import re

import pytest
from opening import through_the_beats, to_the_free_page
from served import served

from dryward.teaching import lessons, questions

pytestmark = pytest.mark.browser

#: Opened in every run: one that is played and moved, and the desk.  All others with --slow: `test_every_lesson.py`
#: moves an hourly one in Lab, and the usual one is opened below, and moved in `test_pages_faults.py`.
FEW = ("read-the-air", "your-roof")
LESSONS = [id if id in FEW else pytest.param(id, marks=pytest.mark.slow) for id in lessons.pages()]
SCREENS = [(1366, 768), (1920, 1080), (820, 1180)]
#: A window of 1366 at a zoom of 200 %, and the narrowest a page must bear: 1280 at 400 %.
ZOOMED = [(683, 384), (320, 256)]


@pytest.fixture(scope="module")
def server(tmp_path_factory):
    with served(tmp_path_factory.mktemp("pages"), "--ready", "2") as found:
        yield found


def unlock(window, address):
    """Open a lesson and make its prediction."""
    window.goto(address)
    to_the_free_page(window)


@pytest.mark.parametrize("id", LESSONS)
def test_every_lesson_opens_and_moves(server, screen, id):
    lesson = lessons.lesson(id)
    screen.goto(server.entry)
    unlock(screen, f"{server.address}lesson/{id}")
    assert screen.title() == f"{lesson.number}. {lesson.title} · dryward"
    assert screen.locator("main").count() == 1
    assert screen.inner_text("h1") == f"{lesson.number}. {lesson.title}"
    assert screen.locator("#wait").is_hidden()
    sliders = screen.locator(".dw-range")
    if sliders.count():
        picture = screen.locator(".dw-picture").first
        before = picture.get_attribute("src")
        sliders.first.focus()
        for _ in range(3):
            screen.keyboard.press("ArrowLeft")
        screen.wait_for_function("src => document.querySelector('.dw-picture').src !== src", arg=before, timeout=20_000)
    assert screen.locator(".dw-trouble").first.inner_text() == ""  # the page's own; a desk has others
    assert screen.locator("pre, .jp-InputArea, .CodeMirror, .cm-editor").count() == 0
    assert (screen.errors, screen.strangers) == ([], [])


def test_from_the_first_page_along_a_way(server, screen):
    screen.goto(server.entry)
    assert screen.url == server.address  # the key does not stay in the address
    screen.click("text=Four-hour day")
    screen.click("a:text('3. Which way vapor goes')")
    to_the_free_page(screen)  # the way on is there once the lesson was gone through
    screen.click("a:text('Next: 4. Temperature through the layers')")
    screen.wait_for_selector(".dw-page", timeout=60_000)
    assert screen.url.endswith("/lesson/temperature-through-layers?way=half-day")
    screen.click("text=All lessons")
    assert "looked at" in screen.inner_text("main")
    assert "Go on with" in screen.inner_text("main")
    assert (screen.errors, screen.strangers) == ([], [])


def test_the_end_of_a_lesson_by_keyboard(server, screen):
    """A hint, then right; what is still said, the way back, and on; opened again, the answers stand there."""
    screen.goto(server.entry)
    unlock(screen, f"{server.address}lesson/which-way-vapor-goes?way=half-day")

    def choose(number, choice, reply):
        """Choose with the space bar; the focus stays on the choice when the page is built anew."""
        chosen = f"[data-key=check-{number}-{choice}]"
        screen.focus(chosen)
        screen.keyboard.press("Space")
        screen.wait_for_selector(f".dw-check:has({chosen}:checked:focus) .dw-reply[role=status]:has-text('{reply}')")

    asked = [[each.right for each in question.choices] for question in questions.checks("which-way-vapor-goes")]
    choose(0, asked[0].index(False), "Look once more.")
    choose(2, max(at for at, right in enumerate(asked[2]) if not right), "Look once more.")
    for number, right in enumerate(asked):
        choose(number, right.index(True), "Right.")
    screen.focus("[data-key=still-warm-to-cold-yes]")
    screen.keyboard.press("Enter")
    screen.wait_for_selector("[data-key=still-warm-to-cold-yes][aria-pressed=true]:focus")
    screen.wait_for_selector(".dw-leaving .dw-reply:has-text('See it on this page')")
    screen.press("[data-key=still-warm-to-cold-back]", "Enter")
    screen.wait_for_selector(".dw-work .dw-range:focus")
    screen.reload()
    screen.wait_for_selector("[data-key=still-warm-to-cold-yes][aria-pressed=true]", timeout=60_000)
    assert screen.locator(".dw-check-row >> nth=0 >> .dw-mark").all_inner_texts().count("✓ right") == len(asked)
    assert screen.locator(".dw-check-row >> nth=0 >> .dw-mark").count() == len(asked) + 2, "and the wrong tries"
    screen.set_viewport_size({"width": 390, "height": 844})
    assert screen.evaluate("document.scrollingElement.scrollWidth <= innerWidth"), "on a phone"
    following = screen.eval_on_selector("[data-key=on]", "link => link.href")
    assert following == f"{server.address}lesson/temperature-through-layers?way=half-day"
    assert (screen.errors, screen.strangers) == ([], [])


def test_the_index_with_its_plan_leads_to_lessons(server, screen):
    screen.goto(server.entry)
    screen.click("text=Start here")
    through_the_beats(screen)
    screen.wait_for_selector(".dw-lesson-link", timeout=60_000)
    screen.click(".dw-lesson-link >> nth=1")
    screen.wait_for_selector(".dw-page :is(.dw-stage, .dw-layers)", timeout=60_000)
    assert re.search(r"/lesson/[a-z-]+$", screen.url)
    assert (screen.errors, screen.strangers) == ([], [])


def test_two_browsers_are_two_learners(server, browser):
    chosen = []
    for number in (0, 1):
        context = browser.new_context()
        window = context.new_page()
        window.goto(server.entry)
        window.goto(f"{server.address}lesson/where-it-gets-wet")
        to_the_free_page(window, number)
        window.reload()  # kept, and only for this one
        window.wait_for_selector(".dw-said", timeout=60_000)
        chosen.append(window.inner_text(".dw-said strong"))
        context.close()
    assert len(set(chosen)) == 2


def test_nothing_runs_off_the_screen(server, browser):
    window = browser.new_page()

    def sized(size):
        window.set_viewport_size(dict(zip(("width", "height"), size, strict=True)))
        window.wait_for_timeout(300)

    def fits(*where):
        assert window.evaluate("document.scrollingElement.scrollWidth <= innerWidth"), where

    window.goto(server.entry)
    for address in ("", "no-such-page"):
        window.goto(server.address + address)
        for size in SCREENS + ZOOMED:
            sized(size)
            fits(address, size)
    sized(SCREENS[0])
    window.goto(f"{server.address}lesson/where-it-gets-wet")
    window.wait_for_selector(".dw-stage", timeout=60_000)
    for size in SCREENS + ZOOMED:
        sized(size)
        fits("the first beat", size)
    sized(SCREENS[0])
    to_the_free_page(window)
    for size in SCREENS + ZOOMED:
        sized(size)
        fits("lesson", size)
        if size in SCREENS:
            window.evaluate("scrollTo(0, 0)")
            foot = window.locator(".dw-sentence").bounding_box()
            assert foot["y"] + foot["height"] <= size[1], "the working part is on the screen at once"
            window.click("[data-key=projector]")
            window.wait_for_selector(".dw-projector")
            fits("projector", size)
            # In proportion to the screen: 20 px of the 1920 of most projectors.
            letters = window.evaluate("parseFloat(getComputedStyle(document.querySelector('.dw-sentence')).fontSize)")
            assert letters >= min(16, 20 * size[0] / 1920)
            window.click("[data-key=projector]")
            window.wait_for_selector(".dw-page:not(.dw-projector)")
    window.close()


def test_a_stranger_sees_the_door(server, browser):
    context = browser.new_context()
    window = context.new_page()
    window.goto(f"{server.address}lesson/july")
    assert "/enter" in window.url
    window.fill("#password", "not this one")
    window.keyboard.press("Enter")
    window.wait_for_selector("[role=alert]")
    assert "That is not the password" in window.inner_text("[role=alert]")
    window.fill("#password", server.secret)
    window.keyboard.press("Enter")
    window.wait_for_selector(".dw-page", timeout=60_000)
    assert window.url.endswith("/lesson/july")
    context.close()
