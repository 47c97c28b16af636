"""Hour by hour: the wood of a roof in its first year and the year it settles to, with storage, sun, sky and a leak."""

from __future__ import annotations

import threading
from collections.abc import Callable
from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any

import numpy as np

from dryward import building, language, weather
from dryward.checks import Floats, begun
from dryward.course.hour_by_hour.beats import DECK, PLAY, SHEATHING, WOOD
from dryward.panels.controls import Choice, Scale, Slider
from dryward.panels.filling import Filling
from dryward.panels.learner import Settings
from dryward.panels.page import Page
from dryward.panels.readouts import Readout
from dryward.physics import hourly
from dryward.physics.airleak import Leak
from dryward.physics.hourly import Hours
from dryward.physics.ventspace import VentSpace
from dryward.pictures import film
from dryward.pictures.year import MoistureYear, YearGraph
from dryward.teaching.words import Step
from dryward.units import HOUR, amounts, from_si, number, to_si, written
from dryward.verdict import Finding, Verdict
from dryward.verdict.words import account, amount, month_of, pores, reading
from dryward.weather import Air

message = language.beside(__file__)

ROOM_TEMPERATURE = to_si(70.0, "degF")
#: A run ends with the first year that repeats, and after so many at most; its last year is judged.
MOST_YEARS, HOURS = 5, 8760
#: Every layer starts in balance with this air.
START = Air(20.0, 0.65)
#: A house of 566 m3 whose vault of 56 m2 has a fifth of its leaks; the roof faces north.
VOLUME, AREA, SHARE, NORTH = to_si(20000.0, "ft3"), to_si(600.0, "ft2"), 0.2, 0.0
EVERY = 6  # hours between points of the picture
#: How many runs are kept: those of all strips, and as many again.
KEPT = 64

# With the shared starts, 40 % in the room and 3 air changes, the cold town makes this roof damp, and each of the
# three strips goes from dry to wet: the place, the room and the leak can all be asked for what they do.
PLACE = Choice("Place", "hour_by_hour.climate", tuple((id, f"names.{id}") for id in weather.demos()), start="cold")
_DAYS = Scale(1, 2 * 365, 440, 5)
DAY = Slider("Day", "hour_by_hour.day", "number", _DAYS, _DAYS, play=40)


@dataclass(frozen=True)
class Run:
    """What is kept of a run: its first year and the judged one behind each other, and what they mean."""

    #: Since the start of the two years [days].
    days: Floats
    #: Of each wood layer [mass %].
    moisture: dict[str, Floats]
    #: Water in and out in each month [kg/m2].
    brought: Floats
    carried: Floats
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
    #: The judged year of the sheathing, and the roof that it runs over.
    film: film.Film
    assembly: building.Assembly

    def wood(self, name: str) -> Finding:
        """What was found of the moisture of a wood layer in the judged year."""
        found = self.verdict.findings
        return next(each for each in found if each.what == WOOD.id and each.place.layer == name)

    @property
    def settled(self) -> str:
        """What the judged year is called."""
        return message("settled", repeats=self.verdict.repeats, count=self.verdict.years)


@dataclass(frozen=True)
class DayOfRun:
    """A run, and the day the cursor stands on."""

    run: Run
    day: float


def roof() -> building.Assembly:
    """The OSB roof with the variable film; its OSB is called what it is here, the sheathing."""
    film = building.membrane("teaching-variable")
    return building.preset("vented-vault-osb").replace("inner membrane", film).replace("outer layer", rename=SHEATHING)


def simulated(place: str, humidity: float, ach50: float) -> Hours:
    """That roof through its years, until one repeats."""
    built = roof()
    gap = built.layer("vent space").drawn_thickness
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


def kept(hours: Hours, place: str) -> Run:
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
        verdict=hours.verdict,
        driest=int(sheathing[before:].argmin()),
        lowest=float(sheathing[before:].min()),
        change=float(sheathing[-1] - sheathing[before - 1]),
        ran_off=float(hours.ran_off[-1].sum()),
        balance_error=hours.balance_error,
        film=film.cut(hours, weather.demo(place), SHEATHING),
        assembly=hours.assembly,
    )


#: What is kept, by what it was run with, the oldest first; strips are filled on another thread.
_runs: dict[tuple[str, float, float], Run] = {}
_keeping = threading.Lock()


