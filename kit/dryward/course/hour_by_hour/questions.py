"""Checks: why the wettest day comes late, each October wetter, north against south, and a drafty house."""

import math

from dryward import language
from dryward.building.library import material
from dryward.teaching.kinds import BOARDS, board_name
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import air
from dryward.units import from_si, to_si

message = language.beside(__file__)

ROOM = 70


def per_percent(board: str, inches: float) -> float:
    """Water that a board takes up for each 1 % MC [g/m2]."""
    return from_si(material(board).density * to_si(inches, "in") * 0.01, "g/m2")


def why_late(draw: Draw) -> Question | None:
    """The wettest day comes after the coldest one."""
    weeks = draw.pick(6, (4, 5, 6, 7, 8))
    name, board, inches = draw.pick(BOARDS[0], BOARDS)
    rate = draw.pick(2.0, (1.5, 2.0, 3.0, 4.0))
    draw.note(weeks=weeks, board=name, rate=rate)
    points = rate * 7 * weeks / per_percent(board, inches)
    name = board_name(draw, inches)
    draw.tell("g/m2/day", rate=rate)
    draw.tell(weeks=weeks, board=name)
    draw.tell("%", points=points)
    return draw.ask("one-check-decides", "coldest-is-wettest", "wet-roof-needs-vents")


def each_october(draw: Draw) -> Question | None:
    """The trend over the years."""
    start = draw.pick(12.0, (11.0, 12.0, 13.0))
    step = draw.pick(2.0, (1.5, 2.0, 2.5))
    draw.note(start=start, step=step)
    say = draw.say
    years = say(start, "%")
    for k in (1, 2):
        years = message("each-october-next", years=years, year=say(start + k * step, "%"))
    draw.tell("%", step=step)
    draw.tell(years=years)
    return draw.ask("trust-the-trend-later", "no-drops-no-problem", "one-check-decides")


def noon_sun(latitude: float, slope: float, facing_south: bool) -> float:
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
    draw.tell("%", south=round(south * 100), north=round(north * 100))
    draw.tell(pitch=pitch, latitude=latitude)
    return draw.ask("air-is-a-sponge", "sun-does-not-matter")


def old_house(draw: Draw) -> Question | None:
    """A drafty house that was dry as long as its air was, and whose air is made damper."""
    before = draw.pick(20, (18, 20, 22))
    after = draw.pick(40, (40, 45, 50))
    cold = draw.pick(32, (31, 32, 33, 34))
    draw.note(before=before, after=after, cold=cold)
    old, new = (from_si(air(ROOM, each).dew_point, "degF") for each in (before, after))
    if not old + 1 < cold < new - 5:
        return None
    draw.tell("%", before=before, after=after)
    draw.tell("degF", room=ROOM, cold=cold, old=old, new=new)
    return draw.ask("house-must-breathe", "more-vents-always-help", "no-drops-no-problem")


CHECKS = (why_late, each_october, north_and_south, old_house)
