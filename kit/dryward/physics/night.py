"""A clear night over a vented covering: frost with no water from the house."""

from dataclasses import dataclass

import numpy as np

from dryward import air
from dryward.checks import NotConverged, OutOfRange, within
from dryward.physics import sky
from dryward.physics.moving_air import film_permeance
from dryward.units import HOUR

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
        top = sky.roof_surface(mixed, cold, self.upper + joined, emissivity=self.emissivity)
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
