"""A verdict in another language: no word of it stands in the code."""

import itertools
import math
from dataclasses import replace

import pytest

import made_up
from dryward import verdict
from dryward.language import message
from dryward.verdict import STATES, UNKNOWN, Decides, Finding, Place, words
from dryward.verdict.findings import verdict as of_findings

ROWS = verdict.criteria()
#: What a user named.
OWN = ("Dielung", "Dämmung")
PLACES = (
    Place(),
    Place("Dielung"),
    Place("Dielung", "inner", "Dämmung"),
    Place("Dielung", "inner", "room air"),
    Place("Dielung", "outer", "outdoor air"),
    Place("Dielung", "outer", "inner membrane"),
)


@pytest.fixture
def elsewhere():
    """The made-up language."""
    with made_up.spoken():
        yield


def findings(row):
    """One finding of each kind that its row can have, with the method it comes from."""
    for place, share, (method, lasted, when, if_it_lasted) in itertools.product(
        PLACES,
        (0.5, 1.0, 9.0),
        (
            ("year", 0.0, 5, False), ("year", 5.0, 5, False), ("year", 24.0, 5, False), ("year", 8760.0, 5, False),
            ("months", 0.0, 2, False), ("months", 3.0, 2, True), ("months", 0.0, 2, True),
            ("steady", None, None, False),
        ),
    ):  # fmt: skip
        value = share * row.caution
        one = Finding(row.id, place, value, row, row.state(value), lasted, when, if_it_lasted=if_it_lasted)
        yield method, one
        yield method, replace(one, frost=True, ran_off=0.1 * value)
        yield method, replace(one, full=True, ran_off=value)


@pytest.mark.parametrize("id", ROWS)
def test_every_finding_speaks_another_language(elsewhere, id):
    for method, one in findings(ROWS[id]):
        judged = of_findings(method, [one])
        for system in ("us", "si", None):
            for said in (
                words.sentence(judged, system), words.heading(one), words.limit_of(one),
                words.shown_when(one, method, system),
            ):  # fmt: skip
                assert made_up.unmarked(said, OWN) == [], said


def test_all_parts_of_a_verdict_speak_another_language(elsewhere):
    deck = Finding("wood-moisture", PLACES[1], 30.0, ROWS["wood-moisture"], "wet", 30.0, 3)
    ends = [
        Decides("Dielung", what, 0.0, 40.0, states)
        for what in ("conductivity", "permeance", "sorption", "leak", "long share")
        for states in (("dry", "wet"), ("wet", "wet"), ("damp", "wet"), ("damp", "damp"))
    ]
    left_out = ("rain", "framing", "leak", "storage", "time", "sun")
    for dries, toward, repeats, known in itertools.product(
        ("within the year", "later", "not", None),
        ("inward", "outward", "both ways", None),
        (True, False),
        (True, False),
    ):
        judged = of_findings(
            "year", [deck] if known else [], dries=dries, toward=toward, repeats=repeats, left_out=left_out
        )
        said = [words.sentence(judged), words.left_out(judged)]
        said += [words.decides(judged.deciding(each), "si") for each in ends]
        for each in said:
            assert each
            assert made_up.unmarked(each, OWN) == [], each
    for state in (*STATES, UNKNOWN):
        assert made_up.unmarked(f"{message('verdict.head', state=state)}{message('verdict.state', state=state)}") == []
    assert made_up.unmarked(words.sentence(verdict.unknown("year"))) == []
    assert made_up.unmarked("".join(words.month_of(hour) for hour in range(0, 8760, 24))) == []
    none = replace(deck, what="vent-share", value=math.inf, criterion=ROWS["vent-share"])
    assert made_up.unmarked(words.told(none, "vent")) == []


def test_an_error_speaks_another_language(elsewhere):
    for judge in (verdict.of_year, verdict.of_months, verdict.of_steady):
        with pytest.raises(ValueError, match="⟦") as refused:
            judge("Dach")
        assert made_up.unmarked(str(refused.value), (*OWN, "Dach")) == []


def test_words_follow_the_language_at_once():
    deck = of_findings("year", [Finding("wood-moisture", PLACES[1], 30.0, ROWS["wood-moisture"], "wet", 30.0, 3)])
    before = words.sentence(deck)
    with made_up.spoken():
        assert made_up.unmarked(before)
        assert words.sentence(deck) != before
    assert words.sentence(deck) == before


def test_what_the_vent_air_cannot_carry_at_all_is_told():
    row = ROWS["vent-share"]
    none = Finding("vent-share", Place(), math.inf, row, row.state(math.inf))
    assert words.told(none, "vent") == "water comes, and the vent air can carry none of it"
