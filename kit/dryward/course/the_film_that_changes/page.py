"""The film that changes: what the humidity at its two faces does to it, and which face goes in."""

from __future__ import annotations

from dataclasses import dataclass
from types import SimpleNamespace
from typing import Any

import numpy as np

from dryward import building, language, units
from dryward.building import FixedMembrane, LaminateMembrane, Origin, VariableMembrane, library
from dryward.course.the_film_that_changes.beats import PLAY
from dryward.course.the_film_that_changes.film_in_vault import FILM
from dryward.course.the_film_that_changes.scene import FilmBetweenFaces, FilmSides, LaminateFaces
from dryward.course.where_it_gets_wet.page import OUTER, ROOFS
from dryward.panels import hand, readouts
from dryward.panels.controls import Choice
from dryward.panels.page import Page
from dryward.panels.readouts import Readout, Strip
from dryward.physics import limits, steady
from dryward.teaching.words import Step
from dryward.units import to_si
from dryward.verdict import Verdict
from dryward.weather import Air
from dryward.weather.places import demo_climate

message = language.beside(__file__)

#: Option -> room temperature, outdoor temperature and humidity, and the month it stands for.
DAYS = {
    "winter": (to_si(70.0, "degF"), Air(to_si(20.0, "degF"), 0.80), 0),
    "summer": (to_si(75.0, "degF"), Air(to_si(85.0, "degF"), 0.75), 6),
    "desert": (to_si(75.0, "degF"), Air(to_si(95.0, "degF"), 0.15), None),
}
WEATHER = Choice(
    "Weather",
    "the_film_that_changes.weather",
    (
        ("winter", "the_film_that_changes.january-us", "the_film_that_changes.january-si"),
        ("summer", "the_film_that_changes.july-us", "the_film_that_changes.july-si"),
        ("desert", "the_film_that_changes.desert-us", "the_film_that_changes.desert-si"),
    ),
    # The day on which the film decides: behind one of fixed perms this roof is damp.
    start="summer",
)
#: Of two sheets. Over a heated room its sensitive sheet belongs outward: in January that face is the drier one, so the
#: film stays tighter, and in July the damper one, so it opens wider.
LAMINATE = library.membrane("teaching-laminate").flipped()
#: Option -> the film itself.
FILMS: dict[str, FixedMembrane | VariableMembrane | LaminateMembrane] = {
    "variable": library.membrane("teaching-variable"),
    "fixed": FixedMembrane(to_si(1.0, "perm"), Origin(name="fixed sheet")),
    "direction-dependent": LAMINATE,
    "flipped": LAMINATE.flipped(),
    "open-sheet": FixedMembrane(to_si(50.0, "perm"), Origin(name="open sheet")),
}
FILM_CHOICE = Choice(
    "Film",
    "the_film_that_changes.film",
    (
        ("variable", "the_film_that_changes.variable"),
        ("fixed", "the_film_that_changes.fixed-us", "the_film_that_changes.fixed-si"),
        ("direction-dependent", "the_film_that_changes.direction-dependent"),
        ("flipped", "the_film_that_changes.flipped"),
        ("open-sheet", "the_film_that_changes.open-sheet"),
    ),
)
#: The years in the picture are those of two invented towns, one humid in summer and one dry: one calendar for both.
TOWNS = tuple(demo_climate(each) for each in ("mixed-humid", "hot-dry"))
#: Cooled in months warmer than this [degC].
COOLED_FROM = to_si(65.0, "degF")
CURVE = np.linspace(0.0, 1.0, 41)
#: A film is called tight up to this many times its dry permeance, and open from here on.
TIGHT, OPEN = 1.5, 3.0


@dataclass(frozen=True)
class FilmInRoof:
    """A film in a roof on one day."""

    weather: str
    roof: building.Assembly
    film: FixedMembrane | VariableMembrane | LaminateMembrane
    indoor: Air
    outdoor: Air
    profile: steady.Profile
    turned: steady.Profile

    @property
    def faces(self) -> tuple[float, float]:
        """Relative humidity on the room side and on the other side [-]."""
        return _faces(self.profile)

    @property
    def mean(self) -> float:
        """Of the two faces [-]."""
        return sum(self.faces) / 2

    @property
    def permeance(self) -> float:
        """Of the film now [kg/(s m2 Pa)]."""
        return float(self.film.permeance(*self.faces))

    @property
    def tight(self) -> float:
        """Of the film when all is dry [kg/(s m2 Pa)]."""
        return float(self.film.permeance(0.0, 0.0))

    @property
    def does(self) -> str:
        """Whether the film is tight, opening or open."""
        if self.permeance > OPEN * self.tight:
            return "open"
        return "opening" if self.permeance > TIGHT * self.tight else "tight"


