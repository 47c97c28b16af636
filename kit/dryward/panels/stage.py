"""The stage: a lesson as a short play of beats before its free page.

How a play is written
---------------------
``course/<name>/beats.py`` has a `Play`: a scene and two to four beats (three to
five steps with the free page), which the page names in ``play``.  A beat says
one sentence, asks for one act and
answers it with one number a builder can hold.  Three kinds of acts::

    Beat("first", bets=(LESSON_BET,))            # the lesson's prediction, made in the picture
    Beat("pair", cases=({...}, {...}),           # two cases side by side that look alike,
         bets=(Bet("left", ...), Bet("right", ...)), beliefs=("no-drops-no-problem",))
    Beat("move", unlocks="RH_in", aim=reached)   # one control, until the state is as asked for

A beat's words are messages of the lesson: ``beat-<id>-say`` (the sentence, at
most 20 words), ``-ask`` (the act), ``-answer`` (the number) and ``-also`` (the
same as a flux, smaller, where there is one); ``-control`` is what the control
is called there, where that is not its own name; ``-yet`` what is so while its
aim is not reached; ``-care`` is what to mind where
it proposes an act; of two scenes ``-first`` and ``-second`` are what stands
over them.  A bet has ``beat-<id>-<bet>-ask``, and
``-<key>`` and ``-<key>-reply`` for each choice.  All get the facts that
``Beat.facts`` tells of the states.  The browser keeps each number with its unit.

The first bet of the first beat is the lesson's prediction, and its `own` case
is the page as it starts; each of its choices has a `reply` in ``lesson.toml``.
A beat has one scene or two; what is more than two is drawn in one.  Where its
scenes are another thing than those of the play, it has its own `draw`, `given`,
`shows` and `scale`.  What is right of one scene alone is ``of_scene(1, right)``.
A choice that is no place stands in the room.

Nothing of a state goes to the browser before all bets of a beat are made: the
scenes are then empty but for what `Play.given` shows, the two airs say.  What
is right is asked of the states (`Bet.right`), not written down.

A beat is gone through like this::

    bets are open --all made--> shown --the aim is reached, where there is one--> done

Who has made the bets may go on before an aim is reached, so that nobody is
locked in: the way on is then a quiet button, and the loud one once it is done.
An instructor may show a beat without a bet, and step as wanted.  Who comes
back to a lesson that was gone through stands on the free page at once.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from types import SimpleNamespace
from typing import Any, Protocol

from dryward.checks import PlainError
from dryward.language import Beside, message
from dryward.panels import protocol
from dryward.panels.controls import Control
from dryward.panels.learner import Prediction, Settings
from dryward.pictures import scenery
from dryward.pictures.scenery import Place, Scene


class Page(Protocol):
    """What a play needs of the page it is played on."""

    controls: dict[str, Control]
    unit_system: str
    id: str
    prediction: Prediction
    settings: Settings
    play: Play | None
    stage: Stage

    @property
    def at(self) -> SimpleNamespace:
        """All controls by name, in SI."""

    @property
    def sentence(self) -> str:
        """What is so, in a sentence."""

    @property
    def narrow(self) -> bool:
        """Whether the browser has a place as wide as a phone."""

    def compute(self, at: SimpleNamespace) -> Any:
        """The state at the controls' values."""

    def predict(self, choice: int) -> None:
        """Bet on the lesson's prediction, and keep it."""

    def show(self, value: float, quantity: str, digits: int | None = None) -> str:
        """A number of SI with its unit, as this reader has it."""


#: The states of a beat, one for each scene.
States = tuple[Any, ...]


@dataclass(frozen=True)
class Spot:
    """A choice of a bet, and where it stands in the picture.

    `glyph` is what marks it in the picture and in the list: a letter where
    empty, else "in" or "out" for an arrow, "none" for an equals sign.
    """

    key: str
    at: Place
    scene: int = 0
    belief: str = ""
    glyph: str = ""


