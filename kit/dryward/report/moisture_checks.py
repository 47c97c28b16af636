"""The checks by physics: a month that never ends, twelve months, hour by hour until the year repeats, a wet start."""

import dataclasses
from collections.abc import Iterator
from functools import partial
from typing import Any, TypeAlias

import numpy as np
from numpy.typing import NDArray

from dryward import units, verdict
from dryward.building import Assembly, Material
from dryward.checks import begun
from dryward.language import called, listing, message
from dryward.physics import drying, hourly, monthly, steady
from dryward.physics.drying import Drying
from dryward.physics.hourly import Hours, Surface, leak_flow
from dryward.physics.steady import Profile
from dryward.report.check import CAN, Check, Number, Progress, kind, one_after_another
from dryward.report.setting import Setting, leak, vent_space
from dryward.verdict import DAMP, DRY, LATER, NEVER, WET, WITHIN, Finding, Verdict, criterion, words
from dryward.weather import YEAR, Air

#: Keywords of `hourly.simulate`.
Options: TypeAlias = dict[str, Any]


def winter(setting: Setting) -> Check:
    """How wet would it get if the coldest month never ended?"""
    return _season(setting, "winter", setting.winter_room, setting.winter)


def summer(setting: Setting) -> Check:
    """How wet would it get if the warmest month never ended?"""
    return _season(setting, "summer", setting.summer_room, setting.summer)


def _season(setting: Setting, id: str, room: Air, outdoor: Air) -> Check:
    state = steady.profile(setting.job.assembly, room, outdoor)
    judged = verdict.of_steady(state)
    node = state.dampest
    numbers = (
        Number("outdoor-air", outdoor.temperature, "temperature"),
        Number("outdoor-humidity", outdoor.relative_humidity, "relative humidity"),
        Number("room-air", room.temperature, "temperature"),
        Number("room-humidity", room.relative_humidity, "relative humidity"),
        Number("highest-humidity", float(state.relative_humidity[node]), "relative humidity"),
        Number("water-gained", state.gain, "vapor flux"),
    )
    why = change = ""
    if judged.state != DRY:
        outward = room.vapor_pressure > outdoor.vapor_pressure
        why = message("report.why-water-stays" if state.wet_planes else "report.why-near-a-limit")
        change = message("report.change-room-side" if outward else "report.change-outer-side")
    return Check(
        id,
        message(f"report.question-{id}"),
        judged.state,
        _found(judged),
        why,
        change,
        limits=message("report.steady-limits"),
        numbers=numbers,
        source=message("report.steady-source"),
        verdict=judged,
        data=state,
    )


def _found(judged: Verdict) -> str:
    """What was found, as a sentence."""
    return units.InBoth.of(lambda system: message("report.found", account=begun(words.account(judged, system))))


def wet_layer(assembly: Assembly, state: Profile) -> str:
    """The layer whose wet start is asked for: the outermost wood inside any vent space, else what is wettest."""
    solid = [layer for layer in assembly.inner_layers if isinstance(layer.substance, Material)]
    wood = [layer.name for layer in solid if isinstance(layer.substance, Material) and layer.substance.wood]
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
        Number("winter-inward", cold.inward, "vapor flux"),
        Number("winter-outward", cold.outward, "vapor flux"),
        Number("summer-inward", warm.inward, "vapor flux"),
        Number("summer-outward", warm.outward, "vapor flux"),
    )
    best = max(cold.total, warm.total)
    can = best > 0
    ways, named = (_way(cold), _way(warm)), called(layer)
    if ways[0] == ways[1]:
        what = message("report.wet-start-always", layer=named, way=ways[0])
    else:
        what = message("report.wet-start-differs", layer=named, winter=ways[0], summer=ways[1])
    return Check(
        "wet-start",
        message("report.question-wet-start", layer=named),
        CAN if can else NEVER,
        what,
        message("report.wet-start-why"),
        "" if can else message("report.wet-start-change"),
        limits=message("report.wet-start-limits"),
        numbers=numbers,
        source=message("report.wet-start-source"),
        data=(cold, warm),
    )


def _way(rates: Drying) -> str:
    """What a wet layer does in a season, in words."""
    if not rates.total > 0:
        return message("report.way-takes-in" if rates.total < 0 else "report.way-neither")
    into, out = max(rates.inward, 0.0), max(rates.outward, 0.0)
    if out > 4 * into:
        return message("report.way-outward")
    return message("report.way-inward" if into > 4 * out else "report.way-both")


