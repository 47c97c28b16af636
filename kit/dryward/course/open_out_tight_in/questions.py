"""Checks: an open outside, what cuts the gain on OSB, and when open is not enough."""

from dryward import language
from dryward.teaching.practical import WINTER, Outcome, Say, Task, Values, dry, perms, vault_state
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import face, gain, roof
from dryward.units import from_si, written

message = language.beside(__file__)


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
    draw.because(message("inner-changes-why", humid=say(round(humid[1]), "%")))
    return draw.words(
        message(
            "inner-changes-ask",
            tight=say(tight, "perm"),
            loose=say(loose, "perm"),
            rh=say(rh, "%"),
            cold=say(cold, "degF"),
            perms=say(50, "perm"),
            room=say(70, "degF"),
        ),
        message("inner-changes-right", before=say(round(humid[0]), "%"), after=say(round(humid[1]), "%")),
        (
            message("inner-changes-counts-only-what-comes", times=written(loose / tight, ".0f")),
            "counts-only-what-comes",
            message("inner-changes-counts-only-what-comes-reply"),
        ),
        (
            message("inner-changes-counts-only-what-leaves"),
            "counts-only-what-leaves",
            message("inner-changes-counts-only-what-leaves-reply"),
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
    draw.because(message("what-cuts-why", now=say(now, "g/m2/day"), less=say(less, "g/m2/day")))
    return draw.words(
        message(
            "what-cuts-ask",
            osb=say(1.5, "perm"),
            inner=say(inner, "perm"),
            now=say(now, "g/m2/day"),
            cold=say(cold, "degF"),
        ),
        message("what-cuts-right", tighter=say(tighter, "perm")),
        (
            message("what-cuts-more-vents-always-help"),
            "more-vents-always-help",
            message("what-cuts-more-vents-always-help-reply", now=say(now, "g/m2/day")),
        ),
        (
            message("what-cuts-label-r-is-wall-r", more=say(60, "R"), now=say(44, "R")),
            "label-r-is-wall-r",
            message("what-cuts-label-r-is-wall-r-reply", fill=say(fill, "g/m2/day")),
        ),
        (
            message("what-cuts-two-barriers-twice-as-good"),
            "two-barriers-twice-as-good",
            message("what-cuts-two-barriers-twice-as-good-reply"),
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
    draw.because(message("open-is-not-enough-why", found=say(found, "g/m2/day"), perms=say(50, "perm")))
    return draw.words(
        message(
            "open-is-not-enough-ask",
            rh=say(rh, "%"),
            cold=say(cold, "degF"),
            room=say(70, "degF"),
            perms=say(50, "perm"),
        ),
        message("open-is-not-enough-right", found=say(found, "g/m2/day")),
        (
            message("open-is-not-enough-one-check-decides"),
            "one-check-decides",
            message("open-is-not-enough-one-check-decides-reply", found=say(found, "g/m2/day")),
        ),
        (
            message("open-is-not-enough-dew-point-is-a-place"),
            "dew-point-is-a-place",
            message("open-is-not-enough-dew-point-is-a-place-reply"),
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
