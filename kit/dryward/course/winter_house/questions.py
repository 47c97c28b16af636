"""Checks: tightening without a fan, milder air, a cooled house in July, wet windows, and a burner in a basement."""

from typing import Any

from dryward import air, language
from dryward.checks import OutOfRange
from dryward.teaching import vault
from dryward.teaching.practical import Outcome, Say, Task, Values, in_si
from dryward.teaching.questions import Draw, Question
from dryward.units import from_si, to_si, written
from dryward.verdict import DRY, criterion
from dryward.weather import Air
from dryward.weather.indoor import WATER_OF_PROPANE, steady_humidity

message = language.beside(__file__)

#: The room of this lesson [degC].
ROOM_TEMPERATURE = to_si(70.0, "degF")
#: A double pane with its films [m2 K/W]: the edge on a metal spacer, and the middle of the glass; common practice,
#: no source.
EDGE, GLASS = to_si(1.5, "R"), to_si(3.0, "R")
#: Still air on its room side [m2 K/W] (ASHRAE).
FILM = to_si(0.68, "R")


def fogs_at(resistance: float, outdoor_temperature: Any, room_temperature: float) -> Any:
    """The room humidity from which a part of a window fogs."""
    face = room_temperature - (room_temperature - outdoor_temperature) * FILM / resistance
    return air.saturation_vapor_pressure(face) / air.saturation_vapor_pressure(room_temperature)


def indoor(kilograms: float, cfm: float, outdoor: vault.Side, room: float = 70) -> float:
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
    draw.tell("%", then=round(then), first=round(first), fallen=round(first * after / before))
    draw.tell("kg/day", kilograms=kilograms)
    draw.tell("degF", cold=cold, room=70)
    draw.tell("cfm", before=before, after=after)
    return draw.ask("winter-fog-is-wet-air", ("winter-fog-is-wet-air", "falls"), "house-must-breathe")


def milder(draw: Draw) -> Question | None:
    """The same house in milder weather."""
    kilograms = draw.pick(10, (8, 9, 10, 11))
    cfm = draw.pick(60, (50, 60, 70, 80))
    mild = draw.pick(50, (42, 45, 48, 50, 52))
    draw.note(kilograms=kilograms, cfm=cfm, outdoor=mild)
    cold, then = (indoor(kilograms, cfm, (outside, 80)) for outside in (20, mild))
    alone = 100 * vault.air(mild, 80).vapor_pressure / vault.air(70, 100).vapor_pressure
    draw.tell("%", then=round(then), humidity=round(cold), alone=round(alone))
    draw.tell("degF", cold=20, mild=mild, room=70)
    draw.tell("cfm", cfm=cfm)
    return draw.ask_number(
        then,
        "%",
        3.0,
        (cold, "rh-alone", "same-rh"),
        (80, "rh-alone", "outdoor-rh"),
        (alone, "nothing-is-added-indoors"),
    )


def july(draw: Draw) -> Question | None:
    """Two cooled houses in summer: from which one the cooling has to take more water."""
    hot = draw.pick(85, (82, 84, 85, 88, 90))
    humid = draw.pick(70, (65, 70, 75))
    drafty = draw.pick(120, (100, 110, 120, 140))
    fan = draw.pick(50, (40, 50, 60))
    draw.note(outdoor=hot, outdoor_rh=humid, drafty=drafty, fan=fan)
    room = vault.air(75, 50)
    more = air.vapor_density(room.temperature, vault.air(hot, humid).vapor_pressure - room.vapor_pressure)
    first, second = (from_si(more * to_si(cfm, "cfm"), "kg/day") for cfm in (drafty, fan))
    draw.tell("degF", hot=hot, room=75)
    draw.tell("%", humid=humid, rh=50)
    draw.tell("cfm", drafty=drafty, fan=fan)
    draw.tell("kg/day", first=first, second=second)
    return draw.ask("house-must-breathe", "rh-alone")


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
    draw.tell("cfm", fan=fan)
    draw.tell("%", after=round(after), edge=round(edge), humidity=round(before))
    draw.tell("degF", cold=20, room=70)
    return draw.ask("heating-dries-the-air", "winter-fog-is-wet-air", "treats-the-sign")


def burner(draw: Draw) -> Question | None:
    """What an open burner does to the air of a basement in spring."""
    pounds = draw.pick(20, (10, 15, 20, 25, 30))
    draw.note(propane=pounds)
    draw.tell("lb", bottle=pounds, water=pounds * WATER_OF_PROPANE)
    return draw.ask("propane-heater-dries", "nothing-is-added-indoors")


CHECKS = (tightened, milder, july, wet_windows, burner)


def _edges_clear(now: Values, say: Say) -> Outcome:
    if now["Fresh_air"] <= 0:
        raise OutOfRange(message("task-no-fresh-air", fresh_air=written(now["Fresh_air"], ".6g")))
    found = steady_humidity(now["Water"], now["Fresh_air"], Air(now["T_out"], now["RH_out"]), now["T_in"])
    few = now["Fresh_air"] <= to_si(100, "cfm") * (1 + 1e-9)
    edge = float(fogs_at(EDGE, now["T_out"], now["T_in"]))
    return Outcome(
        criterion("window-edge").state(found / edge) == DRY and few,
        message(
            "task-outcome",
            humidity=say(round(100 * min(found, 1.0)) / 100, "%"),
            fresh_air=say(now["Fresh_air"], "cfm"),
            edge=say(round(100 * edge) / 100, "%"),
        ),
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
