"""Hour by hour: the wood of a roof in its first year and the year it settles to, with storage, sun, sky and a leak."""

from __future__ import annotations

import threading
from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any

import numpy as np

from dryward import building, language, weather
from dryward.panels.controls import Choice, Scale, Slider
from dryward.panels.page import Page
from dryward.panels.readouts import Filling, Readout
from dryward.pictures.year import MoistureYear, YearGraph
from dryward.teaching import words
from dryward.teaching.words import Step
from dryward.units import HOUR, WATER_DENSITY, from_si, to_si
from dryward.verdict import Verdict, criterion, of_year
from dryward.verdict.words import account, amount, capital, month_of
from dryward.weather import Air

message = language.beside(__file__)

ROOM_TEMPERATURE = to_si(70.0, "degF")
#: A run ends with the first year that repeats, and after so many at most; its last year is judged.
MOST_YEARS, HOURS = 5, 8760
#: The wood of this roof, the one that the lesson is about first.
SHEATHING, DECK = "sheathing", "deck"
WOOD = criterion("wood-moisture")
BANDS = ((WOOD.caution, "caution"), (WOOD.damage, "decay"))
#: Every layer starts in balance with this air.
START = Air(20.0, 0.65)
#: A house of 566 m3 whose vault of 56 m2 has a fifth of its leaks; the roof faces north.
VOLUME, AREA, SHARE, NORTH = to_si(20000.0, "ft3"), to_si(600.0, "ft2"), 0.2, 0.0
EVERY = 6  # hours between points of the picture
#: How many runs are kept: those of all strips, and as many again.
KEPT = 64

# With the shared starts, 40 % in the room and 3 air changes, the cold town makes this roof damp, and each of the
# three strips goes from dry to wet: the place, the room and the leak can all be asked for what they do.
PLACE = Choice(
    message("place"),
    message("climate"),
    tuple((id, id.replace("-", " ").capitalize()) for id in weather.demos()),
    start="cold",
)
_DAYS = Scale(1, 2 * 365, 440, 5)
DAY = Slider("Day", message("day-of-the-two"), "number", _DAYS, _DAYS, play=40)


@dataclass(frozen=True)
class Run:
    """What is kept of a run: its first year and the judged one behind each other, and what they mean."""

    #: Since the start of the two years [days].
    days: np.ndarray
    #: Of each wood layer [mass %].
    moisture: dict
    #: Water in and out in each month [kg/m2].
    brought: np.ndarray
    carried: np.ndarray
    verdict: Verdict
    #: Hour of the judged year at which the sheathing is driest.
    driest: int
    #: Its moisture then, and what the judged year adds to it [mass %].
    lowest: float
    change: float
    #: In the judged year [kg/m2].
    ran_off: float
    #: Of all years [-].
    balance_error: float

    def wood(self, name):
        """What was found of the moisture of a wood layer in the judged year."""
        found = self.verdict.findings
        return next(each for each in found if each.what == WOOD.id and each.place.layer == name)

    @property
    def settled(self):
        """What the judged year is called."""
        count = self.verdict.years
        return (
            message("year-and-each-later", count=count)
            if self.verdict.repeats
            else message("year-still-changing", count=count)
        )


@dataclass(frozen=True)
class State:
    """A run, and the day the cursor stands on."""

    run: Run
    day: float


def roof():
    """The OSB roof with the variable film; its OSB is called what it is here, the sheathing."""
    film = building.membrane("teaching-variable")
    return building.preset("vented-vault-osb").replace("inner membrane", film).replace("outer layer", rename=SHEATHING)


def simulated(place, humidity, ach50):
    """That roof through its years, until one repeats."""
    from dryward.physics import hourly
    from dryward.physics.airleak import Leak
    from dryward.physics.ventspace import VentSpace

    built = roof()
    gap = built.layer("vent space").thickness
    return hourly.simulate(
        built,
        weather.demo(place),
        Air(ROOM_TEMPERATURE, humidity),
        years=MOST_YEARS,
        until_it_repeats=True,
        initial=START,
        vent=VentSpace(gap, to_si(16.0, "ft"), built.slope, 0.01, 0.01),
        leak=Leak.from_blower_door(ach50 * HOUR, VOLUME, SHARE, area=AREA),
        surface=hourly.Surface(azimuth=NORTH),
    )


