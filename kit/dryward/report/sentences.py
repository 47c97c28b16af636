"""Three sentences for the client and three for the inspector, made from the findings."""

import numpy as np

from dryward import units
from dryward.building import codes
from dryward.physics import limits
from dryward.report.rule_checks import warm_side
from dryward.report.setting import setting

#: Room humidities tried for the client's limit [-].
_TRIED = np.arange(0.15, 0.701, 0.01)


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
    if limit is None:
        second = (
            f"In the coldest month ({cold} outside) this roof wets at any usual room humidity: change the layers first."
        )
    elif limit >= _TRIED[-1] - 1e-9:
        second = (
            f"In the coldest month ({cold} outside) diffusion wets nothing up to 70 % room humidity; "
            "windows will ask for less."
        )
    else:
        share = f"{limit * 100:.0f} %"
        second = f"Keep the rooms at or below {share} humidity in the coldest month ({cold} outside), and run the fan."
    start = review.finding("wet-start")
    third = (
        f"{start.what} Tell us at once of drips, stains or a musty smell." if start else "Tell us of drips or stains."
    )
    return review.verdict, second, third


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
        return "The assembly has no vent space; the code rows for unvented assemblies apply."
    parts = [f"Vent space: {units.show(gap.thickness or 0.0, 'length', unit_system)} clear"]
    finding = review.finding("vents")
    if finding is not None and finding.good is not None:
        parts.append(f"openings {finding.data.answer} ({finding.what.rstrip('.').lower()})")
    return f"{'; '.join(parts)}. {codes.LOCALLY[:1].upper()}{codes.LOCALLY[1:]}."


def _proof(review):
    job = review.job
    tight = f"{job.tightness.ach50:.2g} air changes an hour at 50 Pa" if job.tightness else "not yet tested"
    checks = [f"{each.question.rstrip('?').lower()}: {each.answer}" for each in review.findings[:4]]
    return f"Airtightness: {tight}. Moisture checks: {'; '.join(checks)}."
