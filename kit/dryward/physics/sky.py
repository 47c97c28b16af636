"""The night sky: how cold it looks from a roof, and how cold a roof gets under it."""

from dataclasses import dataclass

import numpy as np

from dryward import air
from dryward.air import COLDEST
from dryward.checks import NotConverged, OutOfRange, within
from dryward.physics.moving_air import film_permeance
from dryward.physics.shape import plain
from dryward.units import HOUR, KELVIN, STEFAN_BOLTZMANN

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


def clear_emissivity(dew_point, model="clark-allen", hour=None, pressure=None):
    """Emissivity of a clear sky from the dew point at the ground.

    Parameters
    ----------
    dew_point : float or array
        Over water, as weather services give it [degC], -80 to 40.
    model : {"clark-allen", "berdahl-martin"}
    hour : float or array, optional
        Solar time [h], 0 to 24, for the daily swing of Berdahl and Martin.
    pressure : float or array, optional
        Air pressure [Pa], 40 000 to 110 000, for their altitude term.

    Returns
    -------
    float or array
        Broadcast shape [-].

    Raises
    ------
    OutOfRange
        Outside a range; for an unknown model; for an hour or a pressure with
        Clark and Allen, who have neither.

    References
    ----------
    Berdahl and Martin 1984, quoted in a thermography guide; the hour and
    pressure terms from memory.  Clark and Allen 1978, as an open
    weather-data library has it.

    Examples
    --------
    >>> round(clear_emissivity(10.0, "berdahl-martin"), 4), round(clear_emissivity(10.0), 4)
    (0.7743, 0.8145)
    """
    dew = within("Dew point", dew_point, -80.0, 40.0, "°C")
    if model == "clark-allen":
        if hour is not None or pressure is not None:
            raise OutOfRange('The sky model "clark-allen" takes no hour and no pressure.')
        emissivity = 0.787 + 0.764 * np.log((dew + KELVIN) / KELVIN)
    elif model == "berdahl-martin":
        emissivity = 0.711 + 0.56 * (dew / 100.0) + 0.73 * (dew / 100.0) ** 2
        if hour is not None:
            emissivity = emissivity + 0.013 * np.cos(2.0 * np.pi * within("Hour", hour, 0.0, 24.0, "h") / 24.0)
        if pressure is not None:
            total = within("Air pressure", pressure, 4e4, 1.1e5, "Pa")
            emissivity = emissivity + 0.00012 * (total / 100.0 - 1000.0)
    else:
        raise OutOfRange(f'The sky model is "clark-allen" or "berdahl-martin", not "{str(model)[:40]}".')
    return plain(emissivity)


def cloud_factor(cover):
    """How many times more a cloudy sky radiates than a clear one.

    Parameters
    ----------
    cover : float or array
        Part of the sky under cloud [-], 0 to 1.

    Returns
    -------
    float or array
        Same shape [-], 1 to 1.15.

    Raises
    ------
    OutOfRange
        Outside the range.

    References
    ----------
    Walton 1983, NBSSIR 83-2655, as an open weather-data library has it.

    Examples
    --------
    >>> round(cloud_factor(0.5), 5)
    1.0575
    """
    tenths = within("Cloud cover", cover, 0.0, 1.0, "%") * 10.0
    a, b, c = _CLOUD
    return 1.0 + tenths * (a + tenths * (b + tenths * c))


#: Swinbank 1963: sky temperature = this times air temperature^1.5, both absolute [K^-0.5].
_SWINBANK = 0.0552


def temperature(air_temperature, dew_point, cloud=0.0, model="clark-allen", hour=None, pressure=None):
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
    kelvin = within("Air temperature", air_temperature, -80.0, 60.0, "°C") + KELVIN
    emissivity = clear_emissivity(dew_point, model, hour, pressure) * cloud_factor(cloud)
    return plain(emissivity**0.25 * kelvin - KELVIN)


def from_long_wave(radiation):
    """Sky temperature from the measured long-wave radiation of the sky.

    Parameters
    ----------
    radiation : float or array
        From the whole sky on the level [W/m2], 20 to 700.

    Returns
    -------
    float or array
        Same shape [degC].

    Raises
    ------
    OutOfRange
        Outside the range.

    Examples
    --------
    >>> round(from_long_wave(341.032), 1)
    5.3
    """
    flux = within("Long-wave radiation of the sky", radiation, 20.0, 700.0, "W/m²")
    return (flux / STEFAN_BOLTZMANN) ** 0.25 - KELVIN


