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
    say = draw.say
    draw.because(
        message(
            "fog-why",
            dry=say(100 - dry, "%"),
            damp=say(100 - damp, "%"),
            left=message(f"share-{100 * (100 - damp) // (100 - dry)}"),
        )
    )
    return draw.number(
        message(
            "fog-ask",
            gap=say(gap, "in"),
            before=say(before, "g/m2/day"),
            cold=say(cold, "degF"),
            dry=say(dry, "%"),
            damp=say(damp, "%"),
        ),
        after,
        "g/m2/day",
        0.15 * after,
        (before, "more-vents-always-help", message("fog-more-vents-always-help-reply")),
        (
            -after,
            "winter-fog-is-wet-air",
            message("fog-winter-fog-is-wet-air-reply"),
        ),
        (before * dry / damp, "rh-alone", message("fog-rh-alone-reply")),
    )


def what_300_needs(draw: Draw) -> Question | None:
    """What the smaller vent ratio asks for."""
    area = draw.pick(600, (400, 600, 800, 1000, 1200))
    draw.note(area=area)
    low, high = (from_si(net_free_area(to_si(area, "ft2"), ratio).total, "in2") for ratio in (300.0, 150.0))
    say = draw.say
    draw.because(message("what-300-needs-why"))
    return draw.words(
        message("what-300-needs-ask", area=say(area, "ft2"), high=say(high, "in2"), low=say(low, "in2")),
        message("what-300-needs-right"),
        (message("what-300-needs-more-vents-always-help"), "more-vents-always-help"),
        (message("what-300-needs-one-in-300-is-physics"), "one-in-300-is-physics"),
        (message("what-300-needs-all-area-at-one-end"), "all-area-at-one-end"),
    )


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
    say = draw.say
    draw.because(message("first-fix-why", brings=say(brings, "g/m2/day"), carries=say(carries, "g/m2/day")))
    return draw.words(
        message(
            "first-fix-ask",
            ach=written(ach, "g"),
            share=say(share, "%"),
            area=say(area, "ft2"),
            brings=say(brings, "g/m2/day"),
            carries=say(carries, "g/m2/day"),
        ),
        message("first-fix-right"),
        (
            message("first-fix-more-vents-always-help"),
            "more-vents-always-help",
            message("first-fix-more-vents-always-help-reply"),
        ),
        (
            message("first-fix-wet-roof-needs-vents"),
            "wet-roof-needs-vents",
            message("first-fix-wet-roof-needs-vents-reply"),
            message("first-fix-wet-roof-needs-vents-seems"),
        ),
        (message("first-fix-one-in-300-is-physics"), "one-in-300-is-physics"),
    )


CHECKS = (fog, what_300_needs, first_fix)
