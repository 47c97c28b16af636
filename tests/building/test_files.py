"""Assembly files: what is saved opens again, and what is broken gets one sentence."""

import dataclasses
import os
import re
import sys
import tomllib

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from dryward import building, storage
from dryward.building import (
    AirSpace,
    Assembly,
    FixedMembrane,
    LaminateMembrane,
    Layer,
    Material,
    Origin,
    VariableMembrane,
    assembly,
)
from dryward.building.substances import Membrane
from dryward.checks import BadFile, PlainError
from dryward.units import from_si, quantity, to_si

HEAD = 'format = "dryward assembly"\nversion = 2\n'
BOARD = '[[layer]]\nmaterial = "gypsum-board"\nthickness = "1/2 in"\n'


@pytest.mark.parametrize("name", building.presets())
def test_every_preset_survives_the_round_trip(name, tmp_path):
    roof = building.preset(name)
    path = tmp_path / "roof.toml"
    roof.save(path)
    assert building.load(path) == roof
    assert building.load(str(path)) == roof


@pytest.mark.parametrize(
    ("typed", "kept"), [("4/12", "4/12"), ("4.5/12", "4.5/12"), ("45", 45.0), ("18.4 deg", 18.4), ("90", 90.0)]
)
def test_a_slope_stands_in_a_file_as_it_was_meant(typed, kept, tmp_path):
    roof = dataclasses.replace(building.preset("vented-vault"), slope=quantity(typed, "slope"))
    path = tmp_path / "roof.toml"
    roof.save(path)
    assert tomllib.loads(path.read_text(encoding="utf-8"))["slope"] == kept
    assert building.load(path) == roof


def test_a_saved_file_opens_without_the_library(tmp_path, monkeypatch):
    path = tmp_path / "roof.toml"
    building.preset("vented-vault-variable").save(path)

    def gone(*_):
        raise AssertionError("the library was asked")

    monkeypatch.setattr(assembly.library, "material", gone)
    monkeypatch.setattr(assembly.library, "membrane", gone)
    monkeypatch.setattr(assembly.library, "air_space", gone)
    assert building.load(path).layer("inner membrane").substance.points[0][0] == 0.3


def test_a_laminate_keeps_both_sheets_and_its_turn(tmp_path):
    film = LaminateMembrane(
        VariableMembrane((0.2, 0.9), (3e-11, 1e-9), Origin(name="sheet")), FixedMembrane(1e-10), turned=True
    )
    roof = Assembly("roof", [Layer(film, name="film")], notes="one\ntwo")
    path = tmp_path / "roof.toml"
    assembly.save(roof, path)
    assert assembly.load(path) == roof


numbers = st.floats(1e-3, 1.0)
materials = st.builds(
    lambda k, d, p, w, rising: Material(
        "made",
        "made up",
        100 + 1000 * d,
        1000,
        k,
        ((0.2, p * 1e-12), (0.8, p * 3e-12)),
        sorption=((0.5, w), (1.0, w + 100 * rising)),
        liquid_conductivity=((0.0, 0.0), (w, 1e-12 * p)),
        wood=d > 0.5,
        ranges=(("conductivity", k / 2, k),),
    ),
    *[numbers] * 5,
)
things = st.one_of(
    materials,
    st.builds(lambda p: FixedMembrane(p * 1e-9), numbers),
    st.builds(lambda p: VariableMembrane((0.3, 0.8), (p * 1e-11, p * 1e-10), Origin(name="film")), numbers),
    st.builds(lambda r, vented: AirSpace(r, vented=vented), numbers, st.booleans()),
)


rows = st.tuples(things, numbers, st.text("abc äé", max_size=9), st.sampled_from((None, True, False)))


@given(st.lists(rows, min_size=1, max_size=6), numbers)
def test_any_assembly_survives_the_round_trip(rows, film):
    layers = [
        Layer(thing, depth, name, opened if not isinstance(thing, Membrane) else None)
        for thing, depth, name, opened in rows
    ]
    if layers[0].vented:
        layers.insert(0, Layer(FixedMembrane(1e-10)))
    roof = Assembly("made up", layers, interior_film=film, interior_vapor_film=film)
    assert assembly.parse(assembly.text(roof)) == roof


