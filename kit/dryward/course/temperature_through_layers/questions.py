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
    found = plane((("inner layers", 6, total - outer), ("board", thick, outer)), warm, cold, "inner layers")
    say = draw.say
    draw.because(
        f"{say(outer, 'R')} of {say(total, 'R')} stands outside the plane, so it is {100 * outer / total:.0f} % of the "
        f"way up from outdoors: {say(found, 'degF')}."
    )
    return draw.number(
        f"A wall has {say(total, 'R')} in {say(6 + thick, 'in')}. Of that, {say(outer, 'R')} in {say(thick, 'in')} "
        f"stands outside one plane. It is {say(warm, 'degF')} inside and {say(cold, 'degF')} outside. "
        "How warm is the plane?",
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
        return plane((("room side", 1, inner), ("fill", 6, r), ("outside", 1, outer)), 70, cold, "room side")

    before, after = room_side(middle), room_side(2 * middle)
    say = draw.say
    draw.because("Less heat flows, so less temperature is lost on the way to that plane.")
    return draw.words(
        f"A layer of {say(middle, 'R')} is doubled. Before that the plane on its room side was {say(before, 'degF')}, "
        f"with {say(70, 'degF')} inside and {say(cold, 'degF')} outside. What happens to that plane?",
        f"It gets warmer: {say(after, 'degF')}.",
        (
            f"It gets colder: {say(2 * before - after, 'degF')}.",
            "outside-insulation-makes-water",
            "",
            "A plane outside the layer does get colder.",
        ),
        (f"It stays at {say(before, 'degF')}. The layer only got thicker.", "inches-not-r"),
    )


#: A squeezed batt gains about this much R per inch: common practice, no source.
SQUEEZED = 1.2


def squeezed(draw: Draw) -> Question | None:
    """A thick batt in a shallow bay."""
    r, full, bay = draw.pick((30, 9.5, 5.5), ((30, 9.5, 5.5), (30, 9.5, 7.25), (38, 12.0, 9.25), (19, 6.25, 3.5)))
    draw.note(r=r, full=full, bay=bay)
    found = r * bay / full * SQUEEZED
    say = draw.say
    draw.because(
        f"R per inch rises a little, by about a fifth, but {say(full - bay, 'in')} are lost: about {say(found, 'R')}."
    )
    return draw.words(
        f"A batt of {say(r, 'R')}, {say(full, 'in')} thick, is squeezed into a {say(bay, 'in')} bay. What do you get?",
        f"Less than the label: about {say(found, 'R')}.",
        (f"{say(r, 'R')}. It says so on the label.", "label-r-is-wall-r"),
        (
            f"More: {say(r * SQUEEZED, 'R')}. It is denser now.",
            "inches-not-r",
            "",
            "More stuff in less space sounds like more insulation.",
        ),
        (
            "Nothing at all. A squeezed batt does not insulate.",
            "label-r-is-wall-r",
            f"It still insulates: about {say(found, 'R')}.",
            "It is the air in a batt that insulates, and some of it is pressed out.",
        ),
    )


CHECKS = (behind_the_board, doubled, squeezed)
