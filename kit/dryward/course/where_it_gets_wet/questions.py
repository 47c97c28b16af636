"""Checks: one check does not decide, the line is not the water, and what makes the face at risk."""

from dryward import language
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import air, damp_all_the_same, face, gain, line_inches, roof, verdict
from dryward.units import from_si
from dryward.verdict import DRY

message = language.beside(__file__)

ROOM = 70


def passes(draw: Draw) -> Question | None:
    """What a check for water says of a roof whose wood would settle over its caution."""
    rh = draw.pick(40, (35, 40, 45))
    cold = draw.pick(36, (33, 34, 36, 37, 38, 39, 40))
    case = roof(1.0, "OSB"), (ROOM, rh), (cold, 80)
    draw.note(indoor_rh=rh, outdoor=cold)
    found = verdict(*case).finding("wood-moisture")
    if gain(*case) > 0 or found is None or found.state == DRY:
        return None
    caution, damage = found.criterion.caution, found.criterion.damage
    draw.tell("%", rh=rh, moist=round(found.value), caution=caution, damage=damage)
    draw.tell("degF", room=ROOM, cold=cold)
    draw.tell("perm", perms=1)
    return draw.ask(("one-check-decides", "passed"), ("one-check-decides", "rots"))


def water_at_the_line(draw: Draw) -> Question | None:
    """Whether there is water where the line is."""
    rh = draw.pick(40, (35, 40, 45))
    cold = draw.pick(20, (15, 20, 25, 30))
    case = roof(), (ROOM, rh), (cold, 80)
    draw.note(indoor_rh=rh, outdoor=cold)
    wet = gain(*case) > 0
    line, humid = line_inches(*case), face(*case)[1]
    if wet or line is None:
        return None
    draw.tell("%", humid=round(humid), rh=rh)
    draw.tell("degF", room=ROOM, cold=cold)
    draw.tell("in", line=line)
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


CHECKS = (passes, water_at_the_line, risk_face)
