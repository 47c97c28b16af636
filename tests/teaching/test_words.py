"""Words: numbers in texts, the glossary page, the cautions."""

from pathlib import Path

import pytest

from dryward.checks import UnknownName
from dryward.teaching import beliefs, words

PAGE = Path(__file__).parents[2] / "lessons" / "guide" / "glossary.md"


@pytest.mark.parametrize(
    ("text", "us", "si"),
    [
        ("{70 degF}", "70 °F", "21.1 °C"),
        ("{-10 degF}", "−10 °F", "−23.3 °C"),
        ("{9 degF difference}", "9 °F", "5 K"),
        ("{80 %}", "80 %", "80 %"),
        ("{1002 Pa}", "0.296 in. Hg (1002 Pa)", "1002 Pa"),
        ("{1.5 perm}", "1.5 perm", "2.33 m sd"),
        ("{20 R}", "R-20", "RSI 3.52"),
        ("{1.8 g/m2/day}", "2.58 gr/ft² day", "1.8 g/m² day"),
        ("{1.5 in}", "1.5 in.", "38 mm"),
        ("{16 ft}", "16 ft", "4.88 m"),
        ("{1 in2}", "1 in²", "6.45 cm²"),
        ("{32 ft2}", "32 ft²", "2.97 m²"),
        ("{20000 ft3}", "20000 ft³", "566 m³"),
        ("{60 cfm}", "60 cfm", "102 m³/h"),
        ("{20 ft/min}", "20 ft/min", "0.1 m/s"),
        ("{29 kg}", "63.9 lb", "29 kg"),
        ("{21 pint/day}", "21 pints/day", "9.94 kg/day"),
        ("{3 1/h}", "3 1/h", "3 1/h"),
        ("{0 g/m2/day}", "0 gr/ft² day", "0 g/m² day"),
    ],
)
def test_one_text_serves_both_systems(text, us, si):
    assert words.shown(text) == us
    assert words.shown(text, "si") == si


def test_a_small_number_keeps_its_figures():
    assert words.number(0.0004, "kg", "si") == "0.0004 kg"


def test_an_unknown_unit_or_system_is_one_sentence():
    with pytest.raises(UnknownName, match='There is no unit "furlong"'):
        words.shown("{1 furlong}")
    with pytest.raises(UnknownName, match='There is no unit system "metric"'):
        words.shown("{1 m}", "metric")
    with pytest.raises(UnknownName, match='There is no unit system "metric"'):
        words.reader_unit("m", "metric")


def test_the_guides_glossary_is_made_from_the_word_list():
    assert PAGE.read_text("utf-8") == words.glossary_page()


def test_words_stand_once_and_in_order():
    terms = [each.term for each in words.glossary()]
    assert len(set(terms)) == len(terms) >= 40
    assert terms == sorted(terms, key=str.lower)


def test_every_caution_has_a_source():
    found = words.cautions()
    assert len(found) == 11
    for each in found:
        assert each.source.endswith(".")
        assert each.text.endswith(".")
    with pytest.raises(UnknownName, match='There is no caution "fall"; did you mean falls'):
        words.caution("fall")


def test_beliefs_are_whole():
    found = beliefs.beliefs()
    assert [each.number for each in found] == list(range(1, 37))
    for each in found:
        assert each.claim
        assert each.seems
        assert each.right
        assert each.grain
        assert each.source
        assert each.number
    for each in beliefs.slips():
        assert not each.number
        assert each.claim
        assert each.seems
        assert each.right
    ids = [each.id for each in (*found, *beliefs.slips())]
    assert len(set(ids)) == len(ids)
    with pytest.raises(UnknownName, match='There is no belief "warm-to-clod"; did you mean warm-to-cold'):
        beliefs.belief("warm-to-clod")
