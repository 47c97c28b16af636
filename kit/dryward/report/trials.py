"""What is not known well: how far a finding may lie off, what decides, and what other years and rooms would give.

Every property that is not known well is drawn from its range; the draws
together make a band.  Beside that each is put to both ends of its range
alone, all others as given: the one that moves the state most decides.  A
trial is the year of the job itself with one thing changed, run and judged as
the job was.
"""

import dataclasses
from collections.abc import Callable, Sequence
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from dryward import verdict, weather
from dryward.building import Assembly
from dryward.building.job import DESIGNS, Tightness
from dryward.checks import NotConverged, begun
from dryward.language import listed, message
from dryward.physics import hourly, monthly, spread, steady
from dryward.physics.hourly import AirFlow, Stopped
from dryward.physics.spread import Uncertain, uncertain
from dryward.report.check import Check, Limit, Number, Progress, one_after_another
from dryward.report.moisture_checks import Options, options
from dryward.report.setting import RoomRule, Setting, setting
from dryward.units import InBoth
from dryward.verdict import DRY, STATES, Decides, Finding, Verdict, of_months, of_steady, of_year, words
from dryward.weather import Air

Floats: TypeAlias = NDArray[np.float64]
#: A year to be run: its setting, the assembly in it, and keywords of `hourly.simulate`.
Case: TypeAlias = tuple[Setting, Assembly, Options]

#: Draws of the steady checks; each takes about a millisecond.
STEADY_DRAWS = 40
#: What the band of the draws is between [-].
BAND = (0.05, 0.95)


def uncertain_inputs(
    assembly: Assembly, leak: AirFlow | None = None, steady_only: bool = False
) -> tuple[Uncertain, ...]:
    """What is not known well and can matter: layers inside any vent space, and the leak."""
    inside = {layer.name for layer in assembly.inner_layers} | {""}
    found = [each for each in uncertain(assembly, leak) if each.layer in inside and each.low < each.high]
    return tuple(each for each in found if not (steady_only and each.what == "sorption"))


def season_with_bands(check: Check, assembly: Assembly, room: Air, outdoor: Air) -> Check:
    """A steady check with its bands and what decides."""

    def measure(roof: Assembly) -> tuple[Verdict, tuple[float, ...]]:
        state = steady.profile(roof, room, outdoor)
        values = float(state.relative_humidity[state.wettest]), state.gain
        return of_steady(state), values

    return _steady(check, assembly, measure, ("highest-humidity", "water-gained"), STEADY_DRAWS)


def twelve_months_with_bands(check: Check, setting: Setting) -> Check:
    """The monthly check with its bands and what decides."""

    def measure(roof: Assembly) -> tuple[Verdict, tuple[float, ...]]:
        months = monthly.balance(roof, setting.months, setting.room)
        return of_months(months), (months.peak, months.left, months.growth)

    ids = "most-held", "held-at-the-end", "growth"
    try:
        return _steady(check, setting.job.assembly, measure, ids, 24)
    except NotConverged:
        return check


def _steady(
    check: Check,
    assembly: Assembly,
    measure: Callable[[Assembly], tuple[Verdict, tuple[float, ...]]],
    ids: tuple[str, ...],
    draws: int,
) -> Check:
    """A check of the assembly alone with bands of its numbers, the states of the draws, and what decides."""
    found = uncertain_inputs(assembly, steady_only=True)
    if not found:
        return check

    def of(which: Sequence[Uncertain], values: Sequence[float]) -> tuple[Verdict, tuple[float, ...]]:
        return measure(spread.drawn(assembly, {}, which, np.asarray(values))[0])

    ends = [[of([each], [value])[0] for value in (each.low, each.high)] for each in found]
    sample = [of(found, row) for row in spread.factors(found, draws)]
    values = np.array([each for _, each in sample])
    judged = check.facts
    made = ranked(found, ends, judged)
    matters = one_after_another(what_decides(made, judged), of_draws([each.state for each, _ in sample]))
    return dataclasses.replace(
        check,
        numbers=_with(check.numbers, dict(zip(ids, values.T, strict=True))),
        matters=matters,
        verdict=judged.deciding(made[0]) if made else judged,
        limits=f"{check.limits} {message('report.what-varies')}",
    )