def long_wave(sky_temperature):
    """Long-wave radiation of the sky on the level: the inverse of `from_long_wave`.

    Parameters
    ----------
    sky_temperature : float or array
        [degC], -150 to 60.

    Returns
    -------
    float or array
        Same shape [W/m2].

    Raises
    ------
    OutOfRange
        Outside the range.

    Examples
    --------
    >>> round(from_long_wave(long_wave(-20.0)), 9)
    -20.0
    """
    kelvin = within("Sky temperature", sky_temperature, -150.0, 60.0, "°C") + KELVIN
    return STEFAN_BOLTZMANN * kelvin**4


def by_air_temperature(air_temperature):
    """Temperature of a clear sky where the dew point is not known.

    Parameters
    ----------
    air_temperature : float or array
        At the ground [degC], -80 to 60.

    Returns
    -------
    float or array
        Same shape [degC].

    Raises
    ------
    OutOfRange
        Outside the range.

    References
    ----------
    Swinbank 1963, as several public files have it.

    Examples
    --------
    >>> round(by_air_temperature(20.0), 2)
    3.91
    """
    kelvin = within("Air temperature", air_temperature, -80.0, 60.0, "°C") + KELVIN
    return _SWINBANK * kelvin**1.5 - KELVIN


_STEPS = 30


def view(slope):
    """Part of the sky that a slope sees; it sees ground in the rest.

    Parameters
    ----------
    slope : float or array
        From the horizontal [degrees], 0 to 90.

    Returns
    -------
    float or array
        Same shape [-].

    Raises
    ------
    OutOfRange
        Outside the range.

    Examples
    --------
    >>> round(view(60.0), 9)
    0.75
    """
    tilt = np.radians(within("Slope", slope, 0.0, 90.0, "degrees"))
    return plain(0.5 * (1.0 + np.cos(tilt)))


def roof_surface(
    air_temperature,
    sky_temperature,
    coefficient=8.0,
    u_value=0.0,
    indoor_temperature=20.0,
    emissivity=0.9,
    slope=0.0,
    gain=0.0,
):
    """Temperature of a roof surface in balance with sky, air and house.

    Parameters
    ----------
    air_temperature : float or array
        Outdoors [degC], -100 to 60.
    sky_temperature : float or array
        [degC], -150 to 60.
    coefficient : float or array
        Convective heat transfer coefficient [W/(m2 K)], 0 to 200; about 3
        for calm, 8 for a breeze, 20 for wind.
    u_value : float or array
        From indoor air to this surface [W/(m2 K)], 0 to 10.
    indoor_temperature : float or array
        [degC], -60 to 60.
    emissivity : float or array
        Of the surface for long waves [-], 0 to 1.
    slope : float or array
        From the horizontal [degrees], 0 to 90; what is not sky is ground at
        air temperature.
    gain : float or array
        Other heat: sun absorbed, frost that forms [W/m2], -2000 to 2000.

    Returns
    -------
    float or array
        Broadcast shape [degC].

    Raises
    ------
    OutOfRange
        Outside a range; when nothing holds the surface (all of coefficient,
        U and emissivity zero).
    NotConverged
        When Newton's method finds no balance.

    Notes
    -----
    e s (Ts^4 - Tsky^4) + h (Ts - Ta) = U (Ti - Ts) + gain, steady: no heat
    stored in the covering.

    Examples
    --------
    >>> round(roof_surface(0.0, -18.0, coefficient=10.0, u_value=0.2), 4)
    -4.4745
    """
    outdoor = within("Air temperature", air_temperature, COLDEST, 60.0, "°C") + KELVIN
    cold = within("Sky temperature", sky_temperature, -150.0, 60.0, "°C") + KELVIN
    convection = within("Heat transfer coefficient", coefficient, 0.0, 200.0, "W/(m² K)")
    through = within("U-value", u_value, 0.0, 10.0, "W/(m² K)")
    indoor = within("Indoor temperature", indoor_temperature, -60.0, 60.0, "°C") + KELVIN
    radiates = within("Emissivity", emissivity, 0.0, 1.0) * STEFAN_BOLTZMANN
    if np.any(convection + through + radiates == 0.0):
        raise OutOfRange("A roof surface without emissivity, heat transfer coefficient and U-value has no temperature.")
    sees = view(slope)
    gain = within("Heat gain", gain, -2000.0, 2000.0, "W/m²")
    given = radiates * (sees * cold**4 + (1.0 - sees) * outdoor**4) + convection * outdoor + through * indoor + gain
    surface = outdoor + 0.0 * given
    for _ in range(_STEPS):
        left = radiates * surface**4 + (convection + through) * surface - given
        step = left / (4.0 * radiates * surface**3 + convection + through)
        surface = surface - step
        if np.all(np.abs(step) < 1e-9):
            return plain(surface - KELVIN)
    raise NotConverged("The temperature of the roof surface was not found: check its sky, air and gains.")


