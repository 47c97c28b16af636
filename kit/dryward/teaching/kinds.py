"""The generator of questions: each function draws one kind of question, whatever the lesson.

`KINDS` at the end names them.  What several lessons ask with stands first:
perms in a row, the classes of sheets, what a vent can carry, boards.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

from dryward import air, units
from dryward.building.library import material
from dryward.checks import UnknownName
from dryward.language import called, listing, message
from dryward.physics.airleak import LONG_SHARE, Leak, brought, orifice_flow
from dryward.physics.ventspace import carrying_limit, net_free_area
from dryward.teaching import vault
from dryward.teaching.questions import Draw, Question, check, made
from dryward.teaching.vault import FILM, OUTERS, damp_all_the_same, face, film, gain, plane, roof
from dryward.units import DAY, HOUR, from_si, to_si
from dryward.weather import loggers

# --- what several lessons ask with -------------------------------------------------------

#: Upper limits of the classes, dry cup [perm].
CLASSES = (("class I", 0.1), ("class II", 1.0), ("class III", 10.0))


def sheet_class(perms: float) -> str:
    """Class of a sheet by its dry-cup perms, shown by `called`; "no retarder" above the third."""
    return next((name for name, limit in CLASSES if perms <= limit), "no retarder")


def in_a_row(*perms: float) -> float:
    """Perms of layers in a row."""
    return 1 / sum(1 / each for each in perms)


def row_sum(draw: Draw, *perms: float) -> str:
    """The sum behind layers in a row, in words."""
    found = in_a_row(*perms)
    if draw.unit_system == "si":
        return message(
            "kinds.sd-values-add",
            perms=" + ".join(draw.say(each, "perm") for each in perms),
            found=draw.say(found, "perm"),
        )
    return message(
        "kinds.perms-in-a-row",
        terms=" + ".join(f"1/{units.written(each, 'g')}" for each in perms),
        sum=units.written(1 / found, ".3g"),
        perms=units.number(found, 2),
    )


def asked_in_a_row(draw: Draw) -> str:
    """The question about layers in a row: an sd is no amount let through."""
    return message("kinds.how-many-perms") if draw.unit_system == "us" else message("kinds.what-sd")


def average(draw: Draw, *perms: float) -> float:
    """Perms of the average that a reader would take: of the perms, or of the sd values."""
    return sum(perms) / len(perms) if draw.unit_system == "us" else len(perms) * in_a_row(*perms)


def class_limits(draw: Draw) -> str:
    """The three classes in words; sd values run down from class I to class III."""
    say = draw.say
    if draw.unit_system == "us":
        return message("kinds.class-limits-perm", one=say(0.1, "perm"), two=say(1, "perm"), three=say(10, "perm"))
    one, two, three = (units.number(from_si(to_si(limit, "perm"), "sd m"), most=2) for _, limit in CLASSES)
    return message("kinds.class-limits-sd", one=one, two=two, three=three)


def power(gap: float, speed: float, rafter: float, outdoor: tuple[float, float], warming: float = 0.0) -> float:
    """The most the vent air can carry off [g/m2/day]: gap [in.], speed [ft/min], rafter [ft], outdoors [degF], [%].

    `warming` is that of the air on its way [degF difference].
    """
    return from_si(
        carrying_limit(
            to_si(gap, "in"),
            to_si(speed, "ft/min"),
            to_si(rafter, "ft"),
            vault.air(*outdoor),
            to_si(warming, "degF difference"),
        ),
        "g/m2/day",
    )


BOARDS = (("7/16 in. OSB", "teaching-osb", 7 / 16), ("3/4 in. OSB", "teaching-osb", 0.75))


def board_name(draw: Draw, inches: float) -> str:
    """A board as the reader's trade calls it."""
    us = draw.unit_system == "us"
    thickness = units.thickness(to_si(inches, "in"), "us") if us else draw.say(inches, "in")
    return message("kinds.board", thickness=thickness)


# --- air: its dew point, and which way vapor goes ----------------------------------------------


