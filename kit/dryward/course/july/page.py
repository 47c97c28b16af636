"""July: vapor pushed inward, the face it hits, and which inner layer lets a roof dry to the room."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import SimpleNamespace
from typing import Any

from dryward import building, language
from dryward.checks import PlainError
from dryward.course.july import stage_scene
from dryward.course.july.beats import AIRED, BOTH, PLAY
from dryward.course.july.questions import with_damp_wood
from dryward.course.july.scene import Reversal, SummerRoof
from dryward.panels import hand, readouts
from dryward.panels.controls import Choice, Scale, standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import drying, limits, steady
from dryward.teaching import vault
from dryward.teaching.practical import NO_FILM
from dryward.teaching.words import Step
from dryward.units import amounts, to_si
from dryward.verdict import STATES, Verdict
from dryward.weather import Air

message = language.beside(__file__)

#: Humidity of the room, and the spring day on which damp wood dries.
ROOM_HUMIDITY = 0.5
SPRING = Air(to_si(70.0, "degF"), ROOM_HUMIDITY), Air(to_si(60.0, "degF"), 0.55)
#: How warm it is outdoors and in the room at first [degC]: not rounded, since little more or less doubles the water.
_HOT, _COOL = to_si(85.0, "degF"), to_si(75.0, "degF")
#: Above this it is wood in the sun, not outdoor air [degC].
SUN = to_si(100.0, "degF")
#: Option -> inner layer of the vented roof: its perms, "variable", or None.
INNER: dict[str, float | str | None] = {
    "plastic": 0.06,
    "three-perm": 3.0,
    "variable": "variable",
    "open-sheet": 50.0,
    "none": None,
}


ROOF = Choice(
    "Roof",
    "july.roof",
    (
        ("plastic", "july.roof-plastic", "july.roof-plastic-si"),
        ("three-perm", "july.roof-three-perm", "july.roof-three-perm-si"),
        ("variable", "july.roof-variable"),
        ("open-sheet", "july.roof-open-sheet"),
        ("none", "july.roof-none"),
        ("foam", "july.roof-foam"),
    ),
)


@dataclass(frozen=True)
class HotDay:
    """A roof on a hot day."""

    roof: building.Assembly
    inner: str
    indoor: Air
    outdoor: Air
    profile: steady.Profile
    spring: drying.Drying

    @property
    def push(self) -> float:
        """Vapor pressure outside minus inside [Pa]."""
        return self.outdoor.vapor_pressure - self.indoor.vapor_pressure

    @property
    def node(self) -> int:
        """Outer face of the inner layer: of the film, or of the drywall where there is none."""
        names = self.profile.names
        return self.profile.face("inner membrane" if "inner membrane" in names else "gypsum board", 1)


def built(option: str) -> building.Assembly:
    """The roof of an option of the choice."""
    if option == "foam":
        return building.preset("unvented-vault-foam-above-deck")
    return vault.roof(INNER[option])


def spring_drying(option: str) -> drying.Drying:
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
            words="july.outdoors",
            said="july.outdoors-temperature",
            us=Scale(10, 150, 85, 1),
            si=Scale(-12, 66, _HOT, 0.5),
        ),
        # Short of 100 %, where dew would form on the very outside of the roof.
        replace(standard("RH_out"), us=Scale(30, 95, 75, 1), si=Scale(30, 95, 75, 1)),
        standard("T_in").starting(75, _COOL),
        ROOF,
    )
    draws = Reversal
    play = PLAY
    #: What `task_values` tells the practical task of.
    task_choices = ("Roof",)

    def compute(self, at: SimpleNamespace) -> HotDay:
        """A steady hot day, and a spring day for the drying."""
        roof = built(at.Roof)
        indoor, outdoor = Air(at.T_in, ROOM_HUMIDITY), Air(at.T_out, at.RH_out)
        return HotDay(roof, at.Roof, indoor, outdoor, steady.profile(roof, indoor, outdoor), spring_drying(at.Roof))

    def task_values(self) -> dict[str, float]:
        """The perms of the inner layer that was chosen."""
        chosen, profile = self.at.Roof, self.state.profile
        if chosen == "foam":
            raise PlainError(message("task-needs-a-film"))
        if chosen == "plastic":
            return {}
        if chosen == "variable":
            return {"M_in": profile.permeance["inner membrane"]}
        return {"M_in": to_si(INNER[chosen] or NO_FILM, "perm")}

    def views(self, state: HotDay) -> SummerRoof:
        """Section and graph of the same day."""
        sun = ""
        if state.outdoor.temperature > SUN:
            sun = message("sun", temperature=self.show(state.outdoor.temperature, "temperature"))
        return SummerRoof(state.roof, state.profile, state.indoor, state.outdoor, sun=sun)

    def given(self, state: HotDay) -> str:
        """What no control moves."""
        if self.stage.on and self.stage.beat is AIRED:  # no roof is asked about
            return message("given-ground", ground=self.held(stage_scene.GROUND, "temperature"))
        spring, yard = (self.air_held(each) for each in SPRING)
        humidity = self.held(ROOM_HUMIDITY, "relative humidity")
        return message("given", humidity=humidity, roof=self.roof_held(state.roof), spring=spring, yard=yard)

    def numbers(self, state: HotDay) -> list[Readout]:
        """The push, the humidity behind the inner layer, the gain, what reaches the room, and drying in spring."""
        profile, spring = state.profile, state.spring
        into_room = -profile.vapor_flux_in
        load = self.show(abs(into_room) * amounts.ROOF[self.unit_system], "mass flow")
        behind = float(profile.relative_humidity[state.node])
        return [
            Readout("push", message("push"), state.push, "pressure", both=True),
            Readout(
                "behind",
                message("behind"),
                behind,
                "relative humidity",
                note=self.show(float(profile.temperature[state.node]), "temperature"),
            ),
            readouts.gained(message("gain"), profile, self.judge(state), self.unit_system),
            Readout(
                "into_room",
                message("into-room"),
                into_room,
                "vapor flux",
                note=message("into-room-note", load=load, area=amounts.roof_area(self.unit_system))
                if into_room > 0
                else message("into-room-outward"),
            ),
            Readout(
                "spring_inward",
                message("spring-inward"),
                spring.inward,
                "vapor flux",
                note=message("spring-inward-note", outward=self.show(spring.outward, "vapor flux")),
            ),
            Readout("spring_outward", "", spring.outward, "vapor flux", hidden=True),
        ]

    def judge(self, state: HotDay) -> Verdict:
        """The roof in a July that never ends."""
        return state.profile.verdict

    def says(self, state: HotDay) -> str:
        """Which way the push is, and what it does behind the inner layer."""
        show, profile = self.show, state.profile
        hot, judged = state.outdoor.temperature > SUN, self.judge(state)
        wet = bool(profile.wet_planes)
        water = readouts.water(profile, judged, self.unit_system)
        if state.push <= 0:
            return message("outward", sun=hot, push=show(-state.push, "pressure"), water=water)
        push = show(state.push, "pressure")
        if wet:
            return message("inward-gathers", sun=hot, push=push, water=water)
        behind = show(float(profile.relative_humidity[state.node]), "relative humidity")
        room = show(max(-profile.vapor_flux_in, 0.0), "vapor flux")
        return message("inward", sun=hot, push=push, behind=behind, room=room, water=water)

    def strips(self, at: SimpleNamespace, state: HotDay) -> dict[str, Any]:
        """The state along each control; in the beat of two months the worse one of both, for each inner layer."""
        if self.stage.on and self.stage.beat is BOTH:
            return {"Roof": self._of_both()}
        keys = {"T_out": "outdoor_temperature", "RH_out": "outdoor_relative_humidity", "T_in": "indoor_temperature"}
        along = {key: self.along(name) for name, key in keys.items()}
        found = limits.dry_ranges(state.roof, state.indoor, state.outdoor, along)
        roofs = [steady.profile(built(each), state.indoor, state.outdoor).verdict for each in self.along("Roof")]
        strips = {name: Strip(tuple(found[key].states)) for name, key in keys.items()}
        return {**strips, "Roof": Strip(tuple(each.state for each in roofs))}

    def _of_both(self) -> dict[str, Any]:
        """The worse state of the two months with each inner layer, as it is shown."""
        months = [[each.profile.verdict.state for each in self.stage.states_at(roof)] for roof in self.along("Roof")]
        shown = Strip(tuple(max(each, key=STATES.index) for each in months)).shown(self.controls["Roof"])
        return {**shown, "words": message("both-months", states=shown["words"])}

    def steps(self, state: HotDay) -> list[Step]:
        """Both pressures, the push, and the most the cold face can have."""
        show, system, profile = self.show, self.unit_system, state.profile
        lines = [
            hand.pressure(
                told,
                air.temperature,
                air.relative_humidity,
                air.vapor_pressure / air.relative_humidity,
                system,
            )
            for told, air in ((message("step-outside"), state.outdoor), (message("step-inside"), state.indoor))
        ]
        outside, inside = (show(each.vapor_pressure, "pressure") for each in (state.outdoor, state.indoor))
        node = state.node
        most = float(profile.saturation_vapor_pressure[node])
        humid = float(profile.relative_humidity[node])
        return [
            *lines,
            Step(message("step-push"), f"{outside} − {inside}", show(state.push, "pressure")),
            Step(message("step-dew-point"), "", show(state.outdoor.dew_point, "temperature")),
            hand.plane(
                message("step-behind"),
                state.indoor.temperature,
                state.outdoor.temperature,
                profile.thermal_resistance[node],
                profile.thermal_resistance[-1],
                system,
            ),
            Step(
                message("step-most", most=show(most, "pressure")),
                f"{show(humid * most, 'pressure')} / {show(most, 'pressure')} × 100",
                show(humid, "relative humidity"),
            ),
        ]


PAGE = July
