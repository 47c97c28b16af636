"""What comes of the roof on the desk: its checks and a comparison, found in the background, and the printed page."""

from __future__ import annotations

import asyncio
import dataclasses
import threading
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Any

from dryward import building, storage, weather
from dryward.building.job import Job, Place, load_job
from dryward.checks import BadFile, PlainError, UnknownName, begun
from dryward.language import called, joined, message
from dryward.panels.desk import parts
from dryward.panels.desk.draft import Draft
from dryward.panels.desk.house import climate
from dryward.panels.desk.parts import Part
from dryward.pictures.year import TwoYearGraphs, TwoYears
from dryward.report import Check, Review, review
from dryward.report.check import Number
from dryward.report.document import amount, designs, document, legend, mark, moisture_year
from dryward.units import grain_of_water, read_in
from dryward.verdict import Finding, words

#: Draws of the uncertain inputs.
DRAWS = 24
#: Of the whole, the part that is shown as one step.
_STEP = 1 / 12

#: Takes parts done and parts in all; says False when the work shall end.
Progress = Callable[[int, int], bool]
Names = tuple[str, str]


# --- in the background ---------------------------------------------------------------


class Background:
    """One piece of long work at a time: shown as it goes on, ended on request.

    `show` is called when something changed that the page should show; `name`
    is the message of what is worked out.  `done` of `total`
    says how far it is, `trouble` why the last work came to nothing.
    """

    def __init__(self, show: Callable[[], object], name: str) -> None:
        self.show, self.name = show, name
        self.running, self.done, self.total, self.trouble = False, 0, 1, ""
        self._run, self._stop = 0, False

    def start(self, work: Callable[[Progress], Any], ended: Callable[[Any], object]) -> None:
        """Do some work, on another thread where a browser waits; what goes on already is dropped.

        `ended` is called with what was found, unless the work failed, was
        stopped or was dropped.
        """
        self._run += 1
        self._stop, self.trouble, self.running, self.done, self.total = False, "", True, 0, 100
        try:
            loop = asyncio.get_running_loop()
        except RuntimeError:
            self._work(self._run, work, ended, lambda call, *what: call(*what))
            return

        def tell(call: Callable[..., object], *what: Any) -> None:
            if not loop.is_closed():  # the page may be gone by then
                loop.call_soon_threadsafe(call, *what)

        todo = (self._run, work, ended, tell)
        threading.Thread(target=self._work, args=todo, daemon=True, name=self.name).start()

    def stop(self) -> None:
        """End the work that goes on."""
        self._stop = True

    def drop(self) -> None:
        """End it, and forget it at once."""
        self._run += 1
        self.running, self.trouble = False, ""

    def _work(
        self,
        run: int,
        work: Callable[[Progress], Any],
        ended: Callable[[Any], object],
        tell: Callable[..., object],
    ) -> None:
        def progress(done: int, total: int) -> bool:
            tell(self._progress, run, done, total)
            return run == self._run and not self._stop

        found, trouble = None, ""
        try:
            found = work(progress)
        except PlainError as error:
            trouble = str(error)
        except Exception as error:  # a learner never sees a traceback
            kind = type(error).__name__
            trouble = message("panels.came-to-nothing", what=message(self.name), kind=kind)
        tell(self._ended, run, found, trouble, ended)

    def _progress(self, run: int, done: int, total: int) -> None:
        if run != self._run:
            return
        if total != self.total or done < self.done or done - self.done >= total * _STEP:
            self.done, self.total = done, total
            self.show()

    def _ended(self, run: int, found: Any, trouble: str, ended: Callable[[Any], object]) -> None:
        if run != self._run:
            return
        self.running, self.trouble = False, trouble
        if not trouble:
            ended(found)
        self.show()

    def parts(self, stop: str) -> list[Part]:
        """The button that ends it (its key is `stop`) and how far it is, while it goes on."""
        if not self.running:
            return []
        found = [
            parts.button(stop, message("panels.stop")),
            parts.progress(message("panels.percent-worked-out"), self.done, self.total),
        ]
        if self.done == 0:
            found.append(parts.text(message("panels.getting-ready")))
        return found


