"""Results."""

import asyncio
import dataclasses
import threading

from dryward import building, storage, weather
from dryward.building.job import Place, load_job
from dryward.checks import BadFile, PlainError
from dryward.panels.desk import parts
from dryward.pictures.year import TwoYearGraphs, TwoYears
from dryward.report import review
from dryward.report.document import LEGEND, amount, designs, mark, moisture_year
from dryward.units import GRAIN_OF_WATER
from dryward.verdict import words

#: Of the whole, the part that is shown as one step.
_STEP = 1 / 12


class Background:
    """One piece of work at a time.

    Parameters
    ----------
    show : function
        Called when something changed that the page should show.
    name : str
        What is worked out, as a sentence begins with it.

    Attributes
    ----------
    running : bool
    done, total : int
        How far it is.
    trouble : str
        Why the last work came to nothing.
    """

    def __init__(self, show, name):
        self.show, self.name = show, name
        self.running, self.done, self.total, self.trouble = False, 0, 1, ""
        self._run, self._stop = 0, False

    def start(self, work, ended):
        """Do some work; in the background where a browser waits.

        What goes on already is dropped.

        Parameters
        ----------
        work : function
            Takes a function of (parts done, parts in all) that says False
            when it shall end, and gives what was found.
        ended : function
            Called with what was found, unless the work failed, was stopped or
            was dropped.
        """
        self._run += 1
        self._stop, self.trouble, self.running, self.done, self.total = False, "", True, 0, 100
        try:
            loop = asyncio.get_running_loop()
        except RuntimeError:
            self._work(self._run, work, ended, lambda call, *what: call(*what))
            return

        def tell(call, *what):
            if not loop.is_closed():  # the page may be gone by then
                loop.call_soon_threadsafe(call, *what)

        todo = (self._run, work, ended, tell)
        threading.Thread(target=self._work, args=todo, daemon=True, name=self.name).start()

    def stop(self):
        """End the work that goes on."""
        self._stop = True

    def drop(self):
        """End it, and forget it at once."""
        self._run += 1
        self.running, self.trouble = False, ""

    def _work(self, run, work, ended, tell):
        def progress(done, total):
            tell(self._progress, run, done, total)
            return run == self._run and not self._stop

        found, trouble = None, ""
        try:
            found = work(progress)
        except PlainError as error:
            trouble = str(error)
        except Exception as error:  # a learner never sees a traceback
            kind = type(error).__name__
            trouble = f"{self.name} could not be worked out ({kind}). Change a layer and try again."
        tell(self._ended, run, found, trouble, ended)

    def _progress(self, run, done, total):
        if run != self._run:
            return
        if total != self.total or done < self.done or done - self.done >= total * _STEP:
            self.done, self.total = done, total
            self.show()

    def _ended(self, run, found, trouble, ended):
        if run != self._run:
            return
        self.running, self.trouble = False, trouble
        if not trouble:
            ended(found)
        self.show()

    def parts(self, stop):
        """The button that ends it and how far it is, while it goes on.

        Parameters
        ----------
        stop : str
            Key of the button.

        Returns
        -------
        list of dict
        """
        if not self.running:
            return []
        found = [parts.button(stop, "Stop"), parts.progress("Percent worked out", self.done, self.total)]
        if self.done == 0:
            found.append(parts.text("Getting ready; the first run on a machine takes some seconds."))
        return found


#: Draws of the uncertain inputs.
DRAWS = 24


class Checking:
    """One run of all checks.

    Parameters
    ----------
    show : function
        Called when something changed that the page should show.
    """

    def __init__(self, show):
        self.job, self.review = None, None
        self.task = Background(show, "The checks")

    def run(self, job, spread=0):
        """Check a job, unless one is being checked.

        Parameters
        ----------
        job : Job
        spread : int, optional
            Draws of the uncertain inputs for the hourly years.
        """
        if not self.task.running:
            self.task.start(
                lambda progress: review(job, progress=progress, spread=spread),
                lambda found: self._take(job, found),
            )

    def _take(self, job, found):
        self.job, self.review = job, found

    def stop(self):
        """End a run that is going on."""
        self.task.stop()

    def section(self, job, system):
        """The checks, with their limits beside them.

        Parameters
        ----------
        job : Job
            As it is now; checks of an older one say so.
        system : {"us", "si"}

        Returns
        -------
        dict
        """
        head = parts.row(
            parts.button("check:run", "Run all checks", disabled=self.task.running),
            parts.button(
                "check:spread",
                "Run with uncertain inputs",
                disabled=self.task.running,
                title=f"{DRAWS} draws of the layers' properties: half a minute or more",
            ),
            *self.task.parts("check:stop"),
        )
        inside = [head]
        if self.task.trouble:
            inside.append(parts.text(self.task.trouble, "dw-trouble", alert=True))
        if self.review is not None:
            if self.job != job:
                inside.append(parts.text("The roof has changed since these checks: run them again.", "dw-trouble"))
            inside.append(parts.text(self.review.headline, "dw-verdict"))
            inside.append(parts.text(self.review.limits, "dw-hint"))
            inside.append(parts.text(LEGEND, "dw-hint"))
            inside.append(parts.row(*(_check(each, system) for each in self.review.checks), style="dw-columns"))
            inside += [
                parts.text(words, "dw-hint") for words in (*designs(self.review), *self.review.notes, GRAIN_OF_WATER)
            ]
        inside.append(
            parts.text(
                "A band shows how far the layers' usual ranges carry a number. The steady checks always have one; "
                "the hourly years get theirs with uncertain inputs.",
                "dw-hint",
            )
        )
        return parts.section("checks", "Checks, side by side", *inside)


