"""What is typed at a prompt: a roof, its state in winter, its year, in the words of the trade.

From the import to the picture::

    import dryward as dw
    roof = dw.roof("vented-vault").replace("inner membrane", dw.membrane("1 perm"))
    state = dw.profile(roof, dw.Air("70 F", "40 %"), dw.Air("20 F", "80 %"))
    state.plot()
    dw.year(roof, place="cold", room="40 %", ach50=3).verdict

A number is SI; a text is read with its unit.  A roof is an assembly, the id of a preset, or
the path of a file.  The functions only read what was typed: what they work out is that of
`steady`, `drying`, `monthly`, `hourly` and `limits`, and a year is the one that ``dryward
check`` judges.
"""

from __future__ import annotations

import dataclasses
import os
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from dryward import building, units, weather
from dryward.building import Assembly, FixedMembrane, LaminateMembrane, Origin, VariableMembrane
from dryward.building.job import Job, Place, Room, Tightness, Vent
from dryward.checks import OutOfRange, UnknownName, subject
from dryward.language import called, message
from dryward.physics import drying, limits, monthly, steady
from dryward.physics.drying import Drying
from dryward.physics.hourly import Hours
from dryward.physics.limits import Range
from dryward.physics.monthly import Months
from dryward.physics.steady import Profile, Sweep
from dryward.report.moisture_checks import run_years
from dryward.report.setting import Setting, setting
from dryward.weather import Air, HourlyWeather, MonthlyClimate

#: A number in SI, or a text with its unit.
Given = float | str
#: An assembly, the id of a preset, or the path of a file.
Roof = Assembly | str | os.PathLike[str]
#: An air, or its temperature and its humidity.
AirLike = Air | Sequence[Given]
#: A place of the kit, the path of a weather file, a year of hours, or twelve means.
PlaceLike = str | os.PathLike[str] | HourlyWeather | MonthlyClimate | Sequence[Sequence[Given]]


class IndoorRule(Protocol):
    """A rule of `weather.indoor`: what the air of the rooms is when the weather is so."""

    def at(self, outdoors: HourlyWeather | MonthlyClimate) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
        """Temperature [degC] and vapor pressure [Pa] of the rooms."""
        ...


#: The humidity of the rooms in the heating season, an air for all year, or a rule.
RoomLike = Given | AirLike | IndoorRule


def _number(value: Given, quantity: str, bare: str | None = None) -> float:
    """A quantity in SI, read where it is text."""
    if isinstance(value, bool) or not isinstance(value, (str, int, float, np.number)):
        facts = {"quantity": called(quantity), "given": str(value)[:40]}
        raise OutOfRange(message("api.number-or-text", **facts))
    return float(units.quantity(value if isinstance(value, str) else float(value), quantity, bare))


def _numbers(values: Given | Iterable[Given], quantity: str) -> NDArray[np.float64]:
    """Several of them; a single one stays a single one."""
    if isinstance(values, (str, int, float)):
        return np.asarray(_number(values, quantity))
    if isinstance(values, np.ndarray):
        return values
    try:
        return np.array([_number(each, quantity) for each in values])
    except TypeError:
        facts = {"quantity": called(quantity), "given": str(values)[:40]}
        raise OutOfRange(message("api.numbers-or-texts", **facts)) from None


def roof(name: Roof) -> Assembly:
    """A roof or a wall: one of the kit's own, or one that was saved.

    Parameters
    ----------
    name : Assembly, str or path
        The id of a preset, such as ``"vented-vault"`` (`presets` lists them);
        the path of a file; or an assembly, which is given back.

    Returns
    -------
    Assembly

    Raises
    ------
    UnknownName
        When there is neither such a preset nor such a file.
    OutOfRange
        For anything that names no roof.

    Examples
    --------
    >>> roof("vented-vault").replace("inner membrane", membrane("1 perm")).name
    'Vented vault, 50-perm outer membrane'
    """
    if isinstance(name, Assembly):
        return name
    if not isinstance(name, (str, os.PathLike)):
        raise OutOfRange(message("api.no-roof", given=str(name)[:40]))
    path, typed = Path(name), str(name)
    known = building.presets()
    preset = typed.strip().lower().replace(" ", "-")
    if preset in known:
        return building.preset(preset)
    if path.suffix or path.exists():
        return building.load(path)
    raise UnknownName("roof", typed, known)