def years_with_bands(
    check: Check, setting: Setting, options: Options, draws: int, progress: Progress | None = None
) -> Check:
    """The hourly check with bands from many runs of the same years; progress is told of (runs done, runs in all)."""
    job = setting.job
    found = uncertain_inputs(job.assembly, options.get("leak"))
    cases = []
    for row in spread.factors(found, draws):
        roof, rest = spread.drawn(job.assembly, options, found, row)
        cases.append((roof, setting.hourly, setting.room, rest))
    done = [0]

    def tell(place: int, result: Verdict) -> bool | None:
        done[0] += 1
        return progress(done[0], len(cases)) if progress else None

    results = hourly.batch(cases, of_year, tell)
    numbers = check.numbers
    if check.facts.worst is not None:
        sample = np.array([value_of(each, check.facts.worst) for each in results])
        numbers = _with(numbers, {numbers[0].id: sample})
    return dataclasses.replace(
        check,
        numbers=numbers,
        matters=one_after_another(check.matters, of_draws([each.state for each in results])),
        limits=f"{check.limits} {message('report.what-varies')}",
    )


def of_draws(states: Sequence[str]) -> str:
    """The states of many draws, in a sentence."""
    kinds = [each for each in STATES if each in states]
    if len(kinds) == 1:
        return message("report.draws-agree", count=len(states), state=kinds[0])
    parts = [message("report.draws", count=states.count(each), state=each) for each in kinds]
    return message("report.draws-differ", count=len(states), list=listed(parts))


def ranked(found: Sequence[Uncertain], ends: Sequence[Sequence[Verdict]], judged: Verdict) -> tuple[Decides, ...]:
    """Each uncertain input with what both of its ends make of a verdict: what moves its state most first."""
    made = [
        Decides(
            each.layer, each.what, value_of(low, judged.worst), value_of(high, judged.worst), (low.state, high.state)
        )
        for each, (low, high) in zip(found, ends, strict=True)
    ]

    def moves(each: Decides) -> tuple[int, float]:
        ranks = [STATES.index(state) for state in (*each.states, judged.state)]
        return max(ranks) - min(ranks), abs(each.high - each.low)

    return tuple(sorted(made, key=moves, reverse=True))


def value_of(found: Verdict, worst: Finding | None) -> float:
    """What one verdict has for the worst of another: 0 where it found nothing of it."""
    if worst is None:
        return 0.0
    same = (each for each in found.findings if (each.what, each.place.layer) == (worst.what, worst.place.layer))
    return float(next((each.value for each in same), 0.0))


def what_decides(ends: tuple[Decides, ...], found: Verdict, leak: bool = False) -> str:
    """What decides, in sentences, in both unit systems; with `leak` that of the assumed leak."""
    turning = [each for each in ends if set(each.states) != {found.state}]
    if not ends or (not turning and words.flat(found.deciding(ends[0]))):
        return message("report.nothing-decides", leak=leak)
    most = found.deciding(ends[0])
    first = InBoth.of(lambda system: message("report.decides", decides=words.decides(most, system), leak=leak))
    others = [words.input_of(each) for each in turning if each is not ends[0]]
    if not others:
        return first
    return one_after_another(first, message("report.turns-too", inputs=begun(listed(others)), count=len(others)))


def _with(numbers: tuple[Number, ...], samples: dict[str, Floats]) -> tuple[Number, ...]:
    """Numbers with the band of a sample; the number itself always lies in it."""
    made = []
    for number in numbers:
        if number.id in samples:
            low, high = np.quantile(samples[number.id], BAND)
            number = dataclasses.replace(number, low=min(float(low), number.value), high=max(float(high), number.value))
        made.append(number)
    return tuple(made)


#: Room humidities that are tried for the limit [whole %]; drier no house is held, damper no window stands.
LOWEST, HIGHEST = 15, 70


def judged(cases: Sequence[Case], progress: Progress | None = None) -> list[Verdict]:
    """The verdict of each of some years; progress is told of (years done, in all)."""
    done = [0]

    def tell(place: int, found: Verdict) -> bool | None:
        done[0] += 1
        return progress(done[0], len(cases)) if progress else None

    work = [(built, here.hourly, here.room, keys) for here, built, keys in cases]
    return hourly.batch(work, verdict.of_year, tell)


