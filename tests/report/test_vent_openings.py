"""Vent openings in the reader's units, with the conditions of the code; the blower door as it was typed."""

import dataclasses

import pytest
from jobs_at_hand import OPEN

from dryward.building.job import Place, Tightness, Vent
from dryward.report import document, review
from dryward.report.sentences import for_inspector


def checked(low, high, **changes):
    changes = {"vent": Vent(5.0, low, high), "place": Place(zone="6"), **changes}
    return review(dataclasses.replace(OPEN, **changes), hourly=False)


@pytest.mark.parametrize(
    ("low", "high", "answer", "words"),
    [
        (0.02, 0.02, "met", "1/150 of the roof area is 15.7 in² per foot (333 cm² per meter) of eave; the openings"),
        (0.012, 0.010, "met", "between 1/300 and 1/150 of the roof area, which asks for both: a share of high vents"),
        (0.022, 0.001, "not met", "high vents: not met"),
        (0.001, 0.001, "not met", "Even 1/300 of the roof area is 7.87 in² per foot (167 cm² per meter) of eave;"),
    ],
)
def test_openings_are_told_by_the_foot_and_the_meter(low, high, answer, words):
    found = checked(low, high).check("vents")
    assert found.answer == answer
    assert words in found.why
    assert found.why.endswith(".")
    assert " m²" not in found.why
    between = "which asks for" in found.why
    assert between == ("taken as at the ridge: check on site." in found.why)


def test_the_number_is_in_the_readers_units():
    (number, _) = checked(0.012, 0.010).check("vents").numbers
    assert number.value == pytest.approx(0.022)
    assert document.amount(number, "us") == "10.4 in² per foot"
    assert document.amount(number, "si") == "220 cm² per meter"


def test_the_inspector_reads_the_conditions():
    assert "asks for both: a share of high vents" in for_inspector(checked(0.012, 0.010))[1]
    assert "asks for" not in for_inspector(checked(0.02, 0.02))[1]


@pytest.mark.parametrize(("ach50", "said"), [(3.04, "3.04"), (2.96, "2.96"), (12.0, "12"), (0.6, "0.6")])
def test_the_blower_door_is_not_rounded_onto_the_limit(ach50, said):
    found = checked(0.02, 0.02, tightness=Tightness(ach50))
    assert f"Blower door {said} air changes an hour at 50 Pa" in for_inspector(found)[2]
    assert dict(document.document(found).inputs)["Blower door"].startswith(f"{said} air changes an hour at 50 Pa, ")
