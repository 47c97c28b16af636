"""Surface films, air spaces and framing against printed tables and worked walls.

Source, edition, place and the way each number was read stand in its row of
evidence/data/films_and_framing.csv.
"""

TOPIC = "films_and_framing"


def test_agrees_with_the_published_value(check):
    assert check.passed, str(check)
