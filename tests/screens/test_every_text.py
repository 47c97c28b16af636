"""What every control of every lesson writes, at both ends and the middle, in both systems: signs, units, plurals."""

import re
from functools import cache
from tempfile import TemporaryDirectory

import pytest
from lesson_page import first_visit
from told import SUMS, TYPED, everywhere

from dryward import language, weather
from dryward.teaching import lessons
from turns import in_turn

PAGES = ("start", *lessons.pages())
#: How the units of each system look behind a number.
UNITS = {
    "us": r"(?:°F|in\. (?:Hg|w\.c\.)|in\.|ft²|ft³|ft/min|ft|gr/ft² day|gr/ft²|gr/lb|lb/ft[²³]|lb|perm-in\.|perm"
    r"|pints?/day|pints?|quarts?|fl oz|cfm|in²|mph|psi|Btu/\S+)",
    "si": r"(?:°C|K|Pa|hPa|mm|cm²|cm|m sd|m²|m³/h|m³|m/s|m|g/m² day|g/m²|kg/m[²³]|kg/day|kg|g/kg|g|L/s|L|ng/\S+|W/\S+)",
}
#: What the trade says in pascals in both systems: the push on a house, at the blower door and in everyday use.
PUSHES = re.compile(r"(?<![\d.])(?:[1-9]|50|\d\.\d) Pa\b")
#: What stands in one system for all: sources and what a picture leaves out, where rules are quoted.
QUOTED = "frame.items"
#: A sum that is only worked in SI, such as the fourth power of kelvins, says so in both systems.
WORKED_IN_SI = ("clear-night", "the-hole-and-the-ceiling", "vent-space")
#: Names of layers are the library's.
NAMES = "desk.cells"
#: Any number with a point.
_NUMBER = re.compile(r"\d+\.\d+")


def hyphens(id, system, what, text):
    """A hyphen where a minus sign stands."""
    return re.findall(r"(?<![\w.)\]/%⁄-])-\d[\d.]*", text)


def powers(id, system, what, text):
    """A power of ten as a computer writes it."""
    return re.findall(r"\d[eE][-+−]?\d+", text)


def too_exact(id, system, what, text):
    """A number with more figures than anyone knows."""
    most = 5 if what in SUMS else 4
    return [each for each in _NUMBER.findall(text) if len(each.replace(".", "").lstrip("0")) > most]


def plurals(id, system, what, text):
    """One of many."""
    return re.findall(r"(?<![\d.,/:×−-])\b(?<!\d )1 [a-z]+s\b", text)


def slips(id, system, what, text):
    """A number without a space before its unit, two spaces, two stops, a word twice."""
    found = re.findall(r"\d(?:perm|gr|kg|mm|ft|Pa|lb|%|°[CF])\b|  |,,| ,|(?<!\.)\.\.(?!\.)|%%", text)
    return found + re.findall(r"\b([a-zA-Z]+) \1\b", text)


def raw_units(id, system, what, text):
    """A unit as the code names it."""
    return re.findall(r"deg[CF]\b|\b(?:m2|m3|ft2|ft3|in2|cm2|inHg)\b", text)


def other_first(id, system, what, text):
    """An amount in both systems with the reader's own in the brackets."""
    own, other = UNITS[system], UNITS["si" if system == "us" else "us"]
    return re.findall(rf"\d ?{other} \([^()]*\d ?{own}\)", text)


def other_alone(id, system, what, text):
    """An amount in the other system alone; the second line of a readout has it beside the reader's own."""
    if what in ("live.also", QUOTED, NAMES) or (what in SUMS and id in WORKED_IN_SI):
        return []
    text = PUSHES.sub("", re.sub(r"\([^()]*\)", "", text))
    return re.findall(rf"(?<![\w.])\d[\d.]* ?{UNITS['si' if system == 'us' else 'us']}(?![\w²³/])", text)


RULES = (hyphens, powers, too_exact, plurals, slips, raw_units, other_first, other_alone)


#: Each page in one of the two unit systems, and in both with --slow.
USUAL = {id: "us" if at % 2 else "si" for at, id in enumerate(PAGES)}


@cache
def read(id, system):
    """All texts of a page, gone through once."""
    with TemporaryDirectory() as folder:
        page = first_visit(id, folder, system)
        return everywhere(page), page.widget.frame["controls"]


@pytest.mark.parametrize(("id", "system"), in_turn(PAGES, ("si", "us")))
def test_every_text_of_a_page_is_written_by_the_rules(id, system):
    found, _ = read(id, system)
    assert len(found) > 10
    wrong = [
        (rule.__name__, slip, what, text[:200])
        for what, text in found
        if what != TYPED
        for rule in RULES
        for slip in rule(id, system, what, text)
    ]
    assert wrong == []


@pytest.mark.parametrize(
    ("rule", "system", "text"),
    [
        (hyphens, "si", "a dew point of -2.6 °C"),
        (powers, "si", "4.997e-06 m³/s"),
        (too_exact, "us", "18.4349 degrees"),
        (plurals, "us", "for 1 days"),
        (slips, "us", "57.2perm"),
        (slips, "us", "2 in.. It"),
        (raw_units, "us", "temperature in degF"),
        (other_first, "us", "14.7 g/m² (21 gr/ft²)"),
        (other_first, "si", "21 gr/ft² (14.7 g/m²)"),
        (other_alone, "us", "404 Pa more"),
        (other_alone, "si", "a film of 0.5 perm"),
    ],
)
def test_a_rule_finds_its_own_slip(rule, system, text):
    assert rule("july", system, "live.sentence", text)


@pytest.mark.parametrize("id", PAGES)
def test_a_climate_is_called_the_same_on_every_page(id):
    """In small letters, in a menu as within a sentence."""
    found, controls = read(id, USUAL[id])
    named = {each: language.called(weather.demo_climate(each).name) for each in weather.demos()}
    assert all(name == name.lower() for name in named.values())
    menus = [{option["id"]: option["words"] for option in each.get("options", ())} for each in controls]
    for menu in menus:
        if set(menu) & set(named) == set(named):
            assert {each: menu[each] for each in named} == named
    capital = re.compile(rf"(?<=[a-z,;:] )(?:{'|'.join(name.capitalize() for name in named.values())})\b(?! \w+ing)")
    assert not [text for _, text in found if capital.search(text)]
