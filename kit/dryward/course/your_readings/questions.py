"""Checks: what follows the showers, what follows the sun, and 90 % in the cold."""

from dryward.teaching import vault
from dryward.teaching.questions import Draw, Question
from dryward.units import from_si


def showers(draw: Draw) -> Question | None:
    """Cavity vapor pressure that follows the showers."""
    hour = draw.pick(7, (6, 7, 8, 18, 20))
    before, after = draw.pick((420, 780), ((420, 780), (380, 700), (450, 820), (500, 900)))
    minutes = draw.pick(40, (20, 30, 40, 50))
    draw.note(hour=hour, before=before, after=after, minutes=minutes)
    draw.tell(minutes=minutes, hour=hour)
    draw.tell("Pa", before=before, after=after)
    return draw.ask("vapor-barrier-is-air-barrier", "wet-roof-needs-vents", "logger-90-means-wet")


def noon_leap(draw: Draw) -> Question | None:
    """Cavity vapor pressure that leaps with the sun."""
    warm, rh = draw.pick((95, 60), ((95, 60), (100, 55), (90, 65), (105, 50)))
    outdoor = draw.pick((60, 50), ((60, 50), (55, 55), (65, 45), (50, 60)))
    draw.note(noon=(warm, rh), outdoor=outdoor)
    inside, outside = vault.air(warm, rh).vapor_pressure, vault.air(*outdoor).vapor_pressure
    draw.tell("Pa", inside=inside, outside=outside)
    draw.tell("degF", warm=warm, cool=outdoor[0])
    draw.tell("%", rh=rh, outdoor=outdoor[1])
    return draw.ask("rh-alone", "logger-90-means-wet", "house-must-breathe")


def cold_ninety(draw: Draw) -> Question | None:
    """90 % in the cold."""
    cold = draw.pick(21, (15, 18, 21, 24, 27))
    rh = draw.pick(90, (86, 88, 90, 92))
    draw.note(cold=cold, rh=rh)
    found = vault.air(cold, rh).vapor_pressure
    room = 100 * found / vault.air(70, 100).vapor_pressure
    dew = from_si(vault.air(cold, rh).dew_point, "degF")
    draw.tell("Pa", found=found)
    draw.tell("degF", warm=70, dew=dew, cold=cold)
    draw.tell("%", room=round(room), rh=rh)
    return draw.ask("logger-90-means-wet", "wet-roof-needs-vents", "dew-point-is-a-place")


CHECKS = (showers, noon_leap, cold_ninety)
