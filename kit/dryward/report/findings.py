"""What a check found: an answer, a sentence, and its limits beside it."""

import re
from dataclasses import dataclass, field

from dryward.building.assembly import WALL

YES, NO, SLOWLY, CANNOT_TELL = "yes", "no", "slowly", "cannot tell"


def called(assembly):
    """What people call it: "roof" or "wall".

    Parameters
    ----------
    assembly : Assembly

    Returns
    -------
    str
    """
    return "wall" if assembly.slope >= WALL else "roof"


@dataclass(frozen=True)
class Number:
    """One number of a finding.

    Attributes
    ----------
    label : str
    value : float
        SI.
    quantity : str
        As in `units.SHOWN`, or "opening" for free area by length [m2/m]; empty for a plain number with `unit`.
    unit : str
    low, high : float or None
        How far it may lie with uncertain inputs, where that was worked out.
    """

    label: str
    value: float
    quantity: str = ""
    unit: str = ""
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True)
class Finding:
    """One check of a roof.

    Attributes
    ----------
    id : str
    question : str
        What was asked.
    answer : str
        "yes", "no", "slowly" or "cannot tell".
    good : bool or None
        Whether the answer speaks for the roof; None when it cannot.
    what, why, change : str
        What was found, why, and what to change first (may be empty).
    limits : str
        What this check leaves out.
    matters : str
        The uncertain input that moves the result most, where that was worked out.
    numbers : tuple of Number
    source : str
        Method or rule, with edition.
    data : object
        The physics result behind it, for pictures.
    turns : bool
        Whether the usual ranges of the layers reach to the other answer.
    """

    id: str
    question: str
    answer: str
    good: bool | None
    what: str
    why: str = ""
    change: str = ""
    limits: str = ""
    numbers: tuple = ()
    source: str = ""
    data: object = field(default=None, repr=False, compare=False)
    matters: str = ""
    turns: bool = False

    def number(self, label):
        """The value of that label [SI], or None."""
        return next((each.value for each in self.numbers if each.label == label), None)


@dataclass(frozen=True)
class Review:
    """All findings on one job.

    Attributes
    ----------
    job : Job
    findings : tuple of Finding
    notes : tuple of str
        What was assumed on the way, in sentences.
    """

    job: object = field(repr=False)
    findings: tuple
    notes: tuple = ()

    def finding(self, id):
        """The finding of that id, or None."""
        return next((each for each in self.findings if each.id == id), None)

    @property
    def dries(self):
        """Whether every check of wetting and drying over the year speaks for the roof."""
        return self._good("twelve-months", "years", "mold")

    @property
    def outcome(self):
        """In a few words: "dries", "too wet on the way" or "does not dry"."""
        if self.dries:
            return "dries"
        return "too wet on the way" if self._good("twelve-months", "years") else "does not dry"

    @property
    def hourly(self):
        """Whether the hourly years were run."""
        years = self.finding("years")
        return years is not None and years.good is not None

    @property
    def verdict(self):
        """The whole in one or two sentences."""
        against = [each for each in self.findings if each.good is False]
        start = f"By {'these checks' if self.hourly else 'the steady checks alone'} the {called(self.job.assembly)}"
        if not against:
            return f"{start} dries: what gets in goes out again within the year.{self._turning()}"
        first = against[0]
        if not self.dries:
            first = next(each for each in against if each.id in ("twelve-months", "years", "mold"))
        how = {
            "dries": "dries over the year, but look closer",
            "too wet on the way": "dries over the year but gets too wet on the way",
            "does not dry": "does not dry",
        }[self.outcome]
        more = len(against) - 1
        others = f"; and {more} more point{'s' if more > 1 else ''}" if more else ""
        return f"{start} {how}: {_lower(_first(first.what))}{others}.{self._turning() if self.dries else ''}"

    @property
    def limits(self):
        """What stands beside the verdict wherever it is shown, in small print."""
        counted = self.hourly and self.job.tightness is not None
        said = ["A calculation, not a permit, an inspection or an approval."]
        said += [] if counted else ["Air leaks are not counted."]
        said.append("Rain is not counted.")
        said += ["The weather is invented."] if self.job.place.kind == "demo" else []
        return " ".join(said)

    def _good(self, *ids):
        found = [self.finding(id) for id in ids]
        return all(each.good is not False for each in found if each)

    def _turning(self):
        """What the ranges of the layers can change about good answers."""
        turning = {each.id for each in self.findings if each.good and each.turns}
        if turning & {"twelve-months", "years"}:
            return " But within the usual ranges of the layers some water can stay at the year's end."
        if turning & {"winter", "summer"}:
            return " But within the usual ranges of the layers water can gather in the coldest or the warmest month."
        return " But within the usual ranges of the layers an answer can turn." if turning else ""


def _first(text):
    """The first sentence, without its period."""
    return re.split(r"\. (?=[A-Z])", text)[0].rstrip(".")


def _lower(text):
    return text[:1].lower() + text[1:]
