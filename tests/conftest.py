"""What all tests share: the --slow option, and browser tests only where a browser is."""

import asyncio
import os
import shutil
from pathlib import Path

import pytest
from chromium import axe, browser, lab, screen
from hypothesis import settings

# One browser and one server of a run, whichever folder asks for them first: two would not share a thread.
__all__ = ["axe", "browser", "lab", "screen"]

# What a developer keeps for own lessons is none of the tests' business.
os.environ["DRYWARD_OWN_LESSONS"] = ""
# A busy machine makes no test fail.
settings.register_profile("unhurried", deadline=None)
settings.load_profile("unhurried")


def pytest_addoption(parser):
    parser.addoption("--slow", action="store_true", help="run the slow tests too")


def chromium():
    """Path of an installed Chromium, or None."""
    named = os.environ.get("DRYWARD_CHROMIUM")
    return named or next(filter(None, map(shutil.which, ("chromium", "chromium-browser", "google-chrome"))), None)


#: Folders whose files take long, whatever their number of tests: they are begun first, so that none is left alone
#: at the end of a run on several workers.
LONG = ("screens", "classroom", "report", "course", "published", "physics")


def pytest_collection_modifyitems(config, items):
    here = Path(__file__).parent
    rooms = [here / name for name in LONG]
    place = {room: k for k, room in enumerate(rooms)}
    items.sort(key=lambda item: next((place[each] for each in item.path.parents if each in place), len(rooms)))
    no_browser = pytest.mark.skip(reason="no Chromium found: install it, or name it in DRYWARD_CHROMIUM")
    not_slow = pytest.mark.skip(reason="slow: run with --slow")
    for item in items:
        if item.get_closest_marker("browser") and not chromium():
            item.add_marker(no_browser)
        if item.get_closest_marker("slow") and not config.getoption("--slow"):
            item.add_marker(not_slow)


@pytest.fixture(scope="session")
def chromium_path():
    """Path of the Chromium that browser tests drive."""
    return chromium()


@pytest.fixture(autouse=True)
def no_loop_of_the_browser(request):
    """The event loop that a browser of another test keeps in this thread is no loop of a page's."""
    loop = asyncio._get_running_loop()
    if loop is None or request.node.get_closest_marker("browser"):
        yield
        return
    asyncio._set_running_loop(None)
    yield
    asyncio._set_running_loop(loop)
