"""Checks: an open outside, what cuts the gain on OSB, and when open is not enough."""

from dryward.teaching.practical import WINTER, Outcome, Say, Task, Values, dry, perms, vault_state
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import face, gain, roof
from dryward.units import from_si, written


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
    draw.tell("%", humid=round(humid[1]), rh=rh, before=round(humid[0]), after=round(humid[1]))
    draw.tell("perm", tight=tight, loose=loose, perms=50)
    draw.tell("degF", cold=cold, room=70)
    draw.tell(times=written(loose / tight, ".0f"))
    return draw.ask("counts-only-what-comes", "counts-only-what-leaves")


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
    draw.tell("g/m2/day", now=now, less=less, fill=fill)
    draw.tell("perm", osb=1.5, inner=inner, tighter=tighter)
    draw.tell("degF", cold=cold)
    draw.tell("R", more=60, usual=44)
    return draw.ask("more-vents-always-help", "label-r-is-wall-r", "two-barriers-twice-as-good")


def open_is_not_enough(draw: Draw) -> Question | None:
    """A humid house in deep cold with no film."""
    rh = draw.pick(50, (45, 50, 55))
    cold = draw.pick(0, (-10, -5, 0, 5))
    draw.note(rh=rh, outdoor=cold)
    found = gain(roof(None), (70, rh), (cold, 80))
    if found < 2:
        return None
    draw.tell("g/m2/day", found=found)
    draw.tell("perm", perms=50)
    draw.tell("%", rh=rh)
    draw.tell("degF", cold=cold, room=70)
    return draw.ask("one-check-decides", "dew-point-is-a-place")


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
