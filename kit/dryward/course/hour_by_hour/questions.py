"""Checks: why the wettest day comes late, each October wetter, and north against south."""

import math

from dryward.building.library import material
from dryward.teaching.kinds import BOARDS, board_name
from dryward.teaching.questions import Draw, Question
from dryward.units import from_si, to_si


def per_percent(board, inches):
    """Water that a board takes up for each 1 % MC [g/m2]."""
    return from_si(material(board).density * to_si(inches, "in") * 0.01, "g/m2")


def why_late(draw: Draw) -> Question | None:
    """The wettest day comes after the coldest one."""
    weeks = draw.pick(6, (4, 5, 6, 7, 8))
    name, board, inches = draw.pick(BOARDS[0], BOARDS)
    rate = draw.pick(2.0, (1.5, 2.0, 3.0, 4.0))
    draw.note(weeks=weeks, board=name, rate=rate)
    points = rate * 7 * weeks / per_percent(board, inches)
    name = board_name(draw, name, inches)
    say = draw.say
    draw.because(
        f"{say(rate, 'g/m2/day')} over {weeks} more weeks add {points:.1f} % MC to {name}. Gain goes on until drying "
        "beats it."
    )
    return draw.words(
        f"In a run the sheathing is wettest {weeks} weeks after the coldest day. In those weeks {name} still gains "
        f"{say(rate, 'g/m2/day')}. Why so late?",
        "Storage: the wood gains as long as more comes than goes.",
        (
            "The model lags behind.",
            "one-check-decides",
            "The lag is real. Wood fills up and empties slowly.",
            "A peak that comes late looks like a fault of the run.",
        ),
        ("The coldest day must be the wettest. The run is wrong.", "coldest-is-wettest"),
        (
            "Spring rain.",
            "wet-roof-needs-vents",
            "There is no rain in this run. It is water the wood took up.",
            "A roof that is wet in spring has been rained on.",
        ),
    )


def each_october(draw: Draw) -> Question | None:
    """The trend over the years."""
    start = draw.pick(12.0, (11.0, 12.0, 13.0))
    step = draw.pick(2.0, (1.5, 2.0, 2.5))
    draw.note(start=start, step=step)
    years = ", ".join(f"{start + k * step:g} %" for k in range(3))
    draw.because(f"It rises by {step:g} % MC a year and does not level off. It does not dry back.")
    return draw.words(
        f"Three Octobers in a run show {years} MC in the sheathing. What do you do?",
        "Change something: the leaks, the indoor RH or the layers. Then run it again.",
        ("Wait. It will settle.", "trust-the-trend-later"),
        ("Nothing. There are no drops.", "no-drops-no-problem"),
        ("Nothing. It passed the dew-point check.", "one-check-decides"),
    )


def noon_sun(latitude, slope, facing_south):
    """Share of the straight sun that a slope takes at noon in late December, none when it is behind."""
    height = 90.0 - latitude - 23.44  # tilt of the earth's axis
    return max(0.0, math.sin(math.radians(height + slope if facing_south else height - slope)))


def north_and_south(draw: Draw) -> Question | None:
    """The two sides of one roof."""
    latitude = draw.pick(43, (38, 40, 43, 45, 47))
    pitch = draw.pick(8, (6, 8, 10, 12))
    slope = math.degrees(math.atan2(pitch, 12))
    draw.note(latitude=latitude, pitch=pitch)
    south, north = (noon_sun(latitude, slope, each) for each in (True, False))
    if north > 0.4 * south:
        return None
    draw.because(
        f"At noon in late December the south side takes {south * 100:.0f} % of the straight sun, the north side "
        f"{north * 100:.0f} %."
    )
    return draw.words(
        f"The same roof, {pitch} in 12, faces north on one side and south on the other, at {latitude}° north. "
        "Which side is wetter at winter's end?",
        "North.",
        ("South. Warm air holds more water.", "air-is-a-sponge"),
        ("The same. It is one roof and one house.", "sun-does-not-matter"),
    )


CHECKS = (why_late, each_october, north_and_south)