# --- all checks ----------------------------------------------------------------------


class Checking:
    """All checks of a roof: the review of one job, and the run that finds it."""

    def __init__(self, show: Callable[[], object]) -> None:
        self.job: Job | None = None
        self.review: Review | None = None
        self.task = Background(show, "panels.the-checks")

    def run(self, job: Job, spread: int = 0) -> None:
        """Check a job, unless one is being checked; `spread` draws of the uncertain inputs for the hourly years."""
        if not self.task.running:
            self.task.start(
                lambda progress: review(job, progress=progress, spread=spread),
                lambda found: self._take(job, found),
            )

    def _take(self, job: Job, found: Review) -> None:
        self.job, self.review = job, found

    def of(self, job: Job) -> Review | None:
        """The review, if it is of just this job."""
        return self.review if self.job == job else None

    def section(self, job: Job, system: str) -> Part:
        """The checks, with their limits beside them; those of an older job say so."""
        head = parts.row(
            parts.button("check:run", message("panels.run-checks"), disabled=self.task.running),
            parts.button(
                "check:spread",
                message("panels.run-uncertain"),
                disabled=self.task.running,
                title=message("panels.run-uncertain-title", draws=str(DRAWS)),
            ),
            *self.task.parts("check:stop"),
        )
        inside = [head]
        if self.task.trouble:
            inside.append(parts.text(self.task.trouble, "dw-trouble", alert=True))
        if self.review is not None:
            if self.job != job:
                inside.append(parts.text(message("panels.changed-since-checks"), "dw-trouble"))
            inside.append(parts.text(read_in(self.review.headline, system), "dw-verdict"))
            inside.append(parts.text(self.review.limits, "dw-hint"))
            inside.append(parts.text(legend(), "dw-hint"))
            inside.append(
                parts.row(*(_card(each.read_in(system), system) for each in self.review.checks), style="dw-columns")
            )
            said = (*designs(self.review), *self.review.notes, grain_of_water())
            inside += [parts.text(each, "dw-hint") for each in said]
        inside.append(parts.text(message("panels.band-hint"), "dw-hint"))
        return parts.section("checks", message("panels.checks"), *inside)


def _numbers(numbers: Iterable[Number], system: str) -> str:
    """Numbers of a check with their labels."""
    each = [message("panels.number-of", label=number.label, amount=amount(number, system)) for number in numbers]
    return joined("panels.number-after-number", each)


def _card(each: Check, system: str) -> Part:
    numbers = _numbers(each.numbers, system)
    small = joined("panels.small-after-small", [part for part in (numbers, each.limits, each.source) if part])
    change = message("panels.first-change", change=each.change) if each.change else ""
    lines = (each.what, *each.lines, each.why, change, each.matters)
    return parts.check_card(
        message("panels.asked-and-said", asked=each.asked, said=each.said), each.answer, mark(each), lines, small
    )


# --- two roofs, or one roof in two climates ------------------------------------------


def choices(draft: Draft) -> list[tuple[str, str]]:
    """What the roof on the desk can be compared with: (id, words)."""
    found = [("", message("panels.choose-one"))]
    if draft.saved is not None:
        found.append(("saved", message("panels.as-saved")))
    found += [(f"preset:{id}", called(building.preset(id).name)) for id in building.presets()]
    found += [(f"place:{id}", message("panels.in-climate", place=climate(id))) for id in weather.demos()]
    return found + [(f"file:{name}", message("panels.your-file", name=name)) for name in draft.files()]


def other(draft: Draft, id: str) -> Job:
    """The job that an id of `choices` stands for; a `PlainError` for a file or a place that cannot be read."""
    kind, _, name = id.partition(":")
    if kind == "saved" and draft.saved is not None:
        return draft.saved
    if kind == "preset":
        return dataclasses.replace(draft.job, assembly=building.preset(name))
    if kind == "place":
        return dataclasses.replace(draft.job, place=Place("demo", name, zone=""))
    return load_job(draft.path(name))[0]


