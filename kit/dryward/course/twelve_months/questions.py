"""Checks: adding up the months, the wettest one, what is left over, a summer behind plastic, and wet studs."""

from dryward import language
from dryward.building.library import material
from dryward.physics import monthly
from dryward.teaching import vault
from dryward.teaching.questions import Draw, Question
from dryward.units import from_si, to_si
from dryward.verdict import WET
from dryward.verdict.words import month
from dryward.weather.places import demo_climate, place

message = language.beside(__file__)


def year(inner: float | str | None, outer: str, climate: str, rh: float) -> monthly.Months:
    """The twelve months of a roof in one invented place."""
    return monthly.balance(vault.roof(inner, outer), demo_climate(climate), vault.air(70, rh))


def adding_up(draw: Draw) -> Question | None:
    """What is held after some months of gain and one of loss."""
    gains = draw.pick((40, 60, 70, 50), ((40, 60, 70, 50), (30, 55, 65, 45), (20, 50, 60, 40), (50, 80, 90, 60)))
    loss = draw.pick(30, (20, 30, 40, 60))
    draw.note(gains=gains, loss=loss)
    held = sum(gains) - loss
    say = draw.say
    told = say(gains[0], "g/m2")
    for each in gains[1:]:
        told = message("adding-up-next", gains=told, gain=say(each, "g/m2"))
    draw.tell("g/m2", gains=sum(gains), loss=loss)
    draw.tell(each=told)
    return draw.ask_number(
        held,
        "g/m2",
        1.0,
        (gains[-1] - loss, "months-stand-alone"),
        (0.0, "months-stand-alone", "march-alone"),
        (sum(gains), "coldest-is-wettest"),
    )


def wettest_month(draw: Draw) -> Question | None:
    """The month at whose end the most is held."""
    inner = draw.pick(3.0, (2.0, 3.0, 5.0))
    climate = draw.pick("cold", ("very-cold", "cold"))
    rh = draw.pick(40, (40, 45))
    found = year(inner, "OSB", climate, rh)
    coldest = demo_climate(climate).coldest
    if found.peak_month is None or found.peak_month == coldest:
        return None
    draw.note(inner=inner, climate=climate, rh=rh)
    say = draw.say
    first = found.month[0]
    draw.because(
        message(
            "wettest-month-why",
            first=month(first),
            peak=say(found.peak * 1000, "g/m2"),
            peak_month=month(found.peak_month),
        )
    )
    return draw.words(
        message(
            "wettest-month-ask",
            inner=say(inner, "perm"),
            town=language.called(place(climate).name),
            rh=say(rh, "%"),
            coldest=month(coldest),
        ),
        month(found.peak_month),
        (month(coldest), "coldest-is-wettest"),
        (month(first), "months-stand-alone", message("wettest-month-months-stand-alone-reply")),
        (message("wettest-month-counts-only-what-comes"), "counts-only-what-comes"),
    )


def left_over(draw: Draw) -> Question | None:
    """A roof that does or does not dry back."""
    outer, inner, climate, rh = draw.pick(
        ("closed sheet", 1.0, "cold", 55),
        (
            ("closed sheet", 1.0, "cold", 55),
            ("OSB", None, "very-cold", 55),
            ("OSB", 3.0, "cold", 40),
            ("closed sheet", "variable", "cold", 40),
            ("open membrane", 1.0, "cold", 40),
            ("open membrane", 3.0, "cool-marine", 40),
        ),
    )
    found = year(inner, outer, climate, rh)
    if found.ending not in ("dries", "grows", "no wetting"):
        return None
    draw.note(outer=outer, inner=inner, climate=climate, rh=rh)
    say = draw.say
    inside = {None: message("left-over-no-film"), "variable": message("left-over-variable-film")}.get(inner) or say(
        inner, "perm"
    )
    texts = {
        "grows": message("left-over-grows"),
        "dries": message("left-over-dries"),
        "no wetting": message("left-over-no-wetting"),
    }
    beliefs = {
        "grows": ("counts-only-what-comes", message("left-over-grows-reply")),
        "dries": ("trust-the-trend-later", message("left-over-dries-reply")),
        "no wetting": ("counts-only-what-leaves", message("left-over-no-wetting-reply")),
    }
    left = say(found.left * 1000, "g/m2")
    draw.because(
        {
            "grows": message("left-over-grows-why", left=left),
            "dries": message("left-over-dries-why", peak=say(found.peak * 1000, "g/m2")),
            "no wetting": message("left-over-no-wetting-why"),
        }[found.ending]
    )
    wrong: list[tuple[str, ...]] = [(texts[key], *belief) for key, belief in beliefs.items() if key != found.ending]
    if found.ending == "no wetting":
        wrong = [each[:2] for each in wrong]
    return draw.words(
        message(
            "left-over-ask",
            town=language.called(place(climate).name),
            inside=inside,
            outer=language.called(outer),
            perms=say(vault.OUTERS[outer][1], "perm"),
            room=say(70, "degF"),
            rh=say(rh, "%"),
        ),
        texts[found.ending],
        *wrong,
    )


def august(draw: Draw) -> Question | None:
    """Where water lies in a hot, humid town that a January check passes."""
    inner = draw.pick(0.06, (0.06, 0.1, 0.5))
    outer = draw.pick("open membrane", ("open membrane", "fiberboard"))
    rh = draw.pick(45, (40, 45, 50))
    found = year(inner, outer, "hot-humid", rh)
    draw.note(inner=inner, outer=outer, rh=rh)
    if found.verdict.state != WET or found.peak_month is None:
        return None
    plane = found.planes[int(found.held.max(axis=0).argmax())]
    january = dict(zip(found.month, found.condensed.sum(axis=1), strict=True))[1]
    if plane.inner_layer != vault.FILM or january > 0:
        return None
    draw.tell("perm", inner=inner, perms=vault.OUTERS[outer][1])
    draw.tell("degF", room=70)
    draw.tell("%", rh=rh)
    draw.tell("g/m2", peak=found.peak * 1000)
    draw.tell(month=month(found.peak_month), outer=language.called(outer))
    return draw.ask("barrier-always-inside", "one-check-decides", "dew-point-is-a-place")


#: Studs of 2x6 at 16 in. hold so much wood on each part of a wall [kg/m2].
STUDS = material("spruce").density * to_si(1.5, "in") * to_si(5.5, "in") / to_si(16.0, "in")


def wet_studs(draw: Draw) -> Question | None:
    """How long wet studs need between two tight sides, on summer days that do not end."""
    start = draw.pick(25, (22, 24, 25, 28))
    tight = draw.pick(0.1, (0.06, 0.1))
    draw.note(start=start, tight=tight)
    points = start - 15
    push = vault.air(75, 100).vapor_pressure - vault.air(75, 50).vapor_pressure
    a_day = from_si(to_si(tight, "perm") * push, "g/m2/day")
    both = 2 * a_day
    days = points / 100 * STUDS * 1000 / both
    open_days = points / 100 * STUDS * 1000 / (a_day + from_si(to_si(20.0, "perm") * push, "g/m2/day"))
    draw.tell("%", start=start, end=15)
    draw.tell("degF", room=75)
    draw.tell("perm", tight=tight, wide=20)
    draw.tell("g/m2/day", both=both)
    draw.tell("g/m2", water=points / 100 * STUDS * 1000)
    draw.tell(months=round(days / 30), days=max(1, round(open_days)))
    return draw.ask("wet-lumber-dries-itself", "two-barriers-twice-as-good", "no-drops-no-problem")


CHECKS = (adding_up, wettest_month, left_over, august, wet_studs)
