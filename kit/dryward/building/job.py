"""Jobs: a roof, the place it stands in, the room under it, how it is built, and its file.

Everything a check of somebody's own roof needs, as plain numbers that can be
saved.  What the numbers mean physically is settled in `report.setting`.

A job file holds a whole assembly in the table ``[assembly]``, so it opens
without anything else.  A plain assembly file opens as a job too, with a
place and a room that the reader must then choose.  A weather file is named
from the folder of the job file, so that the pair can be moved together.
"""

import dataclasses
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import tomli_w

from dryward import storage
from dryward.building.assembly import FORMAT as ASSEMBLY
from dryward.building.assembly import Assembly, as_table, from_table, parse_table
from dryward.building.schema import entries, entry, settle, toml, unknown_word
from dryward.checks import BadFile, OutOfRange, PlainError, subject
from dryward.language import message
from dryward.units import checked

PLACES = ("demo", "file", "means")
#: Lowest and highest temperature of a room [degC].
ROOM_TEMPERATURES = (10, 35)
ROOMS = ("constant", "class", "by outdoor temperature", "moisture balance")
#: What the year is designed for: as usual, a damper room, a colder winter.
DESIGNS = ("typical", "damp house", "cold winter")


@dataclass(frozen=True)
class Place:
    """Where the roof stands: an invented place, an EPW weather file, or twelve typed means."""

    kind: str = field(default="demo", metadata=entry("The kind of place", known=PLACES))
    #: Of the invented place, or the path of the weather file.
    id: str = "cold"
    #: Typed monthly means [degC] and [-].
    temperature: tuple[float, ...] = ()
    relative_humidity: tuple[float, ...] = ()
    #: Climate zone of the code, such as "6" or "4C"; empty if unknown.
    zone: str = ""
    #: Where the path of a weather file starts from; empty for the folder one works in.
    folder: str = field(default="", compare=False, repr=False)

    def __post_init__(self) -> None:
        settle(self)
        for name, what, low, high in (
            ("temperature", "Monthly temperature", -60, 60),
            ("relative_humidity", "Monthly relative humidity", 0, 1),
        ):
            values = tuple(checked(what, v, name.replace("_", " "), low, high) for v in getattr(self, name))
            if len(values) != (12 if self.kind == "means" else 0):
                raise OutOfRange(message("building.twelve-means", what=subject(what), count=len(values)))
            object.__setattr__(self, name, values)

    @property
    def path(self) -> Path:
        """Of the weather file."""
        return Path(self.folder, self.id)


@dataclass(frozen=True)
class Room:
    """The air indoors.

    "constant" holds one air in the heating season and one when it is warm
    outside; "class" and "moisture balance" hold the first temperature all
    year.
    """

    kind: str = field(default="constant", metadata=entry("The rule for room air", known=ROOMS))
    temperature: float = field(default=21.0, metadata=entry("Room temperature", "temperature", *ROOM_TEMPERATURES))
    relative_humidity: float = field(default=0.4, metadata=entry("Room humidity", "relative humidity", 0.05, 0.95))
    # A house cooled in summer: common practice, no source.
    summer_temperature: float = field(
        default=24.0, metadata=entry("Room temperature in summer", "temperature", *ROOM_TEMPERATURES)
    )
    summer_relative_humidity: float = field(
        default=0.5, metadata=entry("Room humidity in summer", "relative humidity", 0.05, 0.95)
    )
    #: For "class".
    humidity_class: int = field(default=2, metadata=entry("The humidity class", known=(1, 2, 3, 4), whole=True))
    #: For "by outdoor temperature".
    occupancy: str = field(default="normal", metadata=entry("The occupancy", known=("normal", "high")))
    #: For "moisture balance" [kg/s] and [m3/s].
    production: float = field(default=10 / 86400, metadata=entry("Moisture production", "mass flow", 0, 0.001))
    fresh_air: float = field(default=76 / 3600, metadata=entry("Fresh air", "air flow", 0.001, 1))

    def __post_init__(self) -> None:
        settle(self)


