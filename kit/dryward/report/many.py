"""Many roofs in many places: on all cores, or on a cluster that is running.

The same function serves both: a job goes out as the text of its file, its
answers come back as plain numbers and words.
"""

import dataclasses
import math
import os
from concurrent.futures import ProcessPoolExecutor, as_completed
from multiprocessing import get_context

from dryward.building import layer_order, library
from dryward.building.job import job_text, parse_job
from dryward.checks import OutOfRange, PlainError
from dryward.report.review import review
from dryward.verdict import UNKNOWN


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
    return {
        "name": name,
        "assembly": review.job.assembly.name,
        "place": review.job.place.id or "typed monthly means",
        "state": review.state,
        "holds": review.holds,
        "verdict": judged(review.verdict),
        "headline": review.headline,
        "small": review.limits,
        "designs": {design: each.state for design, each in review.designs},
        "room_humidity_limit": dataclasses.asdict(review.limit) if review.limit else None,
        "with_assumed_leak": judged(review.leaky) if review.leaky else None,
        "warnings": list(layer_order.warnings(review.job.assembly)),
        "checks": [_check(each) for each in review.checks],
        "layers": [_layer(layer) for layer in review.job.assembly.layers],
        "notes": list(review.notes),
    }


def judged(verdict):
    """A verdict as plain data: its state, its findings with their limits, the worst first, and what decides.

    Parameters
    ----------
    verdict : Verdict

    Returns
    -------
    dict
    """
    return _nine(
        {
            "method": verdict.method,
            "state": verdict.state,
            "findings": [_finding(each) for each in verdict.findings],
            "dries": verdict.dries,
            "toward": verdict.toward,
            "decides": dataclasses.asdict(verdict.decides) if verdict.decides else None,
            "left_out": list(verdict.left_out),
            "years": verdict.years,
            "repeats": verdict.repeats,
            "start": verdict.start,
        }
    )


def _finding(each):
    limit = each.criterion
    return {
        "what": each.what,
        "quantity": each.quantity,
        "layer": each.place.layer,
        "side": each.place.side,
        "beside": each.place.beside,
        "state": each.state,
        **_finite({"value": each.value, "lasted": each.lasted, "ran_off": each.ran_off}),
        "when": each.when,
        "frost": each.frost,
        "full": each.full,
        "criterion": _finite({"unit": limit.unit, "caution": limit.caution, "damage": limit.damage})
        | {"source": limit.source, "how_read": limit.how_read},
    }


def _check(each):
    found = {key: getattr(each, key) for key in ("id", "asked", "answer", "said", "what", "why", "change")}
    found |= {"lines": list(each.lines), "matters": each.matters, "limits": each.limits, "source": each.source}
    found["verdict"] = judged(each.verdict) if each.verdict else None
    found["numbers"] = [_finite(dataclasses.asdict(number)) for number in each.numbers]
    return found


def _layer(layer):
    """A layer with what its values come from."""
    found = {"name": layer.name, "substance": layer.substance.name, "thickness": layer.thickness}
    found |= {"thermal_resistance": layer.thermal_resistance, "permeance": layer.permeance}
    return _finite(found) | {"source": library.source_of(layer.substance)}


def _finite(number):
    """JSON has no infinity: a rate without a limit becomes null."""
    return {k: None if isinstance(v, float) and not math.isfinite(v) else v for k, v in number.items()}


def _nine(found):
    """Numbers of a verdict to nine digits: the last ones of a long sum hang on where the arrays lie in memory."""
    if isinstance(found, float):
        return float(f"{found:.9g}")
    if isinstance(found, dict):
        return {key: _nine(each) for key, each in found.items()}
    return [_nine(each) for each in found] if isinstance(found, (list, tuple)) else found


def one(words, name="", hourly=True, spread=0, edition=None, with_trials=True, progress=None):
    """Check one job given as the text of its file.

    Parameters
    ----------
    words : str
        Of a job file or an assembly file.
    name : str, optional
    hourly, spread, edition, with_trials, progress : optional
        As in `review`.

    Returns
    -------
    dict
        As `plain`; a job that cannot be checked has the state "not known yet"
        and the sentence in ``error``.
    """
    try:
        job = parse_job(words, name or "the file")
        return plain(review(job, progress, hourly, spread, edition, with_trials), name)
    except PlainError as error:
        return failed(name, str(error))


def failed(name, sentence):
    """What stands for a job that cannot be checked.

    Parameters
    ----------
    name, sentence : str

    Returns
    -------
    dict
    """
    return {
        "name": name,
        **dict.fromkeys(("assembly", "place", "headline", "small"), ""),
        "state": UNKNOWN,
        "holds": False,
        "verdict": None,
        "designs": {},
        "room_humidity_limit": None,
        "with_assumed_leak": None,
        **{key: [] for key in ("warnings", "checks", "layers", "notes")},
        "error": sentence,
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
        return {name: job_text(job) for name, job in jobs.items()}
    return {
        f"{name} in {place.id or place.kind}": job_text(dataclasses.replace(job, place=place))
        for name, job in jobs.items()
        for place in places
    }


def many(
    work, hourly=True, workers=None, scheduler=None, progress=None, spread=0, parts=None, edition=None, with_trials=True
):
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
    parts : function, optional
        Called with (parts done, parts in all) of each job where they are done one by one here.
    edition, with_trials : optional
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
    results, options = {}, (hourly, spread, edition, with_trials)

    def keep(name, result):
        results[name] = result
        if progress:
            progress(len(results), len(work), result)

    if scheduler:
        _on_cluster(work, options, scheduler, keep)
    elif (workers or _cores()) == 1 or len(work) == 1:
        for name, words in work.items():
            keep(name, one(words, name, *options, parts))
    else:
        # A fresh process each: a fork of a process with threads can hang.
        with ProcessPoolExecutor(min(workers or _cores(), len(work)), get_context("spawn")) as pool:
            waiting = {pool.submit(one, words, name, *options): name for name, words in work.items()}
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
