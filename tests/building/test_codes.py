"""Code rules: verdicts, editions apart, and what is said when something is not known."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryward.building import code_rows, codes
from dryward.checks import BadFile, OutOfRange, UnknownName
from dryward.units import to_si

AREA = to_si(1200, "ft2")


def test_every_verdict_says_who_decides_and_how_the_rule_was_read():
    for rule in codes.rules():
        words = codes.judge(rule, zone="6", value=0.5).words if rule not in codes._TOGETHER else None
        words = words or codes.judge(rule, zone="6").words
        assert "as adopted locally; the building official decides" in words
        assert re.match(r"(Met|Not met|Cannot tell): ", words)


def test_every_row_names_its_section_edition_and_reading():
    for name in ("codes/limits.csv", "codes/retarders.csv", "codes/class_2_insulation.csv"):
        for row in code_rows.table(name):
            assert row["section"], row["id"]
            assert row["edition"], row["id"]
            assert "read" in row["how_read"] or "memory" in row["how_read"], row["id"]


def test_what_is_not_given_cannot_be_told():
    assert codes.judge("vent-air-space").why == "the air space between insulation and sheathing must be known"
    assert codes.judge("unvented-insulation", value=5.0).why == "the climate zone must be known"
    assert codes.judge("vent-area", zone="6").why == "the vented area and the net free area must both be known"
    assert codes.judge("retarder").why == "the climate zone and the dry-cup permeance must both be known"
    assert codes.judge("retarder", zone="6").why == "the dry-cup permeance must be known"
    assert codes.judge("retarder", permeance=1e-11).why == "the climate zone must be known"
    assert (
        codes.judge("class-2-insulation", zone="6").why == "the wall (2x4 or 2x6) and the R outside must both be known"
    )
    conditional = codes.judge("retarder", zone="6", permeance=to_si(7, "perm"), exterior_insulation=1.0).why
    assert conditional.endswith("not known: the wall (2x4 or 2x6), the cladding")
    for rule in ("vent-air-space", "unvented-insulation", "vent-area", "retarder", "class-2-insulation"):
        assert codes.judge(rule).answer == "cannot tell"


def test_an_edition_that_is_not_known_cannot_be_told():
    for rule in codes.rules():
        verdict = codes.judge(rule, zone="6", edition=1890, value=1.0) if rule not in codes._TOGETHER else None
        verdict = verdict or codes.judge(rule, zone="6", edition=1890)
        assert verdict.answer == "cannot tell"
        assert verdict.why == "there is no row for the edition 1890"


def test_editions_differ():
    facts = {"vented_area": AREA, "free_area": AREA / 300, "upper_share": 0.3, "permeance": to_si(0.7, "perm")}
    assert codes.judge("vent-area", zone="6", edition=2006, **facts).answer == "met"
    assert codes.judge("vent-area", zone="6", edition=2015, **facts).answer == "not met"
    assert codes.judge("vent-area", zone="6", edition=2021, **facts).edition == "2012 to 2021"
    assert codes.judge("retarder", zone="1", edition="2009 to 2018", permeance=1e-12).answer == "met"
    assert codes.judge("retarder", zone="1", permeance=1e-12).answer == "not met", "the newest without a year"


def test_the_reason_has_the_numbers():
    low = codes.judge("unvented-insulation", zone="6A", value=to_si(20, "R"))
    assert low.answer == "not met"
    assert low.why == "R of the air-impermeable insulation R-20; the rule: at least R-25 of air-impermeable insulation"
    assert low.words.startswith("Not met: ")
    assert "Table R806.5" in low.words
    wall = codes.judge(
        "retarder", zone="6", permeance=to_si(7, "perm"), wall="2x6", exterior_insulation=to_si(7.5, "R")
    )
    asked = "in zone 6 on a 2x6 wall asks for R-11.25 outside; there is R-7.5"
    assert wall.why == f"7 perm (0.499 m sd), class III, {asked}"


def test_no_insulation_outside_is_not_the_same_as_not_known():
    facts = {"permeance": to_si(7, "perm"), "wall": "2x6"}
    assert codes.judge("retarder", zone="5", **facts).answer == "cannot tell"
    assert codes.judge("retarder", zone="5", **facts, exterior_insulation=0.0).answer == "not met"
    assert codes.judge("retarder", zone="5", **facts, vented_cladding_over="none").answer == "not met"


def test_no_retarder_at_all():
    open_wall = to_si(30, "perm")
    assert codes.judge("retarder", zone="6", permeance=open_wall).answer == "not met"
    assert codes.judge("retarder", zone="3", permeance=open_wall).answer == "met"


def test_a_responsive_retarder():
    facts = {"permeance": to_si(0.06, "perm"), "responsive": True}
    assert codes.judge("retarder", zone="1", **facts).answer == "cannot tell"
    assert codes.judge("retarder", zone="6", outer_permeance=1e-12, **facts).answer == "met"
    facts["responsive"] = False
    assert codes.judge("retarder", zone="6", outer_permeance=1e-12, **facts).answer == "not met"


def test_a_zone_without_a_row():
    assert codes.judge("retarder", zone="0", permeance=1e-12).answer == "cannot tell"
    assert codes.judge("class-2-insulation", zone="1", wall="2x4", exterior_insulation=1.0).answer == "cannot tell"
    assert codes.judge("airtightness", zone="0", edition=2015, value=0.001).why == "no row names zone 0"
    assert codes.judge("unvented-class-2", zone="3", value=1e-9).why == "not asked in zone 3"
    assert codes.judge("diffusion-port-slope", zone="6", value=4).why == "not allowed in zone 6"


def test_the_unvented_roof_is_all_its_conditions():
    found = codes.unvented_roof(
        "6",
        resistance=to_si(25, "R"),
        inner_permeance=to_si(7, "perm"),
        foam_permeance=to_si(0.9, "perm"),
        shingle_gap=to_si(0.25, "in"),
    )
    assert [each.rule for each in found] == [
        "unvented-insulation",
        "unvented-inner-class",
        "unvented-class-2",
        "unvented-shingle-gap",
    ]
    assert {each.answer for each in found} == {"met"}
    assert {each.answer for each in codes.unvented_roof("6")} == {"cannot tell"}


@given(st.floats(0.0, 6e-7))
def test_a_tighter_retarder_is_never_of_a_more_open_class(permeance):
    order = ["I", "II", "III", "none"]
    tighter = codes.retarder_class(permeance / 2)
    assert order.index(tighter) <= order.index(codes.retarder_class(permeance))


@given(st.floats(0.0, 20.0), st.floats(0.0, 0.6), st.sampled_from(["2", "5", "6", "8"]))
def test_more_vent_area_never_fails_what_less_passed(free, share, zone):
    facts = {"vented_area": AREA, "upper_share": share, "upper_depth": 0.5, "permeance": 1e-12, "zone": zone}
    less, more = (codes.judge("vent-area", free_area=area, **facts).answer for area in (free, free * 1.5))
    assert (less, more) != ("met", "not met")


@pytest.mark.parametrize(("temperature", "limit"), [(0, 0.95), (15, 0.905), (30, 0.86)])
def test_pore_humidity_of_wood(temperature, limit):
    assert codes.wood_pore_humidity_limit(temperature) == pytest.approx(limit)


@pytest.mark.parametrize(
    ("call", "error", "words"),
    [
        (lambda: codes.judge("vent-aria"), UnknownName, 'no code rule "vent-aria"; did you mean vent-area'),
        (lambda: codes.required("vent"), UnknownName, 'There is no code rule "vent"'),
        (lambda: codes.judge("retarder", colour=3), UnknownName, 'There is no fact "colour"'),
        (lambda: codes.judge("airtightness", zone="12", value=3), UnknownName, 'no climate zone "12"'),
        (lambda: codes.judge("retarder", zone="6", permeance=-1.0), OutOfRange, "Permeance is -1 kg/"),
        (
            lambda: codes.judge("retarder", zone="6", permeance=4e-10, wall="2x8", exterior_insulation=1.0),
            UnknownName,
            'no wall "2x8"',
        ),
        (
            lambda: codes.judge("class-2-insulation", zone="6", wall="3x4", exterior_insulation=1.0),
            UnknownName,
            'no wall "3x4"; did you mean 2x4',
        ),
        (lambda: codes.judge("vent-area", vented_area=0.0, free_area=1.0), OutOfRange, "Vented area is 0 m²"),
        (lambda: codes.judge("vent-area", vented_area=10, free_area=-1.0), OutOfRange, "Net free area is -1 m²"),
        (
            lambda: codes.judge("vent-area", zone="6", vented_area=10, free_area=0.05, upper_share=1.5),
            OutOfRange,
            "Share of high vents is 150 %",
        ),
        (lambda: codes.judge("mold-index", value=float("nan")), OutOfRange, "mold index is not a number"),
        (lambda: codes.wood_pore_humidity_limit(40.0), OutOfRange, "Wood temperature is 40 °C"),
        (lambda: code_rows.amount({"id": "a", "value": "many"}), BadFile, "row a: 'many' is not a number"),
        (lambda: code_rows.amount({"id": "a", "value": "1/0"}), BadFile, "row a: '1/0' is not a number"),
    ],
)
def test_bad_questions_get_a_sentence(call, error, words):
    with pytest.raises(error, match=re.escape(words)):
        call()
