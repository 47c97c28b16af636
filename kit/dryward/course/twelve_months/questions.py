"""Checks: adding up the months, the wettest one, and what is left over."""

from dryward import language
from dryward.physics import monthly
from dryward.teaching import vault
from dryward.teaching.questions import Draw, Question
from dryward.weather.places import demo_climate, place

message = language.beside(__file__)

NAMES = (
    message("-january"), message("-february"), message("-march"), message("-april"), message("-may"), message("-june"),
    message("-july"), message("-august"), message("-september"), message("-october"), message("-november"), message("-december"),
)  # fmt: skip


def year(inner, outer, climate, rh):
    """The twelve months of a roof in one invented place."""
    return monthly.balance(vault.roof(inner, outer), demo_climate(climate), vault.air(70, rh))


def adding_up(draw: Draw) -> Question | None:
    """What is held after some months of gain and one of loss."""
    gains = draw.pick((40, 60, 70, 50), ((40, 60, 70, 50), (30, 55, 65, 45), (20, 50, 60, 40), (50, 80, 90, 60)))
    loss = draw.pick(30, (20, 30, 40, 60))
    draw.note(gains=gains, loss=loss)
    held = sum(gains) - loss
    say = draw.say
    listed = ", ".join(say(each, "g/m2") for each in gains)
    draw.because(message("adding-up-why", gains=say(sum(gains), "g/m2"), loss=say(loss, "g/m2")))
    return draw.number(
        message("adding-up-ask", listed=listed, loss=say(loss, "g/m2")),
        held,
        "g/m2",
        1.0,
        (gains[-1] - loss, "months-stand-alone"),
        (0.0, "months-stand-alone", message("adding-up-months-stand-alone-reply")),
        (sum(gains), "coldest-is-wettest", message("adding-up-coldest-is-wettest-reply")),
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
            first=NAMES[first - 1],
            peak=say(found.peak * 1000, "g/m2"),
            peak_month=NAMES[found.peak_month - 1],
        )
    )
    return draw.words(
        message(
            "wettest-month-ask",
            inner=say(inner, "perm"),
            name=place(climate).name,
            rh=say(rh, "%"),
            coldest=NAMES[coldest - 1],
        ),
        NAMES[found.peak_month - 1],
        (NAMES[coldest - 1], "coldest-is-wettest"),
        (NAMES[first - 1], "months-stand-alone", message("wettest-month-months-stand-alone-reply")),
        (message("wettest-month-rh-drives-vapor"), "rh-drives-vapor"),
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
    if found.ending not in ("dries", "grows", message("left-over-no-wetting")):
        return None
    draw.note(outer=outer, inner=inner, climate=climate, rh=rh)
    say = draw.say
    inside = {None: message("left-over-no-film"), "variable": message("left-over-the-variable-film")}.get(inner) or say(
        inner, "perm"
    )
    texts = {
        "grows": message("left-over-it-grows-each-year"),
        "dries": message("left-over-it-gets-wet-and"),
        message("left-over-no-wetting"): message("left-over-no-month-adds-water"),
    }
    beliefs = {
        "grows": ("one-check-decides", message("left-over-it-wets-but-the")),
        "dries": ("trust-the-trend-later", message("left-over-the-sum-over-the")),
        message("left-over-no-wetting"): ("no-drops-no-problem", message("left-over-some-months-do-add")),
    }
    left = say(found.left * 1000, "g/m2")
    draw.because(
        {
            "grows": message("left-over-at-the-end-of", left=left),
            "dries": message("left-over-it-holds-at-most", peak=say(found.peak * 1000, "g/m2")),
            message("left-over-no-wetting"): message("left-over-in-each-month-more"),
        }[found.ending]
    )
    wrong: list[tuple[str, ...]] = [(texts[key], *belief) for key, belief in beliefs.items() if key != found.ending]
    if found.ending == "no wetting":
        wrong = [each[:2] for each in wrong]
    return draw.words(
        message(
            "left-over-ask",
            name=place(climate).name,
            inside=inside,
            outer=outer,
            outer2=say(vault.OUTERS[outer][1], "perm"),
            degrees=say(70, "degF"),
            rh=say(rh, "%"),
        ),
        texts[found.ending],
        *wrong,
    )


CHECKS = (adding_up, wettest_month, left_over)
