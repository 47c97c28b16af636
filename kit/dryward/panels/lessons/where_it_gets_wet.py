"""Where it gets wet: the dew-point line on a drawing is not where the water is."""

from dataclasses import dataclass, replace

from dryward import building
from dryward.building import FixedMembrane, Layer
from dryward.panels.controls import Choice
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import drying, limits, steady
from dryward.pictures.profile import ProfileState, SectionAndProfile
from dryward.teaching.arithmetic import Step
from dryward.units import to_si
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
        ("closed-sheet", "closed sheet (0.1 perm)", "closed sheet (sd 35 m)"),
    ),
    start="osb",
)


@dataclass(frozen=True)
class State:
    """What the page shows: the roof, the two airs, and what the physics say."""

    roof: object
    indoor: Air
    outdoor: Air
    profile: object
    drying: object


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

    def compute(self, at):
        """One steady state of the roof, and how its outer layer would dry."""
        roof = roof_with(at.Outer, at.M_in)
        indoor, outdoor = Air(ROOM_TEMPERATURE, at.RH_in), Air(at.T_out, OUTDOOR_HUMIDITY)
        profile = steady.profile(roof, indoor, outdoor)
        return State(roof, indoor, outdoor, profile, drying.rates(with_wet_face(roof), "wet face", indoor, outdoor))

    def views(self, state):
        """The section and the graph draw the same state."""
        depth = float(state.profile.depth[state.profile.face("outer layer", 0)])
        return ProfileState(state.roof, state.profile, state.indoor, state.outdoor, state.drying, depth)

    def numbers(self, state):
        """The dew-point depth and the wet plane, as two things; humidity, gain, drying."""
        profile = state.profile
        wettest = profile.wettest
        wet = max(profile.wet_planes, key=lambda plane: plane.rate, default=None)
        return [
            Readout("dew_point_depth", "Dew-point line, depth", profile.dew_point_depth, "length"),
            Readout(
                "wet_plane",
                "Wet face, depth",
                wet.depth if wet else None,
                "length",
                note=_between(wet.inner_layer, wet.outer_layer) if wet else "nothing gets wet",
            ),
            Readout(
                "highest_relative_humidity",
                "Highest humidity",
                float(profile.relative_humidity[wettest]),
                "relative humidity",
                note=_between(*profile.between(wettest)),
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

    def says(self, state):
        """What the numbers mean, in one sentence."""
        profile = state.profile
        humidity = self.show(profile.relative_humidity[profile.wettest], "relative humidity")
        if profile.dew_point_depth is None:
            line = "No part of the roof is as cold as the dew point of the room"
        else:
            line = f"The dew-point line is {self.show(profile.dew_point_depth, 'length')} from the room"
        if not profile.wet_planes:
            return f"{line}, and no face gets wet: the dampest place stands at {humidity}."
        wet = max(profile.wet_planes, key=lambda plane: plane.rate)
        word = "frost" if wet.temperature < 0 else "water"
        where = _between(wet.inner_layer, wet.outer_layer)
        return f"{line}, but the {word} gathers {where}: {self._rate(profile.gain)}."

    def strips(self, at, state):
        """Where along each control no face gains water, all else as it is."""
        numbers = {"T_out": "outdoor_temperature", "RH_in": "indoor_relative_humidity", "M_in": "inner_membrane_permeance"}
        found = limits.safe_ranges(
            state.roof, state.indoor, state.outdoor, {key: self.along(name) for name, key in numbers.items()}
        )
        strips = {name: Strip(tuple(found[key].holds)) for name, key in numbers.items()}
        dry = [
            not steady.profile(roof_with(outer, at.M_in), state.indoor, state.outdoor).wet_planes for outer in ROOFS
        ]
        return {**strips, "Outer": Strip(tuple(dry))}

    def steps(self, state):
        """From the room's dew point to the gain, with the numbers on the sliders."""
        roof, profile = state.roof, state.profile
        face = profile.face("outer layer", 0)
        show = self.show
        room, yard = state.indoor.vapor_pressure, state.outdoor.vapor_pressure
        cold, most = profile.temperature[face], profile.saturation_vapor_pressure[face]
        drop = roof.thermal_resistance - profile.thermal_resistance[-1] + profile.thermal_resistance[face]
        before = profile.vapor_resistance[face]
        after = profile.vapor_resistance[-1] - before
        steps = [
            Step(
                "Vapor pressure of the room: its share of what air at that temperature can have.",
                f"{show(state.indoor.relative_humidity, 'relative humidity')} × {show(room / state.indoor.relative_humidity, 'pressure')}",
                show(room, "pressure"),
            ),
            Step("Dew point of that air, from a table.", "", show(state.indoor.dew_point, "temperature")),
            Step(
                "Temperature of the outer layer's inner face: go down the R-values.",
                f"{show(state.indoor.temperature, 'temperature')} − ({show(state.indoor.temperature, 'temperature')} − "
                f"{show(state.outdoor.temperature, 'temperature')}) × {show(drop, 'thermal resistance')} / "
                f"{show(roof.thermal_resistance, 'thermal resistance')}",
                show(cold, "temperature"),
            ),
            Step("The most vapor pressure there can be at that face, from a table.", "", show(most, "pressure")),
            Step(
                "Vapor that arrives at the face if it stands at that limit: pressure step times permeance of all before it.",
                f"({show(room, 'pressure')} − {show(most, 'pressure')}) × {show(1 / before, 'permeance')}",
                show((room - most) / before, "vapor flux"),
            ),
            Step(
                "Vapor that leaves through the outer layer from that limit.",
                f"({show(most, 'pressure')} − {show(yard, 'pressure')}) × {show(1 / after, 'permeance')}",
                show((most - yard) / after, "vapor flux"),
            ),
        ]
        gain = (room - most) / before - (most - yard) / after
        words = "More arrives than leaves: the rest stays as water." if gain > 0 else "Less arrives than could leave: no water."
        return [*steps, Step(words, "arrives − leaves", show(max(gain, 0.0), "vapor flux"))]


def _between(inner, outer):
    return f"inside the {inner}" if inner == outer else f"between {inner} and {outer}"


def _room_side(rate, inward):
    return f"and {rate} to the room" if inward >= 0 else f"but the room adds {rate}"


PAGE = WhereItGetsWet
