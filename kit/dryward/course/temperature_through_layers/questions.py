"""Checks: a plane by its share of R, a board over a deck, an inch of foam, a roof with its rafters, a squeezed batt."""

from math import sqrt

from dryward.course.temperature_through_layers.wall import BAYS, ROOM, wall_with
from dryward.physics import steady
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import air, plane
from dryward.units import from_si, thickness, to_si

#: Thickness of the outside board by its R [in.].
BOARDS = {4: 1, 5: 1, 6: 1.5, 8: 2, 10: 2}
#: R of each inch: of softwood (the library's spruce), of foil-faced foam (the library's), of the open board.
WOOD, FOAM, OPEN_BOARD = 1.2, 6.3, 4.0


def behind_the_board(draw: Draw) -> Question | None:
    """The plane behind an outside board."""
    outer = draw.pick(5, (4, 5, 6, 8, 10))
    total = draw.pick(20, (16, 20, 24, 25, 30))
    cold = draw.pick(20, (0, 5, 10, 20, 30))
    warm = 70
    thick = BOARDS[outer]
    draw.note(outer=outer, total=total, outside=cold, inside=warm)
    found = plane(
        (("inner layers", 6, total - outer), ("board", thick, outer)),
        warm,
        cold,
        "inner layers",
    )
    draw.tell("R", outer=outer, total=total)
    draw.tell("%", share=round(100 * outer / total))
    draw.tell("degF", found=found, warm=warm, cold=cold)
    draw.tell("in", thick=6 + thick, board=thick)
    return draw.ask_number(
        found,
        "degF",
        1.0,
        (warm - (found - cold), "counts-from-wrong-side"),
        (0.5 * (warm + cold), "half-way"),
        (cold + (warm - cold) * thick / (6 + thick), "inches-not-r"),
    )


def over_the_deck(draw: Draw) -> Question | None:
    """What a board that is open to vapor does to the water at a deck."""
    r = draw.pick(8, (6, 8, 10, 12))
    bay = draw.pick("2x12", ("2x6", "2x12"))
    cold = draw.pick(10, (0, 5, 10, 15, 25))
    draw.note(r=r, bay=bay, outside=cold)
    found = [steady.profile(wall_with(bay, "open", to_si(each, "R")), ROOM, air(cold, 80)) for each in (0.0, float(r))]
    gained, gains = (from_si(each.gain, "g/m2/day") for each in found)
    before, after = (from_si(float(each.temperature[each.face("sheathing", 0)]), "degF") for each in found)
    if gains > 0.8 * gained:
        return None
    deep, fill = BAYS[bay]
    draw.tell("g/m2/day", gained=gained, gains=gains)
    draw.tell("degF", before=before, after=after, cold=cold)
    draw.tell("R", r=r, fill=from_si(fill, "R"))
    draw.tell("in", board=r / OPEN_BOARD)
    draw.tell(deep=thickness(deep, draw.unit_system))
    draw.tell("perm", perms=1)
    return draw.ask("outside-insulation-makes-water", "inches-not-r")


def inch_of_foam(draw: Draw) -> Question | None:
    """What room air finds at the inner face of an inch of foam, with another fill, room and winter."""
    fill = draw.pick(30, (25, 30, 38, 45))
    cold = draw.pick(10, (-10, 0, 10, 15, 25))
    rh = draw.pick(35, (30, 35, 40, 45))
    draw.note(fill=fill, outside=cold, rh=rh)
    room = air(70, rh)
    face = plane((("fill", 9, fill), ("foam", 1, FOAM)), 70, cold, "fill")
    dew = from_si(room.dew_point, "degF")
    wrong = 70 - (face - cold)
    # Clearly colder than the dew point, and the slip clearly on the other side of it.
    if face > dew - 4 or wrong < dew + 4:
        return None
    draw.tell("%", share=round(100 * FOAM / (fill + FOAM)), rh=rh)
    draw.tell("degF", face=face, dew=dew, cold=cold, room=70, wrong=wrong)
    draw.tell("R", fill=fill, foam=FOAM)
    draw.tell("in", inch=1)
    return draw.ask("inch-of-foam-is-enough", "counts-from-wrong-side")


def whole_roof(draw: Draw) -> Question | None:
    """R of a layer of fill with its rafters."""
    deep, fill = draw.pick((9.25, 30), ((7.25, 25), (9.25, 30), (9.25, 34)))
    part = draw.pick(10, (10, 15, 20))
    draw.note(deep=deep, fill=fill, part=part)
    wood = deep * WOOD
    share = part / 100
    found = 1 / ((1 - share) / fill + share / wood)
    draw.tell(deep=thickness(to_si(deep, "in"), draw.unit_system))
    draw.tell("%", part=part, rest=100 - part)
    draw.tell("R", fill=fill, wood=wood, found=found)
    return draw.ask_number(
        found,
        "R",
        0.5,
        (fill, "label-r-is-wall-r"),
        ((1 - share) * fill + share * wood, "averages-r"),
    )


def squeezed(draw: Draw) -> Question | None:
    """A thick batt in a shallow bay: it keeps the square root of its ratio, as lesson.toml has it from a chart."""
    r, full, bay = draw.pick((30, 10, 7.25), ((30, 10, 7.25), (38, 12, 9.25), (19, 6.25, 3.5), (25, 8, 5.5)))
    draw.note(r=r, full=full, bay=bay)
    found = r * sqrt(bay / full)
    draw.tell("in", lost=full - bay, full=full, bay=bay)
    draw.tell("R", found=round(found), r=r)
    return draw.ask("label-r-is-wall-r", "denser-is-more")


CHECKS = (behind_the_board, over_the_deck, inch_of_foam, whole_roof, squeezed)
