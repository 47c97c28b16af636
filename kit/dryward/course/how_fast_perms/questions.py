"""Checks: the class of a sheet, layers in a row, a gap in the film, a label where it is damp, and two rolls."""

from dryward import language
from dryward.building import library
from dryward.building.library import DRY_CUP, WET_CUP
from dryward.course.how_fast_perms.shelf import DECK, at_humidity, roof
from dryward.physics.airleak import permeance_with_gaps
from dryward.teaching.kinds import asked_in_a_row, average, class_limits, in_a_row, row_sum, sheet_class
from dryward.teaching.questions import Draw, Question
from dryward.teaching.vault import gain as gained
from dryward.units import from_si, number, to_si

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
    )


def which_rules(draw: Draw) -> Question | None:
    """Three layers in a row."""
    drywall = draw.pick(40, (25, 30, 40))
    paint = draw.pick(7, (3, 5, 7, 10))
    sheet = draw.pick(0.5, (0.3, 0.5, 0.7, 1.0))
    draw.note(drywall=drywall, paint=paint, sheet=sheet)
    found = in_a_row(drywall, paint, sheet)
    draw.because(row_sum(draw, drywall, paint, sheet))
    draw.tell("perm", drywall=drywall, paint=paint, sheet=sheet)
    draw.tell(asked=asked_in_a_row(draw))
    return draw.ask_number(
        found,
        "perm",
        0.03 * found,
        (sheet, "tightest-is-all"),
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
    cut, whole = 100 * (1 - left / beside), 100 * (1 - in_a_row(film, beside) / beside)
    draw.tell("%", share=share, cut=round(cut))
    draw.tell("perm", left=left, beside=beside, film=film)
    return draw.ask_number(
        cut,
        "%",
        2.0,
        (0.0, "vapor-barrier-is-air-barrier"),
        (whole, "small-gap-is-nothing"),
    )


#: What has a label by dry cup and lets more through when damp: the name it has in the texts, and its row.
LABELED = {"kraft": "kraft-facing", "felt": "asphalt-felt-15", "plywood": "plywood", "osb": "osb"}


def wet_label(draw: Draw) -> Question | None:
    """What a labeled thing lets through where it is as damp as in the wet cup."""
    thing = draw.pick("kraft", LABELED)
    humid = draw.pick(85, (80, 85, 90))
    label, wet, now = (at_humidity(LABELED[thing], each) for each in (DRY_CUP, WET_CUP, humid / 100))
    assert now == wet  # so the wet cup's number is what holds there
    draw.note(thing=thing, humid=humid)
    draw.tell("perm", label=from_si(label, "perm"), wet=from_si(wet, "perm"), middle=from_si((label + wet) / 2, "perm"))
    draw.tell("%", humid=humid)
    draw.tell(thing=thing, times=number(wet / label, figures=2))
    return draw.ask("label-perm-is-the-perm", "middle-of-the-curve")


#: Rolls that look like felt from the yard: the name they have in the texts, and their row.
ROLLS = {"synthetic": "synthetic-underlayment", "adhered": "self-adhered-underlayment"}
FELT = "asphalt-felt-15"


def roll(draw: Draw) -> Question | None:
    """What another roll on the same deck changes."""
    kind = draw.pick("adhered", ROLLS)
    film = draw.pick(0.5, (0.3, 0.5, 1.0))
    cold = draw.pick(30, (25, 30, 35))
    draw.note(roll=kind, film=film, outdoor=cold)
    airs = (70, 40), (cold, 80)
    felt, sheet = (gained(roof(to_si(film, "perm"), DECK, row), *airs) for row in (FELT, ROLLS[kind]))
    if felt > 0 or sheet < 0.3:
        return None
    draw.tell("g/m2/day", gain=sheet)
    perms = from_si(library.membrane(ROLLS[kind]).permeance(0.9, 0.9), "perm")
    draw.tell("perm", film=film, felt=from_si(at_humidity(FELT, WET_CUP), "perm"), perms=perms)
    draw.tell("degF", cold=cold)
    draw.tell(roll=kind)
    return draw.ask("any-underlayment-breathes", "two-barriers-twice-as-good")


CHECKS = (class_of, which_rules, gap, wet_label, roll)