def test_a_file_written_by_hand(tmp_path):
    path = tmp_path / "hand.toml"
    path.write_text(
        HEAD
        + """
name = "My roof"
slope = 30
interior_film = "R-0.61"
interior_vapor_film = "400 perm"

[framing]
share = "12 %"
material = "spruce"
layers = ["fill"]

[[layer]]
name = "board"
material = "gypsum-board"
thickness = "1/2 in"
permeance = "40 perm"
thermal_resistance = "R-0.45"

[[layer]]
name = "cavity"
air_space = { thermal_resistance = "R-1", vapor_permeance = "80 perm" }
thickness = '1-1/2"'

[[layer]]
name = "film"
membrane = { points = [["30 %", "0.5 perm"], ["80 %", "13 perm"]] }

[[layer]]
name = "fill"
thickness = "300 mm"
[layer.material]
name = "my fill"
density = "3.5 lb/ft3"
specific_heat = 1400
conductivity = "R-3.7 per in"
vapor_permeability = "mu 1.5"

[[layer]]
name = "sheet"
membrane = { permeance = "sd 0.02 m" }

[[layer]]
name = "laminate"
membrane = { sensitive = { points = [[0.3, "0.5 perm"], [0.8, "20 perm"]] }, backing = "2 perm" }

[[layer]]
membrane = "polyethylene-6-mil"
permeance = "0.05 perm"
""",
        encoding="utf-8",
    )
    roof = building.load(path)
    assert roof.name == "My roof"
    assert roof.framing.share == pytest.approx(0.12)
    board = roof.layer("board")
    assert from_si(board.permeance, "perm") == pytest.approx(40)
    assert from_si(board.thermal_resistance, "R") == pytest.approx(0.45)
    assert board.substance.sorption, "the rest is the library's"
    assert from_si(roof.layer("cavity").substance.vapor_permeance, "perm") == pytest.approx(80)
    assert from_si(roof.layer("film").substance.at_mean(0.8), "perm") == pytest.approx(13)
    assert from_si(roof.layer("fill").thermal_resistance, "R") == pytest.approx(3.7 * 300 / 25.4)
    assert roof.layer("fill").substance.vapor_permeability == pytest.approx(2e-10 / 1.5)
    assert from_si(roof.layer("sheet").permeance, "sd m") == pytest.approx(0.02)
    assert isinstance(roof.layer("laminate").substance, LaminateMembrane)
    assert from_si(roof.layers[-1].permeance, "perm") == pytest.approx(0.05)
    assembly.save(roof, path)
    assert assembly.load(path) == roof


def test_the_example_in_the_words_of_the_module_opens():
    words = assembly.__doc__.split("::")[1].split("A layer of the library")[0]
    roof = assembly.parse("\n".join(line.strip() for line in words.splitlines()))
    assert [layer.name for layer in roof.layers] == ["board", "inner membrane", "vent space"]


OLD = """
format = "dryward assembly"
version = 1
name = "Old roof"
pitch = 30
inside_film = 0.11
outside_film = "R-0.17"

[[layers]]
name = "board"
material = "gypsum-board"
thickness_mm = 12.7

[[layers]]
name = "film"
membrane = "teaching-fixed-1-perm"
perms = 0.8
"""


def test_a_file_of_version_1_still_opens(tmp_path):
    path = tmp_path / "old.toml"
    path.write_text(OLD, encoding="utf-8")
    roof = building.load(path)
    assert (roof.name, roof.slope, roof.interior_film) == ("Old roof", 30.0, 0.11)
    assert from_si(roof.exterior_film, "R") == pytest.approx(0.17)
    assert roof.layer("board").thickness == pytest.approx(0.0127)
    assert from_si(roof.layer("film").permeance, "perm") == pytest.approx(0.8)
    assert path.read_text(encoding="utf-8") == OLD, "opening changes nothing"
    assembly.save(roof, path)
    assert "version = 2" in path.read_text(encoding="utf-8")
    assert building.load(path) == roof


