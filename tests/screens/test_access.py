"""For everybody: names and contrast by axe-core, tab order, visible focus, stillness, large type, paper.

What is of the page itself is looked at without a server (`bare`); the pages round it, the way by Tab from the site into
the lesson, and one lesson as it is served, with one.
"""

import pytest
from bare import Bare
from chromium import findings
from lesson_page import first_visit, open_page
from opening import to_the_free_page
from served import served

from dryward.teaching import lessons, questions

pytestmark = pytest.mark.browser

FEW = ("where-it-gets-wet", "your-roof")
LESSONS = [id if id in FEW else pytest.param(id, marks=pytest.mark.slow) for id in lessons.pages()]
_FOCUS = """
() => {
  const e = document.activeElement;
  if (!e || e === document.body) return null;
  const style = getComputedStyle(e);
  const box = e.getBoundingClientRect();
  return { key: e.dataset.key || e.id || e.textContent.trim().slice(0, 40), outline: style.outlineStyle,
    width: parseFloat(style.outlineWidth), radio: e.type === 'radio', seen: box.width > 0 && box.height > 0,
    order: [...document.querySelectorAll('*')].indexOf(e) };
}
"""


@pytest.fixture(scope="module")
def server(tmp_path_factory):
    with served(tmp_path_factory.mktemp("access"), "--ready", "2") as found:
        yield found


def opened(window, server, id):
    window.goto(server.entry)
    window.goto(f"{server.address}lesson/{id}")
    window.wait_for_selector(".dw-page", timeout=90_000)


def test_pages_round_the_lessons(server, screen, axe):
    screen.goto(f"{server.address}enter")
    assert findings(screen, axe) == [], "the door"
    screen.goto(server.entry)
    for address in ("", "?way=half-day", "no-such-page"):
        screen.goto(server.address + address)
        assert findings(screen, axe) == [], address
    board = server.said().split("board:")[1].split()[0]
    screen.goto(board)
    assert findings(screen, axe) == [], "the board"


def test_a_lesson_as_it_is_served(server, screen, axe):
    opened(screen, server, "where-it-gets-wet")
    assert findings(screen, axe) == [], "as it opens"
    to_the_free_page(screen)
    assert findings(screen, axe) == [], "open"


@pytest.fixture(scope="module")
def bare(browser):
    """A window for pages."""
    found = Bare(browser)
    yield found
    found.window.close()


@pytest.mark.parametrize("id", [*LESSONS, "start"])
def test_a_lesson_in_every_state(bare, tmp_path, axe, id):
    bare.show(first_visit(id, tmp_path / "first"))
    window = bare.window
    assert findings(window, axe) == [], "as it opens"
    bare.show(open_page(id, tmp_path))
    for fold in window.locator(".dw-fold summary").all():
        fold.click()
    asked = questions.checks(id) if window.locator("[data-key=check-0-0]").count() else ()
    announced = 0
    for number, question in enumerate(asked):
        # That a last question comes is said over the checks, wherever it does come.
        announced = window.locator(".dw-checks > .dw-hint").count()
        right = [choice.right for choice in question.choices].index(True)
        for choice in (right - 1 if right else right + 1, right)[number == 2 :]:  # two with a wrong try before
            window.click(f"[data-key=check-{number}-{choice}]")
    if asked:
        window.wait_for_selector(".dw-leaving")
    assert bool(announced) == bool(window.locator("[data-key^=still-]").count())
    if announced:
        assert not window.locator(".dw-checks:not(.dw-leaving) > .dw-hint").count()
        window.click("[data-key^=still-] >> nth=0")
    bare.settle()
    assert findings(window, axe) == [], "open"
    for mode in ("projector", "si", "instructor"):
        if window.locator(f"[data-key={mode}]").count():
            window.click(f"[data-key={mode}]")
            bare.settle()
            assert findings(window, axe) == [], mode
    assert bare.errors == []


@pytest.mark.parametrize(
    ("size", "look"), [((390, 844), {}), ((1366, 768), {"color_scheme": "dark"})], ids=["phone", "dark"]
)
def test_nothing_serious_is_found_on_a_phone_and_in_the_dark(browser, tmp_path, axe, size, look):
    bare = Bare(browser, **look)
    window = bare.window
    bare.show(first_visit("where-it-gets-wet", tmp_path / "first"), size)
    assert findings(window, axe) == [], "as it opens"
    bare.show(open_page("where-it-gets-wet", tmp_path), size)
    window.wait_for_function(f"() => Boolean(document.querySelector('.dw-narrow')) === {str(size[0] < 500).lower()}")
    for fold in window.locator(".dw-fold summary").all():
        fold.click()
    if window.locator("[data-key=in-use]").count():
        window.locator("[data-key=in-use]").focus()
        window.keyboard.press("ArrowDown")
        window.keyboard.press("Tab")
        assert window.evaluate("document.activeElement.closest('.dw-control') !== null"), "the control that was chosen"
    assert findings(window, axe) == [], "open"
    window.close()


