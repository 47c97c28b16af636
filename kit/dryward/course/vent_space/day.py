"""A vent space on one cold day: what its air can carry off, and what comes in through the ceiling or by a fan."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from dryward import building
from dryward.building import codes
from dryward.checks import Numeric
from dryward.physics import steady
from dryward.physics.airleak import Brought, Leak, brought
from dryward.physics.ventspace import carrying_limit
from dryward.units import DAY, to_si
from dryward.verdict import criterion
from dryward.weather import Air

#: The day, the room and the roof of this lesson.
ROOM, COLD = Air(to_si(70.0, "degF"), 0.4), to_si(20.0, "degF")
ROOF = building.preset("vented-vault-variable")
RAFTER, AREA = 5.0, to_si(600.0, "ft2")
EAVES, RIDGE = to_si(60.0, "ft"), to_si(30.0, "ft")
BAY, SPACING = to_si(14.5, "in"), to_si(16.0, "in")
#: Roof for each opening, where the conditions of the code hold [-].
RATIO = round(1 / codes.required("vent-area-reduced"))
#: A fifth of the leaks of a house at 3 ACH50 goes into this roof, part of it straight, part of it seeping.
ACH50, VOLUME, SHARE = 3.0, to_si(20_000.0, "ft3"), 0.2
LEAKY = Leak.from_blower_door(ACH50, VOLUME, SHARE, area=AREA)
#: Option -> outward pressure on the leaks [Pa]; None without leaks.
PUSHES = {"leaky": 4.0, "leaky-and-pulled": 6.0, "airtight": None, "bath-fan": None, "cut": None}
#: A shower: what its fan moves [m3/s], how long [min], and that air.  Made up for teaching.
FAN, SHOWER, BATH = to_si(80.0, "cfm"), 20.0, Air(to_si(75.0, "degF"), 0.85)
#: What comes over what the vent air can carry at most.
LIMIT = criterion("vent-share")


@dataclass(frozen=True)
class VentDay:
    """A gap, its air, the day outside, and what comes through the ceiling."""

    gap: float
    speed: float
    outdoor: Air
    leak: str

    @property
    def open(self) -> bool:
        """Whether air can go through the bay, from the eave to the ridge."""
        return self.leak != "cut"

    @cached_property
    def power(self) -> float:
        """The most the air can carry off [kg/(s m2)]."""
        return float(power(self.leak, self.gap, self.speed, self.outdoor))

    @cached_property
    def diffusion(self) -> float:
        """What comes through the layers [kg/(s m2)]."""
        return by_vapor(self.outdoor.temperature, self.outdoor.relative_humidity)

    @cached_property
    def leaking(self) -> float:
        """What straight air of the leaks brings over what air that cold can have [kg/(s m2)]."""
        return by_air(self.leak, self.outdoor.temperature)

    @property
    def below(self) -> float:
        """What seeping air leaves in the roof below, before it gets here [kg/(s m2)]."""
        return leaked(self.leak, self.outdoor.temperature).stays

    @cached_property
    def blown(self) -> float:
        """What a bath fan blows in over what air that cold can have, as the mean of a day [kg/(s m2)]."""
        return by_fan(self.leak, self.outdoor.temperature)

    @property
    def load(self) -> float:
        """By vapor, by straight air and by a bath fan [kg/(s m2)]."""
        return self.diffusion + self.leaking + self.blown

    @property
    def left(self) -> float:
        """What the air cannot carry off [kg/(s m2)]."""
        return max(self.load - self.power, 0.0)

    @property
    def share(self) -> float:
        """The load over what the air can carry at most [-]; infinite where it can carry nothing."""
        return float(share(self.load, self.power))


def by_vapor(temperature: float, relative_humidity: float) -> float:
    """Vapor that the layers let into the vent space [kg/(s m2)]; none when it goes inward."""
    found = steady.profile(ROOF, ROOM, Air(temperature, relative_humidity))
    return max(found.vapor_flux_out, 0.0)


def leaked(leak: str, temperature: float) -> Brought:
    """Water of the leaks where it is that cold, a `Brought` [kg/(s m2)]."""
    return LEAKY.moisture(PUSHES[leak] or 0.0, ROOM, temperature)


def by_air(leak: str, temperature: float) -> float:
    """What straight air brings over what air of that temperature can have [kg/(s m2)]."""
    found = leaked(leak, temperature)
    return float(found.excess - found.stays)


def shower(temperature: float) -> float:
    """What a shower's air has over what air that cold can have [kg]."""
    return float(brought(FAN, BATH, temperature).excess) * SHOWER * 60.0


def by_fan(leak: str, temperature: float) -> float:
    """One shower a day blown into one bay, spread over that bay and that day [kg/(s m2)]."""
    return shower(temperature) / (RAFTER * SPACING * DAY) if leak == "bath-fan" else 0.0


def power(leak: str, gap: Numeric, speed: Numeric, outdoor: Air) -> Numeric:
    """The most that the air of a bay can carry off [kg/(s m2)]; none where no air goes through."""
    found = carrying_limit(gap, speed, RAFTER, outdoor)
    return 0.0 * found if leak == "cut" else found


def share(load: Numeric, power: Numeric) -> Numeric:
    """What comes over what can go [-], numbers or arrays; where nothing can go, any load is beyond all measure."""
    load, power = np.broadcast_arrays(np.asarray(load, dtype=float), np.asarray(power, dtype=float))
    return np.divide(load, power, out=np.where(load > 0.0, np.inf, 0.0), where=power > 0.0)
