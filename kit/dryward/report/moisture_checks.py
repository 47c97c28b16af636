"""The checks by physics: a month that never ends, twelve months, hour by hour until the year repeats, a wet start."""

import dataclasses
from collections.abc import Iterator
from typing import Any, TypeAlias

import numpy as np
from numpy.typing import NDArray

from dryward import units, verdict
from dryward.building import Assembly, Material
from dryward.physics import drying, monthly, steady
from dryward.physics.drying import Drying
from dryward.physics.hourly import Hours
from dryward.physics.steady import Profile
from dryward.report.check import CAN, Check, Number, Progress, called
from dryward.report.setting import Setting, leak, vent_space
from dryward.verdict import DAMP, DRY, LATER, NEVER, WET, WITHIN, Verdict, criterion, words
from dryward.weather import YEAR, Air

#: Keywords of `hourly.simulate`.
Options: TypeAlias = dict[str, Any]

_STEADY_LIMITS = (
    "A month that never ends: no storage, no air leak, no sun, no rain. What is dry here still needs air sealing."
)
_STEADY_METHOD = "ISO 13788:2012 steady diffusion (read in secondary sources)"


def winter(setting: Setting) -> Check:
    """How wet would it get if the coldest month never ended?"""
    return _season(setting, "winter", "the coldest month", setting.winter_room, setting.winter)


def summer(setting: Setting) -> Check:
    """How wet would it get if the warmest month never ended?"""
    return _season(setting, "summer", "the warmest month", setting.summer_room, setting.summer)


def _season(setting: Setting, id: str, month: str, room: Air, outdoor: Air) -> Check:
    state = steady.profile(setting.job.assembly, room, outdoor)
    judged = verdict.of_steady(state)
    node = state.wettest
    numbers = (
        Number("Outdoor air", outdoor.temperature, "temperature"),
        Number("Outdoor humidity", outdoor.relative_humidity, "relative humidity"),
        Number("Room air", room.temperature, "temperature"),
        Number("Room humidity", room.relative_humidity, "relative humidity"),
        Number("Highest humidity", float(state.relative_humidity[node]), "relative humidity"),
        Number("Water gained", state.gain, "vapor flux"),
    )
    why = change = ""
    if judged.state != DRY:
        outward = room.vapor_pressure > outdoor.vapor_pressure
        why = (
            "More vapor arrives at that cold face than its outer side lets through."
            if state.wet_planes
            else "It is cold there for the vapor that comes: near a limit, with no water yet."
        )
        change = (
            "Make the room side tighter to vapor, hold the room drier, or open the layers outside that face."
            if outward
            else "Make the outer side tighter to vapor, or open the layers on the room side of that face."
        )
    return Check(
        id,
        f"How wet would it get if {month} never ended?",
        judged.state,
        f"{words.capital(words.account(judged))}.",
        why,
        change,
        limits=_STEADY_LIMITS,
        numbers=numbers,
        source=_STEADY_METHOD,
        verdict=judged,
        data=state,
    )


def wet_layer(assembly: Assembly, state: Profile) -> str:
    """The layer whose wet start is asked for: the outermost wood inside any vent space, else what is wettest."""
    solid = [layer for layer in assembly.inner_layers if isinstance(layer.substance, Material)]
    wood = [layer.name for layer in solid if layer.substance.wood]
    if wood:
        return wood[-1]
    names = [layer.name for layer in solid]
    found = [name for name in reversed(state.between(state.wettest)) if name in names]
    return (found or names[-1:] or [""])[0]


def wet_start(setting: Setting, layer: str) -> Check:
    """Which way does a wet layer dry in winter, and in summer?"""
    assembly = setting.job.assembly
    cold = drying.rates(assembly, layer, setting.winter_room, setting.winter)
    warm = drying.rates(assembly, layer, setting.summer_room, setting.summer)
    numbers = (
        Number("Winter, inward", cold.inward, "vapor flux"),
        Number("Winter, outward", cold.outward, "vapor flux"),
        Number("Summer, inward", warm.inward, "vapor flux"),
        Number("Summer, outward", warm.outward, "vapor flux"),
    )
    best = max(cold.total, warm.total)
    can = best > 0
    ways = _way(cold), _way(warm)
    seasons = f"{ways[0]} in winter and {ways[1]} in summer" if ways[0] != ways[1] else f"{ways[0]}, winter and summer"
    what = f"When the {layer} is wet it {seasons}."
    change = "" if can else "Open one side to vapor: the room side, or the outer side."
    return Check(
        "wet-start",
        f"When the {layer} is wet, does it dry?",
        CAN if can else NEVER,
        what,
        "Water leaves toward the side with the lower vapor pressure and the more open layers.",
        change,
        limits="Rates of a wet layer at steady temperatures; they fall as it dries.",
        numbers=numbers,
        source="Diffusion through the layers on each side",
        data=(cold, warm),
    )


