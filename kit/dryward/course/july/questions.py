"""Checks: cooler rooms, a dew point outside, and drying inward in spring."""

import dataclasses

from dryward.physics import drying
from dryward.teaching import vault
from dryward.teaching.practical import JULY, Outcome, Say, Task, Values, dry, in_si, perms, vault_state
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import FILM, face, gain
from dryward.units import from_si

PLASTIC = 0.06


def colder_room(draw: Draw) -> Question | None:
    """Plastic inside while the air conditioning is set lower."""
    high, low = draw.pick((78, 70), ((78, 70), (78, 68), (77, 70), (78, 72)))
    hot, humid = draw.pick((85, 75), ((85, 75), (88, 70), (84, 75), (86, 72)))
    draw.note(high=high, low=low, outdoor=hot, outdoor_rh=humid)
    built = vault.roof(PLASTIC)
    before, after = (((t, 50), (hot, humid)) for t in (high, low))
    dry, wet = gain(built, *before), gain(built, *after)
    if dry > 0 or wet < 1:
        return None
    first = face(built, *before, FILM, 1)[1]
    say = draw.say
    draw.because(
        f"The plastic got colder. Its outer face goes from {first:.0f} % to wet, {say(wet, 'g/m2/day')}."
        f"{vault.damp_all_the_same(built, *before).replace('It is damp all the same', f'At {first:.0f} % it was damp')}"
    )
    return draw.words(
        f"Plastic is on the inside, and it is {say(hot, 'degF')} and {humid} % outside. The air conditioning goes from "
        f"{say(high, 'degF')} to {say(low, 'degF')}. What happens on the outer face of the plastic?",
        "It gets wet.",
        ("Nothing. Plastic is plastic.", "barrier-always-inside"),
        (
            "It dries. Air conditioning dries.",
            "wrong-side-of-the-film",
            "It dries the room, not the cavity behind the plastic.",
        ),
    )


def summer_water(draw: Draw) -> Question | None:
    """Outdoor dew point above the temperature of the back of the drywall."""
    hot, humid = draw.pick((85, 75), ((85, 75), (88, 70), (90, 65), (86, 75)))
    back = draw.pick(74, (70, 72, 73, 74))
    dew = from_si(vault.air(hot, humid).dew_point, "degF")
    if dew < back + 1.5:
        return None
    draw.note(outdoor=hot, outdoor_rh=humid, back=back)
    say = draw.say
    draw.because(
        f"The outdoor dew point is {say(dew, 'degF')}, above {say(back, 'degF')}. So it depends on the layers."
    )
    return draw.words(
        f"Outside it is {say(hot, 'degF')} and {humid} %. The back of the drywall is {say(back, 'degF')}. "
        "Can water form there?",
        "Yes, if the outdoor vapor can get there.",
        (
            "No, it is summer.",
            "barrier-always-inside",
            "The damp side swaps with the season. In July it is outside.",
        ),
        (
            "Only if the room is humid.",
            "wrong-side-of-the-film",
            "The vapor comes from outside. The room only makes the face cold.",
        ),
    )


def with_damp_wood(inner):
    """The OSB roof with a wet strip of wood on the inside of the OSB."""
    built = vault.roof(inner, "OSB")
    place = built.index(vault.OUTER)
    wood = vault.stack(("damp wood", 0.75, 0.9)).layers[0]
    return dataclasses.replace(built, layers=(*built.layers[:place], wood, *built.layers[place:]))


def spring_drying(draw: Draw) -> Question | None:
    """Which inner layer lets damp wood dry to the room in spring."""
    mild = draw.pick(60, (55, 58, 60, 62))
    rh = draw.pick(45, (40, 45, 50))
    draw.note(outdoor=mild, rh=rh)
    inward, outward = {}, 0.0
    for inner in ("variable", None, PLASTIC):
        found = drying.rates(with_damp_wood(inner), "damp wood", vault.air(70, rh), vault.air(mild, 60))
        inward[inner], outward = from_si(found.inward, "g/m2/day"), from_si(found.outward, "g/m2/day")
    say = draw.say
    rates = {key: say(value, "g/m2/day") for key, value in inward.items()}
    draw.because(
        f"Toward the room: {rates[None]} with no film, {rates['variable']} with the variable film, "
        f"{rates[PLASTIC]} with plastic."
    )
    return draw.words(
        f"It is spring, {say(mild, 'degF')} and 60 % outside, {say(70, 'degF')} and {rh} % inside. Wood "
        "on the inside of "
        "the OSB is wet. Which inner layer lets it dry toward the room?",
        "The variable film, or no film.",
        (
            "Plastic. It keeps water out.",
            "two-barriers-twice-as-good",
            f"It keeps water in just as well: {rates[PLASTIC]} inward, not {rates['variable']}.",
        ),
        (
            "All the same. It dries out through the OSB.",
            "one-path-does-it-all",
            f"Outward it loses {say(outward, 'g/m2/day')} in all three. What goes inward comes on top.",
            "In winter that is the way it dries.",
        ),
    )


CHECKS = (colder_room, summer_water, spring_drying)


def _july(now: Values, say: Say) -> Outcome:
    return dry(vault_state(now, "open membrane"), say)


TASKS = (
    Task(
        "july-film",
        {**JULY, **perms(M_in=0.06)},
        ("M_in", "T_in"),
        2,
        {**perms(M_in=10), **in_si(T_in=(78, "degF"))},
        _july,
    ),
)
