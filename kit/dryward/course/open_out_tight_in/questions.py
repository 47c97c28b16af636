"""Checks: an open outside, what cuts the gain on OSB, and when open is not enough."""

from dryward.teaching.practical import WINTER, Outcome, Say, Task, Values, dry, perms, vault_state
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import face, gain, roof
from dryward.units import from_si


def inner_changes(draw: Draw) -> Question | None:
    """An open outer layer while the film gets ten times more open."""
    tight, loose = draw.pick((0.1, 1.0), ((0.1, 1.0), (0.2, 1.0), (0.1, 0.5), (0.3, 2.0)))
    cold = draw.pick(20, (20, 25, 30))
    rh = draw.pick(40, (30, 35, 40))
    draw.note(tight=tight, loose=loose, outdoor=cold, rh=rh)
    cases = [(roof(each), (70, rh), (cold, 80)) for each in (tight, loose)]
    if any(gain(*case) > 0 for case in cases):
        return None
    humid = [face(*case)[1] for case in cases]
    say = draw.say
    draw.because(f"More gets in, but it leaves as fast. The outer face stays below full: {humid[1]:.0f} %.")
    return draw.words(
        f"The outer membrane has {say(50, 'perm')}. The inner film changes from {say(tight, 'perm')} to "
        f"{say(loose, 'perm')}. The room is {say(70, 'degF')} and {rh} %, it is {say(cold, 'degF')} and 80 % outside. "
        "How much water does the roof gain?",
        f"None in both cases. RH at the outer face goes from {humid[0]:.0f} % to {humid[1]:.0f} %.",
        (
            f"{loose / tight:.0f} times more than before.",
            "counts-only-what-comes",
            "The flow grows, but it leaves through the open outer layer. Gain is what comes minus what goes.",
        ),
        (
            "It gains less than before, since it can dry to both sides.",
            "counts-only-what-leaves",
            "There was no gain before. A change from nothing to nothing is not less.",
        ),
    )


def what_cuts(draw: Draw) -> Question | None:
    """The change that cuts the winter gain of an OSB roof most."""
    inner = draw.pick(1.0, (1.0, 1.5, 2.0, 3.0))
    tighter = draw.pick(0.1, (0.1, 0.2))
    rh = draw.pick(40, (40, 45))
    cold = draw.pick(20, (15, 20, 25))
    air = (70, rh), (cold, 80)
    draw.note(inner=inner, tighter=tighter, rh=rh, outdoor=cold)
    builds = roof(inner, "OSB"), roof(tighter, "OSB"), roof(inner, "OSB", fill_r=60)
    now, less, fill = (gain(each, *air) for each in builds)
    if now <= 0:
        return None
    say = draw.say
    draw.because(
        f"Now it gains {say(now, 'g/m2/day')}, with the tighter film {say(less, 'g/m2/day')}. "
        "But then it can hardly dry to the room: see July."
    )
    return draw.words(
        f"A roof has OSB of {say(1.5, 'perm')} outside and a film of {say(inner, 'perm')} inside. It gains "
        f"{say(now, 'g/m2/day')} at {say(cold, 'degF')}. What cuts that most?",
        f"A film of {say(tighter, 'perm')} inside.",
        (
            "A bigger vent space over the OSB.",
            "more-vents-always-help",
            f"The vent is beyond the OSB, which is the tight layer. The gain stays {say(now, 'g/m2/day')}.",
        ),
        (
            f"More fill, {say(60, 'R')} in place of {say(44, 'R')}.",
            "label-r-is-wall-r",
            f"More fill makes the OSB colder. The gain is then {say(fill, 'g/m2/day')}.",
        ),
        (
            "A second plastic sheet over the OSB.",
            "two-barriers-twice-as-good",
            "Then even less leaves. Tight on both sides can hardly dry.",
        ),
    )


def open_is_not_enough(draw: Draw) -> Question | None:
    """A humid house in deep cold with no film."""
    rh = draw.pick(50, (45, 50, 55))
    cold = draw.pick(0, (-10, -5, 0, 5))
    draw.note(rh=rh, outdoor=cold)
    found = gain(roof(None), (70, rh), (cold, 80))
    if found < 2:
        return None
    say = draw.say
    draw.because(f"The supply beats even {say(50, 'perm')}: the roof gains {say(found, 'g/m2/day')}.")
    return draw.words(
        f"The room is {say(70, 'degF')} and {rh} %, it is {say(cold, 'degF')} and 80 % outside. There is no inner film "
        f"and the outer membrane has {say(50, 'perm')}. What happens at the outer face?",
        f"It gains {say(found, 'g/m2/day')}.",
        (
            "Nothing. An open outside can never get wet.",
            "one-check-decides",
            f"Open helps only as long as more can leave than comes. Here {say(found, 'g/m2/day')} stay.",
        ),
        (
            "Nothing. Only OSB gets wet.",
            "dew-point-is-a-place",
            "Any cold face gets wet when more comes than can leave.",
        ),
    )


CHECKS = (inner_changes, what_cuts, open_is_not_enough)


def _deck(now: Values, say: Say) -> Outcome:
    return dry(vault_state(now, from_si(now["M_out"], "perm")), say)


TASKS = (
    Task(
        "dry-the-deck",
        {**WINTER, **perms(M_in=3, M_out=1.5)},
        ("M_in", "M_out", "RH_in"),
        2,
        perms(M_in=0.1),
        _deck,
    ),
)