def dew_point(draw: Draw) -> Question | None:
    """The dew point of room air."""
    warm = draw.pick(70, range(65, 76))
    rh = draw.pick(40, range(25, 65, 5))
    draw.note(temperature=warm, rh=rh)
    found = from_si(vault.air(warm, rh).dew_point, "degF")
    say = draw.say
    draw.because(message("kinds.dew-point-why", warm=say(warm, "degF"), rh=rh, found=say(found, "degF")))
    return draw.number(
        message("kinds.dew-point", warm=say(warm, "degF"), rh=rh),
        found,
        "degF",
        1.0,
        (warm * rh / 100, "temperature-times-rh"),
        (warm - (100 - rh) / 5, "rule-of-fifths"),
        (warm, "dew-point-is-air-temperature"),
    )


#: Least difference of vapor pressure that is worth a question [Pa].
LEAST_PUSH = 60


def direction(draw: Draw) -> Question | None:
    """Which way vapor pushes, where RH or temperature points the other way."""
    trap = draw.pick("rh", ("rh", "rh", "temperature"))
    inside, outside = draw.pick((70, 20), (None,)) or (
        draw.random.randrange(64, 80, 2),
        draw.random.randrange(-10, 98, 4),
    )
    rh_in, rh_out = draw.pick((35, 90), (None,)) or (
        draw.random.randrange(20, 70, 5),
        draw.random.randrange(30, 100, 5),
    )
    first, second = vault.air(inside, rh_in).vapor_pressure, vault.air(outside, rh_out).vapor_pressure
    out = first > second
    if draw.seed is not None and out != draw.coin:
        return None
    by_rh, by_temperature = rh_in > rh_out, inside > outside
    if abs(first - second) < LEAST_PUSH or abs(rh_in - rh_out) < 5 or abs(inside - outside) < 4:
        return None
    if (by_rh if trap == "rh" else by_temperature) == out:
        return None
    draw.note(inside=inside, rh_in=rh_in, outside=outside, rh_out=rh_out)
    say = draw.say
    belief = {"rh": "rh-drives-vapor", "temperature": "warm-to-cold"}[trap]
    draw.because(message("kinds.direction-why", inside=say(first, "Pa"), outside=say(second, "Pa")))
    return draw.words(
        message(
            "kinds.direction", inside=say(inside, "degF"), rh_in=rh_in, outside=say(outside, "degF"), rh_out=rh_out
        ),
        message("kinds.direction-by-pressure", out=out),
        (message(f"kinds.direction-by-{trap}", out=not out), belief),
        (message("kinds.direction-neither"), "rules-cancel"),
        must=True,
    )


# --- layers: temperature, perms, classes, wet faces, the variable film -------------------------


def plane_temperature(draw: Draw) -> Question | None:
    """The temperature of a plane in a wall of four layers."""
    layers = draw.pick(
        (("drywall", 0.5, 0.5), ("batt", 5.5, 20), ("sheathing", 0.5, 0.5), ("outside board", 1.5, 7.5)),
        tuple(
            (("drywall", 0.5, 0.5), ("batt", inches, r), ("sheathing", 0.5, 0.5), ("outside board", thick, outer))
            for inches, r in ((3.5, 13), (5.5, 20), (5.5, 23))
            for thick, outer in ((1, 4), (1, 5), (1.5, 7.5), (2, 10), (3, 15))
        ),
    )
    warm = draw.pick(70, (68, 70, 72))
    cold = draw.pick(20, (-10, 0, 10, 20, 30))
    draw.note(layers=layers, inside=warm, outside=cold)
    found = plane(layers, warm, cold, "batt")
    inches = [each[1] for each in layers]
    by_inches = cold + (warm - cold) * sum(inches[2:]) / sum(inches)
    say = draw.say
    total, outer = sum(each[2] for each in layers), layers[2][2] + layers[3][2]
    listed = listing(
        [
            message("kinds.layer", name=called(name), thickness=say(thick, "in"), r=say(r, "R"))
            for name, thick, r in layers
        ]
    )
    draw.because(
        message("kinds.plane-temperature-why", outer=say(outer, "R"), total=say(total, "R"), found=say(found, "degF"))
    )
    return draw.number(
        message("kinds.plane-temperature", layers=listed, warm=say(warm, "degF"), cold=say(cold, "degF")),
        found,
        "degF",
        1.0,
        (by_inches, "inches-not-r"),
        (warm - (found - cold), "counts-from-wrong-side"),
        (0.5 * (warm + cold), "half-way"),
    )


