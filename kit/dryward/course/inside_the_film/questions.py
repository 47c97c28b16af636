"""Checks: a filled service cavity, why it stays nearly empty, and the steamy bathroom."""

from dryward import language
from dryward.physics import steady
from dryward.teaching.practical import Outcome, Say, Task, Values, airs, in_si
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import FILM, face, film_state, gain, roof, verdict
from dryward.units import from_si, to_si
from dryward.verdict import DRY, WET

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
    states = [verdict(each, *air).state for each in (before, after)]
    share = 100 * inside / (inside + outside)
    draw.tell("degF", warm=warm, cool=cool, cold=cold, room=70)
    draw.tell("%", humid=round(humid[0]), share=round(share), rh=rh)
    draw.tell("perm", first=first, then=humid[3])
    draw.tell(
        changes=states[0] != states[1],
        before=language.message("verdict.state", state=states[0]),
        after=language.message("verdict.state", state=states[1]),
    )
    draw.tell("R", inside=inside, outside=outside)
    return draw.ask("r-anywhere", "film-knows-the-season", "film-closes-when-humid")


def why_empty(draw: Draw) -> Question | None:
    """Why the service cavity is left nearly empty."""
    cold = draw.pick(0, (-10, 0, 10))
    rh = draw.pick(50, (40, 45, 50))
    draw.note(outdoor=cold, rh=rh)
    built = roof("variable", "open membrane", 1.0)
    warm, humid = face(built, (70, rh), (cold, 80), FILM)
    draw.tell("R", resistance=1)
    draw.tell("degF", warm=warm, cold=cold)
    draw.tell("%", humid=round(humid), rh=rh)
    return draw.ask("r-anywhere", "film-knows-the-season", "film-closes-when-humid", "house-must-breathe")


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
    left = verdict(roof(0.1, "OSB", 1.0), (70, steam), (cold, 80)).state
    draw.tell("g/m2/day", bath=bath, bedroom=bedroom, less=less)
    draw.tell("perm", perms=0.1)
    draw.tell(state=left)
    draw.tell("degF", room=70, cold=cold)
    draw.tell("%", steam=steam)
    draw.tell("R", resistance=11)
    return draw.ask("more-vents-always-help", "film-knows-the-season", "film-closes-when-humid")


CHECKS = (filled_cavity, why_empty, steam_bath)


def _tight_and_dry(now: Values, say: Say) -> Outcome:
    """Whether the film is tight enough and the roof dry."""
    profile = steady.profile(roof("variable", "open membrane", from_si(now["R_in"], "R")), *airs(now))
    found, judged = profile.permeance[FILM], profile.verdict
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
