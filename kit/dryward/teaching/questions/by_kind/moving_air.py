"""Kinds about moving air: a leak beside diffusion, vent area, vent power, air changes."""

from dryward import air
from dryward.physics.airleak import LONG_SHARE, Leak, brought, orifice_flow
from dryward.physics.ventspace import net_free_area
from dryward.teaching.questions import roof
from dryward.teaching.questions.by_lesson.how_fast_perms import in_a_row
from dryward.teaching.questions.by_lesson.vent_space import power
from dryward.units import DAY, HOUR, from_si, to_si

#: Perms of painted drywall, and what the answer may be off by, in points of a percentage.
DRYWALL = in_a_row(40, 7)
POINTS = 4.0
#: How the air of a hole goes, by the share of it that cools.
WAYS = {
    LONG_SHARE: "Most of the hole's air goes straight by: of what it carries past the cold face about a tenth stays.",
    1.0: "The hole opens into the fill, and all of its air seeps through and cools down to the cold face.",
}


def leak_or_diffusion(draw):
    """How much of the water that stays came with leaking air."""
    hole = draw.pick(1.0, (0.1, 0.2, 0.5, 1.0, 2.0))
    push = draw.pick(1.0, (1.0, 2.0, 4.0))
    film = draw.pick(None, (None, None, 1.0, 0.5))
    area = draw.pick(32, (32, 64, 100, 200))
    cold = draw.pick(20, (10, 20, 30))
    rh = draw.pick(40, (35, 40, 45))
    share = draw.pick(LONG_SHARE, WAYS)
    room, plane = roof.air(70, rh), to_si(float(cold), "degF")
    leak = brought(orifice_flow(push, to_si(hole, "in2")), room, plane, share)
    perms = DRYWALL if film is None else in_a_row(DRYWALL, film)
    drive = room.vapor_pressure - air.saturation_vapor_pressure(plane)
    through = to_si(perms, "perm") * to_si(area, "ft2") * drive

    def part(by_air):
        return 100 * by_air / (by_air + through)

    found = part(leak.stays)
    if not 5 <= found <= 95:
        return None
    draw.note(hole=hole, push=push, film=film, area=area, plane=cold, rh=rh, share=share)
    say = draw.say
    stays, passes = (say(each * 150 * DAY, "kg") for each in (leak.stays, through))
    layers = "painted drywall" if film is None else f"painted drywall and a film of {say(film, 'perm')}"
    draw.because(f"In 150 days about {stays} stay from the hole, and {passes} come by diffusion.")
    return draw.number(
        f"A ceiling of {say(area, 'ft2')}, {layers}, has one hole of {say(hole, 'in2')} with {push:g} Pa "
        f"across it. The room is {say(70, 'degF')} and {rh} %, the cold face {say(cold, 'degF')}. {WAYS[share]} How "
        "much of the water that is left there came with the air, not by diffusion?",
        found,
        "",
        POINTS,
        (98.0, "one-path-does-it-all", f"No one number holds. {draw.why}"),
        (part(leak.excess), "forgets-what-goes-by", f"Air that goes straight by keeps its water. {draw.why}"),
        (part(share * leak.carried), "forgets-saturation", f"What is below saturation moves on. {draw.why}"),
        (0.0, "house-leaks-in-everywhere", f"Up here the push is outward, {push:g} Pa. {draw.why}"),
        tail=" %",
        must=True,
    )


def vent_area(draw):
    """Net free area at the eave by the code's ratio."""
    area = draw.pick(600, range(300, 1500, 100))
    ratio = draw.pick(300, (150, 300))
    eave = draw.pick(60, (30, 40, 50, 60, 80))
    draw.note(area=area, ratio=ratio, eave=eave)

    def low(by, **how):
        found = net_free_area(to_si(area, "ft2"), by, eave_length=to_si(eave, "ft"), **how).lower_per_length
        return found / (to_si(1, "in2") / to_si(1, "ft")) if draw.unit_system == "us" else found / to_si(1, "cm2")

    found, unit = low(ratio), "in² per ft" if draw.unit_system == "us" else "cm² per m"
    say = draw.say
    total = from_si(net_free_area(to_si(area, "ft2"), ratio).total, "in2")
    draw.because(
        f"1/{ratio} of {say(area, 'ft2')} is {say(total, 'in2')}. Half of it low, over {say(eave, 'ft')} of eave."
    )
    return draw.number(
        f"A vault of {say(area, 'ft2')} is vented by 1/{ratio}, half high and half low. The eaves are "
        f"{say(eave, 'ft')} long "
        "in all. How much net free area does the eave need?",
        found,
        "",
        0.05 * found,
        (low(450 - ratio), "swaps-vent-ratios"),
        (low(ratio, upper_share=0.0), "all-area-at-one-end"),
        (found / (12 if draw.unit_system == "us" else 100), "area-units-mixed"),
        tail=f" {unit}",
    )


def vent_power(draw):
    """The most that vent air can carry off."""
    gap = draw.pick(1.5, (1.0, 1.5, 2.0, 2.5))
    speed = draw.pick(20, (15, 20, 30, 40))
    cold = draw.pick(20, (10, 20, 30, 40))
    rh = draw.pick(80, (70, 75, 80, 85, 90))
    draw.note(gap=gap, speed=speed, outdoor=cold, rh=rh)
    found, full = power(gap, speed, 16, (cold, rh)), power(gap, speed, 16, (cold, 0))
    say = draw.say
    draw.because(f"The air comes in {rh} % full and can take only the other {100 - rh} %: {say(found, 'g/m2/day')}.")
    return draw.number(
        f"Vent air moves at {say(speed, 'ft/min')} through a {say(gap, 'in')} gap under a "
        f"{say(16, 'ft')} rafter. It is "
        f"{say(cold, 'degF')} and {rh} % outside. Bone-dry air could carry off {say(full, 'g/m2/day')} here. "
        "How much can this air carry at most?",
        found,
        "g/m2/day",
        0.15 * found,
        (full, "starts-with-dry-air"),
        (2 * full, "more-vents-always-help", f"The weather sets the limit: {say(found, 'g/m2/day')}."),
        (0.0, "winter-fog-is-wet-air", f"It is {rh} % full, not quite full. It can take {say(found, 'g/m2/day')}."),
    )


def air_changes(draw):
    """ACH50 from CFM50 and the volume."""
    volume = draw.pick(20000, range(8000, 40000, 2000))
    cfm = draw.pick(1000, range(300, 3000, 100))
    draw.note(cfm50=cfm, volume=volume)
    house = Leak.from_blower_door(to_si(cfm, "cfm") * HOUR / to_si(volume, "ft3"), to_si(volume, "ft3"))
    found = house.changes_at_50(to_si(volume, "ft3"))
    if not 0.5 < found < 15:
        return None
    say = draw.say
    if draw.unit_system == "us":
        draw.because(f"60 minutes times {say(cfm, 'cfm')}, over {say(volume, 'ft3')}: {found:.2f} per hour.")
    else:
        draw.because(
            f"{say(cfm, 'cfm')} over {say(volume, 'ft3')}: {found:.2f} per hour. The flow is already per hour."
        )
    return draw.number(
        f"A blower door reads {say(cfm, 'cfm')} at 50 Pa in a house of {say(volume, 'ft3')}. What is the ACH50?",
        found,
        "",
        0.02 * found,
        (found / 60 if draw.unit_system == "us" else found * 60, "forgets-sixty"),
        (found / 20, "twenty-too-early"),
        tail=" ACH50",
    )
