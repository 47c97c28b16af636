"""The air indoors: rules that give it from the air outdoors.

Each rule is an object with ``at(weather)``: temperature and vapor pressure
indoors, one pair for every hour of an `HourlyWeather` or every month of a
`MonthlyClimate`.  Rules that ask for a daily mean take the mean of the 24
hours up to and including the hour itself; the weather is taken to repeat.
"""

from dataclasses import dataclass, field
from typing import Protocol, TypeAlias, overload

import numpy as np
from numpy.typing import ArrayLike

from dryward import air
from dryward.air.vapor import Air, Value
from dryward.checks import Floats, OutOfRange, UnknownName, single, within
from dryward.language import message
from dryward.units import DAY, KELVIN, written
from dryward.weather.climate import HourlyWeather, MonthlyClimate

__all__ = [
    "constant",
    "humidity_class",
    "by_outdoor_temperature",
    "by_daily_mean",
    "heated_and_cooled",
    "moisture_balance",
    "measured",
    "damper",
    "steady_humidity",
    "vapor_excess",
    "fresh_air_needed",
    "moisture_by_bedrooms",
    "Rule",
]


class Rule(Protocol):
    """What every rule for room air can do."""

    def at(self, weather: HourlyWeather | MonthlyClimate, /) -> tuple[Floats, Floats]:
        """Temperature [degC] and vapor pressure [Pa] indoors, in the shape of the weather."""


#: The air of a room: one state, or by a rule.
Room: TypeAlias = Air | Rule

# EN 15026 annex C = ISO 13788:2012 A.1, from memory: relative humidity at
# -10 degC outdoors and below, and at 20 degC and above.
_OCCUPANCY = {"normal": (0.30, 0.60), "high": (0.40, 0.70)}
# The same annex: daily mean outdoors below which a room is at its winter's and
# above which at its summer's temperature [degC].
_SEASONS = (10.0, 20.0)
#: What the same annex has between normal and high occupancy, at any outdoor temperature [-]; from memory.
DAMPER = 0.10


# --- what the rules compute ------------------------------------------------------

# ISO 13788 annex A: upper limit of the vapor pressure excess of each class
# at 0 degC outdoors and below [Pa]; it falls to nothing at 20 degC.
# From memory; class 3 read in a secondary source that uses it.
CLASS_EXCESS = {1: 270.0, 2: 540.0, 3: 810.0, 4: 1080.0}
_CLASS_FADES_AT = 20.0


def _day_mean(weather: HourlyWeather | MonthlyClimate, series: Floats) -> Floats:
    """Mean over a day for hours; monthly means pass as they are."""
    if isinstance(weather, MonthlyClimate):
        return series
    span = min(24, series.size)
    wrapped = np.concatenate([series[-span + 1 :], series]) if span > 1 else series
    return np.convolve(wrapped, np.full(span, 1.0 / span), mode="valid")


def _limited(temperature: Floats, vapor_pressure: Floats) -> tuple[Floats, Floats]:
    """More than saturation ends as water on the windows, not in the air."""
    return temperature, np.minimum(vapor_pressure, air.saturation_vapor_pressure(temperature))


#: Points (outdoor temperature [degC], value), straight between.
Curve = tuple[tuple[float, float], ...]


def _on(curve: Curve, outdoors: Floats) -> Floats:
    return np.interp(outdoors, [point[0] for point in curve], [point[1] for point in curve])


@dataclass(frozen=True)
class Constant:
    """The same room air all year; see `constant`."""

    air: Air

    def at(self, weather: HourlyWeather | MonthlyClimate) -> tuple[Floats, Floats]:
        """Temperature [degC] and vapor pressure [Pa] indoors, in the shape of the weather."""
        like = np.ones_like(weather.temperature)
        return like * self.air.temperature, like * self.air.vapor_pressure


@dataclass(frozen=True)
class HumidityClass:
    """Outdoor vapor plus an excess that fades with warmth; see `humidity_class`."""

    number: int
    temperature: float = 20.0
    factor: float = 1.0

    def excess(self, outdoor_temperature: ArrayLike) -> Floats:
        """Vapor pressure indoors above outdoors [Pa], by outdoor temperature [degC], any shape."""
        share = np.clip(1.0 - np.asarray(outdoor_temperature, dtype=float) / _CLASS_FADES_AT, 0.0, 1.0)
        return self.factor * CLASS_EXCESS[self.number] * share

    def at(self, weather: HourlyWeather | MonthlyClimate) -> tuple[Floats, Floats]:
        """Temperature [degC] and vapor pressure [Pa] indoors, in the shape of the weather."""
        room = np.full_like(weather.temperature, self.temperature)
        return _limited(
            room, _day_mean(weather, weather.vapor_pressure) + self.excess(_day_mean(weather, weather.temperature))
        )