def kept(hours):
    """The small part of a run that the page shows; the rest, some fifty megabytes, may go."""
    before = hours.time.size - HOURS
    moisture = {name: hours.layer(name).moisture_content for name in (SHEATHING, DECK)}
    # The very hours of the highest and the lowest are among the points, so that no curve misses its own peak.
    turns = [turn(each[before:]) for each in moisture.values() for turn in (np.argmin, np.argmax)]
    points = np.unique([*range(EVERY - 1, HOURS, EVERY), *turns])
    both = np.concatenate([points, before + points])
    brought, carried = (np.concatenate([each[:12], each[-12:]]) for each in hours.monthly().in_and_out)
    sheathing = moisture[SHEATHING]
    return Run(
        days=np.concatenate([points + 1.0, HOURS + points + 1.0]) / 24.0,
        moisture={name: each[both] for name, each in moisture.items()},
        brought=brought,
        carried=carried,
        verdict=of_year(hours),
        driest=int(sheathing[before:].argmin()),
        lowest=float(sheathing[before:].min()),
        change=float(sheathing[-1] - sheathing[before - 1]),
        ran_off=float(hours.ran_off[-1].sum()),
        balance_error=hours.balance_error,
    )


#: What is kept, by what it was run with, the oldest first; strips are filled on another thread.
_runs: dict[tuple[Any, ...], Any] = {}
_keeping = threading.Lock()


def run_of(place, humidity, ach50):
    """The run at one setting, as `simulated`; worked out once and kept."""
    key = place, humidity, ach50
    run = _runs.get(key)
    if run is None:
        run = kept(simulated(*key))
        with _keeping:
            _runs[key] = run
            while len(_runs) > KEPT:
                del _runs[next(iter(_runs))]
    return run


