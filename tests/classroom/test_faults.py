"""What breaks in a class, and that nothing made is lost: dead kernels, cut cables, closed browsers, full disks."""

import asyncio
import json
import re
import time

import psutil
import pytest
from served import FIRST_PORT, PORTS, ask, cookies_of, enter, free_port, served, start, stop
from visitor import Visitor
from wire import Wire

from dryward.school.learners import Learners
from dryward.teaching.progress import FILE, Progress

LESSON = "where-it-gets-wet"
#: Put before the learner's program: as long as the file named FULL is there, the disk takes nothing.
_FULL_DISK = """
import errno, os, pathlib
_sync = os.fsync
def fsync(file):
    if pathlib.Path({flag!r}).exists():
        raise OSError(errno.ENOSPC, "No space left on device")
    return _sync(file)
os.fsync = fsync
"""
#: Put before it too: as long as the file named is there, a kernel dies while it makes a page.  Taken away first,
#: where it can be: only one kernel dies then.
_DIES = """
import contextlib, os, pathlib, sys
def at(event, told):
    if event == "open" and "where_it_gets_wet/__pycache__" in str(told[0]) and pathlib.Path({flag!r}).exists():
        with contextlib.suppress(OSError):
            pathlib.Path({flag!r}).unlink()
        os.kill(os.getpid(), 9)
sys.addaudithook(at)
"""
#: Minutes a page may be away at the server that these tests share.
AWAY = 0.15


@pytest.fixture(scope="module")
def server(tmp_path_factory):
    with served(tmp_path_factory.mktemp("faults"), "--ready", "1", "--away", str(AWAY)) as found:
        yield found


def kept(server):
    """The file of the only learner."""
    (folder,) = [each for each in Learners(server.folder / "class").folders().values() if (each / FILE).is_file()]
    return Progress(folder)


def kept_ready(server, seconds=60):
    """Wait until a kernel is kept ready: it has loaded the kit, and does nothing more."""
    end, spent = time.monotonic() + seconds, []
    while len(spent) < 6 or spent[-1] > spent[-6]:
        assert time.monotonic() < end, "no kernel is kept ready"
        time.sleep(0.25)
        spent.append(max((sum(each.cpu_times()[:2]) for each in server.kernels()), default=len(spent)))


async def opened(server, cookies=None, choice=None):
    visitor = Visitor(server.address, cookies or enter(server), LESSON)
    await visitor.open()
    if choice is not None:
        await visitor.predict(choice)
    return visitor


async def gone(server, count, seconds):
    """Until so few kernels in use are left."""
    end = time.monotonic() + seconds
    while len(server.kernels()) > count:
        assert time.monotonic() < end, "kernels are left behind"
        await asyncio.sleep(0.3)


@pytest.mark.slow
def test_a_browser_that_is_closed_leaves_no_kernel_and_loses_nothing(server):
    async def lesson():
        visitor = await opened(server, choice=1)
        await asyncio.sleep(2.5)  # the kernel kept ready has been replaced
        await visitor.close()  # no good-bye: the battery is flat
        await gone(server, 1, 60)
        again = await opened(server, visitor.cookies)
        await again.close()
        return again.frame["prediction"]["chosen"]

    assert asyncio.run(lesson()) == 1


def test_a_page_that_says_good_bye_frees_its_kernel(server):
    async def lesson():
        visitor = await opened(server)
        await asyncio.sleep(2.5)
        await visitor.close()
        address = f"{server.address}voila/api/shutdown/{visitor.kernel}"
        assert (await asyncio.to_thread(ask, address, "POST", visitor.cookies, b""))[0] == 204
        await gone(server, 1, 60)

    asyncio.run(lesson())


