"""Twelve months by hand, and hour by hour until the year repeats."""

import dataclasses

import numpy as np

from dryward import verdict
from dryward.physics import monthly
from dryward.report import amounts
from dryward.report.check import Check, Number, called
from dryward.report.setting import leak, vent_space
from dryward.verdict import DAMP, DRY, WET, words
from dryward.weather import YEAR, Air

#: Label of the error of the sums.
BALANCE = "Balance error"
#: Humidity above which hours are counted beside the verdict [-]; no limit by itself.
HUMID = 0.9
#: What to look at first, by the limit that is passed.
_CHANGE = {
    "wood-moisture": "Look at air leaks and room humidity first; then a tighter room side or a more open outer side.",
    "mold-index": "Hold the room drier in fall and spring, seal leaks, or open the outer side.",
    "free-water": "Seal air leaks first; then hold the room drier, or let that face soak up and give back.",
    "growth": "Seal air leaks first; then a tighter room side or a more open outer side.",
    "carry-over": "Give it a side to dry to: a more open room side, or a more open outer side.",
}
_WHY = {
    "wood-moisture": "Wetting outruns drying for part of the year.",
    "mold-index": "It is humid and warm there at the same time for too long.",
    "free-water": "More water comes to that place in the cold months than it can pass on.",
    "growth": "It takes in more than it gives back, storage and drying counted.",
    "carry-over": "Summer gives back less than was in it.",
}


def twelve_months(setting):
    """How wet does the year get by monthly means, and does that water leave?"""
    months = monthly.balance(setting.job.assembly, setting.months, setting.room)
    judged = verdict.of_months(months)
    why, change = _advice(judged)
    return Check(
        "twelve-months",
        "By twelve monthly means: how wet does it get, and does that water leave?",
        judged.state,
        f"{words.capital(words.account(judged))}.",
        why,
        change,
        limits="Monthly means, diffusion only: no storage, no air leak, no sun. ISO 13788 says so itself.",
        numbers=(
            Number("Most held", months.peak, "area density"),
            Number("Held at the year's end", months.left, "area density"),
            Number("Growth a year", months.growth, "area density"),
        ),
        source="ISO 13788:2012 monthly balance (read in secondary sources)",
        verdict=judged,
        data=months,
    )


def _advice(judged):
    """Why, and what to change first; empty where nothing speaks against it."""
    if judged.state not in (DAMP, WET):
        return "", ""
    return _WHY.get(judged.worst.what, ""), _CHANGE.get(judged.worst.what, _CHANGE["wood-moisture"])


def options(setting):
    """Keywords of `hourly.simulate` that a job stands for."""
    from dryward.physics.hourly import Surface, leak_flow

    job, flow = setting.job, leak(setting.job)
    if flow is not None:
        warmth, _ = setting.room.at(setting.hours)
        flow = leak_flow(flow, setting.hours, warmth, height=job.tightness.height)
    return {
        "years": job.years,
        "until_it_repeats": True,
        "initial": Air(20.0, job.start_humidity),
        "vent": vent_space(job),
        "leak": flow,
        "surface": Surface(absorptance=job.absorptance, azimuth=job.azimuth),
    }


def run_years(setting, progress=None, **other):
    """The hourly run of a job.

    Parameters
    ----------
    setting : Setting
        With hourly weather.
    progress : function, optional
        As in `hourly.simulate`.
    **other
        Keywords of `hourly.simulate` instead of those of the job.

    Returns
    -------
    Hours

    Raises
    ------
    NotConverged, Stopped
        As in `hourly.simulate`.
    """
    from dryward.physics import hourly

    typed = {**options(setting), **other}
    return hourly.simulate(setting.job.assembly, setting.hours, setting.room, progress=progress, **typed)


def years(setting, progress=None):
    """Hour by hour: how wet, how long, and does it dry?

    Parameters
    ----------
    setting : Setting
        With hourly weather.
    progress : function, optional
        As in `hourly.simulate`.

    Returns
    -------
    Check
        Its data is the run.

    Raises
    ------
    NotConverged, Stopped
        As in `hourly.simulate`.
    """
    run = run_years(setting, progress)
    judged = verdict.of_year(run)
    leaking = ", sun and the air leak" if run.leaking else " and sun"
    why, change = _advice(judged)
    return Check(
        "years",
        f"Hour by hour, with storage{leaking}: how wet, how long, does it dry?",
        judged.state,
        f"{words.capital(words.account(judged))}.{_first_year(run, judged)}",
        why,
        change,
        tuple(_lines(judged, setting)),
        _limits(setting, judged),
        numbers=tuple(_settled(each) for each in _numbers(setting, run, judged)),
        source="Hourly heat and moisture after EN 15026",
        verdict=judged,
        data=run,
    )


