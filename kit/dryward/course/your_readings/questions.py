"""Checks: what follows the showers, what follows the sun, two readings in two seasons, and cold pins."""

from dryward.building import material
from dryward.physics import mold
from dryward.teaching import vault
from dryward.teaching.questions import Draw, Question
from dryward.units import to_si
from dryward.verdict.findings import criterion
from dryward.verdict.judgment import moisture
from dryward.weather import loggers


def showers(draw: Draw) -> Question | None:
    """Vapor pressure in the roof that follows the showers."""
    hour = draw.pick(7, (6, 7, 8, 18, 20))
    before, after = draw.pick((420, 780), ((420, 780), (380, 700), (450, 820), (500, 900)))
    minutes = draw.pick(40, (20, 30, 40, 50))
    draw.note(hour=hour, before=before, after=after, minutes=minutes)
    draw.tell(minutes=minutes, hour=hour)
    draw.tell("Pa", before=before, after=after)
    return draw.ask("wet-roof-needs-vents", "vapor-barrier-is-air-barrier", "blames-the-sensor")


def noon_leap(draw: Draw) -> Question | None:
    """Vapor pressure in the roof that leaps with the sun."""
    warm, rh = draw.pick((95, 60), ((95, 60), (100, 55), (90, 65), (105, 50)))
    outdoor = draw.pick((60, 50), ((60, 50), (55, 55), (65, 45), (50, 60)))
    draw.note(noon=(warm, rh), outdoor=outdoor)
    inside, outside = vault.air(warm, rh).vapor_pressure, vault.air(*outdoor).vapor_pressure
    draw.tell("Pa", inside=inside, outside=outside)
    draw.tell("degF", warm=warm, cool=outdoor[0])
    draw.tell("%", rh=rh, outdoor=outdoor[1])
    return draw.ask("rh-alone", "wet-roof-needs-vents", "blames-the-sensor")


def months_at_ninety(draw: Draw) -> Question | None:
    """More humid in January, less humid in May: which one costs a roof."""
    cold = draw.pick(18, (12, 15, 18, 21, 24))
    rh = draw.pick(92, (90, 91, 92, 93))
    mild = draw.pick(58, (52, 55, 58, 62))
    lower = draw.pick(86, (85, 86, 87, 88))
    draw.note(cold=cold, rh=rh, mild=mild, lower=lower)
    warmth = to_si(float(mild), "degF")
    if mold.critical_humidity(warmth) > lower / 100:
        return None
    wood = material("spruce")
    draw.tell("degF", cold=cold, mild=mild)
    draw.tell("%", rh=rh, lower=lower)
    low, high = (round(float(moisture(wood, each / 100))) for each in (lower, rh))
    draw.tell("%", in_may=low, in_january=high)
    draw.tell(weeks=round(float(mold.weeks_to_start(warmth, lower / 100))))
    return draw.ask("logger-90-means-wet", "wet-roof-needs-vents", "trust-the-trend-later")


def cold_pins(draw: Draw) -> Question | None:
    """A dial below the limit, in wood that is over it."""
    dial = draw.pick(17, (16, 17, 18))
    cold = draw.pick(10, (-10, 0, 10, 15, 20))
    draw.note(dial=dial, cold=cold)
    found = round(float(loggers.moisture_content(float(dial), to_si(float(cold), "degF"))))
    limit = round(criterion("wood-moisture").caution)
    if not dial < limit < found:
        return None
    draw.tell("%", dial=dial, found=found, limit=limit, less=2 * dial - found)
    draw.tell("degF", cold=cold)
    return draw.ask("meter-reads-true", "correction-wrong-way", "wrong-tool")


CHECKS = (showers, noon_leap, months_at_ninety, cold_pins)
