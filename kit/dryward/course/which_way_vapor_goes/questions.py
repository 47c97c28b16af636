"""Checks: up from the crawlspace, almost no push, and equal RH."""

from dryward.teaching import vault
from dryward.teaching.questions import Draw, Question


def crawlspace(draw: Draw) -> Question | None:
    """A cool, damp crawlspace under a warm room."""
    below = draw.pick((65, 95), ((62, 95), (64, 90), (65, 95), (66, 90), (68, 85)))
    above = draw.pick((75, 50), ((74, 45), (75, 50), (76, 45), (75, 40)))
    draw.note(below=below, above=above)
    low, high = vault.air(*above).vapor_pressure, vault.air(*below).vapor_pressure
    if high < low + 100:
        return None
    say = draw.say
    draw.because(f"Vapor pressure is {say(high, 'Pa')} in the crawlspace and {say(low, 'Pa')} in the room.")
    return draw.words(
        f"The crawlspace is {say(below[0], 'degF')} and {below[1]} %, the room above is {say(above[0], 'degF')} and "
        f"{above[1]} %. Which way does vapor push?",
        "Up into the room.",
        ("Down, from warm to cold.", "warm-to-cold"),
        (
            "Neither way. Heat holds the damp down.",
            "heating-dries-the-air",
            "",
            "Warm air lies on top and stays there.",
        ),
    )


def no_push(draw: Draw) -> Question | None:
    """Two airs with very unlike RH and nearly the same vapor pressure."""
    warm, cool = draw.pick(
        ((75, 50), (60, 90)),
        (((75, 50), (60, 90)), ((75, 40), (55, 80)), ((70, 50), (55, 85)), ((72, 45), (55, 85)), ((78, 40), (60, 75))),
    )
    draw.note(warm=warm, cool=cool)
    first, second = vault.air(*warm).vapor_pressure, vault.air(*cool).vapor_pressure
    if abs(first - second) > 0.1 * first:
        return None
    say = draw.say
    draw.because(f"{say(first, 'Pa')} against {say(second, 'Pa')}: a push of only {say(abs(first - second), 'Pa')}.")
    return draw.words(
        f"One room is {say(warm[0], 'degF')} and {warm[1]} %, the next is {say(cool[0], 'degF')} and {cool[1]} %. "
        "How strong is the push of the vapor, and which way?",
        "Almost none.",
        (f"Strong, from {cool[1]} % to {warm[1]} %.", "rh-drives-vapor"),
        ("Strong, from the warm room to the cool one.", "warm-to-cold"),
    )


def equal_rh(draw: Draw) -> Question | None:
    """The same RH in a room and outdoors, in winter or in summer."""
    rh = draw.pick(50, (40, 45, 50, 55, 60))
    inside = draw.pick(70, (68, 70, 72))
    outside = draw.pick(20, (0, 10, 20, 30) if draw.coin else (85, 88, 90, 95))
    draw.note(rh=rh, inside=inside, outside=outside)
    first, second = vault.air(inside, rh).vapor_pressure, vault.air(outside, rh).vapor_pressure
    way, other = ("Out", "In") if first > second else ("In", "Out")
    say = draw.say
    draw.because(f"Vapor pressure is {say(first, 'Pa')} inside and {say(second, 'Pa')} outside.")
    return draw.words(
        f"It is {say(inside, 'degF')} and {rh} % inside, {say(outside, 'degF')} and {rh} % outside. "
        "Which way does vapor push?",
        f"{way}.",
        ("Neither way. The RH is equal.", "rh-drives-vapor"),
        (
            f"{other}. The cooler side is nearer to its dew point.",
            "dew-point-is-air-temperature",
            "",
            "Air near its dew point looks full and ready to push.",
        ),
    )


CHECKS = (crawlspace, no_push, equal_rh)
