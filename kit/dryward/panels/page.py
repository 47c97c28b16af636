"""The page of a lesson, and how to write one.

How a lesson page is written
----------------------------
One class in ``course/<id with underscores>/page.py``, a subclass of
`Page`, 60 to 150 lines; ``where_it_gets_wet.py`` is the example.  The words
of the lesson (question, prediction, takeaway, cautions, sources, limits,
checks) come from `teaching` by the page's id.  The class says the rest::

    class WhichWay(Page):
        id = "which-way-vapor-goes"         # the lesson's file name without number
        handles = ("T_out", "RH_out", standard("T_in").starting(75), "RH_in")
        draws = TwoRooms                    # a LivePicture class, or a tuple of them

        def compute(self, at):              # physics; SI in, any object out
            return state

        def numbers(self, state):           # at most five
            return [Readout("drive", "Vapor pressure difference", state.drive, "pressure")]

        def says(self, state):              # one sentence made from the numbers
            return f"Vapor moves outward, pushed by {self.show(state.drive, 'pressure')}."

Everything else is optional:

``handles``
    At most four, in the order climate, room air, assembly, view.  A name
    takes the shared control of `standard`; ``standard("M_in").starting(3)``
    gives it another start (US value; a second number is the SI start); a
    `Slider` or a `Choice` of your own adds one.  ``dataclasses.replace(
    standard("Day"), play=60)`` adds a play button, 60 ms a notch.
``compute(at)``
    ``at`` has each control by name in SI (relative humidity 0 to 1; a choice
    gives the id of its option).  Raise a `PlainError` for what cannot be: the
    page shows the sentence and keeps the last picture.
``views(state)``
    The state each picture draws, when it is not `state` itself: one object,
    or a tuple with one for each picture.
``steps(state)``
    A list of `teaching.arithmetic.Step` (words, formula, result) that can be
    redone with a calculator; `panels.hand` has the usual lines.  Only asked
    for when its fold is open.
``judge(state)``
    A `verdict.Verdict`, on a page that judges.  Its state heads the sentence
    and stands in what the pictures draw, in their words for those who cannot
    see them, in ``page.readouts["state"]`` and under the handle of each
    strip: so ``says`` gives the rest of the sentence, and no other word of
    state.
``strips(at, state)``
    ``{control name: Strip(states)}``, a state for each of
    ``self.along(name)``, the places in SI along the slider, or for each
    option of a choice; the page puts its own under the handle.  Where each
    place needs an hourly run, `filling.Filling` fills the strips in the
    background; ``hour_by_hour.py`` is the example.
``slow = True`` and ``preview(at)``
    For hourly models.  While a slider moves the page draws ``preview(at)``,
    a quick state (or None: the old picture stays, marked as working); once
    the slider has rested a quarter of a second it runs ``compute``.  Setting
    ``.value`` from code, and `refresh`, always run ``compute`` at once.
``buttons = (("run", "Run the year"),)``
    A button each; pressing it calls the method of that name, ``run()``, and
    then refreshes.
``bench()`` and ``act(key, value, buffers)``
    For a page that is worked on, such as a roof that is built: sections of
    fields, tables and buttons under the picture (made with `bench.parts`),
    and what a change of one of them does.
``self.unit_system``, ``self.show(value, quantity)``, ``self.say(text)``
    The reader's units; a number of SI in them; a text with ``{20 degF}``
    numbers in them.

A page in use::

    page = panels.page("where-it-gets-wet", unit_system="us")
    page.controls["RH_in"].value = 50    # the shown unit; checked; redraws
    page.readouts["gain"]                # SI
    page.sentence, page.picture          # words, image bytes
    page.refresh()                       # computes and draws at once
"""

import dataclasses
from types import SimpleNamespace

from dryward import units
from dryward.checks import PlainError, UnknownName
from dryward.panels.bench.tasks import Tasks
from dryward.panels.desk import Desk
from dryward.panels.readouts import Strip
from dryward.panels.settings import Settings
from dryward.panels.sheet import STANDING, Sheet
from dryward.panels.standard import standard
from dryward.panels.talk import Talk
from dryward.pictures.live import PictureCache
from dryward.teaching import words
from dryward.verdict.words import capital