@dataclass(frozen=True)
class Tightness:
    """The blower-door test, and how much of the leak lies in this roof."""

    #: Air changes at 50 Pa [1/h].
    ach50: float = field(metadata=entry("Air changes at 50 Pa", "air changes at 50 Pa", 0, 50))
    #: Of the house [m3], and of the roof [m2].
    volume: float = field(default=566.0, metadata=entry("Volume of the house", "volume", 50, 10000))
    area: float = field(default=56.0, metadata=entry("Area of the roof", "area", 1, 5000))
    #: Part of the leak that lies in the roof [-].
    share: float = field(default=0.2, metadata=entry("Share of the leak in the roof", "share", 0, 1, bare=("%", "%")))
    #: Of the roof above the neutral level [m].
    height: float = field(
        default=3.7, metadata=entry("Height above the neutral level", "length", 0, 20, bare=("ft", "m"))
    )

    def __post_init__(self) -> None:
        settle(self)


@dataclass(frozen=True)
class Vent:
    """The vent space: its length along the slope [m], and its openings over the whole eave and ridge.

    An opening is the net free area of each meter of eave or ridge [m2/m].
    """

    length: float = field(default=5.0, metadata=entry("Length of the vent space", "length", 0.5, 30, bare=("ft", "m")))
    inlet_area: float = field(default=0.01, metadata=entry("Inlet area", "vent opening", bare=("in2/ft", "cm2/m")))
    outlet_area: float = field(default=0.01, metadata=entry("Outlet area", "vent opening", bare=("in2/ft", "cm2/m")))

    def __post_init__(self) -> None:
        settle(self)


@dataclass(frozen=True)
class Job:
    """A roof with all that a check of it needs."""

    assembly: Assembly
    place: Place = field(default_factory=Place)
    room: Room = field(default_factory=Room)
    #: None: no air leak is counted.
    tightness: Tightness | None = None
    #: Of the vent space of the assembly, if it has one.
    vent: Vent | None = None
    #: Way the slope faces, from north over east [degrees].
    azimuth: float = field(default=0.0, metadata=entry("Azimuth", "azimuth"))
    #: Of the covering for sunlight [-].
    absorptance: float = field(default=0.7, metadata=entry("Solar absorptance", "number", 0.05, 0.98))
    #: Of all layers at the start of the hourly years [-].
    start_humidity: float = field(default=0.8, metadata=entry("Humidity at the start", "relative humidity", 0.1, 1))
    #: Most years of the hourly run; it ends when the year repeats, and the last is judged.
    years: int = field(default=5, metadata=entry("The number of years", "number", 1, 10, whole=True))
    #: What the year of all checks is.
    design: str = field(default="typical", metadata=entry("The design year", known=DESIGNS))

    def __post_init__(self) -> None:
        settle(self)


# Tables of the file, and what they make.
_TABLES = {"place": Place, "room": Room, "tightness": Tightness, "vent": Vent}
_TOP = ("azimuth", "absorptance", "start_humidity", "years", "design")
_MOST_VALUES, _LONGEST = 12, 400


def _from_1(table: dict[str, Any]) -> dict[str, Any]:
    """Version 1 knew one room air, and took this one for the warmest month of every roof; its year was the typical."""
    room = table.get("room", {})
    if isinstance(room, dict):  # anything else is refused where it is read
        room = {"summer_temperature": 24.0, "summer_relative_humidity": 0.5, **room}
    return {"design": "typical", **table, "room": room}


#: A whole job.
FORMAT = storage.Format("dryward job", 2, {1: _from_1})


def parse_job(text: str, name: str = "", folder: str | Path = "") -> Job:
    """A job from the text of a job file or of an assembly file.

    `name` is what the message calls the file, `folder` where the path of its
    weather file starts from.  Raises BadFile: one sentence with the place and
    what is wrong there.
    """
    name = str(name)[-60:] or message("building.the-file")
    table = toml(text, name)
    if table.get("format") != FORMAT.name:
        return Job(parse_table(table, name))  # or a sentence about what it is not
    try:
        return _job(table, str(folder))
    except PlainError as error:
        raise BadFile(message("building.in-a-file", file=name, sentence=str(error))) from None


