"""A Chromium, and JupyterLab on a fresh copy of the lessons, for the tests of what is on the screen."""

import json
import os
import re
import shutil
import subprocess
import sys
import tarfile
import time
from functools import partial

import pytest
import sessions

#: Software drawing, nothing fetched in the background.
FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
#: The screen of a small laptop.
LAPTOP = {"width": 1366, "height": 768}
#: The version of axe-core whose findings count.
AXE = "axe-core@4.10.3"
_FINDINGS = """
async () => {
  const found = await axe.run(document, { resultTypes: ['violations'] });
  return found.violations.filter(each => ['serious', 'critical'].includes(each.impact))
    .map(each => `${each.id} (${each.impact}): ` +
      each.nodes.slice(0, 3).map(node => node.html.slice(0, 110)).join(' | '));
}
"""


@pytest.fixture(autouse=True, scope="module")
def no_page_left():
    """A widget is kept until it is closed, and with it its page and pictures: some 50 MB each."""
    yield
    if "ipywidgets" in sys.modules:
        sys.modules["ipywidgets"].Widget.close_all()


@pytest.fixture(scope="session")
def browser(chromium_path):
    """A headless Chromium whose windows ask for less motion, where a test does not ask for it.

    A page on which vapor or a year runs takes half a core from the tests beside it, and what most tests look at
    stands still.
    """
    from playwright.sync_api import sync_playwright

    with sync_playwright() as play:
        chromium = play.chromium.launch(executable_path=chromium_path, args=FLAGS)
        for opened in ("new_page", "new_context"):
            setattr(chromium, opened, partial(getattr(chromium, opened), reduced_motion="reduce"))
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

            def opened(lesson):
                # Each test meets its lesson as for the first time, whatever another one predicted,
                # and the kernels of earlier lessons do not fill the memory.
                sessions.end_all(address)
                (folder / "lessons" / "dryward-progress.json").unlink(missing_ok=True)
                return address.replace("00-start.ipynb", lesson)

            yield opened
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
    # The first hourly lesson on a machine compiles before it answers.
    window.set_default_navigation_timeout(120_000)
    window.set_default_timeout(60_000)
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


@pytest.fixture(scope="session")
def axe(pytestconfig):
    """The script of axe-core, fetched once by npm."""
    folder = pytestconfig.cache.mkdir("axe")
    script = folder / f"{AXE}.js"
    if not script.is_file():
        npm = shutil.which("npm")
        if npm is None:
            pytest.skip("npm is missing: axe-core cannot be fetched")
        done = subprocess.run([npm, "pack", AXE, "--json"], cwd=folder, capture_output=True, text=True, timeout=120)
        if done.returncode:
            pytest.skip(f"npm could not fetch {AXE}")
        with tarfile.open(folder / json.loads(done.stdout)[0]["filename"]) as packed:
            script.write_bytes(packed.extractfile("package/axe.min.js").read())
    return script.read_text("utf-8")


def findings(window, axe):
    if not window.evaluate("'axe' in window"):
        window.evaluate(axe)
    return window.evaluate(_FINDINGS)
