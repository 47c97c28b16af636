"""Checks: adding up the months, the wettest one, and what is left over."""

from dryward.physics import monthly
from dryward.teaching import vault
from dryward.teaching.questions import Draw, Question
from dryward.weather.places import demo_climate, place

NAMES = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
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
    draw.because(f"Each month starts with what the last one left: {say(sum(gains), 'g/m2')} less {say(loss, 'g/m2')}.")
    return draw.number(
        f"From November to February a deck gains {listed}. In March it loses {say(loss, 'g/m2')}. "
        "How much does it hold at the end of March?",
        held,
        "g/m2",
        1.0,
        (gains[-1] - loss, "months-stand-alone"),
        (0.0, "months-stand-alone", "One month of drying takes only its own share off the pile."),
        (sum(gains), "coldest-is-wettest", "The sum of the cold months is there, but March takes some of it off."),
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
        f"It adds up from {NAMES[first - 1]} on and is at its most, {say(found.peak * 1000, 'g/m2')}, at the end of "
        f"{NAMES[found.peak_month - 1]}."
    )
    return draw.words(
        f"A roof with OSB outside and {say(inner, 'perm')} inside stands in the made-up town "
        f'"{place(climate).name}", with {rh} % indoors. {NAMES[coldest - 1]} is the coldest month. At the end of which '
        "month does the OSB hold the most water?",
        NAMES[found.peak_month - 1],
        (NAMES[coldest - 1], "coldest-is-wettest"),
        (NAMES[first - 1], "months-stand-alone", "That is when it starts. Later months add to it."),
        ("July, when the air is most humid.", "rh-drives-vapor"),
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
    inside = {None: "no film", "variable": "the variable film"}.get(inner) or say(inner, "perm")
    texts = {
        "grows": "It grows: each year starts wetter than the last.",
        "dries": "It gets wet and is dry again before the next fall.",
        "no wetting": "No month adds water to it.",
    }
    beliefs = {
        "grows": ("one-check-decides", "It wets, but the summer takes all of it back. Ask if it dries back."),
        "dries": ("trust-the-trend-later", "The sum over the year decides, not the hope."),
        "no wetting": ("no-drops-no-problem", "Some months do add water, drops or no drops."),
    }
    left = say(found.left * 1000, "g/m2")
    draw.because(
        {
            "grows": f"At the end of the first year {left} are still there, and the second adds to it.",
            "dries": f"It holds at most {say(found.peak * 1000, 'g/m2')}, and nothing is left at the year's end.",
            "no wetting": "In each month more can leave through the outer layer than comes.",
        }[found.ending]
    )
    wrong: list[tuple[str, ...]] = [(texts[key], *belief) for key, belief in beliefs.items() if key != found.ending]
    if found.ending == "no wetting":
        wrong = [each[:2] for each in wrong]
    return draw.words(
        f'A roof in the made-up town "{place(climate).name}" has {inside} inside and the outer layer "{outer}", '
        f"{say(vault.OUTERS[outer][1], 'perm')}. Indoors it is {say(70, 'degF')} and {rh} %. "
        "What do twelve months show?",
        texts[found.ending],
        *wrong,
    )


CHECKS = (adding_up, wettest_month, left_over)
