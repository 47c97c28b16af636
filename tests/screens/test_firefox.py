"""The pages in a real Firefox: they open, are played to the free page, follow the keys, fit three screens, and ask
nobody else.
"""

import json
import re

import fox
import pytest
from served import served

from dryward.teaching import lessons

pytestmark = pytest.mark.skipif(fox.command() is None, reason="no Firefox found: install it to run this")

RIGHT = "\ue014"
FEW = ("where-it-gets-wet", "hour-by-hour")
LESSONS = [id if id in FEW else pytest.param(id, marks=pytest.mark.slow) for id in lessons.pages()]


@pytest.fixture(scope="module")
def server(tmp_path_factory):
    with served(tmp_path_factory.mktemp("fox"), "--ready", "2") as found:
        yield found


@pytest.fixture(scope="module")
def window(server):
    found = fox.Fox()
    found.goto(server.entry)
    yield found
    found.close()


def click(window, at):
    window.ask(f"document.querySelector({at!r}).click() ?? null")


def unlock(window, server, id):
    """Every bet made, the first choice of each, on the stage and before the free page."""
    window.goto(f"{server.address}lesson/{id}")
    window.wait("document.querySelector('.dw-on-stage, .dw-prediction')")
    while window.ask("document.querySelectorAll('.dw-on-stage').length"):
        bets = window.ask("document.querySelectorAll('.dw-open').length && document.querySelectorAll('.dw-bet').length")
        if bets:
            said = "[...document.querySelectorAll('.dw-bet')].map(each => each.className + each.textContent).join()"
            click(window, ".dw-open input")
            before = window.ask(said)
            click(window, "[data-key=lay]")
            window.wait(f"{said} !== {json.dumps(before)}")
        else:
            beat = window.ask("document.querySelector('.dw-stage').dataset.beat")
            assert window.ask("document.querySelectorAll('.dw-scene .dw-drawn').length"), f"a scene of {beat}"
            click(window, "[data-key=next]")
            window.wait(f"document.querySelector('.dw-stage')?.dataset.beat !== {beat!r}")
    if window.ask("document.querySelectorAll('.dw-prediction input[type=radio]').length"):
        click(window, ".dw-prediction input[type=radio]")
    window.wait("document.querySelector('.dw-said')")


@pytest.mark.parametrize("id", LESSONS)
def test_a_lesson_opens_and_follows_the_keys(server, window, id):
    unlock(window, server, id)
    if window.ask("document.querySelectorAll('.dw-range').length"):
        picture = "document.querySelector('.dw-picture')"
        before = window.ask(f"[{picture}.src, document.querySelector('.dw-range').getAttribute('aria-valuetext')]")
        window.ask("document.querySelector('.dw-range').focus() ?? null")
        key = RIGHT if window.ask("document.querySelector('.dw-range').value < 0.9") else "\ue012"
        window.press(key, key, key)
        window.wait(f"{picture}.src !== {before[0]!r} && {picture}.complete && {picture}.naturalWidth > 0")
        assert window.ask("document.querySelector('.dw-range').getAttribute('aria-valuetext')") != before[1]
    assert window.ask("document.querySelector('.dw-trouble').textContent") == ""


@pytest.mark.parametrize("size", [(1366, 768), (1920, 1080), (820, 1180)], ids=lambda size: f"{size[0]}x{size[1]}")
def test_it_fits(server, window, size):
    context = window._window
    window.send("browsingContext.setViewport", context=context, viewport={"width": size[0], "height": size[1]})
    unlock(window, server, "where-it-gets-wet")
    assert window.ask("document.scrollingElement.scrollWidth <= innerWidth")
    assert window.ask("document.querySelector('.dw-sentence').getBoundingClientRect().bottom") <= size[1]
    window.send("browsingContext.setViewport", context=context, viewport={"width": 1366, "height": 768})


def test_it_asked_nobody_else(window):
    assert window.requests
    assert [
        each for each in window.requests if not re.match(r"(https?|wss?)://127\.0\.0\.1|data:|blob:|about:", each)
    ] == []