def membrane(what: Given) -> FixedMembrane | VariableMembrane | LaminateMembrane:
    """A membrane, sheet or paint: of the library, or of one permeance.

    Parameters
    ----------
    what : str or float
        The id of a membrane of the library; or a permeance, 0 to 10 000 perm,
        as text such as ``"1 perm"`` or ``"sd 2.5 m"``, or a number
        [kg/(s m2 Pa)], 0 to 6e-7.

    Returns
    -------
    FixedMembrane, VariableMembrane or LaminateMembrane

    Raises
    ------
    UnknownName
        When it is neither a permeance nor in the library.
    NotUnderstood, OutOfRange
        For a permeance that cannot be meant.

    Examples
    --------
    >>> membrane("1 perm")
    FixedMembrane(1 perm, 1 perm)
    >>> membrane("teaching-variable").id
    'teaching-variable'
    """
    typed = str(what).strip()
    if isinstance(what, str) and not (typed[:1].isdigit() or typed[:1] in ".," or typed.lower().startswith("sd ")):
        return building.membrane(typed)
    return FixedMembrane(_number(what, "permeance"), Origin(name=typed if isinstance(what, str) else "membrane"))


def air_of(what: str, value: AirLike) -> Air:
    """An air, as it is or from a pair of temperature and humidity; `what` names it in a sentence."""
    if isinstance(value, Air):
        return value
    if isinstance(value, Sequence) and not isinstance(value, str) and len(value) == 2:
        temperature, humidity = value
        return Air(_number(temperature, "temperature"), _number(humidity, "relative humidity", "%"))
    raise OutOfRange(message("api.no-air", what=subject(what), example='Air("70 F", "40 %")', given=str(value)[:40]))


def profile(roof: Roof, indoor: AirLike, outdoor: AirLike) -> Profile:
    """The steady state of a roof between two airs: where it is cold, where it gets wet, how fast.

    Parameters
    ----------
    roof : Assembly, str or path
        As in `roof`.
    indoor, outdoor : Air or (temperature, humidity)
        One air each.

    Returns
    -------
    Profile
        See `steady.profile`, which works it out.

    Raises
    ------
    UnknownName, OutOfRange, NotUnderstood
        For what cannot be meant, in one sentence.
    NotConverged
        When the permeances that answer to humidity find no steady state.

    Examples
    --------
    >>> state = profile("vented-vault-osb", ("70 F", "40 %"), ("20 F", "80 %"))
    >>> [(plane.inner_layer, plane.outer_layer) for plane in state.wet_planes]
    [('insulation', 'outer layer')]
    >>> state.verdict.state
    'wet'
    """
    return steady.profile(_roof(roof), air_of("The room air", indoor), air_of("The outdoor air", outdoor))


def sweep(roof: Roof, indoor: AirLike, outdoor: AirLike, **varied: Given | Iterable[Given]) -> Sweep:
    """Many steady states at once, with one thing or several varied.

    Parameters
    ----------
    roof : Assembly, str or path
        As in `roof`.
    indoor, outdoor : Air or (temperature, humidity)
        What is not varied.
    **varied : list of float or str
        By the keywords of `steady.sweep`, such as
        ``indoor_relative_humidity`` [-] or ``inner_membrane_permeance``
        [kg/(s m2 Pa)]; any that the thing may have.

    Returns
    -------
    Sweep

    Raises
    ------
    UnknownName
        For a keyword that varies nothing.
    OutOfRange, NotUnderstood
        For a value out of range or one that is not understood.

    Examples
    --------
    >>> sweep("vented-vault-osb", ("70 F", "40 %"), ("20 F", "80 %"), inner_membrane_permeance=["0.1 perm", "1 perm"])
    Sweep(Vented vault, OSB outer layer, 2 steady states: 1 dry, 1 wet)
    """
    assembly = _roof(roof)
    arrays = {name: _varied(assembly, name, values) for name, values in varied.items()}
    return steady.sweep(assembly, air_of("The room air", indoor), air_of("The outdoor air", outdoor), None, **arrays)


def _varied(assembly: Assembly, name: str, values: Given | Iterable[Given]) -> NDArray[np.float64]:
    """What a variable of a sweep takes."""
    known = steady.variables(assembly)
    if name not in known:
        raise UnknownName("thing to vary", name, known)
    return _numbers(values, limits.quantity_of(name))