@dataclass(frozen=True)
class ByOutdoorTemperature:
    """Room air that follows the daily mean outdoors; see `by_outdoor_temperature` and `heated_and_cooled`."""

    temperatures: Curve
    humidities: Curve

    def at(self, weather: HourlyWeather | MonthlyClimate) -> tuple[Floats, Floats]:
        """Temperature [degC] and vapor pressure [Pa] indoors, in the shape of the weather."""
        day = _day_mean(weather, weather.temperature)
        warmth = _on(self.temperatures, day)
        return warmth, air.vapor_pressure(warmth, _on(self.humidities, day))


@dataclass(frozen=True)
class MoistureBalance:
    """What the house makes against what fresh air takes away; see `moisture_balance`."""

    production: float
    fresh_air: float
    temperature: float = 21.0

    def at(self, weather: HourlyWeather | MonthlyClimate) -> tuple[Floats, Floats]:
        """Temperature [degC] and vapor pressure [Pa] indoors, in the shape of the weather."""
        room = np.full_like(weather.temperature, self.temperature)
        gain = vapor_excess(self.production, self.fresh_air, self.temperature)
        return _limited(room, _day_mean(weather, weather.vapor_pressure) + gain)


@dataclass(frozen=True)
class Damper:
    """The air of another rule with its relative humidity moved; see `damper`."""

    rule: Rule
    by: float

    def at(self, weather: HourlyWeather | MonthlyClimate) -> tuple[Floats, Floats]:
        """Temperature [degC] and vapor pressure [Pa] indoors, in the shape of the weather."""
        warmth, vapor = self.rule.at(weather)
        return _limited(warmth, np.maximum(vapor + self.by * air.saturation_vapor_pressure(warmth), 0.0))


@dataclass(frozen=True, eq=False)
class Measured:
    """Room air as somebody read it; see `measured`."""

    temperature: Floats = field(repr=False)
    vapor_pressure: Floats = field(repr=False)

    def at(self, weather: HourlyWeather | MonthlyClimate) -> tuple[Floats, Floats]:
        """Temperature [degC] and vapor pressure [Pa] indoors, in the shape of the weather."""
        if weather.temperature.size != self.temperature.size:
            read, hours = self.temperature.size, weather.temperature.size
            raise OutOfRange(message("weather.room-of-other-hours", count=read, hours=hours))
        return self.temperature, self.vapor_pressure


# --- the rules -------------------------------------------------------------------


def constant(air: Air) -> Constant:
    """The same room air in every hour and month.

    Parameters
    ----------
    air : Air
        One state of air.

    Returns
    -------
    Constant
        A rule with ``at(weather)``.

    Examples
    --------
    >>> from dryward.weather import Air, HourlyWeather
    >>> warmth, vapor = constant(Air(21.0, 0.4)).at(HourlyWeather.constant(Air(0.0, 0.8), hours=3))
    >>> float(warmth[2])
    21.0
    """
    return Constant(air)


def humidity_class(n: int, temperature: float = 20.0, factor: float = 1.0) -> HumidityClass:
    """Indoor humidity by class of use: outdoor vapor plus the upper limit of the class.

    Parameters
    ----------
    n : int
        1 (storage), 2 (offices, dwellings with good ventilation), 3
        (dwellings not known further), 4 (kitchens, sports halls).
    temperature : float, optional
        Of the room [degC], 5 to 40.
    factor : float, optional
        On the excess [-], 1 to 1.5; the 2001 edition used 1.1.

    Returns
    -------
    HumidityClass
        A rule with ``at(weather)``.

    Raises
    ------
    OutOfRange
        For another class or outside a range.

    Notes
    -----
    Vapor above saturation at the room's temperature is taken to end on the
    windows.  Class 5 (laundries, pools) has no upper limit, so it gives no
    number: use `constant` with the air measured there.

    References
    ----------
    ISO 13788:2012 annex A, limits from memory.

    Examples
    --------
    >>> float(humidity_class(3).excess(10.0))
    405.0
    """
    if n == 5:
        raise OutOfRange(message("weather.class-without-limit"))
    if n not in CLASS_EXCESS:
        raise OutOfRange(message("weather.no-humidity-class", given=str(n)[:40]))
    return HumidityClass(
        int(n),
        within("Room temperature", temperature, 5.0, 40.0, "degC"),
        within("Factor on the excess", factor, 1.0, 1.5),
    )


