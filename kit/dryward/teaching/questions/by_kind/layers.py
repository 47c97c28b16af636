"""Kinds about layers: temperature, perms, classes, wet faces and the variable film."""

from dryward.teaching.questions.by_lesson import how_fast_perms
from dryward.teaching.questions.roof import FILM, OUTERS, damp_all_the_same, face, film, gain, plane, roof
from dryward.units import from_si


def plane_temperature(draw):
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


def series_perms(draw):
    """Perms of three layers in a row."""
    perms = draw.pick((40, 7, 0.5), (None,)) or tuple(
        draw.random.choice(shelf) for shelf in ((20, 25, 30, 40), (3, 5, 7, 10, 15), (0.5, 1, 1.5, 2, 3))
    )
    draw.note(perms=perms)
    found = how_fast_perms.in_a_row(*perms)
    say = draw.say
    draw.because(how_fast_perms.row_sum(draw, *perms))
    return draw.number(
        f"Three layers of {say(perms[0], 'perm')}, {say(perms[1], 'perm')} and {say(perms[2], 'perm')} lie in a row. "
        f"{how_fast_perms.asked(draw)}",
        found,
        "perm",
        0.03 * found,
        (sum(perms), "adds-perms"),
        (how_fast_perms.average(draw, *perms), "averages-layers"),
        (max(perms), "label-perm-is-the-perm", f"Vapor must pass all three: {say(found, 'perm')}."),
        (min(perms), "tightest-is-all"),
    )


def retarder_class(draw):
    """The class of a sheet by its dry-cup perms."""
    perms = draw.pick(0.7, (0.05, 0.06, 0.08, 0.15, 0.2, 0.4, 0.7, 0.9, 1.2, 2, 3, 5, 8, 12, 15))
    draw.note(perms=perms)
    found = how_fast_perms.retarder_class(perms)
    names = [name for name, _ in how_fast_perms.CLASSES] + ["no retarder"]
    say = draw.say
    draw.because(how_fast_perms.limits(draw))
    return draw.words(
        f"A sheet has {say(perms, 'perm')} by dry cup. Which vapor retarder class is it?",
        f"It is {found}.",
        *((f"It is {name}.", "class-limits-mixed") for name in names if name != found),
    )


def line_or_water(draw):
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


def film_state(draw):
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


def summer_face(draw):
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
        wrong = (no, "barrier-always-inside", "In July the damp side is outside. The film stops it on the cool side.")
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
