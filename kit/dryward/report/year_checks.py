"""Twelve months by hand, and hour by hour over several years."""

import dataclasses

from dryward.building import Material
from dryward.physics import monthly
from dryward.report import amounts, uncertain
from dryward.report.findings import CANNOT_TELL, NO, YES, Finding, Number
from dryward.report.setting import leak, vent_space
from dryward.units import from_si
from dryward.weather import Air

#: Mold index that must not be reached [-]; ASHRAE 160 since its addendum of 2016, from memory.
MOLD_LIMIT = 3.0
#: Wood moisture of the hourly check [mass %]; common practice, no source: caution begins here.
WOOD_CAUTION = 20.0
#: Free water at faces that take up none [kg/m2]; DIN 4108-3:2024, read in a secondary source.
FREE_WATER = 0.5
#: Label of the error of the sums.
BALANCE = "Balance error"
#: Gain from one year's end to the next that still counts as none [kg/m2].
COMES_HOME = 0.02


def twelve_months(setting):
    """Does what gathers in winter leave by autumn?"""
    months = monthly.balance(setting.job.assembly, setting.months, setting.room)
    question = "Does the water of winter leave again within the year?"
    limits = "Monthly means, diffusion only: no storage, no air leak, no sun. ISO 13788 says so itself."
    numbers = (
        Number("Most held", months.peak, "area density"),
        Number("Held at the year's end", months.left, "area density"),
        Number("Growth a year", months.growth, "area density"),
    )
    held = amounts.water(months.peak)
    words = {
        "no wetting": (YES, True, "No month brings water to any plane.", "", ""),
        "dries": (YES, True, f"Up to {held} gathers in winter and all of it leaves again.", "", ""),
        "holds": (
            NO,
            False,
            f"Up to {held} gathers and some of it stays at the year's end.",
            "Summer gives back less than winter brings.",
            "Cut what comes in: a tighter room side, or drier room air. Then open the drying side.",
        ),
        "grows": (
            NO,
            False,
            f"Each year ends wetter: {amounts.water(months.growth)} more.",
            "Summer gives back less than winter brings, year after year.",
            "Change the assembly: a more open outer side, or a tighter room side.",
        ),
    }
    answer, good, what, why, change = words[months.verdict]
    return Finding(
        "twelve-months",
        question,
        answer,
        good,
        what,
        why,
        change,
        limits,
        numbers,
        "ISO 13788:2012 monthly balance (read in secondary sources)",
        months,
    )


def run_years(setting, progress=None, years=None, start=None):
    """The hourly run of a job.

    Parameters
    ----------
    setting : Setting
        With hourly weather.
    progress : function, optional
        As in `hourly.simulate`.
    years : int, optional
        Otherwise those of the job.
    start : Air, dict or Hours, optional
        What the layers start with, as in `hourly.simulate`; otherwise that of the job.

    Returns
    -------
    Hours

    Raises
    ------
    NotConverged, Stopped
        As in `hourly.simulate`.
    """
    from dryward.physics import hourly

    typed = options(setting)
    typed["years"] = years or typed["years"]
    typed["initial"] = start if start is not None else typed["initial"]
    return hourly.simulate(setting.job.assembly, setting.hours, setting.room, progress=progress, **typed)


def options(setting):
    """Keywords of `hourly.simulate` that a job stands for."""
    from dryward.physics.hourly import Surface, leak_flow

    job, flow = setting.job, leak(setting.job)
    if flow is not None:
        flow = leak_flow(flow, setting.hours, job.room.temperature, height=job.tightness.height)
    return {
        "years": job.years,
        "initial": Air(20.0, job.start_humidity),
        "vent": vent_space(job),
        "leak": flow,
        "surface": Surface(absorptance=job.absorptance, azimuth=job.azimuth),
    }


