"""A class on one box, measured: ``python tests/classroom/load.py 5 10 20 30`` prints a table.

Each learner opens a lesson (one a second come in, or all at once), reads,
and drags one slider or another in short bursts, two updates a second, with a
pause to think between them, by the messages a browser sends.  Server and
learners share this machine.  Loopback only; each size takes about half a
minute.
"""

import asyncio
import random
import statistics
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

import psutil
from served import enter, proportional_memory, served
from visitor import Visitor

#: Updates a second of a learner who drags, and seconds of dragging and of thinking.
RATE, DRAG, THINK = 2.0, 5.0, 2.0
#: Part of the slider between two updates of a drag.
STEP = 0.02


@dataclass
class Measured:
    """What a class of one size took; times in seconds, memory in MB."""

    learners: int
    opened: list
    took: list
    pictures: float
    behind: int
    kernels: list
    server: float
    failures: list
    processor: float

    def row(self):
        """The row of the table."""
        took = sorted(1000 * each for each in self.took)
        cells = (
            self.learners,
            f"{statistics.median(self.opened):.1f} / {max(self.opened):.1f}",
            f"{statistics.median(took):.0f} / {took[int(0.95 * len(took))]:.0f}",
            f"{self.pictures:.0f}",
            self.behind,
            f"{statistics.median(self.kernels):.0f}",
            f"{self.server:.0f}",
            f"{100 * self.processor:.0f} %",
            len(self.failures),
        )
        return "| " + " | ".join(map(str, cells)) + " |"


HEAD = """\
| learners at once | page opens: median / last, s | move to picture: p50 / p95, ms | all drag: pictures/s \
| newest lost | memory each, MB | server, MB | processor | failures |
|---|---|---|---|---|---|---|---|---|"""


def _step(visitor, slider, place, way):
    """The next place of a drag, turned back at the ends; the value there."""
    way = -way if not 0 <= place + way <= 1 else way
    return place + way, way, {slider["name"]: visitor.at(slider, place + way)}


async def _lesson(visitor, seconds, took, rng):
    """Bursts of dragging, one slider or another, with thought between them."""
    end = time.monotonic() + seconds
    await asyncio.sleep(rng.uniform(0, 1 / RATE))
    while time.monotonic() < end:
        slider, way = rng.choice(visitor.sliders()), rng.choice((-1, 1)) * STEP
        place, burst = visitor.place(slider), min(time.monotonic() + DRAG, end)
        while time.monotonic() < burst:
            due = time.monotonic() + 1 / RATE
            place, way, values = _step(visitor, slider, place, way)
            took.append(await visitor.moved(**values))
            await asyncio.sleep(max(0.0, due - time.monotonic()))
        await asyncio.sleep(rng.uniform(0.5, 1.5) * THINK if time.monotonic() < end else 0)


async def _hurry(visitor, seconds):
    """As fast as pictures come back, as a dragged slider does; whether the newest value was lost in the end."""
    slider, end = visitor.sliders()[1], time.monotonic() + seconds
    place, way = visitor.place(slider), STEP / 4
    while time.monotonic() < end:
        for _ in range(2):  # two on the way, as a dragged slider has: neither may overtake the other
            place, way, values = _step(visitor, slider, place, way)
            visitor.move(**values)
        await visitor.wait(lambda: visitor.seen >= visitor.serial)
    wanted = visitor.at(slider, 0.5)
    await visitor.moved(**{slider["name"]: wanted})
    return abs(visitor.live["values"][slider["name"]] - wanted) > 1e-9


async def _class(server, learners, seconds, hurry, lesson):
    rng, failures, took, visitors = random.Random(20), [], [], []

    async def arrive():
        visitor = Visitor(server.address, await asyncio.to_thread(enter, server), lesson)
        try:
            opened = await visitor.open()
            await visitor.predict(rng.randrange(3))
            visitors.append(visitor)
            return opened
        except Exception as reason:
            failures.append(f"open: {reason!r}")
            return None

    opened = [each for each in await asyncio.gather(*(arrive() for _ in range(learners))) if each is not None]
    await asyncio.sleep(3)  # the kernels kept ready have been started again
    box = psutil.Process(server.process.pid)
    family = [box, *server.kernels()]
    before, begin = sum(sum(each.cpu_times()[:2]) for each in family), time.monotonic()
    for end in await asyncio.gather(*(_lesson(each, seconds, took, rng) for each in visitors), return_exceptions=True):
        if isinstance(end, Exception):
            failures.append(f"lesson: {end!r}")
    spent = sum(sum(each.cpu_times()[:2]) for each in family) - before
    processor = spent / (time.monotonic() - begin) / psutil.cpu_count()
    already = sum(each.pictures for each in visitors)
    lost = await asyncio.gather(*(_hurry(each, hurry) for each in visitors), return_exceptions=True)
    failures += [f"hurry: {each!r}" for each in lost if isinstance(each, Exception)]
    pictures = (sum(each.pictures for each in visitors) - already) / hurry
    used = [proportional_memory(each) for each in server.kernels()]
    used = sorted(used)[-len(visitors) :]
    memory = proportional_memory(box)
    await asyncio.gather(*(each.close() for each in visitors))
    behind = sum(each is True for each in lost)
    return Measured(learners, opened, took, pictures, behind, used, memory, failures, processor)


def measure(learners, folder, seconds=14.0, hurry=4.0, lesson="where-it-gets-wet"):
    """A class of that size on a server of its own."""
    with served(folder, "--ready", "4") as server:
        time.sleep(4)
        return asyncio.run(_class(server, learners, seconds, hurry, lesson))


def main(*sizes):
    print(HEAD, flush=True)
    for size in map(int, sizes or (5, 10, 20, 30)):
        with tempfile.TemporaryDirectory() as folder:
            found = measure(size, Path(folder))
        print(found.row(), flush=True)
        for each in found.failures:
            print("  ", each)


if __name__ == "__main__":
    main(*sys.argv[1:])
