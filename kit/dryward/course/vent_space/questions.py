"""Checks: fog in the vent, what 1/300 asks for, the first fix, where a duct ends, and bays under a hip."""

from dryward import language
from dryward.course.vent_space.day import RAFTER as RAFTER_LENGTH
from dryward.course.vent_space.day import SPACING, shower
from dryward.physics.airleak import Leak
from dryward.physics.ventspace import net_free_area
from dryward.teaching import vault
from dryward.teaching.kinds import power
from dryward.teaching.questions import Draw, Question
from dryward.units import from_si, to_si, written

message = language.beside(__file__)

#: Of the lesson's picture [ft].
RAFTER = from_si(RAFTER_LENGTH, "ft")


def fog(draw: Draw) -> Question | None:
    """The same vents by 1/300, in dry cold and in fog."""
    gap = draw.pick(1.5, (1.0, 1.5, 2.0))
    dry, damp = draw.pick((80, 95), ((80, 95), (75, 90), (70, 90), (80, 90)))
    cold = draw.pick(20, (15, 20, 25, 30))
    draw.note(gap=gap, dry=dry, damp=damp, outdoor=cold)
    before, after = (power(gap, 20, RAFTER, (cold, rh)) for rh in (dry, damp))
    draw.tell("%", room=100 - dry, rest=100 - damp, dry=dry, damp=damp)
    draw.tell(left=message(f"share-{100 * (100 - damp) // (100 - dry)}"))
    draw.tell("g/m2/day", before=before, after=after)
    draw.tell("degF", cold=cold)
    return draw.ask("one-in-300-is-physics", "winter-fog-is-wet-air", "starts-with-dry-air")


def what_300_needs(draw: Draw) -> Question | None:
    """What the smaller vent ratio asks for."""
    area = draw.pick(600, (400, 600, 800, 1000, 1200))
    draw.note(area=area)
    low, high = (from_si(net_free_area(to_si(area, "ft2"), ratio).total, "in2") for ratio in (300.0, 150.0))
    draw.tell("ft2", area=area)
    draw.tell("in2", high=high, low=low)
    return draw.ask("one-in-300-is-physics", "all-area-at-one-end")


def first_fix(draw: Draw) -> Question | None:
    """A leaky ceiling and a vent that cannot keep up, on a mild winter day."""
    ach = draw.pick(4.0, (4.0, 5.0, 6.0))
    share = draw.pick(25, (20, 25, 30))
    cold = draw.pick(32, (28, 30, 32))
    area, volume = 600, 20000
    leak = Leak.from_blower_door(ach, to_si(volume, "ft3"), share / 100, area=to_si(area, "ft2"))
    water = leak.moisture(4.0, vault.air(70, 40), to_si(float(cold), "degF"))
    brings = from_si(water.excess - water.stays, "g/m2/day")
    carries = power(1.5, 20, RAFTER, (cold, 80))
    draw.note(ach50=ach, share=share, outdoor=cold, brings=brings, carries=carries)
    if brings < 1.2 * carries:
        return None
    draw.tell("g/m2/day", brings=brings, carries=carries)
    draw.tell("degF", cold=cold)
    draw.tell("ft2", area=area)
    return draw.ask("more-vents-always-help", ("more-vents-always-help", "fan"))


def duct_end(draw: Draw) -> Question | None:
    """Where the duct of a bath fan ends, on a spring day."""
    cold = draw.pick(40, (36, 38, 40, 42))
    rh = draw.pick(70, (60, 70, 80))
    brings = shower(to_si(float(cold), "degF"))
    bay = RAFTER_LENGTH * SPACING
    carries = power(1.0, 20, RAFTER, (cold, rh)) * bay / 1000
    draw.note(outdoor=cold, rh=rh, brings=brings, carries=carries)
    if brings < 2.2 * carries:
        return None
    draw.tell("degF", cold=cold)
    draw.tell("%", rh=rh)
    draw.tell("kg", shower=brings, carries=carries)
    return draw.ask("bath-fan-into-vent", "more-vents-always-help")


def hip_bays(draw: Draw) -> Question | None:
    """Bays that end at a hip, below the ridge."""
    bays, cut = draw.pick((30, 18), ((30, 18), (24, 16), (28, 12), (36, 20), (22, 14)))
    draw.note(bays=bays, cut=cut)
    draw.tell(all=written(bays, "g"), cut=written(cut, "g"), open=written(bays - cut, "g"))
    return draw.ask("ridge-vent-vents-every-bay", "more-vents-always-help")


CHECKS = (fog, what_300_needs, first_fix, duct_end, hip_bays)