#: Heat that frost gives up as it forms from vapor [J/kg], at 0 degC, from memory.
SUBLIMATION_HEAT = 2.834e6
_ROUNDS = 60


@dataclass(frozen=True)
class Night:
    """A night hour by hour: what `night` gives, each an array over the hours.

    Attributes
    ----------
    hour : array
        Since sunset [h]; the end of each step.
    air_temperature, frost_point, sky_temperature : array
        Of outdoor air, its frost (or dew) point, and of the sky [degC].
    roof_temperature, underside_temperature : array
        Top of the covering, and the face that vent air touches [degC].
    frost : array
        Frost or dew held under the covering [kg/m2].
    """

    hour: np.ndarray
    air_temperature: np.ndarray
    frost_point: np.ndarray
    sky_temperature: np.ndarray
    roof_temperature: np.ndarray
    underside_temperature: np.ndarray
    frost: np.ndarray


def night(
    outdoor,
    sky_cooling,
    coefficient=8.0,
    emissivity=0.9,
    resistance=0.0,
    u_value=0.126,
    indoor_temperature=21.1,
    under_share=0.4,
    hours=12,
    steps_per_hour=4,
):
    """A night of steady or changing weather over a vented covering.

    Parameters
    ----------
    outdoor : weather.Air
        Outdoor air: one for the night, or one for each step.
    sky_cooling : float or array
        How much colder the sky is than the air [K], 0 to 60; one, or one for
        each step, such as clouds that come in at midnight.
    coefficient : float
        Heat that outdoor air gives the covering, both faces together
        [W/(m2 K)], 0.5 to 200.
    emissivity : float
        Of the covering for long waves [-], 0 to 1.
    resistance : float
        Of a layer fixed under the covering [m2 K/W], 0 to 5.
    u_value : float
        From indoor air to the vent space [W/(m2 K)], 0 to 10.
    indoor_temperature : float
        [degC], -60 to 60.
    under_share : float
        Part of the coefficient at the lower face [-], 0.05 to 0.95.
    hours : int
        Length of the night [h], 1 to 24.
    steps_per_hour : int
        1 to 60.

    Returns
    -------
    Night

    Raises
    ------
    OutOfRange
        Outside a range, for a part of an hour or of a step, or when a series
        is not as long as the night.
    NotConverged
        When a step finds no balance.

    Notes
    -----
    Outdoor air in the vent space keeps its temperature and vapor pressure:
    a well-vented covering.  Vapor comes to the lower face as heat does
    (Lewis).  The covering stores no heat.  Frost warms the face it forms
    on, cools it as it goes, and never falls below none.  The share of 0.4
    at the lower face is an assumption with no source.

    Examples
    --------
    >>> from dryward.weather import Air
    >>> clear = night(Air(-6.667, 0.95), 20.0)
    >>> bool(clear.frost[-1] > 0.02)
    True
    """
    count = _whole("Length of the night", hours, 1, 24, "h") * _whole("Steps in each hour", steps_per_hour, 1, 60, "")
    step = HOUR / steps_per_hour
    temperature = _series("Air temperature", outdoor.temperature, count)
    pressure = _series("Vapor pressure", outdoor.vapor_pressure, count)
    cooling = _series("Sky cooling", within("Sky cooling", sky_cooling, 0.0, 60.0, "K"), count)
    faces = _Covering.checked(coefficient, emissivity, resistance, u_value, indoor_temperature, under_share)
    roof, underside, frost = np.empty(count), np.empty(count), np.empty(count)
    held, known = 0.0, {}
    for now in range(count):
        given = (temperature[now], temperature[now] - cooling[now], pressure[now])
        if given not in known:  # steady weather is worked out once
            known[given] = faces.frosting(*given)
        rate = max(known[given], -held / step)  # what is not there cannot leave
        roof[now], underside[now] = faces.balance(*given[:2], rate)
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
    air_temperature,
    sky_cooling,
    coefficient=8.0,
    emissivity=0.9,
    resistance=0.0,
    u_value=0.126,
    indoor_temperature=21.1,
    under_share=0.4,
):
    """Lower face of the covering while no frost forms on it.

    Frost begins where this is below the frost point of the air.

    Parameters
    ----------
    air_temperature : float or array
        [degC], -100 to 60.
    sky_cooling, coefficient, emissivity, resistance, u_value, indoor_temperature, under_share
        As in `night`; each a number or an array.

    Returns
    -------
    float or array
        Broadcast shape [degC].

    Raises
    ------
    OutOfRange
        Outside a range.

    Examples
    --------
    >>> round((-6.667 - dry_underside(-6.667, 20.0)) * 1.8, 1)  # degF below the air
    9.9
    """
    cooling = within("Sky cooling", sky_cooling, 0.0, 60.0, "K")
    faces = _Covering.checked(coefficient, emissivity, resistance, u_value, indoor_temperature, under_share)
    return faces.balance(air_temperature, air_temperature - cooling, 0.0)[1]


