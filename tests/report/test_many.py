"""Many roofs: the same answers alone, on all cores, and on a real local cluster."""

import pytest
from jobs_at_hand import OPEN, TIGHT

from dryward.building.job import Place
from dryward.checks import OutOfRange
from dryward.report import many, review

WORK = many.sweep({"open": OPEN, "tight": TIGHT}, [Place("demo", "cold"), Place("demo", "hot-dry")])


def test_processes_and_one_by_one_agree_to_the_last_digit():
    alone = many.many(WORK, hourly=False, workers=1)
    told = []
    spread = many.many(WORK, hourly=False, workers=2, progress=lambda *what: told.append(what[:2]))
    assert spread == alone
    assert told == [(1, 4), (2, 4), (3, 4), (4, 4)]
    assert [each["name"] for each in alone] == list(WORK)


def test_a_job_that_cannot_be_read_is_a_sentence_among_results():
    (result,) = many.many({"bad": "layers = 3"}, workers=1)
    assert result["state"] == "not known yet"
    assert set(result) - {"error"} == set(many.plain(review(TIGHT, hourly=False)))
    assert result["error"].startswith("bad: ")


def test_the_plain_form_has_the_reviews_own_numbers():
    found = review(TIGHT, hourly=False)
    data = many.plain(found, "roof")
    winter = next(each for each in data["checks"] if each["id"] == "winter")
    gained = next(each for each in winter["numbers"] if each["id"] == "water-gained")
    assert gained["value"] == found.check("winter").number("water-gained")


def test_workers_out_of_range():
    with pytest.raises(OutOfRange, match="Workers is 0; it must be 1 to 256"):
        many.many(WORK, workers=0)


@pytest.mark.slow
@pytest.mark.filterwarnings("ignore")  # the cluster library's own
def test_on_a_cluster():
    distributed = pytest.importorskip("dask.distributed")
    with distributed.LocalCluster(
        n_workers=2, threads_per_worker=1, dashboard_address=None, host="127.0.0.1"
    ) as cluster:
        there = many.many(WORK, hourly=False, scheduler=cluster.scheduler_address)
    assert there == many.many(WORK, hourly=False, workers=1)


@pytest.mark.slow
@pytest.mark.filterwarnings("ignore")
def test_a_scheduler_that_does_not_answer(monkeypatch):
    pytest.importorskip("dask.distributed")
    with pytest.raises(OutOfRange, match=r"The scheduler tcp://127\.0\.0\.1:9 does not answer"):
        many.many(WORK, scheduler="tcp://127.0.0.1:9")
