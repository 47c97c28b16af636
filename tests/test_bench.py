"""The bench: its arithmetic, its table, and that every group really measures."""

import json

import pytest

from dryward import cli
from dryward.cli import bench
from dryward.cli.bench import Measurement


def test_a_ratio_and_its_target():
    fast = Measurement("work", 2.0, "ms", "another way", 30.0, "at least", 10.0, of_ratio=True)
    assert fast.ratio == 15
    assert fast.met is True
    assert "15 times as fast as another way" in str(fast)
    assert "met: at least 10 times" in str(fast)


def test_a_missed_target_says_so():
    slow = Measurement("work", 20.0, "ms", rule="at most", target=15.0)
    assert slow.met is False
    assert "MISSED: at most 15 ms" in str(slow)
    assert Measurement("work", 20.0, "ms").met is None


def test_medians_tell_slow_from_fast(monkeypatch):
    """By a clock that only the two works move: one second, and four; once one of them is held up."""
    clock = {"now": 0.0, "calls": 0}

    def work(seconds):
        clock["calls"] += 1
        clock["now"] += seconds + (60.0 if clock["calls"] == 6 else 0.0)

    monkeypatch.setattr(bench.time, "perf_counter", lambda: clock["now"])
    found = bench.medians(lambda: work(1.0), lambda: work(4.0), repeats=3, least=2.0)
    assert found == [pytest.approx(1.0), pytest.approx(4.0)]


def test_a_new_process_answers():
    assert bench.in_a_new_process("print('noise'); print(2.5)", repeats=1) == 2.5
    assert bench.in_a_new_process("import os; print(os.environ['ASKED'])", repeats=1, ASKED="7") == 7


@pytest.mark.slow
@pytest.mark.parametrize("group", bench.GROUPS)
def test_every_group_measures(group, capsys):
    assert cli.main(["bench", group, "--json"]) in (0, 1)
    rows = json.loads(capsys.readouterr().out)["measurements"]
    assert rows
    assert all(row["value"] > 0 for row in rows)


def test_an_unknown_group(capsys):
    assert cli.main(["bench", "stedy"]) == 2
    assert capsys.readouterr().err == 'dryward: There is no group of measurements "stedy"; did you mean steady?\n'


def test_status_one_when_a_target_is_missed(monkeypatch, capsys):
    slow = Measurement("work", 20.0, "ms", rule="at most", target=15.0)
    monkeypatch.setitem(bench.GROUPS, "steady", lambda: iter([slow]))
    assert cli.main(["bench", "steady"]) == 1
    assert "1 measurements; 1 targets missed." in capsys.readouterr().out


def test_the_table_of_the_front_page():
    words = bench.table([Measurement("work", 2.0, "ms", "another way", 30.0, "at most", 3.0)])
    assert "| work | 2 ms | 15 times as fast as another way | at most 3 ms |" in words
