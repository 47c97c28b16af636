"""Vent openings by arithmetic, and the rows of the code."""

import dataclasses

from dryward import units
from dryward.building import codes
from dryward.building.assembly import WALL
from dryward.building.membranes import HIGHEST
from dryward.checks import listed
from dryward.physics.free_area import ratio_provided
from dryward.report import amounts, code_facts
from dryward.report.findings import CANNOT_TELL, NO, YES, Finding, Number

_ANSWERS = {"met": (YES, True), "not met": (NO, False)}


def vents(setting, edition=None):
    """Are the openings of the vent space as large as the code ratio asks, in an edition or the newest that was read?"""
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
        edition=edition,
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
        _openings(length, high + low, verdict, edition),
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


def _openings(length, free, verdict, edition):
    """Why the row is met or not, for a foot and a meter of eave; the roof is looked at in a strip that wide."""
    have = f"the openings have {amounts.opening(free)} of eave, high and low together"
    first = f"{verdict.instead}. " if verdict.instead else ""
    conditions = verdict.why.partition(ASKS)[2]
    if conditions:
        return (
            f"{first}{have[0].upper()}{have[1:]}. "
            f"That is between 1/300 and 1/150 of the roof area, {ASKS}{conditions}. "
            "The high openings are taken as at the ridge: check on site."
        )
    row, said = ("plain", "") if verdict.answer == "met" else ("reduced", "Even ")
    asked = codes.required(f"vent-area-{row}", edition=edition)
    return f"{first}{said}1/{1 / asked:.0f} of the roof area is {amounts.opening(asked * length)} of eave; {have}."


def code_rows(setting, edition=None):
    """What the code rows say that this job has facts for, in an edition or the newest that was read."""
    job, found = setting.job, []
    asked = {"zone": job.place.zone or None, "edition": edition}
    gap = next((layer for layer in job.assembly.layers if layer.vented), None)
    wall = job.assembly.slope >= WALL
    if gap is not None and gap.thickness and not wall:
        found.append(_finding(codes.judge("vent-air-space", **asked, value=gap.thickness)))
    if gap is None and not wall:
        found += [_finding(*verdict) for verdict in _unvented(job.assembly, **asked)]
    if job.tightness is not None and "airtightness" in codes.rules():
        found.append(_finding(codes.judge("airtightness", **asked, value=job.tightness.ach50 / 3600)))
    if wall and code_facts.warm_side(job.assembly) < HIGHEST:
        found.append(_finding(codes.judge("retarder", **asked, **code_facts.retarder(job.assembly))))
    return tuple(found)


#: What the row of the foam leaves to be shown.
_FOAM_ALSO = "that the foam is air-impermeable and without gaps must be shown; "


def _unvented(assembly, zone, edition):
    """The rows of an unvented roof, each with what it leaves to be shown."""
    foam = code_facts.air_impermeable(assembly)
    for verdict in codes.unvented_roof(zone, edition, **code_facts.unvented(assembly)):
        if verdict.rule != "unvented-insulation":
            yield verdict, None
        elif foam.known and not foam.doubtful:
            yield verdict, _FOAM_ALSO
        else:
            yield _without_foam(verdict, foam, zone, edition), _FOAM_ALSO if foam.known else None


def _without_foam(verdict, foam, zone, edition):
    """The row of the foam where none is drawn, or none that is known to be tight to air."""
    least = codes.required(verdict.rule, zone, edition) if zone else None
    if least is None or verdict.answer == "met":
        return verdict
    asks = f"the row asks for {units.show(least, 'thermal resistance', 'us')} of it"
    names = listed([layer.name for layer in foam.doubtful])
    if foam.doubtful and foam.at_most >= least * (1 - 1e-9):
        why = f"whether {names} is air-impermeable is not known here; {asks}"
        return dataclasses.replace(verdict, answer="cannot tell", why=why)
    if foam.doubtful:
        have = units.show(foam.at_most, "thermal resistance", "us")
        why = f"even if {names} is air-impermeable there is only {have} at or above the deck; {asks}"
    else:
        why = f"no air-impermeable insulation is drawn at or above the deck; {asks}"
        if foam.inside:
            why += f"; {listed([layer.name for layer in foam.inside])} lies on the room side of other insulation"
    if codes.required("diffusion-port-area", zone, edition) is not None:
        why += "; in an attic of this zone a vapor diffusion port is another way"
    return dataclasses.replace(verdict, answer="not met", why=why)


def _finding(verdict, also=None):
    answer, good = _ANSWERS.get(verdict.answer, (CANNOT_TELL, None))
    return Finding(
        f"code-{verdict.rule}",
        f"Is the code row met: {codes.rules().get(verdict.rule, verdict.rule)}?",
        answer,
        good,
        f"{verdict.answer.capitalize()}: {verdict.reason}.",
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
