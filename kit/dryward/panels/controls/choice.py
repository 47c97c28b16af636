"""A choice: what it is, and the one of a page, with its value."""

from dataclasses import dataclass, replace

from dryward.checks import UnknownName
from dryward.panels.controls.control import Control


@dataclass(frozen=True)
class Choice:
    """What a choice is.

    Parameters
    ----------
    name : str
        The same in all lessons, such as ``"Outer"``.
    words : str
        What stands beside it.
    options : ((id, words) or (id, words, words in SI units), ...)
    start : str, optional
        Id of the option it opens with; otherwise the first.

    Examples
    --------
    >>> Choice("Film", "Inner membrane", (("fixed", "fixed"), ("variable", "variable"))).control("us").value
    'fixed'
    """

    name: str
    words: str
    options: tuple
    start: str = ""

    def starting(self, id):
        """The same choice that opens with another option."""
        return replace(self, start=id)

    def control(self, system, si=None):
        """The control of it, at its start or at an option."""
        return ChoiceControl(self, system, si)


class ChoiceControl(Control):
    """A choice, with its value.

    Attributes
    ----------
    value : str
        Id of the option; setting it moves the page.
    si : str
        The same.
    options : tuple of str
        The ids.
    min, max : str
        First and last option.
    """

    unit = ""

    def __init__(self, choice, system, si=None):
        self.choice, self.system = choice, system
        self.name, self.words = choice.name, choice.words
        self.options = tuple(option[0] for option in choice.options)
        self.min, self.max = self.options[0], self.options[-1]
        self._value = self.options[0]
        self.put(si or choice.start or self.options[0])

    @property
    def si(self):
        """Id of the option."""
        return self._value

    def put(self, value):
        """Choose an option and tell nobody.

        Raises
        ------
        UnknownName
            For an option that does not exist.
        """
        if value not in self.options:
            raise UnknownName(f"choice of {self.words.lower()}", value, self.options)
        self._value = value

    def label(self, id=None):
        """The words of an option, or of the one chosen."""
        option = next(each for each in self.choice.options if each[0] == (id or self._value))
        return option[2] if self.system == "si" and len(option) > 2 else option[1]

    def frame(self):
        """What the sheet needs to build it."""
        options = [{"id": id, "words": self.label(id)} for id in self.options]
        return {"kind": "choice", "name": self.name, "label": self.words, "options": options, "value": self._value}
