"""The page of a lesson, and how to write one.

How a lesson page is written
----------------------------
One class in ``course/<id with underscores>/page.py``, a subclass of
`Page`, 60 to 150 lines; that of ``where_it_gets_wet`` is the example.  The words
of the lesson (question, prediction, takeaway, cautions, sources, limits,
questions) come from `teaching` by the page's id.  The class says the rest::

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
    takes the shared slider of `controls.standard`; ``standard("M_in").starting(3)``
    gives it another start (US value; a second number is the SI start); a
    `Slider` or a `Choice` of your own adds one.  ``dataclasses.replace(
    standard("Day"), play=60)`` adds a play button, 60 ms a notch.  Words
    of its own are the id of a message, ``"july.roof"``: the language may be
    chosen after the import.
``compute(at)``
    ``at`` has each control by name in SI (relative humidity 0 to 1; a choice
    gives the id of its option).  Raise a `PlainError` for what cannot be: the
    page shows the sentence and keeps the last picture.
``views(state)``
    The state each picture draws, when it is not `state` itself: one object,
    or a tuple with one for each picture.
``steps(state)``
    A list of `teaching.words.Step` (words, formula, result) that can be
    redone with a calculator; `panels.hand` has the usual lines.  Only asked
    for when its fold is open.
``given(state)``
    What the page holds fixed, as words after "Given:" under the picture:
    airs, layers and leaks that no control moves, from the page's own
    constants with ``self.held(value, quantity)``.
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
    background; ``course/hour_by_hour/page.py`` is the example.
``slow = True`` and ``preview(at)``
    For hourly models.  While a slider moves the page draws ``preview(at)``,
    a quick state (or None: the old picture stays, marked as working); once
    the slider has rested a quarter of a second it runs ``compute``.  Setting
    ``.value`` from code, and `refresh`, always run ``compute`` at once.
``buttons = (("run", "Run the year"),)``
    A button each; pressing it calls the method of that name, ``run()``, and
    then refreshes.
``desk()`` and ``act(key, value, buffers)``
    For a page that is worked on, such as a roof that is built: sections of
    fields, tables and buttons under the picture (made with `desk.parts`),
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

What a page does
----------------
It is in one of two states.  Settled, it shows one `Result`: what the controls
as they stand give, or the one before and in `trouble` the sentence why there
is none.  Resting, on a slow page, it shows the preview::

               a value set, refresh(), a move on a fast page
                    +------ compute -------+
                    |                      v
                    +------------------ settled <----- compute -----+
                                           |                        |
                             a move on a slow page: preview         |
                                           v                        |
      a move: the rest begins anew -->  resting -- REST is over, ---+
                                                   a value set, refresh()

A `Result` is taken whole or not at all: what fails half way leaves the page as
it was.  What the browser says is checked by `protocol`, then one method
``_on_<kind>`` does it; nothing that goes wrong there is raised.
"""

from __future__ import annotations

import asyncio
import dataclasses
import logging
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from types import SimpleNamespace
from typing import TYPE_CHECKING, Any

from dryward import units
from dryward.checks import PlainError, UnknownName
from dryward.language import joined, message
from dryward.panels import protocol
from dryward.panels.controls import PLACES, Choice, Control, Slider, SliderControl, standard
from dryward.panels.learner import Leaving, Prediction, Questions, Settings, Tasks
from dryward.panels.readouts import Readout, Strip
from dryward.panels.stage import Play, Stage
from dryward.teaching import lessons, words
from dryward.teaching.words import Step
from dryward.units import amounts

if TYPE_CHECKING:
    from dryward.building import Assembly
    from dryward.pictures.drawing import LivePicture, PictureCache
    from dryward.verdict import Verdict
    from dryward.weather import Air

_log = logging.getLogger(__name__)

#: Seconds a slider must rest before a slow model runs in full.
REST = 0.25


@dataclass(frozen=True)
class Result:
    """One state, and all that a page says and draws of it.

    `views` are what the pictures draw, `layers` the ground and what moves of
    each picture, as image bytes.
    """

    state: Any = None
    verdict: Verdict | None = None
    sentence: str = ""
    readouts: tuple[Readout, ...] = ()
    views: tuple[Any, ...] = ()
    layers: tuple[tuple[bytes, bytes], ...] = ()
    alts: tuple[str, ...] = ()


