"""Checks: half of it, the test that finds a leak, a big ceiling, an upstairs window, and two false barriers."""

from dryward import air, language
from dryward.physics.airleak import LONG_SHARE, brought, natural_airflow, orifice_flow, slot_flow, stack_pressure
from dryward.physics.house_air import balanced
from dryward.teaching import vault
from dryward.teaching.kinds import in_a_row
from dryward.teaching.practical import WINTER, Outcome, Say, Task, Values, airs, in_si, perms
from dryward.teaching.questions import Draw, Question
from dryward.units import DAY, from_si, number, to_si, written
from dryward.verdict import criterion

message = language.beside(__file__)


def winter_water(square_inches: float, push: float, rh: float, cold: float, days: float, room: float = 70) -> float:
    """What the air of a hole carries past a cold plane in a winter and could not keep there [kg]."""
    flow = orifice_flow(push, to_si(square_inches, "in2"))
    return float(brought(flow, vault.air(room, rh), to_si(float(cold), "degF")).excess * days * DAY)


def halved(draw: Draw) -> Question | None:
    """Half the indoor humidity, or half of the hole at the same push."""
    what = draw.pick("humidity", ("humidity", "hole"))
    draw.tell(what=what)
    if what == "hole":
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
            (whole, "flow-with-square", "just-the-same"),
            (0.0, "half-is-closed"),
        )
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


def big_ceiling(draw: Draw) -> Question | None:
    """One hole in a whole ceiling with a film: neither path does it all."""
    area = draw.pick(600, (500, 600, 800, 1000))
    film = draw.pick(1.0, (1.0, 1.5, 2.0))
    rh = draw.pick(40, (36, 40, 44))
    draw.note(area=area, film=film, rh=rh)
    room, cold = vault.air(70, rh), to_si(20.0, "degF")
    hole = LONG_SHARE * winter_water(1.0, 1.0, rh, 20, 150)
    drive = room.vapor_pressure - air.saturation_vapor_pressure(cold)
    ceiling = drive * to_si(in_a_row(40, 7, film), "perm") * to_si(area, "ft2") * 150 * DAY
    if ceiling < 2 * hole:
        return None
    draw.tell("ft2", area=area)
    draw.tell("perm", film=film)
    draw.tell("%", rh=rh)
    draw.tell("degF", room=70, cold=20)
    draw.tell("kg", hole=hole, ceiling=ceiling)
    draw.tell("in2", one=1)
    draw.tell(times=number(ceiling / hole, figures=2, rounded=True))
    return draw.ask("one-path-does-it-all", "forgets-what-goes-by")


def upstairs(draw: Draw) -> Question | None:
    """Which way air goes high up in a tall house."""
    feet = draw.pick(24, (20, 24, 28, 32))
    cold = draw.pick(0, (-10, 0, 10, 20, 30))
    draw.note(height=feet, outdoor=cold)
    height, at = to_si(float(feet), "ft"), to_si(feet - 4.0, "ft")
    both = to_si(70.0, "degF"), to_si(float(cold), "degF")
    found = balanced(1.0, ((0.0, 0.4), (height / 2, 0.3), (height, 0.3)), *both)
    push = stack_pressure(at - found.neutral, *both)
    if push < 0.5:
        return None
    draw.tell("ft", height=feet, at=feet - 4)
    draw.tell("degF", cold=cold, room=70)
    draw.tell(push=written(push, ".1f"))
    return draw.ask("house-leaks-in-everywhere", "no-push-without-wind")


def two_barriers(draw: Draw) -> Question | None:
    """Boards and stapled paper over a room: neither stops air."""
    # With no board of these has it the joints of the lesson's ceiling.
    area = draw.pick(500, (300, 500, 800, 1000))
    parts = draw.pick(64, (32, 64))
    inches = draw.pick(3.5, (3.5, 4.5, 5.25))
    draw.note(area=area, joint=1 / parts, board=inches)
    ceiling, wide, joint = to_si(area, "ft2"), to_si(inches, "in"), to_si(1 / parts, "in")
    flow = slot_flow(1.0, joint, to_si(0.75, "in"), ceiling / wide)
    holes = flow / orifice_flow(1.0, to_si(1.0, "in2"))
    draw.tell("ft2", area=area)
    draw.tell("ft", length=round(from_si(ceiling / wide, "ft"), -1))
    draw.tell("in2", one=1)
    draw.tell("in", wide=inches)
    draw.tell(
        joint=message("joint-open", system=draw.unit_system, parts=parts), holes=number(holes, figures=2, rounded=True)
    )
    return draw.ask("boards-are-a-ceiling", "vapor-barrier-is-air-barrier")


CHECKS = (halved, which_test, big_ceiling, upstairs, two_barriers)


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
