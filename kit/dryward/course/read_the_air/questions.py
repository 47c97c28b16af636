"""Checks: cooling air, heating air, winter fog brought into a warm house, and the thin air of a mountain."""

from dryward import air
from dryward.teaching import vault
from dryward.teaching.questions import Draw, Question
from dryward.units import from_si, to_si


def cooled(draw: Draw) -> Question | None:
    """RH of air that is cooled with nothing added."""
    warm = draw.pick(70, (68, 70, 72, 75))
    rh = draw.pick(40, (30, 35, 40, 45, 50))
    cool = draw.pick(50, (48, 50, 52, 55, 58, 60))
    draw.note(warm=warm, rh=rh, cool=cool)
    room = vault.air(warm, rh)
    then = 100 * air.relative_humidity(to_si(cool, "degF"), room.vapor_pressure)
    if not rh + 10 < then < 94:
        return None
    falls = rh * rh / then
    dew = from_si(room.dew_point, "degF")
    draw.tell("%", then=round(then), rh=rh)
    draw.tell("degF", warm=warm, cool=cool, dew=dew)
    return draw.ask_number(
        then, "%", 2.0, (falls, "water-leaves-on-cooling"), (rh, "rh-alone"), (100, "dew-point-is-air-temperature")
    )


def heated(draw: Draw) -> Question | None:
    """The dew point of air that is heated."""
    start = draw.pick(70, (64, 66, 68, 70))
    rh = draw.pick(40, (30, 35, 40, 45, 50))
    rise = draw.pick(10, (6, 8, 10, 12))
    draw.note(start=start, rh=rh, rise=rise)
    dew = from_si(vault.air(start, rh).dew_point, "degF")
    draw.tell("degF", dew=dew, start=start, rise=start + rise)
    draw.tell("%", rh=rh)
    return draw.ask_number(
        dew, "degF", 1.0, (start + rise, "dew-point-is-air-temperature"), (dew - rise, "heating-dries-the-air")
    )


def brought_in(draw: Draw) -> Question | None:
    """Foggy winter air that comes into the house and is heated."""
    cold = draw.pick(30, (20, 25, 30, 35))
    fog = draw.pick(95, (90, 95))
    warm = draw.pick(70, (68, 70, 72))
    draw.note(cold=cold, fog=fog, warm=warm)
    outdoors = vault.air(cold, fog)
    then = 100 * air.relative_humidity(to_si(warm, "degF"), outdoors.vapor_pressure)
    draw.tell("degF", cold=cold, warm=warm, dew=from_si(outdoors.dew_point, "degF"))
    draw.tell("%", fog=fog, then=round(float(then)))
    return draw.ask("winter-fog-is-wet-air", "heating-dries-the-air")


def up_high(draw: Draw) -> Question | None:
    """The most vapor there can be in thin air, at one warmth."""
    height = draw.pick(8000, (5000, 6000, 7000, 8000, 9000, 10_000))
    warm = draw.pick(70, (60, 65, 70, 75))
    thin = 100 * (1 - float(air.standard_pressure(to_si(height, "ft"))) / air.STANDARD_PRESSURE)
    draw.note(height=height, warm=warm)
    draw.tell("ft", height=height)
    draw.tell("degF", warm=warm)
    draw.tell("%", thin=round(thin))
    draw.tell("Pa", most=float(air.saturation_vapor_pressure(to_si(warm, "degF"))))
    return draw.ask("air-is-a-sponge", "rh-alone")


CHECKS = (cooled, heated, brought_in, up_high)
