"""Checks: tightening without a fan, another season, and the first step for wet windows."""

from dryward import air
from dryward.checks import OutOfRange
from dryward.teaching import vault
from dryward.teaching.practical import Outcome, Say, Task, Values, in_si
from dryward.teaching.questions import Draw, Question
from dryward.units import to_si
from dryward.verdict import DRY, criterion
from dryward.weather import Air
from dryward.weather.indoor import steady_humidity

#: A double pane with its films [m2 K/W]: the edge on a metal spacer, and the middle of the glass; common practice,
#: no source.
EDGE, GLASS = to_si(1.5, "R"), to_si(3.0, "R")
#: Still air on its room side [m2 K/W] (ASHRAE).
FILM = to_si(0.68, "R")


def fogs_at(resistance, outdoor_temperature, room_temperature):
    """The room humidity from which a part of a window fogs."""
    face = room_temperature - (room_temperature - outdoor_temperature) * FILM / resistance
    return air.saturation_vapor_pressure(face) / air.saturation_vapor_pressure(room_temperature)


def indoor(kilograms, cfm, outdoor, room=70):
    """Indoor RH [%], full air at most, from water a day, fresh air and (degF, percent) outdoors."""
    share = steady_humidity(
        to_si(kilograms, "kg/day"), to_si(cfm, "cfm"), vault.air(*outdoor), to_si(float(room), "degF")
    )
    return 100 * min(share, 1.0)


def tightened(draw: Draw) -> Question | None:
    """What tightening does when nobody runs a fan."""
    kilograms = draw.pick(10, (7, 8, 9, 10, 11))
    before = draw.pick(90, (80, 90, 100, 120))
    after = draw.pick(30, (30, 35, 40))
    cold = draw.pick(20, (10, 15, 20, 25))
    draw.note(kilograms=kilograms, before=before, after=after, outdoor=cold)
    first, then = (indoor(kilograms, cfm, (cold, 80)) for cfm in (before, after))
    say = draw.say
    draw.because(f"Fresh air is the drain. With less of it the same water stands higher: {then:.0f} %.")
    return draw.words(
        f"A family gives off {say(kilograms, 'kg/day')} of water. It is {say(cold, 'degF')} and 80 % outside, and "
        f"fresh air falls from {say(before, 'cfm')} to {say(after, 'cfm')}. Where does indoor RH at "
        f"{say(70, 'degF')} go?",
        f"From {first:.0f} % up to {then:.0f} %.",
        (f"It stays at {first:.0f} %. Air at 80 % dries nothing.", "winter-fog-is-wet-air"),
        (f"It falls to {first * after / before:.0f} %, since less damp air comes in.", "winter-fog-is-wet-air"),
        (
            "To 100 %. A tight house always drips.",
            "house-must-breathe",
            f"With {say(after, 'cfm')} it comes to {then:.0f} %. A fan that runs sets the number.",
        ),
    )


def milder(draw: Draw) -> Question | None:
    """The same house in milder weather."""
    kilograms = draw.pick(10, (8, 9, 10, 11))
    cfm = draw.pick(60, (50, 60, 70, 80))
    mild = draw.pick(50, (42, 45, 48, 50, 52))
    draw.note(kilograms=kilograms, cfm=cfm, outdoor=mild)
    cold, then = (indoor(kilograms, cfm, (outside, 80)) for outside in (20, mild))
    say = draw.say
    draw.because(f"Milder air brings more water in at the same RH, so the room ends at {then:.0f} %.")
    return draw.number(
        f"A house holds {cold:.0f} % at {say(20, 'degF')} and 80 % outside, with {say(cfm, 'cfm')} of fresh air. "
        f"Now it is {say(mild, 'degF')} and 80 % outside. Same family, same fan, {say(70, 'degF')} inside. "
        "Where does indoor RH settle?",
        then,
        "%",
        3.0,
        (cold, "rh-alone", "The RH outside is the same, but the water in that air is not. Write the temperature too."),
        (80, "rh-alone", "The 80 % is at the outdoor temperature. Inside the air is warmer and has its own RH."),
        (
            0.5 * cold,
            "heating-dries-the-air",
            f"The heat takes no water away. There is more of it in the mild air, so it is {then:.0f} %.",
        ),
    )


def wet_windows(draw: Draw) -> Question | None:
    """The best first step for wet windows in January."""
    kilograms = draw.pick(10, (9, 10, 11, 12))
    now = draw.pick(30, (30, 35, 40))
    fan = draw.pick(60, (60, 70, 80))
    draw.note(kilograms=kilograms, now=now, fan=fan)
    before, after = (indoor(kilograms, cfm, (20, 80)) for cfm in (now, fan))
    edge = 100 * fogs_at(EDGE, to_si(20.0, "degF"), to_si(70.0, "degF"))
    if not after + 2 < edge < before - 2:
        return None
    say = draw.say
    draw.because(
        f"With {say(fan, 'cfm')} of fresh air the same house would sit at {after:.0f} %. "
        f"Those edges fog from {edge:.0f} % on."
    )
    return draw.words(
        f"It is {say(20, 'degF')} outside, the room is {say(70, 'degF')} and {before:.0f} %, and the edges "
        "of the double panes run with water. What do you do first?",
        "Cut the sources of water and run the fan.",
        ("Turn up the heat.", "heating-dries-the-air", "Heat lowers RH but takes no water away. The dew point stays."),
        ("Seal the fan, so that no damp outdoor air comes in.", "winter-fog-is-wet-air"),
        ("Wipe the glass and caulk the frames.", "treats-the-sign"),
    )


CHECKS = (tightened, milder, wet_windows)


def _edges_clear(now: Values, say: Say) -> Outcome:
    if now["Fresh_air"] <= 0:
        raise OutOfRange(f"Fresh air is {now['Fresh_air']:.6g} m³/s; it must be above 0 m³/s.")
    found = steady_humidity(now["Water"], now["Fresh_air"], Air(now["T_out"], now["RH_out"]), now["T_in"])
    few = now["Fresh_air"] <= to_si(100, "cfm") * (1 + 1e-9)
    edge = float(fogs_at(EDGE, now["T_out"], now["T_in"]))
    return Outcome(
        criterion("window-edge").state(found / edge) == DRY and few,
        f"The room settles at {100 * min(found, 1.0):.0f} % with {say(now['Fresh_air'], 'cfm')} of fresh air; the edge "
        f"of the pane fogs from {100 * edge:.0f} % on.",
        found,
    )


TASKS = (
    Task(
        "january-air",
        in_si(T_in=(70, "degF"), T_out=(10, "degF"), RH_out=(80, "%"), Water=(21, "pint/day"), Fresh_air=(25, "cfm")),
        ("Fresh_air", "Water"),
        1,
        in_si(Fresh_air=(60, "cfm")),
        _edges_clear,
    ),
)
