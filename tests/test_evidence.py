"""The tables of published values: complete, with a source on every row, and no row left out."""

import re
from pathlib import Path

import pytest

from dryward import evidence
from dryward.checks import BadFile, UnknownName
from dryward.evidence import Check, table
from dryward.evidence.examples import example
from dryward.evidence.table import OWN

HEAD = "id,quantity,what,expected,tolerance,unit,source,where,how_read"
ROW = "a,half,half of 3,1.5,0.01,m,arithmetic,page 1,by hand"


@pytest.mark.parametrize("topic", evidence.topics())
def test_what_the_kit_made_up_is_not_counted_as_outside(topic):
    """Whatever row says that it was invented, or that its source is the kit, is the kit's own."""
    kits = re.compile(r"invented|teaching|\b(of|by|in) (the|this) kit\b|\b(the|this) kit's\b", re.IGNORECASE)
    for row in evidence.read(topic):
        own = kits.search(row.text("source")) or re.search(r"invented|the kit's own", row.text("how_read"))
        assert (row.reading == OWN) == bool(own), row.id
        assert row.check("x" if isinstance(row.expected, str) else 0.0).reading == row.reading


@pytest.mark.parametrize("topic", evidence.topics())
def test_what_is_counted_as_read_says_read(topic):
    for row in evidence.read(topic):
        if row.reading == "read":
            assert re.search(r"\bread\b|\bby definition\b|\bprinted\b", row.text("how_read")), row.id


def test_the_words_that_make_a_row_the_kits_own():
    for source, how in (
        ("Teaching curve of the kit", "worked by hand"),
        ("Invented for teaching", "-"),
        ("the kit's own example", "computed by hand"),
        ("arithmetic", "invented; computed by hand"),
    ):
        assert Check("a", "b", source, "-", how, 1.0, 1.0, 0.1, "").reading == OWN
    for how, reading in (("from memory", "from memory"), ("computed apart from this kit", "worked"), ("read", "read")):
        assert Check("a", "b", "a standard", "-", how, 1.0, 1.0, 0.1, "").reading == reading


def test_there_are_many():
    assert sum(row.reading != OWN for topic in evidence.topics() for row in evidence.read(topic)) >= 250


def test_a_row_and_its_answer():
    (row,) = table.parse("t", [HEAD, "", "# a remark", ROW])
    check = row.check(1.505)
    assert check.passed
    assert check.difference == pytest.approx(0.005)
    assert not row.check(1.52).passed
    assert not row.check(float("nan")).passed


def test_a_tolerance_in_percent():
    (row,) = table.parse("t", [HEAD, ROW.replace("0.01", "2 %")])
    assert row.tolerance == pytest.approx(0.03)


def test_a_word():
    (row,) = table.parse("t", [HEAD, "a,rule,is it met,met,,,code,1,read"])
    assert row.check("met").passed
    assert not row.check("not met").passed


@pytest.mark.parametrize("blank", ["arithmetic", "page 1", "by hand", "half of 3", "1.5"])
def test_a_row_must_say_where_it_comes_from(blank):
    with pytest.raises(BadFile, match=r"Row a of the table t has no (source|where|how_read|what|expected)"):
        table.parse("t", [HEAD, ROW.replace(blank, " ")])


@pytest.mark.parametrize(
    ("lines", "sentence"),
    [
        ([HEAD.replace(",source", "")], "The table t lacks the column source."),
        ([HEAD, ROW, ROW], "The id a stands twice in the table t."),
        ([HEAD, ROW + ",more"], "Row a of the table t has not as many fields"),
        ([HEAD, "a,half"], "Row a of the table t has not as many fields"),
    ],
)
def test_a_broken_table_is_refused(lines, sentence):
    with pytest.raises(BadFile, match=sentence):
        table.parse("t", lines)


def test_columns_are_read_with_care():
    (row,) = table.parse("t", [HEAD, ROW.replace("0.01", "wide")])
    with pytest.raises(BadFile, match='Row a of the table t: tolerance is "wide", not a number'):
        row.check(1.0)
    with pytest.raises(BadFile, match='The table t has no column "color"'):
        row.text("color")
    (word,) = table.parse("t", [HEAD, "a,rule,is it met,met,0.1,,code,1,read"])
    with pytest.raises(BadFile, match="expects a word; it must have no tolerance"):
        word.check("met")


def test_a_row_nobody_answers_is_refused():
    with pytest.raises(BadFile, match='nothing computes "saturation"'):
        list(table.answer("psychrometrics", {}))


def test_a_row_the_kit_refuses_names_the_row():
    from dryward import air

    asked = {row.text("quantity"): lambda row: air.vapor_pressure(20.0, 1.4) for row in table.read("psychrometrics")}
    with pytest.raises(BadFile, match=r"Row ashrae-.*: Relative humidity is 140 %; it must be 0 to 100 %"):
        next(table.answer("psychrometrics", asked))


INPUTS = [
    HEAD.replace("quantity", "inputs"),
    ROW.replace("half,", "indoor 68 degF; indoor_rh 0.4; wet degF,", 1),
]


def test_inputs_are_given_with_their_units():
    (row,) = table.parse("t", INPUTS)
    assert row.given("indoor") == pytest.approx(20.0)
    assert row.given("indoor_rh") == 0.4
    assert row.given("outdoor", -5.0) == -5.0


@pytest.mark.parametrize("name", ["outdoor", "rh", "wet"])
def test_inputs_that_are_not_given_are_missed(name):
    (row,) = table.parse("t", INPUTS)
    with pytest.raises(BadFile, match=f"Row a of the table t does not give {name} as a number"):
        row.given(name)


def test_an_answer_goes_into_the_unit_of_its_row():
    (row,) = table.parse("t", [HEAD, ROW.replace(",m,", ",mm,")])
    assert table.in_row_units({"half": lambda row: 0.0015})["half"](row) == pytest.approx(1.5)


def test_layers_in_words_that_cannot_be_read():
    with pytest.raises(BadFile, match='The layers "gypsum thick" are not understood'):
        example("gypsum thick", 0.0, 0.0)
    with pytest.raises(BadFile, match="could not convert"):
        example("gypsum d=thick k=0.2 mu=8", 0.0, 0.0)


def test_unknown_topics():
    with pytest.raises(UnknownName, match='There is no topic "alchemy"'):
        list(evidence.checks("alchemy"))
    with pytest.raises(BadFile, match=r"There is no table of published values alchemy\.csv"):
        table.read("alchemy")


def test_the_words_of_a_check():
    check = Check("a", "half of 3", "arithmetic", "page 1", "by hand", 1.5, 1.6, 0.01, "m")
    assert str(check) == "half of 3: published 1.5 m, here 1.6 m, allowed difference 0.01 m (arithmetic, page 1)"


def test_every_table_is_a_topic():
    tables = {path.stem for path in (Path(evidence.__file__).parent / "data").glob("*.csv")}
    assert tables == set(evidence.topics())
