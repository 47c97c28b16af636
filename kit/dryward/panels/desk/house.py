"""Place, room, leak, vents, framing and the hourly run of the roof on the desk: the fields, and what typing does.

Keys are ``set:`` and the name of the field in the job, such as
``set:room.temperature``.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from pathlib import Path
from typing import Any, TypeVar

from dryward import building, units, weather
from dryward.building import Assembly, Framing
from dryward.building.job import DESIGNS, Job, Place, Room, Tightness, Vent
from dryward.building.schema import LONGEST_NAME, Entry, entries
from dryward.checks import OutOfRange
from dryward.panels.desk import parts
from dryward.panels.desk.layers import Troubles
from dryward.panels.desk.parts import Part
from dryward.report.setting import design_year

_ROOMS = (
    ("constant", "held, in winter and in summer"),
    ("class", "by humidity class (ISO 13788)"),
    ("by outdoor temperature", "by outdoor temperature (EN 15026)"),
    ("moisture balance", "from water made and fresh air"),
)
_PLACES = (("demo", "an invented place"), ("file", "a weather file (EPW)"), ("means", "twelve typed means"))
_DESIGNS = tuple((id, id) for id in DESIGNS)
_FACES = (("0", "north"), ("90", "east"), ("180", "south"), ("270", "west"))
_COLORS = (("0.3", "pale"), ("0.5", "middle"), ("0.7", "gray or brown"), ("0.9", "dark"))


def _shown(value: float, name: str, system: str) -> str:
    unit = _entry(name).shown_in(system) or ""
    return (
        f"{_plainly(units.from_si(value, unit))} {units.unit(unit).symbol}".replace("°F", "F")
        .replace("°C", "C")
        .replace("²", "2")
        .replace("³", "3")
    )


def _entry(name: str) -> Entry:
    """What a field of the page may be: the same as in a file."""
    part, _, what = name.rpartition(".")
    kind = {"": Job, "room": Room, "tightness": Tightness, "vent": Vent, "framing": Framing}[part]
    return entries(kind)[what]


def _plainly(number: float) -> str:
    """At most four digits; a whole number where that is meant."""
    return f"{round(number, 1):.4g}" if abs(number) < 1000 else f"{number:.0f}"


def _field(job: Job, name: str, label: str, system: str, troubles: Troubles, size: int = 9) -> Part:
    target: Any = job
    for step in name.split("."):
        target = getattr(target, step)
    return parts.field(
        f"set:{name}", label, _shown(target, name, system), size=size, error=troubles.get(f"set:{name}", "")
    )


def _number(name: str, label: str, value: float, troubles: Troubles, unit: str = "", size: int = 6) -> Part:
    return parts.field(f"set:{name}", label, f"{value:g}", unit=unit, size=size, error=troubles.get(f"set:{name}", ""))


def place_section(job: Job, system: str, troubles: Troubles, upload_limit: int, wants_file: bool = False) -> Part:
    """Place and room.

    `upload_limit` is the largest weather file [bytes]; with `wants_file` one
    was asked for and none was given yet.
    """
    place, room = job.place, job.room
    kind = "file" if wants_file else place.kind
    inside = [parts.select("set:place.kind", "Climate from", _PLACES, kind)]
    if kind == "demo":
        inside.append(
            parts.select(
                "set:place.id",
                "Place",
                [(id, id.replace("-", " ")) for id in weather.demos()],
                place.id,
                error=troubles.get("set:place.id", ""),
            )
        )
    elif kind == "file":
        inside.append(
            parts.field(
                "set:place.id",
                "File in your folder",
                place.id if place.kind == "file" else "",
                size=24,
                error=troubles.get("set:place.id", ""),
            )
        )
        inside.append(parts.upload("epw", "or from this computer", ".epw", upload_limit))
    inside.append(parts.field("set:place.zone", "Code climate zone", place.zone, size=4, hint="such as 6 or 4C"))
    more = []
    if kind == "means":
        unit = "degF" if system == "us" else "degC"
        warm = ", ".join(f"{units.from_si(t, unit):.1f}" for t in place.temperature)
        humid = ", ".join(f"{rh * 100:.0f}" for rh in place.relative_humidity)
        symbol = units.unit(unit).symbol
        more = [
            parts.area(
                "set:place.temperature",
                f"January to December, {symbol}",
                warm,
                1,
                error=troubles.get("set:place.temperature", ""),
            ),
            parts.area(
                "set:place.relative_humidity",
                "Humidity, %",
                humid,
                1,
                error=troubles.get("set:place.relative_humidity", ""),
            ),
        ]
    rooms = [parts.select("set:room.kind", "Room air", _ROOMS, room.kind)]
    if room.kind in ("class", "moisture balance"):
        rooms.append(_field(job, "room.temperature", "Room temperature", system, troubles))
    if room.kind == "constant":
        rooms += [
            _field(job, name, label, system, troubles)
            for name, label in (
                ("room.temperature", "Winter temperature"),
                ("room.relative_humidity", "Winter humidity"),
                ("room.summer_temperature", "Summer temperature"),
                ("room.summer_relative_humidity", "Summer humidity"),
            )
        ]
    elif room.kind == "class":
        rooms.append(
            parts.select(
                "set:room.humidity_class", "Class", [(str(n), str(n)) for n in (1, 2, 3, 4)], str(room.humidity_class)
            )
        )
    elif room.kind == "by outdoor temperature":
        rooms.append(
            parts.select("set:room.occupancy", "Use", (("normal", "normal"), ("high", "high")), room.occupancy)
        )
    elif room.kind == "moisture balance":
        made, air = ("pint/day", "cfm") if system == "us" else ("kg/day", "m3/h")
        rooms.append(
            _number(
                "room.production",
                f"Water made, {units.unit(made).symbol}",
                round(units.from_si(room.production, made), 2),
                troubles,
            )
        )
        rooms.append(
            _number(
                "room.fresh_air",
                f"Fresh air, {units.unit(air).symbol}",
                round(units.from_si(room.fresh_air, air), 1),
                troubles,
            )
        )
    return parts.section(
        "place",
        "Place and room",
        parts.row(*inside),
        *more,
        parts.row(*rooms),
        parts.row(parts.select("set:design", "Design year", _DESIGNS, job.design)),
        parts.text(design_year(job), "dw-hint"),
        fold="open",
    )


def build_section(job: Job, system: str, troubles: Troubles) -> Part:
    """Leak, vents, slope, framing and the hourly run."""
    roof, tight, vent = job.assembly, job.tightness, job.vent
    leak = [parts.check("set:tested", "Blower-door number known", tight is not None)]
    if tight is not None:
        leak += [
            _number("tightness.ach50", "Air changes an hour at 50 Pa", tight.ach50, troubles),
            _field(job, "tightness.volume", "House volume", system, troubles),
            _field(job, "tightness.area", "Roof area", system, troubles),
            _field(job, "tightness.share", "Share of leaks in the roof", system, troubles),
            _field(job, "tightness.height", "Height above the neutral level", system, troubles),
        ]
    gaps = []
    if any(layer.vented for layer in roof.layers):
        gaps = [parts.check("set:vents", "Vent openings known", vent is not None)]
        if vent is not None:
            per = "in² for each ft" if system == "us" else "cm² for each m"
            gaps += [
                _field(job, "vent.length", "Eave to ridge", system, troubles),
                _number("vent.inlet_area", f"Eave opening, {per}", _per_length(vent.inlet_area, system), troubles),
                _number("vent.outlet_area", f"Ridge opening, {per}", _per_length(vent.outlet_area, system), troubles),
            ]
    framing = roof.framing
    thick = [layer.name for layer in roof.layers if layer.thickness and not layer.vented]
    frames = [
        parts.check("set:framed", "Count framing", framing is not None),
        _framed_share(framing, system, troubles),
        parts.select("set:framing.layer", "Framing runs through", [(n, n) for n in thick], framing.layers[0])
        if framing
        else None,
    ]
    others = [
        _number("slope", "Slope", roof.slope, troubles, "degrees"),
        parts.select("set:azimuth", "Faces", _with(_FACES, job.azimuth), f"{job.azimuth:g}"),
        parts.select("set:absorptance", "Covering", _with(_COLORS, job.absorptance), f"{job.absorptance:g}"),
        _field(job, "start_humidity", "All layers start at", system, troubles),
        _number("years", "Hourly run, years at most", job.years, troubles),
    ]
    return parts.section(
        "build", "Leaks, vents, framing and the hourly run",
        parts.row(*leak), parts.row(*gaps) if gaps else None, parts.row(*frames), parts.row(*others), fold="open",
    )  # fmt: skip


def _framed_share(framing: Framing | None, system: str, troubles: Troubles) -> Part | None:
    if framing is None:
        return None
    return parts.field("set:framing.share", "Share", _shown(framing.share, "framing.share", system), size=6,
                       error=troubles.get("set:framing.share", ""))  # fmt: skip


def _with(options: Sequence[tuple[str, str]], value: float) -> Sequence[tuple[str, str]]:
    key = f"{value:g}"
    return options if key in [id for id, _ in options] else (*options, (key, key))


def _per_length(area: float, system: str) -> float:
    return round(units.from_si(area, "in2/ft" if system == "us" else "cm2/m"), 2)


_Part = TypeVar("_Part", Job, Place, Room, Tightness, Vent)


def changed(job: Job, name: str, value: Any, system: str) -> Job:
    """The job with one field of these sections typed anew; a `PlainError` with one sentence for what cannot be."""
    if name == "tested":
        return dataclasses.replace(job, tightness=Tightness(3.0) if value else None)
    if name == "vents":
        return dataclasses.replace(job, vent=Vent() if value else None)
    if name == "framed" or name.startswith("framing."):
        return dataclasses.replace(job, assembly=_framed(job.assembly, name, value, system))
    if name == "slope":
        slope = units.checked("Slope", str(value), "slope")
        return dataclasses.replace(job, assembly=dataclasses.replace(job.assembly, slope=slope))
    if name == "name":
        named = str(value).strip()[:LONGEST_NAME]
        if not named:
            raise OutOfRange("The roof needs a name.")
        return dataclasses.replace(job, assembly=dataclasses.replace(job.assembly, name=named))
    part, _, what = name.rpartition(".")
    if part == "place":
        return dataclasses.replace(job, place=_place(job.place, what, value, system))
    taken = _entry(name).taken(value, system)
    return (
        _with_field(job, part, _with_field(getattr(job, part), what, taken)) if part else _with_field(job, what, taken)
    )


def _with_field(thing: _Part, name: str, value: Any) -> _Part:
    """A job, or a part of one, with one field anew; its name is known only as it comes."""
    changes: dict[str, Any] = {name: value}
    return dataclasses.replace(thing, **changes)


def file_place(old: Place, name: str) -> Place:
    """The place of a weather file in the learner's folder, its code zone that of the old one.

    OutOfRange for a name with a folder in it, or none.
    """
    name = str(name).strip()
    if not name or Path(name.replace("\\", "/")).name != name:
        raise OutOfRange(f'The weather file "{name[:60]}" must be a plain name such as town.epw, without a folder.')
    return Place("file", name, zone=old.zone)


def _place(old: Place, what: str, value: str, system: str) -> Place:
    if what == "kind":
        if value == "means":
            months = weather.demo_climate(old.id if old.kind == "demo" else "cold")
            return Place("means", "", tuple(months.temperature), tuple(months.relative_humidity), old.zone)
        return Place(value, "cold" if value == "demo" else "weather.epw", zone=old.zone)
    if what in ("temperature", "relative_humidity"):
        unit = units.SHOWN[system][what.replace("_", " ")]
        separator = ";" if ";" in value else ","
        typed = [each for each in value.replace("\n", separator).split(separator) if each.strip()]
        means = tuple(units.quantity(each, what.replace("_", " "), unit) for each in typed)
        return _with_field(old, what, means)
    if what == "id" and old.kind != "demo":
        return file_place(old, value)
    return _with_field(old, what, str(value).strip()[:80])


def _framed(roof: Assembly, name: str, value: Any, system: str) -> Assembly:
    thick = [layer.name for layer in roof.layers if layer.thickness and not layer.vented]
    main = max(roof.inner_layers, key=lambda layer: layer.thermal_resistance).name
    if name == "framed":
        made = Framing(0.1, building.material("spruce"), (main if main in thick else thick[0],)) if value else None
        return dataclasses.replace(roof, framing=made)
    if roof.framing is None:
        raise OutOfRange("This roof counts no framing.")
    if name == "framing.layer":
        return dataclasses.replace(roof, framing=dataclasses.replace(roof.framing, layers=(value,)))
    share = _entry(name).taken(value, system)
    return dataclasses.replace(roof, framing=dataclasses.replace(roof.framing, share=share))
