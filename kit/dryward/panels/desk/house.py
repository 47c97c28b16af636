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
from dryward.language import called, has_decimal_comma, joined, message, typed
from dryward.panels.desk import parts
from dryward.panels.desk.layers import Troubles
from dryward.panels.desk.parts import Part
from dryward.report.setting import design_year

_ROOMS = ("constant", "class", "by outdoor temperature", "moisture balance")
_PLACES = ("demo", "file", "means")
#: Ways a slope may face, degrees from north; and shares of the sun that coverings take in [%].
_FACES, _COLORS = (0, 90, 180, 270), (30, 50, 70, 90)


def _in_a_row(numbers: Sequence[str]) -> str:
    """The twelve numbers of a year as they are typed: no comma between them where it is the decimal mark."""
    return joined("panels.typed-after-typed-comma" if has_decimal_comma() else "panels.typed-after-typed", numbers)


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
    return typed(units.number(number, figures=4, most=1))


def _field(job: Job, name: str, label: str, system: str, troubles: Troubles, size: int = 9) -> Part:
    target: Any = job
    for step in name.split("."):
        target = getattr(target, step)
    return parts.field(
        f"set:{name}", label, _shown(target, name, system), size=size, error=troubles.get(f"set:{name}", "")
    )


def _number(name: str, label: str, value: float, troubles: Troubles, unit: str = "", size: int = 6) -> Part:
    return parts.field(
        f"set:{name}",
        label,
        typed(units.number(value, figures=6)),
        unit=unit,
        size=size,
        error=troubles.get(f"set:{name}", ""),
    )


def place_section(job: Job, system: str, troubles: Troubles, upload_limit: int, wants_file: bool = False) -> Part:
    """Place and room.

    `upload_limit` is the largest weather file [bytes]; with `wants_file` one
    was asked for and none was given yet.
    """
    place, room = job.place, job.room
    kind = "file" if wants_file else place.kind
    inside = [parts.select("set:place.kind", message("panels.climate-from"), _place_kinds(), kind)]
    if kind == "demo":
        inside.append(
            parts.select(
                "set:place.id",
                message("panels.place"),
                [(id, climate(id)) for id in weather.demos()],
                place.id,
                error=troubles.get("set:place.id", ""),
            )
        )
    elif kind == "file":
        inside.append(
            parts.field(
                "set:place.id",
                message("panels.file-in-folder"),
                place.id if place.kind == "file" else "",
                size=24,
                error=troubles.get("set:place.id", ""),
            )
        )
        inside.append(parts.upload("epw", message("panels.from-this-computer"), ".epw", upload_limit))
    inside.append(
        parts.field(
            "set:place.zone", message("panels.code-zone"), place.zone, size=4, hint=message("panels.code-zone-hint")
        )
    )
    more = []
    if kind == "means":
        unit = "degF" if system == "us" else "degC"
        warm = _in_a_row([typed(units.number(units.from_si(t, unit), 1)) for t in place.temperature])
        humid = _in_a_row([units.number(rh * 100, 0) for rh in place.relative_humidity])
        symbol = units.unit(unit).symbol
        more = [
            parts.area(
                "set:place.temperature",
                message("panels.monthly-temperatures", unit=symbol),
                warm,
                1,
                error=troubles.get("set:place.temperature", ""),
            ),
            parts.area(
                "set:place.relative_humidity",
                message("panels.monthly-humidities"),
                humid,
                1,
                error=troubles.get("set:place.relative_humidity", ""),
            ),
        ]
    rooms = [parts.select("set:room.kind", message("panels.room-air"), _room_kinds(), room.kind)]
    if room.kind in ("class", "moisture balance"):
        rooms.append(_field(job, "room.temperature", message("panels.room-temperature"), system, troubles))
    if room.kind == "constant":
        rooms += [
            _field(job, name, label, system, troubles)
            for name, label in (
                ("room.temperature", message("panels.room-winter-temperature")),
                ("room.relative_humidity", message("panels.room-winter-humidity")),
                ("room.summer_temperature", message("panels.room-summer-temperature")),
                ("room.summer_relative_humidity", message("panels.room-summer-humidity")),
            )
        ]
    elif room.kind == "class":
        rooms.append(
            parts.select(
                "set:room.humidity_class",
                message("panels.room-class"),
                [(str(n), str(n)) for n in (1, 2, 3, 4)],
                str(room.humidity_class),
            )
        )
    elif room.kind == "by outdoor temperature":
        rooms.append(
            parts.select(
                "set:room.occupancy",
                message("panels.room-use"),
                (("normal", message("panels.room-use-normal")), ("high", message("panels.room-use-high"))),
                room.occupancy,
            )
        )
    elif room.kind == "moisture balance":
        made, air = ("pint/day", "cfm") if system == "us" else ("kg/day", "m3/h")
        water, fresh = round(units.from_si(room.production, made), 2), round(units.from_si(room.fresh_air, air), 1)
        signs = [units.unit(each).symbol for each in (made, air)]
        rooms += [
            _number("room.production", message("panels.water-made", unit=signs[0]), water, troubles),
            _number("room.fresh_air", message("panels.fresh-air", unit=signs[1]), fresh, troubles),
        ]
    return parts.section(
        "place",
        message("panels.place-and-room"),
        parts.row(*inside),
        *more,
        parts.row(*rooms),
        parts.row(parts.select("set:design", message("panels.design-year"), _designs(), job.design)),
        parts.text(design_year(job), "dw-hint"),
        fold="open",
    )


