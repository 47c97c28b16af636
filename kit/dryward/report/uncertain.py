"""How far a finding may lie off when the inputs are not known well, and which of them matters most.

Every property that is not known well is drawn from its range; the draws
together make a band.  Beside that each is put to both ends of its range
alone, all others in the middle: the one that moves the result most is named.
"""

import dataclasses

import numpy as np

from dryward.checks import NotConverged
from dryward.physics import monthly, steady
from dryward.report import amounts

#: Draws of the steady checks; each takes about a millisecond.
STEADY_DRAWS = 40
#: What the band of the draws is between [-].
BAND = (0.05, 0.95)
#: Said beside every band.
WHAT_VARIES = "Bands: 5 to 95 % of draws of the layers' properties from their ranges; air and weather as given."
_WORDS = {
    "conductivity": "heat conduction of the {}",
    "permeance": "permeance of the {}",
    "sorption": "water the {} holds",
    "leak": "air leak",
}


def things(assembly, leak=None, steady_only=False):
    """What is not known well and can matter: layers inside any vent space, and the leak.

    Parameters
    ----------
    assembly : Assembly
    leak : AirFlow, optional
    steady_only : bool, optional
        Leave out what a steady state does not see.

    Returns
    -------
    tuple of Uncertain
    """
    from dryward.physics.spread import uncertain

    inside = {layer.name for layer in assembly.inner_layers} | {""}
    found = [each for each in uncertain(assembly, leak) if each.layer in inside and each.low < each.high]
    return tuple(each for each in found if not (steady_only and each.what == "sorption"))


def steady_samples(assembly, measure, draws=STEADY_DRAWS):
    """A measure of the roof alone, of each property at both ends, and of draws of all.

    Parameters
    ----------
    assembly : Assembly
    measure : function
        From Assembly to an array.
    draws : int

    Returns
    -------
    tuple of Uncertain, ndarray (things, 2, measure), ndarray (draws, measure)
    """
    from dryward.physics import spread

    found = things(assembly, steady_only=True)
    if not found:
        return (), np.empty((0, 2, 0)), np.empty((0, 0))

    def of(which, values):
        return measure(spread.drawn(assembly, {}, which, values)[0])

    ends = np.array([[of([each], [value]) for value in (each.low, each.high)] for each in found])
    return found, ends, np.array([of(found, row) for row in spread.factors(found, draws)])


def season(finding, assembly, room, outdoor):
    """A steady finding with its bands.

    Parameters
    ----------
    finding : Finding
        Of `steady_checks.winter` or `summer`.
    assembly : Assembly
    room, outdoor : Air

    Returns
    -------
    Finding
    """

    def measure(roof):
        state = steady.profile(roof, room, outdoor)
        return float(state.relative_humidity[state.wettest]), state.gain

    found, ends, draws = steady_samples(assembly, measure)
    if not found:
        return finding
    wet = int((draws[:, 1] > 0).sum())
    numbers = _with(finding.numbers, {"Highest humidity": draws[:, 0], "Water gained": draws[:, 1]})
    if not wet and finding.good:
        matters = _most(found, ends[:, :, 0], "the highest humidity", _span(".0f", " %", 100.0), draws[:, 0])
    else:
        matters = _most(found, ends[:, :, 1], "the water gained", amounts.gain_span, draws[:, 1])
    turns = 0 < wet < len(draws) or (wet > 0) == (finding.good is True)
    if turns:
        matters += f" In {wet} of {len(draws)} draws water gathers, so the answer can turn."
    limits = f"{finding.limits} {WHAT_VARIES}"
    return dataclasses.replace(finding, numbers=numbers, matters=matters, limits=limits, turns=turns)


def twelve_months(finding, setting):
    """The monthly finding with its bands."""

    def measure(roof):
        months = monthly.balance(roof, setting.months, setting.room)
        return months.peak, months.left, months.growth

    try:
        found, ends, draws = steady_samples(setting.job.assembly, measure, draws=24)
    except NotConverged:
        return finding
    if not found:
        return finding
    numbers = _with(
        finding.numbers,
        {"Most held": draws[:, 0], "Held at the year's end": draws[:, 1], "Growth a year": draws[:, 2]},
    )
    matters = _most(found, ends[:, :, 0], "the most held", amounts.water_span, draws[:, 0])
    kept = int((draws[:, 1] > 1e-9).sum())
    turns = 0 < kept < len(draws) or (kept > 0) == (finding.good is True)
    if turns:
        matters += f" In {kept} of {len(draws)} draws some stays at the year's end, so the answer can turn."
    limits = f"{finding.limits} {WHAT_VARIES}"
    return dataclasses.replace(finding, numbers=numbers, matters=matters, limits=limits, turns=turns)


