"""What the rules for room air compute; `dryward.weather.indoor` says what each is and where it comes from."""

from dataclasses import dataclass, field

import numpy as np

from dryward import air
from dryward.checks import OutOfRange
from dryward.weather.house_moisture import vapor_excess
from dryward.weather.monthly import MonthlyClimate

# ISO 13788 annex A: upper limit of the vapor pressure excess of each class
# at 0 degC outdoors and below [Pa]; it falls to nothing at 20 degC.
# From memory; class 3 read in a secondary source that uses it.
CLASS_EXCESS = {1: 270.0, 2: 540.0, 3: 810.0, 4: 1080.0}
_CLASS_FADES_AT = 20.0


def _day_mean(weather, series):
    """Mean over a day for hours; monthly means pass as they are."""
    if isinstance(weather, MonthlyClimate):
        return series
    span = min(24, series.size)
    wrapped = np.concatenate([series[-span + 1 :], series]) if span > 1 else series
    return np.convolve(wrapped, np.full(span, 1.0 / span), mode="valid")


def _limited(temperature, vapor_pressure):
    """More than saturation ends as water on the windows, not in the air."""
    return temperature, np.minimum(vapor_pressure, air.saturation_vapor_pressure(temperature))


@dataclass(frozen=True)
class Constant:
    """The same room air all year; see `constant`."""

    air: object

    def at(self, weather):
        """Temperature [degC] and vapor pressure [Pa] indoors, in the shape of the weather."""
        like = np.ones_like(weather.temperature)
        return like * self.air.temperature, like * self.air.vapor_pressure


@dataclass(frozen=True)
class HumidityClass:
    """Outdoor vapor plus an excess that fades with warmth; see `humidity_class`."""

    number: int
    temperature: float = 20.0
    factor: float = 1.0

    def excess(self, outdoor_temperature):
        """Vapor pressure indoors above outdoors [Pa], by outdoor temperature [degC], any shape."""
        share = np.clip(1.0 - np.asarray(outdoor_temperature, dtype=float) / _CLASS_FADES_AT, 0.0, 1.0)
        return self.factor * CLASS_EXCESS[self.number] * share

    def at(self, weather):
        """Temperature [degC] and vapor pressure [Pa] indoors, in the shape of the weather."""
        room = np.full_like(weather.temperature, self.temperature)
        return _limited(
            room, _day_mean(weather, weather.vapor_pressure) + self.excess(_day_mean(weather, weather.temperature))
        )


@dataclass(frozen=True)
class ByOutdoorTemperature:
    """Room air that follows the daily mean outdoors.

    See `by_outdoor_temperature`, `by_daily_mean` and `heated_and_cooled`.
    The two curves are (outdoor temperature [degC], value) points, straight between.
    """

    temperatures: tuple
    humidities: tuple

    def at(self, weather):
        """Temperature [degC] and vapor pressure [Pa] indoors, in the shape of the weather."""
        day = _day_mean(weather, weather.temperature)
        warmth = np.interp(day, *zip(*self.temperatures, strict=True))
        return warmth, air.vapor_pressure(warmth, np.interp(day, *zip(*self.humidities, strict=True)))


@dataclass(frozen=True)
class MoistureBalance:
    """What the house makes against what fresh air takes away; see `moisture_balance`."""

    production: float
    fresh_air: float
    temperature: float = 21.0

    def at(self, weather):
        """Temperature [degC] and vapor pressure [Pa] indoors, in the shape of the weather."""
        room = np.full_like(weather.temperature, self.temperature)
        gain = vapor_excess(self.production, self.fresh_air, self.temperature)
        return _limited(room, _day_mean(weather, weather.vapor_pressure) + gain)


@dataclass(frozen=True)
class Damper:
    """The air of another rule with its relative humidity moved; see `damper`."""

    rule: object
    by: float

    def at(self, weather):
        """Temperature [degC] and vapor pressure [Pa] indoors, in the shape of the weather."""
        warmth, vapor = self.rule.at(weather)
        return _limited(warmth, np.maximum(vapor + self.by * air.saturation_vapor_pressure(warmth), 0.0))


@dataclass(frozen=True, eq=False)
class Measured:
    """Room air as somebody read it; see `measured`."""

    temperature: np.ndarray = field(repr=False)
    vapor_pressure: np.ndarray = field(repr=False)

    def at(self, weather):
        """Temperature [degC] and vapor pressure [Pa] indoors, in the shape of the weather."""
        if weather.temperature.size != self.temperature.size:
            raise OutOfRange(
                f"The room was read in {self.temperature.size} hours, but the weather has {weather.temperature.size}."
            )
        return self.temperature, self.vapor_pressure
