"""Jobs: a roof, the place it stands in, the room under it, how it is built, and its file.

Everything a check of somebody's own roof needs, as plain numbers that can be
saved.  What the numbers mean physically is settled in `report.review`.

A job file holds a whole assembly in the table ``[assembly]``, so it opens
without anything else.  A plain assembly file opens as a job too, with a
place and a room that the reader must then choose.
"""

import dataclasses
from dataclasses import dataclass, field
from pathlib import Path

import tomli_w

from dryward import storage
from dryward.building.assembly import FORMAT as ASSEMBLY
from dryward.building.assembly import Assembly, as_table, from_table, parse_table
from dryward.building.schema import toml
from dryward.checks import BadFile, OutOfRange, PlainError, ended, within
from dryward.units import quantity as in_si

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


# Tables of the file: what they make, and which words may carry a unit.
_TABLES = {
    "place": (Place, {"temperature": "temperature", "relative_humidity": "relative humidity"}),
    "room": (
        Room,
        {
            "temperature": "temperature",
            "relative_humidity": "relative humidity",
            "summer_temperature": "temperature",
            "summer_relative_humidity": "relative humidity",
            "fresh_air": "air flow",
        },
    ),
    "tightness": (
        Tightness,
        {"volume": "volume", "area": "area", "share": "relative humidity", "height": "length"},
    ),
    "vent": (Vent, {"length": "length"}),
}
_TOP = {"azimuth": None, "absorptance": None, "start_humidity": "relative humidity", "years": None, "design": None}


def _from_1(table):
    """Version 1 knew one room air, and took this one for the warmest month of every roof; its year was the typical."""
    room = table.get("room", {})
    if isinstance(room, dict):  # anything else is refused where it is read
        room = {"summer_temperature": 24.0, "summer_relative_humidity": 0.5, **room}
    return {"design": "typical", **table, "room": room}


#: A whole job.
FORMAT = storage.Format("dryward job", 2, {1: _from_1})


def parse_job(text, name="the file"):
    """A job from the text of a job file or of an assembly file.

    Parameters
    ----------
    text : str
        TOML.
    name : str, optional
        What the message calls the file.

    Returns
    -------
    Job

    Raises
    ------
    BadFile
        One sentence with the place and what is wrong there.

    Examples
    --------
    >>> from dryward.building import preset
    >>> parse_job(job_text(Job(preset("vented-vault")))).place.id
    'cold'
    """
    name = str(name)[-60:]
    table = toml(text, name)
    if table.get("format") != FORMAT.name:
        return Job(parse_table(table, name))  # or a sentence about what it is not
    try:
        return _job(table)
    except PlainError as error:
        raise BadFile(ended(f"{name}: {error}")) from None


def _job(table):
    table = FORMAT.current(table)
    for word in table:
        if word not in ("format", "version", "assembly", *_TABLES, *_TOP):
            raise BadFile(f'the top of the file: the word "{word[:40]}" is not known')
    if not isinstance(table.get("assembly"), dict):
        raise BadFile("the table [assembly] is missing")
    parts = {key: _part(key, table[key]) for key in _TABLES if key in table}
    top = {key: _value(key, table[key], quantity) for key, quantity in _TOP.items() if key in table}
    return Job(from_table(ASSEMBLY.current(table["assembly"])), **parts, **top)


def _part(key, table):
    kind, units = _TABLES[key]
    if not isinstance(table, dict):
        raise BadFile(f"{key}: it must be a table of words and values")
    known = [field.name for field in dataclasses.fields(kind)]
    for word in table:
        if word not in known:
            raise BadFile(f'{key}: the word "{word[:40]}" is not known')
    try:
        return kind(**{word: _value(f"{key}, {word}", value, units.get(word)) for word, value in table.items()})
    except BadFile:
        raise
    except PlainError as error:
        raise BadFile(f"{key}: {str(error).rstrip('.?')}") from None
    except (TypeError, ValueError, OverflowError):
        raise BadFile(f"{key}: a value is not of the right kind") from None


def _value(place, value, quantity):
    if isinstance(value, list):
        if len(value) > 12:
            raise BadFile(f"{place} must have at most 12 values")
        return tuple(_value(place, each, quantity) for each in value)
    if isinstance(value, str):
        if quantity is None and len(value) <= 400:
            return value
        if quantity:
            return in_si(value, quantity)
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise BadFile(f"{place} must be a number or a short text")
    try:
        float(value)
    except OverflowError:
        raise BadFile(f"{place} must be a number of ordinary size") from None
    return value


def job_text(job):
    """A job as the text of a file.

    Parameters
    ----------
    job : Job

    Returns
    -------
    str
        TOML that opens without the library.

    Examples
    --------
    >>> from dryward.building import preset
    >>> job_text(Job(preset("vented-vault"))).splitlines()[0]
    'format = "dryward job"'
    """
    table = FORMAT.headed({key: getattr(job, key) for key in _TOP})
    for key in _TABLES:
        part = getattr(job, key)
        if part is not None:
            table[key] = {k: list(v) if isinstance(v, tuple) else v for k, v in dataclasses.asdict(part).items()}
    return tomli_w.dumps({**table, "assembly": as_table(job.assembly)})


def load_job(path):
    """A job and a token that says which state of the file it was.

    Parameters
    ----------
    path : str or Path
        A job file or an assembly file.

    Returns
    -------
    Job, str

    Raises
    ------
    BadFile
        One sentence with file, place and what is wrong there.
    """
    found, token = storage.read_text(path, "an assembly")
    return parse_job(found, Path(path).name), token


def save_job(job, path, expect=None):
    """Write a job as a file, whole or not at all.

    Parameters
    ----------
    job : Job
    path : str or Path
    expect : str, optional
        As in `storage.save_text`.

    Returns
    -------
    str
        The token of the written file.

    Raises
    ------
    BadFile
        When it cannot be written, or has changed; the old file is untouched.
    """
    return storage.save_text(job_text(job), path, expect)