def drying_rates(
    roof: Roof, wet_layer: str, indoor: AirLike, outdoor: AirLike, relative_humidity: Given = 1.0
) -> Drying:
    """Which way a wet layer dries, and how fast.

    Parameters
    ----------
    roof : Assembly, str or path
        As in `roof`.
    wet_layer : str
        Its name; a layer inside any vent space.
    indoor, outdoor : Air or (temperature, humidity)
        One air each.
    relative_humidity : float or str, optional
        At both faces of the layer [-], above 0 to 1, or text such as ``"90 %"``.

    Returns
    -------
    Drying

    Raises
    ------
    UnknownName, OutOfRange, NotUnderstood
        For what cannot be meant, in one sentence.
    NotConverged
        When a membrane on the way finds no steady permeance.

    Examples
    --------
    >>> drying_rates("vented-vault-osb", "insulation", ("75 F", "50 %"), ("85 F", "50 %"))
    Drying(9.16 gr/ft² day inward, 21.5 gr/ft² day outward, at 80.1 °F)
    """
    return drying.rates(
        _roof(roof),
        wet_layer,
        air_of("The room air", indoor),
        air_of("The outdoor air", outdoor),
        _number(relative_humidity, "relative humidity", "%"),
    )


def dry_range(roof: Roof, indoor: AirLike, outdoor: AirLike, variable: str, values: Iterable[Given]) -> Range:
    """The steady state along one variable: where the roof is dry, damp or wet.

    Parameters
    ----------
    roof : Assembly, str or path
        As in `roof`.
    indoor, outdoor : Air or (temperature, humidity)
        What is not varied.
    variable : str
        A keyword of `steady.sweep`, such as ``"indoor_relative_humidity"``.
    values : list of float or str
        What it takes [SI], or texts with their units; any that it may have.

    Returns
    -------
    Range

    Raises
    ------
    UnknownName
        For a variable that is not there.
    OutOfRange, NotUnderstood
        For a value out of range or one that is not understood.

    Examples
    --------
    >>> at = ["15 %", "30 %", "45 %"]
    >>> dry_range("vented-vault-osb", ("70 F", "40 %"), ("20 F", "80 %"), "indoor_relative_humidity", at)
    Range(indoor_relative_humidity: dry 0.15, wet 0.3 to 0.45)
    """
    assembly = _roof(roof)
    room, outdoors = air_of("The room air", indoor), air_of("The outdoor air", outdoor)
    return limits.dry_range(assembly, room, outdoors, variable, _varied(assembly, variable, values))


def months(roof: Roof, place: PlaceLike = "cold", room: RoomLike = 0.4) -> Months:
    """Twelve months by hand: what gathers in winter, what leaves in summer, what is left.

    Parameters
    ----------
    roof : Assembly, str or path
        As in `roof`.
    place : str, path, HourlyWeather, MonthlyClimate or two lists of 12
        As in `year`.
    room : float, str, Air or a rule of `weather.indoor`
        As in `year`: a humidity [-], 0.05 to 0.95, an air, or a rule.

    Returns
    -------
    Months

    Raises
    ------
    UnknownName, OutOfRange, NotUnderstood, BadFile
        For what cannot be meant, in one sentence.
    NotConverged
        When a membrane finds no steady permeance in some month.

    Notes
    -----
    Diffusion alone: no air leak, no storage, no sun.

    Examples
    --------
    >>> months("vented-vault", place="cold", room="40 %")
    Months(Vented vault, 50-perm outer membrane: dry, no wetting)
    """
    here = _setting(Job(_roof(roof), _place(place)), place, room)
    return monthly.balance(here.job.assembly, here.months, here.room)


