"""What is typed into place, room, leak and vents, and the job it makes."""

import dataclasses
from pathlib import Path

from dryward import building, units, weather
from dryward.building import Framing
from dryward.building.job import Place, Tightness, Vent
from dryward.checks import OutOfRange

#: Field -> (what of the job, quantity, unit of a bare number by system).
FIELDS = {
    "room.temperature": ("temperature", "degF", "degC"),
    "room.relative_humidity": ("relative humidity", "%", "%"),
    "room.summer_temperature": ("temperature", "degF", "degC"),
    "room.summer_relative_humidity": ("relative humidity", "%", "%"),
    "tightness.volume": ("volume", "ft3", "m3"),
    "tightness.area": ("area", "ft2", "m2"),
    "tightness.share": ("relative humidity", "%", "%"),
    "tightness.height": ("length", "ft", "m"),
    "vent.length": ("length", "ft", "m"),
    "start_humidity": ("relative humidity", "%", "%"),
    "framing.share": ("relative humidity", "%", "%"),
}

#: What a number is called where its name in the job is no plain word.
_LABELS = {
    "ach50": "Air changes an hour at 50 Pa",
    "inlet_area": "The eave opening",
    "outlet_area": "The ridge opening",
    "production": "Water made",
    "years": "The number of years",
}


def changed(job, name, value, system):
    """The job with one field of these sections typed anew.

    Parameters
    ----------
    job : Job
    name : str
        As in the keys of the fields, without ``set:``.
    value : str or bool
    system : {"us", "si"}

    Returns
    -------
    Job

    Raises
    ------
    NotUnderstood, OutOfRange, UnknownName
        With one sentence.
    """
    if name in ("tested", "vents"):
        whole = {"tested": ("tightness", Tightness(3.0)), "vents": ("vent", Vent())}[name]
        return dataclasses.replace(job, **{whole[0]: whole[1] if value else None})
    if name == "framed" or name.startswith("framing."):
        return dataclasses.replace(job, assembly=_framed(job.assembly, name, value))
    if name == "slope":
        return dataclasses.replace(job, assembly=dataclasses.replace(job.assembly, slope=_plain("Slope", value)))
    if name in ("azimuth", "absorptance", "years"):
        number = _plain(_called(name), value)
        return dataclasses.replace(job, **{name: int(number) if name == "years" else number})
    if name == "design":
        return dataclasses.replace(job, design=value)
    if "." not in name:
        return dataclasses.replace(job, **{name: _read(name, value, system)})
    part, _, what = name.partition(".")
    old = getattr(job, part)
    if part == "place":
        return dataclasses.replace(job, place=_place(old, what, value, system))
    return dataclasses.replace(job, **{part: dataclasses.replace(old, **{what: _one(part, what, value, system)})})


def _one(part, what, value, system):
    name = f"{part}.{what}"
    if name in FIELDS:
        return _read(name, value, system)
    if what in ("kind", "occupancy"):
        return value
    number = _plain(_called(what), value)
    if what == "humidity_class":
        return int(number)
    if what in ("inlet_area", "outlet_area"):
        return units.to_si(number, "in2") / units.FOOT if system == "us" else units.to_si(number, "cm2")
    if what == "production":
        return units.to_si(number, "pint/day" if system == "us" else "kg/day")
    if what == "fresh_air":
        return units.to_si(number, "cfm" if system == "us" else "m3/h")
    return number


def _read(name, value, system):
    quantity, us, si = FIELDS[name]
    return units.quantity(value, quantity, us if system == "us" else si)


def _called(name):
    return _LABELS.get(name, name.replace("_", " ").capitalize())


def _plain(what, value):
    try:
        return float(str(value).replace(",", "."))
    except ValueError:
        raise OutOfRange(f'{what} must be a number, not "{str(value)[:30]}".') from None


def file_place(old, name):
    """A place of a weather file in the learner's folder.

    Parameters
    ----------
    old : Place
        Whose code zone is kept.
    name : str

    Returns
    -------
    Place

    Raises
    ------
    OutOfRange
        For a name with a folder in it, or none.
    """
    name = str(name).strip()
    if not name or Path(name.replace("\\", "/")).name != name:
        raise OutOfRange(f'The weather file "{name[:60]}" must be a plain name such as town.epw, without a folder.')
    return Place("file", name, zone=old.zone)


def _place(old, what, value, system):
    if what == "kind":
        if value == "means":
            months = weather.demo_climate(old.id if old.kind == "demo" else "cold")
            return Place("means", "", tuple(months.temperature), tuple(months.relative_humidity), old.zone)
        return Place(value, "cold" if value == "demo" else "weather.epw", zone=old.zone)
    if what in ("temperature", "relative_humidity"):
        unit = "%" if what == "relative_humidity" else "degF" if system == "us" else "degC"
        separator = ";" if ";" in value else ","
        numbers = [
            _plain("A monthly mean", each) for each in value.replace("\n", separator).split(separator) if each.strip()
        ]
        return dataclasses.replace(old, **{what: tuple(units.to_si(each, unit) for each in numbers)})
    if what == "id" and old.kind != "demo":
        return file_place(old, value)
    return dataclasses.replace(old, **{what: str(value).strip()[:80]})


def _framed(roof, name, value):
    thick = [layer.name for layer in roof.layers if layer.thickness and not layer.vented]
    main = max(roof.inner_layers, key=lambda layer: layer.thermal_resistance).name
    if name == "framed":
        made = Framing(0.1, building.material("spruce"), (main if main in thick else thick[0],)) if value else None
        return dataclasses.replace(roof, framing=made)
    if name == "framing.layer":
        return dataclasses.replace(roof, framing=dataclasses.replace(roof.framing, layers=(value,)))
    share = units.quantity(value, "relative humidity", "%")
    return dataclasses.replace(roof, framing=dataclasses.replace(roof.framing, share=share))
