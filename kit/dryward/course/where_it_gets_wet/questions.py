"""Checks: one check does not decide, the line is not the water, the face at risk, July, and joists with no drop."""

import numpy as np

from dryward import language
from dryward.building.library import wood_moisture
from dryward.physics import monthly
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import FILM, air, damp_all_the_same, face, gain, roof, state, verdict
from dryward.units import from_si
from dryward.verdict import DRY
from dryward.weather import demo_climate

message = language.beside(__file__)

ROOM = 70


def passes(draw: Draw) -> Question | None:
    """A check for water that a roof passes whose wood is over its caution, or fails though all is gone by fall."""
    rh = draw.pick(40, (35, 40, 45))
    failed = draw.seed is not None and draw.coin
    draw.tell(failed=failed)
    draw.tell("%", rh=rh)
    draw.tell("degF", room=ROOM)
    draw.tell("perm", perms=1)
    built = roof(1.0, "OSB")
    if failed:
        town = demo_climate(draw.random.choice(("cold", "very-cold")))
        cold = round(from_si(float(min(town.temperature)), "degF"))
        year = monthly.balance(built, town, air(ROOM, rh))
        if not year.dries_out or year.peak <= 0:
            return None
        draw.tell("g/m2/day", water=gain(built, (ROOM, rh), (cold, 80)))
    else:
        cold = draw.pick(36, (33, 34, 36, 37, 38, 39, 40))
        case = built, (ROOM, rh), (cold, 80)
        found = verdict(*case).finding("wood-moisture")
        if gain(*case) > 0 or found is None or found.state == DRY:
            return None
        draw.tell("%", moist=round(found.value), caution=found.criterion.caution)
    draw.note(indoor_rh=rh, outdoor=cold, failed=failed)
    draw.tell("degF", cold=cold)
    return draw.ask("one-check-decides", "a-check-tells-nothing")


def water_at_the_line(draw: Draw) -> Question | None:
    """Whether there is water where the line is."""
    rh = draw.pick(40, (35, 40, 45))
    cold = draw.pick(20, (15, 20, 25, 30))
    case = roof(), (ROOM, rh), (cold, 80)
    draw.note(indoor_rh=rh, outdoor=cold)
    profile, humid = state(*case), face(*case)[1]
    if profile.wet_planes or profile.dew_point_depth is None:
        return None
    draw.tell("%", humid=round(humid), rh=rh)
    draw.tell("degF", room=ROOM, cold=cold)
    draw.tell("in", line=from_si(profile.dew_point_depth, "in"))
    draw.tell("perm", perms=50)
    return draw.ask("dew-point-is-a-place", "only-at-night", ("line-moves-wrong-way", "outward"))


def risk_face(draw: Draw) -> Question | None:
    """What makes the face at risk, with water on it or only with damp wood."""
    outer = draw.pick("OSB", ("OSB", "OSB", 0.1, 0.5, 1.0, 1.5))
    rh = draw.pick(40, (40, 45, 50))
    cold = draw.pick(36, (10, 15, 20, 34, 36, 38))
    case = roof(1.0, outer), (ROOM, rh), (cold, 80)
    draw.note(outer=outer, indoor_rh=rh, outdoor=cold)
    found, water, humid = verdict(*case), gain(*case), face(*case)[1]
    dew = from_si(air(ROOM, rh).dew_point, "degF")
    # Not where a little water gathers that does not count, nor where the line is outside the roof.
    if found.state == DRY or 0 < water < 0.1 or dew < cold + 4:
        return None
    say = draw.say
    layer = (
        message("risk-face-osb", perms=say(1.5, "perm"))
        if outer == "OSB"
        else message("risk-face-other-layer", perms=say(outer, "perm"))
    )
    if water:
        why = message("risk-face-why-wet", cold=say(cold, "degF"), water=say(water, "g/m2/day"))
    else:
        why = message(
            "risk-face-why-damp",
            cold=say(cold, "degF"),
            humid=say(round(humid), "%"),
            damp=damp_all_the_same(*case),
        )
    wrong = [
        (
            message("risk-face-dew-point-is-a-place", dew=say(dew, "degF")),
            "dew-point-is-a-place",
            message("risk-face-dew-point-is-a-place-reply", why=why),
        ),
        (
            message("risk-face-thickest-layer"),
            "thickest-layer",
            message("risk-face-thickest-layer-reply", why=why),
        ),
    ]
    if not water:
        reply = message("risk-face-no-drops-no-problem-reply", why=why)
        wrong.append((message("risk-face-no-drops-no-problem"), "no-drops-no-problem", reply))
    draw.because(why)
    return draw.words(
        message(
            "risk-face-ask",
            layer=layer,
            room=say(ROOM, "degF"),
            rh=say(rh, "%"),
            cold=say(cold, "degF"),
            perms=say(1, "perm"),
            fill=say(12, "in"),
        ),
        message("risk-face-right"),
        *wrong,
    )


def summer_line(draw: Draw) -> Question | None:
    """Whether there is water in July where the fill is as cold as the dew point of the outdoor air."""
    hot = draw.pick(88, (85, 86, 88, 90))
    humid = draw.pick(70, (65, 70, 75))
    cool = draw.pick(72, (70, 72, 74, 75))
    case = roof("variable"), (cool, 50), (hot, humid)
    draw.note(outdoor=hot, outdoor_rh=humid, indoor=cool)
    profile, back = state(*case), face(*case, FILM, 1)[1]
    dew = air(hot, humid).dew_point
    fill = slice(profile.face("insulation", 0), profile.face("insulation", 1) + 1)
    if profile.wet_planes or back > 97 or not profile.temperature[fill][0] < dew < profile.temperature[fill][-1]:
        return None
    depth = float(np.interp(dew, profile.temperature[fill], profile.depth[fill]))
    draw.tell("degF", hot=hot, cool=cool, dew=from_si(dew, "degF"))
    draw.tell("%", humid=humid, indoor=50, back=round(back))
    draw.tell("in", line=from_si(depth, "in"))
    draw.tell(damp=damp_all_the_same(*case))
    return draw.ask("dew-point-is-a-place", "push-is-always-outward")


def joists(draw: Draw) -> Question | None:
    """Wood in humid summer air with no drop on it."""
    cool = draw.pick(66, (60, 62, 64, 66, 68, 70))
    humid = draw.pick(88, (84, 86, 88, 90, 92))
    draw.note(temperature=cool, rh=humid)
    crawlspace = air(cool, humid)
    moist = 100 * float(wood_moisture(crawlspace.relative_humidity, crawlspace.temperature))
    draw.tell("degF", cool=cool)
    draw.tell("%", humid=humid, moist=round(moist))
    return draw.ask("no-drops-no-problem", "rh-is-moisture-content")


CHECKS = (passes, water_at_the_line, risk_face, summer_line, joists)
