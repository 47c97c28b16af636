"""Inside the film: what R on the room side does to a film that feels humidity."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import SimpleNamespace
from typing import Any

import numpy as np

from dryward import building, language, units
from dryward.building import AirSpace, Layer, Material
from dryward.course.inside_the_film.beats import PLAY
from dryward.course.inside_the_film.scene import FilmInLayers, Inside
from dryward.course.the_film_that_changes.page import OPEN, TIGHT
from dryward.course.where_it_gets_wet.page import OUTER, ROOFS
from dryward.panels import hand, readouts
from dryward.panels.controls import standard
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import limits, steady
from dryward.teaching.words import Step
from dryward.units import to_si
from dryward.verdict import Verdict
from dryward.weather import Air

message = language.beside(__file__)

#: The room and the outdoor humidity of this lesson.
ROOM_TEMPERATURE = to_si(70.0, "degF")
OUTDOOR_HUMIDITY = 0.8
FILM, CAVITY, FILL = "inner membrane", "service cavity", "insulation"
#: The roof with a batt more outside the film, and the R of its fill [m2 K/W].
DEEP, DEEP_FILL = "open-sheet-deep", to_si(44.0 + 22.0, "R")
#: Up to so much R the service cavity has air in it and no batt [m2 K/W].
ALMOST_EMPTY = to_si(2.0, "R")
ROOF = replace(
    OUTER.starting("open-sheet"),
    options=(
        *OUTER.options,
        (DEEP, "inside_the_film.deep-us", "inside_the_film.deep-si"),
    ),
)


@dataclass(frozen=True)
class FilmInRoof:
    """A roof with so much R inside its film, between two airs."""

    roof: building.Assembly
    indoor: Air
    outdoor: Air
    profile: steady.Profile
    inside: float
    outside: float

    @property
    def faces(self) -> tuple[float, ...]:
        """Relative humidity on both sides of the film [-]."""
        found = self.profile
        return tuple(float(found.relative_humidity[found.face(FILM, side)]) for side in (0, 1))

    @property
    def temperature(self) -> float:
        """Of the film [degC]."""
        return float(self.profile.temperature[self.profile.face(FILM, 0)])

    @property
    def filled(self) -> bool:
        """Whether there is a batt in the service cavity."""
        return self.inside > ALMOST_EMPTY

    @property
    def empty(self) -> float:
        """How deep the service cavity is without a batt [m]."""
        return building.preset(ROOFS["open-sheet"]).layer(CAVITY).drawn_thickness

    @property
    def does(self) -> str:
        """Whether the film is tight, opening or open."""
        curve = self.roof.layer(FILM).membrane
        assert isinstance(curve, building.VariableMembrane)
        times = self.profile.permeance[FILM] / curve.points[0][1]
        return "open" if times > OPEN else "opening" if times > TIGHT else "tight"

    @property
    def share(self) -> float:
        """Of the insulation inside the film [-]."""
        return self.inside / (self.inside + self.outside)


def roof_with(resistance: float, outer: str = "open-sheet") -> building.Assembly:
    """The teaching roof with its variable film and so much R in the service cavity.

    An empty space, or a batt as open to vapor as the space: what changes is
    the R alone.  A batt that does not fit makes the cavity as deep as it is.
    """
    deep = outer == DEEP
    roof = building.preset(ROOFS["open-sheet" if deep else outer]).replace(
        FILM, building.preset("vented-vault-variable").layer(FILM)
    )
    fill = roof.layer(FILL)
    inch = fill.drawn_thickness / fill.thermal_resistance
    if deep:
        roof = roof.replace(FILL, replace(fill, thickness=DEEP_FILL * inch))
    space = roof.layer(CAVITY)
    permeance, thick = space.air_space.vapor_permeance, space.drawn_thickness
    if resistance <= 0.0:
        return roof.replace(CAVITY, AirSpace(0.0, permeance, name=CAVITY))
    thick = max(thick, resistance * inch)
    batt = Material("batt", CAVITY, 20.0, 850.0, thick / resistance, permeance * thick)
    return roof.replace(CAVITY, Layer(batt, thick, CAVITY))


class InsideTheFilm(Page):
    """Outdoor cold, room humidity, R inside the film and the outer layer."""

    id = "inside-the-film"
    handles = (
        standard("T_out").starting(0),
        standard("RH_in").starting(50, 50),
        replace(standard("R_in").starting(1), words="inside_the_film.inside"),
        ROOF,
    )
    draws = Inside
    play = PLAY

    def compute(self, at: SimpleNamespace) -> FilmInRoof:
        """One steady winter."""
        roof = roof_with(at.R_in, at.Outer)
        indoor, outdoor = Air(ROOM_TEMPERATURE, at.RH_in), Air(at.T_out, OUTDOOR_HUMIDITY)
        found = steady.profile(roof, indoor, outdoor)
        return FilmInRoof(roof, indoor, outdoor, found, at.R_in, roof.layer(FILL).thermal_resistance)

    def views(self, state: FilmInRoof) -> FilmInLayers:
        """The film at every R of the slider, from none inside to all of it."""
        curve = self._along(state)
        share = [each / (each + state.outside) for each in self.controls["R_in"].along(len(curve))]
        known = {part: film[:3] for part, film in zip(share, curve, strict=True)}
        # The point where it stands now lies on the line itself.
        known[state.share] = state.temperature, state.faces[0], state.profile.permeance[FILM]
        temperature, humidity, permeance = (
            np.array(each) for each in zip(*(known[s] for s in sorted(known)), strict=True)
        )
        return FilmInLayers(np.array(sorted(known)), temperature, humidity, permeance, state.share)

    def _along(self, state: FilmInRoof, count: int = 13) -> list[tuple[float, float, float, str]]:
        """Film temperature, room-side humidity, permeance and state along the R slider."""
        outer = self.controls["Outer"].si
        key = (state.indoor, state.outdoor, outer, self.unit_system)
        if getattr(self, "_known", (None,))[0] != key:
            found = []
            for each in self.controls["R_in"].along(count):
                there = steady.profile(roof_with(each, outer), state.indoor, state.outdoor)
                face = there.face(FILM, 0)
                film = (
                    float(there.temperature[face]),
                    float(there.relative_humidity[face]),
                    there.permeance[FILM],
                    there.verdict.state,
                )
                found.append(film)
            self._known = key, found
        return self._known[1]

    def given(self, state: FilmInRoof) -> str:
        """What no control moves."""
        room, humidity = self.held(ROOM_TEMPERATURE, "temperature"), self.held(OUTDOOR_HUMIDITY, "relative humidity")
        return message("given", room=room, humidity=humidity, roof=self.roof_held(state.roof))

    def numbers(self, state: FilmInRoof) -> list[Readout]:
        """The film's temperature, its humidities, how open it is, and what the roof gains."""
        inside, outside = state.faces
        show = self.show
        return [
            Readout("film_temperature", message("film"), state.temperature, "temperature", both=True),
            Readout(
                "inside_face",
                message("inside-face"),
                inside,
                "relative humidity",
                note=message("inside-face-note", outside=show(outside, "relative humidity")),
            ),
            Readout("mean", message("mean"), (inside + outside) / 2, "relative humidity"),
            Readout("permeance", message("permeance"), state.profile.permeance[FILM], "permeance", both=True),
            readouts.gained(message("gain"), state.profile, self.judge(state), self.unit_system),
            Readout("share", "", state.share, "relative humidity", hidden=True),
        ]

    def judge(self, state: FilmInRoof) -> Verdict:
        """The roof in a winter that never ends."""
        return state.profile.verdict

    def says(self, state: FilmInRoof) -> str:
        """The film follows its share of R."""
        show, inside = self.show, state.faces[0]
        facts = {
            "share": show(state.share, "relative humidity"),
            "temperature": show(state.temperature, "temperature"),
            "humidity": show(inside, "relative humidity"),
            "permeance": show(state.profile.permeance[FILM], "permeance"),
        }
        judged = self.judge(state)
        if state.profile.wet_planes:
            return message("gathers", water=readouts.gathers(state.profile, judged, self.unit_system), **facts)
        return message("no-water", settles=readouts.settles(judged, self.unit_system), **facts)

    def strips(self, at: SimpleNamespace, state: FilmInRoof) -> dict[str, Any]:
        """The state along each control."""
        numbers = {"T_out": "outdoor_temperature", "RH_in": "indoor_relative_humidity"}
        found = limits.dry_ranges(
            state.roof, state.indoor, state.outdoor, {key: self.along(name) for name, key in numbers.items()}
        )
        roofs = [
            steady.profile(roof_with(at.R_in, each), state.indoor, state.outdoor).verdict
            for each in self.along("Outer")
        ]
        return {
            **{name: Strip(tuple(found[key].states)) for name, key in numbers.items()},
            # The places of the curve, where the states are known already.
            "R_in": Strip(tuple(judged for *_, judged in self._along(state))),
            "Outer": Strip(tuple(each.state for each in roofs)),
        }

    def _humid(self, humidity: float) -> str:
        """A relative humidity to a tenth of a percent, as a sum needs it."""
        return self.show(humidity, "relative humidity", 1)

    def steps(self, state: FilmInRoof) -> list[Step]:
        """The film's temperature, its two humidities, and its curve."""
        profile, system = state.profile, self.unit_system
        face = profile.face(FILM, 0)
        inside, outside = state.faces
        curve = state.roof.layer(FILM).membrane
        assert isinstance(curve, building.VariableMembrane)  # `roof_with` puts one in
        (low, dry), (high, wet) = curve.points
        mean = (inside + outside) / 2
        unit = units.shown_unit("permeance", system).name
        tight, open_ = (hand.plain(units.from_si(each, unit)) for each in (dry, wet))
        lines = [
            hand.plane(
                message("step-temperature"),
                state.indoor.temperature,
                state.outdoor.temperature,
                profile.thermal_resistance[face],
                profile.thermal_resistance[-1],
                system,
            ),
            Step(
                message("step-humidity"),
                f"({self._humid(inside)} + {self._humid(outside)}) / 2",
                self._humid(mean),
            ),
        ]
        if low < mean < high:
            lines.append(
                Step(
                    message("step-curve", system=system),
                    f"{tight} × ({open_} / {tight})^(({mean * 100:.1f} − {low * 100:g}) / {(high - low) * 100:g})",
                    self.show(profile.permeance[FILM], "permeance"),
                )
            )
        else:
            below = mean <= low
            end = self.show(low if below else high, "relative humidity")
            words = message("step-curve-below" if below else "step-curve-above", end=end)
            lines.append(Step(words, "", self.show(profile.permeance[FILM], "permeance")))
        return [*lines, *hand.stays(profile, state.indoor, state.outdoor, hand.at_risk(profile), system)]


PAGE = InsideTheFilm