def run_of(place: str, humidity: float, ach50: float) -> Run:
    """The run at one setting, as `simulated`; worked out once and kept."""
    key = place, humidity, ach50
    run = _runs.get(key)
    if run is None:
        run = kept(simulated(*key), place)
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
    play = PLAY
    slow = True

    def __init__(self, unit_system: str | None = None, settings: Settings | None = None) -> None:
        self._filled: tuple[str, float, float] | None = None
        self.filling = Filling(self)
        super().__init__(unit_system, settings)

    def preview(self, at: SimpleNamespace) -> DayOfRun | None:
        """A run that is kept, with the cursor moved; nothing while another is needed."""
        key = self._key(at)
        if key != self._filled:
            # The strips are those of another setting: what is still being worked out for them is wanted no more.
            self.filling.drop()
            self._filled = None
        run = _runs.get(key)
        return None if run is None else DayOfRun(run, at.Day)

    def compute(self, at: SimpleNamespace) -> DayOfRun:
        """The run, kept for the next move of the day."""
        return DayOfRun(run_of(*self._key(at)), at.Day)

    def _key(self, at: SimpleNamespace) -> tuple[str, float, float]:
        """What a run depends on: place, room humidity, leak."""
        return at.Place, at.RH_in, at.ACH50

    def views(self, state: DayOfRun) -> MoistureYear:
        """The curves with their limits, and the water of each month."""
        run = state.run
        return MoistureYear(
            run.days,
            tuple(run.moisture.items()),
            ((WOOD.caution, language.message("pictures.caution")), (WOOD.damage, language.message("pictures.decay"))),
            run.brought,
            run.carried,
            day=state.day,
            years=(message("first-year"), run.settled),
        )

    def given(self, state: DayOfRun) -> str:
        """What no control moves; on the stage the controls are out of sight, so where they stand as well."""
        show = self.held
        held = message(
            "given", room=show(ROOM_TEMPERATURE, "temperature"), area=self.area_held(AREA),
            volume=show(VOLUME, "volume"), share=show(SHARE, "relative humidity"),
            start=self.air_held(START),
        )  # fmt: skip
        if not self.stage.on:
            return held
        ach50 = number(self.at.ACH50 * HOUR) if len(self.stage.beat.cases) == 1 else "two"
        town = language.message(f"names.{self.at.Place}")
        return message(
            "given-case", town=town, humidity=show(self.at.RH_in, "relative humidity"), ach=ach50, given=held
        )

    def numbers(self, state: DayOfRun) -> list[Readout]:
        """Today, the peak and its month, days over caution, what ran off, and what the year changes."""
        run = state.run
        sheathing, deck, mold = run.wood(SHEATHING), run.wood(DECK), run.verdict.finding("mold-index")
        now, above = (float(np.interp(state.day, run.days, each)) for each in run.moisture.values())
        off = amounts.whole_roof(run.ran_off, self.unit_system)
        days, deck_days = ((each.lasted or 0.0) / 24.0 for each in (sheathing, deck))
        return [
            Readout(
                "today",
                message("today"),
                now,
                text=reading(now, 1),
                note=message("today-note", date=self._date(state), above=reading(above, 1)),
            ),
            Readout(
                "peak",
                message("peak"),
                sheathing.value,
                text=reading(sheathing.value, 1),
                note=message(
                    "peak-note",
                    month=_month(sheathing),
                    deck=reading(deck.value, 1),
                    deck_month=_month(deck),
                ),
            ),
            Readout(
                "over",
                message("over", caution=self._percent(WOOD.caution, 0)),
                days,
                text=message("over-text", days=round(days)),
                note=message("over-note", days=round(deck_days), mold=written(mold.value if mold else 0.0, ".1f")),
            ),
            Readout(
                "ran_off",
                message("ran-off", area=amounts.roof_area(self.unit_system)),
                run.ran_off * amounts.ROOF["us"],
                text=off,
                note=message("ran-off-note", ran_off=amount(run.ran_off, "kg/m2", self.unit_system)),
            ),
            Readout("change", message("change"), run.change, text=self._signed(run.change), note=run.settled),
            Readout("deck_peak", "", deck.value, hidden=True),
            Readout("mold", "", mold.value if mold else 0.0, hidden=True),
            Readout("years", "", run.verdict.years, hidden=True),
            Readout("balance", "", run.balance_error, hidden=True),
        ]

    def _percent(self, moisture: float, digits: int = 1) -> str:
        """A wood moisture given in percent."""
        return self.show(moisture / 100, "relative humidity", digits)

    def _signed(self, change: float) -> str:
        """A change of moisture with its sign."""
        shown = self._percent(change)
        return f"+{shown}" if change >= 0.05 else shown

    def _date(self, state: DayOfRun) -> str:
        """Month and year of the day the cursor stands on."""
        year, day = divmod(min(state.day, 2 * 365) - 1, 365)
        return message("date", month=month_of(day * 24), year=state.run.verdict.years if year else 1)

    def judge(self, state: DayOfRun) -> Verdict:
        """The year that the roof settles to."""
        return state.run.verdict

    def says(self, state: DayOfRun) -> str:
        """The three parts of the verdict, then the sheathing's own year, and which year that is."""
        run, verdict = state.run, state.run.verdict
        said = begun(account(verdict, self.unit_system))
        sheathing = run.wood(SHEATHING)
        return message(
            "year",
            account=said,
            sheathing_worst=verdict.worst == sheathing,
            wettest=_month(sheathing),
            highest=self._percent(sheathing.value, 0),
            soaked=pores(sheathing, self.unit_system) if sheathing.soaked else "no",
            driest=month_of(run.driest),
            lowest=self._percent(run.lowest, 0),
            settled=run.settled,
        )

    def strips(self, at: SimpleNamespace, state: DayOfRun) -> dict[str, Any]:
        """Filled while the page is in use; a move of a control drops the rest."""
        key = self._key(at)
        if key != self._filled:
            self._filled = key
            self.filling.start(self.work(at), self.known(at))
        return dict(self.filling.shown)

    def known(self, at: SimpleNamespace) -> dict[str, Callable[[Any], str | None]]:
        """For each strip, the state at one place along it where that run is kept already."""

        def state(*key: Any) -> str | None:
            run = _runs.get(key)
            return None if run is None else run.verdict.state

        return {
            "Place": lambda place: state(place, at.RH_in, at.ACH50),
            "RH_in": lambda humidity: state(at.Place, humidity, at.ACH50),
            "ACH50": lambda ach50: state(at.Place, at.RH_in, ach50),
        }

    def work(self, at: SimpleNamespace) -> dict[str, Callable[[Any], str]]:
        """For each strip, the state at one place along it."""
        return {
            "Place": lambda place: run_of(place, at.RH_in, at.ACH50).verdict.state,
            "RH_in": lambda humidity: run_of(at.Place, humidity, at.ACH50).verdict.state,
            "ACH50": lambda ach50: run_of(at.Place, at.RH_in, ach50).verdict.state,
        }

    def steps(self, state: DayOfRun) -> list[Step]:
        """What one percent of moisture weighs, and what the peak holds."""
        layer, us = roof().layer(SHEATHING), self.unit_system == "us"
        density, thick = layer.material.density, layer.drawn_thickness
        dry = density * thick
        rise = state.run.wood(SHEATHING).value - state.run.lowest
        if us:
            size = message(
                "step-dry-us",
                density=written(from_si(density, "lb/ft3"), ".4g"),
                thickness=written(from_si(thick, "in"), ".4g"),
            )
            size = message("step-dry-us-grains", size=size)
        else:
            size = message("step-dry-si", density=written(density, ".4g"), thickness=written(thick * 1000, ".4g"))
        unit = "gr/ft2" if us else "g/m2"
        whole, one = (
            message("grains" if us else "grams", amount=number(from_si(each, unit), figures=4))
            for each in (dry, dry * 0.01)
        )
        return [
            Step(message("step-dry"), size, whole),
            Step(message("step-percent"), f"{whole} × 0.01", one),
            Step(
                message("step-rise"),
                f"{rise:.2f} × {one}",
                self.show(rise * dry * 0.01, "area density"),
            ),
        ]


def _month(found: Finding) -> str:
    """The month of a finding of a year."""
    assert found.when is not None  # what a year finds has its hour
    return month_of(found.when)


PAGE = HourByHour
