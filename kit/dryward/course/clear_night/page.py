"""The clear night: a covering colder than the air, and frost from outdoor air alone."""

from __future__ import annotations

from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from dryward import air, language, units
from dryward.checks import Numeric
from dryward.course.clear_night.scene import NightPicture, NightUnderSky, from_night
from dryward.panels import hand
from dryward.panels.controls import standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics.moving_air import film_permeance
from dryward.physics.sky import STEFAN_BOLTZMANN, SUBLIMATION_HEAT, Night, dry_underside, frost_margin, night
from dryward.teaching import words
from dryward.teaching.words import Step
from dryward.units import HOUR, KELVIN, to_si
from dryward.verdict import STATES, Place, Verdict, criterion, of_amount
from dryward.weather import Air

message = language.beside(__file__)

#: The night of this lesson, and its length [h].
OUTDOORS, HOURS = to_si(20.0, "degF"), 12
#: The house under the vent space lets this much heat up [W/(m2 K)], at this indoor temperature [degC].
HOUSE: dict[str, Any] = {"u_value": 0.126, "indoor_temperature": 21.1}
#: Part of the heat exchange with the air that is at the lower face [-]; an assumption of `physics.sky.night`.
UNDER = 0.4
#: The roof that drips in the morning.
AREA = to_si(600.0, "ft2")


@dataclass(frozen=True)
class FrostNight:
    """One night, and the covering before any frost."""

    outdoor: Air
    cooling: float
    wind: float
    layer: float
    night: Night
    underside: float
    bare: float

    @property
    def below(self) -> float:
        """How far the lower face is below the air, with no frost on it yet [K]."""
        return self.outdoor.temperature - self.underside

    @property
    def frosted(self) -> float:
        """The same with the frost on it, which gives off heat as it forms [K]."""
        return self.outdoor.temperature - float(self.night.underside_temperature[-1])

    @property
    def margin(self) -> float:
        """How far below the air a face may be before that air frosts it [K]."""
        return round(float(frost_margin(self.outdoor)), 9)  # saturated air has none; the last bits are rounding

    @property
    def frost(self) -> float:
        """At the night's end [kg/m2]."""
        return float(self.night.frost[-1])


def frost_of(outdoor: Air, cooling: float, wind: float, layer: float) -> Night:
    """The night of this lesson with its frost."""
    return night(outdoor, cooling, wind, resistance=layer, under_share=UNDER, hours=HOURS, **HOUSE)


def states_of_nights(vapor_pressure: Numeric, cooling: Numeric, wind: Numeric, layer: Numeric) -> NDArray[Any]:
    """The state of many nights at once, each of one weather; numbers or arrays of one shape.

    Frost forms as fast as vapor reaches the face, and its heat warms the
    face.  So a limit is passed where vapor would still come as fast as the
    limit asks if the face had that much heat from below.
    """
    limit = criterion("night-frost")
    film, rank = film_permeance(UNDER * np.asarray(wind), OUTDOORS), 0
    for amount in (limit.caution, limit.damage):
        rate = amount / (HOURS * HOUR)
        below = HOUSE["indoor_temperature"] + rate * SUBLIMATION_HEAT / HOUSE["u_value"]
        face = dry_underside(
            OUTDOORS, cooling, wind, resistance=layer, under_share=UNDER, **{**HOUSE, "indoor_temperature": below}
        )
        rank = rank + (film * (vapor_pressure - air.saturation_vapor_pressure(face)) >= rate)
    return np.asarray(STATES, dtype=object)[rank]


