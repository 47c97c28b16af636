"""A Chromium, and JupyterLab on a fresh copy of the lessons, for the tests of what is on the screen."""

import os
import re
import subprocess
import sys
import time

import pytest

#: Software drawing, nothing fetched in the background.
FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
#: The screen of a small laptop.
LAPTOP = {"width": 1366, "height": 768}


@pytest.fixture(scope="session")
def browser(chromium_path):
    """A headless Chromium."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as play:
        chromium = play.chromium.launch(executable_path=chromium_path, args=FLAGS)
        yield chromium
        chromium.close()


@pytest.fixture(scope="session")
def lab(tmp_path_factory):
    """The address of a lesson, given its file name, on a server started by the launcher."""
    folder = tmp_path_factory.mktemp("learner")
    log = folder / "server.log"
    typed = [
        sys.executable,
        "-m",
        "dryward",
        "lessons",
        "--no-browser",
        "--folder",
        str(folder / "lessons"),
        "--port",
        "8750",
    ]
    with log.open("w") as out:
        server = subprocess.Popen(typed, stdout=out, stderr=subprocess.STDOUT, env={**os.environ, "HOME": str(folder)})
        try:
            address = _address(server, log)
            yield lambda lesson: address.replace("00-start.ipynb", lesson)
        finally:
            server.terminate()
            try:
                server.wait(20)
            except subprocess.TimeoutExpired:
                server.kill()


def _address(server, log, seconds=60):
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        found = re.search(r"http://127\.0\.0\.1:\d+/\S+", log.read_text())
        if found:
            return found.group()
        if server.poll() is not None:
            break
        time.sleep(0.2)
    raise AssertionError(f"the launcher did not start: {log.read_text()[-2000:]}")


@pytest.fixture
def screen(browser):
    """A window of a small laptop that notes every error and every request that leaves the machine."""
    window = browser.new_page(viewport=LAPTOP)
    window.errors, window.strangers = [], []
    window.on("pageerror", lambda error: window.errors.append(str(error)))
    window.on(
        "request",
        lambda request: (
            None
            if re.match(r"(http|ws)://127\.0\.0\.1|data:|blob:", request.url)
            else window.strangers.append(request.url)
        ),
    )
    yield window
    window.close()
