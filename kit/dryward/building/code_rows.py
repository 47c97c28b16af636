"""Rows of the codes, and how an edition and a climate zone pick among them.

Each row says in its column ``reading`` how its number is known: "quoted" in a
text that quotes the code or takes it over, or from "memory".  An edition that
could not be read has a row in ``unread.csv``: another edition is then shown
in its place, and every answer says so.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import TypeAlias

from dryward.building import schema
from dryward.building.schema import Row
from dryward.checks import BadFile, UnknownName
from dryward.language import listing, message
from dryward.units import UNITS, from_si, number, show, to_si

Rows: TypeAlias = Sequence[Row]
#: A year, or the newest that was read.
Edition: TypeAlias = str | int | None
MET, NOT_MET, CANNOT_TELL = "met", "not met", "cannot tell"

LIMITS, RETARDERS, CLASS_2, UNREAD = (
    f"codes/{name}.csv" for name in ("limits", "retarders", "class_2_insulation", "unread")
)
_TABLES = {
    LIMITS: "rule edition section zones relation value high unit asks elsewhere reading",
    RETARDERS: (
        "edition zone none class_1 class_2 class_3 responsive both_sides ci_2x4_R ci_2x6_R vented_cladding_over "
        "reading section"
    ),
    CLASS_2: "edition zone ci_2x4_R ci_2x6_R reading section",
    UNREAD: "rule edition shown",
}
#: How a row's number is known.
QUOTED, MEMORY = "quoted", "memory"
#: Editions that one may ask for: those of the codes whose sources begin so.
EDITIONS, _OF_THESE_YEARS = (2006, 2009, 2012, 2015, 2018, 2021, 2024), "International"


@dataclass(frozen=True)
class Ruling:
    """What a rule says about some facts.

    Attributes
    ----------
    rule : str
        Id of the rule.
    answer : {"met", "not met", "cannot tell"}
    why : str
        One sentence with the numbers.
    section, edition, source, how_read : str
        Where the rule stands, and how it was read.
    instead : str
        That the edition asked for could not be read, and which is shown in
        its place; empty otherwise.
    conditions : str
        What the rule asks for beside its number, where it then asks for more.
    """

    rule: str
    answer: str
    why: str
    section: str = ""
    edition: str = ""
    source: str = ""
    how_read: str = ""
    instead: str = ""
    conditions: str = ""

    @property
    def reason(self) -> str:
        """Why, after what must be known of the edition."""
        return message("codes.not-read-and-why", instead=self.instead, why=self.why) if self.instead else self.why

    @property
    def head(self) -> str:
        """The answer as it stands before the reason."""
        return message(f"codes.head-{key(self.answer)}")

    @property
    def words(self) -> str:
        """The whole ruling as it is printed."""
        place = listing([each for each in (self.source, years(self.edition), self.section) if each not in ("", "-")])
        whole = message("codes.ruled", head=self.head, reason=self.reason, place=place, locally=locally())
        return f"{whole} {message('codes.how-read', how=self.how_read)}" if self.how_read else whole


def locally() -> str:
    """Said with every ruling."""
    return message("codes.locally")


def key(answer: str) -> str:
    """An answer as it stands in the name of a message."""
    return answer.replace(" ", "-")


def several(edition: str) -> bool:
    """Whether a row is of several editions."""
    return bool(_YEARS.fullmatch(edition))


def years(edition: str) -> str:
    """An edition, or the years of several."""
    found = _YEARS.fullmatch(edition)
    return message("codes.years", first=found[1], last=found[2]) if found else edition


_YEARS = re.compile(r"(\d{4}) to (\d{4})")


def ruling(rule: str, answer: str, why: str, row: Row | None = None, conditions: str = "") -> Ruling:
    """A ruling with the place of its row."""
    place = {key: row[key] for key in ("section", "edition", "source", "how_read")} if row else {}
    return Ruling(rule, answer, why, **place, conditions=conditions)


@cache
def table(name: str) -> Rows:
    """All rows of one table of the codes."""
    found = tuple(schema.rows(name, _TABLES[name].split()))
    for row in found:
        if row.get("reading", QUOTED) not in (QUOTED, MEMORY):
            raise BadFile(message("codes.row-reading", table=name, row=row["id"], quoted=QUOTED, memory=MEMORY))
        strange = set(_years(row["edition"])) - set(EDITIONS)
        if strange and row["source"].startswith(_OF_THESE_YEARS):  # nobody could ask for it
            listed = ", ".join(map(str, sorted(strange)))
            raise BadFile(
                message("codes.row-edition", table=name, row=row["id"], listed=listed, editions=str(EDITIONS))
            )
    return found


def amount(row: Row, column: str = "value") -> float:
    """The number in a cell of a row in the unit of the row; ``1/150`` is understood."""
    try:
        return float(Fraction(row[column]))
    except (ValueError, ZeroDivisionError):
        raise BadFile(message("codes.row-number", row=row["id"], given=repr(row[column]))) from None


def in_si(row: Row, column: str = "value") -> float:
    """The number in a cell of a row in SI."""
    return to_si(amount(row, column), row["unit"]) if row["unit"] in UNITS else amount(row, column)


#: Units that a row may be in, with the names of their messages; numbers without a unit stand as they are.
_UNITS = {"perm": "perm", "in": "inches", "R": "r", "degF": "fahrenheit", "1/h": "an-hour", "kg/m2": "area-density"}
_PLAIN = ("", "fraction")


def shown(value: float, unit: str) -> str:
    """A number of SI in the unit of a row, for a sentence."""
    text = number(in_unit(value, unit), figures=4)
    if unit in _PLAIN:
        return text
    if unit == "perm" and value > 0:  # a report in SI has the equivalent air layer beside it
        return message("codes.in-perm-and-layer", number=text, layer=show(value, "permeance", "si"))
    return message(f"codes.in-{_UNITS.get(unit, 'flow')}", number=text)


def in_unit(value: float, unit: str) -> float:
    """A number of SI in the unit of a row."""
    return from_si(value, unit) if unit in UNITS else value


def zone(text: str | int) -> str:
    """A climate zone as the tables write it."""
    found = re.fullmatch(r"(ZONE )?(MARINE )?([0-8])([ABC]?)( MARINE)?", str(text).strip().upper())
    if not found:
        known = [f"{number}{letter}" for number in range(9) for letter in ("", *"ABC")]
        raise UnknownName("climate zone", text, known, message("codes.zones-there-are"))
    marine = found[2] or found[5]
    return found[3] + ("C" if marine else found[4])


def _years(edition: str) -> list[int]:
    """Each year that an edition names."""
    return [int(year) for year in re.findall(r"\b(?:19|20)\d\d\b", edition)]


def of_edition(row: Row, edition: Edition) -> bool:
    """Whether a row belongs to an edition; every row without one asked for."""
    if edition is None or str(edition) == row["edition"]:
        return True
    years = _years(row["edition"])
    asked = re.fullmatch(r"(19|20)\d\d", str(edition))
    return bool(asked and years and min(years) <= int(edition) <= max(years))


def newest(found: Rows, edition: Edition) -> list[Row]:
    """The rows of one edition: the one asked for, or the newest that was read."""
    fitting = [row for row in found if of_edition(row, edition)]
    if edition is None:
        recalled = {row["edition"] for row in fitting if row["reading"] == MEMORY}
        fitting = [row for row in fitting if row["edition"] not in recalled] or fitting
    return [row for row in fitting if row["edition"] == fitting[0]["edition"]]


def unread(rule: str, found: Rows, edition: Edition) -> Row | None:
    """The row that says that an edition of a rule could not be read."""
    if edition is None or not found or any(of_edition(row, edition) for row in found):
        return None
    fitting = [row for row in table(UNREAD) if row["source"] == found[0]["source"] and of_edition(row, edition)]
    own = [row for row in fitting if row["rule"] == rule]
    return next(iter(own or [row for row in fitting if not row["rule"]]), None)


def of_zone(found: Rows, asked: str) -> list[Row]:
    """The rows that hold in a zone, the letter before the number."""
    for fits in (
        lambda named: asked in named,
        lambda named: asked[0] in named or named in (["all"], []),
        lambda named: len(asked) == 1 and any(each[0] == asked for each in named),
    ):
        rows_found = [row for row in found if fits(row["zones"].split())]
        if rows_found:
            return rows_found
    return []
