"""Checks: the class of a sheet, layers in a row, and a gap in the film."""

from dryward.physics.airleak import permeance_with_gaps
from dryward.teaching.kinds import asked_in_a_row, average, class_limits, in_a_row, row_sum, sheet_class
from dryward.teaching.questions import Draw, Question
from dryward.units import from_si, to_si


def _title(name):
    return name[0].upper() + name[1:]


def class_of(draw: Draw) -> Question | None:
    """The class of a sheet."""
    perms = draw.pick(0.7, (0.05, 0.06, 0.3, 0.5, 0.7, 0.9, 1.5, 3.0, 5.0, 8.0))
    draw.note(perms=perms)
    found = sheet_class(perms)
    say = draw.say
    draw.because(class_limits(draw))
    others = [name for name in ("class I", "class II", "class III") if name != found]
    return draw.words(
        f"A sheet has {say(perms, 'perm')} by dry cup. Which vapor retarder class is it?",
        _title(found),
        *((_title(name), "class-limits-mixed") for name in others),
        ("No class. Only a perfect sheet is a retarder.", "vapor-barrier-is-air-barrier"),
    )


def which_rules(draw: Draw) -> Question | None:
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
        f"a row. {asked_in_a_row(draw)}",
        found,
        "perm",
        0.03 * found,
        (drywall, "label-perm-is-the-perm", f"Vapor must pass all three. The tightest rules: {say(found, 'perm')}."),
        (drywall + paint + sheet, "adds-perms"),
        (average(draw, drywall, paint, sheet), "averages-layers"),
    )


def gap(draw: Draw) -> Question | None:
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
