"""Checks: a filled service cavity, why it stays nearly empty, and the steamy bathroom."""

from dryward import language
from dryward.physics import steady
from dryward.teaching.practical import Outcome, Say, Task, Values, airs, in_si
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import FILM, face, film_state, gain, roof, verdict
from dryward.units import from_si, to_si
from dryward.verdict import DRY, WET, of_steady
from dryward.verdict.words import adjective

message = language.beside(__file__)


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
    draw.because(
        message(
            "filled-cavity-why",
            warm=say(warm, "degF"),
            cool=say(cool, "degF"),
            humid=say(round(humid[0]), "%"),
            first=say(first, "perm"),
            then=say(humid[3], "perm"),
            changes=states[0] != states[1],
            before=adjective(states[0]),
            after=adjective(states[1]),
            share=say(round(share), "%"),
        )
    )
    return draw.words(
        message(
            "filled-cavity-ask",
            inside=say(inside, "R"),
            outside=say(outside, "R"),
            cold=say(cold, "degF"),
            room=say(70, "degF"),
            rh=say(rh, "%"),
        ),
        message("filled-cavity-right"),
        (
            message("filled-cavity-label-r-is-wall-r"),
            "label-r-is-wall-r",
            message("filled-cavity-label-r-is-wall-r-reply"),
        ),
        (message("filled-cavity-film-knows-the-season"), "film-knows-the-season"),
        (message("filled-cavity-film-closes-when-humid"), "film-closes-when-humid"),
    )


def why_empty(draw: Draw) -> Question | None:
    """Why the service cavity is left nearly empty."""
    cold = draw.pick(0, (-10, 0, 10))
    rh = draw.pick(50, (40, 45, 50))
    draw.note(outdoor=cold, rh=rh)
    built = roof("variable", "open membrane", 1.0)
    warm, humid = face(built, (70, rh), (cold, 80), FILM)
    say = draw.say
    draw.because(message("why-empty-why", resistance=say(1, "R"), warm=say(warm, "degF"), humid=say(round(humid), "%")))
    return draw.words(
        message("why-empty-ask", cold=say(cold, "degF"), rh=say(rh, "%")),
        message("why-empty-right"),
        (
            message("why-empty-label-r-is-wall-r"),
            "label-r-is-wall-r",
            message("why-empty-label-r-is-wall-r-reply"),
            message("why-empty-label-r-is-wall-r-seems"),
        ),
        (message("why-empty-film-closes-when-humid"), "film-closes-when-humid"),
        (message("why-empty-house-must-breathe"), "house-must-breathe", message("why-empty-house-must-breathe-reply")),
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
    draw.because(
        message(
            "steam-bath-why",
            bath=say(bath, "g/m2/day"),
            bedroom=say(bedroom, "g/m2/day"),
            perms=say(0.1, "perm"),
            less=say(less, "g/m2/day"),
            state=left,
        )
    )
    return draw.words(
        message(
            "steam-bath-ask",
            room=say(70, "degF"),
            steam=say(steam, "%"),
            resistance=say(11, "R"),
            cold=say(cold, "degF"),
        ),
        message("steam-bath-right"),
        (
            message("steam-bath-more-vents-always-help"),
            "more-vents-always-help",
            message("steam-bath-more-vents-always-help-reply"),
        ),
        (
            message("steam-bath-film-knows-the-season"),
            "film-knows-the-season",
            message("steam-bath-film-knows-the-season-reply", bedroom=say(bedroom, "g/m2/day")),
            message("steam-bath-film-knows-the-season-seems"),
        ),
        (message("steam-bath-film-closes-when-humid"), "film-closes-when-humid"),
    )


CHECKS = (filled_cavity, why_empty, steam_bath)


def _tight_and_dry(now: Values, say: Say) -> Outcome:
    """Whether the film is tight enough and the roof dry."""
    profile = steady.profile(roof("variable", "open membrane", from_si(now["R_in"], "R")), *airs(now))
    found, judged = profile.permeance[FILM], of_steady(profile)
    tight = found <= to_si(1.0, "perm") * (1 + 1e-9)
    told = message("task-outcome", permeance=say(found, "perm"), verdict=say.verdict(judged))
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
