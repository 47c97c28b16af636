"""Long work of the desk goes on in the background: the page shows how far it is, and ends it on request."""

import asyncio
import threading
from concurrent.futures import ThreadPoolExecutor
from types import SimpleNamespace

import numpy as np
import pytest
from lesson_page import open_page
from test_your_roof import parts, spoken

from dryward.checks import OutOfRange
from dryward.panels.desk import results
from dryward.panels.desk.results import Background, difference, names_of
from dryward.pictures.year import MoistureYear

#: The first run on a machine compiles [s].
WAIT = 300


def apart(scenario):
    """A browser's loop, in a thread of its own: other tests leave one in this."""
    with ThreadPoolExecutor(1) as pool:
        return pool.submit(asyncio.run, scenario).result(WAIT)


async def until(true):
    while not true():  # bounded by `apart`
        await asyncio.sleep(0.01)


@pytest.fixture
def folder(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    return tmp_path


def desk(folder):
    page = open_page("your-roof", folder)
    page.act("set:years", "1")
    return page


def test_a_comparison_is_shown_as_it_goes_on_and_is_that_of_the_foreground(folder):
    page = desk(folder)
    page.act("compare", "place:hot-dry")
    expected = page.comparing.pair

    async def scenario():
        page = desk(folder)
        page.act("compare", "place:hot-dry")
        assert page.comparing.task.running, "the page answers before the roofs are checked"
        assert "compare:stop" in parts(page)
        assert '"kind": "progress"' in spoken(page)
        task, seen = page.comparing.task, set()
        show = task.show
        task.show = lambda: (seen.add(task.done), show())
        await until(lambda: not task.running)
        assert len(seen) >= 4, "how far it is was shown"
        assert "compare:stop" not in parts(page)
        assert difference(page.comparing.pair, names_of(*page.comparing.jobs), page.unit_system) in spoken(page)
        return page.comparing.pair

    assert apart(scenario()) == expected


def test_a_comparison_is_stopped_and_taken_up_again(folder):
    async def scenario():
        page = desk(folder)
        page.act("set:years", "10")
        page.act("compare", "preset:vented-vault-closed")
        await until(lambda: page.comparing.task.done > 0)
        page.act("compare:stop")
        await until(lambda: not page.comparing.task.running)
        assert page.comparing.pair is None
        assert "stopped" in page.comparing.trouble
        assert "compare:again" in parts(page)
        page.act("set:years", "1")
        page.act("compare:again")
        assert page.comparing.trouble == ""
        await until(lambda: not page.comparing.task.running)
        assert difference(page.comparing.pair, names_of(*page.comparing.jobs), page.unit_system) in spoken(page)
        page.act("set:room.relative_humidity", "33 %")
        assert "The roof has changed since this comparison." in spoken(page)

    apart(scenario())


def test_another_choice_drops_the_comparison_that_goes_on(folder):
    async def scenario():
        page = desk(folder)
        page.act("set:years", "10")
        page.act("compare", "preset:vented-vault-closed")
        await until(lambda: page.comparing.task.done > 0)
        page.act("compare", "")
        assert not page.comparing.task.running
        assert "compare:stop" not in parts(page)
        await asyncio.sleep(0.3)
        assert page.comparing.pair is None
        assert page.comparing.trouble == ""

    apart(scenario())


def test_the_checks_are_stopped(folder):
    async def scenario():
        page = desk(folder)
        page.act("set:years", "10")
        page.act("check:run")
        await until(lambda: page.checking.task.done > 0)
        page.act("check:stop")
        await until(lambda: not page.checking.task.running)
        assert page.checking.review is None
        assert "stopped" in page.checking.task.trouble

    apart(scenario())


def work_of(task, work):
    """What came of some work that was done at once."""
    found = []
    task.start(work, found.append)
    return found


def test_work_that_fails_says_so_and_gives_nothing():
    task = Background(lambda: None, "panels.the-checks")

    def refused(progress):
        raise OutOfRange("No.")

    assert work_of(task, refused) == []
    assert task.trouble == "No."
    assert work_of(task, lambda progress: 1 / 0) == []
    assert task.trouble == "The checks could not be worked out (ZeroDivisionError). Change a layer and try again."
    assert work_of(task, lambda progress: 5) == [5]
    assert (task.trouble, task.running) == ("", False)


def test_a_page_that_is_gone_is_told_nothing():
    """The loop is closed while the work goes on: the thread ends without a word."""
    go, threads = threading.Event(), []
    shown = []

    def work(progress):
        threads.append(threading.current_thread())
        assert go.wait(WAIT)
        progress(1, 2)
        return 5

    async def scenario():
        Background(lambda: shown.append(1), "The sum").start(work, shown.append)

    apart(scenario())
    go.set()
    threads[0].join(WAIT)
    assert not threads[0].is_alive()
    assert shown == []


@pytest.mark.parametrize("without", [0, 1])
def test_two_years_are_drawn_only_where_both_have_wood(without, monkeypatch):
    pair = [SimpleNamespace(hourly=True, without=k == without) for k in (0, 1)]
    year = MoistureYear(np.array([1.0, 2.0]), (("deck", np.array([10.0, 12.0])),))
    monkeypatch.setattr(results, "moisture_year", lambda each: None if each.without else year)
    assert results._two_years(pair, ("here", "there")) is None
    pair[without].without = False
    both = results._two_years(pair, ("here", "there"))
    assert both.names == ("here", "there")
    pair[0].hourly = False
    assert results._two_years(pair, ("here", "there")) is None
