"""The right choice of each prediction is right, and the numbers of its reveal are the kit's."""

from dryward.teaching import lessons
from dryward.teaching.vault import air as some_air

WINTER = (70, 40), (20, 80)


def reveal(id):
    return lessons.lesson(id).prediction.reveal


def pressure(fahrenheit, percent):
    return some_air(fahrenheit, percent).vapor_pressure
