"""Checks: the class of a sheet, layers in a row, and a gap in the film."""

from dryward.physics.airleak import permeance_with_gaps
from dryward.units import from_si, to_si

#: Upper limits of the classes, dry cup [perm].
CLASSES = (("class I", 0.1), ("class II", 1.0), ("class III", 10.0))


def retarder_class(perms):
    """Class of a sheet by its dry-cup perms; "no retarder" above the third."""
    return next((name for name, limit in CLASSES if perms <= limit), "no retarder")


def _title(name):
    return name[0].upper() + name[1:]


def in_a_row(*perms):
    """Perms of layers in a row."""
    return 1 / sum(1 / each for each in perms)


def row_sum(draw, *perms):
    """The sum behind layers in a row, in words."""
    found = in_a_row(*perms)
    if draw.unit_system == "si":
        return f"The sd values add: {' + '.join(draw.say(each, 'perm') for each in perms)} = {draw.say(found, 'perm')}."
    return f"{' + '.join(f'1/{each:g}' for each in perms)} = {1 / found:.3g}, and 1 over that is {found:.2f} perm."


def asked(draw):
    """The question about layers in a row: an sd is no amount let through."""
    return "How many perms do they have together?" if draw.unit_system == "us" else "What sd do they have together?"


def average(draw, *perms):
    """Perms of the average that a reader would take: of the perms, or of the sd values."""
    return sum(perms) / len(perms) if draw.unit_system == "us" else len(perms) * in_a_row(*perms)


def limits(draw):
    """The three classes in words; sd values run down from class I to class III."""
    say = draw.say
    if draw.unit_system == "us":
        return f"Class I ends at {say(0.1, 'perm')}, class II at {say(1, 'perm')}, class III at {say(10, 'perm')}."
    one, two, three = (say(limit, "perm").removesuffix(" m sd") for _, limit in CLASSES)
    return f"Class I: {one} m sd or more. Class II: {two} to {one}. Class III: {three} to {two}."


def class_of(draw):
    """The class of a sheet."""
    perms = draw.pick(0.7, (0.05, 0.06, 0.3, 0.5, 0.7, 0.9, 1.5, 3.0, 5.0, 8.0))
    draw.note(perms=perms)
    found = retarder_class(perms)
    say = draw.say
    draw.because(limits(draw))
    others = [name for name in ("class I", "class II", "class III") if name != found]
    return draw.words(
        f"A sheet has {say(perms, 'perm')} by dry cup. Which vapor retarder class is it?",
        _title(found),
        *((_title(name), "class-limits-mixed") for name in others),
        ("No class. Only a perfect sheet is a retarder.", "vapor-barrier-is-air-barrier"),
    )


def which_rules(draw):
    """Three layers in a row."""
    drywall = draw.pick(40, (25, 30, 40))
    paint = draw.pick(7, (3, 5, 7, 10))
    sheet = draw.pick(0.5, (0.3, 0.5, 0.7, 1.0))
    draw.note(drywall=drywall, paint=paint, sheet=sheet)
    found = in_a_row(drywall, paint, sheet)
    say = draw.say
    draw.because(row_sum(draw, drywall, paint, sheet))
    return draw.number(
        f"Drywall of {say(drywall, 'perm')}, paint of {say(paint, 'perm')} and a sheet of {say(sheet, 'perm')} lie in "
        f"a row. {asked(draw)}",
        found,
        "perm",
        0.03 * found,
        (drywall, "label-perm-is-the-perm", f"Vapor must pass all three. The tightest rules: {say(found, 'perm')}."),
        (drywall + paint + sheet, "adds-perms"),
        (average(draw, drywall, paint, sheet), "averages-layers"),
    )


def gap(draw):
    """A film with part of it missing, behind painted drywall."""
    film = draw.pick(0.1, (0.05, 0.1, 0.15))
    share = draw.pick(10, (5, 8, 10, 15, 20))
    beside = in_a_row(40, 7)
    draw.note(film=film, share=share)
    left = from_si(permeance_with_gaps(to_si(film, "perm"), to_si(beside, "perm"), share / 100), "perm")
    cut = 100 * (1 - left / beside)
    say = draw.say
    draw.because(f"By area, {share} % open and the rest shut make {say(left, 'perm')}, not {say(beside, 'perm')}.")
    return draw.number(
        f"A film of {say(film, 'perm')} lies behind painted drywall, and {share} % of the film is missing. "
        "How much of the diffusion does it still stop?",
        cut,
        "%",
        2.0,
        (0.0, "vapor-barrier-is-air-barrier"),
        (share, "vapor-barrier-is-air-barrier"),
        (99.9, "label-perm-is-the-perm", f"The label holds for the whole sheet. With the gap it stops {cut:.0f} %."),
    )


CHECKS = (class_of, which_rules, gap)