@pytest.mark.slow
def test_an_open_page_is_never_closed_however_long_it_is_read(server):
    async def lesson():
        visitor = await opened(server)
        # A good-bye by mistake, as by a download, changes nothing.
        address = f"{server.address}voila/api/shutdown/{visitor.kernel}"
        await asyncio.to_thread(ask, address, "POST", visitor.cookies, b"")
        await asyncio.sleep(60 * AWAY + 6)
        name, left, _ = visitor.slider()
        await visitor.moved(**{name: left})
        await visitor.close()

    asyncio.run(lesson())


async def cut(server, wire, seconds):
    """Pull the cable in the middle of a lesson; the slider's place before and after."""
    visitor = Visitor(f"http://127.0.0.1:{wire.here}/", enter(server), LESSON)
    await visitor.open()
    await visitor.predict(2)
    name, left, right = visitor.slider()
    await visitor.moved(**{name: left + (right - left) / 4})
    place = visitor.live["values"][name]
    await asyncio.to_thread(wire.cut)
    await asyncio.wait_for(visitor.reading, 10)  # the page notices
    await asyncio.sleep(seconds)
    wire.mend()
    visitor.live = {}
    await visitor.connect()  # as the page's own script does, by itself
    await visitor.wait(lambda: "values" in visitor.live)
    found = visitor.live["values"][name]
    await visitor.moved(**{name: right})
    await visitor.close()
    return place, found


@pytest.mark.slow
@pytest.mark.parametrize("seconds", [30])
def test_a_cut_cable_keeps_sliders_where_they_were(tmp_path, seconds):
    with served(tmp_path, "--ready", "1") as server, Wire(int(server.address.split(":")[2].strip("/"))) as wire:
        place, found = asyncio.run(cut(server, wire, seconds))
    assert found == place


def test_a_dead_kernel_hangs_up_and_the_answers_are_there(server):
    async def lesson():
        visitor = await opened(server, choice=1)
        # The one that has drawn is the largest.
        max(server.kernels(), key=lambda each: each.memory_info().rss).kill()
        await asyncio.wait_for(visitor.reading, 30)
        await visitor.close()
        state = f"{server.address}api/kernels/{visitor.kernel}"
        assert (await asyncio.to_thread(ask, state, "GET", visitor.cookies))[0] == 404
        again = await opened(server, visitor.cookies)
        await again.close()
        return again.frame["prediction"]["chosen"]

    assert asyncio.run(lesson()) == 1


@pytest.mark.slow
def test_a_kernel_that_dies_while_kept_ready_is_replaced(server):
    async def lesson():
        end = time.monotonic() + 30
        while not server.kernels():
            assert time.monotonic() < end
            await asyncio.sleep(0.2)
        await asyncio.sleep(3)
        for each in server.kernels():
            each.kill()
        visitor = await opened(server)
        await visitor.close()

    asyncio.run(lesson())


def test_a_kernel_that_dies_while_it_is_handed_over_is_replaced(tmp_path):
    """It looks alive when it is taken, and never answers: as when the system kills it at that moment."""
    with served(tmp_path, "--ready", "1") as server:
        kept_ready(server)
        cookies = enter(server)
        for each in server.kernels():
            each.suspend()

        async def lesson():
            page = asyncio.create_task(asyncio.to_thread(ask, f"{server.address}lesson/{LESSON}", cookies=cookies))
            await asyncio.sleep(0.5)
            for each in server.kernels():
                if each.status() == psutil.STATUS_STOPPED:
                    each.kill()
            return await page

        status, _, text = asyncio.run(lesson())
    assert status == 200
    assert "widget-view" in text


def test_a_kernel_that_dies_while_the_page_is_made_is_replaced(tmp_path):
    flag, before = tmp_path / "die", tmp_path / "before"
    before.mkdir()
    (before / "sitecustomize.py").write_text(_DIES.format(flag=str(flag)))
    with served(tmp_path, "--ready", "1", env={"PYTHONPATH": str(before)}) as server:
        kept_ready(server)
        flag.touch()
        status, _, text = ask(f"{server.address}lesson/{LESSON}", cookies=enter(server))
        assert not flag.exists(), "one kernel died"
    assert status == 200
    assert "widget-view" in text