class ClearNight(Page):
    """Outdoor humidity, sky, wind and a layer under the covering; a night and its frost."""

    id = "clear-night"
    handles = (standard("RH_out").starting(90, 90), "Sky", "Wind", "R_cover")
    draws = NightPicture

    def compute(self, at: SimpleNamespace) -> FrostNight:
        """Twelve hours of one weather, and the same with no layer under the covering."""
        outdoor = Air(OUTDOORS, at.RH_out)
        found = frost_of(outdoor, at.Sky, at.Wind, at.R_cover)
        under = float(dry_underside(OUTDOORS, at.Sky, at.Wind, resistance=at.R_cover, under_share=UNDER, **HOUSE))
        return FrostNight(outdoor, at.Sky, at.Wind, at.R_cover, found, under, self._bare(outdoor, at, found))

    def _bare(self, outdoor: Air, at: SimpleNamespace, found: Night) -> float:
        """Frost by morning on the bare covering [kg/m2]; kept while only the layer changes."""
        key = (at.RH_out, at.Sky, at.Wind)
        if getattr(self, "_known", (None,))[0] != key:
            bare = found if at.R_cover == 0 else frost_of(outdoor, at.Sky, at.Wind, 0.0)
            self._known = key, float(bare.frost[-1])
        return self._known[1]

    def views(self, state: FrostNight) -> NightUnderSky:
        """The night as it was worked out."""
        return from_night(state.night)

    def given(self, state: FrostNight) -> str:
        """What no control moves."""
        return message(
            "given", cold=self.held(OUTDOORS, "temperature"), hours=HOURS, area=self.held(AREA, "area"),
            room=self.held(HOUSE["indoor_temperature"], "temperature"),
            house=units.r_value(1 / HOUSE["u_value"], self.unit_system, 0),
        )  # fmt: skip

    def numbers(self, state: FrostNight) -> list[Readout]:
        """How far below, how far it may be, the frost, and what drips in the morning."""
        drip = state.frost * AREA
        top = float(state.night.roof_temperature[-1])
        frosted = message("below-note", frosted=self.show(state.frosted, "temperature difference"))
        return [
            Readout(
                "below", message("below"), state.below, "temperature difference", both=True,
                note=frosted if state.frost > 0 else "",
            ),
            Readout("frosted", "", state.frosted, "temperature difference", hidden=True),
            Readout("margin", message("margin"), state.margin, "temperature difference", both=True),
            Readout("frost", message("frost"), state.frost, "area density", both=True),
            Readout("drip", message("drip", area=words.number(600, "ft2", self.unit_system)), drip, "mass", both=True),
            Readout("top", message("top"), top, "temperature", both=True),
            Readout("bare", "", state.bare, "area density", hidden=True),
        ]  # fmt: skip

    def judge(self, state: FrostNight) -> Verdict:
        """The frost of the night."""
        place = Place("covering", "inner", "vent space")
        return of_amount("night", "night-frost", state.frost, place, ("storage",), frost=True)

    def says(self, state: FrostNight) -> str:
        """Whether frost forms, from which water, by what margin; and what it comes to."""
        below, margin = (self.show(each, "temperature difference") for each in (max(state.below, 0.0), state.margin))
        if state.frost > 0:
            amount, found = self.show(state.frost, "area density"), self.judge(state).state
            first = message("frosts", below=below, full=state.margin <= 0, margin=margin, amount=amount, state=found)
        elif state.below <= 0:
            first = message("warm")
        else:
            first = message("cold", below=below, margin=margin)
        if state.layer > 0 and state.bare > 0:
            return f"{first} {message('on-bare', frost=self.show(state.bare, 'area density'))}"
        return first

    def strips(self, at: SimpleNamespace, state: FrostNight) -> dict[str, Any]:
        """The state of the night along each slider."""
        along: dict[str, Any] = {name: np.array(self.along(name)) for name in self.controls}
        air_at = Air(along["RH_out"] * 0.0 + OUTDOORS, along["RH_out"])
        now = state.outdoor.vapor_pressure
        found = {
            "RH_out": states_of_nights(air_at.vapor_pressure, at.Sky, at.Wind, at.R_cover),
            "Sky": states_of_nights(now, along["Sky"], at.Wind, at.R_cover),
            "Wind": states_of_nights(now, at.Sky, along["Wind"], at.R_cover),
            "R_cover": states_of_nights(now, at.Sky, at.Wind, along["R_cover"]),
        }
        return {name: Strip(tuple(states)) for name, states in found.items()}

    def _flux(self, flux: float) -> str:
        """A flux of heat in the reader's unit, and in W/m2, as it is worked, where that is another."""
        worked = units.show(flux, "heat flux", "si", 1)
        return units.in_both(self.show(flux, "heat flux"), worked) if self.unit_system == "us" else worked

    def steps(self, state: FrostNight) -> list[Step]:
        """Heat lost to the sky against heat from the air, for a bare covering."""
        show, air_kelvin = self.show, OUTDOORS + KELVIN
        sky = air_kelvin - state.cooling
        bare = float(dry_underside(OUTDOORS, state.cooling, state.wind, under_share=UNDER, **HOUSE)) + KELVIN
        lost = 0.9 * STEFAN_BOLTZMANN * (bare**4 - sky**4)
        warmed = state.wind * (air_kelvin - bare) + HOUSE["u_value"] * (HOUSE["indoor_temperature"] + KELVIN - bare)
        point = units.show(state.outdoor.dew_point, "temperature", self.unit_system)
        return [
            Step(
                message("step-lost", bare=units.written(bare, ".2f"), sky=units.written(sky, ".2f")),
                f"0.9 × 5.670 × (({bare:.2f} / 100)^4 − ({sky:.2f} / 100)^4)",
                self._flux(lost),
            ),
            Step(
                message("step-gained", air=units.written(air_kelvin, ".2f")),
                f"{state.wind:.3g} × ({air_kelvin:.2f} − {bare:.2f}) + "
                f"{HOUSE['u_value']:g} × ({HOUSE['indoor_temperature'] + KELVIN:.2f} − {bare:.2f})",
                self._flux(warmed),
            ),
            Step(message("step-frost-point"), "", point),
            Step(
                message("step-margin"),
                f"{show(OUTDOORS, 'temperature', 2)} − "
                f"{hand.taken_off(state.outdoor.dew_point, 'temperature', self.unit_system, 2)}",
                show(state.margin, "temperature difference"),
            ),
        ]


PAGE = ClearNight
