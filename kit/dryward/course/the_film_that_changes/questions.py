"""Checks: which way the film moves, a wet job site, and the face to the room."""

from dryward import language
from dryward.building.library import membrane
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import film, film_state, gain, roof
from dryward.units import from_si

message = language.beside(__file__)


def opens(draw: Draw) -> Question | None:
    """What the film does as the RH around it rises."""
    inside, outside = draw.pick((75, 86), ((55, 65), (60, 70), (65, 75), (70, 80), (75, 86)))
    draw.note(inside=inside, outside=outside)
    dry = from_si(film().at_mean(0.0), "perm")
    found = from_si(film().permeance(inside / 100, outside / 100), "perm")
    say = draw.say
    draw.because(message("opens-why", mean=say(round((inside + outside) / 2), "%"), found=say(found, "perm")))
    return draw.words(
        message("opens-ask", dry=say(dry, "perm"), inside=say(inside, "%"), outside=say(outside, "%")),
        message("opens-right", found=say(found, "perm")),
        (message("opens-film-closes-when-humid", dry=say(dry, "perm")), "film-closes-when-humid"),
        (
            message("opens-no-drops-no-problem", dry=say(dry, "perm")),
            "no-drops-no-problem",
            message("opens-no-drops-no-problem-reply"),
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
        message(
            "wet-site-why",
            first=say(first, "perm"),
            then=say(then, "perm"),
            little=say(little, "g/m2/day"),
            much=say(much, "g/m2/day"),
        )
    )
    return draw.words(
        message("wet-site-ask", cold=say(cold, "degF"), dry=say(dry, "%"), wet=say(wet, "%"), room=say(70, "degF")),
        message("wet-site-right"),
        (message("wet-site-film-closes-when-humid"), "film-closes-when-humid"),
        (message("wet-site-film-knows-the-season"), "film-knows-the-season"),
    )


def face_to_room(draw: Draw) -> Question | None:
    """A film of two sheets, its sensitive sheet to the damp side or away from it."""
    damp, dry = draw.pick((75, 25), ((75, 25), (80, 30), (85, 35), (70, 20), (100, 50)))
    draw.note(damp=damp, dry=dry)
    laminate = membrane("teaching-laminate")
    toward, away = (from_si(each.permeance(damp / 100, dry / 100), "perm") for each in (laminate, laminate.flipped()))
    say = draw.say
    draw.because(message("face-to-room-why", toward=say(toward, "perm"), away=say(away, "perm")))
    return draw.words(
        message("face-to-room-ask", damp=say(damp, "%"), dry=say(dry, "%")),
        message("face-to-room-right"),
        (message("face-to-room-film-closes-when-humid"), "film-closes-when-humid"),
        (message("face-to-room-same-both-ways"), "same-both-ways"),
        (message("face-to-room-film-is-a-check-valve"), "film-is-a-check-valve"),
    )


CHECKS = (opens, wet_site, face_to_room)