def build_section(job: Job, system: str, troubles: Troubles) -> Part:
    """Leak, vents, slope, framing and the hourly run."""
    roof, tight, vent = job.assembly, job.tightness, job.vent
    leak = [parts.check("set:tested", message("panels.tested"), tight is not None)]
    if tight is not None:
        leak += [
            _number("tightness.ach50", message("panels.air-changes"), tight.ach50, troubles),
            _field(job, "tightness.volume", message("panels.house-volume"), system, troubles),
            _field(job, "tightness.area", message("panels.roof-area"), system, troubles),
            _field(job, "tightness.share", message("panels.share-of-leaks"), system, troubles),
            _field(job, "tightness.height", message("panels.height-above-neutral"), system, troubles),
        ]
    gaps = []
    if any(layer.vented for layer in roof.layers):
        gaps = [parts.check("set:vents", message("panels.vents-known"), vent is not None)]
        if vent is not None:
            eave, ridge = message("panels.eave-opening", system=system), message("panels.ridge-opening", system=system)
            gaps += [
                _field(job, "vent.length", message("panels.eave-to-ridge"), system, troubles),
                _number("vent.inlet_area", eave, _per_length(vent.inlet_area, system), troubles),
                _number("vent.outlet_area", ridge, _per_length(vent.outlet_area, system), troubles),
            ]
    framing = roof.framing
    thick = [layer.name for layer in roof.layers if layer.thickness and not layer.vented]
    frames = [
        parts.check("set:framed", message("panels.count-framing"), framing is not None),
        _framed_share(framing, system, troubles),
        parts.select(
            "set:framing.layer", message("panels.framing-through"), [(n, called(n)) for n in thick], framing.layers[0]
        )
        if framing
        else None,
    ]
    others = [
        parts.field(
            "set:slope",
            message("panels.slope"),
            typed(units.slope(roof.slope, system)),
            size=6,
            error=troubles.get("set:slope", ""),
        ),
        parts.select("set:azimuth", message("panels.faces"), _with(_faces(), job.azimuth), f"{job.azimuth:g}"),
        parts.select(
            "set:absorptance", message("panels.covering"), _with(_colors(), job.absorptance), f"{job.absorptance:g}"
        ),
        _field(job, "start_humidity", message("panels.layers-start-at"), system, troubles),
        _number("years", message("panels.years-at-most"), job.years, troubles),
    ]
    return parts.section(
        "build", message("panels.build"),
        parts.row(*leak), parts.row(*gaps) if gaps else None, parts.row(*frames), parts.row(*others), fold="open",
    )  # fmt: skip


def _framed_share(framing: Framing | None, system: str, troubles: Troubles) -> Part | None:
    if framing is None:
        return None
    share = _shown(framing.share, "framing.share", system)
    error = troubles.get("set:framing.share", "")
    return parts.field("set:framing.share", message("panels.framing-share"), share, size=6, error=error)


def climate(id: str) -> str:
    """An invented place, as it stands in a sentence."""
    return message(f"names.{id}")


def _place_kinds() -> list[tuple[str, str]]:
    return [(id, message(f"panels.place-kind-{id}")) for id in _PLACES]


def _room_kinds() -> list[tuple[str, str]]:
    return [(id, message(f"panels.room-kind-{id.replace(' ', '-')}")) for id in _ROOMS]


def _designs() -> list[tuple[str, str]]:
    return [(id, called(id)) for id in DESIGNS]


def _faces() -> list[tuple[str, str]]:
    return [(str(degrees), message(f"panels.faces-{degrees}")) for degrees in _FACES]


def _colors() -> list[tuple[str, str]]:
    return [(f"{share / 100:g}", message(f"panels.covering-{share}")) for share in _COLORS]


def _with(options: Sequence[tuple[str, str]], value: float) -> Sequence[tuple[str, str]]:
    key = f"{value:g}"
    return options if key in [id for id, _ in options] else (*options, (key, units.number(value, figures=6)))


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
            raise OutOfRange(message("panels.roof-needs-name"))
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
        raise OutOfRange(message("panels.plain-weather-name", name=name[:60]))
    return Place("file", name, zone=old.zone)


def _place(old: Place, what: str, value: str, system: str) -> Place:
    if what == "kind":
        if value == "means":
            months = weather.demo_climate(old.id if old.kind == "demo" else "cold")
            return Place("means", "", tuple(months.temperature), tuple(months.relative_humidity), old.zone)
        return Place(value, "cold" if value == "demo" else "weather.epw", zone=old.zone)
    if what in ("temperature", "relative_humidity"):
        unit = units.SHOWN[system][what.replace("_", " ")]
        separator = ";" if ";" in value or has_decimal_comma() else ","
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
        raise OutOfRange(message("panels.no-framing"))
    if name == "framing.layer":
        return dataclasses.replace(roof, framing=dataclasses.replace(roof.framing, layers=(value,)))
    share = _entry(name).taken(value, system)
    return dataclasses.replace(roof, framing=dataclasses.replace(roof.framing, share=share))