def _job(table: dict[str, Any], folder: str) -> Job:
    table = FORMAT.current(table)
    for word in table:
        if word not in ("format", "version", "assembly", *_TABLES, *_TOP):
            raise unknown_word(message("building.top-of-file"), word)
    if not isinstance(table.get("assembly"), dict):
        raise BadFile(message("building.table-missing", table="[assembly]"))
    parts = {key: _part(key, table[key]) for key in _TABLES if key in table}
    if "place" in parts:
        parts["place"] = dataclasses.replace(parts["place"], folder=folder)
    top = {key: entries(Job)[key].taken(_plain(key, table[key])) for key in _TOP if key in table}
    return Job(from_table(ASSEMBLY.current(table["assembly"])), **parts, **top)


def _part(key: str, table: object) -> Any:
    kind = _TABLES[key]
    if not isinstance(table, dict):
        raise BadFile(message("building.no-table", place=key))
    known = [each.name for each in dataclasses.fields(kind) if each.name != "folder"]
    for word in table:
        if word not in known:
            raise unknown_word(key, word)
    try:
        return kind(
            **{word: _plain(message("building.within", outer=key, inner=word), value) for word, value in table.items()}
        )
    except BadFile:
        raise
    except PlainError as error:
        raise BadFile(message("building.in-a-file", file=key, sentence=str(error))) from None
    except (TypeError, ValueError, OverflowError):
        raise BadFile(message("building.wrong-kind", place=key)) from None


def _plain(place: str, value: object) -> Any:
    """A number, a short text or a short list of them, as it stands."""
    if isinstance(value, list):
        if len(value) > _MOST_VALUES:
            raise BadFile(message("building.few-values", place=place, most=_MOST_VALUES))
        return tuple(_plain(place, each) for each in value)
    if isinstance(value, str) and len(value) <= _LONGEST:
        return value
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise BadFile(message("building.number-or-text", place=place))
    try:
        float(value)
    except OverflowError:
        raise BadFile(message("building.number-of-ordinary-size", place=place)) from None
    return value


def _weather_file(place: Place, path: Path | None) -> str:
    """The weather file as a job file names it: from that file's folder on, or whole where it lies elsewhere."""
    if place.kind != "file":
        return place.id
    if path is None:
        return str(place.path)
    there = place.path.resolve()
    folder = path.resolve().parent
    return there.relative_to(folder).as_posix() if there.is_relative_to(folder) else str(there)


def job_text(job: Job, path: str | Path | None = None) -> str:
    """A job as the text of a file that opens without the library, at `path` where that is known.

    >>> from dryward.building import preset
    >>> job_text(Job(preset("vented-vault"))).splitlines()[0]
    'format = "dryward job"'
    """
    table = FORMAT.headed({key: getattr(job, key) for key in _TOP})
    for key in _TABLES:
        part = getattr(job, key)
        if part is not None:
            table[key] = {k: list(v) if isinstance(v, tuple) else v for k, v in dataclasses.asdict(part).items()}
    table["place"]["id"] = _weather_file(job.place, None if path is None else Path(path))
    del table["place"]["folder"]
    return tomli_w.dumps({**table, "assembly": as_table(job.assembly)})


def load_job(path: str | Path) -> tuple[Job, str]:
    """A job from a job file or an assembly file, and a token that says which state of the file it was.

    Raises BadFile: one sentence with file, place and what is wrong there.
    """
    found, token = storage.read_text(path, "an assembly")
    return parse_job(found, Path(path).name, Path(path).resolve().parent), token


def save_job(job: Job, path: str | Path, expect: str | None = None) -> str:
    """Write a job as a file, whole or not at all, and give the token of the written file.

    `expect` as in `storage.save_text`.  Raises BadFile when it cannot be
    written, or has changed; the old file is untouched.
    """
    return storage.save_text(job_text(job, path), path, expect)