def by_outdoor_temperature(occupancy: str = "normal") -> ByOutdoorTemperature:
    """Room air from the daily mean outdoors, for a dwelling.

    20 degC up to 10 degC outdoors, rising to 25 degC at 20 degC; 30 % up to
    -10 degC outdoors, rising to 60 % at 20 degC; ten points more for a
    crowded dwelling.

    Parameters
    ----------
    occupancy : {"normal", "high"}

    Returns
    -------
    ByOutdoorTemperature
        A rule with ``at(weather)``.

    Raises
    ------
    UnknownName
        For another occupancy.

    References
    ----------
    EN 15026:2007 annex C (ISO 13788:2012 A.1), from memory.

    Examples
    --------
    >>> from dryward.weather import Air, HourlyWeather
    >>> warmth, vapor = by_outdoor_temperature().at(HourlyWeather.constant(Air(0.0, 0.8), hours=24))
    >>> round(float(vapor[0] / air.saturation_vapor_pressure(20.0)), 3)
    0.4
    """
    if occupancy not in _OCCUPANCY:
        raise UnknownName("occupancy", occupancy, _OCCUPANCY)
    low, high = _OCCUPANCY[occupancy]
    return ByOutdoorTemperature(tuple(zip(_SEASONS, (20.0, 25.0), strict=True)), ((-10.0, low), (20.0, high)))


def by_daily_mean(air_conditioned: bool = True) -> ByOutdoorTemperature:
    """Design room air from the daily mean outdoors, on the damp side of usual.

    40 % up to -10 degC outdoors, one point more for each kelvin, 70 % from
    20 degC.  21.1 degC in the heating season; when it is warm 2.8 K above
    outdoors, at most 23.9 degC where there is air conditioning.

    ASHRAE Standard 160, simplified method, from memory.
    """
    top = ((21.1, 23.9),) if air_conditioned else ((60.0, 62.8),)
    return ByOutdoorTemperature(((18.3, 21.1), *top), ((-10.0, 0.40), (20.0, 0.70)))


def heated_and_cooled(winter: Air, summer: Air) -> ByOutdoorTemperature:
    """Room air of a house that is heated in winter and cooled in summer.

    The winter air up to a daily mean of 10 degC outdoors, the summer air from
    20 degC on; temperature and relative humidity go straight between.

    The two outdoor temperatures are those between which EN 15026:2007 annex C
    raises the temperature of a room; from memory.
    """
    return ByOutdoorTemperature(
        tuple(zip(_SEASONS, (winter.temperature, summer.temperature), strict=True)),
        tuple(zip(_SEASONS, (winter.relative_humidity, summer.relative_humidity), strict=True)),
    )


def damper(rule: Rule, by: float = DAMPER) -> Damper:
    """The air of another rule with so much relative humidity added [-], -0.95 to 0.95; between dry and saturated."""
    return Damper(rule, within("Humidity added", by, -0.95, 0.95, "%"))


def moisture_balance(production: float, fresh_air: float, temperature: float = 21.0) -> MoistureBalance:
    """Room air from what the house makes and what fresh air takes away.

    Parameters
    ----------
    production : float
        Water given off by people, cooking, washing [kg/s], 0 to 0.01 (860 kg a day).
    fresh_air : float
        Outdoor air that comes in, fans and leaks together [m3/s], above 0 to 10,
        at room temperature.
    temperature : float, optional
        Of the room [degC], 5 to 40.

    Returns
    -------
    MoistureBalance
        A rule with ``at(weather)``.

    Raises
    ------
    OutOfRange
        For more water, more air or another room than these.

    Notes
    -----
    A steady balance on the daily mean: no storage in walls and furniture.
    Vapor above saturation is taken to end on the windows.

    Examples
    --------
    >>> from dryward.weather import Air, HourlyWeather
    >>> rule = moisture_balance(10 / 86400, 0.0212, 21.1)
    >>> warmth, vapor = rule.at(HourlyWeather.constant(Air(-6.67, 0.8), hours=24))
    >>> round(float(vapor[0] / air.saturation_vapor_pressure(21.1)), 2)
    0.41
    """
    vapor_excess(production, fresh_air, temperature)  # the ranges are checked there
    return MoistureBalance(float(production), float(fresh_air), float(temperature))


def measured(temperature: ArrayLike, vapor_pressure: ArrayLike) -> Measured:
    """Room air as it was read, hour by hour, for weather of the same hours.

    Vapor pressure up to 5 % above saturation is taken as that of a wet sensor.
    """
    warmth = np.atleast_1d(within("Room temperature", np.asarray(temperature), -20.0, 60.0, "degC"))
    vapor = np.atleast_1d(within("Vapor pressure in the room", np.asarray(vapor_pressure), 0.0, 20_000.0, "Pa"))
    if warmth.shape != vapor.shape:
        raise OutOfRange(message("weather.room-series", temperatures=str(warmth.size), pressures=str(vapor.size)))
    limit = air.saturation_vapor_pressure(warmth)
    if np.any(vapor > 1.05 * limit):
        hour = int(np.argmax(vapor / limit))
        raise OutOfRange(
            message(
                "weather.room-above-saturation",
                hour=str(hour + 1),
                pressure=written(vapor[hour], ".0f", "Pa"),
                temperature=written(warmth[hour], ".1f", "degC"),
                most=written(limit[hour], ".0f", "Pa"),
            )
        )
    return Measured(warmth, np.minimum(vapor, limit))