class HourByHour(Page):
    """Two years of wood moisture, playable."""

    id = "hour-by-hour"
    handles = (PLACE, "RH_in", "ACH50", DAY)
    draws = YearGraph
    slow = True

    def __init__(self, *args, **keys):
        self._filled = None
        self.filling = Filling(self)
        super().__init__(*args, **keys)

    def preview(self, at: SimpleNamespace) -> State | None:
        """A run that is kept, with the cursor moved; nothing while another is needed."""
        key = self._key(at)
        if key != self._filled:
            # The strips are those of another setting: what is still being worked out for them is wanted no more.
            self.filling.drop()
            self._filled = None
        run = _runs.get(key)
        return None if run is None else State(run, at.Day)

    def compute(self, at: SimpleNamespace) -> State:
        """The run, kept for the next move of the day."""
        return State(run_of(*self._key(at)), at.Day)

    def _key(self, at):
        return at.Place, at.RH_in, at.ACH50

    def views(self, state):
        """The curves with their limits, and the water of each month."""
        run = state.run
        return MoistureYear(
            run.days,
            tuple(run.moisture.items()),
            BANDS,
            run.brought,
            run.carried,
            day=state.day,
            years=(message("first-year"), run.settled),
        )

    def numbers(self, state: State) -> list[Readout]:
        """Today, the peak and its month, days over caution, what ran off, and what the year changes."""
        run = state.run
        sheathing, deck, mold = run.wood(SHEATHING), run.wood(DECK), run.verdict.finding("mold-index")
        now, above = (float(np.interp(state.day, run.days, each)) for each in run.moisture.values())
        off = words.number(from_si(run.ran_off * AREA / WATER_DENSITY, "pint"), "pint", self.unit_system)
        days = sheathing.lasted / 24.0
        return [
            Readout(
                "today",
                message("today"),
                now,
                text=_percent(now),
                note=message("today-note", date=self._date(state), above=_percent(above)),
            ),
            Readout(
                "peak",
                message("peak"),
                sheathing.value,
                text=_percent(sheathing.value),
                note=message(
                    "peak-note", when=month_of(sheathing.when), deck=_percent(deck.value), when2=month_of(deck.when)
                ),
            ),
            Readout(
                "over",
                message("over", caution=f"{WOOD.caution:.0f}"),
                days,
                text=f"{days:.0f} days",
                note=message(
                    "over-note", lasted=f"{deck.lasted / 24.0:.0f}", mold=f"{mold.value if mold else 0.0:.1f}"
                ),
            ),
            Readout(
                "ran_off",
                self.say(message("ran-off-from-600")),
                run.ran_off * AREA,
                text=off,
                note=message("ran-off-note", ran_off=amount(run.ran_off, "kg/m2", self.unit_system)),
            ),
            Readout("change", message("change"), run.change, text=_signed(run.change), note=run.settled),
            Readout("deck_peak", "", deck.value, hidden=True),
            Readout("mold", "", mold.value if mold else 0.0, hidden=True),
            Readout("years", "", run.verdict.years, hidden=True),
            Readout("balance", "", run.balance_error, hidden=True),
        ]

    def _date(self, state):
        year, day = divmod(min(state.day, 2 * 365) - 1, 365)
        return message("year", day=month_of(day * 24), year=state.run.verdict.years if year else 1)

    def judge(self, state: State) -> Verdict:
        """The year that the roof settles to."""
        return state.run.verdict

    def says(self, state: State) -> str:
        """The three parts of the verdict, then the sheathing's own year, and which year that is."""
        run, verdict = state.run, state.run.verdict
        said = capital(account(verdict, self.unit_system))
        sheathing = run.wood(SHEATHING)
        driest = message("driest-in", driest=month_of(run.driest), lowest=f"{run.lowest:.0f}")
        if verdict.worst == sheathing:
            own = message("it-is", driest=driest)
        else:
            own = message(
                "the-sheathing-is-wettest",
                when=month_of(sheathing.when),
                sheathing=f"{sheathing.value:.0f}",
                driest=driest,
            )
        return message("so-it-is-in", said=said, own=own, settled=run.settled)

    def strips(self, at: SimpleNamespace, state: State) -> dict[str, Any]:
        """Filled while the page is in use; a move of a control drops the rest."""
        key = self._key(at)
        if key != self._filled:
            self._filled = key
            self.filling.start(self.work(at))
        return dict(self.filling.shown)

    def work(self, at):
        """For each strip, the state at one place along it."""
        return {
            message("place"): lambda place: run_of(place, at.RH_in, at.ACH50).verdict.state,
            "RH_in": lambda humidity: run_of(at.Place, humidity, at.ACH50).verdict.state,
            "ACH50": lambda ach50: run_of(at.Place, at.RH_in, ach50).verdict.state,
        }

    def steps(self, state: State) -> list[Step]:
        """What one percent of moisture weighs, and what the peak holds."""
        layer, us = roof().layer(SHEATHING), self.unit_system == "us"
        dry = layer.substance.density * layer.thickness
        rise = state.run.wood(SHEATHING).value - state.run.lowest
        if us:
            size = message(
                "lb-ft-in",
                density=f"{from_si(layer.substance.density, 'lb/ft3'):.4g}",
                thickness=f"{from_si(layer.thickness, 'in'):.4g}",
            )
            size = message("x-12-7000-gr-lb", size=size)
        else:
            size = message(
                "kg-m-mm", density=f"{layer.substance.density:.4g}", thickness=f"{layer.thickness * 1000:.4g}"
            )
        unit, symbol = ("gr/ft2", "gr/ft²") if us else ("g/m2", "g/m²")
        whole, one = (f"{from_si(each, unit):.5g} {symbol}" for each in (dry, dry * 0.01))
        return [
            Step(message("step-the-dry-sheathing-density"), size, whole),
            Step(message("step-one-percent-of-that"), f"{whole} × 0.01", one),
            Step(
                message("step-from-the-driest-day"),
                f"{rise:.2f} × {one}",
                self.show(rise * dry * 0.01, "area density"),
            ),
        ]


def _percent(moisture):
    return f"{moisture:.1f} %"


def _signed(change):
    return f"{change:+.1f} %" if abs(change) >= 0.05 else "0.0 %"


PAGE = HourByHour