def _way(rates: Drying) -> str:
    """What a wet layer does in a season, in words."""
    if not rates.total > 0:
        return "takes in more than it gives off" if rates.total < 0 else "dries neither way"
    into, out = max(rates.inward, 0.0), max(rates.outward, 0.0)
    if out > 4 * into:
        return "dries mostly outward"
    return "dries mostly inward" if into > 4 * out else "dries both ways"


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


def twelve_months(setting: Setting) -> Check:
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


def _advice(judged: Verdict) -> tuple[str, str]:
    """Why, and what to change first; empty where nothing speaks against it."""
    if judged.state not in (DAMP, WET):
        return "", ""
    return _WHY.get(judged.worst.what, ""), _CHANGE.get(judged.worst.what, _CHANGE["wood-moisture"])


def options(setting: Setting) -> Options:
    """Keywords of `hourly.simulate` that a job stands for."""
    from dryward.physics.hourly import Surface, leak_flow

    job, leaking, flow = setting.job, leak(setting.job), None
    if leaking is not None and job.tightness is not None:
        warmth, _ = setting.room.at(setting.hourly)
        flow = leak_flow(leaking, setting.hourly, warmth, height=job.tightness.height)
    return {
        "years": job.years,
        "until_it_repeats": True,
        "initial": Air(20.0, job.start_humidity),
        "vent": vent_space(job),
        "leak": flow,
        "surface": Surface(absorptance=job.absorptance, azimuth=job.azimuth),
    }


def run_years(setting: Setting, progress: Progress | None = None, **other: Any) -> Hours:
    """The hourly run of a job, with other keywords of `hourly.simulate` in place of its own."""
    from dryward.physics import hourly

    typed = {**options(setting), **other}
    return hourly.simulate(setting.job.assembly, setting.hourly, setting.room, progress=progress, **typed)


def years(setting: Setting, progress: Progress | None = None) -> Check:
    """Hour by hour: how wet, how long, and does it dry?"""
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
        _hourly_limits(setting, judged),
        numbers=tuple(_settled(each) for each in _numbers(setting, run, judged)),
        source="Hourly heat and moisture after EN 15026",
        verdict=judged,
        data=run,
    )


def _lines(judged: Verdict, setting: Setting) -> Iterator[str]:
    """Each finding with its state, the worst first, then the limits they were held against."""
    for each in judged.findings:
        told = words.told(each, judged.method)
        lasted = words.lasted(each, judged.method) if each.state != DRY else ""
        yield f"{words.word(each.state)}: {', '.join(part for part in (told, lasted) if part)}."
    off = sum(each.ran_off for each in judged.findings)
    if off > 0.5e-3:
        area = setting.job.tightness.area if setting.job.tightness else None
        yield f"Run off in the judged year: {units.liquid(off, area)}."


def worst_number(judged: Verdict) -> Number | None:
    """The worst finding as a number; None where nothing was found."""
    worst = judged.worst
    if worst is None:
        return None
    unit = worst.criterion.unit
    return Number(words.heading(worst), worst.value, *(("area density",) if unit == "kg/m2" else ("", unit)))


def _numbers(setting: Setting, run: Hours, judged: Verdict) -> Iterator[Number]:
    worst = worst_number(judged)
    if worst is not None:
        yield worst
    last = min(run.time.size, YEAR)
    humid = int((run.relative_humidity[-last:, _inner(setting, run)] >= HUMID).any(axis=1).sum())
    yield Number("Change over the last year", round(verdict.yearly_change(run), 9), "area density")
    yield Number("Ran off in the last year", float(run.ran_off[-1].sum()), "area density")
    yield Number("Hours above 90 % humidity anywhere", humid, "", "h")
    yield Number("Years until it repeats" if judged.repeats else "Years run", judged.years, "", "years")
    yield Number(BALANCE, round(run.balance_error, 9), "", "of what passed")  # what is less is the last digits' noise


def _inner(setting: Setting, run: Hours) -> NDArray[np.bool_]:
    """Cells of the layers inside any vent space: what lies outside it has the weather's humidity."""
    inner = {layer.name for layer in setting.job.assembly.inner_layers}
    layers = run.assembly.layers
    return np.array([layers[place].name in inner for place in run.cell_layer])


def _settled(number: Number) -> Number:
    """To nine digits: the last ones of a long sum hang on where the arrays lie in memory."""
    return dataclasses.replace(number, value=float(f"{number.value:.9g}"))


