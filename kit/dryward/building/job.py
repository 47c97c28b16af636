"""A job: a roof, the place it stands in, the room under it, and how it is built.

Everything a check of somebody's own roof needs, as plain numbers that can be
saved.  What the numbers mean physically is settled in `report.review`.
"""

from dataclasses import dataclass, field

from dryward.building.assembly import Assembly
from dryward.checks import OutOfRange, within

PLACES = ("demo", "file", "means")
#: Lowest and highest temperature of a room [degC].
ROOM_TEMPERATURES = (10, 35)
ROOMS = ("constant", "class", "by outdoor temperature", "moisture balance")
#: What the year is designed for: as usual, a damper room, a colder winter.
DESIGNS = ("typical", "damp house", "cold winter")


def _choice(what, value, known):
    if value not in known:
        raise OutOfRange(f"{what} must be one of {', '.join(map(str, known))}, not {str(value)[:40]!r}.")
    return value


@dataclass(frozen=True)
class Place:
    """Where the roof stands.

    Parameters
    ----------
    kind : {"demo", "file", "means"}
        An invented place, an EPW weather file, or twelve typed means.
    id : str
        Of the invented place, or the path of the weather file.
    temperature, relative_humidity : tuple of 12
        Typed monthly means [degC] and [-].
    zone : str
        Climate zone of the code, such as ``"6"`` or ``"4C"``; empty if unknown.

    Raises
    ------
    OutOfRange
        For another kind, or not twelve means.

    Examples
    --------
    >>> Place().id
    'cold'
    """

    kind: str = "demo"
    id: str = "cold"
    temperature: tuple = ()
    relative_humidity: tuple = ()
    zone: str = ""

    def __post_init__(self):
        _choice("The kind of place", self.kind, PLACES)
        for name, what, low, high, unit in (
            ("temperature", "Monthly temperature", -60, 60, "°C"),
            ("relative_humidity", "Monthly relative humidity", 0, 1, "%"),
        ):
            values = tuple(within(what, float(v), low, high, unit) for v in getattr(self, name))
            if len(values) != (12 if self.kind == "means" else 0):
                raise OutOfRange(f"{what} needs 12 values for typed means and none otherwise; {len(values)} are given.")
            object.__setattr__(self, name, values)


@dataclass(frozen=True)
class Room:
    """The air indoors.

    Parameters
    ----------
    kind : str
        One of `ROOMS`.  "constant" holds one air in the heating season and
        one when it is warm outside.
    temperature : float
        For "constant" in the heating season, for "class" and "moisture
        balance" all year [degC], 10 to 35.
    relative_humidity : float
        In the heating season; for "constant" [-], 0.05 to 0.95.
    summer_temperature : float
        When it is warm outside; for "constant" [degC], 10 to 35.
    summer_relative_humidity : float
        When it is warm outside; for "constant" [-], 0.05 to 0.95.
    humidity_class : int
        For "class", 1 to 4.
    occupancy : {"normal", "high"}
        For "by outdoor temperature".
    production : float
        For "moisture balance" [kg/s], 0 to 0.001.
    fresh_air : float
        For "moisture balance" [m3/s], 0.001 to 1.

    Raises
    ------
    OutOfRange
        For another kind or a value out of range.

    Examples
    --------
    >>> Room().relative_humidity
    0.4
    """

    kind: str = "constant"
    temperature: float = 21.0
    relative_humidity: float = 0.4
    # A house cooled in summer: common practice, no source.
    summer_temperature: float = 24.0
    summer_relative_humidity: float = 0.5
    humidity_class: int = 2
    occupancy: str = "normal"
    production: float = 10 / 86400
    fresh_air: float = 76 / 3600

    def __post_init__(self):
        put = object.__setattr__
        _choice("The rule for room air", self.kind, ROOMS)
        _choice("The occupancy", self.occupancy, ("normal", "high"))
        _choice("The humidity class", self.humidity_class, (1, 2, 3, 4))
        for name, what, low, high, unit in (
            ("temperature", "Room temperature", *ROOM_TEMPERATURES, "°C"),
            ("relative_humidity", "Room humidity", 0.05, 0.95, "%"),
            ("summer_temperature", "Room temperature in summer", *ROOM_TEMPERATURES, "°C"),
            ("summer_relative_humidity", "Room humidity in summer", 0.05, 0.95, "%"),
            ("production", "Moisture production", 0, 0.001, "kg/s"),
            ("fresh_air", "Fresh air", 0.001, 1, "m³/s"),
        ):
            put(self, name, within(what, getattr(self, name), low, high, unit))


