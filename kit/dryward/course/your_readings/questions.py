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
    say = draw.say
    draw.because(f"{minutes} minutes is far too fast for a film. Only moving air does that.")
    return draw.words(
        f"Each day at {hour}:00 someone showers. Within {minutes} minutes the vapor pressure in the roof jumps from "
        f"{say(before, 'Pa')} to {say(after, 'Pa')}. What is the cause?",
        "An air path from the bathroom.",
        (
            "Diffusion through the film.",
            "vapor-barrier-is-air-barrier",
            f"A film lets far too little through in {minutes} minutes to lift the whole cavity.",
            "The film is all that lies between, so you look at it first.",
        ),
        ("A rain leak.", "wet-roof-needs-vents", "Rain would follow the weather, not the shower."),
        (
            "The logger. Such jumps are not real.",
            "logger-90-means-wet",
            "It comes each day with the shower. It is real.",
            "Loggers do fail, and a jump looks like a fault.",
        ),
    )


def noon_leap(draw: Draw) -> Question | None:
    """Cavity vapor pressure that leaps with the sun."""
    warm, rh = draw.pick((95, 60), ((95, 60), (100, 55), (90, 65), (105, 50)))
    outdoor = draw.pick((60, 50), ((60, 50), (55, 55), (65, 45), (50, 60)))
    draw.note(noon=(warm, rh), outdoor=outdoor)
    inside, outside = vault.air(warm, rh).vapor_pressure, vault.air(*outdoor).vapor_pressure
    say = draw.say
    draw.because(
        f"{say(inside, 'Pa')} in the roof against a flat {say(outside, 'Pa')} outdoors. It came out of the wood."
    )
    return draw.words(
        f"At noon the sun is on the roof and the logger shows {say(warm, 'degF')} and {rh} %. Outdoors it stays "
        f"{say(outdoor[0], 'degF')} and {outdoor[1]} % all day. By night the vapor pressure in the roof is low again. "
        "What is the cause?",
        "Water stored in the wood, driven off by the heat.",
        ("Humid air from outdoors.", "rh-alone", "The outdoor vapor pressure did not move."),
        (
            "A broken logger.",
            "logger-90-means-wet",
            "It comes and goes with the sun, as stored water does.",
            "Loggers do fail, and a jump looks like a fault.",
        ),
        (
            "Showers in the house.",
            "house-must-breathe",
            "It follows the sun, not the people.",
            "Showers come each day too.",
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
        f"It is only {say(found, 'Pa')}, as much as a room at {say(70, 'degF')} and {room:.0f} %. The frost point is "
        f"{say(dew, 'degF')}, below the face."
    )
    return draw.words(
        f"All January the logger under an open outer membrane shows {say(cold, 'degF')} and {rh} %. Outdoors reads the "
        "same. What does it mean?",
        "Normal: it follows the outdoor air.",
        (f"A wet roof. {rh} % is wet.", "logger-90-means-wet"),
        ("A rain leak.", "wet-roof-needs-vents"),
        ("Water is forming there.", "dew-point-is-a-place", f"{rh} % is below full, so nothing forms."),
    )


CHECKS = (showers, noon_leap, cold_ninety)
