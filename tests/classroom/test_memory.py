"""A learner's memory at the class server: one sentence for a lesson over it, and the lesson opens again."""

import asyncio
import os
import subprocess
import sys
import time
from pathlib import Path
from types import SimpleNamespace

import psutil
import pytest
from jupyter_client.manager import start_new_kernel

from dryward.school import seat_start
from dryward.school.hub import Seat, hold_memory, make_seats

MB = 10**6
LESSON = "from dryward import panels; p = panels.page('where-it-gets-wet'); p.refresh(); len(p.picture)"
#: A server with two lessons, of which the second takes more.
_SEAT = """
import subprocess, sys
for size in (40, 120):
    held = f"held = bytearray({size} * 10**6); print('ready', flush=True); import time; time.sleep(60)"
    subprocess.Popen([sys.executable, "-c", held])
import time; time.sleep(60)
"""

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="limits as Linux has them")


def _run(client, code):
    """What a cell prints, and what it comes to."""
    said = []
    reply = client.execute_interactive(code, timeout=120, output_hook=said.append)
    text = "".join(each["content"]["text"] for each in said if each["msg_type"] == "stream")
    shown = [each["content"]["data"]["text/plain"] for each in said if each["msg_type"] == "execute_result"]
    assert not [each for each in said if each["msg_type"] == "error"], "no traceback"
    return reply["content"]["status"], text, shown


@pytest.fixture
def kernel(tmp_path):
    """A kernel as the class server starts one: 1 GB, and what is run first."""
    make_seats(1, tmp_path)
    one = Seat(folder=str(tmp_path), mem_limit="1G", first_number=0)
    one.user = SimpleNamespace(name="seat-01")
    one.home.mkdir(mode=0o700)
    env = {**os.environ, "PYTHONSTARTUP": seat_start.__file__, "OPENBLAS_NUM_THREADS": "1", "OMP_NUM_THREADS": "1"}
    manager, client = start_new_kernel(preexec_fn=one.make_preexec_fn("seat-01"), env=env)
    yield client
    client.stop_channels()
    manager.shutdown_kernel(now=True)


def test_a_lesson_over_its_memory_is_one_sentence_and_opens_again(kernel):
    status, said, _ = _run(kernel, "rows = [bytearray(10**8) for _ in range(20)]")
    assert status == "error"
    assert said.startswith("The memory that this seat may use is used up. Choose Kernel > Restart Kernel")
    assert said.count("\n") == 1
    status, said, shown = _run(kernel, LESSON)
    assert (status, said) == ("ok", "")
    assert int(shown[0]) > 1000


def test_a_lesson_has_room_to_spare(kernel):
    assert _run(kernel, LESSON)[0] == "ok"
    _, _, shown = _run(kernel, "import os; os.getpid()")
    taken = next(
        int(line.split()[1]) * 1024
        for line in Path(f"/proc/{shown[0]}/status").read_text().splitlines()
        if line.startswith("VmData")
    )
    assert taken < 500 * MB, "half of what a process may take"


@pytest.fixture
def seat():
    """The processes of a seat: its server first."""
    server = subprocess.Popen([sys.executable, "-c", _SEAT], stdout=subprocess.PIPE, text=True)
    for _ in range(2):
        assert server.stdout.readline() == "ready\n"
    family = [psutil.Process(server.pid), *psutil.Process(server.pid).children()]
    yield family
    for each in [*psutil.Process(server.pid).children(), psutil.Process(server.pid)]:
        each.kill()
    server.wait()
    server.stdout.close()


def _alive(family):
    return [each.is_running() and each.status() != psutil.STATUS_ZOMBIE for each in family]


def _ended(family):
    """The last one, and no other."""
    end = time.monotonic() + 10
    while _alive(family) != [True, True, False]:
        assert time.monotonic() < end
        time.sleep(0.05)


def test_a_seat_over_its_memory_loses_its_heaviest_lesson_alone(seat):
    assert hold_memory(seat[0].pid, 400 * MB) is None
    assert _alive(seat) == [True, True, True]
    taken = hold_memory(seat[0].pid, 120 * MB)
    assert 160 * MB < taken < 300 * MB
    _ended(seat)
    assert hold_memory(seat[0].pid, 120 * MB) is None


def test_the_hub_looks_when_it_asks_whether_a_seat_runs(seat, tmp_path, caplog):
    make_seats(1, tmp_path)
    one = Seat(folder=str(tmp_path), mem_limit="120M", first_number=0)
    one.user = SimpleNamespace(name="seat-01")
    one.pid = seat[0].pid
    assert asyncio.run(one.poll()) is None
    assert "seat-01 took" in caplog.text
    _ended(seat)
    assert asyncio.run(one.poll()) is None
    assert _alive(seat) == [True, True, False]


def test_what_is_shared_is_not_counted_twice(seat):
    together = sum(each.memory_info().rss for each in seat)
    shared_out = sum(each.memory_full_info().pss for each in seat)
    assert shared_out < together - MB
    assert hold_memory(seat[0].pid, (together + shared_out) // 2) is None
    assert _alive(seat) == [True, True, True]


def test_a_seat_that_is_gone_is_no_trouble():
    done = subprocess.Popen([sys.executable, "-c", ""])
    done.wait()
    assert hold_memory(done.pid, MB) is None
