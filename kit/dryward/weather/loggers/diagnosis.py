"""Five causes of a wet roof, told apart by the trace each leaves in the readings.

Room air through a hole arrives within the hour, with every shower.  Water in
the wood is driven off by the sun, and there is less of it each week.  Rain
comes with the rain.  A damp room without a hole shows as a slow, steady
surplus.  Where the vents are shut the air of the roof no longer follows
outdoors, and what seeps in stays.  Readings can mislead: two causes together, or a sensor in the wrong
place, look like a third.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from dryward import air
from dryward.checks import Floats, OutOfRange
from dryward.language import message
from dryward.units import InBoth, number, show
from dryward.weather import indoor
from dryward.weather.loggers.comparison import correlation, lag, shared_clock
from dryward.weather.loggers.readings import Readings, Record, moisture_content

CAUSES = ("rain leak", "air leak", "built-in water", "indoor humidity", "blocked vents")
#: Hours of readings below which nothing is said.
FEWEST = 72
# Where a trace counts as seen.  Common practice, no source; tried on the
# invented roofs in five climates.
_LIKE_ROOM = 0.45  # likeness of hourly changes, cavity and room [-]
_LIKE_SUN = 0.55  # likeness of hourly changes, cavity and deck temperature [-]
_BURSTS = 0.04  # share of hours with the cavity above room and outdoors alike [-]
_WET_EVENTS = 0.6  # share of wet spells after which the wood is wetter [-]
_POINT = 0.8  # what counts as wetter [mass %]
_SURPLUS = 0.5  # share of hours with the cavity above outdoors by a tenth [-]
_SHUT = 0.4  # likeness of hourly changes, cavity and outdoors, below which no outdoor air comes in [-]
_FOLLOWS = 0.8  # the same, above which the roof has the air of the yard in it [-]
_STAYS = 0.4  # share of hours above outdoors by a tenth, from which on vapor is held in a roof without outdoor air [-]
_TOO_FULL = 0.3  # share of saturated hours, above which what a roof does not follow tells nothing [-]
_WORTH_SAYING = 0.05  # share of saturated hours from which on they are told of [-]
_SATURATED = 0.97  # relative humidity at which a cavity can show no more vapor [-]


@dataclass(frozen=True)
class Diagnosis:
    """What the readings point to."""

    #: One of `CAUSES`, "outdoor air" (a dry roof that follows the weather) or "not clear".
    cause: str
    #: From `numbers`.
    numbers: dict[str, float]

    @property
    def evidence(self) -> tuple[str, ...]:
        """Sentences with numbers, the strongest first."""
        said = _sentences(self.numbers)
        # One of the last two tells of outdoors: what follows it is not shut off from it.
        said.pop("blocked vents" if self.cause == "outdoor air" else "outdoor air")
        told = tuple(said[each] for each in sorted(said, key=lambda name: name != self.cause))
        full = self.numbers["share saturated"]
        if full < _WORTH_SAYING:
            return told
        return (*told, message("loggers.saturated", share=number(100 * full, 0)))


def numbers(indoors: Record, cavity: Record, outdoors: Record) -> dict[str, float]:
    """What the diagnosis looks at, by name; not a number for what the readings do not hold.

    Shares and likenesses [-], pressures [Pa], lag [h], points [mass %].  Rain
    may be read at any of the places, wood moisture in the cavity.
    """
    room, hollow, out = shared_clock(indoors, cavity, outdoors)
    known = np.isfinite(room.vapor_pressure + hollow.vapor_pressure + out.vapor_pressure + hollow.temperature)
    if known.sum() < FEWEST:
        raise OutOfRange(message("loggers.too-few-hours", count=int(known.sum()), least=FEWEST))
    inside, within_roof, outside = room.vapor_pressure, hollow.vapor_pressure, out.vapor_pressure
    saturation = np.full(known.size, np.nan)
    saturation[known] = air.saturation_vapor_pressure(hollow.temperature[known])
    with np.errstate(invalid="ignore"):
        above_both = within_roof[known] > 1.15 * np.maximum(inside, outside)[known]
        above_out = within_roof[known] > 1.10 * outside[known]
    # At saturation the air shows its temperature and no longer what comes in: such hours tell of no cause.
    with np.errstate(invalid="ignore"):
        full = within_roof >= _SATURATED * saturation
    changes = np.where(full[1:] | full[:-1], np.nan, np.diff(within_roof))
    cold = float(np.nanmean(out.temperature))
    late, likeness = lag(np.diff(inside), changes)
    found = {
        "share above outdoors": float(above_out.mean()),
        "share above both": float(above_both.mean()),
        "share saturated": float(full[known].mean()),
        "lag behind the room": float(late) if likeness > 0 else float("nan"),
        "changes with the room": _beyond(changes, np.diff(inside), np.diff(saturation), np.diff(outside)),
        "changes with outdoors": _beyond(changes, np.diff(outside), np.diff(saturation), np.diff(inside)),
        "changes with the sun": correlation(np.diff(saturation), changes),
        "room above outdoors": float(np.nanmean(inside - outside)),
        "damp room from": float(indoor.humidity_class(3).excess(cold)),
        "dew point margin": float(np.nanmin(hollow.temperature[known] - hollow.dew_point[known])),
    }
    wetness = _wetness(hollow, known)
    week = min(wetness.size // 4, 168)
    found["wood at the end against the start"] = float(np.nanmean(wetness[-week:]) - np.nanmean(wetness[:week]))
    rain = next((r.rain for r in (out, hollow, room) if r.rain is not None), None)
    found["wet spells"], found["wet spells that wet the wood"] = _wet_spells(rain, wetness)
    return found


def _beyond(changes: Floats, cause: Floats, *others: Floats) -> float:
    """Likeness of two series once what others explain is taken out of both: the partial correlation."""
    known = np.isfinite(changes + cause + sum(others))
    if known.sum() < FEWEST:
        return float("nan")
    explained = np.column_stack([np.ones(known.sum()), *(other[known] for other in others)])
    left = [y[known] - explained @ np.linalg.lstsq(explained, y[known])[0] for y in (changes, cause)]
    return correlation(*left)


def _wetness(hollow: Record, known: NDArray[np.bool_]) -> Floats:
    """The wood's moisture; without a pin meter, a stand-in from the air's humidity [mass %]."""
    if hollow.moisture_content is not None and np.isfinite(hollow.moisture_content).any():
        dial, t = hollow.moisture_content, hollow.temperature
        good = np.isfinite(dial) & np.isfinite(t) & (dial <= 60) & (t > -35) & (t < 60)
        wetness = np.full(dial.size, np.nan)
        wetness[good] = moisture_content(dial[good], t[good])
        return wetness
    # Wood takes up about a fifth of a point for each percent of humidity.
    return np.where(known, 20.0 * hollow.relative_humidity, np.nan)


def _wet_spells(rain: Floats | None, wetness: Floats) -> tuple[float, float]:
    """How many spells of rain there were, and after which share the wood was wetter; no number where none was read."""
    if rain is None or not np.isfinite(rain).any():
        return float("nan"), float("nan")
    wet = np.nan_to_num(rain) > 0
    starts = [i for i in np.flatnonzero(wet).tolist() if i >= 24 and i + 36 < wet.size and not wet[i - 12 : i].any()]
    if not starts:
        return 0.0, float("nan")

    # Whole days before and after, so that the day's own swing cancels; and more
    # than on dry days, so that a slow rise all winter is not laid to the rain.
    def rise(i: int) -> float:
        before, after = wetness[i - 24 : i], wetness[i + 12 : i + 36]
        some = np.isfinite(before).any() and np.isfinite(after).any()
        return float(np.nanmean(after) - np.nanmean(before)) if some else float("nan")

    dry = [rise(i) for i in range(24, wet.size - 36, 6) if not wet[i - 48 : i + 36].any()]
    usual = float(np.nanmedian(dry)) if np.isfinite(dry).any() else 0.0
    rises = np.array([rise(i) for i in starts])
    return float(len(starts)), float(np.mean(rises - usual > _POINT))


def diagnose(readings: Readings) -> Diagnosis:
    """Which of five causes the readings of a wet roof point to, and why.

    A first sorting by plain rules, for learning; two causes can act at once.
    Look, open and measure before anything is taken apart.
    """
    n = numbers(readings["indoors"], readings["cavity"], readings["outdoors"])
    seen = {
        "rain leak": n["wet spells"] >= 2 and n["wet spells that wet the wood"] >= _WET_EVENTS,
        "air leak": n["changes with the room"] >= _LIKE_ROOM,
        "built-in water": n["changes with the sun"] >= _LIKE_SUN
        and n["share above both"] >= _BURSTS
        and n["wood at the end against the start"] < -_POINT,
        "indoor humidity": n["room above outdoors"] > n["damp room from"] and n["share above outdoors"] >= _SURPLUS,
        "blocked vents": n["changes with outdoors"] < _SHUT
        and n["share saturated"] < _TOO_FULL
        and n["share above outdoors"] >= _STAYS
        and n["wood at the end against the start"] > _POINT,
    }
    cause = next((name for name in CAUSES if seen[name]), None)
    if cause is None:
        follows = n["changes with outdoors"] > _FOLLOWS and n["share above outdoors"] < _SURPLUS
        cause = "outdoor air" if follows else "not clear"
    return Diagnosis(cause, n)


def _when(late: float) -> str:
    """Whether what follows comes after, or before: then no room drives it, and a clock may be off."""
    return "after" if late > 0 else "before" if late < 0 else "together"


def _sentences(n: dict[str, float]) -> dict[str, str]:
    def share(name: str) -> str:
        return number(100.0 * float(np.nan_to_num(n[name])), 0)

    def likeness(name: str) -> str:
        return number(n[name], 2)

    spells, end, late = n["wet spells"], n["wood at the end against the start"], n["lag behind the room"]
    with_room = {"likeness": likeness("changes with the room")}
    lags = not np.isnan(late) and n["changes with the room"] >= _LIKE_ROOM
    return {
        "rain leak": message("loggers.no-rain-read")
        if np.isnan(spells)
        else message("loggers.no-wet-spell")
        if np.isnan(n["wet spells that wet the wood"])
        else message("loggers.after-rain", share=share("wet spells that wet the wood"), spells=round(spells)),
        "air leak": message("loggers.with-the-room-late", late=number(abs(late), 0), when=_when(late), **with_room)
        if lags
        else message("loggers.with-the-room", **with_room),
        "built-in water": message(
            "loggers.from-the-wood",
            share=share("share above both"),
            likeness=likeness("changes with the sun"),
            points=number(abs(end), 1),
            drier=bool(end < 0),
        ),
        "indoor humidity": InBoth.of(
            lambda system: message(
                "loggers.damp-room",
                excess=show(n["room above outdoors"], "pressure", system),
                damp=show(n["damp room from"], "pressure", system),
                share=share("share above outdoors"),
            )
        ),
        "blocked vents": message(
            "loggers.shut",
            likeness=likeness("changes with outdoors"),
            share=share("share above outdoors"),
            points=number(abs(end), 1),
            drier=bool(end < 0),
        ),
        "outdoor air": message("loggers.as-outdoors", likeness=likeness("changes with outdoors")),
    }
