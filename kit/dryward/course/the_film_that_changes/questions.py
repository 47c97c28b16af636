"""Checks: which way the film moves, a wet job site, a dry July, the face to the room, and films put in backwards."""

from dryward.building.library import membrane
from dryward.teaching import vault
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import FILM, film, film_state, gain, roof
from dryward.units import from_si


def opens(draw: Draw) -> Question | None:
    """What the film does as the RH around it rises."""
    inside, outside = draw.pick((75, 86), ((55, 65), (60, 70), (65, 75), (70, 80), (75, 86)))
    draw.note(inside=inside, outside=outside)
    dry = from_si(film().at_mean(0.0), "perm")
    found = from_si(film().permeance(inside / 100, outside / 100), "perm")
    draw.tell("%", mean=round((inside + outside) / 2), inside=inside, outside=outside)
    draw.tell("perm", found=found, dry=dry)
    return draw.ask("film-closes-when-humid", "film-waits-for-water")


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
    draw.tell("perm", first=first, then=then)
    draw.tell("g/m2/day", little=little, much=much)
    draw.tell("degF", cold=cold, room=70)
    draw.tell("%", dry=dry, wet=wet)
    return draw.ask("film-closes-when-humid", "film-knows-the-season")


def dry_july(draw: Draw) -> Question | None:
    """A hot July where the air is dry on both sides."""
    hot = draw.pick(95, (90, 95, 100, 105))
    low = draw.pick(15, (10, 12, 15))
    rh = draw.pick(30, (20, 25, 30, 35))
    draw.note(outdoor=hot, outdoor_rh=low, indoor_rh=rh)
    inside, outside, _, found = film_state(roof(), (75, rh), (hot, low))
    tight = from_si(film().at_mean(0.0), "perm")
    if found > 1.2 * tight:
        return None
    draw.tell("perm", found=found)
    draw.tell("degF", hot=hot, room=75)
    draw.tell("%", low=low, rh=rh, inside=round(inside), outside=round(outside))
    return draw.ask("film-knows-the-season", "film-is-a-check-valve")


def face_to_room(draw: Draw) -> Question | None:
    """A film of two sheets, its sensitive sheet to the damp side or away from it."""
    damp, dry = draw.pick((75, 25), ((75, 25), (80, 30), (85, 35), (70, 20), (100, 50)))
    draw.note(damp=damp, dry=dry)
    laminate = membrane("teaching-laminate")
    toward, away = (from_si(each.permeance(damp / 100, dry / 100), "perm") for each in (laminate, laminate.flipped()))
    draw.tell("perm", toward=toward, away=away)
    draw.tell("%", damp=damp, dry=dry)
    return draw.ask("film-closes-when-humid", "same-both-ways", "film-is-a-check-valve")


def turned_over(draw: Draw) -> Question | None:
    """A plain sheet and a film of two sheets, each put in backwards."""
    rh = draw.pick(60, (50, 55, 60, 65))
    cold = draw.pick(20, (10, 15, 20, 25))
    draw.note(indoor_rh=rh, outdoor=cold)
    case, laminate = ((70, rh), (cold, 80)), membrane("teaching-laminate")
    found = []
    for each in (laminate.flipped(), laminate):
        state = vault.state(roof().replace(FILM, each), *case)
        found.append(each.permeance(*(float(state.relative_humidity[state.face(FILM, side)]) for side in (0, 1))))
    right, wrong = (from_si(float(each), "perm") for each in found)
    if wrong < 1.3 * right:
        return None
    draw.tell("perm", right=right, wrong=wrong, plain=film_state(roof(), *case)[3])
    draw.tell("degF", cold=cold, room=70)
    draw.tell("%", rh=rh)
    return draw.ask("same-both-ways", "every-film-has-a-side")


CHECKS = (opens, wet_site, dry_july, face_to_room, turned_over)