BAD = {
    "": 'it is empty.',
    "x = 1": 'it does not begin with format = "dryward assembly".',
    "name = ": "it is not written as TOML: Invalid value",
    HEAD.replace("2", "3") + BOARD: "it is of version 3, newer than this kit, which reads up to version 2.",
    HEAD.replace("2", "0") + BOARD: "its version must be a whole number from 1 to 2.",
    HEAD.replace("2", "true") + BOARD: "its version must be a whole number from 1 to 2.",
    HEAD.replace("version = 2", "version = 1") + "layers = 3": "its layers must be written as [[layers]].",
    HEAD: "The assembly without a name has 0 layers; it must have 1 to 60.",
    HEAD + "layer = 3": "the layers must be written as [[layer]].",
    HEAD + BOARD * 61: "it has 61 layers; it must have 1 to 60.",
    HEAD + "slop = 3\n" + BOARD: 'the top of the file: the word "slop" is not known; did you mean slope?',
    HEAD + "slope = 120\n" + BOARD: "Slope is 120 degrees; it must be 0 to 90 degrees.",
    HEAD + "slope = true\n" + BOARD: 'slope must be a number, or a text with a unit such as "4/12".',
    HEAD + "slope = " + "9" * 400 + "\n" + BOARD: "slope must be a number of ordinary size.",
    HEAD + "slope = " + "9" * 5000 + "\n" + BOARD: "it holds a number with too many digits.",
    HEAD + "slope = nan\n" + BOARD: "Slope is not a number; it must be 0 to 90 degrees.",
    HEAD + "interior_film = 'R-two'\n" + BOARD: 'The thermal resistance "R-two" is not understood',
    HEAD + "interior_film = '3 in'\n" + BOARD: 'The thermal resistance "3 in" is not understood',
    HEAD + "interior_film = []\n" + BOARD: "interior_film must be a number, or a text with a unit",
    HEAD + f"name = '{'n' * 100}'\n" + BOARD: "name must be a text of at most 80 characters.",
    HEAD + 'name = "a\\u0007"\n' + BOARD: "name must be a text without control characters.",
    HEAD + "name = 3\n" + BOARD: "name must be a text of at most 80 characters.",
    HEAD + "framing = 3\n" + BOARD: "framing: it must be a table of words and values.",
    HEAD + "framing = {share = 0.1}\n" + BOARD: "framing: material is missing.",
    HEAD + "framing = {share = 0.1, material = 'spruce', layers = 'fill'}\n" + BOARD: "a list of layer names.",
    HEAD + "framing = {share = 0.1, material = 'spruce', layers = ['fill']}\n" + BOARD: '"fill"; there is gypsum board',
    HEAD + "framing = {share = '80 %', material = 'spruce', layers = []}\n" + BOARD: "Framing share is 80 %",
    HEAD + BOARD.replace("thickness", "thicknes"): 'layer 1: the word "thicknes" is not known; did you mean thickness?',
    HEAD + BOARD.replace("1/2 in", "1/2"): 'layer 1: The length "1/2" has no unit; write it like "3/4 in"',
    HEAD + BOARD.replace("1/2 in", "R-20"): 'layer 1: The length "R-20" is not understood',
    HEAD + BOARD.replace("1/2 in", "-1 in"): 'thickness must be above 0 and at most 3 m (118 in.), not "-1 in".',
    HEAD + BOARD + 'thermal_resistance = "R-4400000"': 'R-72 at this thickness, not "R-4400000".',
    HEAD + BOARD + 'permeance = "-3 perm"': 'permeance must be 0 to 1376 perm at this thickness, not "-3 perm".',
    HEAD + BOARD.replace('"1/2 in"', "1e30"): "layer 1: thickness must be above 0 and at most 3 m (118 in.), not 1e+30",
    HEAD + BOARD.replace('thickness = "1/2 in"', ""): "layer 1: The layer gypsum board needs a thickness",
    HEAD + BOARD.replace("gypsum-board", "gypsum-bord"): 'no material "gypsum-bord"; did you mean gypsum-board',
    HEAD + BOARD.replace("gypsum-board", "../../etc/passwd"): 'layer 1: There is no material "../../etc/passwd"',
    HEAD + BOARD + 'membrane = "kraft-facing"': "layer 1: it must have one of material, membrane or air_space.",
    HEAD + '[[layer]]\nname = "nothing"': "layer 1 (nothing): it must have one of material, membrane or air_space.",
    HEAD + "layer = [3]": "layer 1: it must be a table of words and values.",
    HEAD + '[[layer]]\nname = "f"\nmembrane = { kind = "magic" }': "layer 1 (f): kind must be fixed, variable or",
    HEAD + "[[layer]]\nmembrane = { permeance = '5 W' }": 'layer 1: The permeance "5 W" is not understood',
    HEAD + "[[layer]]\nmembrane = {}": "layer 1: permeance is missing.",
    HEAD + "[[layer]]\nmembrane = { points = [[0.3, 2e-11], [0.8, 1e-11]] }": "layer 1: A membrane curve must not fall",
    HEAD + "[[layer]]\nmembrane = { points = [0.3, 0.8] }": "layer 1: points must be a list of pairs",
    HEAD + "[[layer]]\nmembrane = { points = [" + "[0.1, 1.0]," * 201 + "] }": "points must be a list of at most 200",
    HEAD + "[[layer]]\nmembrane = { sensitive = { points = [[0.3, 1e-11], [0.8, 2e-11]] } }": "backing is missing.",
    HEAD + "[[layer]]\nmembrane = { kind = 'laminate' }": "layer 1: sensitive is missing.",
    HEAD + "[[layer]]\nmembrane = { sensitive = { permeance = 1e-11 }, backing = 1e-10 }": "kind must be variable",
    HEAD + "[[layer]]\nair_space = { thermal_resistance = 'R-1', vented = 'yes' }": "vented must be true or false.",
    HEAD + "[[layer]]\nopen_to_air = 1\nair_space = { thermal_resistance = 'R-1' }": (
        "open_to_air must be true or false."
    ),
    HEAD + "[[layer]]\nopen_to_air = true\nmembrane = { permeance = '1 perm' }": "has no thickness for air to seep",
    HEAD + "[[layer]]\nair_space = { thermal_resistance = 'R-1', vented = true }": "begins with a vent space",
    HEAD + '[[layer]]\nmembrane = "teaching-variable"\npermeance = "1 perm"': "permeance must be given for a material",
    HEAD + '[[layer]]\nmembrane = "kraft-facing"\nthermal_resistance = "R-1"': "thermal_resistance must be above 0",
    HEAD + BOARD + 'thermal_resistance = "R-0"': 'at this thickness, not "R-0".',
    HEAD + "[[layer]]\nmaterial = { density = 100 }\nthickness = 0.1": "layer 1: specific_heat is missing.",
    HEAD + "[[layer]]\nmaterial = { density = 100, ranges = 3 }\nthickness = 0.1": "ranges must be a table such as",
    HEAD + "[[layer]]\nmaterial = { ranges = { color = [1, 2] } }\nthickness = 0.1": 'the word "color" is not known',
    HEAD + "[[layer]]\nmaterial = { ranges = { sorption = 1 } }\nthickness = 0.1": "sorption must be a pair of numbers",
    HEAD + "x = " + "[" * 5000: "it is nested too deeply.",
    HEAD + "a." * 5000 + "b = 1": "it is nested too deeply.",
    HEAD + '"a b".' * 5000 + "b = 1": "it is nested too deeply.",
}  # fmt: skip