@dataclass(frozen=True)
class Bet:
    """One bet of a beat; `right` gives the key of what is so in the states.

    The bet named "lesson" is the lesson's prediction: its words stand in
    ``lesson.toml``.
    """

    name: str
    spots: tuple[Spot, ...]
    right: Callable[[States], str]


def no_dots(page: Page) -> str:
    """The `scale` of a beat in whose scenes nothing is counted."""
    return ""


def of_scene(number: int, right: Callable[[Any], str]) -> Callable[[States], str]:
    """What is right of one scene alone, as its state says."""
    return lambda states: right(states[number])


def _nothing(page: Page, states: States) -> dict[str, Any]:
    return {}


@dataclass(frozen=True)
class Beat:
    """One beat; see the module.

    `cases` are values of controls in SI, a case a scene; what they do not name
    stands at its start.  The page itself stands in the case numbered `own`.
    `unlocks` names the control that is moved, `aim` says of the states when it
    was moved far enough; once reached it `stays` so, and the answer tells of
    every state after, or it is asked for again.  `facts` are told to all texts.
    """

    id: str
    cases: tuple[Mapping[str, Any], ...] = ({},)
    own: int = 0
    bets: tuple[Bet, ...] = ()
    unlocks: str = ""
    aim: Callable[[Page, States], bool] | None = None
    stays: bool = True
    facts: Callable[[Page, States], Mapping[str, Any]] = _nothing
    beliefs: tuple[str, ...] = ()
    #: What works its states out, a state a scene, where they are not the page's own.
    states: Callable[[Page], States] | None = None
    #: Marks of one state over those of what `shows` gives.
    marks: Callable[[Page, Any], Mapping[str, Any]] | None = None
    #: What draws its scenes, tells of them and what their dots stand for, each where it is not that of the play.
    draw: Callable[[Scene, Any], None] | None = None
    given: Callable[[Page, Any], Mapping[str, Any]] | None = None
    shows: Callable[[Page, Any], Mapping[str, Any]] | None = None
    scale: Callable[[Page], str] | None = None
    #: Whether the strip along its control tells of what the beat asks.
    strip: bool = True


@dataclass(frozen=True)
class Play:
    """The beats of a lesson, its scene and its messages.

    `draw` draws the still part of a scene of one state; `signature` is what
    that depends on.  `given` says what is known before the bet, `shows` what
    is so: both give marks, tags and flows (`pictures.scenery`).  `scale` says
    what the dots stand for.
    """

    beats: tuple[Beat, ...]
    texts: Beside
    draw: Callable[[Scene, Any], None]
    signature: Callable[[Any], Any]
    given: Callable[[Page, Any], Mapping[str, Any]]
    shows: Callable[[Page, Any], Mapping[str, Any]]
    scale: Callable[[Page], str] = no_dots
    #: Whether who is here for the first time may go to the free page at once.
    may_leave: bool = False


@dataclass
class _Gone:
    """How far a beat was gone: the choice of each bet by its name, and whether its aim was reached.

    `hands` are those of a class, for each choice of a bet; `counted` are the
    bets that an instructor has closed.
    """

    counted: set[str] = field(default_factory=set)
    hands: dict[str, list[int]] = field(default_factory=dict)
    chosen: dict[str, str] = field(default_factory=dict)
    done: bool = False