def _hourly_limits(setting: Setting, judged: Verdict) -> str:
    names = [words.not_counted(each) for each in judged.left_out]
    if "leak" in judged.left_out:
        names[judged.left_out.index("leak")] = "air leaks (no blower-door number was given)"
    start, count = setting.job.start_humidity * 100, judged.years
    ran = (
        f"The year repeats after {count} years"
        if judged.repeats
        else f"The year does not repeat within {count} year{'s' * (count > 1)}"
    )
    seeps = ""
    leaking = leak(setting.job)
    if leaking is not None:
        share = leaking.long_share * 100
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


def _first_year(run: Hours, judged: Verdict) -> str:
    """What the first year shows that the last does not: the start is still in the wood."""
    found = judged.finding("wood-moisture")
    if found is None or judged.years < 2 or run.start_humidity is None:
        return ""
    first = float(run.layer(found.place.layer).moisture_content[:YEAR].max())
    if round(first) <= round(found.value):
        return ""
    start = run.start_humidity * 100
    return (
        f" In the first year, from the start humidity of {start:.0f} %, the {found.place.layer} peaks at {first:.0f} %."
    )


#: Moisture content that a wet start of wood has [mass %]; common practice, no source: freshly wetted framing.
WET_WOOD = 25.0
#: Drying that takes longer than this is slow [days].
YEAR_OF_DAYS = 365
#: Humidity that a wet start of other layers has, and below which they count as dry [-]; assumptions.
WET_OTHER, DRY_OTHER = 0.98, 0.80


@dataclasses.dataclass(frozen=True)
class DryingTime:
    """A wet start and what came of it."""

    #: Until the first whole day below the limit [days]; infinite when the run ended before.
    days: float
    #: Length of the run [days].
    run_days: float
    #: Both in words.
    start: str
    limit: str


def drying_time(setting: Setting, layer: str, progress: Progress | None = None) -> DryingTime:
    """Days until a wet layer is dry, the weather beginning in January."""
    substance = setting.job.assembly.layer(layer).substance
    caution = criterion("wood-moisture").caution
    wood = isinstance(substance, Material) and substance.wood
    start: Air | dict[str, float] | Hours
    if isinstance(substance, Material) and wood:
        start = {layer: substance.density * WET_WOOD / 100}
        words = f"the {layer} starts at {WET_WOOD:.0f} % MC"
        limit = f"below {caution:.0f} % MC"
    else:
        start, words = Air(20.0, WET_OTHER), f"all layers start at {WET_OTHER * 100:.0f} % humidity"
        limit = f"below {DRY_OTHER * 100:.0f} % humidity in its wettest part"
    passed = 0
    for _ in range(setting.job.years):  # a year at a time: most roofs are dry in the first
        run = run_years(setting, progress, years=1, initial=start)
        there = run.layer(layer)
        # The mean of a thick insulation is dry while its cold face still drips.
        level = there.moisture_content - caution if wood else there.highest_relative_humidity - DRY_OTHER
        day = level[: level.size // 24 * 24].reshape(-1, 24).max(axis=1)
        dry = np.flatnonzero(day < 0)
        if dry.size:
            return DryingTime(float(passed + dry[0] + 1), float(passed + day.size), words, limit)
        passed, start = passed + day.size, run
    return DryingTime(float("inf"), float(passed), words, limit)


def with_drying_time(check: Check, setting: Setting, layer: str, progress: Progress | None = None) -> Check:
    """The check of a wet start, with its drying time beside the steady rates."""
    took = drying_time(setting, layer, progress)
    answer = WITHIN if took.days <= YEAR_OF_DAYS else LATER if np.isfinite(took.days) else NEVER
    if answer == NEVER:
        when = f"when {took.start} on January 1, it is not {took.limit} within {took.run_days:.0f} days"
    else:
        when = f"when {took.start} on January 1, its first whole day {took.limit} is day {took.days:.0f}"
    first = {
        WITHIN: f"By the hour, {when}.",
        LATER: f"When the {layer} is wet it takes more than a year to dry: {when}.",
        NEVER: f"When the {layer} is wet it does not dry: {when}.",
    }[answer]
    keep = "Keep it from getting wet, and open one side to vapor: the room side, or the outer side."
    return dataclasses.replace(
        check,
        answer=answer,
        what=first,
        lines=(check.what, *check.lines),
        change=check.change or ("" if answer == WITHIN else keep),
        numbers=(*check.numbers, Number("Time to dry", took.days, "", "days")),
        limits=f"{check.limits} The days are those of this one year of weather, without rain.",
        source=f"{check.source}; hourly heat and moisture after EN 15026",
    )
