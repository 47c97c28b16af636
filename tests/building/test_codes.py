"""Code rules: verdicts, editions apart, and what is said when something is not known."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from dryward import language
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
    for name in (code_rows.LIMITS, code_rows.RETARDERS, code_rows.CLASS_2):
        for row in code_rows.table(name):
            assert row["section"], row["id"]
            assert row["edition"], row["id"]
            assert row["reading"] in ("quoted", "memory"), row["id"]
            assert "read" in row["how_read"] or "memory" in row["how_read"], row["id"]
            if row["reading"] == "quoted":
                assert "read" in row["how_read"], row["id"]
            else:
                assert "memory" in row["how_read"], row["id"]


def test_a_row_that_does_not_say_how_its_number_is_known_is_refused(monkeypatch):
    wrong = dict(code_rows.table(code_rows.CLASS_2)[0], reading="somewhere")
    monkeypatch.setattr(code_rows.schema, "rows", lambda name, columns: [wrong])
    with pytest.raises(BadFile, match="row 2021-3: reading must be quoted or memory"):
        code_rows.table.__wrapped__(code_rows.CLASS_2)


@pytest.mark.parametrize("table", [code_rows.LIMITS, code_rows.RETARDERS, code_rows.CLASS_2, code_rows.UNREAD])
def test_a_row_of_an_edition_that_nobody_can_ask_for_is_refused(table, monkeypatch):
    row = next(row for row in code_rows.table(table) if row["source"].startswith("International"))
    monkeypatch.setattr(code_rows.schema, "rows", lambda name, columns: [dict(row, edition="2021 to 2027")])
    with pytest.raises(BadFile, match=f"row {row['id']}: 2027 is no edition; EDITIONS are"):
        code_rows.table.__wrapped__(table)


def test_every_edition_that_may_be_asked_for_has_a_row():
    named = {int(year) for row in code_rows.table(code_rows.LIMITS) for year in re.findall(r"\d{4}", row["edition"])}
    for edition in codes.EDITIONS:
        assert any(code_rows.of_edition(row, edition) for row in code_rows.table(code_rows.LIMITS)), edition
    assert {min(codes.EDITIONS), max(codes.EDITIONS)} <= named


def test_a_number_that_a_rule_does_not_ask_for_is_refused_or_the_callers():
    assert codes.required("unvented-insulation-tile", zone="6", otherwise=None) is None
    with pytest.raises(UnknownName, match='There is no number of the code rule "unvented-insulation-tile"'):
        codes.required("unvented-insulation-tile", zone="6")


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
    assert codes.judge("retarder", zone="1", edition="2012 to 2018", permeance=1e-12).answer == "met"
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
    assert codes.judge("retarder", zone="1", **facts).answer == "met"
    assert "opens to more than 1 perm in the wet cup" in codes.judge("retarder", zone="1", **facts).why
    assert codes.judge("retarder", zone="6", outer_permeance=1e-12, **facts).answer == "met"
    facts["responsive"] = False
    assert codes.judge("retarder", zone="1", **facts).answer == "not met"
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
    without = codes.unvented_roof("6", resistance=0.0)
    assert [(each.rule, each.answer) for each in without] == [
        ("unvented-insulation", "not met"),
        ("unvented-inner-class", "cannot tell"),
    ], "the class of an insulation that is not there is not asked"
    assert codes.unvented_roof("2B", resistance=0.0, tile=True)[0].answer == "met"
    assert codes.unvented_roof("6", resistance=0.0, tile=True)[0].answer == "not met"


#: Section of the retarder and of the unvented roof by edition; evidence/data/codes.csv says where each was read.
SECTIONS = {
    2006: ("R318.1 and N1102.5", ""),
    2009: ("R601.3 and R601.3.1", "R806.4, Table R806.4"),
    2012: ("R702.7 and R702.7.1", "R806.5, Table R806.5"),
    2015: ("R702.7 and R702.7.1", "R806.5, Table R806.5"),
    2018: ("R702.7 and R702.7.1", "R806.5, Table R806.5"),
    2021: ("R702.7, Tables R702.7(2) and (3)", "R806.5, Table R806.5"),
}


@pytest.mark.parametrize("edition", SECTIONS)
def test_a_row_cites_the_section_of_its_edition(edition):
    wall = codes.judge("retarder", zone="6", edition=edition, permeance=to_si(0.7, "perm"))
    roof = codes.judge("unvented-insulation", zone="6", edition=edition, value=to_si(30, "R"))
    assert (wall.section, roof.section) == SECTIONS[edition]
    assert wall.answer == "met"
    assert wall.instead == roof.instead == ""
    assert SECTIONS[edition][0] in wall.words
    assert roof.answer == ("met" if roof.section else "cannot tell")


ROOF_AND_WALL = ("retarder", "class-2-insulation", "vent-area", "vent-opening", "vent-air-space", "unvented-insulation",
                 "unvented-insulation-tile", "unvented-shingle-gap", "unvented-class-2", "unvented-inner-class",
                 "unvented-deck-temperature", "diffusion-port-area", "crawl-vent")  # fmt: skip
FACTS = {
    "retarder": {"permeance": 4e-11},
    "class-2-insulation": {"wall": "2x6", "exterior_insulation": 1.0},
    "vent-area": {"vented_area": AREA, "free_area": AREA / 100},
}


@pytest.mark.parametrize("rule", ROOF_AND_WALL)
def test_an_edition_that_was_not_read_says_so_and_shows_another(rule):
    facts = FACTS.get(rule, {"value": 0.02})
    shown = codes.judge(rule, zone="2B", edition=2021, **facts)
    asked = codes.judge(rule, zone="2B", edition=2024, **facts)
    assert (asked.answer, asked.why, asked.edition) == (shown.answer, shown.why, shown.edition)
    assert asked.instead == "2024 was not read, so this is the row of 2021"
    assert asked.words.partition(": ")[2].startswith("2024 was not read, so this is the row of 2021: ")
    assert re.search(r"could not be read", asked.how_read)
    assert shown.instead == ""


def test_what_came_later_has_no_row_before():
    for rule, edition in (("diffusion-port-area", 2015), ("class-2-insulation", 2018), ("unvented-insulation", 2006)):
        verdict = codes.judge(rule, zone="2", edition=edition, **FACTS.get(rule, {"value": 1.0}))
        assert (verdict.answer, verdict.why) == ("cannot tell", f"there is no row for the edition {edition}")
        assert codes.judge(rule, zone="2B", **FACTS.get(rule, {"value": 1.0})).section


def test_an_edition_is_only_called_unread_where_it_has_no_row():
    for row in code_rows.table(code_rows.UNREAD):
        rule = row["rule"]
        assert "could not be read" in row["how_read"] or "only the number of the section was read" in row["how_read"]
        if rule:
            year = int(row["edition"])
            assert code_rows.unread(rule, codes._all(rule), year) == row
            assert codes.judge(rule, zone="6", edition=row["shown"], value=1.0, **FACTS.get(rule, {})).section


@pytest.mark.parametrize("rule", [each for each in codes.rules() if each != "retarder-class"])
def test_without_an_edition_the_newest_that_was_read_is_used(rule):
    zone, facts = "2B", FACTS.get(rule, {"value": 1.0})
    newest = codes.judge(rule, zone=zone, **facts)
    rows = codes._all(rule)
    read = [row["edition"] for row in rows if row["reading"] == "quoted"]
    recalled = {row["edition"] for row in rows if row["reading"] == "memory"}
    whole = [edition for edition in read if edition not in recalled]
    assert newest.edition == (whole or [rows[0]["edition"]])[0]


def test_a_number_from_memory_is_not_the_default():
    assert codes.required("airtightness", zone="2", edition=2024) == pytest.approx(4 / 3600)
    assert codes.judge("airtightness", zone="2", edition=2024, value=1e-3).how_read == "from memory"
    assert codes.judge("airtightness", zone="6", value=1e-3).edition == "2021"
    assert codes.required("vent-air-space", edition=2024) == codes.required("vent-air-space")


def test_a_tight_film_in_zone_4():
    """Class I inside is not permitted in zones 1 to 4, marine 4 apart: Virginia Construction Code 2021, 1404.3(2)."""
    tight = to_si(0.06, "perm")
    for zone in ("1", "2", "3", "4", "4A", "4B"):
        assert codes.judge("retarder", zone=zone, permeance=tight).answer == "not met", zone
    for zone in ("4C", "marine 4", "5", "6", "7", "8"):
        assert codes.judge("retarder", zone=zone, permeance=tight).answer == "met", zone
    for edition in (2006, 2009, 2015, 2018):
        assert codes.judge("retarder", zone="4A", edition=edition, permeance=tight).answer == "met", edition


def test_texts_that_differ_are_not_decided_here():
    facts = {"zone": "4", "permeance": to_si(7, "perm"), "wall": "2x6"}
    short = codes.judge("retarder", **facts, exterior_insulation=to_si(3.5, "R"))
    assert short.answer == "cannot tell"
    assert "the texts of this edition differ on whether zone 4 asks for it" in short.why
    assert codes.judge("retarder", **facts, exterior_insulation=to_si(3.75, "R")).answer == "met"
    assert codes.judge("retarder", **facts, vented_cladding_over="gypsum").answer == "met"
    assert codes.judge("retarder", edition=2018, **facts).answer == "met"


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
        (lambda: codes.judge("retarder", zone="6", permeance=-1.0), OutOfRange, "Permeance is −1 kg/"),
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
        (lambda: codes.judge("vent-area", vented_area=10, free_area=-1.0), OutOfRange, "Net free area is −1 m²"),
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


def test_rows_that_say_the_same_ask_for_the_same_number():
    """The words of a row hold its number; two rows with the same words and another number would say what is not so."""
    asked = {}
    for row in code_rows.table(code_rows.LIMITS):
        if row["asks"]:
            number = tuple(row[key] for key in ("relation", "value", "high", "unit"))
            asked.setdefault(row["asks"], []).append((row["id"], number))
    for words, rows in asked.items():
        told = language.message(f"codes.asks-{words}", value="$value")
        assert "$value" in told or len({number for _, number in rows}) == 1, f"{words}: {rows}"
