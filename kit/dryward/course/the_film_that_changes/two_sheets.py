"""The scene of a film of two sheets: a cut through the roof, the film large, one way round on each half."""

from __future__ import annotations

from typing import Any

from dryward import language
from dryward.building import LaminateMembrane
from dryward.course.the_film_that_changes.film_in_vault import DOTS, FILM, filled, gap, season, through_gaps
from dryward.panels.stage import Page
from dryward.physics import steady
from dryward.pictures import scenery, vault
from dryward.pictures.scenery import Scene
from dryward.units import amounts, from_si, to_si

message = language.beside(__file__)

#: Across the cut, from the room (0) to the sky (1): what it is drawn as, and where it ends.
_BANDS = (
    ("room", 0.1),
    ("board", 0.13),
    ("air", 0.36),
    ("film", 0.58),
    ("fibrous", 0.86),
    ("board", 0.92),
    ("vent", 0.96),
    ("covering", 1.0),
)
_FILM, _BETWEEN, _OUTER = (0.36, 0.58), 0.47, 0.86
#: The two ways round, along the cut: the sensitive sheet inward, and outward.
HALVES = {"in": (0.02, 0.49), "out": (0.51, 0.98)}
#: Across the cut: words and gauge at the free face of a sheet, on the room side and on the other side.
_WORDS, _GAUGES = {"in": 0.29, "out": 0.655}, {"in": (0.16, 0.2), "out": (0.765, 0.805)}
_GAPS = 4


def _sheets(side: str) -> tuple[tuple[float, float], tuple[float, float]]:
    """Across the cut: the sensitive sheet, and the backing."""
    inner, outer = (_FILM[0], _BETWEEN), (_BETWEEN, _FILM[1])
    return (inner, outer) if side == "in" else (outer, inner)


def _gauge(side: str) -> tuple[float, float]:
    start, end = HALVES[side]
    return start + 0.06, end - 0.06


def draw(scene: Scene, state: Any) -> None:
    """The layers lying flat under the sky, the film as two half films; the sheet that changes is an outline."""
    wide, high = scene.size
    scenery.sky(scene, season(state))
    axes = scene.axes["cut"] = scenery.Axes((0.0, high), (wide, 0.0), (0.0, -0.77 * high))
    scenery.bands(scene, axes, (0.0, 1.0), _BANDS)
    for side, along in HALVES.items():
        sensitive, backing = _sheets(side)
        scene.shape_of(axes.corners(along, sensitive), "gauge")
        scene.shape_of(axes.corners(along, backing), "backing")
        scene.shape_of(axes.corners(_gauge(side), _GAUGES[side]), "gauge")


def ways(state: Any) -> dict[str, tuple[LaminateMembrane, steady.Profile]]:
    """The film and the roof's state with the sensitive sheet inward, and outward."""
    here, turned = (state.film, state.profile), (state.film.flipped(), state.turned)
    return {"in": turned, "out": here} if state.film.turned else {"in": here, "out": turned}


def sees(side: str, profile: steady.Profile) -> float:
    """Humidity at the free face of the sensitive sheet [-]."""
    return float(profile.relative_humidity[profile.face(FILM, int(side == "out"))])


def passes(state: Any, system: str) -> dict[str, float]:
    """What passes the film in a day on the roof, each way round [m3], as it is shown: so sums on screen are right."""
    unit = "fl oz" if system == "us" else "mL"
    found = {}
    for side, (_, profile) in ways(state).items():
        volume = amounts.a_day(float(profile.vapor_flux_in), system)
        found[side] = to_si(float(f"{from_si(volume, unit):.2g}"), unit)
    return found


def given(page: Page, state: Any) -> dict[str, Any]:
    """The two airs, and which sheet is where."""
    found = vault.airs(state.indoor, state.outdoor, page.unit_system, ("cut", 0.5, 0.04), ("sky", 0.5, 0.05))
    for side, (start, end) in HALVES.items():
        other = "out" if side == "in" else "in"
        middle = (start + end) / 2
        found["tags"].append(scenery.tag(message("backing"), ("cut", middle, _WORDS[other]), "permeance", minor=True))
        if not page.stage.shown:
            found["tags"].append(scenery.tag(message("sensitive"), ("cut", middle, _WORDS[side]), "relative humidity"))
    return found


def shows(page: Page, state: Any) -> dict[str, Any]:
    """Of each way round: the gaps of the sensitive sheet, the humidity at its free face, what passes, what gathers."""
    system, parts, amount = page.unit_system, [], passes(state, page.unit_system)
    for side, (film, profile) in ways(state).items():
        both = film.permeance(*(float(profile.relative_humidity[profile.face(FILM, k)]) for k in (0, 1)))
        # Perms add as 1/perm: what the backing leaves is the sensitive sheet.
        sensitive = 1.0 / (1.0 / both - 1.0 / film.backing.level)
        humidity, along = sees(side, profile), HALVES[side]
        middle = sum(along) / 2
        face = message("sensitive-sees", humidity=page.show(humidity, "relative humidity"))
        day = message("a-day", amount=amounts.water(amount[side], system))
        parts.append(
            {
                "marks": [
                    *scenery.sheet("permeance", "cut", along, _sheets(side)[0], gap(sensitive), _GAPS),
                    filled("cut", _gauge(side), humidity, _GAUGES[side]),
                    *_water(profile, along),
                ],
                "tags": [
                    scenery.tag(face, ("cut", middle, _WORDS[side]), "relative humidity"),
                    scenery.tag(day, ("cut", middle, 1.0), "vapor pressure"),
                ],
                "flows": _vapor(profile, along),
            }
        )
    return scenery.together(parts)


def _water(profile: steady.Profile, along: tuple[float, float]) -> list[dict[str, Any]]:
    """Drops or frost under the outer layer."""
    return [
        scenery.drops(
            ("cut", along[0], _OUTER), ("cut", along[1], _OUTER), vault.much(plane), bool(plane.temperature < 0)
        )
        for plane in profile.wet_planes
    ]


def _vapor(profile: steady.Profile, along: tuple[float, float]) -> list[dict[str, Any]]:
    """Vapor through the gaps to the outer layer; what does not gather there goes on, or comes from outside."""
    places = scenery.gaps(along, _GAPS)
    flows = through_gaps(profile, "cut", [(s, 0.02, _OUTER) for s in places])
    flux = float(profile.vapor_flux_out)
    ends = (("cut", sum(along) / 2, _OUTER), ("cut", sum(along) / 2, 1.12))
    flows.append(scenery.flow(vault.dots(flux, DOTS), *(ends if flux > 0 else ends[::-1]), spread=along[1] - along[0]))
    return flows
