"""Where it gets wet: the dew-point line on a drawing is not where the water is."""

from __future__ import annotations

from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any

from dryward import building, language
from dryward.building import FixedMembrane
from dryward.course.where_it_gets_wet.beats import PLAY
from dryward.panels import hand, readouts
from dryward.panels.controls import Choice
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import drying, limits, steady
from dryward.pictures.section import SectionAndProfile, SteadyRoof
from dryward.teaching.words import Step
from dryward.units import to_si
from dryward.verdict import Verdict
from dryward.verdict.words import amount
from dryward.weather import Air

message = language.beside(__file__)

#: The room and the outdoor humidity of this lesson; the sliders move the rest.
ROOM_TEMPERATURE = to_si(70.0, "degF")
OUTDOOR_HUMIDITY = 0.8

#: Option -> the roof with that outer layer; all else is the same in them.
ROOFS = {
    "open-sheet": "vented-vault",
    "fiberboard": "vented-vault-fiberboard",
    "osb": "vented-vault-osb",
    "closed-sheet": "vented-vault-closed",
}
OUTER = Choice(
    "Outer",
    "where_it_gets_wet.outer-layer",
    (
        ("open-sheet", "where_it_gets_wet.open-sheet-us", "where_it_gets_wet.open-sheet-si"),
        ("fiberboard", "where_it_gets_wet.fiberboard-us", "where_it_gets_wet.fiberboard-si"),
        ("osb", "where_it_gets_wet.osb-us", "where_it_gets_wet.osb-si"),
        ("closed-sheet", "where_it_gets_wet.closed-us", "where_it_gets_wet.closed-si"),
    ),
    start="osb",
)


@dataclass(frozen=True)
class RoofInCold:
    """What the page shows: the roof, the two airs, and what the physics say."""

    roof: building.Assembly
    indoor: Air
    outdoor: Air
    profile: steady.Profile
    drying: drying.Drying


def roof_with(outer: str, permeance: float) -> building.Assembly:
    """The teaching roof with one outer layer and one inner membrane."""
    roof = building.preset(ROOFS[outer])
    origin = getattr(roof.layer("inner membrane").substance, "origin", None)
    return roof.replace("inner membrane", FixedMembrane(permeance, origin))


class WhereItGetsWet(Page):
    """Outdoor cold, room humidity, inner membrane and outer layer; section and vapor line."""

    id = "where-it-gets-wet"
    handles = ("T_out", "RH_in", "M_in", OUTER)
    draws = SectionAndProfile
    play = PLAY

    def compute(self, at: SimpleNamespace) -> RoofInCold:
        """One steady state of the roof, and how its outer layer would dry."""
        roof = roof_with(at.Outer, at.M_in)
        indoor, outdoor = Air(ROOM_TEMPERATURE, at.RH_in), Air(at.T_out, OUTDOOR_HUMIDITY)
        profile = steady.profile(roof, indoor, outdoor)
        return RoofInCold(roof, indoor, outdoor, profile, drying.of_a_wet_face(roof, "outer layer", indoor, outdoor))

    def views(self, state: RoofInCold) -> SteadyRoof:
        """The section and the graph draw the same state."""
        depth = float(state.profile.depth[state.profile.face("outer layer", 0)])
        return SteadyRoof(state.roof, state.profile, state.indoor, state.outdoor, state.drying, depth)

    def given(self, state: RoofInCold) -> str:
        """What no control moves."""
        room, humidity = self.held(ROOM_TEMPERATURE, "temperature"), self.held(OUTDOOR_HUMIDITY, "relative humidity")
        return message("given", room=room, humidity=humidity, roof=self.roof_held(state.roof))

    def numbers(self, state: RoofInCold) -> list[Readout]:
        """The dew-point depth and the wet plane, as two things; humidity, gain, drying."""
        profile, judged = state.profile, self.judge(state)
        wettest, worst = profile.wettest, readouts.worst_plane(profile)
        return [
            Readout("dew_point_depth", message("dew-point-depth"), profile.dew_point_depth, "length"),
            Readout(
                "wet_plane",
                message("wet-plane"),
                worst.depth if worst else None,
                "length",
                note=readouts.worst_place(profile) if worst else readouts.no_water(judged, self.unit_system),
            ),
            Readout(
                "highest_relative_humidity",
                message("highest-relative-humidity"),
                float(profile.relative_humidity[wettest]),
                "relative humidity",
                note=readouts.between_layers(*profile.between(wettest)),
            ),
            Readout("gain", message("gain"), profile.gain, "vapor flux", both=True),
            Readout(
                "drying_outward",
                message("drying-outward"),
                state.drying.outward,
                "vapor flux",
                note=message(
                    "drying-outward-note",
                    gives=bool(state.drying.inward >= 0),
                    rate=self.show(abs(state.drying.inward), "vapor flux"),
                ),
            ),
            Readout("drying_inward", "", state.drying.inward, "vapor flux", hidden=True),
        ]

    def judge(self, state: RoofInCold) -> Verdict:
        """The roof in a January that never ends."""
        return state.profile.verdict

    def says(self, state: RoofInCold) -> str:
        """What the numbers mean, in one sentence."""
        profile, judged = state.profile, self.judge(state)
        line = profile.dew_point_depth is not None
        depth = "" if profile.dew_point_depth is None else self.show(profile.dew_point_depth, "length")
        worst = readouts.worst_plane(profile)
        if worst is None:
            return message("no-water", line=line, depth=depth, settles=readouts.settles(judged, self.unit_system))
        gathers = readouts.gathers(profile, judged, self.unit_system)
        return message("water", line=line, depth=depth, frost=bool(worst.temperature < 0), gathers=gathers)

    def strips(self, at: SimpleNamespace, state: RoofInCold) -> dict[str, Any]:
        """The state along each control, all else as it is."""
        numbers = {
            "T_out": "outdoor_temperature",
            "RH_in": "indoor_relative_humidity",
            "M_in": "inner_membrane_permeance",
        }
        found = limits.dry_ranges(
            state.roof, state.indoor, state.outdoor, {key: self.along(name) for name, key in numbers.items()}
        )
        strips = {name: Strip(tuple(found[key].states)) for name, key in numbers.items()}
        roofs = [
            state.profile
            if outer == at.Outer
            else steady.profile(roof_with(outer, at.M_in), state.indoor, state.outdoor)
            for outer in ROOFS
        ]
        return {**strips, "Outer": Strip(tuple(each.verdict.state for each in roofs))}

    def steps(self, state: RoofInCold) -> list[Step]:
        """From the room's vapor pressure to the gain, with the numbers on the sliders."""
        profile, system, indoor = state.profile, self.unit_system, state.indoor
        lines = [
            hand.pressure(
                message("step-pressure"),
                indoor.temperature,
                indoor.relative_humidity,
                indoor.vapor_pressure / indoor.relative_humidity,
                system,
            ),
            Step(message("step-dew-point"), "", self.show(indoor.dew_point, "temperature")),
            *hand.stays(profile, indoor, state.outdoor, hand.at_risk(profile), system),
        ]
        wood = None if profile.wet_planes else self.judge(state).finding("wood-moisture")
        if wood is not None:
            shown = amount(wood.value, wood.criterion.unit, system)
            there = profile.relative_humidity[profile.face(wood.place.layer, wood.place.side)]
            humidity = self.show(float(there), "relative humidity")
            lines.append(
                Step(message("step-wood", layer=language.called(wood.place.layer), humidity=humidity), "", shown)
            )
        return lines


PAGE = WhereItGetsWet
