"""What was measured at one place, and the records of a whole file, in SI."""

from dataclasses import dataclass, field, replace

import numpy as np

from dryward import air
from dryward.checks import UnknownName, within


def saturation(temperature, over="auto"):
    """Saturation pressure where the temperature is known.

    Parameters
    ----------
    temperature : array of n
        [degC], -100 to 200, or not a number.
    over : {"auto", "water", "ice"}
        As in `air.saturation_vapor_pressure`.

    Returns
    -------
    array of n
        [Pa], not a number where the temperature is none.

    Examples
    --------
    >>> saturation(np.array([20.0, np.nan])).round(1).tolist()
    [2338.8, nan]
    """
    found = np.full(np.shape(temperature), np.nan)
    known = np.isfinite(temperature)
    found[known] = air.saturation_vapor_pressure(temperature[known], over=over)
    return found


@dataclass(frozen=True, eq=False)
class Record:
    """What was measured at one place.

    Parameters
    ----------
    place : str
        ``"indoors"``, ``"cavity"``, ``"outdoors"`` or any other word.
    time : array of n
        Standard time, rising, datetime64[s].
    temperature : array of n
        [degC], -60 to 95; not a number where nothing was read.
    vapor_pressure : array of n
        [Pa], 0 to 90 000; not a number where nothing was read.
    moisture_content : array of n, optional
        Of wood [mass %], 0 to 200.
    rain : array of n, optional
        Since the row before [m], 0 to 0.5.

    Examples
    --------
    >>> times = np.array(["2024-01-01T00", "2024-01-01T01"], dtype="datetime64[s]")
    >>> Record("cavity", times, np.array([1.0, 2.0]), np.array([500.0, 500.0])).interval
    3600.0
    """

    place: str
    time: np.ndarray = field(repr=False)
    temperature: np.ndarray = field(repr=False)
    vapor_pressure: np.ndarray = field(repr=False)
    moisture_content: np.ndarray | None = field(default=None, repr=False)
    rain: np.ndarray | None = field(default=None, repr=False)

    @property
    def relative_humidity(self):
        """[-]; over ice below 0 degC, as everywhere in this kit."""
        return self.vapor_pressure / saturation(self.temperature)

    @property
    def dew_point(self):
        """Dew point, or frost point below 0 degC [degC]."""
        known = np.isfinite(self.vapor_pressure) & (self.vapor_pressure > 1.0)
        found = np.full(self.time.size, np.nan)
        found[known] = air.dew_point(self.vapor_pressure[known])
        return found

    @property
    def interval(self):
        """The usual step between rows [s]."""
        return float(np.median(np.diff(self.time)).astype("timedelta64[s]").astype(float))

    def corrected(self, temperature=0.0, relative_humidity=0.0, hours=0.0):
        """The record with a sensor's offset and a wrong clock put right.

        Parameters
        ----------
        temperature : float
            Added to the temperature [K], -20 to 20.
        relative_humidity : float
            Added to the relative humidity [-], -0.5 to 0.5.
        hours : float
            Added to the time [h], -24 to 24.
        """
        warm = within("Temperature offset", temperature, -20.0, 20.0, "K")
        damp = within("Humidity offset", relative_humidity, -0.5, 0.5, "%")
        late = within("Time shift", hours, -24.0, 24.0, "h")
        vapor = np.maximum(self.relative_humidity + damp, 0.0) * saturation(self.temperature + warm)
        shift = np.timedelta64(round(late * 3600), "s")
        return replace(self, time=self.time + shift, temperature=self.temperature + warm, vapor_pressure=vapor)


@dataclass(frozen=True, eq=False)
class Readings:
    """A file, read: its records, what was assumed, what was odd.

    Parameters
    ----------
    records : tuple of Record
        One for each place.
    guess : Guess
        What was assumed.
    notes : tuple of str
        What was left out or filled, in sentences.

    Examples
    --------
    >>> from dryward.weather.loggers import read, sample
    >>> with sample("cause-air-leak") as path:
    ...     read(path).places
    ('indoors', 'cavity', 'outdoors')
    """

    records: tuple
    guess: object
    notes: tuple = ()

    @property
    def places(self):
        """The places there are records of."""
        return tuple(record.place for record in self.records)

    def __getitem__(self, place):
        for record in self.records:
            if record.place == place:
                return record
        raise UnknownName("place in the readings", place, self.places)
