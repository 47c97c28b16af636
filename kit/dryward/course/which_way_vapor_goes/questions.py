"""Checks: up from the crawlspace, almost no push, and equal RH."""

from dryward import language
from dryward.teaching import vault
from dryward.teaching.questions import Draw, Question

message = language.beside(__file__)


def crawlspace(draw: Draw) -> Question | None:
    """A cool, damp crawlspace under a warm room."""
    below = draw.pick((65, 95), ((62, 95), (64, 90), (65, 95), (66, 90), (68, 85)))
    above = draw.pick((75, 50), ((74, 45), (75, 50), (76, 45), (75, 40)))
    draw.note(below=below, above=above)
    low, high = vault.air(*above).vapor_pressure, vault.air(*below).vapor_pressure
    if high < low + 100:
        return None
    say = draw.say
    draw.because(message("crawlspace-why", high=say(high, "Pa"), low=say(low, "Pa")))
    return draw.words(
        message(
            "crawlspace-ask",
            below=say(below[0], "degF"),
            below_rh=say(below[1], "%"),
            above=say(above[0], "degF"),
            above_rh=say(above[1], "%"),
        ),
        message("crawlspace-right"),
        (message("crawlspace-warm-to-cold"), "warm-to-cold"),
        (
            message("crawlspace-heating-dries-the-air"),
            "heating-dries-the-air",
            "",
            message("crawlspace-heating-dries-the-air-looks"),
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
    draw.because(
        message("no-push-why", first=say(first, "Pa"), second=say(second, "Pa"), push=say(abs(first - second), "Pa"))
    )
    return draw.words(
        message(
            "no-push-ask",
            warm=say(warm[0], "degF"),
            warm_rh=say(warm[1], "%"),
            cool=say(cool[0], "degF"),
            cool_rh=say(cool[1], "%"),
        ),
        message("no-push-right"),
        (message("no-push-rh-drives-vapor", cool=say(cool[1], "%"), warm=say(warm[1], "%")), "rh-drives-vapor"),
        (message("no-push-warm-to-cold"), "warm-to-cold"),
    )


def equal_rh(draw: Draw) -> Question | None:
    """The same RH in a room and outdoors, in winter or in summer."""
    rh = draw.pick(50, (40, 45, 50, 55, 60))
    inside = draw.pick(70, (68, 70, 72))
    outside = draw.pick(20, (0, 10, 20, 30) if draw.coin else (85, 88, 90, 95))
    draw.note(rh=rh, inside=inside, outside=outside)
    first, second = vault.air(inside, rh).vapor_pressure, vault.air(outside, rh).vapor_pressure
    way, other = ("out", "in") if first > second else ("in", "out")
    say = draw.say
    draw.because(message("equal-rh-why", first=say(first, "Pa"), second=say(second, "Pa")))
    return draw.words(
        message("equal-rh-ask", inside=say(inside, "degF"), rh=say(rh, "%"), outside=say(outside, "degF")),
        message("equal-rh-right", way=way),
        (message("equal-rh-rh-drives-vapor"), "rh-drives-vapor"),
        (
            message("equal-rh-dew-point-is-air-temperature", way=other),
            "dew-point-is-air-temperature",
            "",
            message("equal-rh-dew-point-is-air-temperature-looks"),
        ),
    )


CHECKS = (crawlspace, no_push, equal_rh)
