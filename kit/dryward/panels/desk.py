"""What stands round the working part of a page: words, prediction, checks, switches.

The desk builds the `frame` of the sheet and answers what the browser sends.
"""

import logging

from dryward.checks import PlainError
from dryward.panels.checks import Checks
from dryward.teaching import lessons, words

_log = logging.getLogger(__name__)


class Desk:
    """The words and switches of one page.

    Parameters
    ----------
    page : Page

    Attributes
    ----------
    lesson : Lesson
        The words, in the page's unit system.
    chosen : int or None
        The prediction made, counted from 0.
    reveal : bool
        Whether the right answer shows.
    hands : list of int
        The show of hands for each choice, in instructor mode.
    open : set of str
        The folds that are open.
    checks : Checks
    """

    def __init__(self, page):
        self.page = page
        self.reveal, self.open = False, set()
        self._word()
        self.chosen = self._before()
        self.hands = [0] * len(self.lesson.prediction.choices)
        self.checks = Checks(page.id, page.unit_system)
        page.widget.observe(self._moves, "moves")
        page.widget.on_msg(self._message)

    def _word(self):
        self.lesson = lessons.lesson(self.page.id, self.page.unit_system)

    def _before(self):
        """The prediction of an earlier visit, if its choice is still one."""
        keys = [choice.key for choice in self.lesson.prediction.choices]
        kept = self.page.settings.prediction(self.page.id)
        return keys.index(kept) if kept in keys else None

    @property
    def locked(self):
        """Whether controls and drawing wait for a prediction; the index has nothing to cover."""
        return bool(self.page.draws) and self.chosen is None and not self.page.settings["instructor"]

    def steps(self):
        """The steps of the hand calculation, when its fold is open."""
        if "arithmetic" not in self.open or self.page.state is None:
            return []
        found = self.page.steps(self.page.state)
        return [{"words": each.words, "formula": each.formula, "result": str(each.result)} for each in found]

    # --- the frame -------------------------------------------------------------

    def show(self):
        """Build the page anew: words, units or locks have changed."""
        page, lesson = self.page, self.lesson
        page.widget.frame = {
            "number": lesson.number,
            "title": lesson.title,
            "question": lesson.question,
            "needs": self._needs(),
            "system": page.unit_system,
            "projector": page.settings["projector"],
            "type_size": page.settings["type_size"],
            "instructor": page.settings["instructor"],
            "locked": self.locked,
            "reveal": self.reveal,
            "prediction": self._prediction(),
            "controls": [control.frame() for control in page.controls.values()],
            "actions": [{"name": name, "words": text} for name, text in page.buttons],
            "pictures": [{"width": each.width, "height": each.height} for each in page.live_pictures()],
            "readouts": [{"name": each.name, "words": each.words} for each in page.readout_list if not each.hidden],
            "has_arithmetic": page.has_steps,
            "folds": [
                {"key": "sources", "title": "Where the numbers come from", "items": list(lesson.sources)},
                {
                    "key": "limits",
                    "title": f"What {'this picture leaves' if page.draws else 'the lessons leave'} out",
                    "items": list(lesson.limits),
                },
            ],
            "checks": self.checks.frame(),
            "unkept": page.settings.trouble,
            "takeaway": lesson.takeaway,
            "cautions": [self._caution(id) for id in lesson.cautions],
        }

    def _needs(self):
        titles = [lessons.lesson(id).title for id in self.lesson.needs]
        return f"Comes after: {', '.join(titles)}." if titles else ""

    def _caution(self, id):
        this = words.caution(id)
        return {"title": this.title, "text": words.shown(this.text, self.page.unit_system)}

    def _prediction(self):
        ask = self.lesson.prediction
        keys = [choice.key for choice in ask.choices]
        return {
            "prompt": ask.prompt,
            "choices": [choice.text for choice in ask.choices],
            "chosen": self.chosen,
            "right": keys.index(ask.right),
            "reply": ask.reveal,
            "hands": list(self.hands),
        }

    # --- what the browser sends ----------------------------------------------------

    def _moves(self, change):
        moves = change["new"]
        if moves.get("system") == self.page.unit_system:
            self.page.moved(moves.get("values", {}), moves.get("serial", 0))

    def _message(self, widget, content, buffers):
        try:
            self.hear({**content, "buffers": buffers} if buffers else content)
        except PlainError as reason:
            self.page.trouble = str(reason)
            self.page.send()
        except Exception as reason:  # a learner never sees a traceback
            self.mishap(reason)

    def mishap(self, reason):
        """Say in one sentence that something unforeseen happened, and log it."""
        _log.debug("page %s", self.page.id, exc_info=reason)
        self.page.trouble = (
            f"This page could not do that ({type(reason).__name__}). Run its cell again to start afresh."
        )
        self.page.send()

    def hear(self, message):
        """Do what one message of the browser asks.

        Parameters
        ----------
        message : dict
            With a ``kind``, and what that kind needs.
        """
        getattr(self, f"_do_{message['kind']}")(message)

    def _do_opened(self, message):
        self.page.settings.opened(self.page.id)
        if self.page.settings.trouble:
            self.show()

    def _do_seen(self, message):
        self.page.seen()

    def _do_typed(self, message):
        self.page.typed(message["name"], message["text"])

    def _do_action(self, message):
        if message["name"] in dict(self.page.buttons):
            getattr(self.page, message["name"])()
            self.page.follow()

    def _do_bench(self, message):
        self.page.act(str(message["key"]), message.get("value"), message.get("buffers") or ())

    def _do_predict(self, message):
        self.chosen, self.reveal = message["choice"], False
        if self.chosen is not None:
            self.page.settings.predicted(self.page.id, self.lesson.prediction.choices[self.chosen].key)
        self.show()

    def _do_reveal(self, message):
        if self.page.settings["instructor"] or self.chosen is not None:
            self.reveal = not self.reveal
            self.show()

    def _do_hands(self, message):
        choice = message["choice"]
        self.hands[choice] = max(0, self.hands[choice] + (1 if message["by"] > 0 else -1))
        self.show()

    def _do_answer(self, message):
        number, choice = message["number"], message["choice"]
        picked = self.checks.answer(number, choice)
        self.page.settings.answered(self.page.id, self.checks.questions[number], picked)
        self.show()

    def _do_new_checks(self, message):
        self.checks.renew(self.page.unit_system)
        self.show()

    def _do_fold(self, message):
        (self.open.add if message["open"] else self.open.discard)(message["key"])
        if message["key"] == "arithmetic" and message["open"]:
            self.page.send()

    def _do_system(self, message):
        self.page.switch_units(message["value"])

    def _do_projector(self, message):
        self._switch("projector", message["value"])

    def _do_instructor(self, message):
        self.reveal = False
        self._switch("instructor", message["value"])

    def _switch(self, name, value):
        self.page.settings[name] = bool(value)
        self.page.follow()
        self.show()

    def new_units(self):
        """The page has changed its units: words and questions follow."""
        self._word()
        self.checks.ask(self.page.unit_system)
        self.show()
