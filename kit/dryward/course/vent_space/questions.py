"""Checks: fog in the vent, what 1/300 asks for, and the first fix."""

from dryward.physics.airleak import Leak
from dryward.physics.ventspace import net_free_area
from dryward.teaching import vault
from dryward.teaching.kinds import power
from dryward.teaching.questions import Draw, Question
from dryward.units import from_si, to_si

#: Of the lesson's picture [ft].
RAFTER = from_si(5.0, "ft")


#: What is left of the way to full, in words.
SHARES = {0.25: "a quarter", 0.33: "a third", 0.4: "two fifths", 0.5: "half"}


def fog(draw: Draw) -> Question | None:
    """The same vent on a foggy day."""
    gap = draw.pick(1.5, (1.0, 1.5, 2.0))
    dry, damp = draw.pick((80, 95), ((80, 95), (75, 90), (70, 90), (80, 90)))
    cold = draw.pick(20, (15, 20, 25, 30))
    draw.note(gap=gap, dry=dry, damp=damp, outdoor=cold)
    before, after = (power(gap, 20, RAFTER, (cold, rh)) for rh in (dry, damp))
    say = draw.say
    draw.because(
        f"The air is nearly full. It had {100 - dry} % left until full. Now it has {100 - damp} %, "
        f"{SHARES[round((100 - damp) / (100 - dry), 2)]} as much."
    )
    return draw.number(
        f"A {say(gap, 'in')} vent space can carry off {say(before, 'g/m2/day')} at {say(cold, 'degF')} and {dry} %. "
        f"Now fog comes in, {say(cold, 'degF')} and {damp} %. How much can it carry?",
        after,
        "g/m2/day",
        0.15 * after,
        (before, "more-vents-always-help", "Air moves as before, but it comes in nearly full."),
        (
            -after,
            "winter-fog-is-wet-air",
            "It can still take a little. It would bring water only to a face colder than its dew point.",
        ),
        (before * dry / damp, "rh-alone", "What counts is the room left up to full, not the RH itself."),
    )


def what_300_needs(draw: Draw) -> Question | None:
    """What the smaller vent ratio asks for."""
    area = draw.pick(600, (400, 600, 800, 1000, 1200))
    draw.note(area=area)
    low, high = (from_si(net_free_area(to_si(area, "ft2"), ratio).total, "in2") for ratio in (300.0, 150.0))
    say = draw.say
    draw.because(
        "40 to 50 % of it must be high, near the ridge, the rest low. In zones 6 to 8 a class I or II retarder must be "
        "on the warm side. This is a code minimum, as adopted locally, not physics."
    )
    return draw.words(
        f"A vault of {say(area, 'ft2')} needs {say(high, 'in2')} of net free area by 1/150. When may it be "
        f"{say(low, 'in2')} by 1/300?",
        "When 40 to 50 % is high and the rest low, plus a retarder in cold zones.",
        ("With any vents, as long as the area is there.", "more-vents-always-help"),
        ("Always. 1/300 is what physics asks for.", "one-in-300-is-physics"),
        ("When all of it is at the ridge.", "all-area-at-one-end"),
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
    draw.because(
        f"{say(brings, 'g/m2/day')} come and at most {say(carries, 'g/m2/day')} can leave. Stop it at the source."
    )
    return draw.words(
        f"A house at {ach:g} ACH50 has {share} % of its leaks in a {say(area, 'ft2')} vault. At 4 Pa they blow "
        f"about {say(brings, 'g/m2/day')} more into the vent space than air that cold can have. The vent can carry "
        f"off {say(carries, 'g/m2/day')}. First fix?",
        "Air-seal the ceiling.",
        (
            "A bigger ridge vent.",
            "more-vents-always-help",
            "More pull at the ridge can draw in more house air than it carries off.",
        ),
        (
            "A powered fan in the vent.",
            "wet-roof-needs-vents",
            "A fan that pulls on a leaky ceiling draws more house air into the roof. "
            "It can also pull flue gas back down the chimney. Seal first.",
            "A fan moves more air than the wind does.",
        ),
        ("Vents by 1/300, and it is done.", "one-in-300-is-physics"),
    )


CHECKS = (fog, what_300_needs, first_fix)
