"""The first water: one roof in a place, by what is done to it; vapor through its layers and air through its leaks."""

from __future__ import annotations

from dataclasses import dataclass, replace

from dryward import air, building
from dryward.physics import steady
from dryward.physics.airleak import Leak
from dryward.teaching import vault
from dryward.units import to_si
from dryward.weather import Air, demo_climate

#: A fifth of the leaks of a house at 3 air changes an hour at 50 Pa goes into this roof, as in the lesson on vents.
AREA = to_si(600.0, "ft2")
LEAK = Leak.from_blower_door(3.0, to_si(20_000.0, "ft3"), 0.2, area=AREA)
#: What pushes the room's air out [Pa], and with more vents that pull at the ridge.
PUSH, PULLED = 4.0, 6.0
#: What is done -> inner layer [perm, "variable" or none], how many times the leaks, the push on them [Pa].
DONE: dict[str, tuple[float | str | None, float, float]] = {
    "bare": (None, 1.0, PUSH),
    "vents": (None, 1.0, PULLED),
    "plastic": (0.06, 1.0, PUSH),
    "breathes": (None, 2.0, PUSH),
    "sealed": ("variable", 0.0, PUSH),
}
#: Towns to choose from, all of them invented.
PLACES = ("cold", "very-cold", "cool-marine", "mixed-humid", "hot-humid", "hot-dry")
#: The room in winter [degC], and with an air conditioner in summer.
WARM, COOLED = to_si(70.0, "degF"), Air(to_si(75.0, "degF"), 0.5)
JANUARY, JULY = 0, 6


@dataclass(frozen=True)
class FirstWater:
    """A roof with an OSB deck on a day, and the water it takes in."""

    done: str
    indoor: Air
    outdoor: Air
    profile: steady.Profile
    #: What leaking air leaves at the deck [kg/(s m2)].
    leaked: float

    @property
    def roof(self) -> building.Assembly:
        """Its layers."""
        return roof(self.done)

    @property
    def water(self) -> float:
        """All that stays in the roof [kg/(s m2)]."""
        return float(self.profile.gain) + self.leaked


def roof(done: str) -> building.Assembly:
    """The teaching vault with OSB over its insulation."""
    return vault.roof(DONE[done][0], "OSB")


def day(place: str, month: int) -> Air:
    """The mean air of a month in an invented town."""
    town = demo_climate(place)
    return Air(float(town.temperature[month]), float(town.relative_humidity[month]))


def on_a_day(done: str, indoor: Air, outdoor: Air) -> FirstWater:
    """What a roof takes in."""
    _, times, push = DONE[done]
    if done == "breathes":
        # Twice the air, and the same water in it.
        inside, outside = (float(air.humidity_ratio(each.vapor_pressure)) for each in (indoor, outdoor))
        ratio = outside + (inside - outside) / times
        pressure = ratio * air.STANDARD_PRESSURE / (air.MASS_RATIO + ratio)
        indoor = replace(indoor, relative_humidity=float(air.relative_humidity(indoor.temperature, pressure)))
    profile = steady.profile(roof(done), indoor, outdoor)
    cold = float(profile.temperature[profile.face(vault.OUTER, 0)])
    stays = times * float(LEAK.moisture(push, indoor, cold).stays) if indoor.temperature > outdoor.temperature else 0.0
    return FirstWater(done, indoor, outdoor, profile, stays)


def in_january(done: str, place: str, humidity: float) -> FirstWater:
    """What it takes in on a January day in a town, over a room of that humidity."""
    return on_a_day(done, Air(WARM, humidity), day(place, JANUARY))


def push_in_july(place: str) -> float:
    """Vapor pressure outdoors minus that of a cooled room, on a July day in a town [Pa]."""
    return day(place, JULY).vapor_pressure - COOLED.vapor_pressure
