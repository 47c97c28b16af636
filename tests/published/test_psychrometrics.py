"""Moist air against printed tables.

Source, edition, place and the way each number was read stand in its row of
evidence/data/psychrometrics.csv.
"""

TOPIC = "psychrometrics"


def test_agrees_with_the_published_value(check):
    assert check.passed, str(check)
