"""Checks: fog in the vent, what 1/300 asks for, and the first fix."""

from dryward import language
from dryward.physics.airleak import Leak
from dryward.physics.ventspace import net_free_area
from dryward.teaching import vault
from dryward.teaching.kinds import power
from dryward.teaching.questions import Draw, Question
from dryward.units import from_si, to_si, written

message = language.beside(__file__)

#: Of the lesson's picture [ft].
RAFTER = from_si(5.0, "ft")


def fog(draw: Draw) -> Question | None:
    """The same vent on a foggy day."""
    gap = draw.pick(1.5, (1.0, 1.5, 2.0))
    dry, damp = draw.pick((80, 95), ((80, 95), (75, 90), (70, 90), (80, 90)))
    cold = draw.pick(20, (15, 20, 25, 30))
    draw.note(gap=gap, dry=dry, damp=damp, outdoor=cold)
    before, after = (power(gap, 20, RAFTER, (cold, rh)) for rh in (dry, damp))
    draw.tell("%", room=100 - dry, rest=100 - damp, dry=dry, damp=damp)
    draw.tell(left=message(f"share-{100 * (100 - damp) // (100 - dry)}"))
    draw.tell("in", gap=gap)
    draw.tell("g/m2/day", before=before)
    draw.tell("degF", cold=cold)
    return draw.ask_number(
        after,
        "g/m2/day",
        0.15 * after,
        (before, "more-vents-always-help"),
        (-after, "winter-fog-is-wet-air"),
        (before * dry / damp, "rh-alone"),
    )


def what_300_needs(draw: Draw) -> Question | None:
    """What the smaller vent ratio asks for."""
    area = draw.pick(600, (400, 600, 800, 1000, 1200))
    draw.note(area=area)
    low, high = (from_si(net_free_area(to_si(area, "ft2"), ratio).total, "in2") for ratio in (300.0, 150.0))
    draw.tell("ft2", area=area)
    draw.tell("in2", high=high, low=low)
    return draw.ask("more-vents-always-help", "one-in-300-is-physics", "all-area-at-one-end")


def first_fix(draw: Draw) -> Question | None:
    """A leaky ceiling and a vent that cannot keep up."""
    ach = draw.pick(3.0, (3.0, 4.0, 5.0))
    share = draw.pick(20, (20, 25, 30))
    area, volume = 600, 20000
    leak = Leak.from_blower_door(ach, to_si(volume, "ft3"), share / 100, area=to_si(area, "ft2"))
    water = leak.moisture(4.0, vault.air(70, 40), to_si(20.0, "degF"))
    brings = from_si(water.excess - water.stays, "g/m2/day")
    carries = power(1.5, 20, RAFTER, (20, 80))
    draw.note(ach50=ach, share=share, brings=brings, carries=carries)
    draw.tell("g/m2/day", brings=brings, carries=carries)
    draw.tell(ach=written(ach, "g"))
    draw.tell("%", share=share)
    draw.tell("ft2", area=area)
    return draw.ask("more-vents-always-help", "wet-roof-needs-vents", "one-in-300-is-physics")


CHECKS = (fog, what_300_needs, first_fix)
