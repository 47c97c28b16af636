"""Three sentences for the client and three for the inspector, made from what was found."""

import numpy as np

from dryward import units
from dryward.building import AirSpace, Material, codes
from dryward.language import listing, message
from dryward.report.check import CANNOT_TELL, MET, Review, designed, kind, worded
from dryward.report.code_checks import warm_side
from dryward.report.setting import setting
from dryward.verdict import LATER, NEVER, WITHIN, words

#: Room humidity in deep winter that a house is seldom below [-]; common practice, no source.
_DRY_HOUSE = 0.30


def for_client(review: Review, unit_system: str = "us") -> tuple[str, str, str]:
    """Three plain sentences for the people who live there."""
    return units.read_in(review.headline, unit_system), _rooms(review, unit_system), _dries(review)


def _dries(review: Review) -> str:
    """That it can dry again, and what to tell us."""
    start = review.check("wet-start")
    if start is None or start.answer in (LATER, NEVER):  # of what does not dry the headline has said so
        return message("report.tell-us")
    days = start.number("time-to-dry")
    if start.answer == WITHIN and days is not None:
        return message("report.dries-in-days-tell-us", days=units.number(days, 0))
    return message("report.dries-tell-us")


def _rooms(review: Review, unit_system: str) -> str:
    """How humid the rooms may be: from the hourly year alone, since only that counts the leak."""
    roof, limit = kind(review.job.assembly), review.limit
    if limit is None:
        return message("report.rooms-not-run", kind=roof)
    here = setting(review.job)
    cold = units.show(here.winter.temperature, "temperature", unit_system, 0)
    leak = message("report.leak-as-tested" if review.leaky is None else "report.leak-assumed")
    lowest, highest = (units.show(each, "relative humidity", unit_system) for each in (limit.lowest, limit.highest))
    if limit.humidity is None:
        return message("report.rooms-never-dry", kind=roof, leak=leak, lowest=lowest)
    if not limit.beyond:
        return message("report.rooms-always-dry", kind=roof, leak=leak, highest=highest, cold=cold)
    share = units.show(limit.humidity, "relative humidity", unit_system)
    if limit.humidity < _DRY_HOUSE:
        return message("report.rooms-too-dry", kind=roof, leak=leak, share=share)
    return message("report.rooms-at-or-below", share=share, cold=cold, leak=leak, beyond=worded(limit.beyond))


def for_inspector(review: Review, unit_system: str = "us") -> tuple[str, str, str]:
    """Three sentences with the numbers an inspector asks for."""
    return _retarder(review, unit_system), _vents(review, unit_system), _proof(review, unit_system)


def _retarder(review: Review, unit_system: str) -> str:
    job = review.job
    dry = warm_side(job.assembly)
    if not np.isfinite(dry) or dry > 6e-7:
        return message("report.no-retarder")
    made = [layer.substance for layer in job.assembly.inner_layers]
    films = [each for each in made if not isinstance(each, (Material, AirSpace))]
    wet = max((film.permeance(1.0, 0.5) for film in films if film.permeance(0.5, 0.0) <= dry), default=dry)
    name = codes.retarder_class(dry)
    film = (
        message("report.retarder-of-class", **{"class": name})
        if name != "none"
        else message("report.retarder-of-no-class")
    )
    return message(
        "report.retarder",
        opens=wet > 1.5 * dry,
        kind=film,
        dry=units.show(dry, "permeance", unit_system),
        wet=units.show(wet, "permeance", unit_system),
        section=_classes(review),
        locally=codes.locally(),
    )


def _classes(review: Review) -> str:
    """The section that names the classes, in the edition that was asked for or the newest that was read."""
    ruling = codes.judge("retarder", review.job.place.zone or None, review.edition)
    if not ruling.section:
        return message("report.section-of-the-code")
    return message("report.section-and-edition", section=ruling.section, edition=codes.years(ruling.edition))


def _vents(review: Review, unit_system: str) -> str:
    job = review.job
    gap = next((layer for layer in job.assembly.layers if layer.vented), None)
    if gap is None:
        return message(f"report.{kind(job.assembly)}-without-vent-space")
    depth = units.thickness(gap.thickness or 0.0, unit_system)
    check = review.check("vents")
    if check is None or check.data is None:
        return message("report.vent-space", depth=depth)
    ruling, locally = check.data.ruling, codes.locally()
    ratio = units.number(check.data.ratio, 0)
    if ruling.answer == CANNOT_TELL:
        return message("report.vent-space-cannot-tell", depth=depth, ratio=ratio, locally=locally)
    met = ruling.answer == MET
    if not ruling.conditions:
        return message("report.vent-space-ruled", depth=depth, ratio=ratio, met=met, locally=locally)
    asks = ruling.conditions
    id = "report.vent-space-ruled-by-conditions"
    return message(id, depth=depth, ratio=ratio, met=met, conditions=asks, locally=locally)


def _proof(review: Review, unit_system: str) -> str:
    """What the test and the checks found, in one sentence."""
    job, tight = review.job, review.job.tightness
    tested = message("report.tested", changes=units.number(tight.ach50)) if tight else message("report.not-tested")
    facts = {
        "tested": tested,
        "method": message("report.by-hours" if review.hourly else "report.by-months"),
        "kind": kind(job.assembly),
        "state": worded(review.state),
        "account": words.account(review.verdict, unit_system),
    }
    others = [
        message("report.year-and-state", design=designed(design), state=worded(each.state))
        for design, each in review.designs
        if design != job.design
    ]
    if not others:
        return message("report.proof", **facts)
    years = message("report.in-the-other-years", list=listing(others), leak=review.leaky is not None)
    return message("report.proof-and-other-years", years=years, **facts)
