"""Checks: the temperature of a plane, a doubled R, and a squeezed batt."""

from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import plane

#: Thickness of the outside board by its R [in.].
BOARDS = {4: 1, 5: 1, 6: 1.5, 8: 2, 10: 2}


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


def doubled(draw: Draw) -> Question | None:
    """What a doubled R does to the plane on its room side."""
    inner, middle, outer = draw.pick((2, 10, 3), ((2, 10, 3), (3, 13, 2), (2, 15, 4), (4, 19, 3)))
    cold = draw.pick(20, (0, 10, 20, 30))
    draw.note(inner=inner, middle=middle, outer=outer, outside=cold)

    def room_side(r):
        return plane(
            (("room side", 1, inner), ("fill", 6, r), ("outside", 1, outer)),
            70,
            cold,
            "room side",
        )

    before, after = room_side(middle), room_side(2 * middle)
    draw.tell("R", middle=middle)
    draw.tell("degF", before=before, cold=cold, room=70, after=after, colder=2 * before - after)
    return draw.ask("outside-insulation-makes-water", "inches-not-r")


#: A squeezed batt gains about this much R per inch: common practice, no source.
SQUEEZED = 1.2


def squeezed(draw: Draw) -> Question | None:
    """A thick batt in a shallow bay."""
    r, full, bay = draw.pick((30, 9.5, 5.5), ((30, 9.5, 5.5), (30, 9.5, 7.25), (38, 12.0, 9.25), (19, 6.25, 3.5)))
    draw.note(r=r, full=full, bay=bay)
    found = r * bay / full * SQUEEZED
    draw.tell("in", lost=full - bay, full=full, bay=bay)
    draw.tell("R", found=found, r=r, squeezed=r * SQUEEZED)
    return draw.ask("label-r-is-wall-r", "inches-not-r", ("label-r-is-wall-r", "nothing"))


CHECKS = (behind_the_board, doubled, squeezed)