@pytest.mark.parametrize(("text", "words"), BAD.items(), ids=range(len(BAD)))
def test_a_bad_file_gets_one_sentence_with_its_place(text, words, tmp_path):
    path = tmp_path / "bad.toml"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(BadFile, match=re.escape(words)) as caught:
        building.load(path)
    said = str(caught.value)
    assert said.startswith("bad.toml: ")
    assert said.endswith((".", "?"))
    assert "\n" not in said
    assert len(said) < 320
    assert path.read_text(encoding="utf-8") == text


@given(st.text(max_size=200))
def test_any_text_opens_or_gets_a_sentence(text):
    with pytest.raises(PlainError):
        assembly.parse(HEAD + text)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=50)
@given(cut=st.integers(0, 5000))
def test_a_truncated_file_gets_a_sentence_or_is_a_shorter_roof(cut, tmp_path):
    whole = assembly.text(building.preset("vented-vault"))
    path = tmp_path / "cut.toml"
    path.write_text(whole[: cut % len(whole)], encoding="utf-8")
    try:
        assert len(building.load(path).layers) <= 9
    except BadFile as error:
        assert str(error).startswith("cut.toml: ")  # noqa: PT017 - either way is right


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"\x00\xff\xfe" * 10, "it is not a text file."),
        (b"\x00" * 50, "it is not written as TOML"),
        (b"PK\x03\x04" + bytes(range(256)), "it is not a text file."),
        (b" " * (storage.LARGEST + 1), "it is larger than 500000 bytes, too large for an assembly."),
    ],
)
def test_what_is_no_text_gets_a_sentence(content, words, tmp_path):
    path = tmp_path / "odd.toml"
    path.write_bytes(content)
    with pytest.raises(BadFile, match=re.escape("odd.toml: " + words)):
        building.load(path)


