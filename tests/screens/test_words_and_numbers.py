"""What the words of a lesson say in numbers is what its page shows, on the same page."""

import pytest
from lesson_page import open_page

from dryward.teaching import lessons, words


def said(id):
    """The words of a lesson that name numbers, for a reader of US units."""
    lesson = lessons.lesson(id)
    return words.shown(" ".join((lesson.prediction.prompt, lesson.prediction.reveal, *lesson.limits)), "us")


def shown(tmp_path, id, **at):
    """Readouts of a page as they are printed: name -> text."""
    page = open_page(id, tmp_path)
    for name, value in at.items():
        page.controls[name].value = value
    return {each.name: each.shown("us")["value"] for each in page.readout_list}


@pytest.mark.parametrize(
    ("id", "at", "readout", "as_said"),
    [
        ("read-the-air", {"T": 70, "RH": 30}, "vapor_pressure", "0.222 in. Hg"),
        ("which-way-vapor-goes", {"RH_in": 35, "RH_out": 90}, "inside", "0.259 in. Hg"),
        ("open-out-tight-in", {}, "gain", "2.7 gr/ft² day"),
        ("july", {}, "push", "0.473 in. Hg"),
        ("the-hole-and-the-ceiling", {}, "carried", "69 lb"),
        ("the-hole-and-the-ceiling", {}, "stays", "6.9 lb"),
        ("the-hole-and-the-ceiling", {}, "by_vapor", "18.9 lb"),
        ("vent-space", {"Gap": 1}, "power", "36.2 gr/ft² day"),
        ("vent-space", {"Gap": 2}, "power", "72.4 gr/ft² day"),
        ("vent-space", {}, "load", "179 gr/ft² day"),
        ("vent-space", {"Leak": "leaky-and-pulled"}, "load", "232 gr/ft² day"),
    ],
)
def test_the_words_name_the_number_of_the_page(tmp_path, id, at, readout, as_said):
    assert as_said in said(id)
    number, unit = as_said.split(" ", 1)
    there, its_unit = shown(tmp_path, id, **at)[readout].split(" ", 1)
    assert (float(there), its_unit) == (pytest.approx(float(number), rel=0.003), unit)


def test_the_film_in_the_two_seasons(tmp_path):
    told = said("the-film-that-changes")
    for at in ({"Weather": "summer", "RH_in": 40}, {"Weather": "winter", "RH_in": 40}):
        found = shown(tmp_path, "the-film-that-changes", **at)
        assert f"{found['inside_face']} and {found['outside_face']}" in told
        assert f"{float(found['permeance'].split()[0]):.1f} perm" in told


def test_a_film_pushed_into_the_cold(tmp_path):
    found = shown(tmp_path, "inside-the-film", R_in=22)
    told = said("inside-the-film")
    assert found["inside_face"] in told
    assert f"{float(found['permeance'].split()[0]):.1f} perm" in told
    assert found["gain"] != "0 gr/ft² day"


@pytest.mark.parametrize("id", [each.id for each in lessons.lessons()])
def test_no_number_is_rounded_to_nothing(id):
    """A small number in the other unit must not read as zero, such as "1 Pa (0.000 in. Hg)"."""
    assert "(0.000" not in said(id)
