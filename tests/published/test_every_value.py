"""Every published value, by the code that ``dryward evidence`` runs.

Source, edition, place and the way each number was read stand in its row of
``evidence/data``.
"""

from functools import cache

import pytest

from dryward import evidence


@cache
def computed(topic):
    return list(evidence.checks(topic))


@pytest.mark.parametrize("topic", evidence.topics())
def test_every_row_is_computed_once_and_in_order(topic):
    assert [check.id for check in computed(topic)] == [row.id for row in evidence.read(topic)]


@pytest.mark.parametrize(
    ("topic", "id"), [(topic, row.id) for topic in evidence.topics() for row in evidence.read(topic)]
)
def test_agrees_with_the_published_value(topic, id):
    check = next(each for each in computed(topic) if each.id == id)
    assert check.passed, str(check)
