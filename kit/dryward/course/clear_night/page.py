"""The clear night: a covering colder than the air, and frost from outdoor air alone."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import numpy as np

from dryward import language, units
from dryward.course.clear_night import snow
from dryward.course.clear_night.beats import PLAY
from dryward.course.clear_night.night import (
    AREA,
    HOURS,
    HOUSE,
    LAYERS,
    OUTDOORS,
    UNDER,
    FrostNight,
    frost_of,
    snowed_night,
    state_of_melting,
    states_of_nights,
)  # fmt: skip
from dryward.course.clear_night.scene import NightPicture, NightUnderSky, from_night
from dryward.panels import hand
from dryward.panels.controls import Choice, SliderControl, standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics.sky import STEFAN_BOLTZMANN, Night, dry_underside
from dryward.physics.snow import MELTING_HEAT
from dryward.teaching.words import Step
from dryward.units import HOUR, KELVIN, amounts
from dryward.verdict import Place, Verdict, of_amount
from dryward.weather import Air

message = language.beside(__file__)

SNOW = Choice(
    "Snow",
    "clear_night.on-the-metal",
    (
        ("none", "clear_night.snow-none"),
        ("thin-layer", "clear_night.layer-1-us", "clear_night.layer-1-si"),
        ("layer", "clear_night.layer-4-us", "clear_night.layer-4-si"),
        ("leaky", "clear_night.snow-leaky-us", "clear_night.snow-leaky-si"),
        ("leaky-and-thick", "clear_night.snow-thick-us", "clear_night.snow-thick-si"),
        ("tight", "clear_night.snow-tight-us", "clear_night.snow-tight-si"),
    ),
)


class ClearNight(Page):
    """Outdoor humidity, sky, wind, a layer under the covering and snow on it; a night, its frost or what melts."""

    id = "clear-night"
    handles = (standard("RH_out").starting(90, 90), "Sky", "Wind", SNOW)
    draws = NightPicture
    play = PLAY

    def compute(self, at: SimpleNamespace) -> FrostNight:
        """Twelve hours of one weather, and the same with no layer under the covering."""
        outdoor = Air(OUTDOORS, at.RH_out)
        if at.Snow not in LAYERS:
            return snowed_night(outdoor, at.Sky, at.Wind, at.Snow)
        layer = LAYERS[at.Snow]
        found = frost_of(outdoor, at.Sky, at.Wind, layer)
        under = float(dry_underside(OUTDOORS, at.Sky, at.Wind, resistance=layer, under_share=UNDER, **HOUSE))
        return FrostNight(outdoor, at.Sky, at.Wind, layer, found, under, self._bare(outdoor, at, found), at.Snow)

    def _bare(self, outdoor: Air, at: SimpleNamespace, found: Night) -> float:
        """Frost by morning on the bare covering [kg/m2]; kept while only the layer changes."""
        key = (at.RH_out, at.Sky, at.Wind)
        if getattr(self, "_known", (None,))[0] != key:
            bare = found if LAYERS[at.Snow] == 0 else frost_of(outdoor, at.Sky, at.Wind, 0.0)
            self._known = key, float(bare.frost[-1])
        return self._known[1]

    def views(self, state: FrostNight) -> NightUnderSky:
        """The night as it was worked out."""
        return from_night(state.night)

    def given(self, state: FrostNight) -> str:
        """What no control moves."""
        return message(
            "given", cold=self.held(OUTDOORS, "temperature"), hours=HOURS, area=self.area_held(AREA),
            room=self.held(HOUSE["indoor_temperature"], "temperature"),
            house=units.r_value(1 / HOUSE["u_value"], self.unit_system, 0), snow=self._snow_given(state),
        )  # fmt: skip

    def _snow_given(self, state: FrostNight) -> str:
        """What is held of the snow and of the roofs under it; nothing where there is none."""
        if not state.snowed:
            return ""
        us = self.unit_system == "us"
        return message(
            "given-snow", depth=units.show_in(snow.DEPTH, "in" if us else "mm", 0),
            r=units.r_value(snow.DEPTH * snow.RESISTIVITY, self.unit_system, 0),
            changes=units.number(snow.ACH50), volume=self.held(snow.VOLUME, "volume"),
            share=self.held(snow.SHARE, "relative humidity"), push=units.number(snow.PUSH),
            gap=units.show_in(snow.GAP, "in" if us else "mm", 0), speed=self.held(snow.SPEED, "speed"),
            rafter=units.show_in(snow.RAFTER, "ft" if us else "m"),
        )  # fmt: skip

    def numbers(self, state: FrostNight) -> list[Readout]:
        """How far below, how far it may be, the frost, and what drips in the morning."""
        drips, other = state.melt if state.snowed else state.frost, "si" if self.unit_system == "us" else "us"
        drip = drips * amounts.ROOF[self.unit_system]
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
            Readout(
                "drip",
                message("drip", area=amounts.roof_area(self.unit_system), snow=state.snowed),
                drips * amounts.ROOF["us"], "mass", text=self.show(drip, "mass"), note=units.show(drip, "mass", other),
            ),
            Readout("top", message("top"), top, "temperature", both=True),
            Readout("bare", "", state.bare, "area density", hidden=True),
            Readout("melt", "", state.melt, "area density", hidden=True),
        ]  # fmt: skip

    def judge(self, state: FrostNight) -> Verdict:
        """The frost of the night, or the snow that melts in it."""
        if state.snowed:
            return of_amount("night", "night-melt", state.melt, Place("covering", "outer"), ("storage", "sun", "rain"))
        place = Place("covering", "inner", "vent space")
        return of_amount("night", "night-frost", state.frost, place, ("storage",), frost=True)

    def says(self, state: FrostNight) -> str:
        """Whether frost forms, from which water, by what margin; and what it comes to."""
        if state.snowed:
            return message(
                "snowed",
                covering=self.show(state.underside, "temperature"),
                melts=state.melt > 0,
                amount=self.show(state.melt * amounts.ROOF[self.unit_system], "mass"),
                area=amounts.roof_area(self.unit_system),
            )
        below, margin = (self.show(each, "temperature difference") for each in (max(state.below, 0.0), state.margin))
        if state.frost > 0:
            amount, found = self.show(state.frost, "area density"), self.judge(state).state
            first = message("frosts", below=below, full=state.margin <= 0, margin=margin, amount=amount, state=found)
            wind = self.controls["Wind"]
            if isinstance(wind, SliderControl) and wind.shown(state.wind) < wind.start - 1e-9:
                first = f"{first} {message('calm')}"
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
        now = state.outdoor.vapor_pressure
        roofs = tuple(
            str(states_of_nights(now, at.Sky, at.Wind, LAYERS[each])) if each in LAYERS else state_of_melting(each)
            for each in along["Snow"]
        )
        if state.snowed:  # it shuts the covering off from air and sky
            melts = state_of_melting(state.snow)
            return {name: Strip(roofs if name == "Snow" else (melts,) * len(along[name])) for name in along}
        air_at = Air(along["RH_out"] * 0.0 + OUTDOORS, along["RH_out"])
        found = {
            "RH_out": states_of_nights(air_at.vapor_pressure, at.Sky, at.Wind, state.layer),
            "Sky": states_of_nights(now, along["Sky"], at.Wind, state.layer),
            "Wind": states_of_nights(now, at.Sky, along["Wind"], state.layer),
        }
        return {**{name: Strip(tuple(states)) for name, states in found.items()}, "Snow": Strip(roofs)}

    def _flux(self, flux: float) -> str:
        """A flux of heat in the reader's unit, and in W/m2, as it is worked, where that is another."""
        worked = units.show(flux, "heat flux", "si", 1)
        return units.in_both(self.show(flux, "heat flux"), worked) if self.unit_system == "us" else worked

    def _wind(self, wind: float) -> str:
        """The wind of a US slider with what the arithmetic takes of it."""
        if self.unit_system == "si":
            return "si"
        return units.in_both(*(units.show(wind, "thermal transmittance", each) for each in ("us", "si")))

    def steps(self, state: FrostNight) -> list[Step]:
        """Heat lost to the sky against heat from the air, for a bare covering."""
        if state.snowed:
            return self._snow_steps(state)
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
                message("step-gained", air=units.written(air_kelvin, ".2f"), wind=self._wind(state.wind)),
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

    def _snow_steps(self, state: FrostNight) -> list[Step]:
        """What comes up and what goes out while the covering is at 0 degC, and what that melts."""
        house = HOUSE["u_value"], AREA, HOUSE["indoor_temperature"]
        below, vent = snow.from_below(state.snow, *house), snow.to_vent(OUTDOORS)
        away = 1.0 / snow.RESISTANCE
        rest = (below * house[2] + vent * OUTDOORS) / (below + vent)
        left = (below + vent) * rest + away * OUTDOORS
        cold = f"({units.written(OUTDOORS, '.2f')})"
        return [
            Step(
                message("step-rest"),
                f"({below:.3f} × {house[2]:g} + {vent:.3f} × {cold}) / ({below:.3f} + {vent:.3f})",
                units.show(rest, "temperature", self.unit_system),
            ),
            Step(
                message("step-left"),
                f"{units.written(rest, '.2f')} × {below + vent:.3f} + {cold} / {snow.RESISTANCE:.3g}",
                self._flux(left),
            ),
            Step(
                message("step-melt", melts=left > 0),
                f"{left:.2f} × {HOURS * HOUR:g} / {MELTING_HEAT:g}" if left > 0 else "",
                self.show(state.melt, "area density"),
            ),
        ]


PAGE = ClearNight