def _check(each, system):
    numbers = "; ".join(f"{number.label}: {amount(number, system)}" for number in each.numbers)
    small = " — ".join(part for part in (numbers, each.limits, each.source) if part)
    change = f"First: {each.change}" if each.change else ""
    lines = (each.what, *each.lines, each.why, change, each.matters)
    return parts.check_card(f"{each.asked} {each.said}.", each.answer, mark(each), lines, small)


def choices(work):
    """What the roof on the desk can be compared with.

    Parameters
    ----------
    draft : Draft

    Returns
    -------
    list of (id, words)
    """
    found = [("", "choose one")]
    if work.saved is not None:
        found.append(("saved", "this roof as it was saved"))
    found += [(f"preset:{id}", building.preset(id).name) for id in building.presets()]
    found += [(f"place:{id}", f"this roof in a {id.replace('-', ' ')} climate") for id in weather.demos()]
    return found + [(f"file:{name}", f"your file {name}") for name in work.files()]


def other(work, id):
    """The job that an id stands for.

    Parameters
    ----------
    draft : Draft
    id : str

    Returns
    -------
    Job

    Raises
    ------
    BadFile, UnknownName
        For a file that cannot be read or a place that is not known.
    """
    kind, _, name = id.partition(":")
    if kind == "saved" and work.saved is not None:
        return work.saved
    if kind == "preset":
        return dataclasses.replace(work.job, assembly=building.preset(name))
    if kind == "place":
        return dataclasses.replace(work.job, place=Place("demo", name, zone=""))
    return load_job(work.path(name))[0]


class Comparing:
    """The second roof and both sets of findings.

    Parameters
    ----------
    show : function
        Called when something changed that the page should show.
    """

    def __init__(self, show):
        self.id, self.pair, self.jobs, self._missing = "", None, None, ""
        self.task = Background(show, "The comparison")

    @property
    def trouble(self):
        """Why there is nothing to compare with, or why the comparison came to nothing."""
        return self._missing or self.task.trouble

    def choose(self, work, id, known=None):
        """Check both; what is being compared already is dropped.

        Parameters
        ----------
        draft : Draft
        id : str
            As `choices` gives them.
        known : Review, optional
            Of the roof on the desk, where it was checked as it stands now.
        """
        self.task.drop()
        self.id, self._missing, self.pair = id, "", None
        if not id:
            return
        try:
            jobs = (work.job, other(work, id))
        except PlainError as error:
            self._missing = str(error)
            return
        self.task.start(
            lambda progress: (
                known or review(jobs[0], progress, with_trials=False),
                review(jobs[1], progress, with_trials=False),
            ),
            lambda found: self._take(jobs, found),
        )

    def _take(self, jobs, found):
        self.jobs, self.pair = jobs, found

    def stop(self):
        """End a comparison that is going on."""
        self.task.stop()

    def section(self, work, system, projector):
        """Both side by side, the difference in words first.

        Parameters
        ----------
        draft : Draft
        system : {"us", "si"}
        projector : bool

        Returns
        -------
        dict
        """
        chosen = parts.select("compare", "Compare with", choices(work), self.id)
        old = self.pair is not None and self.jobs[0] != work.job
        again = parts.button("compare:again", "Compare again") if self.id and (old or self.trouble) else None
        inside = [parts.row(chosen, again, *self.task.parts("compare:stop"))]
        if self.trouble:
            inside.append(parts.text(self.trouble, "dw-trouble", alert=True))
        if self.pair:
            if old:
                inside.append(parts.text("The roof has changed since this comparison.", "dw-trouble"))
            names = self._names()
            inside.append(parts.text(difference(self.pair, names), "dw-verdict"))
            inside.append(parts.table(("", *names), [*_places(self.pair, system), *_checks(self.pair, system)]))
            state = self._state(names)
            if state is not None:
                picture = TwoYearGraphs(system, projector)
                inside.append(parts.picture(picture.render(state), picture.alt(state)))
        return parts.section("compare", "Two roofs or two climates", *inside, fold="shut")

    def _names(self):
        first, second = self.jobs
        places = tuple((job.place.id or "typed means").replace("-", " ") for job in self.jobs)
        names = places if first.assembly == second.assembly else tuple(job.assembly.name for job in self.jobs)
        designs = first.design, second.design
        # What tells them apart; with one name for both nobody knows which is meant.
        return next((pair for pair in (names, designs) if pair[0] != pair[1]), ("now", "the other"))

    def _state(self, names):
        years = [moisture_year(each) if each.hourly else None for each in self.pair]
        if None in years or years[0].days[-1] != years[1].days[-1]:
            return None
        # One plane each, the wettest wood, on the same axes.
        return TwoYears(names, tuple(dataclasses.replace(each, planes=each.planes[:1]) for each in years))


