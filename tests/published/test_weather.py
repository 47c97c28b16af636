"""Room air, monthly means and a weather file against published and hand-made numbers.

Source, edition, place and the way each number was read stand in its row of
evidence/data/weather.csv.
"""

TOPIC = "weather"


def test_agrees_with_the_published_value(check):
    assert check.passed, str(check)
