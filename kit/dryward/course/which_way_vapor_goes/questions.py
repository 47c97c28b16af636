"""Checks: up from the crawlspace, out into the desert, almost no push, equal RH, and what wood goes by."""

from dryward.building.library import wood_moisture
from dryward.teaching import vault
from dryward.teaching.questions import Draw, Question

#: A push below this is "almost none", on the page and in a check [Pa]; the kit's own line.
ALMOST_NONE = 50.0


def crawlspace(draw: Draw) -> Question | None:
    """A cool, damp crawlspace under a warm room."""
    below = draw.pick((65, 95), ((62, 95), (64, 90), (65, 95), (66, 90), (68, 85)))
    above = draw.pick((75, 50), ((74, 45), (75, 50), (76, 45), (75, 40)))
    draw.note(below=below, above=above)
    low, high = vault.air(*above).vapor_pressure, vault.air(*below).vapor_pressure
    if high < low + 100:
        return None
    draw.tell("Pa", high=high, low=low)
    draw.tell("degF", below=below[0], above=above[0])
    draw.tell("%", below_rh=below[1], above_rh=above[1])
    return draw.ask("warm-to-cold", "warm-air-lid")


def no_push(draw: Draw) -> Question | None:
    """Two airs with very unlike RH and nearly the same vapor pressure."""
    warm, cool = draw.pick(
        ((75, 40), (52, 90)),
        (((75, 40), (52, 90)), ((70, 50), (52, 95)), ((72, 45), (52, 90)), ((76, 45), (58, 85)), ((78, 45), (58, 90))),
    )
    draw.note(warm=warm, cool=cool)
    first, second = vault.air(*warm).vapor_pressure, vault.air(*cool).vapor_pressure
    if abs(first - second) >= ALMOST_NONE:
        return None
    draw.tell("Pa", first=first, second=second, push=abs(first - second))
    draw.tell("degF", warm=warm[0], cool=cool[0])
    draw.tell("%", warm_rh=warm[1], cool_rh=cool[1])
    return draw.ask("rh-drives-vapor", "warm-to-cold")


def equal_rh(draw: Draw) -> Question | None:
    """The same RH in a room and outdoors, in winter or in summer."""
    rh = draw.pick(50, (40, 45, 50, 55, 60))
    inside = draw.pick(70, (68, 70, 72))
    outside = draw.pick(20, (0, 10, 20, 30) if draw.coin else (85, 88, 90, 95))
    draw.note(rh=rh, inside=inside, outside=outside)
    first, second = vault.air(inside, rh).vapor_pressure, vault.air(outside, rh).vapor_pressure
    way, other = ("out", "in") if first > second else ("in", "out")
    draw.tell("Pa", first=first, second=second)
    draw.tell("degF", inside=inside, outside=outside)
    draw.tell("%", rh=rh)
    draw.tell(way=way, other=other)
    return draw.ask("rh-drives-vapor", "cooler-is-damper")


def desert(draw: Draw) -> Question | None:
    """A cooled room in dry heat."""
    hot = draw.pick(100, (90, 95, 100, 105))
    low = draw.pick(10, (10, 12, 15))
    cool = draw.pick(76, (74, 75, 76, 78))
    indoor = draw.pick(45, (40, 45, 50))
    draw.note(outdoor=hot, outdoor_rh=low, indoor=cool, indoor_rh=indoor)
    inside, outside = vault.air(cool, indoor).vapor_pressure, vault.air(hot, low).vapor_pressure
    if inside < outside + 4 * ALMOST_NONE:
        return None
    draw.tell("Pa", inside=inside, outside=outside)
    draw.tell("degF", hot=hot, cool=cool)
    draw.tell("%", low=low, indoor=indoor)
    return draw.ask("warm-to-cold", "rules-cancel")


def two_boards(draw: Draw) -> Question | None:
    """A board in cold, humid air with little vapor, and one in a warm, dry room with more."""
    cold, humid = draw.pick((35, 85), ((30, 80), (30, 85), (35, 80), (35, 85), (38, 80)))
    warm, low = draw.pick((70, 35), ((68, 35), (70, 30), (70, 35), (72, 35)))
    draw.note(cold=cold, humid=humid, warm=warm, low=low)
    garage, room = vault.air(cold, humid), vault.air(warm, low)
    if room.vapor_pressure < garage.vapor_pressure + ALMOST_NONE:
        return None
    wet, dry = (100 * float(wood_moisture(each.relative_humidity, each.temperature)) for each in (garage, room))
    draw.tell("Pa", garage=garage.vapor_pressure, room=room.vapor_pressure)
    draw.tell("degF", cold=cold, warm=warm)
    draw.tell("%", humid=humid, low=low, wet=round(wet), dry=round(dry))
    return draw.ask("only-pressure-counts", "no-drops-no-problem")


CHECKS = (crawlspace, desert, no_push, equal_rh, two_boards)