class Comparing:
    """Two roofs side by side: which they are, and the reviews of both once they are found."""

    def __init__(self, show: Callable[[], object]) -> None:
        self.id, self._missing = "", ""
        self.jobs: tuple[Job, Job] | None = None
        self.pair: tuple[Review, Review] | None = None
        self.task = Background(show, "panels.the-comparison")

    @property
    def trouble(self) -> str:
        """Why there is nothing to compare with, or why the comparison came to nothing."""
        return self._missing or self.task.trouble

    def choose(self, draft: Draft, id: str, known: Review | None = None) -> None:
        """Check both; what is being compared already is dropped.

        `known` is the review of the roof on the desk, where it was checked as
        it stands now.
        """
        self.task.drop()
        self.id, self._missing, self.pair = id, "", None
        if not id:
            return
        try:
            first, second = draft.job, other(draft, id)
        except PlainError as error:
            self._missing = str(error)
            return
        self.task.start(
            lambda progress: (
                known or review(first, progress, with_trials=False),
                review(second, progress, with_trials=False),
            ),
            lambda found: self._take((first, second), found),
        )

    def _take(self, jobs: tuple[Job, Job], found: tuple[Review, Review]) -> None:
        self.jobs, self.pair = jobs, found

    def section(self, draft: Draft, system: str, projector: bool) -> Part:
        """Both side by side, the difference in words first."""
        chosen = parts.select("compare", message("panels.compare-with"), choices(draft), self.id)
        old = self.pair is not None and self.jobs is not None and self.jobs[0] != draft.job
        again = (
            parts.button("compare:again", message("panels.compare-again"))
            if self.id and (old or self.trouble)
            else None
        )
        inside = [parts.row(chosen, again, *self.task.parts("compare:stop"))]
        if self.trouble:
            inside.append(parts.text(self.trouble, "dw-trouble", alert=True))
        if self.pair and self.jobs:
            if old:
                inside.append(parts.text(message("panels.changed-since-comparison"), "dw-trouble"))
            names = names_of(*self.jobs)
            inside.append(parts.text(difference(self.pair, names, system), "dw-verdict"))
            inside.append(parts.table(("", *names), [*_places(self.pair, system), *_checks(self.pair, system)]))
            both = _two_years(self.pair, names)
            if both is not None:
                picture = TwoYearGraphs(system, projector)
                inside.append(parts.picture(picture.render(both), picture.alt(both)))
        return parts.section("compare", message("panels.compare"), *inside, fold="shut")


def _place_name(job: Job) -> str:
    """What the place of a job is called."""
    if not job.place.id:
        return message("panels.typed-means")
    return climate(job.place.id) if job.place.kind == "demo" else job.place.id.replace("-", " ")


def names_of(first: Job, second: Job) -> Names:
    """What tells them apart; with one name for both nobody knows which is meant."""
    here, there = (_place_name(job) for job in (first, second))
    roofs = (
        (here, there)
        if first.assembly == second.assembly
        else (
            called(first.assembly.name),
            called(second.assembly.name),
        )
    )
    for pair in (roofs, (called(first.design), called(second.design))):
        if pair[0] != pair[1]:
            return pair
    return message("panels.now"), message("panels.the-other")


def _two_years(pair: tuple[Review, Review], names: Names) -> TwoYears | None:
    """One plane of each, the wettest wood, on the same axes; None where the years have no axis in common."""
    found = [moisture_year(each) if each.hourly else None for each in pair]
    years = [each for each in found if each is not None]  # none where no year was run, or nothing is of wood
    if len(years) < len(pair) or years[0].days[-1] != years[1].days[-1]:
        return None
    first, second = (dataclasses.replace(each, planes=each.planes[:1]) for each in years)
    return TwoYears(names, (first, second))


