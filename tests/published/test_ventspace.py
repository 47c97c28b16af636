"""Vent spaces against code arithmetic, hand calculations and handbook flow.

Source, edition, place and the way each number was read stand in its row of
evidence/data/ventspace.csv.
"""

TOPIC = "ventspace"


def test_agrees_with_the_published_value(check):
    assert check.passed, str(check)
