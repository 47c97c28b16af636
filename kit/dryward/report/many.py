"""Many roofs in many places: on all cores, or on a cluster that is running.

The same function serves both: a job goes out as the text of its file, its
answers come back as plain numbers and words.
"""

import dataclasses
import math
import os
from collections.abc import Callable, Sequence
from concurrent.futures import ProcessPoolExecutor, as_completed
from multiprocessing import get_context
from pathlib import Path
from typing import Any, TypeAlias

from dryward import language
from dryward.building import Layer, layer_order, library
from dryward.building.job import Job, Place, job_text, parse_job
from dryward.checks import OutOfRange, PlainError
from dryward.language import message
from dryward.report.all_checks import review
from dryward.report.check import Check, Edition, Progress, Review
from dryward.verdict import UNKNOWN, Finding, Verdict

#: What JSON can hold of a review.
Plain: TypeAlias = dict[str, Any]


def plain(review: Review, name: str = "") -> Plain:
    """A review as plain data, in SI, for JSON or for another machine; the numbers are exactly those of the review."""
    return {
        "name": name,
        "assembly": review.job.assembly.name,
        "place": review.job.place.id or message("report.typed-means"),
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


def judged(verdict: Verdict) -> Plain:
    """A verdict as plain data: its state, its findings with their limits, the worst first, and what decides."""
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


def _finding(each: Finding) -> Plain:
    limit = each.criterion
    return {
        "what": each.what,
        "quantity": each.quantity,
        "layer": each.place.layer,
        "side": each.place.side,
        "beside": each.place.beside,
        "state": each.state,
        **_finite({"value": each.value, "lasted": each.lasted, "ran_off": each.ran_off, "unbound": each.unbound}),
        "when": each.when,
        "frost": each.frost,
        "full": each.full,
        "criterion": _finite({"unit": limit.unit, "caution": limit.caution, "damage": limit.damage})
        | {"source": limit.source, "how_read": limit.how_read},
    }


def _check(each: Check) -> Plain:
    found = {key: getattr(each, key) for key in ("id", "asked", "answer", "said", "what", "why", "change")}
    found |= {"lines": list(each.lines), "matters": each.matters, "limits": each.limits, "source": each.source}
    found["verdict"] = judged(each.verdict) if each.verdict else None
    numbers = ({"id": number.id, "label": number.label, **dataclasses.asdict(number)} for number in each.numbers)
    found["numbers"] = [_finite(number) for number in numbers]
    return found


def _layer(layer: Layer) -> Plain:
    """A layer with what its values come from."""
    found = {"name": layer.name, "substance": layer.substance.name, "thickness": layer.thickness}
    found |= {"thermal_resistance": layer.thermal_resistance, "permeance": layer.permeance}
    return _finite(found) | {"source": library.source_of(layer.substance)}


def _finite(number: Plain) -> Plain:
    """JSON has no infinity: a rate without a limit becomes null."""
    return {k: None if isinstance(v, float) and not math.isfinite(v) else v for k, v in number.items()}


def _nine(found: Any) -> Any:
    """Numbers of a verdict to nine digits: the last ones of a long sum hang on where the arrays lie in memory."""
    if isinstance(found, float):
        return float(f"{found:.9g}")
    if isinstance(found, dict):
        return {key: _nine(each) for key, each in found.items()}
    return [_nine(each) for each in found] if isinstance(found, (list, tuple)) else found


def one(
    words: str,
    name: str = "",
    hourly: bool = True,
    spread: int = 0,
    edition: Edition = None,
    with_trials: bool = True,
    progress: Progress | None = None,
) -> Plain:
    """Check one job given as the text of its file.

    What cannot be checked has the state "not known yet" and the sentence in ``error``.
    """
    try:
        job = parse_job(words, name or "the file")
        return plain(review(job, progress, hourly, spread, edition, with_trials), name)
    except PlainError as error:
        return failed(name, str(error))


def _spoken(folder: Path | None, words: str, name: str, *options: Any) -> Plain:
    """`one` on another process, in the language of this one."""
    language.use(folder)
    return one(words, name, *options)


def failed(name: str, sentence: str) -> Plain:
    """What stands for a job that cannot be checked."""
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


def sweep(jobs: dict[str, Job], places: Sequence[Place] | None = None) -> dict[str, str]:
    """The same roofs in every place, name by name as the text of a job file; without places each stays where it is."""
    if not places:
        return {name: job_text(job) for name, job in jobs.items()}
    return {
        message("report.roof-in-place", roof=name, place=place.id or place.kind): job_text(
            dataclasses.replace(job, place=place)
        )
        for name, job in jobs.items()
        for place in places
    }


def many(
    work: dict[str, str],
    hourly: bool = True,
    workers: int | None = None,
    scheduler: str | None = None,
    progress: Callable[[int, int, Plain], object] | None = None,
    spread: int = 0,
    parts: Progress | None = None,
    edition: Edition = None,
    with_trials: bool = True,
) -> list[Plain]:
    """Check many jobs at once, in the order of `work`, as `one` does.

    `work` has the text of each job file by its name.  Each job takes a process, `workers` at a time (1 to 256,
    otherwise one for each core), or goes to the Dask `scheduler` at that address, whose workers need the kit too.
    `progress` is told (jobs done, in all, result), `parts` how far a job is that runs alone here.
    """
    if workers is not None and not 1 <= workers <= 256:
        raise OutOfRange(message("report.workers-out-of-range", workers=workers))
    results, options = {}, (hourly, spread, edition, with_trials)

    def keep(name: str, result: Plain) -> None:
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
            waiting = {
                pool.submit(_spoken, language.folder(), words, name, *options): name for name, words in work.items()
            }
            for done in as_completed(waiting):
                keep(waiting[done], done.result())
    return [results[name] for name in work]


def _cores() -> int:
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def _on_cluster(
    work: dict[str, str],
    options: tuple[bool, int, Edition, bool],
    scheduler: str,
    keep: Callable[[str, Plain], None],
) -> None:
    try:
        from dask.distributed import Client
        from dask.distributed import as_completed as as_gathered
    except ImportError:
        raise OutOfRange(message("report.cluster-needs-dask")) from None
    try:
        client = Client(scheduler, timeout="10s", set_as_default=False)
    except (OSError, ValueError, TimeoutError) as error:
        raise OutOfRange(
            message("report.scheduler-silent", address=scheduler[:80], error=type(error).__name__)
        ) from None
    with client, client.as_current():
        waiting = {
            client.submit(_spoken, language.folder(), words, name, *options, pure=False): name
            for name, words in work.items()
        }
        for done in as_gathered(waiting):
            keep(waiting[done], done.result())
