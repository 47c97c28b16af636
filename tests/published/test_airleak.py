"""Air leaks against blower-door arithmetic, gas laws and hand calculations.

Source, edition, place and the way each number was read stand in its row of
evidence/data/airleak.csv.
"""

TOPIC = "airleak"


def test_agrees_with_the_published_value(check):
    assert check.passed, str(check)
