"""Code rules: the numbers they ask for, and verdicts on printed and worked cases.

Source, edition, place and the way each number was read stand in its row of
evidence/data/codes.csv.
"""

TOPIC = "codes"


def test_agrees_with_the_published_value(check):
    assert check.passed, str(check)
