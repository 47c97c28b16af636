"""What the tests of several lessons ask with: air and roofs built apart from the kit's own, a lesson's words."""

from dryward.building import FixedMembrane, library, preset
from dryward.teaching import lessons, questions
from dryward.units import to_si
from dryward.weather import Air

#: The day that most predictions are about: room and outdoors, [degF] and [%].
WINTER = (70, 40), (20, 80)
_PRESETS = {
    "open membrane": "vented-vault",
    "fiberboard": "vented-vault-fiberboard",
    "OSB": "vented-vault-osb",
    "closed sheet": "vented-vault-closed",
}


def outside(fahrenheit, percent):
    """Air of that temperature and RH."""
    return Air(to_si(float(fahrenheit), "degF"), percent / 100)


def pressure(fahrenheit, percent):
    """Vapor pressure of that air."""
    return outside(fahrenheit, percent).vapor_pressure


def vault(outer="open membrane", inner=None):
    """The preset vault with that outer layer and inner film [perm]."""
    found = preset(_PRESETS[outer])
    if inner == "variable":
        return found.replace("inner membrane", library.membrane("teaching-variable"))
    return found if inner is None else found.replace("inner membrane", FixedMembrane(to_si(inner, "perm")))


def fixed(lesson):
    """The checks of a lesson with their fixed numbers."""
    return questions.checks(lesson)


def said(question):
    """The right answer to a question and its reply."""
    return question.right.text + " " + question.right.reply


def reveal(id):
    """What a lesson says once the learner has predicted and looked."""
    return lessons.lesson(id).prediction.reveal
