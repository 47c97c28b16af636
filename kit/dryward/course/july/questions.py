"""Checks: cooler rooms, a dew point outside, and drying inward in spring."""

import dataclasses

from dryward import language
from dryward.building import Assembly
from dryward.physics import drying
from dryward.teaching import vault
from dryward.teaching.practical import JULY, Outcome, Say, Task, Values, dry, in_si, perms, vault_state
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import FILM, face, gain
from dryward.units import from_si

message = language.beside(__file__)

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
    why = vault.why_damp(built, *before)
    draw.because(
        message(
            "colder-room-why",
            damp=bool(why),
            first=say(round(first), "%"),
            wet=say(wet, "g/m2/day"),
            reason=why,
        )
    )
    return draw.words(
        message(
            "colder-room-ask", hot=say(hot, "degF"), humid=say(humid, "%"), high=say(high, "degF"), low=say(low, "degF")
        ),
        message("colder-room-right"),
        (message("colder-room-barrier-always-inside"), "barrier-always-inside"),
        (
            message("colder-room-wrong-side-of-the-film"),
            "wrong-side-of-the-film",
            message("colder-room-wrong-side-of-the-film-reply"),
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
    draw.because(message("summer-water-why", dew=say(dew, "degF"), back=say(back, "degF")))
    return draw.words(
        message("summer-water-ask", hot=say(hot, "degF"), humid=say(humid, "%"), back=say(back, "degF")),
        message("summer-water-right"),
        (
            message("summer-water-barrier-always-inside"),
            "barrier-always-inside",
            message("summer-water-barrier-always-inside-reply"),
        ),
        (
            message("summer-water-wrong-side-of-the-film"),
            "wrong-side-of-the-film",
            message("summer-water-wrong-side-of-the-film-reply"),
        ),
    )


def with_damp_wood(inner: float | str | None) -> Assembly:
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
    draw.because(message("spring-drying-why", bare=rates[None], film=rates["variable"], plastic=rates[PLASTIC]))
    return draw.words(
        message("spring-drying-ask", mild=say(mild, "degF"), room=say(70, "degF"), rh=say(rh, "%")),
        message("spring-drying-right"),
        (
            message("spring-drying-two-barriers-twice-as-good"),
            "two-barriers-twice-as-good",
            message("spring-drying-two-barriers-twice-as-good-reply", plastic=rates[PLASTIC], film=rates["variable"]),
        ),
        (
            message("spring-drying-one-path-does-it-all"),
            "one-path-does-it-all",
            message("spring-drying-one-path-does-it-all-reply", outward=say(outward, "g/m2/day")),
            message("spring-drying-one-path-does-it-all-seems"),
        ),
    )


CHECKS = (colder_room, summer_water, spring_drying)


def _july(now: Values, say: Say) -> Outcome:
    """Whether the roof is dry on such a day."""
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