#: Places along a slider at which a strip is judged.
PLACES = 41


class Page(Talk):
    """Base of all lesson pages; see the module for how one is written.

    Parameters
    ----------
    unit_system : {"us", "si"}, optional
        Otherwise what the learner chose last, "us" at first.
    settings : Settings, optional
        What is remembered; otherwise the learner's own file.

    Attributes
    ----------
    controls : dict
        Name -> control with ``value`` (shown unit), ``si``, ``min``, ``max``,
        ``options``.
    readouts : dict
        Name -> number in SI (None where there is none).
    sentence : str
    picture : bytes
        The first picture; `pictures` has all.  The browser gets each in two
        layers, so the whole is drawn only for who asks.
    verdict : Verdict or None
        Of a page that judges.
    trouble : str
        The sentence shown when the last move could not be computed.
    state : object
        What `compute` gave.
    widget : Sheet
        What the browser shows.

    Raises
    ------
    UnknownName
        For an unknown unit system.
    """

    id = ""
    handles = ()
    draws = ()
    buttons = ()

    def __init__(self, unit_system=None, settings=None):
        self.settings = settings or Settings()
        self.unit_system = unit_system or self.settings["unit_system"]
        if self.unit_system not in units.SHOWN:
            raise UnknownName("unit system", self.unit_system, units.SHOWN)
        self.sliders = tuple(standard(each) if isinstance(each, str) else each for each in self.handles)
        self.state, self.verdict, self.sentence, self.trouble = None, None, "", ""
        self.readouts, self.layers, self.alts = {}, (), ()
        self._shown, self._whole = (), ()
        self.kinds = self.draws if isinstance(self.draws, tuple) else (self.draws,)
        self.readout_list, self._live, self._drawings = [], {}, 0
        self._waiting, self._seen, self._errors, self._retype = None, 0, {}, ""
        self._strips = {}
        self.widget = Sheet()
        self._set_up()
        self.desk, self.tasks = Desk(self), Tasks(self)
        self.refresh()
        self.desk.show()
        self.send_bench()

    # --- what a lesson says --------------------------------------------------

    def compute(self, at):
        """The state at the controls' values; the lesson writes it."""
        raise NotImplementedError

    def numbers(self, state):
        """The readouts, the same names in the same order for every state; the lesson writes it."""
        raise NotImplementedError

    def says(self, state):
        """The sentence under the picture; the lesson writes it."""
        raise NotImplementedError

    def views(self, state):
        """What each picture draws."""
        return state

    def steps(self, state):
        """The steps of the hand calculation."""
        return []

    def judge(self, state):
        """What it means; None on a page that does not judge."""

    def strips(self, at, state):
        """The state along each control."""
        return {}

    def bench(self):
        """The sections of the page's bench; see `bench`."""
        return self.tasks.sections()

    def act(self, key, value=None, buffers=()):
        """The reader did something on the bench."""
        if key.startswith("task:"):
            self.tasks.act(key)
            self.follow()
            self.send_bench()

    def seen(self):
        """The page of the index came into view again."""

    def task_values(self):
        """What a choice of this page means to a practical task: control name -> SI."""
        return {}

    def preview(self, at):
        """A quick state while a slider of a slow page moves."""

    # --- what a lesson may use ------------------------------------------------

    def show(self, value, quantity, digits=None):
        """A number of SI with its unit, as this reader has it."""
        return units.show(value, quantity, self.unit_system, digits)

    def say(self, text):
        """A text whose ``{20 degF}`` numbers are put in this reader's units."""
        return words.shown(text, self.unit_system)

    def along(self, name, count=PLACES):
        """Even places along a slider, left to right, in SI; or the options of a choice."""
        control = self.controls[name]
        return list(control.options) if control.options else control.along(count)

    @property
    def at(self):
        """All controls by name, in SI."""
        return SimpleNamespace(**{name: control.si for name, control in self.controls.items()})

    # --- what a page does -------------------------------------------------------

    def refresh(self):
        """Compute and draw at once, from the controls as they stand.

        Raises
        ------
        Exception
            What `compute` raises by mistake, after the page has said so in
            one sentence; a `PlainError` is shown and not raised.
        """
        self._stop_waiting()
        try:
            self._take(self.compute(self.at))
            self.trouble = ""
        except PlainError as reason:
            self.trouble = str(reason)
        except Exception as reason:
            self.trouble = f"This page could not work that out ({type(reason).__name__}). Move a control back."
            self.send()
            raise
        self.send()

    def _take(self, state, full=True):
        views = self.views(state)
        views = views if isinstance(views, tuple) else (views,) * len(self.kinds)
        live = self.live_pictures()
        # All of it or nothing: what fails half way leaves the page as it was.
        readouts, sentence, verdict = list(self.numbers(state)), self.says(state), self.judge(state)
        if verdict is not None:
            sentence = f"{capital(verdict.state)}. {sentence}"
            views = tuple(dataclasses.replace(view, verdict=verdict.state) for view in views)
        layers = tuple(picture.layers(view) for picture, view in zip(live, views, strict=True))
        alts = tuple(picture.alt(view) for picture, view in zip(live, views, strict=True))
        before, self.verdict = self.verdict, verdict
        if full:
            try:
                found = self.strips(self.at, state)
            except Exception:
                self.verdict = before
                raise
            self._strips = {
                name: self._here(name, strip, verdict).shown(self.controls[name]) if isinstance(strip, Strip) else strip
                for name, strip in found.items()
            }
        self.state, self.sentence, self.layers, self.alts = state, sentence, layers, alts
        self._shown, self._whole = tuple(zip(live, views, strict=True)), None
        self.readout_list = readouts
        self._drawings += 1
        self.readouts = {each.name: each.value for each in readouts}
        if verdict is not None:
            self.readouts["state"] = verdict.state

    def _here(self, name, strip, verdict):
        """A strip with the page's own state under the handle."""
        control = self.controls[name]
        if verdict is None:
            return strip
        if control.options:
            place = control.options.index(control.value)
            return Strip((*strip.states[:place], verdict.state, *strip.states[place + 1 :]))
        here = min(max(control.fraction(control.value), 0.0), 1.0)
        even = strip.places or [k / (len(strip.states) - 1) for k in range(len(strip.states))]
        known = {place: state for place, state in zip(even, strip.states, strict=True) if abs(place - here) > 1e-6}
        known[here] = verdict.state
        places = tuple(sorted(known))
        return Strip(tuple(known[place] for place in places), places)

    def put_strip(self, name, strip):
        """Show a strip that was filled meanwhile, and give what is shown; see `filling`."""
        shown = self._here(name, strip, self.verdict).shown(self.controls[name])
        self._strips = {**self._strips, name: shown}
        return shown

    def live_pictures(self):
        """The pictures of the present unit system and type size, made once; those of another are dropped."""
        key = (self.unit_system, self.settings["projector"])
        if key not in self._live:
            self._live = {
                key: tuple(PictureCache(kind, self.unit_system, self.settings["projector"]) for kind in self.kinds)
            }
        return self._live[key]

    @property
    def pictures(self):
        """All pictures, image bytes."""
        if self._whole is None:
            self._whole = tuple(picture.render(view) for picture, view in self._shown)
        return self._whole

    @property
    def picture(self):
        """The first picture, image bytes."""
        return self.pictures[0] if self.pictures else b""

    def _set_up(self, keep=None):
        """Make the controls, at their starts or at values of SI."""
        keep = keep or {}
        self.controls = {each.name: each.control(self.unit_system, keep.get(each.name)) for each in self.sliders}
        for control in self.controls.values():
            control.moved = self.refresh
        self._errors = {}

    def switch_units(self, unit_system):
        """Show everything in the other unit system, the sliders where they are."""
        if unit_system not in units.SHOWN:
            raise UnknownName("unit system", unit_system, units.SHOWN)
        keep = {name: control.si for name, control in self.controls.items()}
        self.unit_system = self.settings["unit_system"] = unit_system
        self._set_up(keep)
        self.refresh()
        self.desk.new_units()
        self.send_bench()

    @property
    def has_steps(self):
        """Whether the lesson wrote a hand calculation."""
        return type(self).steps is not Page.steps

    def __repr__(self):
        return STANDING

    def _repr_mimebundle_(self, **keys):
        return self.widget._repr_mimebundle_(**keys)
