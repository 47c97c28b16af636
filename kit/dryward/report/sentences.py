"""Three sentences for the client and three for the inspector, made from the findings."""

import numpy as np

from dryward import units
from dryward.building import codes
from dryward.physics import limits
from dryward.report.amounts import thickness
from dryward.report.code_facts import warm_side
from dryward.report.findings import called
from dryward.report.rule_checks import ASKS
from dryward.report.setting import setting

#: Room humidities tried for the client's limit [-].
_TRIED = np.arange(0.15, 0.701, 0.01)
#: Room humidity in deep winter that a house is seldom below [-]; common practice, no source.
_DRY_HOUSE = 0.30


def humidity_limit(here):
    """The highest room humidity at which nothing gets wet in the coldest month.

    Parameters
    ----------
    here : Setting

    Returns
    -------
    float or None
        [-], up to 0.70; None when even 15 % wets.
    """
    found = limits.safe_range(
        here.job.assembly, here.winter_room, here.winter, "indoor_relative_humidity", _TRIED, "stays dry"
    )
    dry = np.flatnonzero(found.holds)
    return float(_TRIED[dry[-1]]) if found.holds[0] else None


def for_client(review, unit_system="us"):
    """Three plain sentences for the people who live there.

    Parameters
    ----------
    review : Review
    unit_system : {"us", "si"}

    Returns
    -------
    tuple of str (3)
    """
    here = setting(review.job)
    limit = humidity_limit(here)
    cold = units.show(here.winter.temperature, "temperature", unit_system, 0)
    roof = called(review.job.assembly)
    wets = limit is None or limit < _DRY_HOUSE
    if wets and review.dries:
        when = "At any usual room humidity" if limit is None else f"Above {limit * 100:.0f} % room humidity"
        second = (
            f"{when} some water gathers in this {roof} each winter and leaves again: ask us before you close it in."
        )
    elif limit is None:
        second = (
            f"In the coldest month ({cold} outside) this {roof} wets at any usual room humidity: "
            "change the layers first."
        )
    elif limit >= _TRIED[-1] - 1e-9:
        second = (
            f"In the coldest month ({cold} outside) diffusion wets nothing up to 70 % room humidity; "
            "windows will ask for less."
        )
    elif wets:
        second = (
            f"In the coldest month ({cold} outside) water gathers in this {roof} above {limit * 100:.0f} % room "
            "humidity, drier than most houses can be held: change the layers first."
        )
    else:
        share = f"{limit * 100:.0f} %"
        second = (
            f"Keep the rooms at or below {share} humidity in the coldest month ({cold} outside), or lower if windows "
            "or cold corners get damp, and run the fan."
        )
    start = review.finding("wet-start")
    tell = "tell us at once of drips, stains or a musty smell."
    dries = start.what.split(". ")[0].rstrip(".") if start else ""
    return review.verdict, second, f"{dries}; {tell}" if dries else tell.capitalize()


def for_inspector(review, unit_system="us"):
    """Three sentences with the numbers an inspector asks for.

    Parameters
    ----------
    review : Review
    unit_system : {"us", "si"}

    Returns
    -------
    tuple of str (3)
    """
    job = review.job
    return _retarder(job, unit_system), _vents(review, unit_system), _proof(review)


def _retarder(job, unit_system):
    dry = warm_side(job.assembly)
    if not np.isfinite(dry) or dry > 6e-7:
        return "There is no vapor retarder on the room side of the insulation."
    films = [layer for layer in job.assembly.inner_layers if layer.is_membrane]
    wet = max(
        (film.substance.permeance(1.0, 0.5) for film in films if film.substance.permeance(0.5, 0.0) <= dry), default=dry
    )
    name = codes.retarder_class(dry)
    kind = f"a class {name} vapor retarder" if name != "none" else "no vapor retarder by class"
    opens = f", opening to {units.show(wet, 'permeance', unit_system)} wet-cup" if wet > 1.5 * dry else ""
    return (
        f"Room side of the insulation: {kind} ({units.show(dry, 'permeance', unit_system)} dry-cup{opens}), "
        f"by the classes of IRC R702.7, {codes.LOCALLY}."
    )


def _vents(review, unit_system):
    job = review.job
    gap = next((layer for layer in job.assembly.layers if layer.vented), None)
    if gap is None:
        if called(job.assembly) == "wall":
            return "The wall has no vent space."
        return "The roof has no vent space; the code rows of unvented roofs apply and stand below."
    said = f"Vent space {thickness(gap.thickness or 0.0, unit_system)} deep"
    finding = review.finding("vents")
    if finding is None or finding.data is None:
        return f"{said}; the openings were not given."
    share = finding.what.split(" come to ")[-1].rstrip(".")
    said += f", with openings of {share}"
    if finding.good is None:
        return f"{said}; whether that meets the code ratio cannot be told from what was given, {codes.LOCALLY}."
    met = "meets" if finding.good else "does not meet"
    # Between the two ratios it is the conditions that decide.
    conditions = (
        " (the smaller one; it asks for a share of the openings high and near the ridge, and in zones 6 to 8 "
        "for a class I or II retarder inside)"
        if ASKS in finding.why
        else ""
    )
    return f"{said}, which {met} the code ratio{conditions}, {codes.LOCALLY}."


_YEAR = {
    "no wetting": "no month brings water to any plane",
    "dries": "what gathers in winter leaves again within the year",
    "holds": "some of what gathers in winter stays at the year's end",
    "grows": "each year ends wetter than the one before",
}


def _proof(review):
    """What the test and the checks found, in one sentence."""
    job = review.job
    tested = (
        f"Blower door {job.tightness.ach50:.3g} air changes an hour at 50 Pa"
        if job.tightness
        else "No blower-door test"
    )
    winter, summer = review.finding("winter"), review.finding("summer")
    wet = [month for each, month in ((winter, "coldest"), (summer, "warmest")) if not each.good]
    months = " and in the ".join(wet)
    said = [f"water gathers in the {months} month" if wet else "nothing gets wet in the coldest or the warmest month"]
    said.append(_YEAR[review.finding("twelve-months").data.verdict])
    years = review.finding("years")
    if years is not None and years.good is not None:
        said.append(f"hour by hour, with storage, the last year ends {'no ' if years.good else ''}wetter than it began")
    mold = review.finding("mold")
    if mold is not None:
        said.append(f"the mold index peaks at {mold.number('Peak mold index'):.1f} of 6")
    return f"{tested}; by calculation {', '.join(said[:-1])}, and {said[-1]}."