def years_findings(setting, faces, progress=None, spread=0):
    """The hourly run in findings: the trend, and the wettest of the watched faces.

    Parameters
    ----------
    setting : Setting
    faces : sequence of (str, str)
        As `steady_checks.watched` gives them.
    progress : function, optional
        Called with (hours done, hours in all); False ends the run.
    spread : int, optional
        Draws of the uncertain inputs; 0: no bands.

    Returns
    -------
    sequence of Finding
    """
    question = "Hour by hour, does each year end as dry as it began?"
    if setting.hours is None:
        what = "There is no hourly weather for typed means."
        return (Finding("years", question, CANNOT_TELL, None, what, change="Choose a weather file or a demo place."),)
    run = run_years(setting, progress)
    found = [_trend(setting, run, question)]
    if faces:
        found += [_wood(setting, run, faces), _mold(setting, run, faces)]
    found = _banded(setting, found, faces, progress, spread) if spread else found
    return tuple(_settled(each) for each in found)


def _settled(finding):
    """Numbers to nine digits: the last ones of a long sum hang on where the arrays lie in memory."""

    def nine(value):
        return None if value is None else float(f"{value:.9g}")

    numbers = (
        dataclasses.replace(each, value=nine(each.value), low=nine(each.low), high=nine(each.high))
        for each in finding.numbers
    )
    return dataclasses.replace(finding, numbers=tuple(numbers))


def _banded(setting, found, faces, progress, draws):
    """The findings with bands from many runs of the same years."""
    last = setting.hours.hours
    measures = [None, None]
    if faces:
        layer, side, kind = _moldiest(setting, found[0].data, faces)
        peak = found[1]

        def highest(run):
            there = run.layer(peak.data.name)
            if peak.numbers[0].quantity:
                return float(there.condensed[-last:].max())
            return min(float(there.moisture_content[-last:].max()), full_of_water(setting, there.name))

        measures = [
            (highest, peak.numbers[0].label),
            lambda run: float(run.mold_index(layer, kind, side)[-last:].max()),
        ]
    hours = last * setting.job.years

    def tell(done, total):
        return progress(done * hours, total * hours)

    banded = uncertain.years(setting, found, options(setting), *measures, draws, tell if progress else None)
    limits = {
        "years": COMES_HOME,
        "mold": MOLD_LIMIT,
        "peak": FREE_WATER if faces and found[1].numbers[0].quantity else WOOD_CAUTION,
    }
    return tuple(uncertain.turned(each, limits[each.id]) for each in banded)


def _limits(setting):
    tested = setting.job.tightness is not None
    left_out = ["rain", "framing"] if tested else ["air leaks (no blower-door number was given)", "rain", "framing"]
    leak = " The leak is spread evenly; a real one is a stream that wets one spot more." if tested else ""
    return f"One section between the framing, one year of weather repeated. Left out: {', '.join(left_out)}.{leak}"


def _trend(setting, run, question):
    year = run.time.size // setting.job.years
    ends = [float(run.water[(k + 1) * year - 1]) for k in range(setting.job.years)]
    before = ends[-2] if len(ends) > 1 else float(run.initial_water @ run.width)
    change = ends[-1] - before
    home = change <= COMES_HOME
    numbers = (
        Number("Change over the last year", round(change, 9), "area density"),
        Number("Most free water", float(run.condensed[-year:].max()), "area density"),
        Number(BALANCE, float(f"{run.balance_error:.0e}"), "", "of what passed"),
    )
    grams = from_si(abs(change), "g/m2")
    what = (
        f"The last year ends {amounts.water(abs(change))} {'wetter' if change > 0 else 'drier'} than it began."
        if grams >= 0.5
        else "The last year ends as it began."
    )
    return Finding(
        "years",
        question,
        YES if home else NO,
        home,
        what,
        "" if home else "It takes in more than it gives back, storage and drying counted.",
        "" if home else "Seal air leaks first; then a tighter room side or a more open outer side.",
        _limits(setting),
        numbers,
        "Hourly heat and moisture after EN 15026",
        run,
    )


def _is_wood(setting, layer):
    substance = setting.job.assembly.layer(layer).substance
    return isinstance(substance, Material) and substance.wood