def year(
    roof: Roof,
    place: PlaceLike = "cold",
    room: RoomLike = 0.4,
    ach50: Given | None = None,
    *,
    volume: Given = Tightness.volume,
    area: Given = Tightness.area,
    share: Given = Tightness.share,
    height: Given = Tightness.height,
    vent: Vent | None = None,
    azimuth: Given = Job.azimuth,
    absorptance: float = Job.absorptance,
    start_humidity: Given = Job.start_humidity,
    years: int = Job.years,
    design: str = Job.design,
    progress: Callable[[int, int], bool | None] | None = None,
) -> Hours | Months:
    """A roof hour by hour through a year, until the year repeats: the run that ``dryward check`` judges.

    Parameters
    ----------
    roof : Assembly, str or path
        As in `roof`.
    place : str, path, HourlyWeather, MonthlyClimate or two lists of 12
        An invented place (`demos` lists them); a weather file (EPW); a year
        of hours; or twelve monthly means, temperatures first, then
        humidities: they have no hours, and the answer is that of `months`.
    room : float, str, Air or a rule of `weather.indoor`
        The humidity of the rooms in the heating season [-], 0.05 to 0.95, at
        21 degC, and a cooled house in summer; or one air for all year; or a
        rule.
    ach50 : float or str, optional
        The blower-door test: air changes at 50 Pa [1/h], 0 to 50.  Not given:
        no leak is counted.
    volume, area : float or str, optional
        Of the house [m3], 50 to 10 000, and of the roof [m2], 1 to 5000.
    share, height : float or str, optional
        Part of the leak that lies in the roof [-], 0 to 1; its height above
        the neutral level [m], 0 to 20.
    vent : Vent, optional
        The openings of the vent space.  Not given: it holds outdoor air.
    azimuth : float or str, optional
        Way the slope faces, from north over east [degrees], 0 to 360, or
        text such as ``"south"``.
    absorptance : float, optional
        Share of sunlight that the covering takes in [-], 0.05 to 0.98.
    start_humidity : float or str, optional
        Of all layers at the start [-], 0.1 to 1.
    years : int, optional
        Most years of the run [-], 1 to 10.
    design : {"typical", "damp house", "cold winter"}, optional
        The year that the roof is designed for.
    progress : function, optional
        Called with (hours done, hours in all); when it returns False the run ends.

    Returns
    -------
    Hours or Months
        With `verdict`, `plot` and `to_table`.

    Raises
    ------
    UnknownName, OutOfRange, NotUnderstood, BadFile
        For what cannot be meant, in one sentence.
    NotConverged, Stopped
        As in `hourly.simulate`.

    Notes
    -----
    The first year on a machine compiles the march, which takes some seconds.

    Examples
    --------
    >>> run = year("vented-vault", place="cold", room="40 %", ach50=3, years=1)
    >>> run.verdict.state, run.verdict.worst.place.layer
    ('dry', 'deck')
    >>> year("vented-vault-osb", place="very-cold", room="50 %", ach50=3, years=1).verdict.state
    'wet'
    """
    tightness = None
    if ach50 is not None:
        tightness = Tightness(
            _number(ach50, "air changes at 50 Pa"),
            _number(volume, "volume"),
            _number(area, "area"),
            _number(share, "share"),
            _number(height, "length"),
        )
    job = Job(
        _roof(roof),
        _place(place),
        tightness=tightness,
        vent=vent,
        azimuth=_number(azimuth, "azimuth"),
        absorptance=absorptance,
        start_humidity=_number(start_humidity, "relative humidity", "%"),
        years=years,
        design=design,
    )
    here = _setting(job, place, room)
    if here.hours is not None:
        return run_years(here, progress)
    if tightness is not None:
        raise OutOfRange(message("api.no-leak-in-months", word="ach50"))
    return monthly.balance(job.assembly, here.months, here.room)


#: Inside the functions below, where the word is the name of what was given.
_roof = roof


def _place(place: PlaceLike) -> Place:
    """Where the roof stands, as a job has it; a year of hours takes the place of what it says."""
    if isinstance(place, HourlyWeather):
        return Place()
    if isinstance(place, MonthlyClimate):
        return Place("means", "", tuple(place.temperature.tolist()), tuple(place.relative_humidity.tolist()))
    if isinstance(place, (str, os.PathLike)):
        typed = str(place).strip().lower().replace(" ", "-")
        if typed in weather.demos():
            return Place("demo", typed)
        if Path(place).suffix.lower() == ".epw" or Path(place).is_file():
            return Place("file", str(place))
        raise UnknownName("place", str(place), weather.demos())
    if isinstance(place, Sequence) and len(place) == 2:
        temperature, humidity = (_numbers(each, quantity) for each, quantity in zip(
            place, ("temperature", "relative humidity"), strict=True))  # fmt: skip
        return _place(MonthlyClimate(temperature, humidity))
    raise OutOfRange(message("api.no-place", given=str(place)[:40]))


def _setting(job: Job, place: PlaceLike, room: RoomLike) -> Setting:
    """Weather and room air of a job, with what no job can hold put in."""
    given = place if isinstance(place, HourlyWeather) else None
    if isinstance(room, (str, int, float)):
        humidity = _number(room, "relative humidity", "%")
        return setting(dataclasses.replace(job, room=Room(relative_humidity=humidity)), given)
    return setting(job, given, room if hasattr(room, "at") else weather.indoor.constant(air_of("The room", room)))


__all__ = ["Vent", "roof", "membrane", "profile", "sweep", "drying_rates", "dry_range", "months", "year"]
