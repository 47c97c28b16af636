"""The origin that is printed is the value's own: what was not read never stands there as if it had been."""

import csv
import re
from importlib import resources

import pytest

from dryward import building
from dryward.building import AirSpace, Assembly, Layer, Material, library, membrane, preset
from dryward.building.assembly import load
from dryward.building.job import Job
from dryward.report import document, many, printed, review
from dryward.report.check import Check, Review
from dryward.verdict import unknown

TABLES = ("materials.csv", "sheets.csv", "air_spaces.csv")


def rows():
    """Every row of the library's tables, read here without the kit."""
    for name in TABLES:
        text = resources.files("dryward.building").joinpath("data", name).read_text(encoding="utf-8")
        yield from csv.DictReader(line for line in text.splitlines() if not line.startswith("#"))


ROWS = {row["id"]: row for row in rows()}
DOUBTED = {
    id: [words for words in ("from memory", "estimated") if words in row["how_read"]]
    for id, row in ROWS.items()
    if "from memory" in row["how_read"] or "estimated" in row["how_read"]
}


def alone(id):
    """An assembly of one library thing and a board."""
    thing = building.substance(id)
    board = Layer(building.material("gypsum-board"), 0.0127, "board")
    sheet_like = not isinstance(thing, (Material, AirSpace))
    return Assembly("one", [board, Layer(thing, None if sheet_like else 0.02, "asked")])


def test_there_are_many_and_polyethylene_and_felt_are_among_them():
    assert len(DOUBTED) > 60
    assert DOUBTED["polyethylene-6-mil"] == DOUBTED["asphalt-felt-15"] == ["from memory"]


@pytest.mark.parametrize("id", DOUBTED)
def test_what_was_not_read_says_so_long_and_short(id):
    thing = building.substance(id)
    for longest in (None, 60, 160):
        said = library.source_of(thing, longest)
        assert all(words in said for words in DOUBTED[id]), said
        assert longest is None or len(said) <= longest


@pytest.mark.parametrize("id", DOUBTED)
def test_it_says_so_in_the_report_and_in_the_json(id):
    judged = Check("twelve-months", "?", "not known yet", "", verdict=unknown("months"))
    found = Review(Job(alone(id)), (judged,))
    (told,) = (layer["source"] for layer in many.plain(found)["layers"] if layer["name"] == "asked")
    (printed,) = (each for each in document.sources(alone(id)) if re.match(r"(board, )?asked: ", each))
    for words in DOUBTED[id]:
        assert words in told
        assert words in printed


@pytest.mark.parametrize("id", ROWS)
def test_a_row_keeps_its_source_and_how_it_was_read(id):
    said, row = library.source_of(building.substance(id)), ROWS[id]
    assert said.startswith(row["source"])
    assert row["how_read"].removeprefix("invented for teaching: ").removeprefix("invented: ") in said
    assert not re.search(r"[,;] -", said)
    if "from memory" not in row["how_read"] and "memory" not in row["source"]:
        assert "from memory" not in said


def test_the_words_of_the_page_and_the_paper():
    built = preset("wood-frame-wall").replace("inner membrane", membrane("polyethylene-6-mil"))
    made = document.document(review(Job(built), hourly=False))
    (said,) = (each for each in made.sources if each.startswith("inner membrane: "))
    assert said.endswith("permeance table (from memory).")
    assert said in printed.html(made)


def test_a_value_of_ones_own_is_not_the_librarys(tmp_path):
    path = tmp_path / "own.toml"
    path.write_text(
        'name = "own"\nversion = 2\nformat = "dryward assembly"\n'
        '[[layer]]\nmaterial = "gypsum-board"\nthickness = "1/2 in"\nthermal_resistance = "R-0.5"\n'
        '[[layer]]\nmembrane = "polyethylene-6-mil"\npermeance = "0.3 perm"\n'
        '[[layer]]\nmaterial = "slate"\nthickness = "1/4 in"\n',
        encoding="utf-8",
    )
    board, poly, slate = (library.source_of(layer.substance) for layer in load(path).layers)
    assert "thermal resistance given with the layer; 50 perm at 3/8 in. read in" in board
    assert poly == "given with the layer"
    assert slate == library.source_of(library.substance("slate"))
    built = load(path)
    built.save(tmp_path / "again.toml")
    assert load(tmp_path / "again.toml") == built