def _places(pair: tuple[Review, Review], system: str) -> Iterator[list[str]]:
    """A row for each place and limit that either verdict names: the worst of it in both."""
    found: list[dict[tuple[str, str], Finding]] = [
        {(each.what, each.place.layer): each for each in reversed(one.verdict.findings)} for one in pair
    ]
    for key in dict.fromkeys(key for one in found for key in reversed(one)):
        each = found[0].get(key) or found[1][key]
        row = [words.heading(each)]
        for one, judged in zip(found, pair, strict=True):
            here = one.get(key)
            row.append(
                message(
                    "panels.finding-at",
                    state=message("verdict.head", state=here.state),
                    amount=words.shown_when(here, judged.verdict.method, system),
                )
                if here
                else message("panels.nothing-found")
            )
        yield row


def _checks(pair: tuple[Review, Review], system: str) -> Iterator[list[str]]:
    """A row for each check of either roof."""
    for id in dict.fromkeys(each.id for one in pair for each in one.checks):
        both = [one.check(id) for one in pair]
        yield [next(each for each in both if each).question, *(_said(each, system) for each in both)]


def _said(check: Check | None, system: str) -> str:
    if check is None:
        return "—"
    few = check.numbers[-2:] if check.id in ("winter", "summer") else check.numbers[:2]
    numbers = _numbers(few, system)
    return message("panels.said-with-numbers", said=check.said, numbers=numbers)


def difference(pair: Sequence[Review], names: Sequence[str], system: str) -> str:
    """What differs between two reviews, in one sentence and one of each."""
    first, second = (message("verdict.state", state=each.state) for each in pair)
    hourly = all(bool(each.hourly) for each in pair)
    if first == second:
        start = message("panels.both-are", hourly=hourly, state=first)
    else:
        one, other = names
        start = message("panels.one-and-other", hourly=hourly, one=one, other=other, first=first, second=second)
    accounts = [
        message("panels.account-of", name=begun(name), account=words.account(each.verdict, system))
        for name, each in zip(names, pair, strict=True)
    ]
    return " ".join([start, *accounts])


# --- the printed page ----------------------------------------------------------------

_FORMS = {"pdf": "application/pdf", "html": "text/html"}


class Printing:
    """The printed page of the roof: each form that was made, and what was said of it."""

    def __init__(self) -> None:
        #: Form -> (file name, its bytes).
        self.made: dict[str, tuple[str, bytes]] = {}
        self.trouble, self.said = "", ""

    def make(self, found: Review | None, draft: Draft, form: str, size: str, system: str) -> None:
        """Make one form ("pdf" or "html") on "letter" or "a4" from a review, and put it into the learner's folder."""
        self.trouble, self.said = "", ""
        if found is None:
            self.trouble = message("panels.print-first-check")
            return
        if form not in _FORMS:
            raise UnknownName("printed form", form, _FORMS)
        from dryward.report import printed  # the PDF library is not needed before

        content = document(found, system, draft.name)
        made = printed.pdf(content, size) if form == "pdf" else printed.html(content, size).encode("utf-8")
        name = f"{draft.name.removesuffix('.toml')}.{form}"
        self.made[form] = (name, made)
        try:
            storage.write_whole(draft.path(draft.name).with_name(name), made)
        except OSError as error:
            raise BadFile(message("panels.print-not-written", name=name, why=error.strerror)) from None
        self.said = message("panels.print-written", name=name)

    def section(self, size: str) -> Part:
        """Buttons, and a link for what was made."""
        sizes = (("letter", message("panels.paper-letter")), ("a4", message("panels.paper-a4")))
        return parts.section(
            "print",
            message("panels.print"),
            parts.row(
                parts.select("print:size", message("panels.paper"), sizes, size),
                parts.button("print:pdf", message("panels.print-pdf")),
                parts.button("print:html", message("panels.print-html")),
                *(
                    parts.download(
                        f"print:save-{form}", message("panels.save-file", name=name), name, content, _FORMS[form]
                    )
                    for form, (name, content) in self.made.items()
                ),
            ),
            parts.text(self.trouble, "dw-trouble", alert=True) if self.trouble else None,
            parts.text(self.said) if self.said else None,
            fold="open",
        )
