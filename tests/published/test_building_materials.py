"""Permeance, mu, conductivity, density and specific heat of the library against printed tables.

Source, edition, place and the way each number was read stand in its row of
evidence/data/materials.csv.
"""

TOPIC = "materials"


def test_agrees_with_the_published_value(check):
    assert check.passed, str(check)