def test_kernels_that_always_die_are_one_plain_sentence(tmp_path):
    before = tmp_path / "before"
    before.mkdir()
    (before / "sitecustomize.py").write_text(_DIES.format(flag=str(before)))
    with served(tmp_path, "--ready", "1", env={"PYTHONPATH": str(before)}) as server:
        status, _, text = ask(f"{server.address}lesson/{LESSON}", cookies=enter(server))
        assert status == 503
        assert "The class computer is very busy. Load the page again in a minute" in text
        assert ask(server.address, cookies=enter(server))[0] == 200  # the rest is as it was


def test_a_folder_that_cannot_be_made_is_one_plain_sentence(server):
    cookies = enter(server)
    code = re.search(r"Your code is <code>([^<]+)", ask(server.address, cookies=cookies)[2]).group(1)
    place = server.folder / "class" / code.replace("-", "")
    place.write_text("")  # a file where the folder should be
    status, _, text = ask(f"{server.address}lesson/{LESSON}", cookies=cookies)
    assert status == 503
    assert "Your folder on the class computer cannot be made. Is its disk full?" in text
    place.unlink()
    assert ask(f"{server.address}lesson/{LESSON}", cookies=cookies)[0] == 200


@pytest.mark.slow
def test_a_server_started_anew_knows_the_learner(tmp_path):
    async def pulled(server):
        visitor = await opened(server, choice=2)
        server.process.kill()
        await asyncio.wait_for(visitor.reading, 20)
        await visitor.close()
        return visitor

    server = start(tmp_path, "--ready", "1")
    try:
        visitor = asyncio.run(pulled(server))
    finally:
        stop(server.process)
    with served(tmp_path, "--ready", "1") as server:
        _, headers, _ = ask(server.entry, cookies=visitor.cookies)

        async def again():
            back = await opened(server, cookies_of(headers, visitor.cookies))
            await back.close()
            return back.frame["prediction"]["chosen"]

        assert asyncio.run(again()) == 2


def test_a_full_disk_is_said_and_nothing_is_lost_once_there_is_room(tmp_path):
    flag = tmp_path / "full"
    before = tmp_path / "before"
    before.mkdir()
    (before / "sitecustomize.py").write_text(_FULL_DISK.format(flag=str(flag)))

    async def lesson(server):
        visitor = await opened(server, choice=0)
        flag.touch()
        visitor.say({"kind": "answer", "number": 0, "choice": 1})
        await visitor.wait(lambda: visitor.frame["unkept"])
        said = visitor.frame["unkept"]
        assert visitor.frame["questions"][0]["reply"]  # the lesson goes on
        held = json.loads((kept(server).path).read_text())
        assert all(each["kind"] != "answer" for each in held["events"])  # whole, and as it was
        flag.unlink()
        visitor.say({"kind": "answer", "number": 1, "choice": 0})
        await visitor.wait(lambda: not visitor.frame["unkept"])
        await visitor.close()
        return said

    with served(tmp_path, "--ready", "1", env={"PYTHONPATH": str(before)}) as server:
        said = asyncio.run(lesson(server))
        assert "the disk is full; your answers are kept while this is open" in said
        assert len(kept(server).events("answer")) == 2
        assert not [
            each
            for each in kept(server).path.parent.iterdir()
            if each.name.startswith(f".{FILE}.") and "lock" not in each.name
        ]


def test_a_port_for_a_test_is_nobody_elses(monkeypatch):
    """What the system gives to kernels, browsers and other tests is never handed out as free."""
    asked = {}
    for worker in ("gw0", "gw1", "gw2"):
        monkeypatch.setenv("PYTEST_XDIST_WORKER", worker)
        asked[worker] = {free_port() for _ in range(50)}
        assert len(asked[worker]) == 50
    assert len(set.union(*asked.values())) == 150
    assert all(FIRST_PORT <= port < FIRST_PORT + PORTS for port in set.union(*asked.values()))
