"""Three sentences for the client and three for the inspector, made from what was found."""

import numpy as np

from dryward import units
from dryward.building import codes
from dryward.report.check import CANNOT_TELL, MET, Check, Review, called
from dryward.report.code_checks import warm_side
from dryward.report.setting import setting
from dryward.verdict import LATER, NEVER, WITHIN, words

#: Room humidity in deep winter that a house is seldom below [-]; common practice, no source.
_DRY_HOUSE = 0.30


def for_client(review: Review, unit_system: str = "us") -> tuple[str, str, str]:
    """Three plain sentences for the people who live there."""
    start, tell = review.check("wet-start"), "tell us at once of drips, stains or a musty smell."
    # Of what does not dry the headline has said so.
    dries = "" if start is None or start.answer in (LATER, NEVER) else f"{_wet_start(start)}; "
    return review.headline, _rooms(review, unit_system), words.capital(f"{dries}{tell}")


def _wet_start(start: Check) -> str:
    days = start.number("Time to dry")
    if start.answer == WITHIN and days is not None:
        return f"What gets wet once can dry again, in about {days:.0f} days by the hourly run"
    return "What gets wet once can dry again, though how long it takes was not worked out"


def _rooms(review: Review, unit_system: str) -> str:
    """How humid the rooms may be: from the hourly year alone, since only that counts the leak."""
    roof, limit = called(review.job.assembly), review.limit
    if limit is None:
        return (
            f"How humid the rooms may be follows only from hourly years with the air leak, which were not run: "
            f"ask us before you close this {roof} in, and run the fan."
        )
    here = setting(review.job)
    cold = units.show(here.winter.temperature, "temperature", unit_system, 0)
    leak = "with the air leak as tested" if review.leaky is None else "with 3 air changes at 50 Pa assumed, not tested"
    lowest, highest = (units.show(each, "relative humidity", unit_system) for each in (limit.lowest, limit.highest))
    if limit.humidity is None:
        return (
            f"By the hourly year, {leak}, this {roof} does not stay dry at any room humidity from {lowest} up: "
            "seal the leaks and change the layers first."
        )
    share = units.show(limit.humidity, "relative humidity", unit_system)
    if not limit.beyond:
        return (
            f"By the hourly year, {leak}, this {roof} stays dry up to {highest} room humidity in winter "
            f"({cold} outside in the coldest month); windows will ask for less."
        )
    if limit.humidity < _DRY_HOUSE:
        return (
            f"By the hourly year, {leak}, this {roof} stays dry only up to {share} room humidity in winter, drier than "
            "most houses can be held: seal the leaks and change the layers first."
        )
    return (
        f"Keep the rooms at or below {share} humidity in winter ({cold} outside in the coldest month), or lower if "
        f"windows or cold corners get damp, and run the fan: by the hourly year, {leak}, one point more is "
        f"{limit.beyond}."
    )


def for_inspector(review: Review, unit_system: str = "us") -> tuple[str, str, str]:
    """Three sentences with the numbers an inspector asks for."""
    return _retarder(review, unit_system), _vents(review, unit_system), _proof(review)


def _retarder(review: Review, unit_system: str) -> str:
    job = review.job
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
        f"by the classes of {_classes(review)}, {codes.locally()}."
    )


def _classes(review: Review) -> str:
    """The section that names the classes, in the edition that was asked for or the newest that was read."""
    ruling = codes.judge("retarder", review.job.place.zone or None, review.edition)
    edition = f", edition {ruling.edition}" if ruling.edition else ""
    return f"IRC {ruling.section}{edition}" if ruling.section else "the IRC"


def _vents(review: Review, unit_system: str) -> str:
    job = review.job
    gap = next((layer for layer in job.assembly.layers if layer.vented), None)
    if gap is None:
        if called(job.assembly) == "wall":
            return "The wall has no vent space."
        return "The roof has no vent space; the code rows of unvented roofs apply and stand below."
    said = f"Vent space {units.thickness(gap.thickness or 0.0, unit_system)} deep"
    check = review.check("vents")
    if check is None or check.data is None:
        return f"{said}; the openings were not given."
    ruling = check.data.ruling
    said += f", with openings of 1/{check.data.ratio:.0f} of the roof area"
    if ruling.answer == CANNOT_TELL:
        return f"{said}; whether that meets the code ratio cannot be told from what was given, {codes.locally()}."
    met = "meets" if ruling.answer == MET else "does not meet"
    # Between the two ratios it is the conditions that decide.
    conditions = f" (the smaller one, which asks for {ruling.conditions})" if ruling.conditions else ""
    return f"{said}, which {met} the code ratio{conditions}, {codes.locally()}."


def _proof(review: Review) -> str:
    """What the test and the checks found, in one sentence."""
    job, found = review.job, review.verdict
    tested = (
        f"Blower door {units.number(job.tightness.ach50)} air changes an hour at 50 Pa"
        if job.tightness
        else "No blower-door test"
    )
    method = (
        "hourly heat and moisture after EN 15026"
        if review.hourly
        else "monthly diffusion after ISO 13788, no air leak counted"
    )
    said = f"{tested}; by {method} the {called(job.assembly)} is {review.state}: {words.account(found)}"
    others = [f"{design} {each.state}" for design, each in review.designs if design != job.design]
    if others:
        leak = "" if review.leaky is None else ", with the assumed leak"
        said += f" (in the other design years{leak}: {', '.join(others)})"
    return f"{said}."