def series_perms(draw: Draw) -> Question | None:
    """Perms of three layers in a row."""
    perms = draw.pick((40, 7, 0.5), (None,)) or tuple(
        draw.random.choice(shelf) for shelf in ((20, 25, 30, 40), (3, 5, 7, 10, 15), (0.5, 1, 1.5, 2, 3))
    )
    draw.note(perms=perms)
    found = in_a_row(*perms)
    say = draw.say
    draw.because(row_sum(draw, *perms))
    return draw.number(
        message(
            "kinds.series-perms",
            one=say(perms[0], "perm"),
            two=say(perms[1], "perm"),
            three=say(perms[2], "perm"),
            asked=asked_in_a_row(draw),
        ),
        found,
        "perm",
        0.03 * found,
        (sum(perms), "adds-perms"),
        (average(draw, *perms), "averages-layers"),
        (max(perms), "most-open-rules", message("kinds.series-perms-open", found=say(found, "perm"))),
        (min(perms), "tightest-is-all"),
    )


#: What a class is to its message.
_CLASS_KEYS = {"class I": "one", "class II": "two", "class III": "three", "no retarder": "none"}


def retarder_class(draw: Draw) -> Question | None:
    """The class of a sheet by its dry-cup perms."""
    perms = draw.pick(0.7, (0.05, 0.06, 0.08, 0.15, 0.2, 0.4, 0.7, 0.9, 1.2, 2, 3, 5, 8, 12, 15))
    draw.note(perms=perms)
    found = sheet_class(perms)
    names = [name for name, _ in CLASSES] + ["no retarder"]
    say = draw.say
    draw.because(class_limits(draw))
    return draw.words(
        message("kinds.retarder-class", perms=say(perms, "perm")),
        message("kinds.it-is-class", kind=called(found)),
        *(
            (
                message("kinds.it-is-class", kind=called(name)),
                "class-limits-mixed",
                message("kinds.not-that-class", perms=say(perms, "perm"), of=_CLASS_KEYS[name], limits=draw.why),
            )
            for name in names
            if name != found
        ),
    )


def line_or_water(draw: Draw) -> Question | None:
    """Where the first water is, whatever the dew-point line says."""
    outer = draw.pick("OSB", tuple(OUTERS))
    rh = draw.pick(40, (30, 35, 40, 45, 50))
    cold = draw.pick(20, (0, 10, 20, 30))
    case = roof(1.0, outer), (70, rh), (cold, 80)
    water, humid = gain(*case), face(*case)[1]
    if 0 < water < 0.1 or (water == 0 and humid > 97):
        return None
    if draw.seed is not None and bool(water) != draw.coin:
        return None
    draw.note(outer=outer, rh=rh, outdoor=cold)
    say = draw.say
    there, nowhere = message("kinds.water-at-the-outer-layer"), message("kinds.water-nowhere")
    if water:
        draw.because(message("kinds.water-why", water=say(water, "g/m2/day")))
        wrong = (nowhere, "film-stops-it-all")
    else:
        draw.because(message("kinds.no-water-why", humid=units.number(humid, 0), damp=damp_all_the_same(*case)))
        wrong = (there, "cold-face-always-wet")
    return draw.words(
        message(
            "kinds.line-or-water",
            film=say(1, "perm"),
            fill=say(12, "in"),
            outer=say(OUTERS[outer][1], "perm"),
            room=say(70, "degF"),
            rh=rh,
            cold=say(cold, "degF"),
        ),
        there if water else nowhere,
        wrong,
        (message("kinds.water-at-the-dew-point"), "dew-point-is-a-place"),
        (message("kinds.water-at-the-film"), "wrong-side-of-the-film"),
        must=True,
    )


