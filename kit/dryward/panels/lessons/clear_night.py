"""The clear night: a covering colder than the air, and frost from outdoor air alone."""

from dataclasses import dataclass

import numpy as np

from dryward import units
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.panels.standard import standard
from dryward.physics.night import dry_underside, frost_margin, night
from dryward.physics.sky import STEFAN_BOLTZMANN
from dryward.pictures.night import Night, from_night
from dryward.teaching.arithmetic import Step
from dryward.units import KELVIN, to_si
from dryward.weather import Air

#: The night of this lesson.
OUTDOORS = to_si(20.0, "degF")
#: The house under the vent space lets this much heat up [W/(m2 K)], at this indoor temperature [degC].
HOUSE = {"u_value": 0.126, "indoor_temperature": 21.1}
#: The roof that drips in the morning.
AREA = to_si(600.0, "ft2")


@dataclass(frozen=True)
class State:
    """One night, and the covering before any frost."""

    outdoor: Air
    cooling: float
    wind: float
    layer: float
    night: object
    underside: float

    @property
    def below(self):
        """How far the lower face is below the air, with no frost on it yet [K]."""
        return self.outdoor.temperature - self.underside

    @property
    def margin(self):
        """How far below the air a face may be before that air frosts it [K]."""
        return round(float(frost_margin(self.outdoor)), 9)  # saturated air has none; the last bits are rounding

    @property
    def frost(self):
        """At the night's end [kg/m2]."""
        return float(self.night.frost[-1])


class ClearNight(Page):
    """Outdoor humidity, sky, wind and a layer under the covering; a night and its frost."""

    id = "clear-night"
    handles = (standard("RH_out").starting(90, 90), "Sky", "Wind", "R_cover")
    draws = Night

    def compute(self, at):
        """Twelve hours of one weather."""
        outdoor = Air(OUTDOORS, at.RH_out)
        found = night(outdoor, at.Sky, at.Wind, resistance=at.R_cover, **HOUSE)
        under = float(dry_underside(OUTDOORS, at.Sky, at.Wind, resistance=at.R_cover, **HOUSE))
        return State(outdoor, at.Sky, at.Wind, at.R_cover, found, under)

    def views(self, state):
        """The night as it was worked out."""
        return from_night(state.night)

    def numbers(self, state):
        """How far below, how far it may be, the frost, and what drips in the morning."""
        drip = state.frost * AREA
        top = float(state.night.roof_temperature[-1])
        return [
            Readout("below", "Under the covering, below the air", state.below, "temperature difference", both=True),
            Readout("margin", "Frost starts this far below", state.margin, "temperature difference", both=True),
            Readout("frost", "Frost by morning", state.frost, "area density", both=True),
            Readout("drip", self.say("From {600 ft2} of roof"), drip, "mass", both=True),
            Readout("top", "Top of the covering", top, "temperature", both=True),
        ]

    def says(self, state):
        """Whether frost forms, from which water, by what margin."""
        below, room = (self.show(each, "temperature difference") for each in (max(state.below, 0.0), state.margin))
        if state.frost > 0:
            starts = (
                f"Frost starts when it is {room} colder"
                if state.margin > 0
                else "The air is full, so frost starts at once"
            )
            return (
                f"Under the covering it is {below} colder than the air. {starts}: "
                f"{self.show(state.frost, 'area density')} form by morning, all from outdoor air."
            )
        if state.below <= 0:
            return "The lower face of the covering is as warm as the air or warmer, so no frost forms under it."
        return f"Under the covering it is {below} colder than the air. Frost needs {room}: none forms."

    def strips(self, at, state):
        """Where no frost forms: the lower face stays above the frost point."""
        good, now = "no frost", state.outdoor.dew_point

        def above(cooling=state.cooling, wind=state.wind, layer=state.layer):
            return dry_underside(OUTDOORS, cooling, wind, resistance=layer, **HOUSE) >= now

        points = Air(np.full(len(self.along("RH_out")), OUTDOORS), np.array(self.along("RH_out"))).dew_point
        return {
            "RH_out": Strip(tuple(state.underside >= points), good),
            "Sky": Strip(tuple(above(cooling=np.array(self.along("Sky")))), good),
            "Wind": Strip(tuple(above(wind=np.array(self.along("Wind")))), good),
            "R_cover": Strip(tuple(above(layer=np.array(self.along("R_cover")))), good),
        }

    def steps(self, state):
        """Heat lost to the sky against heat from the air, for a bare covering."""
        show, air_kelvin = self.show, OUTDOORS + KELVIN
        sky = air_kelvin - state.cooling
        bare = float(dry_underside(OUTDOORS, state.cooling, state.wind, **HOUSE)) + KELVIN
        lost = 0.9 * STEFAN_BOLTZMANN * (bare**4 - sky**4)
        warmed = state.wind * (air_kelvin - bare) + HOUSE["u_value"] * (HOUSE["indoor_temperature"] + KELVIN - bare)
        point = units.show(state.outdoor.dew_point, "temperature", self.unit_system)
        return [
            Step(
                f"Bare covering at {bare:.2f} K: what it loses to a sky of {sky:.2f} K.",
                f"0.9 × 5.670e-8 × ({bare:.2f}^4 − {sky:.2f}^4)",
                f"{lost:.1f} W/m²",
            ),
            Step(
                f"What the air at {air_kelvin:.2f} K gives it, and the house below: the two agree, so it stays there.",
                f"{state.wind:.3g} × ({air_kelvin:.2f} − {bare:.2f}) + "
                f"{HOUSE['u_value']:g} × ({HOUSE['indoor_temperature'] + KELVIN:.2f} − {bare:.2f})",
                f"{warmed:.1f} W/m²",
            ),
            Step("Frost point of the outdoor air: the table read backward.", "", point),
            Step(
                "How far the covering may cool before that air frosts it.",
                f"{show(OUTDOORS, 'temperature', 2)} − {show(state.outdoor.dew_point, 'temperature', 2)}",
                show(state.margin, "temperature difference"),
            ),
        ]


PAGE = ClearNight
