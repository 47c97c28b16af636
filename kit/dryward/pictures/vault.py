"""A steady roof on the stage: the vault, its two airs, the dew-point line, water at its faces and vapor on its way."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

from dryward import units
from dryward.building import Assembly
from dryward.language import message
from dryward.physics.steady import Profile, WetPlane
from dryward.pictures import scenery
from dryward.pictures.scenery import Place, Scene, through
from dryward.units import amounts, to_si
from dryward.weather import Air

#: Dots a minute for a fluid ounce of water a day on the roof that fluxes are told on.
DOTS = 30
#: The flux of one fluid ounce a day on that roof [kg/(s m2)].
OUNCE = to_si(1.0, "fl oz") / amounts.a_day(1.0, "us")
#: Water that gathers so fast is drawn as much [kg/(s m2)].
_MUCH = to_si(5.0, "g/m2/day")
#: A plane with less than this share of the wettest one's water is not drawn: drops there would tell too much.
_TRACE = 0.05
#: Snow lies below the first, and the sun burns above the second [degC].
_COLD, _HOT = to_si(45.0, "degF"), to_si(80.0, "degF")
#: Where the lens stands, and its radius, in each shape [px].
_LENSES = {
    "wide": ((846.0, 486.0), 118.0),
    "tall": ((478.0, 486.0), 96.0),
    "post": ((466.0, 634.0), 112.0),
    "strip": ((790.0, 368.0), 78.0),
}
#: Where someone stands in the room, as a share of the width: between the words of its air and the lens.
_PERSON = {"wide": 0.5, "tall": 0.54, "post": 0.52, "strip": 0.56}


def season(temperature: float) -> str:
    """The season that a temperature outdoors [degC] is drawn as."""
    return "winter" if temperature < _COLD else "summer" if temperature > _HOT else "mild"


def draw(scene: Scene, assembly: Assembly, season: str, at: str = "outer layer") -> None:
    """The vault in a season, with a lens on the inner face of a layer; without one where no layer is named."""
    scenery.vault(scene, assembly, season, person_at=_PERSON[scene.shape])
    if not at:
        return
    found = scenery.layers_through(assembly)
    number = next(k for k, (layer, *_) in enumerate(found) if layer.name == at)
    kinds = [scenery.membrane_kind(layer) if kind == "membrane" else kind for layer, kind, *_ in found]
    bands = [(kinds[k], share) for k, share in ((number - 1, 1.3), (number, 0.55), (number + 1, 0.8))]
    middle, radius = _LENSES[scene.shape]
    scenery.lens(scene, "lens", middle, radius, ("slope", 0.86, found[number][2]), bands)


def small(scene: Scene, assembly: Assembly, season: str, box: tuple[float, float, float, float]) -> None:
    """The slope of a vault in a box (left, top, right, bottom) of another scene, between the sky and the room.

    Axes: "slope" as that of the whole vault, "room" and "sky" for the words of the two airs.
    """
    left, top, right, bottom = box
    wide, high = right - left, bottom - top
    scene.shape_of([(left, top), (right, top), (right, bottom), (left, bottom)], f"sky-{season}")
    low, ridge = (left + 0.16 * wide, top + 0.76 * high), (right, top + 0.5 * high)
    run, rise = ridge[0] - low[0], ridge[1] - low[1]
    thick = 0.34 * high
    lean = thick * rise / (run**2 + rise**2) ** 0.5, -thick * run / (run**2 + rise**2) ** 0.5
    scene.shape_of([low, ridge, (right, bottom), (low[0], bottom)], "room")
    scene.shape_of([(low[0] - 12, bottom), (low[0], bottom), low, (low[0] - 12, low[1] + 5)], "wall")
    # It ends at the box, not at a ridge.
    axes = scenery.Axes(low, (run + lean[0] * -1, rise * (run - lean[0]) / run), lean)
    scenery.stack(scene, "slope", axes, assembly)
    scene.line([axes.at(0, 0), axes.at(0, 1)], "eave")
    scene.line([axes.at(-0.03, 1), axes.at(1, 1)], "roofing")
    scene.box("room", low[0], low[1], right, bottom)
    scene.axes["sky"] = scenery.Axes((left, top), (wide, 0.0), (0.0, high))


#: Where the face that a lens of `draw` looks at stands in it, across.
LENS_FACE = 1.3 / 2.65


def signature(state: Any) -> Any:
    """What of a roof on its day stands still: the layers, and the season."""
    return state.roof.layers, season(state.outdoor.temperature)


def airs(
    indoor: Air,
    outdoor: Air,
    system: str,
    room_at: Place = ("room", 0.44, 0.55),
    outdoors_at: Place = ("sky", 0.3, 0.1),
) -> dict[str, Any]:
    """The two airs, in words at their places."""
    tags = []
    for name, air, at in (("room", indoor, room_at), ("outdoors", outdoor, outdoors_at)):
        temperature, humidity = told(air.temperature, air.relative_humidity, system)
        text = message(f"pictures.air-of-{name}", temperature=temperature, humidity=humidity)
        tags.append(scenery.tag(text, at))
    return {"tags": tags}


def told(temperature: float, humidity: float, system: str) -> tuple[str, str]:
    """A temperature, whole, and a relative humidity."""
    return (
        units.show(temperature, "temperature", system, 0),
        units.show(humidity, "relative humidity", system),
    )


def perms(permeance: float, system: str) -> str:
    """A permeance [kg/(s m2 Pa)], of a small one two places: 0.69 perm, sd 0.07 m.

    Examples
    --------
    >>> perms(to_si(0.6857, "perm"), "us"), perms(to_si(0.1, "perm"), "us"), perms(to_si(50.0, "perm"), "si")
    ('0.69 perm', '0.1 perm', '0.07 m sd')
    """
    unit = "perm" if system == "us" else "sd m"
    shown = units.from_si(permeance, unit)
    return units.show(to_si(round(shown, 2), unit) if shown < 1 else permeance, "permeance", system)


def dew_line(profile: Profile, assembly: Assembly) -> dict[str, Any]:
    """The dew-point line along the slope; nothing where there is none."""
    if profile.dew_point_depth is None:
        return {}
    d = through(assembly, float(profile.dew_point_depth))
    text = message("pictures.dew-point-line")
    return {
        "marks": [scenery.line("dew point", ("slope", 0.0, d), ("slope", 1.0, d))],
        "tags": [scenery.tag(text, ("slope", 0.16, d), "dew point", minor=True)],
    }


def wet_planes(profile: Profile) -> list[WetPlane]:
    """The wet planes that are drawn, from the room outward: those that tell of the water in all."""
    most = max((plane.rate for plane in profile.wet_planes), default=0.0)
    return [plane for plane in profile.wet_planes if plane.rate >= _TRACE * most]


def water(
    profile: Profile, assembly: Assembly, system: str, lens: bool = True, in_all: bool = False, before: float = 0.0
) -> dict[str, Any]:
    """Drops or frost at every wet plane, and how much gathers at the worst, or in all, in words and in a lens on it.

    The drops stand `before` their planes, toward the room, where something else hangs on these.
    """
    marks, tags = [], []
    worst = max(profile.wet_planes, key=lambda plane: plane.rate, default=None)
    for plane in wet_planes(profile):
        d, amount = through(assembly, float(plane.depth)), much(plane)
        frost = bool(plane.temperature < 0)
        marks.append(scenery.drops(("slope", 0.03, d - before), ("slope", 0.97, d - before), amount, frost))
        if plane is worst:
            if lens:
                marks.append(scenery.drops(("lens", 0.08, LENS_FACE), ("lens", 0.92, LENS_FACE), amount, frost))
            text = message(
                "pictures.gathers-here", frost=frost, amount=a_day(profile.gain if in_all else plane.rate, system)
            )
            tags.append(scenery.tag(text, ("slope", 0.45, 1.0), "wet", "over", minor=True))
    return {"marks": marks, "tags": tags}


def face(profile: Profile, layer: str, system: str) -> dict[str, Any]:
    """How warm and how humid the inner face of a layer is, in words at the lens."""
    node = profile.face(layer, 0)
    temperature, humidity = told(float(profile.temperature[node]), float(profile.relative_humidity[node]), system)
    text = message("pictures.face-is", temperature=temperature, humidity=humidity)
    return {"tags": [scenery.tag(text, ("lens", 0.5, 1.0), "", "over", minor=True)]}


def much(plane: WetPlane) -> float:
    """How much gathers, 0 to 1, as drops are drawn."""
    return min(1.0, float(plane.rate) / _MUCH)


def vapor(profile: Profile, assembly: Assembly, number: int = DOTS) -> dict[str, Any]:
    """Vapor on its way, at the state's own fluxes: from face to face, ending where water gathers."""
    planes = wet_planes(profile)
    stops = [through(assembly, float(plane.depth)) for plane in planes]
    ends = (-0.55, *stops, 1.3)
    flux = float(profile.vapor_flux_in)
    flows = []
    for k, (start, end) in enumerate(pairwise(ends)):
        places: tuple[Place, Place] = (("slope", 0.5, start), ("slope", 0.5, end))
        rate = dots(flux, number)
        if rate >= 0.01:
            flows.append(scenery.flow(rate, *(places if flux > 0 else places[::-1]), spread=0.9))
        if k < len(stops):
            flux -= float(planes[k].rate)
    return {"flows": flows}


def dots(flux: float, number: int) -> float:
    """Dots a minute of a flux [kg/(s m2)], so many for each fluid ounce a day."""
    return abs(flux) / OUNCE * number


def a_day(flux: float, system: str) -> str:
    """A flux [kg/(s m2)] as the water of a day on the roof that fluxes are told on, in few words."""
    return amounts.water(amounts.a_day(flux, system), system)


def scale(system: str, number: int = DOTS) -> str:
    """What the dots stand for, in words."""
    return message("pictures.dots-stand-for", number=number, amount=amounts.on_a_roof(OUNCE, system))