def film_state(draw: Draw) -> Question | None:
    """Perms of a variable film from the RH on its two faces."""
    dry, wet = draw.pick((0.5, 13), ((0.5, 13), (0.3, 10), (0.8, 20), (1, 15)))
    inside, outside = draw.pick((60, 50), (None,)) or (
        draw.random.randrange(30, 95, 5),
        draw.random.randrange(10, 95, 5),
    )
    mean = 0.5 * (inside + outside)
    sheet = film(dry, wet)
    found = from_si(sheet.permeance(inside / 100, outside / 100), "perm")
    low, high = (100 * rh for rh, _ in (sheet.points[0], sheet.points[-1]))
    turned = from_si(sheet.at_mean((low + high - mean) / 100), "perm")
    draw.note(dry=dry, wet=wet, inside=inside, outside=outside)
    say = draw.say
    draw.because(message("kinds.film-state-why", mean=units.written(mean, "g"), found=say(found, "perm")))
    return draw.number(
        message(
            "kinds.film-state",
            dry=say(dry, "perm"),
            low=units.number(low, 0),
            wet=say(wet, "perm"),
            high=units.number(high, 0),
            inside=inside,
            outside=outside,
        ),
        found,
        "perm",
        0.15 * found,
        (turned, "film-closes-when-humid"),
        (0.5 * (dry + wet), "middle-of-the-curve"),
        (
            dry,
            "reads-one-end",
            message("kinds.film-state-dry-end", low=units.number(low, 0), why=draw.why),
        ),
        (
            wet,
            "reads-one-end",
            message("kinds.film-state-damp-end", high=units.number(high, 0), why=draw.why),
        ),
        must=True,
    )


def summer_face(draw: Draw) -> Question | None:
    """Whether the back of the inner film gets wet on a summer day."""
    hot = draw.pick(85, (80, 82, 85, 88, 90))
    humid = draw.pick(75, (40, 50, 60, 70, 75))
    cool = draw.pick(75, (68, 70, 72, 75, 78))
    inner = draw.pick(0.06, (0.06, 0.1, 1.0, 3.0, "variable"))
    case = roof(inner), (cool, 50), (hot, humid)
    water, back = gain(*case), face(*case, FILM, 1)[1]
    if 0 < water < 0.1 or (water == 0 and back > 97):
        return None
    if draw.seed is not None and bool(water) != draw.coin:
        return None
    draw.note(outdoor=hot, outdoor_rh=humid, indoor=cool, inner=inner)
    say = draw.say
    sheet = (
        message("kinds.the-variable-film") if inner == "variable" else message("kinds.a-film", perms=say(inner, "perm"))
    )
    yes, no = message("kinds.film-outer-face"), message("kinds.no-face")
    if water:
        draw.because(message("kinds.summer-face-wet-why", water=say(water, "g/m2/day")))
        wrong: tuple[str, ...] = (
            message("kinds.no-face-inside"),
            "barrier-always-inside",
            message("kinds.summer-face-july", water=say(water, "g/m2/day")),
        )
    else:
        draw.because(message("kinds.summer-face-dry-why", humid=units.number(back, 0), damp=damp_all_the_same(*case)))
        wrong = (yes, "cold-face-always-wet")
    return draw.words(
        message("kinds.summer-face", hot=say(hot, "degF"), humid=humid, cool=say(cool, "degF"), film=sheet),
        yes if water else no,
        wrong,
        (message("kinds.deck-inner-face"), "wet-where-winter-wets"),
        (message("kinds.drywall-room-face"), "wrong-side-of-the-film"),
    )


# --- moving air: a leak beside diffusion, vent area, vent power, air changes -------------------


#: Perms of painted drywall, and what the answer may be off by, in points of a percentage.
DRYWALL = in_a_row(40, 7)
POINTS = 4.0
#: How the air of a hole goes, by the share of it that cools.
WAYS = {
    LONG_SHARE: "straight-by",
    1.0: "through-the-fill",
}


