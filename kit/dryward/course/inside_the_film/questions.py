"""Checks: a filled service cavity, why it stays nearly empty, and the steamy bathroom."""

from dryward.physics import steady
from dryward.teaching.practical import Outcome, Say, Task, Values, airs, in_si
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import FILM, face, film_state, gain, roof, verdict
from dryward.units import from_si, to_si
from dryward.verdict import DRY, WET, of_steady


def filled_cavity(draw: Draw) -> Question | None:
    """A batt in the service cavity."""
    inside = draw.pick(13, (11, 13, 15))
    outside = draw.pick(30, (28, 30, 32))
    rh = draw.pick(50, (45, 50, 55))
    cold = draw.pick(0, (-10, -5, 0, 5))
    air = (70, rh), (cold, 80)
    draw.note(inside=inside, outside=outside, rh=rh, outdoor=cold)
    before, after = (roof("variable", "open membrane", r, outside) for r in (1.0, float(inside)))
    warm, cool = face(before, *air, FILM)[0], face(after, *air, FILM)[0]
    humid = film_state(after, *air)
    first = film_state(before, *air)[3]
    if humid[3] < 1.4 * first:
        return None
    say = draw.say
    states = [verdict(each, *air).state for each in (before, after)]
    share = 100 * inside / (inside + outside)
    turned = f"The roof goes from {states[0]} to {states[1]}" if states[0] != states[1] else f"The roof is {states[1]}"
    draw.because(
        f"The film goes from {say(warm, 'degF')} to {say(cool, 'degF')}, its room face sees "
        f"{humid[0]:.0f} %, and it opens "
        f"from {say(first, 'perm')} to {say(humid[3], 'perm')}. {turned}, with {share:.0f} % of the R inside the film."
    )
    return draw.words(
        f"Someone fills the service cavity with {say(inside, 'R')}, under {say(outside, 'R')} outside the film. It is "
        f"{say(cold, 'degF')} outside, {say(70, 'degF')} and {rh} % inside. What does the film do?",
        "It cools, feels damper air, and opens.",
        ("It gets better. More R is more R.", "label-r-is-wall-r", "More R inside the film makes the film colder."),
        ("Nothing. It is winter, so it is tight.", "film-knows-the-season"),
        ("It closes, since it is more humid.", "film-closes-when-humid"),
    )


def why_empty(draw: Draw) -> Question | None:
    """Why the service cavity is left nearly empty."""
    cold = draw.pick(0, (-10, 0, 10))
    rh = draw.pick(50, (40, 45, 50))
    draw.note(outdoor=cold, rh=rh)
    built = roof("variable", "open membrane", 1.0)
    warm, humid = face(built, (70, rh), (cold, 80), FILM)
    say = draw.say
    draw.because(
        f"With {say(1, 'R')} in the cavity the film sits at {say(warm, 'degF')} and {humid:.0f} % on its room face."
    )
    return draw.words(
        f"It is {say(cold, 'degF')} outside and {rh} % inside. Why is the service cavity left nearly empty?",
        "So that the film stays warm and on the dry side.",
        (
            "To save money.",
            "label-r-is-wall-r",
            "R there would cost little. It would make the film cold.",
            "An empty space looks like work that was left out.",
        ),
        ("So that the film can close.", "film-closes-when-humid"),
        ("So that the house can breathe.", "house-must-breathe", "Nothing breathes there. The film must be airtight."),
    )


def steam_bath(draw: Draw) -> Question | None:
    """A bathroom that stays steamy, under the same vault."""
    steam = draw.pick(75, (70, 75, 80))
    cold = draw.pick(0, (-5, 0, 5, 10))
    inside = 11.0
    draw.note(steam=steam, outdoor=cold)
    built = roof("variable", "OSB", inside)
    bedroom, bath = (gain(built, (70, rh), (cold, 80)) for rh in (40, steam))
    less = gain(roof(0.1, "OSB", 1.0), (70, steam), (cold, 80))
    if not bath > bedroom + 1 > less + 1 or verdict(built, (70, 40), (cold, 80)).state != WET:
        return None
    say = draw.say
    left = verdict(roof(0.1, "OSB", 1.0), (70, steam), (cold, 80)).state
    still = "which is wet still, so the fan comes first" if left == WET else f"and the roof is {left}"
    draw.because(
        f"In this roof the bath brings {say(bath, 'g/m2/day')}, a bedroom {say(bedroom, 'g/m2/day')}. With a "
        f"{say(0.1, 'perm')} film and little R inside it is {say(less, 'g/m2/day')}, {still}."
    )
    return draw.words(
        f"A bathroom that stays steamy, {say(70, 'degF')} and {steam} %, lies under the same vault, with "
        f"{say(11, 'R')} inside the film, OSB outside, and {say(cold, 'degF')} outdoors. What do you change?",
        "More fan, less R inside the film or a tighter film there. Then work it out in the kit, and ask the designer.",
        (
            "More vents outside.",
            "more-vents-always-help",
            "The vent is beyond the OSB. The water comes from the room.",
        ),
        (
            "Nothing. It is like any bedroom.",
            "film-knows-the-season",
            f"A bedroom brings {say(bedroom, 'g/m2/day')}, and that is wet too behind OSB in this cold.",
            "It is the same roof, the same film and the same winter.",
        ),
        ("Nothing. The film closes in steam.", "film-closes-when-humid"),
    )


CHECKS = (filled_cavity, why_empty, steam_bath)


def _tight_and_dry(now: Values, say: Say) -> Outcome:
    profile = steady.profile(roof("variable", "open membrane", from_si(now["R_in"], "R")), *airs(now))
    found, judged = profile.permeance[FILM], of_steady(profile)
    tight = found <= to_si(1.0, "perm") * (1 + 1e-9)
    told = f"The film stands at {say(found, 'perm')}. {say.verdict(judged)}"
    return Outcome(tight and judged.state == DRY, told, found)


TASKS = (
    Task(
        "warm-film",
        in_si(T_in=(70, "degF"), RH_in=(50, "%"), T_out=(0, "degF"), RH_out=(80, "%"), R_in=(22, "R")),
        ("R_in", "RH_in"),
        2,
        in_si(R_in=(5, "R")),
        _tight_and_dry,
    ),
)