class Page:
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
    result : Result
        What is shown; `state`, `verdict`, `sentence`, `alts` are its parts.
    readouts : dict
        Name -> number in SI (None where there is none).
    picture : bytes
        The first picture; `pictures` has all.  The browser gets each in two
        layers, so the whole is drawn only for who asks.
    strips_shown : dict
        Name of a control -> its strip, as the browser gets it.
    trouble : str
        The sentence shown when the last move could not be computed.
    widget : PageWidget
        What the browser shows.

    Raises
    ------
    UnknownName
        For an unknown unit system.
    """

    id: str = ""
    handles: tuple[str | Slider | Choice, ...] = ()
    draws: type[LivePicture] | tuple[type[LivePicture], ...] = ()
    buttons: tuple[tuple[str, str], ...] = ()
    slow: bool = False
    #: The beats before the free page, on a lesson that has them.
    play: Play | None = None
    #: Whether its controls stand on the free page too.
    benched: bool = True
    #: Choices that `task_values` answers for.
    task_choices: tuple[str, ...] = ()

    def __init__(self, unit_system: str | None = None, settings: Settings | None = None) -> None:
        self.settings = settings or Settings()
        self.unit_system: str = _known(unit_system or self.settings["unit_system"])
        self.sliders = tuple(standard(each) if isinstance(each, str) else each for each in self.handles)
        self.kinds = self.draws if isinstance(self.draws, tuple) else (self.draws,)
        self.result, self.trouble = Result(), ""
        self._refused = ""  # the trouble of the act before this one, which goes with the next that is done
        self.strips_shown: dict[str, dict[str, Any]] = {}
        self._live_pictures: tuple[PictureCache, ...] = ()
        self._whole: tuple[bytes, ...] | None = ()
        self._drawn, self._heard, self._retype = 0, 0, ""
        self._resting: asyncio.TimerHandle | None = None
        self.lesson = lessons.lesson(self.id, self.unit_system)
        self.prediction = Prediction(self.lesson.prediction)
        self.prediction.again(self.settings.prediction(self.id))
        self.questions, self.tasks = Questions(self.id, self.unit_system), Tasks(self.id)
        self.questions.again(self.settings.answers(self.id), self.unit_system)
        self._open: set[str] = set()  # the folds that are open
        self._narrow = False  # whether the browser has a place as wide as a phone
        self.widget = protocol.PageWidget(texts=protocol.texts())
        self._make_controls({})
        self.stage = Stage(self)
        self.stage.stand()
        self.widget.observe(lambda change: self.hear({"kind": "moved", **change["new"]}), "moves")
        self.widget.on_msg(lambda widget, content, buffers: self.hear(content, buffers))
        self.refresh()
        self.send_frame()
        self.send_desk()

    # --- what a lesson says ----------------------------------------------------------

    def compute(self, at: SimpleNamespace) -> Any:
        """The state at the controls' values; the lesson writes it."""
        raise NotImplementedError

    def numbers(self, state: Any) -> Sequence[Readout]:
        """The readouts, the same names in the same order for every state; the lesson writes it."""
        raise NotImplementedError

    def says(self, state: Any) -> str:
        """The sentence under the picture; the lesson writes it."""
        raise NotImplementedError

    def views(self, state: Any) -> Any:
        """What each picture draws."""
        return state

    def steps(self, state: Any) -> list[Step]:
        """The steps of the hand calculation."""
        return []

    def given(self, state: Any) -> str:
        """What is held fixed; the lesson writes it, where something is."""
        return ""

    def judge(self, state: Any) -> Verdict | None:
        """What it means; None on a page that does not judge."""
        return None

    def strips(self, at: SimpleNamespace, state: Any) -> Mapping[str, Any]:
        """The state along each control: a `Strip`, or what `put_strip` gave before."""
        return {}

    def preview(self, at: SimpleNamespace) -> Any:
        """A quick state while a slider of a slow page moves."""
        return None

    def desk(self) -> Sequence[dict[str, Any] | None]:
        """The sections of a page that is worked on, made with `desk.parts`."""
        return ()

    def act(self, key: str, value: Any = None, buffers: Sequence[Any] = ()) -> None:
        """The reader did something on the desk."""

    @property
    def unsaved(self) -> bool:
        """Whether work on the desk would be lost if the page were closed now."""
        return False

    def seen(self) -> None:
        """The page of the index came into view again."""

    def task_values(self) -> Mapping[str, float]:
        """What a choice of this page means to a practical task: control name -> SI."""
        return {}

    # --- what a lesson may use -------------------------------------------------------

    def show(self, value: float, quantity: str, digits: int | None = None) -> str:
        """A number of SI with its unit, as this reader has it."""
        return units.show(value, quantity, self.unit_system, digits)

    def held(self, value: float, quantity: str) -> str:
        """The same of what is held fixed, without a tail of zeros."""
        unit = units.shown_unit(quantity, self.unit_system).name
        most = 1 if quantity == "temperature" else 12
        return units.with_unit(units.number(units.from_si(value, unit), most=most), unit)

    def air_held(self, air: Air) -> str:
        """An air that is held fixed."""
        temperature = self.held(air.temperature, "temperature")
        return message(
            "panels.given-air", temperature=temperature, humidity=self.held(air.relative_humidity, "relative humidity")
        )

    def area_held(self, area: float) -> str:
        """How large a roof is held, and the one that amounts of water are told on."""
        return message("panels.given-area", area=self.held(area, "area"), told=amounts.roof_area(self.unit_system))

    def roof_held(self, roof: Assembly) -> str:
        """What is fixed of the teaching roof: its insulation, and its drywall with the paint."""
        drywall = 1 / sum(1 / layer.permeance for layer in roof.layers if layer.name in ("paint", "gypsum board"))
        fill = units.thickness(roof.layer("insulation").drawn_thickness, self.unit_system)
        return message("panels.given-roof", fill=fill, drywall=self.held(drywall, "permeance"))

    def say(self, text: str) -> str:
        """A text whose ``{20 degF}`` numbers are put in this reader's units."""
        return words.shown(text, self.unit_system)

    def along(self, name: str, count: int = PLACES) -> list[Any]:
        """Even places along a slider, left to right, in SI; or the options of a choice."""
        return self.controls[name].along(count)

    @property
    def at(self) -> SimpleNamespace:
        """All controls by name, in SI."""
        return SimpleNamespace(**{name: control.si for name, control in self.controls.items()})

    # --- what is shown ---------------------------------------------------------------

    @property
    def state(self) -> Any:
        """What `compute` gave."""
        return self.result.state

    @property
    def verdict(self) -> Verdict | None:
        """Of a page that judges."""
        return self.result.verdict

    @property
    def sentence(self) -> str:
        """The words under the picture, headed by the state on a page that judges."""
        return self.result.sentence

    @property
    def narrow(self) -> bool:
        """Whether the browser has a place as wide as a phone."""
        return self._narrow

    @property
    def alts(self) -> tuple[str, ...]:
        """Each picture in words."""
        return self._painted().alts

    @property
    def layers(self) -> tuple[tuple[bytes, bytes], ...]:
        """Each picture as its ground and what moves."""
        return self._painted().layers

    @property
    def readout_list(self) -> list[Readout]:
        """The readouts in their order."""
        return list(self.result.readouts)

    @property
    def readouts(self) -> dict[str, Any]:
        """Numbers in SI by name, and the state on a page that judges."""
        found: dict[str, Any] = {each.name: each.value for each in self.result.readouts}
        return found if self.verdict is None else {**found, "state": self.verdict.state}

    @property
    def pictures(self) -> tuple[bytes, ...]:
        """All pictures, image bytes."""
        if self._whole is None:
            drawn = zip(self.live_pictures(), self.result.views, strict=True)
            self._whole = tuple(picture.render(view) for picture, view in drawn)
        return self._whole

    @property
    def picture(self) -> bytes:
        """The first picture, image bytes."""
        return self.pictures[0] if self.pictures else b""

    @property
    def has_steps(self) -> bool:
        """Whether the lesson wrote a hand calculation."""
        return type(self).steps is not Page.steps

    @property
    def locked(self) -> bool:
        """Whether controls and drawing wait for a prediction; a stage has its own bets, the index nothing to cover."""
        waits = bool(self.draws) and not self.stage.on
        return waits and self.prediction.chosen is None and not self.settings["instructor"]

    @property
    def covered(self) -> bool:
        """Whether the free page is not to be seen, and so is not drawn for the browser."""
        return self.locked or self.stage.on

    def live_pictures(self) -> tuple[PictureCache, ...]:
        """The pictures of the present unit system, type size and width, made once; a switch of one drops them."""
        from dryward.pictures.drawing import PictureCache  # Matplotlib: a page needs it only when it is opened

        if not self._live_pictures:
            projector = bool(self.settings["projector"])
            self._live_pictures = tuple(
                PictureCache(kind, self.unit_system, projector, self._narrow) for kind in self.kinds
            )
        return self._live_pictures

    # --- from one state to the next --------------------------------------------------

    def refresh(self) -> None:
        """Compute and draw at once, from the controls as they stand.

        What `compute` raises by mistake is raised, after the page has said so
        in one sentence; a `PlainError` is shown and not raised.
        """
        self._settle()
        try:
            self._take(self.compute(self.at))
            self.trouble = ""
        except PlainError as reason:
            self.trouble = str(reason)
        except Exception as reason:
            self.trouble = message("panels.not-worked-out", kind=type(reason).__name__)
            self.send_live()
            raise
        self.send_live()

    def follow(self) -> None:
        """Refresh for the browser: what goes wrong is said and never raised."""
        try:
            self.refresh()
        except Exception as reason:
            self._mishap(reason)

    def _rest(self, loop: asyncio.AbstractEventLoop) -> None:
        """Draw the preview now, and all of it once the slider has rested."""
        self._settle()
        self._resting = loop.call_later(REST, self.follow)
        try:
            state = self.preview(self.at)
            if state is not None:
                self._take(state, whole=False)
            self.trouble = ""
        except PlainError as reason:
            self.trouble = str(reason)
        except Exception as reason:
            self._mishap(reason)
        self.send_live()

    def _settle(self) -> None:
        if self._resting is not None:
            self._resting.cancel()
            self._resting = None

    def _take(self, state: Any, whole: bool = True) -> None:
        """Show a state; without `whole` the strips stay as they were."""
        before, self.result = self.result, self._result_of(state)
        if whole:
            try:
                found = self.strips(self.at, state)
            except Exception:
                self.result = before
                raise
            self.strips_shown = {
                name: self._with_handle(name, strip) if isinstance(strip, Strip) else strip
                for name, strip in found.items()
            }
        self._drawn, self._whole = self._drawn + 1, None
        self.stage.follow(state)

    def _result_of(self, state: Any) -> Result:
        views = self.views(state)
        views = views if isinstance(views, tuple) else (views,) * len(self.kinds)
        readouts, sentence, verdict = tuple(self.numbers(state)), self.says(state), self.judge(state)
        if verdict is not None:
            sentence = message(
                "panels.state-and-sentence", state=message("verdict.head", state=verdict.state), sentence=sentence
            )
            views = tuple(dataclasses.replace(view, verdict=verdict.state) for view in views)
        return Result(state, verdict, sentence, readouts, views)

    def _painted(self) -> Result:
        """The result with its pictures drawn, which nobody needs while they are covered."""
        if self.result.views and not self.result.layers:
            drawn = list(zip(self.live_pictures(), self.result.views, strict=True))
            layers = tuple(picture.layers(view) for picture, view in drawn)
            alts = tuple(picture.alt(view) for picture, view in drawn)
            self.result = dataclasses.replace(self.result, layers=layers, alts=alts)
        return self.result

    def _with_handle(self, name: str, strip: Strip) -> dict[str, Any]:
        """A strip for the browser, with the page's own state under the handle."""
        control = self.controls[name]
        return (strip.with_handle(control, self.verdict.state) if self.verdict else strip).shown(control)

    def put_strip(self, name: str, strip: Strip) -> dict[str, Any]:
        """Show a strip that was filled meanwhile, and give what is shown; see `filling.Filling`."""
        shown = self._with_handle(name, strip)
        self.strips_shown = {**self.strips_shown, name: shown}
        return shown

    def _make_controls(self, keep: Mapping[str, Any]) -> None:
        """Make the controls, at their starts or at values of SI."""
        self.controls: dict[str, Control] = {
            each.name: each.control(self.unit_system, keep.get(each.name)) for each in self.sliders
        }
        for name, control in self.controls.items():
            control.moved = partial(self._moved_by_hand, name)
        self._errors: dict[str, str] = {}

    def _moved_by_hand(self, name: str) -> None:
        """A value was set by code: what is not the beat's to move is moved on the free page."""
        left = self.stage.leave(name)
        self.refresh()
        if left:
            self.send_frame()

    def switch_units(self, unit_system: str) -> None:
        """Show everything in the other unit system, the sliders where they are; UnknownName for one there is not."""
        keep = {name: control.si for name, control in self.controls.items()}
        self.unit_system = self.settings["unit_system"] = _known(unit_system)
        self._live_pictures = ()
        self._make_controls(keep)
        self.refresh()
        self.lesson = lessons.lesson(self.id, self.unit_system)
        self.prediction.asked = self.lesson.prediction
        self.questions.ask(self.unit_system)
        self.send_frame()
        self.send_desk()

    # --- what the browser says -------------------------------------------------------

    def hear(self, content: object, buffers: Sequence[Any] = ()) -> None:
        """Do what one message of the browser asks; what goes wrong is said in one sentence and never raised."""
        try:
            heard = protocol.read(content)
            do: Callable[..., None] = getattr(self, f"_on_{heard.kind}")
            if heard.kind == "desk":
                do(**heard.fields, buffers=buffers)
            else:
                do(**heard.fields)
            refused, self._refused = self._refused, ""
            if refused and self.trouble == refused:
                self.trouble = ""
                self.send_live()
        except PlainError as reason:
            self.trouble = self._refused = str(reason)
            self.send_live()
        except Exception as reason:  # a learner never sees a traceback
            self._mishap(reason)

    def _mishap(self, reason: Exception) -> None:
        """Say in one sentence that something unforeseen happened, and log it."""
        _log.debug("page %s", self.id, exc_info=reason)
        self.trouble = message("panels.not-done", kind=type(reason).__name__)
        self.send_live()

    def _on_opened(self) -> None:
        self.settings.opened(self.id)
        if self.settings.trouble:
            self.send_frame()

    def _on_seen(self) -> None:
        self.seen()

    def _on_moved(self, serial: int, system: str, values: Mapping[str, object]) -> None:
        if system != self.unit_system:
            return  # sent before a switch of units
        for name, value in values.items():
            if name in self.controls:
                try:
                    self.controls[name].put(value)
                    self._errors.pop(name, None)
                except PlainError as reason:
                    self._errors[name] = str(reason)
        self._heard = serial
        loop = _running_loop() if self.slow else None
        if loop is None:
            self.follow()
        else:
            self._rest(loop)

    def _on_typed(self, name: str, text: str | None) -> None:
        control = self.controls.get(name)
        if not isinstance(control, SliderControl):  # nothing is typed into a choice
            raise protocol.Malformed
        self._errors.pop(name, None)
        if text is not None:
            try:
                control.put(control.read(text))
            except PlainError as reason:
                self._errors[name] = str(reason)
            else:
                self._retype = name
                self.follow()
                self._retype = ""
                return
        self.send_live()

    def _on_action(self, name: str) -> None:
        if name not in dict(self.buttons):
            raise protocol.Malformed
        getattr(self, name)()
        self.follow()

    def _on_desk(self, key: str, value: Any, buffers: Sequence[Any]) -> None:
        if key.startswith("task:"):
            self._task(key)
        else:
            self.act(key, value, buffers)

    def _task(self, key: str) -> None:
        """Put the sliders at the start of a practical task, or judge them."""
        _, what, id = (*key.split(":", 2), "", "")[:3]
        if what not in ("start", "check") or id not in [task.id for task in self.tasks.tasks]:
            raise protocol.Malformed
        if what == "start":
            self.tasks.start(id, self.controls)
        elif self.tasks.judge(id, self.controls, self.unit_system, self.task_values, self.task_choices):
            self.settings.solved(self.id, id)
        self.follow()
        self.send_desk()

    def _on_predict(self, choice: int | None) -> None:
        if self.stage.on:
            if choice is not None:
                self._on_bet(choice)
                return
            self.stage.again()
            self._turn()
            return
        if self.play and choice is None:
            self._on_beat(0)
            return
        self.predict(choice)
        self.send_live()
        self.send_frame()

    def predict(self, choice: int | None) -> None:
        """Bet on the lesson's prediction, and keep it; with None take the bet back."""
        self.prediction.choose(choice)
        key = self.prediction.key()
        if key is not None:
            self.settings.predicted(self.id, key)

    def _on_bet(self, choice: int) -> None:
        self.stage.choose(choice)
        self._turn()

    def _on_beat(self, number: int) -> None:
        self.stage.go(number)
        self._turn()

    def _turn(self) -> None:
        """Show another beat, or more of this one: its case, and then its words."""
        self.follow()
        self.send_frame()

    def _on_reveal(self) -> None:
        if self.stage.on and self.settings["instructor"]:
            self.stage.show()
            self._turn()
        elif self.settings["instructor"] or self.prediction.chosen is not None:
            self.prediction.reveal = not self.prediction.reveal
            self.send_frame()

    def _on_hands(self, choice: int, by: int) -> None:
        (self.stage if self.stage.on else self.prediction).raise_hand(choice, by)
        self.send_frame()

    def _on_answer(self, number: int, choice: int) -> None:
        picked = self.questions.answer(number, choice)
        self.settings.answered(self.id, self.questions.asked[number], picked)
        self.send_frame()

    def _on_still(self, belief: str, holds: bool) -> None:
        Leaving(self.lesson, self.settings).say(belief, holds)
        self.send_frame()

    def _on_set_out(self, belief: str) -> None:
        """Put controls and desk as the words that deny a belief say; controls that they do not name at their start."""
        asked = dict(self.lesson.sets).get(belief)
        if asked is None or self.covered:
            raise protocol.Malformed
        for control in self.controls.values():
            value = asked.get(control.name, control.start)
            if isinstance(control, SliderControl) and isinstance(value, str):
                value = control.read(value)
            control.put(value)
            self._errors.pop(control.name, None)
        for key, value in asked.items():
            if key not in self.controls:
                self.act(key, value)
        self.follow()

    def _on_new_questions(self) -> None:
        self.questions.renew(self.unit_system)
        self.send_frame()

    def _on_fold(self, key: str, open: bool) -> None:
        (self._open.add if open else self._open.discard)(key)
        if key == "arithmetic" and open:
            self.send_live()

    def _on_system(self, value: str) -> None:
        self.switch_units(value)

    def _on_projector(self, value: bool) -> None:
        self._switch("projector", value)

    def _on_narrow(self, value: bool) -> None:
        self._narrow, self._live_pictures = value, ()
        self.result = dataclasses.replace(self.result, layers=(), alts=())  # the same state, drawn anew
        self._drawn, self._whole = self._drawn + 1, None
        self.send_live()
        self.send_frame()

    def _on_instructor(self, value: bool) -> None:
        self.prediction.reveal = False
        self._switch("instructor", value)

    def _switch(self, name: str, value: bool) -> None:
        self.settings[name] = value
        self._live_pictures = ()
        self.follow()
        self.send_frame()

    # --- what the browser is told ----------------------------------------------------

    def send_live(self) -> None:
        """Send what a move changes."""
        # Before a bet nothing of the answer is to be found in what the browser holds.
        covered = self.covered
        shown = () if covered else self.layers
        live: protocol.Live = {
            "seen": self._heard,
            "values": {name: control.value for name, control in self.controls.items()},
            "errors": dict(self._errors),
            "retype": self._retype,
            "strips": self.strips_shown if self.stage.strips and not self.locked else {},
            "drawn": self._drawn,
            "pictures": [moving for _, moving in shown],
            "alts": [] if covered else list(self.alts),
            "readouts": []
            if covered
            else [each.shown(self.unit_system) for each in self.result.readouts if not each.hidden],
            "sentence": "" if covered else self.sentence,
            "given": self._given_line(),
            "state": "" if covered or not self.verdict else self.verdict.state,
            "trouble": self.trouble,
            "steps": [] if covered else self._steps(),
            "busy": self._resting is not None,
            "stage": self.stage.live(),
        }
        # In one message, so that no curve is ever seen over the axis of another.
        with self.widget.hold_sync():
            self.widget.live = dict(live)
            self.widget.grounds = [ground for ground, _ in shown]
            self.widget.stills = self.stage.stills()

    def _given_line(self) -> str:
        """The line of what is held fixed."""
        held = "" if self.state is None else self.given(self.state)
        return held and message("panels.given", held=held)

    def _steps(self) -> list[dict[str, str]]:
        """The steps of the hand calculation, when its fold is open."""
        if "arithmetic" not in self._open or self.state is None:
            return []
        found = self.steps(self.state)
        return [{"words": each.words, "formula": each.sum, "result": str(each.result)} for each in found]

    def send_frame(self) -> None:
        """Build the page on the screen anew: words, units or locks have changed."""
        settings = self.settings
        before = [lessons.lesson(id) for id in self.lesson.needs]
        numbered = [message("panels.numbered-lesson", number=each.number, title=each.title) for each in before]
        needs = joined("panels.lesson-after-lesson", numbered)
        leaving = Leaving(self.lesson, settings)
        frame: protocol.Frame = {
            "number": self.lesson.number,
            "title": self.lesson.title,
            "question": self.lesson.question,
            "care": self.lesson.care,
            "needs": needs and message("panels.best-after", lessons=needs),
            "system": self.unit_system,
            "projector": settings["projector"] and not self._narrow,
            "narrow": self._narrow,
            "type_size": settings["type_size"],
            "instructor": settings["instructor"],
            "locked": self.locked,
            "reveal": self.prediction.reveal,
            "prediction": self.prediction.frame(settings["instructor"]),
            "controls": [control.frame() for control in self.controls.values()]
            if self.benched or self.stage.on
            else [],
            "actions": [{"name": name, "words": text} for name, text in self.buttons],
            "pictures": []
            if self.stage.on
            else [{"width": each.width, "height": each.height} for each in self.live_pictures()],
            "readouts": [{"name": each.name, "words": each.words} for each in self.readout_list if not each.hidden],
            "has_arithmetic": self.has_steps,
            # What it comes to, where from, and what is asked of it would tell a good part of the answer.
            "folds": [] if self.covered else self._folds(),
            "questions": [] if self.covered else self.questions.frame(),
            "still_waits": not self.covered and leaving.waits,
            "still": leaving.frame(self.unit_system),
            "on": leaving.way(),
            "unkept": settings.trouble,
            "takeaway": "" if self.covered else self.lesson.takeaway,
            "cautions": [
                {"title": each.title, "text": self.say(each.text)} for each in map(words.caution, self.lesson.cautions)
            ],
            "stage": self.stage.frame(),
        }
        self.widget.frame = dict(frame)

    def _folds(self) -> list[dict[str, Any]]:
        """Where the lesson's numbers are from, and what its picture leaves out."""
        left_out = message("panels.limits-fold", picture=bool(self.draws))
        return [
            {"key": "sources", "title": message("panels.sources-fold"), "items": list(self.lesson.sources)},
            {"key": "limits", "title": left_out, "items": list(self.lesson.limits)},
        ]

    def send_desk(self) -> None:
        """Show the sections of the desk anew, those of the practical tasks last."""
        sections = [each for each in self.desk() if each] + self.tasks.sections(self.say)
        desk: protocol.Desk = {"sections": sections, "unsaved": self.unsaved}
        self.widget.desk = dict(desk)

    def __repr__(self) -> str:
        return message("panels.standing")

    def _repr_mimebundle_(self, **keys: Any) -> Any:
        return self.widget._repr_mimebundle_(**keys)


def _known(unit_system: str) -> str:
    if unit_system not in units.SHOWN:
        raise UnknownName("unit system", unit_system, units.SHOWN)
    return unit_system


def _running_loop() -> asyncio.AbstractEventLoop | None:
    """The loop that brings the browser's messages, where there is one."""
    try:
        return asyncio.get_running_loop()
    except RuntimeError:
        return None
