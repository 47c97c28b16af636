"""One check of a roof with its answer and its limits, and all checks of one job."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from typing import Any, TypeAlias

from dryward.building import Assembly
from dryward.building.assembly import WALL
from dryward.building.job import Job
from dryward.language import listed, message
from dryward.units import InBoth, read_in
from dryward.verdict import DRY, LATER, NEVER, STATES, Verdict, words

#: Told how far a run is (parts done, in all); False ends it.
Progress: TypeAlias = Callable[[int, int], bool | None]
#: An edition of the codes; None for the newest that was read.
Edition: TypeAlias = str | int | None

#: Answers of code rows; of the others it is a state, or how a wet start dries.
MET, NOT_MET, CANNOT_TELL = "met", "not met", "cannot tell"
#: Of a wet start where no time was worked out.
CAN = "it can"


def key(answer: str) -> str:
    """An answer as it stands in the name of a message."""
    return answer.replace(" ", "-")


def worded(state: str) -> str:
    """A state as it is read in a sentence."""
    return message(f"report.state-{key(state)}")


def designed(design: str) -> str:
    """A design year as it is read in a sentence."""
    return message(f"report.design-{key(design)}")


def kind(assembly: Assembly) -> str:
    """What people call it: "roof" or "wall"; the messages choose by it."""
    return "wall" if assembly.slope >= WALL else "roof"


def one_after_another(*texts: str) -> str:
    """Texts as one, in the unit systems that they are in; empty ones are passed over."""
    return InBoth.of(lambda system: " ".join(read_in(each, system) for each in texts if each))


@dataclass(frozen=True)
class Number:
    """One number of a check."""

    #: What it is of; ``report.number-...`` says it.
    id: str
    #: In SI.
    value: float
    #: As in `units.SHOWN`, or "opening" for free area by length [m2/m]; empty for a plain number with `unit`.
    quantity: str = ""
    unit: str = ""
    #: How far it may lie with uncertain inputs, where that was worked out.
    low: float | None = None
    high: float | None = None
    #: How it is called, where it is not by its id.
    label: str = ""

    def __post_init__(self) -> None:
        object.__setattr__(self, "label", self.label or message(f"report.number-{self.id}"))


@dataclass(frozen=True)
class Check:
    """One question about a roof and its answer."""

    id: str
    question: str
    #: A state ("dry", "damp", "wet", "not known yet"); of a code row "met", "not met" or "cannot tell"; of a wet
    #: start "within the year", "later", "not", or "it can" where no time was worked out.
    answer: str
    #: What was found, why, and what to change first (may be empty).
    what: str
    why: str = ""
    change: str = ""
    #: What else was found, place by place.
    lines: tuple[str, ...] = ()
    #: What this check leaves out.
    limits: str = ""
    #: How the uncertain inputs can move it, where that was worked out.
    matters: str = ""
    numbers: tuple[Number, ...] = ()
    #: Method or rule, with edition.
    source: str = ""
    #: The facts behind a state.
    verdict: Verdict | None = field(default=None, repr=False)
    #: The physics result behind it, for pictures: each check has one of its own kind.
    data: Any = field(default=None, repr=False, compare=False)

    @property
    def asked(self) -> str:
        """The question, or the head of a code row, as it stands before an answer."""
        return message("report.row-asked", title=self.question) if self.of_the_codes else self.question

    @property
    def of_the_codes(self) -> bool:
        """Whether it is a row of the codes."""
        return self.id.startswith("code-")

    @property
    def facts(self) -> Verdict:
        """The verdict of a check by physics, which always has one."""
        if self.verdict is None:
            raise TypeError(f"The check {self.id} has no verdict.")
        return self.verdict

    @property
    def said(self) -> str:
        """The answer as it is read, without a period."""
        return message(f"report.answer-{key(self.answer)}")

    def read_in(self, system: str) -> "Check":
        """The same for a reader of a unit system: its amounts in that system alone."""
        return replace(
            self,
            what=read_in(self.what, system),
            why=read_in(self.why, system),
            lines=tuple(read_in(each, system) for each in self.lines),
            matters=read_in(self.matters, system),
        )

    def number(self, id: str) -> float | None:
        """The value of that number [SI], or None."""
        return next((each.value for each in self.numbers if each.id == id), None)


@dataclass(frozen=True)
class Limit:
    """The highest room humidity at which the hourly year stays dry."""

    #: Of the rooms in the coldest month [-]; None where it is not dry even at `lowest`.
    humidity: float | None
    #: Of the room humidities that were tried [-].
    lowest: float
    highest: float
    #: The state one point above it; empty where the highest tried is dry.
    beyond: str


@dataclass(frozen=True)
class Review:
    """All checks of one job."""

    job: Job = field(repr=False)
    checks: tuple[Check, ...]
    #: What was assumed on the way, in sentences.
    notes: tuple[str, ...] = ()
    #: The verdict of each design year, and the limit for the rooms, where the hourly years were run with trials.
    designs: tuple[tuple[str, Verdict], ...] = ()
    limit: Limit | None = None
    #: With a leak of three air changes at 50 Pa, where no tightness was tested and the hourly years were run.
    #: Then `designs` and `limit` are with that leak too.
    leaky: Verdict | None = None
    #: Of the codes, where one was asked for.
    edition: Edition = None

    def check(self, id: str) -> Check | None:
        """The check of that id, or None."""
        return next((each for each in self.checks if each.id == id), None)

    @property
    def hourly(self) -> bool:
        """Whether the hourly years were run."""
        return self.check("years") is not None

    @property
    def verdict(self) -> Verdict:
        """The one verdict: of the check that counts most, the hourly year where it was run, else the twelve months."""
        return next(check for id in ("years", "twelve-months") if (check := self.check(id))).facts

    @property
    def state(self) -> str:
        """The state of the verdict."""
        return self.verdict.state

    @property
    def holds(self) -> bool:
        """Whether it is dry as it was drawn, and where no tightness was tested also with the assumed leak."""
        return {self.state, (self.leaky or self.verdict).state} == {DRY}

    @property
    def headline(self) -> str:
        """The whole in a few sentences, in both unit systems; `units.read_in` gives it in one."""
        return InBoth.of(self._headline)

    def _headline(self, system: str | None) -> str:
        by = "months" if not self.hourly else "no-leak" if "leak" in self.verdict.left_out else "leak"
        account = words.account(self.verdict, system)
        first = message("report.headline", state=message("verdict.head", state=self.state), by=by, account=account)
        return " ".join([first, *self._others()])

    def _others(self) -> Iterator[str]:
        """What else speaks against the roof, a sentence each."""
        if self.leaky is not None:
            same = self.leaky.state == self.state
            yield message("report.with-assumed-leak", state=worded(self.leaky.state), same=same)
        worse = [
            message(f"report.worse-{check.id}", state=worded(check.answer))
            for check in map(self.check, _PLAIN)
            if check and _rank(check.answer) > _rank(self.state)
        ]
        if worse:
            yield message("report.diffusion-is-worse", list=listed(worse))
        start = self.check("wet-start")
        if start is not None and start.answer in (LATER, NEVER):
            yield start.what
        count = sum(each.answer == NOT_MET for each in self.checks)
        if count:
            yield message("report.rows-not-met", count=count)

    @property
    def limits(self) -> str:
        """What stands beside the verdict wherever it is shown, in small print."""
        leak, invented = "leak" in self.verdict.left_out, self.job.place.kind == "demo"
        said = [message("report.only-a-calculation"), message("report.leaks-not-counted") if leak else ""]
        said += [message("report.rain-not-counted"), message("report.weather-invented") if invented else ""]
        return " ".join(each for each in said if each)


#: The checks that count less than the verdict's.
_PLAIN = ("twelve-months", "winter", "summer")


def _rank(state: str) -> int:
    return STATES.index(state) if state in STATES else -1