def _faces(profile: steady.Profile) -> tuple[float, float]:
    """Relative humidity at the two faces of the film, the room side first [-]."""
    inside, outside = (float(profile.relative_humidity[profile.face(FILM, side)]) for side in (0, 1))
    return inside, outside


def roof_with(film: str, outer: str) -> building.Assembly:
    """The teaching roof with one film and one outer layer."""
    return building.preset(ROOFS[outer]).replace(FILM, FILMS[film])


class TheFilmThatChanges(Page):
    """Weather, room humidity, film and outer layer; curve, faces and year, or both ways round."""

    id = "the-film-that-changes"
    handles = (WEATHER, "RH_in", FILM_CHOICE, OUTER.starting("open-sheet"))
    draws = FilmSides
    play = PLAY
    #: What the years were worked out for, and they.
    _known: tuple[Any, list[tuple[float, ...]]] = (None, [])

    def compute(self, at: SimpleNamespace) -> FilmInRoof:
        """One steady day, and the same with the film turned over."""
        room, outdoor, _ = DAYS[at.Weather]
        roof, indoor = roof_with(at.Film, at.Outer), Air(room, at.RH_in)
        film = FILMS[at.Film]
        found = steady.profile(roof, indoor, outdoor)
        turned = found
        if isinstance(film, LaminateMembrane):
            turned = steady.profile(roof.replace(FILM, film.flipped()), indoor, outdoor)
        return FilmInRoof(at.Weather, roof, film, indoor, outdoor, found, turned)

    def views(self, state: FilmInRoof) -> FilmBetweenFaces | LaminateFaces:
        """The film with its year; for a film with two faces, both ways round."""
        if isinstance(state.film, LaminateMembrane):
            toward, outward = state.profile, state.turned
            if state.film.turned:
                toward, outward = outward, toward
            return _both_ways(state.film, _faces(toward), _faces(outward))
        inside, outside = state.faces
        months, dry_months = self._years(state)
        return FilmBetweenFaces(
            CURVE,
            state.film.at_mean(CURVE),
            inside,
            outside,
            state.permeance,
            months,
            dry_months,
            DAYS[state.weather][2],
        )

    def _years(self, state: FilmInRoof) -> list[tuple[float, ...]]:
        """The film's permeance in each month of both towns."""
        key = (state.roof, state.indoor.relative_humidity)
        if self._known[0] != key:
            years = []
            for town in TOWNS:
                months = []
                for month in range(1, 13):
                    outdoor = town.air(month)
                    room = DAYS["summer" if outdoor.temperature > COOLED_FROM else "winter"][0]
                    found = steady.profile(state.roof, Air(room, state.indoor.relative_humidity), outdoor)
                    months.append(float(state.film.permeance(*_faces(found))))
                years.append(tuple(months))
            self._known = key, years
        return self._known[1]

    def given(self, state: FilmInRoof) -> str:
        """What the weather sets, and what no control moves; on the stage the airs stand in the picture."""
        if self.stage.on:
            return self.roof_held(state.roof)
        room = self.held(state.indoor.temperature, "temperature")
        return message("given", room=room, outdoor=self.air_held(state.outdoor), roof=self.roof_held(state.roof))

    def numbers(self, state: FilmInRoof) -> list[Readout]:
        """Both faces, how open it is, what passes, what gathers."""
        inside, outside = state.faces
        show, flux = self.show, state.profile.vapor_flux_in
        note = message("permeance-at-mean", mean=show(state.mean, "relative humidity"))
        if isinstance(state.film, LaminateMembrane):
            other = float(state.film.flipped().permeance(*_faces(state.turned)))
            note = message("permeance-other-way", other=show(other, "permeance"))
        return [
            Readout("inside_face", message("inside-face"), inside, "relative humidity"),
            Readout("outside_face", message("outside-face"), outside, "relative humidity"),
            Readout("permeance", message("permeance"), state.permeance, "permeance", note=note),
            Readout(
                "flow",
                message("flow"),
                abs(flux),
                "vapor flux",
                note=message("flow-note", outward=bool(flux > 0)),
            ),
            readouts.gained(message("gain"), state.profile, self.judge(state), self.unit_system),
            Readout("mean", "", state.mean, "relative humidity", hidden=True),
        ]

    def judge(self, state: FilmInRoof) -> Verdict:
        """The roof on a day that never ends."""
        return state.profile.verdict

    def says(self, state: FilmInRoof) -> str:
        """What the film does, and whether it is the right time for it."""
        opens = state.does != "tight"
        seen = {
            "inside": self.show(state.faces[0], "relative humidity"),
            "outside": self.show(state.faces[1], "relative humidity"),
            "permeance": self.show(state.permeance, "permeance"),
        }
        if isinstance(state.film, FixedMembrane):
            sees = message("fixed-sees", **seen)
        else:
            sees = message("film-sees", state=state.does, **seen)
        outward = bool(state.profile.vapor_flux_in > 0)
        if state.profile.wet_planes:
            gathers = readouts.gathers(state.profile, self.judge(state), self.unit_system)
            if outward and opens:
                return message("opens-at-the-wrong-time", sees=sees, gathers=gathers)
            return message("gathers", sees=sees, gathers=gathers)
        settles = readouts.settles(self.judge(state), self.unit_system)
        if outward and opens:
            return message("opens-and-stays-dry", sees=sees, settles=settles)
        return message("no-water", outward=outward, sees=sees, settles=settles)

    def strips(self, at: SimpleNamespace, state: FilmInRoof) -> dict[str, Any]:
        """The state along each control."""
        along = {"indoor_relative_humidity": self.along("RH_in")}
        humid = limits.dry_ranges(state.roof, state.indoor, state.outdoor, along)["indoor_relative_humidity"]

        def judged(weather=at.Weather, film=at.Film, outer=at.Outer):
            room, outdoor, _ = DAYS[weather]
            return steady.profile(roof_with(film, outer), Air(room, at.RH_in), outdoor).verdict.state

        return {
            "Weather": Strip(tuple(judged(weather=each) for each in DAYS)),
            "RH_in": Strip(tuple(humid.states)),
            "Film": Strip(tuple(judged(film=each) for each in FILMS)),
            "Outer": Strip(tuple(judged(outer=each) for each in ROOFS)),
        }

    def steps(self, state: FilmInRoof) -> list[Step]:
        """The mean, and the curve; sheets in a row where there are two."""
        inside, outside = (100 * each for each in state.faces)
        unit = units.shown_unit("permeance", self.unit_system).name
        now = self.show(state.permeance, "permeance")
        if isinstance(state.film, FixedMembrane):
            return [Step(message("step-fixed"), "", now)]
        if isinstance(state.film, LaminateMembrane):
            level, both = state.film.backing.level, 1.0 / state.permeance
            sensitive, backing = (hand.plain(units.from_si(each, unit)) for each in (1.0 / (both - 1.0 / level), level))
            # Perms add as 1/perm, sd values simply add.
            formula = f"1 / (1/{sensitive} + 1/{backing})" if self.unit_system == "us" else f"{sensitive} + {backing}"
            return [Step(message("step-sensitive"), formula, now)]
        (low, dry), (high, wet) = state.film.points
        mean = Step(
            message("step-mean"), f"({inside:.1f} % + {outside:.1f} %) / 2", units.written(100 * state.mean, ".1f", "%")
        )
        if not low < state.mean < high:
            below = bool(state.mean <= low)
            end = self.show(low if below else high, "relative humidity")
            return [mean, Step(message("step-level", below=below, humidity=end), "", now)]
        tight, open_ = (hand.plain(units.from_si(each, unit)) for each in (dry, wet))
        return [
            mean,
            Step(
                message("step-curve", system=self.unit_system),
                f"{tight} × ({open_} / {tight})^(({100 * state.mean:.1f} − {low * 100:g}) / {(high - low) * 100:g})",
                now,
            ),
        ]


def _both_ways(film: LaminateMembrane, toward: tuple[float, float], outward: tuple[float, float]) -> LaminateFaces:
    """Humidities through the laminate with its sensitive sheet toward the room, and outward."""
    backing = film.backing.level
    ways = (film.flipped(), film) if film.turned else (film, film.flipped())
    facing, flipped = ways[0].permeance(*toward), ways[1].permeance(*outward)
    # What passes both sheets passes the backing, and that fixes the humidity between them.
    between = toward[1] + (toward[0] - toward[1]) * facing / backing
    other = outward[0] - (outward[0] - outward[1]) * flipped / backing
    return LaminateFaces(
        (toward[0], between, toward[1]), (outward[0], other, outward[1]), float(facing), float(flipped)
    )


PAGE = TheFilmThatChanges
