"""Units, errors, roofs, weather and results in a made-up language: nothing they say stands in the code."""

import ast

import numpy as np
import pytest

import dryward as dw
import made_up
from dryward import air, building, checks, exhibit, language, units, weather
from dryward.building.job import parse_job
from dryward.checks import PlainError, UnknownName, of_kind, rising, together, within
from dryward.physics import drying, limits, monthly, steady, ventspace
from dryward.teaching.words import Step
from dryward.verdict import of_months
from dryward.weather import Air
from package import modules, tree

WARM, COLD = Air(21.0, 0.4), Air(-7.0, 0.8)


@pytest.fixture
def foreign():
    with made_up.spoken():
        yield


@pytest.mark.parametrize("system", units.SHOWN)
@pytest.mark.parametrize("quantity", units.SHOWN["us"])
def test_every_amount_and_sign(foreign, quantity, system):
    amount = units.show(0.25, quantity, system)
    assert made_up.unmarked(amount) == made_up.points(amount) == []
    assert made_up.unmarked(units.shown_unit(quantity, system).symbol) == []


@pytest.mark.parametrize("name", units.QUANTITIES)
def test_what_is_shown_can_be_typed_again(foreign, name):
    """In each of its units, with the language's own sign and decimal mark."""
    for unit in dict.fromkeys(units.QUANTITIES[name].units.values()):
        for number in (1.125, 0.5, 12.0):
            shown = units.with_unit(units.number(number, figures=6), unit)
            assert units.quantity(shown, name, unit) == pytest.approx(float(units.to_si(number, unit))), shown


def test_how_a_number_is_written(tmp_path):
    home = tmp_path / "yy"
    home.mkdir()
    (home / "units.ftl").write_text(
        "decimal-mark = ,\nminus-sign = −\namount-in = { $number } tommer\namount-R = R{ $number }\n", encoding="utf-8"
    )
    try:
        language.use(home)
        assert units.show(0.2032, "length", "us") == "8,0 tommer"
        assert units.number(-1.25) == "−1,25"
        assert units.r_value(3.5222, "us", 1) == "R20,0"
        assert units.thickness(0.0381, "us") == "1-1/2 tommer"
        assert units.show(7.0, "temperature", "us") == "44,6 °F"  # what the language lacks
        assert units.quantity("8,0 in", "length") == pytest.approx(0.2032)  # typed writings belong to no language
        with pytest.raises(checks.OutOfRange, match=r"is −0,5 m; it must be 0 to 3,5 m\.$"):
            within("Thickness", -0.5, 0, 3.5, "m")
    finally:
        language.use(None)


@pytest.mark.parametrize("mark", [",", "·"])
def test_a_comma_before_three_digits(tmp_path, mark):
    """Nobody knows what it means but where the decimal mark is a comma; another mark is read too."""
    language.use(made_up.write(tmp_path / "zz"))
    (tmp_path / "zz" / "units.ftl").write_text(f"decimal-mark = {mark}\nminus-sign = −\n", encoding="utf-8")
    try:
        assert units.quantity(f"1{mark}125 m", "length") == 1.125
        assert units.quantity("−1.5 C", "temperature") == -1.5
        if mark == ",":
            return
        with pytest.raises(checks.NotUnderstood) as refused:
            units.quantity("1,125 m", "length")
        assert made_up.unmarked(str(refused.value), ("m", "in", "mm")) == []
    finally:
        language.use(None)


def test_a_sum_has_the_marks_of_the_language(foreign):
    assert language.sums("0.6 × -1.5 in. (R-20.5) / 5.67e-8 − 1-1/2") == "0,6 × −1,5 in. (R-20,5) / 5,67e-8 − 1-1/2"
    assert Step("It is", "1.5 × 2", "3").line == "It is 1,5 × 2 = 3"


def test_amounts_of_the_trade(foreign):
    amounts = (units.r_value(3.5, "si"), units.thickness(0.0381, "us"), units.opening(0.022), units.number(np.inf))
    for text in (*amounts, units.liquid(0.05, 56.0), units.liquid(0.01), units.grain_of_water()):
        assert made_up.unmarked(text) == []


#: What the operating system says of a file that is not there, and its name.
_NO_FILE = ("nowhere", "epw", "no", "such", "file", "or", "directory")


#: Everything of the library by its id.
LIBRARY = [each.id for things in building.library.by_category().values() for each in things]


