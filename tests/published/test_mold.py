"""The mold index against its published formulas, and runs of steady air.

Source, edition, place and the way each number was read stand in its row of
evidence/data/mold.csv.
"""

TOPIC = "mold"


def test_agrees_with_the_published_value(check):
    assert check.passed, str(check)
