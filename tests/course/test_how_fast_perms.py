"""Lesson 6: the page against resistances in a row, and its known numbers."""

import asked
import pytest
from lesson_page import check_replies, open_page, places

from dryward import units
from dryward.course.how_fast_perms import questions as how_fast_perms

ID = "how-fast-perms"
DRYWALL = units.to_si(1 / (1 / 40 + 1 / 7), "perm")


def go(page, **values):
    for name, value in values.items():
        page.controls[name].value = value


@pytest.mark.parametrize("system", ["us", "si"])
def test_every_place_is_the_physics(system, tmp_path):
    page = open_page(ID, tmp_path, system)
    for at in places(page):
        covered = 1 / (1 / DRYWALL + 1 / at.M_in)
        inner = (1 - at.Gap_share) * covered + at.Gap_share * DRYWALL
        together = 1 / (1 / inner + 1 / at.M_out)
        assert page.readouts["together"] == pytest.approx(together)
        assert page.readouts["flow"] == pytest.approx(together * at.dp_vapor)
        assert page.readouts["cut"] == pytest.approx(1 - inner / DRYWALL)
        assert page.show(together * at.dp_vapor, "vapor flux") in page.sentence
        assert ("missing" in page.sentence) == (at.Gap_share > 0)


def test_known_numbers(tmp_path):
    assert units.from_si(DRYWALL, "perm") == pytest.approx(5.96, rel=0.002)
    page = open_page(ID, tmp_path, "si")
    go(page, dp_vapor=650)
    one = page.state.push * units.to_si(1, "perm")
    assert units.from_si(one, "g/m2/day") == pytest.approx(3.2, rel=0.01)
    assert units.from_si(units.to_si(1, "perm") * 654, "gr/ft2/day") == pytest.approx(4.6, rel=0.01)
    page = open_page(ID, tmp_path)
    go(page, M_in=0.1, Gap_share=10)
    assert page.readouts["cut"] * 100 == pytest.approx(88, abs=1)
    go(page, Gap_share=20)
    assert units.from_si(DRYWALL * (1 - page.readouts["cut"]), "perm") == pytest.approx(1.27, rel=0.02)


@pytest.mark.parametrize(("perm", "word"), [(0.05, "Class I"), (0.7, "Class II"), (5, "Class III"), (20, "no class")])
def test_the_class_of_the_film(perm, word, tmp_path):
    page = open_page(ID, tmp_path)
    go(page, M_in=perm)
    assert next(each.text for each in page.readout_list if each.name == "class") == word


def test_what_rules(tmp_path):
    page = open_page(ID, tmp_path)
    for values, word in (
        ({"M_in": 0.5}, "film"),
        ({"M_in": 100}, "painted drywall"),
        ({"M_out": 0.1}, "outer sheet"),
    ):
        go(page, **values)
        assert next(each.text for each in page.readout_list if each.name == "rules") == word


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))


def test_the_arithmetic_has_no_powers_of_ten(tmp_path):
    page = open_page(ID, tmp_path, "si")
    for gap in (0, 20):
        go(page, Gap_share=gap)
        lines = " ".join(step.line for step in page.steps(page.state))
        assert "1/2860" in lines
        assert "e+" not in lines


def test_the_checks_with_their_fixed_numbers():
    kind, row, gap = asked.fixed("how-fast-perms")
    assert kind.answer == "Class II"
    assert round(row.answer, 2) == 0.46
    assert round(gap.answer, 1) == 88.5


def test_the_prediction_and_its_numbers():
    assert how_fast_perms.in_a_row(1, 1) == 0.5
