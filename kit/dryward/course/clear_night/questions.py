"""Checks: cloud at midnight, more vent air, the morning drip, dew in the fall, and two roofs under snow."""

import numpy as np

from dryward.checks import Numeric
from dryward.physics import sky
from dryward.physics.sky import frost_margin, night
from dryward.physics.snow import RESISTIVITY
from dryward.teaching import vault
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import Side
from dryward.units import FOOT, from_si, to_si

HOURS, STEPS = 12, 4


def frost(outdoor: Side, cooling: Numeric, coefficient: float = 8.0) -> float:
    """Frost under the covering at the end of a night [g/m2]."""
    found = night(vault.air(*outdoor), cooling, coefficient, hours=HOURS, steps_per_hour=STEPS)
    return from_si(float(found.frost[-1]), "g/m2")


def below_air(cold: float, cooling: float, coefficient: float = 8.0) -> float:
    """How far the covering falls below the air [degF difference] under a sky that much colder [K]."""
    outside = to_si(float(cold), "degF")
    found = sky.roof_surface(
        outside, outside - cooling, coefficient, u_value=vault.roof().u_value, indoor_temperature=to_si(70.0, "degF")
    )
    return from_si(outside - float(found), "degF difference")


def clouds(draw: Draw) -> Question | None:
    """Clouds come in at midnight."""
    cold = draw.pick(20, (15, 20, 25, 30))
    rh = draw.pick(95, (90, 93, 95))
    cooling = draw.pick(20.0, (18.0, 20.0, 22.0))
    draw.note(outdoor=cold, rh=rh, cooling=cooling)
    half = HOURS * STEPS // 2
    clear = frost((cold, rh), cooling)
    cloudy = frost((cold, rh), np.concatenate((np.full(half, cooling), np.full(half, 3.0))))
    if cloudy >= 0.8 * clear:
        return None
    draw.tell("g/m2", clear=clear, cloudy=cloudy)
    draw.tell("degF", cold=cold)
    draw.tell("%", rh=rh)
    return draw.ask("winter-fog-is-wet-air", "roof-never-colder-than-air")


def more_vent_air(draw: Draw) -> Question | None:
    """More vent air on a clear, damp night with a light breeze."""
    cold = draw.pick(20, (15, 20, 25))
    rh = draw.pick(95, (90, 92, 95))
    draw.note(outdoor=cold, rh=rh)
    margin = 1.8 * float(frost_margin(vault.air(cold, rh)))
    under = below_air(cold, 20.0)
    draw.tell("degF difference", under=under, margin=margin)
    draw.tell("degF", cold=cold)
    draw.tell("%", rh=rh)
    return draw.ask("more-vents-always-help", "roof-never-colder-than-air")


def drip(draw: Draw) -> Question | None:
    """What catches the drip in the morning."""
    area = draw.pick(600, (300, 600, 900, 1200))
    cold = draw.pick(25, (20, 25, 28))
    water = frost((cold, 95), 20.0) / 1000 * area * FOOT**2
    draw.note(area=area, outdoor=cold)
    draw.tell("kg", water=water)
    draw.tell("degF", cold=cold)
    draw.tell("ft2", area=area)
    return draw.ask("no-drops-no-problem", "trust-the-trend-later")


def fall_dew(draw: Draw) -> Question | None:
    """A clear night above freezing."""
    cold = draw.pick(45, (40, 42, 45, 48, 50))
    rh = draw.pick(85, (80, 85, 88, 90))
    draw.note(outdoor=cold, rh=rh)
    margin = 1.8 * float(frost_margin(vault.air(cold, rh)))
    under = below_air(cold, 20.0)
    if under < margin + 3.0:
        return None
    draw.tell("degF difference", under=under, margin=margin)
    draw.tell("degF", cold=cold)
    draw.tell("%", rh=rh)
    return draw.ask("roof-never-colder-than-air", "wet-roof-needs-vents")


def twin_dams(draw: Draw) -> Question | None:
    """Two roofs under the same snow, by share of R."""
    cold = draw.pick(20, (15, 18, 20, 22))
    inches = draw.pick(12, (9, 10, 12, 14))
    thin = draw.pick(20, (15, 20, 25))
    thick = draw.pick(60, (49, 60))
    room = 70
    snow = inches * to_si(1.0, "in") * RESISTIVITY
    warm, cool = (cold + (room - cold) * from_si(snow, "R") / (from_si(snow, "R") + each) for each in (thin, thick))
    draw.note(outdoor=cold, snow=inches, thin=thin, thick=thick)
    if warm < 34.0 or cool > 31.0:
        return None
    draw.tell("degF", cold=cold, room=room, warm=warm, cool=cool)
    draw.tell("in", inches=inches)
    draw.tell("R", snow=from_si(snow, "R"), thin=thin, thick=thick)
    return draw.ask("ice-dams-are-gutters", "freezing-outside")


CHECKS = (clouds, more_vent_air, drip, fall_dew, twin_dams)
