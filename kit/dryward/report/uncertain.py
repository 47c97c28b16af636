"""How far a finding may lie off when the inputs are not known well, and which of them matters most.

Every property that is not known well is drawn from its range; the draws
together make a band.  Beside that each is put to both ends of its range
alone, all others as given: the one that moves the state most decides.
"""

import dataclasses

import numpy as np

from dryward.checks import NotConverged, listed
from dryward.physics import monthly, steady
from dryward.verdict import STATES, Decides, of_months, of_steady, of_year, words

#: Draws of the steady checks; each takes about a millisecond.
STEADY_DRAWS = 40
#: What the band of the draws is between [-].
BAND = (0.05, 0.95)
#: Said beside every band.
WHAT_VARIES = "Bands: 5 to 95 % of draws of the layers' properties from their ranges; air and weather as given."


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


def season(check, assembly, room, outdoor):
    """A steady check with its bands and what decides.

    Parameters
    ----------
    check : Check
        Of `steady_checks.winter` or `summer`.
    assembly : Assembly
    room, outdoor : Air

    Returns
    -------
    Check
    """

    def measure(roof):
        state = steady.profile(roof, room, outdoor)
        values = float(state.relative_humidity[state.wettest]), state.gain
        return of_steady(state), values

    return _steady(check, assembly, measure, ("Highest humidity", "Water gained"), STEADY_DRAWS)


def twelve_months(check, setting):
    """The monthly check with its bands and what decides."""

    def measure(roof):
        months = monthly.balance(roof, setting.months, setting.room)
        return of_months(months), (months.peak, months.left, months.growth)

    labels = "Most held", "Held at the year's end", "Growth a year"
    try:
        return _steady(check, setting.job.assembly, measure, labels, 24)
    except NotConverged:
        return check


def _steady(check, assembly, measure, labels, draws):
    """A check of the assembly alone with bands of its numbers, the states of the draws, and what decides."""
    from dryward.physics import spread

    found = things(assembly, steady_only=True)
    if not found:
        return check

    def of(which, values):
        return measure(spread.drawn(assembly, {}, which, values)[0])

    ends = [[of([each], [value])[0] for value in (each.low, each.high)] for each in found]
    sample = [of(found, row) for row in spread.factors(found, draws)]
    values = np.array([each for _, each in sample])
    judged = check.verdict
    made = ranked(found, ends, judged)
    matters = f"{said(made, judged)} {of_draws([each.state for each, _ in sample])}"
    return dataclasses.replace(
        check,
        numbers=_with(check.numbers, dict(zip(labels, values.T, strict=True))),
        matters=matters,
        verdict=judged.deciding(made[0]) if made else judged,
        limits=f"{check.limits} {WHAT_VARIES}",
    )


def years(check, setting, options, draws, progress=None):
    """The hourly check with bands from many runs of the same years.

    Parameters
    ----------
    check : Check
        Of `year_checks.years`.
    setting : Setting
    options : dict
        Keywords of `hourly.simulate`.
    draws : int
    progress : function, optional
        Called with (runs done, runs in all); False ends it.

    Returns
    -------
    Check
    """
    from dryward.physics import hourly, spread

    job = setting.job
    found = things(job.assembly, options.get("leak"))
    cases = []
    for row in spread.factors(found, draws):
        roof, rest = spread.drawn(job.assembly, options, found, row)
        cases.append((roof, setting.hours, setting.room, rest))
    done = [0]

    def tell(place, result):
        done[0] += 1
        return progress(done[0], len(cases)) if progress else None

    results = hourly.batch(cases, of_year, tell)
    numbers = check.numbers
    if check.verdict.worst is not None:
        sample = np.array([value_of(each, check.verdict.worst) for each in results])
        numbers = _with(numbers, {numbers[0].label: sample})
    return dataclasses.replace(
        check,
        numbers=numbers,
        matters=" ".join(part for part in (check.matters, of_draws([each.state for each in results])) if part),
        limits=f"{check.limits} {WHAT_VARIES}",
    )


def of_draws(states):
    """The states of many draws, in a sentence."""
    kinds = [each for each in STATES if each in states]
    if len(kinds) == 1:
        return f"All {len(states)} draws are {kinds[0]}."
    parts = [f"{states.count(each)} {each}" for each in kinds]
    return f"Of {len(states)} draws {listed(parts)}."


def ranked(found, ends, judged):
    """Each uncertain input with what both of its ends make of a verdict: what moves its state most first.

    Parameters
    ----------
    found : sequence of Uncertain
    ends : sequence of (Verdict, Verdict)
    judged : Verdict
        With all inputs as given.

    Returns
    -------
    tuple of Decides
    """
    made = [
        Decides(each.layer, each.what, *(value_of(end, judged.worst) for end in pair), tuple(e.state for e in pair))
        for each, pair in zip(found, ends, strict=True)
    ]

    def moves(each):
        ranks = [STATES.index(state) for state in (*each.states, judged.state)]
        return max(ranks) - min(ranks), abs(each.high - each.low)

    return tuple(sorted(made, key=moves, reverse=True))


def value_of(found, worst):
    """What one verdict has for the worst of another: 0 where it found nothing of it."""
    if worst is None:
        return 0.0
    same = (each for each in found.findings if (each.what, each.place.layer) == (worst.what, worst.place.layer))
    return float(next((each.value for each in same), 0.0))


def said(ends, found, system=None):
    """What decides, in sentences.

    Parameters
    ----------
    ends : tuple of Decides
        Of `ranked`.
    found : Verdict
    system : {"us", "si"}, optional
        Otherwise in both.

    Returns
    -------
    str
    """
    turning = [each for each in ends if set(each.states) != {found.state}]
    if not ends or (not turning and words.flat(found.deciding(ends[0]))):
        return "No input in its range moves the answer by itself."
    first = f"What decides: {words.decides(found.deciding(ends[0]), system)}."
    others = [words.input_of(each) for each in turning if each is not ends[0]]
    if others:
        alone = "each alone" if len(others) > 1 else "alone"
        return f"{first} {words.capital(listed(others))} can turn the answer too, {alone}."
    return first


def _with(numbers, samples):
    """Numbers with the band of a sample; the number itself always lies in it."""
    made = []
    for number in numbers:
        if number.label in samples:
            low, high = np.quantile(samples[number.label], BAND)
            number = dataclasses.replace(number, low=min(float(low), number.value), high=max(float(high), number.value))
        made.append(number)
    return tuple(made)
