"""Checks: cloud at midnight, more vent air, and the morning drip."""

import numpy as np

from dryward.physics import sky
from dryward.physics.sky import frost_margin, night
from dryward.teaching import vault
from dryward.teaching.questions import Draw, Question
from dryward.units import FOOT, from_si, to_si

HOURS, STEPS = 12, 4


def frost(outdoor, cooling, coefficient=8.0):
    """Frost under the covering at the end of a night [g/m2]."""
    found = night(vault.air(*outdoor), cooling, coefficient, hours=HOURS, steps_per_hour=STEPS)
    return from_si(float(found.frost[-1]), "g/m2")


def below_air(cold, cooling, coefficient=8.0):
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
    say = draw.say
    draw.because(
        f"Clouds are a warm lid. {say(clear, 'g/m2')} under a clear sky, {say(cloudy, 'g/m2')} with the clouds."
    )
    return draw.words(
        f"It is a night with a light breeze, {say(cold, 'degF')} and {rh} %. At midnight clouds come in. How much "
        "frost is under the "
        "covering by morning?",
        "Less than under a clear sky.",
        (
            "More. Clouds bring damp air.",
            "winter-fog-is-wet-air",
            "Clouds warm the roof from above. That counts more here.",
        ),
        ("The same. A roof is as cold as the air.", "roof-never-colder-than-air"),
    )


def more_vent_air(draw: Draw) -> Question | None:
    """More vent air on a clear, damp night with a light breeze."""
    cold = draw.pick(20, (15, 20, 25))
    rh = draw.pick(95, (90, 92, 95))
    draw.note(outdoor=cold, rh=rh)
    margin = 1.8 * float(frost_margin(vault.air(cold, rh)))
    under = below_air(cold, 20.0)
    say = draw.say
    draw.because(
        f"The covering is {say(under, 'degF difference')} below the air, and {say(margin, 'degF difference')} below it "
        "the outdoor air frosts. New air brings new vapor, and some of it freezes while the metal stays that cold. "
        "Only air fast enough to warm the metal stops it."
    )
    return draw.words(
        f"On a clear night with a light breeze it is {say(cold, 'degF')} and {rh} %. Someone opens the vents wider. "
        "What does that do "
        "to the frost under the covering?",
        "It can bring more frost.",
        ("It always dries.", "more-vents-always-help"),
        ("Nothing. The covering is as warm as the air.", "roof-never-colder-than-air"),
    )


def drip(draw: Draw) -> Question | None:
    """What catches the drip in the morning."""
    area = draw.pick(600, (300, 600, 900, 1200))
    cold = draw.pick(25, (20, 25, 28))
    water = frost((cold, 95), 20.0) / 1000 * area * FOOT**2
    draw.note(area=area, outdoor=cold)
    say = draw.say
    draw.because(f"One such night can leave {say(water, 'kg')} over the whole roof, and the sun sends it down at once.")
    return draw.words(
        f"After a clear night at {say(cold, 'degF')} the sun hits a metal roof of {say(area, 'ft2')}. What must catch "
        "the drip?",
        "The outer membrane: lapped, sloped and drained at the eave.",
        (
            "The insulation. It soaks it up.",
            "no-drops-no-problem",
            "Wet insulation stays wet. The membrane must shed it.",
            "A little water in thick insulation is soon out of sight.",
        ),
        (
            "Nothing drips. Frost goes off as vapor.",
            "roof-never-colder-than-air",
            "Sun melts it fast, and it drips.",
            "On a dry winter day frost does go off as vapor, little by little.",
        ),
    )


CHECKS = (clouds, more_vent_air, drip)