def leak_or_diffusion(draw: Draw) -> Question | None:
    """How much of the water that stays came with leaking air."""
    hole = draw.pick(1.0, (0.1, 0.2, 0.5, 1.0, 2.0))
    push = draw.pick(1.0, (1.0, 2.0, 4.0))
    film = draw.pick(None, (None, None, 1.0, 0.5))
    area = draw.pick(32, (32, 64, 100, 200))
    cold = draw.pick(20, (10, 20, 30))
    rh = draw.pick(40, (35, 40, 45))
    share = draw.pick(LONG_SHARE, WAYS)
    room, plane = vault.air(70, rh), to_si(float(cold), "degF")
    leak = brought(orifice_flow(push, to_si(hole, "in2")), room, plane, share)
    perms = DRYWALL if film is None else in_a_row(DRYWALL, film)
    drive = room.vapor_pressure - air.saturation_vapor_pressure(plane)
    through = to_si(perms, "perm") * to_si(area, "ft2") * drive

    def part(by_air: float) -> float:
        return 100 * by_air / (by_air + through)

    found = part(leak.stays)
    if not 5 <= found <= 95:
        return None
    draw.note(hole=hole, push=push, film=film, area=area, plane=cold, rh=rh, share=share)
    say = draw.say
    stays, passes = (say(each * 150 * DAY, "kg") for each in (leak.stays, through))
    layers = message("kinds.drywall") if film is None else message("kinds.drywall-and-film", film=say(film, "perm"))
    with_film = say(to_si(in_a_row(DRYWALL, 1.0), "perm") * to_si(area, "ft2") * drive * 150 * DAY, "kg")
    draw.because(
        message(
            "kinds.leak-why", stays=stays, passes=passes, film=film is not None, less=with_film, one=say(1.0, "perm")
        )
    )
    return draw.number(
        message(
            "kinds.leak-or-diffusion",
            area=say(area, "ft2"),
            layers=layers,
            hole=say(hole, "in2"),
            push=units.written(push, "g"),
            room=say(70, "degF"),
            rh=rh,
            cold=say(cold, "degF"),
            way=message(f"kinds.way-{WAYS[share]}"),
        ),
        found,
        "",
        POINTS,
        (98.0, "one-path-does-it-all", message("kinds.leak-no-one-number", why=draw.why)),
        (part(leak.excess), "forgets-what-goes-by", message("kinds.leak-goes-by", why=draw.why)),
        (part(share * leak.carried), "forgets-saturation", message("kinds.leak-below-saturation", why=draw.why)),
        (
            0.0,
            "vapor-alone",
            message("kinds.leak-takes-vapor-along", push=units.written(push, "g"), why=draw.why),
        ),
        tail=message("kinds.tail-percent"),
        must=True,
    )


def vent_area(draw: Draw) -> Question | None:
    """Net free area at the eave by the code's ratio."""
    area = draw.pick(600, range(300, 1500, 100))
    ratio = draw.pick(300, (150, 300))
    eave = draw.pick(60, (30, 40, 50, 60, 80))
    draw.note(area=area, ratio=ratio, eave=eave)

    def low(by: float, **how: float) -> float:
        found = net_free_area(to_si(area, "ft2"), by, eave_length=to_si(eave, "ft"), **how).lower_per_length
        return found / (to_si(1, "in2") / to_si(1, "ft")) if draw.unit_system == "us" else found / to_si(1, "cm2")

    found, unit = (
        low(ratio),
        message("kinds.tail-in2-per-ft") if draw.unit_system == "us" else message("kinds.tail-cm2-per-m"),
    )
    say = draw.say
    total = from_si(net_free_area(to_si(area, "ft2"), ratio).total, "in2")
    draw.because(
        message(
            "kinds.vent-area-why", ratio=ratio, area=say(area, "ft2"), total=say(total, "in2"), eave=say(eave, "ft")
        )
    )
    return draw.number(
        message("kinds.vent-area", area=say(area, "ft2"), ratio=ratio, eave=say(eave, "ft")),
        found,
        "",
        0.05 * found,
        (low(450 - ratio), "swaps-vent-ratios"),
        (low(ratio, upper_share=0.0), "all-area-at-one-end"),
        (found / (12 if draw.unit_system == "us" else 100), "area-units-mixed"),
        tail=unit,
    )


def vent_power(draw: Draw) -> Question | None:
    """The most that vent air can carry off."""
    gap = draw.pick(1.5, (1.0, 1.5, 2.0, 2.5))
    speed = draw.pick(20, (15, 20, 30, 40))
    cold = draw.pick(20, (10, 20, 30, 40))
    rh = draw.pick(80, (70, 75, 80, 85, 90))
    draw.note(gap=gap, speed=speed, outdoor=cold, rh=rh)
    found, full = power(gap, speed, 16, (cold, rh)), power(gap, speed, 16, (cold, 0))
    say = draw.say
    draw.because(message("kinds.vent-power-why", rh=rh, rest=100 - rh, found=say(found, "g/m2/day")))
    return draw.number(
        message(
            "kinds.vent-power",
            speed=say(speed, "ft/min"),
            gap=say(gap, "in"),
            rafter=say(16, "ft"),
            cold=say(cold, "degF"),
            rh=rh,
            full=say(full, "g/m2/day"),
        ),
        found,
        "g/m2/day",
        0.15 * found,
        (full, "starts-with-dry-air"),
        (
            full * rh / 100,
            "rh-is-what-it-takes",
            message("kinds.vent-power-share", rh=rh, found=say(found, "g/m2/day")),
        ),
        (0.0, "nearly-full-is-full", message("kinds.vent-power-not-full", rh=rh, found=say(found, "g/m2/day"))),
    )


