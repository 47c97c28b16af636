"""Vent openings by arithmetic, and the rows of the code."""

from dryward.building import codes
from dryward.physics.free_area import ratio_provided
from dryward.report.findings import CANNOT_TELL, NO, WALL, YES, Finding, Number

_ANSWERS = {"met": (YES, True), "not met": (NO, False)}


def vents(setting):
    """Are the openings of the vent space as large as the code ratio asks?"""
    job = setting.job
    gap = next((layer for layer in job.assembly.layers if layer.vented), None)
    if gap is None or job.assembly.slope >= WALL:
        return None
    question = "Are the vent openings as large as the code ratio asks?"
    if job.vent is None:
        what = "No openings were given for the vent space."
        return Finding("vents", question, CANNOT_TELL, None, what, change="Type the net free area at eave and ridge.")
    length = job.vent.length
    high, low = job.vent.outlet_area, job.vent.inlet_area
    provided = ratio_provided(length, high, low)
    verdict = codes.judge(
        "vent-area",
        zone=job.place.zone or None,
        vented_area=length,
        free_area=high + low,
        permeance=warm_side(job.assembly),
        upper_share=high / (high + low),
        upper_depth=0.0,
    )
    answer, good = _ANSWERS.get(verdict.answer, (CANNOT_TELL, None))
    return Finding(
        "vents",
        question,
        answer,
        good,
        f"The openings come to 1/{provided[0]:.0f} of the roof area.",
        verdict.why,
        ""
        if good is not False
        else "Open the eave and the ridge, a little more low than high. First make the ceiling airtight.",
        "A code ratio, not physics: how much a vent space carries follows from weather, leaks and gap.",
        (Number("Free area for each meter", high + low, "area"), Number("Gap", gap.thickness or 0.0, "length")),
        _place(verdict),
        verdict,
    )


def warm_side(assembly):
    """Permeance of the tightest layer on the room side, by dry cup [kg/(s m2 Pa)].

    Parameters
    ----------
    assembly : Assembly

    Returns
    -------
    float
        Of the tightest of the layers before the thickest insulation, at a
        mean RH of 25 %.
    """
    main = max(assembly.inner_layers, key=lambda layer: layer.thermal_resistance)
    before = assembly.inner_layers[: assembly.inner_layers.index(main)]
    return min((_dry(layer) for layer in before), default=float("inf"))


def _dry(layer):
    if layer.is_membrane:
        return layer.substance.permeance(0.5, 0.0)
    return layer.permeance


def code_rows(setting):
    """What the code rows say that this job has facts for."""
    job, found = setting.job, []
    zone = job.place.zone or None
    gap = next((layer for layer in job.assembly.layers if layer.vented), None)
    if gap is not None and gap.thickness and job.assembly.slope < WALL:
        found.append(codes.judge("vent-air-space", zone=zone, value=gap.thickness))
    if job.tightness is not None and "airtightness" in codes.rules():
        found.append(codes.judge("airtightness", zone=zone, value=job.tightness.ach50 / 3600))
    if job.assembly.slope >= WALL:
        inside = warm_side(job.assembly)
        if inside < 6e-7:
            found.append(codes.judge("retarder", zone=zone, permeance=inside))
    return tuple(_finding(verdict) for verdict in found)


def _finding(verdict):
    answer, good = _ANSWERS.get(verdict.answer, (CANNOT_TELL, None))
    return Finding(
        f"code-{verdict.rule}",
        f"Code row: {codes.rules().get(verdict.rule, verdict.rule)}",
        answer,
        good,
        f"{verdict.answer.capitalize()}: {verdict.why}.",
        limits=codes.LOCALLY,
        source=_place(verdict),
        data=verdict,
    )


def _place(verdict):
    parts = (verdict.section, str(verdict.edition), verdict.how_read)
    return "; ".join(part for part in parts if part) or codes.LOCALLY