class Stage:
    """A page's way through its play.

    Parameters
    ----------
    page : Page
        Whose play it is; a page without one has an empty stage.

    Attributes
    ----------
    at : int
        The beat that is on, counted from 0; as many as there are beats on the
        free page.
    """

    def __init__(self, page: Page) -> None:
        self.page, self.play = page, page.play
        self.beats = page.play.beats if page.play else ()
        self._gone = {beat.id: _Gone() for beat in self.beats}
        self._stills: dict[Any, dict[str, Any]] = {}
        self.states: States = ()
        self._facts: Mapping[str, Any] | None = None
        #: The states of the beat's case, before anything was moved.
        self.first: States = ()
        left, through = page.settings.left_off(page.id)
        ids = [beat.id for beat in self.beats]
        #: Whether the learner was on the free page before; the files of earlier versions know the prediction alone.
        self._back = through or (left is None and page.prediction.chosen is not None)
        self.at = len(self.beats) if self._back else ids.index(left) if left in ids else 0
        #: The beats before it were gone through on an earlier visit.
        self._begun = self.at
        if not self._back:
            self._take_up()

    def _take_up(self) -> None:
        """Take in the bets of a visit that ended before the free page."""
        made = self.page.settings.bets(self.page.id)
        for beat in self.beats[: self.at + 1]:
            for bet in beat.bets:
                key = self.page.prediction.key() if bet.name == LESSON else made.get(f"{beat.id}-{bet.name}")
                if key in [spot.key for spot in bet.spots]:
                    self._gone[beat.id].chosen[bet.name] = str(key)

    @property
    def on(self) -> bool:
        """Whether a beat is on, and not the free page."""
        return self.at < len(self.beats)

    @property
    def may_leave(self) -> bool:
        """Whether the free page may be gone to at once."""
        return self._back or bool(self.play and self.play.may_leave)

    @property
    def beat(self) -> Beat:
        """The beat that is on."""
        return self.beats[self.at]

    @property
    def gone(self) -> _Gone:
        """How far it was gone."""
        return self._gone[self.beat.id]

    @property
    def shown(self) -> bool:
        """Whether what is so may be seen: all bets of the beat are made, or an instructor shows it."""
        return self.open_bet is None

    @property
    def strips(self) -> bool:
        """Whether a control may have a strip along it: on a beat what is so is seen, and it tells of what is asked."""
        return not self.on or (self.shown and self.beat.strip)

    @property
    def open_bet(self) -> Bet | None:
        """The bet that is to be made next."""
        closed = self.gone.chosen.keys() | self.gone.counted
        return next((bet for bet in self.beat.bets if bet.name not in closed), None)

    # --- what is done ----------------------------------------------------------------

    def go(self, number: int) -> None:
        """To a beat, or past the last one to the free page; the page's controls stand in its case."""
        if number == self.at:  # asked for once more, by a second click on what was left: all stands as it is
            return
        if number != len(self.beats):
            protocol.place(number, self.beats)
        between = self.beats[self._begun : number]
        before = (bet.name in self._gone[beat.id].chosen for beat in between for bet in beat.bets)
        leaves = self.may_leave and number == len(self.beats)
        if not (leaves or self._back or self.page.settings["instructor"] or all(before)):
            raise PlainError(message("panels.first-the-bet"))
        if not self.on:  # back from the free page: every bet is open again
            self._gone = {beat.id: _Gone() for beat in self.beats}
        came_from, self.at = self.at, number
        try:
            self.stand()
        except PlainError:
            self.at = came_from
            raise
        self._keep()

    def _keep(self) -> None:
        """Keep where the learner is, for the next visit."""
        if self.beats:
            self.page.settings.left(self.page.id, self.beat.id if self.on else "")

    def stand(self) -> None:
        """Put the page's controls into the case of the beat."""
        self.first, self._facts = (), None
        controls = self.page.controls
        for control in controls.values():
            control.put(control.start)
        self._starts = vars(self.page.at)
        if self.on:
            for name, value in self.beat.cases[self.beat.own].items():
                controls[name].put_si(value)

    def leave(self, name: str) -> bool:
        """To the free page if a control is not the one that the beat unlocks; gives whether it was left."""
        if not self.on or (self.shown and name == self.beat.unlocks):
            return False
        self.at = len(self.beats)
        return True

    def choose(self, choice: int) -> None:
        """Make the open bet of the beat, and keep it."""
        bet = self.open_bet if self.on else None
        if bet is None:
            raise protocol.Malformed
        key = bet.spots[protocol.place(choice, bet.spots)].key
        self.gone.chosen[bet.name] = key
        self._keep()
        if bet.name == LESSON:
            self.page.predict(self.page.prediction.number(key))
        else:
            behind = {spot.key: spot.belief for spot in bet.spots}
            name = f"{self.beat.id}-{bet.name}"
            self.page.settings.bet(self.page.id, name, key, bet.right(self.states), behind)

    def raise_hand(self, choice: int, by: int) -> None:
        """One hand of a class more for a choice of the first bet that is not shown, or one less."""
        bet = self.open_bet
        if bet is None:
            raise protocol.Malformed
        k = protocol.place(choice, bet.spots)
        if bet.name == LESSON:
            self.page.prediction.raise_hand(self.page.prediction.number(bet.spots[k].key), by)
            return
        hands = self.gone.hands.setdefault(bet.name, [0] * len(bet.spots))
        hands[k] = max(0, hands[k] + (1 if by > 0 else -1))

    def _hands(self, bet: Bet) -> list[int]:
        """The hands for each choice, in the order of the spots."""
        if bet.name == LESSON:
            asked = self.page.prediction
            return [asked.hands[asked.number(spot.key)] for spot in bet.spots]
        return list(self.gone.hands.get(bet.name, [0] * len(bet.spots)))

    def again(self) -> None:
        """Take the bets of the beat back."""
        self._gone[self.beat.id] = _Gone()

    def show(self) -> None:
        """For an instructor: close the open bet, after the last one see what is so, which then stays."""
        bet = self.open_bet
        if bet is not None:
            self.gone.counted.add(bet.name)

    def follow(self, state: Any) -> None:
        """Take in the page's new state: work the other scene out, and see whether the aim is reached."""
        if not self.on:
            return
        beat = self.beat
        self.states = beat.states(self.page) if beat.states else self._of_page(state, beat)
        self.first = self.first or self.states
        self._facts = None
        reached = self.shown and (beat.aim is None or beat.aim(self.page, self.states))
        self.gone.done = reached or (beat.stays and self.gone.done)

    def _of_page(self, state: Any, beat: Beat) -> States:
        """The page's state in each case; its own stands already."""
        return tuple(
            state if number == beat.own else self.page.compute(self._of_case(case))
            for number, case in enumerate(beat.cases)
        )

    def states_at(self, value: Any) -> States:
        """The state in each case, if the control that moves all of them stood at another value [SI]."""
        moved = vars(self.page.at) | {self.beat.unlocks: value}
        return tuple(self.page.compute(self._of_case(case, moved)) for case in self.beat.cases)

    def _of_case(self, case: Mapping[str, Any], moved: Mapping[str, Any] | None = None) -> SimpleNamespace:
        """The controls of the other scene: its case, and the control that moves both."""
        moved, starts = moved or vars(self.page.at), self._starts
        return SimpleNamespace(
            **{name: moved[name] if name == self.beat.unlocks else case.get(name, starts[name]) for name in moved}
        )

    # --- what the browser is told ----------------------------------------------------

    def stills(self) -> list[dict[str, Any]]:
        """The still part of each scene, in every shape; the same object while it stands."""
        if not self.on or self.play is None:
            return []
        found = []
        for state in self.states:
            draw = self.beat.draw or self.play.draw
            look = draw, self.play.signature(state)
            if look not in self._stills:
                self._stills[look] = {shape: _drawn(draw, shape, state) for shape in scenery.SHAPES}
            found.append(self._stills[look])
        return found

    def given(self, state: Any) -> Mapping[str, Any]:
        """What is known of a state of the beat before the bet."""
        assert self.play is not None
        return (self.beat.given or self.play.given)(self.page, state)

    def shows(self, state: Any) -> Mapping[str, Any]:
        """What is so of a state of the beat."""
        assert self.play is not None
        return (self.beat.shows or self.play.shows)(self.page, state)

    def live(self) -> dict[str, Any] | None:
        """What a move changes; nothing of a state before the bets are made."""
        if not self.on or self.play is None:
            return None
        scenes = []
        for state in self.states:
            parts = [self.given(state)]
            if self.shown:
                parts.append(self.shows(state))
                if self.beat.marks:
                    parts.append(self.beat.marks(self.page, state))
            scenes.append(scenery.together(parts))
        done = self.gone.done and self.shown
        answer = self._text("answer") if done else ""
        return {
            "id": self.beat.id,
            "scenes": scenes,
            "done": done,
            "told": answer or (self._text("yet", need=False) if self.shown and self.beat.aim else ""),
            "also": self._text("also", need=False) if done else "",
            "status": answer or (self.page.sentence if self.shown else self._text("say")),
        }

    def frame(self) -> dict[str, Any] | None:
        """What rarely changes: the words of the beat, its bets, its control; None where there is no play."""
        if self.play is None:
            return None
        shared: dict[str, Any] = {"at": self.at, "count": len(self.beats), "may_leave": self.may_leave}
        if not self.on:
            return shared
        beat = self.beat
        titles = ("first", "second") if len(beat.cases) > 1 else ()
        return {
            **shared,
            "id": beat.id,
            "say": self._text("say"),
            "ask": "" if beat.bets and not beat.unlocks and self.shown else self._text("ask", need=False),
            "care": self._text("care", need=False),
            "titles": [self._text(each) for each in titles],
            "bets": [self._bet(bet) for bet in beat.bets],
            "control": beat.unlocks if self.shown else "",
            "control_words": self._text("control", need=False),
            "scale": (beat.scale or self.play.scale)(self.page),
        }

    def _bet(self, bet: Bet) -> dict[str, Any]:
        """A bet as it is shown; what is right, and the reply, only when the beat is."""
        page, gone = self.page, self.gone
        keys = [spot.key for spot in bet.spots]
        chosen = gone.chosen.get(bet.name)
        hands, counted = self._hands(bet), bet.name in gone.counted
        right, reply, replies = None, "", [""] * len(keys)
        if self.shown:
            # Of the case that was bet on, whatever was moved since.
            right = keys.index(bet.right(self.first or self.states))
            reply = self._reply(bet, chosen or keys[right])
            if counted:  # to each choice that someone in the class took, and to what is so
                said = [number > 0 or k == right for k, number in enumerate(hands)]
                replies = [self._reply(bet, key) if says else "" for key, says in zip(keys, said, strict=True)]
        if bet.name == LESSON:
            asked = page.prediction.asked
            prompt, texts = asked.prompt, [asked.choice(key).text for key in keys]
        else:
            prompt = self._text(f"{bet.name}-ask")
            texts = [self._text(f"{bet.name}-{key}") for key in keys]
        return {
            "name": bet.name,
            "prompt": prompt,
            "choices": [
                {"text": text, "scene": spot.scene, "at": list(spot.at), "glyph": spot.glyph}
                for text, spot in zip(texts, bet.spots, strict=True)
            ],
            "hands": hands,
            "counted": counted,
            "chosen": None if chosen is None else keys.index(chosen),
            # What the beat says asks it already; the list has it for those who listen.
            "said": bet.name == LESSON,
            "open": bet is self.open_bet and not self.shown,
            "right": right,
            "reply": reply,
            "replies": replies,
        }

    def _reply(self, bet: Bet, key: str) -> str:
        if bet.name == LESSON:
            asked = self.page.prediction.asked
            return asked.choice(key).reply or asked.reveal
        return self._text(f"{bet.name}-{key}-reply")

    def _text(self, name: str, need: bool = True) -> str:
        assert self.play is not None
        id = f"beat-{self.beat.id}-{name}"
        if not need and id not in self.play.texts:
            return ""
        if self._facts is None:  # a beat has a dozen texts, and all are told the same
            self._facts = self.beat.facts(self.page, self.states)
        # A unit that ends in a dot needs no second one.
        return self.play.texts(id, **self._facts).replace("..", ".")


def _drawn(draw: Callable[[Scene, Any], None], shape: str, state: Any) -> dict[str, Any]:
    scene = scenery.begin(shape)
    draw(scene, state)
    return scene.still()


#: The bet whose words are the lesson's prediction.
LESSON = "lesson"
