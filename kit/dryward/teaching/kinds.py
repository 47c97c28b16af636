"""The generator of questions: each function draws one kind of question, whatever the lesson.

`KINDS` at the end names them.  What several lessons ask with stands first:
perms in a row, the classes of sheets, what a vent can carry, boards.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import TYPE_CHECKING, Any

from dryward import air
from dryward.building.library import material
from dryward.physics.airleak import LONG_SHARE, Leak, brought, orifice_flow
from dryward.physics.ventspace import carrying_limit, net_free_area
from dryward.teaching import vault
from dryward.teaching.vault import FILM, OUTERS, damp_all_the_same, face, film, gain, plane, roof
from dryward.units import DAY, HOUR, from_si, to_si
from dryward.weather import loggers

if TYPE_CHECKING:  # which draws the kinds
    from dryward.teaching.questions import Draw, Question

# --- what several lessons ask with -------------------------------------------------------

#: Upper limits of the classes, dry cup [perm].
CLASSES = (("class I", 0.1), ("class II", 1.0), ("class III", 10.0))


def sheet_class(perms: float) -> str:
    """Class of a sheet by its dry-cup perms; "no retarder" above the third."""
    return next((name for name, limit in CLASSES if perms <= limit), "no retarder")


def in_a_row(*perms: float) -> float:
    """Perms of layers in a row."""
    return 1 / sum(1 / each for each in perms)


def row_sum(draw: Draw, *perms: float) -> str:
    """The sum behind layers in a row, in words."""
    found = in_a_row(*perms)
    if draw.unit_system == "si":
        return f"The sd values add: {' + '.join(draw.say(each, 'perm') for each in perms)} = {draw.say(found, 'perm')}."
    return f"{' + '.join(f'1/{each:g}' for each in perms)} = {1 / found:.3g}, and 1 over that is {found:.2f} perm."


def asked_in_a_row(draw: Draw) -> str:
    """The question about layers in a row: an sd is no amount let through."""
    return "How many perms do they have together?" if draw.unit_system == "us" else "What sd do they have together?"


def average(draw: Draw, *perms: float) -> float:
    """Perms of the average that a reader would take: of the perms, or of the sd values."""
    return sum(perms) / len(perms) if draw.unit_system == "us" else len(perms) * in_a_row(*perms)


def class_limits(draw: Draw) -> str:
    """The three classes in words; sd values run down from class I to class III."""
    say = draw.say
    if draw.unit_system == "us":
        return f"Class I ends at {say(0.1, 'perm')}, class II at {say(1, 'perm')}, class III at {say(10, 'perm')}."
    one, two, three = (say(limit, "perm").removesuffix(" m sd") for _, limit in CLASSES)
    return f"Class I: {one} m sd or more. Class II: {two} to {one}. Class III: {three} to {two}."


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


def board_name(draw: Draw, name: str, inches: float) -> str:
    """A board as the reader's trade calls it."""
    return name if draw.unit_system == "us" else f"{draw.say(inches, 'in')} OSB"


# --- air: its dew point, and which way vapor goes ----------------------------------------------


