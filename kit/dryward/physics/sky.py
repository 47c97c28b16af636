"""The night sky: how cold it looks from a roof, and how cold a roof gets under it."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Self, TypedDict, Unpack

import numpy as np

from dryward import air
from dryward.air import COLDEST
from dryward.checks import Floats, NotConverged, Numeric, OutOfRange, plain, subject, within
from dryward.language import message
from dryward.physics.moving_air import film_permeance
from dryward.units import HOUR, KELVIN, STEFAN_BOLTZMANN, written
from dryward.weather import Air

__all__ = [
    "temperature",
    "clear_emissivity",
    "cloud_factor",
    "by_air_temperature",
    "long_wave",
    "from_long_wave",
    "roof_surface",
    "view",
    "Night",
    "night",
    "dry_underside",
    "frost_margin",
    "SUBLIMATION_HEAT",
    "STEFAN_BOLTZMANN",
]


#: Cloud factor: 1 + 0.022 N - 0.0035 N^2 + 0.00028 N^3, N in tenths; Walton 1983.
_CLOUD = (0.022, -0.0035, 0.00028)


def clear_emissivity(
    dew_point: Numeric, model: str = "clark-allen", hour: Numeric | None = None, pressure: Numeric | None = None
) -> Numeric:
    """Emissivity of a clear sky from the dew point at the ground.

    Source: Berdahl and Martin 1984, quoted in a thermography guide; the hour and
    pressure terms from memory.  Clark and Allen 1978, as an open
    weather-data library has it.
    """
    dew = within("Dew point", dew_point, -80.0, 40.0, "degC")
    if model == "clark-allen":
        if hour is not None or pressure is not None:
            raise OutOfRange(message("physics.model-takes-no-hour", model="clark-allen"))
        emissivity = 0.787 + 0.764 * np.log((dew + KELVIN) / KELVIN)
    elif model == "berdahl-martin":
        emissivity = 0.711 + 0.56 * (dew / 100.0) + 0.73 * (dew / 100.0) ** 2
        if hour is not None:
            emissivity = emissivity + 0.013 * np.cos(2.0 * np.pi * within("Hour", hour, 0.0, 24.0, "h") / 24.0)
        if pressure is not None:
            total = within("Air pressure", pressure, 4e4, 1.1e5, "Pa")
            emissivity = emissivity + 0.00012 * (total / 100.0 - 1000.0)
    else:
        raise OutOfRange(message("physics.sky-model", given=str(model)[:40]))
    return plain(emissivity)


def cloud_factor(cover: Numeric) -> Numeric:
    """How many times more a cloudy sky radiates than a clear one.

    Source: Walton 1983, NBSSIR 83-2655, as an open weather-data library has it.
    """
    tenths = within("Cloud cover", cover, 0.0, 1.0, "%") * 10.0
    a, b, c = _CLOUD
    return 1.0 + tenths * (a + tenths * (b + tenths * c))


#: Swinbank 1963: sky temperature = this times air temperature^1.5, both absolute [K^-0.5].
_SWINBANK = 0.0552


def temperature(
    air_temperature: Numeric,
    dew_point: Numeric,
    cloud: Numeric = 0.0,
    model: str = "clark-allen",
    hour: Numeric | None = None,
    pressure: Numeric | None = None,
) -> Numeric:
    """Temperature of a black sky that would radiate as the real one does.

    Parameters
    ----------
    air_temperature : float or array
        At the ground [degC], -80 to 60.
    dew_point : float or array
        Over water [degC], -80 to 40.
    cloud : float or array
        Part of the sky under cloud [-], 0 to 1.
    model : {"clark-allen", "berdahl-martin"}
    hour : float or array, optional
        Solar time [h], 0 to 24.
    pressure : float or array, optional
        Air pressure [Pa], 40 000 to 110 000; both for Berdahl and Martin only.

    Returns
    -------
    float or array
        Broadcast shape [degC].

    Raises
    ------
    OutOfRange
        Outside a range, or for an unknown model.

    Notes
    -----
    Emissivity^(1/4) times the absolute air temperature.  The cloud factor
    was made for Clark and Allen's clear sky; it serves the other model too.
    Under full cloud in very damp heat (dew point above 30 degC) the product
    passes one by some thousandths and is left so.

    Examples
    --------
    >>> round(temperature(0.0, -3.0, model="berdahl-martin"), 2)
    -23.76
    """
    kelvin = within("Air temperature", air_temperature, -80.0, 60.0, "degC") + KELVIN
    emissivity = clear_emissivity(dew_point, model, hour, pressure) * cloud_factor(cloud)
    return plain(emissivity**0.25 * kelvin - KELVIN)


def from_long_wave(radiation: Numeric) -> Numeric:
    """Sky temperature from the measured long-wave radiation of the sky."""
    flux = within("Long-wave radiation of the sky", radiation, 20.0, 700.0, "W/m2")
    return (flux / STEFAN_BOLTZMANN) ** 0.25 - KELVIN


def long_wave(sky_temperature: Numeric) -> Numeric:
    """Long-wave radiation of the sky on the level: the inverse of `from_long_wave`."""
    kelvin = within("Sky temperature", sky_temperature, -150.0, 60.0, "degC") + KELVIN
    return STEFAN_BOLTZMANN * kelvin**4


def by_air_temperature(air_temperature: Numeric) -> Numeric:
    """Temperature of a clear sky where the dew point is not known.

    Source: Swinbank 1963, as several public files have it.
    """
    kelvin = within("Air temperature", air_temperature, -80.0, 60.0, "degC") + KELVIN
    return _SWINBANK * kelvin**1.5 - KELVIN


#: Steps of Newton's method for a surface.
_STEPS = 30


def view(slope: Numeric) -> Numeric:
    """Part of the sky that a slope sees; it sees ground in the rest."""
    tilt = np.radians(within("Slope", slope, 0.0, 90.0, "degrees"))
    return plain(0.5 * (1.0 + np.cos(tilt)))


#: Heat transfer coefficient of the air where none is given [W/(m2 K)].
_STANDARD = 8.0


def roof_surface(
    air_temperature: Numeric,
    sky_temperature: Numeric,
    coefficient: Numeric = _STANDARD,
    u_value: Numeric = 0.0,
    indoor_temperature: Numeric = 20.0,
    emissivity: Numeric = 0.9,
    slope: Numeric = 0.0,
    gain: Numeric = 0.0,
) -> Numeric:
    """Temperature of a roof surface in balance with sky, air and house; what is not sky is ground at air temperature.

    e s (Ts^4 - Tsky^4) + h (Ts - Ta) = U (Ti - Ts) + gain, steady: no heat
    stored in the covering.
    """
    outdoor = within("Air temperature", air_temperature, COLDEST, 60.0, "degC") + KELVIN
    cold = within("Sky temperature", sky_temperature, -150.0, 60.0, "degC") + KELVIN
    convection = within("Heat transfer coefficient", coefficient, 0.0, 200.0, "W/(m2 K)")
    through = within("U-value", u_value, 0.0, 10.0, "W/(m2 K)")
    indoor = within("Indoor temperature", indoor_temperature, -60.0, 60.0, "degC") + KELVIN
    radiates = within("Emissivity", emissivity, 0.0, 1.0) * STEFAN_BOLTZMANN
    if np.any(convection + through + radiates == 0.0):
        raise OutOfRange(message("physics.no-surface-temperature"))
    sees = view(slope)
    gain = within("Heat gain", gain, -2000.0, 2000.0, "W/m2")
    given = radiates * (sees * cold**4 + (1.0 - sees) * outdoor**4) + convection * outdoor + through * indoor + gain
    surface = outdoor + 0.0 * given
    for _ in range(_STEPS):
        left = radiates * surface**4 + (convection + through) * surface - given
        step = left / (4.0 * radiates * surface**3 + convection + through)
        surface = surface - step
        if np.all(np.abs(step) < 1e-9):
            return plain(surface - KELVIN)
    raise NotConverged(message("physics.surface-not-found"))


#: Heat that frost gives up as it forms from vapor [J/kg], at 0 degC, from memory.
SUBLIMATION_HEAT = 2.834e6
#: Chords to find the frost of a step.
_ROUNDS = 60


@dataclass(frozen=True)
class Night:
    """A night hour by hour: what `night` gives, each an array over the hours."""

    hour: Floats  # since sunset [h]; the end of each step
    air_temperature: Floats
    frost_point: Floats  # of outdoor air, or its dew point
    sky_temperature: Floats
    roof_temperature: Floats  # top of the covering
    underside_temperature: Floats  # the face that vent air touches
    frost: Floats  # frost or dew held under the covering [kg/m2]


class Faces(TypedDict, total=False):
    """What else the two faces of a covering hang on."""

    #: Of the upper face to the sky [-].
    emissivity: Numeric
    #: Of a layer fixed under the covering [m2 K/W].
    resistance: Numeric
    #: From indoor air to the vent space [W/(m2 K)], and that air [degC].
    u_value: Numeric
    indoor_temperature: Numeric
    #: The part of the coefficient that is the lower face's [-].
    under_share: Numeric


def night(
    outdoor: Air,
    sky_cooling: Numeric,
    coefficient: float = _STANDARD,
    *,
    hours: int = 12,
    steps_per_hour: int = 4,
    **faces: Unpack[Faces],
) -> Night:
    """A night of steady or changing weather over a vented covering, one air or one for each step.

    `sky_cooling` is how much colder the sky is than the air; `coefficient` the
    heat that outdoor air gives both faces together; for the rest see `Faces`.

    Outdoor air in the vent space keeps its temperature and vapor pressure:
    a well-vented covering.  Vapor comes to the lower face as heat does
    (Lewis).  The covering stores no heat.  Frost warms the face it forms
    on, cools it as it goes, and never falls below none.  The share of 0.4
    at the lower face is an assumption with no source.
    """
    count = _whole("Length of the night", hours, 1, 24, "h") * _whole("Steps in each hour", steps_per_hour, 1, 60, "")
    step = HOUR / steps_per_hour
    temperature = _series("Air temperature", outdoor.temperature, count)
    pressure = _series("Vapor pressure", outdoor.vapor_pressure, count)
    cooling = _series("Sky cooling", within("Sky cooling", sky_cooling, 0.0, 60.0, "K"), count)
    covering = _Covering.checked(coefficient, **faces)
    roof, underside, frost = np.empty(count), np.empty(count), np.empty(count)
    held = 0.0
    known: dict[tuple[float, float, float], float] = {}
    for now in range(count):
        given = (temperature[now], temperature[now] - cooling[now], pressure[now])
        if given not in known:  # steady weather is worked out once
            known[given] = covering.frosting(*given)
        rate = max(known[given], -held / step)  # what is not there cannot leave
        roof[now], underside[now] = covering.balance(*given[:2], rate)
        held = max(held + rate * step, 0.0)  # 0.0: the last bit of a subtraction
        frost[now] = held
    return Night(
        np.arange(1, count + 1) / steps_per_hour,
        temperature,
        air.dew_point(pressure),
        temperature - cooling,
        roof,
        underside,
        frost,
    )


def dry_underside(
    air_temperature: Numeric,
    sky_cooling: Numeric,
    coefficient: Numeric = _STANDARD,
    **faces: Unpack[Faces],
) -> Numeric:
    """Lower face of the covering while no frost forms on it.

    Frost begins where this is below the frost point of the air.
    """
    cooling = within("Sky cooling", sky_cooling, 0.0, 60.0, "K")
    return _Covering.checked(coefficient, **faces).balance(air_temperature, air_temperature - cooling, 0.0)[1]


@dataclass(frozen=True)
class _Covering:
    """The two faces of a covering between sky, outdoor air and house."""

    upper: Numeric  # coefficient of the upper face
    lower: Numeric
    layer: Numeric  # resistance between the faces
    through: Numeric  # U-value of the house below
    indoor: Numeric
    emissivity: Numeric

    @classmethod
    def checked(
        cls,
        coefficient: Numeric,
        emissivity: Numeric = 0.9,
        resistance: Numeric = 0.0,
        u_value: Numeric = 0.126,
        indoor_temperature: Numeric = 21.1,
        under_share: Numeric = 0.4,
    ) -> Self:
        """A covering from what a caller gives, each within its range."""
        total = within("Heat transfer coefficient", coefficient, 0.5, 200.0, "W/(m2 K)")
        share = within("Share of the lower face", under_share, 0.05, 0.95)
        return cls(
            total * (1.0 - share),
            total * share,
            within("Resistance under the covering", resistance, 0.0, 5.0, "m2 K/W"),
            within("U-value", u_value, 0.0, 10.0, "W/(m2 K)"),
            within("Indoor temperature", indoor_temperature, -60.0, 60.0, "degC"),
            emissivity,
        )

    def balance(self, warm: Numeric, cold: Numeric, rate: Numeric) -> tuple[Numeric, Numeric]:
        """Temperatures of both faces while frost forms at a rate."""
        gain = rate * SUBLIMATION_HEAT
        # Air, house and frost act on the lower face; a layer stands between it and the top.
        inner = self.lower + self.through
        rest = (self.lower * warm + self.through * self.indoor + gain) / inner
        joined = inner / (1.0 + inner * self.layer)
        mixed = (self.upper * warm + joined * rest) / (self.upper + joined)
        top = roof_surface(mixed, cold, self.upper + joined, emissivity=self.emissivity)
        return top, (top + self.layer * inner * rest) / (1.0 + inner * self.layer)

    def frosting(self, warm: Numeric, cold: Numeric, vapor: float) -> float:
        """Rate at which frost forms, or goes as long as there is some [kg/(s m2)]."""
        film = film_permeance(self.lower, warm)

        def left(rate: Numeric) -> float:
            return film * (vapor - air.saturation_vapor_pressure(self.balance(warm, cold, rate)[1])) - rate

        # More frost, warmer face, less frost: the rate lies between none and
        # that of the face without the heat of the frost.
        return _crossing(left, *sorted((0.0, left(0.0))))


def _crossing(left: Callable[[float], float], low: float, high: float) -> float:
    """Where a falling, nearly straight function is zero: chords, the stale end halved.

    Own lines, since the library that has this would weigh on every lesson.
    """
    above, below = left(low), left(high)
    if low == high:
        return low
    for _ in range(_ROUNDS):
        middle = high - below * (high - low) / (below - above)
        now = left(middle)
        if abs(now) < 1e-15:  # a gram on a square meter in thirty thousand years
            return middle
        if now > 0.0:
            low, above, below = middle, now, below / 2.0
        else:
            high, below, above = middle, now, above / 2.0
    raise NotConverged(message("physics.frost-not-found"))


def _series(what: str, value: Numeric, count: int) -> Floats:
    array = np.asarray(value, dtype=float)
    if array.ndim == 0:
        return np.full(count, float(array))
    if array.shape != (count,):
        raise OutOfRange(message("physics.steps-of-night", what=subject(what), count=array.size, steps=str(count)))
    return array


def _whole(what: str, value: Numeric, low: float, high: float, unit: str) -> int:
    number = within(what, value, low, high, unit)
    if number != int(number):
        raise OutOfRange(message("physics.whole-number", what=subject(what), given=written(number, "g")))
    return int(number)


def frost_margin(outdoor: Air) -> Numeric:
    """How far a face may be below outdoor air before that air frosts it, or dews [K]."""
    return outdoor.temperature - outdoor.dew_point
