"""Many roofs in many places: on all cores, or on a cluster that is running.

The same function serves both: a job goes out as the text of its file, its
findings come back as plain numbers and words.
"""

import dataclasses
import math
import os
from concurrent.futures import ProcessPoolExecutor, as_completed
from multiprocessing import get_context

from dryward.building import job_files, order, origins
from dryward.checks import OutOfRange, PlainError
from dryward.report.review import review


def plain(review, name=""):
    """A review as plain data, for JSON or for another machine.

    Parameters
    ----------
    review : Review
    name : str, optional
        What the job is called, such as its file.

    Returns
    -------
    dict
        SI; the numbers are exactly those of the review.
    """
    findings = []
    for each in review.findings:
        found = {key: getattr(each, key) for key in ("id", "question", "answer", "good", "what", "why", "change")}
        found |= {"matters": each.matters, "limits": each.limits, "source": each.source}
        found["numbers"] = [_finite(dataclasses.asdict(number)) for number in each.numbers]
        findings.append(found)
    return {
        "name": name,
        "assembly": review.job.assembly.name,
        "place": review.job.place.id or "typed monthly means",
        "dries": review.dries,
        "outcome": review.outcome,
        "verdict": review.verdict,
        "small": review.limits,
        "warnings": list(order.warnings(review.job.assembly)),
        "findings": findings,
        "layers": [_layer(layer) for layer in review.job.assembly.layers],
        "notes": list(review.notes),
    }


def _layer(layer):
    """A layer with what its values come from."""
    found = {"name": layer.name, "substance": layer.substance.name, "thickness": layer.thickness}
    found |= {"thermal_resistance": layer.thermal_resistance, "permeance": layer.permeance}
    return _finite(found) | {"source": origins.said(layer.substance)}


def _finite(number):
    """JSON has no infinity: a rate without a limit becomes null."""
    return {k: None if isinstance(v, float) and not math.isfinite(v) else v for k, v in number.items()}


def one(words, name="", hourly=True, spread=0, edition=None, progress=None):
    """Check one job given as the text of its file.

    Parameters
    ----------
    words : str
        Of a job file or an assembly file.
    name : str, optional
    hourly, spread, edition, progress : optional
        As in `review`.

    Returns
    -------
    dict
        As `plain`; a job that cannot be checked has ``dries`` None and the
        sentence in ``error``.
    """
    try:
        return plain(review(job_files.parse(words, name or "the file"), progress, hourly, spread, edition), name)
    except PlainError as error:
        empty = dict.fromkeys(("assembly", "place", "outcome", "verdict", "small"), "")
        return {
            "name": name,
            **empty,
            "dries": None,
            "warnings": [],
            "findings": [],
            "layers": [],
            "notes": [],
            "error": str(error),
        }


def sweep(jobs, places=None):
    """The same roofs in every place.

    Parameters
    ----------
    jobs : dict
        Name -> Job.
    places : sequence of Place, optional
        Otherwise each job stays where it is.

    Returns
    -------
    dict
        Name -> text of a job file.
    """
    if not places:
        return {name: job_files.words(job) for name, job in jobs.items()}
    return {
        f"{name} in {place.id or place.kind}": job_files.words(dataclasses.replace(job, place=place))
        for name, job in jobs.items()
        for place in places
    }


def many(work, hourly=True, workers=None, scheduler=None, progress=None, spread=0, hours=None, edition=None):
    """Check many jobs at once.

    Parameters
    ----------
    work : dict
        Name -> text of a job file, as `sweep` gives it.
    hourly : bool, optional
        As in `review`.
    workers : int, optional
        Processes on this machine, 1 to 256; otherwise one for each core.
    scheduler : str, optional
        Address of a running Dask scheduler; its workers need the kit too.
    progress : function, optional
        Called with (jobs done, jobs in all, result) as results come.
    spread : int, optional
        As in `review`.
    hours : function, optional
        Called with (hours done, hours in all) of each run where jobs are done one by one here.
    edition : str or int, optional
        As in `review`.

    Returns
    -------
    list of dict
        As `one`, in the order of `work`.

    Raises
    ------
    OutOfRange
        For a number of workers out of range, or a scheduler that does not answer.
    """
    if workers is not None and not 1 <= workers <= 256:
        raise OutOfRange(f"Workers is {workers}; it must be 1 to 256.")
    results = {}

    def keep(name, result):
        results[name] = result
        if progress:
            progress(len(results), len(work), result)

    if scheduler:
        _on_cluster(work, (hourly, spread, edition), scheduler, keep)
    elif (workers or _cores()) == 1 or len(work) == 1:
        for name, words in work.items():
            keep(name, one(words, name, hourly, spread, edition, hours))
    else:
        # A fresh process each: a fork of a process with threads can hang.
        with ProcessPoolExecutor(min(workers or _cores(), len(work)), get_context("spawn")) as pool:
            waiting = {pool.submit(one, words, name, hourly, spread, edition): name for name, words in work.items()}
            for done in as_completed(waiting):
                keep(waiting[done], done.result())
    return [results[name] for name in work]


def _cores():
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _on_cluster(work, options, scheduler, keep):
    try:
        from dask.distributed import Client
        from dask.distributed import as_completed as as_gathered
    except ImportError:
        raise OutOfRange('A cluster needs Dask: install the extra "cluster".') from None
    try:
        client = Client(scheduler, timeout="10s", set_as_default=False)
    except (OSError, ValueError, TimeoutError) as error:
        raise OutOfRange(f"The scheduler {scheduler[:80]} does not answer ({type(error).__name__}).") from None
    with client, client.as_current():
        waiting = {client.submit(one, words, name, *options, pure=False): name for name, words in work.items()}
        for done in as_gathered(waiting):
            keep(waiting[done], done.result())
