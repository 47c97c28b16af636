"""Water in wood against the handbook's curve, and the limits of wood.

Source, edition, place and the way each number was read stand in its row of
evidence/data/wood.csv.
"""

TOPIC = "wood"


def test_agrees_with_the_published_value(check):
    assert check.passed, str(check)