def test_a_huge_file_is_not_read_to_the_end(tmp_path):
    path = tmp_path / "huge.toml"
    with path.open("wb") as stream:
        stream.truncate(100_000_000)  # a hole: takes no room
    with pytest.raises(BadFile, match=r"huge\.toml: it is larger than 500000 bytes"):
        building.load(path)


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("missing.toml", "missing.toml: there is no such file."),
        (".", "it is a"),
        ("a\0b", "it cannot be read (the name is not one a file can have)."),
        ("n" * 5000, "it cannot be read (File name too long)."),
    ],
)
def test_a_path_that_is_no_file_gets_a_sentence(name, words, tmp_path):
    with pytest.raises(BadFile, match=re.escape(words)):
        building.load(f"{tmp_path}/{name}")


@pytest.mark.skipif(sys.platform == "win32", reason="no named pipes there")
def test_a_pipe_does_not_hang(tmp_path):
    os.mkfifo(tmp_path / "pipe.toml")
    with pytest.raises(BadFile, match=r"pipe.toml: it is not a file\."):
        building.load(tmp_path / "pipe.toml")


def test_a_typed_permeance_is_the_same_as_a_number():
    typed = assembly.parse(HEAD + "[[layer]]\nmembrane = { permeance = '0.7 perm' }")
    plain = assembly.parse(HEAD + f"[[layer]]\nmembrane = {{ permeance = {to_si(0.7, 'perm')!r} }}")
    assert typed == plain


def test_a_file_that_names_no_films_has_those_of_its_slope(tmp_path):
    """The tables of films by slope and wind; what a file names goes before them."""
    file = tmp_path / "roof.toml"
    for slope, inside in (("0 deg", 0.61), ("90 deg", 0.68)):
        file.write_text(HEAD + f'slope = "{slope}"\n' + BOARD, encoding="utf-8")
        roof = building.load(file)
        assert from_si(roof.interior_film, "R") == pytest.approx(inside)
        assert from_si(roof.exterior_film, "R") == pytest.approx(0.17)
    file.write_text(HEAD + 'interior_film = "R-0.92"\n' + BOARD, encoding="utf-8")
    assert from_si(building.load(file).interior_film, "R") == pytest.approx(0.92)
