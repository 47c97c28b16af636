"""Checks: the line moves, the line is not the water, and what makes the face at risk."""

from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import air, damp_all_the_same, face, gain, line_inches, roof, verdict
from dryward.units import from_si
from dryward.verdict import DRY

ROOM = 70


def line_moves(draw: Draw) -> Question | None:
    """Where the dew-point line goes when the room gets more humid."""
    low, high = draw.pick((20, 60), ((20, 50), (25, 50), (20, 60), (25, 60), (30, 60)))
    cold = draw.pick(20, (5, 10, 15, 20, 25))
    draw.note(low=low, high=high, outdoor=cold)
    first, then = (line_inches(roof(), (ROOM, rh), (cold, 80)) for rh in (low, high))
    assert first is not None  # such cold has a line at every RH that is drawn
    assert then is not None
    say = draw.say
    draw.because(
        f"Damper room air has a higher dew point. The roof is that warm nearer to the room, "
        f"so the line goes from {say(first, 'in')} to {say(then, 'in')} into the fill."
    )
    return draw.words(
        f"It is {say(cold, 'degF')} outside. Indoor RH goes up from {low} % to {high} % at {say(ROOM, 'degF')}. "
        "Where does the dew-point line in the fill go?",
        f"Toward the room: from {say(first, 'in')} to {say(then, 'in')} into the fill.",
        (f"Outward: from {say(then, 'in')} to {say(first, 'in')} into the fill.", "line-moves-wrong-way"),
        (f"It stays at {say(first, 'in')}. Only the cold moves it.", "line-moves-wrong-way"),
    )


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
    say = draw.say
    draw.because(
        f"The vapor does not stop at the line. It passes on through the open layer, and even the coldest face "
        f"stays at {humid:.0f} % RH, below full."
    )
    return draw.words(
        f"The room is {say(ROOM, 'degF')} and {rh} %, it is {say(cold, 'degF')} and 80 % outside. The dew-point line "
        f"lies {say(line, 'in')} into the fill, and the outer membrane has {say(50, 'perm')}. "
        "Is there water at the line?",
        "No. The vapor pressure there is below saturation.",
        ("Yes. That is where the air is at its dew point.", "dew-point-is-a-place"),
        ("Only at night.", "only-at-night"),
    )


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
    layer = f"OSB of {say(1.5, 'perm')}" if outer == "OSB" else f"an outer layer of {say(outer, 'perm')}"
    wrong = [
        (
            f"The plane in the fill that is as cold as the room's dew point, {say(dew, 'degF')}.",
            "dew-point-is-a-place",
        ),
        ("The middle of the fill, since it is the thickest layer.", "thickest-layer"),
    ]
    if water:
        draw.because(
            f"At {say(cold, 'degF')} outside that face takes up {say(water, 'g/m2/day')}: it is cold, "
            "and less leaves than comes."
        )
    else:
        draw.because(
            f"At {say(cold, 'degF')} outside no water gathers there, but that face stands at {humid:.0f} % RH."
            f"{damp_all_the_same(*case)}"
        )
        wrong.append(("None. No drops form anywhere in this roof.", "no-drops-no-problem"))
    return draw.words(
        f"Behind a {say(1, 'perm')} film lies {say(12, 'in')} of fill, then {layer}. The room is "
        f"{say(ROOM, 'degF')} and {rh} %, it is {say(cold, 'degF')} and 80 % outside. Which face is at risk?",
        "The inner face of the outer layer: cold, and tighter than what is before it.",
        *wrong,
    )


CHECKS = (line_moves, water_at_the_line, risk_face)