def refusals():
    """What is refused: a name, what is tried, and what of the sentence is the reader's own or a word of code."""
    space = "[[layer]]\nair_space = { thermal_resistance = 1.0 }"
    head = 'format = "dryward assembly"\nversion = 2\n'
    return {
        "range": (lambda: within("Relative humidity", 1.4, 0, 1, "%"), ()),
        "no number": (lambda: within("Wind speed", "strong", 0, 60, "m/s"), ("strong",)),
        "nan": (lambda: within("Wind speed", float("nan"), 0, 60, "m/s"), ()),
        "large": (lambda: within("Wind speed", float("inf"), 0, 60, "m/s"), ()),
        "least": (lambda: within("Vapor pressure", -1, 0, float("inf"), "Pa"), ()),
        "of": (lambda: within("Thickness", 0, 0, 3, "m", above=True, of="deck"), ()),
        "rising": (lambda: rising("Relative humidity of the curve", [0.5, 0.4]), ()),
        "kind": (lambda: of_kind("The leak", 3, (str,), "an air leak or an air flow"), ()),
        "together": (lambda: together(temperature=np.zeros(3), vapor_pressure=np.zeros(2)), ()),
        "typed": (lambda: units.quantity("thick", "length"), ("thick", "in", "mm")),
        "no unit": (lambda: units.quantity("16", "length"), ("in", "mm")),
        "near": (lambda: building.material("gypsum-bord"), ("gypsum-bord", *LIBRARY)),
        "place": (
            lambda: dw.months("vented-vault", place="moon"),
            ("moon", *" ".join(weather.demos()).replace("-", " ").split()),
        ),
        "saturation": (lambda: air.saturation_vapor_pressure(1.0, over="oil"), ("oil",)),
        "file": (lambda: building.load("nowhere.toml"), ("nowhere", "toml")),
        "word": (lambda: building.assembly.parse(head + "colour = 1\n" + space, "my.toml"), ("colour", "my", "toml")),
        "thickness": (
            lambda: building.assembly.parse(head + "[[layer]]\nmaterial = 'spruce'\nthickness = 12", "my.toml"),
            ("my", "toml", "thickness"),
        ),
        "membrane": (
            lambda: building.assembly.parse(head + "[[layer]]\nmembrane = { kind = 'magic' }", "my.toml"),
            ("my", "toml", "kind", "fixed", "variable", "laminate"),
        ),
        "job": (lambda: parse_job('format = "dryward job"\nversion = 9\n', "my.toml"), ("my", "toml")),
        "weather": (lambda: weather.read_epw("nowhere.epw"), _NO_FILE),
        "class": (lambda: weather.indoor.humidity_class(5), ()),
        "laminate": (lambda: building.LaminateMembrane(building.membrane("1-perm"), 1e-10), ("1-perm",)),
        "layers": (lambda: building.Assembly("mine", ()), ("mine",)),
        "beyond": (lambda: drying.rates(building.preset("vented-vault"), "covering", WARM, COLD), ()),
        "air": (lambda: dw.profile("vented-vault", 3, COLD), ("Air",)),
    }  # fmt: skip


@pytest.mark.parametrize("name", refusals())
def test_what_is_refused(foreign, name):
    tried, allowed = refusals()[name]
    with pytest.raises(PlainError) as trouble:
        tried()
    assert made_up.unmarked(str(trouble.value), allowed) == []


@pytest.mark.parametrize("id", building.presets())
def test_results_and_roofs_in_one_line(foreign, monkeypatch, id):
    monkeypatch.setattr(exhibit, "_LONGEST", 10_000)  # a line that is cut has lost its last mark
    roof = building.preset(id)
    sweep = steady.sweep(roof, WARM, COLD, indoor_relative_humidity=np.array([0.2, 0.6]))
    shown = {
        "Assembly": roof,
        "Profile": steady.profile(roof, WARM, COLD),
        "Sweep": sweep,
        "Drying": drying.rates(roof, roof.inner_layers[1].name, WARM, COLD),
        "Months": monthly.balance(roof, weather.demo_climate("cold"), WARM),
        "Range": limits.dry_range(roof, WARM, COLD, "indoor_relative_humidity", [0.2, 0.6]),
        "Verdict": of_months(monthly.balance(roof, weather.demo_climate("cold"), WARM)),
    }
    for kind, result in shown.items():
        line = repr(result).removeprefix(f"{kind}(")
        assert made_up.unmarked(line, ["indoor_relative_humidity"]) == [], kind
        assert made_up.points(line) == [], kind


def test_the_library_by_name(foreign):
    for things in building.library.by_category().values():
        for thing in things:
            assert made_up.unmarked(language.called(thing.name)) == []
            assert made_up.unmarked(language.called(building.library.category(thing))) == []


def test_an_invented_year(foreign):
    year = weather.demo("cold")
    colder = weather.colder(year)
    for text in (year.name, *year.notes, colder.name, *colder.notes, weather.demo_climate("cold").name):
        assert made_up.unmarked(text) == []


def test_a_name_is_kept_as_it_was_typed(foreign):
    assert language.called("my own felt") == "my own felt"
    assert language.called("Deck") == "Deck"


def test_every_name_stands_under_its_own_letters():
    for id in (each.id.name for each in _entries()):
        assert language.slug(language.message(f"names.{id}").lower()) == id


def _entries():
    from fluent.syntax import ast as ftl
    from fluent.syntax import parse

    from dryward.language import _HOME

    body = parse((_HOME / "en" / "names.ftl").read_text(encoding="utf-8")).body
    return [each for each in body if isinstance(each, ftl.Message)]


#: Functions whose first argument names a thing of the kit.
_NAMING = ("within", "single", "checked", "rising", "of_kind", "subject", "entry", "UnknownName")


def test_what_is_checked_has_a_name_in_the_language():
    named = {language.message(f"names.{each.id.name}") for each in _entries()}
    for module in modules():
        for node in ast.walk(tree(module)):
            if isinstance(node, ast.Call) and node.args and getattr(node.func, "id", "") in _NAMING:
                first = node.args[0]
                if isinstance(first, ast.Constant):
                    word = first.value
                    assert {word, word[:1].lower() + word[1:]} & named, f"{module}:{node.lineno} {word}"


def test_what_a_table_of_ranges_names_has_a_name_in_the_language():
    named = {language.message(f"names.{each.id.name}") for each in _entries()}
    for what in (each[1] for each in ventspace._RANGES):
        assert {what, what[:1].lower() + what[1:]} & named, what


def test_an_unknown_name_of_many_or_few(foreign):
    for known in (["gypsum"], ["gypsum", "brick"], [str(n) * 9 for n in range(40)]):
        assert made_up.unmarked(str(UnknownName("material", "zzz", known)), ("zzz", "gypsum", "brick")) == []