def test_tab_goes_through_everything_in_order_and_shows_where_it_is(server, screen):
    opened(screen, server, "where-it-gets-wet")
    to_the_free_page(screen)
    screen.evaluate("document.activeElement.blur()")
    screen.evaluate("window.getSelection().removeAllRanges(); document.body.tabIndex = -1; document.body.focus()")
    seen = []
    for _ in range(80):
        screen.keyboard.press("Tab")
        at = screen.evaluate(_FOCUS)
        if at is None or (seen and at["order"] < seen[0]["order"]):
            break
        if at["order"] == seen[-1]["order"] if seen else False:
            break
        seen.append(at)
    order = [each["order"] for each in seen]
    assert order == sorted(order)
    assert seen[0]["key"] == "Skip to the lesson"
    hidden = [each["key"] for each in seen if each["outline"] == "none" or each["width"] < 2 or not each["seen"]]
    assert hidden == []
    reached = {each["key"] for each in seen}
    wanted = set(
        screen.evaluate(
            "[...document.querySelectorAll('.dw-page :is(input:not([type=radio]), select, button, summary)')]"
            ".filter(e => !e.disabled && e.offsetParent).map(e => e.dataset.key)"
        )
    )
    assert wanted - reached == set()


def test_the_skip_link_leads_to_the_lesson(server, screen):
    opened(screen, server, "where-it-gets-wet")
    screen.keyboard.press("Tab")
    screen.keyboard.press("Enter")
    assert screen.evaluate("document.activeElement.id") == "inside"


def test_stillness_is_kept(browser, tmp_path):
    bare = Bare(browser, reduced_motion="reduce")
    window = bare.window
    bare.show(open_page("clear-night", tmp_path))
    window.wait_for_selector(".dw-picture[src]")
    moving = window.evaluate(
        "[...document.querySelectorAll('*')].filter(e => { const s = getComputedStyle(e);"
        " return (s.animationName !== 'none') || parseFloat(s.transitionDuration) > 0 }).map(e => e.className)"
    )
    assert moving == []
    before = window.locator(".dw-picture").first.get_attribute("src")
    window.wait_for_timeout(1500)
    assert window.locator(".dw-picture").first.get_attribute("src") == before  # nothing plays by itself
    window.close()


def test_on_paper_it_is_black_and_white(browser, tmp_path):
    bare = Bare(browser)
    screen = bare.window
    bare.show(open_page("where-it-gets-wet", tmp_path))
    screen.wait_for_selector(".dw-picture[src]")
    screen.emulate_media(media="print")
    colored = screen.evaluate(
        """() => {
          const gray = text => { const n = (text.match(/[\\d.]+/g) || []).map(Number);
            return n.length < 3 || n[3] === 0 || Math.max(...n.slice(0, 3)) - Math.min(...n.slice(0, 3)) < 2 };
          return [...document.querySelectorAll('main, main *')].filter(e => e.offsetParent && e.tagName !== 'IMG')
            .filter(e => { const s = getComputedStyle(e); return !gray(s.color) || !gray(s.backgroundColor) ||
               (parseFloat(s.borderTopWidth) && !gray(s.borderTopColor)) ||
               (parseFloat(s.borderLeftWidth) && !gray(s.borderLeftColor)) })
            .map(e => e.className || e.tagName);
        }"""
    )
    assert colored == []
    assert "grayscale" in screen.evaluate("getComputedStyle(document.querySelector('.dw-picture')).filter")
    for gone in (".top", ".dw-switches", ".dw-range"):
        assert screen.locator(gone).first.is_hidden(), gone
    assert screen.locator(".dw-typed").first.is_visible()  # the numbers stay
    screen.close()


def test_at_twice_the_size_everything_is_still_reached(browser, tmp_path):
    bare = Bare(browser, device_scale_factor=2)
    window = bare.window
    bare.show(open_page("where-it-gets-wet", tmp_path), (683, 384))
    small = window.evaluate(
        """() => [...document.querySelectorAll('.dw-page :is(button, select, summary, .dw-range)')]
          .filter(e => e.offsetParent)
          .filter(e => { const b = e.getBoundingClientRect();
            return b.height < 24 || b.right > innerWidth + 1 || b.left < -1 })
          .map(e => e.dataset.key)"""
    )
    assert small == []
    window.close()
