"""The night sky, and a roof under it, against published formulas and balances.

Source, edition, place and the way each number was read stand in its row of
evidence/data/sky.csv.
"""

TOPIC = "sky"


def test_agrees_with_the_published_value(check):
    assert check.passed, str(check)
