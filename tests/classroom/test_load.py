"""A small class on one box in every run, and one of thirty with --slow: nobody fails, the newest value wins."""

import asyncio
import statistics

import pytest
from load import measure
from served import enter, served
from visitor import Visitor

from dryward.school.learners import Learners
from dryward.teaching.progress import Progress

#: Memory of a steady lesson's kernel [MB]; it imports neither CoolProp nor Numba nor SciPy nor pvlib.
LIGHT = 100


@pytest.mark.parametrize(("learners", "slowest"), [(3, 0.5), pytest.param(30, 0.5, marks=pytest.mark.slow)])
def test_a_class_at_once(tmp_path, learners, slowest):
    found = measure(learners, tmp_path, seconds=4.0, hurry=2.0)
    assert found.failures == []
    assert len(found.opened) == learners
    assert found.behind == 0, "the newest value shows in the end"
    assert max(found.kernels) < LIGHT
    # What a busy machine can bear; `load.py` measures.
    assert statistics.median(found.took) < slowest


def test_nobodys_answers_are_lost_when_all_answer_at_once(tmp_path):
    async def everybody(server, count):
        visitors = [Visitor(server.address, enter(server)) for _ in range(count)]
        await asyncio.gather(*(each.open() for each in visitors))

        async def answers(visitor, number):
            await visitor.predict(number % 3)
            for check in range(3):
                visitor.say({"kind": "answer", "number": check, "choice": number % 3})
            await visitor.wait(lambda: all(each["reply"] for each in visitor.frame["questions"][:3]))
            await visitor.close()

        await asyncio.gather(*(answers(*each) for each in zip(visitors, range(count), strict=True)))

    with served(tmp_path) as server:
        asyncio.run(everybody(server, 4))
    folders = Learners(tmp_path / "class").folders().values()
    kept = [Progress(folder) for folder in folders]
    assert [each.trouble for each in kept] == [""] * 4
    assert [len(each.events("answer")) for each in kept] == [3] * 4
    assert [len(each.events("prediction")) for each in kept] == [1] * 4