#: Id of the error of the sums.
BALANCE = "balance-error"
#: Humidity above which hours are counted beside the verdict [-]; no limit by itself.
HUMID = 0.9
#: Of every limit that may decide a year or twelve months: the messages on why it is passed, where there is one, and
#: on what to change first.
_ADVISED = {
    "wood-moisture": ("report.why-wood-moisture", "report.change-wood-moisture"),
    "cladding-moisture": ("", "report.change-wood-moisture"),
    "face-humidity": ("", "report.change-wood-moisture"),
    "mold-index": ("report.why-mold-index", "report.change-mold-index"),
    "free-water": ("report.why-free-water", "report.change-free-water"),
    "growth": ("report.why-growth", "report.change-growth"),
    "carry-over": ("report.why-carry-over", "report.change-carry-over"),
}


def twelve_months(setting: Setting) -> Check:
    """How wet does the year get by monthly means, and does that water leave?"""
    months = monthly.balance(setting.job.assembly, setting.months, setting.room)
    judged = verdict.of_months(months)
    why, change = _advice(judged)
    return Check(
        "twelve-months",
        message("report.question-twelve-months"),
        judged.state,
        _found(judged),
        why,
        change,
        limits=message("report.months-limits"),
        numbers=(
            Number("most-held", months.peak, "area density"),
            Number("held-at-the-end", months.left, "area density"),
            Number("growth", months.growth, "area density"),
        ),
        source=message("report.months-source"),
        verdict=judged,
        data=months,
    )


def _advice(judged: Verdict) -> tuple[str, str]:
    """Why, and what to change first; empty where nothing speaks against it."""
    worst = judged.worst
    if judged.state not in (DAMP, WET) or worst is None:
        return "", ""
    why, change = _ADVISED[worst.what]
    return message(why) if why else "", message(change)


def options(setting: Setting) -> Options:
    """Keywords of `hourly.simulate` that a job stands for."""
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
    typed = {**options(setting), **other}
    return hourly.simulate(setting.job.assembly, setting.hourly, setting.room, progress=progress, **typed)


def years(setting: Setting, progress: Progress | None = None) -> Check:
    """Hour by hour: how wet, how long, and does it dry?"""
    run = run_years(setting, progress)
    judged = verdict.of_year(run)
    why, change = _advice(judged)
    return Check(
        "years",
        message("report.question-years", leak=bool(run.leaking)),
        judged.state,
        one_after_another(_found(judged), _first_year(run, judged)),
        why,
        change,
        tuple(_lines(judged, setting)),
        _hourly_limits(setting, judged),
        numbers=tuple(_settled(each) for each in _numbers(setting, run, judged)),
        source=message("report.years-source"),
        verdict=judged,
        data=run,
    )


def _lines(judged: Verdict, setting: Setting) -> Iterator[str]:
    """Each finding with its state, the worst first, then what ran off."""
    for each in judged.findings:
        yield units.InBoth.of(partial(_line, each, judged.method))
    off = sum(each.ran_off for each in judged.findings)
    if off > 0.5e-3:
        area = setting.job.tightness.area if setting.job.tightness else None
        yield units.InBoth.of(lambda system: message("report.run-off", amount=units.liquid(off, area, system)))


def _line(found: Finding, method: str, system: str | None) -> str:
    told = words.told(found, method, system)
    lasted = words.lasted(found, method) if found.state != DRY else ""
    listed = listing([part for part in (told, lasted) if part])
    return message("report.finding", state=message("verdict.head", state=found.state), found=listed)


def worst_number(judged: Verdict) -> Number | None:
    """The worst finding as a number; None where nothing was found."""
    worst = judged.worst
    if worst is None:
        return None
    unit = worst.criterion.unit
    quantity, unit = ("area density", "") if unit == "kg/m2" else ("", unit)
    return Number("worst", worst.value, quantity, unit, label=words.heading(worst))


