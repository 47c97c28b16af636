"""Where it gets wet: the dew-point line on a drawing is not where the water is."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import SimpleNamespace
from typing import Any

from dryward import building
from dryward.building import FixedMembrane, Layer
from dryward.panels import hand, wetness
from dryward.panels.controls import Choice
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import drying, limits, steady
from dryward.pictures.profile import SectionAndProfile
from dryward.pictures.section import SteadyRoof
from dryward.teaching.words import Step
from dryward.units import to_si
from dryward.verdict import Verdict, of_steady
from dryward.verdict.words import amount
from dryward.weather import Air

#: The room and the outdoor humidity of this lesson; the sliders move the rest.
ROOM_TEMPERATURE = to_si(70.0, "degF")
OUTDOOR_HUMIDITY = 0.8
#: Permeance of a sheet that is there only to be wet.
WIDE_OPEN = to_si(10_000.0, "perm")

#: Option -> the roof with that outer layer; all else is the same in them.
ROOFS = {
    "open-sheet": "vented-vault",
    "fiberboard": "vented-vault-fiberboard",
    "osb": "vented-vault-osb",
    "closed-sheet": "vented-vault-closed",
}
OUTER = Choice(
    "Outer",
    "Outer layer",
    (
        ("open-sheet", "open sheet (50 perm)", "open sheet (sd 0.07 m)"),
        ("fiberboard", "fiberboard (20 perm)", "fiberboard (sd 0.17 m)"),
        ("osb", "OSB (1.5 perm)", "OSB (sd 2.3 m)"),
        ("closed-sheet", "closed (0.1 perm)", "closed (sd 35 m)"),
    ),
    start="osb",
)


@dataclass(frozen=True)
class State:
    """What the page shows: the roof, the two airs, and what the physics say."""

    roof: building.Assembly
    indoor: Air
    outdoor: Air
    profile: steady.Profile
    drying: Any


def roof_with(outer, permeance):
    """The teaching roof with one outer layer and one inner membrane."""
    roof = building.preset(ROOFS[outer])
    sheet = roof.layer("inner membrane").substance
    return roof.replace("inner membrane", FixedMembrane(permeance, sheet.origin))


def with_wet_face(roof):
    """The same roof with a wet, wide-open sheet on the outer layer's inner face: what dries from there."""
    place = roof.index("outer layer")
    face = Layer(FixedMembrane(WIDE_OPEN), None, "wet face")
    return replace(roof, layers=(*roof.layers[:place], face, *roof.layers[place:]))


class WhereItGetsWet(Page):
    """Outdoor cold, room humidity, inner membrane and outer layer; section and vapor line."""

    id = "where-it-gets-wet"
    handles = ("T_out", "RH_in", "M_in", OUTER)
    draws = SectionAndProfile

    def compute(self, at: SimpleNamespace) -> State:
        """One steady state of the roof, and how its outer layer would dry."""
        roof = roof_with(at.Outer, at.M_in)
        indoor, outdoor = Air(ROOM_TEMPERATURE, at.RH_in), Air(at.T_out, OUTDOOR_HUMIDITY)
        profile = steady.profile(roof, indoor, outdoor)
        return State(roof, indoor, outdoor, profile, drying.rates(with_wet_face(roof), "wet face", indoor, outdoor))

    def views(self, state):
        """The section and the graph draw the same state."""
        depth = float(state.profile.depth[state.profile.face("outer layer", 0)])
        return SteadyRoof(state.roof, state.profile, state.indoor, state.outdoor, state.drying, depth)

    def numbers(self, state: State) -> list[Readout]:
        """The dew-point depth and the wet plane, as two things; humidity, gain, drying."""
        profile, judged = state.profile, self.judge(state)
        wettest, worst = profile.wettest, wetness.worst(profile)
        return [
            Readout("dew_point_depth", "Dew-point line, depth", profile.dew_point_depth, "length"),
            Readout(
                "wet_plane",
                "Water gathers, depth",
                worst.depth if worst else None,
                "length",
                note=wetness.where(profile) if worst else wetness.none(self, judged),
            ),
            Readout(
                "highest_relative_humidity",
                "Highest humidity",
                float(profile.relative_humidity[wettest]),
                "relative humidity",
                note=wetness.between(*profile.between(wettest)),
            ),
            Readout("gain", "Water gained", profile.gain, "vapor flux", both=True),
            Readout(
                "drying_outward",
                "Once wet, it dries outward",
                state.drying.outward,
                "vapor flux",
                note=_room_side(self._rate(abs(state.drying.inward)), state.drying.inward),
            ),
            Readout("drying_inward", "", state.drying.inward, "vapor flux", hidden=True),
        ]

    def _rate(self, flux):
        return self.show(flux, "vapor flux")

    def judge(self, state: State) -> Verdict:
        """The roof in a January that never ends."""
        return of_steady(state.profile)

    def says(self, state: State) -> str:
        """What the numbers mean, in one sentence."""
        profile, judged = state.profile, self.judge(state)
        if profile.dew_point_depth is None:
            line = "No part of the roof is as cold as the dew point of the room"
            but = "and still there is water"
        else:
            line = f"The dew-point line is {self.show(profile.dew_point_depth, 'length')} from the room"
            word = "frost" if profile.wet_planes and wetness.worst(profile).temperature < 0 else "water"
            but = f"but the {word} is elsewhere"
        if not profile.wet_planes:
            return f"{line}; no water gathers, and {wetness.settles(self, judged)}."
        return f"{line}, {but}: {wetness.gathers(self, profile, judged)}."

    def strips(self, at: SimpleNamespace, state: State) -> dict[str, Any]:
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
        roofs = [of_steady(steady.profile(roof_with(outer, at.M_in), state.indoor, state.outdoor)) for outer in ROOFS]
        return {**strips, "Outer": Strip(tuple(each.state for each in roofs))}

    def steps(self, state: State) -> list[Step]:
        """From the room's vapor pressure to the gain, with the numbers on the sliders."""
        profile, system, indoor = state.profile, self.unit_system, state.indoor
        lines = [
            hand.pressure(
                "Vapor pressure of the room.",
                indoor.temperature,
                indoor.relative_humidity,
                indoor.vapor_pressure / indoor.relative_humidity,
                system,
            ),
            Step("Dew point of the room: the table read backward.", "", self.show(indoor.dew_point, "temperature")),
            *hand.stays(profile, indoor, state.outdoor, hand.at_risk(profile), system),
        ]
        wood = None if profile.wet_planes else self.judge(state).finding("wood-moisture")
        if wood is not None:
            shown = amount(wood.value, wood.criterion.unit, system)
            there = profile.relative_humidity[profile.face(wood.place.layer, wood.place.side)]
            air = self.show(float(there), "relative humidity")
            lines.append(Step(f"But the {wood.place.layer} is wood. Its curve, at the {air} of its face:", "", shown))
        return lines


def _room_side(rate, inward):
    return f"and {rate} to the room" if inward >= 0 else f"but the room adds {rate}"


PAGE = WhereItGetsWet