def air_changes(draw: Draw) -> Question | None:
    """ACH50 from CFM50 and the volume."""
    volume = draw.pick(20000, range(8000, 40000, 2000))
    cfm = draw.pick(1000, range(300, 3000, 100))
    draw.note(cfm50=cfm, volume=volume)
    house = Leak.from_blower_door(to_si(cfm, "cfm") * HOUR / to_si(volume, "ft3"), to_si(volume, "ft3"))
    found = house.changes_at_50(to_si(volume, "ft3"))
    if not 0.5 < found < 15:
        return None
    say = draw.say
    if draw.unit_system == "us":
        draw.because(
            message(
                "kinds.air-changes-why-cfm",
                flow=say(cfm, "cfm"),
                volume=say(volume, "ft3"),
                found=units.number(found, 2),
            )
        )
    else:
        draw.because(
            message(
                "kinds.air-changes-why", flow=say(cfm, "cfm"), volume=say(volume, "ft3"), found=units.number(found, 2)
            )
        )
    return draw.number(
        message("kinds.air-changes", flow=say(cfm, "cfm"), volume=say(volume, "ft3")),
        found,
        "",
        0.02 * found,
        (found / 60 if draw.unit_system == "us" else found * 60, "forgets-sixty"),
        (found / 20, "twenty-too-early"),
        tail=message("kinds.tail-ach50"),
    )


# --- wood and readings: storage, the cause behind a logger, the pin meter ----------------------


def storage(draw: Draw) -> Question | None:
    """Water that a board takes up for a change of MC."""
    name, board, inches = draw.pick(BOARDS[0], BOARDS)
    start = draw.pick(12, (8, 10, 12))
    end = draw.pick(20, (16, 18, 20, 24))
    rate = draw.pick(10.0, (2.0, 5.0, 10.0))
    draw.note(board=name, start=start, end=end, rate=rate)
    thickness = to_si(inches, "in")
    dry = material(board).density * thickness

    def grams(change: float, mass: float = dry) -> float:
        return from_si(mass * change, "g/m2")

    found = grams((end - start) / 100)
    wet = grams(end / (100 - end) - start / (100 - start))
    say = draw.say
    draw.because(
        message(
            "kinds.storage-why",
            change=end - start,
            found=say(found, "g/m2"),
            rate=say(rate, "g/m2/day"),
            days=units.number(found / rate, 0),
        )
    )
    weight = say(grams(1), "g/m2")
    if draw.unit_system == "us":
        weight = units.in_both(say(from_si(dry, "lb/ft2"), "lb/ft2"), weight)
    return draw.number(
        message("kinds.storage", board=board_name(draw, inches), weight=weight, start=start, end=end),
        found,
        "g/m2",
        0.1 * found,
        (grams((end - start) / 100, thickness * 1000), "forgets-density"),
        (wet, "percent-of-wet-weight"),
        (grams(end / 100), "starts-bone-dry", message("kinds.storage-start", change=end - start)),
    )


#: Each cause, and what it is in the names of messages and samples.
_CAUSES = {
    "blocked vents": "blocked-vents",
    "air leak": "air-leak",
    "rain leak": "rain-leak",
    "built-in water": "built-in-water",
    "indoor humidity": "indoor-humidity",
}


@cache
def _readings(name: str) -> loggers.Readings:
    with loggers.sample(f"cause-{name}") as path:
        return loggers.read(path)


def _part(record: loggers.Record, first: int, last: int) -> loggers.Record:
    """Some rows of a record."""
    rows: dict[str, Any] = {
        name: None if getattr(record, name) is None else getattr(record, name)[first:last]
        for name in ("time", "temperature", "vapor_pressure", "moisture_content", "rain")
    }
    return replace(record, **rows)


