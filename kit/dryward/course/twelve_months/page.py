"""Twelve months: water that piles up, dries out, and is carried over."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from types import SimpleNamespace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from dryward import language
from dryward.checks import begun
from dryward.course.twelve_months.beats import PLAY
from dryward.course.where_it_gets_wet.page import OUTER, roof_with
from dryward.panels import readouts
from dryward.panels.controls import Choice, standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import monthly
from dryward.pictures.year import MonthBars, MonthlyWater, from_balance
from dryward.teaching.words import Step
from dryward.units import to_si
from dryward.verdict import WET, Verdict
from dryward.verdict.words import month as name_of
from dryward.verdict.words import wet_and_how_long
from dryward.weather import Air
from dryward.weather.places import demo_climate, demos

message = language.beside(__file__)

#: The room all year; the sliders move its humidity.
ROOM_TEMPERATURE = to_si(70.0, "degF")
PLACE = Choice("Place", "twelve_months.town", tuple((id, f"names.{id}") for id in demos()), start="cold")
#: Places along a slider at which the year is worked out for its strip.
ALONG = 9


@dataclass(frozen=True)
class TownYear:
    """A year of one roof in one town."""

    months: monthly.Months
    place: str
    indoor: Air

    @property
    def total(self) -> NDArray[np.float64]:
        """Held at the end of each month, all planes together [kg/m2]."""
        return self.months.held.sum(axis=1)


@lru_cache(maxsize=512)
def year(place: str, relative_humidity: float, permeance: float, outer: str) -> monthly.Months:
    """The twelve months of a roof."""
    return monthly.balance(roof_with(outer, permeance), demo_climate(place), Air(ROOM_TEMPERATURE, relative_humidity))


@lru_cache(maxsize=4096)
def judged(place: str, relative_humidity: float, permeance: float, outer: str) -> str:
    """The state of a roof by its twelve months."""
    return year(place, relative_humidity, permeance, outer).verdict.state


class TwelveMonths(Page):
    """Town, room humidity, inner membrane and outer layer; bars and the line carried over."""

    id = "twelve-months"
    handles = (PLACE, "RH_in", standard("M_in").starting(3), OUTER)
    draws = MonthBars
    play = PLAY

    def compute(self, at: SimpleNamespace) -> TownYear:
        """One year of the roof."""
        months = year(at.Place, at.RH_in, at.M_in, at.Outer)
        return TownYear(months, at.Place, Air(ROOM_TEMPERATURE, at.RH_in))

    def views(self, state: TownYear) -> MonthlyWater:
        """All planes together."""
        return from_balance(state.months)

    def given(self, state: TownYear) -> str:
        """What no control moves."""
        roof = self.roof_held(roof_with(self.at.Outer, self.at.M_in))
        return message("given", room=self.held(ROOM_TEMPERATURE, "temperature"), roof=roof)

    def numbers(self, state: TownYear) -> list[Readout]:
        """The most held and when, what dries in summer, what is left, and a second year."""
        months = state.months
        wets = sum(1 for each in months.condensed if each.sum() > 0)
        plane = months.planes[int(months.held.max(axis=0).argmax())] if months.planes else None
        return [
            Readout(
                "peak",
                message("peak"),
                months.peak,
                "area density",
                note=readouts.between_layers(plane.inner_layer, plane.outer_layer) if plane else message("no-water"),
            ),
            Readout(
                "peak_month",
                message("peak-month"),
                months.peak_month,
                text=name_of(months.peak_month) if months.peak_month else message("no-month"),
                note=message("peak-month-note", wets=wets) if wets else "",
            ),
            Readout(
                "dried",
                message("dried"),
                float(months.evaporated.sum()),
                "area density",
                note=message("dried-note", sum=self.show(float(months.condensed.sum()), "area density")),
            ),
            Readout("left", message("left"), months.left, "area density", both=True),
            Readout("growth", message("growth"), months.growth, "area density", both=True),
        ]

    def judge(self, state: TownYear) -> Verdict:
        """What twelve months make of the roof."""
        return state.months.verdict

    def says(self, state: TownYear) -> str:
        """What the roof holds and for how long, and whether the last of it leaves before the next winter."""
        return f"{self._balance(state)} {begun(wet_and_how_long(self.judge(state), self.unit_system))}."

    def _balance(self, state: TownYear) -> str:
        """The most held, and how the year ends."""
        months = state.months
        if months.ending == "no wetting":
            return message("no-wetting")
        assert months.peak_month is not None  # a year that wets has its peak
        month, peak = name_of(months.peak_month), self.show(months.peak, "area density")
        if months.ending == "dries":
            wet = self.judge(state).state == WET
            return message("dries", wet=wet, month=month, peak=peak, gone=self._gone(state))
        left = self.show(months.left, "area density")
        return message("grows" if months.ending == "grows" else "carries", month=month, peak=peak, left=left)

    def _gone(self, state: TownYear) -> str:
        """The month in which the last of it is gone."""
        peak = int(state.total.argmax())
        later = peak + int((state.total[peak:] <= 0).argmax())
        return name_of(state.months.month[later])

    def strips(self, at: SimpleNamespace, state: TownYear) -> dict[str, Any]:
        """The state along each control, all else as it is; only what is new is worked out."""
        now = at.Place, at.RH_in, at.M_in, at.Outer
        return {
            name: Strip(tuple(judged(*now[:k], each, *now[k + 1 :]) for each in self.along(name, ALONG)))
            for k, name in enumerate(self.controls)
        }

    def steps(self, state: TownYear) -> list[Step]:
        """The running sum of the months."""
        months, lines, before = state.months, [], 0.0
        unit = "area density"
        if not months.planes:
            return [Step(message("step-nothing"), "", self.show(0.0, unit))]
        for month, gained, lost, held in zip(
            months.month, months.condensed.sum(axis=1), months.evaporated.sum(axis=1), state.total, strict=True
        ):
            if gained or lost or before:
                lines.append(
                    Step(
                        message("step-month", month=name_of(month)),
                        f"{self.show(before, unit)} + {self.show(gained, unit)} − {self.show(lost, unit)}",
                        self.show(held, unit),
                    )
                )
            before = held
        return lines


PAGE = TwelveMonths
