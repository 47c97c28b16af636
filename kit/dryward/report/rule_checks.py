"""Vent openings by arithmetic, and the rows of the code."""

import dataclasses

from dryward import units
from dryward.building import codes
from dryward.building.assembly import WALL
from dryward.building.membranes import HIGHEST
from dryward.physics.free_area import ratio_provided
from dryward.report import amounts, code_facts
from dryward.report.findings import CANNOT_TELL, NO, YES, Finding, Number

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
        permeance=code_facts.warm_side(job.assembly),
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
        _openings(length, high + low, verdict),
        ""
        if good is not False
        else "Open the eave and the ridge, a little more low than high. First make the ceiling airtight.",
        "A code ratio, not physics: how much a vent space carries follows from weather, leaks and gap.",
        (
            Number("Free area, eave and ridge together", high + low, "opening"),
            Number("Gap", gap.thickness or 0.0, "length"),
        ),
        _place(verdict),
        verdict,
    )


#: What stands before the conditions in the reason of the code row.
ASKS = "which asks for "


def _openings(length, free, verdict):
    """Why the row is met or not, for a foot and a meter of eave; the roof is looked at in a strip that wide."""
    have = f"the openings have {amounts.opening(free)} of eave, high and low together"
    conditions = verdict.why.partition(ASKS)[2]
    if conditions:
        return (
            f"{have[0].upper()}{have[1:]}. That is between 1/300 and 1/150 of the roof area, {ASKS}{conditions}. "
            "The high openings are taken as at the ridge: check on site."
        )
    row, said = ("plain", "") if verdict.answer == "met" else ("reduced", "Even ")
    asked = codes.required(f"vent-area-{row}")
    return f"{said}1/{1 / asked:.0f} of the roof area is {amounts.opening(asked * length)} of eave; {have}."


def code_rows(setting):
    """What the code rows say that this job has facts for."""
    job, found = setting.job, []
    zone = job.place.zone or None
    gap = next((layer for layer in job.assembly.layers if layer.vented), None)
    wall = job.assembly.slope >= WALL
    if gap is not None and gap.thickness and not wall:
        found.append(_finding(codes.judge("vent-air-space", zone=zone, value=gap.thickness)))
    if gap is None and not wall:
        found += [_finding(verdict, _FOAM_ALSO.get(verdict.rule)) for verdict in _unvented(job.assembly, zone)]
    if job.tightness is not None and "airtightness" in codes.rules():
        found.append(_finding(codes.judge("airtightness", zone=zone, value=job.tightness.ach50 / 3600)))
    if wall and code_facts.warm_side(job.assembly) < HIGHEST:
        found.append(_finding(codes.judge("retarder", zone=zone, **code_facts.retarder(job.assembly))))
    return tuple(found)


#: What a row of an unvented roof leaves to be shown.
_FOAM_ALSO = {"unvented-insulation": "that the foam is air-impermeable and without gaps must be shown; "}


def _unvented(assembly, zone):
    """The rows of an unvented roof; without foam that is known, none is called broken."""
    facts, found = code_facts.unvented(assembly), []
    for verdict in codes.unvented_roof(zone, **facts):
        if verdict.rule == "unvented-insulation" and facts["resistance"] is None and verdict.section:
            asked = codes.required(verdict.rule, zone) if zone else None
            least = f"; the rule asks for {units.show(asked, 'thermal resistance', 'us')} of it" if asked else ""
            why = f"no foam outside the other insulation is known here as air-impermeable insulation{least}"
            verdict = dataclasses.replace(verdict, answer="cannot tell", why=why)
        found.append(verdict)
    return found


def _finding(verdict, also=None):
    answer, good = _ANSWERS.get(verdict.answer, (CANNOT_TELL, None))
    return Finding(
        f"code-{verdict.rule}",
        f"Is the code row met: {codes.rules().get(verdict.rule, verdict.rule)}?",
        answer,
        good,
        f"{verdict.answer.capitalize()}: {verdict.why}.",
        limits=f"{also or ''}{codes.LOCALLY}",
        source=_place(verdict),
        data=verdict,
    )


#: Codes by the letters the trade knows them by.
_CODES = {"International Residential Code": "IRC", "International Energy Conservation Code, residential": "IECC"}


def _place(verdict):
    """Code, section, edition and how it was read, as one phrase."""
    code = " ".join(part for part in (_CODES.get(verdict.source, verdict.source), verdict.section) if part)
    edition = f"edition{'s' if ' to ' in verdict.edition else ''} {verdict.edition}" if verdict.edition else ""
    return ", ".join(part for part in (code, edition, verdict.how_read) if part) or codes.LOCALLY
