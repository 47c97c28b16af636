"""Checks: an open outside, what cuts the gain on OSB, when open is not enough, and which wet roof is dry first."""

from dataclasses import replace

from dryward.building import Assembly, FixedMembrane, Layer
from dryward.physics import drying
from dryward.teaching.practical import WINTER, Outcome, Say, Task, Values, dry, perms, vault_state
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import OUTER, air, face, gain, roof
from dryward.units import amounts, from_si, number, to_si, written

#: Perms of plastic, and of OSB in this kit's teaching roofs.
PLASTIC, OSB = 0.1, 1.5


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


def under_plastic(built: Assembly) -> Assembly:
    """The same roof with a sheet of plastic on its outer layer."""
    place = built.index(OUTER) + 1
    sheet = Layer(FixedMembrane(to_si(PLASTIC, "perm")), None, "plastic")
    return replace(built, layers=(*built.layers[:place], sheet, *built.layers[place:]))


def what_cuts(draw: Draw) -> Question | None:
    """The change that cuts the winter gain of an OSB roof most."""
    inner = draw.pick(1.0, (1.0, 1.5, 2.0, 3.0))
    tighter = draw.pick(0.1, (0.1, 0.2))
    rh = draw.pick(40, (40, 45))
    cold = draw.pick(20, (15, 20, 25))
    airs = (70, rh), (cold, 80)
    draw.note(inner=inner, tighter=tighter, rh=rh, outdoor=cold)
    osb = roof(inner, "OSB")
    builds = osb, roof(tighter, "OSB"), roof(inner, "OSB", fill_r=60), under_plastic(osb)
    now, less, fill, both = (gain(each, *airs) for each in builds)
    if now <= 0:
        return None
    draw.tell("g/m2/day", now=now, less=less, fill=fill, both=both)
    draw.tell("perm", osb=1.5, inner=inner, tighter=tighter)
    draw.tell("degF", cold=cold)
    draw.tell("R", more=60, usual=44)
    return draw.ask("more-vents-always-help", "more-r-is-drier", "two-barriers-twice-as-good")


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
    return draw.ask("same-humidity-all-winter", "counts-only-what-leaves")


def wet_start(draw: Draw) -> Question | None:
    """Which of three wet roofs is dry first in spring."""
    mild = draw.pick(60, (55, 58, 60, 62))
    rh = draw.pick(40, (40, 45, 50))
    wet = draw.pick(500, (300, 500, 700))
    open_out = draw.pick(20.0, (10.0, 20.0))
    draw.note(outdoor=mild, rh=rh, wet=wet, outer=open_out)
    found = {
        name: wet
        / from_si(drying.of_a_wet_face(roof(inner, outer), OUTER, air(70, rh), air(mild, 60)).total, "g/m2/day")
        for name, inner, outer in (
            ("open", "variable", open_out),
            ("half", PLASTIC, OSB),
            ("tight", PLASTIC, PLASTIC),
        )
    }
    if min(found, key=lambda name: found[name]) != "open":
        return None
    system = draw.unit_system
    volume = amounts.of_a_roof(to_si(wet, "g/m2"), system)
    draw.tell(wet=amounts.water(volume, system, 3), area=amounts.roof_area(system))
    draw.tell("degF", mild=mild, room=70)
    draw.tell("%", rh=rh)
    draw.tell("perm", open=open_out, osb=OSB)
    soon, half, tight = (number(found[name], figures=2, rounded=True) for name in ("open", "half", "tight"))
    draw.tell(soon=soon, half=half, tight=tight)
    return draw.ask("two-barriers-twice-as-good", "wet-lumber-dries-itself", "counts-only-what-comes")


CHECKS = (inner_changes, what_cuts, open_is_not_enough, wet_start)


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
