"""Vent openings by arithmetic, and the rows of the code."""

import dataclasses

from dryward import units
from dryward.building import codes
from dryward.building.assembly import WALL
from dryward.building.membranes import HIGHEST
from dryward.checks import listed
from dryward.physics.ventspace import ratio_provided
from dryward.report import amounts, code_facts
from dryward.report.check import CANNOT_TELL, NOT_MET, Check, Number


@dataclasses.dataclass(frozen=True)
class Openings:
    """The vent openings of a roof.

    Attributes
    ----------
    ratio : float
        Roof area over free area, high and low together [-].
    ruling : Ruling
    """

    ratio: float
    ruling: object


def vents(setting, edition=None):
    """Are the openings of the vent space as large as the code ratio asks, in an edition or the newest that was read?"""
    job = setting.job
    gap = next((layer for layer in job.assembly.layers if layer.vented), None)
    if gap is None or job.assembly.slope >= WALL:
        return None
    question = "Are the vent openings as large as the code ratio asks?"
    if job.vent is None:
        what = "No openings were given for the vent space."
        return Check("vents", question, CANNOT_TELL, what, change="Type the net free area at eave and ridge.")
    length = job.vent.length
    high, low = job.vent.outlet_area, job.vent.inlet_area
    provided = ratio_provided(length, high, low)
    ruling = codes.judge(
        "vent-area",
        zone=job.place.zone or None,
        edition=edition,
        vented_area=length,
        free_area=high + low,
        permeance=code_facts.warm_side(job.assembly),
        upper_share=high / (high + low),
        upper_depth=0.0,
    )
    return Check(
        "vents",
        question,
        ruling.answer,
        f"The openings come to 1/{provided[0]:.0f} of the roof area.",
        _openings(length, high + low, ruling, edition),
        "Open the eave and the ridge, a little more low than high. First make the ceiling airtight."
        if ruling.answer == NOT_MET
        else "",
        limits="A code ratio, not physics: how much a vent space carries follows from weather, leaks and gap.",
        numbers=(
            Number("Free area, eave and ridge together", high + low, "opening"),
            Number("Gap", gap.thickness or 0.0, "length"),
        ),
        source=_place(ruling),
        data=Openings(provided[0], ruling),
    )


def _openings(length, free, ruling, edition):
    """Why the row is met or not, for a foot and a meter of eave; the roof is looked at in a strip that wide."""
    have = f"the openings have {amounts.opening(free)} of eave, high and low together"
    first = f"{ruling.instead}. " if ruling.instead else ""
    if ruling.conditions:
        return (
            f"{first}{have[0].upper()}{have[1:]}. "
            f"That is between 1/300 and 1/150 of the roof area, which asks for {ruling.conditions}. "
            "The high openings are taken as at the ridge: check on site."
        )
    row, said = ("plain", "") if ruling.answer == "met" else ("reduced", "Even ")
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
        found += [_finding(*ruling) for ruling in _unvented(job.assembly, **asked)]
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
    for ruling in codes.unvented_roof(zone, edition, **code_facts.unvented(assembly)):
        if ruling.rule != "unvented-insulation":
            yield ruling, None
        elif foam.known and not foam.doubtful:
            yield ruling, _FOAM_ALSO
        else:
            yield _without_foam(ruling, foam, zone, edition), _FOAM_ALSO if foam.known else None


def _without_foam(ruling, foam, zone, edition):
    """The row of the foam where none is drawn, or none that is known to be tight to air."""
    least = codes.required(ruling.rule, zone, edition) if zone else None
    if least is None or ruling.answer == "met":
        return ruling
    asks = f"the row asks for {units.show(least, 'thermal resistance', 'us')} of it"
    names = listed([layer.name for layer in foam.doubtful])
    if foam.doubtful and foam.at_most >= least * (1 - 1e-9):
        why = f"whether {names} is air-impermeable is not known here; {asks}"
        return dataclasses.replace(ruling, answer="cannot tell", why=why)
    if foam.doubtful:
        have = units.show(foam.at_most, "thermal resistance", "us")
        why = f"even if {names} is air-impermeable there is only {have} at or above the deck; {asks}"
    else:
        why = f"no air-impermeable insulation is drawn at or above the deck; {asks}"
        if foam.inside:
            why += f"; {listed([layer.name for layer in foam.inside])} lies on the room side of other insulation"
    if codes.required("diffusion-port-area", zone, edition) is not None:
        why += "; in an attic of this zone a vapor diffusion port is another way"
    return dataclasses.replace(ruling, answer="not met", why=why)


def _finding(ruling, also=None):
    title = codes.rules().get(ruling.rule, ruling.rule)
    return Check(
        f"code-{ruling.rule}",
        f"{title[:1].upper()}{title[1:]}",
        ruling.answer,
        f"{ruling.answer.capitalize()}: {ruling.reason}.",
        limits=f"{also or ''}{codes.LOCALLY}",
        source=_place(ruling),
        data=ruling,
    )


#: Codes by the letters the trade knows them by.
_CODES = {"International Residential Code": "IRC", "International Energy Conservation Code, residential": "IECC"}


def _place(ruling):
    """Code, section, edition and how it was read, as one phrase."""
    code = " ".join(part for part in (_CODES.get(ruling.source, ruling.source), ruling.section) if part)
    edition = f"edition{'s' if ' to ' in ruling.edition else ''} {ruling.edition}" if ruling.edition else ""
    return ", ".join(part for part in (code, edition, ruling.how_read) if part) or codes.LOCALLY
