"""What a review says of amounts is said to its reader in their own units; where nobody is known yet in both."""

import json
import re

import pytest
from jobs_at_hand import TIGHT

from dryward.panels.desk import results
from dryward.report import check, document, many, review

OWN = {"us": r"\d gr/ft²|\d lb/ft²|\d pints|\d in² per foot", "si": r"\d g/m²|\d kg/m²|\d L\b|\d cm² per meter"}


@pytest.fixture(scope="module")
def wet():
    """A roof in which water gathers, by all checks but the hourly years."""
    return review(TIGHT, hourly=False)


def told(found):
    return " ".join((found.what, *found.lines, found.matters))


@pytest.mark.parametrize("system", ["us", "si"])
def test_cards_and_pages_speak_in_one_system(wet, system):
    other = OWN["si" if system == "us" else "us"]
    page = document.document(wet, system)
    said = [told(each) for each in page.checks] + [page.headline, *page.client, *page.inspector]
    said += [json.dumps(results._card(each.read_in(system), system), ensure_ascii=False) for each in wet.checks[:3]]
    assert re.search(OWN[system], " ".join(said))
    assert not re.search(other, " ".join(said))


def test_where_no_reader_is_known_both_stand_the_trades_own_first(wet):
    said = " ".join([wet.headline, *(told(each) for each in wet.checks)])
    both = re.findall(r"(\d gr/ft²(?: day)?) \([\d.]+ g/m²", said)
    assert both
    assert not re.search(r"g/m²(?: day)? \(", said)
    plain = json.dumps(many.plain(wet), ensure_ascii=False)
    assert wet.check("winter").what in plain


def test_texts_that_follow_each_other_stay_in_their_systems(wet):
    found = wet.check("winter").what
    both = check.one_after_another(found, "", "It is so.")
    assert both == f"{found} It is so."
    assert check.read_in(both, "us") == f"{check.read_in(found, 'us')} It is so."
