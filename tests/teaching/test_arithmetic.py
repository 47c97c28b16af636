"""One line of a hand calculation, as it is read."""

from dryward.teaching.words import Step


def test_a_sum_and_a_number_from_a_table():
    assert Step("Half of it.", "40 % / 2", "20 %").line == "Half of it. 40 % / 2 = 20 %"
    assert Step("The most, from a table:", "", "2338 Pa").line == "The most, from a table: 2338 Pa"
