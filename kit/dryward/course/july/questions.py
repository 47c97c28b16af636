"""Checks: cooler rooms, a dew point outside, drying inward in spring, a floor that is aired, a walk-in cooler."""

import dataclasses

from dryward import air
from dryward.building import Assembly
from dryward.physics import drying
from dryward.teaching import vault
from dryward.teaching.practical import JULY, Outcome, Say, Task, Values, dry, in_si, perms, vault_state
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import FILM, face, gain
from dryward.units import from_si, to_si

#: Perms of a plastic sheet, and of an open one.
PLASTIC, OPEN = 0.06, 50.0


def colder_room(draw: Draw) -> Question | None:
    """Plastic inside while the air conditioning is set lower."""
    high, low = draw.pick((78, 70), ((78, 70), (78, 68), (77, 70), (78, 72)))
    hot, humid = draw.pick((85, 75), ((85, 75), (88, 70), (84, 75), (86, 72)))
    draw.note(high=high, low=low, outdoor=hot, outdoor_rh=humid)
    built = vault.roof(PLASTIC)
    before, after = (((t, 50), (hot, humid)) for t in (high, low))
    dry, wet = gain(built, *before), gain(built, *after)
    if dry > 0 or wet < 1:
        return None
    first = face(built, *before, FILM, 1)[1]
    why = vault.why_damp(built, *before)
    draw.tell(damp=bool(why), reason=why)
    draw.tell("%", first=round(first), humid=humid)
    draw.tell("g/m2/day", wet=wet)
    draw.tell("degF", hot=hot, high=high, low=low)
    return draw.ask("barrier-always-inside", "wrong-side-of-the-film")


def summer_water(draw: Draw) -> Question | None:
    """Outdoor dew point above the temperature of the back of the drywall."""
    hot, humid = draw.pick((85, 75), ((85, 75), (88, 70), (90, 65), (86, 75)))
    back = draw.pick(74, (70, 72, 73, 74))
    dew = from_si(vault.air(hot, humid).dew_point, "degF")
    if dew < back + 1.5:
        return None
    draw.note(outdoor=hot, outdoor_rh=humid, back=back)
    draw.tell("degF", dew=dew, back=back, hot=hot)
    draw.tell("%", humid=humid)
    return draw.ask("summer-air-dries", "wrong-side-of-the-film")


def with_damp_wood(inner: float | str | None) -> Assembly:
    """The OSB roof with a wet strip of wood on the inside of the OSB."""
    built = vault.roof(inner, "OSB")
    place = built.index(vault.OUTER)
    wood = vault.stack(("damp wood", 0.75, 0.9)).layers[0]
    return dataclasses.replace(built, layers=(*built.layers[:place], wood, *built.layers[place:]))


def spring_drying(draw: Draw) -> Question | None:
    """Which inner layer lets damp wood dry to the room in spring."""
    mild = draw.pick(60, (55, 58, 60, 62))
    rh = draw.pick(45, (40, 45, 50))
    draw.note(outdoor=mild, rh=rh)
    inward, outward = {}, 0.0
    for inner in ("variable", None, PLASTIC):
        found = drying.rates(with_damp_wood(inner), "damp wood", vault.air(70, rh), vault.air(mild, 60))
        inward[inner], outward = from_si(found.inward, "g/m2/day"), from_si(found.outward, "g/m2/day")
    say = draw.say
    rates = {key: say(value, "g/m2/day") for key, value in inward.items()}
    draw.tell(bare=rates[None], film=rates["variable"], plastic=rates[PLASTIC])
    draw.tell("degF", mild=mild, room=70)
    draw.tell("%", rh=rh)
    draw.tell("g/m2/day", outward=outward)
    return draw.ask("barrier-always-inside", "wet-lumber-dries-itself")


def which_day(draw: Draw) -> Question | None:
    """Two summer days and a cool floor: one has the lower RH, the other the lower dew point."""
    floor = draw.pick(60, (58, 60, 62, 64))
    hot, low = draw.pick((88, 50), ((88, 50), (90, 45), (92, 45), (86, 52)))
    mild, high = draw.pick((66, 60), ((66, 60), (68, 60), (64, 65), (65, 62)))
    first, second = vault.air(hot, low), vault.air(mild, high)
    dews = [from_si(each.dew_point, "degF") for each in (first, second)]
    if dews[0] < floor + 2 or dews[1] > floor - 2:
        return None
    draw.note(floor=floor, first=hot, first_rh=low, second=mild, second_rh=high)
    draw.tell("degF", face=floor, first=hot, second=mild, first_dew=dews[0], second_dew=dews[1])
    there = 100 * float(air.relative_humidity(to_si(floor, "degF"), first.vapor_pressure))
    draw.tell("%", first_rh=low, second_rh=high, first_humid=round(there))
    return draw.ask("summer-air-dries", "rh-alone")


def cooler(draw: Draw) -> Question | None:
    """A walk-in cooler: the plastic belongs on its outside, all year."""
    cold, cold_rh = draw.pick((38, 85), ((36, 85), (38, 85), (40, 80), (42, 80)))
    shop, shop_rh = draw.pick((75, 50), ((72, 50), (75, 50), (76, 45), (78, 45)))
    sides = (cold, cold_rh), (shop, shop_rh)
    wet, dry = gain(vault.roof(PLASTIC), *sides), gain(vault.roof(OPEN, PLASTIC), *sides)
    if wet < 1 or dry > 0:
        return None
    draw.note(cold=cold, cold_rh=cold_rh, shop=shop, shop_rh=shop_rh)
    draw.tell("degF", cold=cold, shop=shop, shop_dew=from_si(vault.air(shop, shop_rh).dew_point, "degF"))
    draw.tell("%", cold_rh=cold_rh, shop_rh=shop_rh)
    draw.tell("g/m2/day", wet=wet)
    return draw.ask("barrier-always-inside", "two-barriers-twice-as-good")


CHECKS = (colder_room, summer_water, spring_drying, which_day, cooler)


def _july(now: Values, say: Say) -> Outcome:
    """Whether the roof is dry on such a day."""
    return dry(vault_state(now, "open membrane"), say)


TASKS = (
    Task(
        "july-film",
        {**JULY, **perms(M_in=0.06)},
        ("M_in", "T_in"),
        2,
        {**perms(M_in=10), **in_si(T_in=(78, "degF"))},
        _july,
    ),
)
