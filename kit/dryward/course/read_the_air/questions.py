"""Checks: cooling air, heating air, and which cold thing gets wet."""

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
    say = draw.say
    draw.because(f"The vapor pressure stays, and colder air is fuller with it: {then:.0f} %.")
    return draw.number(
        f"Air at {say(warm, 'degF')} and {rh} % is cooled to {say(cool, 'degF')}. Nothing is added or taken out. "
        "What is its RH now?",
        then,
        "%",
        2.0,
        (falls, "water-leaves-on-cooling"),
        (rh, "rh-alone", f"It would stay {rh} % only if water left the air. None did, so RH goes up to {then:.0f} %."),
        (
            100,
            "air-is-a-sponge",
            f"Full air comes at the dew point, {say(dew, 'degF')}. It is not that cold yet.",
            "Air that is cooled far enough does end there.",
        ),
    )


def heated(draw: Draw) -> Question | None:
    """The dew point of air that is heated."""
    start = draw.pick(70, (64, 66, 68, 70))
    rh = draw.pick(40, (30, 35, 40, 45, 50))
    rise = draw.pick(10, (6, 8, 10, 12))
    draw.note(start=start, rh=rh, rise=rise)
    dew = from_si(vault.air(start, rh).dew_point, "degF")
    say = draw.say
    draw.because(f"No water came or went, so the vapor pressure and the dew point stay: {say(dew, 'degF')}.")
    return draw.number(
        f"Air at {say(start, 'degF')} and {rh} % is heated to {say(start + rise, 'degF')}. Where is its dew point now?",
        dew,
        "degF",
        1.0,
        (dew + rise, "dew-point-is-air-temperature", "The dew point counts water, not heat. No water was added."),
        (dew - rise, "heating-dries-the-air", "RH falls when you heat air. The water, and so the dew point, stays."),
    )


def wet_things(draw: Draw) -> Question | None:
    """Which of two cold things gets wet in a room."""
    warm = draw.pick(70, (68, 70, 72))
    rh = draw.pick(40, (35, 40, 45, 50))
    dew = from_si(vault.air(warm, rh).dew_point, "degF")
    glass = draw.pick(48, range(40, 62))
    pipe = draw.pick(42, range(34, 58))
    if not (glass >= dew + 2 and pipe <= dew - 2):
        return None
    draw.note(warm=warm, rh=rh, glass=glass, pipe=pipe)
    say = draw.say
    draw.because(f"The dew point of this room is {say(dew, 'degF')}. Only what is colder than that gets wet.")
    return draw.words(
        f"The room is {say(warm, 'degF')} and {rh} %. The window glass is {say(glass, 'degF')}, a water pipe is "
        f"{say(pipe, 'degF')}. What gets wet?",
        "Only the pipe.",
        ("Only the glass.", "treats-the-sign"),
        ("Both. They are colder than the room.", "dew-point-is-air-temperature", "", "What sweats is always cold."),
        (f"Neither. {rh} % is far from full.", "rh-alone"),
    )


CHECKS = (cooled, heated, wet_things)
