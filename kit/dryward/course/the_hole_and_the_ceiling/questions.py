"""Checks: half the hole, half the humidity, and the test that finds it."""

from dryward import air
from dryward.physics.airleak import LONG_SHARE, brought, natural_airflow, orifice_flow
from dryward.teaching import vault
from dryward.teaching.kinds import in_a_row
from dryward.teaching.practical import WINTER, Outcome, Say, Task, Values, airs, in_si, perms
from dryward.teaching.questions import Draw, Question
from dryward.units import DAY, from_si, to_si
from dryward.verdict import criterion


def winter_water(square_inches, push, rh, cold, days, room=70):
    """What the air of a hole carries past a cold plane in a winter and could not keep there [kg]."""
    flow = orifice_flow(push, to_si(square_inches, "in2"))
    return brought(flow, vault.air(room, rh), to_si(float(cold), "degF")).excess * days * DAY


def half_hole(draw: Draw) -> Question | None:
    """Half the area at the same push."""
    area = draw.pick(1.0, (0.5, 1.0, 1.5, 2.0, 3.0))
    push = draw.pick(1.0, (1.0, 2.0, 3.0, 4.0))
    draw.note(area=area, push=push)
    whole, half = (winter_water(each, push, 40, 20, 150) for each in (area, area / 2))
    say = draw.say
    draw.because(f"At the same push flow goes with area: {say(half, 'kg')} is half of {say(whole, 'kg')}.")
    return draw.number(
        f"In a winter the air of a hole of {say(area, 'in2')} at {push:g} Pa carries about {say(whole, 'kg')} of water "
        "past the cold face, over and above what it can keep there. Half of the hole gets sealed and the push stays. "
        "How much is it now?",
        half,
        "kg",
        0.02 * half,
        (half / 2, "flow-with-square"),
        (
            whole,
            "vapor-barrier-is-air-barrier",
            f"For air the hole is the throttle. Half of the hole is half of the air: {say(half, 'kg')}.",
            "As long as a gap is left, the whole barrier looks useless.",
        ),
        (0.0, "half-is-closed", f"The other half still leaks, at the same push: {say(half, 'kg')}."),
    )


def half_humidity(draw: Draw) -> Question | None:
    """Half the indoor humidity."""
    rh = draw.pick(40, (36, 40, 44))
    cold = draw.pick(20, (15, 18, 20, 22))
    draw.note(rh=rh, plane=cold)
    before, after = (LONG_SHARE * winter_water(1.0, 1.0, each, cold, 150) for each in (rh, rh / 2))
    if not 0 < after < 0.4 * before:
        return None
    unit, each, small = ("gr/lb", "pound", "grains") if draw.unit_system == "us" else ("g/kg", "kilogram", "g")
    full = air.saturation_vapor_pressure(to_si(float(cold), "degF"))
    pressures = (vault.air(70, rh).vapor_pressure, vault.air(70, rh / 2).vapor_pressure, full)
    moist, drier, held = (f"{from_si(air.humidity_ratio(one), unit):.3g}" for one in pressures)
    say = draw.say
    draw.because(
        f"Each {each} of dry air has {moist} {small} of vapor with it at {rh} %, {drier} at {rh / 2:g} %, and can keep "
        f"{held} at the cold face. What is over that falls, and so does what stays: from {say(before, 'kg')} to "
        f"{say(after, 'kg')}."
    )
    return draw.number(
        f"A leak leaves about {say(before, 'kg')} of water at a {say(cold, 'degF')} sheathing in a winter, with "
        f"{rh} % indoors at {say(70, 'degF')}. Indoor RH is brought down to {rh / 2:g} %. How much is it now?",
        after,
        "kg",
        0.1 * after,
        (before / 2, "falls-in-step"),
        (
            before,
            "counts-air-not-water",
            f"The same air leaks, but with half the vapor in it. What stays falls to {say(after, 'kg')}.",
        ),
    )


def which_test(draw: Draw) -> Question | None:
    """The test that finds the leak."""
    ach = draw.pick(3.0, (2.0, 3.0, 4.0, 5.0, 7.0))
    volume = draw.pick(20000, (12000, 16000, 20000, 24000))
    draw.note(ach50=ach, volume=volume)
    cfm50 = ach * volume / 60
    everyday = from_si(natural_airflow(ach, to_si(volume, "ft3")), "cfm")
    say = draw.say
    draw.because("Blow or draw at 50 Pa while the film can still be reached, and watch the smoke at each joint.")
    return draw.words(
        f"A house tests at {ach:g} ACH50, {say(cfm50, 'cfm')} at 50 Pa, about {say(everyday, 'cfm')} in everyday use. "
        "You want to find where the ceiling leaks. Which test?",
        "A blower door with smoke, before the drywall goes up.",
        (
            "A moisture meter in July.",
            "wrong-tool",
            "In July the wood has dried. The leak shows in winter, or with smoke.",
        ),
        ("A perm test of the film.", "vapor-barrier-is-air-barrier"),
        (
            "No test. Those leaks let the house breathe.",
            "house-must-breathe",
            "People breathe. A fan brings them air without wetting the roof.",
        ),
        (
            "Feel for drafts at the floor.",
            "house-leaks-in-everywhere",
            "In winter air comes in low and leaves high. The ceiling leaks outward.",
        ),
    )


CHECKS = (half_hole, half_humidity, which_test)


def _within(now: Values, say: Say) -> Outcome:
    indoor, outdoor = airs(now)
    area, winter, limit = to_si(32, "ft2"), 150 * DAY, criterion("winter-water")
    leak = brought(orifice_flow(now["dP"], now["Hole"]), indoor, outdoor.temperature, LONG_SHARE)
    drive = max(indoor.vapor_pressure - air.saturation_vapor_pressure(outdoor.temperature), 0.0)
    stays, through = leak.stays * winter, now["M_in"] * area * drive * winter
    found = (stays + through) / area
    return Outcome(
        found < limit.caution,
        f"About {say(stays, 'kg')} stay from the hole, and {say(through, 'kg')} come through the ceiling. Together "
        f"that is {say(found, 'g/m2')}: {limit.state(found)}.",
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