def deciding(here: Setting, found: Verdict, progress: Progress | None = None) -> tuple[Decides, ...]:
    """What decides: each uncertain input put to both ends of its range alone."""
    built, keys = here.job.assembly, options(here)
    inputs = uncertain_inputs(built, keys["leak"])
    cases = []
    for each in inputs:
        cases += [(here, *spread.drawn(built, keys, [each], np.array([end]))) for end in (each.low, each.high)]
    ends = judged(cases, progress)
    return ranked(inputs, list(zip(ends[::2], ends[1::2], strict=True)), found)


def designs(here: Setting, found: Verdict, progress: Progress | None = None) -> tuple[tuple[str, Verdict], ...]:
    """The verdict of each design year."""
    job = here.job
    others = [each for each in DESIGNS if each != job.design]
    places = [setting(dataclasses.replace(job, design=each)) for each in others]
    made = judged([(place, job.assembly, options(place)) for place in places], progress)
    known = {job.design: found, **dict(zip(others, made, strict=True))}
    return tuple((each, known[each]) for each in DESIGNS)


#: Tightness that is tried where none was tested [air changes an hour at 50 Pa]; an assumption.
ASSUMED = 3.0


def with_leak(here: Setting) -> Setting:
    """The setting with a leak: that of a job whose tightness was tested, else one of `ASSUMED`."""
    if here.job.tightness is not None:
        return here
    return dataclasses.replace(here, job=dataclasses.replace(here.job, tightness=Tightness(ASSUMED)))


def assumed_leak(here: Setting, progress: Progress | None = None) -> Verdict | None:
    """The verdict with a leak of `ASSUMED`, for a job whose tightness was not tested; else None."""
    if here.job.tightness is not None:
        return None
    leaky = with_leak(here)
    return judged([(leaky, leaky.job.assembly, options(leaky))], progress)[0]


def untested(found: Verdict, leaky: Verdict, at: Verdict) -> Decides:
    """What an untested leak decides: the verdict without one, and with one of `ASSUMED`."""
    low, high = (value_of(each, at.worst) for each in (found, leaky))
    return verdict.Decides("", "leak", low, high, (found.state, leaky.state))


def humidity_limit(here: Setting, progress: Progress | None = None) -> Limit:
    """The highest room humidity of the coldest month at which the year stays dry, to one point; both sides were run."""
    tried: dict[int, str] = {}

    def run(points: Sequence[int]) -> None:
        new = [each for each in points if each not in tried]
        rooms = [dataclasses.replace(here, room=room_at(here, each / 100)) for each in new]
        states = [each.state for each in judged([(room, here.job.assembly, options(room)) for room in rooms])]
        tried.update(zip(new, states, strict=True))
        if progress and progress(len(tried), 10) is False:
            raise Stopped(message("report.trials-stopped"))

    run((LOWEST, HIGHEST))
    low, high = LOWEST, HIGHEST
    ends = LOWEST / 100, HIGHEST / 100
    if tried[low] != DRY:
        return Limit(None, *ends, tried[low])
    if tried[high] == DRY:
        return Limit(high / 100, *ends, "")
    while high - low > 1:  # two runs at a time, for two cores
        step = (high - low) / 3
        points = sorted({min(max(round(low + part * step), low + 1), high - 1) for part in (1, 2)})
        run(points)
        for each in points:
            if tried[each] == DRY:
                low = each
            else:
                high = each
                break
    return Limit(low / 100, *ends, tried[high])


def room_at(here: Setting, humidity: float) -> RoomRule:
    """The rule of a job's rooms moved so that the coldest month has a humidity [-].

    A house held at one air in winter keeps its summer; any other rule is moved as a whole.
    """
    room = here.job.room
    if room.kind != "constant":
        return weather.indoor.damper(here.room, humidity - here.winter_room.relative_humidity)
    damp = here.job.design == "damp house"
    summer = min(room.summer_relative_humidity + damp * weather.indoor.DAMPER, 1.0)
    return weather.indoor.heated_and_cooled(Air(room.temperature, humidity), Air(room.summer_temperature, summer))