def dew_point(draw: Draw) -> Question | None:
    """The dew point of room air."""
    warm = draw.pick(70, range(65, 76))
    rh = draw.pick(40, range(25, 65, 5))
    draw.note(temperature=warm, rh=rh)
    found = from_si(vault.air(warm, rh).dew_point, "degF")
    say = draw.say
    draw.because(
        f"Find the saturation pressure at {say(warm, 'degF')}, take {rh} % of it, and look where that is saturation: "
        f"{say(found, 'degF')}."
    )
    return draw.number(
        f"What is the dew point of air at {say(warm, 'degF')} and {rh} %?",
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
    words = {True: "Out", False: "In"}
    belief, rule = {
        "rh": ("rh-drives-vapor", "from high RH to low"),
        "temperature": ("warm-to-cold", "from warm to cold"),
    }[trap]
    draw.because(f"Vapor pressure is {say(first, 'Pa')} inside and {say(second, 'Pa')} outside.")
    return draw.words(
        f"Inside it is {say(inside, 'degF')} and {rh_in} %. Outside it is {say(outside, 'degF')} and {rh_out} %. "
        "Which way does vapor push?",
        f"{words[out]}, from high vapor pressure to low.",
        (f"{words[not out]}, {rule}.", belief),
        ("Neither way. RH and temperature cancel out.", "rh-alone"),
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
    listed = ", ".join(f"{name} {say(thick, 'in')} {say(r, 'R')}" for name, thick, r in layers)
    draw.because(f"{say(outer, 'R')} of {say(total, 'R')} stands outside the batt: {say(found, 'degF')}.")
    return draw.number(
        f"A wall from inside to outside: {listed}. Its faces are at {say(warm, 'degF')} and {say(cold, 'degF')}. "
        "How warm is the outer face of the batt?",
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
        f"Three layers of {say(perms[0], 'perm')}, {say(perms[1], 'perm')} and {say(perms[2], 'perm')} lie in a row. "
        f"{asked_in_a_row(draw)}",
        found,
        "perm",
        0.03 * found,
        (sum(perms), "adds-perms"),
        (average(draw, *perms), "averages-layers"),
        (max(perms), "label-perm-is-the-perm", f"Vapor must pass all three: {say(found, 'perm')}."),
        (min(perms), "tightest-is-all"),
    )


def retarder_class(draw: Draw) -> Question | None:
    """The class of a sheet by its dry-cup perms."""
    perms = draw.pick(0.7, (0.05, 0.06, 0.08, 0.15, 0.2, 0.4, 0.7, 0.9, 1.2, 2, 3, 5, 8, 12, 15))
    draw.note(perms=perms)
    found = sheet_class(perms)
    names = [name for name, _ in CLASSES] + ["no retarder"]
    say = draw.say
    draw.because(class_limits(draw))
    return draw.words(
        f"A sheet has {say(perms, 'perm')} by dry cup. Which vapor retarder class is it?",
        f"It is {found}.",
        *((f"It is {name}.", "class-limits-mixed") for name in names if name != found),
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
    there, nowhere = "On the inner face of the outer layer.", "Nowhere."
    if water:
        draw.because(f"More comes to that cold, tight face than can leave: it gains {say(water, 'g/m2/day')}.")
        wrong = (nowhere, "no-drops-no-problem")
    else:
        draw.because(
            f"Even the coldest face stays at {humid:.0f} % RH. As much can leave as comes.{damp_all_the_same(*case)}"
        )
        wrong = (there, "cold-face-always-wet")
    return draw.words(
        f"A vault has a {say(1, 'perm')} film, {say(12, 'in')} of fill, and an outer layer of "
        f"{say(OUTERS[outer][1], 'perm')}. The room is {say(70, 'degF')} and {rh} %, it is "
        f"{say(cold, 'degF')} and 80 % "
        "outside. Where is the first water?",
        there if water else nowhere,
        wrong,
        ("In the fill, where it is at the dew point.", "dew-point-is-a-place"),
        ("On the inner film.", "wrong-side-of-the-film"),
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
    draw.because(f"The mean RH is {mean:g} %. On the log curve that reads {say(found, 'perm')}.")
    return draw.number(
        f"A variable film has {say(dry, 'perm')} up to a mean RH of {low:.0f} % and {say(wet, 'perm')} "
        f"from {high:.0f} %, "
        f"straight on a log scale between. Its faces see {inside} % and {outside} %. How open is it?",
        found,
        "perm",
        0.15 * found,
        (turned, "film-closes-when-humid"),
        (0.5 * (dry + wet), "middle-of-the-curve"),
        (dry, "film-knows-the-season", f"It knows no season. It reads {mean:g} %: {say(found, 'perm')}."),
        (wet, "film-knows-the-season", f"It knows no season. It reads {mean:g} %: {say(found, 'perm')}."),
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
    sheet = "the teaching variable film" if inner == "variable" else f"a film of {say(inner, 'perm')}"
    yes, no = "The outer face of the film.", "None."
    if water:
        draw.because(f"The push is inward and the film is cool: {say(water, 'g/m2/day')} gather on its outer face.")
        wrong: tuple[str, ...] = (
            no,
            "barrier-always-inside",
            "In July the damp side is outside. The film stops it on the cool side.",
        )
    else:
        draw.because(f"The outer face of the film stays at {back:.0f} % RH, below full.{damp_all_the_same(*case)}")
        wrong = (yes, "cold-face-always-wet")
    return draw.words(
        f"It is {say(hot, 'degF')} and {humid} % outside, the room is cooled to {say(cool, 'degF')} and "
        "50 %. The vault has "
        f"{sheet} and an open outer membrane. Which face gets wet?",
        yes if water else no,
        wrong,
        ("The inner face of the roof deck.", "barrier-always-inside"),
        ("The room face of the drywall.", "wrong-side-of-the-film"),
    )


# --- moving air: a leak beside diffusion, vent area, vent power, air changes -------------------


#: Perms of painted drywall, and what the answer may be off by, in points of a percentage.
DRYWALL = in_a_row(40, 7)
POINTS = 4.0
#: How the air of a hole goes, by the share of it that cools.
WAYS = {
    LONG_SHARE: "Most of the hole's air goes straight by: of what it carries past the cold face about a tenth stays.",
    1.0: "The hole opens into the fill, and all of its air seeps through and cools down to the cold face.",
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
    layers = "painted drywall" if film is None else f"painted drywall and a film of {say(film, 'perm')}"
    draw.because(f"In 150 days about {stays} stay from the hole, and {passes} come by diffusion.")
    return draw.number(
        f"A ceiling of {say(area, 'ft2')}, {layers}, has one hole of {say(hole, 'in2')} with {push:g} Pa "
        f"across it. The room is {say(70, 'degF')} and {rh} %, the cold face {say(cold, 'degF')}. {WAYS[share]} How "
        "much of the water that is left there came with the air, not by diffusion?",
        found,
        "",
        POINTS,
        (98.0, "one-path-does-it-all", f"No one number holds. {draw.why}"),
        (part(leak.excess), "forgets-what-goes-by", f"Air that goes straight by keeps its water. {draw.why}"),
        (part(share * leak.carried), "forgets-saturation", f"What is below saturation moves on. {draw.why}"),
        (0.0, "house-leaks-in-everywhere", f"Up here the push is outward, {push:g} Pa. {draw.why}"),
        tail=" %",
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

    found, unit = low(ratio), "in² per ft" if draw.unit_system == "us" else "cm² per m"
    say = draw.say
    total = from_si(net_free_area(to_si(area, "ft2"), ratio).total, "in2")
    draw.because(
        f"1/{ratio} of {say(area, 'ft2')} is {say(total, 'in2')}. Half of it low, over {say(eave, 'ft')} of eave."
    )
    return draw.number(
        f"A vault of {say(area, 'ft2')} is vented by 1/{ratio}, half high and half low. The eaves are "
        f"{say(eave, 'ft')} long "
        "in all. How much net free area does the eave need?",
        found,
        "",
        0.05 * found,
        (low(450 - ratio), "swaps-vent-ratios"),
        (low(ratio, upper_share=0.0), "all-area-at-one-end"),
        (found / (12 if draw.unit_system == "us" else 100), "area-units-mixed"),
        tail=f" {unit}",
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
    draw.because(f"The air comes in {rh} % full and can take only the other {100 - rh} %: {say(found, 'g/m2/day')}.")
    return draw.number(
        f"Vent air moves at {say(speed, 'ft/min')} through a {say(gap, 'in')} gap under a "
        f"{say(16, 'ft')} rafter. It is "
        f"{say(cold, 'degF')} and {rh} % outside. Bone-dry air could carry off {say(full, 'g/m2/day')} here. "
        "How much can this air carry at most?",
        found,
        "g/m2/day",
        0.15 * found,
        (full, "starts-with-dry-air"),
        (2 * full, "more-vents-always-help", f"The weather sets the limit: {say(found, 'g/m2/day')}."),
        (0.0, "winter-fog-is-wet-air", f"It is {rh} % full, not quite full. It can take {say(found, 'g/m2/day')}."),
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
        draw.because(f"60 minutes times {say(cfm, 'cfm')}, over {say(volume, 'ft3')}: {found:.2f} per hour.")
    else:
        draw.because(
            f"{say(cfm, 'cfm')} over {say(volume, 'ft3')}: {found:.2f} per hour. The flow is already per hour."
        )
    return draw.number(
        f"A blower door reads {say(cfm, 'cfm')} at 50 Pa in a house of {say(volume, 'ft3')}. What is the ACH50?",
        found,
        "",
        0.02 * found,
        (found / 60 if draw.unit_system == "us" else found * 60, "forgets-sixty"),
        (found / 20, "twenty-too-early"),
        tail=" ACH50",
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
        f"Dry weight times {end - start} %: {say(found, 'g/m2')}. At {say(rate, 'g/m2/day')} that takes "
        f"{found / rate:.0f} days."
    )
    weight = say(grams(1), "g/m2")
    if draw.unit_system == "us":
        weight = f"{say(from_si(dry, 'lb/ft2'), 'lb/ft2')} ({weight})"
    return draw.number(
        f"{board_name(draw, name, inches)} weighs {weight} dry. It goes from {start} % to {end} % MC. "
        "How much water does it take up?",
        found,
        "g/m2",
        0.1 * found,
        (grams((end - start) / 100, thickness * 1000), "forgets-density"),
        (wet, "percent-of-wet-weight"),
        (grams(end / 100), "months-stand-alone", f"It did not start dry. Only the {end - start} % in between is new."),
    )


_CAUSES = {
    "rain leak": ("rain-leak", "Rain gets in.", "wet-roof-needs-vents"),
    "air leak": ("air-leak", "House air leaks in.", "one-path-does-it-all"),
    "built-in water": ("built-in-water", "Water was built into the wood.", "trust-the-trend-later"),
    "indoor humidity": ("indoor-humidity", "The house is too humid.", "treats-the-sign"),
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
    whole = _readings(_CAUSES[cause][0])
    part = replace(whole, records=tuple(_part(each, first, first + 504) for each in whole.records))
    found = loggers.diagnose(part)
    if found.cause != cause or not found.numbers["wet spells"] >= 1:  # without a spell of rain no share of them
        return None
    draw.note(cause=cause, first=first)
    n = found.numbers
    say = draw.say
    change = n["wood at the end against the start"]
    draw.because(found.evidence[0])
    spells, share = n["wet spells"], n["wet spells that wet the wood"]
    return draw.words(
        "Three weeks of readings in a roof. "
        f"Vapor a tenth or more above outdoors: {100 * n['share above outdoors']:.0f} % of hours. "
        f"Well above room and outdoors: {100 * n['share above both']:.0f} %. "
        f"Moves with the room: {n['changes with the room']:.2f} (1 is perfect). "
        f"Moves with deck warmth: {n['changes with the sun']:.2f}. "
        f"Room above outdoors: {say(n['room above outdoors'], 'Pa')}. "
        f"Wetter after rain: {spells * share:.0f} of {spells:.0f} spells. "
        f"Wood: {abs(change):.1f} points of MC {'drier' if change < 0 else 'wetter'}. "
        "What is the cause?",
        _CAUSES[cause][1],
        *(
            (text, belief, f"The readings say otherwise. {found.evidence[0]}")
            for _, text, belief in (_CAUSES[other] for other in _CAUSES if other != cause)
        ),
    )


def meter(draw: Draw) -> Question | None:
    """A pin meter in cold wood."""
    reading = draw.pick(15, range(10, 21))
    cold = draw.pick(20, (0, 10, 20, 30, 40))
    draw.note(reading=reading, temperature=cold)
    found = float(loggers.moisture_content(float(reading), to_si(float(cold), "degF")))
    say = draw.say
    draw.because(f"Cold wood conducts less, so the meter reads low. At {say(cold, 'degF')} it is about {found:.0f} %.")
    return draw.number(
        f"A pin meter set for room temperature reads {reading} % in framing lumber at {say(cold, 'degF')}. "
        "What is the MC?",
        found,
        "%",
        1.0,
        (reading, "meter-reads-true"),
        (2 * reading - found, "correction-wrong-way"),
        tail=" MC",
    )


# --- what a person marks: explain it to a client -----------------------------------------------


#: What the instructor looks for, 0 to 2 points each.
RUBRIC = (
    "names the driving force: vapor pressure, or air that moves",
    "names the face at risk",
    "says how it dries in the other season",
    "takes air before vapor",
    "states one limit of the model",
    "uses units",
)

_ASKS = (
    "Why did my new roof get wet when it has vents?",
    "Why do you tape the film so carefully and then leave the outside open?",
    "Why must the bathroom fan run when the house is so new?",
    "Why not put plastic on both sides, to be sure?",
    "Why is there frost under the metal when the attic is dry?",
    "Why can I not fill the space with the wires with insulation?",
)


def explain(draw: Draw) -> Question | None:
    """A client's question, to be answered with a drawing."""
    asked = draw.pick(_ASKS[0], _ASKS)
    draw.note(asked=asked)
    prompt = f'A client asks: "{asked}" Answer in one drawing and three sentences.'
    return draw.written(prompt, "; ".join(RUBRIC))


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