def logger_cause(draw: Draw) -> Question | None:
    """The cause behind three weeks of readings."""
    cause = draw.pick("air leak", tuple(_CAUSES))
    first = draw.pick(0, range(0, 168, 12))
    whole = _readings(_CAUSES[cause])
    part = replace(whole, records=tuple(_part(each, first, first + 504) for each in whole.records))
    found = loggers.diagnose(part)
    if found.cause != cause or not found.numbers["wet spells"] >= 1:  # without a spell of rain no share of them
        return None
    draw.note(cause=cause, first=first)
    n = found.numbers
    say = draw.say
    change = n["wood at the end against the start"]

    def share_of(name: str) -> str:
        return units.number(100 * n[name], 0)

    evidence = units.read_in(found.evidence[0], draw.unit_system)
    draw.because(evidence)
    spells, share = n["wet spells"], n["wet spells that wet the wood"]
    seen = {
        "above_out": share_of("share above outdoors"),
        "above_both": share_of("share above both"),
        "room": units.number(n["changes with the room"], 2),
        "outdoors": units.number(n["changes with outdoors"], 2),
        "warmth": units.number(n["changes with the sun"], 2),
        "excess": say(n["room above outdoors"], "Pa"),
        "wetter": round(spells * share),
        "spells": round(spells),
        "points": units.number(abs(change), 1),
        "drier": change < 0,
    }
    return draw.words(
        message("kinds.logger-cause", **seen),
        message(f"kinds.cause-{_CAUSES[cause]}"),
        *(
            (
                message(f"kinds.cause-{other}"),
                "wet-roof-needs-vents" if other == "blocked-vents" else "usual-suspect",
                message(f"kinds.not-{other}", evidence=evidence, **seen),
                message(f"kinds.suspect-{other}"),
            )
            for other in [each for each in _CAUSES.values() if each != _CAUSES[cause]][:3]
        ),
    )


def meter(draw: Draw) -> Question | None:
    """A pin meter in cold wood."""
    reading = draw.pick(15, range(10, 21))
    cold = draw.pick(20, (0, 10, 20, 30, 40))
    draw.note(reading=reading, temperature=cold)
    found = float(loggers.moisture_content(float(reading), to_si(float(cold), "degF")))
    say = draw.say
    draw.because(message("kinds.meter-why", cold=say(cold, "degF"), found=units.number(found, 0)))
    return draw.number(
        message("kinds.meter", reading=reading, cold=say(cold, "degF")),
        found,
        "%",
        1.0,
        (reading, "meter-reads-true"),
        (2 * reading - found, "correction-wrong-way"),
        tail=message("kinds.tail-mc"),
    )


# --- what a person marks: explain it to a client -----------------------------------------------


#: What the instructor looks for, 0 to 2 points each.
_RUBRIC = ("force", "face", "drying", "air-first", "limit", "units")
#: What a client asks.
_ASKS = ("wet-with-vents", "taped-and-open", "bathroom-fan", "both-sides", "frost", "wires")


def rubric() -> tuple[str, ...]:
    """What the instructor looks for, in words."""
    return tuple(message(f"kinds.rubric-{each}") for each in _RUBRIC)


def explain(draw: Draw) -> Question | None:
    """A client's question, to be answered with a drawing."""
    asked = message(f"kinds.ask-{draw.pick(_ASKS[0], _ASKS)}")
    draw.note(asked=asked)
    looked_for, *others = rubric()
    for each in others:
        looked_for = message("kinds.and-also", first=looked_for, next=each)
    return draw.written(message("kinds.explain", question=asked), looked_for)


#: The kinds by name, in the order of an instructor's list.
KINDS = {
    "dew-point": dew_point,
    "direction": direction,
    "plane-temperature": plane_temperature,
    "series-perms": series_perms,
    "retarder-class": retarder_class,
    "line-or-water": line_or_water,
    "film-state": film_state,
    "summer-face": summer_face,
    "leak-or-diffusion": leak_or_diffusion,
    "vent-area": vent_area,
    "vent-power": vent_power,
    "storage": storage,
    "air-changes": air_changes,
    "logger-cause": logger_cause,
    "meter": meter,
    "explain": explain,
}


def draw(kind: str, seed: int | None = None, unit_system: str = "us") -> Question:
    """One question of a kind, or a lesson's check by ``lesson/check``."""
    if "/" in kind:
        return check(kind, seed, unit_system)
    if kind not in KINDS:
        raise UnknownName("kind of question", kind, KINDS)
    return made(KINDS[kind], kind, seed, unit_system)