# --- a house as a tank: people pour vapor in, fresh air carries it out ------------

# ASHRAE Standard 160, intermediate method: water given off by number of
# bedrooms [kg/day], one more for each further bedroom.  From memory.
_BEDROOMS = (8.0, 12.0, 14.0, 15.0)


@overload
def vapor_excess(production: float, fresh_air: float, temperature: float = 21.0) -> float: ...
@overload
def vapor_excess(production: float | Floats, fresh_air: Floats, temperature: float = 21.0) -> Floats: ...
@overload
def vapor_excess(production: Floats, fresh_air: float, temperature: float = 21.0) -> Floats: ...
def vapor_excess(production: float | Floats, fresh_air: float | Floats, temperature: float = 21.0) -> float | Floats:
    """How far the vapor pressure indoors stands above outdoors.

    Steady balance of an ideal gas: production [kg/s] = fresh air [m3/s, at
    room temperature] x difference of vapor pressure / (gas constant of vapor
    x absolute temperature).
    """
    made = within("Moisture production", production, 0.0, 0.01, "kg/s")
    flow = within("Fresh air", fresh_air, 0.0, 10.0, "m3/s", above=True)
    kelvin = within("Room temperature", temperature, 5.0, 40.0, "degC") + KELVIN
    return made / flow * air.VAPOR_GAS_CONSTANT * kelvin


@overload
def steady_humidity(production: float, fresh_air: float, outdoor: Air, temperature: float = 21.0) -> float: ...
@overload
def steady_humidity(
    production: float | Floats, fresh_air: Floats, outdoor: Air, temperature: float = 21.0
) -> Floats: ...
@overload
def steady_humidity(production: Floats, fresh_air: float, outdoor: Air, temperature: float = 21.0) -> Floats: ...
def steady_humidity(
    production: float | Floats, fresh_air: float | Floats, outdoor: Air, temperature: float = 21.0
) -> float | Floats:
    """Relative humidity indoors from production, fresh air and outdoor air; above 1 the windows run with water."""
    inside = outdoor.vapor_pressure + vapor_excess(production, fresh_air, temperature)
    return inside / air.saturation_vapor_pressure(temperature)


def fresh_air_needed(production: Value, relative_humidity: float, outdoor: Air, temperature: float = 21.0) -> Value:
    """Fresh air [m3/s at room temperature] that holds the room at a relative humidity."""
    made = within("Moisture production", production, 0.0, 0.01, "kg/s")
    warmth = within("Room temperature", temperature, 5.0, 40.0, "degC")
    room = air.vapor_pressure(warmth, relative_humidity) - outdoor.vapor_pressure
    if np.any(room <= 0):
        outside = written(np.max(outdoor.vapor_pressure), ".0f", "Pa")
        raise OutOfRange(message("weather.no-air-dries", pressure=outside))
    return made * air.VAPOR_GAS_CONSTANT * (warmth + KELVIN) / room


# C3H8 + 5 O2 -> 3 CO2 + 4 H2O: molar masses of one of propane and of four of water [g/mol], from memory.
_PROPANE, _ITS_WATER = 44.097, 4 * 18.015
#: Water that burning propane makes, over the propane [-].
WATER_OF_PROPANE = _ITS_WATER / _PROPANE
#: Heat that a kilogram of propane gives, its water staying vapor [J/kg]; from memory.
HEAT_OF_PROPANE = 46.4e6


def burner_water(heat: float) -> float:
    """Water that an open propane burner of so much heat [W] puts into the room [kg/s].

    Examples
    --------
    By hand: 4.64 kW burn 0.1 g of propane a second, which makes 1.634 times as much water.

    >>> round(burner_water(4640.0) * 1e6, 1)
    163.4
    """
    return single("Burner heat", heat, 0.0, 1e6, "W") / HEAT_OF_PROPANE * WATER_OF_PROPANE


def moisture_by_bedrooms(bedrooms: int) -> float:
    """Design water production [kg/s] of a dwelling by its number of bedrooms; ASHRAE Standard 160, from memory."""
    count = int(within("Number of bedrooms", bedrooms, 1, 12))
    last = len(_BEDROOMS)
    return (_BEDROOMS[min(count, last) - 1] + max(0, count - last)) / DAY
