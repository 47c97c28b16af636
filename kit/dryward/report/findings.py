"""What a check found: an answer, a sentence, and its limits beside it."""

from dataclasses import dataclass, field

YES, NO, CANNOT_TELL = "yes", "no", "cannot tell"
#: From this slope on an assembly is a wall [degrees].
WALL = 60.0


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
        As in `units.SHOWN`; empty for a plain number with `unit`.
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
        "yes", "no" or "cannot tell".
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
        over_the_year = [self.finding(id) for id in ("twelve-months", "years", "mold")]
        return all(each.good is not False for each in over_the_year if each)

    @property
    def verdict(self):
        """The whole in one sentence."""
        against = [each for each in self.findings if each.good is False]
        start = f"By these checks the {called(self.job.assembly)}"
        if not against:
            return f"{start} dries: what gets in goes out again within the year."
        if self.dries:
            return f"{start} dries over the year, but look closer: {_lower(against[0].what)}"
        first = next(each for each in against if each.id in ("twelve-months", "years", "mold"))
        return f"{start} does not dry: {_lower(first.what)}"


def _lower(text):
    return text[:1].lower() + text[1:]
