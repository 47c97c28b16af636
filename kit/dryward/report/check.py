"""One check of a roof with its answer and its limits, and all checks of one job."""

from dataclasses import dataclass, field

from dryward.building.assembly import WALL
from dryward.checks import listed
from dryward.verdict import DRY, LATER, NEVER, STATES, WITHIN, Verdict, words

#: Answers of code rows; of the others it is a state, or how a wet start dries.
MET, NOT_MET, CANNOT_TELL = "met", "not met", "cannot tell"
#: Of a wet start where no time was worked out.
CAN = "it can"
#: How an answer is said where its own word is not enough.
_SAID = {WITHIN: "yes, within the year", LATER: "yes, but it takes more than a year", NEVER: "no"}


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
    """One number of a check.

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
class Check:
    """One question about a roof and its answer.

    Attributes
    ----------
    id, question : str
    answer : str
        A state ("dry", "damp", "wet", "not known yet"); of a code row "met",
        "not met" or "cannot tell"; of a wet start "within the year", "later",
        "not", or "it can" where no time was worked out.
    what, why, change : str
        What was found, why, and what to change first (may be empty).
    lines : tuple of str
        What else was found, place by place.
    limits : str
        What this check leaves out.
    matters : str
        How the uncertain inputs can move it, where that was worked out.
    numbers : tuple of Number
    source : str
        Method or rule, with edition.
    verdict : Verdict or None
        The facts behind a state.
    data : object
        The physics result behind it, for pictures.
    """

    id: str
    question: str
    answer: str
    what: str
    why: str = ""
    change: str = ""
    lines: tuple = ()
    limits: str = ""
    matters: str = ""
    numbers: tuple = ()
    source: str = ""
    verdict: Verdict | None = field(default=None, repr=False)
    data: object = field(default=None, repr=False, compare=False)

    @property
    def asked(self):
        """The question, or the head of a code row, as it stands before an answer."""
        return self.question if self.question.endswith("?") else f"{self.question}:"

    @property
    def said(self):
        """The answer as it is read, without a period."""
        return words.capital(_SAID.get(self.answer, self.answer))

    def number(self, label):
        """The value of that label [SI], or None."""
        return next((each.value for each in self.numbers if each.label == label), None)


@dataclass(frozen=True)
class Limit:
    """The highest room humidity at which the hourly year stays dry.

    Attributes
    ----------
    humidity : float or None
        Of the rooms in the coldest month [-]; None where it is not dry even at `lowest`.
    lowest, highest : float
        Of the room humidities that were tried [-].
    beyond : str
        The state one point above it; empty where the highest tried is dry.
    """

    humidity: float | None
    lowest: float
    highest: float
    beyond: str


@dataclass(frozen=True)
class Review:
    """All checks of one job.

    Attributes
    ----------
    job : Job
    checks : tuple of Check
    notes : tuple of str
        What was assumed on the way, in sentences.
    designs : tuple of (str, Verdict)
        The verdict of each design year, where the hourly years were run with trials.
    limit : Limit or None
        Likewise.
    leaky : Verdict or None
        With a leak of three air changes at 50 Pa, where no tightness was
        tested and the hourly years were run.  Then `designs` and `limit` are
        with that leak too.
    edition : str or int or None
        Of the codes, where one was asked for.
    """

    job: object = field(repr=False)
    checks: tuple
    notes: tuple = ()
    designs: tuple = ()
    limit: Limit | None = None
    leaky: Verdict | None = None
    edition: object = None

    def check(self, id):
        """The check of that id, or None."""
        return next((each for each in self.checks if each.id == id), None)

    @property
    def hourly(self):
        """Whether the hourly years were run."""
        return self.check("years") is not None

    @property
    def verdict(self):
        """The one verdict: of the check that counts most, the hourly year where it was run, else the twelve months."""
        return (self.check("years") or self.check("twelve-months")).verdict

    @property
    def state(self):
        """The state of the verdict."""
        return self.verdict.state

    @property
    def holds(self):
        """Whether it is dry as it was drawn, and where no tightness was tested also with the assumed leak."""
        return {self.state, (self.leaky or self.verdict).state} == {DRY}

    @property
    def headline(self):
        """The whole in a few sentences."""
        by = "by twelve monthly means alone, no air leak counted"
        if self.hourly:
            by = f"hour by hour, {'no air leak counted' if 'leak' in self.verdict.left_out else 'with the air leak'}"
        return " ".join([f"{words.word(self.state)} ({by}): {words.account(self.verdict)}.", *self._others()])

    def _others(self):
        """What else speaks against the roof, a sentence each."""
        if self.leaky is not None:
            same = "too" if self.leaky.state == self.state else ""
            would = " ".join(part for part in (f"it would be {self.leaky.state}", same) if part)
            yield f"With a leak of 3 air changes at 50 Pa, a fifth of it through here (assumed, not tested), {would}."
        worse = [
            f"{check.answer} {when}"
            for check, when in ((self.check(id), when) for id, when in _PLAIN)
            if check and _rank(check.answer) > _rank(self.state)
        ]
        if worse:
            yield f"Plain diffusion says worse ({listed(worse)}); it counts no storage, sun or leak."
        start = self.check("wet-start")
        if start is not None and start.answer in (LATER, NEVER):
            yield start.what
        count = sum(each.answer == NOT_MET for each in self.checks)
        if count:
            yield "A code row is not met." if count == 1 else f"{count} code rows are not met."

    @property
    def limits(self):
        """What stands beside the verdict wherever it is shown, in small print."""
        said = ["A calculation, not a permit, an inspection or an approval."]
        said += ["Air leaks are not counted."] if "leak" in self.verdict.left_out else []
        said.append("Rain is not counted.")
        said += ["The weather is invented."] if self.job.place.kind == "demo" else []
        return " ".join(said)


#: The checks that count less than the verdict's, and how they are named in it.
_PLAIN = (
    ("twelve-months", "over twelve months"),
    ("winter", "if the coldest month never ended"),
    ("summer", "if the warmest month never ended"),
)


def _rank(state):
    return STATES.index(state) if state in STATES else -1
