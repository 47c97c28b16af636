"""July: vapor pushed inward, the face it hits, and which inner layer lets a roof dry to the room."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import SimpleNamespace
from typing import Any

from dryward import building
from dryward.checks import PlainError
from dryward.course.july.questions import with_damp_wood
from dryward.course.july.scene import Reversal, SummerRoof
from dryward.panels import hand, wetness
from dryward.panels.controls import Choice, Scale, standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import drying, limits, steady
from dryward.teaching import vault
from dryward.teaching.practical import NO_FILM
from dryward.teaching.words import Step
from dryward.units import to_si
from dryward.verdict import Verdict, of_steady
from dryward.weather import Air

#: Humidity of the room, and the spring day on which damp wood dries.
ROOM_HUMIDITY = 0.5
SPRING = Air(to_si(70.0, "degF"), ROOM_HUMIDITY), Air(to_si(60.0, "degF"), 0.55)
#: Above this it is wood in the sun, not outdoor air [degC].
SUN = to_si(100.0, "degF")
#: A ceiling of 1000 ft2, for the air conditioner's share.
THOUSAND = to_si(1000.0, "ft2")
#: Option -> inner layer of the vented roof: its perms, "variable", or None.
INNER = {"plastic": 0.06, "three-perm": 3.0, "variable": "variable", "open-sheet": 50.0, "none": None}
ROOF = Choice(
    "Roof",
    "Roof and inner layer",
    (
        ("plastic", "vented, plastic (0.06 perm)", "vented, plastic (sd 58 m)"),
        ("three-perm", "vented, film (3 perm)", "vented, film (sd 1.2 m)"),
        ("variable", "vented, variable film"),
        ("open-sheet", "vented, open sheet by mistake"),
        ("none", "vented, drywall alone"),
        ("foam", "no vent, foam above deck"),
    ),
)


@dataclass(frozen=True)
class State:
    """A roof on a hot day."""

    roof: building.Assembly
    inner: str
    indoor: Air
    outdoor: Air
    profile: steady.Profile
    spring: Any

    @property
    def push(self):
        """Vapor pressure outside minus inside [Pa]."""
        return self.outdoor.vapor_pressure - self.indoor.vapor_pressure

    @property
    def node(self):
        """Outer face of the inner layer: of the film, or of the drywall where there is none."""
        names = self.profile.names
        return self.profile.face("inner membrane" if "inner membrane" in names else "gypsum board", 1)


def built(option):
    """The roof of an option of the choice."""
    if option == "foam":
        return building.preset("unvented-vault-foam-above-deck")
    return vault.roof(INNER[option])


def spring_drying(option):
    """How the wet deck or sheathing dries on a spring day; the vented roof with OSB over its insulation."""
    if option == "foam":
        return drying.rates(built(option), "deck", *SPRING)
    return drying.rates(with_damp_wood(INNER[option]), "damp wood", *SPRING)


class July(Page):
    """Outdoors, room and inner layer; section and vapor line with the arrow turned."""

    id = "july"
    handles = (
        replace(
            standard("T_out"),
            words="Outdoors, or wet wood in the sun",
            said="Temperature outdoors, or of wet wood in the sun",
            us=Scale(60, 150, 85, 1),
            si=Scale(16, 66, 29.5, 0.5),
        ),
        # Short of 100 %, where dew would form on the very outside of the roof.
        replace(standard("RH_out"), us=Scale(30, 95, 75, 1), si=Scale(30, 95, 75, 1)),
        standard("T_in").starting(75, 24),
        ROOF,
    )
    draws = Reversal
    #: What `task_values` tells the practical task of.
    task_choices = ("Roof",)

    def compute(self, at: SimpleNamespace) -> State:
        """A steady hot day, and a spring day for the drying."""
        roof = built(at.Roof)
        indoor, outdoor = Air(at.T_in, ROOM_HUMIDITY), Air(at.T_out, at.RH_out)
        return State(roof, at.Roof, indoor, outdoor, steady.profile(roof, indoor, outdoor), spring_drying(at.Roof))

    def task_values(self):
        """The perms of the inner layer that was chosen."""
        chosen, profile = self.at.Roof, self.state.profile
        if chosen == "foam":
            raise PlainError("This task is about the vented roof; choose one of its inner layers.")
        if chosen == "plastic":
            return {}
        if chosen == "variable":
            return {"M_in": profile.permeance["inner membrane"]}
        return {"M_in": to_si(INNER[chosen] or NO_FILM, "perm")}

    def views(self, state):
        """Section and graph of the same day."""
        sun = ""
        if state.outdoor.temperature > SUN:
            sun = f"Wet wood in the sun, at {self.show(state.outdoor.temperature, 'temperature')}."
        return SummerRoof(state.roof, state.profile, state.indoor, state.outdoor, sun=sun)

    def numbers(self, state: State) -> list[Readout]:
        """The push, the humidity behind the inner layer, the gain, what reaches the room, and drying in spring."""
        profile, spring = state.profile, state.spring
        into_room = -profile.vapor_flux_in
        load = self.show(abs(into_room) * THOUSAND, "mass flow")
        behind = float(profile.relative_humidity[state.node])
        return [
            Readout("push", "Push, outside to inside", state.push, "pressure", both=True),
            Readout(
                "behind",
                "Behind the inner layer",
                behind,
                "relative humidity",
                note=self.show(float(profile.temperature[state.node]), "temperature"),
            ),
            Readout(
                "gain", "Water gained", profile.gain, "vapor flux", note=wetness.note(self, profile, self.judge(state))
            ),
            Readout(
                "into_room",
                "Vapor into the room",
                into_room,
                "vapor flux",
                note=self.say(f"{load} on {{1000 ft2}}") if into_room > 0 else "it goes outward",
            ),
            Readout(
                "spring_inward",
                "Spring: wood dries inward",
                spring.inward,
                "vapor flux",
                note=f"and out {self.show(spring.outward, 'vapor flux')}",
            ),
            Readout("spring_outward", "", spring.outward, "vapor flux", hidden=True),
        ]

    def judge(self, state: State) -> Verdict:
        """The roof in a July that never ends."""
        return of_steady(state.profile)

    def says(self, state: State) -> str:
        """Which way the push is, and what it does behind the inner layer."""
        show, profile = self.show, state.profile
        outside = "Soaked wood in the sun" if state.outdoor.temperature > SUN else "The outdoor air"
        if state.push <= 0:
            less = f"{outside} has {show(-state.push, 'pressure')} less vapor pressure than the room"
            if profile.wet_planes:
                return f"{less}: the push is outward, and {wetness.gathers(self, profile, self.judge(state))}."
            return f"{less}: the push is outward, and {wetness.settles(self, self.judge(state))}."
        start = f"{outside} pushes vapor inward with {show(state.push, 'pressure')}"
        if profile.wet_planes:
            return f"{start}, and {wetness.gathers(self, profile, self.judge(state))}."
        behind = show(float(profile.relative_humidity[state.node]), "relative humidity")
        room = show(max(-profile.vapor_flux_in, 0.0), "vapor flux")
        settles = wetness.settles(self, self.judge(state))
        return f"{start}; behind the inner layer it is {behind}, and {room} reach the room: {settles}."

    def strips(self, at: SimpleNamespace, state: State) -> dict[str, Any]:
        """The state along each control."""
        keys = {"T_out": "outdoor_temperature", "RH_out": "outdoor_relative_humidity", "T_in": "indoor_temperature"}
        along = {key: self.along(name) for name, key in keys.items()}
        found = limits.dry_ranges(state.roof, state.indoor, state.outdoor, along)
        roofs = [of_steady(steady.profile(built(each), state.indoor, state.outdoor)) for each in self.along("Roof")]
        strips = {name: Strip(tuple(found[key].states)) for name, key in keys.items()}
        return {**strips, "Roof": Strip(tuple(each.state for each in roofs))}

    def steps(self, state: State) -> list[Step]:
        """Both pressures, the push, and the most the cold face can have."""
        show, system, profile = self.show, self.unit_system, state.profile
        lines = [
            hand.pressure(
                f"Vapor pressure {words}.",
                air.temperature,
                air.relative_humidity,
                air.vapor_pressure / air.relative_humidity,
                system,
            )
            for words, air in (("outside", state.outdoor), ("in the room", state.indoor))
        ]
        outside, inside = (show(each.vapor_pressure, "pressure") for each in (state.outdoor, state.indoor))
        node = state.node
        most = float(profile.saturation_vapor_pressure[node])
        humid = float(profile.relative_humidity[node])
        return [
            *lines,
            Step("The push: outside minus inside.", f"{outside} − {inside}", show(state.push, "pressure")),
            Step("Dew point outside: the table read backward.", "", show(state.outdoor.dew_point, "temperature")),
            hand.plane(
                "Temperature behind the inner layer.",
                state.indoor.temperature,
                state.outdoor.temperature,
                profile.thermal_resistance[node],
                profile.thermal_resistance[-1],
                system,
            ),
            Step(
                f"The most vapor pressure there is {show(most, 'pressure')}, from a table. On the vapor line:",
                f"{show(humid * most, 'pressure')} / {show(most, 'pressure')} × 100",
                show(humid, "relative humidity"),
            ),
        ]


PAGE = July