def _lines(judged, setting):
    """Each finding with its state, the worst first, then the limits they were held against."""
    for each in judged.findings:
        told = words.told(each, judged.method)
        lasted = words.lasted(each, judged.method) if each.state != DRY else ""
        yield f"{words.word(each.state)}: {', '.join(part for part in (told, lasted) if part)}."
    off = sum(each.ran_off for each in judged.findings)
    if off > 0.5e-3:
        area = setting.job.tightness.area if setting.job.tightness else None
        yield f"Run off in the judged year: {amounts.liquid(off, area)}."


def worst_number(judged):
    """The worst finding as a number; None where nothing was found.

    Parameters
    ----------
    judged : Verdict

    Returns
    -------
    Number or None
    """
    worst = judged.worst
    if worst is None:
        return None
    unit = worst.criterion.unit
    return Number(words.heading(worst), worst.value, *(("area density",) if unit == "kg/m2" else ("", unit)))


def _numbers(setting, run, judged):
    if judged.worst is not None:
        yield worst_number(judged)
    last = min(run.time.size, YEAR)
    before = float((run.initial_water * run.width).sum()) if run.time.size <= YEAR else float(run.water[-1 - last])
    humid = int((run.relative_humidity[-last:, _inner(setting, run)] >= HUMID).any(axis=1).sum())
    yield Number("Change over the last year", round(float(run.water[-1]) - before, 9), "area density")
    yield Number("Ran off in the last year", float(run.ran_off[-1].sum()), "area density")
    yield Number("Hours above 90 % humidity anywhere", humid, "", "h")
    yield Number("Years until it repeats" if judged.repeats else "Years run", judged.years, "", "years")
    yield Number(BALANCE, round(run.balance_error, 9), "", "of what passed")  # what is less is the last digits' noise


def _inner(setting, run):
    """Cells of the layers inside any vent space: what lies outside it has the weather's humidity."""
    inner = {layer.name for layer in setting.job.assembly.inner_layers}
    layers = run.assembly.layers
    return np.array([layers[place].name in inner for place in run.cell_layer])


def _settled(number):
    """To nine digits: the last ones of a long sum hang on where the arrays lie in memory."""
    return dataclasses.replace(number, value=float(f"{number.value:.9g}"))


def _limits(setting, judged):
    names = [words.LEFT_OUT[each] for each in judged.left_out]
    if "leak" in judged.left_out:
        names[names.index(words.LEFT_OUT["leak"])] = "air leaks (no blower-door number was given)"
    start, count = setting.job.start_humidity * 100, judged.years
    ran = (
        f"The year repeats after {count} years"
        if judged.repeats
        else f"The year does not repeat within {count} year{'s' * (count > 1)}"
    )
    seeps = ""
    if setting.job.tightness is not None:
        share = leak(setting.job).long_share * 100
        seeps = (
            " The leak is driven by the warmth of the house, without wind and fans. It is spread evenly, and "
            f"{share:.0f} % of it seeps through the insulation (an assumption); a real one is a stream that wets one "
            "spot more."
        )
    if vent_space(setting.job) is None and any(layer.vented for layer in setting.job.assembly.layers):
        seeps += " No vent openings were given: the vent space is taken to hold outdoor air."
    return (
        f"One section of the {called(setting.job.assembly)} between the framing. {ran}, all layers at {start:.0f} % "
        f"humidity at the start; the last one is judged. Left out: {', '.join(names)}.{seeps} "
        "A mold index is a laboratory model, not an inspection for mold."
    )


def _first_year(run, judged):
    """What the first year shows that the last does not: the start is still in the wood."""
    found = judged.finding("wood-moisture")
    if found is None or judged.years < 2:
        return ""
    first = float(run.layer(found.place.layer).moisture_content[:YEAR].max())
    if round(first) <= round(found.value):
        return ""
    start = run.start_humidity * 100
    return (
        f" In the first year, from the start humidity of {start:.0f} %, the {found.place.layer} peaks at {first:.0f} %."
    )