def _numbers(setting: Setting, run: Hours, judged: Verdict) -> Iterator[Number]:
    worst = worst_number(judged)
    if worst is not None:
        yield worst
    last = min(run.time.size, YEAR)
    humid = int((run.relative_humidity[-last:, _inner(setting, run)] >= HUMID).any(axis=1).sum())
    yield Number("change", round(verdict.yearly_change(run), 9), "area density")
    yield Number("ran-off", float(run.ran_off[-1].sum()), "area density")
    yield Number("humid-hours", humid, "", "h")
    yield Number("repeats-after" if judged.repeats else "years-run", judged.years or 0, "", "years")
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
    assembly, leaking, count = setting.job.assembly, leak(setting.job), judged.years
    names = [
        message("report.leaks-left-out") if each == "leak" else words.not_counted(each) for each in judged.left_out
    ]
    said = [
        message("report.one-section", kind=kind(assembly)),
        message(
            "report.year-repeats" if judged.repeats else "report.year-does-not-repeat",
            count=count,
            start=_percent(setting.job.start_humidity),
        ),
        message("report.left-out", list=listing(names)),
    ]
    if leaking is not None:
        said.append(message("report.how-it-leaks", share=_percent(leaking.long_share)))
    if vent_space(setting.job) is None and any(layer.vented for layer in assembly.layers):
        said.append(message("report.no-openings-for-the-run"))
    return " ".join([*said, message("report.mold-is-a-model")])


def _percent(share: float) -> str:
    return units.show(share, "relative humidity", "si", 0)


def _first_year(run: Hours, judged: Verdict) -> str:
    """What the first year shows that the last does not: the start is still in the wood."""
    found = judged.finding("wood-moisture")
    if found is None or judged.years < 2 or run.start_humidity is None:
        return ""
    first = float(run.layer(found.place.layer).moisture_content[:YEAR].max())
    if round(first) <= round(found.value):
        return ""
    start, peak = _percent(run.start_humidity), _percent(first / 100)
    return message("report.first-year", start=start, layer=called(found.place.layer), peak=peak)


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
    #: Whether the layer is wood, and its start and its limit: as moisture content [mass %], or as humidity [-].
    wood: bool
    start: float
    limit: float

    def facts(self) -> dict[str, str | bool]:
        """What the messages about it name."""
        start, limit = (
            message("report.amount-mass-percent", number=units.number(each, 0)) if self.wood else _percent(each)
            for each in (self.start, self.limit)
        )
        days = self.days if np.isfinite(self.days) else self.run_days
        return {"wood": self.wood, "start": start, "limit": limit, "days": units.number(days, 0)}


def drying_time(setting: Setting, layer: str, progress: Progress | None = None) -> DryingTime:
    """Days until a wet layer is dry, the weather beginning in January."""
    substance = setting.job.assembly.layer(layer).substance
    caution = criterion("wood-moisture").caution
    wood = isinstance(substance, Material) and substance.wood
    start: Air | dict[str, float] | Hours
    if isinstance(substance, Material) and wood:
        start = {layer: substance.density * WET_WOOD / 100}
    else:
        start = Air(20.0, WET_OTHER)
    facts = (wood, WET_WOOD, caution) if wood else (wood, WET_OTHER, DRY_OTHER)
    passed = 0
    for _ in range(setting.job.years):  # a year at a time: most roofs are dry in the first
        run = run_years(setting, progress, years=1, initial=start)
        there = run.layer(layer)
        # The mean of a thick insulation is dry while its cold face still drips.
        level = there.moisture_content - caution if wood else there.highest_relative_humidity - DRY_OTHER
        day = level[: level.size // 24 * 24].reshape(-1, 24).max(axis=1)
        dry = np.flatnonzero(day < 0)
        if dry.size:
            return DryingTime(float(passed + dry[0] + 1), float(passed + day.size), *facts)
        passed, start = passed + day.size, run
    return DryingTime(float("inf"), float(passed), *facts)


def with_drying_time(check: Check, setting: Setting, layer: str, progress: Progress | None = None) -> Check:
    """The check of a wet start, with its drying time beside the steady rates."""
    took = drying_time(setting, layer, progress)
    answer = WITHIN if took.days <= YEAR_OF_DAYS else LATER if np.isfinite(took.days) else NEVER
    id = {WITHIN: "report.dries-within-the-year", LATER: "report.dries-later", NEVER: "report.dries-not"}[answer]
    keep = "" if answer == WITHIN else message("report.wet-start-keep-dry")
    return dataclasses.replace(
        check,
        answer=answer,
        what=message(id, layer=called(layer), **took.facts()),
        lines=(check.what, *check.lines),
        change=check.change or keep,
        numbers=(*check.numbers, Number("time-to-dry", took.days, "", "days")),
        limits=message("report.wet-start-days-limits"),
        source=message("report.wet-start-days-source"),
    )
