"""Checks: the class of a sheet, layers in a row, and a gap in the film."""

from dryward import language
from dryward.physics.airleak import permeance_with_gaps
from dryward.teaching.kinds import asked_in_a_row, average, class_limits, in_a_row, row_sum, sheet_class
from dryward.teaching.questions import Draw, Question
from dryward.units import from_si, to_si

message = language.beside(__file__)


def _title(name: str) -> str:
    """The name of a class as an answer."""
    return message("class-of-class", kind=name.replace(" ", "-"))


def class_of(draw: Draw) -> Question | None:
    """The class of a sheet."""
    perms = draw.pick(0.7, (0.05, 0.06, 0.3, 0.5, 0.7, 0.9, 1.5, 3.0, 5.0, 8.0))
    draw.note(perms=perms)
    found = sheet_class(perms)
    say = draw.say
    limits = class_limits(draw)
    draw.because(limits)
    others = [name for name in ("class I", "class II", "class III") if name != found]
    return draw.words(
        message("class-of-ask", perms=say(perms, "perm")),
        _title(found),
        *(
            (_title(name), "class-limits-mixed", message("class-of-other-reply", other=_title(name), limits=limits))
            for name in others
        ),
        (message("class-of-vapor-barrier-is-air-barrier"), "vapor-barrier-is-air-barrier"),
    )


def which_rules(draw: Draw) -> Question | None:
    """Three layers in a row."""
    drywall = draw.pick(40, (25, 30, 40))
    paint = draw.pick(7, (3, 5, 7, 10))
    sheet = draw.pick(0.5, (0.3, 0.5, 0.7, 1.0))
    draw.note(drywall=drywall, paint=paint, sheet=sheet)
    found = in_a_row(drywall, paint, sheet)
    draw.because(row_sum(draw, drywall, paint, sheet))
    draw.tell("perm", drywall=drywall, paint=paint, sheet=sheet, found=found)
    draw.tell(asked=asked_in_a_row(draw))
    return draw.ask_number(
        found,
        "perm",
        0.03 * found,
        (drywall, "label-perm-is-the-perm"),
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
    draw.tell("%", share=share, cut=round(cut))
    draw.tell("perm", left=left, beside=beside, film=film)
    return draw.ask_number(
        cut,
        "%",
        2.0,
        (0.0, "vapor-barrier-is-air-barrier"),
        (share, "vapor-barrier-is-air-barrier", "share"),
        (99.9, "label-perm-is-the-perm"),
    )


CHECKS = (class_of, which_rules, gap)