def full_of_water(setting, layer):
    """Moisture content of wood that can take up no more [mass %]; what a run counts above it is free water."""
    substance = setting.job.assembly.layer(layer).substance
    return float(substance.water_content(1.0)) / substance.density * 100


def _first_year(setting, contents, last, full):
    """What the first year shows that the last does not: the start is still in the wood."""
    first = min(float(contents.max()), full)
    if setting.job.years < 2 or round(first) <= round(last):
        return ""
    start = setting.job.start_humidity * 100
    return f" In the first year, from the start humidity of {start:.0f} %, it peaks at {first:.0f} %."


def _wood(setting, run, faces):
    year = run.time.size // setting.job.years
    layers = {name: run.layer(name) for name, _ in faces}
    peaks = {name: float(found.highest_relative_humidity[-year:].max()) for name, found in layers.items()}
    layer = max(peaks, key=peaks.get)
    found = layers[layer]
    if _is_wood(setting, layer):
        peak, full = float(found.moisture_content[-year:].max()), full_of_water(setting, layer)
        good = peak < WOOD_CAUTION
        what = f"The {layer} peaks at {peak:.0f} % moisture content in the last year."
        if peak > full:
            peak = full
            what = (
                f"In the last year the {layer} is soaked: more water comes than the wood can hold, "
                f"{full:.0f} % moisture content; the rest would run off or freeze on it."
            )
        what += _first_year(setting, found.moisture_content[:year], peak, full)
        number = Number("Peak moisture content", peak, "", "% MC")
    else:
        peak = float(found.condensed[-year:].max())
        good = peak < FREE_WATER
        what = (
            f"The {layer} holds at most {amounts.water(peak)} of free water in the last year; "
            f"its wettest part peaks at {peaks[layer] * 100:.0f} % relative humidity."
        )
        number = Number("Most free water in the layer", peak, "area density")
    hours = int((found.highest_relative_humidity[-year:] >= 0.9).sum())
    return Finding(
        "peak",
        f"In the last year, does the {layer} stay below the caution level?",
        YES if good else NO,
        good,
        what,
        "" if good else "Wetting outruns drying for part of the year.",
        "" if good else "Look at air leaks and room humidity first.",
        f"{_limits(setting)} Caution level for wood {WOOD_CAUTION:.0f} % MC: common practice, no source; "
        f"for free water elsewhere {amounts.water(FREE_WATER)}, DIN 4108-3, read in a secondary source.",
        (number, Number("Hours above 90 % humidity", hours, "", "h")),
        "Hourly heat and moisture after EN 15026",
        found,
    )


def _mold(setting, run, faces):
    year = run.time.size // setting.job.years

    layer, side, kind = _moldiest(setting, run, faces)
    series = run.mold_index(layer, kind, side)
    peak = float(series[-year:].max())
    good = peak < MOLD_LIMIT
    return Finding(
        "mold",
        f"Does the mold index at the {side} face of the {layer} stay below {MOLD_LIMIT:.0f}?",
        YES if good else NO,
        good,
        f"The mold index peaks at {peak:.1f} of 6 at the {side} face of the {layer}.",
        "" if good else "It is humid and warm there at the same time for too long.",
        "" if good else "Hold the room drier in fall and spring, seal leaks, or open the outer side.",
        f"A laboratory model for {kind} surfaces; real growth differs. Not an inspection for mold.",
        (Number("Peak mold index", peak, "", "of 6"),),
        "Mold index after Hukka and Viitanen 1999 and Ojanen 2010 (read in secondary sources); limit from memory",
        series,
    )


def _moldiest(setting, run, faces):
    """Layer, side and kind of surface where the mold index of the last year is highest."""
    year = run.time.size // setting.job.years

    def kind(layer):
        return "sensitive" if _is_wood(setting, layer) else "medium resistant"

    layer, side = max(faces, key=lambda face: run.mold_index(face[0], kind(face[0]), face[1])[-year:].max())
    return layer, side, kind(layer)