def years(setting, findings, options, watched, mold, draws, progress=None):
    """The findings of the hourly years with their bands.

    Parameters
    ----------
    setting : Setting
    findings : sequence of Finding
        "years", and where there are watched faces "peak" and "mold".
    options : dict
        Keywords of `hourly.simulate`.
    watched : (function, str) or None
        From `Hours` to the number of "peak"; its label.
    mold : function or None
        From `Hours` to the peak mold index.
    draws : int
    progress : function, optional
        Called with (runs done, runs in all); False ends it.

    Returns
    -------
    list of Finding
    """
    from dryward.physics import hourly, spread

    job = setting.job
    found = things(job.assembly, options.get("leak"))
    year = setting.hours.hours

    def measure(run):
        last = run.water[-1] - (run.water[-1 - year] if run.time.size > year else run.initial_water @ run.width)
        return float(last), watched[0](run) if watched else 0.0, mold(run) if mold else 0.0

    plan = [([each], [value]) for each in found for value in (each.low, each.high)]
    plan += [(found, row) for row in spread.factors(found, draws)]
    cases = []
    for which, values in plan:
        roof, rest = spread.drawn(job.assembly, options, which, values)
        cases.append((roof, setting.hours, setting.room, rest))
    done = [0]

    def tell(place, result):
        done[0] += 1
        return progress(done[0], len(cases)) if progress else None

    results = np.array(hourly.batch(cases, measure, tell))
    ends, sample = results[: 2 * len(found)].reshape(len(found), 2, 3), results[2 * len(found) :]
    made = []
    for each in findings:
        column, name, said = {
            "years": (0, "the change over the last year", amounts.water_span),
            "peak": (1, "the peak", _span(".1f", " % MC")),
            "mold": (2, "the mold index", _span(".1f", " of 6")),
        }[each.id]
        if each.id == "peak" and each.numbers[0].quantity:
            said = amounts.water_span
        numbers = _with(each.numbers, {each.numbers[0].label: sample[:, column]})
        matters = _most(found, ends[:, :, column], name, said, sample[:, column])
        limits = f"{each.limits} {WHAT_VARIES}"
        made.append(dataclasses.replace(each, numbers=numbers, matters=matters, limits=limits))
    return made


def turned(finding, limit):
    """A finding that says when the band of its first number reaches over the limit."""
    number = finding.numbers[0]
    if number.low is None or not number.low < limit <= number.high:
        return finding
    return dataclasses.replace(
        finding, matters=f"{finding.matters} The band reaches over the limit, so the answer can turn.", turns=True
    )


def _with(numbers, samples):
    """Numbers with the band of a sample; the number itself always lies in it."""
    made = []
    for number in numbers:
        if number.label in samples:
            low, high = np.quantile(samples[number.label], BAND)
            number = dataclasses.replace(number, low=min(float(low), number.value), high=max(float(high), number.value))
        made.append(number)
    return tuple(made)


def _most(found, ends, name, said, sample):
    """The property that moves a number most, in a sentence; `said` writes from where to where."""
    reach = np.abs(ends[:, 1] - ends[:, 0])
    k = int(np.argmax(reach))
    low, high = (float(value) for value in np.sort(ends[k]))
    if said(low, low) == said(high, high):
        low, high = (float(value) for value in np.quantile(sample, BAND))
        together = "" if said(low, low) == said(high, high) else "; several together can"
        return f"No property in its range moves {name} by itself{together}."
    words = _WORDS[found[k].what].format(found[k].layer)
    return f"What matters most: the {words}; within its range {name} is {said(low, high)}."


def _span(form, unit, times=1.0):
    return lambda low, high: f"{low * times:{form}} to {high * times:{form}}{unit}"
