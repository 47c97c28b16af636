"""Lesson 6: the page against resistances in a row, and its known numbers."""

import dataclasses
import re
from tempfile import TemporaryDirectory

import asked
import pytest
from lesson_page import check_replies, first_visit, open_page, places

from dryward import units
from dryward.building import FixedMembrane, Layer, library, preset
from dryward.course.how_fast_perms import beats
from dryward.course.how_fast_perms.shelf import SHELF
from dryward.physics import steady
from dryward.teaching import questions
from dryward.units import from_si, to_si

ID = "how-fast-perms"
BELIEFS = "label-perm-is-the-perm", "any-underlayment-breathes"
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
        together = 1 / (1 / inner + 1 / SHELF[at.Outer].permeance)
        assert page.readouts["together"] == pytest.approx(together)
        assert page.readouts["flow"] == pytest.approx(together * at.dp_vapor)
        bare = 1 / (1 / DRYWALL + 1 / SHELF[at.Outer].permeance)
        assert page.readouts["cut"] == pytest.approx(1 - together / bare)
        if at.Gap_share > 0:
            assert page.show(bare * at.dp_vapor, "vapor flux") in page.sentence
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
    go(page, M_in=0.1, Gap_share=10, Outer="open-sheet")
    assert page.readouts["cut"] * 100 == pytest.approx(88, abs=1)
    go(page, Gap_share=20)
    assert units.from_si(page.state.inner, "perm") == pytest.approx(1.27, rel=0.02)


@pytest.mark.parametrize(("perm", "word"), [(0.05, "Class I"), (0.7, "Class II"), (5, "Class III"), (20, "no class")])
def test_the_class_of_the_film(perm, word, tmp_path):
    page = open_page(ID, tmp_path)
    go(page, M_in=perm)
    assert next(each.text for each in page.readout_list if each.name == "class") == word


def test_what_rules(tmp_path):
    page = open_page(ID, tmp_path)
    for values, word in (
        ({"M_in": 0.5, "Outer": "one-perm"}, "film"),
        ({"M_in": 100, "Outer": "open-sheet"}, "painted drywall"),
        ({"Outer": "synthetic"}, "outer layer"),
    ):
        go(page, **values)
        assert next(each.text for each in page.readout_list if each.name == "rules") == word


def test_checks_reply(tmp_path):
    check_replies(open_page(ID, tmp_path))


def test_the_arithmetic_has_no_powers_of_ten(tmp_path):
    page = open_page(ID, tmp_path, "si")
    for gap in (0, 20):
        go(page, Gap_share=gap, Outer="open-sheet")
        lines = " ".join(step.line for step in page.steps(page.state))
        assert "1/2860" in lines
        assert "e+" not in lines


def test_the_checks_with_their_fixed_numbers():
    kind, row, gap, label, roll = asked.fixed(ID)
    assert kind.answer == "Class II"
    assert round(row.answer, 2) == 0.46
    assert round(gap.answer, 1) == 88.5
    assert label.answer == "1.8 perm, its wet-cup number."
    assert {each.belief for each in label.choices} == {"", "label-perm-is-the-perm", "middle-of-the-curve"}
    assert "none did" in roll.answer


def test_the_labels_of_the_shelf_are_the_librarys_own_cups(tmp_path):
    """What an option of the page says of its perms, in both unit systems, and by which cup."""
    for system, pattern in (("us", r"([\d.]+) perm"), ("si", r"sd ([\d.]+) m")):
        for id, words in zip(SHELF, open_page(ID, tmp_path, system).controls["Outer"].frame()["options"], strict=True):
            (number,) = re.findall(pattern, str(words))
            known = library.substance(SHELF[id].row)
            humidity = 0.75 if id.endswith("wet") else 0.25
            if hasattr(known, "permeability_at"):
                is_so = known.permeability_at(humidity) / to_si(0.4375, "in")
            else:
                is_so = known.permeance(humidity, humidity)
            unit = "perm" if system == "us" else "sd m"
            assert from_si(is_so, unit) == pytest.approx(float(number), rel=0.025), (id, words)


def test_a_row_is_tighter_than_its_tightest(tmp_path):
    """The first beat: the flow of the page against its own arithmetic, and where each guess stands on the scale."""
    page = first_visit(ID, tmp_path)
    (state,) = page.stage.states
    perms = [1 / (1 / 40 + 1 / 7), 1.0, 1.0]
    known = 1 / sum(1 / each for each in perms)
    assert from_si(state.flow / state.push, "perm") == pytest.approx(known, rel=1e-9)
    assert known < min(perms)
    (bet,) = page.stage.beats[0].bets
    said = {key: from_si(each, "perm") for key, each in beats.guesses(state).items()}
    assert said == pytest.approx({"a": sum(perms), "b": 1.0, "c": known, "d": sum(perms) / 3})
    for spot in bet.spots:
        there = beats.row.on_scale(to_si(said[spot.key], "perm"))
        assert spot.at[2] == pytest.approx(there[2], abs=0.01)


