"""Checks: which way the film moves, a wet job site, and the face to the room."""

from dryward.building.library import membrane
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import film, film_state, gain, roof
from dryward.units import from_si


def opens(draw: Draw) -> Question | None:
    """What the film does as the RH around it rises."""
    inside, outside = draw.pick((75, 86), ((55, 65), (60, 70), (65, 75), (70, 80), (75, 86)))
    draw.note(inside=inside, outside=outside)
    dry = from_si(film().at_mean(0.0), "perm")
    found = from_si(film().permeance(inside / 100, outside / 100), "perm")
    say = draw.say
    draw.because(f"Read the curve at the mean RH, {(inside + outside) / 2:.0f} %: {say(found, 'perm')}.")
    return draw.words(
        f"In winter the teaching film stands at {say(dry, 'perm')}. Now its two faces see {inside} % and {outside} %. "
        "What does it do?",
        f"It opens, to about {say(found, 'perm')}.",
        (f"It closes, to well below {say(dry, 'perm')}.", "film-closes-when-humid"),
        (
            f"It stays at {say(dry, 'perm')} until it is wet.",
            "no-drops-no-problem",
            "It starts to open near 30 % mean RH on this curve, long before drops.",
        ),
    )


def wet_site(draw: Draw) -> Question | None:
    """Plaster that dries in January."""
    dry = draw.pick(40, (35, 40))
    wet = draw.pick(65, (60, 65, 70))
    cold = draw.pick(20, (10, 15, 20, 25))
    draw.note(dry=dry, wet=wet, outdoor=cold)
    built = roof("variable", "OSB")
    cases = [((70, rh), (cold, 80)) for rh in (dry, wet)]
    (first, then), (little, much) = (
        [film_state(built, *case)[3] for case in cases],
        [gain(built, *case) for case in cases],
    )
    if much < little + 1 or little < 0.05:
        return None
    say = draw.say
    draw.because(
        f"It opens from {say(first, 'perm')} to {say(then, 'perm')}, and the gain rises from "
        f"{say(little, 'g/m2/day')} to {say(much, 'g/m2/day')}. Dry the site air."
    )
    return draw.words(
        f"It is January and {say(cold, 'degF')}. New plaster dries, and the house goes from {dry} % to {wet} % at "
        f"{say(70, 'degF')}. The roof has OSB outside and the teaching film inside. What does the film do?",
        "It opens and lets more water in.",
        ("It closes, since it is humid.", "film-closes-when-humid"),
        ("It stays tight, since it is winter.", "film-knows-the-season"),
    )


def face_to_room(draw: Draw) -> Question | None:
    """A film of two sheets, its sensitive sheet to the damp side or away from it."""
    damp, dry = draw.pick((75, 25), ((75, 25), (80, 30), (85, 35), (70, 20), (100, 50)))
    draw.note(damp=damp, dry=dry)
    laminate = membrane("teaching-laminate")
    toward, away = (from_si(each.permeance(damp / 100, dry / 100), "perm") for each in (laminate, laminate.flipped()))
    say = draw.say
    draw.because(f"{say(toward, 'perm')} with the sensitive sheet to the damp side, {say(away, 'perm')} away from it.")
    return draw.words(
        "A film is bonded from a sensitive sheet and a backing with fixed perms. One side has "
        f"{damp} % RH, the other {dry} %. With which sheet to the damp side is it more open?",
        "The sensitive sheet.",
        ("The backing. The sensitive sheet would close.", "film-closes-when-humid"),
        ("It makes no difference. A film is the same both ways.", "same-both-ways"),
        ("Neither. It lets vapor one way only.", "film-is-a-check-valve"),
    )


CHECKS = (opens, wet_site, face_to_room)