def _places(pair, system):
    """A row for each place and limit that either verdict names: the worst of it in both."""
    found = [{(each.what, each.place.layer): each for each in reversed(one.verdict.findings)} for one in pair]
    for key in dict.fromkeys(key for one in found for key in reversed(one)):
        each = found[0].get(key) or found[1][key]
        row = [words.heading(each)]
        for one, judged in zip(found, pair, strict=True):
            here = one.get(key)
            row.append(
                f"{words.word(here.state)}. {words.shown(here, system)}{words.when(here, judged.verdict.method)}"
                if here
                else "nothing found"
            )
        yield row


def _checks(pair, system):
    """A row for each check of either roof."""
    for id in dict.fromkeys(each.id for one in pair for each in one.checks):
        both = [one.check(id) for one in pair]
        yield [next(each for each in both if each).question, *(_said(each, system) for each in both)]


def _said(check, system):
    if check is None:
        return "—"
    few = check.numbers[-2:] if check.id in ("winter", "summer") else check.numbers[:2]
    numbers = "; ".join(f"{each.label}: {amount(each, system)}" for each in few)
    return f"{check.said}. {numbers}"


def difference(pair, names):
    """What differs between two reviews, in one or two sentences.

    Parameters
    ----------
    pair : (Review, Review)
    names : (str, str)

    Returns
    -------
    str
    """
    first, second = (each.state for each in pair)
    how = "hour by hour" if all(each.hourly for each in pair) else "by the checks that were run"
    start = (
        f"{words.capital(how)} both are {first}."
        if first == second
        else f"{words.capital(how)} {names[0]} is {first}, and {names[1]} is {second}."
    )
    return " ".join(
        [
            start,
            *(f"{words.capital(name)}: {words.account(each.verdict)}." for name, each in zip(names, pair, strict=True)),
        ]
    )


_KINDS = {"pdf": "application/pdf", "html": "text/html"}


class Printing:
    """Makes the page from the findings, and offers it."""

    def __init__(self):
        self.made, self.trouble, self.said = {}, "", ""

    def make(self, checking, work, kind, size, system):
        """Make one form of the page and put it into the learner's folder.

        Parameters
        ----------
        checking : Checking
        draft : Draft
        kind : {"pdf", "html"}
        size : {"letter", "a4"}
        system : {"us", "si"}
        """
        self.trouble, self.said = "", ""
        if checking.review is None or checking.job != work.job:
            self.trouble = "Run all checks first: the page prints what they found."
            return
        from dryward.report import document, printed  # the PDF library is not needed before

        content = document.document(checking.review, system, work.name)
        made = printed.pdf(content, size) if kind == "pdf" else printed.html(content, size).encode("utf-8")
        name = f"{work.name.removesuffix('.toml')}.{kind}"
        self.made[kind] = (name, made)
        target = work.path(work.name).with_name(name)
        try:
            storage.write_whole(target, made)
            self.said = f"{name} stands in your folder."
        except OSError as error:
            raise BadFile(f"{name}: it cannot be written ({error.strerror}); save it with the link instead.") from None

    def section(self, size):
        """Buttons, and a link for what was made.

        Parameters
        ----------
        size : {"letter", "a4"}

        Returns
        -------
        dict
        """
        return parts.section(
            "print",
            "The printed page",
            parts.row(
                parts.select("print:size", "Paper", (("letter", "US letter"), ("a4", "A4")), size),
                parts.button("print:pdf", "Make the PDF"),
                parts.button("print:html", "Make the web page"),
                *(
                    parts.download(f"print:save-{kind}", f"Save {name}", name, content, _KINDS[kind])
                    for kind, (name, content) in self.made.items()
                ),
            ),
            parts.text(self.trouble, "dw-trouble", alert=True) if self.trouble else None,
            parts.text(self.said) if self.said else None,
            fold="open",
        )