@dataclass(frozen=True)
class Tightness:
    """The blower-door test, and how much of the leak lies in this roof.

    Parameters
    ----------
    ach50 : float
        Air changes at 50 Pa [1/h], 0 to 50.
    volume : float
        Of the house [m3], 50 to 10 000.
    area : float
        Of the roof [m2], 1 to 5000.
    share : float
        Part of the leak that lies in the roof [-], 0 to 1.
    height : float
        Of the roof above the neutral level [m], 0 to 20.

    Raises
    ------
    OutOfRange
        Outside a range.

    Examples
    --------
    >>> Tightness(3.0).share
    0.2
    """

    ach50: float
    volume: float = 566.0
    area: float = 56.0
    share: float = 0.2
    height: float = 3.7

    def __post_init__(self):
        for name, what, low, high, unit in (
            ("ach50", "Air changes at 50 Pa", 0, 50, "1/h"),
            ("volume", "Volume of the house", 50, 10000, "m³"),
            ("area", "Area of the roof", 1, 5000, "m²"),
            ("share", "Share of the leak in the roof", 0, 1, "%"),
            ("height", "Height above the neutral level", 0, 20, "m"),
        ):
            object.__setattr__(self, name, within(what, getattr(self, name), low, high, unit))


@dataclass(frozen=True)
class Vent:
    """The vent space: its length and its openings, over the whole eave and ridge.

    Parameters
    ----------
    length : float
        Eave to ridge along the slope [m], 0.5 to 30.
    inlet_area, outlet_area : float
        Net free area per meter of eave and of ridge [m2/m], above 0 to 0.5.

    Raises
    ------
    OutOfRange
        Outside a range.

    Examples
    --------
    >>> Vent().length
    5.0
    """

    length: float = 5.0
    inlet_area: float = 0.01
    outlet_area: float = 0.01

    def __post_init__(self):
        put = object.__setattr__
        put(self, "length", within("Length of the vent space", self.length, 0.5, 30, "m"))
        for name in ("inlet_area", "outlet_area"):
            what = f"{name.split('_')[0].capitalize()} area"
            put(self, name, within(what, getattr(self, name), 0, 0.5, "m²/m", above=True))


@dataclass(frozen=True)
class Job:
    """A roof with all that a check of it needs.

    Parameters
    ----------
    assembly : Assembly
    place : Place
    room : Room
    tightness : Tightness or None
        None: no air leak is counted.
    vent : Vent or None
        Of the vent space of the assembly, if it has one.
    azimuth : float
        Way the slope faces, from north over east [degrees], 0 to 360.
    absorptance : float
        Of the covering for sunlight [-], 0.05 to 0.98.
    start_humidity : float
        Of all layers at the start of the hourly years [-], 0.1 to 1.
    years : int
        Most years of the hourly run, 1 to 10; it ends when the year repeats,
        and the last is judged.
    design : str
        One of `DESIGNS`: what the year of all checks is.

    Raises
    ------
    OutOfRange
        Outside a range, or for another design year.

    Examples
    --------
    >>> from dryward.building import preset
    >>> Job(preset("vented-vault")).years
    5
    """

    assembly: Assembly
    place: Place = field(default_factory=Place)
    room: Room = field(default_factory=Room)
    tightness: Tightness | None = None
    vent: Vent | None = None
    azimuth: float = 0.0
    absorptance: float = 0.7
    start_humidity: float = 0.8
    years: int = 5
    design: str = "typical"

    def __post_init__(self):
        put = object.__setattr__
        _choice("The design year", self.design, DESIGNS)
        put(self, "azimuth", within("Azimuth", self.azimuth, 0, 360, "degrees"))
        put(self, "absorptance", within("Solar absorptance", self.absorptance, 0.05, 0.98))
        put(self, "start_humidity", within("Humidity at the start", self.start_humidity, 0.1, 1, "%"))
        put(self, "years", int(within("The number of years", self.years, 1, 10)))
