"""Checks: half the hole, half the humidity, and the test that finds it."""

from dryward import air, language
from dryward.physics.airleak import LONG_SHARE, brought, natural_airflow, orifice_flow
from dryward.teaching import vault
from dryward.teaching.kinds import in_a_row
from dryward.teaching.practical import WINTER, Outcome, Say, Task, Values, airs, in_si, perms
from dryward.teaching.questions import Draw, Question
from dryward.units import DAY, from_si, to_si, written
from dryward.verdict import criterion

message = language.beside(__file__)


def winter_water(square_inches: float, push: float, rh: float, cold: float, days: float, room: float = 70) -> float:
    """What the air of a hole carries past a cold plane in a winter and could not keep there [kg]."""
    flow = orifice_flow(push, to_si(square_inches, "in2"))
    return float(brought(flow, vault.air(room, rh), to_si(float(cold), "degF")).excess * days * DAY)


def half_hole(draw: Draw) -> Question | None:
    """Half the area at the same push."""
    area = draw.pick(1.0, (0.5, 1.0, 1.5, 2.0, 3.0))
    push = draw.pick(1.0, (1.0, 2.0, 3.0, 4.0))
    draw.note(area=area, push=push)
    whole, half = (winter_water(each, push, 40, 20, 150) for each in (area, area / 2))
    draw.tell("kg", half=half, whole=whole)
    draw.tell("in2", area=area)
    draw.tell(push=written(push, "g"))
    return draw.ask_number(
        half,
        "kg",
        0.02 * half,
        (half / 2, "flow-with-square"),
        (whole, "vapor-barrier-is-air-barrier"),
        (0.0, "half-is-closed"),
    )


def half_humidity(draw: Draw) -> Question | None:
    """Half the indoor humidity."""
    rh = draw.pick(40, (36, 40, 44))
    cold = draw.pick(20, (15, 18, 20, 22))
    draw.note(rh=rh, plane=cold)
    before, after = (LONG_SHARE * winter_water(1.0, 1.0, each, cold, 150) for each in (rh, rh / 2))
    if not 0 < after < 0.4 * before:
        return None
    unit = "gr/lb" if draw.unit_system == "us" else "g/kg"
    full = air.saturation_vapor_pressure(to_si(float(cold), "degF"))
    pressures = (vault.air(70, rh).vapor_pressure, vault.air(70, rh / 2).vapor_pressure, full)
    moist, drier, held = (written(from_si(air.humidity_ratio(one), unit), ".3g") for one in pressures)
    draw.tell(system=draw.unit_system, moist=moist, drier=drier, held=held)
    draw.tell("%", rh=rh, half=rh / 2)
    draw.tell("kg", before=before, after=after)
    draw.tell("degF", cold=cold, room=70)
    return draw.ask_number(after, "kg", 0.1 * after, (before / 2, "falls-in-step"), (before, "counts-air-not-water"))


def which_test(draw: Draw) -> Question | None:
    """The test that finds the leak."""
    ach = draw.pick(3.0, (2.0, 3.0, 4.0, 5.0, 7.0))
    volume = draw.pick(20000, (12000, 16000, 20000, 24000))
    draw.note(ach50=ach, volume=volume)
    cfm50 = ach * volume / 60
    everyday = from_si(natural_airflow(ach, to_si(volume, "ft3")), "cfm")
    draw.tell(ach=written(ach, "g"))
    draw.tell("cfm", cfm50=cfm50, everyday=everyday)
    return draw.ask("wrong-tool", "vapor-barrier-is-air-barrier", "house-must-breathe", "house-leaks-in-everywhere")


CHECKS = (half_hole, half_humidity, which_test)


def _within(now: Values, say: Say) -> Outcome:
    """Whether hole and ceiling together leave less than a roof can give back."""
    indoor, outdoor = airs(now)
    area, winter, limit = to_si(32, "ft2"), 150 * DAY, criterion("winter-water")
    leak = brought(orifice_flow(now["dP"], now["Hole"]), indoor, outdoor.temperature, LONG_SHARE)
    drive = max(indoor.vapor_pressure - air.saturation_vapor_pressure(outdoor.temperature), 0.0)
    stays, through = leak.stays * winter, now["M_in"] * area * drive * winter
    found = (stays + through) / area
    return Outcome(
        found < limit.caution,
        message(
            "task-outcome",
            stays=say(stays, "kg"),
            through=say(through, "kg"),
            found=say(found, "g/m2"),
            state=language.message("verdict.state", state=limit.state(found)),
        ),
        found,
    )


TASKS = (
    Task(
        "within-the-reserve",
        {**WINTER, **perms(M_in=in_a_row(40, 7)), **in_si(Hole=(1, "in2")), "dP": 1.0},
        ("M_in", "Hole", "dP"),
        2,
        {**perms(M_in=0.2), **in_si(Hole=(0.1, "in2"))},
        _within,
    ),
)
