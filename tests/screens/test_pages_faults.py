"""What a learner sees when something breaks: one plain sentence, and the lesson again where it was."""

import contextlib
import re

import pytest
from opening import to_the_free_page
from served import served, start, stop
from session import TOKEN, session
from wire import Wire

pytestmark = pytest.mark.browser

LESSON = "lesson/where-it-gets-wet"
AWAY = "The class computer is out of reach. What you have answered is kept; this page tries again by itself."
STOPPED = "This lesson has stopped. What you have answered is kept."


@pytest.fixture
def window(browser):
    context = browser.new_context()
    yield context.new_page()
    context.close()


def unlock(window, entry, address):
    window.goto(entry)
    window.goto(address)
    to_the_free_page(window, 1)
    window.wait_for_selector(".dw-range:not([disabled])")
    return window.inner_text(".dw-said strong")


def lost(window, sentence):
    window.wait_for_function(
        "words => document.getElementById('lost').textContent.startsWith(words)", arg=sentence, timeout=30_000
    )


def spied(window):
    """What a page sends to its kernel from now on."""
    sent = []

    def listen(socket):
        if "/channels" in socket.url:
            socket.on("framesent", lambda frame: sent.append(frame if isinstance(frame, bytes) else frame.encode()))

    window.on("websocket", listen)
    return sent


def moves(sent):
    """Those that move a slider; none of what was sent may go to a second shell, where it could be lost."""
    assert not [each for each in sent if re.search(rb'"subshell_id":\s*"', each)]
    return [each for each in sent if b'"moves"' in each and b"comm_msg" in each]


def move(window):
    window.locator(".dw-range").first.focus()
    for _ in range(4):
        window.keyboard.press("ArrowRight")
        window.wait_for_timeout(300)


def test_a_dead_kernel(tmp_path, window):
    with served(tmp_path, "--ready", "1") as server:
        sent = spied(window)
        said = unlock(window, server.entry, server.address + LESSON)
        move(window)
        assert moves(sent), "the page talks to the kernel itself"
        for kernel in server.kernels():
            kernel.kill()
        lost(window, STOPPED)
        window.click("text=Open the lesson again")
        window.wait_for_selector(".dw-said", timeout=60_000)
        assert window.inner_text(".dw-said strong") == said
        assert window.locator("#lost").is_hidden()


@pytest.mark.parametrize("seconds", [4, pytest.param(30, marks=pytest.mark.slow)])
def test_a_cut_cable(tmp_path, window, seconds):
    with served(tmp_path, "--ready", "1") as server:
        port = int(server.address.split(":")[2].strip("/"))
        with Wire(port) as wire:
            here = f"http://127.0.0.1:{wire.here}/"
            unlock(window, server.entry.replace(server.address, here), here + LESSON)
            slider = window.locator(".dw-range").first
            slider.focus()
            window.keyboard.press("ArrowRight")
            window.wait_for_timeout(500)
            wire.cut()
            lost(window, AWAY)
            window.keyboard.press("ArrowRight")  # while it is cut
            stands = slider.get_attribute("aria-valuetext")
            window.wait_for_timeout(1000 * seconds)
            wire.mend()
            window.wait_for_function("() => document.getElementById('lost').hidden", timeout=90_000)
            picture = window.locator(".dw-picture").first
            before = picture.get_attribute("src")
            assert slider.get_attribute("aria-valuetext") == stands  # no work is taken back
            window.keyboard.press("ArrowRight")
            window.wait_for_function(
                "src => document.querySelector('.dw-picture').src !== src", arg=before, timeout=20_000
            )
            assert slider.get_attribute("aria-valuetext") != stands


def test_a_server_started_anew(tmp_path, window):
    server = start(tmp_path, "--ready", "1")
    port = int(server.address.split(":")[2].strip("/"))
    try:
        said = unlock(window, server.entry, server.address + LESSON)
    finally:
        stop(server.process)
    lost(window, AWAY)
    with contextlib.ExitStack() as on:
        server = on.enter_context(served(tmp_path, "--ready", "1", port=port))
        lost(window, STOPPED)
        window.click("text=Open the lesson again")
        window.wait_for_selector("#password", timeout=30_000)  # the new start has a new password
        window.fill("#password", server.secret)
        window.keyboard.press("Enter")
        window.wait_for_selector(".dw-said", timeout=60_000)
        assert window.inner_text(".dw-said strong") == said


@pytest.mark.slow
def test_a_closed_and_opened_browser(tmp_path, browser):
    with served(tmp_path, "--ready", "1") as server:
        context = browser.new_context()
        window = context.new_page()
        said = unlock(window, server.entry, server.address + LESSON)
        state = context.storage_state()
        context.close()
        # A browser keeps what has a date and forgets the rest: the password is asked for again.
        state["cookies"] = [each for each in state["cookies"] if each["expires"] > 0]
        context = browser.new_context(storage_state=state)
        window = context.new_page()
        window.goto(server.address + LESSON)
        window.fill("#password", server.secret)
        window.keyboard.press("Enter")
        window.wait_for_selector(".dw-said", timeout=60_000)
        assert window.inner_text(".dw-said strong") == said
        context.close()


@pytest.mark.slow
def test_a_cloud_session_talks_to_the_kernel_itself(tmp_path, window):
    with session(tmp_path) as address:
        sent = spied(window)
        page = f"{address}doc/tree/lessons/05-where-it-gets-wet.ipynb?token={TOKEN}"
        unlock(window, page, page)
        move(window)
        assert moves(sent)
