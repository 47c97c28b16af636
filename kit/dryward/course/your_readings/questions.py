"""Checks: what follows the showers, what follows the sun, and 90 % in the cold."""

from dryward import language
from dryward.teaching import vault
from dryward.teaching.questions import Draw, Question
from dryward.units import from_si

message = language.beside(__file__)


def showers(draw: Draw) -> Question | None:
    """Cavity vapor pressure that follows the showers."""
    hour = draw.pick(7, (6, 7, 8, 18, 20))
    before, after = draw.pick((420, 780), ((420, 780), (380, 700), (450, 820), (500, 900)))
    minutes = draw.pick(40, (20, 30, 40, 50))
    draw.note(hour=hour, before=before, after=after, minutes=minutes)
    say = draw.say
    draw.because(message("showers-why", minutes=minutes))
    return draw.words(
        message("showers-ask", hour=hour, minutes=minutes, before=say(before, "Pa"), after=say(after, "Pa")),
        message("showers-right"),
        (
            message("showers-vapor-barrier-is-air-barrier"),
            "vapor-barrier-is-air-barrier",
            message("showers-vapor-barrier-is-air-barrier-reply", minutes=minutes),
            message("showers-vapor-barrier-is-air-barrier-seems"),
        ),
        (
            message("showers-wet-roof-needs-vents"),
            "wet-roof-needs-vents",
            message("showers-wet-roof-needs-vents-reply"),
        ),
        (
            message("showers-logger-90-means-wet"),
            "logger-90-means-wet",
            message("showers-logger-90-means-wet-reply"),
            message("showers-logger-90-means-wet-seems"),
        ),
    )


def noon_leap(draw: Draw) -> Question | None:
    """Cavity vapor pressure that leaps with the sun."""
    warm, rh = draw.pick((95, 60), ((95, 60), (100, 55), (90, 65), (105, 50)))
    outdoor = draw.pick((60, 50), ((60, 50), (55, 55), (65, 45), (50, 60)))
    draw.note(noon=(warm, rh), outdoor=outdoor)
    inside, outside = vault.air(warm, rh).vapor_pressure, vault.air(*outdoor).vapor_pressure
    say = draw.say
    draw.because(message("noon-leap-why", inside=say(inside, "Pa"), outside=say(outside, "Pa")))
    return draw.words(
        message(
            "noon-leap-ask",
            warm=say(warm, "degF"),
            rh=say(rh, "%"),
            cool=say(outdoor[0], "degF"),
            outdoor=say(outdoor[1], "%"),
        ),
        message("noon-leap-right"),
        (message("noon-leap-rh-alone"), "rh-alone", message("noon-leap-rh-alone-reply")),
        (
            message("noon-leap-logger-90-means-wet"),
            "logger-90-means-wet",
            message("noon-leap-logger-90-means-wet-reply"),
            message("noon-leap-logger-90-means-wet-seems"),
        ),
        (
            message("noon-leap-house-must-breathe"),
            "house-must-breathe",
            message("noon-leap-house-must-breathe-reply"),
            message("noon-leap-house-must-breathe-seems"),
        ),
    )


def cold_ninety(draw: Draw) -> Question | None:
    """90 % in the cold."""
    cold = draw.pick(21, (15, 18, 21, 24, 27))
    rh = draw.pick(90, (86, 88, 90, 92))
    draw.note(cold=cold, rh=rh)
    found = vault.air(cold, rh).vapor_pressure
    room = 100 * found / vault.air(70, 100).vapor_pressure
    dew = from_si(vault.air(cold, rh).dew_point, "degF")
    say = draw.say
    draw.because(
        message(
            "cold-ninety-why",
            found=say(found, "Pa"),
            warm=say(70, "degF"),
            room=say(round(room), "%"),
            dew=say(dew, "degF"),
        )
    )
    return draw.words(
        message("cold-ninety-ask", cold=say(cold, "degF"), rh=say(rh, "%")),
        message("cold-ninety-right"),
        (message("cold-ninety-logger-90-means-wet", rh=say(rh, "%")), "logger-90-means-wet"),
        (message("cold-ninety-wet-roof-needs-vents"), "wet-roof-needs-vents"),
        (
            message("cold-ninety-dew-point-is-a-place"),
            "dew-point-is-a-place",
            message("cold-ninety-dew-point-is-a-place-reply", rh=say(rh, "%")),
        ),
    )


CHECKS = (showers, noon_leap, cold_ninety)