def test_a_throat_is_as_open_as_its_perms():
    assert beats.row.opening(to_si(2.0, "perm")) == pytest.approx(2 * beats.row.opening(to_si(1.0, "perm")))
    assert beats.row.opening(to_si(50.0, "perm")) == 1


def test_a_tenth_missing_leaves_most_of_the_film_at_work():
    drywall, outer = 1 / (1 / 40 + 1 / 7), 50.0
    for film in (0.5, 1.0, 1.5):
        inner = 0.9 / (1 / drywall + 1 / film) + 0.1 * drywall
        cut = 1 - (1 / (1 / inner + 1 / outer)) / (1 / (1 / drywall + 1 / outer))
        state = page_of(M_in=film, Outer="open-sheet", Gap_share=10)
        assert beats.held_back(state) == pytest.approx(cut)
        assert 0.6 < cut < 0.85


def page_of(**values):
    """A state of the page."""
    with TemporaryDirectory() as folder:
        page = open_page(ID, folder)
        go(page, **values)
        page.refresh()
        return page.state


def gain(deck, roll, film, cold):
    """What gathers in the vault with a deck of the library, straight from the steady state [g/m2/day]."""
    built = preset("vented-vault-osb").replace("inner membrane", FixedMembrane(to_si(film, "perm")))
    layers = list(built.layers)
    at = built.index("outer layer")
    layers[at] = Layer(library.material(deck), to_si(0.4375, "in"), "outer layer")
    if roll:
        layers.insert(at + 1, Layer(library.membrane(roll), None, "roll"))
    state = steady.profile(
        dataclasses.replace(built, layers=tuple(layers)), asked.outside(70, 40), asked.outside(cold, 80)
    )
    return from_si(state.gain, "g/m2/day")


def test_two_stamps_of_one_class_end_opposite(tmp_path):
    """Plywood stays without frost and OSB does not, near the beat's film and day too; by the stamps both get it."""
    page = open_page(ID, tmp_path)
    page.hear({"kind": "beat", "number": 2})
    cup = page.stage.beat
    assert [bet.right(page.stage.states) for bet in cup.bets] == ["none", "frost"]
    plywood, osb = (beats.decks.of(each) for each in page.stage.states)
    assert (
        from_si(osb.profile.gain, "g/m2/day")
        == pytest.approx(gain("osb", "", 1.0, 20))
        == pytest.approx(1.41, rel=0.01)
    )
    assert plywood.profile.gain == 0
    for film, cold in ((0.8, 20), (1.1, 20), (1.0, 18), (1.0, 24)):
        assert gain("plywood", "", film, cold) == 0
        assert gain("osb", "", film, cold) > 0.5
    for each in page.stage.states:
        assert 2.0 < from_si(beats.by_the_stamp(each.film, each.thing).gain, "g/m2/day") < 2.2
    assert plywood.deck / SHELF["plywood-dry"].permeance == pytest.approx(10, rel=0.01)


def test_two_rolls_that_look_alike_end_opposite(tmp_path):
    page = open_page(ID, tmp_path)
    page.hear({"kind": "beat", "number": 3})
    rolls = page.stage.beat
    assert [bet.right(page.stage.states) for bet in rolls.bets] == ["none", "frost"]
    for film in (0.3, 0.5, 0.8):
        assert gain("plywood", "asphalt-felt-15", film, 30) == 0
        for roll in ("synthetic-underlayment", "self-adhered-underlayment"):
            assert gain("plywood", roll, film, 30) > 0.5
    found = beats.decks.of(page.stage.states[1])
    assert from_si(found.profile.gain, "g/m2/day") == pytest.approx(gain("plywood", "synthetic-underlayment", 0.5, 30))


@pytest.mark.parametrize("seed", range(8))
def test_each_draw_offers_the_belief_itself(seed):
    """The two beliefs of the lesson are a wrong answer of a check in every draw, in their own words."""
    label, roll = questions.checks(ID, seed)[3:]
    assert "It says so on the label" in next(each.text for each in label.choices if each.belief == BELIEFS[0])
    assert "Underlayment is underlayment" in next(each.text for each in roll.choices if each.belief == BELIEFS[1])