@dataclass(frozen=True)
class _Covering:
    """The two faces of a covering between sky, outdoor air and house."""

    upper: float
    lower: float
    layer: float
    through: float
    indoor: float
    emissivity: float

    @classmethod
    def checked(cls, coefficient, emissivity, resistance, u_value, indoor_temperature, under_share):
        """A covering from what a caller gives, each within its range."""
        total = within("Heat transfer coefficient", coefficient, 0.5, 200.0, "W/(m² K)")
        share = within("Share of the lower face", under_share, 0.05, 0.95)
        return cls(
            total * (1.0 - share),
            total * share,
            within("Resistance under the covering", resistance, 0.0, 5.0, "m² K/W"),
            within("U-value", u_value, 0.0, 10.0, "W/(m² K)"),
            within("Indoor temperature", indoor_temperature, -60.0, 60.0, "°C"),
            emissivity,
        )

    def balance(self, warm, cold, rate):
        """Temperatures of both faces while frost forms at a rate."""
        gain = rate * SUBLIMATION_HEAT
        # Air, house and frost act on the lower face; a layer stands between it and the top.
        inner = self.lower + self.through
        rest = (self.lower * warm + self.through * self.indoor + gain) / inner
        joined = inner / (1.0 + inner * self.layer)
        mixed = (self.upper * warm + joined * rest) / (self.upper + joined)
        top = roof_surface(mixed, cold, self.upper + joined, emissivity=self.emissivity)
        return top, (top + self.layer * inner * rest) / (1.0 + inner * self.layer)

    def frosting(self, warm, cold, vapor):
        """Rate at which frost forms, or goes as long as there is some [kg/(s m2)]."""
        film = film_permeance(self.lower, warm)

        def left(rate):
            return film * (vapor - air.saturation_vapor_pressure(self.balance(warm, cold, rate)[1])) - rate

        # More frost, warmer face, less frost: the rate lies between none and
        # that of the face without the heat of the frost.
        return _crossing(left, *sorted((0.0, left(0.0))))


def _crossing(left, low, high):
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
    raise NotConverged("The frost of a night was not found: check the air, the sky and the covering.")


def _series(what, value, count):
    array = np.asarray(value, dtype=float)
    if array.ndim == 0:
        return np.full(count, float(array))
    if array.shape != (count,):
        raise OutOfRange(f"{what} has {array.size} values; the night has {count} steps.")
    return array


def _whole(what, value, low, high, unit):
    number = within(what, value, low, high, unit)
    if number != int(number):
        raise OutOfRange(f"{what} is {number:g}; it must be a whole number.")
    return int(number)


def frost_margin(outdoor):
    """How far a face may be below outdoor air before that air frosts it.

    Parameters
    ----------
    outdoor : weather.Air

    Returns
    -------
    float or array
        Air temperature minus frost point, or dew point [K].

    Examples
    --------
    >>> from dryward.weather import Air
    >>> round(frost_margin(Air(-6.667, 0.9)) * 1.8, 1)  # degF
    2.2
    """
    return outdoor.temperature - outdoor.dew_point
